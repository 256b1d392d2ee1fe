//! The place tool: what is a point, a stretch of street or a square is pressed or dragged; what has land of its own or
//! is a line is drawn corner by corner ([`super::corners`]).
//!
//! Places stand on a street where one is near, else on the block around where it may be a center's square, else where
//! they are pressed. A site access stands on the boundary, a crossing on a barrier or street, a note anywhere.

use hobnail_core::plan::{Edit, Footprint, Mark, MarkId, PlaceKind, PlanPoint};
use hobnail_core::say;

use super::near::{self, Foot};
use super::snap::{self, Reason, Snap};
use super::{At, Hints, Input, Label, Land, Selection, Sight, Step, corners, select, shape};
use crate::input::Key;

/// The largest block that a press makes a center's square: 4 ha, about ten acres, within the middles of its streets. The
/// commons of old towns are hardly larger (common practice, no source). With less, large greens would have to be drawn
/// corner by corner; with more, a press on land that waits for its streets would take all of it.
const LARGEST_SQUARE_M2: f64 = 40_000.0;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Nothing is pressed.
    Resting {
        /// What a press would place something on.
        hover: Option<Target>,
        /// What the pointer is told to look for.
        awaits: &'static str,
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
    /// An outline or line is drawn, or would be.
    Corners(corners::State),
}

/// What a press places something on.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// A place on a street.
    Street(Foot),
    /// Enclosed land.
    Land(Land),
    /// A place of its own.
    Spot(Snap),
}

impl State {
    /// Nothing begun.
    #[must_use]
    pub fn resting() -> Self {
        Self::Resting {
            hover: None,
            awaits: say!("tools-center"),
        }
    }

    /// Whether a gesture is open.
    #[must_use]
    pub const fn is_busy(&self) -> bool {
        match self {
            Self::Resting { .. } => false,
            Self::Stretching { .. } => true,
            Self::Corners(state) => state.is_busy(),
        }
    }
}

/// Answers one event.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let by_corners = sight.drafts.is_by_corners();
    match (state, input) {
        (State::Corners(state), input) if by_corners || state.is_busy() => {
            let (state, steps) = corners::respond(state, input, sight, Some(&sight.drafts.place));
            (State::Corners(state), steps)
        }
        (State::Resting { .. }, input) if by_corners => {
            respond(State::Corners(corners::State::resting()), input, sight)
        }
        (State::Corners(_) | State::Resting { .. }, Input::Move(at)) => {
            (resting(sight, target_at(at, sight)), Vec::new())
        }
        (State::Corners(_) | State::Resting { .. }, Input::Down(at)) => {
            let Some(target) = target_at(at, sight) else {
                return (resting(sight, None), Vec::new());
            };
            let id = sight.next_id;
            let footprint = match &target {
                Target::Street(foot) => Footprint::Point(foot.point),
                Target::Land(land) => Footprint::Area(land.outline.clone()),
                Target::Spot(snap) => Footprint::Point(snap.point),
            };
            let steps = vec![
                Step::Select(None),
                Step::Begin(Label::Draw(sight.drafts.place.kind())),
                change(id, footprint.clone(), sight),
            ];
            (State::Stretching { id, target, footprint }, steps)
        }
        (State::Stretching { id, target, footprint }, Input::Move(at)) => {
            let stretched = match &target {
                Target::Street(from) => stretch(from, at.point, sight),
                Target::Land(_) => None,
                Target::Spot(_) => match target_at(at, sight) {
                    Some(Target::Spot(snap)) => Some(Footprint::Point(snap.point)),
                    _ => None,
                },
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
            (resting(sight, None), steps)
        }
        (State::Stretching { .. }, Input::Key(Key::Escape) | Input::GiveUp) => {
            (resting(sight, None), vec![Step::Cancel])
        }
        (State::Corners(_) | State::Resting { .. }, Input::Key(Key::Delete | Key::Backspace | Key::Escape)) => {
            let (_, steps) = select::respond(select::State::Resting, input, sight);
            (resting(sight, None), steps)
        }
        (State::Corners(_) | State::Resting { .. }, Input::Leave | Input::GiveUp) => (resting(sight, None), Vec::new()),
        (state, _) => (state, Vec::new()),
    }
}

fn resting(sight: &Sight<'_>, hover: Option<Target>) -> State {
    let awaits = match (&sight.drafts.place, &hover) {
        (Mark::Place(_), Some(Target::Land(_))) => say!("tools-square"),
        (Mark::Place(place), _) if place.kind == PlaceKind::Center => say!("tools-center"),
        (Mark::SiteAccess(_), _) if sight.document.site.boundary.is_empty() => say!("tools-access-no-site"),
        (Mark::SiteAccess(_), _) => say!("tools-access"),
        (Mark::Crossing(_), _) => say!("tools-crossing"),
        (Mark::Note(_), _) => say!("tools-note"),
        _ => say!("tools-place-first"),
    };
    State::Resting { hover, awaits }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting { awaits, .. } => awaits,
        State::Stretching { .. } => say!("tools-stretch"),
        State::Corners(state) => corners::awaits(state),
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Corners(state) => corners::hints(state),
        State::Resting {
            hover: Some(Target::Street(foot)),
            ..
        } => Hints {
            snap: Some(Snap {
                point: foot.point,
                tie: Some(foot.tie),
                reason: Reason::OnStreet,
            }),
            ..Hints::default()
        },
        State::Resting {
            hover: Some(Target::Spot(snap)),
            ..
        } => Hints {
            snap: Some(*snap),
            ..Hints::default()
        },
        State::Resting {
            hover: Some(Target::Land(land)),
            ..
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
        State::Stretching {
            footprint: Footprint::Area(outline),
            ..
        } => Hints {
            outline: outline.clone(),
            ..Hints::default()
        },
        State::Stretching {
            footprint: Footprint::Point(point),
            ..
        } => Hints {
            points: vec![*point],
            ..Hints::default()
        },
        State::Resting { hover: None, .. } => Hints::default(),
    }
}

/// What a press would place the draft on; `None` where it can not stand there. With snapping off, or Alt held, what may
/// stand anywhere stands where it is put.
fn target_at(at: At, sight: &Sight<'_>) -> Option<Target> {
    let from = at.point;
    let alternative = sight.drawn()?;
    let reach_mm = sight.reach_mm * 2.0;
    let spot = |point: PlanPoint, reason: Reason| {
        Some(Target::Spot(Snap {
            point,
            tie: None,
            reason,
        }))
    };
    let near_enough = |found: Option<(PlanPoint, f64)>| found.filter(|(_, mm)| *mm <= reach_mm).map(|(at, _)| at);
    let street = near::nearest_street(from, alternative, None, reach_mm);
    match &sight.drafts.place {
        Mark::SiteAccess(_) => {
            let boundary = Footprint::Area(sight.document.site.boundary.clone());
            match met_by_street(from, &boundary, sight, reach_mm) {
                Some(point) => spot(point, Reason::Intersection),
                None => spot(
                    near_enough(near::foot_on_outline(from, boundary.points()))?,
                    Reason::SiteBoundary,
                ),
            }
        }
        Mark::Crossing(_) => {
            let barriers = alternative.marks.values().filter_map(|mark| match mark {
                Mark::Barrier(_) => shape::of(mark),
                _ => None,
            });
            let barriers: Vec<Footprint> = barriers.collect();
            let met = barriers
                .iter()
                .find_map(|barrier| met_by_street(from, barrier, sight, reach_mm));
            let on_barrier = || {
                barriers
                    .iter()
                    .find_map(|barrier| near_enough(near::foot_on_line(from, barrier.points())))
            };
            match (met, street) {
                (Some(point), _) => spot(point, Reason::Intersection),
                (None, Some((_, foot))) => spot(foot.point, Reason::OnStreet),
                (None, None) => spot(on_barrier()?, Reason::AreaEdge),
            }
        }
        Mark::Note(_) => Some(Target::Spot(snap::on_grid(from))),
        draft => {
            let takes_land = matches!(draft, Mark::Place(place) if place.kind == PlaceKind::Center);
            let land = || (sight.land_at)(from).filter(|land| takes_land && may_be_square(land));
            let land = || land().map(Target::Land);
            let is_free = sight.is_free(at);
            let on_street = street.filter(|_| !is_free);
            let on_street = on_street.map(|(_, foot)| Target::Street(foot));
            on_street.or_else(land).or_else(|| {
                Some(Target::Spot(if is_free {
                    snap::free(from)
                } else {
                    snap::on_grid(from)
                }))
            })
        }
    }
}

/// Whether land may become a center's square by one press: a block among streets, of a size that a square may have.
fn may_be_square(land: &Land) -> bool {
    land.is_among_streets && shape::area_m2(&land.outline) <= LARGEST_SQUARE_M2
}

/// The nearest place within reach where a street meets a line or outline.
fn met_by_street(from: PlanPoint, shape: &Footprint, sight: &Sight<'_>, reach_mm: f64) -> Option<PlanPoint> {
    let points = shape.points();
    let closing = points.first().filter(|_| matches!(shape, Footprint::Area(_)));
    let edges = points.iter().zip(points.iter().skip(1).chain(closing));
    let edges: Vec<_> = edges
        .filter(|(a, b)| near::foot_on_segment(from, **a, **b).2 <= reach_mm)
        .collect();
    let mut best = None;
    let mut least_mm = reach_mm;
    for (_, street) in near::streets(sight.drawn()?).filter(|_| !edges.is_empty()) {
        for ends in street.line.windows(2) {
            let [c, d] = ends else { continue };
            for (a, b) in &edges {
                let met = near::crossing(**a, **b, c.point, d.point).map(|(_, point)| point);
                let away = met.map(|point| (from.squared_distance_mm2(point) as f64).sqrt());
                if away.is_some_and(|away| away <= least_mm) {
                    (best, least_mm) = (met, away.unwrap_or(least_mm));
                }
            }
        }
    }
    best
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
    Step::Change(vec![Edit::Mark {
        alternative: sight.alternative,
        id,
        before: None,
        after: Some(Box::new(shape::laid(sight.drafts.place.clone(), footprint))),
    }])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::drafts;
    use crate::tools::fixtures::{DRAWN, Scene, at, street};

    fn run(scene: &Scene, inputs: &[Input]) -> (State, Vec<Step>) {
        let mut state = State::resting();
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
    fn with_snapping_off_a_place_stands_beside_the_street() {
        let mut scene = bent_street();
        scene.choices.drawing.snaps = false;
        let inputs = [Input::Down(at(40_000, 2_000)), Input::Up(at(40_000, 2_000))];
        let stands = Footprint::Point(PlanPoint::new(40_000, 2_000));
        assert_eq!(placed(&scene, &inputs), stands);
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
    fn a_click_inside_a_block_of_a_squares_size_makes_it_a_square() {
        let p = PlanPoint::new;
        let in_land = |side_mm: i32, is_among_streets: bool| {
            let outline = vec![p(0, 0), p(side_mm, 0), p(side_mm, side_mm)];
            let scene = bent_street().with_lands(vec![Land {
                outline: outline.clone(),
                use_mark: None,
                land_m2: 4_000,
                sides: Vec::new(),
                is_among_streets,
            }]);
            let inputs = [Input::Down(at(70_000, 30_000)), Input::Up(at(70_000, 30_000))];
            (placed(&scene, &inputs), Footprint::Area(outline))
        };
        let stands = Footprint::Point(p(70_000, 30_000));
        let (footprint, whole) = in_land(100_000, true);
        assert_eq!(footprint, whole);
        assert_eq!(in_land(100_000, false).0, stands, "the site's edge encloses no square");
        let (footprint, whole) = in_land(282_000, true);
        assert_eq!(footprint, whole, "3.98 ha");
        assert_eq!(in_land(284_000, true).0, stands, "4.03 ha are no square");
    }

    #[test]
    fn a_click_on_open_land_is_a_point_there() {
        let inputs = [Input::Down(at(-70_010, 30_000)), Input::Up(at(-70_010, 30_000))];
        assert_eq!(
            placed(&bent_street(), &inputs),
            Footprint::Point(PlanPoint::new(-70_000, 30_000))
        );
    }

    fn mark_placed(scene: &Scene, x: i32, y: i32) -> Option<Mark> {
        let (_, steps) = run(scene, &[Input::Down(at(x, y)), Input::Up(at(x, y))]);
        scene.after(&steps).mark(DRAWN, scene.document.next_mark_id()).cloned()
    }

    #[test]
    fn an_access_stands_on_the_boundary_where_a_street_crosses_it() {
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (0, 600_000)]))]);
        scene.drafts.place = drafts::place(drafts::ACCESS);
        let at_of = |mark: Option<Mark>| shape::of(&mark.expect("an access"));
        let point = |x, y| Some(Footprint::Point(PlanPoint::new(x, y)));
        assert_eq!(at_of(mark_placed(&scene, 2_500, 498_000)), point(0, 500_000));
        assert_eq!(at_of(mark_placed(&scene, 90_000, 498_000)), point(90_000, 500_000));
        assert_eq!(mark_placed(&scene, 90_000, 300_000), None, "not within the site");
    }

    #[test]
    fn a_barrier_is_drawn_by_corners_and_a_crossing_opens_it_at_the_street() {
        let mut scene = bent_street();
        scene.drafts.place = drafts::place(drafts::BARRIER);
        let inputs = [
            Input::Down(at(50_000, -40_000)),
            Input::Up(at(50_000, -40_000)),
            Input::Down(at(50_000, 40_000)),
            Input::Up(at(50_000, 40_000)),
            Input::Key(Key::Enter),
        ];
        let (_, steps) = run(&scene, &inputs);
        scene.document = scene.after(&steps);
        let line = [(50_000, -40_000), (50_000, 40_000)].map(|(x, y)| PlanPoint::new(x, y));
        let barrier = scene.document.mark(DRAWN, MarkId(2)).and_then(shape::of);
        assert_eq!(barrier, Some(Footprint::Line(line.to_vec())));
        scene.drafts.place = drafts::place(drafts::CROSSING);
        let crossing = mark_placed(&scene, 51_000, 1_500).as_ref().and_then(shape::of);
        assert_eq!(crossing, Some(Footprint::Point(PlanPoint::new(50_000, 0))));
    }

    #[test]
    fn what_was_pressed_is_given_up() {
        let (state, steps) = run(&bent_street(), &[Input::Down(at(70_000, 30_000)), Input::GiveUp]);
        assert!(!state.is_busy());
        assert_eq!(steps.last(), Some(&Step::Cancel));
    }
}
