//! The network people walk in a fabric.
//!
//! Cost is length in micrometers: level ground, one pace. Streets whose section has no walk are links nobody walks.

use crate::fabric::Fabric;
use crate::network::graph::NetworkFault;
use crate::network::{LinkDraft, LinkId, Network, NodeId, Stretch};
use crate::plan::{AlternativeId, Document};

/// A walking network and how it lies on its fabric.
#[derive(Clone, Debug)]
pub struct WalkNetwork {
    network: Network,
    pace_mm_per_s: u64,
}

impl WalkNetwork {
    /// The walking network of a fabric: link `n` of the network is link `n` of [`Fabric::links`].
    ///
    /// # Errors
    /// What the network refuses; a fabric gives it no reason to.
    pub fn of(document: &Document, _alternative: AlternativeId, fabric: &Fabric) -> Result<Self, Vec<NetworkFault>> {
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
        Ok(Self {
            network: Network::build(&fabric.links.nodes, &drafts)?,
            pace_mm_per_s: u64::from(document.settings.walking_pace_mm_per_s.max(1)),
        })
    }

    /// The network.
    #[must_use]
    pub const fn network(&self) -> &Network {
        &self.network
    }

    /// The speed walking times are worked at.
    #[must_use]
    pub const fn base_speed_m_per_s(&self) -> f64 {
        self.pace_mm_per_s as f64 / 1e3
    }

    /// Cost of a second of walking: a pace of one millimeter per second is a thousand micrometers of cost per second.
    #[must_use]
    pub const fn cost_per_s(&self) -> u64 {
        self.pace_mm_per_s * 1_000
    }

    /// Whether walking there may cost something else than walking back.
    #[must_use]
    pub const fn is_sloping(&self) -> bool {
        false
    }

    /// Whether a link is a piece of street.
    #[must_use]
    pub const fn is_street(&self, _link: LinkId) -> bool {
        true
    }

    /// Cost of a straight walk over level ground.
    #[must_use]
    pub const fn cost_of_level_um(&self, length_um: u64) -> u64 {
        length_um
    }

    /// Visits the stretches of the network that make up a stretch of the fabric's links, as far as people walk there.
    pub fn for_each_piece(&self, stretch: Stretch, mut visit: impl FnMut(Stretch)) {
        if self.network.link(stretch.link).is_some_and(|link| link.walkable) {
            visit(stretch);
        }
    }
}
