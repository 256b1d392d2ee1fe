//! What part of an alternative is looked at: some phases, some owners, today or as proposed.
//!
//! A scope is a view and no part of the document: nothing is drawn anew to ask what phase 1 alone would be, or the plan
//! without the unwilling owner's land. [`Scope::seen`] gives the document as the scope sees it, and all that is measured
//! is measured on that: the same as if the other marks were deleted, but for one thing. A new street of another phase
//! still divides land and keeps its right-of-way, though it is no street yet; else the block in front of it would open
//! up, and its use would spread over land of phases to come.
//!
//! - Streets have a status. Today: those existing, kept and removed. Proposed: those existing, kept and new; a street
//!   that a later phase removes still stands.
//! - Places have a certainty. Today: the existing ones. Proposed: all, existing ones whatever the phase.
//! - Uses and soft areas have neither: they are what is proposed, and today counts none of them. What stands today is
//!   best drawn as an alternative of its own.
//! - Everything else is there in every scope. Land of owners who are left out is held back by the fabric; new places
//!   that lie on it whole do not count.

use crate::order::{OrderedMap, OrderedSet};
use crate::passing::passed;
use crate::say;
use std::borrow::Cow;

use super::coordinates::PlanPoint;
use super::document::{Alternative, Document};
use super::flatten::flatten;
use super::ids::{AlternativeId, MarkId, PhaseId, StreetSectionId};
use super::inside::goes_around;
use super::land::{Certainty, Footprint, OwnerGroup, Place};
use super::mark::Mark;
use super::street::{Status, Street};

/// What part of an alternative is looked at.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Scope {
    /// The phases that are built; `None` for all of them.
    pub phases: Option<OrderedSet<PhaseId>>,
    /// Owners whose land is left out.
    pub left_out_owners: OrderedSet<OwnerGroup>,
    /// Today or as proposed.
    pub standing: Standing,
}

passed!(struct Scope { phases, left_out_owners, standing });

/// Which time is looked at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// What stands today.
    Today,
    /// What is proposed.
    #[default]
    Proposed,
}

passed!(enum Standing { 0 = Today, 1 = Proposed });

/// What a scope sees of a document.
#[derive(Clone, Debug)]
pub struct Seen<'a> {
    /// The document: the one alternative alone, without the marks left out and without the base image; or the whole
    /// document where nothing is left out. Streets that are to be removed and still stand are in it as kept.
    pub document: Cow<'a, Document>,
    /// Owners whose parcels are held back.
    pub left_out_owners: &'a OrderedSet<OwnerGroup>,
    /// New streets of other phases.
    pub unbuilt: Vec<Unbuilt>,
}

/// A street that is not built in what is looked at: its line divides land, its right-of-way is kept for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unbuilt {
    /// Its centerline, corners rounded.
    pub points: Vec<PlanPoint>,
    /// Its street section.
    pub section: StreetSectionId,
}

impl<'a> Seen<'a> {
    /// All of a document.
    #[must_use]
    pub const fn all_of(document: &'a Document) -> Self {
        static NONE: OrderedSet<OwnerGroup> = OrderedSet::new();
        Self {
            document: Cow::Borrowed(document),
            left_out_owners: &NONE,
            unbuilt: Vec::new(),
        }
    }
}

impl Scope {
    /// All phases up to one, that one with them.
    #[must_use]
    pub fn up_to(document: &Document, last: PhaseId) -> Self {
        Self {
            phases: Some(OrderedSet::from_iter(
                document.phases.keys().copied().filter(|id| *id <= last),
            )),
            ..Self::default()
        }
    }

    /// Whether it leaves nothing out of what is proposed.
    #[must_use]
    pub fn is_everything(&self) -> bool {
        *self == Self::default()
    }

    /// What this scope sees of one alternative. Cost: nothing where nothing is left out, else a copy of the alternative.
    #[must_use]
    pub fn seen<'a>(&'a self, document: &'a Document, alternative: AlternativeId) -> Seen<'a> {
        if self.is_everything() {
            return Seen::all_of(document);
        }
        let held = document.alternatives.get(&alternative);
        let unbuilt = held.map(|held| self.unbuilt(document, &held.marks));
        let alternatives = held.map(|held| {
            let seen = Alternative {
                name: held.name.clone(),
                table: held.table.clone(),
                marks: self.marks_seen(document, &held.marks),
            };
            (alternative, seen)
        });
        let document = Document {
            heading: document.heading.clone(),
            site: document.site.clone(),
            program: document.program.clone(),
            street_sections: document.street_sections.clone(),
            building_types: document.building_types.clone(),
            phases: document.phases.clone(),
            settings: document.settings.clone(),
            topography: document.topography.clone(),
            base_image: None,
            alternatives: OrderedMap::from_iter(alternatives),
        };
        Seen {
            document: Cow::Owned(document),
            left_out_owners: &self.left_out_owners,
            unbuilt: unbuilt.unwrap_or_default(),
        }
    }

    /// What it leaves out, in words; `None` where it leaves nothing out.
    #[must_use]
    pub fn in_words(&self, document: &Document) -> Option<String> {
        let mut parts = Vec::new();
        if self.standing == Standing::Today {
            parts.push(say!("plan-scope-today").to_owned());
        } else if let Some(phases) = &self.phases {
            let name = |id: &PhaseId| {
                document
                    .phases
                    .get(id)
                    .map_or_else(|| id.to_string(), |held| held.name.clone())
            };
            let names: Vec<String> = phases.iter().map(name).collect();
            parts.push(match names.as_slice() {
                [] => say!("plan-scope-no-phase").to_owned(),
                [name] => say!("plan-scope-one-phase", name = name),
                names => say!("plan-scope-phases", names = names.join(", ")),
            });
        }
        if !self.left_out_owners.is_empty() {
            let mut groups = self.left_out_owners.iter().map(|group| group.in_words());
            let first = groups.next().unwrap_or_default().to_owned();
            let groups = groups.fold(first, |groups, group| {
                say!("plan-scope-two-groups", first = groups, second = group)
            });
            parts.push(say!("plan-scope-without", groups = groups));
        }
        (!parts.is_empty()).then(|| parts.join(", "))
    }

    /// Whether a phase is built in this scope; marks without one are of the first.
    fn is_built(&self, document: &Document, phase: Option<PhaseId>) -> bool {
        match (&self.phases, phase.or(document.phases.keys().next().copied())) {
            (Some(phases), Some(phase)) => phases.contains(&phase),
            // A plan without phases is built in one.
            (None, _) | (_, None) => true,
        }
    }

    /// New streets of other phases; none today, when no use is there to keep to its land.
    fn unbuilt(&self, document: &Document, marks: &OrderedMap<MarkId, Mark>) -> Vec<Unbuilt> {
        if self.standing == Standing::Today {
            return Vec::new();
        }
        let streets = marks.values().filter_map(Mark::as_street);
        let is_unbuilt = |street: &&Street| street.status == Status::New && !self.is_built(document, street.phase);
        let unbuilt = streets.filter(is_unbuilt).map(|street| Unbuilt {
            points: flatten(&street.line),
            section: street.section,
        });
        unbuilt.collect()
    }

    fn marks_seen(&self, document: &Document, marks: &OrderedMap<MarkId, Mark>) -> OrderedMap<MarkId, Mark> {
        let is_built = |phase| self.is_built(document, phase);
        let is_proposed = self.standing == Standing::Proposed;
        let left_out: Vec<&[_]> = marks
            .values()
            .filter_map(|mark| match mark {
                Mark::Parcel(parcel) if self.left_out_owners.contains(&parcel.owner) => Some(parcel.outline.as_slice()),
                _ => None,
            })
            .collect();
        let sees_place = |place: &Place| {
            let is_new = is_proposed && is_built(place.phase) && !left_out.iter().any(|land| lies_in(place, land));
            place.certainty == Certainty::Existing || is_new
        };
        let seen = |mark: &Mark| match mark {
            Mark::Street(street) => self.street_seen(street, is_built).map(Mark::Street),
            Mark::Use(held) => (is_proposed && is_built(held.phase)).then(|| mark.clone()),
            Mark::SoftArea(area) => (is_proposed && is_built(area.phase)).then(|| mark.clone()),
            Mark::Place(place) => sees_place(place).then(|| mark.clone()),
            _ => Some(mark.clone()),
        };
        OrderedMap::from_iter(marks.iter().filter_map(|(id, mark)| Some((*id, seen(mark)?))))
    }

    fn street_seen(&self, street: &Street, is_built: impl Fn(Option<PhaseId>) -> bool) -> Option<Street> {
        let is_proposed = self.standing == Standing::Proposed;
        let status = match street.status {
            Status::Existing | Status::Kept => street.status,
            Status::New if is_proposed && is_built(street.phase) => Status::New,
            Status::Removed if !is_proposed || !is_built(street.phase) => Status::Kept,
            Status::New | Status::Removed => return None,
        };
        Some(Street {
            status,
            ..street.clone()
        })
    }
}

fn lies_in(place: &Place, land: &[PlanPoint]) -> bool {
    match &place.footprint {
        Footprint::Point(point) => goes_around(land, *point),
        Footprint::Line(points) | Footprint::Area(points) => points.iter().all(|point| goes_around(land, *point)),
    }
}

impl OwnerGroup {
    /// All groups.
    pub const ALL: [Self; 4] = [Self::Public, Self::Willing, Self::Unknown, Self::Unwilling];

    /// The word for it, as on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Public => "public",
            Self::Willing => "willing",
            Self::Unknown => "unknown",
            Self::Unwilling => "unwilling",
        }
    }

    /// What owners of the group are, in the language of the window.
    fn in_words(self) -> &'static str {
        match self {
            Self::Public => say!("plan-owners-public"),
            Self::Willing => say!("plan-owners-willing"),
            Self::Unknown => say!("plan-owners-unknown"),
            Self::Unwilling => say!("plan-owners-unwilling"),
        }
    }
}

#[cfg(test)]
mod tests;
