//! A marked moment of a plan, and what has changed in a figure since.
//!
//! A change is shown only when it is larger than rounding and range: both moments draw the same factors at the same
//! quantiles, so that doubt they share cancels ([`crate::figures::difference`]).

use std::sync::Arc;

use super::first_level::system;
use super::{Study, StudyFault, fault};
use crate::exchange::passed::{document_from_text, document_to_text};
use crate::figures::Evaluation;
use crate::figures::difference::{difference, shown_difference};
use crate::figures::graph::NodeIndex;
use crate::figures::leaf::Cell;
use crate::figures::unit::System;
use crate::passing::passed;
use crate::plan::{AlternativeId, Scope};
use crate::say;

/// A moment of a plan, as it is passed to the study that compares with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Moment {
    /// The document, as text ([`crate::exchange::passed`]).
    document: String,
    alternative: AlternativeId,
    scope: Scope,
}

passed!(struct Moment { document, alternative, scope });

/// What has changed in a figure since the marked moment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangeShown {
    /// In words: `12 homes more`, `1 point less`, `no clear difference`; empty where the numbers are shown the same.
    pub words: String,
    /// Whether it is larger than rounding and range.
    pub is_clear: bool,
}

passed!(struct ChangeShown { words, is_clear });

impl Moment {
    /// The plan as it stands, what is looked at of it included.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        Self {
            document: document_to_text(&study.document),
            alternative: study.alternative,
            scope: study.scope.clone(),
        }
    }
}

impl Study {
    /// Compares with this moment from now on. Cost: the plan measured from nothing, up to three times.
    ///
    /// # Errors
    /// [`StudyFault`] when the moment can not be read or measured; what was compared with before then stays.
    pub fn compare_with(&mut self, moment: &Moment) -> Result<(), StudyFault> {
        let document = document_from_text(&moment.document).ok_or_else(|| fault([say!("study-moment-unreadable")]))?;
        let mut other = Self::open_with(document, Arc::clone(self.graph()))?;
        other.show_alternative(moment.alternative);
        other.set_scope(moment.scope.clone());
        self.marked = Some(other.evaluation().clone());
        Ok(())
    }

    /// What has changed in a figure that is no table since the moment compared with; `None` without one, for a table,
    /// where there is no such figure, and where it has no number at one of the two moments. Cost: the draws of the
    /// figure at both moments.
    pub fn change_since(&mut self, figure: &str) -> Option<ChangeShown> {
        let index = self.graph().index(figure)?;
        let system = system(&self.document);
        let mut before = self.marked.take()?;
        let change = change(&mut before, self.evaluation_mut(), index, system);
        self.marked = Some(before);
        change
    }
}

fn change(before: &mut Evaluation, now: &mut Evaluation, index: NodeIndex, system: System) -> Option<ChangeShown> {
    let node = now.graph().node(index);
    let unit = node.unit;
    if !node.axes.is_empty() {
        return None;
    }
    // Both are of one graph and one seed, and no table.
    let difference = difference(before, now, index, 0, system).ok()?;
    matches!(difference.value, Cell::Number(_)).then(|| ChangeShown {
        words: shown_difference(&difference, &unit, system).unwrap_or_default(),
        is_clear: difference.is_clear,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::projection::GeographicPoint;
    use crate::plan::{Document, Edit, Mark, MarkId};
    use crate::study::protocol::{Answer, Question};

    fn study_with_a_street() -> Study {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        let mut study = Study::open(Document::new("Plan", origin)).unwrap();
        draw(&mut study, 1, [(0, 0), (100_000, 0)]);
        study
    }

    fn draw(study: &mut Study, id: u32, ends: [(i32, i32); 2]) {
        let street = crate::plan::fixtures::street(&ends);
        let edit = Edit::mark(
            study.document(),
            study.alternative(),
            MarkId(id),
            Some(Mark::Street(street)),
        );
        study.apply("draw street", vec![edit]).unwrap();
    }

    #[test]
    fn a_change_since_a_marked_moment_is_told_when_it_is_clear() {
        let mut study = study_with_a_street();
        assert_eq!(study.change_since("streets.length"), None, "nothing is marked");
        let moment = Moment::of(&study);
        let answered = crate::study::jobs::answer(&mut study, &Question::Compare(Box::new(moment)));
        assert_eq!(answered, Answer::Compared(Ok(())));
        let same = study.change_since("streets.length").unwrap();
        assert!(!same.is_clear && same.words.is_empty(), "{same:?}");
        draw(&mut study, 2, [(0, 50_000), (250_000, 50_000)]);
        let longer = study.change_since("streets.length").unwrap();
        assert!(longer.is_clear && longer.words == "822 ft more", "{longer:?}");
        study.undo().unwrap();
        assert!(!study.change_since("streets.length").unwrap().is_clear);
        assert_eq!(study.change_since("no.such.figure"), None);
        assert_eq!(
            study.change_since("homes.by_building_type"),
            None,
            "a table has no one number"
        );
    }

    #[test]
    fn going_to_a_moment_equals_undoing_step_by_step() {
        let mut study = study_with_a_street();
        for id in 2..6 {
            draw(&mut study, id, [(0, 20_000 * id as i32), (100_000, 20_000 * id as i32)]);
        }
        let all = study.document().clone();
        let mut slow = study_with_a_street();
        draw(&mut slow, 2, [(0, 40_000), (100_000, 40_000)]);
        assert!(study.go_to(2).unwrap());
        assert_eq!(study.document(), slow.document());
        assert_eq!(
            study
                .evaluation()
                .graph()
                .index("streets.length")
                .map(|index| study.evaluation().cell(index, 0)),
            slow.evaluation()
                .graph()
                .index("streets.length")
                .map(|index| slow.evaluation().cell(index, 0))
        );
        assert!(!study.go_to(2).unwrap(), "it is there already");
        assert_eq!(study.history().labels().count(), 5);
        assert!(study.go_to(99).unwrap(), "as far as there are steps");
        assert_eq!(study.document(), &all);
    }
}
