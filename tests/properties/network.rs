//! Shortest paths and reach on random networks, against petgraph, against brute force, and against themselves.

use hobnail_core::network::{
    CostField, Direction, LinkDraft, LinkId, Location, Network, NodeId, Reach, Source, Stretch,
};
use hobnail_core::plan::PlanPoint;
use petgraph::graph::{DiGraph, NodeIndex};

/// Networks per property: more in an optimized build.
const NETWORKS: u64 = if cfg!(debug_assertions) { 1_000 } else { 20_000 };

const METER_UM: u64 = 1_000_000;

/// The splitmix64 generator.
/// Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
struct Random(u64);

impl Random {
    fn below(&mut self, bound: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) % bound
    }
}

/// Nodes on a square kilometer and links of whole meters; every kind of oddity: loops, parallel links, equal lengths,
/// links nobody walks, parts of their own, and, when `sloping`, another cost each way.
fn drafts(random: &mut Random, sloping: bool) -> (Vec<PlanPoint>, Vec<LinkDraft>) {
    let count = 1 + random.below(30);
    let mut at = || random.below(1_000_000) as i32;
    let nodes: Vec<PlanPoint> = (0..count).map(|_| PlanPoint::new(at(), at())).collect();
    let links = (0..1 + random.below(50))
        .map(|_| {
            let (from, to) = (random.below(count) as u32, random.below(count) as u32);
            let mut link = LinkDraft::level(NodeId(from), NodeId(to), (1 + random.below(200)) * METER_UM);
            if sloping {
                link.cost_forward = 1 + random.below(300 * METER_UM);
                link.cost_backward = 1 + random.below(300 * METER_UM);
            }
            link.walkable = random.below(10) != 0;
            link
        })
        .collect();
    (nodes, links)
}

fn for_each_network(sloping: bool, check: impl Fn(&Network, &[LinkDraft], &mut Random, &str)) {
    for seed in 0..NETWORKS {
        let mut random = Random(seed);
        let (nodes, links) = drafts(&mut random, sloping);
        let network = Network::build(&nodes, &links).expect("legal drafts");
        check(
            &network,
            &links,
            &mut random,
            &format!("seed {seed}, sloping {sloping}"),
        );
    }
}

fn spread(network: &Network, sources: &[Source], direction: Direction, limit: Option<u64>) -> CostField {
    let mut field = CostField::new();
    field
        .spread(network, sources, direction, limit)
        .expect("sources of the network");
    field
}

fn costs(network: &Network, field: &CostField) -> Vec<Option<u64>> {
    network.node_ids().map(|node| field.at_node(network, node)).collect()
}

fn some_node(network: &Network, random: &mut Random) -> NodeId {
    NodeId(random.below(network.node_count() as u64) as u32)
}

/// A place on a walkable link, if any of a few tries hits one; whole meters along.
fn some_place(network: &Network, random: &mut Random) -> Option<Location> {
    (0..5).find_map(|_| {
        let id = random.below(network.link_count() as u64) as u32;
        let link = network.links()[id as usize];
        let along_um = random.below(link.length_um / METER_UM + 1) * METER_UM;
        link.walkable.then_some(Location {
            link: LinkId(id),
            along_um,
        })
    })
}

#[test]
fn costs_agree_with_petgraph() {
    for sloping in [false, true] {
        for_each_network(sloping, |network, links, random, case| {
            let mut graph = DiGraph::<(), u64>::new();
            for _ in network.node_ids() {
                graph.add_node(());
            }
            for link in links.iter().filter(|link| link.walkable) {
                let (from, to) = (NodeIndex::new(link.from.0 as usize), NodeIndex::new(link.to.0 as usize));
                graph.add_edge(from, to, link.cost_forward);
                graph.add_edge(to, from, link.cost_backward);
            }
            let source = some_node(network, random);
            let start = NodeIndex::new(source.0 as usize);
            let theirs = petgraph::algo::dijkstra(&graph, start, None, |edge| *edge.weight());
            let ours = costs(
                network,
                &spread(network, &[Source::node(source)], Direction::From, None),
            );
            for node in network.node_ids() {
                let other = theirs.get(&NodeIndex::new(node.0 as usize)).copied();
                assert_eq!(ours[node.0 as usize], other, "{case}: {node:?}");
            }
        });
    }
}

#[test]
fn walking_to_is_walking_from_with_every_link_turned() {
    for sloping in [false, true] {
        for_each_network(sloping, |network, links, random, case| {
            let source = Source::node(some_node(network, random));
            let to = costs(network, &spread(network, &[source], Direction::To, None));
            let turned: Vec<LinkDraft> = links
                .iter()
                .map(|link| LinkDraft {
                    cost_forward: link.cost_backward,
                    cost_backward: link.cost_forward,
                    ..link.clone()
                })
                .collect();
            let nodes: Vec<PlanPoint> = network.node_ids().filter_map(|node| network.node_point(node)).collect();
            let turned = Network::build(&nodes, &turned).expect("legal drafts");
            let from = costs(&turned, &spread(&turned, &[source], Direction::From, None));
            assert_eq!(to, from, "{case}");
            if !sloping {
                let same = costs(network, &spread(network, &[source], Direction::From, None));
                assert_eq!(to, same, "{case}: on level ground both ways cost the same");
            }
        });
    }
}

#[test]
fn a_new_link_never_lengthens_a_walk() {
    for_each_network(true, |network, links, random, case| {
        let source = Source::node(some_node(network, random));
        let before = costs(network, &spread(network, &[source], Direction::From, None));
        let (from, to) = (some_node(network, random), some_node(network, random));
        let mut more = links.to_vec();
        more.push(LinkDraft::level(from, to, (1 + random.below(100)) * METER_UM));
        let nodes: Vec<PlanPoint> = network.node_ids().filter_map(|node| network.node_point(node)).collect();
        let larger = Network::build(&nodes, &more).expect("legal drafts");
        let after = costs(&larger, &spread(&larger, &[source], Direction::From, None));
        for (node, (before, after)) in before.iter().zip(after).enumerate() {
            let shorter = before.is_none() || after.is_some_and(|after| Some(after) <= *before);
            assert!(shorter, "{case}: node {node} from {before:?} to {after:?}");
        }
    });
}

/// The triangle inequality, and symmetry: from a to b and on to c is no shorter than from a to c.
#[test]
fn no_detour_is_shorter() {
    for_each_network(true, |network, _, random, case| {
        let (a, b) = (some_node(network, random), some_node(network, random));
        let from_a = spread(network, &[Source::node(a)], Direction::From, None);
        let from_b = spread(network, &[Source::node(b)], Direction::From, None);
        let Some(to_b) = from_a.at_node(network, b) else { return };
        for c in network.node_ids() {
            if let Some(on) = from_b.at_node(network, c) {
                let straight = from_a.at_node(network, c);
                assert!(straight.is_some_and(|straight| straight <= to_b + on), "{case}: {c:?}");
            }
        }
    });
}

/// Every meter of every link, by a graph whose nodes are all those meters.
#[test]
fn reach_agrees_with_walking_meter_by_meter() {
    for_each_network(false, |network, _, random, case| {
        let Some(place) = some_place(network, random) else {
            return;
        };
        let limit = random.below(400) * METER_UM;
        // One node for each network node, then one for each whole meter inside each link.
        let mut graph = DiGraph::<(), u64>::new();
        let ends: Vec<NodeIndex> = network.node_ids().map(|_| graph.add_node(())).collect();
        let mut meters: Vec<Vec<NodeIndex>> = Vec::new();
        for link in network.links() {
            let count = (link.length_um / METER_UM) as usize;
            let mut row = vec![ends[link.from.0 as usize]];
            row.extend((1..count).map(|_| graph.add_node(())));
            row.push(ends[link.to.0 as usize]);
            for pair in row.windows(2).filter(|_| link.walkable) {
                graph.add_edge(pair[0], pair[1], METER_UM);
                graph.add_edge(pair[1], pair[0], METER_UM);
            }
            meters.push(row);
        }
        let at = |place: Location| meters[place.link.0 as usize][(place.along_um / METER_UM) as usize];
        let theirs = petgraph::algo::dijkstra(&graph, at(place), None, |edge| *edge.weight());
        let field = spread(network, &[Source::location(place)], Direction::To, Some(limit));
        let reach = Reach::within(network, &field, limit);
        let mut reached_um = 0;
        for (id, link) in network
            .link_ids()
            .zip(network.links())
            .filter(|(_, link)| link.walkable)
        {
            for meter in 0..=link.length_um / METER_UM {
                let here = Location {
                    link: id,
                    along_um: meter * METER_UM,
                };
                let cost = theirs.get(&at(here)).copied().filter(|&cost| cost <= limit);
                let ours = field.at(network, here).filter(|&cost| cost <= limit);
                assert_eq!(ours, cost, "{case}, limit {limit}: {here:?}");
            }
            for meter in 0..link.length_um / METER_UM {
                let both = [meter, meter + 1].map(|meter| {
                    let here = Location {
                        link: id,
                        along_um: meter * METER_UM,
                    };
                    theirs.get(&at(here)).copied().filter(|&cost| cost <= limit)
                });
                // Between two whole meters both ends' budgets are walked off, and meet at most in the middle.
                let left = both.map(|cost| cost.map_or(0, |cost| (limit - cost).min(METER_UM)));
                reached_um += (left[0] + left[1]).min(METER_UM);
            }
        }
        assert_eq!(reach.length_um(), reached_um, "{case}, limit {limit} from {place:?}");
    });
}

/// What is reached of a link without a source is the head and the tail, or all of it when they pass each other.
#[test]
fn heads_and_tails_merge_when_they_pass_the_length() {
    for_each_network(false, |network, _, random, case| {
        let limit = random.below(300 * METER_UM);
        let field = spread(
            network,
            &[Source::node(some_node(network, random))],
            Direction::From,
            Some(limit),
        );
        let reach = Reach::within(network, &field, limit);
        for (id, link) in network
            .link_ids()
            .zip(network.links())
            .filter(|(_, link)| link.walkable)
        {
            let left = |node| field.at_node(network, node).map_or(0, |cost| limit - cost);
            let expected = (left(link.from) + left(link.to)).min(link.length_um);
            let reached: u64 = reach.on_link(id).iter().map(|piece| piece.length_um()).sum();
            assert_eq!(reached, expected, "{case}, limit {limit}: {id:?}");
            let pieces = if expected == link.length_um {
                1
            } else {
                reach.on_link(id).len()
            };
            assert_eq!(reach.on_link(id).len(), pieces, "{case}: a whole link is one piece");
        }
    });
}

#[test]
fn a_larger_limit_reaches_no_less_and_several_sources_reach_their_union() {
    for_each_network(true, |network, _, random, case| {
        let (Some(a), Some(b)) = (some_place(network, random), some_place(network, random)) else {
            return;
        };
        let (near, far) = (random.below(200 * METER_UM), random.below(200 * METER_UM));
        let limit = near + far;
        let reach = |sources: &[Source], limit| {
            Reach::within(network, &spread(network, sources, Direction::To, Some(limit)), limit)
        };
        let (a, b) = (Source::location(a), Source::location(b));
        let (small, large) = (reach(&[a], near), reach(&[a], limit));
        assert_eq!(Reach::intersection(&[&small, &large]), small, "{case}");
        let both = reach(&[a, b], limit);
        let union = Reach::union(&[&large, &reach(&[b], limit)]);
        // Where one source's head meets the other's tail to the micrometer the union joins them, as does the search.
        assert_eq!(both.length_um(), union.length_um(), "{case}");
        assert_eq!(both, union, "{case}");
    });
}

/// All of a stretch as a source is at least as near as any single place on it, and nearest to one of its two ends.
#[test]
fn a_stretch_is_as_near_as_its_nearer_end() {
    for_each_network(true, |network, _, random, case| {
        let Some(place) = some_place(network, random) else {
            return;
        };
        let length_um = network.links()[place.link.0 as usize].length_um;
        let to_um = place.along_um + random.below(length_um - place.along_um + 1);
        let stretch = Stretch {
            link: place.link,
            from_um: place.along_um,
            to_um,
        };
        for direction in [Direction::From, Direction::To] {
            let whole = costs(network, &spread(network, &[Source::stretch(stretch)], direction, None));
            let ends = [
                place,
                Location {
                    link: place.link,
                    along_um: to_um,
                },
            ]
            .map(Source::location);
            let ends = costs(network, &spread(network, &ends, direction, None));
            assert_eq!(whole, ends, "{case}: {stretch:?}");
        }
    });
}

#[test]
fn numbering_nodes_and_links_otherwise_changes_no_cost() {
    for_each_network(true, |network, links, random, case| {
        let count = network.node_count();
        let turn = random.below(count as u64) as usize;
        let number = |node: NodeId| NodeId(((node.0 as usize + turn) % count) as u32);
        let mut nodes = vec![PlanPoint::new(0, 0); count];
        for node in network.node_ids() {
            nodes[number(node).0 as usize] = network.node_point(node).expect("a node");
        }
        let renumbered: Vec<LinkDraft> = links
            .iter()
            .rev()
            .map(|link| LinkDraft {
                from: number(link.from),
                to: number(link.to),
                ..link.clone()
            })
            .collect();
        let other = Network::build(&nodes, &renumbered).expect("legal drafts");
        let source = some_node(network, random);
        let here = spread(network, &[Source::node(source)], Direction::From, None);
        let there = spread(&other, &[Source::node(number(source))], Direction::From, None);
        for node in network.node_ids() {
            assert_eq!(
                here.at_node(network, node),
                there.at_node(&other, number(node)),
                "{case}: {node:?}"
            );
        }
    });
}
