//! Small invented plans for the tests of streets and blocks.

use crate::fabric::{Fabric, LandCache};
use crate::measures::frontage::{Painted, PaintedCache, painted_faces};
use crate::measures::streets::StreetInputs;
use crate::plan::document::UnitSystem;
use crate::plan::land::{Portion, SiteAccess};
use crate::plan::projection::GeographicPoint;
use crate::plan::street::{Status, StreetOwner};
use crate::plan::{
    AlternativeId, BuildingTypeId, Document, Mark, MarkId, PlanPoint, Street, StreetRole, StreetSectionId, UseMark,
    Vertex,
};

pub const ONLY: AlternativeId = AlternativeId(0);

/// Default street sections: neighborhood street, alley, path.
const NEIGHBORHOOD: StreetSectionId = StreetSectionId(2);
const ALLEY: StreetSectionId = StreetSectionId(5);
const PATH: StreetSectionId = StreetSectionId(6);

/// A point in whole meters.
pub fn p(x_m: i32, y_m: i32) -> PlanPoint {
    PlanPoint::new(x_m * 1_000, y_m * 1_000)
}

/// A street through these points in whole meters.
pub fn street(points: &[(i32, i32)]) -> Street {
    Street {
        line: points.iter().map(|(x, y)| Vertex::at(p(*x, *y))).collect(),
        section: NEIGHBORHOOD,
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    }
}

/// The same street outside the site.
pub fn outside(points: &[(i32, i32)]) -> Street {
    Street {
        is_outside: true,
        ..street(points)
    }
}

pub fn alley(points: &[(i32, i32)]) -> Street {
    Street {
        section: ALLEY,
        role: StreetRole::Alley,
        ..street(points)
    }
}

pub fn path(points: &[(i32, i32)]) -> Street {
    Street {
        section: PATH,
        role: StreetRole::Path,
        ..street(points)
    }
}

/// All land of the face around a point under one building type of the default palette.
pub fn land(at: (i32, i32), building_type: u32) -> Mark {
    Mark::Use(UseMark {
        anchor: p(at.0, at.1),
        program: vec![Portion {
            building_type: BuildingTypeId(building_type),
            share_ppm: 1_000_000,
        }],
        land_m2: 0,
        sides: Vec::new(),
        phase: None,
    })
}

pub fn access(at: (i32, i32), name: &str) -> Mark {
    Mark::SiteAccess(SiteAccess {
        name: name.to_owned(),
        at: p(at.0, at.1),
        outside_trips_ppm: None,
    })
}

/// A plan in metric units of streets, other marks and a boundary (none where it is empty).
pub fn plan(streets: &[Street], others: &[Mark], boundary: &[(i32, i32)]) -> Document {
    let mut document = Document::new(
        "Invented",
        GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        },
    );
    document.settings.units = UnitSystem::Metric;
    document.site.boundary = boundary.iter().map(|(x, y)| p(*x, *y)).collect();
    let marks = streets.iter().cloned().map(Mark::Street).chain(others.iter().cloned());
    if let Some(held) = document.alternatives.get_mut(&ONLY) {
        held.marks = (0..).map(MarkId).zip(marks).collect();
    }
    document
}

pub fn fabric_of(document: &Document) -> Fabric {
    Fabric::of(document, ONLY, &mut LandCache::default())
}

pub fn painted(document: &Document, fabric: &Fabric) -> Painted {
    painted_faces(document, ONLY, fabric, &mut PaintedCache::default())
}

/// What is counted on a plan.
pub fn counted(document: &Document) -> StreetInputs {
    let fabric = fabric_of(document);
    StreetInputs::of(document, ONLY, &fabric, &painted(document, &fabric))
}

/// All homes of a plan.
pub fn homes(document: &Document) -> f64 {
    let fabric = fabric_of(document);
    let painted = painted(document, &fabric);
    let lots = painted.iter().flat_map(|face| &face.lots);
    lots.map(|(id, count)| {
        let held = painted.palette.get(*id).expect("a type of the plan");
        count * f64::from(held.homes_per_lot)
    })
    .sum()
}
