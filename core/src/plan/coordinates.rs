//! Where things are on the plan: integer millimeters, x east, y north, about the plan's geographic origin.
//!
//! Legal coordinates lie within ±100 km of the origin ([`LIMIT_MM`]). They are checked once, on entry; everything that
//! takes a [`PlanPoint`] relies on it: differences fit `i32`, and products of differences fit `i64`.

use std::ops::{Add, Mul, Neg, Sub};

use super::document::UnitSystem;
use crate::passing::passed;
use crate::say;

/// Largest legal absolute coordinate, in millimeters: 100 km. A neighborhood is a hundredth of that; the limit keeps
/// twice an area of the whole range within `i128` and a cross product of differences within `i64`.
pub const LIMIT_MM: i32 = 100_000_000;

/// Distances below 2 km are worked in 64 bits: their square in square micrometers stays below 2^62.
const NEAR_MM2: u64 = 2_000_000 * 2_000_000;

/// The square root rounded down, of a number below 2^62.
fn floor_of_root(square: u64) -> u64 {
    mended(square, (square as f64).sqrt() as u64)
}

/// The same of a number below 2^100.
fn floor_of_far_root(square: u128) -> u128 {
    mended(square, (square as f64).sqrt() as u128)
}

/// The root of the float, which is at most one off, set right.
fn mended<N>(square: N, root: N) -> N
where
    N: Copy + PartialOrd + From<u8> + Add<Output = N> + Sub<Output = N> + Mul<Output = N>,
{
    let next = root + N::from(1);
    if root * root > square {
        root - N::from(1)
    } else if next * next <= square {
        next
    } else {
        root
    }
}

/// Whether the root of `square` is nearer to the integer after `floor`: (floor + 1/2)² = floor² + floor + 1/4.
const fn is_nearer_next(square: u128, floor: u128) -> bool {
    square > floor * floor + floor
}

/// A position on the plan, in integer millimeters. Ordered by x, then y.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlanPoint {
    /// Millimeters east of the origin.
    pub x_mm: i32,
    /// Millimeters north of the origin.
    pub y_mm: i32,
}

passed!(struct PlanPoint { x_mm, y_mm });

/// A displacement on the plan, in integer millimeters.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlanVector {
    /// Millimeters east.
    pub x_mm: i32,
    /// Millimeters north.
    pub y_mm: i32,
}

/// Which side of a directed line a point lies on, decided exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// To the right of the direction of travel.
    Right,
    /// On the line.
    On,
    /// To the left of the direction of travel.
    Left,
}

impl PlanPoint {
    /// The point at `x_mm`, `y_mm`, which must already be legal (see [`PlanPoint::checked_from_m`] for user input).
    #[must_use]
    pub const fn new(x_mm: i32, y_mm: i32) -> Self {
        Self { x_mm, y_mm }
    }

    /// The nearest grid point to a position in meters; `None` when it is not finite or beyond [`LIMIT_MM`].
    ///
    /// ```
    /// use hobnail_core::plan::PlanPoint;
    /// assert_eq!(PlanPoint::checked_from_m(1.2344, -0.5), Some(PlanPoint::new(1234, -500)));
    /// assert_eq!(PlanPoint::checked_from_m(f64::NAN, 0.0), None);
    /// assert_eq!(PlanPoint::checked_from_m(100_001.0, 0.0), None);
    /// ```
    #[must_use]
    pub fn checked_from_m(x_m: f64, y_m: f64) -> Option<Self> {
        let to_mm = |m: f64| {
            let mm = (m * 1000.0).round();
            (mm.is_finite() && mm.abs() <= f64::from(LIMIT_MM)).then_some(mm as i32)
        };
        Some(Self {
            x_mm: to_mm(x_m)?,
            y_mm: to_mm(y_m)?,
        })
    }

    /// Whether both coordinates are within [`LIMIT_MM`].
    #[must_use]
    pub const fn is_legal(self) -> bool {
        self.x_mm.unsigned_abs() <= LIMIT_MM as u32 && self.y_mm.unsigned_abs() <= LIMIT_MM as u32
    }

    /// East and north in meters.
    #[must_use]
    pub fn to_m(self) -> (f64, f64) {
        (f64::from(self.x_mm) / 1000.0, f64::from(self.y_mm) / 1000.0)
    }

    /// The mean of some points, rounded toward the origin; `None` of none. For corners of a ring a place in the middle of it,
    /// which a hollow ring need not hold.
    #[must_use]
    pub fn mean_of(points: &[Self]) -> Option<Self> {
        let count = points.len() as i64;
        let sum = |coordinate: fn(&Self) -> i32| points.iter().map(|point| i64::from(coordinate(point))).sum::<i64>();
        // The mean of legal coordinates is one.
        let mean = |coordinate| Some(sum(coordinate).checked_div(count)? as i32);
        Some(Self::new(mean(|point| point.x_mm)?, mean(|point| point.y_mm)?))
    }

    /// Where it lies about the origin, in whole meters or feet.
    ///
    /// ```
    /// use hobnail_core::plan::{PlanPoint, document::UnitSystem};
    /// let point = PlanPoint::new(12_400, -7_600);
    /// assert_eq!(point.in_words(UnitSystem::Metric), "12 m east, 8 m south");
    /// assert_eq!(point.in_words(UnitSystem::UsCustomary), "41 ft east, 25 ft south");
    /// ```
    #[must_use]
    pub fn in_words(self, units: UnitSystem) -> String {
        let is_metric = units == UnitSystem::Metric;
        // A foot is 304.8 mm.
        let unit_tenths_mm = if is_metric { 10_000 } else { 3_048 };
        let whole = |mm: i32| ((u64::from(mm.unsigned_abs()) * 10 + unit_tenths_mm / 2) / unit_tenths_mm) as u32;
        let (east, north) = (whole(self.x_mm), whole(self.y_mm));
        let sideways = match (self.x_mm < 0 && east > 0, is_metric) {
            (true, true) => say!("plan-meters-west"),
            (true, false) => say!("plan-feet-west"),
            (false, true) => say!("plan-meters-east"),
            (false, false) => say!("plan-feet-east"),
        };
        let upward = match (self.y_mm < 0 && north > 0, is_metric) {
            (true, true) => say!("plan-meters-south"),
            (true, false) => say!("plan-feet-south"),
            (false, true) => say!("plan-meters-north"),
            (false, false) => say!("plan-feet-north"),
        };
        [&east.to_string(), " ", sideways, ", ", &north.to_string(), " ", upward].concat()
    }

    /// Squared distance to `other`, exact, in square millimeters.
    #[must_use]
    pub const fn squared_distance_mm2(self, other: Self) -> i64 {
        let (dx, dy) = (
            other.x_mm as i64 - self.x_mm as i64,
            other.y_mm as i64 - self.y_mm as i64,
        );
        dx * dx + dy * dy
    }

    /// Distance to `other` in integer micrometers, correctly rounded: the length of a link.
    ///
    /// ```
    /// use hobnail_core::plan::PlanPoint;
    /// assert_eq!(PlanPoint::new(0, 0).distance_um(PlanPoint::new(3000, 4000)), 5_000_000);
    /// assert_eq!(PlanPoint::new(0, 0).distance_um(PlanPoint::new(1, 1)), 1_414);
    /// ```
    #[must_use]
    pub fn distance_um(self, other: Self) -> u64 {
        let squared_mm2 = self.squared_distance_mm2(other).unsigned_abs();
        if squared_mm2 < NEAR_MM2 {
            let squared_um2 = squared_mm2 * 1_000_000;
            let floor = floor_of_root(squared_um2);
            return floor + u64::from(squared_um2 > floor * floor + floor);
        }
        let squared_um2 = u128::from(squared_mm2) * 1_000_000;
        let floor = floor_of_far_root(squared_um2);
        floor as u64 + u64::from(is_nearer_next(squared_um2, floor))
    }

    /// Twice the signed area of the triangle `self`, `b`, `c`, exact: positive when they turn left.
    #[must_use]
    pub const fn cross(self, b: Self, c: Self) -> i64 {
        let (ux, uy) = (b.x_mm as i64 - self.x_mm as i64, b.y_mm as i64 - self.y_mm as i64);
        let (vx, vy) = (c.x_mm as i64 - self.x_mm as i64, c.y_mm as i64 - self.y_mm as i64);
        ux * vy - uy * vx
    }

    /// On which side of the line from `a` to `b` this point lies, exact.
    #[must_use]
    pub fn side_of(self, a: Self, b: Self) -> Side {
        match a.cross(b, self).cmp(&0) {
            std::cmp::Ordering::Greater => Side::Left,
            std::cmp::Ordering::Equal => Side::On,
            std::cmp::Ordering::Less => Side::Right,
        }
    }
}

impl PlanVector {
    /// The displacement of `x_mm` east and `y_mm` north.
    #[must_use]
    pub const fn new(x_mm: i32, y_mm: i32) -> Self {
        Self { x_mm, y_mm }
    }
}

impl Sub for PlanPoint {
    type Output = PlanVector;
    fn sub(self, from: Self) -> PlanVector {
        PlanVector::new(self.x_mm - from.x_mm, self.y_mm - from.y_mm)
    }
}

impl Add<PlanVector> for PlanPoint {
    type Output = Self;
    /// The moved point, held at the legal limit rather than wrapped.
    fn add(self, by: PlanVector) -> Self {
        let within = |a: i32, b: i32| a.saturating_add(b).clamp(-LIMIT_MM, LIMIT_MM);
        Self::new(within(self.x_mm, by.x_mm), within(self.y_mm, by.y_mm))
    }
}

impl Neg for PlanVector {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.x_mm, -self.y_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn near_distances_are_rounded_as_far_ones_are() {
        let mut state = 11_u64;
        for step in 0..200_000_u64 {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            // Whole squares and their neighbors, then anything below the limit.
            let near = state >> 2 >> (step % 60);
            let whole = near.isqrt();
            for square in [
                whole * whole,
                (whole * whole).saturating_sub(1),
                whole * whole + 1,
                near,
            ] {
                assert_eq!(floor_of_root(square), square.isqrt(), "{square}");
            }
            let point = PlanPoint::new((near % 2_000_003) as i32, (state >> 40) as i32 % 1_999_993);
            let squared_um2 = point.squared_distance_mm2(PlanPoint::new(0, 0)) as u128 * 1_000_000;
            let floor = squared_um2.isqrt();
            assert_eq!(floor_of_far_root(squared_um2), floor, "{squared_um2}");
            let whole = floor * 70_001;
            for square in [whole * whole, whole * whole - u128::from(whole > 0), whole * whole + 1] {
                assert_eq!(floor_of_far_root(square), square.isqrt(), "{square}");
            }
            let rounded = floor as u64 + u64::from(is_nearer_next(squared_um2, floor));
            assert_eq!(PlanPoint::new(0, 0).distance_um(point), rounded, "{point:?}");
        }
    }

    #[test]
    fn products_of_the_largest_differences_fit() {
        let (low, high) = (PlanPoint::new(-LIMIT_MM, -LIMIT_MM), PlanPoint::new(LIMIT_MM, LIMIT_MM));
        assert_eq!(low.squared_distance_mm2(high), 80_000_000_000_000_000);
        assert_eq!(
            low.cross(PlanPoint::new(LIMIT_MM, -LIMIT_MM), high),
            40_000_000_000_000_000
        );
    }

    #[test]
    fn side_follows_the_direction_of_travel() {
        let (a, b) = (PlanPoint::new(0, 0), PlanPoint::new(10, 0));
        assert_eq!(PlanPoint::new(5, 1).side_of(a, b), Side::Left);
        assert_eq!(PlanPoint::new(5, -1).side_of(a, b), Side::Right);
        assert_eq!(PlanPoint::new(50, 0).side_of(a, b), Side::On);
    }

    #[test]
    fn moving_stops_at_the_legal_limit() {
        let moved = PlanPoint::new(LIMIT_MM, 0) + PlanVector::new(5, 5);
        assert_eq!(moved, PlanPoint::new(LIMIT_MM, 5));
    }
}
