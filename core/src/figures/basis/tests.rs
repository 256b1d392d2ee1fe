use super::*;
use crate::figures::inputs::numbers;
use crate::figures::readback::check_basis;
use crate::figures::samples::{SEED, built, evaluated, every_operator, every_operator_inputs};
use std::sync::Arc;

#[test]
fn the_printed_basis_of_every_operator_leads_to_its_number() {
    let evaluation = evaluated();
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

#[track_caller]
fn check_text(id: &str, cell: usize, expected: &str) {
    let evaluation = evaluated();
    let index = evaluation.graph().index(id).unwrap();
    let text = evaluation.basis(index, cell, System::Metric).steps[0].to_string();
    assert_eq!(text, expected);
}

#[test]
fn steps_are_printed_in_words_and_in_numbers() {
    check_text(
        "plots.density",
        0,
        "homes on the plots [plots.density]\n  = all homes within a walk ÷ land of all plots\n  \
         = 56 homes ÷ 4.9872 ha\n  = 11.2287 homes/ha\n",
    );
    check_text(
        "tank.level",
        2,
        "level [tank.level]\n  = from the tank start, along season: the balance before + change of the level, never below \
         the tank empty, never above the tank size\n  for kind 1, summer:\n  \
         = smaller of (larger of (0.55 m + (−0.776543 m); 0 m); 0.6 m)\n  = 0 m\n  for kind 1, winter: 0.6 m\n  \
         for kind 1, spring: 0.55 m\n  for kind 2, winter: 0.85 m\n  for kind 2, spring: 1.2 m\n  \
         for kind 2, summer: 1.12346 m\n",
    );
    check_text(
        "tank.side",
        0,
        "side of the floor [tank.side]\n  = power of (the tank floor; 0.5)\n  = power of (7.3 m²; 0.5)\n  = 2.70185 m\n",
    );
    check_text(
        "walk.time",
        0,
        "time of a walk [walk.time]\n  from the factor tables\n  6.5 min\n    \
         walk.time: 6.5 min; low 5 min, high 9 min (10th and 90th percentiles)\n    \
         low, typical, high: common practice, no source\n",
    );
}

#[test]
fn long_sums_are_lists() {
    let evaluation = evaluated();
    let index = evaluation.graph().index("plots.all").unwrap();
    let basis = evaluation.basis(index, 0, System::Metric);
    let line = &basis.steps[0].row.as_ref().unwrap().lines[0];
    assert_eq!(line.formula, sum_of_list());
    assert_eq!(line.terms.len(), 20);
    let text = basis.to_string();
    assert!(
        text.contains("    plot 20: 0.59223 ha\n    and 4 × 0 ha\n  = 4.9872 ha\n"),
        "{text}"
    );
}

#[test]
fn units_that_do_not_cancel_are_explained() {
    let evaluation = evaluated();
    let conversions = |id: &str| {
        let index = evaluation.graph().index(id).unwrap();
        evaluation.basis(index, 0, System::Metric).steps[0].conversions.clone()
    };
    assert_eq!(conversions("plots.density"), Vec::<String>::new());
    assert_eq!(conversions("tank.change"), Vec::<String>::new());
    assert_eq!(conversions("curve.homes"), Vec::<String>::new());
}

#[test]
fn a_number_that_cannot_be_worked_out_still_opens_what_it_rests_on() {
    let mut inputs = every_operator_inputs();
    inputs.set_counted("plots.land", numbers(&[0.0; 20]), None);
    let evaluation = Evaluation::new(Arc::new(built(every_operator())), inputs, SEED).unwrap();
    let index = evaluation.graph().index("plots.density").unwrap();
    let basis = evaluation.basis(index, 0, System::Metric);
    assert_eq!(basis.steps[0].opens, ["curve.all_homes", "plots.all"]);
    let row = basis.steps[0].row.as_ref().unwrap();
    assert!(row.lines.is_empty());
    assert!(row.value.starts_with("cannot be worked out: "));
    check_basis(&basis);
}

#[test]
fn a_changed_factor_is_marked_wherever_it_goes() {
    let mut inputs = every_operator_inputs();
    let mut row = (*crate::figures::samples::factor("walk.time", "min", [4.0, 5.0, 6.0], SpreadKind::Positive)).clone();
    row.shipped = Some(row.spread);
    inputs.set_factor("walk.time", vec![Arc::new(row)]);
    let mut evaluation = Evaluation::new(Arc::new(built(every_operator())), inputs, SEED).unwrap();
    for (id, expected) in [("plots.density", &["walk.time"][..]), ("plots.all", &[])] {
        let index = evaluation.graph().index(id).unwrap();
        assert_eq!(evaluation.changed_factors(index), expected, "{id}");
        let text = evaluation.basis(index, 0, System::Metric).to_string();
        assert_eq!(
            text.contains("rests on factors changed by the user: walk.time"),
            !expected.is_empty()
        );
        let value = evaluation.figure_value_with_range(index, System::Metric);
        assert_eq!(value.changed_factors, expected);
        let shown = serde_json::to_string(&value).unwrap();
        assert_eq!(
            shown.contains(crate::figures::value::changed_factors_mark()),
            !expected.is_empty()
        );
    }
}
