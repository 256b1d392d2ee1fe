//! How direct a walk is: its length against the straight line.
//!
//! Two forms are in use and are each other's reciprocal: *pedestrian route directness*, network over straight
//! distance, 1 or more (J. Dill, "Measuring Connectivity for Bicycling and Walking", 2004), and the *detour index*,
//! straight over network distance, 1 or less (course notes "Network Measurements"). Both say nothing of comfort.

use crate::plan::PlanPoint;

/// Pedestrian route directness: network distance over straight distance; `None` when both places are the same.
///
/// ```
/// use hobnail_core::network::directness::route_directness;
/// use hobnail_core::plan::PlanPoint;
/// let (a, b) = (PlanPoint::new(0, 0), PlanPoint::new(30_000, 40_000));
/// assert_eq!(route_directness(70_000_000, a, b), Some(1.4));
/// ```
#[must_use]
pub fn route_directness(network_um: u64, a: PlanPoint, b: PlanPoint) -> Option<f64> {
    let straight_um = a.distance_um(b);
    (straight_um > 0).then(|| network_um as f64 / straight_um as f64)
}

/// Detour index: straight distance over network distance; `None` when the network distance is zero.
#[must_use]
pub fn detour_index(network_um: u64, a: PlanPoint, b: PlanPoint) -> Option<f64> {
    (network_um > 0).then(|| a.distance_um(b) as f64 / network_um as f64)
}

#[cfg(test)]
mod tests {
    use super::super::test_networks::grid;
    use super::*;
    use crate::network::{CostField, Direction, NodeId, Source};

    /// Check case W-A8: 40 km straight, 50 km by route; course notes "Network Measurements", the reciprocal derived.
    #[test]
    fn w_a8_forty_kilometers_straight_and_fifty_by_route() {
        let (a, b) = (PlanPoint::new(0, 0), PlanPoint::new(40_000_000, 0));
        assert_eq!(detour_index(50_000_000_000, a, b), Some(0.8));
        assert_eq!(route_directness(50_000_000_000, a, b), Some(1.25));
    }

    /// Check case W-A7: along a street 1.00 and at 45 degrees 1.41 on any right-angled grid (P. Stangl, "Overcoming
    /// flaws in permeability measures: modified route directness", *Journal of Urbanism*, 2017, note 1); the mean over
    /// all bearings, 4/π = 1.273, is derived.
    #[test]
    fn w_a7_directness_on_a_grid() {
        let (side, spacing_mm) = (161, 5_000);
        let network = grid(side, spacing_mm);
        let middle = side / 2 * side + side / 2;
        let mut field = CostField::new();
        field
            .spread(&network, &[Source::node(NodeId(middle as u32))], Direction::From, None)
            .expect("a node of the grid");
        let directness = |column: i32, row: i32| {
            let node = NodeId((row * side + column) as u32);
            let from = network.node_point(NodeId(middle as u32)).expect("a node");
            let to = network.node_point(node).expect("a node");
            route_directness(field.at_node(&network, node).expect("reached"), from, to)
        };
        let near = |value: Option<f64>, expected: f64| {
            assert!(
                (value.expect("two places") - expected).abs() <= 0.005,
                "{value:?}, not {expected}"
            );
        };
        near(directness(side - 1, side / 2), 1.00);
        near(directness(side - 1, side - 1), 1.41);
        // Bearings in equal steps, each to the nearest node of the ring of radius 80 blocks.
        let bearings = 720;
        let sum: f64 = (0..bearings)
            .map(|step| {
                let angle = f64::from(step) * std::f64::consts::TAU / f64::from(bearings);
                let at = |part: f64| side / 2 + (80.0 * part).round() as i32;
                directness(at(crate::number::cos(angle)), at(crate::number::sin(angle))).expect("two places")
            })
            .sum();
        near(Some(sum / f64::from(bearings)), 4.0 / std::f64::consts::PI);
    }
}
