//! What a reader found wrong in a file, and where.

use std::fmt;

use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::tie::ReleaseReason;

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
        match (self.feature, &self.id) {
            (Some(feature), Some(id)) => write!(formatter, "feature {feature} (id {id}), ")?,
            (Some(feature), None) => write!(formatter, "feature {feature}, ")?,
            (None, _) => {}
        }
        let pointer = if self.pointer.is_empty() {
            "top of the file"
        } else {
            &self.pointer
        };
        write!(formatter, "{pointer}: {}", self.kind)
    }
}

impl fmt::Display for FileFaultKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Expected { expected, found } => write!(formatter, "expected {expected}, found {found}"),
            Self::Missing(name) => write!(formatter, "{name} is missing"),
            Self::UnknownMember(name) => write!(formatter, "{name} is not known and was left out"),
            Self::RepeatedMember(name) => write!(formatter, "{name} stands here twice; the first was used"),
            Self::RepeatedId(id) => write!(formatter, "id {id} stands here twice; the first was used"),
            Self::UnknownKind(kind) => {
                write!(
                    formatter,
                    "features of kind {kind} are not known; this one was left out"
                )
            }
            Self::UnsuitableGeometry { expected, found } => {
                write!(formatter, "needs {expected}, has {found}; the feature was left out")
            }
            Self::NotAPosition => {
                write!(
                    formatter,
                    "not a longitude and latitude in degrees; the feature was left out"
                )
            }
            Self::BeyondPlan => {
                write!(
                    formatter,
                    "lies more than 100 km from the plan's origin; the feature was left out"
                )
            }
            Self::Holes => write!(formatter, "holes of polygons were left out"),
            Self::Heights => write!(formatter, "heights of positions were left out"),
            Self::OriginReplaced => {
                write!(
                    formatter,
                    "the plan's origin is not usable; the middle of the drawing was taken"
                )
            }
            Self::IdGiven(id) => write!(formatter, "has no usable id; it was given {id}"),
            Self::IdReplaced(id) => write!(formatter, "its id is an earlier feature's; it was given {id}"),
            Self::AlternativeAdded(id) => write!(formatter, "alternative {id} was not listed; it was added"),
            Self::TieReleased { vertex, street, reason } => {
                write!(formatter, "vertex {vertex} was let go of street {street}: ")?;
                formatter.write_str(match reason {
                    ReleaseReason::NoStreet => "there is no such street",
                    ReleaseReason::NoPlace => "the street has no such place",
                    ReleaseReason::Circle => "it closed a circle of ties",
                })
            }
            Self::SecondSite => write!(formatter, "the site has a boundary already; this one was left out"),
            Self::More(count) => write!(formatter, "{count} more faults of this file are not listed"),
        }
    }
}
