//! The street tool: click from point to point. Points snap visibly; crossing another street needs nothing.
//!
//! From the second point on the street is previewed with the pointer as its end, so numbers move with the pointer.
//! Pressing the last point again, or Enter, ends it; Backspace or Escape takes the last point back. A length or bearing
//! that was typed holds for the next point, which Enter then sets.

use hobnail_core::plan::editing::rounding::round_all;
use hobnail_core::plan::street::{Status, Street, StreetOwner, StreetRole};
use hobnail_core::plan::{Edit, Mark, MarkId, PlanPoint, Vertex};
use hobnail_core::say;

use super::drawing::Manner;
use super::guides::{self, Landing, Typed};
use super::snap::{Reason, Snap};
use super::{At, Hints, Input, Label, Sight, Step, usual_role};
use crate::input::Key;

mod blocks;
mod tape;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// No street is begun.
    Resting {
        /// Where the first point would land.
        hover: Option<Landing>,
    },
    /// A street has at least its first point.
    Drawing {
        /// The mark it will be.
        id: MarkId,
        /// Its points so far; never empty.
        points: Vec<Snap>,
        /// Where the next point would land.
        hover: Option<Landing>,
    },
    /// A grid of blocks has its first corner.
    Spanning(blocks::Spanned),
    /// A tape is laid out.
    Taping(tape::Tape),
}

impl State {
    /// Whether a gesture is open.
    #[must_use]
    pub const fn is_busy(&self) -> bool {
        matches!(self, Self::Drawing { .. } | Self::Spanning(_))
    }

    /// Whether what is previewed has a point more than those that are set.
    #[must_use]
    pub const fn shows_hover(&self) -> bool {
        matches!(self, Self::Drawing { hover: Some(_), .. } | Self::Spanning(_))
    }

    /// Whether the next point can be given by a typed length or bearing.
    #[must_use]
    pub const fn takes_length(&self) -> bool {
        matches!(self, Self::Drawing { .. } | Self::Taping(_))
    }
}

/// Answers one event.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match state {
        State::Resting { hover } => rest(hover, input, sight),
        State::Drawing { id, points, hover } => draw(id, points, hover, input, sight),
        State::Spanning(spanned) => blocks::respond(spanned, input, sight),
        State::Taping(tape) => tape::respond(tape, input, sight),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting { .. } => say!("tools-street-first"),
        State::Spanning(_) => say!("tools-street-opposite"),
        State::Taping(_) => say!("tools-tape-next"),
        State::Drawing { points, .. } if points.len() == 1 => say!("tools-street-next"),
        State::Drawing { .. } => say!("tools-street-more"),
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Resting { hover } => Hints {
            snap: hover.as_ref().map(|landing| landing.snap),
            lines: lines(hover.as_ref()),
            ..Hints::default()
        },
        State::Drawing { points, hover, .. } => Hints {
            snap: hover.as_ref().map(|landing| landing.snap),
            points: points.iter().map(|snap| snap.point).collect(),
            length: points
                .last()
                .zip(hover.as_ref())
                .and_then(|(from, to)| run(from.point, to.snap.point)),
            lines: lines(hover.as_ref()),
            ..Hints::default()
        },
        State::Spanning(spanned) => spanned.hints(),
        State::Taping(tape) => tape.hints(),
    }
}

fn lines(hover: Option<&Landing>) -> Vec<[PlanPoint; 2]> {
    hover.map_or_else(Vec::new, |landing| landing.lines.clone())
}

/// Where the first point lands of what is drawn in the chosen manner.
fn first_place(at: At, sight: &Sight<'_>) -> Landing {
    if sight.choices.drawing.manner == Manner::Blocks {
        blocks::first_corner(at, sight)
    } else {
        guides::land(at, sight.next_id, &[], sight)
    }
}

fn rest(hover: Option<Landing>, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) => {
            let hover = Some(first_place(at, sight));
            (State::Resting { hover }, Vec::new())
        }
        Input::Down(at) => {
            let first = first_place(at, sight).snap;
            match sight.choices.drawing.manner {
                Manner::Straight | Manner::Curve => {}
                Manner::Blocks => return blocks::begin(first, sight),
                Manner::Tape => {
                    let state = State::Taping(tape::Tape::from(first.point));
                    return (state, vec![Step::Select(None)]);
                }
            }
            let state = State::Drawing {
                id: sight.next_id,
                points: vec![first],
                hover: None,
            };
            (state, vec![Step::Select(None), Step::Begin(Label::DrawStreet)])
        }
        Input::Leave | Input::GiveUp => (State::Resting { hover: None }, Vec::new()),
        Input::Up(_) | Input::Key(_) => (State::Resting { hover }, Vec::new()),
    }
}

fn draw(
    id: MarkId,
    mut points: Vec<Snap>,
    hover: Option<Landing>,
    input: Input,
    sight: &Sight<'_>,
) -> (State, Vec<Step>) {
    let is_typed = sight.typed != Typed::default();
    let place = |at: At| {
        let trace: Vec<PlanPoint> = points.iter().map(|snap| snap.point).collect();
        guides::land(at, id, &trace, sight)
    };
    match input {
        Input::Move(at) => {
            let next = place(at);
            let steps = preview(id, &points, Some(next.snap), sight);
            (
                State::Drawing {
                    id,
                    points,
                    hover: Some(next),
                },
                steps,
            )
        }
        Input::Down(at) => {
            let next = place(at).snap;
            let is_again = |last: &Snap| !is_typed && is_same_place(last.point, at.point, next, sight);
            if points.last().is_some_and(is_again) {
                return end(id, &points, sight);
            }
            points.push(next);
            if next.reason == Reason::OwnStart {
                return end(id, &points, sight);
            }
            let steps = preview(id, &points, None, sight);
            (
                State::Drawing {
                    id,
                    points,
                    hover: None,
                },
                steps,
            )
        }
        Input::Key(Key::Enter) if is_typed && hover.is_some() => {
            points.extend(hover.map(|landing| landing.snap));
            let steps = preview(id, &points, None, sight);
            let hover = None;
            (State::Drawing { id, points, hover }, steps)
        }
        Input::Key(Key::Enter) => end(id, &points, sight),
        Input::Key(Key::Escape | Key::Backspace | Key::Delete) => {
            points.pop();
            if points.is_empty() {
                return (State::Resting { hover }, vec![Step::Cancel]);
            }
            let steps = preview(id, &points, None, sight);
            let hover = None;
            (State::Drawing { id, points, hover }, steps)
        }
        Input::GiveUp => (State::Resting { hover: None }, vec![Step::Cancel]),
        Input::Leave => {
            let steps = preview(id, &points, None, sight);
            (
                State::Drawing {
                    id,
                    points,
                    hover: None,
                },
                steps,
            )
        }
        Input::Up(_) | Input::Key(_) => (State::Drawing { id, points, hover }, Vec::new()),
    }
}

/// Whether a press at `at`, landing at `next`, means the last point again.
fn is_same_place(last: PlanPoint, at: PlanPoint, next: Snap, sight: &Sight<'_>) -> bool {
    last == next.point || (last.squared_distance_mm2(at) as f64).sqrt() <= sight.reach_mm / 2.0
}

fn end(id: MarkId, points: &[Snap], sight: &Sight<'_>) -> (State, Vec<Step>) {
    let rest = State::Resting { hover: None };
    match edit(id, points, sight) {
        Some(edit) => {
            let steps = vec![
                Step::Change(vec![edit]),
                Step::Select(Some(super::Selection::Street(id))),
                Step::Commit,
            ];
            (rest, steps)
        }
        None => (rest, vec![Step::Cancel]),
    }
}

/// The preview with `hover` as the end; without a second point there is nothing to show yet.
fn preview(id: MarkId, points: &[Snap], hover: Option<Snap>, sight: &Sight<'_>) -> Vec<Step> {
    let with_hover: Vec<Snap> = points.iter().copied().chain(hover).collect();
    vec![Step::Change(edit(id, &with_hover, sight).into_iter().collect())]
}

/// The edit that draws the street; `None` for fewer than two different points.
fn edit(id: MarkId, points: &[Snap], sight: &Sight<'_>) -> Option<Edit> {
    let mut line: Vec<_> = points.iter().map(|snap| snap.vertex()).collect();
    line.dedup_by_key(|vertex| vertex.point);
    if line.len() < 2 {
        return None;
    }
    if sight.choices.drawing.manner == Manner::Curve {
        round_all(&mut line);
    }
    Some(new_street(id, line, sight))
}

/// The edit that draws a street of the chosen section along a line.
fn new_street(id: MarkId, line: Vec<Vertex>, sight: &Sight<'_>) -> Edit {
    let section = sight.choices.section;
    let role = sight
        .document
        .street_sections
        .get(&section)
        .map_or(StreetRole::NeighborhoodStreet, usual_role);
    let street = Street {
        line,
        section,
        name: String::new(),
        role,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    };
    Edit::Mark {
        alternative: sight.alternative,
        id,
        before: None,
        after: Some(Box::new(Mark::Street(street))),
    }
}

/// The length of a run and the place beside its middle; `None` when it has none yet.
fn run(from: PlanPoint, to: PlanPoint) -> Option<(PlanPoint, f64)> {
    let middle = PlanPoint::new(
        (i64::from(from.x_mm) + i64::from(to.x_mm)).div_euclid(2) as i32,
        (i64::from(from.y_mm) + i64::from(to.y_mm)).div_euclid(2) as i32,
    );
    (from != to).then(|| (middle, from.distance_um(to) as f64 / 1000.0))
}

#[cfg(test)]
mod tests;
