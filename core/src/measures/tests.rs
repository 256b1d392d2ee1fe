use std::sync::Arc;

use super::*;
use crate::figures::Evaluation;
use crate::figures::readback::check_basis;
use crate::figures::unit::System;

/// An invented village: cottages and rows on four faces, a center, shops and a school.
pub(crate) fn village() -> MeasureInputs {
    let building_type = |id: &str, title: &str, lot_area_m2, homes_per_lot, floor_per_lot_m2| BuildingTypeInput {
        entry: Entry::new(id, title),
        lot_area_m2,
        homes_per_lot,
        floor_per_lot_m2,
    };
    MeasureInputs {
        building_types: vec![
            building_type("cottage", "cottage", 450.0, 1.0, [110.0, 0.0, 0.0, 0.0, 0.0]),
            building_type("row", "row house", 180.0, 1.0, [120.0, 10.0, 0.0, 0.0, 0.0]),
            building_type("shop_house", "shop house", 240.0, 3.0, [240.0, 60.0, 90.0, 20.0, 0.0]),
        ],
        faces: (1..=4)
            .map(|face| Entry::new(format!("face_{face}"), format!("face {face}")))
            .collect(),
        land_m2: vec![
            vec![12_000.0, 9_500.0, 0.0, 22_000.0],
            vec![0.0, 6_400.0, 8_250.0, 0.0],
            vec![0.0, 0.0, 3_120.0, 0.0],
        ],
        center_walk: Ok(WalkCurve {
            times_s: vec![0.0, 60.0, 180.0, 290.0, 420.0, 600.0],
            land_m2: vec![
                vec![0.0, 2_000.0, 9_000.0, 20_000.0, 31_000.0, 43_500.0],
                vec![0.0, 4_000.0, 9_000.0, 12_500.0, 14_650.0, 14_650.0],
                vec![0.0, 3_120.0, 3_120.0, 3_120.0, 3_120.0, 3_120.0],
            ],
        }),
        base_speed_m_per_s: 1.341_12,
    }
}

pub(crate) fn evaluated(measured: &MeasureInputs) -> Evaluation {
    let inputs = inputs(measured, &Factors::shipped().unwrap()).unwrap();
    Evaluation::new(Arc::new(graph().unwrap()), inputs, 2_026).unwrap()
}

#[test]
fn the_graph_of_all_measures_builds() {
    if let Err(faults) = graph() {
        panic!(
            "{}",
            faults.iter().map(|fault| format!("{fault}\n")).collect::<String>()
        );
    }
}

#[test]
fn the_villages_figures_are_those_worked_by_hand() {
    let evaluation = evaluated(&village());
    let check = |id: &str, expected: f64| {
        let value = evaluation.value(id).unwrap().number().unwrap();
        assert!(
            (value / expected - 1.0).abs() < 1e-12,
            "{id}: {value}, by hand {expected}"
        );
    };
    // Lots on 43,500, 14,650 and 3,120 m² at a yield of 0.92, by 450, 180 and 240 m².
    let homes = 0.92 * (43_500.0 / 450.0 + 14_650.0 / 180.0 + 3.0 * 3_120.0 / 240.0);
    check("homes.count", homes);
    check("people.count", homes * 2.51);
    // 4.4 ft/s is 1.34112 m/s, so five minutes are 300 s at base speed, 10 of the 130 s between the knots at 290 and
    // 420 s.
    let piece = 10.0 / 130.0;
    let reached =
        0.92 * ((20_000.0 + 11_000.0 * piece) / 450.0 + (12_500.0 + 2_150.0 * piece) / 180.0 + 3.0 * 3_120.0 / 240.0);
    check("walk.center_5min_homes_share", reached / homes);
    let square_foot = 0.092_903_04;
    let (rows, shop_houses) = (0.92 * 14_650.0 / 180.0, 0.92 * 3_120.0 / 240.0);
    let jobs = (10.0 * rows + 60.0 * shop_houses) / (250.0 * square_foot)
        + 90.0 * shop_houses / (550.0 * square_foot)
        + 20.0 * shop_houses / (1_300.0 * square_foot);
    check("jobs.count", jobs);
    check("jobs.per_home", jobs / homes);
}

#[test]
fn without_a_center_its_share_says_so_and_the_rest_stands() {
    let mut measured = village();
    measured.center_walk = Err("no neighborhood center is drawn".to_owned());
    let evaluation = evaluated(&measured);
    assert_eq!(
        evaluation.value("walk.center_5min_homes_share"),
        Some(Cell::Unknown("no neighborhood center is drawn".to_owned()))
    );
    assert!(evaluation.value("homes.count").unwrap().number().is_some());
}

#[test]
fn an_empty_drawing_has_no_homes_and_no_shares() {
    let mut measured = village();
    measured.building_types.clear();
    measured.faces.clear();
    measured.land_m2.clear();
    measured.center_walk = Err("no neighborhood center is drawn".to_owned());
    let evaluation = evaluated(&measured);
    assert_eq!(evaluation.value("homes.count"), Some(Cell::Number(0.0)));
    let reason = |id| match evaluation.value(id) {
        Some(Cell::Unknown(reason)) => reason,
        other => panic!("{id} is {other:?}"),
    };
    assert_eq!(reason("jobs.per_home"), "homes is zero, and nothing divides by zero");
    assert_eq!(reason("mix.use_evenness"), "no floor area is drawn");
}

#[track_caller]
fn check_evenness(amounts: &[f64], expected: f64, tolerance: f64) {
    let mut result = [f64::NAN];
    (mix::EVENNESS.evaluate)(&[amounts], &mut result).unwrap();
    assert!(
        (result[0] - expected).abs() <= tolerance,
        "{amounts:?}: {} instead of {expected}",
        result[0]
    );
}

#[test]
fn evenness_is_the_published_one() {
    // Three kinds of 10, 20, 30: evenness 0.921 with three listed. A data-science course page on Shannon diversity.
    check_evenness(&[10.0, 20.0, 30.0], 0.921, 0.001);
    // Shares 0.7, 0.2, 0.1 with three and with five uses listed: arithmetic from the data dictionary's definition.
    check_evenness(&[0.7, 0.2, 0.1], 0.7298, 0.0005);
    check_evenness(&[0.7, 0.2, 0.1, 0.0, 0.0], 0.4982, 0.0005);
    // One use only: 0. All five alike: 1. The data dictionary. The last bit of a logarithm may be off.
    check_evenness(&[5.0, 0.0, 0.0, 0.0, 0.0], 0.0, 0.0);
    check_evenness(&[2.0; 5], 1.0, 4e-16);
}

#[test]
fn evenness_agrees_with_a_general_library() {
    // tests/fixtures/evenness/entropy.json: scipy 1.17.1, stats.entropy by the logarithm of the number listed.
    let text = include_str!("../../../tests/fixtures/evenness/entropy.json");
    let file: serde_json::Value = serde_json::from_str(text).unwrap();
    let cases = file["cases"].as_array().unwrap();
    assert!(cases.len() >= 8);
    for case in cases {
        let amounts: Vec<f64> = case["amounts"]
            .as_array()
            .unwrap()
            .iter()
            .map(|x| x.as_f64().unwrap())
            .collect();
        check_evenness(&amounts, case["normalised_by_listed"].as_f64().unwrap(), 1e-15);
    }
}

#[test]
fn every_printed_basis_leads_to_the_number_shown() {
    let evaluation = evaluated(&village());
    for system in [System::Metric, System::Customary] {
        for index in evaluation.graph().indices() {
            let is_leaf = evaluation.graph().leaf_kind(index).is_some();
            for cell in 0..evaluation.cell_count(index) {
                let checked = check_basis(&evaluation.basis(index, cell, system));
                assert_eq!(checked == 0, is_leaf, "{}", evaluation.graph().node(index).id);
            }
        }
    }
}
