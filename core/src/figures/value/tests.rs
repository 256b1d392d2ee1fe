use super::*;
use crate::figures::samples::evaluated;

#[track_caller]
fn check(id: &str, with_range: bool, expected: &str) {
    let mut evaluation = evaluated();
    let index = evaluation.graph().index(id).unwrap();
    let value = if with_range {
        evaluation.figure_value_with_range(index, System::Metric)
    } else {
        evaluation.figure_value(index, System::Metric)
    };
    assert_eq!(serde_json::to_string(&value).unwrap(), expected);
}

#[test]
fn figures_are_written_the_same_every_time() {
    check(
        "curve.all_homes",
        false,
        r#"{"id":"curve.all_homes","title":"all homes within a walk","unit":"home","value":56.0,"shown":"56 homes","changed_factors":[]}"#,
    );
    check(
        "tank.highest",
        true,
        r#"{"id":"tank.highest","title":"largest rains","unit":"m","axes":["place"],"rows":[{"at":["first"],"titles":["first"],"value":0.8,"low":0.8,"high":0.8,"shown":"0.800 m"},{"at":["second"],"titles":["second"],"value":0.45,"low":0.45,"high":0.45,"shown":"0.450 m"}],"changed_factors":[]}"#,
    );
}

#[test]
fn a_range_stands_beside_its_number() {
    let mut evaluation = evaluated();
    let index = evaluation.graph().index("curve.all_homes").unwrap();
    let value = evaluation.figure_value_with_range(index, System::Metric);
    let Content::Single(cell) = value.content else {
        panic!("a single number");
    };
    // A walk of 5 to 9 minutes: 38 homes at 300 s, 85.4 at 540 s.
    let (low, high) = (cell.low.unwrap(), cell.high.unwrap());
    assert!((low - 38.0).abs() < 1.5 && (high - 85.4).abs() < 3.0, "{low} {high}");
    assert!(cell.shown.starts_with("about 5"), "{}", cell.shown);
    assert_eq!(cell.failed_draws, None);
}

#[test]
fn a_factor_that_was_not_read_says_so_wherever_it_is_shown() {
    let evaluation = evaluated();
    let index = evaluation.graph().index("walk.time").unwrap();
    let Content::Single(cell) = evaluation.figure_value(index, System::Metric).content else {
        panic!("a single number");
    };
    assert_eq!(cell.shown, "6.50 min (common practice, no source)");
}
