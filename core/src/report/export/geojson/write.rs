//! Features as text.

use crate::exchange::json::Json;
use crate::exchange::plan_file::write_position;
use crate::exchange::stored::Writing;
use crate::fabric::regions::{Ring, twice_area_mm2};
use crate::plan::PlanPoint;
use crate::plan::projection::Projection;

/// Where a feature is.
pub(super) enum Geometry<'a> {
    /// A point.
    Point(PlanPoint),
    /// Lines; those without length are left out.
    Lines(&'a [Vec<PlanPoint>]),
    /// Pieces of land, each a shell and its holes.
    Land(&'a [Vec<Ring>]),
}

/// A collection of features as it is written.
pub(super) struct Features {
    projection: Projection,
    text: String,
}

impl Features {
    /// None yet, on the plane of this projection.
    pub fn about(projection: Projection) -> Self {
        Self {
            projection,
            text: String::new(),
        }
    }

    /// Adds a feature of a kind; one without any extent is left out.
    pub fn add(&mut self, kind: &str, number: usize, geometry: &Geometry<'_>, properties: Writing) {
        let start = self.text.len();
        if start > 0 {
            self.text.push_str(",\n");
        }
        self.text.push_str("{\"type\":\"Feature\",\"id\":\"");
        self.text.extend([kind, "-", &number.to_string(), "\",\"geometry\":{"]);
        if !self.write(geometry) {
            self.text.truncate(start);
            return;
        }
        self.text.push_str("},\"properties\":");
        let mut members = vec![("kind".to_owned(), Json::Text(kind.to_owned()))];
        members.extend(properties.members());
        Json::Members(members).write_to(&mut self.text);
        self.text.push('}');
    }

    /// The collection, with a member that says what it is of.
    pub fn done(self, about: &Json) -> String {
        let mut text = String::from("{\n\"type\": \"FeatureCollection\",\n\"derived_from\": ");
        about.write_to(&mut text);
        text.extend([",\n\"features\": [\n", &self.text, "\n]\n}\n"]);
        text
    }

    /// Writes the inside of a geometry; `false` where it has no extent.
    fn write(&mut self, geometry: &Geometry<'_>) -> bool {
        match geometry {
            Geometry::Point(point) => {
                self.open("Point", false);
                write_position(*point, &self.projection, &mut self.text);
                true
            }
            Geometry::Lines(lines) => {
                let lines: Vec<&Vec<PlanPoint>> = lines.iter().filter(|line| has_length(line)).collect();
                let is_many = lines.len() > 1;
                self.open(if is_many { "MultiLineString" } else { "LineString" }, is_many);
                for (place, line) in lines.iter().enumerate() {
                    self.part(place);
                    self.positions(line);
                }
                self.close(is_many);
                !lines.is_empty()
            }
            Geometry::Land(pieces) => {
                let pieces: Vec<&Vec<Ring>> = pieces.iter().filter(|piece| has_area(piece)).collect();
                let is_many = pieces.len() > 1;
                self.open(if is_many { "MultiPolygon" } else { "Polygon" }, is_many);
                for (place, piece) in pieces.iter().enumerate() {
                    self.part(place);
                    self.polygon(piece);
                }
                self.close(is_many);
                !pieces.is_empty()
            }
        }
    }

    fn open(&mut self, word: &str, is_many: bool) {
        self.text.extend([
            "\"type\":\"",
            word,
            "\",\"coordinates\":",
            if is_many { "[" } else { "" },
        ]);
    }

    fn part(&mut self, place: usize) {
        if place > 0 {
            self.text.push(',');
        }
    }

    fn close(&mut self, is_many: bool) {
        if is_many {
            self.text.push(']');
        }
    }

    /// A shell counterclockwise and its holes clockwise, each closed.
    fn polygon(&mut self, rings: &[Ring]) {
        self.text.push('[');
        for (place, ring) in rings.iter().enumerate() {
            self.part(place);
            let mut closed = ring.clone();
            if (twice_area_mm2(ring) > 0) != (place == 0) {
                closed.reverse();
            }
            if closed.first() != closed.last() {
                closed.extend(closed.first().copied());
            }
            self.positions(&closed);
        }
        self.text.push(']');
    }

    fn positions(&mut self, points: &[PlanPoint]) {
        self.text.push('[');
        for (place, point) in points.iter().enumerate() {
            self.part(place);
            write_position(*point, &self.projection, &mut self.text);
        }
        self.text.push(']');
    }
}

fn has_length(line: &[PlanPoint]) -> bool {
    line.windows(2).any(|ends| ends[0] != ends[1])
}

fn has_area(piece: &[Ring]) -> bool {
    piece.first().is_some_and(|shell| twice_area_mm2(shell) != 0)
}
