//! The cost along a stretch of link, as a broken line; the least and the greatest of several.
//!
//! With a profile for each of the five daily needs, their greatest is the time to the last of the five; with one for
//! walking to and one for walking from, the greatest is the worse of both.

use super::cost_field::CostField;
use super::graph::{Network, Stretch};
use super::scale::Scale;
use super::spans::{Served, Span};
use crate::order;

/// Which of two profiles counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Pick {
    Least,
    Greatest,
}

/// Cost along a stretch: points (micrometers along the link, cost), straight lines between them.
///
/// Where two lines cross between whole micrometers there is a point on either side, so that every whole micrometer has
/// its exact cost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CostProfile {
    points: Vec<(u64, u64)>,
}

impl CostProfile {
    /// The cost along a stretch; `None` when nothing of it is reached, or it is not on a walkable link.
    ///
    /// With a limited field the profile is right up to the limit and may be too high beyond.
    #[must_use]
    pub fn along(network: &Network, field: &CostField, stretch: Stretch) -> Option<Self> {
        let link = network.link(stretch.link)?;
        if stretch.from_um > stretch.to_um || stretch.to_um > link.length_um {
            return None;
        }
        let (up, down) = field.scales(link);
        let mut spans = Vec::new();
        field.spans(network, stretch.link, &mut spans);
        let mut points: Vec<(u64, u64)> = Vec::new();
        for span in spans {
            let (from_um, to_um) = (span.from_um.max(stretch.from_um), span.to_um.min(stretch.to_um));
            if from_um > to_um {
                continue;
            }
            let line = |served: fn(&Span, Scale, u64) -> Option<Served>, scale| {
                let cost = |along_um| served(&span, scale, along_um).map(|(cost, _)| (along_um, cost));
                Some(Self {
                    points: vec![cost(from_um)?, cost(to_um)?],
                })
            };
            let level = span.level.map(|(cost, _)| Self {
                points: vec![(from_um, cost), (to_um, cost)],
            });
            let lines = [line(Span::coming_left, up), line(Span::coming_right, down), level];
            let lowest = lines.into_iter().flatten().reduce(|a, b| a.combined(&b, Pick::Least))?;
            points.extend(lowest.points);
        }
        points.dedup();
        (!points.is_empty()).then_some(Self { points })
    }

    /// The points, in order of position: at least one, two unless the stretch is a single place.
    #[must_use]
    pub fn points(&self) -> &[(u64, u64)] {
        &self.points
    }

    /// The lesser cost at every place: the nearer of two. Both must be of the same stretch.
    #[must_use]
    pub fn least(&self, other: &Self) -> Self {
        self.combined(other, Pick::Least)
    }

    /// The greater cost at every place: the farther of two. Both must be of the same stretch.
    #[must_use]
    pub fn greatest(&self, other: &Self) -> Self {
        self.combined(other, Pick::Greatest)
    }

    /// Cost at a position, which is held within the profile; between points by straight line, rounded down.
    #[must_use]
    pub fn cost_at(&self, along_um: u64) -> u64 {
        let after = self.points.partition_point(|&(position, _)| position < along_um);
        match (
            after.checked_sub(1).and_then(|before| self.points.get(before)),
            self.points.get(after),
        ) {
            (Some(&before), Some(&end)) => between(before, end, along_um),
            (Some(&(_, cost)), None) | (None, Some(&(_, cost))) => cost,
            (None, None) => 0,
        }
    }

    fn combined(&self, other: &Self, pick: Pick) -> Self {
        let mut positions: Vec<u64> = self
            .points
            .iter()
            .chain(&other.points)
            .map(|&(position, _)| position)
            .collect();
        order::sort_numbers(&mut positions);
        positions.dedup();
        let choose = |a: u64, b: u64| if pick == Pick::Least { a.min(b) } else { a.max(b) };
        let mut points: Vec<(u64, u64)> = Vec::with_capacity(positions.len() + 2);
        let mut before: Option<(u64, u64, u64)> = None;
        for position in positions {
            let (a, b) = (self.cost_at(position), other.cost_at(position));
            let cross = before.and_then(|start| crossing(start, (position, a, b)));
            for turn in cross.into_iter().flatten() {
                points.push((turn, choose(self.cost_at(turn), other.cost_at(turn))));
            }
            points.push((position, choose(a, b)));
            before = Some((position, a, b));
        }
        points.dedup();
        Self { points }
    }
}

/// Cost at a position between two points of a line, rounded down.
fn between((from_um, from_cost): (u64, u64), (to_um, to_cost): (u64, u64), along_um: u64) -> u64 {
    let span = i128::from(to_um - from_um).max(1);
    let rise = (i128::from(to_cost) - i128::from(from_cost)) * i128::from(along_um - from_um);
    (i128::from(from_cost) + rise.div_euclid(span)) as u64
}

/// Around where two lines cross strictly between two positions, each given with both costs: the whole micrometers
/// below and above, as far as they lie strictly between.
fn crossing(start: (u64, u64, u64), end: (u64, u64, u64)) -> Option<[u64; 2]> {
    let ahead = i128::from(start.1) - i128::from(start.2);
    let behind = i128::from(end.1) - i128::from(end.2);
    if ahead.signum() * behind.signum() >= 0 || end.0 - start.0 < 2 {
        return None;
    }
    let (rise, whole) = (i128::from(end.0 - start.0) * ahead, ahead - behind);
    let inside =
        |position: i128| (i128::from(start.0) + position).clamp(i128::from(start.0) + 1, i128::from(end.0) - 1);
    let (below, above) = (rise / whole, rise / whole + i128::from(rise % whole != 0));
    Some([inside(below) as u64, inside(above) as u64])
}

#[cfg(test)]
mod tests;
