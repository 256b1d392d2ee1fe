use super::*;
use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::samples::{SEED, built, evaluated, factor, grouped};
use crate::figures::unit;

fn spread(low: f64, typical: f64, high: f64, kind: SpreadKind) -> Spread {
    Spread {
        low,
        typical,
        high,
        kind,
    }
}

#[test]
fn quantiles_meet_low_typical_and_high_exactly() {
    for spread in [
        spread(2.0, 3.0, 7.0, SpreadKind::Positive),
        spread(0.1, 0.6, 0.7, SpreadKind::Share),
        spread(1.0, 1.0, 2.0, SpreadKind::Positive),
    ] {
        for (u, expected) in [(0.1, spread.low), (0.5, spread.typical), (0.9, spread.high)] {
            let found = spread_quantile(&spread, u);
            assert!((found / expected - 1.0).abs() < 1e-12, "{spread:?} at {u}: {found}");
        }
    }
    // A triangle from 0 by 1 to 4: below its peak lies a quarter, and the distribution is u = x² / 4 there.
    let triangle = spread(0.0, 1.0, 4.0, SpreadKind::Bounds);
    for (u, expected) in [(0.25, 1.0), (0.0625, 0.5), (1.0 - 1.0 / 12.0, 3.0)] {
        assert!((spread_quantile(&triangle, u) - expected).abs() < 1e-12, "{u}");
    }
    let none = spread(3.0, 3.0, 3.0, SpreadKind::Bounds);
    assert!((spread_quantile(&none, 0.2) - 3.0).abs() < 1e-15);
}

#[test]
fn draws_never_leave_what_their_kind_allows() {
    let kinds = [
        (spread(1e-9, 1.0, 1e9, SpreadKind::Positive), 0.0, f64::INFINITY),
        (spread(0.001, 0.5, 0.999, SpreadKind::Share), 0.0, 1.0),
        (spread(-3.0, -1.0, 5.0, SpreadKind::Bounds), -3.0, 5.0),
    ];
    for (spread, least, most) in kinds {
        for u in [1e-16, 1e-9, 0.3, 0.5, 0.999_999, 1.0 - 1e-16] {
            let value = spread_quantile(&spread, u);
            assert!(value >= least && value <= most, "{spread:?} at {u}: {value}");
        }
    }
}

/// A figure that is one factor alone.
fn one_factor(row: std::sync::Arc<Factor>) -> Evaluation {
    let mut graph = GraphBuilder::new();
    let _ = graph.factor("f", "f", unit::NUMBER);
    graph.figure("same", "same", unit::NUMBER).formula(figure("f"));
    let mut inputs = Inputs::new();
    inputs.set_factor("f", vec![row]);
    Evaluation::new(std::sync::Arc::new(built(graph)), inputs, SEED).unwrap()
}

#[test]
fn percentiles_of_draws_match_low_typical_and_high() {
    for (kind, [low, typical, high]) in [
        (SpreadKind::Positive, [2.0, 3.0, 7.0]),
        (SpreadKind::Share, [0.1, 0.6, 0.7]),
    ] {
        let mut evaluation = one_factor(factor("f", "1", [low, typical, high], kind));
        let index = evaluation.graph().index("same").unwrap();
        let Range::Likely {
            low: p10,
            high: p90,
            failed: 0,
        } = evaluation.range(index, 0)
        else {
            panic!("no range");
        };
        // The share of 2,000 draws below a percentile is off by at most 3 × √(0.1 × 0.9 / 2000) = 0.02 or so.
        let quantile = |u: f64| spread_quantile(&spread(low, typical, high, kind), u);
        assert!(quantile(0.08) < p10 && p10 < quantile(0.12), "{p10}");
        assert!(quantile(0.88) < p90 && p90 < quantile(0.92), "{p90}");
        let mut sorted = evaluation.drawn(index).cell(0).to_vec();
        sorted.sort_by(f64::total_cmp);
        let median = percentile(&sorted, 0.5).unwrap();
        assert!(quantile(0.466) < median && median < quantile(0.534), "{median}");
    }
}

/// A rule's typical value is often its least or its largest, which few draws of a triangle come near.
#[test]
fn a_range_holds_the_number_itself() {
    for [low, typical, high] in [[6.0, 6.0, 10.0], [3.0, 10.0, 10.0], [3.0, 5.0, 10.0]] {
        let mut evaluation = one_factor(factor("f", "1", [low, typical, high], SpreadKind::Bounds));
        let index = evaluation.graph().index("same").unwrap();
        let Range::Likely {
            low: p10, high: p90, ..
        } = evaluation.range(index, 0)
        else {
            panic!("no range");
        };
        assert!(
            p10 <= typical && typical <= p90,
            "{typical} is not within {p10} to {p90}"
        );
        assert!(p10 < p90 && low <= p10 && p90 <= high);
    }
}

#[test]
fn percentiles_are_of_the_stated_definition() {
    // Definition 7 of Hyndman and Fan: (n − 1) p. Worked by hand.
    let values = [1.0, 2.0, 3.0, 4.0, 10.0];
    for (share, expected) in [(0.0, 1.0), (0.1, 1.4), (0.5, 3.0), (0.9, 7.6), (1.0, 10.0)] {
        assert!(
            (percentile(&values, share).unwrap() - expected).abs() < 1e-12,
            "{share}"
        );
    }
    assert_eq!(percentile(&[], 0.5), None);
}

#[test]
fn missing_draws_are_told_and_too_many_leave_no_range() {
    let mut draws = vec![1.0; DRAWS];
    draws[..MOST_FAILED].fill(f64::NAN);
    assert_eq!(
        range_of(&draws),
        Range::Likely {
            low: 1.0,
            high: 1.0,
            failed: MOST_FAILED as u32
        }
    );
    draws[MOST_FAILED] = f64::NAN;
    assert_eq!(
        range_of(&draws),
        Range::Unknown {
            failed: MOST_FAILED as u32 + 1
        }
    );
}

#[test]
fn a_figure_without_doubt_is_certain_and_costs_one_lane() {
    let mut evaluation = evaluated();
    let certain = evaluation.graph().index("tank.level").unwrap();
    assert_eq!(evaluation.range(certain, 0), Range::Certain);
    assert_eq!(evaluation.drawn(certain).lanes(), 1);
    let doubtful = evaluation.graph().index("curve.all_homes").unwrap();
    assert!(matches!(evaluation.range(doubtful, 0), Range::Likely { .. }));
}

#[test]
fn a_new_leaf_changes_no_other_leafs_draws() {
    let row = factor("f", "1", [2.0, 3.0, 7.0], SpreadKind::Positive);
    let mut alone = one_factor(row.clone());
    let mut graph = GraphBuilder::new();
    let _ = graph.factor("a", "declared before", unit::NUMBER);
    let _ = graph.factor("f", "f", unit::NUMBER);
    graph.figure("same", "same", unit::NUMBER).formula(figure("f"));
    graph
        .figure("both", "both", unit::NUMBER)
        .formula(figure("f") + figure("a"));
    let mut inputs = Inputs::new();
    inputs.set_factor("f", vec![row]);
    inputs.set_factor("a", vec![factor("a", "1", [2.0, 3.0, 7.0], SpreadKind::Positive)]);
    let mut together = Evaluation::new(std::sync::Arc::new(built(graph)), inputs, SEED).unwrap();
    let drawn = |evaluation: &mut Evaluation, id: &str| {
        let index = evaluation.graph().index(id).unwrap();
        evaluation.draw(&[index]);
        evaluation.drawn(index).cell(0).to_vec()
    };
    let first = drawn(&mut alone, "same");
    assert_eq!(first, drawn(&mut together, "same"));
    assert_ne!(first, drawn(&mut together, "a"), "another factor is drawn apart");
    let mut other_seed = alone.clone();
    other_seed.draws = Draws::new(SEED + 1, other_seed.graph.nodes.len());
    assert_ne!(first, drawn(&mut other_seed, "same"));
}

#[test]
fn ranges_do_not_flicker() {
    let mut evaluation = evaluated();
    let index = evaluation.graph().index("curve.all_homes").unwrap();
    let before = evaluation.range(index, 0);
    let mut inputs = Inputs::new();
    inputs.set_counted("tank.floor", numbers(&[1.0]), None);
    evaluation.set(inputs.clone()).unwrap();
    assert_eq!(evaluation.range(index, 0), before);
    assert_eq!(evaluated().range(index, 0), before);
}

#[test]
fn the_factors_of_a_group_move_together() {
    let mut graph = GraphBuilder::new();
    for id in ["a", "b", "c"] {
        let _ = graph.factor(id, id, unit::NUMBER);
    }
    graph
        .figure("tied", "tied", unit::NUMBER)
        .formula(figure("a") / figure("b"));
    graph
        .figure("free", "free", unit::NUMBER)
        .formula(figure("a") / figure("c"));
    let row = |id: &str| factor(id, "1", [2.0, 3.0, 7.0], SpreadKind::Positive);
    let mut inputs = Inputs::new();
    inputs.set_factor("a", vec![grouped(&row("a"), "ab")]);
    inputs.set_factor("b", vec![grouped(&row("b"), "ab")]);
    inputs.set_factor("c", vec![row("c")]);
    let mut evaluation = Evaluation::new(std::sync::Arc::new(built(graph)), inputs, SEED).unwrap();
    let range = |evaluation: &mut Evaluation, id: &str| {
        let index = evaluation.graph().index(id).unwrap();
        evaluation.range(index, 0)
    };
    // Alike and tied, they cancel out; drawn apart, they do not.
    assert_eq!(range(&mut evaluation, "tied"), Range::Certain);
    assert!(matches!(range(&mut evaluation, "free"), Range::Likely { low, high, .. } if low < 0.6 && high > 1.6));
}

#[test]
fn a_draw_at_the_typical_values_is_the_value() {
    // With every factor set to one draw's values the values are that draw, to the bit.
    let mut evaluation = evaluated();
    let wanted: Vec<NodeIndex> = evaluation.graph().indices().collect();
    evaluation.draw(&wanted);
    for draw in [0, 999, DRAWS - 1] {
        let mut inputs = Inputs::new();
        for id in ["walk.time", "growth.share", "growth.doubling"] {
            let index = evaluation.graph().index(id).unwrap();
            let Some(LeafValue::Factor { rows }) = evaluation.leaf(index) else {
                panic!("{id} is a factor");
            };
            let mut row = (*rows[0]).clone();
            let value = evaluation.drawn(index).at(0, draw);
            row.spread = spread(value, value, value, row.spread.kind);
            inputs.set_factor(id, vec![Arc::new(row)]);
        }
        let at_draw = evaluation.replaced(inputs).unwrap();
        for index in &wanted {
            for cell in 0..evaluation.cell_count(*index) {
                let (drawn, value) = (evaluation.drawn(*index).at(cell, draw), at_draw.cell(*index, cell));
                assert_eq!(
                    value.number().map(f64::to_bits),
                    Some(drawn.to_bits()),
                    "{}",
                    evaluation.graph().node(*index).id
                );
            }
        }
    }
}

#[test]
fn draws_are_forgotten_where_only_the_doubt_changed() {
    let mut evaluation = evaluated();
    let index = evaluation.graph().index("curve.all_homes").unwrap();
    let before = evaluation.range(index, 0);
    let mut inputs = Inputs::new();
    inputs.set_factor(
        "walk.time",
        vec![factor("walk.time", "min", [6.0, 6.5, 7.0], SpreadKind::Positive)],
    );
    let changes = evaluation.set(inputs).unwrap();
    assert_eq!(changes.worked, 2, "the typical value is the same, so the values stand");
    assert_ne!(evaluation.range(index, 0), before);
}
