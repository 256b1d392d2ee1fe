//! What features become in the plan: what the readers suggest turned into marks' kinds.
//!
//! Street sections are those of the default palette; their ids never change meaning (`core/src/plan/defaults`).

use hobnail_core::plan::land::{ConstraintKind, OwnerGroup, PlaceKind};
use hobnail_core::plan::{BuildingTypeId, Document, StreetRole, StreetSection, StreetSectionId};
use hobnail_core::report::drawing::words::{constraint_word, place_word};
use hobnail_core::say;

use super::Shape;
use crate::app::fields::OWNERS;
use crate::canvas::palette::owner_word;
use crate::tools::drafts::{CONSTRAINTS, PLACES};
use crate::tools::usual_role;

/// What features of a class become.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Becomes {
    /// Nothing: they are left out.
    Nothing,
    /// Streets that stand today.
    Street(StreetSectionId, StreetRole),
    /// Places that are there.
    Place(PlaceKind),
    /// Land that is held back.
    Constraint(ConstraintKind),
    /// Lines that can not be crossed on foot.
    Barrier,
    /// Buildings that stand: land kept as it is within the site, context outside of it.
    Building,
    /// Parcels of this group of owners.
    Parcel(OwnerGroup),
    /// Notes of their words, where they stand: at the middle of a line, within an area.
    Note,
    /// Soft areas of this building type, which say roughly what their land might hold.
    Soft(BuildingTypeId),
    /// The boundary of the site: the largest of them.
    Site,
}

/// Roles of streets by their numbers.
const ROLES: [StreetRole; 5] = [
    StreetRole::Thoroughfare,
    StreetRole::NeighborhoodStreet,
    StreetRole::Lane,
    StreetRole::Alley,
    StreetRole::Path,
];

impl Becomes {
    /// What the readers suggest by these numbers (`in_numbers` of `web/readers/src/pieces.rs`): kinds are counted as the
    /// plan's own, sections are those of the default palette; nothing where the numbers are none of theirs.
    #[must_use]
    pub(super) fn suggested([thing, kind, section]: [u32; 3]) -> Self {
        let kind = kind as usize;
        let found = match thing {
            1 => ROLES
                .get(kind)
                .map(|role| Self::Street(StreetSectionId(section), *role)),
            2 => PLACES.get(kind).map(|kind| Self::Place(*kind)),
            3 => CONSTRAINTS.get(kind).map(|kind| Self::Constraint(*kind)),
            4 => Some(Self::Barrier),
            5 => Some(Self::Building),
            6 => Some(Self::Note),
            _ => None,
        };
        found.unwrap_or(Self::Nothing)
    }

    /// Whether what has this shape can be it.
    #[must_use]
    pub const fn can_be(self, shape: Shape) -> bool {
        match self {
            Self::Street(..) | Self::Barrier => matches!(shape, Shape::Lines),
            Self::Constraint(_) | Self::Parcel(_) | Self::Soft(_) | Self::Site => matches!(shape, Shape::Areas),
            Self::Building => !matches!(shape, Shape::Lines),
            Self::Place(_) | Self::Note | Self::Nothing => true,
        }
    }

    /// Whether it is the same choice: the role of a street is chosen with its section.
    #[must_use]
    pub fn is_choice(self, other: Self) -> bool {
        match (self, other) {
            (Self::Street(section, _), Self::Street(other, _)) => section == other,
            _ => self == other,
        }
    }

    /// All that features of these shapes can become, in the order in which it is offered, each in words; `sections` are
    /// the street sections that are offered, and soft areas are of the building types of the document.
    #[must_use]
    pub fn choices<'a>(
        shapes: &[Shape],
        sections: impl Iterator<Item = (StreetSectionId, &'a StreetSection)>,
        document: &Document,
    ) -> Vec<(Self, String)> {
        let mut all = vec![(Self::Nothing, say!("bases-becomes-nothing").to_owned())];
        for (id, section) in sections {
            all.push((Self::Street(id, usual_role(section)), section.name.clone()));
        }
        all.push((Self::Site, say!("panels-site").to_owned()));
        all.push((Self::Barrier, say!("panels-barrier").to_owned()));
        all.push((Self::Building, say!("bases-becomes-building").to_owned()));
        for kind in PLACES {
            all.push((Self::Place(kind), place_word(kind).to_owned()));
        }
        for kind in CONSTRAINTS {
            all.push((Self::Constraint(kind), constraint_word(kind).to_owned()));
        }
        for group in OWNERS {
            let words = say!("bases-becomes-parcel", owner = owner_word(group));
            all.push((Self::Parcel(group), words));
        }
        for (id, held) in &document.building_types {
            all.push((Self::Soft(*id), say!("bases-becomes-soft", use = held.name)));
        }
        all.push((Self::Note, say!("panels-note").to_owned()));
        all.retain(|(becomes, _)| shapes.iter().any(|shape| becomes.can_be(*shape)));
        all
    }

    /// Its place in what is counted by kind: streets, places, constraints, barriers, buildings, parcels,
    /// notes, soft areas.
    #[must_use]
    pub const fn kind(self) -> Option<usize> {
        match self {
            Self::Nothing | Self::Site => None,
            Self::Street(..) => Some(0),
            Self::Place(_) => Some(1),
            Self::Constraint(_) => Some(2),
            Self::Barrier => Some(3),
            Self::Building => Some(4),
            Self::Parcel(_) => Some(5),
            Self::Note => Some(6),
            Self::Soft(_) => Some(7),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::defaults::street_sections;
    use hobnail_readers::base;
    use hobnail_readers::pieces::SECTIONS;

    #[test]
    fn sections_are_those_of_the_default_palette() {
        let sections = street_sections();
        assert_eq!(sections.len(), SECTIONS.len());
        for ((id, section), (place, word)) in sections.iter().zip((0..).zip(SECTIONS)) {
            let name = section.name.to_ascii_lowercase().replace(' ', "-");
            let word = if word == "path-homes" {
                "path-with-homes-along-it"
            } else {
                word
            };
            assert_eq!((id.0, name.as_str()), (place, word));
        }
    }

    #[test]
    fn kinds_have_the_same_numbers_where_they_are_read_and_where_they_are_taken() {
        use base::{ConstraintKind, PlaceKind, StreetOwner, StreetRole};
        let is_one = |readers: &dyn std::fmt::Debug, ours: Becomes| {
            let [readers, ours] = [format!("({readers:?})"), format!("{ours:?}")];
            assert!(ours.ends_with(&readers), "{readers} {ours}");
        };
        for kind in [
            PlaceKind::TransitStop,
            PlaceKind::School,
            PlaceKind::CommunityHall,
            PlaceKind::Park,
            PlaceKind::Shop,
            PlaceKind::Clinic,
        ] {
            is_one(&kind, Becomes::suggested([2, kind as u32, 0]));
        }
        for kind in [
            ConstraintKind::Water,
            ConstraintKind::Wetland,
            ConstraintKind::Conservation,
        ] {
            is_one(&kind, Becomes::suggested([3, kind as u32, 0]));
        }
        for role in [
            StreetRole::Thoroughfare,
            StreetRole::NeighborhoodStreet,
            StreetRole::Lane,
            StreetRole::Alley,
            StreetRole::Path,
        ] {
            assert_eq!(format!("{role:?}"), format!("{:?}", ROLES[role as usize]));
        }
        for owner in [StreetOwner::State, StreetOwner::Town, StreetOwner::Private] {
            let ours = crate::app::fields::STREET_OWNERS[owner as usize];
            assert_eq!(format!("{owner:?}"), format!("{ours:?}"));
        }
    }

    #[test]
    fn what_is_not_known_becomes_nothing() {
        for numbers in [[0, 0, 0], [1, 5, 0], [2, 7, 0], [3, 8, 0], [7, 0, 0]] {
            assert_eq!(Becomes::suggested(numbers), Becomes::Nothing, "{numbers:?}");
        }
    }
}
