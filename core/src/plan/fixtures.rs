//! Small documents for tests of the plan.

use crate::order::OrderedMap;

use super::coordinates::PlanPoint;
use super::document::{Alternative, Document, Heading, Settings, Site, UnitSystem};
use super::ids::{AlternativeId, StreetSectionId};
use super::street::{Status, Street, StreetOwner, StreetRole, Vertex};

/// A document without palettes, with one empty alternative.
pub(crate) fn document() -> Document {
    Document {
        heading: Heading {
            name: String::new(),
            about: String::new(),
            origin_longitude_ndeg: 0,
            origin_latitude_ndeg: 0,
        },
        site: Site::default(),
        program: Vec::new(),
        street_sections: OrderedMap::new(),
        building_types: OrderedMap::new(),
        phases: OrderedMap::new(),
        settings: Settings {
            walking_pace_mm_per_s: 1340,
            units: UnitSystem::Metric,
            chosen: OrderedMap::new(),
            overridden_factors: OrderedMap::new(),
            rule_lists: Vec::new(),
        },
        topography: None,
        base_image: None,
        alternatives: [(AlternativeId(0), Alternative::default())].into(),
    }
}

/// A street through these points.
pub(crate) fn street(points: &[(i32, i32)]) -> Street {
    Street {
        line: points.iter().map(|&(x, y)| Vertex::at(PlanPoint::new(x, y))).collect(),
        section: StreetSectionId(0),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    }
}
