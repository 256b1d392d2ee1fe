//! The street tool: click from point to point. Points snap visibly; crossing another street needs nothing.
//!
//! From the second point on the street is previewed with the pointer as its end, so numbers move with the pointer.
//! Pressing the last point again, or Enter, ends it; Backspace or Escape takes the last point back.

use hobnail_core::plan::street::{Status, Street, StreetOwner, StreetRole};
use hobnail_core::plan::{Edit, Mark, MarkId, PlanPoint};

use super::snap::{self, Reason, Snap};
use super::{Hints, Input, Label, Sight, Step, usual_role};
use crate::input::Key;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// No street is begun.
    Resting {
        /// Where the first point would land.
        hover: Option<Snap>,
    },
    /// A street has at least its first point.
    Drawing {
        /// The mark it will be.
        id: MarkId,
        /// Its points so far; never empty.
        points: Vec<Snap>,
        /// Where the next point would land.
        hover: Option<Snap>,
    },
}

/// Answers one event.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match state {
        State::Resting { hover } => rest(hover, input, sight),
        State::Drawing { id, points, hover } => draw(id, points, hover, input, sight),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting { .. } => "Click where the street begins.",
        State::Drawing { points, .. } if points.len() == 1 => "Click the next point. Escape gives up.",
        State::Drawing { .. } => {
            "Click the next point. Enter, or the last point again, ends the street; Backspace takes a point back."
        }
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Resting { hover } => Hints {
            snap: *hover,
            ..Hints::default()
        },
        State::Drawing { points, hover, .. } => Hints {
            snap: *hover,
            points: points.iter().map(|snap| snap.point).collect(),
            length: points
                .last()
                .zip(*hover)
                .and_then(|(from, to)| run(from.point, to.point)),
            ..Hints::default()
        },
    }
}

fn rest(hover: Option<Snap>, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) => {
            let hover = Some(snap::snap(at.point, None, None, sight));
            (State::Resting { hover }, Vec::new())
        }
        Input::Down(at) => {
            let first = snap::snap(at.point, None, None, sight);
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

fn draw(id: MarkId, mut points: Vec<Snap>, hover: Option<Snap>, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let place = |at: PlanPoint| {
        let own_start = points.first().filter(|_| points.len() >= 3).map(|first| first.point);
        snap::snap(at, Some(id), own_start, sight)
    };
    match input {
        Input::Move(at) => {
            let next = place(at.point);
            let steps = preview(id, &points, Some(next), sight);
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
            let next = place(at.point);
            if points
                .last()
                .is_some_and(|last| is_same_place(last.point, at.point, next, sight))
            {
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
        Input::Key(Key::Enter) => end(id, &points, sight),
        Input::Key(Key::Escape | Key::Backspace | Key::Delete) => {
            points.pop();
            if points.is_empty() {
                return (State::Resting { hover }, vec![Step::Cancel]);
            }
            let steps = preview(id, &points, hover, sight);
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
    Some(Edit::Mark {
        alternative: sight.alternative,
        id,
        before: None,
        after: Some(Box::new(Mark::Street(street))),
    })
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
mod tests {
    use super::*;
    use crate::tools::Selection;
    use crate::tools::fixtures::{DRAWN, Scene, at, street};

    fn drawn(scene: &Scene, inputs: &[Input]) -> (State, Vec<Step>) {
        let mut state = State::Resting { hover: None };
        let mut steps = Vec::new();
        for input in inputs {
            let (after, more) = respond(state, *input, &scene.sight());
            state = after;
            steps.extend(more);
        }
        (state, steps)
    }

    #[test]
    fn two_clicks_and_enter_draw_a_tied_street() {
        let scene = Scene::with(&[(4, street(&[(0, 0), (200_000, 0)]))]);
        let (state, steps) = drawn(
            &scene,
            &[
                Input::Down(at(50_020, 900)),
                Input::Up(at(50_020, 900)),
                Input::Move(at(50_000, 70_000)),
                Input::Down(at(50_040, 80_010)),
                Input::Key(Key::Enter),
            ],
        );
        assert_eq!(state, State::Resting { hover: None });
        assert_eq!(steps.iter().filter(|step| **step == Step::Commit).count(), 1);
        assert!(steps.contains(&Step::Select(Some(Selection::Street(MarkId(5))))));
        let after = scene.after(&steps);
        let drawn = after
            .mark(DRAWN, MarkId(5))
            .and_then(Mark::as_street)
            .expect("the new street");
        assert_eq!(drawn.line[0].point, PlanPoint::new(50_020, 0));
        assert_eq!(
            drawn.line[0].tie.map(|tie| (tie.street, tie.along_ppb)),
            Some((MarkId(4), 250_100_000))
        );
        assert_eq!(
            drawn.line[1].point,
            PlanPoint::new(50_000, 80_000),
            "a free point lands on 0.1 m"
        );
    }

    #[test]
    fn the_pointer_is_part_of_the_preview_but_not_of_the_street() {
        let scene = Scene::with(&[]);
        let begun = [
            Input::Down(at(0, 0)),
            Input::Down(at(50_000, 0)),
            Input::Move(at(50_000, 30_000)),
        ];
        let (_, steps) = drawn(&scene, &begun);
        let shown = scene.after(&steps);
        assert_eq!(
            shown
                .mark(DRAWN, MarkId(0))
                .and_then(Mark::as_street)
                .map(|street| street.line.len()),
            Some(3)
        );
        let ended: Vec<_> = begun.into_iter().chain([Input::Key(Key::Enter)]).collect();
        let (_, steps) = drawn(&scene, &ended);
        let kept = scene.after(&steps);
        assert_eq!(
            kept.mark(DRAWN, MarkId(0))
                .and_then(Mark::as_street)
                .map(|street| street.line.len()),
            Some(2)
        );
    }

    #[test]
    fn pressing_the_last_point_again_ends() {
        let scene = Scene::with(&[]);
        let (state, steps) = drawn(
            &scene,
            &[
                Input::Down(at(0, 0)),
                Input::Down(at(50_000, 0)),
                Input::Down(at(50_300, 200)),
            ],
        );
        assert_eq!(state, State::Resting { hover: None });
        assert!(steps.contains(&Step::Commit));
    }

    #[test]
    fn escape_takes_back_point_by_point_and_then_gives_up() {
        let scene = Scene::with(&[]);
        let (state, steps) = drawn(
            &scene,
            &[
                Input::Down(at(0, 0)),
                Input::Down(at(50_000, 0)),
                Input::Key(Key::Escape),
                Input::Key(Key::Backspace),
            ],
        );
        assert_eq!(state, State::Resting { hover: None });
        assert_eq!(steps.last(), Some(&Step::Cancel));
        assert!(!steps.contains(&Step::Commit));
    }

    #[test]
    fn a_single_point_leaves_nothing_behind() {
        let scene = Scene::with(&[]);
        let (_, steps) = drawn(&scene, &[Input::Down(at(0, 0)), Input::Key(Key::Enter)]);
        assert_eq!(steps.last(), Some(&Step::Cancel));
    }

    #[test]
    fn coming_back_to_the_start_closes_a_loop() {
        let scene = Scene::with(&[]);
        let (state, steps) = drawn(
            &scene,
            &[
                Input::Down(at(0, 0)),
                Input::Down(at(60_000, 0)),
                Input::Down(at(60_000, 60_000)),
                Input::Down(at(500, 400)),
            ],
        );
        assert_eq!(state, State::Resting { hover: None });
        let after = scene.after(&steps);
        let ring = after
            .mark(DRAWN, MarkId(0))
            .and_then(Mark::as_street)
            .expect("the loop");
        assert_eq!(
            ring.line.first().map(|vertex| vertex.point),
            ring.line.last().map(|vertex| vertex.point)
        );
        assert_eq!(ring.line.len(), 4);
    }
}
