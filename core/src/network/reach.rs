//! Which part of every link lies within a limit: the walk-shed, exact to the micrometer.
//!
//! A link is reached on a head and a tail, which join when together they pass its length; a source on the link adds
//! its own piece. Several reaches intersect into "all five within ten minutes" and unite into "any center".
//!
//! Pieces are closed and have length; a place at exactly the limit counts by its cost ([`CostField::at`]), also where
//! the reach only touches a node and so has no piece on the next link.

use super::cost_field::CostField;
use super::graph::{LinkId, Location, Network, NodeId, Stretch};
use crate::order;

/// A set of pieces of links, disjoint, in order of link and position. See the [module](self).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reach {
    pieces: Vec<Stretch>,
}

impl Reach {
    /// The part of the network whose cost is at most `limit`; `limit` must not exceed the field's own.
    ///
    /// O(links touched), whatever the network's size.
    #[must_use]
    pub fn within(network: &Network, field: &CostField, limit: u64) -> Self {
        let mut pieces: Vec<Stretch> = Vec::new();
        let mut spans = Vec::new();
        for link in field.touched_links(network) {
            let Some(scales) = network.link(link).map(|link| field.scales(link)) else {
                continue;
            };
            field.spans(network, link, &mut spans);
            for span in &spans {
                for (from_um, to_um) in span.within(scales, limit).into_iter().flatten() {
                    append(&mut pieces, Stretch { link, from_um, to_um });
                }
            }
        }
        pieces.retain(|piece| piece.length_um() > 0);
        Self { pieces }
    }

    /// All of these stretches together, overlapping and touching ones joined, those without length left out.
    #[must_use]
    pub fn of_stretches(stretches: &[Stretch]) -> Self {
        let mut sorted: Vec<Stretch> = stretches
            .iter()
            .copied()
            .filter(|piece| piece.from_um < piece.to_um)
            .collect();
        order::sort(&mut sorted);
        let mut pieces = Vec::with_capacity(sorted.len());
        for piece in sorted {
            append(&mut pieces, piece);
        }
        Self { pieces }
    }

    /// The pieces, in order of link and position; none touches the next on its link.
    #[must_use]
    pub fn pieces(&self) -> &[Stretch] {
        &self.pieces
    }

    /// The pieces on one link, in order of position.
    #[must_use]
    pub fn on_link(&self, link: LinkId) -> &[Stretch] {
        let start = self.pieces.partition_point(|piece| piece.link < link);
        let end = self.pieces.partition_point(|piece| piece.link <= link);
        &self.pieces[start..end]
    }

    /// Whether a place lies on a piece, ends included.
    #[must_use]
    pub fn contains(&self, place: Location) -> bool {
        self.on_link(place.link)
            .iter()
            .any(|piece| piece.from_um <= place.along_um && place.along_um <= piece.to_um)
    }

    /// Length of all pieces in micrometers.
    #[must_use]
    pub fn length_um(&self) -> u64 {
        self.pieces.iter().map(|piece| piece.length_um()).sum()
    }

    /// How much of this stretch is reached, in micrometers.
    #[must_use]
    pub fn length_on_um(&self, stretch: Stretch) -> u64 {
        self.on_link(stretch.link)
            .iter()
            .map(|piece| {
                piece
                    .to_um
                    .min(stretch.to_um)
                    .saturating_sub(piece.from_um.max(stretch.from_um))
            })
            .sum()
    }

    /// The links reached over their whole length, in order.
    #[must_use]
    pub fn whole_links(&self, network: &Network) -> Vec<LinkId> {
        self.pieces
            .iter()
            .filter(|piece| {
                network
                    .link(piece.link)
                    .is_some_and(|link| piece.length_um() == link.length_um)
            })
            .map(|piece| piece.link)
            .collect()
    }

    /// What lies in every one of these reaches: exact. Nothing for an empty list.
    #[must_use]
    pub fn intersection(reaches: &[&Self]) -> Self {
        let Some((first, others)) = reaches.split_first() else {
            return Self::default();
        };
        others.iter().fold((*first).clone(), |common, other| common.and(other))
    }

    /// What lies in any of these reaches.
    #[must_use]
    pub fn union(reaches: &[&Self]) -> Self {
        let all: Vec<Stretch> = reaches.iter().flat_map(|reach| reach.pieces.iter().copied()).collect();
        Self::of_stretches(&all)
    }

    /// What lies in both: one walk along both lists.
    fn and(&self, other: &Self) -> Self {
        let (mut left, mut right) = (self.pieces.iter().peekable(), other.pieces.iter().peekable());
        let mut pieces = Vec::new();
        while let (Some(a), Some(b)) = (left.peek(), right.peek()) {
            if a.link == b.link {
                let (from_um, to_um) = (a.from_um.max(b.from_um), a.to_um.min(b.to_um));
                if from_um < to_um {
                    pieces.push(Stretch {
                        link: a.link,
                        from_um,
                        to_um,
                    });
                }
            }
            if (a.link, a.to_um) <= (b.link, b.to_um) {
                left.next();
            } else {
                right.next();
            }
        }
        Self { pieces }
    }

    /// Where the reach ends although the street goes on, in order of link: the ends of pieces inside links, and the
    /// nodes at which some walkable links are reached and others are not (each node once, as the first place of the
    /// first link not reached there).
    #[must_use]
    pub fn frontier(&self, network: &Network) -> Vec<Location> {
        let mut places = Vec::new();
        // Of every node, whether it is reached along some link, and the first place of the first link that it is not.
        let mut at_nodes: Vec<(bool, Option<Location>)> = vec![(false, None); network.node_count()];
        let mut note = |node: NodeId, is_reached: bool, link: LinkId, along_um: u64| {
            if let Some((reached, missed)) = at_nodes.get_mut(node.0 as usize) {
                *reached |= is_reached;
                if !is_reached {
                    missed.get_or_insert(Location { link, along_um });
                }
            }
        };
        for (id, link) in network.link_ids().zip(network.links()) {
            if !link.walkable {
                continue;
            }
            let pieces = self.on_link(id);
            let starts = pieces.first().is_some_and(|piece| piece.from_um == 0);
            let finishes = pieces.last().is_some_and(|piece| piece.to_um == link.length_um);
            note(link.from, starts, id, 0);
            note(link.to, finishes, id, link.length_um);
            let inner = pieces.iter().flat_map(|piece| [piece.from_um, piece.to_um]);
            places.extend(
                inner
                    .filter(|&along_um| 0 < along_um && along_um < link.length_um)
                    .map(|along_um| Location { link: id, along_um }),
            );
        }
        let edges = at_nodes.into_iter().filter(|(is_reached, _)| *is_reached);
        places.extend(edges.filter_map(|(_, missed)| missed));
        order::sort(&mut places);
        places
    }
}

/// Adds a piece after the last, joined to it when they touch.
fn append(pieces: &mut Vec<Stretch>, piece: Stretch) {
    match pieces.last_mut() {
        Some(last) if last.link == piece.link && piece.from_um <= last.to_um => {
            last.to_um = last.to_um.max(piece.to_um)
        }
        _ => pieces.push(piece),
    }
}

#[cfg(test)]
mod tests;
