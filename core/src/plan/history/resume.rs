//! Taking a journal up again: a history from a snapshot, and entries done again.

use crate::order;
use std::sync::Arc;

use super::{History, HistoryFault, Limits, Step, transaction_bytes};
use crate::plan::document::Document;
use crate::plan::journal::{Break, Entry, EntryNumber, NumberedEntry, Snapshot};
use crate::plan::transaction::Transaction;

impl History {
    /// The history as it stood at a snapshot, its steps not in memory; `next_number` is the next entry's.
    pub(in crate::plan) fn taken_up(snapshot: &Snapshot, next_number: EntryNumber, limits: Limits) -> Self {
        let steps = |numbers: &[EntryNumber]| {
            let step = |&number: &EntryNumber| Step {
                number,
                bytes: 0,
                transaction: None,
            };
            numbers.iter().map(step).collect()
        };
        Self {
            done: steps(&snapshot.done),
            undone: steps(&snapshot.undone),
            next_number,
            entries: Vec::new(),
            ..Self::new(&snapshot.document, limits)
        }
    }

    /// The number the next entry must have.
    pub(in crate::plan) const fn next_number(&self) -> EntryNumber {
        self.next_number
    }

    /// Puts back what steps `entries` hold, the nearest first and within the limits. Gives back how many steps are not
    /// among them.
    pub(in crate::plan) fn recall_all(&mut self, entries: &[NumberedEntry]) -> u64 {
        let mut commits: Vec<(EntryNumber, &Arc<Transaction>)> = entries
            .iter()
            .filter_map(|held| match &held.entry {
                Entry::Commit(transaction) => Some((held.number, transaction)),
                _ => None,
            })
            .collect();
        order::sort_by_key(&mut commits, |(number, _)| *number);
        for (_, transaction) in &commits {
            self.pass_marks_of(transaction);
        }
        let mut missing = 0;
        for step in self.done.iter_mut().rev().chain(self.undone.iter_mut().rev()) {
            let Ok(place) = commits.binary_search_by_key(&step.number, |(number, _)| *number) else {
                missing += 1;
                continue;
            };
            let transaction = commits[place].1;
            let bytes = transaction_bytes(transaction);
            let fits = self.held_steps < self.limits.steps && self.held_bytes + bytes <= self.limits.bytes;
            if step.transaction.is_none() && fits {
                step.bytes = bytes;
                step.transaction = Some(Arc::clone(transaction));
                self.held_steps += 1;
                self.held_bytes += bytes;
            }
        }
        missing
    }

    /// Does again what a journal entry says was done. Steps that have left memory are looked up in `all`.
    pub(in crate::plan) fn repeat(
        &mut self,
        document: &mut Document,
        held: &NumberedEntry,
        all: &[NumberedEntry],
    ) -> Result<(), Break> {
        let number = held.number;
        match &held.entry {
            Entry::Snapshot(_) | Entry::Moment(_) => {
                self.next_number = number.next();
                return Ok(());
            }
            Entry::Commit(transaction) => {
                transaction
                    .apply(document)
                    .map_err(|fault| Break::Unfitting(number, fault))?;
                self.record(Arc::clone(transaction));
            }
            Entry::Undo | Entry::Redo => {
                let is_undo = held.entry == Entry::Undo;
                let step = if is_undo { self.done.last() } else { self.undone.last() };
                let step = step.ok_or(Break::NoStep(number))?.number;
                if let Some(entry) = all.iter().rev().find(|held| held.number == step) {
                    // Recalling a step that is in memory, or an entry that is none, changes nothing.
                    drop(self.recall(entry));
                }
                let done = if is_undo {
                    self.undo(document)
                } else {
                    self.redo(document)
                };
                done.map_err(|fault| match fault {
                    HistoryFault::Edit(fault) => Break::Unfitting(number, fault),
                    _ => Break::NoStep(number),
                })?;
            }
        }
        // These entries stand in the journal already.
        self.entries.clear();
        self.next_number = number.next();
        self.let_go();
        Ok(())
    }

    /// Writes the journal anew, for a place that holds nothing of it: the steps in memory under their own numbers, what
    /// was not taken yet, and a snapshot. Steps that have left memory can not be undone from there.
    ///
    /// `document` is the one this history belongs to; the preview of a gesture in progress is no part of the snapshot.
    ///
    /// Cost: one document and the steps in memory.
    pub fn write_anew(&mut self, document: &Document) {
        let first_untaken = self.entries.first().map_or(self.next_number, |entry| entry.number);
        let held = self.done.iter().chain(&self.undone).filter_map(|step| {
            let transaction = step.transaction.clone().filter(|_| step.number < first_untaken)?;
            let (number, entry) = (step.number, Entry::Commit(transaction));
            Some(NumberedEntry { number, entry })
        });
        let mut entries: Vec<NumberedEntry> = held.collect();
        order::sort_by_key(&mut entries, |entry| entry.number);
        entries.append(&mut self.entries);
        self.entries = entries;
        match self.start_of_gesture(document) {
            Ok(start) => self.snapshot(&start),
            // No gesture is in progress: the document is at rest.
            Err(_) => self.snapshot(document),
        }
    }

    /// Begins a clean stretch of journal after `highest`, with a snapshot.
    pub(in crate::plan) fn begin_clean(&mut self, document: &Document, highest: EntryNumber) {
        self.next_number = self.next_number.max(highest.next());
        self.entries.clear();
        self.snapshot(document);
    }
}
