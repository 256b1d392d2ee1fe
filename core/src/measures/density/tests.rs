use super::*;
use crate::measures;
use crate::measures::form::tests::{check, number};

const SQUARE_FOOT_M2: f64 = 0.092_903_04;

#[track_caller]
fn check_diversity(counts: &[f64], expected: f64, tolerance: f64) {
    let mut result = [f64::NAN];
    (DIVERSITY.evaluate)(&[counts], &mut result).unwrap();
    check("diversity", result[0], expected, tolerance);
}

/// Case U-A1. A field-studies center's worked example of Simpson's diversity, read: counts 15, 10, 104, 42, 55, 22, 9, 7,
/// 17 give 0.79 (its 0.2126 within should be 0.2132).
#[test]
fn diversity_is_that_of_the_worked_example() {
    check_diversity(&[15.0, 10.0, 104.0, 42.0, 55.0, 22.0, 9.0, 7.0, 17.0], 0.787, 0.001);
}

/// Case U-A2. Derived from LEED v4 for Neighborhood Development, credit Housing types and affordability: 0.70 exactly, so
/// that the band from 0.7 is reached.
#[test]
fn diversity_meets_a_threshold_exactly() {
    let mut result = [f64::NAN];
    (DIVERSITY.evaluate)(&[&[120.0, 90.0, 60.0, 30.0]], &mut result).unwrap();
    assert!(result[0] >= 0.7);
    check_diversity(&[120.0, 90.0, 60.0, 30.0], 0.7, 1e-12);
}

#[test]
fn one_type_has_no_diversity_and_no_homes_have_none_to_tell() {
    check_diversity(&[80.0, 0.0], 0.0, 0.0);
    check_diversity(&[7.0; 4], 0.75, 0.0);
    let mut result = [0.0];
    assert_eq!(
        (DIVERSITY.evaluate)(&[&[0.0, 0.0]], &mut result),
        Err("no homes are drawn".to_owned())
    );
}

/// One building type, on so many lots.
fn of_one_type(
    lots: f64,
    homes_per_lot: f64,
    people_per_home: f64,
    work_m2: f64,
    lot_m2: f64,
) -> crate::figures::Evaluation {
    let mut measured = measures::tests::village();
    measured.building_types.truncate(1);
    let held = &mut measured.building_types[0];
    held.homes_per_lot = homes_per_lot;
    held.people_per_home = people_per_home;
    held.floor_per_lot_m2 = [0.0, work_m2, 0.0, 0.0, 0.0];
    measured.lots = vec![vec![lots, 0.0, 0.0, 0.0]];
    measured.form.density.types.truncate(1);
    let held = &mut measured.form.density.types[0];
    held.land_m2 = lots * lot_m2;
    held.groups = [homes_per_lot > 0.0, work_m2 > 0.0, true];
    held.lots_by_phase = vec![lots, 0.0];
    measured.form.soft.lots_per_m2.truncate(1);
    measured.form.soft.is_park.truncate(1);
    measured.form.program.homes_of.clear();
    measures::tests::evaluated(&measured)
}

/// Case D-A8. Derived from the definition: a lot of 10,000 square feet, 60 percent covered by three equal stories, has a
/// floor-area ratio of 1.80.
#[test]
fn floor_area_ratio_is_floor_by_lot() {
    let evaluation = of_one_type(3.0, 0.0, 0.0, 18_000.0 * SQUARE_FOOT_M2, 10_000.0 * SQUARE_FOOT_M2);
    for id in ["density.floor_area_ratio", "density.floor_area_ratio_all"] {
        check(id, number(&evaluation, id), 1.8, 1e-12);
    }
}

/// Case D-A9. 100 homes of 2.51 people, the average US household of 2023 (a search engine's extract), are 251 people.
#[test]
fn a_hundred_homes_are_251_people() {
    let evaluation = of_one_type(100.0, 1.0, 2.51, 0.0, 400.0);
    check("people", number(&evaluation, "people.count"), 251.0, 1e-9);
    check(
        "density",
        number(&evaluation, "density.homes_per_residential_lots"),
        1.0 / 400.0,
        1e-15,
    );
}
