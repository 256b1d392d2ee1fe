use super::*;
use crate::measures::walk::test_plans::{Drawing, at};
use crate::network::Location;
use crate::network::test_networks::Draws;
use crate::network::{CostField, Direction, Source};
use crate::plan::building::FloorUse;
use crate::plan::land::{Barrier, Crossing};
use crate::plan::{BuildingTypeId, Certainty, Footprint, Mark, PlaceKind, PlanPoint};

/// A drawn village at random: blocks, a crooked street across them, uses of every kind, some places.
pub(crate) fn random_village(seed: u64) -> Drawing {
    let mut draws = Draws(seed);
    let (columns, rows) = (3 + draws.below(3) as i32, 2 + draws.below(3) as i32);
    let (width_m, depth_m) = (60 + draws.below(50) as i32, 50 + draws.below(40) as i32);
    // No two sides of a block are alike, so that lots lie on the same sides however the drawing is turned.
    let mut drawing = Drawing::new();
    let mut off = |mm: i32| mm + draws.below(6_000) as i32;
    let (far_x, far_y) = (columns * width_m * 1_000 + 9_000, rows * depth_m * 1_000 + 9_000);
    for row in 0..=rows {
        let y_mm = row * depth_m * 1_000;
        drawing.street(
            &[PlanPoint::new(-9_000, off(y_mm)), PlanPoint::new(far_x, off(y_mm))],
            2,
        );
    }
    for column in 0..=columns {
        let x_mm = column * width_m * 1_000;
        drawing.street(
            &[PlanPoint::new(off(x_mm), -9_000), PlanPoint::new(off(x_mm), far_y)],
            2,
        );
    }
    let kinds: Vec<BuildingTypeId> = [
        (2, vec![(FloorUse::Home, 150, 0)]),
        (1, vec![(FloorUse::Home, 90, 0), (FloorUse::Work, 60, 400)]),
        (3, vec![(FloorUse::Home, 240, 0), (FloorUse::Shop, 90, 200)]),
        (0, vec![(FloorUse::Learning, 300, 80)]),
        (0, vec![(FloorUse::Gathering, 100, 50)]),
    ]
    .iter()
    .map(|(homes, floors)| drawing.building_type(*homes, floors))
    .collect();
    for column in 0..columns {
        for row in 0..rows {
            if draws.below(6) > 0 {
                let anchor = at(column * width_m + width_m / 2, row * depth_m + depth_m / 2 + 3);
                let kind = if draws.below(2) == 0 {
                    0
                } else {
                    draws.below(5) as usize
                };
                drawing.paint(anchor, kinds[kind]);
            }
        }
    }
    let mut somewhere = || {
        let x_mm = draws.below(columns as u64 * width_m as u64 * 1_000) as i32;
        let y_mm = draws.below(rows as u64 * depth_m as u64 * 1_000) as i32;
        PlanPoint::new(x_mm, y_mm)
    };
    let bends = [somewhere(), somewhere(), somewhere()];
    drawing.street(&bends, 3);
    drawing.place(PlaceKind::Center, Footprint::Point(somewhere()), Certainty::Existing);
    drawing.place(PlaceKind::Shop, Footprint::Point(somewhere()), Certainty::HopedFor);
    drawing.place(PlaceKind::School, Footprint::Point(somewhere()), Certainty::HopedFor);
    let line = vec![somewhere(), somewhere()];
    drawing.place(PlaceKind::CommunityHall, Footprint::Line(line), Certainty::Committed);
    drawing
}

/// Homes that reach a destination within each knot by asking in the middle of every meter of every front, and how many
/// of them stand so near to the knot's edge that one question can not tell.
fn sampled(walks: &Walks, destination: Destination) -> Vec<(f64, f64)> {
    let network = walks.network();
    let found = if destination == Destination::AllFiveSure {
        &walks.sure
    } else {
        &walks.found
    };
    let needs: Vec<Destination> = match destination {
        Destination::AllFive | Destination::AllFiveSure => Destination::NEEDS.to_vec(),
        one => vec![one],
    };
    let mut homes = vec![(0.0, 0.0); KNOTS_S.len()];
    for front in &walks.homes().fronts {
        let Stretch { link, from_um, to_um } = front.stretch;
        let meters = (front.stretch.length_um() / 1_000_000).max(1);
        let half_um = (to_um - from_um).div_ceil(2 * meters) + 2;
        for meter in 0..meters {
            let along_um = from_um + (to_um - from_um) * (2 * meter + 1) / (2 * meters);
            let place = Location { link, along_um };
            let costs: Option<Vec<u64>> = needs
                .iter()
                .map(|need| walks.search_of(found, *need)?.to.at(network.network(), place))
                .collect();
            let Some(cost) = costs.and_then(|costs| costs.into_iter().max()) else {
                continue;
            };
            let part = front.homes / meters as f64;
            for ((within, unsure), time_s) in homes.iter_mut().zip(KNOTS_S) {
                let limit = time_s * network.cost_per_s();
                if cost <= limit {
                    *within += part;
                }
                if cost.abs_diff(limit) <= half_um {
                    *unsure += part;
                }
            }
        }
    }
    homes
}

/// Oracle. On level ground the cost changes by at most a meter in a meter of street, to one need as to the last of
/// five; so a meter whose middle is farther from the edge than half its length lies wholly on one side, and only the
/// others may be counted wrongly.
#[test]
fn curves_agree_with_homes_asked_every_meter() {
    let (mut reached, mut edges) = (0.0, 0.0);
    for seed in 0..40 {
        let drawing = random_village(seed);
        let walks = drawing.worked().walks;
        let input = walks.input(&drawing.document);
        for destination in Destination::ALL {
            let Ok(exact) = &input.homes_within[destination as usize] else {
                continue;
            };
            for ((exact, (sampled, unsure)), time_s) in exact.iter().zip(sampled(&walks, destination)).zip(KNOTS_S) {
                assert!(
                    (exact - sampled).abs() <= unsure + 1e-6,
                    "seed {seed} {destination:?} within {time_s} s: {exact} against {sampled}, unsure {unsure}"
                );
                reached += exact;
                edges += unsure;
            }
        }
    }
    assert!(reached > 100_000.0, "the villages must hold something: {reached}");
    assert!(
        edges < reached * 0.02,
        "the oracle must tell nearly all homes: {edges} of {reached}"
    );
}

/// The map of the five and the curve are read from the same walks.
#[test]
fn the_map_of_the_five_holds_the_homes_of_the_curve() {
    for seed in 0..30 {
        let drawing = random_village(seed);
        let walks = drawing.worked().walks;
        let input = walks.input(&drawing.document);
        for seconds in [300, 600] {
            let parts = walks.needs_reached(seconds);
            for pair in parts.windows(2) {
                assert!(pair[0].stretch < pair[1].stretch);
            }
            let mut homes = [0.0; Destination::NEEDS.len() + 1];
            for front in &walks.homes().fronts {
                let length_um = front.stretch.length_um();
                let on_link = parts.iter().filter(|part| part.stretch.link == front.stretch.link);
                for part in on_link.filter(|part| (part.stretch.length_um() == 0) == (length_um == 0)) {
                    let from_um = part.stretch.from_um.max(front.stretch.from_um);
                    let to_um = part.stretch.to_um.min(front.stretch.to_um);
                    let share = match length_um {
                        0 => f64::from(u8::from(part.stretch == front.stretch)),
                        _ => to_um.saturating_sub(from_um) as f64 / length_um as f64,
                    };
                    let all = part.needs.iter().all(|reached| *reached);
                    for (sum, reached) in homes.iter_mut().zip(part.needs.into_iter().chain([all])) {
                        *sum += if reached { front.homes * share } else { 0.0 };
                    }
                }
            }
            let knot = KNOTS_S
                .iter()
                .position(|time_s| *time_s == u64::from(seconds))
                .expect("a knot");
            for (sum, destination) in homes
                .iter()
                .zip(Destination::NEEDS.into_iter().chain([Destination::AllFive]))
            {
                let Ok(curve) = &input.homes_within[destination as usize] else {
                    panic!("a need is always known")
                };
                assert!(
                    (sum - curve[knot]).abs() < 1e-4,
                    "seed {seed} {destination:?} within {seconds} s: {sum} against {}",
                    curve[knot]
                );
            }
        }
    }
}

/// A street of 400 m with homes along it, shops at its west end: worked by hand.
#[test]
fn homes_arrive_with_time_along_one_street() {
    let mut drawing = Drawing::new();
    drawing.street(&[at(0, 0), at(400, 0)], 2);
    drawing.street(&[at(0, 0), at(0, 80), at(400, 80), at(400, 0)], 6);
    let homes = drawing.building_type(1, &[(FloorUse::Home, 100, 0)]);
    drawing.paint(at(200, 40), homes);
    drawing.place(PlaceKind::Center, Footprint::Point(at(0, 0)), Certainty::Existing);
    drawing.document.settings.walking_pace_mm_per_s = 1_000;
    let worked = drawing.worked();
    let network = worked.walks.network().network();
    // Where each run of lots begins and ends, in meters from the west end, and its homes.
    let runs: Vec<(f64, f64, f64)> = worked
        .walks
        .homes()
        .fronts
        .iter()
        .map(|front| {
            let Stretch { link, from_um, to_um } = front.stretch;
            let x_m = |along_um| network.position_m(Location { link, along_um }).expect("a place").0;
            let (a, b) = (x_m(from_um), x_m(to_um));
            (a.min(b), a.max(b), front.homes)
        })
        .collect();
    assert!(runs.iter().map(|run| run.2).sum::<f64>() > 30.0, "{runs:?}");
    let input = worked.walks.input(&drawing.document);
    let center = input.homes_within[0].as_ref().expect("a center is drawn");
    for (within, time_s) in center.iter().zip(KNOTS_S) {
        let at_m = time_s as f64;
        let of_run =
            |(from_m, to_m, homes): &(f64, f64, f64)| homes * ((at_m - from_m) / (to_m - from_m)).clamp(0.0, 1.0);
        let by_hand: f64 = runs.iter().map(of_run).sum();
        assert!(
            (within - by_hand).abs() < 1e-6,
            "{time_s} s: {within}, by hand {by_hand}"
        );
    }
    assert_eq!(
        input.homes_within[Destination::Shops as usize],
        Ok(vec![0.0; KNOTS_S.len()])
    );
    assert_eq!(
        input.homes_within[Destination::AllFive as usize],
        Ok(vec![0.0; KNOTS_S.len()])
    );
    assert_eq!(
        input.homes_within[Destination::TransitStop as usize],
        Err("no transit stop is drawn".to_owned())
    );
}

#[test]
fn destinations_that_end_at_the_same_places_share_a_search() {
    let mut drawing = random_village(3);
    drawing.marks().retain(|_, mark| mark.as_place().is_none());
    let alone = drawing.worked().walks.searches.len();
    drawing.place(PlaceKind::School, Footprint::Point(at(10, 10)), Certainty::HopedFor);
    let held = drawing.worked().walks;
    // The school is a place of learning too, and both are hoped for.
    assert!(
        held.searches.len() <= alone + 2,
        "{} after {alone}",
        held.searches.len()
    );
    assert_eq!(
        held.found[Destination::Homes as usize],
        held.sure[Destination::Homes as usize]
    );
}

#[test]
fn what_is_only_hoped_for_is_left_out_of_the_sure_five() {
    let mut drawing = Drawing::blocks(3, 2, 100, 60);
    let homes = drawing.building_type(2, &[(FloorUse::Home, 90, 0), (FloorUse::Work, 40, 500)]);
    drawing.paint(at(50, 30), homes);
    for kind in [PlaceKind::Shop, PlaceKind::School, PlaceKind::CommunityHall] {
        drawing.place(kind, Footprint::Point(at(150, 0)), Certainty::Committed);
    }
    let last = KNOTS_S.len() - 1;
    let all = |drawing: &Drawing| {
        let input = drawing.worked().walks.input(&drawing.document);
        let within = |destination: Destination| input.homes_within[destination as usize].as_ref().expect("needs")[last];
        (within(Destination::AllFive), within(Destination::AllFiveSure))
    };
    let (five, sure) = all(&drawing);
    assert!(five > 10.0 && (five - sure).abs() < 1e-9);
    let each = |drawing: &Drawing| drawing.worked().walks.sure_homes_within(&[300, KNOTS_S[last]]);
    let shops = |each: &[Vec<f64>]| each[2][1];
    let committed = each(&drawing);
    assert_eq!((committed.len(), committed[0].len()), (5, 2));
    assert!((shops(&committed) - five).abs() < 1e-9 && committed.iter().all(|homes| homes[0] <= homes[1]));
    let shop = drawing
        .marks()
        .iter()
        .find_map(|(id, mark)| Some((*id, mark.as_place()?.kind)));
    assert_eq!(shop.map(|(_, kind)| kind), Some(PlaceKind::Shop));
    let (id, _) = shop.expect("a shop");
    if let Some(crate::plan::Mark::Place(place)) = drawing.marks().get_mut(&id) {
        place.certainty = Certainty::HopedFor;
    }
    assert_eq!(all(&drawing), (five, 0.0));
    // Of the needs one by one shops alone are hoped for.
    let hoped_for = each(&drawing);
    assert!(shops(&hoped_for).abs() < 1e-9);
    for need in [0, 1, 3, 4] {
        assert_eq!(hoped_for[need], committed[need]);
    }
}

#[test]
fn walks_brought_up_to_date_equal_walks_from_nothing() {
    let mut renewed: Option<Walks> = None;
    for seed in 0..12 {
        let drawing = random_village(seed);
        let worked = drawing.worked();
        if let Some(walks) = &mut renewed {
            walks
                .renew(
                    &drawing.document,
                    crate::measures::walk::test_plans::FIRST,
                    &worked.fabric,
                    &worked.painted,
                )
                .expect("a network");
            assert_eq!(
                walks.input(&drawing.document),
                worked.walks.input(&drawing.document),
                "seed {seed}"
            );
        }
        renewed.get_or_insert(worked.walks);
    }
}

/// The village with an arterial through it, a railway, and a crossing of each.
fn village_with_obstacles(seed: u64) -> Drawing {
    let mut drawing = random_village(seed);
    let mut draws = Draws(seed + 5);
    let mut along = |most_m: u64| draws.below(most_m * 1_000) as i32;
    let (x_mm, y_mm) = (along(240), along(150));
    drawing.street(
        &[PlanPoint::new(x_mm, -60_000), PlanPoint::new(x_mm + 3_000, 420_000)],
        10,
    );
    drawing.add(Mark::Barrier(Barrier {
        name: "railway".to_owned(),
        line: vec![PlanPoint::new(-70_000, y_mm), PlanPoint::new(700_000, y_mm + 40_000)],
        beside: None,
    }));
    for _ in 0..3 {
        drawing.add(Mark::Crossing(Crossing {
            at: PlanPoint::new(along(240), y_mm + along(20)),
            delay_tenths_s: 90,
        }));
    }
    drawing
}

type Motion = fn(PlanPoint) -> PlanPoint;

/// Moving, mirroring and quarter turns change no home by more than rounding to the millimeter explains: a lot that
/// begins a millimeter elsewhere is some hundredth of a home nearer at the edge of a shed.
#[test]
fn moving_turning_and_mirroring_change_no_curve() {
    for seed in 0..25 {
        let drawing = village_with_obstacles(seed);
        let before = drawing.worked().walks.input(&drawing.document);
        let motions: [(&str, Motion); 4] = [
            ("moved", |p| PlanPoint::new(p.x_mm + 1_234_567, p.y_mm - 7_654_321)),
            ("mirrored", |p| PlanPoint::new(-p.x_mm, p.y_mm)),
            ("turned", |p| PlanPoint::new(-p.y_mm, p.x_mm)),
            ("turned about", |p| PlanPoint::new(-p.x_mm, -p.y_mm)),
        ];
        for (name, motion) in motions {
            let moved = drawing.moved(motion);
            let after = moved.worked().walks.input(&moved.document);
            for (destination, pair) in Destination::ALL
                .iter()
                .zip(before.homes_within.iter().zip(&after.homes_within))
            {
                let (Ok(before), Ok(after)) = pair else {
                    assert_eq!(pair.0, pair.1);
                    continue;
                };
                for ((before, after), time_s) in before.iter().zip(after).zip(KNOTS_S) {
                    assert!(
                        (before - after).abs() < 0.02,
                        "seed {seed} {name}, {destination:?} within {time_s} s: {before} and {after}"
                    );
                }
            }
        }
    }
}

/// A path added anywhere shortens walks or leaves them as they are, waits and barriers included.
#[test]
fn a_new_path_never_lengthens_a_walk() {
    for seed in 0..40 {
        let drawing = village_with_obstacles(seed);
        let mut with_path = drawing.clone();
        with_path.marks().retain(|_, mark| !matches!(mark, Mark::Crossing(_)));
        let drawing = with_path.clone();
        let mut draws = Draws(seed * 3 + 1);
        let mut somewhere = || PlanPoint::new(draws.below(300_000) as i32, draws.below(200_000) as i32);
        let (a, b) = (somewhere(), somewhere());
        with_path.street(&[a, b], 6);
        let (without, with) = (drawing.worked(), with_path.worked());
        // Walk from the middle of one street to the nodes of all others.
        let costs = |worked: &crate::measures::walk::test_plans::Worked, from: PlanPoint| {
            let network = worked.walks.network().network();
            let id = network.node_ids().find(|id| network.node_point(*id) == Some(from))?;
            let mut field = CostField::new();
            field.spread(network, &[Source::node(id)], Direction::From, None).ok()?;
            Some(field)
        };
        // Ends of streets stay nodes, and nothing is parted there, so that a point is one node.
        let ends: Vec<PlanPoint> = drawing
            .document
            .alternatives
            .values()
            .flat_map(|held| held.marks.values())
            .filter_map(|mark| mark.as_street())
            .filter(|street| street.section != crate::plan::StreetSectionId(10))
            .flat_map(|street| [street.line[0].point, street.line[street.line.len() - 1].point])
            .collect();
        let mut compared = 0;
        for &from in &ends {
            let (Some(before), Some(after)) = (costs(&without, from), costs(&with, from)) else {
                continue;
            };
            for &to in &ends {
                let least = |worked: &crate::measures::walk::test_plans::Worked, field: &CostField| {
                    let network = worked.walks.network().network();
                    let at = network.node_ids().filter(|id| network.node_point(*id) == Some(to));
                    at.filter_map(|id| field.at_node(network, id)).min()
                };
                if let Some(cost) = least(&without, &before) {
                    let with = least(&with, &after).expect("a way that was there still is");
                    // Cutting a street moves the cut to whole millimeters.
                    assert!(
                        with <= cost + 40_000,
                        "seed {seed}: {with} with the path, {cost} without"
                    );
                    compared += 1;
                }
            }
        }
        assert!(compared > 20, "seed {seed} compares {compared}");
    }
}
