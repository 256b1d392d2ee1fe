//! The point of the walkable network from which most homes are within five minutes.
//!
//! Candidates are all nodes of streets people walk on and the places that cut each street between them into equal parts
//! of at most [`LONGEST_PART_UM`]; whatever owns or fronts the place does not count. Of several with as many homes, to a
//! thousandth of one, the first counts, from west to east and then from south to north. A center drawn as a square or a
//! stretch reaches from all of it, so it may have more homes than any point.
//!
//! On level ground a place between two nodes reaches no more than both together and what fronts on its own link; places
//! that can not be best by that are not searched from.

use super::standing::{Shed, Standing};
use crate::measures::walk_network::WalkNetwork;
use crate::network::{Location, Source};
use crate::plan::PlanPoint;

/// The longest street between two candidates: 20 m, two or three houses. Smaller finds a few homes more and takes
/// longer in proportion.
pub const LONGEST_PART_UM: u64 = 20_000_000;

/// A point and the homes around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct BestCenter {
    pub at: PlanPoint,
    pub homes: f64,
}

/// The best point within `seconds`; `None` where there is no street people walk on, or no homes along one.
///
/// Cost: a bounded search for each node and for each place that may be best.
pub(super) fn best_center(network: &WalkNetwork, standing: &Standing, seconds: u64) -> Option<BestCenter> {
    let held = network.network();
    if held.link_ids().all(|id| standing.on(id)[0] <= 0.0) {
        return None;
    }
    let mut shed = Shed::new(network);
    let mut homes_around = |source: Source| {
        shed.spread(source, seconds);
        let [homes, ..] = standing.within(held, &shed.within(seconds));
        homes
    };
    let mut best: Option<BestCenter> = None;
    let streets = || {
        let links = held.link_ids().zip(held.links());
        links.filter(|(id, link)| link.walkable && network.is_street(*id))
    };
    let mut at_nodes: Vec<Option<f64>> = vec![None; held.node_count()];
    for (_, link) in streets() {
        for node in [link.from, link.to] {
            let (Some(place), Some(at)) = (at_nodes.get_mut(node.0 as usize), held.node_point(node)) else {
                continue;
            };
            if place.is_none() {
                let homes = homes_around(Source::node(node));
                *place = Some(homes);
                take(&mut best, BestCenter { at, homes });
            }
        }
    }
    for (id, link) in streets() {
        let around = |node: crate::network::NodeId| at_nodes.get(node.0 as usize).copied().flatten().unwrap_or(0.0);
        let at_most = around(link.from) + around(link.to) + standing.on(id)[0];
        let parts = link.length_um.div_ceil(LONGEST_PART_UM);
        for part in 1..parts {
            let most = best.map_or(0.0, |best| best.homes);
            if !network.is_sloping() && (at_most <= 0.0 || at_most < most) {
                break;
            }
            let place = Location {
                link: id,
                along_um: (u128::from(link.length_um) * u128::from(part) / u128::from(parts)) as u64,
            };
            if let Some(at) = held.point_at(place) {
                let homes = homes_around(Source::location(place));
                take(&mut best, BestCenter { at, homes });
            }
        }
    }
    best.filter(|best| best.homes > 0.0)
}

/// Takes the better of two.
fn take(best: &mut Option<BestCenter>, other: BestCenter) {
    let whole = |homes: f64| (homes * 1e3).round();
    let is_better = best.is_none_or(|best| {
        let more = whole(other.homes).total_cmp(&whole(best.homes));
        more.then(best.at.cmp(&other.at)).is_gt()
    });
    if is_better {
        *best = Some(other);
    }
}
