//! A mark: anything drawn on an alternative.

use super::land::{
    Barrier, Beside, ConstraintArea, Crossing, Note, OutsideContext, Parcel, Place, SiteAccess, SoftArea, UseMark,
};
use super::street::Street;

/// Anything drawn on an alternative.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A street, lane, alley or path.
    Street(Street),
    /// The use of a face.
    Use(UseMark),
    /// A bubble drawn before streets.
    SoftArea(SoftArea),
    /// Land that something holds back.
    Constraint(ConstraintArea),
    /// A place people go to.
    Place(Place),
    /// A connection to the existing street network.
    SiteAccess(SiteAccess),
    /// A parcel with its owner group.
    Parcel(Parcel),
    /// A line that can not be crossed on foot.
    Barrier(Barrier),
    /// A place to cross.
    Crossing(Crossing),
    /// What lies outside the site.
    Outside(OutsideContext),
    /// A remark.
    Note(Note),
}

/// The kinds of marks, in the order of [`Mark`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each kind is documented at the mark of the same name")]
pub enum MarkKind {
    Street,
    Use,
    SoftArea,
    Constraint,
    Place,
    SiteAccess,
    Parcel,
    Barrier,
    Crossing,
    Outside,
    Note,
}

impl Mark {
    /// The kind of this mark.
    #[must_use]
    pub const fn kind(&self) -> MarkKind {
        match self {
            Self::Street(_) => MarkKind::Street,
            Self::Use(_) => MarkKind::Use,
            Self::SoftArea(_) => MarkKind::SoftArea,
            Self::Constraint(_) => MarkKind::Constraint,
            Self::Place(_) => MarkKind::Place,
            Self::SiteAccess(_) => MarkKind::SiteAccess,
            Self::Parcel(_) => MarkKind::Parcel,
            Self::Barrier(_) => MarkKind::Barrier,
            Self::Crossing(_) => MarkKind::Crossing,
            Self::Outside(_) => MarkKind::Outside,
            Self::Note(_) => MarkKind::Note,
        }
    }

    /// The street, where this mark is one.
    #[must_use]
    pub const fn as_street(&self) -> Option<&Street> {
        if let Self::Street(street) = self {
            Some(street)
        } else {
            None
        }
    }

    /// The use mark, where this mark is one.
    #[must_use]
    pub const fn as_use(&self) -> Option<&UseMark> {
        if let Self::Use(use_mark) = self {
            Some(use_mark)
        } else {
            None
        }
    }

    /// The note, where this mark is one.
    #[must_use]
    pub const fn as_note(&self) -> Option<&Note> {
        if let Self::Note(note) = self { Some(note) } else { None }
    }

    /// What this mark asks of the lots beside it, where it is of a kind that may: the rest of them ask nothing.
    #[must_use]
    pub const fn beside(&self) -> Option<&Option<Beside>> {
        match self {
            Self::Parcel(Parcel { beside, .. }) | Self::Barrier(Barrier { beside, .. }) => Some(beside),
            _ => None,
        }
    }

    /// [`Mark::beside`], to change it.
    pub const fn beside_mut(&mut self) -> Option<&mut Option<Beside>> {
        match self {
            Self::Parcel(Parcel { beside, .. }) | Self::Barrier(Barrier { beside, .. }) => Some(beside),
            _ => None,
        }
    }

    /// The place, where this mark is one.
    #[must_use]
    pub const fn as_place(&self) -> Option<&Place> {
        if let Self::Place(place) = self {
            Some(place)
        } else {
            None
        }
    }
}
