//! Places and displacements in plan millimeters, between the grid's own points while lots are laid.

use crate::number;
use crate::plan::PlanPoint;

/// A place, or a displacement, in millimeters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub x: f64,
    pub y: f64,
}

impl Spot {
    pub fn of(point: PlanPoint) -> Self {
        Self {
            x: f64::from(point.x_mm),
            y: f64::from(point.y_mm),
        }
    }

    /// The nearest point of the grid. Places of lots lie within the plan, far inside `i32`.
    pub fn rounded(self) -> PlanPoint {
        PlanPoint::new(self.x.round() as i32, self.y.round() as i32)
    }

    pub fn plus(self, other: Self) -> Self {
        Self {
            x: self.x + other.x,
            y: self.y + other.y,
        }
    }

    pub fn minus(self, other: Self) -> Self {
        Self {
            x: self.x - other.x,
            y: self.y - other.y,
        }
    }

    pub fn times(self, scale: f64) -> Self {
        Self {
            x: self.x * scale,
            y: self.y * scale,
        }
    }

    pub fn toward(self, other: Self, share: f64) -> Self {
        self.plus(other.minus(self).times(share))
    }

    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    pub fn length(self) -> f64 {
        number::length(self.x, self.y)
    }

    /// Turned a quarter to the left.
    pub fn left(self) -> Self {
        Self { x: -self.y, y: self.x }
    }

    /// The displacement of length 1 in the same direction; `None` for none.
    pub fn direction(self) -> Option<Self> {
        let length = self.length();
        (length > 0.0).then(|| self.times(1.0 / length))
    }
}

/// Where along `a` to `b`, as a share, the segment `c` to `d` crosses it: within both, ends included.
pub(super) fn crossing(a: Spot, b: Spot, c: Spot, d: Spot) -> Option<f64> {
    let (along, across, between) = (b.minus(a), d.minus(c), c.minus(a));
    let turn = along.cross(across);
    if turn.abs() <= 0.0 {
        return None;
    }
    let (on_first, on_second) = (between.cross(across) / turn, between.cross(along) / turn);
    ((0.0..=1.0).contains(&on_first) && (0.0..=1.0).contains(&on_second)).then_some(on_first)
}

/// Distance from a place to a segment.
pub(super) fn distance_to_segment(place: Spot, a: Spot, b: Spot) -> f64 {
    let along = b.minus(a);
    let squared = along.dot(along);
    let share = if squared > 0.0 {
        (place.minus(a).dot(along) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    place.minus(a.plus(along.times(share))).length()
}
