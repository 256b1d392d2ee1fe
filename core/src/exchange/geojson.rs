//! GeoJSON (RFC 7946) as it is: features with their geometry in the file's own numbers, before any plan.
//!
//! The first two numbers of a position are kept; further ones are left out and noted. Holes of polygons are counted,
//! not kept. A feature whose geometry can not be read comes without it, with the fault in the list.

use crate::order::OrderedSet;
use crate::say;

use super::fault::{FileFault, FileFaultKind};
use super::json::Json;
use super::stored::Reader;

/// A feature of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Feature<'a> {
    /// Its index in the file, from 0.
    pub index: usize,
    /// Its id as text, where it has one.
    pub id: Option<String>,
    /// Its geometry; `None` where it could not be read.
    pub geometry: Option<Geometry>,
    /// Its properties, where it has any.
    pub properties: Option<&'a Json>,
}

/// A geometry in the file's own numbers: for RFC 7946, longitude and latitude in degrees.
#[derive(Clone, Debug, PartialEq)]
pub enum Geometry {
    /// None at all: `null`.
    Empty,
    /// A point.
    Point([f64; 2]),
    /// A line.
    Line(Vec<[f64; 2]>),
    /// A polygon's outer ring as written, usually closed by repeating its first position.
    Polygon {
        /// The ring.
        outer: Vec<[f64; 2]>,
        /// Holes left out.
        hole_count: usize,
    },
    /// Several geometries in one.
    Many(Vec<Geometry>),
}

impl Geometry {
    /// The geometry's parts that are not themselves of several parts.
    #[must_use]
    pub fn parts(&self) -> Vec<&Self> {
        match self {
            Self::Empty => Vec::new(),
            Self::Many(parts) => parts.iter().flat_map(Self::parts).collect(),
            single => vec![single],
        }
    }

    /// All positions, in order.
    #[must_use]
    pub fn positions(&self) -> Vec<[f64; 2]> {
        let of_part = |part: &Self| match part {
            Self::Point(position) => vec![*position],
            Self::Line(line) => line.clone(),
            Self::Polygon { outer, .. } => outer.clone(),
            Self::Empty | Self::Many(_) => Vec::new(),
        };
        self.parts().into_iter().flat_map(of_part).collect()
    }

    /// What it is, in words.
    #[must_use]
    pub fn words(&self) -> &'static str {
        match self {
            Self::Empty => say!("exchange-geometry-nothing"),
            Self::Point(_) => say!("exchange-geometry-point"),
            Self::Line(_) => say!("exchange-geometry-line"),
            Self::Polygon { .. } => say!("exchange-geometry-polygon"),
            Self::Many(_) => say!("exchange-geometry-parts"),
        }
    }
}

/// The features of a file: of a collection, a single one, or a bare geometry; with every fault. `None` when the file is
/// no GeoJSON.
///
/// ```
/// use hobnail_core::exchange::{geojson::{Geometry, features}, json::parse};
/// let file = parse(br#"{"type": "LineString", "coordinates": [[0, 1], [2, 3]]}"#).unwrap();
/// let (features, faults) = features(&file).unwrap();
/// assert_eq!(features[0].geometry, Some(Geometry::Line(vec![[0.0, 1.0], [2.0, 3.0]])));
/// assert!(faults.is_empty());
/// ```
#[must_use]
pub fn features(file: &Json) -> Option<(Vec<Feature<'_>>, Vec<FileFault>)> {
    let mut reader = Reader::default();
    let features = features_of(file, &mut reader)?;
    Some((features, reader.into_faults()))
}

/// [`features`], with faults going to `reader`.
pub(super) fn features_of<'a>(file: &'a Json, reader: &mut Reader) -> Option<Vec<Feature<'a>>> {
    let mut heights = false;
    let features = match file.member("type")?.as_text()? {
        "FeatureCollection" => {
            let list = file.member("features")?.as_list()?;
            let read = |(index, feature): (usize, &'a Json)| {
                let id = feature_id(feature);
                reader.within("features", |reader| {
                    reader.within_entry(index, |reader| {
                        reader.within_feature(index, id.clone(), |reader| {
                            feature_of(index, id, feature, &mut heights, reader)
                        })
                    })
                })
            };
            list.iter().enumerate().filter_map(read).collect()
        }
        "Feature" => {
            let id = feature_id(file);
            let feature = reader.within_feature(0, id.clone(), |reader| feature_of(0, id, file, &mut heights, reader));
            feature.into_iter().collect()
        }
        _ => {
            let geometry = geometry_of(file, &mut heights, reader);
            vec![Feature {
                index: 0,
                id: None,
                geometry,
                properties: None,
            }]
        }
    };
    if heights {
        reader.fault(FileFaultKind::Heights);
    }
    Some(features)
}

/// Notes members that stand there twice or are not among `known`.
pub(super) fn check_members(json: &Json, known: &[&str], reader: &mut Reader) {
    let mut seen = OrderedSet::new();
    let Json::Members(members) = json else { return };
    for (name, _) in members {
        if !seen.insert(name) {
            reader.fault(FileFaultKind::RepeatedMember(name.clone()));
        } else if !known.contains(&name.as_str()) {
            reader.fault(FileFaultKind::UnknownMember(name.clone()));
        }
    }
}

fn feature_id(feature: &Json) -> Option<String> {
    text_of_id(feature.member("id")?)
}

/// An id is text or a whole number.
pub(super) fn text_of_id(id: &Json) -> Option<String> {
    match id {
        Json::Text(text) => Some(text.clone()),
        other => other.as_integer().map(|id| id.to_string()),
    }
}

/// The first two numbers of a position, where the list has so many.
pub(super) fn first_two(position: &[Json]) -> Option<[f64; 2]> {
    match position {
        [x, y, ..] => x.as_number().zip(y.as_number()).map(|(x, y)| [x, y]),
        _ => None,
    }
}

fn feature_of<'a>(
    index: usize,
    id: Option<String>,
    feature: &'a Json,
    heights: &mut bool,
    reader: &mut Reader,
) -> Option<Feature<'a>> {
    if feature.member("type").and_then(Json::as_text) != Some("Feature") {
        reader.expected(say!("exchange-value-feature"), feature);
        return None;
    }
    check_members(feature, &["type", "id", "geometry", "properties", "bbox"], reader);
    let geometry = match feature.member("geometry") {
        None => {
            reader.fault(FileFaultKind::Missing("geometry"));
            None
        }
        Some(Json::Null) => Some(Geometry::Empty),
        Some(geometry) => reader.within("geometry", |reader| geometry_of(geometry, heights, reader)),
    };
    let properties = feature
        .member("properties")
        .filter(|properties| **properties != Json::Null);
    Some(Feature {
        index,
        id,
        geometry,
        properties,
    })
}

fn geometry_of(json: &Json, heights: &mut bool, reader: &mut Reader) -> Option<Geometry> {
    let Some(kind) = json.member("type").and_then(Json::as_text) else {
        reader.expected(say!("exchange-value-geometry"), json);
        return None;
    };
    if kind == "GeometryCollection" {
        return many(json.member("geometries"), "geometries", reader, |part, reader| {
            geometry_of(part, heights, reader)
        });
    }
    let coordinates = json.member("coordinates");
    let mut single = |coordinates: Option<&Json>, kind: &str, reader: &mut Reader| match kind {
        "Point" => position_of(coordinates, heights, reader).map(Geometry::Point),
        "LineString" => line_of(coordinates, heights, reader).map(Geometry::Line),
        _ => polygon_of(coordinates, heights, reader),
    };
    match kind {
        "Point" | "LineString" | "Polygon" => reader.within("coordinates", |reader| single(coordinates, kind, reader)),
        "MultiPoint" | "MultiLineString" | "MultiPolygon" => {
            many(coordinates, "coordinates", reader, |part, reader| {
                single(Some(part), kind.strip_prefix("Multi").unwrap_or(kind), reader)
            })
        }
        other => {
            reader.expected(say!("exchange-value-geometry-kind"), &Json::Text(other.to_owned()));
            None
        }
    }
}

/// Parts of a geometry; all are looked at, and when one can not be read, neither can the whole.
fn many(
    json: Option<&Json>,
    member: &str,
    reader: &mut Reader,
    mut read: impl FnMut(&Json, &mut Reader) -> Option<Geometry>,
) -> Option<Geometry> {
    reader.within(member, |reader| {
        let list = list_of(json, reader)?;
        let mut parts = Vec::with_capacity(list.len());
        for (index, part) in list.iter().enumerate() {
            parts.extend(reader.within_entry(index, |reader| read(part, reader)));
        }
        (parts.len() == list.len()).then_some(Geometry::Many(parts))
    })
}

fn list_of<'a>(json: Option<&'a Json>, reader: &mut Reader) -> Option<&'a [Json]> {
    let list = json.and_then(Json::as_list);
    if list.is_none() {
        reader.expected(say!("exchange-value-list"), json.unwrap_or(&Json::Null));
    }
    list
}

fn position_of(json: Option<&Json>, heights: &mut bool, reader: &mut Reader) -> Option<[f64; 2]> {
    let list = list_of(json, reader)?;
    *heights |= list.len() > 2;
    let position = first_two(list);
    if position.is_none() {
        reader.expected(say!("exchange-value-position"), json.unwrap_or(&Json::Null));
    }
    position
}

fn line_of(json: Option<&Json>, heights: &mut bool, reader: &mut Reader) -> Option<Vec<[f64; 2]>> {
    let list = list_of(json, reader)?;
    let mut line = Vec::with_capacity(list.len());
    for (index, position) in list.iter().enumerate() {
        line.extend(reader.within_entry(index, |reader| position_of(Some(position), heights, reader)));
    }
    (line.len() == list.len()).then_some(line)
}

fn polygon_of(json: Option<&Json>, heights: &mut bool, reader: &mut Reader) -> Option<Geometry> {
    match list_of(json, reader)? {
        [] => Some(Geometry::Empty),
        [outer, holes @ ..] => {
            let outer = reader.within_entry(0, |reader| line_of(Some(outer), heights, reader))?;
            Some(Geometry::Polygon {
                outer,
                hole_count: holes.len(),
            })
        }
    }
}
