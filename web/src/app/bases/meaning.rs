//! What features become in the plan: the words of the readers' table turned into marks' kinds.
//!
//! Street sections are those of the default palette, by the ends of their messages' names; their ids never change
//! meaning (`core/src/plan/defaults`).

use hobnail_core::plan::land::{ConstraintKind, OwnerGroup, PlaceKind};
use hobnail_core::plan::{BuildingType, BuildingTypeId, Document, StreetRole, StreetSection, StreetSectionId};
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

/// Default street sections by the words of the readers' table, at the places of their ids.
const SECTIONS: [&str; 12] = [
    "main-street",
    "boulevard",
    "neighborhood-street",
    "narrow-street",
    "lane",
    "alley",
    "path",
    "path-homes",
    "subdivision-street",
    "collector",
    "arterial",
    "state-highway",
];

impl Becomes {
    /// What the readers suggest in these words; nothing where they suggest nothing, or a thing the plan has no marks for.
    #[must_use]
    pub(super) fn suggested(words: &str) -> Self {
        let mut words = words.split(' ');
        let found = match (words.next(), words.next(), words.next()) {
            (Some("street"), Some(role), Some(section)) => street(role, section),
            (Some("place"), Some(kind), None) => place(kind),
            (Some("constraint"), Some(kind), None) => constraint(kind),
            (Some("barrier"), None, None) => Some(Self::Barrier),
            (Some("building"), None, None) => Some(Self::Building),
            (Some("note"), None, None) => Some(Self::Note),
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
        let street = |(id, section): (StreetSectionId, &StreetSection)| {
            (Self::Street(id, usual_role(section)), section.name.clone())
        };
        all.extend(sections.map(street));
        all.push((Self::Site, say!("panels-site").to_owned()));
        all.push((Self::Barrier, say!("panels-barrier").to_owned()));
        all.push((Self::Building, say!("bases-becomes-building").to_owned()));
        all.extend(PLACES.map(|kind| (Self::Place(kind), place_word(kind).to_owned())));
        all.extend(CONSTRAINTS.map(|kind| (Self::Constraint(kind), constraint_word(kind).to_owned())));
        let parcel = |group| say!("bases-becomes-parcel", owner = owner_word(group));
        all.extend(OWNERS.map(|group| (Self::Parcel(group), parcel(group))));
        let soft = |(id, held): (&BuildingTypeId, &BuildingType)| {
            (Self::Soft(*id), say!("bases-becomes-soft", use = held.name))
        };
        all.extend(document.building_types.iter().map(soft));
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

fn street(role: &str, section: &str) -> Option<Becomes> {
    let role = match role {
        "thoroughfare" => StreetRole::Thoroughfare,
        "neighborhood_street" => StreetRole::NeighborhoodStreet,
        "lane" => StreetRole::Lane,
        "alley" => StreetRole::Alley,
        "path" => StreetRole::Path,
        _ => return None,
    };
    let id = SECTIONS.iter().position(|known| *known == section)?;
    Some(Becomes::Street(StreetSectionId(id as u32), role))
}

fn place(kind: &str) -> Option<Becomes> {
    Some(Becomes::Place(match kind {
        "transit_stop" => PlaceKind::TransitStop,
        "school" => PlaceKind::School,
        "community_hall" => PlaceKind::CommunityHall,
        "park" => PlaceKind::Park,
        "shop" => PlaceKind::Shop,
        "clinic" => PlaceKind::Clinic,
        _ => return None,
    }))
}

fn constraint(kind: &str) -> Option<Becomes> {
    Some(Becomes::Constraint(match kind {
        "water" => ConstraintKind::Water,
        "wetland" => ConstraintKind::Wetland,
        "conservation" => ConstraintKind::Conservation,
        _ => return None,
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::defaults::street_sections;

    #[test]
    fn sections_are_those_of_the_default_palette() {
        let sections = street_sections();
        assert_eq!(sections.len(), SECTIONS.len());
        for (section, word) in sections.values().zip(SECTIONS) {
            let name = section.name.to_ascii_lowercase().replace(' ', "-");
            let word = if word == "path-homes" {
                "path-with-homes-along-it"
            } else {
                word
            };
            assert_eq!(name, word);
        }
    }

    #[test]
    fn what_is_not_known_becomes_nothing() {
        for words in ["", "contour", "street lane nowhere", "place castle", "building big"] {
            assert_eq!(Becomes::suggested(words), Becomes::Nothing, "{words}");
        }
    }
}
