//! What the user drew: the document, marks, edits, transactions, journal, validation.
//!
//! A [`Document`] is one site with one to many alternatives; an alternative is a map of [`Mark`]s; an [`Edit`] replaces
//! one cell of the document and knows what stood there before. Everything downstream reads documents and never writes.

pub mod building;
pub mod coordinates;
pub mod document;
pub mod edit;
pub mod flatten;
pub mod ids;
pub mod land;
pub mod mark;
pub mod projection;
pub mod street;
pub mod tie;

#[cfg(test)]
pub(crate) mod fixtures;

pub use building::{BuildingType, FloorUse, LandUse, Story};
pub use coordinates::{PlanPoint, PlanVector};
pub use document::{Alternative, Document};
pub use edit::Edit;
pub use ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
pub use land::{Certainty, ConstraintArea, Footprint, Place, PlaceKind, SideUse, SoftArea, UseMark};
pub use mark::{Mark, MarkKind};
pub use street::{Street, StreetRole, StreetSection, Strip, StripKind, Tie, Vertex};
