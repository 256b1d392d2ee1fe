//! Fences and property lines that ask something of the lots beside them.
//!
//! A lot stands beside a line where it comes as near to it as the line's reach; lots inside a parcel are its own and stand
//! beside no line of it. Distances are those between outlines: nothing is asked about which side of the lot it is.

use super::LineBeside;
use super::region::{is_inside, largest_ring, without};
use super::spot::{Spot, crossing, distance_to_segment};
use crate::fabric::land::Bounds;
use crate::plan::land::Beside;
use crate::plan::{Mark, PlanPoint};

impl LineBeside {
    /// The lines among some marks that ask anything, in their order.
    pub fn all(marks: &mut dyn Iterator<Item = &Mark>) -> Vec<Self> {
        let of_mark = |mark: &Mark| {
            let asked = (*mark.beside()?)?;
            let (mut line, is_around) = match mark {
                Mark::Parcel(parcel) => (parcel.outline.clone(), true),
                Mark::Barrier(barrier) => (barrier.line.clone(), false),
                _ => return None,
            };
            if is_around {
                line.extend(line.first().copied());
            }
            let asks = asked.stories.is_some() || asked.clear_mm.is_some();
            (asks && line.len() > 1).then_some(Self { line, is_around, asked })
        };
        marks.filter_map(of_mark).collect()
    }

    /// Whether it may ask anything of lots on this land.
    pub(super) fn is_near(&self, pieces: &[Vec<Vec<PlanPoint>>]) -> bool {
        let far_mm = self.asked.reach_mm.max(self.asked.clear_mm.unwrap_or(0));
        let far_mm = i32::try_from(far_mm).unwrap_or(i32::MAX);
        let moved =
            |point: &PlanPoint, by: i32| PlanPoint::new(point.x_mm.saturating_add(by), point.y_mm.saturating_add(by));
        let widened: Vec<PlanPoint> = self
            .line
            .iter()
            .flat_map(|point| [moved(point, far_mm), moved(point, far_mm.saturating_neg())])
            .collect();
        Bounds::of(pieces.iter().flatten().flatten()).meets(&Bounds::of(&widened))
    }

    /// Whether a lot stands beside it.
    #[must_use]
    pub fn is_beside(&self, lot: &[PlanPoint]) -> bool {
        self.comes_within(lot, self.asked.reach_mm)
    }

    /// Whether a lot that is not inside comes as near as this.
    fn comes_within(&self, lot: &[PlanPoint], far_mm: u32) -> bool {
        let line = || self.line.windows(2).map(|pair| (Spot::of(pair[0]), Spot::of(pair[1])));
        let around = |ring: &[PlanPoint]| -> Vec<(Spot, Spot)> {
            let next = ring.iter().cycle().skip(1);
            ring.iter()
                .zip(next)
                .map(|(a, b)| (Spot::of(*a), Spot::of(*b)))
                .collect()
        };
        let Some(middle) = PlanPoint::mean_of(lot) else {
            return false;
        };
        if self.is_around && is_inside(Spot::of(middle), line()) {
            return false;
        }
        let edges = around(lot);
        let far = f64::from(far_mm);
        let is_near = |(a, b): (Spot, Spot), (c, d): (Spot, Spot)| {
            crossing(a, b, c, d).is_some()
                || distance_to_segment(a, c, d) <= far
                || distance_to_segment(b, c, d) <= far
                || distance_to_segment(c, a, b) <= far
                || distance_to_segment(d, a, b) <= far
        };
        line().any(|one| edges.iter().any(|edge| is_near(one, *edge)))
            || line()
                .next()
                .is_some_and(|(start, _)| is_inside(start, edges.iter().copied()))
    }

    /// What of a lot a building may stand on: all of it, or what lies far enough from the line.
    pub(super) fn room_on(&self, lot: Vec<PlanPoint>) -> Vec<PlanPoint> {
        match self.asked.clear_mm {
            Some(clear_mm) if clear_mm > 0 && self.comes_within(&lot, clear_mm) => {
                largest_ring(without(&vec![vec![lot]], &self.strips(f64::from(clear_mm)))).unwrap_or_default()
            }
            _ => lot,
        }
    }

    /// The land nearer than this to the line: a strip along each of its segments, as far beyond its ends.
    fn strips(&self, clear_mm: f64) -> Vec<Vec<PlanPoint>> {
        let strip = |pair: &[PlanPoint]| {
            let (a, b) = (Spot::of(pair[0]), Spot::of(pair[1]));
            let along = b.minus(a).direction()?.times(clear_mm);
            let (start, end, aside) = (a.minus(along), b.plus(along), along.left());
            let corners = [start.minus(aside), end.minus(aside), end.plus(aside), start.plus(aside)];
            Some(corners.map(Spot::rounded).to_vec())
        };
        self.line.windows(2).filter_map(strip).collect()
    }

    /// Adds all that lots depend on, as integers.
    pub(super) fn add_words(&self, words: &mut Vec<i32>) {
        let unsaid = u32::MAX;
        let Beside {
            reach_mm,
            stories,
            clear_mm,
        } = self.asked;
        let said = [
            reach_mm,
            stories.map_or(unsaid, u32::from),
            clear_mm.unwrap_or(unsaid),
            u32::from(self.is_around),
        ];
        words.extend(said.map(u32::cast_signed));
        words.extend(self.line.iter().flat_map(|point| [point.x_mm, point.y_mm]));
    }
}
