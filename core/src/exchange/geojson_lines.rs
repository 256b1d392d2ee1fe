//! Bare lines and points from GeoJSON (RFC 7946): street networks and places made elsewhere.
//!
//! Reads a feature collection, a feature or a geometry. What can be used is kept, everything else is told as a fault
//! with its feature and place; only a file that is not GeoJSON at all is refused. Positions are kept as written: degrees
//! or meters is the caller's to know. A third coordinate (height) is left aside. Nothing is read twice and no input
//! makes it stop: nesting is bounded by the parser.

use std::fmt;

use super::geojson::{first_two, text_of_id};
use super::json::{Json, JsonFault, parse};
use crate::say;

/// Names a feature by its place in the file, from 0, and its id if it has one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct FeatureName {
    /// Place in the file, from 0.
    pub index: usize,
    /// The feature's `id`, or the `id` or `name` among its properties.
    pub id: Option<String>,
}

impl fmt::Display for FeatureName {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&match &self.id {
            Some(id) => say!(
                "exchange-feature-id",
                index = self.index,
                id = id.escape_debug().to_string()
            ),
            None => say!("exchange-feature", index = self.index),
        })
    }
}

/// A line as read.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadLine {
    /// Whose it is; several lines may belong to one feature.
    pub feature: FeatureName,
    /// Two or more positions, as written.
    pub positions: Vec<[f64; 2]>,
}

/// A point as read.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadPoint {
    /// Whose it is.
    pub feature: FeatureName,
    /// The position, as written.
    pub position: [f64; 2],
    /// The feature's properties; null where it has none.
    pub properties: Json,
}

/// What was read of one kind, and everything that was not.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading<T> {
    /// What can be used, in order of the file.
    pub items: Vec<T>,
    /// Everything else, in order of the file.
    pub faults: Vec<ReadFault>,
}

/// What is wrong, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadFault {
    /// The feature; `None` when it concerns the file.
    pub feature: Option<FeatureName>,
    /// What is wrong.
    pub problem: Problem,
}

impl fmt::Display for ReadFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.feature {
            Some(feature) => write!(out, "{feature}: {}", self.problem),
            None => write!(out, "{}", self.problem),
        }
    }
}

/// One thing wrong in a file.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A feature is not a JSON object of type Feature.
    NotAFeature,
    /// A feature has no geometry.
    NoGeometry,
    /// A geometry is of a kind not asked for.
    OtherGeometry {
        /// The kind found, as written.
        found: String,
        /// The kinds asked for.
        wanted: String,
    },
    /// Coordinates are not the list of positions their geometry needs.
    NotPositions {
        /// Where: indices into `coordinates`.
        at: Vec<usize>,
    },
    /// A position is not two numbers.
    NotAPosition {
        /// Where: indices into `coordinates`.
        at: Vec<usize>,
    },
    /// A line has fewer than two positions.
    ShortLine {
        /// Where: indices into `coordinates`.
        at: Vec<usize>,
    },
    /// The file names a coordinate system, which this format no longer has; it is not looked at.
    ForeignSystem {
        /// Its name, as written.
        name: String,
    },
}

impl fmt::Display for Problem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&match self {
            Self::NotAFeature => say!("exchange-lines-not-a-feature").to_owned(),
            Self::NoGeometry => say!("exchange-lines-no-geometry").to_owned(),
            Self::OtherGeometry { found, wanted } => say!(
                "exchange-lines-other-geometry",
                found = found.escape_debug().to_string(),
                wanted = wanted
            ),
            Self::NotPositions { at } => say!("exchange-lines-not-positions", place = path(at)),
            Self::NotAPosition { at } if at.is_empty() => say!("exchange-lines-no-point", place = path(at)),
            Self::NotAPosition { at } => say!("exchange-lines-no-vertex", place = path(at)),
            Self::ShortLine { at } => say!("exchange-lines-short", place = path(at)),
            Self::ForeignSystem { name } => {
                say!("exchange-lines-foreign-system", name = name.escape_debug().to_string())
            }
        })
    }
}

/// `coordinates[3][1]`
fn path(at: &[usize]) -> String {
    at.iter()
        .fold("coordinates".to_owned(), |path, index| format!("{path}[{index}]"))
}

/// Why a file is not GeoJSON at all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Not JSON, or more of it than is read.
    NotJson(JsonFault),
    /// JSON, but no GeoJSON object.
    NotGeoJson,
}

impl fmt::Display for Unreadable {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotJson(fault) => fault.fmt(out),
            Self::NotGeoJson => out.write_str(say!("exchange-lines-not-geojson")),
        }
    }
}

impl std::error::Error for Unreadable {}

const GEOMETRIES: [&str; 7] = [
    "Point",
    "MultiPoint",
    "LineString",
    "MultiLineString",
    "Polygon",
    "MultiPolygon",
    "GeometryCollection",
];

/// All lines of a file: of LineString and MultiLineString geometries, also within collections.
///
/// # Errors
/// [`Unreadable`] when the bytes are not GeoJSON.
///
/// ```
/// use hobnail_core::exchange::geojson_lines::read_lines;
/// let text = br#"{"type":"LineString","coordinates":[[0,0],[5.5,3]]}"#;
/// assert_eq!(read_lines(text)?.items[0].positions, [[0.0, 0.0], [5.5, 3.0]]);
/// # Ok::<(), hobnail_core::exchange::geojson_lines::Unreadable>(())
/// ```
pub fn read_lines(bytes: &[u8]) -> Result<Reading<ReadLine>, Unreadable> {
    read(bytes, "LineString", &mut |feature, geometry, _, reading| {
        lines_of(feature, geometry, reading);
    })
}

/// All points of a file: of Point geometries, with their properties.
///
/// # Errors
/// [`Unreadable`] when the bytes are not GeoJSON.
pub fn read_points(bytes: &[u8]) -> Result<Reading<ReadPoint>, Unreadable> {
    read(bytes, "Point", &mut |feature, geometry, properties, reading| {
        let problem = match type_of(geometry) {
            Some("Point") => match geometry.member("coordinates").and_then(position_of) {
                Some(position) => {
                    reading.items.push(ReadPoint {
                        feature: feature.clone(),
                        position,
                        properties: properties.clone(),
                    });
                    return;
                }
                None => Problem::NotAPosition { at: Vec::new() },
            },
            found => other_geometry(found, "Point"),
        };
        reading.faults.push(ReadFault {
            feature: Some(feature.clone()),
            problem,
        });
    })
}

/// Takes one geometry of one feature with the feature's properties into a reading.
type Take<'a, T> = dyn FnMut(&FeatureName, &Json, &Json, &mut Reading<T>) + 'a;

/// Walks over every feature of a file.
fn read<T>(bytes: &[u8], wanted: &'static str, take: &mut Take<'_, T>) -> Result<Reading<T>, Unreadable> {
    let root = parse(bytes).map_err(Unreadable::NotJson)?;
    let mut reading = Reading {
        items: Vec::new(),
        faults: Vec::new(),
    };
    if let Some(name) = foreign_system(&root) {
        reading.faults.push(ReadFault {
            feature: None,
            problem: Problem::ForeignSystem { name },
        });
    }
    match type_of(&root) {
        Some("FeatureCollection") => {
            let features = root.member("features").and_then(Json::as_list);
            for (index, feature) in features.ok_or(Unreadable::NotGeoJson)?.iter().enumerate() {
                take_feature(index, feature, wanted, &mut reading, take);
            }
        }
        Some("Feature") => take_feature(0, &root, wanted, &mut reading, take),
        Some(kind) if GEOMETRIES.contains(&kind) => {
            let name = FeatureName { index: 0, id: None };
            take_geometry(&name, &root, &Json::Null, &mut reading, take);
        }
        _ => return Err(Unreadable::NotGeoJson),
    }
    Ok(reading)
}

fn type_of(json: &Json) -> Option<&str> {
    json.member("type").and_then(Json::as_text)
}

/// The name of a coordinate system other than the format's own.
fn foreign_system(root: &Json) -> Option<String> {
    let system = root.member("crs").filter(|system| **system != Json::Null)?;
    let name = system.member("properties").and_then(|held| held.member("name"));
    let name = name
        .and_then(Json::as_text)
        .unwrap_or_else(|| say!("exchange-lines-unnamed-system"));
    let own = [
        "urn:ogc:def:crs:OGC:1.3:CRS84",
        "urn:ogc:def:crs:OGC::CRS84",
        "EPSG:4326",
    ];
    (!own.contains(&name)).then(|| name.to_owned())
}

fn take_feature<T>(
    index: usize,
    feature: &Json,
    wanted: &'static str,
    reading: &mut Reading<T>,
    take: &mut Take<'_, T>,
) {
    let properties = feature.member("properties").unwrap_or(&Json::Null);
    let id = [feature.member("id"), properties.member("id"), properties.member("name")];
    let name = FeatureName {
        index,
        id: id.into_iter().flatten().find_map(text_of_id),
    };
    let problem = if type_of(feature) != Some("Feature") {
        Problem::NotAFeature
    } else {
        match feature.member("geometry") {
            Some(geometry @ Json::Members(_)) => {
                take_geometry(&name, geometry, properties, reading, take);
                return;
            }
            None | Some(Json::Null) => Problem::NoGeometry,
            Some(_) => other_geometry(None, wanted),
        }
    };
    reading.faults.push(ReadFault {
        feature: Some(name),
        problem,
    });
}

/// Takes a geometry, or each of a collection's.
fn take_geometry<T>(
    feature: &FeatureName,
    geometry: &Json,
    properties: &Json,
    reading: &mut Reading<T>,
    take: &mut Take<'_, T>,
) {
    let parts = geometry.member("geometries").and_then(Json::as_list);
    match parts.filter(|_| type_of(geometry) == Some("GeometryCollection")) {
        Some(parts) => {
            for part in parts {
                match part {
                    Json::Members(_) => take_geometry(feature, part, properties, reading, take),
                    _ => reading.faults.push(ReadFault {
                        feature: Some(feature.clone()),
                        problem: Problem::NoGeometry,
                    }),
                }
            }
        }
        None => take(feature, geometry, properties, reading),
    }
}

fn other_geometry(found: Option<&str>, wanted: &str) -> Problem {
    Problem::OtherGeometry {
        found: found.unwrap_or_else(|| say!("exchange-lines-without-type")).to_owned(),
        wanted: wanted.to_owned(),
    }
}

fn lines_of(feature: &FeatureName, geometry: &Json, reading: &mut Reading<ReadLine>) {
    let coordinates = geometry.member("coordinates");
    let mut tell = |problem| {
        reading.faults.push(ReadFault {
            feature: Some(feature.clone()),
            problem,
        });
    };
    let mut lines = Vec::new();
    match type_of(geometry) {
        Some("LineString") => lines.extend(line_of(coordinates, &[], &mut tell)),
        Some("MultiLineString") => match coordinates {
            Some(Json::List(parts)) => {
                for (index, part) in parts.iter().enumerate() {
                    lines.extend(line_of(Some(part), &[index], &mut tell));
                }
            }
            _ => tell(Problem::NotPositions { at: Vec::new() }),
        },
        found => {
            let wanted = say!(
                "exchange-lines-two-kinds",
                first = "LineString",
                second = "MultiLineString"
            );
            tell(other_geometry(found, &wanted));
        }
    }
    reading.items.extend(lines.into_iter().map(|positions| ReadLine {
        feature: feature.clone(),
        positions,
    }));
}

/// The positions of one line, or every reason why there is none.
fn line_of(coordinates: Option<&Json>, at: &[usize], tell: &mut impl FnMut(Problem)) -> Option<Vec<[f64; 2]>> {
    let Some(Json::List(list)) = coordinates else {
        tell(Problem::NotPositions { at: at.to_vec() });
        return None;
    };
    let mut positions = Vec::with_capacity(list.len());
    let mut is_whole = true;
    for (index, position) in list.iter().enumerate() {
        match position_of(position) {
            Some(position) => positions.push(position),
            None => {
                is_whole = false;
                let at = at.iter().copied().chain([index]).collect();
                tell(Problem::NotAPosition { at });
            }
        }
    }
    if list.len() < 2 {
        tell(Problem::ShortLine { at: at.to_vec() });
        return None;
    }
    is_whole.then_some(positions)
}

fn position_of(position: &Json) -> Option<[f64; 2]> {
    position.as_list().and_then(first_two)
}

#[cfg(test)]
mod tests;
