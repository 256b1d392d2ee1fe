//! The column of figures: first-level lines, their ranges once they are drawn, and where the doubt comes from.

use std::collections::BTreeMap;

use hobnail_core::figures::value::{CellValue, Content, FigureValue};
use hobnail_core::study::Study;
use hobnail_core::study::first_level::{FIRST_LEVEL, first_level};
use hobnail_core::study::protocol::{Answer, Question};

/// One line of the column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The figure's id, stable for ever.
    pub id: String,
    /// What it is.
    pub title: String,
    /// Its number with unit, as exact as its range allows; for a table how many of its rows hold anything.
    pub value: String,
    /// Its likely range in words, once it is known.
    pub range: Option<String>,
    /// Why there is no number.
    pub reason: Option<String>,
    /// Whether it is a table.
    pub is_table: bool,
    /// The rows of a table that hold anything: what each is for, and its number.
    pub cells: Vec<(String, String)>,
}

/// Ranges and influences that were drawn for one revision of the plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawn {
    revision: u64,
    /// By figure, each cell as shown with its range.
    ranges: BTreeMap<String, Vec<String>>,
    /// By figure, what its doubt comes from.
    influences: BTreeMap<String, Influences>,
}

/// Where the doubt in a figure comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum Influences {
    /// Titles and shares of variance, the largest first.
    Shares(Vec<(String, f64)>),
    /// There are none, and why.
    None(String),
}

impl Drawn {
    /// Takes an answer; `false` when it is stale and was dropped.
    pub fn take(&mut self, study: &Study, revision: u64, answer: Answer) -> bool {
        if revision != study.revision() || study.is_in_gesture() {
            return false;
        }
        if self.revision != revision {
            *self = Self {
                revision,
                ..Self::default()
            };
        }
        match answer {
            Answer::Range { figure, shown, .. } => drop(self.ranges.insert(figure, shown)),
            Answer::Sensitivity { figure, shares, reason } => {
                let influences = reason.map_or(Influences::Shares(shares), Influences::None);
                self.influences.insert(figure, influences);
            }
        }
        true
    }

    /// Where the doubt in a figure comes from, when it was drawn for the plan as it stands.
    #[must_use]
    pub fn influences(&self, study: &Study, figure: &str) -> Option<&Influences> {
        self.influences
            .get(figure)
            .filter(|_| self.revision == study.revision())
    }

    fn ranges(&self, study: &Study, figure: &str) -> Option<&[String]> {
        let held = self.ranges.get(figure).filter(|_| self.revision == study.revision());
        held.map(Vec::as_slice)
    }
}

/// The first-level figures of the open plan, in order, with the ranges that were drawn for it as it stands.
#[must_use]
pub fn rows(study: &Study, drawn: &Drawn) -> Vec<Row> {
    let lines = first_level(study).into_iter();
    lines
        .map(|figure| row(&figure, drawn.ranges(study, &figure.id)))
        .collect()
}

/// What is asked once the plan rests: the range of every first-level figure, then what the open figure's doubt comes
/// from.
#[must_use]
pub fn questions(open: Option<&str>) -> Vec<Question> {
    let ranges = FIRST_LEVEL.iter().map(|id| Question::Range((*id).to_owned()));
    ranges
        .chain(open.map(|id| Question::Sensitivity(id.to_owned())))
        .collect()
}

fn row(figure: &FigureValue, ranges: Option<&[String]>) -> Row {
    let shown = |cell: &CellValue, place: usize| {
        let drawn = ranges
            .and_then(|ranges| ranges.get(place))
            .map_or(cell.shown.as_str(), String::as_str);
        // The writer of ranges parts number and range with these words.
        match drawn.split_once(", likely ") {
            Some((value, range)) => (value.to_owned(), Some(format!("likely {range}"))),
            None => (drawn.to_owned(), None),
        }
    };
    let mut row = Row {
        id: figure.id.clone(),
        title: figure.title.clone(),
        value: String::new(),
        range: None,
        reason: None,
        is_table: matches!(figure.content, Content::Table { .. }),
        cells: Vec::new(),
    };
    match &figure.content {
        Content::Single(cell) if cell.value.is_some() => (row.value, row.range) = shown(cell, 0),
        Content::Single(cell) => {
            "—".clone_into(&mut row.value);
            row.reason.clone_from(&cell.reason);
        }
        Content::Table { rows, .. } => {
            let held = rows
                .iter()
                .enumerate()
                .filter(|(_, line)| line.value.value.is_some_and(|value| value > 0.0));
            row.cells = held
                .map(|(place, line)| {
                    let (value, range) = shown(&line.value, place);
                    let range = range.map_or_else(String::new, |range| format!(", {range}"));
                    (line.titles.join(", "), format!("{value}{range}"))
                })
                .collect();
            row.value = match row.cells.len() {
                0 => "none".to_owned(),
                1 => "1 kind".to_owned(),
                kinds => format!("{kinds} kinds"),
            };
        }
    }
    row
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::Document;
    use hobnail_core::plan::projection::GeographicPoint;

    fn study() -> Study {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        Study::open(Document::new("Empty", origin)).expect("the tables fit together")
    }

    fn range(shown: &str) -> Answer {
        Answer::Range {
            figure: "homes.count".to_owned(),
            shown: vec![shown.to_owned()],
            bounds: vec![None],
        }
    }

    #[test]
    fn a_range_stands_beside_its_number() {
        let study = study();
        let mut drawn = Drawn::default();
        assert!(drawn.take(&study, study.revision(), range("about 40 homes, likely 32 to 47")));
        let rows = rows(&study, &drawn);
        assert_eq!(rows[0].value, "about 40 homes");
        assert_eq!(rows[0].range.as_deref(), Some("likely 32 to 47"));
    }

    #[test]
    fn a_stale_range_is_dropped() {
        let mut study = study();
        let mut drawn = Drawn::default();
        let asked_at = study.revision();
        study.begin("draw").expect("no gesture is open");
        study.change(Vec::new()).expect("nothing to apply");
        study.cancel().expect("a gesture is open");
        assert!(!drawn.take(&study, asked_at, range("about 40 homes, likely 32 to 47")));
        assert_eq!(rows(&study, &drawn)[0].range, None);
    }

    #[test]
    fn what_can_not_be_worked_out_says_why() {
        let rows = rows(&study(), &Drawn::default());
        let share = rows
            .iter()
            .find(|row| row.id == "walk.center_5min_homes_share")
            .expect("the row");
        assert_eq!(share.value, "—");
        assert!(share.reason.is_some());
    }
}
