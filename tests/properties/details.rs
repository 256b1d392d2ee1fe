//! Walking and mix in detail: what no way of laying a plan down may change, and what more connection can not take away.

use hobnail_core::figures::leaf::Cell;
use hobnail_core::measures::details::WalkDetails;
use hobnail_core::measures::walk::destinations::Destination;
use hobnail_core::network::route_flows::RouteFlows;
use hobnail_core::network::{CostField, Direction, Location, Stretch};
use hobnail_core::plan::land::Portion;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::{
    AlternativeId, BuildingTypeId, Certainty, Document, Footprint, Mark, Place, PlaceKind, PlanPoint, StreetRole,
    UseMark,
};
use hobnail_core::study::Study;

use crate::cases;
use crate::random::Random;

const ONLY: AlternativeId = AlternativeId(0);

/// Nodes of the lattice along each side.
const SIDE: usize = 5;

const SPACING_MM: i32 = 140_000;

fn street(line: [PlanPoint; 2], section: u32, role: StreetRole) -> Mark {
    crate::streets::street(line.into(), section, role, false)
}

/// A village on a crooked lattice without two streets alike: homes, shops and work on blocks but the one in the middle,
/// a center, a school and a hall. With the lattice's points.
fn village(seed: u64) -> (Vec<Mark>, Vec<PlanPoint>) {
    let mut random = Random(seed);
    let points: Vec<PlanPoint> = (0..SIDE * SIDE)
        .map(|node| {
            let at = |step: usize, random: &mut Random| step as i32 * SPACING_MM + random.within(-19_000, 19_000);
            PlanPoint::new(at(node % SIDE, &mut random), at(node / SIDE, &mut random))
        })
        .collect();
    let mut marks = Vec::new();
    for node in 0..SIDE * SIDE {
        let east = (node % SIDE + 1 < SIDE).then_some(node + 1);
        let north = (node / SIDE + 1 < SIDE).then_some(node + SIDE);
        let edge = node % SIDE == 0 || node / SIDE == 0;
        for other in [east, north].into_iter().flatten() {
            if edge || random.within(0, 9) > 0 {
                marks.push(street([points[node], points[other]], 2, StreetRole::NeighborhoodStreet));
            }
        }
    }
    for column in 0..SIDE - 1 {
        for row in 0..SIDE - 1 {
            if (column, row) == (1, 1) {
                continue;
            }
            let anchor = |step: usize| step as i32 * SPACING_MM + SPACING_MM / 2;
            marks.push(Mark::Use(UseMark {
                anchor: PlanPoint::new(anchor(column), anchor(row)),
                program: vec![Portion {
                    building_type: BuildingTypeId(*random.pick(&[0, 0, 1, 2, 3, 3, 7, 9])),
                    share_ppm: 1_000_000,
                }],
                land_m2: 0,
                sides: Vec::new(),
                phase: None,
            }));
        }
    }
    for kind in [
        PlaceKind::Center,
        PlaceKind::School,
        PlaceKind::CommunityHall,
        PlaceKind::Shop,
    ] {
        let far = (SIDE as i32 - 1) * SPACING_MM;
        marks.push(Mark::Place(Place {
            name: String::new(),
            kind,
            footprint: Footprint::Point(PlanPoint::new(random.within(0, far), random.within(0, far))),
            minimum_size_m2: 0,
            certainty: Certainty::Committed,
            phase: None,
        }));
    }
    (marks, points)
}

fn study(marks: &[Mark], to: impl Fn(PlanPoint) -> PlanPoint) -> Study {
    let origin = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    let mut document = Document::new("Random", origin);
    for mark in marks {
        let mut mark = mark.clone();
        let id = document.next_mark_id();
        match &mut mark {
            Mark::Street(street) => street
                .line
                .iter_mut()
                .for_each(|vertex| vertex.point = to(vertex.point)),
            Mark::Use(held) => held.anchor = to(held.anchor),
            Mark::Place(Place {
                footprint: Footprint::Point(point),
                ..
            }) => *point = to(*point),
            other => panic!("no village has {other:?}"),
        }
        let held = document.alternatives.get_mut(&ONLY).expect("the first");
        held.marks.insert(id, mark);
    }
    let mut study = Study::open(document).expect("the tables fit");
    study.work_details().expect("the details fit");
    study
}

fn details(study: &Study) -> &WalkDetails {
    study.details().expect("worked")
}

/// Every number of the details by name, without places and words.
fn numbers(held: &WalkDetails) -> Vec<(&'static str, Vec<Cell>)> {
    let plain = |numbers: Vec<f64>| numbers.into_iter().map(Cell::Number).collect::<Vec<_>>();
    let fronts = || held.indirect_fronts.iter();
    vec![
        ("shed areas", held.shed_areas_m2.clone()),
        ("circles", held.circles.clone()),
        ("homes of the center", held.drawn_center_homes.clone()),
        ("homes of the best center", held.best_center_homes.clone()),
        ("homes with a walk", held.directness_homes.clone()),
        ("directness", held.directness_sums.clone()),
        ("directness of most", held.directness_most_of.clone()),
        (
            "worst directness",
            plain(fronts().map(|front| front.directness).collect()),
        ),
        (
            "busiest segment",
            plain(held.busiest_segment.iter().map(|(_, walks)| *walks).collect()),
        ),
        ("walked", held.walked_m.clone()),
        ("homes by mix", held.mix_homes.clone()),
        ("mix", held.mix_sums.clone()),
        ("needs", held.needs_reached.clone()),
        ("sure needs", held.sure_needs.clone()),
        ("cells", held.cells.clone()),
        ("unlike neighbors", held.unlike_neighbors.clone()),
    ]
}

/// Lots begin on whole millimeters, so a plan laid down another way has fronts a millimeter elsewhere: what is within a
/// walk differs by some hundredths of a home, and no number by more than a five-hundredth.
#[test]
fn moving_and_mirroring_change_no_detail() {
    type Motion = fn(PlanPoint) -> PlanPoint;
    let motions: [(&str, Motion); 3] = [
        ("moved", |p| PlanPoint::new(p.x_mm + 1_234_567, p.y_mm - 7_654_321)),
        ("mirrored", |p| PlanPoint::new(-p.x_mm, p.y_mm)),
        ("turned about", |p| PlanPoint::new(-p.x_mm, -p.y_mm)),
    ];
    for seed in 0..cases(6) {
        let (marks, _) = village(seed);
        let before = study(&marks, |point| point);
        for (name, motion) in motions {
            let after = study(&marks, motion);
            for ((what, before), (_, after)) in numbers(details(&before)).iter().zip(numbers(details(&after))) {
                assert_eq!(before.len(), after.len(), "seed {seed} {name}: {what}");
                for (one, other) in before.iter().zip(after) {
                    let (Some(one), Some(other)) = (one.number(), other.number()) else {
                        assert_eq!(one, &other, "seed {seed} {name}: {what}");
                        continue;
                    };
                    assert!(
                        (one - other).abs() <= 0.05 + one.abs() / 500.0,
                        "seed {seed} {name}: {what} {one} and {other}"
                    );
                }
            }
        }
    }
}

/// No walk is shorter than the straight line; half a millimeter of rounding is left to walks of a meter.
#[test]
fn no_walk_is_shorter_than_the_straight_line() {
    for seed in 100..100 + cases(10) {
        let (marks, _) = village(seed);
        let study = study(&marks, |point| point);
        let held = details(&study);
        for (sum, homes) in held.directness_sums.iter().zip(&held.directness_homes) {
            let (Some(sum), Some(homes)) = (sum.number(), homes.number()) else {
                continue;
            };
            assert!(
                homes > 0.0 && sum >= homes * (1.0 - 1e-4),
                "seed {seed}: {sum} of {homes}"
            );
        }
        let most_of = held.directness_most_of.iter().filter_map(Cell::number);
        let fronts = held.indirect_fronts.iter().map(|front| front.directness);
        for directness in most_of.chain(fronts) {
            assert!(directness >= 1.0 - 1e-3, "seed {seed}: {directness}");
        }
        assert!(!held.indirect_fronts.is_empty(), "seed {seed}");
    }
}

/// Walks neither begin nor end on the way: each need's come from the homes that can walk to it, and all of them arrive.
#[test]
fn routes_conserve_homes() {
    for seed in 200..200 + cases(10) {
        let (marks, _) = village(seed);
        let study = study(&marks, |point| point);
        let walks = study.walks();
        let network = study.network();
        let fronts: Vec<(Stretch, f64)> = walks
            .homes()
            .fronts
            .iter()
            .map(|front| (front.stretch, front.homes))
            .collect();
        let mut all = RouteFlows::none(network);
        let mut homes_by_needs = 0.0;
        for need in Destination::NEEDS {
            let sources = walks.sources(need);
            if sources.is_empty() {
                continue;
            }
            let mut field = CostField::new();
            field.spread(network, sources, Direction::To, None).expect("sources");
            // Without a limit a street is reached as a whole or not at all.
            let reached = fronts.iter().filter(|(stretch, _)| {
                let start = Location {
                    link: stretch.link,
                    along_um: stretch.from_um,
                };
                field.at(network, start).is_some()
            });
            let homes: f64 = reached.map(|(_, homes)| homes).sum();
            homes_by_needs += homes;
            let before = all.begun;
            all.add(network, &field, &fronts);
            assert!((all.begun - before - homes).abs() < 1e-6, "seed {seed}: {need:?}");
        }
        assert!(homes_by_needs > 100.0, "seed {seed}");
        assert!((all.begun - homes_by_needs).abs() < 1e-6 && (all.ended - homes_by_needs).abs() < 1e-6);
        let streets = details(&study).walks_by_link.len();
        assert_eq!(all.by_link[..streets], details(&study).walks_by_link[..], "seed {seed}");
    }
}

/// A path across the block without a use brings the streets nearer to one another and changes no lot, so the best point
/// has as many homes as before or more.
#[test]
fn a_new_connection_never_lowers_the_best_centers_homes() {
    let mut raised = 0;
    for seed in 300..300 + cases(12) {
        let (mut marks, points) = village(seed);
        // Streets around the middle block stand, so that the path's ends are intersections.
        let corners = [SIDE + 1, SIDE + 2, 2 * SIDE + 2, 2 * SIDE + 1].map(|node| points[node]);
        for side in 0..4 {
            marks.push(street(
                [corners[side], corners[(side + 1) % 4]],
                2,
                StreetRole::NeighborhoodStreet,
            ));
        }
        let before = study(&marks, |point| point);
        marks.push(street([corners[0], corners[2]], 6, StreetRole::Path));
        let after = study(&marks, |point| point);
        let homes = |study: &Study| study.evaluation().value("homes.count").and_then(|cell| cell.number());
        assert_eq!(homes(&before), homes(&after), "seed {seed}");
        let best = |study: &Study| details(study).best_center_homes[0].number().expect("homes");
        let (less, more) = (best(&before), best(&after));
        assert!(more >= less - 1e-6, "seed {seed}: {less}, then {more}");
        raised += u32::from(more > less + 1e-6);
    }
    assert!(raised > 0, "a path raised none");
}
