use super::*;
use crate::figures::expression::figure;
use crate::figures::graph::{Graph, GraphBuilder};
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::SpreadKind;
use crate::figures::samples::{SEED, built, factor};
use crate::figures::unit;

fn graph() -> Arc<Graph> {
    let mut graph = GraphBuilder::new();
    let _ = graph.counted("homes", "homes", unit::HOMES);
    let _ = graph.factor("people_each", "people per home", unit::PEOPLE_PER_HOME);
    graph
        .figure("people", "people", unit::PEOPLE)
        .formula(figure("homes") * figure("people_each"));
    Arc::new(built(graph))
}

fn plan(graph: &Arc<Graph>, homes: f64, seed: u64) -> Evaluation {
    let mut inputs = Inputs::new();
    inputs.set_counted("homes", numbers(&[homes]), None);
    inputs.set_factor(
        "people_each",
        vec![factor(
            "people_each",
            "person/home",
            [2.0, 2.5, 3.0],
            SpreadKind::Positive,
        )],
    );
    Evaluation::new(Arc::clone(graph), inputs, seed).unwrap()
}

#[track_caller]
fn check(first_homes: f64, second_homes: f64, expected: &str) {
    let graph = graph();
    let (mut first, mut second) = (plan(&graph, first_homes, SEED), plan(&graph, second_homes, SEED));
    let index = graph.index("people").unwrap();
    let found = difference(&mut first, &mut second, index, 0, System::Metric).unwrap();
    let shown = shown_difference(&found, &unit::PEOPLE, System::Metric);
    assert_eq!(shown.unwrap_or_default(), expected);
}

#[test]
fn shared_doubt_cancels_between_alternatives() {
    // 1,000 and 1,040 homes: 2,000 to 3,000 people and a little more, ranges that lie nearly upon one another. Paired,
    // the 40 homes more are 80 to 120 people more.
    check(1_000.0, 1_040.0, "100 people more");
    check(1_040.0, 1_000.0, "100 people less");
}

#[test]
fn a_difference_within_rounding_is_not_clear() {
    // About 2,500 people are shown to the nearest 100: 2,520 as 2,500, which is no difference to anybody, and 2,560 as
    // 2,600, which is less than 100 more.
    check(1_000.0, 1_008.0, "");
    check(1_000.0, 1_000.0, "");
    check(1_000.0, 1_024.0, "no clear difference");
}

#[test]
fn a_difference_within_its_range_is_not_clear() {
    let graph = graph();
    let (mut first, mut second) = (plan(&graph, 1_000.0, SEED), plan(&graph, 1_000.0, SEED));
    let mut inputs = Inputs::new();
    // The second alternative rests on another factor: nothing is shared, so nothing cancels.
    inputs.set_factor(
        "people_each",
        vec![factor(
            "people_else",
            "person/home",
            [2.0, 2.7, 3.2],
            SpreadKind::Positive,
        )],
    );
    second.set(inputs).unwrap();
    let index = graph.index("people").unwrap();
    let found = difference(&mut first, &mut second, index, 0, System::Metric).unwrap();
    assert!(matches!(found.range, Range::Likely { low, high, .. } if low < 0.0 && high > 0.0));
    assert_eq!(
        shown_difference(&found, &unit::PEOPLE, System::Metric),
        Some("no clear difference".to_owned())
    );
}

#[test]
fn certain_figures_differ_as_soon_as_rounding_shows_it() {
    let graph = graph();
    let (mut first, mut second) = (plan(&graph, 10.0, SEED), plan(&graph, 12.0, SEED));
    let index = graph.index("homes").unwrap();
    let found = difference(&mut first, &mut second, index, 0, System::Metric).unwrap();
    assert_eq!(found.range, Range::Certain);
    assert_eq!(
        shown_difference(&found, &unit::HOMES, System::Metric),
        Some("2 homes more".to_owned())
    );
}

/// What is said of a certain figure of this unit that was and is so much.
#[track_caller]
fn said(unit: unit::Unit, system: System, from: f64, to: f64) -> Option<String> {
    let mut graph = GraphBuilder::new();
    let _ = graph.counted("counted", "counted", unit);
    let graph = Arc::new(built(graph));
    let plan = |value: f64| {
        let mut inputs = Inputs::new();
        inputs.set_counted("counted", numbers(&[value]), None);
        Evaluation::new(Arc::clone(&graph), inputs, SEED).unwrap()
    };
    let index = graph.index("counted").unwrap();
    let found = difference(&mut plan(from), &mut plan(to), index, 0, system).unwrap();
    shown_difference(&found, &unit, system)
}

#[test]
fn the_difference_is_what_lies_between_the_numbers_as_shown() {
    const FOOT_M: f64 = 0.3048;
    let feet = |from: f64, to: f64| said(unit::LENGTH, System::Customary, from * FOOT_M, to * FOOT_M);
    // Shown 1,180 ft and 1,190 ft.
    assert_eq!(feet(1_178.9, 1_192.8).as_deref(), Some("10 ft more"));
    assert_eq!(feet(1_192.8, 1_178.9).as_deref(), Some("10 ft less"));
    // Shown 998 ft and 1,010 ft, each in steps of its own.
    assert_eq!(feet(998.0, 1_009.0).as_deref(), Some("12 ft more"));
    assert_eq!(feet(1_182.0, 1_183.0), None, "both are shown as 1,180 ft");
    assert_eq!(
        feet(1_184.0, 1_186.0).as_deref(),
        Some("no clear difference"),
        "2 ft of 10"
    );
    let per_land = unit::HOMES_PER_LAND;
    let acre_m2 = unit::ACRE_M2;
    let per_acre = |from: f64, to: f64| said(per_land, System::Customary, from / acre_m2, to / acre_m2);
    let less = per_acre(7.8134, 7.6714).unwrap();
    assert!(
        less.starts_with("0.14 ") && less.ends_with(" less"),
        "7.81 and 7.67: {less}"
    );
}

#[test]
fn every_difference_equals_that_of_the_numbers_read_from_the_page() {
    let read = |value: f64| {
        let shown = display::shown(&Cell::Number(value), &Range::Certain, &unit::LENGTH, System::Metric);
        let digits = shown.short.replace(',', "").replace(" m", "");
        digits.parse::<f64>().unwrap()
    };
    for place in 1_u32..400 {
        let (from, to) = (f64::from(place * place) * 0.0377, f64::from(place * 97) * 0.0613);
        let found = said(unit::LENGTH, System::Metric, from, to);
        let between = read(to) - read(from);
        match found.as_deref() {
            None => assert!(between.abs() < 1e-9, "{from} {to}"),
            Some("no clear difference") => assert!((to - from).abs() < 100.0, "{from} {to}"),
            Some(words) => {
                let (amount, word) = words.split_once(" m ").unwrap();
                let amount: f64 = amount.replace(',', "").parse().unwrap();
                assert!((amount - between.abs()).abs() < 1e-9, "{from} {to}: {words}");
                assert_eq!(word, if between < 0.0 { "less" } else { "more" }, "{from} {to}");
            }
        }
    }
}

#[test]
fn shares_differ_by_points() {
    let share = |from: f64, to: f64| said(unit::SHARE, System::Metric, from, to);
    assert_eq!(share(1.0, 0.99).as_deref(), Some("1 point less"));
    assert_eq!(share(0.402, 0.471).as_deref(), Some("7 points more"));
    assert_eq!(share(0.402, 0.398), None, "both are shown as 40%");
}

#[test]
fn what_moved_is_told_as_far_as_the_range_it_had_allows() {
    let told = |was: Option<f64>, is: Option<f64>, low: f64, high: f64| {
        let range = Range::Likely { low, high, failed: 0 };
        moved(was, is, &range, &unit::SHARE, System::Metric).map(|told| (told.was, told.is, told.steps))
    };
    let pair = |was: &str, is: &str, steps: f64| Some((was.to_owned(), is.to_owned(), steps));
    // A range of 50 points: shown to the nearest five.
    assert_eq!(told(Some(0.25), Some(0.5), 0.25, 0.75), pair("25%", "50%", 5.0));
    assert_eq!(told(Some(0.48), Some(0.51), 0.25, 0.75), None, "both are shown as 50%");
    assert_eq!(told(Some(0.47), Some(0.48), 0.25, 0.75), None, "one of five points");
    assert_eq!(told(None, Some(0.5), 0.25, 0.75), pair("—", "50%", f64::INFINITY));
    assert_eq!(told(Some(0.5), None, 0.25, 0.75), pair("50%", "—", f64::INFINITY));
    assert_eq!(told(None, None, 0.25, 0.75), None);
    let homes = |was: f64, is: f64| moved(Some(was), Some(is), &Range::Certain, &unit::HOMES, System::Metric);
    assert_eq!(homes(1_700.0, 1.0).map(|told| told.is), Some("1 home".to_owned()));
    assert_eq!(homes(700.0, 700.0), None);
}

#[test]
fn what_does_not_pair_is_not_compared() {
    let one = graph();
    let index = one.index("people").unwrap();
    let mut first = plan(&one, 10.0, SEED);
    let mut other_seed = plan(&one, 10.0, SEED + 1);
    let mut other_graph = plan(&graph(), 10.0, SEED);
    assert_eq!(
        difference(&mut first, &mut other_seed, index, 0, System::Metric),
        Err(NotComparable::OtherSeed)
    );
    assert_eq!(
        difference(&mut first, &mut other_graph, index, 0, System::Metric),
        Err(NotComparable::OtherGraph)
    );
}
