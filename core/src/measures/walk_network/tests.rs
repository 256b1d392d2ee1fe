use super::*;
use crate::measures::walk::test_plans::{Drawing, at};
use crate::network::{CostField, Direction, Location, Source};
use crate::plan::PlanPoint;
use crate::plan::document::Topography;
use crate::plan::land::{Barrier, Crossing};
use crate::plan::{Mark, MarkId, StreetSectionId};

const NEIGHBORHOOD: u32 = 2;
const ARTERIAL: u32 = 10;
const HIGHWAY: u32 = 11;

fn network(drawing: &Drawing) -> (Fabric, WalkNetwork) {
    let worked = drawing.worked();
    let network = worked.walks.network().clone();
    (worked.fabric, network)
}

/// Place on the fabric's links nearest to a point, which must lie on a street.
fn location(fabric: &Fabric, point: PlanPoint) -> Stretch {
    let foot = fabric.locator.nearest(point).expect("streets");
    let (link, from_um, _) = fabric.links.piece_of(foot.edge.forward()).expect("a street");
    let along_um = if fabric.links.runs_along(foot.edge.forward()) {
        from_um + foot.along_um
    } else {
        from_um + fabric.arrangement.length_um(foot.edge) - foot.along_um
    };
    let place = Location {
        link: LinkId(link),
        along_um,
    };
    place.into()
}

/// Seconds of walking from one point on a street to another; `None` where there is no way.
fn walk_s(drawing: &Drawing, from: PlanPoint, to: PlanPoint) -> Option<f64> {
    let (fabric, network) = network(drawing);
    let on_network = |point| {
        let mut found = None;
        network.for_each_piece(location(&fabric, point), |piece| found = Some(piece));
        found
    };
    let mut field = CostField::new();
    let source = Source::stretch(on_network(to)?);
    field
        .spread(network.network(), &[source], Direction::To, None)
        .expect("a walkable place");
    let from = on_network(from)?;
    let place = Location {
        link: from.link,
        along_um: from.from_um,
    };
    let cost = field.at(network.network(), place)?;
    Some(cost as f64 / network.cost_per_s() as f64)
}

#[track_caller]
fn check_s(drawing: &Drawing, from: PlanPoint, to: PlanPoint, expected_s: Option<f64>) {
    for (a, b) in [(from, to), (to, from)] {
        let found = walk_s(drawing, a, b);
        let agrees = match (found, expected_s) {
            (Some(found), Some(expected)) => (found - expected).abs() < 1e-3,
            (None, None) => true,
            _ => false,
        };
        assert!(agrees, "{a:?} to {b:?}: {found:?} instead of {expected_s:?}");
    }
}

/// A street across another at the origin, at one meter a second.
fn cross(section: u32) -> (Drawing, MarkId) {
    let mut drawing = Drawing::new();
    drawing.document.settings.walking_pace_mm_per_s = 1_000;
    drawing.street(&[at(0, -100), at(0, 100)], NEIGHBORHOOD);
    let across = drawing.street(&[at(-100, 0), at(100, 0)], section);
    (drawing, across)
}

#[test]
fn crossing_a_wide_street_costs_its_wait_and_joining_it_half() {
    let (mut drawing, _) = cross(ARTERIAL);
    check_s(&drawing, at(0, -100), at(0, 100), Some(235.0));
    check_s(&drawing, at(-100, 0), at(100, 0), Some(200.0));
    check_s(&drawing, at(0, -50), at(30, 0), Some(97.5));
    drawing.choose("walk.crossing_wait_wide", 20.0);
    check_s(&drawing, at(0, -100), at(0, 100), Some(220.0));
    let (drawing, _) = cross(NEIGHBORHOOD);
    check_s(&drawing, at(0, -100), at(0, 100), Some(200.0));
}

#[test]
fn a_highway_nobody_walks_along_is_crossed_where_a_street_crosses_it() {
    let (drawing, _) = cross(HIGHWAY);
    check_s(&drawing, at(0, -100), at(0, 100), Some(235.0));
    assert_eq!(walk_s(&drawing, at(0, -100), at(50, 0)), None);
}

#[test]
fn a_drawn_crossing_says_its_own_wait() {
    for (section, wait_s) in [(ARTERIAL, 8.0), (NEIGHBORHOOD, 8.0), (ARTERIAL, 0.0)] {
        let (mut drawing, _) = cross(section);
        drawing.add(Mark::Crossing(Crossing {
            at: at(6, 0),
            delay_tenths_s: (wait_s * 10.0) as u32,
        }));
        check_s(&drawing, at(0, -100), at(0, 100), Some(200.0 + wait_s));
        check_s(&drawing, at(-100, 0), at(100, 0), Some(200.0));
        // Too far to be meant.
        let (mut drawing, _) = cross(section);
        drawing.add(Mark::Crossing(Crossing {
            at: at(16, 0),
            delay_tenths_s: 80,
        }));
        let by_section = if section == ARTERIAL { 35.0 } else { 0.0 };
        check_s(&drawing, at(0, -100), at(0, 100), Some(200.0 + by_section));
    }
}

#[test]
fn a_barrier_cuts_a_street_but_at_a_crossing_or_off_the_ground() {
    let railway = Mark::Barrier(Barrier {
        name: "railway".to_owned(),
        line: vec![at(-50, 40), at(50, 40)],
        beside: None,
    });
    let (mut drawing, _) = cross(NEIGHBORHOOD);
    drawing.add(railway.clone());
    check_s(&drawing, at(0, -100), at(0, 39), Some(139.0));
    check_s(&drawing, at(0, 41), at(0, 100), Some(59.0));
    check_s(&drawing, at(0, -100), at(0, 100), None);
    for wait_s in [25.0, 0.0] {
        let mut open = drawing.clone();
        open.add(Mark::Crossing(Crossing {
            at: at(3, 41),
            delay_tenths_s: (wait_s * 10.0) as u32,
        }));
        check_s(&open, at(0, -100), at(0, 100), Some(200.0 + wait_s));
    }
    // A bridge.
    let bridge = drawing.marks().values_mut().find_map(|mark| match mark {
        Mark::Street(street) => Some(street),
        _ => None,
    });
    bridge.expect("the first street").level = 1;
    check_s(&drawing, at(0, -100), at(0, 100), Some(200.0));
}

#[test]
fn a_barrier_through_an_intersection_parts_its_two_sides() {
    let mut drawing = Drawing::new();
    drawing.document.settings.walking_pace_mm_per_s = 1_000;
    for end in [at(-80, 60), at(80, 60), at(-60, -80), at(0, -100), at(60, -80)] {
        drawing.street(&[at(0, 0), end], NEIGHBORHOOD);
    }
    for line in [vec![at(-90, 0), at(90, 0)], vec![at(90, 0), at(-90, 0)]] {
        let mut parted = drawing.clone();
        parted.add(Mark::Barrier(Barrier {
            name: String::new(),
            line,
            beside: None,
        }));
        check_s(&parted, at(-80, 60), at(80, 60), Some(200.0));
        check_s(&parted, at(-60, -80), at(60, -80), Some(200.0));
        check_s(&parted, at(0, -100), at(60, -80), Some(200.0));
        check_s(&parted, at(0, -100), at(80, 60), None);
        parted.add(Mark::Crossing(Crossing {
            at: at(0, 1),
            delay_tenths_s: 120,
        }));
        check_s(&parted, at(0, -100), at(80, 60), Some(212.0));
    }
}

#[test]
fn pieces_of_a_cut_street_make_up_the_street() {
    let mut drawing = Drawing::new();
    drawing.street(&[at(0, 0), at(60, 0), at(100, 30), at(200, 30)], NEIGHBORHOOD);
    for x_m in [20, 80, 150] {
        drawing.add(Mark::Barrier(Barrier {
            name: String::new(),
            line: vec![at(x_m, -50), at(x_m, 90)],
            beside: None,
        }));
    }
    let (fabric, network) = network(&drawing);
    let length_um = fabric.links.links[0].length_um;
    assert_eq!(length_um, 210_000_000);
    let pieces_of = |from_um, to_um| {
        let mut pieces = Vec::new();
        let link = LinkId(0);
        network.for_each_piece(Stretch { link, from_um, to_um }, |piece| pieces.push(piece));
        pieces
    };
    let lengths: Vec<u64> = pieces_of(0, length_um)
        .iter()
        .map(|piece| piece.length_um() / 1_000)
        .collect();
    assert_eq!(lengths, [20_000, 65_000, 75_000, 50_000]);
    assert_eq!(network.network().length_um(), length_um);
    let parts = pieces_of(10_000_000, 90_000_000);
    assert_eq!(
        parts.iter().map(|part| (part.from_um, part.to_um)).collect::<Vec<_>>(),
        [(10_000_000, 20_000_000), (0, 65_000_000), (0, 5_000_000)]
    );
    // A place is in one piece, also on a cut and at the end.
    for along_um in [0, 20_000_000, 33_000_000, length_um] {
        assert_eq!(pieces_of(along_um, along_um).len(), 1, "{along_um}");
    }
    let at_cut = pieces_of(20_000_000, 20_000_000)[0];
    let place = Location {
        link: at_cut.link,
        along_um: at_cut.from_um,
    };
    assert_eq!(network.network().point_at(place), Some(at(20, 0)));
}

/// Check case W-A2, derived from Tobler's function ("Tobler's hiking function"; W. Tobler, NCGIA technical report 93-1,
/// 1993): 400 m at 5 % up 340.6 s, down 240.0 s for who walks 5.0367 km/h on level ground.
#[test]
fn w_a2_up_and_down_a_street_on_sloping_ground() {
    let mut drawing = Drawing::new();
    drawing.street(&[at(0, 0), at(400, 0)], NEIGHBORHOOD);
    drawing.document.settings.walking_pace_mm_per_s = 1_399;
    drawing.document.topography = Some(Topography {
        south_west: at(0, -50),
        spacing_mm: 100_000,
        columns: 5,
        heights_mm: [0, 5_000, 10_000, 15_000, 20_000].repeat(2),
        source: "made up".to_owned(),
    });
    let up = walk_s(&drawing, at(0, 0), at(400, 0)).expect("a street");
    let down = walk_s(&drawing, at(400, 0), at(0, 0)).expect("a street");
    // 1.399 m/s is the level speed to the millimeter, 1.39908 m/s.
    assert!((up - 340.6).abs() <= 0.1 && (down - 240.0).abs() <= 0.1, "{up} {down}");
    // Who can walk to the lower end, and back: the way up is the worse.
    let homes = drawing.building_type(1, &[(crate::plan::FloorUse::Home, 100, 0)]);
    drawing.street(&[at(0, 0), at(0, 80), at(400, 80), at(400, 0)], 6);
    drawing.paint(at(200, 40), homes);
    drawing.place(
        crate::plan::PlaceKind::Center,
        crate::plan::Footprint::Point(at(0, 0)),
        crate::plan::Certainty::Existing,
    );
    let walks = drawing.worked().walks;
    let input = walks.input(&drawing.document);
    let center = input.homes_within[0].as_ref().expect("a center");
    let all: f64 = walks.homes().fronts.iter().map(|front| front.homes).sum();
    let within = |seconds: u64| {
        let knot = crate::measures::walk::KNOTS_S.iter().position(|knot| *knot == seconds);
        center[knot.expect("a knot")]
    };
    assert!(
        within(300) < all * 0.999 && (within(350) - all).abs() < 1e-6,
        "{center:?}"
    );
    let reach = walks.reach(crate::measures::walk::destinations::Destination::Center, 240);
    let reached_m = reach
        .on_link(location(&drawing.worked().fabric, at(200, 0)).link)
        .iter()
        .map(|piece| piece.length_um())
        .sum::<u64>() as f64
        / 1e6;
    assert!((reached_m - 400.0 * 240.0 / up).abs() < 0.5, "{reached_m}");
}

#[test]
fn lengths_alone_have_neither_slope_nor_waits() {
    let (mut drawing, _) = cross(ARTERIAL);
    drawing.add(Mark::Barrier(Barrier {
        name: String::new(),
        line: vec![at(-50, 40), at(50, 40)],
        beside: None,
    }));
    drawing.add(Mark::Crossing(Crossing {
        at: at(0, 40),
        delay_tenths_s: 300,
    }));
    drawing.document.topography = Some(Topography {
        south_west: at(-100, -100),
        spacing_mm: 200_000,
        columns: 2,
        heights_mm: vec![0, 20_000, 0, 20_000],
        source: "made up".to_owned(),
    });
    let worked = drawing.worked();
    let alternative = crate::measures::walk::test_plans::FIRST;
    let lengths = WalkNetwork::of_lengths(&drawing.document, alternative, &worked.fabric).expect("a network");
    let south = location(&worked.fabric, at(0, -100));
    let north = location(&worked.fabric, at(0, 100));
    let mut ends = Vec::new();
    for end in [south, north] {
        lengths.for_each_piece(end, |piece| ends.push(piece));
    }
    let mut field = CostField::new();
    field
        .spread(lengths.network(), &[Source::stretch(ends[0])], Direction::To, None)
        .expect("a street");
    let place = Location {
        link: ends[1].link,
        along_um: ends[1].from_um,
    };
    let cost = field.at(lengths.network(), place).expect("a crossing");
    // A crossing without a wait is a link of a micrometer.
    assert!(cost.abs_diff(200_000_000) <= 3, "{cost}");
}

#[test]
fn a_street_without_a_walk_at_speed_is_not_walked() {
    let (mut drawing, across) = cross(NEIGHBORHOOD);
    assert!(walk_s(&drawing, at(-100, 0), at(0, 100)).is_some());
    let mut bare = drawing.document.street_sections[&StreetSectionId(NEIGHBORHOOD)].clone();
    bare.strips
        .retain(|strip| strip.kind != crate::plan::street::StripKind::Walk);
    bare.target_speed_km_h = 50;
    drawing.document.street_sections.insert(StreetSectionId(77), bare);
    if let Some(Mark::Street(street)) = drawing.marks().get_mut(&across) {
        street.section = StreetSectionId(77);
    }
    assert_eq!(walk_s(&drawing, at(-100, 0), at(0, 100)), None);
    check_s(&drawing, at(0, -100), at(0, 100), Some(200.0));
}
