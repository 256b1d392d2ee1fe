//! The cost along whole links, as straight pieces in one list: what curves and maps of walking time are read from.
//!
//! [`CostProfile`](super::profile::CostProfile) answers for one stretch and is exact at every micrometer; this answers
//! for many links at once, in memory that is kept, and is exact at the ends of its pieces. Where two lines meet between
//! whole micrometers their piece ends at the micrometer before, so a cost may be one micrometer's worth too high there.
//! Parts of a link that are out of reach have no piece.

use super::cost_field::CostField;
use super::graph::{LinkId, Network};
use super::scale::Scale;
use super::spans::Span;

/// A straight piece of the cost along a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CostPiece {
    /// Where it starts along the link, in micrometers.
    pub from_um: u64,
    /// Where it ends; not before its start.
    pub to_um: u64,
    /// Cost at its start.
    pub from_cost: u64,
    /// Cost at its end.
    pub to_cost: u64,
}

impl CostPiece {
    /// Cost at a position within the piece, rounded to whole units.
    #[must_use]
    pub fn cost_at(&self, along_um: u64) -> u64 {
        if along_um <= self.from_um {
            return self.from_cost;
        }
        if along_um >= self.to_um {
            return self.to_cost;
        }
        let (run, step) = (self.to_um - self.from_um, along_um - self.from_um);
        let (low, high) = (self.from_cost.min(self.to_cost), self.from_cost.max(self.to_cost));
        let rise = if high - low == run {
            step
        } else {
            // Lengths and costs of links lie below 2^53, so the quotient is off by less than a unit.
            (step as f64 / run as f64 * (high - low) as f64).round() as u64
        };
        if self.from_cost <= self.to_cost {
            low + rise
        } else {
            high - rise
        }
    }

    /// The part of the piece between two positions; `None` where they do not overlap.
    #[must_use]
    pub fn between(&self, from_um: u64, to_um: u64) -> Option<Self> {
        let (from_um, to_um) = (self.from_um.max(from_um), self.to_um.min(to_um));
        (from_um <= to_um).then(|| Self {
            from_um,
            to_um,
            from_cost: self.cost_at(from_um),
            to_cost: self.cost_at(to_um),
        })
    }
}

/// The cost along some links. See the [module](self).
#[derive(Clone, Debug, Default)]
pub struct CostPieces {
    /// Pieces of the list's link `n` are those from `first[n]` to before `first[n + 1]`.
    first: Vec<u32>,
    pieces: Vec<CostPiece>,
    spans: Vec<Span>,
}

impl CostPieces {
    /// Reads the cost along each of `links` from a field, in place of what was held. O(links + sources on them).
    pub fn fill(&mut self, network: &Network, field: &CostField, links: &[LinkId]) {
        self.begin();
        let mut passed = 0;
        let mut spans = std::mem::take(&mut self.spans);
        for &id in links {
            if let Some(link) = network.link(id) {
                let scales = field.scales(link);
                field.next_spans(network, id, &mut passed, &mut spans);
                for span in &spans {
                    add_span(span, scales, &mut self.pieces);
                }
            }
            self.end_link();
        }
        self.spans = spans;
    }

    /// The greatest of several costs along the same links, in place of what was held: nothing where one has nothing.
    pub fn fill_greatest(&mut self, of: &[&Self]) {
        self.begin();
        let Some((first_of, others)) = of.split_first() else {
            return;
        };
        let (mut held, mut next) = (Vec::new(), Vec::new());
        for place in 0..first_of.link_count() {
            held.clear();
            held.extend_from_slice(first_of.of_link(place));
            for other in others {
                next.clear();
                greatest(&held, other.of_link(place), &mut next);
                std::mem::swap(&mut held, &mut next);
            }
            self.pieces.extend_from_slice(&held);
            self.end_link();
        }
    }

    /// How many links are held.
    #[must_use]
    pub fn link_count(&self) -> usize {
        self.first.len().saturating_sub(1)
    }

    /// The pieces of the list's link at `place`, in order of position.
    #[must_use]
    pub fn of_link(&self, place: usize) -> &[CostPiece] {
        let ends = self.first.get(place).zip(self.first.get(place + 1));
        ends.and_then(|(&first, &end)| self.pieces.get(first as usize..end as usize))
            .unwrap_or_default()
    }

    fn begin(&mut self) {
        self.pieces.clear();
        self.first.clear();
        self.first.push(0);
    }

    fn end_link(&mut self) {
        self.first.push(self.pieces.len() as u32);
    }
}

/// Adds the pieces of one span: rising from the left, level where a source covers it, falling to the right.
fn add_span(span: &Span, (up, down): (Scale, Scale), pieces: &mut Vec<CostPiece>) {
    let (from_um, to_um) = (span.from_um, span.to_um);
    let mut add = |from_um: u64, to_um: u64, from_cost: u64, to_cost: u64| {
        pieces.push(CostPiece {
            from_um,
            to_um,
            from_cost,
            to_cost,
        });
    };
    let rising = |cost: u64| CostPiece {
        from_um,
        to_um,
        from_cost: cost,
        to_cost: cost + up.up_to(to_um) - up.up_to(from_um),
    };
    let falling = |cost: u64| CostPiece {
        from_um,
        to_um,
        from_cost: cost + down.up_to(to_um) - down.up_to(from_um),
        to_cost: cost,
    };
    let cost = |served: Option<(u64, u32)>| served.map(|(cost, _)| cost);
    match (cost(span.left), cost(span.right), cost(span.level)) {
        (None, None, None) => {}
        (Some(left), None, None) => {
            let line = rising(left);
            add(from_um, to_um, line.from_cost, line.to_cost);
        }
        (None, Some(right), None) => {
            let line = falling(right);
            add(from_um, to_um, line.from_cost, line.to_cost);
        }
        (Some(left), Some(right), None) => {
            let (left, right) = (rising(left), falling(right));
            if right.from_cost <= left.from_cost {
                add(from_um, to_um, right.from_cost, right.to_cost);
            } else if left.to_cost <= right.to_cost {
                add(from_um, to_um, left.from_cost, left.to_cost);
            } else {
                let top_um = meeting(&left, &right);
                let top = left.cost_at(top_um).min(right.cost_at(top_um));
                add(from_um, top_um, left.from_cost, top);
                add(top_um, to_um, top, right.to_cost);
            }
        }
        (left, right, Some(level)) => {
            // Within a source the ends cost no more than the source.
            let left = rising(left.map_or(level, |left| left.min(level)));
            let right = falling(right.map_or(level, |right| right.min(level)));
            let flat = CostPiece {
                from_um,
                to_um,
                from_cost: level,
                to_cost: level,
            };
            let rise_um = if left.to_cost <= level {
                to_um
            } else {
                meeting(&left, &flat)
            };
            let fall_um = if right.from_cost <= level {
                from_um
            } else {
                meeting(&right, &flat)
            };
            if rise_um < fall_um {
                add(from_um, rise_um, left.from_cost, level);
                add(rise_um, fall_um, level, level);
                add(fall_um, to_um, level, right.to_cost);
            } else {
                let span = Span {
                    level: None,
                    left: Some((left.from_cost, 0)),
                    right: Some((right.to_cost, 0)),
                    ..*span
                };
                add_span(&span, (up, down), pieces);
            }
        }
    }
}

/// Where two lines over the same positions meet, which they do between their ends: the whole micrometer before.
fn meeting(a: &CostPiece, b: &CostPiece) -> u64 {
    let ahead = a.from_cost.abs_diff(b.from_cost) as f64;
    let behind = a.to_cost.abs_diff(b.to_cost) as f64;
    if ahead + behind <= 0.0 {
        return a.from_um;
    }
    let run = a.to_um - a.from_um;
    a.from_um + ((ahead / (ahead + behind) * run as f64) as u64).min(run)
}

/// The greater of two costs along one link, where both have a piece.
fn greatest(a: &[CostPiece], b: &[CostPiece], out: &mut Vec<CostPiece>) {
    let (mut left, mut right) = (a.iter().peekable(), b.iter().peekable());
    while let (Some(one), Some(other)) = (left.peek(), right.peek()) {
        let (from_um, to_um) = (one.from_um.max(other.from_um), one.to_um.min(other.to_um));
        let pair = if from_um < to_um {
            one.between(from_um, to_um).zip(other.between(from_um, to_um))
        } else {
            None
        };
        if let Some((one, other)) = pair {
            add_greater(&one, &other, out);
        }
        if one.to_um <= other.to_um {
            left.next();
        } else {
            right.next();
        }
    }
}

/// The greater of two lines over the same positions.
fn add_greater(one: &CostPiece, other: &CostPiece, out: &mut Vec<CostPiece>) {
    let ahead = one.from_cost.cmp(&other.from_cost);
    let behind = one.to_cost.cmp(&other.to_cost);
    let from_cost = one.from_cost.max(other.from_cost);
    let to_cost = one.to_cost.max(other.to_cost);
    let crosses = ahead.reverse() == behind && !ahead.is_eq();
    let turn_um = if crosses { meeting(one, other) } else { one.to_um };
    if crosses && one.from_um < turn_um && turn_um < one.to_um {
        let turn_cost = one.cost_at(turn_um).max(other.cost_at(turn_um));
        out.push(CostPiece {
            from_um: one.from_um,
            to_um: turn_um,
            from_cost,
            to_cost: turn_cost,
        });
        out.push(CostPiece {
            from_um: turn_um,
            to_um: one.to_um,
            from_cost: turn_cost,
            to_cost,
        });
    } else {
        out.push(CostPiece {
            from_um: one.from_um,
            to_um: one.to_um,
            from_cost,
            to_cost,
        });
    }
}

#[cfg(test)]
mod tests;
