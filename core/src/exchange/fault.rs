//! What a reader found wrong in a file, and where.

use std::fmt;

use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::tie::ReleaseReason;
use crate::say;

/// Something wrong in a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileFault {
    /// Where it is: a JSON pointer (RFC 6901) from the top of the file.
    pub pointer: String,
    /// Index of the feature it is in, from 0.
    pub feature: Option<usize>,
    /// Id of that feature, where it has one.
    pub id: Option<String>,
    /// What it is.
    pub kind: FileFaultKind,
}

/// What a fault means for the document that was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FileSeverity {
    /// Something was changed so that it could be read.
    Mended,
    /// Something of the file is not in the document; saving over the file would lose it.
    LeftOut,
}

/// What is wrong in a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileFaultKind {
    /// A value of the wrong kind or out of range.
    Expected {
        /// What would be right.
        expected: String,
        /// What is there.
        found: String,
    },
    /// A needed member is missing.
    Missing(&'static str),
    /// A member that is not known.
    UnknownMember(String),
    /// A member that stands there twice; the first is used.
    RepeatedMember(String),
    /// An id that stands there twice; the first is used.
    RepeatedId(u32),
    /// A kind of feature that is not known.
    UnknownKind(String),
    /// The geometry does not suit the kind of feature.
    UnsuitableGeometry {
        /// What would suit.
        expected: &'static str,
        /// What is there.
        found: &'static str,
    },
    /// A position that is not a longitude and a latitude in degrees.
    NotAPosition,
    /// A position too far from the plan's origin.
    BeyondPlan,
    /// Holes of a polygon.
    Holes,
    /// Heights of positions.
    Heights,
    /// The plan's origin was unusable; the middle of the data was taken.
    OriginReplaced,
    /// The feature has no usable id; it was given one.
    IdGiven(MarkId),
    /// The feature's id is also an earlier feature's; it was given another.
    IdReplaced(MarkId),
    /// The alternative was not listed; it was added.
    AlternativeAdded(AlternativeId),
    /// A tie that could not be kept.
    TieReleased {
        /// Vertex of the street, from 0.
        vertex: usize,
        /// Street it was tied to.
        street: MarkId,
        /// Why.
        reason: ReleaseReason,
    },
    /// The site has a boundary already.
    SecondSite,
    /// More faults of this file are not listed.
    More(usize),
}

impl FileFaultKind {
    /// What the fault means for the document that was read.
    #[must_use]
    pub const fn severity(&self) -> FileSeverity {
        match self {
            Self::OriginReplaced
            | Self::IdGiven(_)
            | Self::IdReplaced(_)
            | Self::AlternativeAdded(_)
            | Self::TieReleased { .. } => FileSeverity::Mended,
            _ => FileSeverity::LeftOut,
        }
    }
}

impl FileFault {
    /// What the fault means for the document that was read.
    #[must_use]
    pub const fn severity(&self) -> FileSeverity {
        self.kind.severity()
    }
}

impl fmt::Display for FileFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let pointer = if self.pointer.is_empty() {
            say!("exchange-fault-top")
        } else {
            &self.pointer
        };
        let what = self.kind.to_string();
        formatter.write_str(&match (self.feature, &self.id) {
            (Some(feature), Some(id)) => {
                say!(
                    "exchange-fault-in-feature-id",
                    feature = feature,
                    id = id,
                    place = pointer,
                    what = what
                )
            }
            (Some(feature), None) => say!(
                "exchange-fault-in-feature",
                feature = feature,
                place = pointer,
                what = what
            ),
            (None, _) => say!("exchange-fault-at", place = pointer, what = what),
        })
    }
}

impl fmt::Display for FileFaultKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = match self {
            Self::Expected { expected, found } => say!("exchange-fault-expected", expected = expected, found = found),
            Self::Missing(name) => say!("exchange-fault-missing", name = name),
            Self::UnknownMember(name) => say!("exchange-fault-unknown-member", name = name),
            Self::RepeatedMember(name) => say!("exchange-fault-repeated-member", name = name),
            Self::RepeatedId(id) => say!("exchange-fault-repeated-id", id = id),
            Self::UnknownKind(kind) => say!("exchange-fault-unknown-kind", kind = kind),
            Self::UnsuitableGeometry { expected, found } => {
                say!("exchange-fault-geometry", expected = expected, found = found)
            }
            Self::IdGiven(id) => say!("exchange-fault-id-given", id = id.0),
            Self::IdReplaced(id) => say!("exchange-fault-id-replaced", id = id.0),
            Self::AlternativeAdded(id) => say!("exchange-fault-alternative-added", id = id.0),
            Self::TieReleased { vertex, street, reason } => match reason {
                ReleaseReason::NoStreet => {
                    say!("exchange-fault-tie-no-street", vertex = vertex, street = street.0)
                }
                ReleaseReason::NoPlace => say!("exchange-fault-tie-no-place", vertex = vertex, street = street.0),
                ReleaseReason::Circle => say!("exchange-fault-tie-circle", vertex = vertex, street = street.0),
            },
            Self::More(count) => say!("exchange-fault-more", count = count),
            Self::NotAPosition => say!("exchange-fault-not-a-position").to_owned(),
            Self::BeyondPlan => say!("exchange-fault-beyond-plan").to_owned(),
            Self::Holes => say!("exchange-fault-holes").to_owned(),
            Self::Heights => say!("exchange-fault-heights").to_owned(),
            Self::OriginReplaced => say!("exchange-fault-origin").to_owned(),
            Self::SecondSite => say!("exchange-fault-second-site").to_owned(),
        };
        formatter.write_str(&words)
    }
}
