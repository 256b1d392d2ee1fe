//! What was drawn, in and out: plan files, journal files and addresses. Built on `plan` alone.
//!
//! Readers never panic: they give what could be read with every fault and its place, or refuse in a sentence. Writers
//! are deterministic: the same document gives the same bytes.

pub mod address;
pub mod fault;
pub mod geojson;
pub mod geojson_lines;
pub mod journal_file;
pub mod json;
pub mod passed;
pub mod plan_file;

mod base64;
pub(crate) mod stored;

pub use fault::{FileFault, FileFaultKind, FileSeverity};
