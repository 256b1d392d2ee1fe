//! Documents and edits as text between two copies of one build: the page and its worker.
//!
//! The spelling is that of journals, whose readers the page carries anyhow. Nothing of it is stored.

use super::json::parse;
use super::stored::v1::{document_from_json, document_to_json};
use super::stored::{Reader, Stored};
use crate::plan::{Document, Edit};

/// A document as text.
#[must_use]
pub fn document_to_text(document: &Document) -> String {
    let mut text = String::new();
    document_to_json(document).write_to(&mut text);
    text
}

/// The document of a text; `None` where it is not what [`document_to_text`] writes.
#[must_use]
pub fn document_from_text(text: &str) -> Option<Document> {
    let json = parse(text.as_bytes()).ok()?;
    let mut reader = Reader::default();
    let document = document_from_json(&json, &mut reader);
    document.filter(|_| reader.fault_count() == 0)
}

/// Edits as text, in order.
#[must_use]
pub fn edits_to_text(edits: &[Edit]) -> String {
    let mut text = String::new();
    edits.to_vec().to_json().write_to(&mut text);
    text
}

/// The edits of a text; `None` where it is not what [`edits_to_text`] writes.
#[must_use]
pub fn edits_from_text(text: &str) -> Option<Vec<Edit>> {
    let json = parse(text.as_bytes()).ok()?;
    let mut reader = Reader::default();
    let edits: Option<Vec<Edit>> = Stored::from_json(&json, &mut reader);
    edits.filter(|_| reader.fault_count() == 0)
}
