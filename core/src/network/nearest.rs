//! Which of several centers serves each part of every link.

use super::cost_field::CostField;
use super::graph::{LinkId, Network, Stretch};
use super::scale::Scale;
use super::spans::{Served, Span};

/// A piece of a link and the owner of the nearest source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ServedPiece {
    /// The piece.
    pub stretch: Stretch,
    /// The owner, as given with the field's sources; the lowest of several equally near.
    pub owner: u32,
}

/// Cuts the part of a link within `limit` where the nearest owner changes: pieces in order, neighbors of one owner
/// joined. The place between two owners is found to the micrometer; pieces without length are left out.
#[must_use]
pub fn served_pieces(network: &Network, field: &CostField, link: LinkId, limit: u64) -> Vec<ServedPiece> {
    let mut pieces: Vec<ServedPiece> = Vec::new();
    let Some(scales) = network.link(link).map(|link| field.scales(link)) else {
        return pieces;
    };
    let mut spans = Vec::new();
    field.spans(network, link, &mut spans);
    for span in &spans {
        for (from_um, to_um) in span.within(scales, limit).into_iter().flatten() {
            for (from_um, to_um, owner) in owners_between(span, scales, from_um, to_um) {
                match pieces.last_mut() {
                    Some(last) if last.owner == owner && last.stretch.to_um == from_um => last.stretch.to_um = to_um,
                    _ => pieces.push(ServedPiece {
                        stretch: Stretch { link, from_um, to_um },
                        owner,
                    }),
                }
            }
        }
    }
    pieces
}

/// The owners along part of a span: at most from the left, level, from the right.
fn owners_between(span: &Span, scales: (Scale, Scale), from_um: u64, to_um: u64) -> Vec<(u64, u64, u32)> {
    let (up, down) = scales;
    // Coming from the left only gets dearer and from the right only cheaper, so each holds one side of the part.
    let left = |along_um| span.coming_left(up, along_um);
    let others_right = |along_um| least([span.level, span.coming_right(down, along_um)]);
    let left_end = last_where(from_um, to_um, |along_um| beats(left(along_um), others_right(along_um)));
    let right = |along_um| span.coming_right(down, along_um);
    let others_left = |along_um| least([left(along_um), span.level]);
    let level_end = last_where(from_um, to_um, |along_um| {
        !beats(right(along_um), others_left(along_um))
    });
    let (left_end, level_end) = (left_end.unwrap_or(from_um), level_end.unwrap_or(from_um));
    let level_end = level_end.max(left_end);
    let parts = [
        (from_um, left_end, span.left),
        (left_end, level_end, span.level),
        (level_end, to_um, span.right),
    ];
    parts
        .into_iter()
        .filter_map(|(from_um, to_um, served)| {
            served
                .filter(|_| from_um < to_um)
                .map(|(_, owner)| (from_um, to_um, owner))
        })
        .collect()
}

/// The least of those present.
fn least(served: [Option<Served>; 2]) -> Option<Served> {
    served.into_iter().flatten().min()
}

/// Whether the first is there and not greater than the second.
fn beats(first: Option<Served>, second: Option<Served>) -> bool {
    match (first, second) {
        (Some(first), Some(second)) => first <= second,
        (first, _) => first.is_some(),
    }
}

/// The last position in `from..=to` at which `holds`, which stops holding once and for all; `None` when nowhere.
pub(super) fn last_where(from_um: u64, to_um: u64, holds: impl Fn(u64) -> bool) -> Option<u64> {
    if !holds(from_um) {
        return None;
    }
    let (mut low, mut high) = (from_um, to_um);
    while low < high {
        let middle = low + (high - low).div_ceil(2);
        if holds(middle) {
            low = middle;
        } else {
            high = middle - 1;
        }
    }
    Some(low)
}

#[cfg(test)]
mod tests;
