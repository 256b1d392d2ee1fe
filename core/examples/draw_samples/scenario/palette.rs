//! What the scenario builds with: the default palettes, and the entries that this place needs beside them.
//!
//! Sizes are common practice, no source, unless a line says otherwise.

use hobnail_core::order::OrderedMap;

use hobnail_core::plan::building::{EnvelopeClass, PriceBand};
use hobnail_core::plan::document::Phase;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    BuildingType, BuildingTypeId, FloorUse, LandUse, PhaseId, Story, StreetRole, StreetSection, StreetSectionId, Strip,
    StripKind, defaults,
};

use super::sheet::StreetKind;

/// The phase that comes first.
pub const FIRST: PhaseId = PhaseId(0);
/// The phase that comes second.
pub const SECOND: PhaseId = PhaseId(1);

const MAIN: StreetSectionId = StreetSectionId(0);
const NEIGHBORHOOD: StreetSectionId = StreetSectionId(2);
const NARROW: StreetSectionId = StreetSectionId(3);
const LANE: StreetSectionId = StreetSectionId(4);
const ALLEY: StreetSectionId = StreetSectionId(5);
const PATH: StreetSectionId = StreetSectionId(6);
const HOME_PATH: StreetSectionId = StreetSectionId(7);
const SUBDIVISION: StreetSectionId = StreetSectionId(8);
const COLLECTOR: StreetSectionId = StreetSectionId(9);
const STATE_TWO_LANE: StreetSectionId = StreetSectionId(100);
const TOWN_TWO_LANE: StreetSectionId = StreetSectionId(101);
const GREEN: StreetSectionId = StreetSectionId(102);
const BANK: StreetSectionId = StreetSectionId(103);
const FARM_DRIVE: StreetSectionId = StreetSectionId(104);
const PARKING_DRIVE: StreetSectionId = StreetSectionId(105);

/// House on a small lot.
pub const COTTAGE: BuildingTypeId = BuildingTypeId(0);
/// Two homes on one lot.
pub const PAIR: BuildingTypeId = BuildingTypeId(2);
/// House in a row.
pub const ROW_HOUSE: BuildingTypeId = BuildingTypeId(3);
/// Apartment house on a street.
pub const APARTMENT_HOUSE: BuildingTypeId = BuildingTypeId(5);
/// Apartments in a parking lot.
pub const GARDEN_APARTMENTS: BuildingTypeId = BuildingTypeId(6);
/// Shops with homes above.
pub const SHOP_HOUSE: BuildingTypeId = BuildingTypeId(7);
/// Corner store with a home above.
pub const CORNER_STORE: BuildingTypeId = BuildingTypeId(8);
/// Workshop with offices above.
pub const WORKSHOP: BuildingTypeId = BuildingTypeId(9);
/// Community hall.
pub const HALL: BuildingTypeId = BuildingTypeId(12);
/// Park or green.
pub const PARK: BuildingTypeId = BuildingTypeId(13);
/// Square.
pub const SQUARE: BuildingTypeId = BuildingTypeId(14);
/// Farm or wood left as it is.
pub const FARM: BuildingTypeId = BuildingTypeId(15);
/// Workroom below a home.
pub const WORK_HOUSE: BuildingTypeId = BuildingTypeId(100);
/// School of a village.
pub const VILLAGE_SCHOOL: BuildingTypeId = BuildingTypeId(101);
/// The same school on a campus.
pub const CAMPUS_SCHOOL: BuildingTypeId = BuildingTypeId(102);
/// House on a conventional lot.
pub const DETACHED: BuildingTypeId = BuildingTypeId(103);
/// Town house with a garage in front.
pub const TOWN_HOUSE: BuildingTypeId = BuildingTypeId(104);
/// Shops behind a parking lot.
pub const STRIP_SHOPS: BuildingTypeId = BuildingTypeId(105);
/// Offices behind a parking lot.
pub const STRIP_OFFICES: BuildingTypeId = BuildingTypeId(106);
/// Older house on a conventional lot.
pub const OLDER_HOUSE: BuildingTypeId = BuildingTypeId(107);
/// Older house with a cottage in its back yard.
pub const HOUSE_AND_COTTAGE: BuildingTypeId = BuildingTypeId(108);
/// Shops behind a parking lot, worn out.
pub const WORN_STRIP: BuildingTypeId = BuildingTypeId(109);

const fn town(section: StreetSectionId, role: StreetRole) -> StreetKind {
    StreetKind {
        section,
        role,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        phase: None,
    }
}

/// The state road along the south edge.
pub const STATE_ROAD: StreetKind = StreetKind {
    owner: StreetOwner::State,
    status: Status::Existing,
    is_outside: true,
    ..town(STATE_TWO_LANE, StreetRole::Thoroughfare)
};
/// The town road along the west edge and the streets of the old village.
pub const TOWN_ROAD: StreetKind = StreetKind {
    status: Status::Existing,
    is_outside: true,
    ..town(TOWN_TWO_LANE, StreetRole::NeighborhoodStreet)
};
/// The drive to the farmstead.
pub const FARM_LANE: StreetKind = StreetKind {
    owner: StreetOwner::Private,
    status: Status::Existing,
    ..town(FARM_DRIVE, StreetRole::Lane)
};
/// The village's main street.
pub const MAIN_STREET: StreetKind = town(MAIN, StreetRole::NeighborhoodStreet);
/// A street that leads through the neighborhood.
pub const THROUGH_STREET: StreetKind = town(NEIGHBORHOOD, StreetRole::NeighborhoodStreet);
/// An ordinary street of the neighborhood.
pub const STREET: StreetKind = town(NARROW, StreetRole::NeighborhoodStreet);
/// A street with a planted middle that drains.
pub const GREEN_STREET: StreetKind = town(GREEN, StreetRole::NeighborhoodStreet);
/// A street with lots on its right and open land on its left.
pub const BANK_STREET: StreetKind = town(BANK, StreetRole::NeighborhoodStreet);
/// A narrow, shared street.
pub const SHARED_LANE: StreetKind = town(LANE, StreetRole::Lane);
/// A service way behind lots.
pub const REAR_ALLEY: StreetKind = town(ALLEY, StreetRole::Alley);
/// A way for walking and bicycles.
pub const FOOTPATH: StreetKind = town(PATH, StreetRole::Path);
/// A way for walking and bicycles on which homes front, served by alleys behind them.
pub const SHARED_WALK: StreetKind = town(HOME_PATH, StreetRole::Path);
/// A wide street that gathers the traffic of a subdivision.
pub const COLLECTOR_STREET: StreetKind = town(COLLECTOR, StreetRole::Thoroughfare);
/// A street of a subdivision.
pub const SUBDIVISION_STREET: StreetKind = town(SUBDIVISION, StreetRole::NeighborhoodStreet);
/// A drive through parking lots.
pub const DRIVE: StreetKind = StreetKind {
    owner: StreetOwner::Private,
    ..town(PARKING_DRIVE, StreetRole::Lane)
};

/// The phases.
pub fn phases() -> OrderedMap<PhaseId, Phase> {
    [(FIRST, "Main street and square"), (SECOND, "Out to the creek")]
        .map(|(id, name)| (id, Phase { name: name.to_owned() }))
        .into()
}

/// The default street sections and this place's own.
pub fn street_sections() -> OrderedMap<StreetSectionId, StreetSection> {
    use StripKind::{Median, Parking, Planting, Swale, Travel, Walk};
    let mut sections = defaults::street_sections();
    sections.extend([
        (
            STATE_TWO_LANE,
            section(
                "State road with a turn lane",
                72,
                &[
                    (Walk, 2.0),
                    (Planting, 2.6),
                    (Swale, 3.5),
                    (Travel, 3.6),
                    (Median, 3.6),
                    (Travel, 3.6),
                    (Swale, 3.5),
                    (Planting, 3.6),
                ],
            ),
        ),
        (
            TOWN_TWO_LANE,
            fronted(section(
                "Town road",
                48,
                &[
                    (Walk, 1.8),
                    (Planting, 2.0),
                    (Swale, 2.0),
                    (Travel, 3.2),
                    (Travel, 3.2),
                    (Swale, 2.0),
                    (Planting, 2.0),
                    (Walk, 1.8),
                ],
            )),
        ),
        (
            GREEN,
            fronted(section(
                "Green street",
                32,
                &[
                    (Walk, 1.8),
                    (Planting, 1.7),
                    (Travel, 3.4),
                    (Swale, 6.2),
                    (Travel, 3.4),
                    (Planting, 1.7),
                    (Walk, 1.8),
                ],
            )),
        ),
        (
            BANK,
            StreetSection {
                fronts_left: false,
                ..fronted(section(
                    "Bank street, lots on the right",
                    32,
                    &[
                        (Walk, 2.4),
                        (Swale, 2.4),
                        (Travel, 2.8),
                        (Travel, 2.8),
                        (Parking, 2.2),
                        (Planting, 1.7),
                        (Walk, 1.8),
                    ],
                ))
            },
        ),
        (
            FARM_DRIVE,
            section("Farm drive", 16, &[(Planting, 1.0), (Travel, 3.6), (Planting, 1.0)]),
        ),
        (
            PARKING_DRIVE,
            fronted(section("Parking drive", 24, &[(Travel, 3.6), (Travel, 3.6)])),
        ),
    ]);
    sections
}

/// A section for everybody on which no lots front.
fn section(name: &str, target_speed_km_h: u16, strips: &[(StripKind, f64)]) -> StreetSection {
    StreetSection {
        name: name.to_owned(),
        strips: strips
            .iter()
            .map(|&(kind, width_m)| Strip {
                kind,
                width_mm: (width_m * 1000.0).round() as u32,
            })
            .collect(),
        target_speed_km_h,
        walkable: true,
        cyclable: true,
        drivable: true,
        fronts_left: false,
        fronts_right: false,
    }
}

/// The same section with lots on both sides.
fn fronted(section: StreetSection) -> StreetSection {
    StreetSection {
        fronts_left: true,
        fronts_right: true,
        ..section
    }
}

/// Jobs on a hectare of floor: office, shop and school from 250, 550 and 1,300 square feet of gross floor area per
/// employee (LEED v4 BD+C, Appendix 2, table 1).
const OFFICE_JOBS: u32 = 431;
const SHOP_JOBS: u32 = 196;
const SCHOOL_JOBS: u32 = 83;
/// A job to 50 m² of workroom: common practice, no source.
const WORKROOM_JOBS: u32 = 200;

/// People per home, in thousandths, as in the default palette.
const DETACHED_PERSONS: u32 = 2700;
const ATTACHED_PERSONS: u32 = 2300;

/// The default building types and this place's own.
pub fn building_types() -> OrderedMap<BuildingTypeId, BuildingType> {
    use FloorUse::{Home, Learning, Shop, Work};
    let school = [(Learning, 1300, SCHOOL_JOBS), (Learning, 900, SCHOOL_JOBS)];
    let mut types = defaults::building_types();
    types.extend([
        (
            WORK_HOUSE,
            BuildingType {
                homes_per_lot: 1,
                persons_per_home_thousandths: ATTACHED_PERSONS,
                parking_per_lot_hundredths: 150,
                ..lot(
                    "Workroom below a home",
                    LandUse::Residential,
                    (8.0, 34.0),
                    [355, 200],
                    &[(Work, 60, WORKROOM_JOBS), (Home, 80, 0), (Home, 40, 0)],
                )
            },
        ),
        (
            VILLAGE_SCHOOL,
            BuildingType {
                parking_per_lot_hundredths: 1600,
                ..lot("Village school", LandUse::Civic, (80.0, 110.0), [160, 200], &school)
            },
        ),
        (
            CAMPUS_SCHOOL,
            BuildingType {
                parking_per_lot_hundredths: 6000,
                ..lot("School on a campus", LandUse::Civic, (150.0, 180.0), [70, 260], &school)
            },
        ),
        (
            DETACHED,
            BuildingType {
                homes_per_lot: 1,
                persons_per_home_thousandths: DETACHED_PERSONS,
                parking_per_lot_hundredths: 400,
                ..lot(
                    "Detached house, garage in front",
                    LandUse::Residential,
                    (14.5, 31.0),
                    [330, 200],
                    &[(Home, 130, 0), (Home, 90, 0)],
                )
            },
        ),
        (
            TOWN_HOUSE,
            BuildingType {
                homes_per_lot: 1,
                persons_per_home_thousandths: ATTACHED_PERSONS,
                parking_per_lot_hundredths: 200,
                ..lot(
                    "Town house, garage in front",
                    LandUse::Residential,
                    (7.5, 30.0),
                    [380, 320],
                    &[(Home, 70, 0), (Home, 80, 0)],
                )
            },
        ),
        (
            STRIP_SHOPS,
            BuildingType {
                parking_per_lot_hundredths: 3300,
                ..lot(
                    "Shops behind parking",
                    LandUse::Business,
                    (38.0, 78.0),
                    [243, 630],
                    &[(Shop, 720, SHOP_JOBS)],
                )
            },
        ),
        (
            STRIP_OFFICES,
            BuildingType {
                parking_per_lot_hundredths: 3600,
                ..lot(
                    "Offices behind parking",
                    LandUse::Business,
                    (38.0, 78.0),
                    [182, 660],
                    &[(Work, 540, WORKROOM_JOBS), (Work, 540, OFFICE_JOBS)],
                )
            },
        ),
        (
            OLDER_HOUSE,
            BuildingType {
                homes_per_lot: 1,
                persons_per_home_thousandths: DETACHED_PERSONS,
                parking_per_lot_hundredths: 300,
                envelope: EnvelopeClass::Older,
                ..lot(
                    "Older house",
                    LandUse::Residential,
                    (20.0, 32.0),
                    [250, 180],
                    &[(Home, 150, 0)],
                )
            },
        ),
        (
            HOUSE_AND_COTTAGE,
            BuildingType {
                homes_per_lot: 2,
                persons_per_home_thousandths: ATTACHED_PERSONS,
                parking_per_lot_hundredths: 300,
                envelope: EnvelopeClass::Older,
                price_band: PriceBand::Lower,
                ..lot(
                    "Older house, cottage behind",
                    LandUse::Residential,
                    (20.0, 32.0),
                    [340, 190],
                    &[(Home, 205, 0)],
                )
            },
        ),
        (
            WORN_STRIP,
            BuildingType {
                parking_per_lot_hundredths: 3600,
                envelope: EnvelopeClass::Older,
                price_band: PriceBand::Lower,
                ..lot(
                    "Shops behind parking, worn out",
                    LandUse::Business,
                    (38.0, 78.0),
                    [236, 700],
                    &[(Shop, 700, SHOP_JOBS)],
                )
            },
        ),
    ]);
    types
}

/// A building type without homes or parking: its lot (width, depth), thousandths of it built and paved (the rest is
/// planted), and its stories with use, square meters and jobs per hectare.
fn lot(
    name: &str,
    land_use: LandUse,
    (width_m, depth_m): (f64, f64),
    [coverage, paved]: [u16; 2],
    stories: &[(FloorUse, u32, u32)],
) -> BuildingType {
    let height_mm = |floor_use| if floor_use == FloorUse::Home { 3048 } else { 3962 };
    BuildingType {
        name: name.to_owned(),
        land_use,
        lot_width_mm: (width_m * 1000.0).round() as u32,
        lot_depth_mm: (depth_m * 1000.0).round() as u32,
        stories: stories
            .iter()
            .map(|&(floor_use, floor_area_m2, jobs_per_floor_hectare)| Story {
                floor_use,
                floor_area_m2,
                height_mm: height_mm(floor_use),
                jobs_per_floor_hectare,
            })
            .collect(),
        homes_per_lot: 0,
        persons_per_home_thousandths: 0,
        coverage_thousandths: coverage,
        paved_thousandths: paved,
        planted_thousandths: 1000 - coverage - paved,
        parking_per_lot_hundredths: 0,
        envelope: EnvelopeClass::Code,
        price_band: PriceBand::Middle,
    }
}
