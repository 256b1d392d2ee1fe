//! A link in pieces, each with the cost at both its ends: what reach, profiles and the nearest center are read from.
//!
//! Between two sources the cost along a link is the lesser of rising from the left and rising from the right; inside
//! a source it is level. A link without sources is one span.

use super::graph::Stretch;
use super::scale::Scale;
use crate::order;

/// A cost and the owner it belongs to; compared in that order.
pub(super) type Served = (u64, u32);

/// A piece of a link on which cost rises from the left, from the right, or is level.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Span {
    pub from_um: u64,
    pub to_um: u64,
    /// Cost at the left end.
    pub left: Option<Served>,
    /// Cost at the right end.
    pub right: Option<Served>,
    /// Cost anywhere in the span, when a source covers it.
    pub level: Option<Served>,
}

impl Span {
    /// Cost and owner at a position within the span.
    pub fn served_at(&self, (up, down): (Scale, Scale), along_um: u64) -> Option<Served> {
        [
            self.coming_left(up, along_um),
            self.coming_right(down, along_um),
            self.level,
        ]
        .into_iter()
        .flatten()
        .min()
    }

    /// Cost and owner at a position, coming from the left end.
    pub fn coming_left(&self, up: Scale, along_um: u64) -> Option<Served> {
        self.left
            .map(|(cost, owner)| (cost + up.up_to(along_um) - up.up_to(self.from_um), owner))
    }

    /// Cost and owner at a position, coming from the right end.
    pub fn coming_right(&self, down: Scale, along_um: u64) -> Option<Served> {
        self.right
            .map(|(cost, owner)| (cost + down.up_to(self.to_um) - down.up_to(along_um), owner))
    }

    /// The parts of the span within `limit`, from left to right, touching parts joined.
    pub fn within(&self, (up, down): (Scale, Scale), limit: u64) -> [Option<(u64, u64)>; 2] {
        let budget = |served: Option<Served>| served.and_then(|(cost, _)| limit.checked_sub(cost));
        if budget(self.level).is_some() {
            return [Some((self.from_um, self.to_um)), None];
        }
        let head = budget(self.left).map(|left| up.last_within(left + up.up_to(self.from_um)).min(self.to_um));
        let tail = budget(self.right).map(|left| {
            let end = down.up_to(self.to_um);
            down.first_reaching(end.saturating_sub(left)).max(self.from_um)
        });
        match (head, tail) {
            (Some(head), Some(tail)) if head >= tail => [Some((self.from_um, self.to_um)), None],
            (head, tail) => [
                head.map(|end| (self.from_um, end)),
                tail.map(|start| (start, self.to_um)),
            ],
        }
    }
}

/// Cuts a link at its sources and works out the cost at every cut.
///
/// `ends` are cost and owner at the link's first and last node; `sources` are (stretch, starting cost, owner).
pub(super) fn spans_of(
    length_um: u64,
    scales: (Scale, Scale),
    ends: [Option<Served>; 2],
    sources: impl Iterator<Item = (Stretch, u64, u32)>,
    spans: &mut Vec<Span>,
) {
    let mut sources = sources.map(|(stretch, cost, owner)| (stretch, (cost, owner)));
    match (sources.next(), sources.next()) {
        (None, _) => spans.push(Span {
            from_um: 0,
            to_um: length_um,
            left: ends[0],
            right: ends[1],
            level: None,
        }),
        (Some(only), None) => {
            // As most links have that have any source: without memory of its own.
            let mut cuts = [0, only.0.from_um, only.0.to_um, length_um];
            let count = each_once(&mut cuts);
            cut(scales, ends, &[only], &cuts[..count], &mut [NOBODY; 4][..count], spans);
        }
        (Some(first), Some(second)) => {
            let sources: Vec<(Stretch, Served)> = [first, second].into_iter().chain(sources).collect();
            let mut cuts = vec![0, length_um];
            cuts.extend(sources.iter().flat_map(|(stretch, _)| [stretch.from_um, stretch.to_um]));
            order::sort_numbers(&mut cuts);
            let count = each_once(&mut cuts);
            cut(scales, ends, &sources, &cuts[..count], &mut vec![NOBODY; count], spans);
        }
    }
}

/// Gives back how many are left at the front of a sorted list where each stands once.
fn each_once(cuts: &mut [u64]) -> usize {
    let mut count = 0;
    for place in 0..cuts.len() {
        if count == 0 || cuts[count - 1] != cuts[place] {
            cuts[count] = cuts[place];
            count += 1;
        }
    }
    count
}

/// What no source serves: dearer than anything that one does.
const NOBODY: Served = (u64::MAX, u32::MAX);

/// Adds the spans between cuts, ascending, of a link with sources; `served` is memory, one for each cut.
fn cut(
    (up, down): (Scale, Scale),
    ends: [Option<Served>; 2],
    sources: &[(Stretch, Served)],
    cuts: &[u64],
    served: &mut [Served],
    spans: &mut Vec<Span>,
) {
    let cheapest_over = |from_um: u64, to_um: u64| {
        let mut cheapest = NOBODY;
        for (stretch, served) in sources {
            if stretch.from_um <= from_um && to_um <= stretch.to_um {
                cheapest = cheapest.min(*served);
            }
        }
        cheapest
    };
    for (served, &at_um) in served.iter_mut().zip(cuts) {
        *served = cheapest_over(at_um, at_um);
    }
    let last = cuts.len() - 1;
    served[0] = served[0].min(ends[0].unwrap_or(NOBODY));
    served[last] = served[last].min(ends[1].unwrap_or(NOBODY));
    for at in 1..=last {
        let (cost, owner) = served[at - 1];
        if cost < NOBODY.0 {
            let come = cost + up.up_to(cuts[at]) - up.up_to(cuts[at - 1]);
            served[at] = served[at].min((come, owner));
        }
    }
    for at in (0..last).rev() {
        let (cost, owner) = served[at + 1];
        if cost < NOBODY.0 {
            let come = cost + down.up_to(cuts[at + 1]) - down.up_to(cuts[at]);
            served[at] = served[at].min((come, owner));
        }
    }
    let somebody = |served: Served| (served.0 < NOBODY.0).then_some(served);
    for at in 0..last {
        spans.push(Span {
            from_um: cuts[at],
            to_um: cuts[at + 1],
            left: somebody(served[at]),
            right: somebody(served[at + 1]),
            level: somebody(cheapest_over(cuts[at], cuts[at + 1])),
        });
    }
}
