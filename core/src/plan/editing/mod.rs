//! How drawn things are changed as a draftsman changes them: moved, turned and mirrored, cut and joined, set off to a
//! side, rounded, laid out as blocks. Pure geometry on lines and marks; who asks makes the edits.
//!
//! Angles are in radians, counterclockwise from east. Points are rounded to the millimeter once, at the end.

pub mod blocks;
pub mod cut;
pub mod motion;
pub mod offset;
pub mod rounding;

#[cfg(test)]
mod test_lines;

use super::coordinates::{LIMIT_MM, PlanPoint};
use crate::number::within;

/// A position between millimeters, while something is worked out.
pub(crate) type Place = (f64, f64);

pub(crate) fn place(point: PlanPoint) -> Place {
    (f64::from(point.x_mm), f64::from(point.y_mm))
}

/// The millimeter nearest to a place, held at the legal limit.
pub(crate) fn rounded((x_mm, y_mm): Place) -> PlanPoint {
    let limit = f64::from(LIMIT_MM);
    let held = |mm: f64| within(mm.round(), -limit, limit) as i32;
    PlanPoint::new(held(x_mm), held(y_mm))
}

/// The point `along_mm` from `from` in a direction of length 1.
pub(crate) fn ahead(from: Place, direction: Place, along_mm: f64) -> Place {
    (from.0 + direction.0 * along_mm, from.1 + direction.1 * along_mm)
}

/// The direction from `from` to `to` with length 1, and how far it is; `None` where they are one place.
#[must_use]
pub fn direction(from: PlanPoint, to: PlanPoint) -> Option<((f64, f64), f64)> {
    let length_mm = (from.squared_distance_mm2(to) as f64).sqrt();
    let (a, b) = (place(from), place(to));
    (length_mm > 0.0).then(|| (((b.0 - a.0) / length_mm, (b.1 - a.1) / length_mm), length_mm))
}

/// Where two lines without ends meet, each given by a place and a direction of length 1; `None` for lines within a
/// thousandth of a radian of parallel, whose crossing would move by meters for a millimeter.
#[must_use]
pub fn meeting(one: ((f64, f64), (f64, f64)), other: ((f64, f64), (f64, f64))) -> Option<(f64, f64)> {
    const LEAST_SINE: f64 = 0.001;
    let ((a, u), (b, v)) = (one, other);
    let sine = u.0 * v.1 - u.1 * v.0;
    let along_mm = ((b.0 - a.0) * v.1 - (b.1 - a.1) * v.0) / sine;
    (sine.abs() > LEAST_SINE).then(|| ahead(a, u, along_mm))
}
