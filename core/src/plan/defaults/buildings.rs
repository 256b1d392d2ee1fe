//! The default building types.
//!
//! Lots, floors, coverage and parking are common practice in the United States, no source, unless a line says otherwise.
//! People per home by kind of building are approximate and from memory (American Community Survey, tables B25033 and
//! B25032): about 2.7 detached, 2.3 attached and in small buildings, 2.0 in large ones.

use crate::order::OrderedMap;

use super::{feet, numbered, usual_jobs_per_floor_hectare};
use crate::plan::building::{BuildingType, EnvelopeClass, FloorUse, LandUse, PriceBand, Story};
use crate::plan::ids::BuildingTypeId;
use crate::say;
use FloorUse::{Gathering, Home, Learning, Shop, Work};

/// Jobs on a hectare of workshop, one to 50 m²: common practice, no source. Other floor has the usual jobs of its use.
const WORKSHOP_JOBS: u32 = 200;

/// People per home, in thousandths.
const DETACHED: u32 = 2700;
const ATTACHED: u32 = 2300;
const LARGE_BUILDING: u32 = 2000;

/// Floor to floor, in feet.
const HOME_HEIGHT: u32 = 10;
const SHOP_HEIGHT: u32 = 15;
const WORK_HEIGHT: u32 = 13;

/// The default building types, by id.
#[must_use]
pub fn building_types() -> OrderedMap<BuildingTypeId, BuildingType> {
    let mut types = homes();
    types.extend(shops_and_work());
    types.extend(civic());
    types.extend(open_land());
    numbered(BuildingTypeId, types)
}

fn homes() -> Vec<BuildingType> {
    vec![
        BuildingType {
            stories: stories(&[(Home, 80), (Home, 70)], HOME_HEIGHT),
            homes_per_lot: 1,
            persons_per_home_thousandths: DETACHED,
            parking_per_lot_hundredths: 200,
            ..lot(
                say!("plan-type-detached-small"),
                LandUse::Residential,
                (40, 100),
                [280, 150],
            )
        },
        BuildingType {
            stories: stories(&[(Home, 130), (Home, 90)], HOME_HEIGHT),
            homes_per_lot: 1,
            persons_per_home_thousandths: DETACHED,
            parking_per_lot_hundredths: 400,
            price_band: PriceBand::Upper,
            ..lot(
                say!("plan-type-detached-large"),
                LandUse::Residential,
                (80, 120),
                [220, 150],
            )
        },
        BuildingType {
            stories: stories(&[(Home, 100), (Home, 90)], HOME_HEIGHT),
            homes_per_lot: 2,
            persons_per_home_thousandths: ATTACHED,
            parking_per_lot_hundredths: 300,
            ..lot(
                say!("plan-type-two-family"),
                LandUse::Residential,
                (50, 100),
                [320, 180],
            )
        },
        BuildingType {
            stories: stories(&[(Home, 65), (Home, 65)], HOME_HEIGHT),
            homes_per_lot: 1,
            persons_per_home_thousandths: ATTACHED,
            parking_per_lot_hundredths: 150,
            ..lot(say!("plan-type-attached"), LandUse::Residential, (20, 95), [450, 150])
        },
        // Cottages about a shared green, parking together at the rear.
        BuildingType {
            stories: stories(&[(Home, 360), (Home, 120)], HOME_HEIGHT),
            homes_per_lot: 6,
            persons_per_home_thousandths: LARGE_BUILDING,
            parking_per_lot_hundredths: 700,
            ..lot(
                say!("plan-type-cottage-court"),
                LandUse::Residential,
                (100, 120),
                [350, 170],
            )
        },
        BuildingType {
            stories: stories(&[(Home, 480), (Home, 480), (Home, 480)], HOME_HEIGHT),
            homes_per_lot: 14,
            persons_per_home_thousandths: LARGE_BUILDING,
            parking_per_lot_hundredths: 1400,
            ..lot(
                say!("plan-type-apartments"),
                LandUse::Residential,
                (100, 120),
                [440, 300],
            )
        },
        // Walk-up buildings in a parking lot, as conventional subdivisions have them.
        BuildingType {
            stories: stories(&[(Home, 700), (Home, 700), (Home, 700)], HOME_HEIGHT),
            homes_per_lot: 24,
            persons_per_home_thousandths: LARGE_BUILDING,
            parking_per_lot_hundredths: 4200,
            ..lot(
                say!("plan-type-garden-apartments"),
                LandUse::Residential,
                (200, 250),
                [160, 440],
            )
        },
    ]
}

fn shops_and_work() -> Vec<BuildingType> {
    let mut mixed = stories(&[(Shop, 320)], SHOP_HEIGHT);
    mixed.extend(stories(&[(Home, 300), (Home, 300), (Home, 300)], HOME_HEIGHT));
    let mut corner = stories(&[(Shop, 120)], SHOP_HEIGHT);
    corner.extend(stories(&[(Home, 110)], HOME_HEIGHT));
    let mut workshop = stories(&[(Work, 400), (Work, 400)], WORK_HEIGHT);
    if let Some(ground) = workshop.first_mut() {
        ground.jobs_per_floor_hectare = WORKSHOP_JOBS;
    }
    vec![
        BuildingType {
            stories: mixed,
            homes_per_lot: 10,
            persons_per_home_thousandths: LARGE_BUILDING,
            parking_per_lot_hundredths: 800,
            ..lot(
                say!("plan-type-homes-above-shops"),
                LandUse::Business,
                (50, 120),
                [590, 310],
            )
        },
        BuildingType {
            stories: corner,
            homes_per_lot: 1,
            persons_per_home_thousandths: ATTACHED,
            parking_per_lot_hundredths: 300,
            ..lot(say!("plan-type-corner-store"), LandUse::Business, (40, 100), [340, 260])
        },
        BuildingType {
            stories: workshop,
            parking_per_lot_hundredths: 1200,
            ..lot(say!("plan-type-workshop"), LandUse::Business, (80, 120), [460, 390])
        },
        // Four spaces to 1,000 square feet of shop, a usual minimum in conventional codes.
        BuildingType {
            stories: stories(&[(Shop, 4500)], SHOP_HEIGHT),
            parking_per_lot_hundredths: 19_400,
            ..lot(say!("plan-type-supermarket"), LandUse::Business, (400, 420), [290, 600])
        },
    ]
}

fn civic() -> Vec<BuildingType> {
    vec![
        // About 5 acres, the smallest campus maximum of LEED v4 ND's neighborhood schools credit.
        BuildingType {
            stories: stories(&[(Learning, 3000), (Learning, 2500)], WORK_HEIGHT),
            parking_per_lot_hundredths: 5000,
            ..lot(say!("plan-type-school"), LandUse::Civic, (400, 540), [150, 250])
        },
        BuildingType {
            stories: stories(&[(Gathering, 700)], SHOP_HEIGHT),
            parking_per_lot_hundredths: 2500,
            ..lot(say!("plan-type-hall"), LandUse::Civic, (130, 165), [360, 340])
        },
    ]
}

fn open_land() -> Vec<BuildingType> {
    vec![
        lot(say!("plan-type-park"), LandUse::Leisure, (200, 200), [0, 80]),
        lot(say!("plan-type-square"), LandUse::Leisure, (150, 150), [0, 500]),
        lot(say!("plan-type-farm"), LandUse::Natural, (200, 200), [0, 0]),
    ]
}

/// An empty lot, width and depth in feet, with its covered and paved shares in thousandths; the rest is planted.
fn lot(name: &str, land_use: LandUse, (width_ft, depth_ft): (u32, u32), [covered, paved]: [u16; 2]) -> BuildingType {
    BuildingType {
        name: name.to_owned(),
        land_use,
        lot_width_mm: feet(width_ft),
        lot_depth_mm: feet(depth_ft),
        stories: Vec::new(),
        homes_per_lot: 0,
        persons_per_home_thousandths: 0,
        coverage_thousandths: covered,
        paved_thousandths: paved,
        planted_thousandths: 1000 - covered - paved,
        parking_per_lot_hundredths: 0,
        envelope: EnvelopeClass::Code,
        price_band: PriceBand::Middle,
    }
}

/// Stories from the ground up, each with its floor area in square meters and the usual jobs of its use.
fn stories(floors: &[(FloorUse, u32)], height_ft: u32) -> Vec<Story> {
    floors
        .iter()
        .map(|&(floor_use, floor_area_m2)| Story {
            floor_use,
            floor_area_m2,
            height_mm: feet(height_ft),
            jobs_per_floor_hectare: usual_jobs_per_floor_hectare(floor_use),
        })
        .collect()
}
