//! The drawn streets of one alternative as plain lines, ready to be arranged.
//!
//! Streets to be removed are left out; everything else that people or water of a street can use is in. Each drawn
//! segment is a source of its own, so that an edge of the arrangement knows which way its street runs.

use std::collections::BTreeMap;

use super::segments::{SourceId, SourceSegment};
use crate::plan::flatten::flatten;
use crate::plan::street::Status;
use crate::plan::{Document, MarkId, PlanPoint, Street, StreetRole, StreetSectionId};

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

/// All drawn lines: the streets in order of their marks, then the site boundary.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DrawnLines {
    /// The streets.
    pub streets: Vec<StreetLine>,
    /// The site boundary, first point repeated at the end; empty where none is drawn.
    pub boundary: Vec<PlanPoint>,
    /// The first source of each street, and of the boundary.
    first_sources: Vec<u32>,
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
}

impl DrawnLines {
    /// The lines of `marks`. A street whose section is missing from the palette is left out; validation names it.
    #[must_use]
    pub fn of<'a>(document: &Document, streets: impl Iterator<Item = (MarkId, &'a Street)>) -> Self {
        let sections: BTreeMap<_, _> = document.street_sections.iter().collect();
        let mut lines = Self::default();
        let mut source = 0;
        for (mark, street) in streets {
            let Some(section) = sections.get(&street.section) else {
                continue;
            };
            if street.status == Status::Removed {
                continue;
            }
            let points = flatten(&street.line);
            lines.first_sources.push(source);
            source += points.len().saturating_sub(1) as u32;
            lines.streets.push(StreetLine {
                mark,
                points,
                section: street.section,
                role: street.role,
                level: street.level,
                right_of_way_mm: section.right_of_way_mm(),
                walkable: section.walkable,
                fronts: [section.fronts_left, section.fronts_right],
                is_outside: street.is_outside,
            });
        }
        lines.first_sources.push(source);
        let boundary = &document.site.boundary;
        lines.boundary = boundary.iter().chain(boundary.first()).copied().collect();
        lines
    }

    /// Every drawn segment with its source.
    #[must_use]
    pub fn segments(&self) -> Vec<SourceSegment> {
        let lines = self
            .streets
            .iter()
            .map(|street| street.points.as_slice())
            .chain([self.boundary.as_slice()]);
        let pairs = lines.flat_map(|points| points.windows(2));
        pairs
            .zip(0..)
            .map(|(pair, source)| SourceSegment::new(pair[0], pair[1], SourceId(source)))
            .collect()
    }

    /// What drew a source.
    #[must_use]
    pub fn drawn(&self, source: SourceId) -> Drawn {
        let after = self.first_sources.partition_point(|first| *first <= source.0);
        match after.checked_sub(1) {
            Some(street) if street < self.streets.len() => Drawn::Street {
                street: street as u32,
                segment: source.0 - self.first_sources[street],
            },
            _ => Drawn::Boundary,
        }
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
