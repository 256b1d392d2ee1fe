//! New leaf values and axis entries, checked against the graph before anything changes.

use crate::order::OrderedMap;
use std::fmt;
use std::sync::Arc;

use super::axis::{Entries, Entry, Places};
use super::graph::{Graph, LeafKind};
use super::leaf::{Cell, Factor, LeafValue};
use super::unit::Dimension;
use crate::order;
use crate::say;

/// Leaf values and axis entries to set, by id. What is not named stays as it is.
#[derive(Clone, Debug, Default)]
pub struct Inputs {
    /// Entries of open axes.
    pub entries: OrderedMap<String, Entries>,
    /// Values of leaves.
    pub leaves: OrderedMap<String, LeafValue>,
}

impl Inputs {
    /// Nothing to set.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Sets the entries of an open axis.
    pub fn set_entries(&mut self, axis: &str, entries: Vec<Entry>) {
        self.entries.insert(axis.to_owned(), entries.into());
    }

    /// Sets the entries of an open axis to places on the drawing.
    pub fn set_places(&mut self, axis: &str, places: Places) {
        self.entries.insert(axis.to_owned(), Entries::Places(Arc::new(places)));
    }

    /// Sets a counted leaf, with what was counted for showing it on the drawing.
    pub fn set_counted(&mut self, id: &str, cells: Vec<Cell>, counted: Option<&str>) {
        let counted = counted.map(str::to_owned);
        self.leaves.insert(id.to_owned(), LeafValue::Counted { cells, counted });
    }

    /// Sets a chosen leaf.
    pub fn set_chosen(&mut self, id: &str, cells: Vec<Cell>) {
        self.leaves.insert(id.to_owned(), LeafValue::Chosen { cells });
    }

    /// Sets a factor leaf, a row for each cell.
    pub fn set_factor(&mut self, id: &str, rows: Vec<Arc<Factor>>) {
        self.leaves.insert(id.to_owned(), LeafValue::Factor { rows });
    }
}

/// Numbers as cells.
#[must_use]
pub fn numbers(values: &[f64]) -> Vec<Cell> {
    values.iter().map(|value| Cell::Number(*value)).collect()
}

/// A fault in inputs. Nothing is set when there is one.
#[derive(Clone, Debug, PartialEq)]
pub struct InputFault {
    /// The leaf or axis at fault.
    pub id: String,
    /// What is wrong.
    pub problem: InputProblem,
}

/// What is wrong with an input.
#[derive(Clone, Debug, PartialEq)]
pub enum InputProblem {
    /// No axis has this id.
    UnknownAxis,
    /// The axis's entries never change.
    FixedAxis,
    /// An entry stands twice.
    RepeatedEntry(String),
    /// No leaf has this id.
    UnknownLeaf,
    /// The leaf is of another kind.
    OtherKind {
        /// As declared.
        declared: LeafKind,
        /// As given.
        given: LeafKind,
    },
    /// Not one cell for each place of the leaf's axes.
    CellCount {
        /// As the axes need.
        expected: usize,
        /// As given.
        given: usize,
    },
    /// A cell is not a finite number.
    NotFinite {
        /// Which cell.
        cell: usize,
    },
    /// A factor measures something else than its leaf.
    OtherDimension {
        /// The factor.
        factor: String,
        /// As declared.
        declared: Dimension,
        /// As given.
        given: Dimension,
    },
    /// A factor's low, typical and high do not fit.
    Spread {
        /// The factor.
        factor: String,
        /// What is wrong with it.
        fault: String,
    },
    /// The leaf has no value yet.
    Missing,
}

impl fmt::Display for InputFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let id = &self.id;
        let words = match &self.problem {
            InputProblem::UnknownAxis => say!("figures-input-no-axis", id = id),
            InputProblem::FixedAxis => say!("figures-input-fixed-axis", id = id),
            InputProblem::RepeatedEntry(entry) => say!("figures-input-entry-twice", id = id, entry = entry),
            InputProblem::UnknownLeaf => say!("figures-input-no-leaf", id = id),
            InputProblem::OtherKind { declared, given } => {
                say!(
                    "figures-input-other-kind",
                    id = id,
                    declared = declared.word(),
                    given = given.word()
                )
            }
            InputProblem::CellCount { expected, given } => {
                say!("figures-input-cells", id = id, expected = expected, given = given)
            }
            InputProblem::NotFinite { cell } => say!("figures-input-not-finite", id = id, cell = cell),
            InputProblem::OtherDimension {
                factor,
                declared,
                given,
            } => say!(
                "figures-input-dimension",
                id = id,
                declared = declared.to_string(),
                factor = factor,
                given = given.to_string()
            ),
            InputProblem::Spread { factor, fault } => {
                say!("figures-input-spread", id = id, factor = factor, fault = fault)
            }
            InputProblem::Missing => say!("figures-input-missing", id = id),
        };
        out.write_str(&words)
    }
}

/// The entries of every axis and the value of every leaf (by node), as they stand.
#[derive(Clone, Debug)]
pub(crate) struct State {
    pub entries: Vec<Entries>,
    pub leaves: Vec<Option<Arc<LeafValue>>>,
}

impl State {
    /// The entries of fixed axes and no leaf values.
    pub fn new(graph: &Graph) -> Self {
        Self {
            entries: graph
                .axes
                .iter()
                .map(|axis| axis.fixed.clone().unwrap_or_default().into())
                .collect(),
            leaves: vec![None; graph.nodes.len()],
        }
    }

    pub fn lengths(&self) -> Vec<usize> {
        self.entries.iter().map(Entries::count).collect()
    }

    /// This state with `inputs` set, or every fault.
    pub fn with(&self, graph: &Graph, inputs: Inputs) -> Result<Self, Vec<InputFault>> {
        let mut next = self.clone();
        let mut faults = Vec::new();
        for (id, entries) in inputs.entries {
            let found = graph.axis_index(&id);
            let held = found.map(|axis| &self.entries[axis.at()]);
            let problems = entry_problems(graph, &id, &entries, held);
            if let (Some(axis), true) = (found, problems.is_empty()) {
                next.entries[axis.at()] = entries;
            }
            faults.extend(at(&id, problems));
        }
        for (id, value) in inputs.leaves {
            let problems = leaf_problems(graph, &id, &value);
            if let (Some(index), true) = (graph.index(&id), problems.is_empty()) {
                next.leaves[index.at()] = Some(Arc::new(value));
            }
            faults.extend(at(&id, problems));
        }
        if faults.is_empty() {
            faults = next.shape_faults(graph);
        }
        if faults.is_empty() { Ok(next) } else { Err(faults) }
    }

    /// Every leaf must have a cell for each place of its axes.
    fn shape_faults(&self, graph: &Graph) -> Vec<InputFault> {
        let mut faults = Vec::new();
        for index in graph.indices().filter(|index| graph.leaf_kind(*index).is_some()) {
            let node = graph.node(index);
            let expected = node.axes.iter().map(|axis| self.entries[axis.at()].count()).product();
            let problem = match &self.leaves[index.at()] {
                None => InputProblem::Missing,
                Some(value) if value.len() != expected => InputProblem::CellCount {
                    expected,
                    given: value.len(),
                },
                Some(_) => continue,
            };
            faults.extend(at(&node.id, vec![problem]));
        }
        faults
    }
}

fn at(id: &str, problems: Vec<InputProblem>) -> Vec<InputFault> {
    problems
        .into_iter()
        .map(|problem| InputFault {
            id: id.to_owned(),
            problem,
        })
        .collect()
}

/// What is wrong with entries of an axis that holds `held`, of which none stands twice.
fn entry_problems(graph: &Graph, id: &str, entries: &Entries, held: Option<&Entries>) -> Vec<InputProblem> {
    let Some(axis) = graph.axis_index(id) else {
        return vec![InputProblem::UnknownAxis];
    };
    let mut problems = Vec::new();
    if graph.axis(axis).fixed.is_some() {
        problems.push(InputProblem::FixedAxis);
    }
    // Places are numbered, so none stands twice.
    let Entries::Named(entries) = entries else {
        return problems;
    };
    let is_same = |(new, old): (&Entry, &Entry)| new.id == old.id;
    if let Some(Entries::Named(held)) = held
        && entries.len() == held.len()
        && entries.iter().zip(held.iter()).all(is_same)
    {
        return problems;
    }
    let mut places: Vec<usize> = (0..entries.len()).collect();
    order::sort_by(&mut places, |a, b| entries[*a].id.cmp(&entries[*b].id));
    // Of equal ids all but the first stand twice; told in the order they stand in.
    let again = places
        .windows(2)
        .filter(|pair| entries[pair[0]].id == entries[pair[1]].id);
    let mut repeated: Vec<usize> = again.map(|pair| pair[1]).collect();
    order::sort(&mut repeated);
    problems.extend(
        repeated
            .iter()
            .map(|place| InputProblem::RepeatedEntry(entries[*place].id.clone())),
    );
    problems
}

fn leaf_problems(graph: &Graph, id: &str, value: &LeafValue) -> Vec<InputProblem> {
    let Some((node, declared)) = graph
        .index(id)
        .and_then(|index| Some((graph.node(index), graph.leaf_kind(index)?)))
    else {
        return vec![InputProblem::UnknownLeaf];
    };
    let mut problems = Vec::new();
    if declared != value.kind() {
        problems.push(InputProblem::OtherKind {
            declared,
            given: value.kind(),
        });
    }
    match value {
        LeafValue::Counted { cells, .. } | LeafValue::Chosen { cells } => {
            for (cell, number) in cells.iter().enumerate() {
                if number.number().is_some_and(|number| !number.is_finite()) {
                    problems.push(InputProblem::NotFinite { cell });
                }
            }
        }
        LeafValue::Factor { rows } => {
            for row in rows {
                if row.dimension != node.unit.dimension {
                    problems.push(InputProblem::OtherDimension {
                        factor: row.id.clone(),
                        declared: node.unit.dimension,
                        given: row.dimension,
                    });
                }
                problems.extend(row.spread.faults().into_iter().map(|fault| InputProblem::Spread {
                    factor: row.id.clone(),
                    fault,
                }));
            }
        }
    }
    problems
}
