//! How much weight (homes, jobs, floor area) lies within each cost, when it is spread evenly along stretches.
//!
//! The weight within cost `c` is, for each stretch, its weight times the share of its length whose cost is at most
//! `c`: a broken line in `c`, worked out exactly and sampled at knots in one pass. Weights are summed in fixed point,
//! so the order in which stretches are added cannot matter.

use super::profile::CostProfile;

/// Fractions of a unit of weight the sums keep: 2^32 to one.
const FRACTION_BITS: u32 = 32;

/// The most one weight may be: 2^40, a million million.
const MOST_WEIGHT: f64 = (1_u64 << 40) as f64;

/// Weight by cost at given knots, filled stretch by stretch.
#[derive(Clone, Debug)]
pub struct WeightCurve {
    knots: Vec<u64>,
    /// Weight whose cost is wholly within knot `k` and not within knot `k - 1`; one more entry for beyond the last.
    complete: Vec<i128>,
    /// Weight partly within knot `k`, counted at that knot alone.
    partial: Vec<i128>,
}

impl WeightCurve {
    /// An empty curve at these knots, which are sorted and made distinct.
    #[must_use]
    pub fn new(knots: &[u64]) -> Self {
        let mut knots = knots.to_vec();
        knots.sort_unstable();
        knots.dedup();
        let places = knots.len() + 1;
        Self {
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

    /// Adds weight spread evenly over the length of a profile (all of it at the place, when it is a single place).
    ///
    /// Returns `false` and adds nothing when the weight is not finite, negative, or more than 2^40.
    #[must_use]
    pub fn add(&mut self, profile: &CostProfile, weight: f64) -> bool {
        if !(0.0..=MOST_WEIGHT).contains(&weight) {
            return false;
        }
        let whole = (weight * (1_u64 << FRACTION_BITS) as f64).round() as i128;
        let points = profile.points();
        let (Some(&(start_um, start_cost)), Some(&(end_um, _))) = (points.first(), points.last()) else {
            return true;
        };
        if start_um == end_um {
            let least = points.iter().map(|&(_, cost)| cost).min().unwrap_or(start_cost);
            self.add_ramp(least, least, whole);
            return true;
        }
        // Rounding the running share, not each part, makes the parts add up to the whole.
        let share = |along_um: u64| whole * i128::from(along_um - start_um) / i128::from(end_um - start_um);
        for pair in points.windows(2) {
            let ((from_um, from_cost), (to_um, to_cost)) = (pair[0], pair[1]);
            let part = share(to_um) - share(from_um);
            self.add_ramp(from_cost.min(to_cost), from_cost.max(to_cost), part);
        }
        true
    }

    /// Weight whose cost is spread evenly from `least` to `most`.
    fn add_ramp(&mut self, least: u64, most: u64, weight: i128) {
        let mut knot = self.knots.partition_point(|&cost| cost < least);
        while knot < self.knots.len() && self.knots[knot] < most {
            let within = i128::from(self.knots[knot] - least);
            self.partial[knot] += weight * within / i128::from(most - least);
            knot += 1;
        }
        self.complete[knot] += weight;
    }

    /// The weight within each knot's cost, that cost included, in order of knots.
    #[must_use]
    pub fn weight_within(&self) -> Vec<f64> {
        let unit = (1_u64 << FRACTION_BITS) as f64;
        let mut total = 0_i128;
        let sums = self.complete.iter().zip(&self.partial).take(self.knots.len());
        sums.map(|(complete, partial)| {
            total += complete;
            (total + partial) as f64 / unit
        })
        .collect()
    }
}

#[cfg(test)]
mod tests;
