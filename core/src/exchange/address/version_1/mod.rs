//! Version 1 of addresses. What is written here, what it takes from `plan` (feet of ties, nearest places on segments) and
//! what it knows before the first word stay as they are for ever: the chances of a later decision rest on all before it.
//!
//! [`walk`] tells a document part by part, in one description for writing and reading; [`coder`] turns each part into
//! yes-or-no decisions, [`chances`] says how likely each is, and [`arithmetic`] makes bytes of them.

mod alternatives;
mod arithmetic;
mod beside;
mod chances;
mod coder;
mod ground;
mod guide;
mod lessons;
mod marks;
mod palettes;
mod streets;
mod walk;

use crate::plan::document::Document;
use crate::plan::tie::release_unusable_ties;

use super::AddressFault;
pub(super) use beside::has_beside;
use walk::Walk;

/// The bytes of a document without topography and base image; `left_out` says which of the two it had.
///
/// # Errors
/// When it holds too much, or points that history would not let in.
pub(super) fn write(mut document: Document, mut left_out: [bool; 2]) -> Result<Vec<u8>, AddressFault> {
    let (mut coder, shipped) = lessons::learned();
    coder.write();
    let mut walk = Walk::new(coder);
    walk.document(&mut document, &mut left_out, &shipped);
    if has_beside(&document) {
        walk.beside(&mut document);
    }
    walk.coder.finish()
}

/// The document of these bytes, told with what lines ask of the lots beside them or without, and which parts it was told without.
///
/// # Errors
/// When they hold too much, or what can not be.
pub(super) fn read(bytes: Vec<u8>, has_beside: bool) -> Result<(Document, [bool; 2]), AddressFault> {
    let (mut coder, shipped) = lessons::learned();
    coder.read(bytes);
    let mut walk = Walk::new(coder);
    let mut document = lessons::nowhere();
    let mut left_out = [false; 2];
    walk.document(&mut document, &mut left_out, &shipped);
    if has_beside {
        walk.beside(&mut document);
    }
    walk.coder.finish()?;
    let is_on_earth = document.heading.projection().is_ok();
    let mut holds = true;
    for held in document.alternatives.values_mut() {
        holds &= release_unusable_ties(&mut held.marks).is_empty();
    }
    if is_on_earth && holds {
        Ok((document, left_out))
    } else {
        Err(AddressFault::Impossible)
    }
}

/// Whether what was shipped, told anew, is what it was: that this version tells as it always did.
#[cfg(test)]
pub(super) fn tells_what_was_shipped() -> bool {
    let (_, shipped) = lessons::learned();
    let mut sample = shipped.sample.clone();
    let mut coder = lessons::with_words();
    coder.write();
    let mut walk = Walk::new(coder);
    walk.document(&mut sample, &mut [false; 2], &lessons::Shipped::nothing());
    walk.coder.finish().as_deref() == Ok(lessons::SHIPPED)
}
