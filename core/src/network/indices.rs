//! Published indices of how connected a network is, from a few counts.
//!
//! v nodes, e links, p connected parts. Sources as in the names below: "The Geography of Transport Systems", chapter
//! on graph measures and indices; *Transportation Geography and Network Science*, "Characterizing Graphs"; course notes
//! "Network Measurements". Which nodes and links count is a [counting rule](super::counting_rule); an index without its
//! rule can not be compared with a threshold.

use super::cost_field::{CostField, Direction};
use super::graph::Network;
use super::source::Source;

/// What the indices are worked out from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GraphCounts {
    /// v
    pub nodes: u64,
    /// e
    pub links: u64,
    /// p
    pub parts: u64,
}

/// Whether links may only meet at nodes (streets on the ground) or may cross in between.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layout {
    /// Links meet at nodes only.
    Planar,
    /// Links may cross without meeting.
    NonPlanar,
}

impl GraphCounts {
    /// Beta, the link-node ratio: e / v. `None` without nodes.
    #[must_use]
    pub fn beta(self) -> Option<f64> {
        ratio(self.links as f64, self.nodes as f64)
    }

    /// Cyclomatic number, independent cycles: e − v + p.
    #[must_use]
    pub fn cyclomatic(self) -> u64 {
        (self.links + self.parts).saturating_sub(self.nodes)
    }

    /// The most independent cycles so many nodes can have: 2v − 5 planar (from three nodes on), else
    /// v(v − 1)/2 − (v − 1).
    #[must_use]
    pub fn most_cycles(self, layout: Layout) -> Option<u64> {
        match layout {
            Layout::Planar => (self.nodes >= 3).then(|| 2 * self.nodes - 5),
            Layout::NonPlanar => (self.nodes >= 1).then(|| self.nodes * (self.nodes - 1) / 2 - (self.nodes - 1)),
        }
    }

    /// Alpha: cycles over the most possible, 0 to 1.
    #[must_use]
    pub fn alpha(self, layout: Layout) -> Option<f64> {
        ratio(self.cyclomatic() as f64, self.most_cycles(layout)? as f64)
    }

    /// Gamma: links over the most possible, 3(v − 2) planar (from three nodes on), else v(v − 1)/2.
    #[must_use]
    pub fn gamma(self, layout: Layout) -> Option<f64> {
        let most = match layout {
            Layout::Planar => (self.nodes >= 3).then(|| 3 * (self.nodes - 2)),
            Layout::NonPlanar => self.nodes.checked_sub(1).map(|others| self.nodes * others / 2),
        }?;
        ratio(self.links as f64, most as f64)
    }

    /// Eta: mean length of a link, in the length's own unit.
    #[must_use]
    pub fn eta(self, total_length: f64) -> Option<f64> {
        ratio(total_length, self.links as f64)
    }
}

/// Pi: total length over the length of the diameter, the longest of all shortest routes.
#[must_use]
pub fn pi(total_length: f64, diameter_length: f64) -> Option<f64> {
    ratio(total_length, diameter_length)
}

/// Connected node ratio: intersections over intersections and dead-end heads, 0 to 1 (J. Dill, 2004).
#[must_use]
pub fn connected_node_ratio(intersections: u64, dead_ends: u64) -> Option<f64> {
    ratio(intersections as f64, (intersections + dead_ends) as f64)
}

/// Intersections per square kilometer of an area in m².
#[must_use]
pub fn density_per_km2(count: u64, area_m2: f64) -> Option<f64> {
    ratio(count as f64 * 1e6, area_m2)
}

/// Intersections per square mile (2.589988110336 km², international mile) of an area in m².
#[must_use]
pub fn density_per_square_mile(count: u64, area_m2: f64) -> Option<f64> {
    density_per_km2(count, area_m2).map(|per_km2| per_km2 * 2.589_988_110_336)
}

/// Cost of the longest of all shortest routes between two nodes that reach each other: O(n × (m + n log n)).
#[must_use]
pub fn diameter_cost(network: &Network) -> u64 {
    let mut field = CostField::new();
    let farthest = network.node_ids().filter_map(|node| {
        let spread = field.spread(network, &[Source::node(node)], Direction::From, None);
        spread.ok().and_then(|()| field.farthest_node_cost())
    });
    farthest.max().unwrap_or(0)
}

/// A quotient; `None` unless the divisor is positive.
fn ratio(of: f64, by: f64) -> Option<f64> {
    (by > 0.0).then(|| of / by)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::network::{LinkDraft, NodeId};
    use crate::plan::PlanPoint;

    fn near(value: Option<f64>, expected: f64, tolerance: f64) {
        let value = value.expect("a defined index");
        assert!(
            (value - expected).abs() <= tolerance,
            "{value} is not within {tolerance} of {expected}"
        );
    }

    fn counts(nodes: u64, links: u64) -> GraphCounts {
        GraphCounts { nodes, links, parts: 1 }
    }

    /// Check case N-A1: published, J. Dill, "Measuring Connectivity for Bicycling and Walking" slides, 9 Sep 2004.
    #[test]
    fn n_a1_link_node_ratio_of_one_route_and_of_three() {
        let printed = |beta: Option<f64>| (beta.expect("a defined index") * 100.0).round() as u32;
        assert_eq!(printed(counts(8, 7).beta()), 88);
        assert_eq!(printed(counts(8, 9).beta()), 113);
    }

    /// Check case N-A3: published, course notes "Network Measurements"; the planar forms are derived.
    #[test]
    fn n_a3_indices_of_the_worked_network() {
        let network = counts(8, 10);
        let lengths = [11.0, 10.0, 10.0, 8.0, 8.0, 8.0, 7.0, 6.0, 8.0, 6.0];
        let total: f64 = lengths.iter().sum();
        assert_eq!(network.cyclomatic(), 3);
        near(network.beta(), 1.25, 0.001);
        near(network.gamma(Layout::NonPlanar), 0.357, 0.001);
        assert_eq!(network.most_cycles(Layout::NonPlanar), Some(21));
        near(Some(total), 82.0, 0.001);
        near(network.eta(total), 8.2, 0.001);
        near(pi(total, 8.0 + 7.0 + 6.0 + 8.0), 2.83, 0.005);
        near(network.alpha(Layout::Planar), 3.0 / 11.0, 0.001);
        near(network.gamma(Layout::Planar), 0.556, 0.001);
    }

    /// Check case N-A4: derived; the same series stands in "The Geography of Transport Systems" (from memory).
    #[test]
    fn n_a4_a_tree_and_a_cycle() {
        let (tree, cycle) = (counts(4, 3), counts(4, 4));
        near(tree.beta(), 0.75, 0.001);
        near(tree.alpha(Layout::Planar), 0.0, 0.001);
        near(tree.gamma(Layout::Planar), 0.5, 0.001);
        near(cycle.beta(), 1.0, 0.001);
        near(cycle.alpha(Layout::Planar), 1.0 / 3.0, 0.001);
        near(cycle.gamma(Layout::Planar), 0.667, 0.001);
    }

    /// Check case N-A5: derived from the definition of intersection density in LEED 2009 for Neighborhood Development:
    /// one intersection for every block of a square grid with streets every 400 feet. It meets 140 per square mile
    /// (prerequisite NPDp3) and stays below 300 (credit NPDc6) and 200 (credit SLLc1).
    #[test]
    fn n_a5_a_street_every_four_hundred_feet() {
        let block_m2 = 400.0 * 0.3048 * (400.0 * 0.3048);
        near(density_per_square_mile(1, block_m2), 174.2, 0.1);
        near(density_per_km2(1, block_m2), 67.3, 0.1);
        let density = density_per_square_mile(1, block_m2).expect("land");
        assert!((140.0..200.0).contains(&density), "so it is at most 300 too");
    }

    /// Check case N-A8: derived from the definition in Dill 2004.
    #[test]
    fn n_a8_twenty_one_intersections_and_nine_dead_ends() {
        assert_eq!(connected_node_ratio(21, 9), Some(0.7));
    }

    /// Check case N-A11: blocks of 480 × 240 feet, streets included, filling the plane have one intersection each, 242 per
    /// square mile; New Urban Network, "Walkable places and streets", says about 230 of San Francisco's.
    #[test]
    fn n_a11_blocks_of_480_by_240_feet() {
        let module_m2 = 480.0 * 0.3048 * (240.0 * 0.3048);
        near(density_per_square_mile(1, module_m2), 242.0, 0.01);
        near(density_per_square_mile(1, module_m2), 230.0, 0.06 * 230.0);
    }

    #[test]
    fn an_index_without_a_divisor_is_not_defined() {
        assert_eq!(counts(0, 0).beta(), None);
        assert_eq!(counts(2, 1).alpha(Layout::Planar), None);
        assert_eq!(counts(1, 0).gamma(Layout::NonPlanar), None);
        assert_eq!(connected_node_ratio(0, 0), None);
        assert_eq!(density_per_km2(3, 0.0), None);
    }

    #[test]
    fn the_diameter_is_the_longest_shortest_route() {
        // A path of 3 and 4, and a detour of 100 beside the 3 that no shortest route uses.
        let nodes = [PlanPoint::new(0, 0); 3];
        let links = [(0, 1, 3), (1, 2, 4), (0, 1, 100)];
        let links = links.map(|(from, to, length)| LinkDraft::level(NodeId(from), NodeId(to), length));
        let network = Network::build(&nodes, &links).expect("three links");
        assert_eq!(diameter_cost(&network), 7);
    }
}
