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
fn one_type(lots: f64, homes_per_lot: f64, people_per_home: f64, work_m2: f64, lot_m2: f64) -> measures::MeasureInputs {
    let mut measured = measures::tests::village();
    measured.building_types.truncate(1);
    let held = &mut measured.building_types[0];
    held.homes_per_lot = homes_per_lot;
    held.people_per_home = people_per_home;
    held.floor_per_lot_m2 = [0.0, work_m2, 0.0, 0.0, 0.0];
    measured.form.density.types.truncate(1);
    let held = &mut measured.form.density.types[0];
    held.land_m2 = lots * lot_m2;
    held.groups = [
        homes_per_lot > 0.0,
        work_m2 > 0.0,
        true,
        false,
        homes_per_lot <= 0.0 && work_m2 > 0.0,
    ];
    held.lots_by_phase = vec![lots, 0.0];
    measured.form.soft.lots_per_m2.truncate(1);
    measured.form.soft.is_park.truncate(1);
    measured.form.program.homes_of.clear();
    measured
}

fn of_one_type(
    lots: f64,
    homes_per_lot: f64,
    people_per_home: f64,
    work_m2: f64,
    lot_m2: f64,
) -> crate::figures::Evaluation {
    measures::tests::evaluated(&one_type(lots, homes_per_lot, people_per_home, work_m2, lot_m2))
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

/// The second half of case D-A15. 1,141 households of 3.057 people are 3,488 people (Centerville, Minnesota, records, 2017
/// annual population estimate, page 74, published). Its first half stands beside the yardsticks, which ask who lives where.
#[test]
fn households_of_more_than_three_are_the_people_of_an_estimate() {
    let evaluation = of_one_type(1_141.0, 1.0, 3.057, 0.0, 400.0);
    check("D-A15", number(&evaluation, "people.count"), 3_488.0, 1.0);
}

/// Cases D-A12 and D-A13. Park land asked for by people is so much to a home of so many people: at 2 acres to 1,000 people
/// 310.15 square feet to a home of 3.56 and 243.94 to one of 2.80 (Anaheim, California, municipal code, park dedication per
/// unit, published), at 5 acres 74 homes of 2.7 to an acre (San Marcos, Texas, section 7.6.1.2, "Parkland Dedication
/// comparison", page 110, published). No figure is that quotient; people, homes and park land are figures, and must agree.
#[test]
fn park_land_by_people_is_what_codes_ask_of_a_home() {
    const ACRE_SQ_FT: f64 = 43_560.0;
    // Homes until they hold 1,000 people, beside parks and squares of so many acres together.
    let sq_ft_per_home = |people_per_home: f64, acres: f64| {
        let mut measured = one_type(1_000.0 / people_per_home, 1.0, people_per_home, 0.0, 400.0);
        let park_m2 = acres * ACRE_SQ_FT * SQUARE_FOOT_M2;
        measured.form.land.open_space_m2 = [park_m2 * 0.75, park_m2 * 0.25, 5e3, 6e3, 0.0, 0.0];
        let evaluation = measures::tests::evaluated(&measured);
        check("people", number(&evaluation, "people.count"), 1_000.0, 1e-9);
        number(&evaluation, "land.park_land") / SQUARE_FOOT_M2 / number(&evaluation, "homes.count")
    };
    check("D-A12, 3.56 people", sq_ft_per_home(3.56, 2.0), 310.15, 0.01);
    check("D-A12, 2.80 people", sq_ft_per_home(2.80, 2.0), 243.94, 0.01);
    check("D-A13", ACRE_SQ_FT / sq_ft_per_home(2.7, 5.0), 74.0, 0.5);
}

/// Cases D-A6, D-A7, D-A10 and D-A14. Jobs are floor area by the floor area per job that the building type says: offices at
/// 176 square feet per worker hold 5.68 jobs to 1,000 square feet (a survey of companies, 2012, read; the quotient derived);
/// 1,200 m² at 12 m² are 100 (HCA Employment Density Guide, 3rd edition, 2015, section 4, from memory; net floor by full-time
/// equivalents there); 25,000 gross square feet of office are 100 jobs and 11,000 of shops 20 (LEED v4, Appendix 2, table 1;
/// derived); 600,000 square feet at 600 to a job are 1,000 jobs (Metropolitan Council, Local Planning Handbook, "How to
/// Measure Employment Intensity and Capacity", published).
#[test]
fn jobs_are_floor_by_floor_per_job() {
    let jobs = |place: usize, floor_m2: f64, m2_per_job: f64| {
        let mut measured = one_type(1.0, 0.0, 0.0, 0.0, 400.0);
        let held = &mut measured.building_types[0];
        (held.floor_per_lot_m2, held.jobs_per_m2) = ([0.0; 5], [0.0; 4]);
        (held.floor_per_lot_m2[place + 1], held.jobs_per_m2[place]) = (floor_m2, 1.0 / m2_per_job);
        number(&measures::tests::evaluated(&measured), "jobs.count")
    };
    let sq_ft =
        |place, floor_sq_ft: f64, per_job: f64| jobs(place, floor_sq_ft * SQUARE_FOOT_M2, per_job * SQUARE_FOOT_M2);
    check("D-A6", sq_ft(0, 1_000.0, 176.0), 5.68, 0.01);
    check("D-A7", jobs(0, 1_200.0, 12.0), 100.0, 1e-9);
    check("D-A10, office", sq_ft(0, 25_000.0, 250.0), 100.0, 1e-9);
    check("D-A10, shops", sq_ft(1, 11_000.0, 550.0), 20.0, 1e-9);
    check("D-A14", sq_ft(0, 600_000.0, 600.0), 1_000.0, 1e-9);
}

/// What the doubt in jobs is: floor at the typical value of the sources has the jobs that their low and high values make of it,
/// each alone, as 10th and 90th percentiles (the published values stand in `core/src/factors/people.toml`).
#[test]
fn jobs_are_as_doubtful_as_published_floor_areas_per_job() {
    for (place, [low, typical, high]) in [
        [176.0, 250.0, 300.0],
        [400.0, 550.0, 900.0],
        [900.0, 1_300.0, 1_700.0],
        [800.0, 1_645.0, 2_500.0],
    ]
    .into_iter()
    .enumerate()
    {
        let mut measured = one_type(1.0, 0.0, 0.0, 0.0, 400.0);
        let held = &mut measured.building_types[0];
        held.floor_per_lot_m2 = [0.0; 5];
        held.floor_per_lot_m2[place + 1] = 1_000.0 * typical * SQUARE_FOOT_M2;
        let mut evaluation = measures::tests::evaluated(&measured);
        let jobs = evaluation.graph().index("jobs.count").unwrap();
        evaluation.draw(&[jobs]);
        let crate::figures::range::Range::Likely {
            low: fewest,
            high: most,
            ..
        } = evaluation.range(jobs, 0)
        else {
            panic!("no range");
        };
        check("typical", number(&evaluation, "jobs.count"), 1_000.0, 1e-9);
        // As near as 2,000 draws find a percentile.
        check("fewest", fewest / (1_000.0 * typical / high), 1.0, 0.04);
        check("most", most / (1_000.0 * typical / low), 1.0, 0.04);
    }
}

/// Points of LEED v4 for Neighborhood Development, credit Compact development (read): how many of the bounds a density lies
/// above; the upper bound of a band belongs to it. A rule of that credit is not part of these figures.
fn points_above(bounds: [f64; 6], value: f64) -> u8 {
    bounds.iter().map(|bound| u8::from(value > *bound)).sum()
}

fn points_of_homes(homes_per_m2: f64) -> u8 {
    points_above(
        [10.0, 13.0, 18.0, 25.0, 38.0, 63.0].map(|per_acre| per_acre / unit::ACRE_M2),
        homes_per_m2,
    )
}

fn points_of_other_floor(ratio: f64) -> u8 {
    points_above([0.75, 1.0, 1.25, 1.75, 2.25, 3.0], ratio)
}

/// Case D-A3. Derived from the credit's bands, whose upper bounds are closed: a floor-area ratio of exactly 1.25 is in the
/// second and 25 homes to an acre are in the third, so the figures must meet those bounds to the last bit.
#[test]
fn densities_meet_a_threshold_exactly() {
    // Ten acres drawn as 660 by 660 feet, in whole square millimeters.
    let ten_acres_m2 = 40_468.564_224;
    let homes = of_one_type(250.0, 1.0, 2.5, 0.0, ten_acres_m2 / 250.0);
    let per_m2 = number(&homes, "density.homes_per_residential_lots");
    assert_eq!(points_of_homes(per_m2), 3, "{per_m2}");
    let work = of_one_type(4.0, 0.0, 0.0, 1.25 * 10_117.141_056, 10_117.141_056);
    let ratio = number(&work, "density.floor_area_ratio");
    assert_eq!(points_of_other_floor(ratio), 2, "{ratio}");
    // A home more, a square meter of floor more.
    let denser = of_one_type(251.0, 1.0, 2.5, 0.0, ten_acres_m2 / 251.0);
    assert_eq!(
        points_of_homes(number(&denser, "density.homes_per_residential_lots")),
        4
    );
    let denser = of_one_type(4.0, 0.0, 0.0, 1.25 * 10_117.141_056 + 1.0, 10_117.141_056);
    assert_eq!(points_of_other_floor(number(&denser, "density.floor_area_ratio")), 3);
}

/// Case D-A2. Derived from the same credit: of a project with 60 percent of its floor in homes at 20 to an acre and 40 percent
/// elsewhere at a floor-area ratio of 2.0, the points 3 and 4 weighed by floor area are 3.4.
#[test]
fn points_of_a_mixed_project_are_weighed_by_floor_area() {
    let mut measured = measures::tests::village();
    measured.building_types.truncate(2);
    measured.form.density.types.truncate(2);
    measured.form.soft.lots_per_m2.truncate(2);
    measured.form.soft.is_park.truncate(2);
    measured.form.program.homes_of.clear();
    let kinds = [
        (20.0, 1.0, [150.0, 0.0, 0.0, 0.0, 0.0], unit::ACRE_M2),
        (1.0, 0.0, [0.0, 1_500.0, 500.0, 0.0, 0.0], 1_000.0),
    ];
    let types = measured.building_types.iter_mut().zip(&mut measured.form.density.types);
    for ((held, lots), (count, homes_per_lot, floor_per_lot_m2, land_m2)) in types.zip(kinds) {
        lots.lots_by_phase = vec![count, 0.0];
        (held.homes_per_lot, held.floor_per_lot_m2) = (homes_per_lot, floor_per_lot_m2);
        lots.land_m2 = land_m2;
        let has_homes = homes_per_lot > 0.0;
        lots.groups = [has_homes, !has_homes, true, false, !has_homes];
    }
    let evaluation = measures::tests::evaluated(&measured);
    let points = [
        points_of_homes(number(&evaluation, "density.homes_per_residential_lots")),
        points_of_other_floor(number(&evaluation, "density.floor_area_ratio")),
    ];
    assert_eq!(points, [3, 4]);
    let other = number(&evaluation, "density.other_floor_area") / number(&evaluation, "density.floor_area");
    let [homes_points, other_points] = points.map(f64::from);
    check("D-A2", homes_points * (1.0 - other) + other_points * other, 3.4, 1e-12);
}
