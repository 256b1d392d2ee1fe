//! GeoJSON (RFC 7946), some thousand features at a step; older files that name another coordinate system too.

use ::geojson::{Feature, GeometryValue, JsonValue};
use serde::Deserialize;
use serde_json::value::RawValue;

use crate::base::{Geometry, Position};
use crate::bytes::{Bytes, text};
use crate::fault::{Fault, Place, What};
use crate::osm::tags;
use crate::output::Output;
use crate::read::{Progress, Work};
use crate::system::System;

/// Features at a step.
const FEATURES: usize = 2_000;

/// The layer of features, which have none in GeoJSON.
const LAYER: &str = "features";

/// Reads a GeoJSON file.
pub struct GeoJson {
    bytes: Bytes,
    /// Where the next feature begins; `None` before the outline was read.
    place: Option<usize>,
    number: u64,
}

/// The outline of a collection; its features are read one by one.
#[derive(Deserialize)]
struct Collection<'a> {
    #[serde(borrow)]
    features: Option<&'a RawValue>,
    crs: Option<NamedSystem>,
}

#[derive(Deserialize)]
struct NamedSystem {
    properties: Option<SystemName>,
}

#[derive(Deserialize)]
struct SystemName {
    name: Option<String>,
}

impl GeoJson {
    /// From its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self {
            bytes,
            place: None,
            number: 0,
        }
    }

    /// Reads the outline, and the whole of a file that is no collection.
    fn begin(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let whole = text(self.bytes.as_ref()).ok_or_else(|| What::NotUtf8.at(Place::File))?;
        let outline: Collection<'_> = serde_json::from_str(whole).map_err(|fault| broken_at(&fault))?;
        let named = outline.crs.and_then(|crs| crs.properties?.name);
        let of_file = named.map_or_else(|| Ok(System::degrees()), |name| named_system(&name));
        output.choose_place(Some(of_file), &Place::File)?;
        if let Some(features) = outline.features {
            let inside = features.get().as_ptr() as usize - self.bytes.as_ref().as_ptr() as usize;
            // Behind the bracket that opens the list.
            self.place = Some(inside + 1);
            return Ok(Progress::Working(0.0));
        }
        match whole
            .parse::<::geojson::GeoJson>()
            .map_err(|fault| What::broken(fault).at(Place::File))?
        {
            ::geojson::GeoJson::Feature(feature) => self.add(output, feature)?,
            ::geojson::GeoJson::Geometry(geometry) => self.add(output, geometry.into())?,
            ::geojson::GeoJson::FeatureCollection(_) => {}
        }
        Ok(Progress::Done)
    }

    fn add(&mut self, output: &mut Output, feature: Feature) -> Result<(), Fault> {
        self.number += 1;
        let layer = LAYER.to_owned();
        let number = self.number;
        let place = Place::Record { layer, number };
        let list = feature.properties.unwrap_or_default();
        let tags: Vec<(String, String)> = list
            .into_iter()
            .filter(|(_, value)| !value.is_null())
            .map(|(name, value)| (name, as_text(value)))
            .collect();
        let Some(geometry) = feature.geometry else {
            return Ok(());
        };
        let mut parts = Parts::default();
        parts.collect(&geometry.value, 0);
        for geometry in parts.geometries() {
            let suggested = tags::suggestion(&tags).unwrap_or_default();
            output.add(LAYER, geometry, tags.clone(), suggested, &place)?;
        }
        Ok(())
    }
}

impl Work for GeoJson {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let Some(mut place) = self.place else {
            return self.begin(output);
        };
        let bytes = self.bytes.clone();
        for _ in 0..FEATURES {
            // Between features stand commas, behind the last one the closing bracket.
            let rest = bytes.from(place);
            let skipped = rest
                .iter()
                .take_while(|byte| byte.is_ascii_whitespace() || **byte == b',')
                .count();
            place += skipped;
            let rest = bytes.from(place);
            if matches!(rest.first(), None | Some(b']')) {
                return Ok(Progress::Done);
            }
            let mut values = serde_json::Deserializer::from_slice(rest).into_iter::<&RawValue>();
            let Some(Ok(raw)) = values.next() else {
                return Ok(Progress::Done);
            };
            place += values.byte_offset();
            match serde_json::from_str::<Feature>(raw.get()) {
                Ok(feature) => self.add(output, feature)?,
                Err(fault) => {
                    self.number += 1;
                    let layer = LAYER.to_owned();
                    let number = self.number;
                    output.fault(What::broken(fault).at(Place::Record { layer, number }));
                }
            }
        }
        self.place = Some(place);
        Ok(Progress::Working(place as f64 / bytes.as_ref().len().max(1) as f64))
    }
}

fn broken_at(fault: &serde_json::Error) -> Fault {
    What::broken(fault).at(Place::Line(fault.line() as u64))
}

/// Names as older files have them: `urn:ogc:def:crs:EPSG::2263`, `urn:ogc:def:crs:OGC:1.3:CRS84`, `EPSG:2263`.
fn named_system(name: &str) -> Result<System, What> {
    let last = name.rsplit(':').next().unwrap_or_default();
    if last.eq_ignore_ascii_case("CRS84") {
        return Ok(System::degrees());
    }
    match last.parse() {
        Ok(code) => System::from_epsg(code),
        Err(_) => System::named(name),
    }
}

fn as_text(value: JsonValue) -> String {
    match value {
        JsonValue::String(text) => text,
        other => other.to_string(),
    }
}

/// The parts of a geometry, by their dimension.
#[derive(Default)]
struct Parts {
    points: Vec<Position>,
    lines: Vec<Vec<Position>>,
    areas: Vec<Vec<Vec<Position>>>,
}

/// How deep collections within collections are followed.
const DEEPEST: usize = 16;

impl Parts {
    fn collect(&mut self, value: &GeometryValue, depth: usize) {
        match value {
            GeometryValue::Point { coordinates } => self.points.extend(position(coordinates)),
            GeometryValue::MultiPoint { coordinates } => self.points.extend(coordinates.iter().filter_map(position)),
            GeometryValue::LineString { coordinates } => self.lines.push(line(coordinates)),
            GeometryValue::MultiLineString { coordinates } => {
                self.lines.extend(coordinates.iter().map(|one| line(one)));
            }
            GeometryValue::Polygon { coordinates } => {
                self.areas.push(coordinates.iter().map(|one| line(one)).collect());
            }
            GeometryValue::MultiPolygon { coordinates } => self.areas.extend(
                coordinates
                    .iter()
                    .map(|area| area.iter().map(|one| line(one)).collect()),
            ),
            GeometryValue::GeometryCollection { geometries } if depth < DEEPEST => {
                for geometry in geometries {
                    self.collect(&geometry.value, depth + 1);
                }
            }
            GeometryValue::GeometryCollection { .. } => {}
        }
    }

    fn geometries(self) -> impl Iterator<Item = Geometry> {
        let points = (!self.points.is_empty()).then_some(Geometry::Points(self.points));
        let lines = (!self.lines.is_empty()).then_some(Geometry::Lines(self.lines));
        let areas = (!self.areas.is_empty()).then_some(Geometry::Areas(self.areas));
        [points, lines, areas].into_iter().flatten()
    }
}

fn position(position: &::geojson::Position) -> Option<Position> {
    let [x, y] = position.as_slice().get(..2)? else {
        return None;
    };
    Some([*x, *y])
}

fn line(positions: &[::geojson::Position]) -> Vec<Position> {
    positions.iter().filter_map(position).collect()
}
