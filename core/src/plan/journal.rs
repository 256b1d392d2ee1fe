//! The journal: everything done to a document, as numbered entries that are only ever added to.
//!
//! [`History`] writes entries; the caller keeps them (in the browser's store, in a file) and
//! hands them back to [`recover`] after a crash, or one by one when undo reaches further back than memory does. Entries
//! are values; their bytes are `exchange::journal_file`'s.
//!
//! A snapshot holds the whole document with the numbers of the steps that can be undone and redone from there, so a
//! journal can be taken up at any of its snapshots. View state (pan, zoom, selection) is no part of it.

use std::fmt;
use std::sync::Arc;

use super::document::Document;
use super::edit::EditFault;
use super::history::{History, Limits};
use super::transaction::Transaction;
use crate::say;

/// Place of an entry in its journal, from 0. Never used twice in one journal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryNumber(pub u64);

/// One thing that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Entry {
    /// Nothing happened; this is how things stand.
    Snapshot(Box<Snapshot>),
    /// A gesture was committed.
    Commit(Arc<Transaction>),
    /// The last step not undone was undone.
    Undo,
    /// The step undone last was done again.
    Redo,
    /// The user named this moment.
    Moment(String),
}

/// How things stand.
#[derive(Clone, Debug, PartialEq)]
pub struct Snapshot {
    /// The document.
    pub document: Document,
    /// Commits that can be undone, the oldest first.
    pub done: Vec<EntryNumber>,
    /// Commits that can be done again, the one to be done again first last.
    pub undone: Vec<EntryNumber>,
}

/// An entry with its number.
#[derive(Clone, Debug, PartialEq)]
pub struct NumberedEntry {
    /// Its place in the journal.
    pub number: EntryNumber,
    /// What happened.
    pub entry: Entry,
}

/// What a journal gave back.
#[derive(Clone, Debug)]
pub struct Recovered {
    /// The document as the last usable entry left it.
    pub document: Document,
    /// The history, with the nearest steps in memory; its first new entry is a snapshot to begin a clean journal with.
    pub history: History,
    /// What could not be used.
    pub losses: Vec<Loss>,
}

/// What a journal could not give back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loss {
    /// Entries are missing or damaged before the last snapshot: the document is whole, and some steps can not be undone.
    Steps {
        /// How many steps before the snapshot can not be undone or done again.
        count: u64,
    },
    /// Entries after this one could not be used: what they did is lost.
    Entries {
        /// The last entry used; `None` where not even the first could be.
        after: Option<EntryNumber>,
        /// How many later entries were found and not used. Entries too damaged to be found are not counted.
        count: u64,
        /// Why the first of them could not be used.
        reason: Break,
    },
}

/// Why a journal could not be followed further.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Break {
    /// The next entry is missing or damaged.
    Missing(EntryNumber),
    /// The entry does not fit the document it was to change.
    Unfitting(EntryNumber, EditFault),
    /// The entry undoes or repeats a step that is not there.
    NoStep(EntryNumber),
}

impl EntryNumber {
    /// The number after this one.
    #[must_use]
    pub const fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }
}

impl fmt::Display for EntryNumber {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}", self.0)
    }
}

impl fmt::Display for Break {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&match self {
            Self::Missing(number) => say!("plan-journal-missing", number = number.0),
            Self::Unfitting(number, fault) => {
                say!("plan-journal-unfitting", number = number.0, fault = fault.to_string())
            }
            Self::NoStep(number) => say!("plan-journal-no-step", number = number.0),
        })
    }
}

impl fmt::Display for Loss {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&match self {
            Self::Steps { count } => say!("plan-journal-lost-steps", count = count),
            Self::Entries { after, count, reason } => {
                let reason = reason.to_string();
                match after {
                    Some(after) => say!(
                        "plan-journal-lost-after",
                        after = after.0,
                        reason = reason,
                        count = count
                    ),
                    None => say!("plan-journal-lost-all", reason = reason, count = count),
                }
            }
        })
    }
}

/// Takes a journal up at its last snapshot and follows it to its end or to the first entry that is missing, out of
/// order or does not fit. `entries` are the intact ones, in the order found; steps before the snapshot stay undoable as
/// far as their entries are among them. `None` when there is no snapshot to begin from.
///
/// Cost: the entries after the last snapshot, and one look at the others.
#[must_use]
pub fn recover(entries: &[NumberedEntry], limits: Limits) -> Option<Recovered> {
    let start = entries
        .iter()
        .rposition(|held| matches!(held.entry, Entry::Snapshot(_)))?;
    let Entry::Snapshot(snapshot) = &entries[start].entry else {
        return None;
    };
    let mut document = snapshot.document.clone();
    let mut history = History::taken_up(snapshot, entries[start].number.next(), limits);
    let missing = history.recall_all(entries);
    let mut losses = Vec::new();
    if missing > 0 {
        losses.push(Loss::Steps { count: missing });
    }
    let rest = &entries[start + 1..];
    let (used, reason) = follow(&mut history, &mut document, entries, rest);
    if let Some(reason) = reason {
        let after = Some(entries[start + used].number);
        let count = (rest.len() - used) as u64;
        losses.push(Loss::Entries { after, count, reason });
    }
    let highest = entries.iter().map(|held| held.number).max()?;
    history.begin_clean(&document, highest);
    Some(Recovered {
        document,
        history,
        losses,
    })
}

/// Everything done to `base` done again: the document and history after `entries`, which follow one another from the
/// first; snapshots among them are passed over.
///
/// Cost: all entries.
#[must_use]
pub fn replay(base: &Document, entries: &[NumberedEntry], limits: Limits) -> Recovered {
    let mut document = base.clone();
    let first = entries.first().map_or(EntryNumber(0), |held| held.number);
    let start = Snapshot {
        document: base.clone(),
        done: Vec::new(),
        undone: Vec::new(),
    };
    let mut history = History::taken_up(&start, first, limits);
    let (used, reason) = follow(&mut history, &mut document, entries, entries);
    let losses = reason.map(|reason| Loss::Entries {
        after: used.checked_sub(1).map(|last| entries[last].number),
        count: (entries.len() - used) as u64,
        reason,
    });
    let highest = entries.iter().map(|held| held.number).max().unwrap_or(first);
    history.begin_clean(&document, highest);
    Recovered {
        document,
        history,
        losses: losses.into_iter().collect(),
    }
}

/// Follows `rest` as far as it goes; steps that have left memory are looked up in `all`.
fn follow(
    history: &mut History,
    document: &mut Document,
    all: &[NumberedEntry],
    rest: &[NumberedEntry],
) -> (usize, Option<Break>) {
    for (used, held) in rest.iter().enumerate() {
        let expected = history.next_number();
        let result = if held.number == expected {
            history.repeat(document, held, all)
        } else {
            Err(Break::Missing(expected))
        };
        if let Err(reason) = result {
            return (used, Some(reason));
        }
    }
    (rest.len(), None)
}

#[cfg(test)]
mod tests;
