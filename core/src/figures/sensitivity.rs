//! Which factors the doubt in a figure comes from: shares of variance by rank regression on the figure's own draws.
//!
//! The ranks of the figure's draws are regressed on the ranks of every uncertain factor's draws; the squares of the
//! standardized coefficients, scaled to sum to 1, are the shares. Ranks make the answer hold for any rising or falling
//! relation, not for straight ones alone; relations that rise and fall again escape it, and `explained` says how much
//! of the variance of ranks the regression explains at all.
//! Standardized rank regression coefficients: Saltelli, Ratto, Andres, Campolongo, Cariboni, Gatelli, Saisana,
//! Tarantola, Global Sensitivity Analysis: The Primer, 2008 (from memory).

use crate::order;
use crate::order::OrderedMap;
use crate::say;
use std::fmt;

use serde::Serialize;

use super::evaluate::Evaluation;
use super::graph::NodeIndex;
use super::range::{MOST_FAILED, Range, draw_key, draw_quantiles, range_of};

/// Where the doubt in one number comes from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Sensitivity {
    /// The factors or groups, the largest share first.
    pub influences: Vec<Influence>,
    /// Share of the variance of the figure's ranks that the regression explains.
    pub explained: f64,
}

/// The part of one factor, or of one group of factors that move together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Influence {
    /// Id of the factor or group.
    pub id: String,
    /// Titles of its factors.
    pub titles: Vec<String>,
    /// Its share of the variance; all shares sum to 1.
    pub share: f64,
    /// Whether the figure rises with it.
    pub rises: bool,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NoSensitivity {
    /// Nothing uncertain goes into it.
    Certain,
    /// Uncertain factors go into it, but its draws are all the same.
    Unmoved,
    /// Too many draws cannot be worked out.
    TooFewDraws,
    /// Two factors' draws cannot be told apart.
    Inseparable,
}

impl fmt::Display for NoSensitivity {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Certain => say!("figures-certain"),
            Self::Unmoved => say!("figures-unmoved"),
            Self::TooFewDraws => say!("figures-few-draws"),
            Self::Inseparable => say!("figures-inseparable"),
        })
    }
}

impl Evaluation {
    /// Where the doubt in one cell comes from. Works the cell's draws if need be.
    ///
    /// # Errors
    /// When nothing uncertain moves it, or its draws do not allow an answer.
    pub fn sensitivity(&mut self, index: NodeIndex, cell: usize) -> Result<Sensitivity, NoSensitivity> {
        self.draw(&[index]);
        let mut titles: OrderedMap<String, Vec<String>> = OrderedMap::new();
        for leaf in self.leaves_of(index) {
            for row in self.leaf(leaf).map_or(&[][..], super::leaf::LeafValue::factors) {
                if row.spread.is_uncertain() {
                    let known = titles.entry(draw_key(row).to_owned()).or_default();
                    if !known.contains(&row.title) {
                        known.push(row.title.clone());
                    }
                }
            }
        }
        let column = self.drawn(index);
        if titles.is_empty() || column.lanes() == 1 {
            return Err(NoSensitivity::Certain);
        }
        let draws = column.cell(cell);
        let workable: Vec<usize> = (0..draws.len()).filter(|draw| !draws[*draw].is_nan()).collect();
        if draws.len() - workable.len() > MOST_FAILED {
            return Err(NoSensitivity::TooFewDraws);
        }
        // Draws that differ by rounding alone would be ranked by it.
        if range_of(draws) == Range::Certain {
            return Err(NoSensitivity::Unmoved);
        }
        let pick = |values: &[f64]| -> Vec<f64> { workable.iter().map(|draw| values[*draw]).collect() };
        let response = standardized_ranks(&pick(draws)).ok_or(NoSensitivity::Unmoved)?;
        let predictors: Vec<Vec<f64>> = titles
            .keys()
            .map(|key| standardized_ranks(&pick(&draw_quantiles(self.seed(), key))))
            .collect::<Option<_>>()
            .ok_or(NoSensitivity::Inseparable)?;
        let (coefficients, explained) = regress(&predictors, &response).ok_or(NoSensitivity::Inseparable)?;
        let total: f64 = coefficients.iter().map(|one| one * one).sum();
        if total <= 0.0 {
            return Err(NoSensitivity::Unmoved);
        }
        let mut influences: Vec<Influence> = titles
            .into_iter()
            .zip(coefficients)
            .map(|((id, titles), coefficient)| Influence {
                id,
                titles,
                share: coefficient * coefficient / total,
                rises: coefficient > 0.0,
            })
            .collect();
        order::sort_by(&mut influences, |a, b| {
            b.share.total_cmp(&a.share).then_with(|| a.id.cmp(&b.id))
        });
        Ok(Sensitivity { influences, explained })
    }
}

/// Ranks, equal values sharing their mean rank, with mean 0 and sum of squares 1; `None` when all are equal.
fn standardized_ranks(values: &[f64]) -> Option<Vec<f64>> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order::sort_by(&mut order, |a, b| values[*a].total_cmp(&values[*b]).then(a.cmp(b)));
    let mut ranks = vec![0.0; values.len()];
    let mut start = 0;
    while start < order.len() {
        let same = |place: &&usize| values[**place].total_cmp(&values[order[start]]).is_eq();
        let count = order[start..].iter().take_while(same).count();
        for place in &order[start..start + count] {
            ranks[*place] = start as f64 + (count - 1) as f64 / 2.0;
        }
        start += count;
    }
    let mean = values.len().saturating_sub(1) as f64 / 2.0;
    let size = ranks
        .iter()
        .map(|rank| (rank - mean) * (rank - mean))
        .sum::<f64>()
        .sqrt();
    (size > 0.0).then(|| ranks.iter().map(|rank| (rank - mean) / size).collect())
}

/// Least squares of a standardized response on standardized predictors: the coefficients and the share explained.
/// `None` when two predictors cannot be told apart.
fn regress(predictors: &[Vec<f64>], response: &[f64]) -> Option<(Vec<f64>, f64)> {
    let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
    let correlation: Vec<f64> = predictors.iter().map(|one| dot(one, response)).collect();
    let rows = predictors
        .iter()
        .zip(&correlation)
        .map(|(one, last)| predictors.iter().map(|other| dot(one, other)).chain([*last]).collect())
        .collect();
    let coefficients = solve(rows)?;
    let explained = dot(&coefficients, &correlation).clamp(0.0, 1.0);
    Some((coefficients, explained))
}

/// Smallest pivot taken for more than rounding. Correlations are at most 1 and exact to about 1e-13; factors drawn
/// apart from one another leave pivots near 1.
const LEAST_PIVOT: f64 = 1e-9;

/// Gaussian elimination with the largest pivot of each column; each row holds its right side last.
fn solve(mut rows: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let count = rows.len();
    for column in 0..count {
        let pivot = (column..count).max_by(|a, b| {
            let size = |row: &usize| rows[*row][column].abs();
            size(a).total_cmp(&size(b)).then(b.cmp(a))
        })?;
        rows.swap(column, pivot);
        let (above, below) = rows.split_at_mut(column + 1);
        let pivot_row = &above[column];
        if pivot_row[column].abs() < LEAST_PIVOT {
            return None;
        }
        for row in below {
            let times = row[column] / pivot_row[column];
            for (value, pivot) in row[column..].iter_mut().zip(&pivot_row[column..]) {
                *value -= times * pivot;
            }
        }
    }
    let mut solution = vec![0.0; count];
    for row in (0..count).rev() {
        let known: f64 = (row + 1..count)
            .map(|column| rows[row][column] * solution[column])
            .sum();
        solution[row] = (rows[row][count] - known) / rows[row][row];
    }
    Some(solution)
}

#[cfg(test)]
mod tests;
