//! Why history refuses.

use std::fmt;

use crate::plan::edit::{Cell, EditFault};
use crate::plan::journal::EntryNumber;
use crate::plan::tie::TieFault;
use crate::say;

/// Why history refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HistoryFault {
    /// A gesture is in progress: commit or cancel it first.
    GestureOpen,
    /// The plan is open for looking: nothing can change it (see [`lock`](super::History::lock)).
    Locked,
    /// No gesture is in progress.
    NoGesture,
    /// An edit does not fit the document.
    Edit(EditFault),
    /// Streets would be tied in a circle.
    Tie(TieFault),
    /// An edit puts something in this cell that no document may hold (see [`is_storable`](crate::plan::storable)).
    NotStorable(Cell),
    /// The last alternative would be removed.
    LastAlternative,
    /// The step has left memory; find this entry and [`recall`](super::History::recall) it.
    NotInMemory(EntryNumber),
    /// The recalled entry is not a step of this history.
    NotAStep(EntryNumber),
}

impl From<EditFault> for HistoryFault {
    fn from(fault: EditFault) -> Self {
        Self::Edit(fault)
    }
}

impl fmt::Display for HistoryFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::GestureOpen => formatter.write_str(say!("plan-history-gesture-open")),
            Self::Locked => formatter.write_str(say!("plan-history-locked")),
            Self::NoGesture => formatter.write_str(say!("plan-history-no-gesture")),
            Self::Edit(fault) => fault.fmt(formatter),
            Self::Tie(fault) => fault.fmt(formatter),
            Self::NotStorable(cell) => formatter.write_str(&say!("plan-history-not-storable", cell = cell.to_string())),
            Self::LastAlternative => formatter.write_str(say!("plan-history-last-alternative")),
            Self::NotInMemory(number) => formatter.write_str(&say!("plan-history-not-in-memory", number = number.0)),
            Self::NotAStep(number) => formatter.write_str(&say!("plan-history-not-a-step", number = number.0)),
        }
    }
}

impl std::error::Error for HistoryFault {}
