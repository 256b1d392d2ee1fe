//! Why history refuses.

use std::fmt;

use crate::plan::edit::{Cell, EditFault};
use crate::plan::journal::EntryNumber;
use crate::plan::tie::TieFault;

/// Why history refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HistoryFault {
    /// A gesture is in progress: commit or cancel it first.
    GestureOpen,
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
            Self::GestureOpen => write!(formatter, "a gesture is still in progress"),
            Self::NoGesture => write!(formatter, "no gesture is in progress"),
            Self::Edit(fault) => fault.fmt(formatter),
            Self::Tie(fault) => fault.fmt(formatter),
            Self::NotStorable(cell) => write!(
                formatter,
                "a point lies more than 100 km from the plan's origin, or a number is not finite (at {cell:?})"
            ),
            Self::LastAlternative => write!(formatter, "the last alternative can not be removed"),
            Self::NotInMemory(number) => write!(formatter, "step {number} has to be read from the journal first"),
            Self::NotAStep(number) => write!(formatter, "entry {number} is not a step of this plan's history"),
        }
    }
}

impl std::error::Error for HistoryFault {}
