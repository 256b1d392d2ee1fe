//! Figures as data for the command line and the page: the same numbers as on screen and in print.

use serde::Serialize;

use super::display;
use super::evaluate::Evaluation;
use super::graph::NodeIndex;
use super::leaf::Cell;
use super::range::Range;
use super::unit::System;
use crate::say;

/// Follows every shown number that rests on factors the user changed.
#[must_use]
pub fn changed_factors_mark() -> &'static str {
    say!("figures-mark-changed")
}

/// A figure with its value, or its table.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FigureValue {
    /// Stable dotted id.
    pub id: String,
    /// Title.
    pub title: String,
    /// Coherent unit of every number here: `m2`, `home`, `share`.
    pub unit: &'static str,
    /// The number, or the rows of the table.
    #[serde(flatten)]
    pub content: Content,
    /// Factors the user changed that go into it.
    pub changed_factors: Vec<String>,
}

/// A number or a table.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Content {
    /// A single number.
    Single(CellValue),
    /// A table over axes.
    Table {
        /// Ids of the axes, in order.
        axes: Vec<String>,
        /// The rows, the last axis fastest.
        rows: Vec<TableRow>,
    },
}

/// One row of a table.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TableRow {
    /// Ids of the entries it stands at, one for each axis.
    pub at: Vec<String>,
    /// Titles of those entries.
    pub titles: Vec<String>,
    /// Its number.
    #[serde(flatten)]
    pub value: CellValue,
}

/// A number with its range, in coherent units.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CellValue {
    /// The number; absent when it cannot be worked out.
    pub value: Option<f64>,
    /// Why it cannot be worked out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
    /// 10th percentile; the number itself when nothing uncertain goes into it; absent when no range was asked for or
    /// there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// 90th percentile, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// Draws without a result, if any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub failed_draws: Option<u32>,
    /// As the page shows it.
    pub shown: String,
}

impl Content {
    /// Every number as the page shows it, in the order of the rows.
    #[must_use]
    pub fn shown(&self) -> Vec<String> {
        match self {
            Self::Single(cell) => vec![cell.shown.clone()],
            Self::Table { rows, .. } => rows.iter().map(|row| row.value.shown.clone()).collect(),
        }
    }
}

impl Evaluation {
    /// A figure as data, without its range: the first-level answer.
    #[must_use]
    pub fn figure_value(&self, index: NodeIndex, system: System) -> FigureValue {
        self.figure_with(index, system, |_| None)
    }

    /// A figure as data with its range. Works its draws if need be.
    pub fn figure_value_with_range(&mut self, index: NodeIndex, system: System) -> FigureValue {
        let ranges: Vec<Range> = (0..self.cell_count(index))
            .map(|cell| self.range(index, cell))
            .collect();
        self.figure_with(index, system, |cell| ranges.get(cell).copied())
    }

    fn figure_with(&self, index: NodeIndex, system: System, range: impl Fn(usize) -> Option<Range>) -> FigureValue {
        let node = self.graph().node(index);
        let changed_factors = self.changed_factors(index);
        let mark = |cell: usize| {
            let factor = self.leaf(index).and_then(|leaf| leaf.factors().get(cell));
            match factor {
                _ if !changed_factors.is_empty() => changed_factors_mark(),
                Some(factor) => factor.how().mark(),
                None => "",
            }
        };
        let cell_value = |cell| {
            let number = self.cell(index, cell);
            let shown = display::shown(&number, &range(cell).unwrap_or(Range::Certain), &node.unit, system);
            let (low, high, failed) = match range(cell) {
                Some(Range::Likely { low, high, failed }) => (Some(low), Some(high), failed),
                Some(Range::Certain) => (number.number(), number.number(), 0),
                Some(Range::Unknown { failed }) => (None, None, failed),
                None => (None, None, 0),
            };
            CellValue {
                value: number.number(),
                reason: match number {
                    Cell::Number(_) => None,
                    Cell::Unknown(reason) => Some(reason),
                },
                low,
                high,
                failed_draws: (failed > 0).then_some(failed),
                shown: format!("{}{}", shown.text, mark(cell)),
            }
        };
        let content = if node.axes.is_empty() {
            Content::Single(cell_value(0))
        } else {
            Content::Table {
                axes: node
                    .axes
                    .iter()
                    .map(|axis| self.graph().axis(*axis).id.clone())
                    .collect(),
                rows: (0..self.cell_count(index))
                    .map(|cell| {
                        let place = self.place(index, cell).into_iter();
                        let (at, titles) = place.map(|entry| (entry.id, entry.title)).unzip();
                        TableRow {
                            at,
                            titles,
                            value: cell_value(cell),
                        }
                    })
                    .collect(),
            }
        };
        FigureValue {
            id: node.id.clone(),
            title: node.title.clone(),
            unit: node.unit.code,
            content,
            changed_factors,
        }
    }
}

#[cfg(test)]
mod tests;
