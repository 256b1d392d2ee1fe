//! How slope changes the pace of walking, and what a walk costs when topography is known.
//!
//! Tobler's function gives a speed for the slope in the direction of travel, fastest on a slight downhill; so a walk
//! and the walk back differ. Here it only shapes the pace: on level ground everybody walks at the plan's base speed.
//! Source: W. Tobler, "Three presentations on geographical analysis and modeling", NCGIA technical report 93-1, 1993,
//! as given in the article "Tobler's hiking function". Scaling it to another base speed is common practice, no source.
//! Not for stairs, ramps or wheels: it says nothing about who can use a slope.

use crate::number;

/// Slopes are taken on pieces of at most this length.
pub const LONGEST_PIECE_M: f64 = 20.0;

/// Steepest slope told apart; beyond it the function leaves its evidence and costs would run away.
pub const STEEPEST_SLOPE: f64 = 1.0;

/// Tobler's walking speed in km/h for a slope (rise over run along the direction of travel, uphill positive):
/// `6 exp(−3.5 |slope + 0.05|)`.
///
/// ```
/// use hobnail_core::network::pace::tobler_speed_km_per_h;
/// assert_eq!(tobler_speed_km_per_h(-0.05), 6.0);
/// ```
#[must_use]
pub fn tobler_speed_km_per_h(slope: f64) -> f64 {
    6.0 * number::exp(-3.5 * (slope + 0.05).abs())
}

/// Seconds per meter on a slope for someone who walks `base_speed_m_per_s` on level ground: Tobler's pace, scaled so.
#[must_use]
pub fn pace_s_per_m(slope: f64, base_speed_m_per_s: f64) -> f64 {
    let held = slope.clamp(-STEEPEST_SLOPE, STEEPEST_SLOPE);
    tobler_speed_km_per_h(0.0) / tobler_speed_km_per_h(held) / base_speed_m_per_s
}

/// Cost of a link in microseconds at base speed, along it and against it.
///
/// The link is cut into equal pieces of at most 20 m; `slope(from_m, to_m)` tells the slope (rise over run) of the
/// piece between two distances along the link, uphill positive in the link's direction. Pieces are rounded one by one,
/// so the sum does not depend on where the adding starts. Slopes beyond ±1 count as ±1; a slope that is not a number
/// counts as level. `None` when the base speed is not a positive number or the cost leaves what a link may cost.
///
/// ```
/// use hobnail_core::network::pace::costs_us;
/// assert_eq!(costs_us(100_000_000, 1.25, |_, _| 0.0), Some((80_000_000, 80_000_000)));
/// ```
#[must_use]
pub fn costs_us(length_um: u64, base_speed_m_per_s: f64, slope: impl Fn(f64, f64) -> f64) -> Option<(u64, u64)> {
    if !(base_speed_m_per_s > 0.0 && base_speed_m_per_s.is_finite()) || length_um > super::graph::MOST_COST {
        return None;
    }
    let length_m = length_um as f64 / 1e6;
    let pieces = (length_m / LONGEST_PIECE_M).ceil().max(1.0);
    let (mut forward_us, mut backward_us) = (0_u64, 0_u64);
    let mut piece = 0.0;
    while piece < pieces {
        let (from_m, to_m) = (length_m * piece / pieces, length_m * (piece + 1.0) / pieces);
        let told = slope(from_m, to_m);
        let slope = if told.is_nan() { 0.0 } else { told };
        let cost_us = |slope: f64| (pace_s_per_m(slope, base_speed_m_per_s) * (to_m - from_m) * 1e6).round() as u64;
        forward_us = forward_us.saturating_add(cost_us(slope));
        backward_us = backward_us.saturating_add(cost_us(-slope));
        piece += 1.0;
    }
    let fits = |cost: u64| cost > 0 && cost <= super::graph::MOST_COST;
    (fits(forward_us) && fits(backward_us)).then_some((forward_us, backward_us))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(value: f64, expected: f64, tolerance: f64) {
        assert!(
            (value - expected).abs() <= tolerance,
            "{value} is not within {tolerance} of {expected}"
        );
    }

    /// Check case W-A1: published values, article "Tobler's hiking function", table of slopes in degrees; slope is the
    /// tangent of the angle.
    #[test]
    fn w_a1_speeds_of_the_published_table() {
        let table = [
            (-20.0, 2.00, 30.0, 1.80),
            (-10.0, 3.86, 15.6, 0.93),
            (-5.0, 5.26, 11.4, 0.68),
            (-2.8624, 6.00, 10.0, 0.60),
            (0.0, 5.04, 11.9, 0.71),
            (5.0, 3.71, 16.2, 0.97),
            (10.0, 2.72, 22.1, 1.32),
            (20.0, 1.41, 42.6, 2.56),
        ];
        for (angle_deg, km_per_h, min_per_km, s_per_m) in table {
            let slope = number::tan(angle_deg * std::f64::consts::PI / 180.0);
            let speed = tobler_speed_km_per_h(slope);
            near(speed, km_per_h, 0.005);
            near(60.0 / speed, min_per_km, 0.05);
            near(pace_s_per_m(slope, tobler_speed_km_per_h(0.0) / 3.6), s_per_m, 0.005);
        }
    }

    /// Check case W-A2: derived from the same function; it tests the direction.
    #[test]
    fn w_a2_four_hundred_meters_up_five_percent_and_back() {
        let level_speed_m_per_s = tobler_speed_km_per_h(0.0) / 3.6;
        near(tobler_speed_km_per_h(0.05), 4.2281, 0.00005);
        let (up_us, down_us) = costs_us(400_000_000, level_speed_m_per_s, |_, _| 0.05).expect("a good walk");
        near(up_us as f64 / 1e6, 340.6, 0.1);
        near(down_us as f64 / 1e6, 240.0, 0.1);
        near((up_us + down_us) as f64 / 1e6, 580.6, 0.1);
    }

    #[test]
    fn pieces_are_at_most_twenty_meters_and_follow_the_profile() {
        let seen = std::cell::RefCell::new(Vec::new());
        let hill = |from_m: f64, to_m: f64| {
            seen.borrow_mut().push((from_m, to_m));
            if to_m <= 25.0 { 0.10 } else { -0.10 }
        };
        let (forward, backward) = costs_us(50_000_000, 1.0, hill).expect("a good walk");
        let seen = seen.into_inner();
        assert_eq!(seen.len(), 3);
        assert!(seen.iter().all(|(from_m, to_m)| to_m - from_m <= LONGEST_PIECE_M));
        let third_m = 50.0 / 3.0;
        let (up, down) = (pace_s_per_m(0.10, 1.0), pace_s_per_m(-0.10, 1.0));
        near(forward as f64 / 1e6, third_m * (up + 2.0 * down), 1e-5);
        near(backward as f64 / 1e6, third_m * (down + 2.0 * up), 1e-5);
    }

    #[test]
    fn no_speed_is_no_cost() {
        for speed in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e-9] {
            assert_eq!(costs_us(400_000_000, speed, |_, _| 0.0), None);
        }
        assert_eq!(costs_us(1_000_000, 1.0, |_, _| f64::NAN), Some((1_000_000, 1_000_000)));
    }
}
