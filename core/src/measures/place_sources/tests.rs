use super::*;
use crate::measures::walk::test_plans::{Drawing, FIRST, at};
use crate::plan::land::{Barrier, ConstraintArea, ConstraintKind};
use crate::plan::{Certainty, Mark, PlaceKind};

fn land(drawing: &mut Drawing, outline: &[PlanPoint], is_walkable: bool) {
    drawing.add(Mark::Constraint(ConstraintArea {
        name: String::new(),
        outline: outline.to_vec(),
        kind: ConstraintKind::Water,
        is_buildable: false,
        counts_in_site: true,
        counts_in_buildable: false,
        is_walkable,
    }));
}

fn wall(drawing: &mut Drawing, line: &[PlanPoint]) {
    drawing.add(Mark::Barrier(Barrier {
        name: String::new(),
        line: line.to_vec(),
        beside: None,
    }));
}

/// How long the straight walk is from a point to its street, in meters to the centimeter, and where it ends.
fn walk(drawing: &Drawing, from: PlanPoint) -> Option<(f64, PlanPoint)> {
    let worked = drawing.worked();
    let network = worked.walks.network();
    let doorsteps = Doorsteps::of(network, &drawing.document, FIRST);
    let (walk_um, place) = doorsteps.nearest(network.network(), from)?;
    let points = network.network().link_points(place.link);
    let share = place.along_um as f64 / points[0].distance_um(points[1]) as f64;
    let end = place_of(network.network(), (0.0, place.link, 0, share));
    Some(((walk_um as f64 / 1e4).round() / 100.0, end))
}

/// A street along the south at y = 0, another along the north at y = 200 m, each 400 m long.
fn two_streets() -> Drawing {
    let mut drawing = Drawing::new();
    drawing.street(&[at(0, 0), at(400, 0)], 2);
    drawing.street(&[at(0, 200), at(400, 200)], 2);
    drawing
}

#[test]
fn a_place_beyond_water_is_walked_to_from_the_other_side() {
    let school = at(200, 60);
    assert_eq!(walk(&two_streets(), school), Some((60.0, at(200, 0))));
    let mut drawing = two_streets();
    let creek = [at(-50, 20), at(450, 20), at(450, 30), at(-50, 30)];
    land(&mut drawing, &creek, true);
    assert_eq!(
        walk(&drawing, school),
        Some((60.0, at(200, 0))),
        "what may be walked across"
    );
    land(&mut drawing, &creek, false);
    assert_eq!(walk(&drawing, school), Some((140.0, at(200, 200))));
    // A place in the creek is walked to through it.
    assert_eq!(walk(&drawing, at(200, 25)), Some((25.0, at(200, 0))));
    // On its edge it is on either side.
    assert_eq!(walk(&drawing, at(200, 20)), Some((20.0, at(200, 0))));
    assert_eq!(walk(&drawing, at(200, 30)), Some((170.0, at(200, 200))));
}

#[test]
fn a_walk_passes_the_corner_of_what_is_in_the_way() {
    // A pond 20 m long before the school: past its corner at (210, 30) the walk ends on the street at (220, 0).
    let mut drawing = two_streets();
    land(
        &mut drawing,
        &[at(150, 20), at(210, 20), at(210, 30), at(150, 30)],
        false,
    );
    let (length_m, end) = walk(&drawing, at(200, 60)).expect("around it");
    // The sight line from (200, 60) past (210, 30): 10 in 30, so 20 in 60.
    assert_eq!((length_m, end.y_mm), (63.25, 0));
    assert!((end.x_mm - 220_000).abs() <= 2, "{end:?}");
    // A fence whose end is there makes the same walk.
    let mut drawing = two_streets();
    wall(&mut drawing, &[at(100, 30), at(210, 30)]);
    assert_eq!(walk(&drawing, at(200, 60)).map(|(length_m, _)| length_m), Some(63.25));
}

#[test]
fn nothing_leads_through_the_corner_of_a_fence() {
    // The walk straight down would pass the corner at (200, 30) of a fence that runs on beyond both streets' ends.
    let mut drawing = two_streets();
    wall(&mut drawing, &[at(-2_000, 30), at(200, 30), at(2_400, 29)]);
    assert_eq!(walk(&drawing, at(200, 60)), Some((140.0, at(200, 200))));
}

#[test]
fn a_place_that_is_closed_in_is_walked_to_from_nowhere() {
    let mut drawing = two_streets();
    let school = drawing.place(PlaceKind::School, Footprint::Point(at(200, 60)), Certainty::Existing);
    let hole = [at(180, 40), at(220, 40), at(220, 80), at(180, 80), at(180, 40)];
    let reached = |drawing: &Drawing| {
        let worked = drawing.worked();
        let doorsteps = Doorsteps::of(worked.walks.network(), &drawing.document, FIRST);
        let footprint = Footprint::Point(at(200, 60));
        doorsteps.sources(worked.walks.network(), &footprint).len()
    };
    assert_eq!(reached(&drawing), 1);
    wall(&mut drawing, &hole);
    assert_eq!(reached(&drawing), 0);
    assert!(drawing.marks().contains_key(&school));
}

/// A number from 0 to `below`, the next in a row that looks like chance.
fn next(state: &mut u64, below: i32) -> i32 {
    *state = state
        .wrapping_mul(6_364_136_223_846_793_005)
        .wrapping_add(1_442_695_040_888_963_407);
    ((*state >> 33) % below.unsigned_abs() as u64) as i32
}

/// Against looking at the streets every 50 mm: nothing that is free is nearer, and what is found is free.
#[test]
fn the_nearest_street_in_sight_is_that_of_looking_everywhere() {
    let mut state = 5;
    let (mut hindered, mut closed_in) = (0, 0);
    for _ in 0..400 {
        let mut drawing = Drawing::new();
        for _ in 0..3 {
            let mut end = || at(next(&mut state, 100), next(&mut state, 100));
            drawing.street(&[end(), end()], 2);
        }
        for _ in 0..next(&mut state, 4) {
            let mut corner = || at(next(&mut state, 100), next(&mut state, 100));
            wall(&mut drawing, &[corner(), corner(), corner()]);
        }
        for _ in 0..next(&mut state, 3) {
            let mut corner = || at(next(&mut state, 100), next(&mut state, 100));
            land(&mut drawing, &[corner(), corner(), corner()], false);
        }
        let point = PlanPoint::new(next(&mut state, 100_000), next(&mut state, 100_000));
        let worked = drawing.worked();
        let (network, document) = (worked.walks.network().network(), &drawing.document);
        let doorsteps = Doorsteps::of(worked.walks.network(), document, FIRST);
        let all: Vec<&Hindrance> = doorsteps
            .hindrances
            .iter()
            .filter(|held| held.may_hinder(point))
            .collect();
        let mut least_mm = f64::INFINITY;
        for (link, _) in &doorsteps.links {
            for pair in network.link_points(*link).windows(2) {
                let steps = pair[0].distance_um(pair[1]) / 50_000 + 1;
                for step in 0..=steps {
                    let meeting = (0.0, *link, 0, step as f64 / steps as f64);
                    let end = place_of(network, meeting);
                    if !is_hindered(&all, point, end) {
                        least_mm = least_mm.min(point.distance_um(end) as f64 / 1e3);
                    }
                }
            }
        }
        match doorsteps.nearest(network, point) {
            None => {
                assert!(least_mm.is_infinite(), "{least_mm}");
                closed_in += 1;
            }
            Some((walk_um, place)) => {
                let walk_mm = walk_um as f64 / 1e3;
                assert!(walk_mm <= least_mm + 5.0, "{walk_mm} and {least_mm}");
                assert!(walk_mm >= least_mm - 60.0, "{walk_mm} and {least_mm}");
                let straight = doorsteps.nearest_of_all(network, point).expect("streets");
                hindered += u32::from(straight.0 + 1.0 < walk_mm);
                let points = network.link_points(place.link);
                assert_eq!(points.len(), 2);
            }
        }
    }
    assert!(hindered > 50 && closed_in > 20, "{hindered} {closed_in}");
}
