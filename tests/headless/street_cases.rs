//! The street networks of `tests/fixtures/streets`, read as the drawing they are.

use std::collections::BTreeMap;
use std::fs;

use hobnail_core::fabric::{SourceId, SourceSegment, segments_of_line};
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::projection::{GeographicPoint, Projection};
use serde_json::Value;

/// A network and what was worked out about it elsewhere.
pub struct StreetCase {
    pub lines: Vec<Vec<PlanPoint>>,
    /// The points of interest by id.
    pub points: BTreeMap<String, PlanPoint>,
    pub expected: Value,
}

fn read(case: &str, file: &str) -> Value {
    let path = format!("{}/../tests/fixtures/streets/{case}/{file}", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&fs::read_to_string(&path).expect(&path)).expect(&path)
}

/// Reads `case` with the streets of `file`; coordinates in degrees go through the plan's projection.
pub fn street_case_from(case: &str, file: &str) -> StreetCase {
    let params = read(case, "params.json");
    let projection = params["local_origin"].as_array().map(|origin| {
        let origin = GeographicPoint::checked_from_deg(number(&origin[0]), number(&origin[1])).expect("a legal origin");
        Projection::about(origin).expect("an origin that can be projected about")
    });
    let point = |pair: &Value| {
        let (x, y) = (number(&pair[0]), number(&pair[1]));
        let (x_m, y_m) = match &projection {
            Some(projection) => projection.m_from_deg(x, y).expect("a place near the origin"),
            None => (x, y),
        };
        PlanPoint::checked_from_m(x_m, y_m).expect("a legal place")
    };
    let features = read(case, file);
    let lines = features["features"].as_array().expect("features").iter();
    let points = read(case, "points.geojson");
    let points = points["features"].as_array().expect("features").iter();
    StreetCase {
        points: points
            .map(|feature| {
                let id = feature["properties"]["id"].as_str().expect("an id");
                (id.to_owned(), point(&feature["geometry"]["coordinates"]))
            })
            .collect(),
        lines: lines
            .map(|feature| {
                assert_eq!(feature["geometry"]["type"], "LineString");
                let coordinates = feature["geometry"]["coordinates"].as_array();
                coordinates.expect("coordinates").iter().map(point).collect()
            })
            .collect(),
        expected: read(case, "expected.json"),
    }
}

/// Reads `case` as drawn.
pub fn street_case(case: &str) -> StreetCase {
    street_case_from(case, "streets.geojson")
}

pub fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

impl StreetCase {
    pub fn segments(&self) -> Vec<SourceSegment> {
        segments_of(&self.lines)
    }
}

pub fn segments_of(lines: &[Vec<PlanPoint>]) -> Vec<SourceSegment> {
    let numbered = lines.iter().zip(0..);
    numbered
        .flat_map(|(line, index)| segments_of_line(line, SourceId(index)))
        .collect()
}
