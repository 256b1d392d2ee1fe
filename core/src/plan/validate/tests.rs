use super::*;
use crate::plan::document::{BaseImage, FactorOverride, Target, TargetKind, Topography};
use crate::plan::fixtures::street;
use crate::plan::land::{ConstraintArea, ConstraintKind, Note, Portion, SiteAccess, UseMark};
use crate::plan::mark::Mark;
use crate::plan::projection::GeographicPoint;
use crate::plan::street::Tie;

const ALTERNATIVE: AlternativeId = AlternativeId(0);

fn plan() -> Document {
    Document::new(
        "Test",
        GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        },
    )
}

fn add(document: &mut Document, id: u32, mark: Mark) {
    document
        .alternatives
        .get_mut(&ALTERNATIVE)
        .unwrap()
        .marks
        .insert(MarkId(id), mark);
}

#[track_caller]
fn check(document: &Document, expected: &[&str]) {
    let sentences: Vec<String> = validate(document).iter().map(ToString::to_string).collect();
    assert_eq!(sentences, expected);
}

/// The fault of one outline, as its kind.
fn outline_fault(points: &[(i32, i32)]) -> Option<FaultKind> {
    let mut document = plan();
    document.site.boundary = points.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect();
    let faults = validate(&document);
    assert!(faults.len() <= 1, "{faults:?}");
    faults.into_iter().next().map(|fault| fault.kind)
}

#[test]
fn a_new_plan_has_no_faults() {
    check(&plan(), &[]);
}

#[test]
fn outlines_are_judged_exactly() {
    assert_eq!(outline_fault(&[(0, 0), (10, 0), (10, 10), (0, 10)]), None);
    assert_eq!(outline_fault(&[(0, 0), (0, 10), (10, 10), (10, 0), (0, 0)]), None);
    assert_eq!(outline_fault(&[(0, 0), (0, 0), (10, 0), (10, 10), (10, 10)]), None);
    assert_eq!(
        outline_fault(&[(0, 0), (10, 0), (0, 0)]),
        Some(FaultKind::TooFewCorners)
    );
    assert_eq!(outline_fault(&[(0, 0), (10, 0), (20, 0)]), Some(FaultKind::NoArea));
    assert_eq!(
        outline_fault(&[(0, 0), (10, 10), (10, 0), (0, 10)]),
        Some(FaultKind::CrossesItself)
    );
    // A spike, a touching corner and an edge through a corner.
    assert_eq!(
        outline_fault(&[(0, 0), (10, 0), (20, 0), (10, 0), (10, 10)]),
        Some(FaultKind::CrossesItself)
    );
    assert_eq!(
        outline_fault(&[(0, 0), (10, 0), (5, 5), (10, 10), (0, 10), (5, 5)]),
        Some(FaultKind::CrossesItself)
    );
    assert_eq!(
        outline_fault(&[(0, 0), (10, 0), (10, 10), (5, 0), (0, 10)]),
        Some(FaultKind::CrossesItself)
    );
    assert_eq!(
        outline_fault(&[(0, 0), (i32::MAX, 0), (0, 9)]),
        Some(FaultKind::BeyondLimit)
    );
}

#[test]
fn self_crossing_agrees_with_comparing_all_pairs_in_a_known_figure() {
    // A star pentagon crosses itself, its hull does not.
    let star = [(0, 100), (59, -81), (-95, 31), (95, 31), (-59, -81)];
    assert_eq!(outline_fault(&star), Some(FaultKind::CrossesItself));
    assert_eq!(outline_fault(&[star[0], star[3], star[1], star[4], star[2]]), None);
}

#[test]
fn marks_are_judged_with_their_place() {
    let mut document = plan();
    add(&mut document, 1, Mark::Street(street(&[(5, 5), (5, 5)])));
    let mut unknown = street(&[(0, 0), (9_000, 0)]);
    unknown.section = StreetSectionId(99);
    unknown.phase = Some(PhaseId(7));
    add(&mut document, 2, Mark::Street(unknown));
    let portion = |share_ppm: u32| Portion {
        building_type: BuildingTypeId(0),
        share_ppm,
    };
    let program = vec![portion(600_000), portion(400_001)];
    add(
        &mut document,
        3,
        Mark::Use(UseMark {
            anchor: PlanPoint::new(0, 0),
            program,
            land_m2: 0,
            sides: Vec::new(),
            phase: None,
        }),
    );
    for id in 4..6 {
        let outside_trips_ppm = Some(600_000);
        add(
            &mut document,
            id,
            Mark::SiteAccess(SiteAccess {
                name: String::new(),
                at: PlanPoint::new(0, 0),
                outside_trips_ppm,
            }),
        );
    }
    let note = Note {
        votes: 3,
        present: 2,
        ..Note::default()
    };
    add(&mut document, 6, Mark::Note(note));
    check(
        &document,
        &[
            "alternative 0: shares of outside trips must not exceed a whole",
            "mark 1 of alternative 0 at 0.005 m east, 0.005 m north: a line needs two points apart from each other",
            "mark 2 of alternative 0: there is no street section 99",
            "mark 2 of alternative 0: there is no phase 7",
            "mark 3 of alternative 0: shares of the program must not exceed a whole",
            "mark 6 of alternative 0: has more votes than people present",
        ],
    );
}

#[test]
fn ties_are_judged() {
    let mut document = plan();
    let tied = |to: u32, segment: u32, start: (i32, i32)| {
        let mut body = street(&[start, (7_000, 7_000)]);
        body.line[0].tie = Some(Tie {
            street: MarkId(to),
            segment,
            along_ppb: 500_000_000,
        });
        Mark::Street(body)
    };
    add(&mut document, 1, Mark::Street(street(&[(0, 0), (1000, 0)])));
    add(&mut document, 2, tied(1, 0, (500, 0)));
    add(&mut document, 3, tied(1, 0, (501, 0)));
    add(&mut document, 4, tied(1, 1, (500, 0)));
    add(&mut document, 5, tied(50, 0, (500, 0)));
    for (id, to) in [(6, 7), (7, 6)] {
        let mut body = street(&[(9_000, 0), (7_000, 7_000)]);
        body.line[0].tie = Some(Tie {
            street: MarkId(to),
            segment: 0,
            along_ppb: 0,
        });
        add(&mut document, id, Mark::Street(body));
    }
    check(
        &document,
        &[
            "mark 3 of alternative 0 at 0.501 m east, 0 m north: does not stand where it is tied to street 1",
            "mark 4 of alternative 0 at 0.5 m east, 0 m north: tied beyond the end of street 1",
            "mark 5 of alternative 0 at 0.5 m east, 0 m north: tied to street 50, which is not there",
            "mark 7 of alternative 0: tied in a circle through street 6",
        ],
    );
}

#[test]
fn parts_without_geometry_are_judged() {
    let mut document = plan();
    document.heading.origin_latitude_ndeg = 90_000_000_000;
    document.program = vec![
        Target {
            what: TargetKind::HomesOf(BuildingTypeId(77)),
            asked: 1,
        },
        Target {
            what: TargetKind::Homes,
            asked: 1,
        },
        Target {
            what: TargetKind::Homes,
            asked: 2,
        },
    ];
    document
        .street_sections
        .get_mut(&StreetSectionId(0))
        .unwrap()
        .strips
        .clear();
    let house = document.building_types.get_mut(&BuildingTypeId(0)).unwrap();
    house.lot_width_mm = 0;
    house.paved_thousandths = 1000;
    house.stories.clear();
    document.settings.chosen.insert("a".to_owned(), f64::NAN);
    let factor = |low: f64| FactorOverride {
        low,
        typical: 1.0,
        high: 2.0,
        source: String::new(),
    };
    document.settings.overridden_factors.insert("b".to_owned(), factor(1.5));
    document
        .settings
        .overridden_factors
        .insert("c".to_owned(), factor(f64::INFINITY));
    document.settings.rule_lists = vec!["r".to_owned(), "r".to_owned()];
    document.topography = Some(Topography {
        south_west: PlanPoint::new(0, 0),
        spacing_mm: 0,
        columns: 2,
        heights_mm: vec![1, 2, 3],
        source: String::new(),
    });
    document.base_image = Some(BaseImage {
        name: String::new(),
        media_type: "text/plain".to_owned(),
        corners: [PlanPoint::new(0, 0); 4],
        opacity_thousandths: 1001,
        bytes: [1].into(),
    });
    check(
        &document,
        &[
            "plan: the origin must lie within 180 degrees of longitude and 89 of latitude",
            "program line 1: there is no building type 77",
            "program line 3: an earlier line asks for the same",
            "street section 0: has no strips",
            "building type 0: covered, paved and planted shares of the lot must not exceed a whole",
            "building type 0: lot width must be more than 0",
            "building type 0: has homes and no floor area for them",
            "setting a: must be a finite number",
            "setting b: low, typical and high must rise in this order",
            "setting c: must be a finite number",
            "setting r: is named twice",
            "topography: spacing of heights must be more than 0",
            "topography: 3 heights do not fill whole rows of 2",
            "base image: opacity must not exceed a whole",
            "base image: holds no image",
        ],
    );
    document.alternatives.clear();
    assert!(
        validate(&document)
            .iter()
            .any(|fault| fault.kind == FaultKind::NoAlternative)
    );
}

#[test]
fn a_mark_id_used_twice_is_named() {
    let mut document = plan();
    let area = Mark::Constraint(ConstraintArea {
        name: String::new(),
        outline: [(0, 0), (9, 0), (9, 9)].map(|(x, y)| PlanPoint::new(x, y)).into(),
        kind: ConstraintKind::Water,
        is_buildable: false,
        counts_in_site: false,
        counts_in_buildable: false,
        is_walkable: false,
    });
    add(&mut document, 1, area);
    let copy = document.alternatives[&ALTERNATIVE].clone();
    document.alternatives.insert(AlternativeId(1), copy);
    check(
        &document,
        &["mark 1 of alternative 1: its id is also used in alternative 0"],
    );
    assert_eq!(validate(&document)[0].severity(), Severity::ShouldBeMended);
}
