//! Land under constraints on random polygons, against areas of the `geo` library.

use geo::{Area, BooleanOps, MultiPolygon};
use hobnail_core::fabric::constraints::{Constraint, HELD_BY, LandSwitch, SWITCHES};
use hobnail_core::fabric::{Fabric, LandCache};
use hobnail_core::plan::document::Site;
use hobnail_core::plan::land::{ConstraintArea, ConstraintKind};
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::{AlternativeId, Document, Mark, MarkId, PlanPoint, StreetSectionId, Vertex};

use super::land::{perimeter_mm, polygon, street_of_section};
use crate::random::Random;

const ONLY: AlternativeId = AlternativeId(0);

/// Kinds in an order other than the stated one.
const KINDS: [ConstraintKind; 8] = [
    ConstraintKind::Keep,
    ConstraintKind::Easement,
    ConstraintKind::Steep,
    ConstraintKind::Floodplain,
    ConstraintKind::Contaminated,
    ConstraintKind::Water,
    ConstraintKind::Conservation,
    ConstraintKind::Wetland,
];

/// A polygon that goes once around its middle, so that it does not cross itself.
fn star(random: &mut Random) -> Vec<PlanPoint> {
    let (x, y) = (random.within(0, 400_000), random.within(0, 300_000));
    let count = random.within(3, 9);
    let turned = random.within(0, 359);
    let mut outline: Vec<PlanPoint> = (0..count)
        .map(|corner| {
            let angle = f64::from(turned + corner * 360 / count).to_radians();
            let reach = f64::from(random.within(5_000, 150_000));
            let (sin, cos) = (hobnail_core::number::sin(angle), hobnail_core::number::cos(angle));
            PlanPoint::new(x + (cos * reach) as i32, y + (sin * reach) as i32)
        })
        .collect();
    if random.within(0, 1) == 1 {
        outline.reverse();
    }
    outline
}

fn plan(random: &mut Random) -> Document {
    let mut document = Document::new("", GeographicPoint::checked_from_deg(0.0, 0.0).unwrap());
    let at = |(x, y): (i32, i32)| PlanPoint::new(x * 1000, y * 1000);
    document.site = Site {
        boundary: [(0, 0), (400, 0), (400, 300), (0, 300)].map(at).to_vec(),
    };
    let mut marks = Vec::new();
    for _ in 0..random.within(0, 4) {
        let mut end = || PlanPoint::new(random.within(-20_000, 420_000), random.within(-20_000, 320_000));
        let (a, b) = (end(), end());
        let mut street = street_of_section(StreetSectionId(0));
        street.line = vec![Vertex::at(a), Vertex::at(b)];
        if a != b {
            marks.push(Mark::Street(street));
        }
    }
    for _ in 0..random.within(1, 6) {
        let mut flag = || random.within(0, 2) > 0;
        let (is_buildable, counts_in_site, counts_in_buildable, is_walkable) = (!flag(), flag(), !flag(), flag());
        marks.push(Mark::Constraint(ConstraintArea {
            name: String::new(),
            outline: star(random),
            kind: *random.pick(&KINDS),
            is_buildable,
            counts_in_site,
            counts_in_buildable,
            is_walkable,
        }));
    }
    document.alternatives.get_mut(&ONLY).unwrap().marks = (0..).map(MarkId).zip(marks).collect();
    document
}

/// What the constraints that take part hold of some land, by kind, each place counted once in the stated order.
fn held(land: &MultiPolygon<f64>, constraints: &[&Constraint]) -> Vec<f64> {
    let mut left = land.clone();
    let of_kind = |held_by| {
        let before = left.unsigned_area();
        for one in constraints.iter().filter(|one| one.held_by == held_by) {
            left = left.difference(&polygon(std::slice::from_ref(&one.outline)));
        }
        before - left.unsigned_area()
    };
    HELD_BY.into_iter().map(of_kind).collect()
}

#[test]
fn constrained_land_agrees_with_geo() {
    for seed in 0..crate::cases(if cfg!(debug_assertions) { 150 } else { 1_500 }) {
        let mut random = Random(seed);
        let document = plan(&mut random);
        let fabric = Fabric::of(&document, ONLY, &mut LandCache::default());
        let mut bare = document.clone();
        let marks = &mut bare.alternatives.get_mut(&ONLY).unwrap().marks;
        marks.retain(|_, mark| !matches!(mark, Mark::Constraint(_)));
        let bare = Fabric::of(&bare, ONLY, &mut LandCache::default());
        let edges_mm: f64 = fabric
            .constraints
            .iter()
            .map(|one| perimeter_mm(std::slice::from_ref(&one.outline)))
            .sum();
        for (face, bare) in fabric.faces.iter().zip(&bare.faces) {
            let outside_streets = MultiPolygon::new(bare.land.pieces.iter().map(|piece| polygon(piece)).collect());
            let check = |stated: Vec<(hobnail_core::fabric::constraints::HeldBy, i128)>, taking: Vec<&Constraint>| {
                for (held_by, expected_mm2) in HELD_BY.into_iter().zip(held(&outside_streets, &taking)) {
                    let found = stated.iter().find(|(kind, _)| *kind == held_by);
                    let found_mm2 = found.map_or(0.0, |(_, twice)| *twice as f64 / 2.0);
                    assert!(
                        (found_mm2 - expected_mm2).abs() <= edges_mm + 1e-6 * expected_mm2,
                        "seed {seed}, {held_by:?} at {:?}: {found_mm2} mm², geo {expected_mm2} mm²",
                        face.anchor
                    );
                }
            };
            check(
                face.land.constrained.under_any().collect(),
                fabric.constraints.iter().collect(),
            );
            for switch in SWITCHES {
                let taking = fabric.constraints.iter().filter(|one| one.says_no_to(switch));
                check(face.land.constrained.says_no_to(switch).collect(), taking.collect());
            }
            // The three parts of a face are the face, to the square millimeter.
            let held_mm2: i128 = face
                .land
                .constrained
                .says_no_to(LandSwitch::Buildable)
                .map(|(_, area)| area)
                .sum();
            assert!(
                face.land
                    .constrained
                    .twice_mm2
                    .iter()
                    .flat_map(|(_, counts)| counts)
                    .all(|area| *area >= 0)
            );
            assert_eq!(
                face.land.twice_right_of_way_mm2() + held_mm2 + face.land.twice_area_mm2,
                fabric.arrangement.twice_area_mm2(face.id),
                "seed {seed}"
            );
            // Right-of-ways do not depend on what holds the rest back, but for rounding.
            let rights_of_way = [face, bare].map(|face| face.land.twice_right_of_way_mm2() as f64 / 2.0);
            assert!(
                (rights_of_way[0] - rights_of_way[1]).abs() <= edges_mm,
                "seed {seed}: {rights_of_way:?}"
            );
        }
    }
}
