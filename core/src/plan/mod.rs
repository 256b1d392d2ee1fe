//! What the user drew: the document, marks, edits, transactions, journal, validation.

pub mod coordinates;

pub use coordinates::{PlanPoint, PlanVector};
