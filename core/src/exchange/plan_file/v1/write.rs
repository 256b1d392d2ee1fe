//! Writing version 1.

use super::super::VERSION;
use super::{CLOCKWISE, FOOTPRINT, SITE};
use crate::exchange::json::{Json, write_text};
use crate::exchange::stored::v1::{Shape, ShapeKind, mark_parts, shape_of_kind};
use crate::exchange::stored::{Stored, Writing};
use crate::plan::coordinates::PlanPoint;
use crate::plan::document::Document;
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::mark::Mark;
use crate::plan::projection::{NDEG_PER_DEG, OriginFault, Projection};
use crate::plan::validate::is_clockwise;

/// The plan file of a document.
pub(in crate::exchange::plan_file) fn write(document: &Document) -> Result<String, OriginFault> {
    let projection = document.heading.projection()?;
    let mut text = String::from("{\n\"type\": \"FeatureCollection\",\n\"hobnail\": {\n");
    for (index, (name, value)) in header(document).into_iter().enumerate() {
        if index > 0 {
            text.push_str(",\n");
        }
        write_text(&name, &mut text);
        text.push_str(": ");
        write_by_lines(&value, &mut text);
    }
    text.push_str("\n},\n\"features\": [");
    let mut separator = "\n";
    if !document.site.boundary.is_empty() {
        text.push_str(separator);
        separator = ",\n";
        write_site(&document.site.boundary, &projection, &mut text);
    }
    for (&alternative, held) in &document.alternatives {
        for (&id, mark) in &held.marks {
            text.push_str(separator);
            separator = ",\n";
            write_mark(alternative, id, mark, &projection, &mut text);
        }
    }
    text.push_str("\n]\n}\n");
    Ok(text)
}

/// Everything without geometry.
fn header(document: &Document) -> Vec<(String, Json)> {
    let mut writing = Writing::default();
    writing.put("version", &VERSION);
    writing.put("heading", &document.heading);
    let alternatives = document.alternatives.iter().map(|(id, held)| {
        let mut entry = Writing::default();
        entry.put("id", id);
        entry.put("name", &held.name);
        entry.put("table", &held.table);
        entry.done()
    });
    writing.put_json("alternatives", Json::List(alternatives.collect()));
    writing.put("program", &document.program);
    writing.put("street_sections", &document.street_sections);
    writing.put("building_types", &document.building_types);
    writing.put("phases", &document.phases);
    writing.put("settings", &document.settings);
    writing.put("topography", &document.topography);
    writing.put("base_image", &document.base_image);
    writing.members()
}

/// A list of objects with one to a line, so that differences between files read well; anything else on one line.
fn write_by_lines(value: &Json, text: &mut String) {
    match value {
        Json::List(entries) if matches!(entries.first(), Some(Json::Members(_))) => {
            text.push('[');
            for (index, entry) in entries.iter().enumerate() {
                text.push_str(if index > 0 { ",\n" } else { "\n" });
                entry.write_to(text);
            }
            text.push_str("\n]");
        }
        other => other.write_to(text),
    }
}

fn write_site(boundary: &[PlanPoint], projection: &Projection, text: &mut String) {
    let shape = Shape::area(boundary);
    let mut properties = Writing::default();
    properties.put_word("kind", SITE);
    put_turn(&shape, &mut properties);
    write_feature(
        &Json::Text(SITE.to_owned()),
        &shape,
        &properties.done(),
        projection,
        text,
    );
}

fn write_mark(alternative: AlternativeId, id: MarkId, mark: &Mark, projection: &Projection, text: &mut String) {
    let (shape, parts) = mark_parts(mark);
    let mut properties = Writing::default();
    for (name, value) in parts.members() {
        let is_kind = name == "kind";
        properties.put_json(&name, value);
        if is_kind {
            properties.put("alternative", &alternative);
            if shape_of_kind(mark.kind()).is_none() {
                properties.put_word(FOOTPRINT, shape.kind.member());
            }
            put_turn(&shape, &mut properties);
        }
    }
    write_feature(&id.to_json(), &shape, &properties.done(), projection, text);
}

/// Says so where the outline runs clockwise.
fn put_turn(shape: &Shape, properties: &mut Writing) {
    if is_turned(shape) {
        properties.put(CLOCKWISE, &true);
    }
}

/// Whether a shape is written as a ring in the other direction.
fn is_turned(shape: &Shape) -> bool {
    shape.kind == ShapeKind::Area && shape.points.len() > 2 && is_clockwise(&shape.points)
}

fn write_feature(id: &Json, shape: &Shape, properties: &Json, projection: &Projection, text: &mut String) {
    text.push_str("{\"type\":\"Feature\",\"id\":");
    id.write_to(text);
    text.push_str(",\"geometry\":");
    write_geometry(shape, projection, text);
    text.push_str(",\"properties\":");
    properties.write_to(text);
    text.push('}');
}

/// The least geometry that holds all points: an unfinished outline of two points is a line, and so on.
fn write_geometry(shape: &Shape, projection: &Projection, text: &mut String) {
    let points = &shape.points;
    match (shape.kind, points.as_slice()) {
        (_, []) => text.push_str("null"),
        (_, [point]) => {
            text.push_str("{\"type\":\"Point\",\"coordinates\":");
            write_position(*point, projection, text);
            text.push('}');
        }
        (ShapeKind::Area, [first, rest @ ..]) if points.len() > 2 => {
            text.push_str("{\"type\":\"Polygon\",\"coordinates\":[[");
            write_position(*first, projection, text);
            let mut push = |point: &PlanPoint| {
                text.push(',');
                write_position(*point, projection, text);
            };
            if is_turned(shape) {
                rest.iter().rev().for_each(&mut push);
            } else {
                rest.iter().for_each(&mut push);
            }
            push(first);
            text.push_str("]]}");
        }
        (_, points) => {
            text.push_str("{\"type\":\"LineString\",\"coordinates\":[");
            for (index, point) in points.iter().enumerate() {
                if index > 0 {
                    text.push(',');
                }
                write_position(*point, projection, text);
            }
            text.push_str("]}");
        }
    }
}

/// A position in degrees of longitude and latitude with nine decimals, as GeoJSON has it.
pub(crate) fn write_position(point: PlanPoint, projection: &Projection, text: &mut String) {
    let position = projection.geographic_from_plan(point);
    text.push('[');
    write_degrees(position.longitude_ndeg, text);
    text.push(',');
    write_degrees(position.latitude_ndeg, text);
    text.push(']');
}

/// Nine decimals, all written.
fn write_degrees(ndeg: i64, text: &mut String) {
    let (whole, rest) = (
        ndeg.unsigned_abs() / NDEG_PER_DEG as u64,
        ndeg.unsigned_abs() % NDEG_PER_DEG as u64,
    );
    let sign = if ndeg < 0 { "-" } else { "" };
    text.push_str(&format!("{sign}{whole}.{rest:09}"));
}
