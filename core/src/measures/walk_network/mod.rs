//! The network people walk in a fabric.
//!
//! On level ground cost is length in micrometers; where heights are known it is microseconds at the plan's walking pace
//! by Tobler's function ([`crate::network::pace`]), and walking there differs from walking back. Within one link cost is
//! spread evenly. Streets without a walk at speed ([`waits`]) are links nobody walks. Wide and fast streets cost a wait
//! where a walk crosses them at an intersection ([`corners`]): links of their own, one micrometer long. Barriers cut
//! links but at crossings ([`barriers`]).
//!
//! Not counted: crossing to the other side of a street between intersections, stairs, and how dark or loud a way is.

pub mod barriers;
pub mod corners;
pub mod ground;
pub mod waits;

mod drafting;

use crate::fabric::Fabric;
use crate::network::graph::NetworkFault;
use crate::network::{LinkId, Network, Stretch};
use crate::order::OrderedMap;
use crate::plan::{AlternativeId, Document};
use drafting::Drafting;
use ground::Ground;

/// A walking network and how it lies on its fabric.
#[derive(Clone, Debug)]
pub struct WalkNetwork {
    network: Network,
    pace_mm_per_s: u64,
    is_sloping: bool,
    /// Links from here on are waits.
    street_links: u32,
    /// For links of the fabric that a barrier cuts: where each piece starts along the link, and its own link.
    pieces: OrderedMap<LinkId, Vec<(u64, LinkId)>>,
}

impl WalkNetwork {
    /// The walking network of a fabric. Link `n` of the network is link `n` of [`Fabric::links`], or its first piece
    /// where a barrier cuts it.
    ///
    /// Cost: O(n log n); every barrier's segments against the links near it.
    ///
    /// # Errors
    /// What the network refuses; a fabric gives it no reason to.
    pub fn of(document: &Document, alternative: AlternativeId, fabric: &Fabric) -> Result<Self, Vec<NetworkFault>> {
        let ground = document.topography.as_ref().and_then(Ground::of);
        Drafting::of(document, alternative, fabric, ground.as_ref()).built()
    }

    /// The same network on level ground and without waits: cost is length alone, in micrometers.
    ///
    /// # Errors
    /// What the network refuses; a fabric gives it no reason to.
    pub fn of_lengths(
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
    ) -> Result<Self, Vec<NetworkFault>> {
        Drafting::of(document, alternative, fabric, None)
            .without_waits()
            .built()
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

    /// Cost of a second: micrometers at the pace, or microseconds.
    #[must_use]
    pub const fn cost_per_s(&self) -> u64 {
        if self.is_sloping {
            1_000_000
        } else {
            self.pace_mm_per_s * 1_000
        }
    }

    /// Whether heights are known, so that walking there may cost something else than walking back.
    #[must_use]
    pub const fn is_sloping(&self) -> bool {
        self.is_sloping
    }

    /// Whether a link is a piece of street, and not a wait.
    #[must_use]
    pub const fn is_street(&self, link: LinkId) -> bool {
        link.0 < self.street_links
    }

    /// Cost of a straight walk over level ground.
    #[must_use]
    pub const fn cost_of_level_um(&self, length_um: u64) -> u64 {
        if self.is_sloping {
            length_um.saturating_mul(1_000) / self.pace_mm_per_s
        } else {
            length_um
        }
    }

    /// Visits the stretches of the network that make up a stretch of the fabric's links, as far as people walk there.
    pub fn for_each_piece(&self, stretch: Stretch, mut visit: impl FnMut(Stretch)) {
        if !self.network.link(stretch.link).is_some_and(|link| link.walkable) {
            return;
        }
        let Some(pieces) = self.pieces.get(&stretch.link) else {
            return visit(stretch);
        };
        let ends = pieces.iter().skip(1).map(|(start_um, _)| *start_um).chain([u64::MAX]);
        for ((start_um, link), end_um) in pieces.iter().zip(ends) {
            let (from_um, to_um) = (stretch.from_um.max(*start_um), stretch.to_um.min(end_um));
            // A place on a cut belongs to the piece after it alone.
            let is_in = from_um < to_um || (stretch.from_um == stretch.to_um && from_um == to_um && from_um < end_um);
            if is_in {
                visit(Stretch {
                    link: *link,
                    from_um: from_um - start_um,
                    to_um: to_um - start_um,
                });
            }
        }
    }
}

#[cfg(test)]
mod tests;
