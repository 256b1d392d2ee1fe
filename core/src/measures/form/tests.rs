//! Small plans of land alone, and all that is counted on them.

use super::*;
use crate::fabric::LandCache;
use crate::figures::Evaluation;
use crate::figures::leaf::Cell;
use crate::measures;
use crate::measures::count::count;
use crate::measures::density::PRICE_BANDS;
use crate::measures::frontage::{PaintedCache, painted_faces};
use crate::measures::land::{CONSTRAINT_KINDS, parts};
use crate::measures::program::HomesAsked;
use crate::measures::streets::StreetInputs;
use crate::measures::walk::Walks;
use crate::plan::document::{Alternative, Site, Target, TargetKind};
use crate::plan::land::Portion;
use crate::plan::projection::GeographicPoint;
use crate::plan::street::{Status, StreetOwner};
use crate::plan::{
    Mark, MarkId, PlanPoint, Street, StreetRole, StreetSection, StreetSectionId, Strip, StripKind, UseMark, Vertex,
};

pub(crate) const ONLY: AlternativeId = AlternativeId(0);

/// Land of the invented village of [`measures::tests::village`]: 10 ha, its three building types, and a program.
pub(crate) fn village() -> FormInputs {
    let mut form = FormInputs::without_land(3);
    let parts_m2 = &mut form.land.parts_m2;
    // Homes, shops and work, civic and green of blocks; green and water held back; streets; land without a use.
    for (part, source, land_m2) in [
        (0, 2, 52_000.0),
        (1, 2, 6_000.0),
        (2, 2, 2_000.0),
        (3, 2, 9_000.0),
        (3, 1, 4_000.0),
        (4, 1, 3_000.0),
        (5, 0, 21_000.0),
        (6, 5, 3_000.0),
    ] {
        parts_m2[part][source] = land_m2;
    }
    form.land.constraints_m2[0] = [3_000.0, 3_000.0, 3_000.0, 3_000.0, 3_000.0];
    form.land.constraints_m2[2] = [4_500.0, 4_000.0, 0.0, 4_000.0, 0.0];
    form.land.open_space_m2 = [6_500.0, 2_500.0, 0.0, 4_000.0, 0.0, 0.0];
    form.land.has_boundary = true;
    form.density.phases = vec![Entry::new("phase_0", "first"), Entry::new("phase_1", "second")];
    form.density.land_left_m2 = 1_230.5;
    let lots = [
        (42_750.0, 450.0, [60.0, 35.0]),
        (14_400.0, 180.0, [80.0, 0.0]),
        (3_120.0, 240.0, [0.0, 13.0]),
    ];
    for (place, (held, (land_m2, typical_m2, by_phase))) in form.density.types.iter_mut().zip(lots).enumerate() {
        *held = LotInput {
            land_m2,
            typical_m2,
            groups: [true, place > 0, true, place == 2, false],
            planted_share: 0.4,
            parking_per_lot: [2.0, 1.5, 4.0][place],
            price_band: 2 - place,
            lots_by_phase: by_phase.to_vec(),
        };
        form.soft.lots_per_m2[place] = 1.0 / typical_m2;
    }
    form.program = ProgramInputs {
        asked: [
            Some(250.0),
            Some(1_000.0),
            Some(2_000.0),
            Some(40.0),
            Some(10_000.0),
            Some(400.0),
        ],
        homes_of: vec![HomesAsked {
            entry: Entry::new("row", "row house"),
            homes: 90.0,
            is_type: vec![false, true, false],
        }],
    };
    form
}

/// A point in feet.
pub(crate) fn feet(x: i32, y: i32) -> PlanPoint {
    // A foot is 304.8 mm, so five feet are whole millimeters.
    assert_eq!((x % 5, y % 5), (0, 0));
    PlanPoint::new(x / 5 * 1_524, y / 5 * 1_524)
}

pub(crate) fn rectangle_ft(west: i32, south: i32, east: i32, north: i32) -> Vec<PlanPoint> {
    vec![
        feet(west, south),
        feet(east, south),
        feet(east, north),
        feet(west, north),
    ]
}

/// A plan with this site boundary and these marks; street sections are named by their width in feet.
pub(crate) fn plan(boundary: Vec<PlanPoint>, marks: Vec<Mark>) -> Document {
    let origin = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    let mut document = Document::new("Invented", origin);
    document.site = Site { boundary };
    document.street_sections = [0, 50, 60]
        .map(|width_ft: u32| (StreetSectionId(width_ft), section_ft(width_ft)))
        .into();
    let alternative = Alternative {
        marks: (0..).map(MarkId).zip(marks).collect(),
        ..Alternative::default()
    };
    document.alternatives = [(ONLY, alternative)].into();
    document
}

fn section_ft(width_ft: u32) -> StreetSection {
    StreetSection {
        name: format!("{width_ft} ft"),
        strips: vec![Strip {
            kind: StripKind::Travel,
            width_mm: width_ft / 5 * 1_524,
        }],
        target_speed_km_h: 30,
        walkable: true,
        cyclable: true,
        drivable: true,
        fronts_left: true,
        fronts_right: true,
    }
}

pub(crate) fn street(points: &[PlanPoint], width_ft: u32) -> Mark {
    Mark::Street(Street {
        line: points.iter().map(|point| Vertex::at(*point)).collect(),
        section: StreetSectionId(width_ft),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    })
}

/// A use mark; portions are a building type and its share in percent.
pub(crate) fn use_at(anchor: PlanPoint, portions: &[(u32, u32)]) -> Mark {
    Mark::Use(UseMark {
        anchor,
        program: portions_of(portions),
        land_m2: 0,
        sides: Vec::new(),
        phase: None,
    })
}

pub(crate) fn portions_of(portions: &[(u32, u32)]) -> Vec<Portion> {
    let portion = |(building_type, percent): &(u32, u32)| Portion {
        building_type: BuildingTypeId(*building_type),
        share_ppm: percent * 10_000,
    };
    portions.iter().map(portion).collect()
}

/// Everything measured on a plan without a center.
pub(crate) fn measured(document: &Document) -> Evaluation {
    let fabric = Fabric::of(document, ONLY, &mut LandCache::default());
    let painted = painted_faces(document, ONLY, &fabric, &mut PaintedCache::default());
    let streets = StreetInputs::of(document, ONLY, &fabric, &painted);
    let form = FormInputs::count(document, ONLY, &fabric, &painted, &mut ClaimCache::default());
    let walks = Walks::of(document, ONLY, &fabric, &painted).unwrap();
    measures::tests::evaluated(&count(document, &painted, &walks, streets, form))
}

/// The number of a single figure.
#[track_caller]
pub(crate) fn number(evaluation: &Evaluation, id: &str) -> f64 {
    match evaluation.value(id) {
        Some(Cell::Number(value)) => value,
        other => panic!("{id}: {other:?}"),
    }
}

/// The number of a table at an entry of its only axis.
#[track_caller]
pub(crate) fn at(evaluation: &Evaluation, id: &str, entry: &str) -> f64 {
    let index = evaluation.graph().index(id).unwrap_or_else(|| panic!("no figure {id}"));
    let cells = 0..evaluation.cell_count(index);
    let cell = cells.clone().find(|cell| evaluation.place(index, *cell)[0].id == entry);
    let cell = cell.unwrap_or_else(|| panic!("no entry {entry} in {id}"));
    evaluation.cell(index, cell).number().unwrap()
}

#[track_caller]
pub(crate) fn check(what: &str, value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value - expected).abs() <= tolerance,
        "{what}: {value}, by hand {expected}"
    );
}

#[test]
fn the_villages_land_and_program_are_those_worked_by_hand() {
    let evaluation = measures::tests::evaluated(&measures::tests::village());
    let check = |id: &str, expected: f64| check(id, number(&evaluation, id), expected, 1e-9 * expected.abs());
    check("land.site", 100_000.0);
    check("land.right_of_way", 21_000.0);
    check("land.held_back", 7_000.0);
    check("land.buildable", 72_000.0);
    check("density.site_land", 97_000.0);
    check("density.buildable_land", 72_000.0);
    check("density.homes_per_site", 214.0 / 97_000.0);
    check("density.homes_per_buildable", 214.0 / 72_000.0);
    check(
        "density.homes_per_residential_lots",
        214.0 / (42_750.0 + 14_400.0 + 3_120.0),
    );
    // Work, shops and schools on rows and shop houses, by the land of those lots.
    let other = 80.0 * 10.0 + 13.0 * (60.0 + 90.0 + 20.0);
    check("density.floor_area_ratio", other / (14_400.0 + 3_120.0));
    let all = other + 95.0 * 110.0 + 80.0 * 120.0 + 13.0 * 240.0;
    check("density.floor_area_ratio_all", all / (42_750.0 + 14_400.0 + 3_120.0));
    let alike = 95.0 * 95.0 + 80.0 * 80.0 + 39.0 * 39.0;
    check("homes.type_diversity", 1.0 - alike / (214.0 * 214.0));
    check("homes.of_asked", 214.0 / 250.0);
    check("program.left.homes", 36.0);
    check("program.left.shop_floor", 1_000.0 - 13.0 * 90.0);
    check("program.drawn.work_floor", 80.0 * 10.0 + 13.0 * 60.0);
    check("program.drawn.school_seats", 13.0 * 20.0 / 9.0);
    check("program.drawn.park_land", 9_000.0);
    check("program.drawn.parking", 190.0 + 120.0 + 52.0);
    for (id, entry, expected) in [
        ("land.bar", "green", 13_000.0),
        ("land.bar_share", "water", 0.03),
        ("homes.by_price_band", "upper", 95.0),
        ("homes.by_price_band", "lower", 39.0),
        ("land.open_space", "in_lots", 0.4 * 60_270.0),
        ("land.open_space", "held_back", 4_000.0),
        ("program.left.homes_of", "row", 10.0),
    ] {
        super::tests::check(id, at(&evaluation, id, entry), expected, 1e-9 * expected);
    }
    let parts: f64 = parts()
        .iter()
        .map(|(part, _)| at(&evaluation, "land.bar_share", part))
        .sum();
    super::tests::check("shares", parts, 1.0, 1e-12);
    assert_eq!((CONSTRAINT_KINDS, PRICE_BANDS), (9, 3));
}

#[test]
fn what_the_program_does_not_ask_for_is_told_and_drawn_all_the_same() {
    let mut measured = measures::tests::village();
    measured.form.program = ProgramInputs::default();
    let evaluation = measures::tests::evaluated(&measured);
    assert_eq!(
        evaluation.value("homes.of_asked"),
        Some(Cell::Unknown("the program does not ask for homes".to_owned()))
    );
    check("homes", number(&evaluation, "program.drawn.homes"), 214.0, 0.0);
}

#[test]
fn the_same_asked_twice_is_one_and_types_stand_in_for_all() {
    let mut document = plan(Vec::new(), Vec::new());
    let target = |what, asked| Target { what, asked };
    document.program = vec![
        target(TargetKind::HomesOf(BuildingTypeId(3)), 20),
        target(TargetKind::ParkingSpaces, 5),
        target(TargetKind::HomesOf(BuildingTypeId(0)), 30),
        target(TargetKind::HomesOf(BuildingTypeId(3)), 10),
    ];
    let program = ProgramInputs::of(&document, &Palette::of(&document, ONLY));
    assert_eq!(program.asked, [Some(60.0), None, None, None, None, Some(5.0)]);
    let types: Vec<(&str, f64)> = program
        .homes_of
        .iter()
        .map(|one| (one.entry.id.as_str(), one.homes))
        .collect();
    assert_eq!(types, [("type_0", 30.0), ("type_3", 30.0)]);
    document.program.push(target(TargetKind::Homes, 100));
    assert_eq!(
        ProgramInputs::of(&document, &Palette::of(&document, ONLY)).asked[0],
        Some(100.0)
    );
}

/// A block of 300 by 250 m between centerlines holds a row of small lots along each side, and most of it is in none; the
/// same land as a park is never divided.
#[test]
fn land_that_lots_do_not_reach_is_told() {
    use crate::measures::streets::test_plans::{self, land, street};
    let left_m2 = |building_type| {
        let ring = street(&[(0, 0), (300, 0), (300, 250), (0, 250), (0, 0)]);
        let document = test_plans::plan(&[ring], &[land((150, 125), building_type)], &[]);
        let fabric = test_plans::fabric_of(&document);
        let painted = test_plans::painted(&document, &fabric);
        let face = painted.first().expect("the block");
        let pieces = crate::fabric::lots::twice_area_of_pieces(face.laid.left.pieces()) as f64 / 2e6;
        (density_inputs(&document, &painted).land_left_m2, pieces)
    };
    let (told, drawn) = left_m2(0);
    assert!(told > 30_000.0 && told < 60_000.0, "{told}");
    // The strips along fronts that are taken from what is drawn as left are 20 mm wide.
    assert!(
        (told - drawn).abs() < 0.02 * 1_100.0 + 1.0,
        "{told} told, {drawn} drawn"
    );
    assert!(left_m2(13).0 <= 0.0);
}
