//! Corner radii: the largest that fits, and the corner as it is drawn and dragged.

use super::{ahead, direction, place};
use crate::number::within;
use crate::plan::street::Vertex;

/// A corner that can be rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    at: (f64, f64),
    /// Between its legs, of length 1.
    inward: (f64, f64),
    /// Length of the legs from corner to tangent point, per radius: the cotangent of half the angle between them.
    cotangent: f64,
    /// The largest radius that fits, in millimeters.
    pub largest_mm: f64,
    /// How far inside the curve its handle lies, in millimeters: a quarter of the shorter leg.
    handle_mm: f64,
}

/// The corner at an inner vertex; `None` at the ends, where the line runs straight on and where it turns back.
///
/// As in [`flatten`](crate::plan::flatten), a leg is shared by halves with a corner at its other end that is rounded
/// (or will be, for `is_all_rounded`), and else used whole. Constant cost.
#[must_use]
pub fn corner(line: &[Vertex], index: usize, is_all_rounded: bool) -> Option<Corner> {
    const LEAST_SINE: f64 = 0.001;
    let before = index.checked_sub(1)?;
    let at = line.get(index)?.point;
    let leg = |neighbor: usize| {
        let end = line.get(neighbor)?;
        let (along, length_mm) = direction(at, end.point)?;
        let is_inner = neighbor > 0 && neighbor + 1 < line.len();
        let is_shared = is_inner && (is_all_rounded || end.corner_radius_mm > 0);
        Some((along, length_mm, if is_shared { length_mm / 2.0 } else { length_mm }))
    };
    let (one, other) = (leg(before)?, leg(index + 1)?);
    let cosine = one.0.0 * other.0.0 + one.0.1 * other.0.1;
    let sine = (one.0.0 * other.0.1 - one.0.1 * other.0.0).abs();
    let across = (one.0.0 + other.0.0, one.0.1 + other.0.1);
    let across_length = (across.0 * across.0 + across.1 * across.1).sqrt();
    if sine < LEAST_SINE || across_length <= 0.0 {
        return None;
    }
    let cotangent = (1.0 + cosine) / sine;
    Some(Corner {
        at: place(at),
        inward: (across.0 / across_length, across.1 / across_length),
        cotangent,
        largest_mm: one.2.min(other.2) / cotangent,
        handle_mm: one.1.min(other.1) / 4.0,
    })
}

impl Corner {
    /// How much nearer the middle of the curve comes per radius: 1 / sin(half the angle) − 1.
    fn inward_per_radius(&self) -> f64 {
        (1.0 + self.cotangent * self.cotangent).sqrt() - 1.0
    }

    /// Where the handle that sets the radius lies: inside the middle of the curve.
    #[must_use]
    pub fn handle(&self, radius_mm: f64) -> (f64, f64) {
        let radius_mm = radius_mm.min(self.largest_mm);
        ahead(
            self.at,
            self.inward,
            self.handle_mm + radius_mm * self.inward_per_radius(),
        )
    }

    /// The radius whose handle lies nearest to a place, from 0 to the largest that fits.
    #[must_use]
    pub fn radius_at(&self, (x_mm, y_mm): (f64, f64)) -> f64 {
        let along_mm = (x_mm - self.at.0) * self.inward.0 + (y_mm - self.at.1) * self.inward.1;
        within(
            (along_mm - self.handle_mm) / self.inward_per_radius(),
            0.0,
            self.largest_mm,
        )
    }
}

/// Rounds every inner corner to the largest radius that fits when all are rounded, in whole decimeters, so that the line
/// becomes one smooth curve. Cost: linear.
pub fn round_all(line: &mut [Vertex]) {
    const DECIMETER_MM: f64 = 100.0;
    for index in 1..line.len().saturating_sub(1) {
        let radius_mm = corner(line, index, true).map_or(0.0, |corner| corner.largest_mm);
        if let Some(vertex) = line.get_mut(index) {
            vertex.corner_radius_mm = ((radius_mm / DECIMETER_MM).floor() * DECIMETER_MM) as u32;
        }
    }
}

#[cfg(test)]
mod tests;
