use std::collections::BTreeMap;

use super::*;
use crate::fabric::{Fabric, LandCache};
use crate::plan::building::LandUse;
use crate::plan::document::{Alternative, Site};
use crate::plan::projection::GeographicPoint;
use crate::plan::street::{Status, StreetOwner};
use crate::plan::{BuildingTypeId, PlanPoint, Street, StreetRole, StreetSectionId, UseMark, Vertex};

const ONLY: AlternativeId = AlternativeId(0);

fn p(x_m: i32, y_m: i32) -> PlanPoint {
    PlanPoint::new(x_m * 1000, y_m * 1000)
}

fn rectangle(west: i32, south: i32, east: i32, north: i32) -> Vec<PlanPoint> {
    vec![p(west, south), p(east, south), p(east, north), p(west, north)]
}

fn street(points: &[(i32, i32)]) -> Mark {
    Mark::Street(Street {
        line: points.iter().map(|(x, y)| Vertex::at(p(*x, *y))).collect(),
        section: StreetSectionId(0),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    })
}

fn soft(outline: Vec<PlanPoint>, intensity_ppm: u32) -> Mark {
    let portion = |building_type, share_ppm| Portion {
        building_type: BuildingTypeId(building_type),
        share_ppm,
    };
    Mark::SoftArea(SoftArea {
        outline,
        // Attached houses on lots 95 ft deep, and detached ones on lots of 100 ft.
        program: vec![portion(3, 700_000), portion(0, 300_000)],
        land_use: LandUse::Residential,
        intensity_ppm,
        phase: None,
    })
}

fn plan(marks: Vec<Mark>) -> (Document, Fabric) {
    let origin = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    let mut document = Document::new("Invented", origin);
    document.site = Site {
        boundary: rectangle(0, 0, 600, 400),
    };
    let marks: BTreeMap<MarkId, Mark> = (0..).map(MarkId).zip(marks).collect();
    let alternative = Alternative {
        marks,
        ..Alternative::default()
    };
    document.alternatives = [(ONLY, alternative)].into();
    let fabric = Fabric::of(&document, ONLY, &mut LandCache::default());
    (document, fabric)
}

/// The mark whose program the face around a point takes.
fn taken_at(marks: Vec<Mark>, point: PlanPoint) -> Option<u32> {
    let (document, fabric) = plan(marks);
    let face = fabric.face_at(point).expect("a face is there");
    inherited_program(&document, ONLY, face).map(|(id, _)| id.0)
}

const BLOCK: [(i32, i32); 5] = [(100, 100), (200, 100), (200, 160), (100, 160), (100, 100)];

#[test]
fn a_block_drawn_inside_takes_the_program_and_the_rest_of_the_site_does_not() {
    let marks = || vec![soft(rectangle(20, 20, 580, 380), 1_000_000), street(&BLOCK)];
    assert_eq!(taken_at(marks(), p(150, 130)), Some(0));
    assert_eq!(taken_at(marks(), p(20, 390)), None);
}

#[test]
fn one_street_across_the_site_makes_no_block() {
    let marks = vec![
        soft(rectangle(20, 20, 580, 380), 1_000_000),
        street(&[(0, 200), (600, 200)]),
    ];
    assert_eq!(taken_at(marks, p(300, 100)), None);
}

#[test]
fn a_block_that_backs_on_the_boundary_is_one() {
    // Streets on three sides, the boundary on the fourth: 80 m by 60 m of land, 280 m of street.
    let marks = vec![
        soft(rectangle(0, 0, 600, 400), 1_000_000),
        street(&[(100, 0), (100, 70), (200, 70), (200, 0)]),
    ];
    assert_eq!(taken_at(marks, p(150, 30)), Some(0));
}

#[test]
fn a_use_of_its_own_comes_first_and_so_does_the_area_drawn_first() {
    let own = Mark::Use(UseMark {
        anchor: p(150, 130),
        program: Vec::new(),
        land_m2: 0,
        sides: Vec::new(),
        phase: None,
    });
    let area = || soft(rectangle(20, 20, 580, 380), 1_000_000);
    assert_eq!(taken_at(vec![area(), street(&BLOCK), own], p(150, 130)), None);
    assert_eq!(taken_at(vec![area(), area(), street(&BLOCK)], p(150, 130)), Some(0));
    let elsewhere = soft(rectangle(300, 20, 580, 380), 1_000_000);
    assert_eq!(taken_at(vec![elsewhere, street(&BLOCK)], p(150, 130)), None);
}

#[test]
fn portions_carry_the_intensity() {
    let Mark::SoftArea(area) = soft(Vec::new(), 500_000) else {
        unreachable!("a soft area was made");
    };
    let shares: Vec<u32> = portions(&area).iter().map(|portion| portion.share_ppm).collect();
    assert_eq!(shares, [350_000, 150_000]);
}
