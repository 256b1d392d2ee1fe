//! The select tool: pick a street, a corner, a place or the use of land; drag to move it; delete it.
//!
//! A street that is selected shows its corners, and between them smaller marks that become corners when dragged.
//! Ends that lie in one place move together; Alt moves one alone. With the keyboard, M picks the selection up.

use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Edit, Footprint, Mark, MarkId, PlanPoint};

mod grip;

pub use grip::Grip;

use grip::grip as grip_of;

use super::snap::Snap;
use super::{At, Hints, Input, Label, Selection, Sight, Step};
use super::{near, shape};
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
        State::Resting => "Click a street, place, area or block to select it. Drag to move, Delete to remove.",
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
    let is_land = |mark: &Mark| matches!(shape::of(mark), Some(Footprint::Area(_)));
    if let Some((id, _, mark)) = place
        && !is_land(mark)
    {
        return Some(Selection::Place(id));
    }
    if let Some((id, _)) = near::nearest_street(from, alternative, None, sight.reach_mm) {
        return Some(Selection::Street(id));
    }
    let area = shape::area_by_edge(from, alternative, sight.reach_mm);
    if let Some(id) = area.or(place.map(|(id, ..)| id)) {
        return Some(Selection::Place(id));
    }
    let used = (sight.land_at)(from).and_then(|land| land.use_mark);
    let around = || shape::area_around(from, alternative).map(Selection::Place);
    used.map(Selection::Use).or_else(around)
}

/// The edits that remove what is selected, and what the step is called.
#[must_use]
pub fn removal(selection: Selection, sight: &Sight<'_>) -> Option<(Label, Vec<Edit>)> {
    let alternative = sight.drawn()?;
    let mark = alternative.marks.get(&selection.mark())?;
    let gone = || Edit::mark(sight.document, sight.alternative, selection.mark(), None);
    match selection {
        Selection::Place(_) => Some((Label::delete(mark), vec![gone()])),
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
            if let Some(grip) = grip::corner_of_selected(at.point, sight) {
                return (State::Pressed { grip, from: at.point }, Vec::new());
            }
            let picked = pick(at.point, sight);
            let state = picked
                .and_then(|selection| grip_of(selection, at.modifiers.alt, sight))
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
                let grip = grip_of(selection, false, sight)?;
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

#[cfg(test)]
mod tests;
