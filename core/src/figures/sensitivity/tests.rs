use std::sync::Arc;

use super::*;
use crate::figures::expression::{Comparison, Expression, choose, constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::Inputs;
use crate::figures::leaf::SpreadKind;
use crate::figures::samples::{SEED, built, factor, grouped};
use crate::figures::unit;

#[test]
fn equal_values_share_their_mean_rank() {
    let ranks = standardized_ranks(&[3.0, 1.0, 3.0, 0.5]).unwrap();
    // Ranks 2.5, 1, 2.5, 0 about their mean 1.5, by √4.5.
    let size = 4.5_f64.sqrt();
    for (found, expected) in ranks.iter().zip([1.0, -0.5, 1.0, -1.5]) {
        assert!((found - expected / size).abs() < 1e-15);
    }
    assert_eq!(standardized_ranks(&[2.0; 5]), None);
    assert_eq!(standardized_ranks(&[]), None);
}

#[test]
fn elimination_solves_and_knows_when_it_cannot() {
    let solution = solve(vec![vec![0.0, 2.0, 6.0], vec![4.0, 1.0, 7.0]]).unwrap();
    assert!((solution[0] - 1.0).abs() < 1e-15 && (solution[1] - 3.0).abs() < 1e-15);
    assert_eq!(solve(vec![vec![1.0, 1.0, 6.0], vec![1.0, 1.0, 7.0]]), None);
}

/// A figure `y` of three factors alike, of which `group` may tie the first two.
fn evaluated(formula: Expression<String>, group: Option<&str>) -> Evaluation {
    let mut graph = GraphBuilder::new();
    let mut inputs = Inputs::new();
    for id in ["a", "b", "c"] {
        let _ = graph.factor(id, id, unit::NUMBER);
        let row = factor(id, "1", [0.5, 1.0, 2.0], SpreadKind::Positive);
        let tied = group.filter(|_| id != "c");
        inputs.set_factor(id, vec![tied.map_or(row.clone(), |group| grouped(&row, group))]);
    }
    graph.figure("y", "y", unit::NUMBER).formula(formula);
    Evaluation::new(Arc::new(built(graph)), inputs, SEED).unwrap()
}

fn sensitivity(formula: Expression<String>, group: Option<&str>) -> Result<Sensitivity, NoSensitivity> {
    let mut evaluation = evaluated(formula, group);
    let index = evaluation.graph().index("y").unwrap();
    evaluation.sensitivity(index, 0)
}

fn cube(id: &str) -> Expression<String> {
    figure(id).to_power(constant(3.0, unit::NUMBER))
}

#[test]
fn shares_are_those_of_the_normal_case() {
    // ln y = 3 ln a − ln b with normals alike: correlations 3/√10 and −1/√10. For a pair of normals Spearman's is
    // (6/π) asin(ρ/2) (Pearson 1907, from memory): 0.9437 and −0.3031, so shares 0.9065 and 0.0935.
    let found = sensitivity(cube("a") / figure("b"), None).unwrap();
    let ids: Vec<&str> = found.influences.iter().map(|one| one.id.as_str()).collect();
    assert_eq!(ids, ["a", "b"], "only what goes into it");
    assert!((found.influences[0].share - 0.9065).abs() < 0.02, "{found:?}");
    assert!((found.influences.iter().map(|one| one.share).sum::<f64>() - 1.0).abs() < 1e-12);
    assert!(found.influences[0].rises && !found.influences[1].rises);
    assert!(found.explained > 0.95, "{found:?}");
}

#[test]
fn factors_of_one_group_count_as_one() {
    let found = sensitivity(figure("a") * figure("b") * figure("c"), Some("tied")).unwrap();
    let ids: Vec<&str> = found.influences.iter().map(|one| one.id.as_str()).collect();
    assert_eq!(ids, ["tied", "c"]);
    assert_eq!(found.influences[0].titles, ["factor a", "factor b"]);
    // Twice the spread, four times the variance: Spearman's 0.8895² against 0.4310² of ρ = 2/√5 and 1/√5.
    assert!((found.influences[0].share - 0.81).abs() < 0.03, "{found:?}");
}

#[test]
fn a_relation_that_turns_is_told_by_what_is_explained() {
    let bent = (figure("a") - figure("b").to_power(constant(0.0, unit::NUMBER))).to_power(constant(2.0, unit::NUMBER));
    let found = sensitivity(bent, None).unwrap();
    assert!(found.explained < 0.5, "{found:?}");
}

#[test]
fn degenerate_cases_say_so() {
    assert_eq!(
        sensitivity(constant(2.0, unit::NUMBER), None),
        Err(NoSensitivity::Certain)
    );
    let same = choose(
        figure("a"),
        Comparison::Above,
        constant(0.0, unit::NUMBER),
        constant(2.0, unit::NUMBER),
        figure("a"),
    );
    assert_eq!(sensitivity(same, None), Err(NoSensitivity::Unmoved));
    // A factor that cancels out leaves only the rounding of the arithmetic behind.
    let cancelled = figure("a") * figure("b") / figure("a") / figure("b");
    assert_eq!(sensitivity(cancelled, None), Err(NoSensitivity::Unmoved));
    let failing = (figure("a") - constant(1.0, unit::NUMBER)).logarithm();
    assert_eq!(sensitivity(failing, None), Err(NoSensitivity::TooFewDraws));
    let rows = vec![standardized_ranks(&[1.0, 2.0, 3.0]).unwrap(); 2];
    assert_eq!(regress(&rows, &rows[0]), None, "two factors that cannot be told apart");
}
