//! Shortest paths: one full run, a walk-shed of 800 m with its pieces, the nearest of five; and petgraph on the same.
//!
//! The network is the arrangement's own edges, so of more links than segments were drawn where they cross.
//! Full runs take several sources in turn, so that no processor learns one search by heart.
//! `--write FOLDER` writes the networks instead, so that other libraries can be measured on the same: little-endian
//! `u32` nodes, links and sixteen source nodes, then for each link `u32` both nodes and `u64` length in micrometers, then
//! for each node `i32` x and y in millimeters.

mod common;

use std::path::PathBuf;

use hobnail_core::fabric::{Arrangement, SourceId, SourceSegment};
use hobnail_core::network::{CostField, Direction, LinkDraft, Network, NodeId, Reach, Source};
use hobnail_core::plan::PlanPoint;
use petgraph::graph::{DiGraph, NodeIndex};

/// Nodes and links (both nodes, length) of what was drawn.
struct Streets {
    nodes: Vec<PlanPoint>,
    links: Vec<(u32, u32, u64)>,
}

/// Measures, or writes the networks.
pub fn main() -> std::io::Result<()> {
    let mut arguments = std::env::args().skip_while(|argument| argument != "--write").skip(1);
    let folder = arguments.next().map(PathBuf::from);
    for (shape, make) in common::SHAPES {
        for size in [1_000, 10_000, 100_000] {
            let streets = streets_of(&make(size));
            let centers = five_centers(&streets.nodes);
            let network = network_of(&streets);
            let sources = sources_of(&network, centers[0]);
            match &folder {
                Some(folder) => std::fs::write(
                    folder.join(format!("{shape}-{size}.graph")),
                    bytes_of(&streets, &sources),
                )?,
                None => measure(&streets, &network, centers, &sources, &format!("{shape}/{size}")),
            }
        }
    }
    Ok(())
}

fn streets_of(pieces: &[common::Piece]) -> Streets {
    let numbered = pieces.iter().zip(0..);
    let segments: Vec<SourceSegment> = numbered
        .map(|(&[a, b], index)| SourceSegment::new(a, b, SourceId(index)))
        .collect();
    let arrangement = Arrangement::of(&segments);
    let link = |edge| {
        let [a, b] = arrangement.ends(edge);
        (a.0, b.0, arrangement.length_um(edge))
    };
    Streets {
        nodes: arrangement.vertices().to_vec(),
        links: arrangement.edges().map(link).collect(),
    }
}

/// The nodes nearest to the middle of the bounds and to the middles of its quarters.
fn five_centers(nodes: &[PlanPoint]) -> [NodeId; 5] {
    let bounds = |part: fn(&PlanPoint) -> i32| {
        let low = nodes.iter().map(part).min().unwrap_or(0);
        let high = nodes.iter().map(part).max().unwrap_or(0);
        move |quarters: i32| low + (high - low) / 4 * quarters
    };
    let (x, y) = (bounds(|point| point.x_mm), bounds(|point| point.y_mm));
    [(2, 2), (1, 1), (3, 1), (1, 3), (3, 3)].map(|(east, north)| {
        let at = PlanPoint::new(x(east), y(north));
        let nearest = (0..nodes.len()).min_by_key(|&node| nodes[node].squared_distance_mm2(at));
        NodeId(nearest.unwrap_or(0) as u32)
    })
}

/// How many sources full runs take in turn.
const SOURCES: usize = 16;

/// Nodes spread evenly over the numbers of all that can be reached from a node.
fn sources_of(network: &Network, center: NodeId) -> Vec<NodeId> {
    let mut field = CostField::new();
    let spread = field.spread(network, &[Source::node(center)], Direction::From, None);
    let reached: Vec<NodeId> = network
        .node_ids()
        .filter(|&node| spread.is_ok() && field.at_node(network, node).is_some())
        .collect();
    (0..SOURCES)
        .map(|turn| reached[reached.len() * turn / SOURCES])
        .collect()
}

#[allow(
    clippy::expect_used,
    reason = "a bench of a network that can not be built has nothing to measure"
)]
fn network_of(streets: &Streets) -> Network {
    Network::build(&streets.nodes, &drafts_of(streets)).expect("an arrangement's edges have lengths")
}

fn drafts_of(streets: &Streets) -> Vec<LinkDraft> {
    let level = |&(a, b, length_um): &(u32, u32, u64)| LinkDraft::level(NodeId(a), NodeId(b), length_um);
    streets.links.iter().map(level).collect()
}

fn bytes_of(streets: &Streets, sources: &[NodeId]) -> Vec<u8> {
    let counts = [streets.nodes.len() as u32, streets.links.len() as u32];
    let header = counts.into_iter().chain(sources.iter().map(|source| source.0));
    let mut bytes: Vec<u8> = header.flat_map(u32::to_le_bytes).collect();
    for &(a, b, length_um) in &streets.links {
        bytes.extend(a.to_le_bytes());
        bytes.extend(b.to_le_bytes());
        bytes.extend(length_um.to_le_bytes());
    }
    let coordinates = streets.nodes.iter().flat_map(|point| [point.x_mm, point.y_mm]);
    bytes.extend(coordinates.flat_map(i32::to_le_bytes));
    bytes
}

fn measure(streets: &Streets, network: &Network, centers: [NodeId; 5], sources: &[NodeId], name: &str) {
    let drafts = drafts_of(streets);
    common::measure(&format!("build/{name}"), || Network::build(&streets.nodes, &drafts));
    let mut field = CostField::new();
    let mut turns = sources.iter().cycle();
    let mut next = || turns.next().copied().unwrap_or(centers[0]);
    common::measure(&format!("single/{name}"), || {
        field.spread(network, &[Source::node(next())], Direction::From, None)
    });
    let one = [Source::node(centers[0])];
    let within_um = 800_000_000;
    common::measure(&format!("shed/{name}"), || {
        let spread = field.spread(network, &one, Direction::To, Some(within_um));
        spread.map(|()| Reach::within(network, &field, within_um))
    });
    let numbered = centers.iter().zip(0..);
    let five: Vec<Source> = numbered
        .map(|(&center, owner)| Source::node(center).owned_by(owner))
        .collect();
    common::measure(&format!("nearest5/{name}"), || {
        field.spread(network, &five, Direction::To, None)
    });
    let mut graph = DiGraph::<(), u64>::new();
    for _ in &streets.nodes {
        graph.add_node(());
    }
    for &(a, b, length_um) in &streets.links {
        let (a, b) = (NodeIndex::new(a as usize), NodeIndex::new(b as usize));
        graph.add_edge(a, b, length_um);
        graph.add_edge(b, a, length_um);
    }
    common::measure(&format!("petgraph/{name}"), || {
        let start = NodeIndex::new(next().0 as usize);
        petgraph::algo::dijkstra(&graph, start, None, |edge| *edge.weight())
    });
}
