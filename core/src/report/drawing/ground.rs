//! How far apart contours of the ground are drawn, whatever they are drawn on.

use crate::figures::unit::System;
use crate::plan::document::Topography;

/// Each so many contours one is heavier and labeled. Common practice, no source.
pub const HEAVIER_EACH: i32 = 5;

const FOOT_MM: f64 = 304.8;
const INTERVALS_M: [f64; 7] = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0];
const INTERVALS_FT: [f64; 7] = [2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0];

/// How much the ground rises on its way on average, rise over run along rows and columns. Linear in the heights.
#[must_use]
pub fn mean_slope(held: &Topography) -> f64 {
    let columns = held.columns as usize;
    let (mut rise_mm, mut count) = (0.0, 0.0);
    for (place, height) in held.heights_mm.iter().enumerate() {
        let east = held.heights_mm.get(place + 1).filter(|_| (place + 1) % columns != 0);
        let north = held.heights_mm.get(place + columns);
        for other in [east, north].into_iter().flatten() {
            rise_mm += (f64::from(*other) - f64::from(*height)).abs();
            count += 1.0;
        }
    }
    let run_mm: f64 = count * f64::from(held.spacing_mm);
    if run_mm > 0.0 { rise_mm / run_mm } else { 0.0 }
}

/// The least usual interval whose contours lie `apart_m` apart on the ground, or farther, where it rises as it does on
/// average: the number in meters or feet, and how long that unit is in millimeters.
///
/// # Example
/// ```
/// use hobnail_core::figures::unit::System;
/// use hobnail_core::report::drawing::ground::interval;
///
/// // On a slope of 1 in 10, contours that lie 40 m apart are 4 m apart in height: 5 m is the least usual interval.
/// assert_eq!(interval(40.0, 0.1, System::Metric), (5.0, 1000.0));
/// ```
#[must_use]
pub fn interval(apart_m: f64, mean_slope: f64, system: System) -> (f64, f64) {
    let (intervals, unit_mm) = match system {
        System::Metric => (INTERVALS_M, 1_000.0),
        System::Customary => (INTERVALS_FT, FOOT_MM),
    };
    let is_apart = |interval: &f64| interval * unit_mm / 1_000.0 >= apart_m * mean_slope;
    let found = intervals.into_iter().find(is_apart);
    (found.unwrap_or(intervals[intervals.len() - 1]), unit_mm)
}
