use super::super::test_networks::grid;
use super::*;
use crate::network::{CostField, Direction, LinkDraft, NodeId, Source, Stretch};

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value - expected).abs() <= tolerance,
        "{value} is not within {tolerance} of {expected}"
    );
}

fn reach_from(network: &Network, node: u32, limit: u64) -> Reach {
    let mut field = CostField::new();
    field
        .spread(network, &[Source::node(NodeId(node))], Direction::From, Some(limit))
        .expect("a node");
    Reach::within(network, &field, limit)
}

/// Check case W-A6: derived: on an endless square grid the hull of the reach is a diamond of area 2 r², 2/π = 0.6366 of
/// the circle; spacing r/40.
#[test]
fn w_a6_hull_over_circle_on_a_fine_square_grid() {
    let network = grid(83, 10_000);
    let reach = reach_from(&network, 41 * 83 + 41, 400_000_000);
    near(
        hull_area_m2(&network, &reach) / (std::f64::consts::PI * 400.0 * 400.0),
        std::f64::consts::FRAC_2_PI,
        0.01,
    );
}

#[test]
fn a_straight_street_widens_to_a_stadium() {
    let nodes = [PlanPoint::new(0, 0), PlanPoint::new(60_000, 80_000)];
    let network = Network::build(&nodes, &[LinkDraft::level(NodeId(0), NodeId(1), 100_000_000)]).expect("a street");
    let reach = reach_from(&network, 0, 200_000_000);
    let stadium = 100.0 * 50.0 + std::f64::consts::PI * 625.0;
    near(
        buffer_area_m2(&network, &reach, 25.0).expect("a width"),
        stadium,
        stadium * 5e-5,
    );
    assert!(hull_area_m2(&network, &reach).abs() < 1e-9);
}

#[test]
fn a_cross_and_a_corner_widen_without_counting_twice() {
    let cross = [(0, 0), (100, 0), (0, 100), (-100, 0), (0, -100)];
    let nodes: Vec<PlanPoint> = cross
        .iter()
        .map(|&(x, y)| PlanPoint::new(x * 1_000, y * 1_000))
        .collect();
    let arm = |end| LinkDraft::level(NodeId(0), NodeId(end), 100_000_000);
    let all = Network::build(&nodes, &[arm(1), arm(2), arm(3), arm(4)]).expect("a cross");
    let expected = 4.0 * 75.0 * 50.0 + 2_500.0 + 2.0 * std::f64::consts::PI * 625.0;
    let reach = reach_from(&all, 0, 100_000_000);
    near(
        buffer_area_m2(&all, &reach, 25.0).expect("a width"),
        expected,
        expected * 5e-5,
    );
    let corner = Network::build(&nodes, &[arm(1), arm(2)]).expect("a corner");
    let reach = reach_from(&corner, 0, 100_000_000);
    // Two arms beyond their common square, the square itself, a quarter circle outside it, two half circles.
    let expected = 2.0 * 75.0 * 50.0 + 3.0 * 625.0 + std::f64::consts::PI * (625.0 / 4.0 + 625.0);
    near(
        buffer_area_m2(&corner, &reach, 25.0).expect("a width"),
        expected,
        expected * 5e-5,
    );
}

/// Pieces much shorter than the width, turning sharply: the union against counting a fine lattice of points.
#[test]
fn short_sharp_pieces_agree_with_counting_points() {
    let mut draws = super::super::test_networks::Draws(11);
    for _ in 0..20 {
        let mut point = PlanPoint::new(0, 0);
        let mut nodes = vec![point];
        for _ in 0..12 {
            let step = |draws: &mut super::super::test_networks::Draws| draws.below(24_000) as i32 - 12_000;
            point = PlanPoint::new(point.x_mm + step(&mut draws), point.y_mm + step(&mut draws));
            nodes.push(point);
        }
        let links: Vec<LinkDraft> = (0..12_u32)
            .map(|at| {
                let length = nodes[at as usize].distance_um(nodes[at as usize + 1]).max(1);
                LinkDraft::level(NodeId(at), NodeId(at + 1), length)
            })
            .collect();
        let network = Network::build(&nodes, &links).expect("a chain");
        let reach = reach_from(&network, 0, 1_000_000_000);
        let area = buffer_area_m2(&network, &reach, 25.0).expect("a width");
        let near_any = |x: f64, y: f64| {
            links.iter().any(|link| {
                let (ax, ay) = nodes[link.from.0 as usize].to_m();
                let (bx, by) = nodes[link.to.0 as usize].to_m();
                let (dx, dy) = (bx - ax, by - ay);
                let along = (((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
                number::length(x - ax - along * dx, y - ay - along * dy) <= 25.0
            })
        };
        let cells = (-240..240).flat_map(|x| (-240..240).map(move |y| (f64::from(x) * 0.8, f64::from(y) * 0.8)));
        let counted = cells.filter(|&(x, y)| near_any(x, y)).count() as f64 * 0.64;
        near(area, counted, counted * 0.005);
    }
}

#[test]
fn only_wholly_reached_blocks_are_enclosed() {
    let network = grid(3, 100_000);
    // From the corner, 200 m reach every link of the first block and its neighbors only in part.
    near(
        enclosed_area_m2(&network, &reach_from(&network, 0, 200_000_000)),
        10_000.0,
        1e-9,
    );
    near(
        enclosed_area_m2(&network, &reach_from(&network, 0, 400_000_000)),
        40_000.0,
        1e-9,
    );
    near(
        enclosed_area_m2(&network, &reach_from(&network, 0, 150_000_000)),
        0.0,
        1e-9,
    );
}

#[test]
fn no_reach_has_no_area_and_no_width_has_no_buffer() {
    let network = grid(2, 1_000);
    let nothing = Reach::default();
    assert!(hull_area_m2(&network, &nothing).abs() < 1e-12);
    assert_eq!(buffer_area_m2(&network, &nothing, 25.0), Some(0.0));
    for distance_m in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e9] {
        assert_eq!(buffer_area_m2(&network, &nothing, distance_m), None);
    }
}

#[test]
fn pieces_at_the_edge_of_the_legal_range_widen_too() {
    let nodes = [
        PlanPoint::new(-100_000_000, 100_000_000),
        PlanPoint::new(-99_900_000, 100_000_000),
    ];
    let network = Network::build(&nodes, &[LinkDraft::level(NodeId(0), NodeId(1), 100_000_000)]).expect("a street");
    let street = Stretch {
        link: LinkId(0),
        from_um: 0,
        to_um: 100_000_000,
    };
    let reach = Reach::of_stretches(&[street]);
    let stadium = 100.0 * 50.0 + std::f64::consts::PI * 625.0;
    near(
        buffer_area_m2(&network, &reach, 25.0).expect("a width"),
        stadium,
        stadium * 5e-5,
    );
}
