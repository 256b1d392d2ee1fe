//! What passes between the study on the main thread and the one that follows it in a worker.
//!
//! Every message carries the revision it was made for. A reply for a revision that is no longer shown is stale and is
//! dropped by whoever asked. Messages are of one build and never stored.

use std::fmt;

use super::marked::{ChangeShown, Moment};
use crate::measures::details::WalkDetails;
use crate::passing::passed;
use crate::plan::edit::EditFault;
use crate::plan::{AlternativeId, Scope};
use crate::say;

/// What a following study has not been told yet.
#[derive(Clone, Debug, PartialEq)]
pub struct News {
    /// The revision the other study stands at.
    pub revision: u64,
    /// The alternative in view there.
    pub alternative: AlternativeId,
    /// What part of it is looked at there.
    pub scope: Scope,
    /// What has changed.
    pub change: Change,
}

passed!(struct News { revision, alternative, scope, change });

/// How the document has changed, as text ([`crate::exchange::passed`]).
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// The whole document: at first, and after a follower has lost step.
    Whole(String),
    /// Edits to the document last told.
    Edits(String),
}

passed!(enum Change { 0 = Whole(document), 1 = Edits(edits) });

/// Why news could not be taken up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NewsFault {
    /// What was told is not what this build writes.
    Unreadable,
    /// The edits do not fit the document held.
    DoesNotFollow(EditFault),
}

impl fmt::Display for NewsFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable => formatter.write_str(say!("study-news-unreadable")),
            Self::DoesNotFollow(fault) => fault.fmt(formatter),
        }
    }
}

impl std::error::Error for NewsFault {}

/// Something to be worked out that may take longer than a frame.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Question {
    /// The range of a figure.
    Range(String),
    /// Where the doubt in a figure comes from.
    Sensitivity(String),
    /// Walking and mix in detail.
    Details,
    /// From now on to compare with this moment.
    Compare(Box<Moment>),
    /// What has changed in a figure since then.
    Change(String),
}

passed!(enum Question {
    0 = Range(figure),
    1 = Sensitivity(figure),
    2 = Details,
    3 = Compare(moment),
    4 = Change(figure),
});

/// A message to the follower.
#[derive(Clone, Debug, PartialEq)]
pub struct Request {
    /// What has changed since the last message.
    pub news: News,
    /// What is asked, of the document as it then stands.
    pub questions: Vec<Question>,
}

passed!(struct Request { news, questions });

/// A message from the follower.
#[derive(Clone, Debug, PartialEq)]
pub enum Reply {
    /// One answer.
    Answer {
        /// The revision it holds for.
        revision: u64,
        /// What it answers.
        answer: Answer,
    },
    /// The news did not follow from what the follower holds: it asks for the whole document.
    OutOfStep,
    /// The follower could not work at all.
    Failed(String),
}

passed!(enum Reply { 0 = Answer { revision, answer }, 1 = OutOfStep, 2 = Failed(why) });

/// One answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A figure with its range.
    Range {
        /// The figure.
        figure: String,
        /// As the page shows it: value with likely range, one text for each cell of its table.
        shown: Vec<String>,
        /// The 10th and 90th percentile of each cell, in coherent units, where there is a range.
        bounds: Vec<Option<(f64, f64)>>,
    },
    /// Where the doubt in a figure comes from, the largest share first.
    Sensitivity {
        /// The figure.
        figure: String,
        /// Titles and shares of variance, 0 to 1.
        shares: Vec<(String, f64)>,
        /// Why there are none, where there are none.
        reason: Option<String>,
    },
    /// Walking and mix in detail, for the other study to take.
    Details(Box<WalkDetails>),
    /// They could not be worked out, and why.
    NoDetails(String),
    /// Whether the moment is compared with, or why it can not be.
    Compared(Result<(), String>),
    /// What has changed in a figure since the moment compared with.
    Change {
        /// The figure.
        figure: String,
        /// The change; `None` where there is nothing to compare.
        change: Option<ChangeShown>,
    },
}

passed!(enum Answer {
    0 = Range { figure, shown, bounds },
    1 = Sensitivity { figure, shares, reason },
    2 = Details(details),
    3 = NoDetails(why),
    4 = Compared(outcome),
    5 = Change { figure, change },
});
