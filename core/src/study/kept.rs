//! A study's journal: what is to be kept of it, and going on from what was kept.

use super::{Study, StudyFault};
use crate::plan::Document;
use crate::plan::history::{History, HistoryFault};
use crate::plan::journal::NumberedEntry;

impl Study {
    /// Goes on with a plan that was taken up from its journal, on its first alternative.
    ///
    /// # Errors
    /// [`StudyFault`], as [`Study::open`].
    pub fn resume(document: Document, history: History) -> Result<Self, StudyFault> {
        let mut study = Self::open(document)?;
        study.history = history;
        Ok(study)
    }

    /// Locks the plan for looking alone, or opens it again. Of a locked plan every gesture, step, undo and redo is refused
    /// with [`HistoryFault::Locked`]; alternatives, scope and figures are looked at as ever.
    pub const fn lock(&mut self, is_locked: bool) {
        self.history.lock(is_locked);
    }

    /// Entries written since the last call, in order, for the caller to keep.
    #[must_use]
    pub fn take_entries(&mut self) -> Vec<NumberedEntry> {
        self.history.take_entries()
    }

    /// Makes the entries taken next hold the whole plan and the steps in memory ([`History::write_anew`]).
    pub fn write_anew(&mut self) {
        self.history.write_anew(&self.document);
    }

    /// Names this moment in the journal.
    pub fn name_moment(&mut self, name: &str) {
        self.history.name_moment(name);
    }

    /// Puts a step back that has left memory, before it is undone or done again.
    ///
    /// # Errors
    /// [`HistoryFault::NotAStep`] when the entry is not a commit of this plan's history.
    pub fn recall(&mut self, entry: &NumberedEntry) -> Result<(), HistoryFault> {
        self.history.recall(entry)
    }
}
