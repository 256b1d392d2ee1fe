//! Networks for the tests of this folder, and the slow, obvious answers they are held against.

use super::{Direction, LinkDraft, Location, Network, NodeId, Source, SourcePlace};
use crate::plan::PlanPoint;

/// A fixed stream of pseudorandom numbers.
pub struct Draws(pub u64);

impl Draws {
    pub fn below(&mut self, bound: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % bound
    }
}

/// A square grid: `side` nodes each way, `spacing_mm` apart, node `row × side + column`, links along rows first.
pub fn grid(side: i32, spacing_mm: i32) -> Network {
    let nodes: Vec<PlanPoint> = (0..side * side)
        .map(|index| PlanPoint::new(index % side * spacing_mm, index / side * spacing_mm))
        .collect();
    let mut links = Vec::new();
    for row in 0..side {
        for column in 0..side {
            let here = row * side + column;
            for (there, inside) in [(here + 1, column + 1 < side), (here + side, row + 1 < side)] {
                if inside {
                    let (from, to) = (NodeId(here as u32), NodeId(there as u32));
                    links.push(LinkDraft::level(from, to, spacing_mm as u64 * 1_000));
                }
            }
        }
    }
    Network::build(&nodes, &links).expect("a grid")
}

/// A small random network with loops, parallel links, links nobody walks, equal costs and several parts; links cost
/// the same both ways unless `sloping`.
pub fn random(seed: u64, sloping: bool) -> (Network, Vec<LinkDraft>) {
    let mut draws = Draws(seed);
    let node_count = 2 + draws.below(12);
    let nodes: Vec<PlanPoint> = (0..node_count)
        .map(|_| PlanPoint::new(draws.below(1_000) as i32, draws.below(1_000) as i32))
        .collect();
    let drafts: Vec<LinkDraft> = (0..1 + draws.below(20))
        .map(|_| {
            let (from, to) = (draws.below(node_count) as u32, draws.below(node_count) as u32);
            let length_um = 1 + draws.below(40);
            let mut draft = LinkDraft::level(NodeId(from), NodeId(to), length_um);
            if sloping {
                draft.cost_forward = 1 + draws.below(60);
                draft.cost_backward = 1 + draws.below(60);
            }
            draft.walkable = draws.below(8) != 0;
            draft
        })
        .collect();
    (Network::build(&nodes, &drafts).expect("a random network"), drafts)
}

/// Some sources on walkable links and nodes of a network.
pub fn random_sources(draws: &mut Draws, network: &Network, count: u64) -> Vec<Source> {
    (0..count)
        .map(|owner| {
            let id = draws.below(network.link_count() as u64) as u32;
            let link = network.links()[id as usize];
            let source = if link.walkable && draws.below(4) != 0 {
                let from_um = draws.below(link.length_um + 1);
                let to_um = from_um + draws.below(link.length_um + 1 - from_um);
                Source::stretch(super::Stretch {
                    link: super::LinkId(id),
                    from_um,
                    to_um,
                })
            } else {
                Source::node(NodeId(draws.below(network.node_count() as u64) as u32))
            };
            source
                .starting_at(draws.below(3) * draws.below(20))
                .owned_by(owner as u32)
        })
        .collect()
}

/// Cost and owner of every node by repeating every link until nothing changes (Bellman and Ford), from seeds worked
/// out for each source alone.
pub fn slow_nodes(network: &Network, sources: &[Source], direction: Direction) -> Vec<Option<(u64, u32)>> {
    let mut costs: Vec<Option<(u64, u32)>> = vec![None; network.node_count()];
    let lower = |place: &mut Option<(u64, u32)>, served: (u64, u32)| {
        let better = place.is_none_or(|old| served < old);
        if better {
            *place = Some(served);
        }
        better
    };
    for source in sources {
        match source.place {
            SourcePlace::Node(node) => {
                lower(&mut costs[node.0 as usize], (source.cost, source.owner));
            }
            SourcePlace::Stretch(stretch) => {
                let link = network.link(stretch.link).expect("a link");
                let away = |node_at_start: bool| {
                    let forward = (direction == Direction::From) != node_at_start;
                    let scale = link.scale(forward);
                    if node_at_start {
                        scale.up_to(stretch.from_um)
                    } else {
                        scale.cost - scale.up_to(stretch.to_um)
                    }
                };
                lower(
                    &mut costs[link.from.0 as usize],
                    (source.cost + away(true), source.owner),
                );
                lower(
                    &mut costs[link.to.0 as usize],
                    (source.cost + away(false), source.owner),
                );
            }
        }
    }
    loop {
        let mut changed = false;
        for link in network.links().iter().filter(|link| link.walkable) {
            let (there, back) = match direction {
                Direction::From => (link.cost_forward, link.cost_backward),
                Direction::To => (link.cost_backward, link.cost_forward),
            };
            let (a, b) = (link.from.0 as usize, link.to.0 as usize);
            if let Some((cost, owner)) = costs[a] {
                changed |= lower(&mut costs[b], (cost + there, owner));
            }
            if let Some((cost, owner)) = costs[b] {
                changed |= lower(&mut costs[a], (cost + back, owner));
            }
        }
        if !changed {
            return costs;
        }
    }
}

/// Cost and owner of a place by each way on its own: over either end of its link, and straight from every source on
/// the link; always in the same order. Nothing where nobody walks.
pub fn slow_ways(
    network: &Network,
    sources: &[Source],
    direction: Direction,
    nodes: &[Option<(u64, u32)>],
    place: Location,
) -> Vec<Option<(u64, u32)>> {
    let Some(link) = network.link(place.link).filter(|link| link.walkable) else {
        return Vec::new();
    };
    // Moving away from a source with growing position, and against it.
    let from = direction == Direction::From;
    let (up, down) = (link.scale(from), link.scale(!from));
    let at = place.along_um;
    let mut ways = vec![
        nodes[link.from.0 as usize].map(|(cost, owner)| (cost + up.up_to(at), owner)),
        nodes[link.to.0 as usize].map(|(cost, owner)| (cost + down.cost - down.up_to(at), owner)),
    ];
    for source in sources {
        if let SourcePlace::Stretch(stretch) = source.place
            && stretch.link == place.link
        {
            let right = up.up_to(at.max(stretch.to_um)) - up.up_to(stretch.to_um);
            let left = down.up_to(stretch.from_um) - down.up_to(at.min(stretch.from_um));
            ways.push(Some((source.cost + right + left, source.owner)));
        }
    }
    ways
}

/// Cost and owner of a place: the least of its ways.
pub fn slow_at(
    network: &Network,
    sources: &[Source],
    direction: Direction,
    nodes: &[Option<(u64, u32)>],
    place: Location,
) -> Option<(u64, u32)> {
    slow_ways(network, sources, direction, nodes, place)
        .into_iter()
        .flatten()
        .min()
}
