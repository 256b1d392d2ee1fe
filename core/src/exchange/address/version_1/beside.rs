//! What fences and property lines ask of the lots beside them: told behind all else, and only where any asks something, so
//! that plans without are told as they always were. Their addresses begin with another letter.

use crate::plan::document::Document;
use crate::plan::land::Beside;
use crate::plan::mark::Mark;

use super::walk::{Walk, fields};

/// Whether any line of a document asks something of the lots beside it.
pub(in super::super) fn has_beside(document: &Document) -> bool {
    let mut marks = document.alternatives.values().flat_map(|held| held.marks.values());
    marks.any(|mark| mark.beside().is_some_and(Option::is_some))
}

impl Walk {
    /// Of every line that may ask something, in the order of alternatives and ids, whether it does and what.
    pub(super) fn beside(&mut self, document: &mut Document) {
        let coder = &mut self.coder;
        let mut like = Beside::default();
        let mut has_before = 0;
        let marks = document
            .alternatives
            .values_mut()
            .flat_map(|held| held.marks.values_mut());
        for held in marks.filter_map(Mark::beside_mut) {
            if coder.has_fault() {
                return;
            }
            let has = coder.flag(fields::BESIDE, &[has_before], held.is_some());
            has_before = has.into();
            if !has {
                *held = None;
                continue;
            }
            let mut beside = held.unwrap_or_default();
            coder.quantity(fields::BESIDE + 1, &[like.reach_mm.into()], &mut beside.reach_mm);
            let stories = like.stories.map_or(-1, i64::from);
            coder.perhaps(fields::BESIDE + 5, &[stories], &mut beside.stories);
            let clear = like.clear_mm.map_or(-1, i64::from);
            coder.perhaps(fields::BESIDE + 8, &[clear], &mut beside.clear_mm);
            like = beside;
            *held = Some(beside);
        }
    }
}
