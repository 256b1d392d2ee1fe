//! What the user drew: the document, marks, edits, transactions, journal, validation.
//!
//! A [`Document`] is one site with one to many alternatives; an alternative is a map of [`Mark`]s; an [`Edit`] replaces
//! one cell of the document and knows what stood there before. Everything downstream reads documents and never writes.
//!
//! The document changes through a [`History`]: a gesture is `begin`, any number of `change` (each replaces the preview)
//! and `extend` (what follows from it), then `commit` or `cancel`; `undo` and `redo` go any depth; `take_entries` gives
//! the caller the [`journal`] to keep. See [`history`] for an example.

pub mod agreement;
pub mod building;
pub mod coordinates;
pub mod defaults;
pub mod document;
pub mod edit;
pub mod editing;
pub mod flatten;
pub mod gather;
pub mod history;
pub mod ids;
pub mod inside;
pub mod journal;
pub mod land;
pub mod mark;
pub mod placement;
pub mod projection;
pub mod scope;
pub mod storable;
pub mod street;
pub mod tie;
pub mod transaction;
pub mod validate;
pub mod weight;

#[cfg(test)]
pub(crate) mod fixtures;

pub use building::{BuildingType, FloorUse, LandUse, Story};
pub use coordinates::{PlanPoint, PlanVector};
pub use document::{Alternative, Document};
pub use edit::{Cell, Edit};
pub use history::{History, HistoryFault};
pub use ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
pub use land::{Beside, Certainty, ConstraintArea, Footprint, Place, PlaceKind, SideUse, SoftArea, UseMark};
pub use mark::{Mark, MarkKind};
pub use scope::Scope;
pub use street::{Street, StreetRole, StreetSection, Strip, StripKind, Tie, Vertex};
pub use transaction::Transaction;
