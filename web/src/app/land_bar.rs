//! The land bar: what the site's land is used for, as parts of a hundred.

use hobnail_core::figures::value::Content;
use hobnail_core::plan::building::LandUse;
use hobnail_core::study::Study;

use super::figures::Drawn;

/// The figure it shows, a table over the uses of the bar.
pub const FIGURE: &str = "land.bar_share";

/// How a part of the bar is tinted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tint {
    /// As land of this use.
    Use(LandUse),
    /// As water.
    Water,
    /// As a carriageway.
    Streets,
    /// As bare paper.
    NoUse,
}

/// A part of the bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its entry on the bar's axis.
    pub id: String,
    /// What it is.
    pub words: String,
    /// Its share of the whole, 0 to 1.
    pub share: f64,
    /// Its share as shown.
    pub shown: String,
    /// How it is tinted.
    pub tint: Tint,
}

/// The bar as it stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LandBar {
    /// Its parts, in order, without empty ones.
    pub parts: Vec<Part>,
    /// Why there is none.
    pub reason: Option<String>,
}

impl LandBar {
    /// Whether it stands in the column; the same figure then has no row of its own.
    #[must_use]
    pub const fn is_shown(&self) -> bool {
        !self.parts.is_empty() || self.reason.is_some()
    }
}

/// The land bar of the plan as it stands, its shares as exact as the ranges drawn for it allow.
#[must_use]
pub fn land_bar(study: &Study, drawn: &Drawn) -> LandBar {
    let Some(index) = study.graph().index(FIGURE) else {
        return LandBar::default();
    };
    let figure = study.figure_value(index);
    let Content::Table { rows, .. } = figure.content else {
        return LandBar::default();
    };
    let reason = rows.iter().find_map(|row| row.value.reason.clone());
    let parts = rows.into_iter().enumerate().filter_map(|(place, row)| {
        let share = row.value.value.filter(|share| *share > 0.0)?;
        let id = row.at.concat();
        Some(Part {
            tint: tint_of(&id),
            id,
            words: row.titles.join(", "),
            share,
            shown: drawn.value(study, FIGURE, place).unwrap_or(row.value.shown),
        })
    });
    LandBar {
        parts: parts.collect(),
        reason,
    }
}

/// The tint of a part, by its entry.
fn tint_of(entry: &str) -> Tint {
    match entry {
        "homes" => Tint::Use(LandUse::Residential),
        "shops_and_work" => Tint::Use(LandUse::Business),
        "civic" => Tint::Use(LandUse::Civic),
        "green" => Tint::Use(LandUse::Leisure),
        "water" => Tint::Water,
        "streets" => Tint::Streets,
        _ => Tint::NoUse,
    }
}
