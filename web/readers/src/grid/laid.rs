//! A grid that no file says the place of, laid into the plan by hand.

use crate::base::Position;

/// Where a grid lies in the plan: its positions, counted from a point of it that is zero, are scaled, turned and shifted,
/// as those of a drawing are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// Where its zero lies, east and north of the plan's origin in meters.
    pub zero_m: Position,
    /// Meters in one of its units, above 0.
    pub unit_m: f64,
    /// By how much it is turned about its zero, counterclockwise, in degrees.
    pub turn_deg: f64,
}

impl Laid {
    /// At the plan's origin and not turned.
    #[must_use]
    pub const fn in_units_of(unit_m: f64) -> Self {
        Self {
            zero_m: [0.0; 2],
            unit_m,
            turn_deg: 0.0,
        }
    }

    /// The grid's position of a point of the plan, in meters east and north of its origin.
    #[must_use]
    pub fn of_plan(&self, [east_m, north_m]: Position) -> Position {
        let [x_m, y_m] = [east_m - self.zero_m[0], north_m - self.zero_m[1]];
        let (sine, cosine) = self.turn_deg.to_radians().sin_cos();
        [cosine * x_m + sine * y_m, cosine * y_m - sine * x_m].map(|length_m| length_m / self.unit_m)
    }

    /// A position of the grid in millimeters from its zero, neither turned nor shifted.
    #[must_use]
    pub fn from_zero_mm(&self, position: Position) -> Position {
        position.map(|length| (length * self.unit_m * 1000.0).round())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_point_of_the_plan_is_found_scaled_turned_and_shifted() {
        let laid = Laid {
            zero_m: [100.0, 50.0],
            unit_m: 0.5,
            turn_deg: 90.0,
        };
        // Its x runs north and its y west, two units to the meter.
        for (of_plan, expected) in [
            ([100.0, 50.0], [0.0, 0.0]),
            ([100.0, 60.0], [20.0, 0.0]),
            ([90.0, 50.0], [0.0, 20.0]),
        ] {
            let found = laid.of_plan(of_plan);
            assert!(
                (found[0] - expected[0]).abs() < 1e-9 && (found[1] - expected[1]).abs() < 1e-9,
                "{found:?}"
            );
        }
        assert_eq!(laid.from_zero_mm([20.0, -1.0]), [10_000.0, -500.0]);
    }
}
