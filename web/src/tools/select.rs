//! The select tool: pick a street, a corner, a place or the use of land; drag to move it; delete it.
//!
//! A street that is selected shows its corners, and between them smaller marks that become corners when dragged.
//! Ends that lie in one place move together; Alt moves one alone. With the keyboard, M picks the selection up.

use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Edit, Footprint, Mark, MarkId, PlanPoint, PlanVector, Vertex};

use super::near;
use super::snap::{self, Snap};
use super::{At, Hints, Input, Label, Selection, Sight, Step};
use crate::input::Key;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Nothing is held.
    Resting,
    /// Something was pressed and has not moved yet.
    Pressed {
        /// What would move.
        grip: Grip,
        /// Where it was pressed.
        from: PlanPoint,
    },
    /// Something is being moved.
    Moving {
        /// What moves.
        grip: Grip,
        /// Where it was picked up.
        from: PlanPoint,
        /// Where it lands now.
        snap: Option<Snap>,
        /// Whether it was picked up by key, so that the next press puts it down.
        is_carried: bool,
    },
}

/// What is held, as it stood when it was picked up.
#[derive(Clone, Debug, PartialEq)]
pub enum Grip {
    /// A street whole.
    Street(MarkId, Street),
    /// Corners and ends that lie in one place, the picked one first.
    Corners(Vec<(MarkId, Street, usize)>),
    /// A new corner between `index` and the one before it.
    NewCorner(MarkId, Street, usize),
    /// A place.
    Place(MarkId, Mark),
}

impl State {
    /// Whether a gesture is open.
    #[must_use]
    pub const fn is_busy(&self) -> bool {
        matches!(self, Self::Moving { .. })
    }
}

/// Answers one event.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match state {
        State::Resting => rest(input, sight),
        State::Pressed { grip, from } => press(grip, from, input, sight),
        State::Moving {
            grip,
            from,
            snap,
            is_carried,
        } => carry(grip, from, snap, is_carried, input, sight),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting => "Click a street, place or block to select it. Drag to move, Delete to remove.",
        State::Pressed { .. } => "Drag to move.",
        State::Moving { is_carried: true, .. } => "Move it, then Enter or click puts it down. Escape puts it back.",
        State::Moving { .. } => "Let go to put it down. Escape puts it back.",
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Moving { snap, .. } => Hints {
            snap: *snap,
            ..Hints::default()
        },
        State::Resting | State::Pressed { .. } => Hints::default(),
    }
}

/// What a press at `from` would pick, corners of the selected street first.
#[must_use]
pub fn pick(from: PlanPoint, sight: &Sight<'_>) -> Option<Selection> {
    let alternative = sight.drawn()?;
    if let Some(Selection::Street(id) | Selection::Vertex(id, _)) = sight.selection
        && let Some(street) = alternative.marks.get(&id).and_then(Mark::as_street)
        && let Some((index, _)) = near::nearest_vertex(from, street, sight.reach_mm)
    {
        return Some(Selection::Vertex(id, index));
    }
    let place = alternative
        .marks
        .iter()
        .filter_map(|(id, mark)| near::distance_to_place_mm(from, mark).map(|distance_mm| (*id, distance_mm, mark)))
        .filter(|(_, distance_mm, _)| *distance_mm <= sight.reach_mm)
        .min_by(|one, other| one.1.total_cmp(&other.1));
    let is_land = |mark: &Mark| matches!(mark.as_place().map(|place| &place.footprint), Some(Footprint::Area(_)));
    if let Some((id, _, mark)) = place
        && !is_land(mark)
    {
        return Some(Selection::Place(id));
    }
    if let Some((id, _)) = near::nearest_street(from, alternative, None, sight.reach_mm) {
        return Some(Selection::Street(id));
    }
    if let Some((id, _, _)) = place {
        return Some(Selection::Place(id));
    }
    (sight.land_at)(from).and_then(|land| land.use_mark).map(Selection::Use)
}

/// The edits that remove what is selected, and what the step is called.
#[must_use]
pub fn removal(selection: Selection, sight: &Sight<'_>) -> Option<(Label, Vec<Edit>)> {
    let alternative = sight.drawn()?;
    let mark = alternative.marks.get(&selection.mark())?;
    let gone = || Edit::mark(sight.document, sight.alternative, selection.mark(), None);
    match selection {
        Selection::Place(_) => Some((Label::DeletePlace, vec![gone()])),
        Selection::Use(_) => Some((Label::ClearUse, vec![gone()])),
        Selection::Vertex(id, index) if mark.as_street()?.line.len() > 2 => {
            let mut street = mark.as_street()?.clone();
            if index >= street.line.len() {
                return None;
            }
            street.line.remove(index);
            let edit = Edit::mark(sight.document, sight.alternative, id, Some(Mark::Street(street)));
            Some((Label::DeleteCorner, vec![edit]))
        }
        Selection::Street(_) | Selection::Vertex(..) => Some((Label::DeleteStreet, vec![gone()])),
    }
}

fn rest(input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match input {
        Input::Down(at) => {
            if let Some((id, street, index)) = between_corners(at.point, sight) {
                let grip = Grip::NewCorner(id, street, index);
                return (State::Pressed { grip, from: at.point }, Vec::new());
            }
            let picked = pick(at.point, sight);
            let state = picked
                .and_then(|selection| grip(selection, at.modifiers.alt, sight))
                .map_or(State::Resting, |grip| State::Pressed { grip, from: at.point });
            (state, vec![Step::Select(picked)])
        }
        Input::Key(Key::Delete | Key::Backspace) => {
            let removal = sight.selection.and_then(|selection| removal(selection, sight));
            let steps = removal.map_or_else(Vec::new, |(label, edits)| {
                vec![
                    Step::Begin(label),
                    Step::Change(edits),
                    Step::Commit,
                    Step::Select(None),
                ]
            });
            (State::Resting, steps)
        }
        Input::Key(Key::Character('m')) => {
            let held = sight.selection.and_then(|selection| {
                let grip = grip(selection, false, sight)?;
                let from = grip.handle()?;
                Some((grip, from))
            });
            held.map_or((State::Resting, Vec::new()), |(grip, from)| {
                let steps = vec![Step::Begin(grip.label())];
                let state = State::Moving {
                    grip,
                    from,
                    snap: None,
                    is_carried: true,
                };
                (state, steps)
            })
        }
        Input::Key(Key::Escape) => (State::Resting, vec![Step::Select(None)]),
        Input::Move(_) | Input::Up(_) | Input::Leave | Input::Key(_) | Input::GiveUp => (State::Resting, Vec::new()),
    }
}

fn press(grip: Grip, from: PlanPoint, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) if (from.squared_distance_mm2(at.point) as f64).sqrt() > sight.reach_mm / 3.0 => {
            let mut steps = vec![Step::Begin(grip.label())];
            if let Grip::NewCorner(id, _, index) = &grip {
                steps.push(Step::Select(Some(Selection::Vertex(*id, *index))));
            }
            let (state, more) = carry(grip, from, None, false, Input::Move(at), sight);
            steps.extend(more);
            (state, steps)
        }
        Input::Up(_) | Input::Key(Key::Escape) | Input::GiveUp => (State::Resting, Vec::new()),
        _ => (State::Pressed { grip, from }, Vec::new()),
    }
}

fn carry(
    grip: Grip,
    from: PlanPoint,
    snap: Option<Snap>,
    is_carried: bool,
    input: Input,
    sight: &Sight<'_>,
) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) => {
            let (edits, snap) = grip.moved(from, at, sight);
            let state = State::Moving {
                grip,
                from,
                snap,
                is_carried,
            };
            (state, vec![Step::Change(edits)])
        }
        Input::Up(at) if !is_carried => put_down(&grip, from, at, sight),
        Input::Down(at) if is_carried => put_down(&grip, from, at, sight),
        Input::Key(Key::Escape) | Input::GiveUp => (State::Resting, vec![Step::Cancel]),
        Input::Key(Key::Enter) if is_carried => (State::Resting, vec![Step::Commit]),
        _ => {
            let state = State::Moving {
                grip,
                from,
                snap,
                is_carried,
            };
            (state, Vec::new())
        }
    }
}

fn put_down(grip: &Grip, from: PlanPoint, at: At, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let (edits, _) = grip.moved(from, at, sight);
    (State::Resting, vec![Step::Change(edits), Step::Commit])
}

impl Grip {
    const fn label(&self) -> Label {
        match self {
            Self::Street(..) => Label::MoveStreet,
            Self::Corners(_) => Label::MoveCorner,
            Self::NewCorner(..) => Label::AddCorner,
            Self::Place(..) => Label::MovePlace,
        }
    }

    /// The point by which it is held when no pointer says where.
    fn handle(&self) -> Option<PlanPoint> {
        match self {
            Self::Street(_, street) => street.line.first().map(|vertex| vertex.point),
            Self::Corners(corners) => {
                let (_, street, index) = corners.first()?;
                street.line.get(*index).map(|vertex| vertex.point)
            }
            Self::NewCorner(..) => None,
            Self::Place(_, mark) => match &mark.as_place()?.footprint {
                Footprint::Point(point) => Some(*point),
                Footprint::Line(points) | Footprint::Area(points) => points.first().copied(),
            },
        }
    }

    /// The edits, against the plan at the gesture's start, that move it from `from` to `at`.
    fn moved(&self, from: PlanPoint, at: At, sight: &Sight<'_>) -> (Vec<Edit>, Option<Snap>) {
        let replace = |id: MarkId, before: &Mark, after: Mark| Edit::Mark {
            alternative: sight.alternative,
            id,
            before: Some(Box::new(before.clone())),
            after: Some(Box::new(after)),
        };
        match self {
            Self::Street(id, street) => {
                let by = on_grid(at.point - from);
                let moved = slid(street, by, sight);
                (
                    vec![replace(*id, &Mark::Street(street.clone()), Mark::Street(moved))],
                    None,
                )
            }
            Self::Corners(corners) => {
                let drawn = corners.first().map(|(id, ..)| *id);
                let landed = snap::snap(at.point, drawn, None, sight);
                let mut edits: Vec<Edit> = Vec::new();
                for (id, street, index) in corners {
                    let mut moved = edits
                        .iter()
                        .find_map(|edit| after_of(edit, *id))
                        .unwrap_or_else(|| street.clone());
                    let tie = landed.tie.filter(|tie| tie.street != *id);
                    if let Some(vertex) = moved.line.get_mut(*index) {
                        vertex.point = landed.point;
                        vertex.tie = tie;
                    }
                    edits.retain(|edit| after_of(edit, *id).is_none());
                    edits.push(replace(*id, &Mark::Street(street.clone()), Mark::Street(moved)));
                }
                (edits, Some(landed))
            }
            Self::NewCorner(id, street, index) => {
                let landed = snap::snap(at.point, Some(*id), None, sight);
                let mut moved = street.clone();
                moved.line.insert((*index).min(street.line.len()), landed.vertex());
                let edit = replace(*id, &Mark::Street(street.clone()), Mark::Street(moved));
                (vec![edit], Some(landed))
            }
            Self::Place(id, mark) => {
                let Some(place) = mark.as_place() else {
                    return (Vec::new(), None);
                };
                let mut moved = place.clone();
                let by = on_grid(at.point - from);
                let landed = match &mut moved.footprint {
                    Footprint::Point(point) => {
                        let landed = snap::snap(at.point, None, None, sight);
                        *point = landed.point;
                        Some(landed)
                    }
                    Footprint::Line(points) | Footprint::Area(points) => {
                        for point in points {
                            *point = *point + by;
                        }
                        None
                    }
                };
                (vec![replace(*id, mark, Mark::Place(moved))], landed)
            }
        }
    }
}

/// What a press on `selection` holds.
fn grip(selection: Selection, alone: bool, sight: &Sight<'_>) -> Option<Grip> {
    let alternative = sight.drawn()?;
    let mark = alternative.marks.get(&selection.mark())?;
    match selection {
        Selection::Street(id) => Some(Grip::Street(id, mark.as_street()?.clone())),
        Selection::Place(id) => Some(Grip::Place(id, mark.clone())),
        Selection::Use(_) => None,
        Selection::Vertex(id, index) => {
            let street = mark.as_street()?;
            let point = street.line.get(index)?.point;
            let mut corners = vec![(id, street.clone(), index)];
            if !alone {
                // An end held by one of these streets follows by its hold; the others in this place move along.
                let follows = |vertex: &Vertex| vertex.tie.is_some_and(|tie| tie.street == id);
                for (other, street) in near::streets(alternative) {
                    for (at, vertex) in street.line.iter().enumerate() {
                        let is_picked = other == id && at == index;
                        if vertex.point == point && !is_picked && !follows(vertex) {
                            corners.push((other, street.clone(), at));
                        }
                    }
                }
            }
            Some(Grip::Corners(corners))
        }
    }
}

/// Where a press falls on a mark between two corners of the selected street, and not on a corner.
fn between_corners(from: PlanPoint, sight: &Sight<'_>) -> Option<(MarkId, Street, usize)> {
    let (Selection::Street(id) | Selection::Vertex(id, _)) = sight.selection? else {
        return None;
    };
    let street = sight.drawn()?.marks.get(&id)?.as_street()?;
    if near::nearest_vertex(from, street, sight.reach_mm).is_some() {
        return None;
    }
    let index =
        middles(street).position(|middle| (from.squared_distance_mm2(middle) as f64).sqrt() <= sight.reach_mm)?;
    Some((id, street.clone(), index + 1))
}

/// The middles of a street's runs: where a new corner can be pulled out.
pub fn middles(street: &Street) -> impl Iterator<Item = PlanPoint> + '_ {
    street.line.windows(2).filter_map(|ends| {
        let [a, b] = ends else { return None };
        let middle = |one: i32, other: i32| (i64::from(one) + i64::from(other)).div_euclid(2) as i32;
        Some(PlanPoint::new(
            middle(a.point.x_mm, b.point.x_mm),
            middle(a.point.y_mm, b.point.y_mm),
        ))
    })
}

/// The street shifted by `by`; an end held by another street slides along it while that stays near, else it lets go.
fn slid(street: &Street, by: PlanVector, sight: &Sight<'_>) -> Street {
    const NEAR_MM: f64 = 20_000.0;
    let mut moved = street.clone();
    for vertex in &mut moved.line {
        let shifted = vertex.point + by;
        let foot = vertex.tie.and_then(|tie| {
            let held = sight.drawn()?.marks.get(&tie.street)?.as_street()?;
            near::foot_on_street(shifted, tie.street, held)
        });
        match foot.filter(|foot| foot.distance_mm <= NEAR_MM) {
            Some(foot) => {
                vertex.point = foot.point;
                vertex.tie = Some(foot.tie);
            }
            None => {
                vertex.point = shifted;
                vertex.tie = None;
            }
        }
    }
    moved
}

fn after_of(edit: &Edit, wanted: MarkId) -> Option<Street> {
    match edit {
        Edit::Mark { id, after, .. } if *id == wanted => after.as_deref().and_then(Mark::as_street).cloned(),
        _ => None,
    }
}

fn on_grid(by: PlanVector) -> PlanVector {
    let round = |mm: i32| (f64::from(mm) / f64::from(snap::GRID_MM)).round() as i32 * snap::GRID_MM;
    PlanVector::new(round(by.x_mm), round(by.y_mm))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{DRAWN, Scene, at, street, tied, use_mark};
    use hobnail_core::plan::{Certainty, Place, PlaceKind};

    fn run(scene: &mut Scene, inputs: &[Input]) -> (State, Vec<Step>) {
        let mut state = State::Resting;
        let mut steps = Vec::new();
        for input in inputs {
            let (after, more) = respond(state, *input, &scene.sight());
            state = after;
            for step in &more {
                if let Step::Select(selection) = step {
                    scene.selection = *selection;
                }
            }
            steps.extend(more);
        }
        (state, steps)
    }

    fn street_of(document: &hobnail_core::plan::Document, id: u32) -> Street {
        document
            .mark(DRAWN, MarkId(id))
            .and_then(Mark::as_street)
            .expect("the street")
            .clone()
    }

    #[test]
    fn a_click_selects_and_changes_nothing() {
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
        let (_, steps) = run(&mut scene, &[Input::Down(at(40_000, 500)), Input::Up(at(40_100, 500))]);
        assert_eq!(steps, vec![Step::Select(Some(Selection::Street(MarkId(1))))]);
    }

    #[test]
    fn dragging_a_cross_street_slides_its_held_ends() {
        let mut cross = street(&[(50_000, 0), (50_000, 80_000)]);
        tied(&mut cross, 0, 1, 0, 500_000_000);
        tied(&mut cross, 1, 2, 0, 500_000_000);
        let mut scene = Scene::with(&[
            (1, street(&[(0, 0), (100_000, 0)])),
            (2, street(&[(0, 80_000), (100_000, 80_000)])),
            (3, cross),
        ]);
        let (_, steps) = run(
            &mut scene,
            &[
                Input::Down(at(50_000, 40_000)),
                Input::Move(at(60_000, 41_000)),
                Input::Up(at(70_000, 43_000)),
            ],
        );
        let moved = street_of(&scene.after(&steps), 3);
        assert_eq!(moved.line[0].point, PlanPoint::new(70_000, 0));
        assert_eq!(moved.line[0].tie.map(|tie| tie.along_ppb), Some(700_000_000));
        assert_eq!(moved.line[1].point, PlanPoint::new(70_000, 80_000));
        assert_eq!(steps.iter().filter(|step| matches!(step, Step::Begin(_))).count(), 1);
    }

    #[test]
    fn ends_in_one_place_move_together_and_alone_with_alt() {
        let scene = || {
            let mut scene = Scene::with(&[
                (1, street(&[(0, 0), (100_000, 0)])),
                (2, street(&[(100_000, 0), (100_000, 90_000)])),
            ]);
            scene.selection = Some(Selection::Street(MarkId(1)));
            scene
        };
        let drag = [
            Input::Down(at(100_000, 0)),
            Input::Move(at(110_000, 10_000)),
            Input::Up(at(120_000, 20_000)),
        ];
        let mut together = scene();
        let (_, steps) = run(&mut together, &drag);
        let after = together.after(&steps);
        assert_eq!(street_of(&after, 1).line[1].point, PlanPoint::new(120_000, 20_000));
        assert_eq!(street_of(&after, 2).line[0].point, PlanPoint::new(120_000, 20_000));
        let mut alone = scene();
        let mut with_alt = at(100_000, 0);
        with_alt.modifiers.alt = true;
        let (_, steps) = run(&mut alone, &[Input::Down(with_alt), drag[1], drag[2]]);
        assert_eq!(
            street_of(&alone.after(&steps), 2).line[0].point,
            PlanPoint::new(100_000, 0)
        );
    }

    #[test]
    fn both_ends_of_a_loop_move_as_one() {
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (60_000, 0), (60_000, 60_000), (0, 0)]))]);
        scene.selection = Some(Selection::Street(MarkId(1)));
        let (_, steps) = run(
            &mut scene,
            &[
                Input::Down(at(0, 0)),
                Input::Move(at(-5_000, -5_000)),
                Input::Up(at(-9_000, -9_000)),
            ],
        );
        let moved = street_of(&scene.after(&steps), 1);
        assert_eq!(moved.line[0].point, PlanPoint::new(-9_000, -9_000));
        assert_eq!(moved.line[3].point, PlanPoint::new(-9_000, -9_000));
    }

    #[test]
    fn a_corner_is_pulled_out_of_the_middle_of_a_run() {
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
        scene.selection = Some(Selection::Street(MarkId(1)));
        let (_, steps) = run(
            &mut scene,
            &[
                Input::Down(at(50_000, 0)),
                Input::Move(at(50_000, 9_000)),
                Input::Up(at(50_000, 20_000)),
            ],
        );
        let moved = street_of(&scene.after(&steps), 1);
        assert_eq!(moved.line.len(), 3);
        assert_eq!(moved.line[1].point, PlanPoint::new(50_000, 20_000));
        assert_eq!(scene.selection, Some(Selection::Vertex(MarkId(1), 1)));
    }

    #[test]
    fn delete_takes_the_corner_while_a_street_is_left() {
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (50_000, 9_000), (100_000, 0)]))]);
        scene.selection = Some(Selection::Vertex(MarkId(1), 1));
        let (_, steps) = run(&mut scene, &[Input::Key(Key::Delete)]);
        assert_eq!(street_of(&scene.after(&steps), 1).line.len(), 2);
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
        scene.selection = Some(Selection::Vertex(MarkId(1), 1));
        let (_, steps) = run(&mut scene, &[Input::Key(Key::Delete)]);
        assert_eq!(scene.after(&steps).mark(DRAWN, MarkId(1)), None);
        assert_eq!(scene.selection, None);
    }

    #[test]
    fn escape_puts_a_moved_thing_back() {
        let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
        let (state, steps) = run(
            &mut scene,
            &[
                Input::Down(at(30_000, 0)),
                Input::Move(at(30_000, 20_000)),
                Input::Key(Key::Escape),
            ],
        );
        assert_eq!(state, State::Resting);
        assert_eq!(steps.last(), Some(&Step::Cancel));
    }

    #[test]
    fn a_place_is_carried_by_keyboard() {
        let mut scene = Scene::with(&[]);
        scene.put(
            7,
            Mark::Place(Place {
                name: String::new(),
                kind: PlaceKind::Center,
                footprint: Footprint::Point(PlanPoint::new(10_000, 10_000)),
                minimum_size_m2: 0,
                certainty: Certainty::Committed,
                phase: None,
            }),
        );
        scene.put(8, Mark::Use(use_mark(0, 0, 0)));
        scene.selection = Some(Selection::Place(MarkId(7)));
        let (_, steps) = run(
            &mut scene,
            &[
                Input::Key(Key::Character('m')),
                Input::Move(at(33_333, 44_444)),
                Input::Key(Key::Enter),
            ],
        );
        let after = scene.after(&steps);
        let place = after
            .mark(DRAWN, MarkId(7))
            .and_then(Mark::as_place)
            .expect("the place");
        assert_eq!(place.footprint, Footprint::Point(PlanPoint::new(33_300, 44_400)));
        assert_eq!(steps.last(), Some(&Step::Commit));
    }
}
