//! Ranges: what the doubt in the factors makes of a figure.
//!
//! Every uncertain factor is drawn [`DRAWS`] times and the figures are worked for each draw, a column at a time. Draw k
//! of a factor depends only on the seed, the factor's id (or its group) and k: ranges do not flicker, a new factor
//! changes no other's draws, and two alternatives with one seed are compared draw by draw.
//! Low and high of a figure are the 10th and 90th percentiles of its draws, or the number itself where it lies beyond: where
//! the typical value of a rule is also its least or largest, few draws come near it.

use crate::order;
use std::sync::Arc;

use serde::Serialize;

use super::column::{Column, Tables};
use super::evaluate::Evaluation;
use super::graph::{Graph, NodeIndex};
use super::leaf::{Factor, LeafValue, Spread, SpreadKind};
use super::random::{name_hash, normal_quantile, uniform};
use crate::number;

/// Draws of each uncertain factor.
pub const DRAWS: usize = 2_000;

/// A figure's range is given only when at least nine draws in ten can be worked out: with more missing, its 10th and
/// 90th percentiles would say more about which draws fail than about the figure.
pub const MOST_FAILED: usize = DRAWS / 10;

/// The normal value with a share 0.9 below it: `normal_quantile(0.9)`.
const NORMAL_90: f64 = 1.281_551_565_544_600_4;

/// What the doubt in the factors makes of one number.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Range {
    /// Nothing uncertain moves it: none goes into it, or it cancels out.
    Certain,
    /// The 10th and 90th percentiles of the draws.
    Likely {
        /// 10th percentile, or the number itself where it is less.
        low: f64,
        /// 90th percentile, or the number itself where it is more.
        high: f64,
        /// Draws in which the number cannot be worked out; the percentiles are of the others.
        failed: u32,
    },
    /// Too many draws cannot be worked out.
    Unknown {
        /// How many.
        failed: u32,
    },
}

/// The value of a spread at the quantile `u`, strictly between 0 and 1.
///
/// Positive: `typical × exp(z ln(high / typical) / z90)` above the median and likewise with `typical / low` below, `z`
/// the normal quantile of `u`. Share: the same on the log of the odds. Bounds: the triangle's inverse.
#[must_use]
pub fn spread_quantile(spread: &Spread, u: f64) -> f64 {
    let Spread {
        low,
        typical,
        high,
        kind,
    } = *spread;
    if low >= high {
        return typical;
    }
    let log_odds = |share: f64| number::ln(share / (1.0 - share));
    match kind {
        SpreadKind::Positive => {
            let z = normal_quantile(u);
            let half = if z < 0.0 {
                number::ln(typical / low)
            } else {
                number::ln(high / typical)
            };
            typical * number::exp(z * half / NORMAL_90)
        }
        SpreadKind::Share => {
            let z = normal_quantile(u);
            let middle = log_odds(typical);
            let half = if z < 0.0 {
                middle - log_odds(low)
            } else {
                log_odds(high) - middle
            };
            1.0 / (1.0 + number::exp(-(middle + z * half / NORMAL_90)))
        }
        SpreadKind::Bounds => {
            let width = high - low;
            let share_below = (typical - low) / width;
            if u < share_below {
                low + (u * width * (typical - low)).sqrt()
            } else {
                high - ((1.0 - u) * width * (high - typical)).sqrt()
            }
        }
    }
}

/// What a factor's draws depend on: its group, or itself.
#[must_use]
pub fn draw_key(factor: &Factor) -> &str {
    factor.group.as_deref().unwrap_or(&factor.id)
}

/// The quantiles at which everything with this draw key is drawn.
#[must_use]
pub fn draw_quantiles(seed: u64, key: &str) -> Vec<f64> {
    let name = name_hash(key);
    (0..DRAWS as u32).map(|draw| uniform(seed, name, draw)).collect()
}

/// The percentile `share` (0 to 1) of `sorted` by linear interpolation between order statistics: the value at position
/// `(n − 1) × share` counted from 0, definition 7 of Hyndman and Fan, Sample quantiles in statistical packages, The
/// American Statistician 50 (4), 1996 (from memory). `None` for no values.
///
/// ```
/// use hobnail_core::figures::range::percentile;
/// assert_eq!(percentile(&[1.0, 2.0, 4.0], 0.75), Some(3.0));
/// ```
#[must_use]
pub fn percentile(sorted: &[f64], share: f64) -> Option<f64> {
    let position = sorted.len().checked_sub(1)? as f64 * share;
    let below = *sorted.get(position.floor() as usize)?;
    let above = *sorted.get(position.ceil() as usize)?;
    Some(below + (above - below) * position.fract())
}

/// Draws that spread by less than this share of their size differ by the rounding of the arithmetic alone (a factor that
/// cancels out), not by doubt. Larger would hide true ranges, smaller would
/// print sixteen digits of noise.
const ROUNDING_SHARE: f64 = 1e-9;

/// The 10th and 90th percentiles of draws, NaN standing for those that cannot be worked out.
#[must_use]
pub fn range_of(draws: &[f64]) -> Range {
    let mut workable: Vec<f64> = draws.iter().copied().filter(|value| !value.is_nan()).collect();
    let failed = draws.len() - workable.len();
    order::sort_by(&mut workable, f64::total_cmp);
    match (percentile(&workable, 0.1), percentile(&workable, 0.9)) {
        (Some(low), Some(high)) if failed == 0 && high - low <= ROUNDING_SHARE * low.abs().max(high.abs()) => {
            Range::Certain
        }
        (Some(low), Some(high)) if failed <= MOST_FAILED => Range::Likely {
            low,
            high,
            failed: failed as u32,
        },
        _ => Range::Unknown { failed: failed as u32 },
    }
}

/// The draws worked so far.
#[derive(Clone, Debug)]
pub(crate) struct Draws {
    pub seed: u64,
    columns: Vec<Option<Arc<Column>>>,
}

impl Draws {
    pub fn new(seed: u64, nodes: usize) -> Self {
        Self {
            seed,
            columns: vec![None; nodes],
        }
    }

    /// Forgets the draws of `replaced` nodes and of all that depend on them.
    pub fn forget(&mut self, graph: &Graph, replaced: &[bool]) {
        let mut stale = replaced.to_vec();
        for index in graph.indices().filter(|index| index.at() < replaced.len()) {
            if stale[index.at()] {
                self.columns[index.at()] = None;
                for dependent in &graph.dependents[index.at()] {
                    stale[dependent.at()] = true;
                }
            }
        }
    }
}

impl Evaluation {
    /// The seed the draws depend on.
    #[must_use]
    pub const fn seed(&self) -> u64 {
        self.draws.seed
    }

    /// Works the draws of `wanted` and of what they need, as far as they are not worked already.
    ///
    /// Cost: [`DRAWS`] times the cells of each uncertain node not yet drawn, in time and in memory (16 kB a cell).
    pub fn draw(&mut self, wanted: &[NodeIndex]) {
        let graph = Arc::clone(&self.graph);
        let mut needed = vec![false; graph.nodes.len()];
        for index in wanted {
            needed[index.at()] = true;
        }
        for place in (0..needed.len()).rev() {
            if needed[place] && self.draws.columns[place].is_none() {
                for need in graph.nodes[place].operator.references() {
                    needed[need.at()] = true;
                }
            }
        }
        for index in graph.indices() {
            if needed[index.at()] && self.draws.columns[index.at()].is_none() {
                self.draws.columns[index.at()] = Some(self.draw_node(&graph, index));
            }
        }
    }

    /// The draws of a node's table once [`Evaluation::draw`] has worked them; before that, its values.
    #[must_use]
    pub fn drawn(&self, index: NodeIndex) -> &Column {
        self.draws.columns[index.at()]
            .as_ref()
            .unwrap_or(&self.columns[index.at()])
    }

    /// The range of one cell of a node's table; it holds the cell's own number.
    pub fn range(&mut self, index: NodeIndex, cell: usize) -> Range {
        self.draw(&[index]);
        let column = self.drawn(index);
        if column.lanes() == 1 {
            return Range::Certain;
        }
        let mut range = range_of(column.cell(cell));
        if let Range::Likely { low, high, .. } = &mut range {
            // What can not be worked out is NaN, which is neither less nor more.
            let value = self.columns[index.at()].at(cell, 0);
            *low = low.min(value);
            *high = high.max(value);
        }
        range
    }

    fn draw_node(&self, graph: &Graph, index: NodeIndex) -> Arc<Column> {
        let node = graph.node(index);
        if let Some(leaf) = self.leaf(index) {
            return match leaf {
                LeafValue::Factor { rows } if rows.iter().any(|row| row.spread.is_uncertain()) => {
                    Arc::new(self.draw_factors(rows))
                }
                _ => Arc::clone(&self.columns[index.at()]),
            };
        }
        if node
            .operator
            .references()
            .iter()
            .all(|need| self.drawn(**need).lanes() == 1)
        {
            return Arc::clone(&self.columns[index.at()]);
        }
        Arc::new(
            Tables {
                graph,
                lengths: &self.lengths,
                column: &|need| self.drawn(need),
            }
            .work(node),
        )
    }

    fn draw_factors(&self, rows: &[Arc<Factor>]) -> Column {
        let mut values = Vec::with_capacity(rows.len() * DRAWS);
        for row in rows {
            let quantiles = draw_quantiles(self.draws.seed, draw_key(row));
            values.extend(quantiles.into_iter().map(|u| spread_quantile(&row.spread, u)));
        }
        Column::in_lanes(DRAWS, values)
    }
}

#[cfg(test)]
mod tests;
