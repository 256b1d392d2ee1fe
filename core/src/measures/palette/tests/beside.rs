//! What a fence or a property line asks of the lots beside it.
//!
//! Distances are checked against those of the `geo` crate, homes by hand.

use geo::{Distance, Euclidean, LineString, Polygon};

use super::*;
use crate::fabric::{Fabric, LandCache};
use crate::measures::frontage::{Painted, PaintedCache};
use crate::plan::land::{Barrier, Beside, OwnerGroup, Parcel};

/// Apartment houses of three stories and 14 homes along a street to the south; to the north the site ends.
fn along_the_fence(others: Vec<Mark>) -> Document {
    let corners = rectangle_ft(0, 0, 900, 190);
    let mut marks = vec![street(&[corners[0], corners[1]], 60)];
    marks.push(use_at(feet(450, 100), &[(5, 100)]));
    marks.extend(others);
    plan(corners, marks)
}

fn painted(document: &Document) -> Painted {
    let fabric = Fabric::of(document, FIRST, &mut LandCache::default());
    painted_faces(document, FIRST, &fabric, &mut PaintedCache::default())
}

fn asked(reach_mm: u32, stories: Option<u8>, clear_mm: Option<u32>) -> Option<Beside> {
    Some(Beside {
        reach_mm,
        stories,
        clear_mm,
    })
}

fn fence(points: &[PlanPoint], beside: Option<Beside>) -> Mark {
    Mark::Barrier(Barrier {
        name: "Fence".to_owned(),
        line: points.to_vec(),
        beside,
    })
}

fn line(points: &[PlanPoint]) -> LineString {
    points
        .iter()
        .map(|at| (f64::from(at.x_mm), f64::from(at.y_mm)))
        .collect()
}

fn polygon(ring: &[PlanPoint]) -> Polygon {
    Polygon::new(line(ring), Vec::new())
}

#[test]
fn lots_beside_half_a_fence_are_built_lower_and_the_others_are_not() {
    let plain = along_the_fence(Vec::new());
    let all = painted(&plain)[0].laid.lots.len() as f64;
    let before = number(&measured(&plain), "homes.count");
    check("homes of the type's own", before, 14.0 * all, 1e-9);
    // Along the western half of the northern boundary, and as far behind it as a narrow yard.
    let ends = [feet(0, 190), feet(450, 190)];
    let mut counts = Vec::new();
    for reach_mm in [0, 6_096, 30_000, 60_000] {
        let fenced = along_the_fence(vec![fence(&ends, asked(reach_mm, Some(2), None))]);
        let painted = painted(&fenced);
        let is_near = |lot: &crate::fabric::lots::Lot| {
            Euclidean.distance(&polygon(&lot.outline), &line(&ends)) <= f64::from(reach_mm)
        };
        let near = painted[0].laid.lots.iter().filter(|lot| is_near(lot)).count() as f64;
        let figures = measured(&fenced);
        let fronted = painted[0].fronts.iter().flat_map(|front| front.lots);
        let homes = fronted.map(|(id, lots)| lots * f64::from(painted.palette.get(id).unwrap().homes_per_lot));
        check(
            "homes along the street",
            homes.sum(),
            number(&figures, "homes.count"),
            1e-6,
        );
        // Two of three floors of homes hold nine whole homes of fourteen.
        let lower = 9.0 * near + 14.0 * (all - near);
        check("homes", number(&figures, "homes.count"), lower, 1e-9);
        if near > 0.0 {
            let row = at(&figures, "homes.by_building_type", "type_5_2_stories");
            check("homes beside it", row, 9.0 * near, 1e-9);
        }
        counts.push(near);
    }
    assert!(counts.is_sorted() && counts[3] > counts[0], "{counts:?}");
    assert!(
        counts[3] > 0.0 && counts[3] < all,
        "some and not all: {counts:?} of {all}"
    );
}

#[test]
fn the_fewest_stories_of_side_and_fence_count() {
    let ends = [feet(0, 190), feet(900, 190)];
    for (of_side, of_fence, built) in [(2, 1, 1), (1, 2, 1)] {
        let mut plan = along_the_fence(vec![fence(&ends, asked(60_000, Some(of_fence), None))]);
        let held = plan.alternatives.get_mut(&FIRST).expect("the first");
        for mark in held.marks.values_mut() {
            if let Mark::Use(held) = mark {
                held.sides = vec![SideUse {
                    at: feet(450, 0),
                    ..side(None, Some(of_side), false)
                }];
            }
        }
        let types = painted(&plan);
        let stories: Vec<usize> = types[0]
            .built
            .iter()
            .filter_map(|id| Some(types.palette.get(*id)?.stories.len()))
            .collect();
        assert!(
            !stories.is_empty() && stories.iter().all(|stories| *stories == built),
            "{stories:?}"
        );
    }
}

#[test]
fn buildings_keep_clear_of_a_fence_and_stay_where_they_were_elsewhere() {
    let plain = painted(&along_the_fence(Vec::new()));
    // Cuts the corners of lots: a bend at 120 feet from the street.
    let ends = [feet(0, 150), feet(300, 120), feet(400, 190)];
    let clear_mm = 6_096;
    let fenced = painted(&along_the_fence(vec![fence(&ends, asked(0, None, Some(clear_mm)))]));
    let footprints = |painted: &Painted| -> Vec<Vec<PlanPoint>> {
        painted[0].laid.lots.iter().map(|lot| lot.footprint.clone()).collect()
    };
    let away = |footprint: &[PlanPoint]| Euclidean.distance(&polygon(footprint), &line(&ends));
    let (mut moved, mut stayed) = (0, 0);
    for (before, after) in footprints(&plain).iter().zip(footprints(&fenced)) {
        if !before.is_empty() && away(before) >= f64::from(clear_mm) * 2.0_f64.sqrt() {
            assert_eq!(*before, after, "out of reach");
            stayed += 1;
        } else {
            moved += usize::from(*before != after);
        }
        assert!(
            after.is_empty() || away(&after) >= f64::from(clear_mm) - 2.0,
            "{} mm",
            away(&after)
        );
    }
    assert!(moved > 0 && stayed > 0, "{moved} moved, {stayed} stayed");
}

#[test]
fn nothing_is_asked_of_lots_inside_a_parcel_or_where_nothing_is_said() {
    let parcel = |east_ft: i32, beside| {
        Mark::Parcel(Parcel {
            label: "12".to_owned(),
            outline: rectangle_ft(-10, -10, east_ft, 200),
            owner: OwnerGroup::Unknown,
            beside,
        })
    };
    let homes = |others| number(&measured(&along_the_fence(others)), "homes.count");
    let plain = homes(Vec::new());
    check(
        "inside",
        homes(vec![parcel(910, asked(6_096, Some(1), Some(6_096)))]),
        plain,
        1e-9,
    );
    check(
        "nothing asked",
        homes(vec![parcel(450, asked(60_000, None, None))]),
        plain,
        1e-9,
    );
    check("nothing said", homes(vec![parcel(450, None)]), plain, 1e-9);
    let beside = homes(vec![parcel(450, asked(6_096, Some(1), None))]);
    assert!(
        beside < plain,
        "the next lot beyond the parcel is lower: {beside} of {plain}"
    );
    assert!(beside > plain / 2.0, "one or two lots only: {beside} of {plain}");
}
