//! Steps that are no gesture: undo and redo, other units, another alternative, another part measured.

use hobnail_core::figures::difference::moved;
use hobnail_core::figures::value::{Content, FigureValue};
use hobnail_core::measures::streets::methods::place_of_largest;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::history::HistoryFault;
use hobnail_core::plan::{AlternativeId, Edit};
use hobnail_core::say;
use hobnail_core::study::first_level::{first_level, system};

use super::{App, Changes, scopes, words};
use crate::input::{Key, PointerKind};
use crate::tools::Input;

/// How many figures are told of what a step changed.
const MOST_TOLD: usize = 5;

impl App {
    /// Numbers of the first-level figures, in order; `None` for a table, and where there is none.
    pub(super) fn numbers(&self) -> Vec<Option<f64>> {
        let figures = first_level(&self.study).into_iter();
        figures.map(|figure| number_of(&figure)).collect()
    }

    /// Says what a step did and which first-level figures it moved by more than they are rounded to: those that moved
    /// most, and how many more did.
    pub(super) fn say_what_changed(&mut self, label: &str, before: &[Option<f64>]) {
        let units = system(self.study.document());
        let (mut steps, mut told) = (Vec::new(), Vec::new());
        for (place, (figure, was)) in first_level(&self.study).iter().zip(before).enumerate() {
            let unit = self
                .study
                .graph()
                .index(&figure.id)
                .map(|index| self.study.graph().node(index).unit);
            let range = self.drawn.range_at(place);
            if let Some(moved) = unit.and_then(|unit| moved(*was, number_of(figure), &range, &unit, units)) {
                steps.push(moved.steps);
                told.push(say!(
                    "page-figure-moved",
                    figure = figure.title,
                    value = moved.is,
                    before = moved.was
                ));
            }
        }
        let mut figures: Vec<String> = Vec::new();
        while figures.len() < MOST_TOLD
            && let Some(largest) = place_of_largest(&steps)
        {
            steps.remove(largest);
            figures.push(told.remove(largest));
        }
        let step = words::sentence_case(label);
        let figures = figures.join("; ");
        self.say(match (figures.is_empty(), told.len()) {
            (true, _) => say!("page-step-moved-nothing", step = step),
            (_, 0) => say!("page-step-moved", step = step, figures = figures),
            (_, more) => say!("page-step-moved-more", step = step, figures = figures, count = more),
        });
    }

    /// Measures another part of the plan; what is drawn stays as it is.
    pub fn measure(&mut self, part: scopes::Part, is_without_unwilling: bool) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        let scope = scopes::scope(self.study.document(), part, is_without_unwilling);
        if self.study.set_scope(scope) {
            self.changes = Changes::ALL;
            let words = self.study.scope().in_words(self.study.document());
            let words = words.map_or_else(
                || say!("page-measured-all").to_owned(),
                |words| say!("page-measured", what = words),
            );
            self.say([&words, "."].concat());
        }
    }

    /// Shows another alternative.
    pub fn show_alternative(&mut self, alternative: AlternativeId) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        if self.study.show_alternative(alternative) {
            self.selection = None;
            self.picked.clear();
            self.changes = Changes::ALL;
            self.say(words::alternative(&self.study));
        }
    }

    /// Shows numbers in other units.
    pub fn show_units(&mut self, units: UnitSystem) {
        let before = self.study.document().settings.clone();
        let mut after = before.clone();
        after.units = units;
        if before == after || self.study.is_in_gesture() {
            return;
        }
        let edit = Edit::Settings {
            before: Box::new(before),
            after: Box::new(after),
        };
        match self.study.apply(say!("page-step-units"), vec![edit]) {
            Ok(_) => {
                self.changes.plan = true;
                self.say(match units {
                    UnitSystem::Metric => say!("page-units-metric"),
                    UnitSystem::UsCustomary => say!("page-units-customary"),
                });
            }
            Err(fault) => self.warn(fault.to_string()),
        }
    }

    /// Takes back the last step; while a gesture is open, its last point.
    pub fn undo(&mut self) {
        if self.tool.is_busy() {
            self.tell_tool(Input::Key(Key::Escape), PointerKind::Keyboard);
            return;
        }
        let before = self.numbers();
        let label = self.study.history().undo_label().map(str::to_owned);
        let done = self.study.undo();
        self.after_step(true, label, done, &before);
    }

    /// Does the step taken back last again.
    pub fn redo(&mut self) {
        if self.tool.is_busy() {
            return;
        }
        let before = self.numbers();
        let label = self.study.history().redo_label().map(str::to_owned);
        let done = self.study.redo();
        self.after_step(false, label, done, &before);
    }

    fn after_step(
        &mut self,
        is_undo: bool,
        label: Option<String>,
        done: Result<bool, HistoryFault>,
        before: &[Option<f64>],
    ) {
        match done {
            Ok(true) => {
                self.changes.plan = true;
                self.changes.hand = true;
                self.drop_lost_selection();
                let step = label.unwrap_or_default();
                let label = if is_undo {
                    say!("page-undone", step = step)
                } else {
                    say!("page-done-again", step = step)
                };
                self.say_what_changed(&label, before);
            }
            Ok(false) => self.say(say!("page-nothing-more")),
            Err(HistoryFault::NotInMemory(number)) => self.keeping.look_up(number),
            Err(fault) => self.warn(fault.to_string()),
        }
    }
}

/// The number of a figure that is no table.
const fn number_of(figure: &FigureValue) -> Option<f64> {
    match &figure.content {
        Content::Single(cell) => cell.value,
        Content::Table { .. } => None,
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::{draw, with_homes};
    use super::*;
    use crate::app::scopes::Part;
    use hobnail_core::study::first_level::FIRST_LEVEL;
    use hobnail_core::study::protocol::Answer;

    /// Numbers as they are, but for these figures, which differ from them.
    fn but(app: &App, others: &[(&str, f64)]) -> Vec<Option<f64>> {
        let mut numbers = app.numbers();
        for (id, value) in others {
            let place = FIRST_LEVEL.iter().position(|held| held == id).expect("a figure");
            numbers[place] = Some(*value);
        }
        numbers
    }

    #[test]
    fn only_what_moved_is_said() {
        let mut app = with_homes();
        let same = app.numbers();
        app.say_what_changed("draw street", &same);
        assert_eq!(app.said(), "Draw street. No figure changed.");
        let before = but(&app, &[("homes.count", 700.0)]);
        app.say_what_changed("draw street", &before);
        let said = app.said();
        assert!(
            said.starts_with("Draw street. ") && said.ends_with(", was 700 homes."),
            "{said}"
        );
    }

    #[test]
    fn what_moved_less_than_its_range_lets_be_shown_is_not_said() {
        let mut app = with_homes();
        let is = app.numbers()[FIRST_LEVEL.iter().position(|id| *id == "homes.count").expect("it is")].expect("it is");
        let before = but(&app, &[("homes.count", is + 4.0)]);
        app.say_what_changed("draw street", &before);
        assert!(app.said().contains(", was"), "{}", app.said());
        let (low, high) = (is - 100.0, is + 100.0);
        app.take_answer(
            app.study().revision(),
            Answer::Range {
                figure: "homes.count".to_owned(),
                shown: vec!["about".to_owned()],
                bounds: vec![Some((low, high))],
            },
        );
        app.say_what_changed("draw street", &before);
        assert_eq!(app.said(), "Draw street. No figure changed.");
        draw(&mut app, &[(-60.0, -40.0), (-60.0, -45.0)]);
        app.say_what_changed("draw street", &before);
        assert!(
            !app.said().contains("homes, was"),
            "after a step the range still tells: {}",
            app.said()
        );
        let before = but(&app, &[("homes.count", is + 400.0)]);
        app.say_what_changed("draw street", &before);
        assert!(app.said().contains("homes, was"), "{}", app.said());
    }

    #[test]
    fn five_figures_are_told_those_that_moved_most_first_and_how_many_more_did() {
        let mut app = with_homes();
        let others = [
            ("homes.count", 5_000.0),
            ("jobs.count", 2_000.0),
            ("streets.ways_in_and_out", 9.0),
            ("density.homes_per_buildable", 1.0),
            ("streets.length_per_home", 900.0),
            ("streets.most_homes_behind_one", 600.0),
            ("blocks.perimeter_median", 9_000.0),
        ];
        let before = but(&app, &others);
        app.say_what_changed("cut block", &before);
        let said = app.said();
        assert_eq!(said.matches(", was").count(), MOST_TOLD, "{said}");
        assert!(said.ends_with("; and 2 more."), "{said}");
        let at = |words: &str| said.find(words).unwrap_or(usize::MAX);
        assert!(at("5,000 homes") < at("2,000 jobs"), "{said}");
        assert_eq!(at("was 9."), usize::MAX, "the least: {said}");
    }

    #[test]
    fn other_units_and_another_part_are_one_sentence() {
        let mut app = with_homes();
        app.show_units(UnitSystem::Metric);
        assert_eq!(app.said(), "Numbers are in meters and hectares now.");
        app.undo();
        assert_eq!(app.said(), "Undone: change units. No figure changed.");
        app.measure(Part::Today, false);
        assert_eq!(app.said(), "Measured: as it stands today.");
    }
}
