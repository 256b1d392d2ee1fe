//! Streets and blocks: what no way of laying a plan down may change, what doubles with it, and an oracle for what hangs on
//! a single street or crossing.

use std::collections::BTreeMap;

use hobnail_core::measures::streets::StreetInputs;
use hobnail_core::network::bridges::behind;
use hobnail_core::network::counting_rule::COUNTING_RULES;
use hobnail_core::plan::land::{Hand, Portion, SiteAccess};
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    AlternativeId, BuildingTypeId, Document, Mark, MarkId, PlanPoint, Street, StreetRole, StreetSectionId, UseMark,
    Vertex,
};
use hobnail_core::study::Study;

use crate::cases;
use crate::random::Random;

const ONLY: AlternativeId = AlternativeId(0);

/// Nodes of the lattice along each side.
const SIDE: usize = 6;

const SPACING_MM: i32 = 110_000;

/// Figures of streets and blocks whose numbers are sums over the drawing.
const DOUBLING: [&str; 13] = [
    "streets.length_by_section",
    "streets.length_by_way",
    "streets.intersections",
    "streets.counted_links",
    "streets.dead_ends",
    "streets.dead_end_length",
    "streets.ways_in_and_out",
    "streets.ways_over_streets",
    "streets.homes_not_reached_in_front",
    "streets.frontage",
    "streets.parts",
    "blocks.count",
    "blocks.perimeter_total",
];

/// Figures of streets and blocks that a second, separate copy of the drawing leaves as they are.
const STAYING: [&str; 9] = [
    "streets.length_per_home",
    "streets.link_node_ratio",
    "streets.connected_node_ratio",
    "streets.most_homes_behind_one",
    "streets.longest_dead_end",
    "streets.frontage_share",
    "blocks.perimeter_median",
    "blocks.perimeter_longest",
    "blocks.length_longest",
];

pub fn street(line: Vec<PlanPoint>, section: u32, role: StreetRole, is_outside: bool) -> Mark {
    Mark::Street(Street {
        line: line.into_iter().map(Vertex::at).collect(),
        section: StreetSectionId(section),
        name: String::new(),
        role,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside,
        level: 0,
        phase: None,
    })
}

/// Streets, alleys and paths between neighbors on a lattice, some missing, with dead ends, a road outside, homes and an
/// access; with a boundary around where `bounded`.
fn random_plan(random: &mut Random, bounded: bool) -> Document {
    let points: Vec<PlanPoint> = (0..SIDE * SIDE)
        .map(|node| {
            let at = |step: usize, random: &mut Random| step as i32 * SPACING_MM + random.within(-9_000, 9_000);
            PlanPoint::new(at(node % SIDE, random), at(node / SIDE, random))
        })
        .collect();
    let mut marks = Vec::new();
    for node in 0..SIDE * SIDE {
        let east = (node % SIDE + 1 < SIDE).then_some(node + 1);
        let north = (node / SIDE + 1 < SIDE).then_some(node + SIDE);
        for other in [east, north].into_iter().flatten() {
            let (section, role) = match random.below(12) {
                0..=2 => continue,
                3 => (5, StreetRole::Alley),
                4 => (6, StreetRole::Path),
                5 => (0, StreetRole::Thoroughfare),
                6 => (4, StreetRole::Lane),
                _ => (2, StreetRole::NeighborhoodStreet),
            };
            marks.push(street(vec![points[node], points[other]], section, role, false));
        }
        if random.one_in(6) {
            let head = PlanPoint::new(
                points[node].x_mm + random.within(15_000, 40_000),
                points[node].y_mm + 35_000,
            );
            marks.push(street(
                vec![points[node], head],
                3,
                StreetRole::NeighborhoodStreet,
                false,
            ));
        }
    }
    // A road outside to the south; some streets lead down to it.
    let road = |x_mm: i32| PlanPoint::new(x_mm, -SPACING_MM);
    let far = SIDE as i32 * SPACING_MM;
    let mut line = vec![road(-SPACING_MM)];
    for point in points.iter().take(SIDE) {
        line.push(road(point.x_mm));
        if random.one_in(3) {
            marks.push(street(
                vec![*point, road(point.x_mm)],
                2,
                StreetRole::NeighborhoodStreet,
                false,
            ));
        }
    }
    line.push(road(far));
    marks.push(street(line, 0, StreetRole::Thoroughfare, true));
    for _ in 0..8 {
        marks.push(Mark::Use(UseMark {
            anchor: PlanPoint::new(random.within(0, far - SPACING_MM), random.within(0, far - SPACING_MM)),
            program: vec![Portion {
                building_type: BuildingTypeId(random.below(4) as u32),
                share_ppm: 1_000_000,
            }],
            land_m2: 0,
            sides: Vec::new(),
            phase: None,
        }));
    }
    marks.push(Mark::SiteAccess(SiteAccess {
        name: "North gate".to_owned(),
        at: points[SIDE * SIDE - 1],
        outside_trips_ppm: None,
    }));
    let origin = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    let mut document = Document::new("Random", origin);
    if bounded {
        let (low, high) = (-40_000, far - SPACING_MM + 25_000);
        document.site.boundary = [(low, low), (high, low), (high, high), (low, high)]
            .map(|(x, y)| PlanPoint::new(x, y))
            .into();
    }
    lay(&mut document, marks);
    document
}

fn lay(document: &mut Document, marks: Vec<Mark>) {
    document.alternatives.get_mut(&ONLY).unwrap().marks = (0..).map(MarkId).zip(marks).collect();
}

/// Where every point of a plan goes.
type Leading = Box<dyn Fn(PlanPoint) -> PlanPoint>;

/// The document with every point led elsewhere; a mirror exchanges left and right.
fn led(document: &Document, is_mirror: bool, to: impl Fn(PlanPoint) -> PlanPoint) -> Document {
    let mut led = document.clone();
    for point in &mut led.site.boundary {
        *point = to(*point);
    }
    for mark in led.alternatives.get_mut(&ONLY).unwrap().marks.values_mut() {
        match mark {
            Mark::Street(street) => {
                for vertex in &mut street.line {
                    vertex.point = to(vertex.point);
                }
            }
            Mark::Use(held) => {
                held.anchor = to(held.anchor);
                for side in &mut held.sides {
                    side.at = to(side.at);
                    if is_mirror {
                        side.hand = match side.hand {
                            Hand::Left => Hand::Right,
                            Hand::Right => Hand::Left,
                        };
                    }
                }
            }
            Mark::SiteAccess(access) => access.at = to(access.at),
            _ => {}
        }
    }
    led
}

/// Every figure of streets and blocks that does not tell where something is, by id: its cells, with reasons where there is
/// no number. Tables over places are taken in order of size.
fn figures(study: &Study) -> BTreeMap<String, Vec<Result<f64, String>>> {
    let evaluation = study.evaluation();
    let mut figures = BTreeMap::new();
    for index in evaluation.graph().indices() {
        let id = &evaluation.graph().node(index).id;
        if !id.starts_with("streets.") && !id.starts_with("blocks.") {
            continue;
        }
        let listed = ["block", "dead_end", "way_in", "single_place", "street_part"];
        let axes = &evaluation.graph().node(index).axes;
        let is_listed = axes
            .iter()
            .any(|axis| listed.contains(&evaluation.graph().axis(*axis).id.as_str()));
        let mut cells: Vec<Result<f64, String>> = evaluation
            .cells(index)
            .into_iter()
            .map(|cell| match cell {
                hobnail_core::figures::Cell::Number(number) => Ok(number),
                hobnail_core::figures::Cell::Unknown(reason) => Err(reason),
            })
            .collect();
        if is_listed {
            cells.sort_by(|a, b| a.as_ref().unwrap_or(&-1.0).total_cmp(b.as_ref().unwrap_or(&-1.0)));
        }
        figures.insert(id.clone(), cells);
    }
    figures
}

#[track_caller]
fn check_alike(
    before: &BTreeMap<String, Vec<Result<f64, String>>>,
    after: &BTreeMap<String, Vec<Result<f64, String>>>,
    what: &str,
) {
    for (id, cells) in before {
        let others = &after[id];
        let alike = cells.len() == others.len()
            && cells.iter().zip(others).all(|pair| match pair {
                (Ok(a), Ok(b)) => (a - b).abs() <= 1e-6 * a.abs().max(1.0),
                (Err(a), Err(b)) => a == b,
                _ => false,
            });
        assert!(alike, "{what}: {id} was {cells:?} and is {others:?}");
    }
}

#[test]
fn moving_mirroring_and_turning_change_no_figure_of_streets_and_blocks() {
    let mut blocks = 0.0;
    for seed in 0..cases(24) {
        let mut random = Random(seed);
        let document = random_plan(&mut random, seed % 2 == 0);
        let before = figures(&Study::open(document.clone()).unwrap());
        blocks += before["blocks.count"][0].as_ref().unwrap();
        let (dx, dy) = (
            random.within(-5_000_000, 5_000_000),
            random.within(-5_000_000, 5_000_000),
        );
        let ways: [(&str, bool, Leading); 4] = [
            (
                "moved",
                false,
                Box::new(move |p| PlanPoint::new(p.x_mm + dx, p.y_mm + dy)),
            ),
            ("mirrored", true, Box::new(|p| PlanPoint::new(-p.x_mm, p.y_mm))),
            ("turned a quarter", false, Box::new(|p| PlanPoint::new(-p.y_mm, p.x_mm))),
            ("mirrored across", true, Box::new(|p| PlanPoint::new(p.y_mm, p.x_mm))),
        ];
        for (what, is_mirror, to) in ways {
            let after = figures(&Study::open(led(&document, is_mirror, to)).unwrap());
            check_alike(&before, &after, &format!("seed {seed}, {what}"));
        }
    }
    assert!(blocks > 100.0, "only {blocks} blocks");
}

#[test]
fn doubling_the_drawing_doubles_what_is_counted() {
    let mut with_dead_ends = 0;
    for seed in 100..100 + cases(12) {
        let mut random = Random(seed);
        let mut document = random_plan(&mut random, false);
        let once = figures(&Study::open(document.clone()).unwrap());
        let copy = led(&document, false, |p| PlanPoint::new(p.x_mm + 5_000_000, p.y_mm));
        let marks = |document: &Document| document.alternatives[&ONLY].marks.values().cloned().collect::<Vec<_>>();
        let both = [marks(&document), marks(&copy)].concat();
        lay(&mut document, both);
        let twice = figures(&Study::open(document).unwrap());
        let numbers = |figures: &BTreeMap<String, Vec<Result<f64, String>>>, id: &str, times: f64| {
            let cells = figures[id].iter().map(|cell| cell.clone().map(|number| number * times));
            BTreeMap::from([(id.to_owned(), cells.collect::<Vec<_>>())])
        };
        for id in DOUBLING {
            check_alike(
                &numbers(&once, id, 2.0),
                &numbers(&twice, id, 1.0),
                &format!("seed {seed}"),
            );
        }
        for id in STAYING {
            check_alike(
                &numbers(&once, id, 1.0),
                &numbers(&twice, id, 1.0),
                &format!("seed {seed}"),
            );
        }
        with_dead_ends += i32::from(once["streets.dead_ends"][0].as_ref().unwrap() > &0.0);
    }
    assert!(with_dead_ends > 6, "{with_dead_ends}");
}

/// What is counted for the drawing is what the figures say.
#[test]
fn the_places_shown_are_those_counted() {
    for seed in 200..200 + cases(8) {
        let study = Study::open(random_plan(&mut Random(seed), true)).unwrap();
        let counted: StreetInputs = study.street_places();
        let evaluation = study.evaluation();
        let number = |id: &str, cell: usize| {
            let index = evaluation.graph().index(id).unwrap();
            evaluation.cell(index, cell).number()
        };
        for (cell, rule) in COUNTING_RULES.iter().enumerate() {
            let heads = number("streets.counted_heads", cell).unwrap_or(0.0);
            let nodes = number("streets.intersections", cell).unwrap() + heads;
            let points = counted.counted_points(rule.id);
            assert!((points.len() as f64 - nodes).abs() < 0.5, "seed {seed}, {}", rule.id);
        }
        let worst = counted.worst_place().map(|place| place.count);
        assert_eq!(worst, number("streets.most_homes_behind_one", 0), "seed {seed}");
        let longest = counted.longest_block().map(|block| block.perimeter_m);
        assert_eq!(longest, number("blocks.perimeter_longest", 0), "seed {seed}");
    }
}

/// Weight on links of which no end is left that reaches node 0 when `closed_link` and `closed_node` are closed. A closed
/// link is cut at its end nearer to node 0, so its own weight is lost where its other end does not reach either.
fn lost(
    nodes: usize,
    links: &[[usize; 2]],
    weights: &[f64],
    closed_link: Option<usize>,
    closed_node: Option<usize>,
) -> f64 {
    let mut reached = vec![false; nodes];
    reached[0] = true;
    loop {
        let mut grew = false;
        for (link, &[a, b]) in links.iter().enumerate() {
            let is_open = Some(link) != closed_link && Some(a) != closed_node && Some(b) != closed_node;
            if is_open && reached[a] != reached[b] {
                (reached[a], reached[b]) = (true, true);
                grew = true;
            }
        }
        if !grew {
            break;
        }
    }
    let stands = |node: usize| reached[node] && Some(node) != closed_node;
    links
        .iter()
        .zip(weights)
        .enumerate()
        .filter(|(link, ([a, b], _))| {
            if Some(*link) == closed_link {
                // Cut at one end: what is left of it hangs on the other.
                !(stands(*a) && stands(*b))
            } else {
                !(stands(*a) || stands(*b))
            }
        })
        .map(|(_, (_, weight))| weight)
        .sum()
}

#[test]
fn what_hangs_on_a_link_or_a_node_agrees_with_closing_each() {
    let (mut bridges, mut cut_nodes, mut apart) = (0, 0, 0);
    for seed in 0..cases(400) {
        let mut random = Random(seed);
        let nodes = 1 + random.below(14) as usize;
        let links: Vec<[usize; 2]> = (0..random.below(24))
            .map(|_| [0; 2].map(|_| random.below(nodes as u64) as usize))
            .collect();
        // Powers of two, so that every set of links has a sum of its own and sums are exact.
        let weights: Vec<f64> = (0..links.len()).map(|link| (1_u64 << link) as f64).collect();
        let found = behind(nodes, &links, &weights, 0);
        let unreached = lost(nodes, &links, &weights, None, None);
        assert_eq!(found.unreached.to_bits(), unreached.to_bits(), "seed {seed}: {links:?}");
        apart += i32::from(unreached > 0.0);
        for link in 0..links.len() {
            let more = lost(nodes, &links, &weights, Some(link), None) - unreached;
            let own = if found.order[links[link][0]].is_some() {
                weights[link]
            } else {
                0.0
            };
            // A link that is no bridge loses nothing: both its ends still reach the root.
            let expected = (more > 0.0 && own > 0.0).then_some(more);
            assert_eq!(found.links[link], expected, "seed {seed}, link {link}: {links:?}");
            bridges += i32::from(expected.is_some());
        }
        for node in 1..nodes {
            let more = lost(nodes, &links, &weights, None, Some(node)) - unreached;
            assert_eq!(
                found.nodes[node].to_bits(),
                more.to_bits(),
                "seed {seed}, node {node}: {links:?}"
            );
            cut_nodes += i32::from(more > 0.0);
        }
    }
    assert!(
        bridges > 300 && cut_nodes > 300 && apart > 50,
        "{bridges}, {cut_nodes}, {apart}"
    );
}

/// The foot of an end on a slanting street is rounded to the grid, and the street that goes on beyond it may cross a
/// millimeter away: it is one intersection of four legs all the same, by every rule.
#[test]
fn streets_that_end_at_one_place_of_another_meet_in_one_intersection() {
    let mut with_two_nodes = 0;
    for seed in 0..cases(400) {
        let mut random = Random(seed);
        let mut within = |low, high| PlanPoint::new(random.within(low, high), random.within(low, high));
        let (from, to) = (within(-400_000, -100_000), within(100_000, 400_000));
        let share = 0.3 + 0.4 * f64::from(within(0, 1_000).x_mm) / 1_000.0;
        let between = |a: i32, b: i32| (f64::from(a) + share * f64::from(b - a)).round() as i32;
        let foot = PlanPoint::new(between(from.x_mm, to.x_mm), between(from.y_mm, to.y_mm));
        let (left, right) = (within(-30_000, 30_000), within(-30_000, 30_000));
        let left = PlanPoint::new(foot.x_mm - 100_000 + left.x_mm, foot.y_mm + 100_000 + left.y_mm);
        let right = PlanPoint::new(foot.x_mm + 100_000 + right.x_mm, foot.y_mm - 100_000 + right.y_mm);
        let streets = [[from, to], [left, foot], [foot, right]];
        let streets = streets.map(|line| street(line.into(), 2, StreetRole::NeighborhoodStreet, false));
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        let mut document = Document::new("Random", origin);
        lay(&mut document, streets.into());
        let study = Study::open(document).unwrap();
        with_two_nodes += u32::from(study.fabric().links.nodes.len() > 5);
        let figures = figures(&study);
        for (rule, intersections) in COUNTING_RULES.iter().zip(&figures["streets.intersections"]) {
            let expected = f64::from(u8::from(rule.id != "leed-nd-intersections"));
            assert_eq!(*intersections, Ok(expected), "seed {seed}, {}", rule.id);
        }
        assert_eq!(figures["streets.graph_links"], [Ok(4.0)], "seed {seed}");
        assert_eq!(figures["streets.dead_ends"], [Ok(4.0)], "seed {seed}");
    }
    assert!(with_two_nodes > 0, "no crossing was parted by rounding");
}
