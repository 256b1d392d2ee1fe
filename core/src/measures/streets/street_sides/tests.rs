use super::*;
use crate::factors::{Factors, Override};
use crate::figures::Evaluation;
use crate::measures;
use crate::measures::form::tests::{at, check, feet, measured, number, plan, rectangle_ft, street, use_at};
use crate::plan::building::Story;
use crate::plan::document::Topography;
use crate::plan::{BuildingTypeId, FloorUse, StreetSectionId, Strip};

/// Case N-A9. Derived from LEED v4 for Neighborhood Development, prerequisite Walkable streets, 1 to 1.5: a building of 30
/// feet encloses a street whose centerline is 45 feet from its front, and not one of 46 feet.
#[test]
fn thirty_feet_enclose_at_forty_five_and_not_at_forty_six() {
    const FOOT_MM: f64 = 304.8;
    assert!(encloses(30.0 * FOOT_MM, 45.0 * FOOT_MM));
    assert!(!encloses(30.0 * FOOT_MM, 46.0 * FOOT_MM));
    // Drawn: half the right-of-way, and the usual setback of 10 feet.
    let share = |half_mm: u32| {
        let corners = [feet(0, 0), feet(600, 0), feet(600, 300), feet(0, 300), feet(0, 0)];
        let marks = vec![street(&corners, 60), use_at(feet(300, 150), &[(0, 100)])];
        let mut document = plan(rectangle_ft(-100, -100, 700, 400), marks);
        let section = document.street_sections.get_mut(&StreetSectionId(60)).unwrap();
        section.strips[0].width_mm = 2 * half_mm;
        let held = document.building_types.get_mut(&BuildingTypeId(0)).unwrap();
        (held.lot_width_mm, held.lot_depth_mm, held.coverage_thousandths) = (12_000, 30_000, 300);
        held.stories = vec![Story {
            floor_use: FloorUse::Home,
            floor_area_m2: 90,
            height_mm: 9_144,
            jobs_per_floor_hectare: 0,
        }];
        let evaluation = measured(&document);
        number(&evaluation, "streets.enclosed") / number(&evaluation, "streets.frontage_total")
    };
    // 35 and 36 feet.
    let near = share(10_668);
    assert!(near > 0.25 && near <= 0.5, "the inner side, corners aside: {near}");
    check("at 46 feet", share(10_973), 0.0, 0.0);
}

/// A street of 600 feet with trees on both sides, and one of 400 feet without.
fn trees(spacing_m: Option<f64>) -> f64 {
    let marks = vec![
        street(&[feet(100, 100), feet(700, 100)], 60),
        street(&[feet(100, 300), feet(500, 300)], 50),
    ];
    let mut document = plan(rectangle_ft(0, 0, 800, 400), marks);
    let strip = |kind, width_mm| Strip { kind, width_mm };
    document.street_sections.get_mut(&StreetSectionId(60)).unwrap().strips = vec![
        strip(StripKind::Walk, 2_000),
        strip(StripKind::Planting, 2_000),
        strip(StripKind::Parking, 2_200),
        strip(StripKind::Travel, 6_000),
        strip(StripKind::Planting, 2_000),
        strip(StripKind::Walk, 2_000),
    ];
    if let Some(spacing_m) = spacing_m {
        document.settings.chosen.insert(TREE_SPACING.to_owned(), spacing_m);
    }
    number(&measured(&document), "streets.tree_lined_share")
}

/// Case N-A16. Derived from LEED v4 for Neighborhood Development, credit Tree-lined and shaded streetscapes: trees 50 feet
/// apart along 1,200 of 2,000 feet of block line 60 percent of it exactly, and 51 feet apart none. Twelve meters, which the
/// page prints beside 50 feet, would leave out the first.
#[test]
fn trees_fifty_feet_apart_line_a_street_and_fifty_one_do_not() {
    check("as drawn", trees(None), 0.6, 1e-9);
    check("50 feet", trees(Some(50.0 * 0.3048)), 0.6, 1e-9);
    check("51 feet", trees(Some(51.0 * 0.3048)), 0.0, 0.0);
}

#[test]
fn planting_counts_between_walk_and_traffic_on_its_own_hand() {
    let section = |kinds: &[StripKind]| {
        let strips = kinds.iter().map(|kind| Strip {
            kind: *kind,
            width_mm: 2_000,
        });
        StreetSection {
            strips: strips.collect(),
            ..plan(Vec::new(), Vec::new()).street_sections[&StreetSectionId(50)].clone()
        }
    };
    use StripKind::{Median, Parking, Planting, Travel, Walk};
    let one_sided = section(&[Walk, Planting, Parking, Travel, Travel, Walk, Planting]);
    assert_eq!(
        [Hand::Left, Hand::Right].map(|hand| is_lined(&one_sided, hand)),
        [true, false]
    );
    assert!(
        !is_lined(&section(&[Planting, Walk, Travel]), Hand::Left),
        "behind the walk"
    );
    assert!(
        !is_lined(&section(&[Walk, Travel, Planting, Travel]), Hand::Left),
        "beyond the traffic"
    );
    assert_eq!(carriageway_mm(&one_sided), 6_000);
    assert_eq!(carriageway_mm(&section(&[Walk, Travel, Median, Travel, Walk])), 6_000);
    assert_eq!(carriageway_mm(&section(&[Walk])), 0);
}

/// What a crossing 130 feet wide takes, its push-button 60 feet back, at this speed of clearance in feet per second.
fn crossing(clearance_speed: f64) -> Evaluation {
    let mut measured = measures::tests::village();
    measured.streets.sides.widest_crossing_m = Some(130.0 * 0.3048);
    let own = |typical: f64| Override {
        low: Some(typical),
        typical,
        high: Some(typical),
    };
    let own = [
        ("walking.crossing_design_speed", own(clearance_speed)),
        ("walking.push_button", own(60.0)),
    ];
    let factors = Factors::shipped().unwrap().with_overrides(own).unwrap();
    let inputs = measures::inputs(&measured, &factors).unwrap();
    Evaluation::new(std::sync::Arc::new(measures::graph().unwrap()), inputs, 1).unwrap()
}

/// Case W-A4. A road forum's example, which quotes the rule (MUTCD 2009, section 4E.06, paragraph 14), arithmetic checked: a
/// crossing of 130 feet with its push-button 60 feet back clears in 33 s at 4.0 feet per second, 40 s with 7 s to walk (the
/// 2003 edition); in 38 s at 3.5, and since all of it takes 64 s at 3.0 the walk is 26 s. All rounded up to whole seconds.
#[test]
fn a_signal_clears_and_walks_as_the_manual_asks() {
    let older = crossing(4.0);
    let clearance = number(&older, "walk.crossing_clearance").ceil();
    assert_eq!((clearance, clearance + LEAST_WALK_S), (33.0, 40.0));
    let present = crossing(3.5);
    check("clearance", number(&present, "walk.crossing_clearance"), 37.14, 0.01);
    check("all of it", number(&present, "walk.crossing_whole"), 63.33, 0.01);
    let [clearance, whole] = ["walk.crossing_clearance", "walk.crossing_whole"].map(|id| number(&present, id).ceil());
    assert_eq!((clearance, whole, whole - clearance), (38.0, 64.0, 26.0));
    check("walk", number(&present, "walk.crossing_walk"), 26.0, 0.5);
}

/// Case W-A10. Derived from the 2010 ADA Standards, 405.2, a ramp rises 1 in 12 at most, and the 1991 ones, 4.8.2, 30
/// inches in one run at most: 30 inches over 30 feet pass in one run, which is shorter than the pieces grades are taken
/// over; a little more does not.
#[test]
fn thirty_inches_over_thirty_feet_are_the_steepest_ramp() {
    let by_grade = |rise_mm: i32| {
        let mut document = plan(
            rectangle_ft(-50, -50, 80, 50),
            vec![street(&[feet(0, 0), feet(30, 0)], 0)],
        );
        // Ground that rises from west to east, 30 feet between samples.
        document.topography = Some(Topography {
            south_west: feet(0, 0),
            spacing_mm: 9_144,
            columns: 2,
            heights_mm: vec![0, rise_mm, 0, rise_mm],
            source: "made up".to_owned(),
        });
        let evaluation = measured(&document);
        ["up_to_1_in_20", "up_to_1_in_12", "steeper"].map(|grade| at(&evaluation, "streets.grade_share", grade))
    };
    assert!(30.0 * 0.3048 < LONGEST_PIECE_M);
    assert_eq!(by_grade(762), [0.0, 1.0, 0.0]);
    assert_eq!(by_grade(764), [0.0, 0.0, 1.0]);
    assert_eq!(by_grade(457), [1.0, 0.0, 0.0]);
    assert_eq!(by_grade(-459), [0.0, 1.0, 0.0]);
}

#[test]
fn without_ground_and_without_streets_there_are_reasons() {
    let evaluation = measured(&plan(rectangle_ft(0, 0, 800, 400), Vec::new()));
    let reason = |id: &str| {
        let index = evaluation.graph().index(id).unwrap();
        match evaluation.cell(index, 0) {
            Cell::Unknown(reason) => reason,
            Cell::Number(number) => panic!("{id} is {number}"),
        }
    };
    assert_eq!(
        reason("streets.length_by_grade"),
        "the height of the ground is not known"
    );
    assert_eq!(reason("walk.crossing_clearance"), "no street lies inside the site");
}
