//! Details made up for tests of the figures, and details of small plans by slower ways.

use super::*;
use crate::figures::Evaluation;
use crate::measures::tests::{evaluated, village};
use crate::measures::walk::test_plans::{Drawing, FIRST, Worked, at};
use crate::measures::walk::walks::tests::random_village;
use crate::network::{CostField, Direction, Location, Source};
use crate::plan::building::FloorUse;
use crate::plan::{Certainty, Footprint, PlaceKind};

fn details(drawing: &Drawing) -> (Worked, WalkDetails) {
    let worked = drawing.worked();
    let Worked { fabric, painted, walks } = &worked;
    let held = WalkDetails::of(&drawing.document, FIRST, fabric, painted, walks);
    (worked, held)
}

fn number(cells: &[Cell], place: usize) -> f64 {
    cells[place].number().expect("a number")
}

/// Details of an invented village.
pub(crate) fn made_up() -> WalkDetails {
    let cells = |numbers: &[f64]| numbers.iter().map(|number| Cell::Number(*number)).collect::<Vec<_>>();
    WalkDetails {
        shed_areas_m2: cells(&[140_000.0, 310_000.0, 230_000.0, 910_000.0, 190_000.0, 620_000.0]),
        circles: cells(&[1.0]),
        drawn_center_homes: cells(&[150.0]),
        best_center: Some(PlanPoint::new(120_000, -45_500)),
        best_center_homes: cells(&[171.5]),
        directness_homes: cells(&[190.0, 12.0, 180.5, 200.0, 201.0, 203.25]),
        directness_sums: cells(&[247.0, 14.5, 230.0, 260.0, 270.5, 280.0]),
        directness_most_of: cells(&[1.41, 1.3, 1.52, 1.4, 1.45, 1.6]),
        indirect_fronts: vec![
            IndirectFront {
                title: "Mill Street at 40 m east, 12 m north".to_owned(),
                line: vec![PlanPoint::new(20_000, 12_000), PlanPoint::new(60_000, 12_000)],
                directness: 2.31,
                homes: 11.0,
            },
            IndirectFront {
                title: "front at -80 m east, 12 m north".to_owned(),
                line: vec![PlanPoint::new(-90_000, 12_000), PlanPoint::new(-70_000, 12_000)],
                directness: 1.97,
                homes: 4.5,
            },
        ],
        walks_by_link: vec![310.0, 25.0],
        busiest_segment: Some(("Mill Street at 0 m east, 12 m north".to_owned(), 310.0)),
        busiest_line: vec![PlanPoint::new(-40_000, 12_000), PlanPoint::new(40_000, 12_000)],
        walked_m: cells(&[84_000.0, 31_000.0]),
        mix_homes: cells(&[214.0, 214.0]),
        mix_sums: cells(&[75.0, 96.0]),
        mixed_fronts: vec![MixedFront {
            line: vec![PlanPoint::new(20_000, 12_000), PlanPoint::new(60_000, 12_000)],
            evenness: 0.375,
            homes: 12.0,
        }],
        needs_reached: cells(&[520.0, 840.0]),
        sure_needs: cells(&[214.0, 214.0, 92.0, 190.5, 0.0, 0.0, 80.0, 130.0, 41.0, 121.0]),
        cells: cells(&[14.0]),
        unlike_neighbors: cells(&[2.625]),
    }
}

fn circles(base_speed_m_per_s: f64) -> [f64; 2] {
    let mut measured = village();
    measured.walk.base_speed_m_per_s = base_speed_m_per_s;
    let evaluation: Evaluation = evaluated(&measured);
    let index = evaluation.graph().index("walk.shed_circle_area").expect("the figure");
    [0, 1].map(|cell| evaluation.cell(index, cell).number().expect("a number"))
}

/// Check cases W-A3, 5 minutes at 3 miles an hour are a quarter mile (R. Ewing, "Pedestrian- and Transit-Friendly
/// Design", abstract page), and W-A5, derived: its circle is 125.66 acres or 50.85 ha, that of 400 m 50.27 ha.
#[test]
fn w_a3_and_w_a5_the_circle_of_a_walk() {
    let three_miles_an_hour = 3.0 * 1_609.344 / 3_600.0;
    let [five, ten] = circles(three_miles_an_hour);
    let radius_miles = (five / std::f64::consts::PI).sqrt() / 1_609.344;
    assert!((radius_miles - 0.25).abs() < 1e-12);
    assert!((five / 4_046.856_422_4 - 125.66).abs() < 0.01, "{five}");
    assert!((five / 1e4 - 50.85).abs() < 0.01, "{five}");
    assert!((ten / five - 4.0).abs() < 1e-12);
    let [four_hundred, _] = circles(400.0 / 300.0);
    assert!((four_hundred / 1e4 - 50.27).abs() < 0.01, "{four_hundred}");
}

/// Homes on a network within a cost of a place, by asking from it in the middle of every half meter of every front.
fn homes_within(walks: &Walks, from: Location, limit: u64) -> f64 {
    let network = walks.network().network();
    let mut field = CostField::new();
    field
        .spread(network, &[Source::location(from)], Direction::To, Some(limit))
        .expect("a place on a street");
    let mut homes = 0.0;
    for front in &walks.homes().fronts {
        for place in standing::sampled(front.stretch, front.homes, 500_000) {
            if field.at(network, place.at).is_some_and(|cost| cost <= limit) {
                homes += place.homes;
            }
        }
    }
    homes
}

/// No place on any street has more homes around it than the best point, but for what lies between two candidates.
#[test]
fn the_best_center_is_best_of_all_places_tried() {
    for seed in 0..6 {
        // A short walk, so that no place reaches everything.
        let drawing = random_village(seed);
        let worked = drawing.worked();
        let walks = &worked.walks;
        let held = walks.network().network();
        let standing = standing::Standing::of(&worked.painted, walks.network());
        let seconds = 90;
        let limit = seconds * walks.network().cost_per_s();
        let best = best_center::best_center(walks.network(), &standing, seconds).expect("homes");
        let mut most = 0.0_f64;
        let mut at_best: Option<f64> = None;
        for (link, held_link) in held.link_ids().zip(held.links()) {
            let parts = held_link.length_um.div_ceil(best_center::LONGEST_PART_UM);
            for part in 0..=parts {
                let place = Location {
                    link,
                    along_um: held_link.length_um * part / parts,
                };
                let homes = homes_within(walks, place, limit);
                most = most.max(homes);
                if held.point_at(place) == Some(best.at) {
                    at_best = Some(homes);
                }
            }
        }
        let at_best = at_best.expect("the best point is a candidate");
        // A front is asked at every half meter, so each of some forty edges of a shed may be off by a part of a home.
        assert!(
            (best.homes - at_best).abs() < 0.03 * most,
            "seed {seed}: {best:?}, asked {at_best}"
        );
        assert!(best.homes >= most * 0.97, "seed {seed}: {best:?}, elsewhere {most}");
    }
}

/// Directness of every home by the straight distance to points close together along all sources, and never below 1.
#[test]
fn directness_agrees_with_points_along_the_sources() {
    for seed in 0..8 {
        let drawing = random_village(seed);
        let worked = drawing.worked();
        let Worked { fabric, painted, walks } = &worked;
        let lengths = crate::measures::walk_network::WalkNetwork::of_lengths(&drawing.document, FIRST, fabric)
            .expect("a network");
        let network = lengths.network();
        let ends =
            crate::measures::walk::sources::ends(&drawing.document, FIRST, fabric, painted, walks.fronts(), &lengths);
        let homes: Vec<standing::HomePlace> = walks
            .homes()
            .fronts
            .iter()
            .flat_map(|front| standing::sampled(front.stretch, front.homes, directness::LONGEST_PART_UM))
            .collect();
        for destination in TO {
            let sources: Vec<Source> = ends[destination as usize]
                .all
                .iter()
                .map(|held| held.starting_at(0))
                .collect();
            let mut points: Vec<(f64, f64)> = Vec::new();
            for source in &sources {
                let crate::network::SourcePlace::Stretch(stretch) = source.place else {
                    continue;
                };
                for place in standing::sampled(stretch, 1.0, 20_000) {
                    points.extend(network.position_m(place.at));
                }
            }
            let ratios = directness::ratios(&lengths, &sources, &homes);
            assert!(seed > 0 || destination != Destination::Center || !ratios.is_empty());
            for (ratio, place) in ratios {
                assert!(ratio >= 1.0 - 1e-3, "seed {seed}, {destination:?}: {ratio}");
                let (x, y) = network.position_m(place.at).expect("a place");
                let distances = points
                    .iter()
                    .map(|point| crate::number::length(point.0 - x, point.1 - y));
                let straight_m = distances.fold(f64::INFINITY, f64::min);
                let mut field = CostField::new();
                field.spread(network, &sources, Direction::To, None).expect("sources");
                let walk_m = field.at(network, place.at).expect("reached") as f64 / 1e6;
                // Points lie 2 cm apart, so the nearest is at most a centimeter off along the street.
                let slack = 2e-2 / straight_m;
                assert!(
                    (ratio - walk_m / straight_m).abs() <= ratio * slack,
                    "seed {seed}, {destination:?}: {ratio}, by points {}",
                    walk_m / straight_m
                );
            }
        }
    }
}

/// One small block whose every front is within five minutes of every other: what homes reach is all there is.
#[test]
fn a_small_block_reaches_all_of_itself() {
    let mut drawing = Drawing::blocks(2, 1, 100, 80);
    let mixed = drawing.building_type(2, &[(FloorUse::Home, 200, 0), (FloorUse::Shop, 100, 200)]);
    let work = drawing.building_type(0, &[(FloorUse::Work, 150, 400)]);
    drawing.paint(at(50, 40), mixed);
    drawing.paint(at(150, 40), work);
    drawing.place(PlaceKind::Center, Footprint::Point(at(100, 0)), Certainty::Existing);
    let (worked, held) = details(&drawing);
    let homes: f64 = worked.walks.homes().fronts.iter().map(|front| front.homes).sum();
    assert!(homes >= 20.0);
    let lots = |id| -> f64 {
        let lots = worked.painted.iter().flat_map(|face| &face.lots);
        lots.filter(|(held, _)| *held == id).map(|(_, lots)| lots).sum()
    };
    let (mixed_lots, work_lots) = (lots(mixed), lots(work));
    let floor = [200.0 * mixed_lots, 150.0 * work_lots, 100.0 * mixed_lots, 0.0, 0.0];
    let mut evenness = [0.0];
    (crate::measures::mix::EVENNESS.evaluate)(&[&floor], &mut evenness).expect("floor");
    for walk in [0, 1] {
        assert!((number(&held.mix_homes, walk) - homes).abs() < 1e-9);
        assert!((number(&held.mix_sums, walk) / homes - evenness[0]).abs() < 1e-9);
    }
    // Front by front it is the same, and every home fronts somewhere.
    let fronted: f64 = held.mixed_fronts.iter().map(|front| front.homes).sum();
    assert!((fronted - homes).abs() < 1e-9 && held.mixed_fronts.len() > 1);
    for front in &held.mixed_fronts {
        assert!((front.evenness - evenness[0]).abs() < 1e-9 && front.line.len() > 1);
    }
    // Homes, work and shops are there, learning and gathering are not.
    assert!((number(&held.needs_reached, 0) - 3.0 * homes).abs() < 1e-6);
    assert!((number(&held.drawn_center_homes, 0) - homes).abs() < 1e-9);
    assert!((number(&held.best_center_homes, 0) - homes).abs() < 1e-9);
    // All lots are reached, so their land is the area by frontages.
    let land_m2: f64 = worked
        .painted
        .iter()
        .flat_map(|face| &face.lot_land_m2)
        .map(|(_, land)| land)
        .sum();
    assert!((number(&held.shed_areas_m2, 0) - land_m2).abs() < 1e-6 * land_m2);
    // The hull of the streets is their rectangle; the band goes 25 m around it, with round corners.
    assert!((number(&held.shed_areas_m2, 2) - 200.0 * 80.0).abs() < 1e-6);
    let band = 250.0 * 130.0 - (4.0 - std::f64::consts::PI) * 625.0 - 2.0 * 50.0 * 30.0;
    assert!(
        (number(&held.shed_areas_m2, 4) - band).abs() < 1.0,
        "{:?}",
        held.shed_areas_m2
    );
}

/// A straight street is as long as the line, and all who live on it walk along the piece to the one shop.
#[test]
fn along_one_street_walks_are_straight() {
    let mut drawing = Drawing::new();
    drawing.street(&[at(0, 0), at(400, 0)], 2);
    for (from, to) in [
        (at(0, 0), at(0, 100)),
        (at(0, 100), at(400, 100)),
        (at(400, 100), at(400, 0)),
    ] {
        drawing.street(&[from, to], 2);
    }
    let homes = drawing.building_type(1, &[(FloorUse::Home, 120, 0)]);
    drawing.paint(at(200, 50), homes);
    drawing.place(PlaceKind::Center, Footprint::Point(at(0, 0)), Certainty::Existing);
    drawing.place(PlaceKind::Shop, Footprint::Point(at(0, 0)), Certainty::Existing);
    let (worked, held) = details(&drawing);
    // Of the whole ring no walk is longer than two sides of a right angle by its hypotenuse.
    assert!(number(&held.directness_most_of, 0) <= std::f64::consts::SQRT_2 + 1e-6);
    assert!(number(&held.directness_sums, 0) > number(&held.directness_homes, 0));
    assert_eq!(held.circles, [Cell::Number(1.0)]);
    assert!(!held.indirect_fronts.is_empty() && held.indirect_fronts.len() <= directness::MOST_FRONTS);
    assert!(
        held.indirect_fronts
            .windows(2)
            .all(|pair| pair[0].directness >= pair[1].directness)
    );
    let (title, walks) = held.busiest_segment.expect("people walk");
    assert!(title.starts_with("segment at "));
    let most = held.walks_by_link.iter().copied().fold(0.0, f64::max);
    assert!((walks - most).abs() < 1e-9);
    assert!(held.busiest_line.len() >= 2, "it has a place: {:?}", held.busiest_line);
    // Everybody else walks to the shop over one of the two streets that meet there.
    let all: f64 = worked.walks.homes().fronts.iter().map(|front| front.homes).sum();
    let network = worked.walks.network().network();
    let corner = network
        .node_ids()
        .find(|node| network.node_point(*node) == Some(at(0, 0)));
    let meeting = network.links().iter().zip(&held.walks_by_link);
    let into: f64 = meeting
        .filter(|(link, _)| Some(link.from) == corner || Some(link.to) == corner)
        .map(|(_, walks)| walks)
        .sum();
    assert!((into - all).abs() < 1e-6, "{into} of {all}");
}

/// A hull around two centers far apart would take the land between them, and a circle is drawn around one.
#[test]
fn several_centers_have_neither_hull_nor_circle() {
    let mut drawing = Drawing::blocks(2, 1, 120, 80);
    let homes = drawing.building_type(1, &[(FloorUse::Home, 120, 0)]);
    drawing.paint(at(60, 40), homes);
    drawing.place(PlaceKind::Center, Footprint::Point(at(0, 0)), Certainty::Existing);
    let (_, one) = details(&drawing);
    assert!(one.shed_areas_m2.iter().all(|area| area.number().is_some()));
    drawing.place(PlaceKind::Center, Footprint::Point(at(240, 0)), Certainty::Existing);
    let (_, two) = details(&drawing);
    let told: Vec<bool> = two.shed_areas_m2.iter().map(|area| area.number().is_some()).collect();
    assert_eq!(told, [true, true, false, false, true, true]);
    assert_eq!(two.circles[0], two.shed_areas_m2[2]);
}

#[test]
fn without_a_center_or_homes_the_details_say_so() {
    let (_, held) = details(&Drawing::new());
    let reason = "no neighborhood center is drawn";
    assert_eq!(held.shed_areas_m2[0], Cell::Unknown(reason.to_owned()));
    assert_eq!(held.circles[0], Cell::Unknown(reason.to_owned()));
    assert_eq!(held.directness_sums[0], Cell::Unknown(reason.to_owned()));
    assert_eq!(held.directness_sums[3], Cell::Unknown("no shops are drawn".to_owned()));
    assert_eq!(held.best_center, None);
    assert!(held.indirect_fronts.is_empty() && held.busiest_segment.is_none());
    assert!(held.busiest_line.is_empty());
    assert_eq!(held.cells, [Cell::Unknown("no floor area is drawn".to_owned())]);
    let mut measured = village();
    measured.details = Some(held);
    let evaluation = evaluated(&measured);
    for id in [
        "walk.worst_directness",
        "walk.best_center_5min_homes",
        "walk.busiest_segment_walks",
    ] {
        assert!(matches!(evaluation.value(id), Some(Cell::Unknown(_))), "{id}");
    }
}
