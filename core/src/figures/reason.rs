//! Why a number cannot be worked out: the first step that has no result, in words.
//!
//! Reasons are found when asked for, by walking down from the cell to the first operation or leaf without a result.

use super::axis::AxisIndex;
use super::column::{Curve, next_balance};
use super::evaluate::Evaluation;
use super::expression::{Expression, Term, too_large};
use super::graph::{NodeIndex, Operator};
use super::leaf::Cell;
use crate::say;

impl Evaluation {
    /// Why this cell has no number; an empty text when it has.
    pub(crate) fn reason(&self, index: NodeIndex, cell: usize) -> String {
        let node = self.graph.node(index);
        let reason = match &node.operator {
            Operator::Leaf(_) => match self.leaf(index).and_then(|leaf| leaf.cell(cell)) {
                Some(Cell::Unknown(reason)) => Some(reason),
                _ => None,
            },
            Operator::Formula(formula) => self.formula_value(index, cell, formula).err(),
            Operator::Sum { of, over } => {
                let members = self.members(index, cell, *of, *of, over);
                let cells = members.into_iter().map(|(member, _)| (*of, member));
                self.first_unknown(cells).or_else(|| Some(too_large().to_owned()))
            }
            Operator::WeightedMean { of, weight, over } => {
                let members = self.members(index, cell, *of, *weight, over);
                let cells = members
                    .into_iter()
                    .flat_map(|(member, weighing)| [(*of, member), (*weight, weighing)]);
                self.first_unknown(cells)
                    .or_else(|| Some(say!("figures-nothing-to-average", weight = self.title(*weight))))
            }
            Operator::Entry { of, along, entry } => {
                self.first_unknown([(*of, self.cell_at_entry(index, cell, *of, (*along, entry)))])
            }
            Operator::Lookup { x, y, at, knots } => self.lookup_reason(index, cell, [*x, *y, *at], *knots),
            Operator::RunningBalance { .. } => self.balance_reason(index, cell),
            Operator::Method { method, inputs, along } => {
                let (gathered, _) = self.method_call(index, cell, inputs, along);
                let cells = inputs
                    .iter()
                    .zip(&gathered)
                    .flat_map(|(input, cells)| cells.iter().map(|cell| (*input, *cell)));
                self.first_unknown(cells).or_else(|| {
                    let blocks: Vec<Vec<f64>> = inputs
                        .iter()
                        .zip(&gathered)
                        .map(|(input, cells)| cells.iter().map(|cell| self.columns[input.at()].at(*cell, 0)).collect())
                        .collect();
                    let slices: Vec<&[f64]> = blocks.iter().map(Vec::as_slice).collect();
                    let filled = self.lengths_inside(index, along);
                    match (method.evaluate)(&slices, &mut vec![0.0; filled]) {
                        Err(reason) => Some(reason),
                        Ok(()) => Some(too_large().to_owned()),
                    }
                })
            }
        };
        reason.unwrap_or_default()
    }

    fn title(&self, index: NodeIndex) -> &str {
        &self.graph.node(index).title
    }

    fn lengths_inside(&self, index: NodeIndex, along: &[AxisIndex]) -> usize {
        let axes = self.graph.node(index).axes.iter();
        axes.filter(|axis| along.contains(axis))
            .map(|axis| self.lengths[axis.at()])
            .product()
    }

    fn first_unknown(&self, cells: impl IntoIterator<Item = (NodeIndex, usize)>) -> Option<String> {
        cells.into_iter().find_map(|(index, cell)| {
            self.columns[index.at()]
                .at(cell, 0)
                .is_nan()
                .then(|| self.reason(index, cell))
        })
    }

    fn lookup_reason(
        &self,
        index: NodeIndex,
        cell: usize,
        [x, y, at]: [NodeIndex; 3],
        knots: AxisIndex,
    ) -> Option<String> {
        let read = [(at, self.cell_read(index, cell, at))];
        let curve_cells = [x, y].map(|part| self.knot_cells(index, cell, part, knots));
        let knot_cells = [x, y].into_iter().zip(&curve_cells);
        let unknown = self.first_unknown(read).or_else(|| {
            self.first_unknown(knot_cells.flat_map(|(part, cells)| cells.iter().map(move |cell| (part, *cell))))
        });
        if unknown.is_some() {
            return unknown;
        }
        let [xs, ys] = [x, y].map(|part| &self.columns[part.at()]);
        let curve = Curve::new(
            curve_cells[0].iter().map(|cell| xs.at(*cell, 0)).collect(),
            curve_cells[1].iter().map(|cell| ys.at(*cell, 0)).collect(),
        );
        let fault = curve.fault().unwrap_or_else(too_large);
        Some(format!("{}: {fault}", self.title(y)))
    }

    fn balance_reason(&self, index: NodeIndex, cell: usize) -> Option<String> {
        let Operator::RunningBalance {
            start,
            change,
            least,
            most,
            along,
        } = &self.graph.node(index).operator
        else {
            return None;
        };
        // From the first entry up to this one, the first step that has no result gives the reason.
        let step = self.with_tables(|tables| tables.strides(index, &[*along]))[0];
        let entry = cell / step % self.lengths[along.at()].max(1);
        let first = cell - entry * step;
        self.first_unknown([(*start, self.cell_read(index, first, *start))])
            .or_else(|| {
                (0..=entry).find_map(|entry| {
                    let here = first + entry * step;
                    let parts = [Some(*change), *least, *most];
                    self.first_unknown(
                        parts
                            .into_iter()
                            .flatten()
                            .map(|part| (part, self.cell_read(index, here, part))),
                    )
                    .or_else(|| {
                        let previous = match entry {
                            0 => self.columns[start.at()].at(self.cell_read(index, here, *start), 0),
                            _ => self.columns[index.at()].at(here - step, 0),
                        };
                        let moved = self.columns[change.at()].at(self.cell_read(index, here, *change), 0);
                        next_balance(previous, moved, None, None)
                            .is_nan()
                            .then(|| too_large().to_owned())
                    })
                })
            })
    }

    /// A formula's number at a cell, or why there is none.
    fn formula_value(&self, index: NodeIndex, cell: usize, formula: &Expression<NodeIndex>) -> Result<f64, String> {
        let part = |formula| self.formula_value(index, cell, formula);
        match formula {
            Expression::Figure(need) => {
                let read = self.cell_read(index, cell, *need);
                match self.columns[need.at()].at(read, 0) {
                    value if value.is_nan() => Err(self.reason(*need, read)),
                    value => Ok(value),
                }
            }
            Expression::Constant(value, _) => Ok(*value),
            Expression::Binary(operation, left, right) => {
                let (a, b) = (part(left)?, part(right)?);
                match operation.apply(a, b) {
                    value if value.is_nan() => Err(operation.why_not(&self.words(right), b)),
                    value => Ok(value),
                }
            }
            Expression::Function(function, of) => {
                let x = part(of)?;
                match function.apply(x) {
                    value if value.is_nan() => Err(function.why_not(&self.words(of))),
                    value => Ok(value),
                }
            }
            Expression::Choose(choice) => {
                let (a, b) = (part(&choice.left)?, part(&choice.right)?);
                if choice.comparison.holds(a, b) {
                    part(&choice.then)
                } else {
                    part(&choice.otherwise)
                }
            }
        }
    }

    /// A formula in words.
    pub(crate) fn words(&self, formula: &Expression<NodeIndex>) -> String {
        formula.write(&mut |term| match term {
            Term::Figure(index) => self.title(*index).to_owned(),
            Term::Constant(value, unit) => super::display::number_in_words(value, unit),
        })
    }
}
