//! The tape: lengths from point to point and the area they enclose. It leaves no mark.

use hobnail_core::plan::PlanPoint;

use super::{State, run};
use crate::input::Key;
use crate::tools::drawing::{Quantity, Sentence, sentence};
use crate::tools::guides::{self, Landing};
use crate::tools::{Hints, Input, Sight, Step};

/// A tape that is laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct Tape {
    points: Vec<PlanPoint>,
    hover: Option<Landing>,
    /// Whether its last point is set: the next press begins anew.
    is_done: bool,
}

impl Tape {
    pub(super) fn from(first: PlanPoint) -> Self {
        Self {
            points: vec![first],
            hover: None,
            is_done: false,
        }
    }

    pub(super) fn hints(&self) -> Hints {
        let next = self.hover.as_ref().map(|landing| landing.snap.point);
        let points: Vec<PlanPoint> = self.points.iter().copied().chain(next).collect();
        let mut lines: Vec<[PlanPoint; 2]> = points
            .windows(2)
            .filter_map(|ends| <[PlanPoint; 2]>::try_from(ends).ok())
            .collect();
        lines.extend(self.hover.iter().flat_map(|landing| landing.lines.iter().copied()));
        Hints {
            snap: self.hover.as_ref().map(|landing| landing.snap),
            points: self.points.clone(),
            length: self.points.last().zip(next).and_then(|(from, to)| run(*from, to)),
            lines,
            words: points.last().map(|last| (*last, measured(&points))),
            ..Hints::default()
        }
    }
}

/// Length and area of a line of points, in words.
fn measured(points: &[PlanPoint]) -> Sentence {
    let length_mm: f64 = points
        .windows(2)
        .map(|ends| match ends {
            [a, b] => a.distance_um(*b) as f64 / 1_000.0,
            _ => 0.0,
        })
        .sum();
    let length = Quantity::Length(length_mm);
    if let [first, rest @ ..] = points
        && rest.len() >= 2
    {
        let twice_mm2: i128 = rest
            .windows(2)
            .map(|ends| match ends {
                [a, b] => i128::from(first.cross(*a, *b)),
                _ => 0,
            })
            .sum();
        let area_m2 = twice_mm2.unsigned_abs() as f64 / 2e6;
        return sentence!("tools-tape-area", length = length, area = Quantity::Area(area_m2));
    }
    sentence!("tools-tape-length", length = length)
}

pub(super) fn respond(mut tape: Tape, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let rest = State::Resting { hover: None };
    match input {
        Input::Move(at) if !tape.is_done => {
            tape.hover = Some(guides::land(at, sight.next_id, &tape.points, sight));
        }
        Input::Down(at) if tape.is_done => {
            let first = guides::land(at, sight.next_id, &[], sight).snap.point;
            tape = Tape::from(first);
        }
        Input::Down(at) => {
            let next = guides::land(at, sight.next_id, &tape.points, sight).snap.point;
            tape.hover = None;
            if tape.points.last() == Some(&next) {
                tape.is_done = true;
            } else {
                tape.points.push(next);
            }
        }
        Input::Key(Key::Enter) => {
            let typed = tape.hover.take().filter(|_| sight.typed != guides::Typed::default());
            match typed {
                Some(landing) => tape.points.push(landing.snap.point),
                None => tape.is_done = true,
            }
        }
        Input::Key(Key::Escape | Key::Backspace | Key::Delete) => {
            tape.points.pop();
            tape.is_done = false;
            if tape.points.is_empty() {
                return (rest, Vec::new());
            }
        }
        Input::GiveUp => return (rest, Vec::new()),
        Input::Leave => tape.hover = None,
        Input::Move(_) | Input::Up(_) | Input::Key(_) => {}
    }
    (State::Taping(tape), Vec::new())
}
