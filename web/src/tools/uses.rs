//! The use tool: paint enclosed land, or one side of it, with a building type. Dragging paints all it sweeps over, as
//! one step of the history.

use hobnail_core::order::OrderedMap;
use hobnail_core::say;

use hobnail_core::plan::land::{Fronting, Portion};
use hobnail_core::plan::{BuildingTypeId, Edit, FloorUse, Mark, MarkId, PlanPoint, SideUse, UseMark};

use super::near;
use super::{Brush, Hints, Input, Label, Land, LandSide, Sight, Step};
use crate::input::Key;

/// All of a face's land, in the parts a [`Portion`] counts in.
const WHOLE_PPM: u32 = 1_000_000;

/// How far beyond the edge of the right-of-way a press still means that side, in millimeters: about half a front yard
/// and a room.
const SIDE_DEPTH_MM: f64 = 12_000.0;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Nothing is painted yet.
    Resting {
        /// What a press would paint.
        hover: Option<Stroke>,
    },
    /// The pointer is down.
    Painting {
        /// Marks painted since, each as it stood before and as it is now.
        painted: OrderedMap<MarkId, (Option<Mark>, Option<Mark>)>,
        /// The least id for a new mark.
        next_id: MarkId,
        /// What is under the pointer.
        hover: Option<Stroke>,
    },
}

/// What a press paints.
#[derive(Clone, Debug, PartialEq)]
pub enum Stroke {
    /// All of the land.
    Whole(Land),
    /// The side of it along one street.
    Side {
        /// The land.
        land: Land,
        /// Which of its sides.
        side: usize,
    },
}

impl Stroke {
    const fn land(&self) -> &Land {
        match self {
            Self::Whole(land) | Self::Side { land, .. } => land,
        }
    }
}

/// Answers one event.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match (state, input) {
        (State::Resting { .. }, Input::Move(at)) => {
            let hover = stroke_at(at.point, at.modifiers.alt, sight);
            (State::Resting { hover }, Vec::new())
        }
        (State::Resting { .. }, Input::Down(at)) => {
            let Some(stroke) = stroke_at(at.point, at.modifiers.alt, sight) else {
                return (State::Resting { hover: None }, Vec::new());
            };
            let (painted, next_id) = paint(OrderedMap::new(), sight.next_id, &stroke, at.point, sight);
            let label = match sight.choices.building_type {
                Some(_) => Label::PaintUse,
                None => Label::ClearUse,
            };
            let steps = vec![Step::Select(None), Step::Begin(label), change(&painted, sight)];
            (
                State::Painting {
                    painted,
                    next_id,
                    hover: Some(stroke),
                },
                steps,
            )
        }
        (
            State::Painting {
                painted,
                next_id,
                hover,
            },
            Input::Move(at),
        ) => {
            let stroke = stroke_at(at.point, at.modifiers.alt, sight);
            match stroke {
                Some(stroke) if hover.as_ref() != Some(&stroke) => {
                    let (painted, next_id) = paint(painted, next_id, &stroke, at.point, sight);
                    let step = change(&painted, sight);
                    (
                        State::Painting {
                            painted,
                            next_id,
                            hover: Some(stroke),
                        },
                        vec![step],
                    )
                }
                hover => (
                    State::Painting {
                        painted,
                        next_id,
                        hover,
                    },
                    Vec::new(),
                ),
            }
        }
        (State::Painting { hover, .. }, Input::Up(_)) => (State::Resting { hover }, vec![Step::Commit]),
        (State::Painting { hover, .. }, Input::Key(Key::Escape) | Input::GiveUp) => {
            (State::Resting { hover }, vec![Step::Cancel])
        }
        (State::Resting { .. }, Input::Leave | Input::GiveUp) => (State::Resting { hover: None }, Vec::new()),
        (state, _) => (state, Vec::new()),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Painting { .. } => say!("tools-use-painting"),
        State::Resting {
            hover: Some(Stroke::Side { .. }),
        } => say!("tools-use-side"),
        State::Resting {
            hover: Some(Stroke::Whole(_)),
        } => say!("tools-use-block"),
        State::Resting { hover: None } => say!("tools-use-resting"),
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    let (State::Resting { hover } | State::Painting { hover, .. }) = state;
    match hover {
        None => Hints::default(),
        Some(Stroke::Whole(land)) => Hints {
            outline: land.outline.clone(),
            ..Hints::default()
        },
        Some(Stroke::Side { land, side }) => Hints {
            side: land
                .sides
                .get(*side)
                .map(|side| (side.run.clone(), side.half_width_mm / 1000.0)),
            ..Hints::default()
        },
    }
}

/// What a press at `from` paints; `None` on open land.
#[must_use]
pub fn stroke_at(from: PlanPoint, whole: bool, sight: &Sight<'_>) -> Option<Stroke> {
    let land = (sight.land_at)(from)?;
    let side = match sight.choices.brush {
        Brush::Whole => None,
        Brush::Side => side_at(from, f64::INFINITY, &land),
        Brush::Nearest if whole => None,
        Brush::Nearest => side_at(from, SIDE_DEPTH_MM, &land),
    };
    Some(side.unwrap_or(Stroke::Whole(land)))
}

fn side_at(from: PlanPoint, depth_mm: f64, land: &Land) -> Option<Stroke> {
    let nearest = (0..land.sides.len())
        .filter_map(|side| Some((side, distance_mm(from, land.sides.get(side)?))))
        .filter(|(side, distance_mm)| {
            let half_width_mm = land.sides.get(*side).map_or(0.0, |side| side.half_width_mm);
            *distance_mm <= half_width_mm + depth_mm
        })
        .min_by(|one, other| one.1.total_cmp(&other.1))?;
    Some(Stroke::Side {
        land: land.clone(),
        side: nearest.0,
    })
}

fn distance_mm(from: PlanPoint, side: &LandSide) -> f64 {
    nearest_on(from, side).map_or(f64::INFINITY, |(_, distance_mm)| distance_mm)
}

fn nearest_on(from: PlanPoint, side: &LandSide) -> Option<(PlanPoint, f64)> {
    side.run
        .windows(2)
        .filter_map(|ends| match ends {
            [a, b] => {
                let (_, point, distance_mm) = near::foot_on_segment(from, *a, *b);
                Some((point, distance_mm))
            }
            _ => None,
        })
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

/// Which side of the land an entry of a mark speaks of: the nearest to its point along that hand of that street.
fn spoken_of(said: &SideUse, land: &Land) -> Option<usize> {
    (0..land.sides.len())
        .filter_map(|index| land.sides.get(index).map(|side| (index, side)))
        .filter(|(_, side)| side.street == said.street && side.hand == said.hand)
        .map(|(index, side)| (index, distance_mm(said.at, side)))
        .min_by(|one, other| one.1.total_cmp(&other.1))
        .map(|(index, _)| index)
}

type Painted = OrderedMap<MarkId, (Option<Mark>, Option<Mark>)>;

/// Adds what `stroke` paints at `at` to what is painted already.
fn paint(
    mut painted: Painted,
    next_id: MarkId,
    stroke: &Stroke,
    at: PlanPoint,
    sight: &Sight<'_>,
) -> (Painted, MarkId) {
    let found = stroke.land().use_mark;
    let id = found.unwrap_or(next_id);
    let next_id = if found.is_none() {
        MarkId(next_id.0.saturating_add(1))
    } else {
        next_id
    };
    let held = found.and_then(|id| sight.document.mark(sight.alternative, id)).cloned();
    let entry = painted.entry(id).or_insert_with(|| (held.clone(), held));
    let now = entry.1.as_ref().and_then(Mark::as_use);
    entry.1 = painted_use(now, stroke, at, sight).map(Mark::Use);
    (painted, next_id)
}

/// The use mark after a stroke; `None` where nothing is left of it.
fn painted_use(now: Option<&UseMark>, stroke: &Stroke, at: PlanPoint, sight: &Sight<'_>) -> Option<UseMark> {
    let chosen = sight.choices.building_type;
    let land_m2 = stroke.land().land_m2;
    let fresh = || UseMark {
        anchor: at,
        program: Vec::new(),
        land_m2,
        sides: Vec::new(),
        phase: None,
    };
    let mut after = now.cloned().unwrap_or_else(fresh);
    match stroke {
        Stroke::Whole(_) => {
            let portion = |building_type| Portion {
                building_type,
                share_ppm: WHOLE_PPM,
            };
            after.program = vec![portion(chosen?)];
            after.sides.clear();
        }
        Stroke::Side { land, side } => {
            let painted = land.sides.get(*side)?;
            after.sides.retain(|said| spoken_of(said, land) != Some(*side));
            if let Some(building_type) = chosen {
                after.sides.push(SideUse {
                    street: painted.street,
                    hand: painted.hand,
                    at: nearest_on(at, painted).map_or(at, |(point, _)| point),
                    fronting: Fronting::Front,
                    building_type: Some(building_type),
                    shopfront: opens_as_shop(building_type, sight),
                    stories: None,
                    setback_mm: None,
                });
            }
        }
    }
    (!after.program.is_empty() || !after.sides.is_empty()).then_some(after)
}

/// Whether the building type's ground story holds shops.
fn opens_as_shop(building_type: BuildingTypeId, sight: &Sight<'_>) -> bool {
    let stories = sight
        .document
        .building_types
        .get(&building_type)
        .map(|found| &found.stories);
    stories
        .and_then(|stories| stories.first())
        .is_some_and(|story| story.floor_use == FloorUse::Shop)
}

fn change(painted: &Painted, sight: &Sight<'_>) -> Step {
    let edits = painted
        .iter()
        .filter(|(_, (before, after))| before != after)
        .map(|(id, (before, after))| Edit::Mark {
            alternative: sight.alternative,
            id: *id,
            before: before.clone().map(Box::new),
            after: after.clone().map(Box::new),
        });
    Step::Change(edits.collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{DRAWN, Scene, at, street, use_mark};
    use hobnail_core::plan::land::Hand;

    /// A block of 100 by 80 m between four streets, and one beside it.
    fn two_blocks() -> Scene {
        let p = PlanPoint::new;
        let land = |west: i32, east: i32, use_mark, [west_street, east_street]: [u32; 2]| {
            let corners = [p(west, 0), p(east, 0), p(east, 80_000), p(west, 80_000)];
            let side = |street: u32, hand, from: usize| LandSide {
                street: MarkId(street),
                hand,
                run: vec![corners[from], corners[(from + 1) % 4]],
                half_width_mm: 8_000.0,
            };
            Land {
                outline: corners.to_vec(),
                use_mark,
                land_m2: 5_000,
                sides: vec![
                    side(1, Hand::Left, 0),
                    side(east_street, Hand::Left, 1),
                    side(2, Hand::Right, 2),
                    side(west_street, Hand::Right, 3),
                ],
                is_among_streets: true,
            }
        };
        let mut scene = Scene::with(&[
            (1, street(&[(0, 0), (200_000, 0)])),
            (2, street(&[(0, 80_000), (200_000, 80_000)])),
            (3, street(&[(0, 0), (0, 80_000)])),
            (4, street(&[(100_000, 0), (100_000, 80_000)])),
            (5, street(&[(200_000, 0), (200_000, 80_000)])),
        ])
        .with_lands(vec![
            land(0, 100_000, Some(MarkId(9)), [3, 4]),
            land(100_000, 200_000, None, [4, 5]),
        ]);
        scene.put(9, Mark::Use(use_mark(50_000, 40_000, 1)));
        scene
    }

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

    fn use_of(document: &hobnail_core::plan::Document, id: u32) -> UseMark {
        document
            .mark(DRAWN, MarkId(id))
            .and_then(Mark::as_use)
            .expect("the use")
            .clone()
    }

    #[test]
    fn a_press_in_the_middle_paints_the_block() {
        let scene = two_blocks();
        let (_, steps) = run(
            &scene,
            &[Input::Down(at(50_000, 40_000)), Input::Up(at(50_000, 40_000))],
        );
        let painted = use_of(&scene.after(&steps), 9);
        assert_eq!(painted.program.len(), 1);
        assert_eq!(painted.program[0].building_type, BuildingTypeId(3));
        assert!(painted.sides.is_empty());
    }

    #[test]
    fn a_press_near_a_street_paints_that_side() {
        let scene = two_blocks();
        let (_, steps) = run(
            &scene,
            &[Input::Down(at(30_000, 12_000)), Input::Up(at(30_000, 12_000))],
        );
        let painted = use_of(&scene.after(&steps), 9);
        assert_eq!(
            painted.program[0].building_type,
            BuildingTypeId(1),
            "the rest keeps its program"
        );
        assert_eq!(painted.sides.len(), 1);
        assert_eq!(
            (painted.sides[0].street, painted.sides[0].hand),
            (MarkId(1), Hand::Left)
        );
        assert_eq!(painted.sides[0].building_type, Some(BuildingTypeId(3)));
        assert_eq!(painted.sides[0].at, PlanPoint::new(30_000, 0));
    }

    #[test]
    fn painting_a_side_again_replaces_it_and_leaves_the_others() {
        let mut scene = two_blocks();
        let press = |x, y| [Input::Down(at(x, y)), Input::Up(at(x, y))];
        for (x, y) in [(30_000, 12_000), (30_000, 70_000)] {
            let (_, steps) = run(&scene, &press(x, y));
            scene.document = scene.after(&steps);
        }
        scene.choices.building_type = Some(BuildingTypeId(5));
        let (_, steps) = run(&scene, &press(60_000, 11_000));
        let painted = use_of(&scene.after(&steps), 9);
        let said: Vec<_> = painted
            .sides
            .iter()
            .map(|side| (side.street, side.building_type))
            .collect();
        assert_eq!(
            said,
            vec![
                (MarkId(2), Some(BuildingTypeId(3))),
                (MarkId(1), Some(BuildingTypeId(5)))
            ]
        );
    }

    #[test]
    fn the_side_shown_is_the_run_of_the_street_along_the_block() {
        let scene = two_blocks();
        let stroke = stroke_at(PlanPoint::new(30_000, 12_000), false, &scene.sight()).expect("a side");
        let shown = hints(&State::Resting { hover: Some(stroke) });
        let (run, _) = shown.side.expect("a side");
        assert_eq!(run, vec![PlanPoint::new(0, 0), PlanPoint::new(100_000, 0)]);
    }

    #[test]
    fn alt_paints_the_whole_block_even_near_a_street() {
        let scene = two_blocks();
        let stroke = stroke_at(PlanPoint::new(30_000, 12_000), true, &scene.sight());
        assert!(matches!(stroke, Some(Stroke::Whole(_))));
    }

    #[test]
    fn a_sweep_is_one_step_and_makes_new_marks() {
        let scene = two_blocks();
        let (state, steps) = run(
            &scene,
            &[
                Input::Down(at(50_000, 40_000)),
                Input::Move(at(150_000, 40_000)),
                Input::Move(at(151_000, 40_000)),
                Input::Up(at(151_000, 40_000)),
            ],
        );
        assert!(matches!(state, State::Resting { .. }));
        assert_eq!(steps.iter().filter(|step| **step == Step::Commit).count(), 1);
        let after = scene.after(&steps);
        assert_eq!(use_of(&after, 9).program[0].building_type, BuildingTypeId(3));
        assert_eq!(use_of(&after, 10).program[0].building_type, BuildingTypeId(3));
        assert_eq!(use_of(&after, 10).anchor, PlanPoint::new(150_000, 40_000));
        assert_eq!(after.mark(DRAWN, MarkId(11)), None);
    }

    #[test]
    fn painting_with_no_use_clears_the_land() {
        let mut scene = two_blocks();
        scene.choices.building_type = None;
        let (_, steps) = run(
            &scene,
            &[Input::Down(at(50_000, 40_000)), Input::Up(at(50_000, 40_000))],
        );
        assert_eq!(scene.after(&steps).mark(DRAWN, MarkId(9)), None);
        assert!(steps.contains(&Step::Begin(Label::ClearUse)));
    }

    #[test]
    fn open_land_takes_no_paint() {
        let scene = two_blocks();
        let (_, steps) = run(
            &scene,
            &[Input::Down(at(-50_000, 40_000)), Input::Up(at(-50_000, 40_000))],
        );
        assert!(steps.is_empty());
    }
}
