//! History: gestures in progress, steps to undo and redo, and what the journal is told.
//!
//! The document belongs to the caller; every call that may change it takes it, and says which cells may now differ.
//!
//! ```
//! use hobnail_core::plan::{Document, Edit, history::{History, Limits}};
//! # use hobnail_core::plan::projection::GeographicPoint;
//! # let origin = GeographicPoint { longitude_ndeg: 0, latitude_ndeg: 0 };
//! let mut document = Document::new("Example", origin);
//! let mut history = History::new(&document, Limits::default());
//! let renamed = |document: &Document, name: &str| {
//!     let before = document.heading.clone();
//!     let after = hobnail_core::plan::document::Heading { name: name.into(), ..before.clone() };
//!     vec![Edit::Heading { before, after }]
//! };
//!
//! // One gesture. Each change replaces the one before: edits are always made for the document at the gesture's start.
//! let start = document.clone();
//! history.begin("Rename the plan")?;
//! history.change(&mut document, renamed(&start, "Mill H"))?;
//! history.change(&mut document, renamed(&start, "Mill Hollow"))?;
//! history.commit(&document)?;
//! assert_eq!(document.heading.name, "Mill Hollow");
//!
//! history.undo(&mut document)?;
//! assert_eq!(document, start);
//! history.redo(&mut document)?;
//!
//! // What the caller writes down, in order.
//! let entries = history.take_entries();
//! assert_eq!(entries.len(), 4); // the first snapshot, the commit, undo, redo
//! # Ok::<(), hobnail_core::plan::history::HistoryFault>(())
//! ```
//!
//! - [`change`](History::change) settles ties itself ([`settle_ties`]) and refuses what would tie streets in a circle or
//!   remove the last alternative; the preview then stays as it was.
//! - [`extend`](History::extend) adds what follows from a preview to it: edits made for the document as previewed.
//! - [`apply`](History::apply) is a whole gesture in one call.
//! - A gesture that changes nothing leaves no step and no entry; a new step drops the redo side.
//!
//! Memory: at most [`Limits::steps`] steps and [`Limits::bytes`] bytes of them are held, the farthest from the present
//! let go first; a step let go costs 24 bytes for its number. Only entries the caller has taken are let go. Undoing or
//! redoing a step let go gives [`HistoryFault::NotInMemory`]: the caller finds that entry and hands it to
//! [`recall`](History::recall).

use crate::order;
use std::sync::Arc;

use super::document::Document;
use super::edit::{Cell, Edit};
use super::ids::{AlternativeId, MarkId};
use super::journal::{Entry, EntryNumber, NumberedEntry, Snapshot};
use super::storable::is_storable;
use super::tie::settle_ties;
use super::transaction::{Transaction, apply_all, take_back_all};
use super::weight::{document_bytes, edit_bytes};

mod fault;
mod resume;

pub use fault::HistoryFault;

/// How much history is held in memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Most steps held.
    pub steps: usize,
    /// Most bytes of steps held, about. The step next to the present is held whatever its size.
    pub bytes: u64,
}

impl Default for Limits {
    /// 2,000 steps, 32 MiB: a day of drawing, and little beside the page itself.
    fn default() -> Self {
        Self {
            steps: 2_000,
            bytes: 32 << 20,
        }
    }
}

/// Least bytes of entries between snapshots. A snapshot is due when the entries since the last one weigh as much as it
/// did and at least this, so snapshots at most double the journal, and taking it up costs about one document.
const LEAST_BYTES_BETWEEN_SNAPSHOTS: u64 = 64 << 10;

/// What any entry weighs at least.
const ENTRY_BYTES: u64 = 64;

/// A committed step. Its transaction is let go when memory asks for it.
#[derive(Clone, Debug)]
struct Step {
    number: EntryNumber,
    bytes: u64,
    transaction: Option<Arc<Transaction>>,
}

/// A gesture in progress: its edits as previewed, in the order they were made.
#[derive(Clone, Debug)]
struct Gesture {
    label: String,
    edits: Vec<Edit>,
}

/// Gestures, undo, redo, and entries for the journal.
#[derive(Clone, Debug)]
pub struct History {
    /// Done steps, the oldest first.
    done: Vec<Step>,
    /// Undone steps, the one to be done again first last.
    undone: Vec<Step>,
    gesture: Option<Gesture>,
    next_number: EntryNumber,
    entries: Vec<NumberedEntry>,
    limits: Limits,
    held_steps: usize,
    held_bytes: u64,
    bytes_since_snapshot: u64,
    snapshot_bytes: u64,
    /// The least mark id no gesture has used, so that undoing never frees one for reuse.
    mark_watermark: u32,
    /// Whether every gesture and step is refused.
    is_locked: bool,
}

impl History {
    /// The history of a document just made or opened; its first entry is a snapshot.
    #[must_use]
    pub fn new(document: &Document, limits: Limits) -> Self {
        let mut history = Self {
            done: Vec::new(),
            undone: Vec::new(),
            gesture: None,
            next_number: EntryNumber(0),
            entries: Vec::new(),
            limits,
            held_steps: 0,
            held_bytes: 0,
            bytes_since_snapshot: 0,
            snapshot_bytes: 0,
            mark_watermark: document.next_mark_id().0,
            is_locked: false,
        };
        history.snapshot(document);
        history
    }

    /// Locks the plan, or opens it again. Of a locked plan no gesture begins and no step is taken back or done again, so
    /// that its document stays as it is; a gesture in progress goes on.
    pub const fn lock(&mut self, is_locked: bool) {
        self.is_locked = is_locked;
    }

    /// Whether the plan is locked.
    #[must_use]
    pub const fn is_locked(&self) -> bool {
        self.is_locked
    }

    /// Begins a gesture, named as it will be shown beside undo.
    ///
    /// # Errors
    /// [`HistoryFault::GestureOpen`] when one is in progress; [`HistoryFault::Locked`].
    pub fn begin(&mut self, label: impl Into<String>) -> Result<(), HistoryFault> {
        self.is_free()?;
        self.gesture = Some(Gesture {
            label: label.into(),
            edits: Vec::new(),
        });
        Ok(())
    }

    /// Replaces the preview: the document becomes what it was at the gesture's start, with `edits` and what follows
    /// from them for ties. Gives back the cells that may differ from before the call, sorted.
    ///
    /// # Errors
    /// Any fault of the edits; document and preview are then as before the call.
    pub fn change(&mut self, document: &mut Document, edits: Vec<Edit>) -> Result<Vec<Cell>, HistoryFault> {
        let Some(gesture) = &mut self.gesture else {
            return Err(HistoryFault::NoGesture);
        };
        take_back_all(&gesture.edits, document)?;
        match make(document, edits) {
            Ok(edits) => {
                let cells = cells_of(gesture.edits.iter().chain(&edits));
                gesture.edits = edits;
                Ok(cells)
            }
            Err(fault) => {
                apply_all(&gesture.edits, document)?;
                Err(fault)
            }
        }
    }

    /// Adds to the preview edits made for the document as it is previewed. Gives back the cells that may differ.
    ///
    /// # Errors
    /// Any fault of the edits; document and preview are then as before the call.
    pub fn extend(&mut self, document: &mut Document, edits: Vec<Edit>) -> Result<Vec<Cell>, HistoryFault> {
        let Some(gesture) = &mut self.gesture else {
            return Err(HistoryFault::NoGesture);
        };
        let edits = make(document, edits)?;
        let cells = cells_of(&edits);
        gesture.edits.extend(edits);
        Ok(cells)
    }

    /// Ends the gesture and keeps what it did as one step; `None` when it did nothing.
    ///
    /// # Errors
    /// [`HistoryFault::NoGesture`] when none is in progress.
    pub fn commit(&mut self, document: &Document) -> Result<Option<EntryNumber>, HistoryFault> {
        let gesture = self.gesture.take().ok_or(HistoryFault::NoGesture)?;
        let Some(transaction) = Transaction::of(gesture.label, gesture.edits) else {
            return Ok(None);
        };
        let number = self.record(Arc::new(transaction));
        self.finish(document);
        Ok(Some(number))
    }

    /// Ends the gesture and takes its preview back. Gives back the cells that may differ.
    ///
    /// # Errors
    /// [`HistoryFault::NoGesture`] when none is in progress; [`HistoryFault::Edit`] when the document was changed by
    /// other means.
    pub fn cancel(&mut self, document: &mut Document) -> Result<Vec<Cell>, HistoryFault> {
        let gesture = self.gesture.as_ref().ok_or(HistoryFault::NoGesture)?;
        take_back_all(&gesture.edits, document)?;
        let cells = cells_of(&gesture.edits);
        self.gesture = None;
        Ok(cells)
    }

    /// A whole gesture in one call. Gives back the cells that may differ.
    ///
    /// # Errors
    /// Any fault of the edits; the document is then as before the call.
    pub fn apply(
        &mut self,
        document: &mut Document,
        label: impl Into<String>,
        edits: Vec<Edit>,
    ) -> Result<Vec<Cell>, HistoryFault> {
        self.begin(label)?;
        let changed = self.change(document, edits);
        match changed {
            Ok(cells) => {
                self.commit(document)?;
                Ok(cells)
            }
            Err(fault) => {
                self.gesture = None;
                Err(fault)
            }
        }
    }

    /// The document as it was when the gesture in progress began.
    ///
    /// # Errors
    /// [`HistoryFault::NoGesture`] when none is in progress; [`HistoryFault::Edit`] when the document was changed by
    /// other means.
    pub fn start_of_gesture(&self, document: &Document) -> Result<Document, HistoryFault> {
        let gesture = self.gesture.as_ref().ok_or(HistoryFault::NoGesture)?;
        let mut start = document.clone();
        take_back_all(&gesture.edits, &mut start)?;
        Ok(start)
    }

    /// The edits previewed by the gesture in progress, in the order they were made; empty when there is none.
    #[must_use]
    pub fn preview(&self) -> &[Edit] {
        self.gesture.as_ref().map_or(&[], |gesture| &gesture.edits)
    }

    /// Whether a gesture is in progress.
    #[must_use]
    pub const fn is_in_gesture(&self) -> bool {
        self.gesture.is_some()
    }

    /// Takes the last step back. Gives back the cells that differ; `None` when there is nothing to undo.
    ///
    /// # Errors
    /// [`HistoryFault::NotInMemory`] when the step must be recalled first; [`HistoryFault::GestureOpen`];
    /// [`HistoryFault::Locked`].
    pub fn undo(&mut self, document: &mut Document) -> Result<Option<Vec<Cell>>, HistoryFault> {
        self.is_free()?;
        let Some(step) = self.done.last() else {
            return Ok(None);
        };
        let transaction = step
            .transaction
            .as_ref()
            .ok_or(HistoryFault::NotInMemory(step.number))?;
        transaction.take_back(document)?;
        let cells = transaction.cells();
        self.undone.extend(self.done.pop());
        self.write(Entry::Undo, 0);
        self.finish(document);
        Ok(Some(cells))
    }

    /// Does the step undone last again. Gives back the cells that differ; `None` when there is nothing to redo.
    ///
    /// # Errors
    /// [`HistoryFault::NotInMemory`] when the step must be recalled first; [`HistoryFault::GestureOpen`];
    /// [`HistoryFault::Locked`].
    pub fn redo(&mut self, document: &mut Document) -> Result<Option<Vec<Cell>>, HistoryFault> {
        self.is_free()?;
        let Some(step) = self.undone.last() else {
            return Ok(None);
        };
        let transaction = step
            .transaction
            .as_ref()
            .ok_or(HistoryFault::NotInMemory(step.number))?;
        transaction.apply(document)?;
        let cells = transaction.cells();
        self.done.extend(self.undone.pop());
        self.write(Entry::Redo, 0);
        self.finish(document);
        Ok(Some(cells))
    }

    /// Steps that can be undone.
    #[must_use]
    pub fn undo_count(&self) -> usize {
        self.done.len()
    }

    /// Steps that can be done again.
    #[must_use]
    pub fn redo_count(&self) -> usize {
        self.undone.len()
    }

    /// The step that undo would take back, in memory or not.
    #[must_use]
    pub fn last_done(&self) -> Option<EntryNumber> {
        Some(self.done.last()?.number)
    }

    /// What undo would take back, where it is in memory.
    #[must_use]
    pub fn undo_label(&self) -> Option<&str> {
        Some(self.done.last()?.transaction.as_ref()?.label())
    }

    /// What redo would do again, where it is in memory.
    #[must_use]
    pub fn redo_label(&self) -> Option<&str> {
        Some(self.undone.last()?.transaction.as_ref()?.label())
    }

    /// The steps, the oldest first: each with what it is called, `None` where it has left memory. Those done come first;
    /// how many that are says [`undo_count`](Self::undo_count).
    pub fn labels(&self) -> impl Iterator<Item = Option<&str>> {
        let steps = self.done.iter().chain(self.undone.iter().rev());
        steps.map(|step| step.transaction.as_ref().map(|transaction| transaction.label()))
    }

    /// A step by its place among all, the oldest first; `None` where there is none or it has left memory.
    #[must_use]
    pub fn step(&self, place: usize) -> Option<&Transaction> {
        let mut steps = self.done.iter().chain(self.undone.iter().rev());
        steps.nth(place)?.transaction.as_deref()
    }

    /// Names this moment in the journal.
    pub fn name_moment(&mut self, name: impl Into<String>) -> EntryNumber {
        let name = name.into();
        let bytes = name.len() as u64;
        self.write(Entry::Moment(name), bytes)
    }

    /// A mark id used neither in the document nor by any step of this history.
    #[must_use]
    pub fn next_mark_id(&self, document: &Document) -> MarkId {
        let free = document.next_mark_id();
        // With ids at their end the document finds a gap, which the watermark would only push beyond.
        if self.mark_watermark == u32::MAX {
            free
        } else {
            free.max(MarkId(self.mark_watermark))
        }
    }

    /// Entries written since the last call, in order, for the caller to keep.
    #[must_use]
    pub fn take_entries(&mut self) -> Vec<NumberedEntry> {
        let entries = std::mem::take(&mut self.entries);
        self.let_go();
        entries
    }

    /// Puts a step back that has left memory.
    ///
    /// # Errors
    /// [`HistoryFault::NotAStep`] when the entry is not a commit of this history.
    pub fn recall(&mut self, entry: &NumberedEntry) -> Result<(), HistoryFault> {
        let Entry::Commit(transaction) = &entry.entry else {
            return Err(HistoryFault::NotAStep(entry.number));
        };
        let mut steps = self.done.iter_mut().rev().chain(self.undone.iter_mut().rev());
        let step = steps
            .find(|step| step.number == entry.number)
            .ok_or(HistoryFault::NotAStep(entry.number))?;
        if step.transaction.is_none() {
            step.bytes = transaction_bytes(transaction);
            step.transaction = Some(Arc::clone(transaction));
            self.held_steps += 1;
            self.held_bytes += step.bytes;
        }
        Ok(())
    }

    /// Steps and about how many bytes of them are held in memory.
    #[must_use]
    pub const fn held(&self) -> (usize, u64) {
        (self.held_steps, self.held_bytes)
    }

    /// Whether something may begin.
    const fn is_free(&self) -> Result<(), HistoryFault> {
        if self.is_locked {
            Err(HistoryFault::Locked)
        } else if self.gesture.is_some() {
            Err(HistoryFault::GestureOpen)
        } else {
            Ok(())
        }
    }

    fn record(&mut self, transaction: Arc<Transaction>) -> EntryNumber {
        let bytes = transaction_bytes(&transaction);
        for step in self.undone.drain(..).filter(|step| step.transaction.is_some()) {
            self.held_steps -= 1;
            self.held_bytes -= step.bytes;
        }
        self.pass_marks_of(&transaction);
        let number = self.write(Entry::Commit(Arc::clone(&transaction)), bytes);
        self.done.push(Step {
            number,
            bytes,
            transaction: Some(transaction),
        });
        self.held_steps += 1;
        self.held_bytes += bytes;
        number
    }

    /// Moves the watermark beyond every mark the transaction names.
    fn pass_marks_of(&mut self, transaction: &Transaction) {
        let marks = transaction.edits().iter().flat_map(marks_of);
        let beyond = marks.map(|id| id.0.saturating_add(1)).max().unwrap_or(0);
        self.mark_watermark = self.mark_watermark.max(beyond);
    }

    fn write(&mut self, entry: Entry, bytes: u64) -> EntryNumber {
        let number = self.next_number;
        self.next_number = number.next();
        self.entries.push(NumberedEntry { number, entry });
        self.bytes_since_snapshot += ENTRY_BYTES + bytes;
        number
    }

    /// After anything was written: a snapshot where one is due, and memory back within its limit.
    fn finish(&mut self, document: &Document) {
        if self.bytes_since_snapshot >= self.snapshot_bytes.max(LEAST_BYTES_BETWEEN_SNAPSHOTS) {
            self.snapshot(document);
        }
        self.let_go();
    }

    fn snapshot(&mut self, document: &Document) {
        let numbers = |steps: &[Step]| steps.iter().map(|step| step.number).collect();
        let snapshot = Snapshot {
            document: document.clone(),
            done: numbers(&self.done),
            undone: numbers(&self.undone),
        };
        self.write(Entry::Snapshot(Box::new(snapshot)), 0);
        self.snapshot_bytes = document_bytes(document) + 8 * (self.done.len() + self.undone.len()) as u64;
        self.bytes_since_snapshot = 0;
    }

    /// Lets go of the steps farthest from the present until the rest is within the limits.
    fn let_go(&mut self) {
        let is_over = |steps: usize, bytes: u64| steps > self.limits.steps.max(1) || bytes > self.limits.bytes;
        let first_untaken = self.entries.first().map_or(self.next_number, |entry| entry.number);
        // The oldest done steps go first: they are many, and few go back that far.
        for side in [&mut self.done, &mut self.undone] {
            let near = side.len().saturating_sub(1);
            for step in &mut side[..near] {
                if !is_over(self.held_steps, self.held_bytes) {
                    return;
                }
                if step.transaction.is_some() && step.number < first_untaken {
                    step.transaction = None;
                    self.held_steps -= 1;
                    self.held_bytes -= step.bytes;
                }
            }
        }
    }
}

/// Makes edits with what follows for ties, wholly or not at all, and gives all of them back.
fn make(document: &mut Document, mut edits: Vec<Edit>) -> Result<Vec<Edit>, HistoryFault> {
    if let Some(edit) = edits.iter().find(|edit| !is_storable(edit)) {
        return Err(HistoryFault::NotStorable(edit.cell()));
    }
    let mut alternatives: Vec<AlternativeId> = edits
        .iter()
        .filter_map(|edit| match edit.cell() {
            Cell::Alternative(id) | Cell::Mark(id, _) => Some(id),
            _ => None,
        })
        .collect();
    order::sort(&mut alternatives);
    alternatives.dedup();
    let further: Vec<Vec<Edit>> = alternatives
        .into_iter()
        .map(|alternative| settle_ties(document, alternative, &edits))
        .collect::<Result<_, _>>()
        .map_err(HistoryFault::Tie)?;
    edits.extend(further.into_iter().flatten());
    apply_all(&edits, document)?;
    if document.alternatives.is_empty() {
        take_back_all(&edits, document)?;
        return Err(HistoryFault::LastAlternative);
    }
    Ok(edits)
}

fn cells_of<'a>(edits: impl IntoIterator<Item = &'a Edit>) -> Vec<Cell> {
    let mut cells: Vec<Cell> = edits.into_iter().map(Edit::cell).collect();
    order::sort(&mut cells);
    cells.dedup();
    cells
}

fn transaction_bytes(transaction: &Transaction) -> u64 {
    transaction.label().len() as u64 + transaction.edits().iter().map(edit_bytes).sum::<u64>()
}

/// The marks an edit adds, changes or removes.
fn marks_of(edit: &Edit) -> Vec<MarkId> {
    match edit {
        Edit::Mark { id, .. } => vec![*id],
        Edit::Alternative { before, after, .. } => {
            let whole = before.iter().chain(after);
            whole
                .filter_map(|alternative| alternative.marks.keys().next_back().copied())
                .collect()
        }
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests;
