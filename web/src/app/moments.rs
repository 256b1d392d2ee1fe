//! Moments of the plan: going back to one, marking one to compare with, and figures enlarged for a room.

use hobnail_core::say;
use hobnail_core::study::first_level::FIRST_LEVEL;
use hobnail_core::study::marked::Moment;
use hobnail_core::study::protocol::Question;

use super::figures::{self, Row};
use super::{App, words};
use crate::input::PointerKind;
use crate::tools::Input;

/// How many figures are enlarged at most.
pub const MOST_ENLARGED: usize = 3;

/// The figures that are enlarged first: how many homes, and what is within a walk of them.
const FOR_A_ROOM: [&str; MOST_ENLARGED] = [
    "homes.count",
    "walk.center_5min_homes_share",
    "walk.all_five_10min_homes_share",
];

/// The moment that changes are shown against.
#[derive(Clone, Debug)]
pub struct Marked {
    /// What it is called.
    pub name: String,
    moment: Moment,
    /// The numbers shown then, by figure, to have something to say while the hand moves.
    shown: Vec<(String, String)>,
    /// Whether whoever compares holds it.
    pub(super) is_told: bool,
}

/// The steps of the plan's history, as a list to choose from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct HistoryShown {
    /// What each step is called, the oldest first.
    pub steps: Vec<String>,
    /// How many of them are done.
    pub done: usize,
    /// What the marked moment is called.
    pub marked: Option<String>,
}

impl App {
    /// Marks the plan as it stands, to show changes against it.
    pub fn mark_moment(&mut self, name: &str) {
        if self.refuses() {
            return;
        }
        let name = match name.trim() {
            "" => say!("page-moment-step", number = self.study.history().undo_count()),
            name => name.to_owned(),
        };
        self.study.name_moment(&name);
        self.drawn.forget_changes();
        let mut rows = self.exact_rows();
        rows.extend(figures::rows_of(
            &self.study,
            &figures::Drawn::default(),
            &self.enlarged,
        ));
        self.marked = Some(Marked {
            moment: Moment::of(&self.study),
            shown: rows.into_iter().map(|row| (row.id, row.value)).collect(),
            name: name.clone(),
            is_told: false,
        });
        self.changes.plan = true;
        self.say(say!("page-moment-marked", name = name));
    }

    /// Shows no changes any more.
    pub fn forget_moment(&mut self) {
        self.marked = None;
        self.drawn.forget_changes();
        self.changes.plan = true;
        self.say(say!("page-moment-none"));
    }

    /// Goes to the moment at which this many steps are done.
    pub fn go_to_step(&mut self, steps_done: usize) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        let before = self.numbers();
        let outcome = self.study.go_to(steps_done);
        self.changes.plan = true;
        self.changes.hand = true;
        self.drop_lost_selection();
        match outcome {
            Ok(true) => {
                let label = say!("page-moment-after", number = steps_done);
                self.say_what_changed(&label, &before);
            }
            Ok(false) => self.say(say!("page-moment-here")),
            Err(hobnail_core::plan::history::HistoryFault::NotInMemory(number)) => self.keeping.look_up(number),
            Err(fault) => self.warn(fault.to_string()),
        }
    }

    /// The steps of the history.
    #[must_use]
    pub fn history_shown(&self) -> HistoryShown {
        let history = self.study.history();
        HistoryShown {
            steps: history
                .labels()
                .map(|label| label.map_or_else(|| say!("page-moment-earlier-step").to_owned(), words::sentence_case))
                .collect(),
            done: history.undo_count(),
            marked: self.marked.as_ref().map(|marked| marked.name.clone()),
        }
    }

    /// Enlarges a figure for the back of the room, or no longer; of too many the first gives way.
    pub fn toggle_enlarged(&mut self, figure: &str) {
        if let Some(place) = self.enlarged.iter().position(|held| held == figure) {
            self.enlarged.remove(place);
        } else {
            if self.enlarged.len() == MOST_ENLARGED {
                self.enlarged.remove(0);
            }
            self.enlarged.push(figure.to_owned());
        }
        self.changes.figures = true;
    }

    /// Enlarges figures for a room where none is enlarged yet; those that were enlarged so are no longer where there is
    /// no room any more.
    pub fn enlarge_for(&mut self, is_room: bool) {
        if is_room && self.enlarged.is_empty() {
            self.enlarged = FOR_A_ROOM.map(str::to_owned).into();
        } else if !is_room && self.enlarged == FOR_A_ROOM {
            self.enlarged.clear();
        }
        self.changes.figures = true;
    }

    /// The figures that are enlarged, by id.
    #[must_use]
    pub fn enlarged(&self) -> &[String] {
        &self.enlarged
    }

    /// Puts what has changed since the marked moment beside the numbers.
    pub(super) fn note_changes(&self, rows: &mut [Row]) {
        let Some(marked) = &self.marked else { return };
        for row in rows {
            if let Some(change) = self.drawn.change(&self.study, &row.id) {
                row.change = (!change.words.is_empty()).then(|| (change.words.clone(), change.is_clear));
            } else if let Some((_, was)) = marked.shown.iter().find(|(id, _)| *id == row.id)
                && *was != row.value
                && row.range.is_none()
            {
                // While the hand moves only what was is said.
                row.change = Some((say!("page-was", before = was), true));
            }
        }
    }

    /// Adds what is asked of whoever compares.
    pub(super) fn ask_for_changes(&self, questions: &mut Vec<Question>) {
        let Some(marked) = &self.marked else { return };
        if !marked.is_told {
            questions.push(Question::Compare(Box::new(marked.moment.clone())));
        }
        let enlarged = self.enlarged.iter().map(String::as_str);
        let ids = FIRST_LEVEL
            .into_iter()
            .chain(enlarged.filter(|id| !FIRST_LEVEL.contains(id)));
        questions.extend(ids.map(|id| Question::Change(id.to_owned())));
    }

    pub(super) fn is_compared(&mut self, outcome: &Result<(), String>) {
        match outcome {
            Ok(()) => {
                if let Some(marked) = &mut self.marked {
                    marked.is_told = true;
                }
            }
            Err(fault) => self.warn(fault.clone()),
        }
    }

    /// The figures enlarged, as their rows, with those that stand on no open heading.
    #[must_use]
    pub fn enlarged_rows(&self) -> Vec<Row> {
        let mut rows = figures::rows_of(&self.study, &self.drawn, &self.enlarged);
        self.note_changes(&mut rows);
        rows
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::street;
    use hobnail_core::plan::{Edit, Mark, MarkId};
    use hobnail_core::study::jobs::Jobs;

    fn draw(app: &mut App, id: u32, y_mm: i32, length_mm: i32) {
        let drawn = Mark::Street(street(&[(0, y_mm), (length_mm, y_mm)]));
        let study = &mut app.study;
        let edit = Edit::mark(study.document(), study.alternative(), MarkId(id), Some(drawn));
        study.apply("draw street", vec![edit]).expect("it fits");
        app.changes.plan = true;
    }

    fn work_all(app: &mut App) {
        let mut jobs = Jobs::default();
        jobs.ask(&app.study, app.questions());
        while let Some((revision, answer)) = app.step(&mut jobs) {
            app.take_answer(revision, answer);
        }
    }

    #[test]
    fn a_change_stands_beside_its_number_while_a_moment_is_marked() {
        let mut app = App::new().expect("the tables fit together");
        app.toggle_enlarged("streets.length");
        draw(&mut app, 1, 0, 100_000);
        app.mark_moment(" Before lunch ");
        assert_eq!(app.history_shown().marked.as_deref(), Some("Before lunch"));
        draw(&mut app, 2, 50_000, 250_000);
        let quick = app.enlarged_rows();
        assert_eq!(quick[0].change, Some(("was 328 ft".to_owned(), true)), "at once");
        work_all(&mut app);
        let worked = app.enlarged_rows();
        assert_eq!(worked[0].change, Some(("822 ft more".to_owned(), true)));
        app.mark_moment("");
        assert_eq!(app.history_shown().marked.as_deref(), Some("step 2"));
        work_all(&mut app);
        assert_eq!(app.enlarged_rows()[0].change, None, "nothing has changed");
        app.forget_moment();
        assert_eq!(app.enlarged_rows()[0].change, None);
    }

    #[test]
    fn at_most_three_figures_are_enlarged_and_the_first_gives_way() {
        let mut app = App::new().expect("the tables fit together");
        for figure in ["homes.count", "jobs.count", "streets.length", "people.count"] {
            app.toggle_enlarged(figure);
        }
        assert_eq!(app.enlarged(), ["jobs.count", "streets.length", "people.count"]);
        app.toggle_enlarged("streets.length");
        assert_eq!(app.enlarged_rows().len(), 2);
    }

    #[test]
    fn every_step_can_be_gone_to() {
        let mut app = App::new().expect("the tables fit together");
        for id in 1..4 {
            draw(&mut app, id, 40_000 * id as i32, 100_000);
        }
        let streets = |app: &App| app.study.fabric().lines.streets.len();
        assert_eq!((app.history_shown().done, streets(&app)), (3, 3));
        app.go_to_step(1);
        assert_eq!((app.history_shown().done, streets(&app)), (1, 1));
        assert_eq!(app.history_shown().steps, ["Draw street"; 3]);
        app.go_to_step(3);
        assert_eq!((app.history_shown().done, streets(&app)), (3, 3));
        app.go_to_step(3);
        assert_eq!(app.said(), "The plan is there already.");
    }
}
