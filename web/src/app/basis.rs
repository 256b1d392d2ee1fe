//! The basis of a figure as the column shows it.

use hobnail_core::figures::basis::{Basis, Line, Origin, Row, Step};
use hobnail_core::say;
use hobnail_core::study::first_level::basis;

use super::App;
use super::figures::Influences;

/// A basis that stands open.
#[derive(Clone, Debug, PartialEq)]
pub struct BasisShown {
    /// The figure it belongs to.
    pub figure: String,
    /// Its steps: the number asked for, then what it rests on.
    pub basis: Basis,
    /// Where the doubt in it comes from, once that was worked out.
    pub influences: Option<Influences>,
}

/// The basis of a first-level figure; `None` for an id there is none of.
#[must_use]
pub fn of(app: &App, figure: &str) -> Option<BasisShown> {
    Some(BasisShown {
        figure: figure.to_owned(),
        basis: basis(app.study(), figure)?,
        influences: app.drawn().influences(app.study(), figure).cloned(),
    })
}

/// Where a step's values come from, in one sentence.
#[must_use]
pub fn origin_words(step: &Step) -> String {
    match &step.origin {
        Origin::Worked { words } => words.clone(),
        Origin::Method { name, words } => format!("{name}: {words}"),
        Origin::Counted { .. } => say!("page-basis-counted").to_owned(),
        Origin::Chosen => say!("page-basis-chosen").to_owned(),
        Origin::Factor => say!("page-basis-factor").to_owned(),
    }
}

/// One line of working: what it works out, the formula with numbers, the result.
#[must_use]
pub fn line_words(line: &Line) -> String {
    let title = line
        .title
        .as_ref()
        .map_or_else(String::new, |title| format!("{title}: "));
    format!("{title}{} = {}", line.formula, line.result)
}

/// A row as one line.
#[must_use]
pub fn row_words(row: &Row) -> String {
    if row.label.is_empty() {
        row.value.clone()
    } else {
        format!("{}: {}", row.label, row.value)
    }
}
