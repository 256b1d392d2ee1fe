//! Leaf values: what was counted on the drawing, what was chosen, what the factor tables say.

use std::fmt;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::graph::LeafKind;
use super::unit::Dimension;
use crate::passing::passed;
use crate::say;

/// A number, or why there is none. Never NaN, never infinite.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cell {
    /// In coherent units.
    Number(f64),
    /// Why it cannot be worked out: `no center is drawn`.
    Unknown(String),
}

passed!(enum Cell { 0 = Number(value), 1 = Unknown(why) });

impl Cell {
    /// The number, if there is one.
    #[must_use]
    pub const fn number(&self) -> Option<f64> {
        match self {
            Self::Number(value) => Some(*value),
            Self::Unknown(_) => None,
        }
    }
}

/// The values of one leaf, a cell for each place of its axes, the last axis fastest.
#[derive(Clone, Debug, PartialEq)]
pub enum LeafValue {
    /// Counted on the drawing.
    Counted {
        /// The cells.
        cells: Vec<Cell>,
        /// What was counted, for showing it on the drawing; means nothing to the engine.
        counted: Option<String>,
    },
    /// A setting.
    Chosen {
        /// The cells.
        cells: Vec<Cell>,
    },
    /// Factors, one for each cell.
    Factor {
        /// The rows.
        rows: Vec<Arc<Factor>>,
    },
}

impl LeafValue {
    /// The kind of leaf this value is for.
    #[must_use]
    pub const fn kind(&self) -> LeafKind {
        match self {
            Self::Counted { .. } => LeafKind::Counted,
            Self::Chosen { .. } => LeafKind::Chosen,
            Self::Factor { .. } => LeafKind::Factor,
        }
    }

    /// How many cells it has.
    #[must_use]
    pub const fn len(&self) -> usize {
        match self {
            Self::Counted { cells, .. } | Self::Chosen { cells } => cells.len(),
            Self::Factor { rows } => rows.len(),
        }
    }

    /// Whether it has no cells.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The cell at `place`; a factor's is its typical value.
    #[must_use]
    pub fn cell(&self, place: usize) -> Option<Cell> {
        match self {
            Self::Counted { cells, .. } | Self::Chosen { cells } => cells.get(place).cloned(),
            Self::Factor { rows } => rows.get(place).map(|row| Cell::Number(row.spread.typical)),
        }
    }

    /// The factors of a factor leaf, one for each cell; none for another leaf.
    #[must_use]
    pub fn factors(&self) -> &[Arc<Factor>] {
        match self {
            Self::Factor { rows } => rows,
            _ => &[],
        }
    }
}

/// One row of the factor tables: a value, how far it may be off, and where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct Factor {
    /// Stable id; draws depend on it, so it never changes (renames become aliases).
    pub id: String,
    /// Words for the page.
    pub title: String,
    /// What it measures.
    pub dimension: Dimension,
    /// The unit it is written in: `ft2/job`.
    pub unit: String,
    /// Coherent units in one of `unit`.
    pub scale: f64,
    /// Low, typical, high.
    pub spread: Spread,
    /// Factors of one group move together.
    pub group: Option<String>,
    /// Where low, typical and high come from.
    pub sources: Vec<Source>,
    /// What to keep in mind.
    pub note: String,
    /// The shipped values, when the user changed them.
    pub shipped: Option<Spread>,
}

impl Factor {
    /// Whether the user changed it.
    #[must_use]
    pub const fn is_changed(&self) -> bool {
        self.shipped.is_some()
    }

    /// How the shipped typical value was come by; common practice when no source gives it.
    #[must_use]
    pub fn how(&self) -> How {
        let giving = self
            .sources
            .iter()
            .find(|source| source.gives.contains(&Given::Typical));
        giving.map_or(How::CommonPractice, |source| source.how)
    }
}

/// Low, typical and high of an uncertain number, in coherent units.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Spread {
    /// The 10th percentile, or the least for [`SpreadKind::Bounds`].
    pub low: f64,
    /// The median, or the likeliest for [`SpreadKind::Bounds`].
    pub typical: f64,
    /// The 90th percentile, or the most for [`SpreadKind::Bounds`].
    pub high: f64,
    /// How values lie between.
    pub kind: SpreadKind,
}

/// How an uncertain number is spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SpreadKind {
    /// Above zero: two halves of lognormals that meet at the median.
    Positive,
    /// Between 0 and 1: two halves of normals on the log of the odds that meet at the median.
    Share,
    /// Between hard bounds: a triangle.
    Bounds,
}

impl Spread {
    /// Everything wrong with it, in words.
    #[must_use]
    pub fn faults(&self) -> Vec<String> {
        let Self {
            low,
            typical,
            high,
            kind,
        } = *self;
        let mut faults = Vec::new();
        if !(low.is_finite() && typical.is_finite() && high.is_finite()) {
            faults.push(say!("figures-spread-finite").to_owned());
            return faults;
        }
        if !(low <= typical && typical <= high) {
            faults.push(say!("figures-spread-falls").to_owned());
        }
        if kind == SpreadKind::Positive && low <= 0.0 {
            faults.push(say!("figures-spread-positive").to_owned());
        }
        if kind == SpreadKind::Share && (low <= 0.0 || high >= 1.0) {
            faults.push(say!("figures-spread-share").to_owned());
        }
        faults
    }

    /// Whether there is any doubt in it.
    #[must_use]
    pub fn is_uncertain(&self) -> bool {
        self.low < self.high
    }
}

/// Where one or more of low, typical and high come from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// Which of `low`, `typical`, `high` it gives.
    pub gives: Vec<Given>,
    /// How sure we are of it.
    pub how: How,
    /// Title of the work; empty for common practice.
    #[serde(default)]
    pub title: String,
    /// Edition, if any.
    pub edition: Option<String>,
    /// Year, if known.
    pub year: Option<u16>,
    /// Table, section or page.
    pub table: Option<String>,
    /// Where it was read, when not in the work itself.
    pub via: Option<String>,
}

/// One of the three values of a factor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Given {
    /// The low value.
    Low,
    /// The typical value.
    Typical,
    /// The high value.
    High,
}

impl Given {
    /// Its word in the language of the window.
    #[must_use]
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Low => say!("figures-low"),
            Self::Typical => say!("figures-typical"),
            Self::High => say!("figures-high"),
        }
    }

    /// Its word in factor tables.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Low => "low",
            Self::Typical => "typical",
            Self::High => "high",
        }
    }
}

impl How {
    /// What stands beside a value that was not read in its source; empty for one that was.
    #[must_use]
    pub fn mark(self) -> &'static str {
        match self {
            Self::Read => "",
            Self::FromMemory => say!("figures-mark-memory"),
            Self::CommonPractice => say!("figures-mark-common"),
        }
    }
}

/// How a value was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// Read in the named work, or in a copy of it named beside.
    Read,
    /// Remembered, not read again.
    FromMemory,
    /// Common practice, no source.
    CommonPractice,
}

impl fmt::Display for Source {
    /// `typical: Title, edition, year, table (read via …)`.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let given: Vec<&str> = self.gives.iter().map(|given| given.in_words()).collect();
        write!(out, "{}: ", given.join(", "))?;
        if self.how == How::CommonPractice {
            return out.write_str(say!("figures-common-practice"));
        }
        let year = self
            .year
            .map_or_else(|| say!("figures-no-year").to_owned(), |year| year.to_string());
        let mut parts = vec![self.title.clone()];
        parts.extend(self.edition.clone());
        parts.push(year);
        parts.extend(self.table.clone());
        let mut words = parts.join(", ");
        if self.how == How::FromMemory {
            words += self.how.mark();
        }
        if let Some(via) = &self.via {
            words = say!("figures-source-via", source = words, via = via);
        }
        out.write_str(&words)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spread_says_everything_wrong_with_it() {
        let spread = |low, typical, high, kind| Spread {
            low,
            typical,
            high,
            kind,
        };
        assert_eq!(spread(1.0, 2.0, 3.0, SpreadKind::Positive).faults().len(), 0);
        assert_eq!(spread(0.0, 1.0, 1.0, SpreadKind::Bounds).faults().len(), 0);
        assert_eq!(spread(0.0, 0.5, 0.9, SpreadKind::Share).faults().len(), 1);
        assert_eq!(spread(-1.0, -2.0, 3.0, SpreadKind::Positive).faults().len(), 2);
        assert_eq!(spread(f64::NAN, 0.0, 1.0, SpreadKind::Bounds).faults().len(), 1);
    }

    #[test]
    fn a_source_is_one_line() {
        let source = Source {
            gives: vec![Given::Low, Given::High],
            how: How::FromMemory,
            title: "Handbook of Walking".to_owned(),
            edition: Some("2nd edition".to_owned()),
            year: Some(1999),
            table: Some("table 4".to_owned()),
            via: None,
        };
        assert_eq!(
            source.to_string(),
            "low, high: Handbook of Walking, 2nd edition, 1999, table 4 (from memory)"
        );
    }
}
