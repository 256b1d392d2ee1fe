//! The difference a figure makes between two alternatives, draw by draw.
//!
//! Both alternatives draw the same factor at the same quantile, so doubt they share cancels: two plans may each be
//! uncertain by a fifth and still differ for certain.
//! In words it is what lies between the two numbers as they are shown, so that whoever subtracts gets the same.

use std::fmt;
use std::sync::Arc;

use serde::Serialize;

use super::display;
use super::evaluate::Evaluation;
use super::graph::NodeIndex;
use super::leaf::Cell;
use super::range::{Range, range_of};
use super::unit::{System, Unit};
use crate::say;

/// Second less first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Difference {
    /// The difference of the values, or why there is none.
    pub value: Cell,
    /// The range of the paired draws' differences.
    pub range: Range,
    /// What lies between the two numbers as they are shown, without sign and unit; `None` where they are shown the
    /// same, or one is missing.
    pub amount: Option<String>,
    /// Whether it is larger than rounding and range: at least as large as the coarser step the two numbers are shown
    /// in, with a range on one side of zero.
    pub is_clear: bool,
}

/// Why two evaluations cannot be compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotComparable {
    /// They are of different graphs.
    OtherGraph,
    /// They are drawn with different seeds, so draws do not pair.
    OtherSeed,
    /// The figure's axes have other entries.
    OtherEntries,
}

impl fmt::Display for NotComparable {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::OtherGraph => say!("figures-other-graph"),
            Self::OtherSeed => say!("figures-other-seed"),
            Self::OtherEntries => say!("figures-other-entries"),
        })
    }
}

/// One cell of `second` less the same of `first`, in the units of `system` as far as rounding matters.
///
/// # Errors
/// When the two do not share graph, seed and the table's entries.
pub fn difference(
    first: &mut Evaluation,
    second: &mut Evaluation,
    index: NodeIndex,
    cell: usize,
    system: System,
) -> Result<Difference, NotComparable> {
    if !Arc::ptr_eq(first.graph(), second.graph()) {
        return Err(NotComparable::OtherGraph);
    }
    if first.seed() != second.seed() {
        return Err(NotComparable::OtherSeed);
    }
    let node = first.graph().node(index);
    if node
        .axes
        .iter()
        .any(|axis| first.entries(*axis) != second.entries(*axis))
    {
        return Err(NotComparable::OtherEntries);
    }
    let unit = node.unit;
    let (from, to) = (first.cell(index, cell), second.cell(index, cell));
    let mut step = 0.0;
    let mut amount = None;
    let value = match (from, to) {
        (Cell::Number(from), Cell::Number(to)) => {
            let (from_shown, from_step) = display::as_shown(from, &first.range(index, cell), &unit, system);
            let (to_shown, to_step) = display::as_shown(to, &second.range(index, cell), &unit, system);
            step = from_step.max(to_step) * unit.shown(system).scale;
            let places = display::places(from_step.min(to_step));
            let between = display::grouped((to_shown - from_shown).abs(), places);
            let is_any = between.chars().any(|digit| ('1'..='9').contains(&digit));
            amount = is_any.then_some(between);
            Cell::Number(to - from)
        }
        (Cell::Unknown(reason), _) | (_, Cell::Unknown(reason)) => Cell::Unknown(reason),
    };
    let range = paired_range(first, second, index, cell);
    let is_clear = match (&value, &range) {
        (Cell::Unknown(_), _) | (_, Range::Unknown { .. }) => false,
        (Cell::Number(value), Range::Certain) => value.abs() >= step && value.abs() > 0.0,
        (Cell::Number(value), Range::Likely { low, high, .. }) => {
            value.abs() >= step && (*low > 0.0 && *value > 0.0 || *high < 0.0 && *value < 0.0)
        }
    };
    Ok(Difference {
        value,
        range,
        amount,
        is_clear,
    })
}

fn paired_range(first: &Evaluation, second: &Evaluation, index: NodeIndex, cell: usize) -> Range {
    let (from, to) = (first.drawn(index), second.drawn(index));
    let lanes = from.lanes().max(to.lanes());
    if lanes == 1 {
        return Range::Certain;
    }
    let draws: Vec<f64> = (0..lanes).map(|lane| to.at(cell, lane) - from.at(cell, lane)).collect();
    range_of(&draws)
}

/// A difference in words: `12 homes more`, `1 point less`, `no clear difference`; `None` where the two numbers are shown
/// the same, or one is missing.
#[must_use]
pub fn shown_difference(difference: &Difference, unit: &Unit, system: System) -> Option<String> {
    let Cell::Number(value) = difference.value else {
        return None;
    };
    let number = difference.amount.as_deref()?;
    if !difference.is_clear {
        return Some(say!("figures-no-difference").to_owned());
    }
    // A share of 40 % that is 1 % less might be 39.6 %.
    let amount = match (unit.shown(system).many, number) {
        ("%", "1") => say!("figures-one-point").to_owned(),
        ("%", number) => say!("figures-points", number = number),
        (_, number) => display::with_unit(number, unit, system),
    };
    Some(if value < 0.0 {
        say!("figures-less", amount = amount)
    } else {
        say!("figures-more", amount = amount)
    })
}

/// A number that changed, as the page shows it, and what it was.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// What it was; a dash where there was none.
    pub was: String,
    /// What it is; a dash where there is none.
    pub is: String,
    /// How many times the change is as large as what the number is rounded to; without end where there is no number now
    /// or was none.
    pub steps: f64,
}

/// What is told of a number that was `was` and is `is`, both rounded to what this range allows; `None` where they are
/// shown the same or differ by less than they are rounded to.
///
/// The range is one that the number had lately. Whether draws of both moments, paired, agree on the change takes longer:
/// [`difference`].
#[must_use]
pub fn moved(was: Option<f64>, is: Option<f64>, range: &Range, unit: &Unit, system: System) -> Option<Moved> {
    let shown = |value: Option<f64>| {
        value.map_or_else(
            || ("—".to_owned(), f64::INFINITY),
            |value| {
                let (value, step) = display::as_shown(value, range, unit, system);
                let number = display::grouped(value, display::places(step));
                (display::with_unit(&number, unit, system), step)
            },
        )
    };
    let ((was_shown, was_step), (is_shown, is_step)) = (shown(was), shown(is));
    let steps = match (was, is) {
        (Some(was), Some(is)) => (is - was).abs() / (was_step.max(is_step) * unit.shown(system).scale),
        _ => f64::INFINITY,
    };
    (was_shown != is_shown && steps >= 1.0).then_some(Moved {
        was: was_shown,
        is: is_shown,
        steps,
    })
}

#[cfg(test)]
mod tests;
