//! How much weight (homes, jobs, floor area) lies within each cost, when it is spread evenly along stretches.
//!
//! The weight within cost `c` is, for each stretch, its weight times the share of its length whose cost is at most
//! `c`: a broken line in `c`, worked out exactly and sampled at knots in one pass. Weights are summed in fixed point,
//! so the order in which stretches are added cannot matter.

use super::cost_pieces::CostPiece;
use super::profile::CostProfile;
use crate::order;

/// Fractions of a unit of weight the sums keep: 2^32 to one.
const FRACTION_BITS: u32 = 32;

/// The most one weight may be: 2^30, a thousand million. All weights together are held to 2^31.
const MOST_WEIGHT: f64 = (1_u64 << 30) as f64;

/// Weight by cost at given knots, filled stretch by stretch.
#[derive(Clone, Debug)]
pub struct WeightCurve {
    knots: Vec<u64>,
    /// Step of the knots that lie evenly from 0 on, and how many they are: most costs are found by a division.
    step: u64,
    even: usize,
    /// Weight whose cost is wholly within knot `k` and not within knot `k - 1`; one more entry for beyond the last.
    complete: Vec<i64>,
    /// Weight partly within knot `k`, counted at that knot alone.
    partial: Vec<i64>,
}

impl WeightCurve {
    /// An empty curve at these knots, which are sorted and made distinct.
    #[must_use]
    pub fn new(knots: &[u64]) -> Self {
        let mut knots = knots.to_vec();
        order::sort(&mut knots);
        knots.dedup();
        let places = knots.len() + 1;
        let step = knots.get(1).copied().unwrap_or(1).max(1);
        let even = (0..)
            .zip(&knots)
            .take_while(|(place, knot)| step.checked_mul(*place) == Some(**knot));
        Self {
            step,
            even: even.count(),
            knots,
            complete: vec![0; places],
            partial: vec![0; places],
        }
    }

    /// The knots, sorted.
    #[must_use]
    pub fn knots(&self) -> &[u64] {
        &self.knots
    }

    /// Takes all weight out again.
    pub fn clear(&mut self) {
        self.complete.fill(0);
        self.partial.fill(0);
    }

    /// Adds weight spread evenly over the length of a profile (all of it at the place, when it is a single place).
    ///
    /// Returns `false` and adds nothing when the weight is not finite, negative, or more than 2^30.
    #[must_use]
    pub fn add(&mut self, profile: &CostProfile, weight: f64) -> bool {
        let points = profile.points();
        let (Some(&(start_um, _)), Some(&(end_um, _))) = (points.first(), points.last()) else {
            return true;
        };
        if start_um == end_um {
            let least = points.iter().map(|&(_, cost)| cost).min();
            let place = least.map(|cost| CostPiece {
                from_um: start_um,
                to_um: end_um,
                from_cost: cost,
                to_cost: cost,
            });
            return self.add_pieces(place.as_slice(), start_um, end_um, weight);
        }
        let pieces = points.windows(2).map(|pair| CostPiece {
            from_um: pair[0].0,
            to_um: pair[1].0,
            from_cost: pair[0].1,
            to_cost: pair[1].1,
        });
        self.add_pieces(&pieces.collect::<Vec<_>>(), start_um, end_um, weight)
    }

    /// Adds weight spread evenly between two positions of a link whose cost is given in pieces, in order; what lies
    /// outside them is out of reach and stays out. All of the weight lies at one place when both positions are the
    /// same.
    ///
    /// Returns `false` and adds nothing when the weight is not finite, negative, or more than 2^30.
    #[must_use]
    pub fn add_along(&mut self, pieces: &[CostPiece], from_um: u64, to_um: u64, weight: f64) -> bool {
        let before = pieces.iter().take_while(|piece| piece.to_um < from_um).count();
        self.add_pieces(&pieces[before..], from_um, to_um, weight)
    }

    fn add_pieces(&mut self, pieces: &[CostPiece], from_um: u64, to_um: u64, weight: f64) -> bool {
        if !(0.0..=MOST_WEIGHT).contains(&weight) {
            return false;
        }
        let whole = weight * (1_u64 << FRACTION_BITS) as f64;
        if from_um == to_um {
            // Where two pieces meet the nearer way counts.
            let near = pieces.iter().take_while(|piece| piece.from_um <= to_um);
            let parts = near.filter_map(|piece| piece.between(from_um, to_um));
            if let Some(least) = parts.map(|piece| piece.from_cost).min() {
                self.add_ramp(least, least, whole as i64);
            }
            return true;
        }
        let length_um = (to_um - from_um) as f64;
        // Rounding the running share, not each part, makes the parts add up to the whole.
        let share = |along_um: u64| ((along_um - from_um) as f64 / length_um * whole) as i64;
        for piece in pieces {
            if piece.from_um > to_um {
                break;
            }
            let Some(part) = piece.between(from_um, to_um) else {
                continue;
            };
            self.add_ramp(
                part.from_cost.min(part.to_cost),
                part.from_cost.max(part.to_cost),
                share(part.to_um) - share(part.from_um),
            );
        }
        true
    }

    /// Weight whose cost is spread evenly from `least` to `most`.
    fn add_ramp(&mut self, least: u64, most: u64, weight: i64) {
        let mut knot = self.first_knot(least);
        while knot < self.knots.len() && self.knots[knot] < most {
            let within = (self.knots[knot] - least) as f64 / (most - least) as f64;
            let partial = &mut self.partial[knot];
            *partial = partial.saturating_add((within * weight as f64) as i64);
            knot += 1;
        }
        let complete = &mut self.complete[knot];
        *complete = complete.saturating_add(weight);
    }

    /// The first knot of at least this cost.
    fn first_knot(&self, cost: u64) -> usize {
        let place = cost.div_ceil(self.step) as usize;
        if place < self.even {
            place
        } else {
            self.knots.partition_point(|&knot| knot < cost)
        }
    }

    /// The weight within each knot's cost, that cost included, in order of knots.
    #[must_use]
    pub fn weight_within(&self) -> Vec<f64> {
        let unit = (1_u64 << FRACTION_BITS) as f64;
        let mut total = 0_i64;
        let sums = self.complete.iter().zip(&self.partial).take(self.knots.len());
        sums.map(|(complete, partial)| {
            total = total.saturating_add(*complete);
            total.saturating_add(*partial) as f64 / unit
        })
        .collect()
    }
}

#[cfg(test)]
mod tests;
