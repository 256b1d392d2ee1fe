//! Coordinate systems: from what a file says to longitude and latitude, and from there to the plan.
//!
//! Projections are those of the crate `proj4rs`. A system comes as `EPSG:number` (UTM, Web Mercator and the systems of
//! the United States that EPSG's register, version 11, holds on GRS 1980 or WGS84: state plane and county systems, in
//! `system/united_states.txt`), as a PROJ string, or as WKT 1 or 2 by the crate `proj4wkt`.
//!
//! NAD83 and ETRS89 are taken as WGS84, as PROJ does by itself: they differ from it by one or two meters on the ground,
//! the same for everything in a neighborhood. A datum without a shift to WGS84 is used and told as doubtful.

use proj4rs::Proj;
use proj4rs::transform::transform;

use crate::base::Position;
use crate::fault::{What, shortened};

/// Longest definition that is looked at, in bytes.
const LONGEST: usize = 20_000;

/// Deepest brackets of a WKT that are followed.
const DEEPEST: usize = 20;

/// Codes and what they stand for: `code code|PROJ string`, NAD83 and meters understood.
const UNITED_STATES: &str = include_str!("system/united_states.txt");

/// A coordinate system.
#[derive(Clone)]
pub struct System {
    /// As a PROJ string.
    pub definition: String,
    /// Whether its shift to WGS84 is known.
    pub is_certain: bool,
    /// The projection; `None` for longitude and latitude of WGS84 in degrees.
    projection: Option<Box<Pair>>,
}

#[derive(Clone)]
struct Pair {
    own: Proj,
    degrees: Proj,
}

impl std::fmt::Debug for System {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        formatter.write_str(&self.definition)
    }
}

/// What longitude and latitude of WGS84 are called.
const WGS84: &str = "+proj=longlat +datum=WGS84 +no_defs";

impl System {
    /// Longitude and latitude of WGS84 in degrees.
    #[must_use]
    pub fn degrees() -> Self {
        Self {
            definition: WGS84.to_owned(),
            is_certain: true,
            projection: None,
        }
    }

    /// The plan's plane about an origin: transverse Mercator of WGS84 with scale 1, in meters.
    ///
    /// # Errors
    /// [`What::UnknownSystem`] when the origin is not on Earth.
    pub fn plan(origin_deg: Position) -> Result<Self, What> {
        let [longitude, latitude] = origin_deg;
        Self::from_proj(&format!(
            "+proj=tmerc +lat_0={latitude:?} +lon_0={longitude:?} +k=1 +x_0=0 +y_0=0 +datum=WGS84 +units=m"
        ))
    }

    /// A system by `EPSG:number`, a PROJ string or WKT.
    ///
    /// # Errors
    /// [`What::UnknownSystem`] when it is none of those or has no projection here.
    pub fn named(text: &str) -> Result<Self, What> {
        let text = text.trim();
        let unknown = || What::UnknownSystem {
            system: shortened(text, 80),
        };
        if text.len() > LONGEST {
            return Err(unknown());
        }
        let code = text
            .get(..5)
            .filter(|start| start.eq_ignore_ascii_case("EPSG:"))
            .and_then(|_| text.get(5..)?.trim().parse().ok());
        if let Some(code) = code {
            return Self::from_epsg(code);
        }
        if text.contains("+proj") {
            return Self::from_proj(text);
        }
        Self::from_wkt(text)
    }

    /// A system by its number in EPSG's register.
    ///
    /// # Errors
    /// [`What::UnknownSystem`] for a number that is not in the table.
    pub fn from_epsg(code: u32) -> Result<Self, What> {
        let utm = |zone: u32, more: &str| Self::from_proj(&format!("+proj=utm +zone={zone} {more}"));
        match code {
            // WGS84; NAD83, NAD83(HARN), NAD83(NSRS2007), NAD83(2011), NAD83(CSRS); ETRS89.
            4326 | 4979 | 4269 | 4152 | 4759 | 6318 | 4617 | 4258 => Ok(Self::degrees()),
            3857 | 3785 | 900_913 | 102_100 | 102_113 => Self::from_proj(WEB_MERCATOR),
            // ETRS89 / TM35FIN.
            3067 => utm(35, GRS80),
            32601..=32660 => utm(code - 32600, "+datum=WGS84 +units=m"),
            32701..=32760 => utm(code - 32700, "+south +datum=WGS84 +units=m"),
            26901..=26923 => utm(code - 26900, GRS80),
            25828..=25838 => utm(code - 25800, GRS80),
            _ => {
                let unknown = || What::UnknownSystem {
                    system: format!("EPSG:{code}"),
                };
                let definition = in_table(code).ok_or_else(unknown)?;
                let units = if definition.contains("units=") { "" } else { "+units=m" };
                Self::from_proj(&format!("{definition} {GRS80} {units}"))
            }
        }
    }

    /// A system by its PROJ string.
    ///
    /// # Errors
    /// [`What::UnknownSystem`] when it is not understood.
    pub fn from_proj(text: &str) -> Result<Self, What> {
        let unknown = || What::UnknownSystem {
            system: shortened(text, 200),
        };
        // A file of shifts is nothing that could be asked for.
        if text.len() > LONGEST || text.contains("nadgrids") && !text.contains("nadgrids=@null") {
            return Err(unknown());
        }
        let own = Proj::from_proj_string(text).map_err(|_| unknown())?;
        if own.is_geocent() || !own.has_inverse() || !own.has_forward() {
            return Err(unknown());
        }
        let degrees = Proj::from_proj_string(WGS84).map_err(|_| unknown())?;
        let is_certain = [
            "datum=WGS84",
            "datum=NAD83",
            "towgs84=",
            "nadgrids=@null",
            "ellps=GRS80",
            "ellps=WGS84",
        ]
        .iter()
        .any(|part| text.contains(part));
        Ok(Self {
            definition: text.trim().to_owned(),
            is_certain,
            projection: Some(Box::new(Pair { own, degrees })),
        })
    }

    /// A system by its well-known text.
    ///
    /// # Errors
    /// [`What::UnknownSystem`] when it is not understood.
    pub fn from_wkt(text: &str) -> Result<Self, What> {
        let text = text.trim_matches(|letter: char| letter.is_whitespace() || letter == '\u{feff}' || letter == '\0');
        let unknown = || What::UnknownSystem {
            system: shortened(text, 80),
        };
        if text.len() > LONGEST || depth(text) > DEEPEST {
            return Err(unknown());
        }
        // Web Mercator in the first edition: what the projection leaves unsaid stands in an extension.
        let extension = text
            .split_once("EXTENSION[\"PROJ4\",\"")
            .and_then(|(_, rest)| rest.split_once('"'));
        if let Some((definition, _)) = extension {
            return Self::from_proj(definition);
        }
        let mut definition = proj4wkt::wkt_to_projstring(text).map_err(|_| unknown())?;
        // A sphere in place of an ellipsoid has that ellipsoid's latitudes: nothing is to be shifted.
        if definition.contains("+R=") {
            definition = definition.replace("+towgs84=0,0,0,0,0,0,0", "+nadgrids=@null");
        }
        Self::from_proj(&definition)
    }

    /// Longitude and latitude in degrees; `None` where the projection has no answer or it is not on Earth.
    #[must_use]
    pub fn to_degrees(&self, [x, y]: Position) -> Option<Position> {
        let [longitude, latitude] = match &self.projection {
            None => [x, y],
            Some(pair) => {
                let mut point = if pair.own.is_latlong() {
                    (x.to_radians(), y.to_radians(), 0.0)
                } else {
                    (x, y, 0.0)
                };
                transform(&pair.own, &pair.degrees, &mut point).ok()?;
                [point.0.to_degrees(), point.1.to_degrees()]
            }
        };
        (longitude.abs() <= 180.0 && latitude.abs() <= 90.0).then_some([longitude, latitude])
    }

    /// The position in this system of a longitude and latitude in degrees.
    #[must_use]
    pub fn from_degrees(&self, [longitude, latitude]: Position) -> Option<Position> {
        if !(longitude.abs() <= 180.0 && latitude.abs() <= 90.0) {
            return None;
        }
        let Some(pair) = &self.projection else {
            return Some([longitude, latitude]);
        };
        let mut point = (longitude.to_radians(), latitude.to_radians(), 0.0);
        transform(&pair.degrees, &pair.own, &mut point).ok()?;
        let found = if pair.own.is_latlong() {
            [point.0.to_degrees(), point.1.to_degrees()]
        } else {
            [point.0, point.1]
        };
        found.iter().all(|value| value.is_finite()).then_some(found)
    }

    /// Meters in one unit of its axes; `None` where they are degrees.
    #[must_use]
    pub fn unit_m(&self) -> Option<f64> {
        let pair = self.projection.as_ref()?;
        (!pair.own.is_latlong()).then(|| pair.own.to_meter())
    }
}

/// Without a shift: a sphere's formulas are used with the ellipsoid's latitudes, as the system is defined.
const WEB_MERCATOR: &str =
    "+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null";

const GRS80: &str = "+ellps=GRS80 +towgs84=0,0,0,0,0,0,0";

/// The PROJ string of a code in the table.
fn in_table(code: u32) -> Option<&'static str> {
    UNITED_STATES.lines().find_map(|line| {
        let (codes, definition) = line.split_once('|')?;
        codes
            .split(' ')
            .any(|text| text.parse() == Ok(code))
            .then_some(definition)
    })
}

/// How deep the brackets of a text go.
fn depth(text: &str) -> usize {
    let (mut depth, mut deepest) = (0_usize, 0);
    for letter in text.bytes() {
        match letter {
            b'[' | b'(' => depth += 1,
            b']' | b')' => depth = depth.saturating_sub(1),
            _ => {}
        }
        deepest = deepest.max(depth);
    }
    deepest
}
