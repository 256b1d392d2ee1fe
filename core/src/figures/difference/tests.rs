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
    assert_eq!(shown_difference(&found, &unit::PEOPLE, System::Metric).text, expected);
}

#[test]
fn shared_doubt_cancels_between_alternatives() {
    // 1,000 and 1,040 homes: 2,000 to 3,000 people and a little more, ranges that lie nearly upon one another. Paired,
    // the 40 homes more are 80 to 120 people more.
    check(1_000.0, 1_040.0, "about 100 people more, likely 80 to 120");
    check(1_040.0, 1_000.0, "about 100 people less, likely 80 to 120");
}

#[test]
fn a_difference_within_rounding_is_not_clear() {
    // About 2,500 people are shown to the nearest 50 or 100.
    check(1_000.0, 1_010.0, "no clear difference");
    check(1_000.0, 1_000.0, "no clear difference");
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
        shown_difference(&found, &unit::PEOPLE, System::Metric).text,
        "no clear difference"
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
        shown_difference(&found, &unit::HOMES, System::Metric).text,
        "2 homes more"
    );
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
