//! Random graphs and random edits: incremental equals from scratch, exactly, and printed bases read back.

use std::sync::Arc;

use super::axis::{Entries, Entry};
use super::evaluate::Evaluation;
use super::expression::{Binary, Comparison, Expression, choose, constant, figure};
use super::graph::{Graph, GraphBuilder, LeafKind};
use super::inputs::Inputs;
use super::leaf::{Cell, LeafValue, SpreadKind};
use super::method::{Method, MethodInput, MethodStep, MethodTerm};
use super::readback::check_basis_loosely;
use super::samples::{SEED, factor};
use super::unit::{self, Dimension, System};

/// Graphs per property: all of them in an optimized build, fewer while developing.
const GRAPHS: u64 = if cfg!(debug_assertions) { 60 } else { 1_000 };

/// SplitMix64.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }

    fn chance(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }

    fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())].clone()
    }

    /// Whole numbers, tenths and long fractions, zero and below zero among them.
    fn value(&mut self) -> f64 {
        match self.below(5) {
            0 => 0.0,
            1 => self.below(2_000) as f64 - 500.0,
            2 => self.below(100) as f64 / 10.0,
            _ => self.below(1_000_000_007) as f64 / 77_777_777.0,
        }
    }
}

/// The largest of its input less the smallest.
static SPAN: Method = Method {
    name: || "span",
    words: || "The largest less the smallest.",
    inputs: &[Dimension::NONE],
    gives: Dimension::NONE,
    evaluate: |inputs, results| {
        let (Some(largest), Some(smallest)) = (
            inputs[0].iter().copied().reduce(f64::max),
            inputs[0].iter().copied().reduce(f64::min),
        ) else {
            return Err("nothing has no span".to_owned());
        };
        results[0] = largest - smallest;
        Ok(())
    },
    steps: |inputs: &[MethodInput], _| {
        let place_of = |wanted: fn(f64, f64) -> bool| {
            let values = &inputs[0].values;
            (0..values.len())
                .reduce(|best, at| if wanted(values[at], values[best]) { at } else { best })
                .unwrap_or(0)
        };
        let cell = |cell| Box::new(Expression::Figure(MethodTerm::Input { input: 0, cell }));
        vec![MethodStep {
            title: "span".to_owned(),
            unit: unit::NUMBER,
            formula: Expression::Binary(
                Binary::Subtract,
                cell(place_of(|a, b| a > b)),
                cell(place_of(|a, b| a < b)),
            ),
        }]
    },
};

const AXES: [&str; 3] = ["street", "house", "season"];

/// A random graph of plain numbers; a node's axes are a part of [`AXES`] in their order.
fn random_graph(random: &mut Random) -> Graph {
    let mut graph = GraphBuilder::new();
    graph.open_axis("street", "street");
    graph.open_axis("house", "house");
    graph.open_axis("knot", "knot");
    graph.fixed_axis("season", "season", &[("dry", "dry"), ("wet", "wet"), ("cold", "cold")]);
    let _ = graph.counted("knots_x", "knots", unit::NUMBER).over(&["knot"]);
    let _ = graph
        .counted("knots_y", "heights", unit::NUMBER)
        .over(&["street", "knot"]);

    let mut nodes: Vec<(String, Vec<&str>)> = Vec::new();
    for place in 0..3 + random.below(5) {
        let id = format!("leaf_{place}");
        let axes: Vec<&str> = AXES.into_iter().filter(|_| random.chance(35)).collect();
        let unit = random.pick(&[unit::NUMBER, unit::NUMBER, unit::SHARE]);
        let _ = match random.below(3) {
            0 => graph.counted(&id, &id, unit).over(&axes),
            1 => graph.chosen(&id, &id, unit).over(&axes),
            _ => graph.factor(&id, &id, unit).over(&axes),
        };
        nodes.push((id, axes));
    }
    for place in 0..4 + random.below(20) {
        let id = format!("figure_{place}");
        let axes = random_figure(random, &mut graph, &id, &nodes);
        nodes.push((id, axes));
    }
    graph.build().unwrap_or_else(|faults| panic!("{faults:#?}"))
}

fn random_figure(
    random: &mut Random,
    graph: &mut GraphBuilder,
    id: &str,
    nodes: &[(String, Vec<&'static str>)],
) -> Vec<&'static str> {
    let (of, of_axes) = random.pick(nodes);
    let (other, other_axes) = random.pick(nodes);
    let union = |parts: &[&[&'static str]]| -> Vec<&'static str> {
        AXES.into_iter()
            .filter(|axis| parts.iter().any(|part| part.contains(axis)))
            .collect()
    };
    let unit = random.pick(&[unit::NUMBER, unit::SHARE]);
    let along = of_axes.first().copied();
    let without = |axes: &[&'static str], axis: &str| -> Vec<&'static str> {
        axes.iter().copied().filter(|own| *own != axis).collect()
    };
    match (random.below(9), along) {
        (8, _) if of_axes.contains(&"season") => {
            let axes = without(&of_axes, "season");
            let entry = random.pick(&["dry", "wet", "cold"]);
            graph.figure(id, id, unit).over(&axes).entry(&of, "season", entry);
            axes
        }
        (0, Some(axis)) => {
            let axes = without(&of_axes, axis);
            graph.figure(id, id, unit).over(&axes).sum(&of, &[axis]);
            axes
        }
        (1, Some(axis)) => {
            let axes = without(&union(&[&of_axes, &other_axes]), axis);
            graph
                .figure(id, id, unit)
                .over(&axes)
                .weighted_mean(&of, &other, &[axis]);
            axes
        }
        (2, Some(axis)) => {
            let axes = without(&of_axes, axis);
            graph.figure(id, id, unit).over(&axes).method(&SPAN, &[&of], &[axis]);
            axes
        }
        (3, _) => {
            let axes = union(&[&of_axes, &["street"]]);
            graph
                .figure(id, id, unit)
                .over(&axes)
                .lookup("knots_x", "knots_y", "knot", &of);
            axes
        }
        (4, Some(axis)) if !other_axes.contains(&axis) => {
            let axes = union(&[&of_axes, &other_axes]);
            let least = random.chance(50).then_some(other.as_str());
            let most = random.chance(30).then_some(of.as_str());
            graph
                .figure(id, id, unit)
                .over(&axes)
                .running_balance(&other, &of, axis, least, most);
            axes
        }
        _ => {
            let axes = union(&[&of_axes, &other_axes]);
            let formula = random_formula(random, &of, &other);
            graph.figure(id, id, unit).over(&axes).formula(formula);
            axes
        }
    }
}

fn random_formula(random: &mut Random, of: &str, other: &str) -> Expression<String> {
    let (a, b) = (figure(of), figure(other));
    let number = |value| constant(value, unit::NUMBER);
    match random.below(10) {
        0 => a + b,
        1 => a - b,
        2 => a * b,
        3 => a / b,
        4 => a.at_most(b),
        5 => a.at_least(b) - number(2.5),
        6 => (a + b.clone() * b).to_power(number(random.pick(&[0.5, 2.0, -1.0]))),
        7 => (a / number(40.0)).exponential() * b,
        8 => a.logarithm() + b,
        _ => choose(
            a.clone(),
            Comparison::AtLeast,
            b.clone(),
            a.clone() / b.clone(),
            b - a * number(-3.0),
        ),
    }
}

/// A value for every leaf, or for some, over axes of these lengths.
fn random_leaf(random: &mut Random, kind: LeafKind, id: &str, count: usize) -> LeafValue {
    let cells = |random: &mut Random| -> Vec<Cell> {
        let mut cells: Vec<f64> = (0..count).map(|_| random.value()).collect();
        if id == "knots_x" && random.chance(90) {
            cells.sort_by(f64::total_cmp);
        }
        let mut cell = |value| {
            if random.chance(3) {
                Cell::Unknown(format!("{id} is not drawn"))
            } else {
                Cell::Number(value)
            }
        };
        cells.into_iter().map(&mut cell).collect()
    };
    match kind {
        LeafKind::Counted => LeafValue::Counted {
            cells: cells(random),
            counted: None,
        },
        LeafKind::Chosen => LeafValue::Chosen { cells: cells(random) },
        LeafKind::Factor => LeafValue::Factor {
            rows: (0..count)
                .map(|place| {
                    let mut values = [0.0; 3].map(|_| (random.value() / 10.0).abs() + 0.01);
                    values.sort_by(f64::total_cmp);
                    factor(&format!("{id}_{place}"), "1", values, SpreadKind::Positive)
                })
                .collect(),
        },
    }
}

/// Sets random leaves in `inputs` and in `all`; new entries come with every leaf over their axis.
fn random_edit(random: &mut Random, graph: &Graph, all: &mut Inputs, everything: bool) -> Inputs {
    let mut edit = Inputs::new();
    for axis in ["street", "house", "knot"] {
        if everything || random.chance(15) {
            let count = if axis == "house" {
                random.below(18)
            } else {
                random.below(5)
            };
            let entries: Vec<Entry> = (0..count)
                .map(|at| Entry::new(format!("{axis}_{at}"), format!("{axis} {at}")))
                .collect();
            edit.set_entries(axis, entries);
        }
    }
    all.entries.extend(edit.entries.clone());
    for index in graph.indices() {
        let node = graph.node(index);
        let Some(kind) = graph.leaf_kind(index) else {
            continue;
        };
        let axes = node.axes.iter().map(|axis| graph.axis(*axis).id.as_str());
        if everything || axes.clone().any(|axis| edit.entries.contains_key(axis)) || random.chance(20) {
            let count = axes
                .map(|axis| all.entries.get(axis).map_or(3, Entries::count))
                .product();
            edit.leaves
                .insert(node.id.clone(), random_leaf(random, kind, &node.id, count));
        }
    }
    all.leaves.extend(edit.leaves.clone());
    edit
}

#[test]
fn incremental_equals_from_scratch_exactly() {
    for seed in 0..GRAPHS {
        let mut random = Random(seed);
        let graph = Arc::new(random_graph(&mut random));
        let mut all = Inputs::new();
        let first = random_edit(&mut random, &graph, &mut all, true);
        let mut incremental = Evaluation::new(Arc::clone(&graph), first, SEED).unwrap();
        for edit in 0..6 {
            let changes = random_edit(&mut random, &graph, &mut all, false);
            incremental.set(changes).unwrap();
            let mut scratch = Evaluation::new(Arc::clone(&graph), all.clone(), SEED).unwrap();
            for index in graph.indices() {
                let (one, other) = (incremental.cells(index), scratch.cells(index));
                assert_eq!(one, other, "seed {seed}, edit {edit}, {}", graph.node(index).id);
                let bits = |cells: &[Cell]| {
                    cells
                        .iter()
                        .map(|cell| cell.number().map(f64::to_bits))
                        .collect::<Vec<_>>()
                };
                assert_eq!(bits(&one), bits(&other), "seed {seed}, edit {edit}");
            }
            let wanted = graph.node(random.pick(&graph.indices().collect::<Vec<_>>())).id.clone();
            let index = graph.index(&wanted).unwrap();
            for cell in 0..incremental.cell_count(index).min(2) {
                assert_eq!(
                    incremental.range(index, cell),
                    scratch.range(index, cell),
                    "seed {seed}, edit {edit}, {wanted}"
                );
            }
        }
    }
}

#[test]
fn a_number_missing_has_a_reason_and_none_is_nan() {
    for seed in 0..GRAPHS {
        let mut random = Random(seed);
        let graph = Arc::new(random_graph(&mut random));
        let inputs = random_edit(&mut random, &graph, &mut Inputs::new(), true);
        let evaluation = Evaluation::new(Arc::clone(&graph), inputs, SEED).unwrap();
        for index in graph.indices() {
            for cell in evaluation.cells(index) {
                match cell {
                    Cell::Number(value) => assert!(value.is_finite(), "seed {seed}"),
                    Cell::Unknown(reason) => assert!(!reason.is_empty(), "seed {seed}, {}", graph.node(index).id),
                }
            }
        }
    }
}

#[test]
fn every_printed_step_of_a_random_graph_leads_to_its_number() {
    let mut checked = 0;
    for seed in 0..GRAPHS {
        let mut random = Random(seed);
        let graph = Arc::new(random_graph(&mut random));
        let inputs = random_edit(&mut random, &graph, &mut Inputs::new(), true);
        let evaluation = Evaluation::new(Arc::clone(&graph), inputs, SEED).unwrap();
        for index in graph.indices() {
            for cell in 0..evaluation.cell_count(index).min(4) {
                checked += check_basis_loosely(&evaluation.basis(index, cell, System::Metric));
            }
        }
    }
    assert!(checked > 10 * GRAPHS as usize);
}
