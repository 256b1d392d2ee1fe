//! A hand-made graph that uses every operator, for the tests of the engine.

use crate::order;
use std::sync::Arc;

use super::axis::Entry;
use super::evaluate::Evaluation;
use super::expression::{Comparison, choose, constant, figure};
use super::graph::{Graph, GraphBuilder};
use super::inputs::{Inputs, numbers};
use super::leaf::{Factor, Given, How, Source, Spread, SpreadKind};
use super::method::{Method, MethodInput, MethodStep, MethodTerm};
use super::unit::{self, read_unit};
use super::{expression::Expression, leaf::Cell};

pub(crate) const SEED: u64 = 11;

/// A factor named `id` in `unit`.
pub(crate) fn factor(id: &str, unit: &str, [low, typical, high]: [f64; 3], kind: SpreadKind) -> Arc<Factor> {
    let (dimension, scale) = read_unit(unit).unwrap();
    Arc::new(Factor {
        id: id.to_owned(),
        title: format!("factor {id}"),
        dimension,
        unit: unit.to_owned(),
        scale,
        spread: Spread {
            low: low * scale,
            typical: typical * scale,
            high: high * scale,
            kind,
        },
        group: None,
        sources: vec![Source {
            gives: vec![Given::Low, Given::Typical, Given::High],
            how: How::CommonPractice,
            title: String::new(),
            edition: None,
            year: None,
            table: None,
            via: None,
        }],
        note: String::new(),
        shipped: None,
    })
}

pub(crate) fn grouped(row: &Arc<Factor>, group: &str) -> Arc<Factor> {
    let mut row = (**row).clone();
    row.group = Some(group.to_owned());
    Arc::new(row)
}

/// The two largest of three numbers in order, over the axis it makes: a method that keeps nothing of the axis it eats.
pub(crate) static LARGEST: Method = Method {
    name: || "the largest two",
    words: || "Of the lengths given, the largest and the next.",
    inputs: &[unit::LENGTH.dimension],
    gives: unit::LENGTH.dimension,
    evaluate: |inputs, results| {
        let mut sorted = inputs[0].to_vec();
        order::sort_by(&mut sorted, |a, b| b.total_cmp(a));
        if sorted.len() < results.len() {
            return Err("there are fewer lengths than places".to_owned());
        }
        results.copy_from_slice(&sorted[..results.len()]);
        Ok(())
    },
    steps: |inputs: &[MethodInput], cell| {
        let values = &inputs[0].values;
        let mut order: Vec<usize> = (0..values.len()).collect();
        order::sort_by(&mut order, |a, b| values[*b].total_cmp(&values[*a]));
        let term = MethodTerm::Input {
            input: 0,
            cell: order[cell],
        };
        vec![MethodStep {
            title: format!("{} is at place {}", inputs[0].labels[order[cell]], cell + 1),
            unit: unit::LENGTH,
            formula: Expression::Figure(term),
        }]
    },
};

pub(crate) fn every_operator() -> GraphBuilder {
    let mut graph = GraphBuilder::new();
    graph.fixed_axis(
        "season",
        "season",
        &[("winter", "winter"), ("spring", "spring"), ("summer", "summer")],
    );
    graph.fixed_axis("place", "place", &[("first", "first"), ("second", "second")]);
    graph.open_axis("kind", "kind");
    graph.open_axis("knot", "knot");
    graph.open_axis("plot", "plot");

    let leaves = [
        ("tank.start", unit::LENGTH, &[][..]),
        ("tank.empty", unit::LENGTH, &[]),
        ("tank.size", unit::LENGTH, &["kind"]),
        ("tank.rain", unit::LENGTH, &["season"]),
        ("tank.days", unit::SECONDS, &["season"]),
        ("tank.floor", unit::AREA, &[]),
        ("curve.x", unit::MINUTES, &["knot"]),
        ("curve.y", unit::HOMES, &["kind", "knot"]),
        ("plots.land", unit::LAND, &["plot"]),
        ("plots.share", unit::SHARE, &["plot"]),
    ];
    for (id, unit, axes) in leaves {
        let _ = graph
            .counted(id, &format!("the {}", id.replace('.', " ")), unit)
            .over(axes);
    }
    let _ = graph
        .chosen("tank.use", "water used", unit::LENGTH)
        .over(&["season", "kind"]);
    let _ = graph.factor("walk.time", "time of a walk", unit::MINUTES);
    let _ = graph.factor("growth.share", "growth", unit::SHARE);
    let _ = graph.factor("growth.doubling", "doubling", unit::NUMBER);

    graph
        .figure("tank.change", "change of the level", unit::LENGTH)
        .over(&["kind", "season"])
        .formula(figure("tank.rain") - figure("tank.use"));
    graph
        .figure("tank.level", "level", unit::LENGTH)
        .over(&["kind", "season"])
        .running_balance(
            "tank.start",
            "tank.change",
            "season",
            Some("tank.empty"),
            Some("tank.size"),
        );
    graph
        .figure("tank.free_level", "level without bounds", unit::LENGTH)
        .over(&["season", "kind"])
        .running_balance("tank.start", "tank.change", "season", None, None);
    graph
        .figure("tank.mean_level", "mean level", unit::LENGTH)
        .over(&["kind"])
        .weighted_mean("tank.level", "tank.days", &["season"]);
    graph
        .figure("tank.spring_level", "level in spring", unit::LENGTH)
        .over(&["kind"])
        .entry("tank.level", "season", "spring");
    graph
        .figure("tank.highest", "largest rains", unit::LENGTH)
        .over(&["place"])
        .method(&LARGEST, &["tank.rain"], &["season", "place"]);
    graph
        .figure("tank.side", "side of the floor", unit::LENGTH)
        .formula(figure("tank.floor").to_power(constant(0.5, unit::NUMBER)));
    graph
        .figure("growth.times", "growth over time", unit::NUMBER)
        .formula((figure("growth.doubling").logarithm() * figure("growth.share")).exponential());
    graph
        .figure("curve.homes", "homes within a walk", unit::HOMES)
        .over(&["kind"])
        .lookup("curve.x", "curve.y", "knot", "walk.time");
    graph
        .figure("curve.all_homes", "all homes within a walk", unit::HOMES)
        .sum("curve.homes", &["kind"]);
    graph
        .figure("curve.chosen", "few or many homes", unit::HOMES)
        .over(&["kind"])
        .formula(choose(
            figure("curve.homes"),
            Comparison::Below,
            constant(10.0, unit::HOMES),
            constant(0.0, unit::HOMES) - figure("curve.homes"),
            figure("curve.homes")
                .at_most(figure("curve.all_homes"))
                .at_least(constant(20.0, unit::HOMES)),
        ));
    graph
        .figure("plots.all", "land of all plots", unit::LAND)
        .sum("plots.land", &["plot"]);
    graph
        .figure("plots.mean_share", "mean share", unit::SHARE)
        .weighted_mean("plots.share", "plots.land", &["plot"]);
    graph
        .figure("plots.density", "homes on the plots", unit::HOMES_PER_LAND)
        .formula(figure("curve.all_homes") / figure("plots.all"));
    graph
}

pub(crate) fn every_operator_inputs() -> Inputs {
    let entries = |name: &str, count: usize| {
        (1..=count)
            .map(|at| Entry::new(format!("{name}_{at}"), format!("{name} {at}")))
            .collect::<Vec<_>>()
    };
    let mut inputs = Inputs::new();
    inputs.set_entries("kind", entries("kind", 2));
    inputs.set_entries("knot", entries("knot", 4));
    inputs.set_entries("plot", entries("plot", 20));
    for (id, values) in [
        ("tank.start", &[0.35][..]),
        ("tank.empty", &[0.0]),
        ("tank.size", &[0.6, 2.5]),
        ("tank.rain", &[0.8, 0.45, 0.123_456_789]),
        ("tank.days", &[90.0, 92.0, 91.0]),
        ("tank.floor", &[7.3]),
        ("curve.x", &[0.0, 120.0, 300.0, 600.0]),
        ("curve.y", &[0.0, 14.0, 33.0, 91.0, 0.0, 2.0, 5.0, 7.0]),
    ] {
        inputs.set_counted(id, numbers(values), Some("things"));
    }
    let lands: Vec<f64> = (0..20)
        .map(|plot| if plot % 7 == 3 { 0.0 } else { 311.7 * f64::from(plot) })
        .collect();
    let shares: Vec<f64> = (0..20).map(|plot| 0.04 * f64::from(plot) + 0.013).collect();
    inputs.set_counted("plots.land", numbers(&lands), Some("plots"));
    inputs.set_counted("plots.share", numbers(&shares), None);
    inputs.set_chosen("tank.use", numbers(&[0.2, 0.3, 0.5, 0.1, 0.9, 0.2]));
    for row in [
        factor("walk.time", "min", [5.0, 6.5, 9.0], SpreadKind::Positive),
        factor("growth.share", "share", [0.2, 0.3, 0.45], SpreadKind::Share),
        factor("growth.doubling", "1", [1.5, 2.0, 3.0], SpreadKind::Bounds),
    ] {
        inputs.set_factor(&row.id.clone(), vec![row]);
    }
    inputs
}

pub(crate) fn evaluated() -> Evaluation {
    Evaluation::new(Arc::new(built(every_operator())), every_operator_inputs(), SEED).unwrap()
}

pub(crate) fn built(builder: GraphBuilder) -> Graph {
    builder.build().unwrap_or_else(|faults| panic!("{faults:#?}"))
}

/// The numbers of a node's table.
#[track_caller]
pub(crate) fn table(evaluation: &Evaluation, id: &str) -> Vec<f64> {
    let index = evaluation.graph().index(id).unwrap();
    let number = |cell: Cell| match cell {
        Cell::Number(value) => value,
        Cell::Unknown(reason) => panic!("{id} {reason}"),
    };
    evaluation.cells(index).into_iter().map(number).collect()
}

/// Why the first cell of a node cannot be worked out.
#[track_caller]
pub(crate) fn reason(evaluation: &Evaluation, id: &str) -> String {
    match evaluation.value(id) {
        Some(Cell::Unknown(reason)) => reason,
        other => panic!("{id} is {other:?}"),
    }
}
