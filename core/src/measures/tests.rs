use std::sync::Arc;

use super::*;
use crate::factors::Override;
use crate::figures::Evaluation;
use crate::figures::display;
use crate::figures::leaf::Cell;
use crate::figures::range::Range;
use crate::figures::readback::{check_basis, read_middle};
use crate::figures::sensitivity::NoSensitivity;
use crate::figures::unit::System;
use crate::measures::walk::destinations::Destination;
use crate::measures::walk::{KNOTS_S, WalkInput, settings};
use crate::messages::{Language, use_language};

/// Jobs on a square meter of each workplace, from gross floor area per employee: offices 250, shops 550, schools 1,300 square
/// feet (LEED v4, Appendix 2, table 1, read), halls 1,645 (CBECS 2003, from memory).
pub(crate) const PUBLISHED_JOBS_PER_M2: [f64; mix::WORKPLACES] = [
    1.0 / (250.0 * 0.092_903_04),
    1.0 / (550.0 * 0.092_903_04),
    1.0 / (1_300.0 * 0.092_903_04),
    1.0 / (1_645.0 * 0.092_903_04),
];

/// An invented village: cottages and rows on four faces, a center, shops and a school.
pub(crate) fn village() -> MeasureInputs {
    let building_type = |id: &str, title: &str, people_per_home, homes_per_lot, floor_per_lot_m2| BuildingTypeInput {
        entry: Entry::new(id, title),
        homes_per_lot,
        people_per_home,
        floor_per_lot_m2,
        jobs_per_m2: PUBLISHED_JOBS_PER_M2,
    };
    MeasureInputs {
        building_types: vec![
            building_type("cottage", "cottage", 2.7, 1.0, [110.0, 0.0, 0.0, 0.0, 0.0]),
            building_type("row", "row house", 2.3, 1.0, [120.0, 10.0, 0.0, 0.0, 0.0]),
            building_type("shop_house", "shop house", 2.0, 3.0, [240.0, 60.0, 90.0, 20.0, 0.0]),
        ],
        walk: village_walk(),
        streets: super::streets::tests::village(),
        form: form::tests::village(),
        details: Some(details::tests::made_up()),
    }
}

/// Homes by walking time: to the center by hand, to each other destination a little later.
fn village_walk() -> WalkInput {
    let homes = [
        (0.0, 0.0),
        (60.0, 62.0),
        (180.0, 105.0),
        (290.0, 147.0),
        (420.0, 186.0),
        (600.0, 214.0),
    ];
    let within = |time_s: f64| {
        let piece = homes.windows(2).find(|pair| time_s < pair[1].0);
        let [(from_s, fewer), (to_s, more)] = piece.map_or([homes[5], (1e9, 214.0)], |pair| [pair[0], pair[1]]);
        fewer + (more - fewer) * (time_s - from_s) / (to_s - from_s)
    };
    let homes_within = (0..Destination::ALL.len()).map(|place| {
        let later = |time_s: &u64| within((*time_s as f64 - 7.0 * place as f64).max(0.0));
        Ok(KNOTS_S.iter().map(later).collect())
    });
    WalkInput {
        homes_within: homes_within.collect(),
        base_speed_m_per_s: 1.341_12,
        settings: settings::ALL.iter().map(|setting| setting.default).collect(),
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
    // 95 cottages, 80 row houses, 13 shop houses of three homes.
    let homes = 95.0 + 80.0 + 39.0;
    check("homes.count", homes);
    check("people.count", 95.0 * 2.7 + 80.0 * 2.3 + 39.0 * 2.0);
    // 4.4 ft/s is 1.34112 m/s, so five minutes are 300 s at base speed, 10 of the 130 s between the knots at 290 and
    // 420 s.
    let reached = 147.0 + 39.0 * 10.0 / 130.0;
    check("walk.center_5min_homes_share", reached / homes);
    let square_foot = 0.092_903_04;
    let (rows, shop_houses) = (80.0, 13.0);
    let jobs = (10.0 * rows + 60.0 * shop_houses) / (250.0 * square_foot)
        + 90.0 * shop_houses / (550.0 * square_foot)
        + 20.0 * shop_houses / (1_300.0 * square_foot);
    check("jobs.count", jobs);
    check("jobs.per_home", jobs / homes);
}

#[test]
fn without_a_center_its_share_says_so_and_the_rest_stands() {
    let mut measured = village();
    measured.walk.homes_within[0] = Err("no neighborhood center is drawn".to_owned());
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
    measured.form = form::FormInputs::without_land(0);
    measured.walk.homes_within[0] = Err("no neighborhood center is drawn".to_owned());
    let evaluation = evaluated(&measured);
    assert_eq!(evaluation.value("homes.count"), Some(Cell::Number(0.0)));
    let reason = |id| match evaluation.value(id) {
        Some(Cell::Unknown(reason)) => reason,
        other => panic!("{id} is {other:?}"),
    };
    assert_eq!(reason("jobs.per_home"), "no homes yet");
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
    // Check case U-A3. Three kinds of 10, 20, 30: evenness 0.921 with three listed. A data-science course page on Shannon diversity.
    check_evenness(&[10.0, 20.0, 30.0], 0.921, 0.001);
    // Check case U-A4. Shares 0.7, 0.2, 0.1 with three and with five uses listed: arithmetic from the data dictionary's definition.
    check_evenness(&[0.7, 0.2, 0.1], 0.7298, 0.0005);
    check_evenness(&[0.7, 0.2, 0.1, 0.0, 0.0], 0.4982, 0.0005);
    // Check case U-A5. One use only: 0. All five alike: 1. The data dictionary. The last bit of a logarithm may be off.
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

#[test]
fn every_figure_is_named_and_worked_out_in_spanish() {
    let english = evaluated(&village());
    use_language(Language::Spanish);
    let spanish = evaluated(&village());
    for (here, there) in spanish.graph().axes.iter().zip(&english.graph().axes) {
        assert_ne!(here.title, there.title, "{}", here.id);
        let entries = here.fixed.iter().flatten().zip(there.fixed.iter().flatten());
        // Walking times and lengths of walks are numbers with a symbol.
        for (here, there) in entries.filter(|(here, _)| !here.id.starts_with("s_") && !here.id.starts_with("mi_")) {
            assert_ne!(here.title, there.title, "{}", here.id);
        }
    }
    for index in spanish.graph().indices() {
        let [here, there] = [&spanish, &english].map(|held| held.graph().node(index));
        assert_eq!(here.id, there.id);
        assert_ne!(here.title, there.title, "{}", here.id);
        for cell in 0..spanish.cell_count(index) {
            for system in [System::Metric, System::Customary] {
                let said = spanish.basis(index, cell, system).to_string();
                // A message that is nowhere stands in angle quotes.
                assert!(!said.contains('‹'), "{said}");
                assert!(!said.contains("the sum of") && !said.contains(" homes\n"), "{said}");
            }
        }
    }
    use_language(Language::English);
}

/// The first figures, taken through everything the engine does.
const FIRST_FIGURES: [(&str, &str); 4] = [
    ("homes.count", "home"),
    ("walk.center_5min_homes_share", "share"),
    ("homes.by_building_type", "home"),
    ("mix.use_evenness", "1"),
];

#[test]
fn the_first_figures_go_through_everything() {
    let mut evaluation = evaluated(&village());
    for (id, unit) in FIRST_FIGURES {
        let index = evaluation.graph().index(id).unwrap();
        assert_eq!(evaluation.graph().node(index).unit.code, unit);
        for cell in 0..evaluation.cell_count(index) {
            let value = evaluation.cell(index, cell).number().unwrap();
            let range = evaluation.range(index, cell);
            let sensitivity = evaluation.sensitivity(index, cell);
            match range {
                // What is counted in whole lots does not move.
                Range::Certain => {
                    assert_ne!(id, "walk.center_5min_homes_share");
                    assert_eq!(sensitivity, Err(NoSensitivity::Unmoved));
                }
                Range::Likely { low, high, failed: 0 } => {
                    assert!(
                        low <= value && value <= high && low < high,
                        "{id}: {low} {value} {high}"
                    );
                    let shares: f64 = sensitivity.unwrap().influences.iter().map(|one| one.share).sum();
                    assert!((shares - 1.0).abs() < 1e-12);
                }
                other => panic!("{id}: {other:?}"),
            }
        }
    }
}

#[test]
fn the_number_shown_is_the_basiss_number_rounded() {
    let mut evaluation = evaluated(&village());
    for system in [System::Metric, System::Customary] {
        for index in evaluation.graph().clone().indices() {
            for cell in 0..evaluation.cell_count(index) {
                let unit = evaluation.graph().node(index).unit;
                let value = evaluation.cell(index, cell);
                let shown = display::shown(&value, &evaluation.range(index, cell), &unit, system);
                let (Some(value), Some(step)) = (value.number(), shown.step) else {
                    assert!(
                        matches!(value, Cell::Unknown(reason) if !reason.is_empty()),
                        "no number and no reason"
                    );
                    continue;
                };
                let read = read_middle(&shown.short);
                assert!(
                    (read - value).abs() <= step * 0.5 * (1.0 + 1e-9),
                    "{} shown as {}",
                    value,
                    shown.short
                );
            }
        }
    }
}

/// What the range of each figure comes from is what the formulas say it comes from.
#[test]
fn doubt_comes_from_where_it_should() {
    let mut evaluation = evaluated(&village());
    let mut leading = |id: &str| {
        let index = evaluation.graph().index(id).unwrap();
        let sensitivity = evaluation.sensitivity(index, 0).unwrap();
        (sensitivity.influences[0].id.clone(), sensitivity.influences[0].share)
    };
    // Homes are counted; in the share within five minutes the walking speed is in doubt.
    let (id, share) = leading("walk.center_5min_homes_share");
    assert_eq!((id.as_str(), share > 0.99), ("walking.planning_speed", true));
    let (id, _) = leading("people.count");
    assert_eq!(id, "people.household_scale");
    let (id, _) = leading("jobs.count");
    assert_eq!(id, "jobs.floor_per_job");
}

#[test]
fn a_factor_replaced_moves_what_rests_on_it_and_nothing_else() {
    let base = evaluated(&village());
    let own = Override {
        low: None,
        typical: 0.5,
        high: None,
    };
    let factors = Factors::shipped()
        .unwrap()
        .with_overrides([("people.household_scale", own)])
        .unwrap();
    let mut changed = Inputs::new();
    changed.set_factor(
        "people.household_scale",
        vec![factors.get("people.household_scale").unwrap().clone()],
    );
    let halved = base.replaced(changed).unwrap();
    let number = |evaluation: &Evaluation, id: &str| evaluation.value(id).unwrap().number().unwrap();
    assert!((number(&halved, "people.count") * 2.0 / number(&base, "people.count") - 1.0).abs() < 1e-12);
    let homes = "homes.count";
    assert!((number(&halved, homes) / number(&base, homes) - 1.0).abs() < 1e-12);
    let index = |id| halved.graph().index(id).unwrap();
    assert_eq!(
        halved.changed_factors(index("people.count")),
        ["people.household_scale"]
    );
    assert_eq!(halved.changed_factors(index(homes)), Vec::<String>::new());
    assert_eq!(base.changed_factors(index("people.count")), Vec::<String>::new());
}

fn jobs_and_homes(jobs: f64, homes: f64, workers_per_home: f64) -> Evaluation {
    let mut measured = village();
    let kind = |id: &str, homes_per_lot, work_m2| BuildingTypeInput {
        entry: Entry::new(id, id),
        homes_per_lot,
        people_per_home: 2.5,
        floor_per_lot_m2: [0.0, work_m2, 0.0, 0.0, 0.0],
        jobs_per_m2: PUBLISHED_JOBS_PER_M2,
    };
    // At 250 square feet for each job.
    measured.building_types = vec![
        kind("house", 1.0, 0.0),
        kind("office", 0.0, 250.0 * 0.092_903_04),
        kind("none", 0.0, 0.0),
    ];
    for (held, lots) in measured.form.density.types.iter_mut().zip([homes, jobs, 0.0]) {
        held.lots_by_phase = vec![lots, 0.0];
    }
    let own = Override {
        low: None,
        typical: workers_per_home,
        high: None,
    };
    let factors = Factors::shipped()
        .unwrap()
        .with_overrides([("people.workers_per_home", own)])
        .unwrap();
    Evaluation::new(Arc::new(graph().unwrap()), inputs(&measured, &factors).unwrap(), 1).unwrap()
}

/// Check case U-A6: 1,500 jobs and 1,000 dwellings are 1.5, within 1.3 to 1.7 (R. Ewing 1996); 900 jobs and 1,200 employed
/// residents are 0.75, below 0.8 to 1.25 (R. Cervero 1996). Derived from "Jobs-housing balance basics", HousingForward
/// Virginia.
#[test]
fn u_a6_jobs_by_homes_and_by_employed_residents() {
    let number = |evaluation: &Evaluation, id: &str| evaluation.value(id).unwrap().number().unwrap();
    let first = jobs_and_homes(1_500.0, 1_000.0, 1.2);
    let per_home = number(&first, "jobs.per_home");
    assert!((per_home - 1.5).abs() < 1e-12);
    let (low, high) = mix::BALANCED_JOBS_PER_HOME;
    assert!(low <= per_home && per_home <= high);
    let second = jobs_and_homes(900.0, 1_000.0, 1.2);
    assert!((number(&second, "people.workers") - 1_200.0).abs() < 1e-9);
    let per_worker = number(&second, "jobs.per_worker");
    assert!((per_worker - 0.75).abs() < 1e-12);
    assert!(per_worker < mix::BALANCED_JOBS_PER_WORKER.0);
}
