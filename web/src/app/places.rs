//! Where on the drawing something is that a panel speaks of: a note, or the one street behind a number.

use hobnail_core::study::Study;
use hobnail_core::study::notes::Note;

use super::words::sentence_case;
use crate::canvas::scene::Line;

/// Places shown on the drawing while a panel speaks of them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Place {
    /// Points, in meters.
    pub points: Vec<(f64, f64)>,
    /// Lines, in meters.
    pub lines: Vec<Line>,
}

impl Place {
    /// One point.
    #[must_use]
    pub fn point(at: (f64, f64)) -> Self {
        Self {
            points: vec![at],
            lines: Vec::new(),
        }
    }

    /// A point in the middle of all of it; `None` where there is nothing.
    #[must_use]
    pub fn middle(&self) -> Option<(f64, f64)> {
        let all: Vec<(f64, f64)> = self.points.iter().chain(self.lines.iter().flatten()).copied().collect();
        crate::canvas::layers::land::middle(&all)
    }
}

/// A note of the study, as the page lists it.
#[derive(Clone, Debug, PartialEq)]
pub struct NoteShown {
    /// What it says.
    pub words: String,
    /// Where it is, where it has a place.
    pub place: Option<Place>,
}

/// What the drawing leaves open.
#[must_use]
pub fn notes(study: &Study) -> Vec<NoteShown> {
    let shown = |note: Note| NoteShown {
        words: format!("{}.", sentence_case(&note.words)),
        place: note.at.map(|at| Place::point(at.to_m())),
    };
    study.notes().into_iter().map(shown).collect()
}
