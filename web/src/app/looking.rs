//! A plan that is only looked at: nothing changes it, whatever is pressed, typed or dropped, until it is made one's own.
//!
//! The plan itself is locked ([`hobnail_core::study::Study::lock`]), so that every gesture, step, undo and redo is refused
//! where it would be done, and not only by panels that are out of sight.

use hobnail_core::exchange::plan_file;
use hobnail_core::plan::Document;
use hobnail_core::say;

use super::{App, Changes};
use crate::input::PointerKind;
use crate::tools::{Input, Step, ToolKind};

/// Whether the plan is only looked at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Looking {
    /// It can be changed.
    #[default]
    No,
    /// What is opened next is to be looked at; there is nothing yet.
    Next,
    /// It stays as it is.
    Locked,
}

impl App {
    /// Whether the plan is only looked at.
    #[must_use]
    pub fn is_looking(&self) -> bool {
        self.looking != Looking::No
    }

    /// Lets the open plan only be looked at; what was begun is given up.
    pub fn look_only(&mut self) {
        self.lock(Looking::Locked);
        self.say(say!("mode-looking"));
    }

    /// Lets the plan that is opened next only be looked at.
    pub fn look_at_next(&mut self) {
        self.lock(Looking::Next);
    }

    /// Opens the text of a plan, such as one of an address, to be looked at.
    ///
    /// # Errors
    /// A sentence, when nothing of it can be used; the open plan then stays.
    pub fn look_at(&mut self, name: &str, text: &str) -> Result<(), String> {
        let opened = plan_file::read(text.as_bytes()).map_err(|refusal| [name, ": ", &refusal.to_string()].concat())?;
        self.look_at_plan(opened.document)
    }

    /// Opens a plan, such as one of an address, to be looked at.
    ///
    /// # Errors
    /// A sentence, when it can not be opened; the open plan then stays.
    pub fn look_at_plan(&mut self, document: Document) -> Result<(), String> {
        let before = std::mem::replace(&mut self.looking, Looking::Next);
        let replaced = self.replace(document);
        if replaced.is_err() {
            self.looking = before;
        }
        replaced
    }

    /// Hands the plan back for drawing, kept from now on as one's own.
    pub fn make_own(&mut self) {
        if self.looking == Looking::Locked && self.kept_id().is_none() {
            self.keep_as_copy();
        }
        self.lock(Looking::No);
        self.say(say!("mode-own"));
    }

    fn lock(&mut self, looking: Looking) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        self.close_editors();
        self.selection = None;
        self.picked.clear();
        self.looking = looking;
        self.notice = None;
        self.study.lock(self.is_looking());
        self.tool = self.resting_tool().at_rest();
        self.changes = Changes::ALL;
    }

    /// The tool of a plan that was just opened or locked.
    fn resting_tool(&self) -> ToolKind {
        if self.is_looking() {
            ToolKind::Pan
        } else {
            ToolKind::Select
        }
    }

    /// Whether another plan may take the place of the open one.
    ///
    /// # Errors
    /// A sentence, when the open one is looked at.
    pub(super) fn may_open(&self) -> Result<(), String> {
        if self.looking == Looking::Locked {
            Err(say!("mode-refused").to_owned())
        } else {
            Ok(())
        }
    }

    /// A plan was opened: it is locked where that was asked for.
    pub(super) fn lock_opened(&mut self) {
        if self.is_looking() {
            self.lock(Looking::Locked);
            let said = [self.said.as_str(), " ", say!("mode-looking")].concat();
            self.say(said);
        }
    }

    /// Says that something is refused, where the plan is only looked at.
    pub(super) fn refuses(&mut self) -> bool {
        let refuses = self.is_looking();
        if refuses {
            self.warn(say!("mode-refused"));
        }
        refuses
    }

    /// Whether a step of a tool would change a plan that is only looked at; then the tool rests.
    pub(super) fn refuses_step(&mut self, step: &Step) -> bool {
        let changes = matches!(step, Step::Begin(_) | Step::Change(_) | Step::Commit);
        let refuses = changes && self.study.history().is_locked();
        if refuses {
            self.tool = self.tool.kind().at_rest();
            self.warn(say!("mode-refused"));
        }
        refuses
    }
}

#[cfg(test)]
mod tests;
