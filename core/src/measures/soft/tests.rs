use crate::order::OrderedMap;

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
    let marks: OrderedMap<MarkId, Mark> = (0..).map(MarkId).zip(marks).collect();
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
    let elsewhere = || soft(rectangle(300, 20, 580, 380), 1_000_000);
    assert_eq!(taken_at(vec![elsewhere(), street(&BLOCK)], p(150, 130)), None);
    assert_eq!(
        taken_at(vec![elsewhere(), area(), street(&BLOCK)], p(150, 130)),
        Some(1)
    );
}

#[test]
fn more_than_half_of_a_block_decides() {
    let block = |east: i32| {
        taken_at(
            vec![soft(rectangle(20, 20, east, 380), 1_000_000), street(&BLOCK)],
            p(190, 130),
        )
    };
    assert_eq!((block(149), block(150), block(151)), (None, None, Some(0)));
    // An area within the block holds too little of it, and one that is small but holds most of it enough.
    let within = |area: Vec<PlanPoint>| taken_at(vec![soft(area, 1_000_000), street(&BLOCK)], p(150, 130));
    assert_eq!(within(rectangle(110, 110, 130, 130)), None);
    assert_eq!(within(rectangle(105, 105, 195, 155)), Some(0));
    assert_eq!(within(rectangle(100, 100, 200, 160)), Some(0));
}

#[test]
fn portions_carry_the_intensity() {
    let Mark::SoftArea(area) = soft(Vec::new(), 500_000) else {
        unreachable!("a soft area was made");
    };
    let shares: Vec<u32> = portions(&area).iter().map(|portion| portion.share_ppm).collect();
    assert_eq!(shares, [350_000, 150_000]);
}

/// Case D-A11. A town's subdivision rule, Mathematical determination of yield, read: a parcel of 100 acres, 60 of them
/// developable, less 30 percent for infrastructure, in lots of 2 acres: 42 acres and 21 lots.
#[test]
fn a_soft_area_yields_what_the_rule_says() {
    use crate::measures::form::tests::{check, measured, number, plan, portions_of, rectangle_ft};
    use crate::plan::land::{ConstraintArea, ConstraintKind};
    let parcel = rectangle_ft(0, 0, 2_640, 1_650);
    let wet = Mark::Constraint(ConstraintArea {
        name: String::new(),
        outline: rectangle_ft(0, 0, 2_640, 660),
        kind: ConstraintKind::Wetland,
        is_buildable: false,
        counts_in_site: true,
        counts_in_buildable: false,
        is_walkable: true,
    });
    let soft = Mark::SoftArea(SoftArea {
        outline: parcel.clone(),
        program: portions_of(&[(0, 100)]),
        land_use: LandUse::Residential,
        intensity_ppm: 1_000_000,
        phase: None,
    });
    let mut document = plan(parcel, vec![wet, soft]);
    let held = document.building_types.get_mut(&BuildingTypeId(0)).unwrap();
    // 264 by 330 feet, to the millimeter.
    (held.lot_width_mm, held.lot_depth_mm) = (80_467, 100_584);
    let evaluation = measured(&document);
    let index = evaluation.graph().index("land.lots_in_soft_areas").unwrap();
    let acres = evaluation.cell(index, 0).number().unwrap() / 4_046.856_422_4;
    check("land that becomes lots", acres, 42.0, 1e-9);
    check("lots and homes", number(&evaluation, "homes.soft"), 21.0, 1e-3);
    check("homes", number(&evaluation, "homes.count"), 21.0, 1e-3);
}

#[test]
fn rough_figures_give_way_to_the_blocks_drawn_inside() {
    use crate::measures::form::tests::{at, measured, number};
    let area = || soft(rectangle(20, 20, 580, 380), 1_000_000);
    let (before, _) = plan(vec![area()]);
    let (after, fabric) = plan(vec![area(), street(&BLOCK)]);
    let (before, after) = (measured(&before), measured(&after));
    let land = |evaluation: &crate::figures::Evaluation| at(evaluation, "land.soft", "mark_0");
    assert!((land(&before) - 560.0 * 360.0).abs() < 1e-6);
    // The street and the block within it are no longer the soft area's.
    let width_m = f64::from(fabric.lines.streets[0].right_of_way_mm) / 1e3;
    let taken = (100.0 + width_m) * (60.0 + width_m);
    assert!(
        (land(&before) - land(&after) - taken).abs() < 1e-3,
        "{}",
        land(&before) - land(&after)
    );
    let homes =
        |evaluation: &crate::figures::Evaluation| ["homes.soft", "homes.count"].map(|id| number(evaluation, id));
    assert_eq!(homes(&before)[0].to_bits(), homes(&before)[1].to_bits());
    assert!(homes(&before)[0] > 500.0, "{}", homes(&before)[0]);
    assert!(homes(&after)[0] < homes(&after)[1] && homes(&after)[1] < homes(&before)[1]);
}

#[test]
fn without_a_boundary_a_soft_area_is_the_site() {
    use crate::measures::form::tests::{at, measured, number};
    let site = |marks: Vec<Mark>| {
        let (mut document, _) = plan(marks);
        document.site = Site::default();
        let evaluation = measured(&document);
        (number(&evaluation, "land.site"), at(&evaluation, "land.soft", "mark_0"))
    };
    let area = || soft(rectangle(0, 0, 100, 100), 1_000_000);
    assert_eq!(site(vec![area()]), (10_000.0, 10_000.0));
    // A dead end of 20 m into it takes its width, and half of it again at its head.
    let (document, fabric) = plan(vec![area(), street(&[(50, -30), (50, 20)])]);
    let width_m = f64::from(fabric.lines.streets[0].right_of_way_mm) / 1e3;
    let (site, land) = site(document.alternatives[&ONLY].marks.values().cloned().collect());
    let expected = 10_000.0 - width_m * (20.0 + width_m / 2.0);
    assert!((land - expected).abs() < 1e-3, "{land}, by hand {expected}");
    assert!((site - land).abs() < 1e-9, "{site}");
}

#[test]
fn doubt_about_rough_homes_shows_in_all_homes() {
    use crate::figures::range::Range;
    use crate::measures::form::tests::measured;
    let (document, _) = plan(vec![soft(rectangle(20, 20, 580, 380), 1_000_000)]);
    let mut evaluation = measured(&document);
    let index = evaluation.graph().index("homes.count").unwrap();
    let value = evaluation.cell(index, 0).number().unwrap();
    let Range::Likely { low, high, .. } = evaluation.range(index, 0) else {
        panic!("homes of a soft area are in doubt");
    };
    assert!(
        (low / value - 0.6 / 0.7).abs() < 0.02 && (high / value - 0.8 / 0.7).abs() < 0.02,
        "{low} {value} {high}"
    );
    let leading = &evaluation.sensitivity(index, 0).unwrap().influences[0];
    assert_eq!(leading.id, "land.lot_yield_share");
}
