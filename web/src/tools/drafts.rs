//! What the area and place tools draw next: marks that lie nowhere yet.

use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::land::{
    Barrier, ConstraintKind, Crossing, Note, OutsideContext, OwnerGroup, Parcel, Portion, SiteAccess,
};
use hobnail_core::plan::{
    BuildingTypeId, Certainty, ConstraintArea, Document, Footprint, Mark, Place, PlaceKind, PlanPoint, SoftArea,
};

/// What the area and place tools draw next.
#[derive(Clone, Debug, PartialEq)]
pub struct Drafts {
    /// Of the area tool; `None` for the site's boundary.
    pub area: Option<Mark>,
    /// Of the place tool.
    pub place: Mark,
    /// Whether a place gets land of its own, drawn corner by corner.
    pub place_has_land: bool,
    /// Which of the palette of areas is drawn, and which of the palette of places.
    pub chosen: [usize; 2],
}

/// Constraint areas in the order of the palette.
pub const CONSTRAINTS: [ConstraintKind; 8] = [
    ConstraintKind::Water,
    ConstraintKind::Floodplain,
    ConstraintKind::Wetland,
    ConstraintKind::Steep,
    ConstraintKind::Easement,
    ConstraintKind::Conservation,
    ConstraintKind::Contaminated,
    ConstraintKind::Keep,
];

/// Kinds of places in the order of the palette.
pub const PLACES: [PlaceKind; 7] = [
    PlaceKind::Center,
    PlaceKind::TransitStop,
    PlaceKind::School,
    PlaceKind::CommunityHall,
    PlaceKind::Park,
    PlaceKind::Shop,
    PlaceKind::Clinic,
];

/// The site's boundary in the palette of areas.
pub const SITE: usize = 0;
/// A soft area in the palette of areas; constraint areas follow.
pub const SOFT: usize = 1;
/// A parcel in the palette of areas.
pub const PARCEL: usize = SOFT + 1 + CONSTRAINTS.len();
/// Outside context, the last in the palette of areas.
pub const OUTSIDE: usize = PARCEL + 1;
/// A site access in the palette of places, after the kinds of places.
pub const ACCESS: usize = PLACES.len();
/// A barrier in the palette of places.
pub const BARRIER: usize = ACCESS + 1;
/// A crossing in the palette of places.
pub const CROSSING: usize = BARRIER + 1;
/// A note, the last in the palette of places.
pub const NOTE: usize = CROSSING + 1;

impl Drafts {
    /// The site's boundary, and a center.
    #[must_use]
    pub fn first() -> Self {
        Self {
            area: None,
            place: place(0),
            place_has_land: false,
            chosen: [SITE, 0],
        }
    }

    /// Whether what the place tool draws is drawn corner by corner.
    #[must_use]
    pub const fn is_by_corners(&self) -> bool {
        match self.place {
            Mark::Barrier(_) => true,
            Mark::Place(_) => self.place_has_land,
            _ => false,
        }
    }
}

/// The draft at a place of the palette of areas; `None` for the site's boundary.
#[must_use]
pub fn area(place: usize, document: &Document) -> Option<Mark> {
    let outline = Vec::new;
    if place == SITE {
        return None;
    }
    if place == SOFT {
        let first = document.building_types.keys().next().copied();
        return Some(soft(outline(), first, document));
    }
    if let Some(kind) = CONSTRAINTS.get(place - SOFT - 1) {
        return Some(Mark::Constraint(constraint(*kind)));
    }
    Some(if place == PARCEL {
        Mark::Parcel(Parcel {
            label: String::new(),
            outline: outline(),
            owner: OwnerGroup::Unknown,
            beside: None,
        })
    } else {
        Mark::Outside(OutsideContext {
            name: String::new(),
            footprint: Footprint::Area(outline()),
            homes: 0,
            jobs: 0,
            shop_floor_m2: 0,
        })
    })
}

/// A constraint area with the switches its kind usually has: none may be built upon, only water is left out of the whole
/// site, and all but water, wetland and contaminated ground may be walked on. Common practice, no source; each switch
/// can be changed.
fn constraint(kind: ConstraintKind) -> ConstraintArea {
    let is_wet = matches!(kind, ConstraintKind::Water | ConstraintKind::Wetland);
    ConstraintArea {
        name: String::new(),
        outline: Vec::new(),
        kind,
        is_buildable: false,
        counts_in_site: kind != ConstraintKind::Water,
        counts_in_buildable: false,
        is_walkable: !is_wet && kind != ConstraintKind::Contaminated,
    }
}

/// A soft area of this building type, all of whose land is built upon.
#[must_use]
pub fn soft(outline: Vec<PlanPoint>, building_type: Option<BuildingTypeId>, document: &Document) -> Mark {
    let mut soft = SoftArea {
        outline,
        program: Vec::new(),
        land_use: LandUse::Residential,
        intensity_ppm: 1_000_000,
        phase: None,
    };
    give_use(&mut soft, building_type, document);
    Mark::SoftArea(soft)
}

/// Gives a soft area one building type for all its land, and the tint that goes with it.
pub fn give_use(soft: &mut SoftArea, building_type: Option<BuildingTypeId>, document: &Document) {
    if let Some((id, held)) = building_type.and_then(|id| document.building_types.get(&id).map(|held| (id, held))) {
        soft.land_use = held.land_use;
        soft.program = vec![Portion {
            building_type: id,
            share_ppm: 1_000_000,
        }];
    }
}

/// The draft at a place of the palette of places.
#[must_use]
pub fn place(place: usize) -> Mark {
    let at = PlanPoint::default();
    let name = String::new;
    if let Some(kind) = PLACES.get(place) {
        return Mark::Place(Place {
            name: name(),
            kind: *kind,
            footprint: Footprint::Point(at),
            minimum_size_m2: 0,
            certainty: Certainty::Committed,
            phase: None,
        });
    }
    match place {
        ACCESS => Mark::SiteAccess(SiteAccess {
            name: name(),
            at,
            outside_trips_ppm: None,
        }),
        BARRIER => Mark::Barrier(Barrier {
            name: name(),
            line: Vec::new(),
            beside: None,
        }),
        CROSSING => Mark::Crossing(Crossing { at, delay_tenths_s: 0 }),
        _ => Mark::Note(Note::default()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::MarkKind;
    use hobnail_core::plan::projection::GeographicPoint;

    #[test]
    fn every_place_of_the_palettes_is_a_kind_of_its_own() {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        let document = Document::new("Test", origin);
        assert_eq!(area(SITE, &document), None);
        let Some(Mark::SoftArea(soft)) = area(SOFT, &document) else {
            panic!("a soft area")
        };
        assert_eq!(soft.program.len(), 1, "a bubble says a use from the start");
        for (index, kind) in CONSTRAINTS.into_iter().enumerate() {
            let Some(Mark::Constraint(area)) = area(SOFT + 1 + index, &document) else {
                panic!("a constraint area")
            };
            assert_eq!(area.kind, kind);
        }
        let kind_of = |mark: Option<Mark>| mark.map(|mark| mark.kind());
        assert_eq!(kind_of(area(PARCEL, &document)), Some(MarkKind::Parcel));
        assert_eq!(kind_of(area(OUTSIDE, &document)), Some(MarkKind::Outside));
        for (index, kind) in PLACES.into_iter().enumerate() {
            assert!(matches!(place(index), Mark::Place(found) if found.kind == kind));
        }
        let others = [ACCESS, BARRIER, CROSSING, NOTE].map(|index| place(index).kind());
        let kinds = [
            MarkKind::SiteAccess,
            MarkKind::Barrier,
            MarkKind::Crossing,
            MarkKind::Note,
        ];
        assert_eq!(others, kinds);
    }
}
