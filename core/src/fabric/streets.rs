//! The drawn streets of one alternative as plain lines, ready to be arranged.
//!
//! Streets to be removed are left out; everything else that people or water of a street can use is in. Each drawn
//! segment is a source of its own, so that an edge of the arrangement knows which way its street runs.
//!
//! Streets that are not built in the part of a plan that is looked at divide land and keep their right-of-way, and are
//! streets in no other way: a block keeps to its own land while the street behind it is still to come.

use super::segments::{SourceId, SourceSegment};
use crate::plan::flatten::flatten;
use crate::plan::scope::Unbuilt;
use crate::plan::street::{Status, Vertex};
use crate::plan::{Document, MarkId, PlanPoint, Street, StreetRole, StreetSectionId};

/// The widest right-of-way that is laid out, in millimeters: a kilometer, several times any street. A wider one is a slip
/// of the pen, and would reach beyond what coordinates hold.
pub const WIDEST_RIGHT_OF_WAY_MM: u32 = 1_000_000;

/// A street as the fabric sees it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StreetLine {
    /// The mark it was drawn as.
    pub mark: MarkId,
    /// Its centerline with corners rounded.
    pub points: Vec<PlanPoint>,
    /// Its street section.
    pub section: StreetSectionId,
    /// What it does in the network.
    pub role: StreetRole,
    /// Its level; 0 is the ground.
    pub level: i8,
    /// Width of its right-of-way in millimeters.
    pub right_of_way_mm: u32,
    /// Whether people walk along it.
    pub walkable: bool,
    /// Whether lots may front on its left and its right side.
    pub fronts: [bool; 2],
    /// Whether it lies outside the site.
    pub is_outside: bool,
}

/// A street that is not built in what is looked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnbuiltLine {
    /// Its centerline with corners rounded.
    pub points: Vec<PlanPoint>,
    /// Width of the right-of-way kept for it, in millimeters.
    pub right_of_way_mm: u32,
}

/// All drawn lines: the streets in order of their marks, then the site boundary, then what is not built yet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DrawnLines {
    /// The streets.
    pub streets: Vec<StreetLine>,
    /// The site boundary, first point repeated at the end; empty where none is drawn.
    pub boundary: Vec<PlanPoint>,
    /// Streets that are not built in what is looked at.
    pub unbuilt: Vec<UnbuiltLine>,
    /// The first source of each street, of the boundary, and of what is not built.
    first_sources: Vec<u32>,
    /// The line of each source: a street, the boundary, or what is not built.
    line_of_source: Vec<u32>,
}

/// What drew one source segment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drawn {
    /// A street, by its place in [`DrawnLines::streets`], and which of its segments.
    Street {
        /// Which street.
        street: u32,
        /// Which segment of its points.
        segment: u32,
    },
    /// The site boundary.
    Boundary,
    /// A street that is not built in what is looked at, by its place in [`DrawnLines::unbuilt`].
    Unbuilt(u32),
}

impl DrawnLines {
    /// The lines of `streets`, and those of streets not built. A street whose section is missing from the palette is left out; validation names it.
    #[must_use]
    pub fn of<'a>(
        document: &Document,
        mut streets: impl Iterator<Item = (MarkId, &'a Street)>,
        unbuilt: &[Unbuilt],
    ) -> Self {
        let mut lines = Self::default();
        lines.renew(document, &mut streets, unbuilt);
        lines
    }

    /// Brings the lines up to the document; the result equals [`DrawnLines::of`]. Gives back whether they had changed.
    pub fn renew(
        &mut self,
        document: &Document,
        streets: &mut dyn Iterator<Item = (MarkId, &Street)>,
        unbuilt: &[Unbuilt],
    ) -> bool {
        let mut last = std::mem::take(self);
        let lines = self;
        // Mostly a street is what it was: its points serve again.
        let mut is_same = true;
        let mut source = 0;
        lines.streets = std::mem::take(&mut last.streets);
        let mut count = 0;
        for (mark, street) in streets {
            let Some(section) = document.street_sections.get(&street.section) else {
                continue;
            };
            if street.status == Status::Removed {
                continue;
            }
            let mut line = StreetLine {
                mark,
                points: Vec::new(),
                section: street.section,
                role: street.role,
                level: street.level,
                right_of_way_mm: section.right_of_way_mm().min(WIDEST_RIGHT_OF_WAY_MM),
                walkable: section.walkable,
                fronts: [section.fronts_left, section.fronts_right],
                is_outside: street.is_outside,
            };
            let held = lines.streets.get_mut(count);
            let before = held.map(|held| std::mem::take(&mut held.points)).unwrap_or_default();
            is_same &= lines.streets.get(count) == Some(&line);
            line.points = if is_flat_as(&street.line, &before) {
                before
            } else {
                let points = flatten(&street.line);
                is_same &= points == before;
                points
            };
            lines.first_sources.push(source);
            source += line.points.len().saturating_sub(1) as u32;
            lines.add_sources(source);
            match lines.streets.get_mut(count) {
                Some(held) => *held = line,
                None => lines.streets.push(line),
            }
            count += 1;
        }
        is_same &= count == lines.streets.len();
        lines.streets.truncate(count);
        lines.first_sources.push(source);
        let boundary = &document.site.boundary;
        lines.boundary = boundary.iter().chain(boundary.first()).copied().collect();
        source += lines.boundary.len().saturating_sub(1) as u32;
        lines.add_sources(source);
        lines.first_sources.push(source);
        for street in unbuilt {
            let Some(section) = document.street_sections.get(&street.section) else {
                continue;
            };
            source += street.points.len().saturating_sub(1) as u32;
            lines.add_sources(source);
            lines.first_sources.push(source);
            lines.unbuilt.push(UnbuiltLine {
                points: street.points.clone(),
                right_of_way_mm: section.right_of_way_mm().min(WIDEST_RIGHT_OF_WAY_MM),
            });
        }
        // What is left are numbers that follow from the points.
        !is_same || lines.boundary != last.boundary || lines.unbuilt != last.unbuilt
    }

    /// Gives the sources up to `end` to the line whose first was listed last.
    fn add_sources(&mut self, end: u32) {
        let line = self.first_sources.len() as u32 - 1;
        self.line_of_source.resize(end as usize, line);
    }

    /// Every drawn segment with its source.
    #[must_use]
    pub fn segments(&self) -> Vec<SourceSegment> {
        let lines = self
            .streets
            .iter()
            .map(|street| street.points.as_slice())
            .chain([self.boundary.as_slice()])
            .chain(self.unbuilt.iter().map(|street| street.points.as_slice()));
        let pairs = lines.flat_map(|points| points.windows(2));
        pairs
            .zip(0..)
            .map(|(pair, source)| SourceSegment::new(pair[0], pair[1], SourceId(source)))
            .collect()
    }

    /// What drew a source.
    #[must_use]
    pub fn drawn(&self, source: SourceId) -> Drawn {
        let line = self.line_of_source[source.0 as usize] as usize;
        match line.checked_sub(self.streets.len()) {
            None => Drawn::Street {
                street: line as u32,
                segment: source.0 - self.first_sources[line],
            },
            Some(0) => Drawn::Boundary,
            Some(beyond) => Drawn::Unbuilt(beyond as u32 - 1),
        }
    }

    /// The widest right-of-way kept for a street that is not built, among these sources; 0 for none.
    #[must_use]
    pub fn kept_right_of_way_mm(&self, sources: &[SourceId]) -> u32 {
        if self.unbuilt.is_empty() {
            return 0;
        }
        let widths = sources.iter().map(|source| match self.drawn(*source) {
            Drawn::Unbuilt(street) => self.unbuilt[street as usize].right_of_way_mm,
            Drawn::Street { .. } | Drawn::Boundary => 0,
        });
        widths.max().unwrap_or(0)
    }

    /// Whether the site boundary runs along an edge with these sources: an odd number of times, so that a boundary
    /// drawn there and back encloses nothing.
    #[must_use]
    pub fn boundary_covers(&self, sources: &[SourceId]) -> bool {
        sources
            .iter()
            .filter(|source| self.drawn(**source) == Drawn::Boundary)
            .count()
            % 2
            == 1
    }
}

/// Whether a line without rounded corners is drawn as these points, of which no two that follow one another are the
/// same.
fn is_flat_as(line: &[Vertex], points: &[PlanPoint]) -> bool {
    let is_at = |(vertex, point): (&Vertex, &PlanPoint)| vertex.corner_radius_mm == 0 && vertex.point == *point;
    line.len() == points.len() && line.iter().zip(points).all(is_at)
}
