//! The cost of walking between some sources and everywhere else: shortest paths.
//!
//! A [`CostField`] is spread over a network from (or to) one source or many, each with a cost it starts at; a source
//! may be a node, a place on a link, or a whole stretch of a link, which costs nothing anywhere along it (the frontage
//! of a square). Afterwards it answers the cost at any node or place, which owner serves it, and the way there. It
//! keeps its memory between runs, and clears only what it touched.
//!
//! Costs are integers, so ties are real ties. Where two ways cost the same, a route comes over the node that lies first
//! on the network's curve through the plan, whatever the numbers of nodes and links; an owner of lower number wins.

use super::calendar::Calendar;
use super::graph::{Link, LinkId, Location, Network, NodeId, Stretch, WIDE_COST};
use super::scale::Scale;
use super::source::{Source, SourceFault, SourcePlace, fault_of};
use super::spans::{Span, spans_of};
use crate::order;

/// Which way the walking goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// From the sources to everywhere else.
    From,
    /// From everywhere else to the sources: who can walk *to* a place.
    To,
}

/// One step of a route: a link, and whether it is walked from its first to its last node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// The link walked.
    pub link: LinkId,
    /// In the link's own direction.
    pub forward: bool,
}

/// No cost yet. Every cost is below [`super::graph::MOST_TOTAL_COST`] and a start.
pub(super) const UNREACHED: u64 = u64::MAX;

/// Costs over a network, and the memory to work them out again. See the [module](self).
#[derive(Clone, Debug)]
pub struct CostField {
    direction: Direction,
    limit: u64,
    /// Cost by rank.
    labels: Vec<u64>,
    /// Owner by rank; meaningless where unreached, empty when every source has the same owner.
    owners: Vec<u32>,
    only_owner: u32,
    /// Ranks whose label is set.
    touched: Vec<u32>,
    sources: Vec<Source>,
    /// Which sources lie on links: (link, index into `sources`), sorted.
    sources_on_links: Vec<(LinkId, u32)>,
    /// Nodes the sources start at: (cost, owner, rank), most costly first.
    seeds: Vec<(u64, u32, u32)>,
    calendar: Calendar,
}

impl Default for CostField {
    fn default() -> Self {
        Self::new()
    }
}

impl CostField {
    /// An empty field, which reaches nothing.
    #[must_use]
    pub fn new() -> Self {
        Self {
            direction: Direction::From,
            limit: 0,
            labels: Vec::new(),
            owners: Vec::new(),
            only_owner: 0,
            touched: Vec::new(),
            sources: Vec::new(),
            sources_on_links: Vec::new(),
            seeds: Vec::new(),
            calendar: Calendar::default(),
        }
    }

    /// Works out the least cost between the sources and every node, as far as `limit` when there is one.
    ///
    /// With a limit, nodes beyond it stay unreached, and costs of places are right as far as the limit and may be too
    /// high beyond. Dijkstra's algorithm over a calendar queue: O(m + n log n) at worst, about linear on street
    /// networks; what is touched is O(what is reached).
    ///
    /// # Errors
    /// Every fault of the sources, with the source's index; the field then reaches nothing.
    pub fn spread(
        &mut self,
        network: &Network,
        sources: &[Source],
        direction: Direction,
        limit: Option<u64>,
    ) -> Result<(), Vec<(usize, SourceFault)>> {
        self.reset(network.node_count());
        let faults: Vec<(usize, SourceFault)> = sources
            .iter()
            .enumerate()
            .filter_map(|(index, source)| Some((index, fault_of(network, source)?)))
            .collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        self.direction = direction;
        self.limit = limit.unwrap_or(UNREACHED - 1);
        self.sources.extend_from_slice(sources);
        self.find_seeds(network);
        self.only_owner = sources.first().map_or(0, |source| source.owner);
        let several = sources.iter().any(|source| source.owner != self.only_owner);
        self.owners.clear();
        if several {
            self.owners.resize(network.node_count(), 0);
            self.run::<true>(network);
        } else {
            self.run::<false>(network);
        }
        Ok(())
    }

    /// Forgets the last run at the cost of what it touched.
    fn reset(&mut self, node_count: usize) {
        if self.labels.len() == node_count && self.touched.len() * 8 > node_count {
            self.labels.fill(UNREACHED);
        } else if self.labels.len() == node_count {
            for &rank in &self.touched {
                self.labels[rank as usize] = UNREACHED;
            }
        } else {
            self.labels.clear();
            self.labels.resize(node_count, UNREACHED);
        }
        self.touched.clear();
        self.sources.clear();
        self.sources_on_links.clear();
        self.seeds.clear();
        self.limit = 0;
    }

    /// Nodes the sources start at: their own, or both ends of their link.
    fn find_seeds(&mut self, network: &Network) {
        for (source, index) in self.sources.iter().zip(0..) {
            match source.place {
                SourcePlace::Node(node) => {
                    self.seeds.push((source.cost, source.owner, network.rank(node) as u32));
                }
                SourcePlace::Stretch(stretch) => {
                    self.sources_on_links.push((stretch.link, index));
                    let Some(link) = network.link(stretch.link) else {
                        continue;
                    };
                    let (up, down) = scales_away(link, self.direction);
                    let to_start = down.up_to(stretch.from_um);
                    let to_end = up.cost - up.up_to(stretch.to_um);
                    for (node, cost) in [(link.from, to_start), (link.to, to_end)] {
                        self.seeds
                            .push((source.cost + cost, source.owner, network.rank(node) as u32));
                    }
                }
            }
        }
        order::sort(&mut self.sources_on_links);
        let owner = self.seeds.first().map_or(0, |(_, owner, _)| *owner);
        let fits = |(cost, held, _): &(u64, u32, u32)| *cost <= u64::from(u32::MAX) && *held == owner;
        if self.seeds.iter().all(fits) {
            // Sorted as numbers: streets full of homes make thousands of seeds.
            let mut packed: Vec<u64> =
                (self.seeds.iter().map(|(cost, _, rank)| cost << 32 | u64::from(*rank))).collect();
            order::sort_numbers(&mut packed);
            let unpacked = |seed: u64| (seed >> 32, owner, seed as u32);
            self.seeds.clear();
            self.seeds.extend(packed.into_iter().rev().map(unpacked));
        } else {
            order::sort_by(&mut self.seeds, |a, b| b.cmp(a));
        }
    }

    /// Settles nodes in order of cost, seeds joining as their cost comes up.
    fn run<const OWNERS: bool>(&mut self, network: &Network) {
        let arcs = if self.direction == Direction::From || network.arcs_in.is_empty() {
            &network.arcs_out[..]
        } else {
            &network.arcs_in[..]
        };
        self.calendar.prepare(network.mean_cost, network.most_cost);
        let Self {
            labels,
            owners,
            touched,
            seeds,
            calendar,
            ..
        } = self;
        let limit = self.limit;
        loop {
            let seed_cost = seeds.last().map(|&(cost, ..)| cost);
            let Some(bucket_cost) = earlier(calendar.next_bucket_cost(), seed_cost) else {
                break;
            };
            calendar.advance_to(bucket_cost);
            // Reading all their rows now lets the machine fetch them side by side.
            let mut ahead = 0;
            for rank in calendar.current_nodes() {
                ahead ^= arcs
                    .get(network.first_arc[rank as usize] as usize)
                    .map_or(0, |arc| arc.target);
            }
            std::hint::black_box(ahead);
            // Seeds of this bucket enter with it; a later seed's bucket lies ahead.
            while let Some(&(cost, owner, rank)) = seeds.last() {
                if !calendar.is_current(cost) {
                    break;
                }
                seeds.pop();
                let label = &mut labels[rank as usize];
                if cost > limit || cost > *label {
                    continue;
                }
                if *label == UNREACHED {
                    touched.push(rank);
                }
                let ties = cost == *label;
                if OWNERS && (!ties || owner < owners[rank as usize]) {
                    owners[rank as usize] = owner;
                }
                if !ties {
                    *label = cost;
                    calendar.push(cost, rank);
                }
            }
            while let Some((cost, rank)) = calendar.pop_current() {
                let here = rank as usize;
                if cost != labels[here] {
                    continue;
                }
                let (first, end) = (network.first_arc[here] as usize, network.first_arc[here + 1] as usize);
                for (step, arc) in arcs[first..end].iter().enumerate() {
                    let arc_cost = if arc.cost == WIDE_COST {
                        wide_cost(network, first + step, rank, self.direction)
                    } else {
                        u64::from(arc.cost)
                    };
                    let reached = cost + arc_cost;
                    let label = &mut labels[arc.target as usize];
                    if (reached < *label) & (reached <= limit) {
                        if *label == UNREACHED {
                            touched.push(arc.target);
                        }
                        *label = reached;
                        if OWNERS {
                            owners[arc.target as usize] = owners[here];
                        }
                        calendar.push(reached, arc.target);
                    } else if OWNERS && reached == *label {
                        let owner = owners[here];
                        let other = &mut owners[arc.target as usize];
                        *other = owner.min(*other);
                    }
                }
            }
        }
        seeds.clear();
    }

    /// The way this field was spread.
    #[must_use]
    pub fn direction(&self) -> Direction {
        self.direction
    }

    /// Cost of a node; `None` when it is out of reach.
    #[must_use]
    pub fn at_node(&self, network: &Network, node: NodeId) -> Option<u64> {
        let rank = *network.rank_of_node.get(node.0 as usize)?;
        self.labels
            .get(rank as usize)
            .copied()
            .filter(|&cost| cost != UNREACHED)
    }

    /// Owner that serves a node: that of the nearest source, the lowest of several equally near.
    #[must_use]
    pub fn owner_at_node(&self, network: &Network, node: NodeId) -> Option<u32> {
        self.at_node(network, node)?;
        let rank = network.rank(node);
        Some(self.owners.get(rank).copied().unwrap_or(self.only_owner))
    }

    /// Ranks of the nodes reached, in no order that means anything.
    pub(super) fn reached_ranks(&self) -> impl Iterator<Item = u32> + '_ {
        self.touched.iter().copied()
    }

    /// Cost by rank; [`UNREACHED`] out of reach.
    pub(super) fn label(&self, rank: u32) -> u64 {
        self.labels[rank as usize]
    }

    /// How many nodes were reached.
    #[must_use]
    pub fn reached_node_count(&self) -> usize {
        self.touched.len()
    }

    /// Cost of the farthest node reached; `None` when none was.
    #[must_use]
    pub fn farthest_node_cost(&self) -> Option<u64> {
        self.touched.iter().map(|&rank| self.labels[rank as usize]).max()
    }

    /// Cost of a place on a link; `None` when it is out of reach, not there or not walkable.
    #[must_use]
    pub fn at(&self, network: &Network, place: Location) -> Option<u64> {
        self.served_at(network, place).map(|(cost, _)| cost)
    }

    /// Cost and owner of a place on a link.
    #[must_use]
    pub fn served_at(&self, network: &Network, place: Location) -> Option<(u64, u32)> {
        let link = network
            .link(place.link)
            .filter(|link| link.walkable && place.along_um <= link.length_um)?;
        let mut spans = Vec::new();
        self.spans(network, place.link, &mut spans);
        let scales = scales_away(link, self.direction);
        spans
            .iter()
            .filter(|span| span.from_um <= place.along_um && place.along_um <= span.to_um)
            .filter_map(|span| span.served_at(scales, place.along_um))
            .min()
    }

    /// The links walked between the nearest source and a node, in the order walked: from the source to the node, or,
    /// when the field was spread [`Direction::To`], from the node to the source. A source on a link leaves out the
    /// piece of its own link. `None` when the node is out of reach. O(steps × degree).
    #[must_use]
    pub fn route(&self, network: &Network, node: NodeId) -> Option<Vec<Step>> {
        self.at_node(network, node)?;
        let seeds = self.seed_costs(network);
        let mut steps = Vec::new();
        let mut rank = network.rank(node);
        // Every step lowers the cost, so this ends.
        while seeds.binary_search(&(rank as u32, self.labels[rank])).is_err() {
            let (step, before) = self.step_before(network, rank)?;
            steps.push(step);
            rank = before;
        }
        if self.direction == Direction::From {
            steps.reverse();
        }
        Some(steps)
    }

    /// Rank and cost of every node a source starts at, sorted.
    fn seed_costs(&self, network: &Network) -> Vec<(u32, u64)> {
        let mut again = Self::new();
        again.direction = self.direction;
        again.sources.clone_from(&self.sources);
        again.find_seeds(network);
        let mut costs: Vec<(u32, u64)> = again.seeds.iter().map(|&(cost, _, rank)| (rank, cost)).collect();
        order::sort(&mut costs);
        costs
    }

    /// The link over which this rank got its cost, and the rank it came from: the lowest of several.
    pub(super) fn step_before(&self, network: &Network, rank: usize) -> Option<(Step, usize)> {
        let here = NodeId(*network.node_of_rank.get(rank)?);
        let mut row = network.first_arc[rank] as usize..network.first_arc[rank + 1] as usize;
        row.find_map(|slot| {
            let link = network.link(network.arc_links[slot])?;
            let target = network.arcs_out[slot].target as usize;
            let away = link.from == here;
            // The walk goes along the link when it starts at the far side (from) or here (to).
            let forward = away == (self.direction == Direction::To);
            let cost = if forward { link.cost_forward } else { link.cost_backward };
            let fits = self.labels[target] != UNREACHED && self.labels[target] + cost == self.labels[rank];
            let step = Step {
                link: network.arc_links[slot],
                forward,
            };
            fits.then_some((step, target))
        })
    }

    /// The link in pieces between its ends and the sources on it, each with the cost at both its ends.
    pub(super) fn spans(&self, network: &Network, id: LinkId, spans: &mut Vec<Span>) {
        let first = self.sources_on_links.partition_point(|&(other, _)| other < id);
        self.spans_with(network, id, &self.sources_on_links[first..], spans);
    }

    /// The same for links asked for in order: `passed` counts the sources on links before, and begins as 0.
    pub(super) fn next_spans(&self, network: &Network, id: LinkId, passed: &mut usize, spans: &mut Vec<Span>) {
        while self.sources_on_links.get(*passed).is_some_and(|(other, _)| *other < id) {
            *passed += 1;
        }
        self.spans_with(network, id, &self.sources_on_links[*passed..], spans);
    }

    fn spans_with(&self, network: &Network, id: LinkId, sources: &[(LinkId, u32)], spans: &mut Vec<Span>) {
        spans.clear();
        let Some(link) = network.link(id).filter(|link| link.walkable) else {
            return;
        };
        let ends = [link.from, link.to].map(|node| {
            let rank = network.rank(node);
            let cost = self.labels.get(rank).copied().filter(|cost| *cost != UNREACHED)?;
            Some((cost, self.owners.get(rank).copied().unwrap_or(self.only_owner)))
        });
        let scales = scales_away(link, self.direction);
        spans_of(link.length_um, scales, ends, self.stretches(id, sources), spans);
    }

    /// The sources on a link: where, the cost they start at, their owner.
    pub(super) fn sources_on(&self, id: LinkId) -> impl Iterator<Item = (Stretch, u64, u32)> + '_ {
        let first = self.sources_on_links.partition_point(|&(other, _)| other < id);
        self.stretches(id, &self.sources_on_links[first..])
    }

    fn stretches<'a>(
        &'a self,
        id: LinkId,
        sources: &'a [(LinkId, u32)],
    ) -> impl Iterator<Item = (Stretch, u64, u32)> + 'a {
        let here = sources.iter().take_while(move |&&(other, _)| other == id);
        here.filter_map(|&(_, index)| {
            let source = self.sources[index as usize];
            match source.place {
                SourcePlace::Stretch(stretch) => Some((stretch, source.cost, source.owner)),
                SourcePlace::Node(_) => None,
            }
        })
    }

    /// Walkable links with a node reached or a source on them, in order.
    pub(super) fn touched_links(&self, network: &Network) -> Vec<LinkId> {
        let reached = |node: NodeId| self.at_node(network, node).is_some();
        let number = |link: LinkId| u64::from(link.0);
        let mut links: Vec<u64> = self.sources_on_links.iter().map(|&(link, _)| number(link)).collect();
        if self.touched.len() * 4 > network.node_count() {
            let near = network.link_ids().zip(network.links());
            let near = near.filter(|(_, link)| link.walkable && (reached(link.from) || reached(link.to)));
            links.extend(near.map(|(id, _)| number(id)));
        } else {
            for &rank in &self.touched {
                let (first, end) = (network.first_arc[rank as usize], network.first_arc[rank as usize + 1]);
                links.extend(
                    network.arc_links[first as usize..end as usize]
                        .iter()
                        .copied()
                        .map(number),
                );
                let start = network.loops.partition_point(|&(other, _)| other < rank);
                let loops = network.loops[start..].iter().take_while(|&&(other, _)| other == rank);
                links.extend(loops.map(|&(_, link)| number(link)));
            }
        }
        order::sort_numbers(&mut links);
        links.dedup();
        links.into_iter().map(|number| LinkId(number as u32)).collect()
    }

    /// The sources it was spread from.
    pub(super) fn sources(&self) -> &[Source] {
        &self.sources
    }

    /// How a link's cost is spread, (with growing position, against it), when walking goes away from a source.
    pub(super) fn scales(&self, link: &Link) -> (Scale, Scale) {
        scales_away(link, self.direction)
    }
}

/// Cost of moving away from a source toward the link's last node, and toward its first.
fn scales_away(link: &Link, direction: Direction) -> (Scale, Scale) {
    let from = direction == Direction::From;
    (link.scale(from), link.scale(!from))
}

/// Cost of an arc that does not fit 32 bits.
#[cold]
fn wide_cost(network: &Network, slot: usize, rank: u32, direction: Direction) -> u64 {
    let here = NodeId(network.node_of_rank[rank as usize]);
    network.link(network.arc_links[slot]).map_or(UNREACHED, |link| {
        let away = link.from == here;
        if away == (direction == Direction::From) {
            link.cost_forward
        } else {
            link.cost_backward
        }
    })
}

/// The earlier of two costs that may be absent.
fn earlier(a: Option<u64>, b: Option<u64>) -> Option<u64> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    }
}

#[cfg(test)]
mod tests;
