use super::*;
use crate::factors::{Factors, Override};
use crate::figures::Evaluation;
use crate::figures::axis::Entry;
use crate::figures::unit::SQUARE_FOOT_M2;
use crate::measures::form::tests::{check, number};
use crate::measures::{self, BuildingTypeInput, MeasureInputs};

/// One lot of one building type: homes of so many people, and floor by use in square feet.
fn one_lot(homes: f64, people_per_home: f64, floor_sq_ft: [f64; 5], parking: f64) -> MeasureInputs {
    let mut measured = measures::tests::village();
    measured.building_types = vec![BuildingTypeInput {
        entry: Entry::new("only", "only"),
        homes_per_lot: homes,
        people_per_home,
        floor_per_lot_m2: floor_sq_ft.map(|floor| floor * SQUARE_FOOT_M2),
        jobs_per_m2: measures::tests::PUBLISHED_JOBS_PER_M2,
    }];
    measured.form.density.types.truncate(1);
    let held = &mut measured.form.density.types[0];
    held.parking_per_lot = parking;
    held.lots_by_phase = vec![1.0, 0.0];
    let has_other = floor_sq_ft[1..].iter().any(|floor| *floor > 0.0);
    held.groups = [
        homes > 0.0,
        has_other,
        true,
        floor_sq_ft[3] > 0.0,
        has_other && homes <= 0.0,
    ];
    measured.form.soft.lots_per_m2.truncate(1);
    measured.form.soft.is_park.truncate(1);
    measured.form.program.homes_of.clear();
    measured
}

fn with_factors(measured: &MeasureInputs, own: &[(&str, f64)]) -> Evaluation {
    let own = own.iter().map(|(id, typical)| {
        let own = Override {
            low: None,
            typical: *typical,
            high: None,
        };
        (*id, own)
    });
    let factors = Factors::shipped().unwrap().with_overrides(own).unwrap();
    let inputs = measures::inputs(measured, &factors).unwrap();
    Evaluation::new(std::sync::Arc::new(measures::graph().unwrap()), inputs, 1).unwrap()
}

fn in_group(evaluation: &Evaluation, id: &str, group: usize) -> f64 {
    let index = evaluation.graph().index(id).unwrap();
    evaluation.cell(index, group).number().unwrap()
}

/// Case D-A15. Of 1,182 houses 96.54 percent are lived in by 3.057 people each: 1,141 households and 3,488 people
/// (Centerville, Minnesota, records, 2017 annual population estimate, page 74, published).
#[test]
fn houses_that_are_lived_in_are_the_households_of_an_estimate() {
    let evaluation = measures::tests::evaluated(&one_lot(1_182.0, 3.057, [0.0; 5], 0.0));
    check("households", number(&evaluation, "people.households"), 1_141.0, 1.0);
    check("people", number(&evaluation, "people.in_households"), 3_488.0, 1.0);
    check(
        "all lived in",
        number(&evaluation, "people.count"),
        1_182.0 * 3.057,
        1e-9,
    );
}

/// Case U-A9. Derived from the 2024 NRPA Agency Performance Review Report, 10.6 acres for every 1,000 residents and a park
/// for every 2,386: 5,000 residents have 53.0 acres and 2.1 parks.
#[test]
fn five_thousand_people_have_the_parks_of_the_median_agency() {
    let mut measured = one_lot(2_000.0, 2.5, [0.0; 5], 0.0);
    measured.form.land.open_space_m2 = [20.0 * ACRE_M2, 6.5 * ACRE_M2, 0.0, 0.0, 0.0, 0.0];
    let evaluation = measures::tests::evaluated(&measured);
    check(
        "land",
        number(&evaluation, "land.park_land_elsewhere") / ACRE_M2,
        53.0,
        0.05,
    );
    check("parks", number(&evaluation, "land.parks_elsewhere"), 2.1, 0.05);
    check(
        "share",
        number(&evaluation, "land.park_land_elsewhere_share"),
        0.5,
        1e-9,
    );
    let per_thousand = number(&evaluation, "land.park_land_per_person") * 1e3 / ACRE_M2;
    check("drawn to 1,000 people", per_thousand, 5.3, 1e-9);
}

/// Case U-A11. Derived from the average US household of 2023 (a search engine's extract) and 20.22 square feet of leasable
/// shop floor per person (R. Gibbs, "Designing the Neighborhood Retail Center"): 50.8 square feet to a household.
#[test]
fn a_household_has_its_part_of_the_countrys_shops() {
    let evaluation = measures::tests::evaluated(&one_lot(1.0, 2.51, [900.0, 0.0, 25.4, 0.0, 0.0], 0.0));
    let floor = number(&evaluation, "mix.shop_floor_elsewhere");
    check("floor", floor / SQUARE_FOOT_M2, 50.8, 0.1);
    check(
        "share",
        number(&evaluation, "mix.shop_floor_elsewhere_share"),
        0.5,
        0.001,
    );
}

/// Case D-A4. "Estimating the Size of Parking Spots", Urban Field Studio 2013, read: 43,560 square feet at 430 a space hold
/// about 100 spaces, 101 whole ones. Derived: spaces 9 feet wide on both sides of a bay of 18, 24 and 18 feet take 270.
#[test]
fn parking_takes_the_land_of_its_spaces() {
    let land_sq_ft = |spaces: f64, per_space: f64| {
        let measured = one_lot(0.0, 0.0, [0.0, 40_000.0, 0.0, 0.0, 0.0], spaces);
        let evaluation = with_factors(&measured, &[("parking.area_per_space", per_space)]);
        number(&evaluation, "density.parking_land") / SQUARE_FOOT_M2
    };
    let acre_sq_ft = 43_560.0;
    assert!(land_sq_ft(101.0, 430.0) <= acre_sq_ft && land_sq_ft(102.0, 430.0) > acre_sq_ft);
    // Ninety feet of bay, sixty feet deep: ten spaces on either side.
    check("bay", land_sq_ft(20.0, 270.0), 90.0 * (18.0 + 24.0 + 18.0), 1e-6);
}

/// Case D-A5. "What is the standard size for a parking space?", published: 200 spaces for 40,000 square feet are 5 to 1,000.
#[test]
fn parking_by_floor_is_that_of_lots_without_homes() {
    let evaluation = measures::tests::evaluated(&one_lot(0.0, 0.0, [0.0, 0.0, 40_000.0, 0.0, 0.0], 200.0));
    let [with_homes, with_other, built, _, without_homes] =
        [0, 1, 2, 3, 4].map(|group| in_group(&evaluation, "density.parking_by_group", group));
    for (spaces, expected) in [
        (with_homes, 0.0),
        (with_other, 200.0),
        (built, 200.0),
        (without_homes, 200.0),
    ] {
        check("spaces", spaces, expected, 0.0);
    }
    let per_space = in_group(&evaluation, "density.floor_per_space", 4);
    check(
        "spaces to 1,000 square feet",
        1_000.0 * SQUARE_FOOT_M2 / per_space,
        5.0,
        1e-9,
    );
}

/// Case U-A8. The guideline of a council of educational facility planners (Orange County, North Carolina, agenda of 28
/// March 2001, published): an elementary school of 400 pupils asks for 14 acres; LEED v4 for Neighborhood Development,
/// Neighborhood schools, lets it take 5 at most, so no school meets both.
#[test]
fn the_site_of_a_school_is_that_of_the_guideline() {
    // At 9 m² to a seat.
    let measured = one_lot(0.0, 0.0, [0.0, 0.0, 0.0, 400.0 * 9.0 / SQUARE_FOOT_M2, 0.0], 0.0);
    let evaluation = measures::tests::evaluated(&measured);
    let site = number(&evaluation, "land.school_site");
    check("acres", site / ACRE_M2, 14.0, 1e-9);
    assert!(site > MOST_SCHOOL_SITE_M2, "the two conflict");
    let none = measures::tests::evaluated(&one_lot(10.0, 2.5, [0.0; 5], 0.0));
    check("without a school", number(&none, "land.school_site"), 0.0, 0.0);
}
