use super::super::test_networks::{Draws, random, random_sources, slow_at, slow_nodes};
use super::*;
use crate::network::{LinkDraft, Stretch};
use crate::plan::PlanPoint;

fn spread(network: &Network, sources: &[Source], direction: Direction, limit: Option<u64>) -> CostField {
    let mut field = CostField::new();
    field.spread(network, sources, direction, limit).expect("good sources");
    field
}

#[test]
fn nodes_and_places_agree_with_repeating_every_link() {
    for seed in 0..2_000 {
        let (network, drafts) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed + 77);
        let count = 1 + draws.below(4);
        let sources = random_sources(&mut draws, &network, count);
        for direction in [Direction::From, Direction::To] {
            let field = spread(&network, &sources, direction, None);
            let slow = slow_nodes(&network, &sources, direction);
            for node in network.node_ids() {
                let fast = field.at_node(&network, node).zip(field.owner_at_node(&network, node));
                assert_eq!(
                    fast, slow[node.0 as usize],
                    "seed {seed} {direction:?} {node:?} {drafts:?} {sources:?}"
                );
            }
            for (id, link) in network.link_ids().zip(network.links()) {
                for along_um in 0..=link.length_um {
                    let place = Location { link: id, along_um };
                    assert_eq!(
                        field.served_at(&network, place),
                        slow_at(&network, &sources, direction, &slow, place),
                        "seed {seed} {direction:?} {place:?} {drafts:?} {sources:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn a_limit_keeps_what_lies_within_and_drops_the_rest() {
    for seed in 0..500 {
        let (network, _) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed);
        let sources = random_sources(&mut draws, &network, 2);
        let limit = draws.below(80);
        let whole = spread(&network, &sources, Direction::From, None);
        let field = spread(&network, &sources, Direction::From, Some(limit));
        for node in network.node_ids() {
            let expected = whole.at_node(&network, node).filter(|&cost| cost <= limit);
            assert_eq!(
                field.at_node(&network, node),
                expected,
                "seed {seed} limit {limit} {node:?}"
            );
        }
    }
}

#[test]
fn a_field_used_again_answers_as_a_fresh_one() {
    let mut field = CostField::new();
    for seed in 0..300 {
        let (network, _) = random(seed % 40, seed % 2 == 1);
        let mut draws = Draws(seed);
        let sources = random_sources(&mut draws, &network, 3);
        let limit = (seed % 3 == 0).then(|| draws.below(60));
        field
            .spread(&network, &sources, Direction::To, limit)
            .expect("good sources");
        let fresh = spread(&network, &sources, Direction::To, limit);
        for node in network.node_ids() {
            assert_eq!(
                field.at_node(&network, node),
                fresh.at_node(&network, node),
                "seed {seed}"
            );
        }
    }
}

#[test]
fn routes_add_up_to_their_cost() {
    for seed in 0..500 {
        let (network, _) = random(seed, seed % 2 == 1);
        let source = NodeId(0);
        for direction in [Direction::From, Direction::To] {
            let field = spread(&network, &[Source::node(source)], direction, None);
            for node in network.node_ids() {
                let Some(cost) = field.at_node(&network, node) else {
                    assert_eq!(field.route(&network, node), None);
                    continue;
                };
                let route = field.route(&network, node).expect("reached");
                let (mut at, end) = if direction == Direction::From {
                    (source, node)
                } else {
                    (node, source)
                };
                let mut sum = 0;
                for step in route {
                    let link = network.link(step.link).expect("a link of the network");
                    assert!(link.walkable);
                    let (first, last) = if step.forward {
                        (link.from, link.to)
                    } else {
                        (link.to, link.from)
                    };
                    assert_eq!(at, first, "seed {seed} {direction:?} {node:?}");
                    sum += if step.forward {
                        link.cost_forward
                    } else {
                        link.cost_backward
                    };
                    at = last;
                }
                assert_eq!((at, sum), (end, cost), "seed {seed} {direction:?} {node:?}");
            }
        }
    }
}

#[test]
fn of_two_equal_routes_the_same_is_told_whatever_the_numbers() {
    let corners = [(0, 0), (100, 0), (0, 100), (100, 100)].map(|(x, y)| PlanPoint::new(x, y));
    let sides = [(0, 1), (0, 2), (1, 3), (2, 3)];
    let middles = |order: [usize; 4], link_order: [usize; 4]| {
        let nodes = order.map(|corner| corners[corner]);
        let number = |corner| NodeId(order.iter().position(|&other| other == corner).expect("a corner") as u32);
        let links = link_order.map(|side| LinkDraft::level(number(sides[side].0), number(sides[side].1), 100_000));
        let network = Network::build(&nodes, &links).expect("a square");
        let field = spread(&network, &[Source::node(number(0))], Direction::From, None);
        let route = field.route(&network, number(3)).expect("reached");
        network.node_point(network.link(route[0].link).expect("a link").to)
    };
    let told = middles([0, 1, 2, 3], [0, 1, 2, 3]);
    assert_eq!(told, middles([3, 2, 1, 0], [0, 1, 2, 3]));
    assert_eq!(told, middles([1, 3, 0, 2], [3, 1, 2, 0]));
}

#[test]
fn a_source_that_cannot_be_used_is_told_with_its_index() {
    let nodes = [PlanPoint::new(0, 0), PlanPoint::new(10, 0)];
    let mut closed = LinkDraft::level(NodeId(0), NodeId(1), 10_000);
    closed.walkable = false;
    let open = LinkDraft::level(NodeId(0), NodeId(1), 10_000);
    let network = Network::build(&nodes, &[open, closed]).expect("two links");
    let piece = |link, from_um, to_um| {
        Source::stretch(Stretch {
            link: LinkId(link),
            from_um,
            to_um,
        })
    };
    let sources = [
        Source::node(NodeId(0)),
        Source::node(NodeId(2)),
        piece(0, 5, 10_001),
        piece(1, 0, 5),
        piece(2, 0, 5),
        Source::node(NodeId(0)).starting_at(u64::MAX),
    ];
    let mut field = CostField::new();
    let faults = field
        .spread(&network, &sources, Direction::From, None)
        .expect_err("five faults");
    let indices: Vec<usize> = faults.iter().map(|&(index, _)| index).collect();
    assert_eq!(indices, [1, 2, 3, 4, 5]);
    assert_eq!(field.at_node(&network, NodeId(0)), None);
}

#[test]
fn links_longer_than_four_kilometers_keep_their_cost() {
    let nodes = [
        PlanPoint::new(0, 0),
        PlanPoint::new(90_000_000, 0),
        PlanPoint::new(0, 5_000),
    ];
    let mut far = LinkDraft::level(NodeId(1), NodeId(0), 90_000_000_000);
    far.cost_backward = 100_000_000_000;
    let near = LinkDraft::level(NodeId(0), NodeId(2), 5_000_000);
    let network = Network::build(&nodes, &[far, near]).expect("two links");
    let from = spread(&network, &[Source::node(NodeId(2))], Direction::From, None);
    assert_eq!(from.at_node(&network, NodeId(1)), Some(100_005_000_000));
    let to = spread(&network, &[Source::node(NodeId(2))], Direction::To, None);
    assert_eq!(to.at_node(&network, NodeId(1)), Some(90_005_000_000));
}
