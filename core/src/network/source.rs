//! Where a search starts.

use std::fmt;

use super::graph::{LinkId, Location, MOST_COST, Network, NodeId, Stretch};
use crate::say;

/// Where a source is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SourcePlace {
    /// A node.
    Node(NodeId),
    /// A piece of a link, or a single place on it.
    Stretch(Stretch),
}

/// One source of a search.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Where it is.
    pub place: SourcePlace,
    /// The cost it starts at (an access or a wait).
    pub cost: u64,
    /// The number it hands to what it serves: one center may have several sources.
    pub owner: u32,
}

impl Source {
    /// A node, at no cost, owner 0.
    #[must_use]
    pub fn node(node: NodeId) -> Self {
        Self {
            place: SourcePlace::Node(node),
            cost: 0,
            owner: 0,
        }
    }

    /// A place on a link, at no cost, owner 0.
    #[must_use]
    pub fn location(place: Location) -> Self {
        Self::stretch(place.into())
    }

    /// A stretch of a link, all of it at no cost, owner 0.
    #[must_use]
    pub fn stretch(stretch: Stretch) -> Self {
        Self {
            place: SourcePlace::Stretch(stretch),
            cost: 0,
            owner: 0,
        }
    }

    /// The same source starting at this cost.
    #[must_use]
    pub fn starting_at(self, cost: u64) -> Self {
        Self { cost, ..self }
    }

    /// The same source with this owner.
    #[must_use]
    pub fn owned_by(self, owner: u32) -> Self {
        Self { owner, ..self }
    }
}

/// Why a source cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SourceFault {
    /// Its node is not in the network.
    NodeMissing(NodeId),
    /// Its link is not in the network.
    LinkMissing(LinkId),
    /// It stands on a link nobody walks.
    NotWalkable(LinkId),
    /// Its stretch ends before it starts or beyond its link's end.
    BeyondLink(Stretch),
    /// It starts at more than the most a link may cost.
    StartsTooHigh(u64),
}

impl fmt::Display for SourceFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = match self {
            Self::NodeMissing(node) => say!("network-source-no-node", node = node.0),
            Self::LinkMissing(link) => say!("network-source-no-link", link = link.0),
            Self::NotWalkable(link) => say!("network-source-not-walkable", link = link.0),
            Self::BeyondLink(stretch) => say!("network-source-beyond", link = stretch.link.0),
            Self::StartsTooHigh(cost) => say!("network-source-too-high", cost = cost.to_string()),
        };
        out.write_str(&words)
    }
}

impl std::error::Error for SourceFault {}

/// What keeps a source from being used.
pub(super) fn fault_of(network: &Network, source: &Source) -> Option<SourceFault> {
    if source.cost > MOST_COST {
        return Some(SourceFault::StartsTooHigh(source.cost));
    }
    match source.place {
        SourcePlace::Node(node) => network
            .node_point(node)
            .is_none()
            .then_some(SourceFault::NodeMissing(node)),
        SourcePlace::Stretch(stretch) => {
            let Some(link) = network.link(stretch.link) else {
                return Some(SourceFault::LinkMissing(stretch.link));
            };
            if !link.walkable {
                return Some(SourceFault::NotWalkable(stretch.link));
            }
            let within = stretch.from_um <= stretch.to_um && stretch.to_um <= link.length_um;
            (!within).then_some(SourceFault::BeyondLink(stretch))
        }
    }
}
