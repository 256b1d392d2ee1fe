//! Work that may take longer than a frame, a piece at a time.
//!
//! The same pieces run in the worker one after another, and on the main thread between frames where no worker can start.

use std::collections::VecDeque;

use super::Study;
use super::first_level::system;
use super::protocol::{Answer, Question};
use crate::figures::range::Range;
use crate::say;

/// Questions waiting to be answered, for one revision.
#[derive(Clone, Debug, Default)]
pub struct Jobs {
    revision: u64,
    waiting: VecDeque<Question>,
}

impl Jobs {
    /// Replaces what is waiting by new questions, asked of `study` as it stands.
    pub fn ask(&mut self, study: &Study, questions: Vec<Question>) {
        self.revision = study.revision();
        self.waiting = questions.into();
    }

    /// Whether nothing is waiting.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.waiting.is_empty()
    }

    /// Answers the next question. `None` when nothing is waiting, or when the study has moved on: what was asked is then
    /// dropped.
    pub fn step(&mut self, study: &mut Study) -> Option<(u64, Answer)> {
        if self.revision != study.revision() {
            self.waiting.clear();
        }
        let question = self.waiting.pop_front()?;
        Some((self.revision, answer(study, &question)))
    }
}

/// The answer to one question.
pub fn answer(study: &mut Study, question: &Question) -> Answer {
    match question {
        Question::Range(figure) => range(study, figure),
        Question::Sensitivity(figure) => sensitivity(study, figure),
        // The study that answers takes them too, so that the ranges asked for next are of them.
        Question::Details => match study.work_details() {
            Ok(details) => Answer::Details(Box::new(details.clone())),
            Err(fault) => Answer::NoDetails(fault.to_string()),
        },
        Question::Compare(moment) => Answer::Compared(study.compare_with(moment).map_err(|fault| fault.to_string())),
        Question::Change(figure) => Answer::Change {
            figure: figure.clone(),
            change: study.change_since(figure),
        },
    }
}

fn range(study: &mut Study, figure: &str) -> Answer {
    let system = system(study.document());
    let evaluation = study.evaluation_mut();
    let Some(index) = evaluation.graph().index(figure) else {
        return Answer::Range {
            figure: figure.to_owned(),
            shown: Vec::new(),
            bounds: Vec::new(),
        };
    };
    let cells = 0..evaluation.cell_count(index);
    let ranges: Vec<Range> = cells.map(|cell| evaluation.range(index, cell)).collect();
    let bounds = ranges.iter().map(|range| match range {
        Range::Likely { low, high, .. } => Some((*low, *high)),
        Range::Certain | Range::Unknown { .. } => None,
    });
    let bounds = bounds.collect();
    let shown = evaluation.figure_value_with_range(index, system).content.shown();
    Answer::Range {
        figure: figure.to_owned(),
        shown,
        bounds,
    }
}

fn sensitivity(study: &mut Study, figure: &str) -> Answer {
    let evaluation = study.evaluation_mut();
    let outcome = match evaluation.graph().index(figure) {
        Some(index) => {
            let cell = evaluation.main_cell(index);
            evaluation.sensitivity(index, cell).map_err(|reason| reason.to_string())
        }
        None => Err(say!("study-no-figure", id = figure)),
    };
    let (shares, reason) = match outcome {
        Ok(held) => (
            held.influences
                .iter()
                .map(|one| (one.titles.join(", "), one.share))
                .collect(),
            None,
        ),
        Err(reason) => (Vec::new(), Some(reason)),
    };
    Answer::Sensitivity {
        figure: figure.to_owned(),
        shares,
        reason,
    }
}
