//! How many shortest walks run over each link: its betweenness.
//!
//! For every pair of nodes, each link gets the share of the pair's shortest walks that use it; shares over all
//! unordered pairs are summed, not normalized, and a pair's own ends count. Cost is the network's cost; on a network
//! that costs more one way, each pair counts half for the walk there and half for the walk back. Costs are integers,
//! so walks of equal length are told apart from nearly equal ones exactly.
//!
//! Source: U. Brandes, "A faster algorithm for betweenness centrality", *Journal of Mathematical Sociology* 25 (2001),
//! and, for links, "On variants of shortest-path betweenness centrality", *Social Networks* 30 (2008) (from memory).

use super::cost_field::{CostField, Direction, UNREACHED};
use super::graph::{LinkId, Network, NodeId};
use super::source::Source;
use crate::order;

/// Betweenness of every link, in order of link number. Links nobody walks and loops have none.
///
/// O(n × (m + n log n)): some seconds for ten thousand nodes. Sums run in the network's own order along its curve
/// through the plan, so numbering nodes and links otherwise changes no bit.
#[must_use]
pub fn link_betweenness(network: &Network) -> Vec<f64> {
    let mut tally = Tally::new(network);
    let mut field = CostField::new();
    for rank in 0..network.node_count() {
        let source = Source::node(NodeId(network.node_of_rank[rank]));
        if field.spread(network, &[source], Direction::From, None).is_ok() {
            tally.add(network, &field);
        }
    }
    tally.link_sums.iter().map(|sum| sum / 2.0).collect()
}

/// Sums over the sources done so far, and memory for one source.
struct Tally {
    link_sums: Vec<f64>,
    /// Shortest walks from the source, by rank.
    walks: Vec<f64>,
    /// Walks from the source that go on beyond a node, per walk to it, by rank.
    beyond: Vec<f64>,
    /// (cost, rank) of the nodes reached, nearest first.
    order: Vec<(u64, u32)>,
}

impl Tally {
    fn new(network: &Network) -> Self {
        Self {
            link_sums: vec![0.0; network.link_count()],
            walks: vec![0.0; network.node_count()],
            beyond: vec![0.0; network.node_count()],
            order: Vec::new(),
        }
    }

    fn add(&mut self, network: &Network, field: &CostField) {
        self.order.clear();
        self.order
            .extend(field.reached_ranks().map(|rank| (field.label(rank), rank)));
        order::sort_keyed(&mut self.order);
        for &(cost, rank) in &self.order {
            let before: f64 = arrivals(network, field, rank).map(|(other, _)| self.walks[other]).sum();
            self.walks[rank as usize] = if cost == 0 { 1.0 } else { before };
            self.beyond[rank as usize] = 0.0;
        }
        for &(_, rank) in self.order.iter().rev() {
            let per_walk = (1.0 + self.beyond[rank as usize]) / self.walks[rank as usize];
            for (other, link) in arrivals(network, field, rank) {
                let share = self.walks[other] * per_walk;
                self.link_sums[link.0 as usize] += share;
                self.beyond[other] += share;
            }
        }
    }
}

/// The arcs over which a shortest walk arrives at a rank: the rank it comes from, and the link.
fn arrivals<'a>(network: &'a Network, field: &'a CostField, rank: u32) -> impl Iterator<Item = (usize, LinkId)> + 'a {
    let here = NodeId(network.node_of_rank[rank as usize]);
    let row = network.first_arc[rank as usize] as usize..network.first_arc[rank as usize + 1] as usize;
    row.filter_map(move |slot| {
        let id = network.arc_links[slot];
        let link = network.link(id)?;
        let coming = if link.to == here {
            link.cost_forward
        } else {
            link.cost_backward
        };
        let other = network.arcs_out[slot].target;
        let before = field.label(other);
        (before != UNREACHED && before + coming == field.label(rank)).then_some((other as usize, id))
    })
}

#[cfg(test)]
mod tests {
    use super::super::test_networks::{grid, random};
    use super::*;

    /// All pairs by trying every intermediate node, counting walks by extending them link by link.
    fn slow(network: &Network) -> Vec<f64> {
        let count = network.node_count();
        let mut costs = vec![vec![u64::MAX; count]; count];
        for (node, row) in costs.iter_mut().enumerate() {
            row[node] = 0;
        }
        let arcs: Vec<(usize, usize, usize, u64)> = network
            .links()
            .iter()
            .enumerate()
            .filter(|(_, link)| link.walkable && link.from != link.to)
            .flat_map(|(id, link)| {
                let (a, b) = (link.from.0 as usize, link.to.0 as usize);
                [(id, a, b, link.cost_forward), (id, b, a, link.cost_backward)]
            })
            .collect();
        for &(_, a, b, cost) in &arcs {
            costs[a][b] = costs[a][b].min(cost);
        }
        for middle in 0..count {
            for a in 0..count {
                for b in 0..count {
                    let over = costs[a][middle].saturating_add(costs[middle][b]);
                    costs[a][b] = costs[a][b].min(over);
                }
            }
        }
        // Walks between two nodes, by recursion over the last link.
        fn walks(costs: &[Vec<u64>], arcs: &[(usize, usize, usize, u64)], a: usize, b: usize) -> f64 {
            if a == b {
                return 1.0;
            }
            arcs.iter()
                .filter(|&&(_, from, to, cost)| {
                    to == b && costs[a][from] != u64::MAX && costs[a][from] + cost == costs[a][b]
                })
                .map(|&(_, from, ..)| walks(costs, arcs, a, from))
                .sum()
        }
        let mut sums = vec![0.0; network.link_count()];
        for a in 0..count {
            for b in (0..count).filter(|&b| b != a && costs[a][b] != u64::MAX) {
                for &(id, from, to, cost) in &arcs {
                    let uses = costs[a][from] != u64::MAX
                        && costs[to][b] != u64::MAX
                        && costs[a][from] + cost + costs[to][b] == costs[a][b];
                    if uses {
                        let over = walks(&costs, &arcs, a, from) * walks(&costs, &arcs, to, b);
                        sums[id] += over / walks(&costs, &arcs, a, b) / 2.0;
                    }
                }
            }
        }
        sums
    }

    #[test]
    fn betweenness_agrees_with_counting_every_walk() {
        for seed in 0..300 {
            let (network, drafts) = random(seed, seed % 2 == 1);
            for (fast, slow) in link_betweenness(&network).iter().zip(slow(&network)) {
                assert!(
                    (fast - slow).abs() < 1e-9,
                    "seed {seed}: {fast} against {slow}; {drafts:?}"
                );
            }
        }
    }

    /// On a square each of four links lies on its own pair and on half of each of the two diagonal pairs: 2.
    #[test]
    fn a_square_shares_its_diagonals() {
        assert_eq!(link_betweenness(&grid(2, 100)), [2.0; 4]);
    }
}
