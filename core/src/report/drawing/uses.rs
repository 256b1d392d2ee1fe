//! Which use land is drawn in, and which second one is drawn over it.

use crate::order::{self, OrderedMap};
use crate::plan::building::{FloorUse, LandUse};
use crate::plan::land::Portion;
use crate::plan::{BuildingType, Document};

/// The use of most of the land, and the next: of another portion, or of floors above or below.
#[must_use]
pub fn uses_of(document: &Document, program: &[Portion]) -> (Option<LandUse>, Option<LandUse>) {
    let mut shares: OrderedMap<LandUse, u64> = OrderedMap::new();
    let mut portions: Vec<(&BuildingType, u32)> = program
        .iter()
        .filter_map(|portion| Some((document.building_types.get(&portion.building_type)?, portion.share_ppm)))
        .collect();
    order::sort_by_key(&mut portions, |(_, share_ppm)| std::cmp::Reverse(*share_ppm));
    for (building_type, share_ppm) in &portions {
        *shares.entry(building_type.land_use).or_default() += u64::from(*share_ppm);
    }
    let main = shares
        .iter()
        .max_by_key(|(_, share)| **share)
        .map(|(land_use, _)| *land_use);
    let other = shares
        .iter()
        .filter(|(land_use, _)| Some(**land_use) != main)
        .max_by_key(|(_, share)| **share)
        .map(|(land_use, _)| *land_use);
    let upstairs = portions
        .first()
        .and_then(|(building_type, _)| other_floors(building_type));
    (main, other.or(upstairs))
}

/// The use of floors that differ from the building type's own.
#[must_use]
pub fn other_floors(building_type: &BuildingType) -> Option<LandUse> {
    let floors = building_type
        .stories
        .iter()
        .filter_map(|story| use_of_floor(story.floor_use));
    floors.into_iter().find(|land_use| *land_use != building_type.land_use)
}

const fn use_of_floor(floor_use: FloorUse) -> Option<LandUse> {
    match floor_use {
        FloorUse::Home => Some(LandUse::Residential),
        FloorUse::Work | FloorUse::Shop => Some(LandUse::Business),
        FloorUse::Learning | FloorUse::Gathering => Some(LandUse::Civic),
        FloorUse::Parking => None,
    }
}
