//! How a number was worked out, down to what was counted, chosen, or taken from a source.
//!
//! A basis is a list of steps. The first is the number asked for; every number a step uses is another step further
//! down. A step gives its formula in words, then with the numbers of one row in full, and the other rows as a table.
//! Numbers are printed in six significant digits, so that a printed step, read back, leads to its printed result.

use crate::order::{OrderedMap, OrderedSet};
use crate::say;

use serde::Serialize;

use super::axis::AxisIndex;
use super::display::in_full;
use super::evaluate::Evaluation;
use super::expression::{Expression, Term};
use super::graph::{LeafKind, Node, NodeIndex, Operator};
use super::leaf::{Cell, Factor, LeafValue, SpreadKind};
use super::method::{Method, MethodInput, MethodTerm};
use super::unit::{System, Unit, in_words};

mod formula;
mod units;

/// The basis of one number.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Basis {
    /// The number's step, then every step it rests on, each before those it rests on itself.
    pub steps: Vec<Step>,
}

/// One figure or leaf on the way.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// Its id.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Where its values come from.
    pub origin: Origin,
    /// The row given in full; none in a table without entries.
    pub row: Option<Row>,
    /// The other rows; of a long table that others rest on, only those that were used.
    pub rest: Vec<Row>,
    /// How many rows are not listed.
    pub unlisted: usize,
    /// What the units in the formula are worth, where they do not cancel as they stand: `1 acre = 43,560 ft²`.
    pub conversions: Vec<String>,
    /// The steps its numbers open.
    pub opens: Vec<String>,
    /// Factors the user changed that go into it.
    pub changed_factors: Vec<String>,
}

/// Where a step's values come from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Origin {
    /// Worked out: the formula in words.
    Worked {
        /// The formula.
        words: String,
    },
    /// Worked out by a named method.
    Method {
        /// Its name.
        name: String,
        /// How it works.
        words: String,
    },
    /// Counted on the drawing.
    Counted {
        /// What was counted, for showing it there.
        counted: Option<String>,
    },
    /// A setting.
    Chosen,
    /// From the factor tables.
    Factor,
}

/// One cell of a step's table.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Row {
    /// Which cell of the table.
    pub cell: usize,
    /// Its place: the entry titles; empty for a single number.
    pub label: String,
    /// How it was worked out, for the row in full.
    pub lines: Vec<Line>,
    /// Its value with unit, or why there is none.
    pub value: String,
    /// For a factor: its range, sources and notes; for what a rule counts, in the row in full: where that rule is laid down.
    pub sources: Vec<String>,
}

/// One line of working.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Line {
    /// What it works out, for a method's lines.
    pub title: Option<String>,
    /// The formula with numbers; [`sum_of_list`] or [`mean_of_list`] where `terms` are listed.
    pub formula: String,
    /// The terms of a long sum or mean.
    pub terms: Vec<LongTerm>,
    /// Its result.
    pub result: String,
}

/// A term of a long sum or mean.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LongTerm {
    /// Its place along the axes summed over.
    pub label: String,
    /// Its value with unit.
    pub value: String,
    /// Its weight with unit, in a mean.
    pub weight: Option<String>,
}

/// A sum or mean of more terms than this is a list, not one long formula.
pub const TERMS_IN_FORMULA: usize = 12;

/// A table with more rows than this, on the way to another number, lists only the rows that were used.
pub const ROWS_LISTED: usize = 64;

/// The formula that stands for a listed sum.
#[must_use]
pub fn sum_of_list() -> &'static str {
    say!("figures-sum-of-list")
}

/// The formula that stands for a listed mean.
#[must_use]
pub fn mean_of_list() -> &'static str {
    say!("figures-mean-of-list")
}

impl Evaluation {
    /// The basis of one cell of a node's table, in the units of `system`.
    #[must_use]
    pub fn basis(&self, index: NodeIndex, cell: usize, system: System) -> Basis {
        let mut steps = Vec::new();
        let mut seen = OrderedSet::new();
        let writer = Writer { values: self, system };
        let mut used = Used::new();
        writer.add_step(index, cell, &mut seen, &mut used, &mut steps);
        for (at, (index, step)) in steps.iter_mut().enumerate() {
            let lists_all = at == 0 || self.cell_count(*index) <= ROWS_LISTED;
            writer.list_rest(*index, step, used.get(index).filter(|_| !lists_all));
        }
        Basis {
            steps: steps.into_iter().map(|(_, step)| step).collect(),
        }
    }

    /// The row of a table that is most worth giving in full: the largest number, the first of equals.
    #[must_use]
    pub fn main_cell(&self, index: NodeIndex) -> usize {
        let column = &self.columns[index.at()];
        let size = |cell: usize| column.at(cell, 0).abs();
        let known = (0..column.cell_count()).filter(|cell| !size(*cell).is_nan());
        known
            .reduce(|best, cell| if size(cell) > size(best) { cell } else { best })
            .unwrap_or(0)
    }

    /// Ids of the changed factors that go into a node, in the order of its leaves.
    #[must_use]
    pub fn changed_factors(&self, index: NodeIndex) -> Vec<String> {
        let mut changed = Vec::new();
        for leaf in self.leaves_of(index) {
            let rows = self.leaf(leaf).map_or(&[][..], LeafValue::factors);
            changed.extend(rows.iter().filter(|row| row.is_changed()).map(|row| row.id.clone()));
        }
        changed.dedup();
        changed
    }
}

struct Writer<'a> {
    values: &'a Evaluation,
    system: System,
}

/// Which steps a row's numbers open, and at which cell.
type Opens = Vec<(NodeIndex, usize)>;

/// The cells of each node that some row was worked from.
type Used = OrderedMap<NodeIndex, OrderedSet<usize>>;

impl Writer<'_> {
    fn add_step(
        &self,
        index: NodeIndex,
        cell: usize,
        seen: &mut OrderedSet<NodeIndex>,
        used: &mut Used,
        steps: &mut Vec<(NodeIndex, Step)>,
    ) {
        if !seen.insert(index) {
            return;
        }
        let node = self.values.graph.node(index);
        let count = self.values.cell_count(index);
        let mut opens = Opens::new();
        let mut conversions = Vec::new();
        let row = (cell < count).then(|| self.full_row(index, cell, &mut opens, &mut conversions));
        // A node whose table is empty still opens what it needs.
        for need in node.operator.references() {
            if !opens.iter().any(|(opened, _)| opened == need) {
                opens.push((*need, self.values.main_cell(*need)));
            }
        }
        for (need, cell) in &opens {
            used.entry(*need).or_default().insert(*cell);
        }
        // A balance rests on its own row before, which is no other step.
        let mut opened = OrderedSet::from([index]);
        opens.retain(|(need, _)| opened.insert(*need));
        let id_of = |(need, _): &(NodeIndex, usize)| self.values.graph.node(*need).id.clone();
        let step = Step {
            id: node.id.clone(),
            title: node.title.clone(),
            origin: self.origin(index, node),
            row,
            rest: Vec::new(),
            unlisted: 0,
            conversions,
            opens: opens.iter().map(id_of).collect(),
            changed_factors: self.values.changed_factors(index),
        };
        steps.push((index, step));
        for (need, cell) in opens {
            self.add_step(need, cell, seen, used, steps);
        }
    }

    /// Lists the rows beside the one given in full: all, or those in `only`.
    fn list_rest(&self, index: NodeIndex, step: &mut Step, only: Option<&OrderedSet<usize>>) {
        let shown = step.row.as_ref().map(|row| row.cell);
        let others = (0..self.values.cell_count(index)).filter(|cell| Some(*cell) != shown);
        let (listed, unlisted): (Vec<usize>, Vec<usize>) =
            others.partition(|cell| only.is_none_or(|only| only.contains(cell)));
        step.rest = listed.into_iter().map(|cell| self.plain_row(index, cell)).collect();
        step.unlisted = unlisted.len();
    }

    fn origin(&self, index: NodeIndex, node: &Node) -> Origin {
        let title = |index: &NodeIndex| self.values.graph.node(*index).title.as_str();
        let axes = |over: &[AxisIndex]| {
            let titles = over.iter().map(|axis| self.values.graph.axis(*axis).title.clone());
            let all = titles.reduce(|first, second| say!("figures-and", first = first, second = second));
            all.unwrap_or_default()
        };
        let words = match &node.operator {
            Operator::Leaf(LeafKind::Counted) => {
                let counted = match self.values.leaf(index) {
                    Some(LeafValue::Counted { counted, .. }) => counted.clone(),
                    _ => None,
                };
                return Origin::Counted { counted };
            }
            Operator::Leaf(LeafKind::Chosen) => return Origin::Chosen,
            Operator::Leaf(LeafKind::Factor) => return Origin::Factor,
            Operator::Method { method, .. } => {
                return Origin::Method {
                    name: (method.name)().to_owned(),
                    words: (method.words)().to_owned(),
                };
            }
            Operator::Formula(formula) => self.values.words(formula),
            Operator::Sum { of, over } => say!("figures-sum", of = title(of), over = axes(over)),
            Operator::WeightedMean { of, weight, over } => {
                say!(
                    "figures-mean",
                    of = title(of),
                    over = axes(over),
                    weight = title(weight)
                )
            }
            Operator::Entry { of, along, entry } => {
                let axis = self.values.graph.axis(*along);
                let held = axis.fixed.iter().flatten().find(|held| held.id == *entry);
                format!("{}: {}", title(of), held.map_or(entry.as_str(), |held| &held.title))
            }
            Operator::Lookup { x, y, at, .. } => {
                say!("figures-curve", of = title(y), by = title(x), at = title(at))
            }
            Operator::RunningBalance {
                start,
                change,
                least,
                most,
                along,
            } => {
                let mut words = say!(
                    "figures-balance",
                    start = title(start),
                    along = axes(&[*along]),
                    change = title(change)
                );
                if let Some(least) = least {
                    words = say!("figures-balance-least", words = words, least = title(least));
                }
                if let Some(most) = most {
                    words = say!("figures-balance-most", words = words, most = title(most));
                }
                words
            }
        };
        Origin::Worked { words }
    }

    fn plain_row(&self, index: NodeIndex, cell: usize) -> Row {
        Row {
            cell,
            label: self.values.label(index, cell),
            lines: Vec::new(),
            value: self.value(index, cell),
            sources: self.sources(index, cell),
        }
    }

    fn full_row(&self, index: NodeIndex, cell: usize, opens: &mut Opens, conversions: &mut Vec<String>) -> Row {
        let mut row = self.plain_row(index, cell);
        let node = self.values.graph.node(index);
        let known = self.values.cell(index, cell).number().is_some();
        match &node.operator {
            Operator::Leaf(_) => row.sources.extend(self.axis_sources(index, cell)),
            Operator::Method { method, inputs, along } => {
                let (cells, result) = self.values.method_call(index, cell, inputs, along);
                for (input, cells) in inputs.iter().zip(&cells) {
                    opens.extend(cells.iter().map(|cell| (*input, *cell)));
                }
                if known {
                    row.lines = self.method_lines(method, inputs, &cells, along, result);
                }
            }
            Operator::Sum { of, over } if self.values.cells_over(over) > TERMS_IN_FORMULA => {
                let members = self.values.members(index, cell, *of, *of, over);
                self.add_list((index, &mut row), opens, (*of, over), None, &members);
                conversions.extend(self.conversions(&Expression::Figure((*of, 0)), &node.unit));
            }
            Operator::WeightedMean { of, weight, over } if self.values.cells_over(over) > TERMS_IN_FORMULA => {
                let members = self.values.members(index, cell, *of, *weight, over);
                self.add_list((index, &mut row), opens, (*of, over), Some(*weight), &members);
                conversions.extend(self.conversions(&Expression::Figure((*of, 0)), &node.unit));
            }
            _ => {
                let formula = self.cell_formula(index, cell);
                let mut used = Vec::new();
                formula.references(&mut used);
                opens.extend(used.into_iter().copied());
                if known {
                    conversions.extend(self.conversions(&formula, &node.unit));
                    row.lines.push(Line {
                        title: None,
                        formula: self.with_numbers(&formula),
                        terms: Vec::new(),
                        result: row.value.clone(),
                    });
                }
            }
        }
        row
    }

    /// A sum or mean as a list; opens the largest of its terms.
    fn add_list(
        &self,
        (index, row): (NodeIndex, &mut Row),
        opens: &mut Opens,
        (of, over): (NodeIndex, &[AxisIndex]),
        weight: Option<NodeIndex>,
        members: &[(usize, usize)],
    ) {
        let size = |cell: usize| self.values.columns[of.at()].at(cell, 0).abs();
        let largest = members
            .iter()
            .copied()
            .reduce(|a, b| if size(b.0) > size(a.0) { b } else { a });
        if let Some((member, weighing)) = largest {
            opens.push((of, member));
            opens.extend(weight.map(|weight| (weight, weighing)));
        }
        if self.values.cell(index, row.cell).number().is_none() {
            return;
        }
        let terms = members.iter().map(|(member, weighing)| LongTerm {
            label: self.values.label_along(of, *member, over),
            value: self.value(of, *member),
            weight: weight.map(|weight| self.value(weight, *weighing)),
        });
        row.lines.push(Line {
            title: None,
            formula: if weight.is_some() {
                mean_of_list()
            } else {
                sum_of_list()
            }
            .to_owned(),
            terms: terms.collect(),
            result: row.value.clone(),
        });
    }

    fn with_numbers(&self, formula: &Expression<(NodeIndex, usize)>) -> String {
        formula.write(&mut |term| match term {
            Term::Figure((need, cell)) => match self.values.cell(*need, *cell) {
                Cell::Number(value) => in_full(value, &self.values.graph.node(*need).unit, self.system),
                Cell::Unknown(_) => "—".to_owned(),
            },
            Term::Constant(value, unit) => in_full(value, unit, self.system),
        })
    }

    fn method_lines(
        &self,
        method: &Method,
        inputs: &[NodeIndex],
        cells: &[Vec<usize>],
        along: &[AxisIndex],
        result: usize,
    ) -> Vec<Line> {
        let gathered: Vec<MethodInput> = inputs
            .iter()
            .zip(cells)
            .map(|(input, cells)| MethodInput {
                values: cells
                    .iter()
                    .map(|cell| self.values.columns[input.at()].at(*cell, 0))
                    .collect(),
                labels: cells
                    .iter()
                    .map(|cell| self.values.label_along(*input, *cell, along))
                    .collect(),
            })
            .collect();
        let mut results: Vec<(f64, Unit)> = Vec::new();
        let mut lines = Vec::new();
        for step in (method.steps)(&gathered, result) {
            let value_of = |term: &MethodTerm| match term {
                MethodTerm::Input { input, cell } => {
                    let value = gathered.get(*input).and_then(|input| input.values.get(*cell));
                    let unit = inputs.get(*input).map(|index| self.values.graph.node(*index).unit);
                    value.copied().zip(unit)
                }
                MethodTerm::Step(step) => results.get(*step).copied(),
            };
            let value = step
                .formula
                .evaluate(&mut |term| value_of(term).map_or(f64::NAN, |(value, _)| value));
            let formula = step.formula.write(&mut |term| match term {
                Term::Figure(term) => {
                    value_of(term).map_or("—".to_owned(), |(value, unit)| in_full(value, &unit, self.system))
                }
                Term::Constant(value, unit) => in_full(value, unit, self.system),
            });
            lines.push(Line {
                title: Some(step.title),
                formula,
                terms: Vec::new(),
                result: in_full(value, &step.unit, self.system),
            });
            results.push((value, step.unit));
        }
        lines
    }

    fn value(&self, index: NodeIndex, cell: usize) -> String {
        match self.values.cell(index, cell) {
            Cell::Number(value) => in_full(value, &self.values.graph.node(index).unit, self.system),
            Cell::Unknown(reason) => super::display::unknown(&reason),
        }
    }

    fn sources(&self, index: NodeIndex, cell: usize) -> Vec<String> {
        let factor = self.values.leaf(index).and_then(|leaf| leaf.factors().get(cell));
        factor.map_or(Vec::new(), |factor| {
            self.factor_lines(factor, &self.values.graph.node(index).unit)
        })
    }

    /// Where the entries a counted number stands at are laid down.
    fn axis_sources(&self, index: NodeIndex, cell: usize) -> impl Iterator<Item = String> {
        let axes = self.values.graph.node(index).axes.iter();
        let axes = axes.map(|axis| self.values.graph.axis(*axis));
        let place = self.values.place(index, cell);
        axes.zip(place)
            .filter_map(|(axis, entry)| axis.sources.get(axis.place_of(&entry.id)?).cloned())
    }

    fn factor_lines(&self, factor: &Factor, unit: &Unit) -> Vec<String> {
        let full = |value: f64| in_full(value, unit, self.system);
        let written = |value: f64| {
            let number = super::display::digits(value / factor.scale);
            match factor.unit.as_str() {
                "share" | "1" => number,
                unit => [&number, " ", &in_words(unit)].concat(),
            }
        };
        let spread = &factor.spread;
        let meaning = match spread.kind {
            SpreadKind::Bounds => say!("figures-bounds"),
            SpreadKind::Positive | SpreadKind::Share => say!("figures-percentiles"),
        };
        let mut lines = vec![say!(
            "figures-factor-values",
            id = factor.id,
            typical = full(spread.typical),
            low = full(spread.low),
            high = full(spread.high),
            meaning = meaning
        )];
        if factor.unit != "share" && full(spread.typical) != written(spread.typical) {
            lines.push(say!(
                "figures-factor-as-written",
                typical = written(spread.typical),
                low = written(spread.low),
                high = written(spread.high)
            ));
        }
        match &factor.shipped {
            Some(shipped) => {
                lines.push(say!(
                    "figures-factor-changed",
                    typical = full(shipped.typical),
                    low = full(shipped.low),
                    high = full(shipped.high)
                ));
                lines.extend(
                    factor
                        .sources
                        .iter()
                        .map(|source| say!("figures-factor-shipped", source = source.to_string())),
                );
            }
            None => lines.extend(factor.sources.iter().map(ToString::to_string)),
        }
        if let Some(group) = &factor.group {
            lines.push(say!("figures-factor-group", group = group));
        }
        if !factor.note.is_empty() {
            lines.push(factor.note.clone());
        }
        lines
    }
}

#[cfg(test)]
mod tests;
