//! Words that stand on a drawing and beside it.

use crate::plan::PlaceKind;
use crate::plan::building::LandUse;
use crate::plan::land::ConstraintKind;
use crate::say;

/// The word for a use.
#[must_use]
pub fn use_word(land_use: LandUse) -> &'static str {
    match land_use {
        LandUse::Residential => say!("drawing-use-homes"),
        LandUse::Business => say!("drawing-use-business"),
        LandUse::Industrial => say!("drawing-use-making"),
        LandUse::Civic => say!("drawing-use-civic"),
        LandUse::Leisure => say!("drawing-use-park"),
        LandUse::Natural => say!("drawing-use-natural"),
    }
}

/// The word for what holds land back.
#[must_use]
pub fn constraint_word(kind: ConstraintKind) -> &'static str {
    match kind {
        ConstraintKind::Water => say!("drawing-water"),
        ConstraintKind::Floodplain => say!("drawing-floodplain"),
        ConstraintKind::Wetland => say!("drawing-wetland"),
        ConstraintKind::Steep => say!("drawing-steep"),
        ConstraintKind::Easement => say!("drawing-easement"),
        ConstraintKind::Conservation => say!("drawing-conservation"),
        ConstraintKind::Contaminated => say!("drawing-contaminated"),
        ConstraintKind::Keep => say!("drawing-keep"),
    }
}

/// The word for a kind of place.
#[must_use]
pub fn place_word(kind: PlaceKind) -> &'static str {
    match kind {
        PlaceKind::Center => say!("drawing-center"),
        PlaceKind::TransitStop => say!("drawing-transit-stop"),
        PlaceKind::School => say!("drawing-school"),
        PlaceKind::CommunityHall => say!("drawing-community-hall"),
        PlaceKind::Park => say!("drawing-park"),
        PlaceKind::Shop => say!("drawing-shop"),
        PlaceKind::Clinic => say!("drawing-clinic"),
    }
}
