use crate::figures::axis::Entry;
use crate::measures;
use crate::measures::form::tests::{at, check, number};
use crate::measures::soft::SoftInput;

const SQUARE_FOOT_M2: f64 = 0.092_903_04;

/// Jobs on one row house and one shop house of the invented village: work, shops and school at the floor area per
/// employee of LEED v4, Appendix 2, table 1 (read).
fn jobs_on_one() -> [f64; 2] {
    let office = |m2: f64| m2 / (250.0 * SQUARE_FOOT_M2);
    let shop_house = office(60.0) + 90.0 / (550.0 * SQUARE_FOOT_M2) + 20.0 / (1_300.0 * SQUARE_FOOT_M2);
    [office(10.0), shop_house]
}

/// 60 cottages and 80 row houses in the first phase, 35 cottages and 13 shop houses of three homes in the second;
/// cottages in the upper band, rows in the middle, shop houses in the lower.
#[test]
fn the_villages_people_jobs_and_floor_are_those_worked_by_hand() {
    let evaluation = measures::tests::evaluated(&measures::tests::village());
    let [row_jobs, shop_house_jobs] = jobs_on_one();
    for (id, entry, expected) in [
        ("homes.by_phase", "phase_0", 140.0),
        ("homes.by_phase", "phase_1", 35.0 + 39.0),
        ("people.by_phase", "phase_0", 60.0 * 2.7 + 80.0 * 2.3),
        ("people.by_phase", "phase_1", 35.0 * 2.7 + 39.0 * 2.0),
        ("people.by_price_band", "upper", 95.0 * 2.7),
        ("people.by_price_band", "lower", 39.0 * 2.0),
        ("jobs.by_building_type", "row", 80.0 * row_jobs),
        ("jobs.by_phase", "phase_0", 80.0 * row_jobs),
        ("jobs.by_phase", "phase_1", 13.0 * shop_house_jobs),
        ("jobs.by_price_band", "middle", 80.0 * row_jobs),
        ("jobs.by_price_band", "lower", 13.0 * shop_house_jobs),
        ("density.floor_by_building_type", "row", 80.0 * 130.0),
        ("density.floor_by_phase", "phase_0", 60.0 * 110.0 + 80.0 * 130.0),
        ("density.floor_by_phase", "phase_1", 35.0 * 110.0 + 13.0 * 410.0),
        ("density.floor_by_price_band", "upper", 95.0 * 110.0),
    ] {
        check(id, at(&evaluation, id, entry), expected, 1e-9 * expected);
    }
    check("none", at(&evaluation, "jobs.by_price_band", "upper"), 0.0, 0.0);
}

/// A soft area of the second phase, half of it rows, adds what its rough lots hold to that phase alone.
#[test]
fn rough_lots_count_in_the_phase_of_their_soft_area() {
    let before = measures::tests::evaluated(&measures::tests::village());
    let mut measured = measures::tests::village();
    measured.form.soft.areas.push(SoftInput {
        entry: Entry::new("soft_0", "a soft area"),
        land_m2: 20_000.0,
        shares: vec![0.0, 0.5, 0.0],
        phase: 1,
    });
    let after = measures::tests::evaluated(&measured);
    let lots = 20_000.0 * 0.5 * number(&after, "land.lot_yield_share") / 180.0;
    let [row_jobs, _] = jobs_on_one();
    for (table, on_one) in [
        ("homes.by_phase", 1.0),
        ("people.by_phase", 2.3),
        ("jobs.by_phase", row_jobs),
        ("density.floor_by_phase", 130.0),
    ] {
        let added = |phase| at(&after, table, phase) - at(&before, table, phase);
        check(table, added("phase_1"), lots * on_one, 1e-9 * lots * on_one);
        check(table, added("phase_0"), 0.0, 0.0);
    }
    check(
        "in the band of rows",
        at(&after, "people.by_price_band", "middle"),
        (80.0 + lots) * 2.3,
        1e-6,
    );
}

/// Half of a soft area is park: as open space, as park land and as what the program has drawn it is the same land.
#[test]
fn a_park_in_a_soft_area_is_one_park_wherever_it_is_told() {
    let mut measured = measures::tests::village();
    measured.form.soft.is_park[2] = true;
    let told = |measured: &measures::MeasureInputs| {
        let evaluation = measures::tests::evaluated(measured);
        let open: f64 = ["parks", "squares", "soft"]
            .iter()
            .map(|kind| at(&evaluation, "land.open_space", kind))
            .sum();
        [
            open,
            number(&evaluation, "land.park_land"),
            number(&evaluation, "program.drawn.park_land"),
            at(&evaluation, "land.open_space", "soft"),
        ]
    };
    let before = told(&measured);
    measured.form.soft.areas.push(SoftInput {
        entry: Entry::new("soft_0", "a soft area"),
        land_m2: 20_000.0,
        shares: vec![0.0, 0.0, 0.5],
        phase: 0,
    });
    let after = told(&measured);
    assert!(before[3].abs() < 1e-12 && after[3] > 5_000.0);
    for (one, other) in before.iter().zip(after) {
        check("rough park", other - one, after[3], 1e-6);
    }
}
