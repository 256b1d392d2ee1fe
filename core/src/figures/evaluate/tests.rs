use super::*;
use crate::figures::expression::{Comparison, choose, constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{InputProblem, numbers};
use crate::figures::leaf::SpreadKind;
use crate::figures::samples::{SEED, built, evaluated, every_operator, every_operator_inputs, factor, reason, table};
use crate::figures::unit;

#[track_caller]
fn check_table(id: &str, expected: &[f64]) {
    let found = table(&evaluated(), id);
    assert_eq!(found.len(), expected.len(), "{id}: {found:?}");
    for (found, expected) in found.iter().zip(expected) {
        assert!(
            (found - expected).abs() <= 1e-12 * expected.abs().max(1.0),
            "{id}: {found} instead of {expected}"
        );
    }
}

#[test]
fn every_operator_gives_what_is_worked_by_hand() {
    // Rain 0.8, 0.45, 0.123456789 less use by (season, kind): transposed to (kind, season).
    let rain = 0.123_456_789;
    check_table("tank.change", &[0.6, -0.05, rain - 0.9, 0.5, 0.35, rain - 0.2]);
    // From 0.35, kind 1 capped at 0.6, then 0.55, then held at 0; kind 2 free below 2.5.
    check_table("tank.level", &[0.6, 0.55, 0.0, 0.85, 1.2, 1.2 + rain - 0.2]);
    check_table(
        "tank.free_level",
        &[0.95, 0.85, 0.9, 1.2, 0.9 + rain - 0.9, 1.2 + rain - 0.2],
    );
    let mean = |levels: [f64; 3]| (levels[0] * 90.0 + levels[1] * 92.0 + levels[2] * 91.0) / 273.0;
    check_table(
        "tank.mean_level",
        &[mean([0.6, 0.55, 0.0]), mean([0.85, 1.2, 1.0 + rain])],
    );
    check_table("tank.spring_level", &[0.55, 1.2]);
    check_table("tank.highest", &[0.8, 0.45]);
    check_table("tank.side", &[7.3_f64.sqrt()]);
    // Two to the power 0.3.
    check_table("growth.times", &[1.231_144_413_344_916_3]);
    // 390 s lies 90 of 300 s between knots 3 and 4.
    check_table("curve.homes", &[33.0 + 58.0 * 0.3, 5.0 + 2.0 * 0.3]);
    check_table("curve.all_homes", &[56.0]);
    check_table("curve.chosen", &[50.4, -5.6]);
    // 311.7 × (0 + 1 + … + 19 − 3 − 10 − 17).
    check_table("plots.all", &[311.7 * 160.0]);
    check_table("plots.density", &[56.0 / (311.7 * 160.0)]);
}

/// Case D-A16, derived. A graduated rule is read as a curve of its bands: Aurora, Minnesota, asks of shops for 11 parking
/// spaces for the first 1,000 square feet, 8 per 1,000 from there to 15,000 and 6 to 30,000 (parking table, read). 20,000
/// square feet need 11 + 14 × 8 + 5 × 6 = 153, where flat rates would give 160 or 120. No figure asks what a code demands.
#[test]
fn a_graduated_rule_is_a_curve_of_its_bands() {
    let spaces = super::super::column::Curve::new(
        vec![0.0, 1.0, 15.0, 30.0],
        vec![0.0, 11.0, 11.0 + 14.0 * 8.0, 11.0 + 14.0 * 8.0 + 15.0 * 6.0],
    );
    for (thousand_sq_ft, expected) in [(20.0, 153.0), (1.0, 11.0), (15.0, 123.0)] {
        assert!(
            (spaces.read(thousand_sq_ft) - expected).abs() < 1e-12,
            "{thousand_sq_ft}"
        );
    }
}

#[test]
fn curves_hold_beyond_their_ends_and_count_past_a_jump() {
    let curve = super::super::column::Curve::new(vec![1.0, 2.0, 2.0, 4.0], vec![10.0, 20.0, 30.0, 50.0]);
    for (at, expected) in [
        (0.0, 10.0),
        (1.0, 10.0),
        (1.5, 15.0),
        (2.0, 30.0),
        (3.0, 40.0),
        (4.0, 50.0),
        (9.0, 50.0),
    ] {
        assert!((curve.read(at) - expected).abs() < 1e-15, "{at}");
    }
    assert!(
        super::super::column::Curve::new(vec![2.0, 1.0], vec![0.0, 0.0])
            .read(1.5)
            .is_nan()
    );
    assert!(
        super::super::column::Curve::new(Vec::new(), Vec::new())
            .read(1.5)
            .is_nan()
    );
}

#[track_caller]
fn with(change: impl FnOnce(&mut Inputs)) -> Evaluation {
    let mut inputs = every_operator_inputs();
    change(&mut inputs);
    Evaluation::new(Arc::new(built(every_operator())), inputs, SEED).unwrap()
}

#[test]
fn what_cannot_be_worked_out_says_why_and_no_nan_leaves() {
    let unknown = || vec![Cell::Unknown("the tank is not drawn".to_owned())];
    let evaluation = with(|inputs| inputs.set_counted("tank.start", unknown(), None));
    assert_eq!(reason(&evaluation, "tank.level"), "the tank is not drawn");
    assert_eq!(reason(&evaluation, "tank.mean_level"), "the tank is not drawn");
    assert_eq!(reason(&evaluation, "tank.spring_level"), "the tank is not drawn");

    let evaluation = with(|inputs| inputs.set_counted("plots.land", numbers(&[0.0; 20]), None));
    assert_eq!(reason(&evaluation, "plots.density"), "no land of all plots yet");
    assert_eq!(
        reason(&evaluation, "plots.mean_share"),
        "there is nothing to average: the plots land sums to zero"
    );

    let evaluation = with(|inputs| inputs.set_counted("curve.x", numbers(&[0.0, 300.0, 120.0, 600.0]), None));
    assert_eq!(
        reason(&evaluation, "curve.all_homes"),
        "the curve y: the curve's knots are out of order"
    );

    let evaluation = with(|inputs| {
        inputs.set_factor(
            "growth.doubling",
            vec![factor("g", "1", [0.0, 0.0, 1.0], SpreadKind::Bounds)],
        );
    });
    assert_eq!(
        reason(&evaluation, "growth.times"),
        "doubling is not above zero, and has no logarithm"
    );

    let evaluation = with(|inputs| inputs.set_counted("tank.floor", numbers(&[-1.0]), None));
    assert_eq!(
        reason(&evaluation, "tank.side"),
        "a power of these numbers does not exist"
    );

    let evaluation = with(|inputs| inputs.set_counted("tank.rain", numbers(&[1e308, 1e308, 1e308]), None));
    let index = evaluation.graph().index("tank.free_level").unwrap();
    assert_eq!(
        evaluation.cell(index, 4),
        Cell::Unknown("the result is too large to hold".to_owned())
    );

    let mut cells = numbers(&[0.0; 20]);
    cells[4] = Cell::Unknown("plot 5 is open".to_owned());
    let evaluation = with(|inputs| inputs.set_counted("plots.land", cells, None));
    assert_eq!(reason(&evaluation, "plots.all"), "plot 5 is open");
}

#[test]
fn a_method_says_why_it_cannot() {
    let mut builder = GraphBuilder::new();
    builder.open_axis("season", "season");
    builder.fixed_axis("place", "place", &[("first", "first"), ("second", "second")]);
    let _ = builder.counted("rain", "rain", unit::LENGTH).over(&["season"]);
    builder
        .figure("highest", "highest", unit::LENGTH)
        .over(&["place"])
        .method(&super::super::samples::LARGEST, &["rain"], &["season", "place"]);
    let mut inputs = Inputs::new();
    inputs.set_entries("season", vec![Entry::new("only", "only")]);
    inputs.set_counted("rain", numbers(&[1.0]), None);
    let evaluation = Evaluation::new(Arc::new(built(builder)), inputs, SEED).unwrap();
    assert_eq!(reason(&evaluation, "highest"), "there are fewer lengths than places");
}

#[test]
fn a_choice_needs_only_the_side_it_takes() {
    let mut builder = GraphBuilder::new();
    let _ = builder.counted("homes", "homes", unit::HOMES);
    let _ = builder.counted("land", "land", unit::LAND);
    builder
        .figure("density", "density", unit::HOMES_PER_LAND)
        .formula(choose(
            figure("land"),
            Comparison::Above,
            constant(0.0, unit::LAND),
            figure("homes") / figure("land"),
            constant(0.0, unit::HOMES_PER_LAND),
        ));
    let mut inputs = Inputs::new();
    inputs.set_counted("homes", numbers(&[4.0]), None);
    inputs.set_counted("land", numbers(&[0.0]), None);
    let evaluation = Evaluation::new(Arc::new(built(builder)), inputs, SEED).unwrap();
    assert_eq!(evaluation.value("density"), Some(Cell::Number(0.0)));
}

#[test]
fn setting_a_leaf_works_only_what_depends_on_it() {
    let mut evaluation = evaluated();
    let mut inputs = Inputs::new();
    inputs.set_counted("tank.floor", numbers(&[9.0]), None);
    let changes = evaluation.set(inputs).unwrap();
    let ids: Vec<&str> = changes
        .changed
        .iter()
        .map(|at| evaluation.graph().node(*at).id.as_str())
        .collect();
    assert_eq!(ids, ["tank.floor", "tank.side"]);
    assert_eq!(changes.worked, 2);

    // A change that does not pass the larger of two stops there.
    let mut inputs = Inputs::new();
    inputs.set_counted("tank.size", numbers(&[0.6, 2.75]), None);
    let changes = evaluation.set(inputs).unwrap();
    assert_eq!(changes.worked, 2, "the level is worked and found the same");

    let same = every_operator_inputs();
    let _ = evaluation.set(same).unwrap();
    assert_eq!(evaluation.set(every_operator_inputs()).unwrap(), Changes::default());
}

#[test]
fn new_entries_work_every_table_over_the_axis() {
    let mut evaluation = evaluated();
    let mut inputs = Inputs::new();
    inputs.set_entries("plot", vec![Entry::new("only", "the only plot")]);
    let before = table(&evaluation, "plots.all");
    let faults = evaluation.set(inputs.clone()).unwrap_err();
    let wrong = |id: &str| InputFault {
        id: id.to_owned(),
        problem: InputProblem::CellCount { expected: 1, given: 20 },
    };
    let mut expected = vec![wrong("plots.land"), wrong("plots.share")];
    expected.sort_by(|a, b| a.id.cmp(&b.id));
    let mut found = faults;
    found.sort_by(|a, b| a.id.cmp(&b.id));
    assert_eq!(found, expected);
    assert_eq!(table(&evaluation, "plots.all"), before, "a fault changes nothing");

    inputs.set_counted("plots.land", numbers(&[50.0]), None);
    inputs.set_counted("plots.share", numbers(&[0.25]), None);
    evaluation.set(inputs).unwrap();
    assert_eq!(table(&evaluation, "plots.all"), [50.0]);
    assert_eq!(table(&evaluation, "plots.mean_share"), [0.25]);
}

#[test]
fn every_fault_of_inputs_is_returned() {
    let mut inputs = every_operator_inputs();
    inputs.set_entries("roof", Vec::new());
    inputs.set_entries("season", vec![Entry::new("a", "a"), Entry::new("a", "a")]);
    inputs.set_counted("no.such", Vec::new(), None);
    inputs.set_counted("tank.level", Vec::new(), None);
    inputs.set_chosen("tank.start", numbers(&[f64::NAN]));
    inputs.set_factor(
        "walk.time",
        vec![factor("t", "m", [2.0, 1.0, 3.0], SpreadKind::Positive)],
    );
    let faults = evaluated().set(inputs).unwrap_err();
    let texts: Vec<String> = faults.iter().map(ToString::to_string).collect();
    assert_eq!(
        texts,
        [
            "there is no axis `roof`",
            "the entries of the axis `season` never change",
            "the axis `season` was given the entry `a` twice",
            "there is no leaf `no.such`",
            "there is no leaf `tank.level`",
            "`tank.start` is counted but was given a chosen value",
            "cell 0 of `tank.start` is not a finite number",
            "`walk.time` is in s, but the factor `t` is in m",
            "the factor `t` for `walk.time`: low, typical and high must not fall",
        ]
    );
    let mut inputs = every_operator_inputs();
    inputs.leaves.remove("tank.start");
    let faults = Evaluation::new(Arc::new(built(every_operator())), inputs, SEED).unwrap_err();
    assert_eq!(faults[0].to_string(), "`tank.start` has no value yet");
}
