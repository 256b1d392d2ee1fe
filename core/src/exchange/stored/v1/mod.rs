//! Format version 1: the spelling of everything a document holds.
//!
//! Lengths are integer millimeters (`_mm`), shares integer parts per million (`_ppm`) or per billion (`_ppb`). Points
//! inside properties are `[x, y]` in millimeters east and north of the plan's origin. Members that would be empty are
//! left out. Names and words here never change; what version 1 can say, every later reader understands.

mod document;
mod edits;
mod marks;
mod palettes;
mod parts;
mod shape;

pub(crate) use document::{alternative_from_json, document_from_json, document_to_json};
pub(crate) use edits::{transaction_from_json, transaction_to_json};
pub(crate) use marks::{kind_word, mark_from, mark_parts, shape_of_kind};
pub(crate) use shape::{Shape, ShapeKind};
