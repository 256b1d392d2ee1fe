//! Walking from the points given: distances, directness, walk-sheds.

use std::collections::BTreeMap;

use super::answer::{FootFigures, OriginFigures, Radius, SampleFigures, ShedFigures, WalkFigures};
use super::drawn::{DrawnPoint, Role};
use super::frame::Frame;
use super::streets::m_from_um;
use crate::fabric::{Arrangement, Locator};
use crate::network::shed_area::{buffer_area_m2, enclosed_area_m2, hull_area_m2};
use crate::network::{CostField, Direction, Location, Network, Reach, Source, StreetNetwork};
use crate::number;

/// How far reached pieces are widened for `buffer25_area`, in meters.
const BUFFER_M: f64 = 25.0;

/// What the walks happen on.
pub(super) struct Ground<'a> {
    pub frame: &'a Frame,
    pub arrangement: &'a Arrangement,
    pub streets: &'a StreetNetwork,
}

/// A point of interest at its nearest place on the network.
struct Foot<'a> {
    point: &'a DrawnPoint,
    place: Location,
    /// The place in meters, not rounded.
    at_m: (f64, f64),
    offset_m: f64,
}

/// All walks asked for.
pub(super) fn walk_figures(ground: &Ground<'_>, points: &[DrawnPoint], within_m: &[f64]) -> WalkFigures {
    let feet = feet_of(ground, points);
    let network = &ground.streets.network;
    let is_origin = |foot: &&Foot<'_>| matches!(foot.point.role, Role::Origin);
    let is_sample = |foot: &&Foot<'_>| matches!(foot.point.role, Role::Sample);
    let mut field = CostField::new();
    let mut origins = Vec::new();
    for origin in feet.iter().filter(is_origin) {
        spread(&mut field, network, &[origin]);
        let samples: Vec<SampleFigures> = feet
            .iter()
            .filter(is_sample)
            .map(|sample| sample_figures(network, &field, origin, sample))
            .collect();
        let known: Vec<f64> = samples.iter().filter_map(|sample| sample.prd).collect();
        origins.push(OriginFigures {
            id: origin.point.id.clone(),
            foot: ground.frame.shown_m(origin.at_m),
            offset: origin.offset_m,
            reachable_nodes: field.reached_node_count() as u64,
            farthest_node: farthest(network, &field, &feet).map(m_from_um),
            samples,
            prd_mean: (!known.is_empty()).then(|| known.iter().sum::<f64>() / known.len() as f64),
            sheds: sheds_of(network, &field, &feet, within_m),
        });
    }
    let all: Vec<&Foot<'_>> = feet.iter().filter(is_origin).collect();
    spread(&mut field, network, &all);
    WalkFigures {
        radii: within_m.iter().map(|&radius| radius_of(radius)).collect(),
        origins,
        multi_origin: if all.is_empty() {
            BTreeMap::new()
        } else {
            sheds_of(network, &field, &feet, within_m)
        },
        sample_feet: feet
            .iter()
            .filter(is_sample)
            .map(|foot| FootFigures {
                id: foot.point.id.clone(),
                foot: ground.frame.shown_m(foot.at_m),
                offset: foot.offset_m,
            })
            .collect(),
    }
}

/// Cost of the farthest of the nodes and origins that can be reached.
fn farthest(network: &Network, field: &CostField, feet: &[Foot<'_>]) -> Option<u64> {
    let origins = feet.iter().filter(|foot| matches!(foot.point.role, Role::Origin));
    let costs = origins.filter_map(|foot| field.at(network, foot.place));
    costs.chain(field.farthest_node_cost()).max()
}

/// Spreads costs from these origins. Their places come from the network itself, so no source can be at fault.
fn spread(field: &mut CostField, network: &Network, origins: &[&Foot<'_>]) {
    let sources: Vec<Source> = origins.iter().map(|origin| Source::location(origin.place)).collect();
    let spread = field.spread(network, &sources, Direction::From, None);
    debug_assert_eq!(spread, Ok(()));
}

/// Every point at its nearest place on the network.
fn feet_of<'a>(ground: &Ground<'_>, points: &'a [DrawnPoint]) -> Vec<Foot<'a>> {
    let locator = Locator::of(ground.arrangement);
    points
        .iter()
        .filter_map(|point| {
            let edge = locator.nearest(point.point)?.edge;
            // The edge is found from the rounded point; the place on it is worked out from the point as written.
            let [low, high] = ground
                .arrangement
                .ends(edge)
                .map(|vertex| ground.arrangement.point(vertex).to_m());
            let (dx, dy) = (high.0 - low.0, high.1 - low.1);
            let (px, py) = (point.position_m.0 - low.0, point.position_m.1 - low.1);
            let share = ((px * dx + py * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
            let along_um = (share * ground.arrangement.length_um(edge) as f64).round() as u64;
            let at_m = (low.0 + dx * share, low.1 + dy * share);
            Some(Foot {
                point,
                place: ground.streets.location_on(edge, along_um),
                at_m,
                offset_m: number::length(point.position_m.0 - at_m.0, point.position_m.1 - at_m.1),
            })
        })
        .collect()
}

fn sample_figures(network: &Network, field: &CostField, origin: &Foot<'_>, sample: &Foot<'_>) -> SampleFigures {
    let walk_m = field.at(network, sample.place).map(m_from_um);
    let straight_m = number::length(sample.at_m.0 - origin.at_m.0, sample.at_m.1 - origin.at_m.1);
    SampleFigures {
        id: sample.point.id.clone(),
        dist: walk_m,
        prd: walk_m.filter(|_| straight_m > 0.0).map(|walk_m| walk_m / straight_m),
    }
}

/// The walk-shed of every distance.
fn sheds_of(
    network: &Network,
    field: &CostField,
    feet: &[Foot<'_>],
    within_m: &[f64],
) -> BTreeMap<String, ShedFigures> {
    let shed = |&radius_m: &f64| (radius_of(radius_m).to_string(), shed_of(network, field, feet, radius_m));
    within_m.iter().map(shed).collect()
}

fn shed_of(network: &Network, field: &CostField, feet: &[Foot<'_>], radius_m: f64) -> ShedFigures {
    let limit_um = (radius_m * 1e6).round() as u64;
    let reach = Reach::within(network, field, limit_um);
    let mut dwellings: Option<(u64, u64)> = None;
    let mut place_area_by_use: BTreeMap<String, f64> = BTreeMap::new();
    for foot in feet {
        let is_reached = || field.at(network, foot.place).is_some_and(|cost| cost <= limit_um);
        match &foot.point.role {
            Role::Dwelling { dwellings: count } => {
                let (reached, all) = dwellings.unwrap_or((0, 0));
                dwellings = Some((reached + if is_reached() { *count } else { 0 }, all + count));
            }
            Role::Place { use_name, area_m2 } => {
                let sum = place_area_by_use.entry(use_name.clone()).or_insert(0.0);
                *sum += if is_reached() { *area_m2 } else { 0.0 };
            }
            Role::Origin | Role::Sample => {}
        }
    }
    ShedFigures {
        reached_length: m_from_um(reach.length_um()),
        frontier_points: reach.frontier(network).len() as u64,
        hull_area: hull_area_m2(network, &reach),
        fully_reached_edges: reach.whole_links(network).len() as u64,
        enclosed_area: enclosed_area_m2(network, &reach),
        buffer25_area: buffer_area_m2(network, &reach, BUFFER_M).unwrap_or(0.0),
        dwellings_reached: dwellings.map(|(reached, _)| reached),
        dwellings_share: dwellings
            .filter(|&(_, all)| all > 0)
            .map(|(reached, all)| reached as f64 / all as f64),
        place_area_by_use,
    }
}

fn radius_of(radius_m: f64) -> Radius {
    let whole = radius_m as u64;
    if (whole as f64 - radius_m).abs() > 0.0 {
        Radius::Fraction(radius_m)
    } else {
        Radius::Whole(whole)
    }
}
