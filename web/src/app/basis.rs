//! The basis of a figure as the column shows it.

use hobnail_core::figures::basis::{Basis, Line, Origin, Row, Step};
use hobnail_core::say;
use hobnail_core::study::first_level::basis;

use super::App;
use super::figures::Influences;

/// That a basis stands open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// The figure it belongs to.
    pub figure: String,
    /// Whether it stays open when another is opened.
    pub is_pinned: bool,
}

/// A basis that stands open.
#[derive(Clone, Debug, PartialEq)]
pub struct BasisShown {
    /// Whose it is, and whether it is pinned.
    pub opened: Opened,
    /// Its steps: the number asked for, then what it rests on.
    pub basis: Basis,
    /// Where the doubt in it comes from, once that was worked out.
    pub influences: Option<Influences>,
}

impl App {
    /// Opens the basis of a figure, or closes it where it stands open; another that is not pinned gives way. What the
    /// figure counted stays on the drawing meanwhile.
    pub fn toggle_basis(&mut self, figure: &str) {
        let was_open = self.opened_bases.iter().any(|open| open.figure == figure);
        self.opened_bases
            .retain(|open| open.figure != figure && (was_open || open.is_pinned));
        if !was_open && self.study.graph().index(figure).is_some() {
            self.opened_bases.push(Opened {
                figure: figure.to_owned(),
                is_pinned: false,
            });
        }
        self.changes.figures = true;
        self.find_pointed();
    }

    /// Pins the open basis of a figure, so that it stays open when another is opened, or no longer.
    pub fn toggle_pin(&mut self, figure: &str) {
        for open in self.opened_bases.iter_mut().filter(|open| open.figure == figure) {
            open.is_pinned = !open.is_pinned;
        }
        self.changes.figures = true;
    }

    /// The bases that stand open, of the plan as it stands.
    #[must_use]
    pub fn bases_shown(&self) -> Vec<BasisShown> {
        let shown = |open: &Opened| {
            Some(BasisShown {
                opened: open.clone(),
                basis: basis(&self.study, &open.figure)?,
                influences: self.drawn.influences(&self.study, &open.figure).cloned(),
            })
        };
        self.opened_bases.iter().filter_map(shown).collect()
    }
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

#[cfg(test)]
mod tests {
    use super::super::tests::{draw, with_homes};
    use super::*;

    /// The bases that stand open, and whether each is pinned.
    fn open(app: &App) -> Vec<(String, bool)> {
        let shown = app.bases_shown();
        shown
            .into_iter()
            .map(|shown| (shown.opened.figure, shown.opened.is_pinned))
            .collect()
    }

    fn pair(figure: &str, is_pinned: bool) -> (String, bool) {
        (figure.to_owned(), is_pinned)
    }

    #[test]
    fn an_unpinned_basis_gives_way_and_a_pinned_one_stays() {
        let mut app = with_homes();
        app.toggle_basis("homes.count");
        app.toggle_basis("jobs.count");
        assert_eq!(open(&app), [pair("jobs.count", false)], "one at a time");
        app.toggle_pin("jobs.count");
        app.toggle_basis("homes.count");
        app.toggle_pin("homes.count");
        app.toggle_basis("land.bar_share");
        app.toggle_basis("people.count");
        let pinned = [pair("jobs.count", true), pair("homes.count", true)];
        assert_eq!(open(&app)[..2], pinned);
        assert_eq!(open(&app)[2..], [pair("people.count", false)]);
        app.toggle_basis("people.count");
        assert_eq!(open(&app), pinned, "closing one closes no other");
        app.toggle_pin("jobs.count");
        app.toggle_basis("people.count");
        assert_eq!(open(&app), [pair("homes.count", true), pair("people.count", false)]);
        app.toggle_basis("homes.count");
        assert_eq!(open(&app), [pair("people.count", false)], "a pinned one closes alone");
    }

    #[test]
    fn there_is_a_doubt_asked_for_each_open_basis_and_none_for_what_is_no_figure() {
        use hobnail_core::study::protocol::Question;
        let mut app = with_homes();
        app.toggle_basis("no.such.figure");
        assert_eq!(open(&app), []);
        app.toggle_basis("homes.count");
        app.toggle_pin("homes.count");
        app.toggle_basis("jobs.count");
        let asked = app.questions();
        for id in ["homes.count", "jobs.count"] {
            assert!(asked.contains(&Question::Sensitivity(id.to_owned())), "{id}");
        }
    }

    #[test]
    fn what_is_pinned_follows_the_plan() {
        let mut app = with_homes();
        app.toggle_basis("homes.count");
        app.toggle_pin("homes.count");
        app.toggle_basis("jobs.count");
        let before = app.bases_shown();
        draw(&mut app, &[(10.0, -40.0), (10.0, 40.0)]);
        let after = app.bases_shown();
        assert_eq!(after[0].opened, before[0].opened);
        assert_ne!(after[0].basis, before[0].basis, "the street takes land");
    }
}
