//! What the drawing leaves open, in sentences: an unfinished sketch is a normal state, and this says what it lacks. Then
//! the cautions it calls for.

pub mod cautions;

use std::fmt;

use super::Study;
use crate::fabric::lots::lot_type;
use crate::measures::place_sources::closed_in;
use crate::plan::document::UnitSystem;
use crate::plan::{MarkId, PlanPoint};
use crate::say;

/// Something the drawing leaves open, or a caution.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// What it is, in words.
    pub words: String,
    /// Where it is, where it has a place.
    pub at: Option<PlanPoint>,
    /// The mark it is about.
    pub mark: Option<MarkId>,
    /// Whether it is for local codes and licensed practice to decide, rather than for the drawing.
    pub is_caution: bool,
    /// The units its place is told in.
    pub units: UnitSystem,
}

impl fmt::Display for Note {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.words)?;
        let at = self.at.map(|at| at.in_words(self.units));
        let mark = self.mark.map(|mark| say!("study-note-mark", mark = mark.0));
        let parts: Vec<String> = at.into_iter().chain(mark).collect();
        if parts.is_empty() {
            Ok(())
        } else {
            write!(formatter, " ({})", parts.join("; "))
        }
    }
}

impl Study {
    /// What the drawing leaves open, then the [`cautions`] it calls for, each with where it is; the same on the page and
    /// on the command line.
    #[must_use]
    pub fn notes(&self) -> Vec<Note> {
        let mut notes = Vec::new();
        let seen = self.seen();
        let units = seen.settings.units;
        let held = seen.alternatives.get(&self.alternative());
        let mut of_mark = |words: &str, at, mark| {
            notes.push(Note {
                words: words.to_owned(),
                at: Some(at),
                mark: Some(mark),
                is_caution: false,
                units,
            });
        };
        for (id, mark) in held.into_iter().flat_map(|held| &held.marks) {
            let Some(use_mark) = mark.as_use() else { continue };
            let face = self.fabric().face_of_mark.get(id);
            match face.and_then(|face| self.fabric().face(*face)) {
                None => of_mark(say!("study-note-asleep"), use_mark.anchor, *id),
                Some(face) if !face.is_in_site => of_mark(say!("study-note-outside-site"), use_mark.anchor, *id),
                Some(_) => {}
            }
        }
        for (id, at) in closed_in(self.derived.walks.network(), &seen, self.alternative()) {
            of_mark(say!("study-note-closed-in"), at, id);
        }
        for painted in self.painted().iter() {
            let Some(face) = self.fabric().face(painted.face) else {
                continue;
            };
            let is_for_lots = |id| lot_type(&seen, id).is_some_and(|held| held.is_built);
            if painted.laid.lots.is_empty() && painted.land_m2.iter().any(|(id, _)| is_for_lots(*id)) {
                of_mark(say!("study-note-no-lot"), face.anchor, painted.mark);
            }
        }
        let mut of_all = |words| {
            notes.push(Note {
                words,
                at: None,
                mark: None,
                is_caution: false,
                units,
            });
        };
        if seen.site.boundary.is_empty() && !self.fabric().faces.is_empty() {
            of_all(say!("study-note-no-boundary").to_owned());
        }
        if let Err(reason) = self.walk() {
            of_all(say!("study-note-no-walk", reason = reason));
        }
        let rough = self.graph().index("homes.soft");
        let rough = rough.map(|index| self.evaluation_for(index).cell(index, 0));
        if rough.and_then(|cell| cell.number()).is_some_and(|homes| homes > 0.0) {
            of_all(say!("study-note-rough-homes").to_owned());
        }
        notes.extend(cautions::cautions(self));
        notes
    }
}

#[cfg(test)]
mod tests;
