//! Kept plans on the page: the browser's store is opened, written, listed and read here.

use hobnail_core::exchange::journal_file;
use hobnail_core::say;

use super::App;
use super::keeping::{self, Recent};
use super::language::Handed;
use super::store::{Store, WELCOME_TITLE};
use crate::browser::keeping::{Found, Outcome, Writing};
use crate::browser::lasting::lasting;
use crate::browser::{document, events};

impl App {
    /// Opens a kept plan with its history, and says what came of it.
    ///
    /// # Errors
    /// A sentence, when nothing of it can be used; the open plan then stays.
    pub fn resume(&mut self, id: &str, found: &Found) -> Result<(), String> {
        self.may_open()?;
        let record = found.record.clone();
        let record = record.ok_or(say!("page-kept-no-longer"))?;
        let taken = keeping::take_up(found)?;
        let (document, history) = (taken.recovered.document, taken.recovered.history);
        let study = hobnail_core::study::Study::resume(document, history);
        self.take_study(study.map_err(|fault| fault.to_string())?);
        self.keeping.go_on(id.to_owned(), record);
        if taken.has_unfinished {
            let opened = say!("page-kept-unfinished", opened = self.said);
            self.say(opened);
        }
        if !taken.losses.is_empty() {
            self.warn(say!("page-kept-partly", losses = taken.losses.join("; ")));
        }
        Ok(())
    }

    /// Takes the journal line of a step that had left memory, and undoes the step or does it again. A sentence is said
    /// where the line is not to be had.
    pub fn recall(&mut self, line: Option<&str>) {
        let entry = line.and_then(|line| journal_file::read_line(line.trim_end().as_bytes()).ok());
        match entry {
            Some(entry) if self.study.recall(&entry).is_ok() => {
                let is_undo = self.study.history().last_done() == Some(entry.number);
                if is_undo { self.undo() } else { self.redo() }
            }
            _ => self.warn(say!("page-kept-not-so-far")),
        }
    }

    /// Keeps the plan from now on as one of its own.
    pub fn keep_as_copy(&mut self) {
        self.keeping.copy();
        self.changes.plan = true;
    }
}

impl Store {
    /// Opens the browser's store and shows what it holds.
    pub(super) fn open_keep(self) {
        let handed = Handed::over();
        if handed == Handed::Nothing {
            self.open_carried();
        }
        crate::browser::keeping::open(Box::new(move |keep| {
            let is_open = keep.is_some();
            self.keep.set(keep);
            self.list_recent();
            self.act(move |app| app.keeping.take_place(is_open));
            self.take_handed_over(handed);
        }));
    }

    /// Hands over what is to be written.
    pub(super) fn write(self, writing: Writing) {
        let Some(keep) = self.keep.get() else { return };
        let (id, record) = (writing.id.clone(), writing.record.clone());
        let then = move |outcome| {
            self.act(move |app| {
                if let Some(lost) = app.keeping.take_outcome(&id, record, outcome) {
                    app.warn(lost);
                }
            });
        };
        keep.write(writing, Box::new(then));
    }

    /// Reads a step that has left memory.
    pub(super) fn look_up(self, id: &str, number: u64) {
        let then = move |line: Option<String>| self.act(|app| app.recall(line.as_deref()));
        match self.keep.get() {
            Some(keep) => keep.read_line(id, number, Box::new(then)),
            None => then(None),
        }
    }

    /// Reads anew which plans can be offered.
    fn list_recent(self) {
        let Some(keep) = self.keep.get() else { return };
        lasting(false, Box::new(move |is_lasting| self.is_lasting.set(is_lasting)));
        keep.list(Box::new(move |kept| {
            self.recent.set(keeping::recent(kept, document::clock_ms()));
        }));
    }

    /// Asks the browser to hold on to what it keeps, and says what it answered.
    pub fn ask_to_last(self) {
        let then = move |is_lasting: Option<bool>| {
            if is_lasting == Some(true) && events::focus() == events::Focus::Elsewhere {
                // The button that was pressed goes away; the keyboard goes on with what follows.
                document::focus_on(WELCOME_TITLE);
            }
            self.is_lasting.set(is_lasting);
            self.act(move |app| match is_lasting {
                Some(true) => app.say(say!("page-lasting")),
                _ => app.warn(say!("page-not-lasting")),
            });
        };
        lasting(true, Box::new(then));
    }

    /// Opens a kept plan again.
    pub fn open_kept(self, id: String) {
        let Some(keep) = self.keep.get() else { return };
        let asked = id.clone();
        let then = move |found: Option<Found>| {
            let mut is_open = false;
            self.act(|app| {
                let found = found.ok_or_else(|| say!("page-kept-not-handed-out").to_owned());
                match found.and_then(|found| app.resume(&id, &found)) {
                    Ok(()) => is_open = true,
                    Err(fault) => app.warn(super::words::sentence_case(&format!("{fault}."))),
                }
            });
            if is_open {
                self.is_new.set(false);
            }
        };
        keep.read(&asked, Box::new(then));
    }

    /// Opens what another window kept of the open plan.
    pub fn open_kept_again(self) {
        let id = self.with(|app| app.keeping.id().map(str::to_owned));
        if let Some(id) = id {
            self.open_kept(id);
        }
    }

    /// Removes a kept plan from this browser.
    pub fn forget(self, plan: Recent) {
        let Some(keep) = self.keep.get() else { return };
        let forgetting = Writing {
            id: plan.id,
            expected: Some(plan.record),
            record: None,
            lines: Vec::new(),
            unfinished: None,
            is_strict: true,
        };
        let then = move |outcome| {
            let said = match outcome {
                Outcome::Written => Ok(say!("page-forgotten", plan = plan.name)),
                Outcome::Changed(None) => Ok(say!("page-forgotten-already", plan = plan.name)),
                Outcome::Changed(Some(_)) => Err(say!("page-not-forgotten", plan = plan.name)),
                Outcome::Full | Outcome::Refused => Err(say!("page-does-not-forget", plan = plan.name)),
            };
            self.act(|app| match said {
                Ok(said) => app.say(said),
                Err(fault) => app.warn(fault),
            });
            self.list_recent();
        };
        keep.write(forgetting, Box::new(then));
    }
}
