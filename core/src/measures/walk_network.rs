//! The network people walk in a fabric, and the walk to the nearest neighborhood center.
//!
//! Cost is length in micrometers: level ground, one pace. Streets whose section has no walk are links nobody walks.

use crate::fabric::Fabric;
use crate::measures::place_sources::place_sources;
use crate::network::graph::NetworkFault;
use crate::network::{CostField, Direction, LinkDraft, Network, NodeId, Source};
use crate::plan::{AlternativeId, Document, PlaceKind};

/// The walking network of a fabric: link `n` of the network is link `n` of [`Fabric::links`].
///
/// # Errors
/// What the network refuses; a fabric gives it no reason to.
pub fn walk_network(fabric: &Fabric) -> Result<Network, Vec<NetworkFault>> {
    let drafts: Vec<LinkDraft> = fabric
        .links
        .links
        .iter()
        .map(|link| {
            let arrangement = &fabric.arrangement;
            let inner = link.half_edges.iter().skip(1);
            LinkDraft {
                walkable: fabric.lines.streets[link.street as usize].walkable,
                corners: inner
                    .map(|half_edge| arrangement.point(arrangement.origin(*half_edge)))
                    .collect(),
                ..LinkDraft::level(NodeId(link.ends[0]), NodeId(link.ends[1]), link.length_um)
            }
        })
        .collect();
    Network::build(&fabric.links.nodes, &drafts)
}

/// Works the walk to the nearest center into `field`.
///
/// # Errors
/// Why there is none: no center is drawn, or no street a person can walk on.
pub fn walk_to_center(
    document: &Document,
    alternative: AlternativeId,
    network: &Network,
    field: &mut CostField,
) -> Result<(), String> {
    let marks = document
        .alternatives
        .get(&alternative)
        .map(|alternative| &alternative.marks);
    let places = marks
        .into_iter()
        .flat_map(|marks| marks.values())
        .filter_map(|mark| mark.as_place());
    let centers: Vec<_> = places.filter(|place| place.kind == PlaceKind::Center).collect();
    let sources: Vec<Source> = centers
        .iter()
        .flat_map(|center| place_sources(network, &center.footprint))
        .collect();
    let outcome = field.spread(network, &sources, Direction::To, None);
    if centers.is_empty() {
        return Err("no neighborhood center is drawn".to_owned());
    }
    if sources.is_empty() {
        return Err("no street a person can walk on is drawn".to_owned());
    }
    outcome.map_err(|faults| {
        faults
            .iter()
            .map(|(_, fault)| fault.to_string())
            .collect::<Vec<_>>()
            .join("; ")
    })
}
