//! The center tool: press on a street for a point, drag along it for a stretch, press inside land for a square.

use hobnail_core::plan::{Certainty, Edit, Footprint, Mark, MarkId, Place, PlaceKind, PlanPoint};

use super::near::{self, Foot};
use super::snap::{Reason, Snap};
use super::{Hints, Input, Label, Land, Selection, Sight, Step};
use crate::input::Key;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Nothing is pressed.
    Resting {
        /// What a press would place.
        hover: Option<Target>,
    },
    /// The pointer is down.
    Stretching {
        /// The mark it will be.
        id: MarkId,
        /// What was pressed.
        target: Target,
        /// What stands there now.
        footprint: Footprint,
    },
}

/// What a press places a center on.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// A place on a street.
    Street(Foot),
    /// Enclosed land.
    Land(Land),
}

/// Answers one event.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match (state, input) {
        (State::Resting { .. }, Input::Move(at)) => (
            State::Resting {
                hover: target_at(at.point, sight),
            },
            Vec::new(),
        ),
        (State::Resting { .. }, Input::Down(at)) => {
            let Some(target) = target_at(at.point, sight) else {
                return (State::Resting { hover: None }, Vec::new());
            };
            let id = sight.next_id;
            let footprint = match &target {
                Target::Street(foot) => Footprint::Point(foot.point),
                Target::Land(land) => Footprint::Area(land.outline.clone()),
            };
            let steps = vec![Step::Begin(Label::PlaceCenter), change(id, footprint.clone(), sight)];
            (State::Stretching { id, target, footprint }, steps)
        }
        (State::Stretching { id, target, footprint }, Input::Move(at)) => {
            let stretched = match &target {
                Target::Street(from) => stretch(from, at.point, sight),
                Target::Land(_) => None,
            };
            match stretched.filter(|stretched| *stretched != footprint) {
                Some(footprint) => {
                    let step = change(id, footprint.clone(), sight);
                    (State::Stretching { id, target, footprint }, vec![step])
                }
                None => (State::Stretching { id, target, footprint }, Vec::new()),
            }
        }
        (State::Stretching { id, .. }, Input::Up(_)) => {
            let steps = vec![Step::Select(Some(Selection::Place(id))), Step::Commit];
            (State::Resting { hover: None }, steps)
        }
        (State::Stretching { .. }, Input::Key(Key::Escape) | Input::GiveUp) => {
            (State::Resting { hover: None }, vec![Step::Cancel])
        }
        (State::Resting { .. }, Input::Leave | Input::GiveUp) => (State::Resting { hover: None }, Vec::new()),
        (state, _) => (state, Vec::new()),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting {
            hover: Some(Target::Land(_)),
        } => "Click to make this block the center's square.",
        State::Resting { .. } => {
            "Click on a street for a center; drag along it for a stretch; click a block for a square."
        }
        State::Stretching { .. } => "Drag along the street for a stretch, or let go.",
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Resting {
            hover: Some(Target::Street(foot)),
        } => Hints {
            snap: Some(Snap {
                point: foot.point,
                tie: Some(foot.tie),
                reason: Reason::OnStreet,
            }),
            ..Hints::default()
        },
        State::Resting {
            hover: Some(Target::Land(land)),
        } => Hints {
            outline: land.outline.clone(),
            ..Hints::default()
        },
        State::Stretching {
            footprint: Footprint::Line(line),
            ..
        } => Hints {
            stretch: line.clone(),
            ..Hints::default()
        },
        State::Resting { hover: None } | State::Stretching { .. } => Hints::default(),
    }
}

/// What a press at `from` would place a center on: a street within twice the usual reach, else the land around.
fn target_at(from: PlanPoint, sight: &Sight<'_>) -> Option<Target> {
    let alternative = sight.drawn()?;
    let reach_mm = sight.reach_mm * 2.0;
    near::nearest_street(from, alternative, None, reach_mm)
        .map(|(_, foot)| Target::Street(foot))
        .or_else(|| (sight.land_at)(from).map(Target::Land))
}

/// The stretch of the pressed street from the press to the foot of `to`; a point while the two are within reach.
fn stretch(from: &Foot, to: PlanPoint, sight: &Sight<'_>) -> Option<Footprint> {
    let id = from.tie.street;
    let street = sight.drawn()?.marks.get(&id)?.as_street()?;
    let end = near::foot_on_street(to, id, street)?;
    if (from.point.squared_distance_mm2(end.point) as f64).sqrt() <= sight.reach_mm {
        return Some(Footprint::Point(from.point));
    }
    let place = |foot: &Foot| (foot.tie.segment, foot.tie.along_ppb);
    let (first, last) = if place(from) <= place(&end) {
        (from, &end)
    } else {
        (&end, from)
    };
    let corners = (first.tie.segment + 1..=last.tie.segment)
        .filter_map(|index| street.line.get(index as usize))
        .map(|vertex| vertex.point);
    let mut line: Vec<PlanPoint> = std::iter::once(first.point)
        .chain(corners)
        .chain([last.point])
        .collect();
    line.dedup();
    Some(Footprint::Line(line))
}

fn change(id: MarkId, footprint: Footprint, sight: &Sight<'_>) -> Step {
    let place = Place {
        name: String::new(),
        kind: PlaceKind::Center,
        footprint,
        minimum_size_m2: 0,
        certainty: Certainty::Committed,
        phase: None,
    };
    Step::Change(vec![Edit::Mark {
        alternative: sight.alternative,
        id,
        before: None,
        after: Some(Box::new(Mark::Place(place))),
    }])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{DRAWN, Scene, at, street};

    fn run(scene: &Scene, inputs: &[Input]) -> (State, Vec<Step>) {
        let mut state = State::Resting { hover: None };
        let mut steps = Vec::new();
        for input in inputs {
            let (after, more) = respond(state, *input, &scene.sight());
            state = after;
            steps.extend(more);
        }
        (state, steps)
    }

    fn placed(scene: &Scene, inputs: &[Input]) -> Footprint {
        let (_, steps) = run(scene, inputs);
        let after = scene.after(&steps);
        after
            .mark(DRAWN, MarkId(2))
            .and_then(Mark::as_place)
            .expect("the center")
            .footprint
            .clone()
    }

    fn bent_street() -> Scene {
        Scene::with(&[(1, street(&[(0, 0), (100_000, 0), (100_000, 100_000)]))])
    }

    #[test]
    fn a_click_on_a_street_is_a_point_on_it() {
        let inputs = [Input::Down(at(40_000, 2_000)), Input::Up(at(40_000, 2_000))];
        assert_eq!(
            placed(&bent_street(), &inputs),
            Footprint::Point(PlanPoint::new(40_000, 0))
        );
    }

    #[test]
    fn a_drag_takes_the_stretch_round_the_corner_either_way() {
        let p = PlanPoint::new;
        let along = Footprint::Line(vec![p(60_000, 0), p(100_000, 0), p(100_000, 30_000)]);
        let there = [
            Input::Down(at(60_000, 500)),
            Input::Move(at(101_000, 30_000)),
            Input::Up(at(101_000, 30_000)),
        ];
        let back = [
            Input::Down(at(101_000, 30_000)),
            Input::Move(at(60_000, 500)),
            Input::Up(at(60_000, 500)),
        ];
        assert_eq!(placed(&bent_street(), &there), along);
        assert_eq!(placed(&bent_street(), &back), along);
    }

    #[test]
    fn a_click_inside_land_makes_it_a_square() {
        let p = PlanPoint::new;
        let outline = vec![p(0, 0), p(100_000, 0), p(100_000, 100_000)];
        let scene = bent_street().with_lands(vec![Land {
            outline: outline.clone(),
            use_mark: None,
            land_m2: 4_000,
            sides: Vec::new(),
        }]);
        let inputs = [Input::Down(at(70_000, 30_000)), Input::Up(at(70_000, 30_000))];
        assert_eq!(placed(&scene, &inputs), Footprint::Area(outline));
    }

    #[test]
    fn nothing_is_placed_on_open_land() {
        let (_, steps) = run(
            &bent_street(),
            &[Input::Down(at(-70_000, 30_000)), Input::Up(at(-70_000, 30_000))],
        );
        assert!(steps.is_empty());
    }
}
