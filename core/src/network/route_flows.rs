//! How many walk along each link on their way to the nearest source.
//!
//! Everybody takes the least walk; where two cost the same, the one [`CostField::route`] gives. All least walks to the
//! sources make one tree, so weights are added up along it from its tips, and no walk is followed one by one. Weight
//! spread along a link parts where the ways over its two ends, or straight to a source on it, are equally long.
//!
//! A link counts who walks all of it, who begins on it and who ends on it, each once; whoever stands within a source is
//! there and walks along nothing.

use super::cost_field::{CostField, Direction};
use super::graph::{Link, LinkId, Location, Network, Stretch};
use super::nearest::last_where;
use super::reach::Reach;
use super::scale::Scale;
use super::source::SourcePlace;
use crate::order;

/// Walks along links, summed over as many fields as are added.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RouteFlows {
    /// Weight that walks along each link, in order of link number.
    pub by_link: Vec<f64>,
    /// Weight that can walk to a source, or is there.
    pub begun: f64,
    /// Weight that comes to a source: [`RouteFlows::begun`] again, added up at the other end of the walks.
    pub ended: f64,
}

impl RouteFlows {
    /// Nobody on any link.
    #[must_use]
    pub fn none(network: &Network) -> Self {
        Self {
            by_link: vec![0.0; network.link_count()],
            ..Self::default()
        }
    }

    /// Adds the walks from `fronts`, each a stretch with the weight spread evenly over it, to the sources of a field
    /// spread [`Direction::To`] them without a limit. Fronts that reach nothing are left out.
    ///
    /// O(f log l + n log n + s log s) for f fronts, links of l micrometers, n nodes and s sources.
    pub fn add(&mut self, network: &Network, field: &CostField, fronts: &[(Stretch, f64)]) {
        debug_assert_eq!(field.direction(), Direction::To);
        self.by_link.resize(network.link_count(), 0.0);
        let places: Vec<Stretch> = field
            .sources()
            .iter()
            .filter_map(|source| stretch_of(source.place))
            .collect();
        let there = Reach::of_stretches(&places);
        let mut waiting = vec![0.0; network.node_count()];
        let mut parting: Option<Parting> = None;
        for &(stretch, weight) in fronts {
            let Some(link) = network.link(stretch.link).filter(|link| link.walkable) else {
                continue;
            };
            if parting.as_ref().is_none_or(|held| held.id != stretch.link) {
                parting = Some(Parting::of(network, field, stretch.link, link));
            }
            let Some(shares) = parting.as_ref().and_then(|held| held.shares(stretch, &there)) else {
                continue;
            };
            let [first, last, walking] = shares.map(|share| share * weight);
            waiting[network.rank(link.from)] += first;
            waiting[network.rank(link.to)] += last;
            self.begun += weight;
            self.ended += weight - first - last;
            self.by_link[stretch.link.0 as usize] += first + last + walking;
        }
        self.walk_down(network, field, &mut waiting);
    }

    /// Carries what waits at nodes to the sources, the farthest first.
    fn walk_down(&mut self, network: &Network, field: &CostField, waiting: &mut [f64]) {
        let ends = tree_ends(network, field);
        let mut ranks: Vec<(u64, u32)> = field.reached_ranks().map(|rank| (field.label(rank), rank)).collect();
        order::sort_keyed(&mut ranks);
        for (_, rank) in ranks.into_iter().rev() {
            let weight = waiting[rank as usize];
            if weight <= 0.0 {
                continue;
            }
            let end = ends.partition_point(|end| end.rank < rank);
            if let Some(end) = ends.get(end).filter(|end| end.rank == rank) {
                self.ended += weight;
                if let Some(link) = end.last_piece {
                    self.by_link[link.0 as usize] += weight;
                }
            } else if let Some((step, before)) = field.step_before(network, rank as usize) {
                self.by_link[step.link.0 as usize] += weight;
                waiting[before] += weight;
            }
        }
    }
}

/// A node from which the walk goes straight to a source.
struct TreeEnd {
    rank: u32,
    /// The link the source lies on, where there is a piece of it left to walk.
    last_piece: Option<LinkId>,
}

/// The nodes from which the least walk goes straight to a source, in order of rank; of several sources the one that
/// needs no more walking, then the one on the lowest link.
fn tree_ends(network: &Network, field: &CostField) -> Vec<TreeEnd> {
    let mut ends: Vec<TreeEnd> = Vec::new();
    for source in field.sources() {
        match source.place {
            SourcePlace::Node(node) => {
                let rank = network.rank(node) as u32;
                if field.label(rank) == source.cost {
                    ends.push(TreeEnd { rank, last_piece: None });
                }
            }
            SourcePlace::Stretch(stretch) => {
                let Some(link) = network.link(stretch.link) else {
                    continue;
                };
                let (up, down) = field.scales(link);
                let first = (link.from, down.up_to(stretch.from_um));
                let last = (link.to, up.cost - up.up_to(stretch.to_um));
                for (node, walk) in [first, last] {
                    let rank = network.rank(node) as u32;
                    if field.label(rank) == source.cost + walk {
                        let last_piece = (walk > 0).then_some(stretch.link);
                        ends.push(TreeEnd { rank, last_piece });
                    }
                }
            }
        }
    }
    order::sort_by_key(&mut ends, |end| (end.rank, end.last_piece));
    ends.dedup_by_key(|end| end.rank);
    ends
}

fn stretch_of(place: SourcePlace) -> Option<Stretch> {
    match place {
        SourcePlace::Stretch(stretch) => Some(stretch),
        SourcePlace::Node(_) => None,
    }
}

/// How the walks from one link part.
struct Parting {
    id: LinkId,
    length_um: u64,
    /// Cost of moving away from a source toward the last node, and toward the first.
    scales: (Scale, Scale),
    /// Costs of the link's nodes.
    first: Option<u64>,
    last: Option<u64>,
    /// Sources on the link, with the costs they start at.
    here: Vec<(Stretch, u64)>,
    /// Up to the first place walks leave over the first node, and from the second on over the last.
    ends_um: [u64; 2],
}

impl Parting {
    fn of(network: &Network, field: &CostField, id: LinkId, link: &Link) -> Self {
        let mut held = Self {
            id,
            length_um: link.length_um,
            scales: field.scales(link),
            first: field.at_node(network, link.from),
            last: field.at_node(network, link.to),
            here: field.sources_on(id).map(|(stretch, cost, _)| (stretch, cost)).collect(),
            ends_um: [0; 2],
        };
        let length_um = held.length_um;
        let first_um = last_where(0, length_um, |along_um| held.is_over_first(along_um));
        let last_um = last_where(0, length_um, |back_um| held.is_over_last(length_um - back_um));
        let first_um = first_um.unwrap_or(0);
        // Without a source on the link the ways part where both are equally long, there or up to a micrometer before.
        let last_um = last_um.map_or(length_um, |back_um| length_um - back_um);
        held.ends_um = [first_um, last_um.max(first_um)];
        held
    }

    fn over_first(&self, along_um: u64) -> Option<u64> {
        self.first.map(|cost| cost + self.scales.0.up_to(along_um))
    }

    fn over_last(&self, along_um: u64) -> Option<u64> {
        let down = self.scales.1;
        self.last.map(|cost| cost + down.cost - down.up_to(along_um))
    }

    /// Cost of the walk along the link to a source on it.
    fn along(&self, along_um: u64) -> Option<u64> {
        let (up, down) = self.scales;
        let costs = self.here.iter().map(|(stretch, cost)| {
            let beyond = up.up_to(along_um).saturating_sub(up.up_to(stretch.to_um));
            let before = down.up_to(stretch.from_um).saturating_sub(down.up_to(along_um));
            cost + beyond + before
        });
        costs.min()
    }

    fn is_over_first(&self, along_um: u64) -> bool {
        let over_first = self.over_first(along_um);
        less(over_first, self.along(along_um)) && !less(self.over_last(along_um), over_first)
    }

    fn is_over_last(&self, along_um: u64) -> bool {
        let over_last = self.over_last(along_um);
        less(over_last, self.along(along_um)) && !less(self.over_first(along_um), over_last)
    }

    /// The shares of a stretch that leave over the first node, over the last, and that walk to a source on the link;
    /// `None` where nothing is reached.
    fn shares(&self, stretch: Stretch, there: &Reach) -> Option<[f64; 3]> {
        if self.first.is_none() && self.last.is_none() && self.here.is_empty() {
            return None;
        }
        let Stretch { link, from_um, to_um } = stretch;
        if from_um == to_um {
            // The end of a link that is reached over the link alone is left along it.
            let first_asked = from_um > 0 || !self.is_over_last(0);
            let place = Location {
                link,
                along_um: from_um,
            };
            return Some(if first_asked && self.is_over_first(from_um) {
                [1.0, 0.0, 0.0]
            } else if self.is_over_last(from_um) {
                [0.0, 1.0, 0.0]
            } else if there.contains(place) {
                [0.0; 3]
            } else {
                [0.0, 0.0, 1.0]
            });
        }
        let [first_um, last_um] = self.ends_um.map(|place_um| place_um.clamp(from_um, to_um));
        let between = Stretch {
            link: self.id,
            from_um: first_um,
            to_um: last_um,
        };
        let mut parts_um = [
            first_um - from_um,
            to_um - last_um,
            last_um - first_um - there.length_on_um(between),
        ];
        if self.here.is_empty() {
            parts_um[1] += std::mem::take(&mut parts_um[2]);
        }
        let length_um = (to_um - from_um) as f64;
        Some(parts_um.map(|part_um| part_um as f64 / length_um))
    }
}

/// Whether the first is there and less than the second, or the second is not there.
fn less(first: Option<u64>, second: Option<u64>) -> bool {
    first.is_some_and(|first| second.is_none_or(|second| first < second))
}

#[cfg(test)]
mod tests;
