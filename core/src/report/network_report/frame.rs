//! From coordinates as written to the plan and back.

use super::{Coordinates, Refusal};
use crate::exchange::geojson_lines::ReadLine;
use crate::plan::PlanPoint;
use crate::plan::coordinates::LIMIT_MM;
use crate::plan::projection::{GeographicPoint, Projection};

/// How coordinates as written lie on the plan.
pub(super) enum Frame {
    /// Meters, moved by whole meters when they lie beyond the plan's range (national grids do).
    Meters { east_m: f64, north_m: f64 },
    /// Degrees, projected about a center.
    Degrees(Box<Projection>),
}

impl Frame {
    /// The frame of streets: about the middle of their bounds unless another center is given.
    pub fn of(coordinates: Coordinates, lines: &[ReadLine]) -> Result<Self, Refusal> {
        let positions = || lines.iter().flat_map(|line| line.positions.iter().copied());
        match coordinates {
            Coordinates::Meters => {
                let limit_m = f64::from(LIMIT_MM) / 1000.0;
                let fits = positions().flatten().all(|part| part.abs() <= limit_m);
                let [east_m, north_m] = if fits {
                    [0.0, 0.0]
                } else {
                    middle(positions()).map(f64::round)
                };
                Ok(Self::Meters { east_m, north_m })
            }
            Coordinates::Degrees { about } => {
                let on_earth = |[longitude, latitude]: &[f64; 2]| longitude.abs() <= 180.0 && latitude.abs() <= 90.0;
                let about = about.unwrap_or_else(|| middle_of_degrees(positions().filter(on_earth)));
                let origin = GeographicPoint::checked_from_deg(about[0], about[1]);
                let projection = origin.and_then(|origin| Projection::about(origin).ok());
                let projection = projection.ok_or(Refusal::Center { about })?;
                Ok(Self::Degrees(Box::new(projection)))
            }
        }
    }

    /// Meters on the plan, not rounded; `None` when too far away to be projected.
    pub fn position_m(&self, written: [f64; 2]) -> Option<(f64, f64)> {
        match self {
            Self::Meters { east_m, north_m } => Some((written[0] - east_m, written[1] - north_m)),
            Self::Degrees(projection) => {
                let on_earth = written[0].abs() <= 180.0;
                projection.m_from_deg(written[0], written[1]).filter(|_| on_earth)
            }
        }
    }

    /// The plan point; `None` when beyond the plan's range.
    pub fn plan_point(&self, written: [f64; 2]) -> Option<PlanPoint> {
        let (x_m, y_m) = self.position_m(written)?;
        PlanPoint::checked_from_m(x_m, y_m)
    }

    /// Meters as shown: as written for input in meters, from the center for input in degrees.
    pub fn shown_m(&self, (x_m, y_m): (f64, f64)) -> [f64; 2] {
        match self {
            Self::Meters { east_m, north_m } => [x_m + east_m, y_m + north_m],
            Self::Degrees(_) => [x_m, y_m],
        }
    }

    /// Longitude and latitude of the center, for input in degrees.
    pub fn center_deg(&self) -> Option<[f64; 2]> {
        match self {
            Self::Meters { .. } => None,
            Self::Degrees(projection) => {
                let (longitude, latitude) = projection.origin().to_deg();
                Some([longitude, latitude])
            }
        }
    }

    /// A position as written, for messages.
    pub fn written(&self, point: PlanPoint) -> String {
        let (x_m, y_m) = point.to_m();
        match self {
            Self::Meters { .. } => {
                let [x_m, y_m] = self.shown_m((x_m, y_m));
                format!("{x_m:.3}, {y_m:.3}")
            }
            Self::Degrees(projection) => {
                let (longitude, latitude) = projection.deg_from_m(x_m, y_m);
                format!("{longitude:.7}, {latitude:.7}")
            }
        }
    }
}

/// The middle of the bounds; zero without positions.
fn middle(positions: impl Iterator<Item = [f64; 2]>) -> [f64; 2] {
    let bounds = positions.fold(None, |bounds: Option<[[f64; 2]; 2]>, position| {
        let [low, high] = bounds.unwrap_or([position, position]);
        Some([
            [low[0].min(position[0]), low[1].min(position[1])],
            [high[0].max(position[0]), high[1].max(position[1])],
        ])
    });
    let [low, high] = bounds.unwrap_or_default();
    // Half of each first, so that no sum of two large numbers overflows.
    [low[0] / 2.0 + high[0] / 2.0, low[1] / 2.0 + high[1] / 2.0]
}

/// The middle of bounds in degrees; streets on both sides of the 180th meridian are taken together.
fn middle_of_degrees(positions: impl Iterator<Item = [f64; 2]> + Clone) -> [f64; 2] {
    let (east, west) = positions.clone().fold((false, false), |(east, west), [longitude, _]| {
        (east || longitude > 90.0, west || longitude < -90.0)
    });
    if !(east && west) {
        return middle(positions);
    }
    let turned =
        positions.map(|[longitude, latitude]| [if longitude < 0.0 { longitude + 360.0 } else { longitude }, latitude]);
    let [longitude, latitude] = middle(turned);
    [
        if longitude > 180.0 {
            longitude - 360.0
        } else {
            longitude
        },
        latitude,
    ]
}
