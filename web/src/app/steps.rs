//! Steps that are no gesture: undo and redo, other units, another alternative, another part measured.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::history::HistoryFault;
use hobnail_core::plan::{AlternativeId, Edit};
use hobnail_core::say;

use super::{App, Changes, figures, scopes, words};
use crate::input::{Key, PointerKind};
use crate::tools::Input;

impl App {
    /// Measures another part of the plan; what is drawn stays as it is.
    pub fn measure(&mut self, part: scopes::Part, is_without_unwilling: bool) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        let before = self.exact_rows();
        let scope = scopes::scope(self.study.document(), part, is_without_unwilling);
        if self.study.set_scope(scope) {
            self.changes = Changes::ALL;
            let words = self.study.scope().in_words(self.study.document());
            let words = words.map_or_else(
                || say!("page-measured-all").to_owned(),
                |words| say!("page-measured", what = words),
            );
            self.say(words::what_changed(&words, &before, &self.exact_rows()));
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
            Ok(_) => self.changes.plan = true,
            Err(fault) => self.warn(fault.to_string()),
        }
    }

    /// Takes back the last step; while a gesture is open, its last point.
    pub fn undo(&mut self) {
        if self.tool.is_busy() {
            self.tell_tool(Input::Key(Key::Escape), PointerKind::Keyboard);
            return;
        }
        let before = self.exact_rows();
        let label = self.study.history().undo_label().map(str::to_owned);
        let done = self.study.undo();
        self.after_step(true, label, done, &before);
    }

    /// Does the step taken back last again.
    pub fn redo(&mut self) {
        if self.tool.is_busy() {
            return;
        }
        let before = self.exact_rows();
        let label = self.study.history().redo_label().map(str::to_owned);
        let done = self.study.redo();
        self.after_step(false, label, done, &before);
    }

    fn after_step(
        &mut self,
        is_undo: bool,
        label: Option<String>,
        done: Result<bool, HistoryFault>,
        before: &[figures::Row],
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
                let now = self.exact_rows();
                self.say(words::what_changed(&label, before, &now));
            }
            Ok(false) => self.say(say!("page-nothing-more")),
            Err(HistoryFault::NotInMemory(number)) => self.keeping.look_up(number),
            Err(fault) => self.warn(fault.to_string()),
        }
    }
}
