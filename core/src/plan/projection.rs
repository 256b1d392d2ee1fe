//! Where the plan lies on Earth: longitude and latitude to plan coordinates and back.
//!
//! The plane is the ellipsoidal transverse Mercator projection of WGS84 with scale 1 on the central meridian, centered
//! on the plan's geographic origin, which therefore lies at plan (0, 0) with grid north true there. In any
//! PROJ-reading software it is `+proj=tmerc +lat_0=… +lon_0=… +k=1 +x_0=0 +y_0=0 +ellps=WGS84 +units=m`.
//!
//! Formulas: L. Krüger, *Konforme Abbildung des Erdellipsoids in der Ebene*, 1912, with the coefficients to the sixth
//! order in the third flattening of C. F. F. Karney, "Transverse Mercator with an accuracy of a few nanometers",
//! *Journal of Geodesy* 85 (2011), equations 7 to 12 and 35 to 36. Within the legal 100 km it is good to nanometers;
//! the scale there departs from 1 by at most 1.3e-4.
//!
//! Stored positions are integer billionths of a degree: 0.11 mm at most, so a plan point rounded to nine decimals of a
//! degree and read again is the same millimeter, anywhere within the legal range of any legal origin.

use std::fmt;

use super::coordinates::PlanPoint;
use super::document::Heading;
use crate::number;
use crate::say;

/// Billionths of a degree in a degree.
pub const NDEG_PER_DEG: i64 = 1_000_000_000;

/// Largest legal absolute latitude of an origin, in billionths of a degree: 89°. Nearer to a pole the legal range would
/// contain it and longitude would lose its meaning.
pub const ORIGIN_LATITUDE_LIMIT_NDEG: i64 = 89 * NDEG_PER_DEG;

/// Equatorial radius of WGS84 in meters (NIMA TR8350.2, 3rd edition, 2000, table 3.1).
const EQUATORIAL_RADIUS_M: f64 = 6_378_137.0;

/// Flattening of WGS84 (NIMA TR8350.2, 3rd edition, 2000, table 3.1).
const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// Points whose easting exceeds this share of the radius (320 km) are refused before the series, which is only good
/// near the central meridian.
const LARGEST_EAST_RATIO: f64 = 0.05;

/// A position on Earth, WGS84, in billionths of a degree: exactly what nine decimals of a degree can say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct GeographicPoint {
    /// Longitude, east positive, −180° to 180°.
    pub longitude_ndeg: i64,
    /// Latitude, north positive, −90° to 90°.
    pub latitude_ndeg: i64,
}

/// Why a geographic origin can not be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OriginFault {
    /// The refused origin.
    pub origin: GeographicPoint,
}

/// The plan's plane: transverse Mercator about one origin, with its coefficients worked out once.
#[derive(Clone, Debug, PartialEq)]
pub struct Projection {
    origin: GeographicPoint,
    /// Rectifying radius in meters.
    radius_m: f64,
    /// First eccentricity.
    eccentricity: f64,
    /// Coefficients from the conformal sphere to the plane, by order.
    to_plane: [f64; ORDER],
    /// Coefficients from the plane to the conformal sphere, by order.
    to_sphere: [f64; ORDER],
    /// Rectifying latitude of the origin, in radians.
    origin_north_rad: f64,
}

/// Order of the series in the third flattening; the seventh order adds less than 1e-12 m here.
const ORDER: usize = 6;

impl GeographicPoint {
    /// The nearest storable point; `None` when not finite or out of range.
    ///
    /// ```
    /// use hobnail_core::plan::projection::GeographicPoint;
    /// let point = GeographicPoint::checked_from_deg(-71.1234567894, 42.5).unwrap();
    /// assert_eq!(point.longitude_ndeg, -71_123_456_789);
    /// assert_eq!(GeographicPoint::checked_from_deg(0.0, 90.5), None);
    /// ```
    #[must_use]
    pub fn checked_from_deg(longitude_deg: f64, latitude_deg: f64) -> Option<Self> {
        let to_ndeg = |deg: f64, limit_deg: f64| {
            (deg.is_finite() && deg.abs() <= limit_deg).then(|| (deg * NDEG_PER_DEG as f64).round() as i64)
        };
        Some(Self {
            longitude_ndeg: to_ndeg(longitude_deg, 180.0)?,
            latitude_ndeg: to_ndeg(latitude_deg, 90.0)?,
        })
    }

    /// Longitude and latitude in degrees, each the double nearest to its nine decimals.
    #[must_use]
    pub fn to_deg(self) -> (f64, f64) {
        let to_deg = |ndeg: i64| ndeg as f64 / NDEG_PER_DEG as f64;
        (to_deg(self.longitude_ndeg), to_deg(self.latitude_ndeg))
    }
}

impl fmt::Display for OriginFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (longitude_deg, latitude_deg) = self.origin.to_deg();
        formatter.write_str(&say!(
            "plan-origin-unusable",
            longitude = longitude_deg.to_string(),
            latitude = latitude_deg.to_string()
        ))
    }
}

impl std::error::Error for OriginFault {}

impl Heading {
    /// Where the plan's origin lies.
    #[must_use]
    pub const fn geographic_origin(&self) -> GeographicPoint {
        GeographicPoint {
            longitude_ndeg: self.origin_longitude_ndeg,
            latitude_ndeg: self.origin_latitude_ndeg,
        }
    }

    /// The plane the plan is drawn on.
    ///
    /// # Errors
    /// [`OriginFault`] when the heading's origin is out of range.
    pub fn projection(&self) -> Result<Projection, OriginFault> {
        Projection::about(self.geographic_origin())
    }
}

impl Projection {
    /// The plane about `origin`.
    ///
    /// # Errors
    /// [`OriginFault`] when the longitude is beyond 180° or the latitude beyond [`ORIGIN_LATITUDE_LIMIT_NDEG`].
    pub fn about(origin: GeographicPoint) -> Result<Self, OriginFault> {
        let is_legal = origin.longitude_ndeg.unsigned_abs() <= 180 * NDEG_PER_DEG as u64
            && origin.latitude_ndeg.unsigned_abs() <= ORIGIN_LATITUDE_LIMIT_NDEG as u64;
        if !is_legal {
            return Err(OriginFault { origin });
        }
        let n = FLATTENING / (2.0 - FLATTENING);
        let n2 = n * n;
        let mut projection = Self {
            origin,
            radius_m: EQUATORIAL_RADIUS_M / (1.0 + n) * (1.0 + n2 / 4.0 + n2 * n2 / 64.0 + n2 * n2 * n2 / 256.0),
            eccentricity: (FLATTENING * (2.0 - FLATTENING)).sqrt(),
            to_plane: to_plane_coefficients(n),
            to_sphere: to_sphere_coefficients(n),
            origin_north_rad: 0.0,
        };
        let (_, latitude_deg) = origin.to_deg();
        let conformal_rad = number::atan(projection.conformal_tangent(latitude_deg.to_radians()));
        projection.origin_north_rad = series(&projection.to_plane, conformal_rad, 0.0, 1.0).0;
        Ok(projection)
    }

    /// The origin, at plan (0, 0).
    #[must_use]
    pub const fn origin(&self) -> GeographicPoint {
        self.origin
    }

    /// East and north of the origin in meters, unrounded; `None` when not finite, not a latitude, or farther than
    /// 320 km east or west of the origin's meridian, where the series is not meant to be used.
    #[must_use]
    pub fn m_from_deg(&self, longitude_deg: f64, latitude_deg: f64) -> Option<(f64, f64)> {
        if !(longitude_deg.is_finite() && latitude_deg.abs() <= 90.0) {
            return None;
        }
        let (origin_longitude_deg, _) = self.origin.to_deg();
        let longitude_rad = within_half_turn_deg(longitude_deg - origin_longitude_deg).to_radians();
        let conformal_tangent = self.conformal_tangent(latitude_deg.to_radians());
        let (sine, cosine) = (number::sin(longitude_rad), number::cos(longitude_rad));
        let north_rad = number::atan2(conformal_tangent, cosine);
        let east_rad = number::asinh(sine / number::length(conformal_tangent, cosine));
        if east_rad.is_nan() || east_rad.abs() > LARGEST_EAST_RATIO {
            return None;
        }
        let (north_rad, east_rad) = series(&self.to_plane, north_rad, east_rad, 1.0);
        Some((
            self.radius_m * east_rad,
            self.radius_m * (north_rad - self.origin_north_rad),
        ))
    }

    /// Longitude and latitude in degrees of a position in meters east and north of the origin, within the legal range.
    #[must_use]
    pub fn deg_from_m(&self, east_m: f64, north_m: f64) -> (f64, f64) {
        let (north_rad, east_rad) = series(
            &self.to_sphere,
            north_m / self.radius_m + self.origin_north_rad,
            east_m / self.radius_m,
            -1.0,
        );
        let (sinh_east, cosine_north) = (number::sinh(east_rad), number::cos(north_rad));
        let conformal_tangent = number::sin(north_rad) / number::length(sinh_east, cosine_north);
        let longitude_rad = number::atan2(sinh_east, cosine_north);
        let (origin_longitude_deg, _) = self.origin.to_deg();
        (
            within_half_turn_deg(origin_longitude_deg + longitude_rad.to_degrees()),
            number::atan(self.geodetic_tangent(conformal_tangent)).to_degrees(),
        )
    }

    /// The plan point nearest to a position on Earth; `None` when it lies beyond the plan's legal range.
    ///
    /// ```
    /// use hobnail_core::plan::PlanPoint;
    /// use hobnail_core::plan::projection::{GeographicPoint, Projection};
    /// let origin = GeographicPoint { longitude_ndeg: 12_000_000_000, latitude_ndeg: 47_000_000_000 };
    /// let projection = Projection::about(origin).unwrap();
    /// assert_eq!(projection.plan_from_geographic(origin), Some(PlanPoint::new(0, 0)));
    /// let point = PlanPoint::new(123_456, -654_321);
    /// assert_eq!(projection.plan_from_geographic(projection.geographic_from_plan(point)), Some(point));
    /// ```
    #[must_use]
    pub fn plan_from_geographic(&self, point: GeographicPoint) -> Option<PlanPoint> {
        let (longitude_deg, latitude_deg) = point.to_deg();
        let (east_m, north_m) = self.m_from_deg(longitude_deg, latitude_deg)?;
        PlanPoint::checked_from_m(east_m, north_m)
    }

    /// The position on Earth of a plan point, to nine decimals of a degree.
    #[must_use]
    pub fn geographic_from_plan(&self, point: PlanPoint) -> GeographicPoint {
        let (east_m, north_m) = point.to_m();
        let (longitude_deg, latitude_deg) = self.deg_from_m(east_m, north_m);
        GeographicPoint {
            longitude_ndeg: (longitude_deg * NDEG_PER_DEG as f64).round() as i64,
            latitude_ndeg: (latitude_deg * NDEG_PER_DEG as f64).round() as i64,
        }
    }

    /// Tangent of the conformal latitude (Karney's equations 7 to 9).
    fn conformal_tangent(&self, latitude_rad: f64) -> f64 {
        let tangent = number::tan(latitude_rad);
        let secant = number::length(1.0, tangent);
        let sigma = number::sinh(self.eccentricity * number::atanh(self.eccentricity * tangent / secant));
        number::length(1.0, sigma) * tangent - sigma * secant
    }

    /// Tangent of the geodetic latitude with this conformal tangent, by Newton's method (equations 19 to 21). From this
    /// start two rounds reach the last bit; the fixed count keeps the work, and the answer, the same everywhere.
    fn geodetic_tangent(&self, conformal_tangent: f64) -> f64 {
        let squared = self.eccentricity * self.eccentricity;
        let mut tangent = conformal_tangent / (1.0 - squared);
        for _ in 0..4 {
            let secant = number::length(1.0, tangent);
            let sigma = number::sinh(self.eccentricity * number::atanh(self.eccentricity * tangent / secant));
            let reached = number::length(1.0, sigma) * tangent - sigma * secant;
            let slope = (1.0 + (1.0 - squared) * tangent * tangent) / ((1.0 - squared) * secant);
            tangent += (conformal_tangent - reached) / number::length(1.0, reached) * slope;
        }
        tangent
    }
}

/// The angle less whole turns, within −180° to 180°; the argument lies within two turns.
fn within_half_turn_deg(angle_deg: f64) -> f64 {
    if angle_deg > 180.0 {
        angle_deg - 360.0
    } else if angle_deg < -180.0 {
        angle_deg + 360.0
    } else {
        angle_deg
    }
}

/// Karney's equation 11 with `sign` 1 and equation 15 with `sign` −1, from the smallest term up.
fn series(coefficients: &[f64; ORDER], north_rad: f64, east_rad: f64, sign: f64) -> (f64, f64) {
    let (mut north_sum, mut east_sum) = (0.0, 0.0);
    for (index, coefficient) in coefficients.iter().enumerate().rev() {
        let twice = 2.0 * (index as f64 + 1.0);
        let (north, east) = (twice * north_rad, twice * east_rad);
        north_sum += coefficient * number::sin(north) * number::cosh(east);
        east_sum += coefficient * number::cos(north) * number::sinh(east);
    }
    (north_rad + sign * north_sum, east_rad + sign * east_sum)
}

/// Value at `n` of the polynomial with these coefficients, lowest order first.
fn polynomial(n: f64, coefficients: &[f64]) -> f64 {
    coefficients
        .iter()
        .rev()
        .fold(0.0, |sum, coefficient| sum * n + coefficient)
}

/// Karney's equation 35.
fn to_plane_coefficients(n: f64) -> [f64; ORDER] {
    let rows: [&[f64]; ORDER] = [
        &[
            0.0,
            1.0 / 2.0,
            -2.0 / 3.0,
            5.0 / 16.0,
            41.0 / 180.0,
            -127.0 / 288.0,
            7891.0 / 37_800.0,
        ],
        &[
            0.0,
            0.0,
            13.0 / 48.0,
            -3.0 / 5.0,
            557.0 / 1440.0,
            281.0 / 630.0,
            -1_983_433.0 / 1_935_360.0,
        ],
        &[
            0.0,
            0.0,
            0.0,
            61.0 / 240.0,
            -103.0 / 140.0,
            15_061.0 / 26_880.0,
            167_603.0 / 181_440.0,
        ],
        &[
            0.0,
            0.0,
            0.0,
            0.0,
            49_561.0 / 161_280.0,
            -179.0 / 168.0,
            6_601_661.0 / 7_257_600.0,
        ],
        &[0.0, 0.0, 0.0, 0.0, 0.0, 34_729.0 / 80_640.0, -3_418_889.0 / 1_995_840.0],
        &[0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 212_378_941.0 / 319_334_400.0],
    ];
    rows.map(|row| polynomial(n, row))
}

/// Karney's equation 36.
fn to_sphere_coefficients(n: f64) -> [f64; ORDER] {
    let rows: [&[f64]; ORDER] = [
        &[
            0.0,
            1.0 / 2.0,
            -2.0 / 3.0,
            37.0 / 96.0,
            -1.0 / 360.0,
            -81.0 / 512.0,
            96_199.0 / 604_800.0,
        ],
        &[
            0.0,
            0.0,
            1.0 / 48.0,
            1.0 / 15.0,
            -437.0 / 1440.0,
            46.0 / 105.0,
            -1_118_711.0 / 3_870_720.0,
        ],
        &[
            0.0,
            0.0,
            0.0,
            17.0 / 480.0,
            -37.0 / 840.0,
            -209.0 / 4480.0,
            5569.0 / 90_720.0,
        ],
        &[
            0.0,
            0.0,
            0.0,
            0.0,
            4397.0 / 161_280.0,
            -11.0 / 504.0,
            -830_251.0 / 7_257_600.0,
        ],
        &[0.0, 0.0, 0.0, 0.0, 0.0, 4583.0 / 161_280.0, -108_847.0 / 3_991_680.0],
        &[0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 20_648_693.0 / 638_668_800.0],
    ];
    rows.map(|row| polynomial(n, row))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Origins over the whole legal range, the date line among them.
    const ORIGINS_DEG: [(f64, f64); 8] = [
        (0.0, 0.0),
        (-71.5, 42.25),
        (179.95, -41.3),
        (-180.0, 64.1),
        (180.0, 12.0),
        (15.6, 78.2),
        (100.123_456_789, 89.0),
        (-33.3, -89.0),
    ];

    fn projection_about(origin_deg: (f64, f64)) -> Projection {
        Projection::about(GeographicPoint::checked_from_deg(origin_deg.0, origin_deg.1).unwrap()).unwrap()
    }

    /// A grid of meters over the legal square with its corners and the origin.
    fn positions_m() -> impl Iterator<Item = (f64, f64)> {
        (-8..=8).flat_map(|column| (-8..=8).map(move |row| (f64::from(column) * 12_500.0, f64::from(row) * 12_500.0)))
    }

    #[test]
    fn there_and_back_is_within_a_billionth_of_a_degree() {
        for origin_deg in ORIGINS_DEG {
            let projection = projection_about(origin_deg);
            for (east_m, north_m) in positions_m() {
                let (longitude_deg, latitude_deg) = projection.deg_from_m(east_m, north_m);
                let (east_back_m, north_back_m) = projection.m_from_deg(longitude_deg, latitude_deg).unwrap();
                assert!(
                    (east_back_m - east_m).abs() < 1e-7 && (north_back_m - north_m).abs() < 1e-7,
                    "origin {origin_deg:?}: {east_m}, {north_m} came back as {east_back_m}, {north_back_m}"
                );
                let (longitude_again_deg, latitude_again_deg) = projection.deg_from_m(east_back_m, north_back_m);
                assert!(
                    (longitude_again_deg - longitude_deg).abs() < 1e-9
                        && (latitude_again_deg - latitude_deg).abs() < 1e-9,
                    "origin {origin_deg:?}: {longitude_deg}, {latitude_deg}"
                );
            }
        }
    }

    #[test]
    fn the_origin_is_plan_zero() {
        for origin_deg in ORIGINS_DEG {
            let projection = projection_about(origin_deg);
            assert_eq!(
                projection.plan_from_geographic(projection.origin()),
                Some(PlanPoint::new(0, 0))
            );
        }
    }

    #[test]
    fn positions_out_of_range_are_refused() {
        let projection = projection_about((0.0, 0.0));
        for (longitude_deg, latitude_deg) in [
            (f64::NAN, 0.0),
            (0.0, f64::INFINITY),
            (0.0, 90.1),
            (90.0, 0.0),
            (179.0, 0.0),
            (0.0, 10.0),
            (1.0, 0.0),
        ] {
            let metered = projection.m_from_deg(longitude_deg, latitude_deg);
            let plan = metered.and_then(|(east_m, north_m)| PlanPoint::checked_from_m(east_m, north_m));
            assert_eq!(plan, None, "{longitude_deg}, {latitude_deg} gave {metered:?}");
        }
        let beyond = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: ORIGIN_LATITUDE_LIMIT_NDEG + 1,
        };
        assert_eq!(Projection::about(beyond), Err(OriginFault { origin: beyond }));
        let extreme = GeographicPoint {
            longitude_ndeg: i64::MIN,
            latitude_ndeg: 0,
        };
        assert_eq!(Projection::about(extreme), Err(OriginFault { origin: extreme }));
    }
}
