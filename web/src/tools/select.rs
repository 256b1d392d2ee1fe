//! The select tool: pick a street, a corner, a place or the use of land; drag to move it; delete it.
//!
//! A street that is selected shows its corners, and between them smaller marks that become corners when dragged.
//! Ends that lie in one place move together; Alt moves one alone. With the keyboard, M picks the selection up. A drag on
//! empty ground selects all that lies in its box; Shift adds to what is selected.

use hobnail_core::plan::editing::rounding::corner;
use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Edit, Footprint, Mark, MarkId, PlanPoint};
use hobnail_core::say;

pub mod commands;
pub mod many;

mod grip;
mod junction;

pub use grip::Grip;

use grip::{grip as grip_of, grip_of_marks};

use super::drawing::{Sentence, sentence};
use super::snap::{self, Snap};
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
        /// What is said of it, and where.
        said: Option<(PlanPoint, Sentence)>,
    },
    /// A box is drawn about what is to be selected.
    Boxing {
        /// Its first corner.
        from: PlanPoint,
        /// The other.
        to: PlanPoint,
        /// Whether it adds to what is selected.
        is_adding: bool,
        /// What was pressed, which a mere click adds or takes away.
        pressed: Option<MarkId>,
    },
    /// The place is asked for where a street is cut.
    Cutting {
        /// The street.
        id: MarkId,
        /// The place under the pointer.
        hover: Option<Snap>,
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
            said,
        } => carry(grip, from, (snap, said), is_carried, input, sight),
        State::Boxing {
            from,
            is_adding,
            pressed,
            ..
        } => draw_box(from, is_adding, pressed, input, sight),
        State::Cutting { id, hover } => cut(id, hover, input, sight),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting => say!("tools-select-resting"),
        State::Boxing { .. } => say!("tools-select-boxing"),
        State::Cutting { .. } => say!("tools-select-cutting"),
        State::Pressed { .. } => say!("tools-select-pressed"),
        State::Moving { is_carried: true, .. } => say!("tools-select-carried"),
        State::Moving { .. } => say!("tools-select-moving"),
    }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Moving { snap, said, .. } => Hints {
            snap: *snap,
            words: said.clone(),
            ..Hints::default()
        },
        State::Boxing { from, to, .. } => Hints {
            outline: many::outline(*from, *to),
            ..Hints::default()
        },
        State::Cutting { hover, .. } => Hints {
            snap: *hover,
            words: hover.map(|snap| (snap.point, sentence!("tools-cut-here"))),
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
        Input::Down(at) => take(at, sight),
        Input::Key(Key::Delete | Key::Backspace) => {
            let removal = match sight.selection {
                Some(selection) => removal(selection, sight),
                None if sight.picked.is_empty() => None,
                None => {
                    let gone = |id: &MarkId| Edit::mark(sight.document, sight.alternative, *id, None);
                    Some((Label::DeleteSelection, sight.picked.iter().map(gone).collect()))
                }
            };
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
            let grip = match sight.selection {
                Some(selection) => grip_of(selection, false, sight),
                None => grip_of_marks(sight.picked, None, sight),
            };
            grip.and_then(picked_up).unwrap_or((State::Resting, Vec::new()))
        }
        Input::Key(Key::Character(key)) => commands::by_key(key, sight).unwrap_or((State::Resting, Vec::new())),
        Input::Key(Key::Escape) => (State::Resting, vec![Step::Select(None)]),
        Input::Move(_) | Input::Up(_) | Input::Leave | Input::Key(_) | Input::GiveUp => (State::Resting, Vec::new()),
    }
}

/// What a press picks up, selects or begins.
fn take(at: At, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let pressed = |grip: Grip| State::Pressed { grip, from: at.point };
    let boxing = |pressed: Option<MarkId>| State::Boxing {
        from: at.point,
        to: at.point,
        is_adding: at.modifiers.shift,
        pressed,
    };
    if at.modifiers.shift {
        return (boxing(pick(at.point, sight).map(Selection::mark)), Vec::new());
    }
    if let Some(grip) = special_grip(at.point, sight).or_else(|| grip::corner_of_selected(at.point, sight)) {
        return (pressed(grip), Vec::new());
    }
    let picked = pick(at.point, sight);
    if let Some(Selection::Street(id) | Selection::Place(id)) = picked
        && sight.picked.contains(&id)
        && let Some(grip) = grip_of_marks(sight.picked, None, sight)
    {
        return (pressed(grip), Vec::new());
    }
    let grip = picked.and_then(|selection| grip_of(selection, at.modifiers.alt, sight));
    (grip.map_or_else(|| boxing(None), pressed), vec![Step::Select(picked)])
}

/// What a press takes hold of on the selected street that is no corner of it: a radius, an intersection, the middle of a
/// run.
fn special_grip(from: PlanPoint, sight: &Sight<'_>) -> Option<Grip> {
    let (Selection::Street(id) | Selection::Vertex(id, _)) = sight.selection? else {
        return None;
    };
    let street = sight.drawn()?.marks.get(&id)?.as_street()?;
    if let Some(Selection::Vertex(_, index)) = sight.selection
        && let Some(handle) = radius_handle(street, index)
        && (from.squared_distance_mm2(handle) as f64).sqrt() <= sight.reach_mm
    {
        return Some(Grip::Radius(id, street.clone(), index));
    }
    junction::junction(from, id, sight).or_else(|| {
        let (id, street, index) = between_corners(from, sight)?;
        Some(Grip::NewCorner(id, street, index))
    })
}

/// Where the handle of a corner's radius lies; `None` for ends and for corners that bend nothing.
#[must_use]
pub fn radius_handle(street: &Street, index: usize) -> Option<PlanPoint> {
    let found = corner(&street.line, index, false)?;
    let (x, y) = found.handle(f64::from(street.line.get(index)?.corner_radius_mm));
    Some(PlanPoint::new(x.round() as i32, y.round() as i32))
}

/// Something picked up by key, until a press puts it down.
fn picked_up(grip: Grip) -> Option<(State, Vec<Step>)> {
    let from = grip.handle()?;
    let steps = vec![Step::Begin(grip.label())];
    let state = State::Moving {
        grip,
        from,
        snap: None,
        is_carried: true,
        said: None,
    };
    Some((state, steps))
}

fn draw_box(
    from: PlanPoint,
    is_adding: bool,
    pressed: Option<MarkId>,
    input: Input,
    sight: &Sight<'_>,
) -> (State, Vec<Step>) {
    let boxing = |to: PlanPoint| State::Boxing {
        from,
        to,
        is_adding,
        pressed,
    };
    match input {
        Input::Move(at) => (boxing(at.point), Vec::new()),
        Input::Up(at) if (from.squared_distance_mm2(at.point) as f64).sqrt() > sight.reach_mm / 3.0 => {
            let ids = many::inside(from, at.point, is_adding, sight);
            (State::Resting, vec![Step::Pick(ids)])
        }
        Input::Up(_) => {
            let toggled = pressed.map(|id| Step::Pick(many::toggled(id, sight)));
            (State::Resting, toggled.into_iter().collect())
        }
        Input::Key(Key::Escape) | Input::GiveUp => (State::Resting, Vec::new()),
        _ => (boxing(from), Vec::new()),
    }
}

fn cut(id: MarkId, hover: Option<Snap>, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let place = |at: At| {
        let street = sight.drawn()?.marks.get(&id)?.as_street()?;
        let snap = snap::snap(at.point, None, None, sight);
        let is_place = |snap: &Snap| !matches!(snap.reason, snap::Reason::Grid | snap::Reason::SiteBoundary);
        let foot =
            near::foot_on_street(snap.point, id, street).filter(|foot| is_place(&snap) && foot.distance_mm <= 3.0);
        let foot = foot.or_else(|| near::foot_on_street(at.point, id, street))?;
        Some(Snap {
            point: foot.point,
            tie: Some(foot.tie),
            reason: if foot.point == snap.point {
                snap.reason
            } else {
                snap::Reason::OnStreet
            },
        })
    };
    match input {
        Input::Move(at) => {
            let hover = place(at);
            (State::Cutting { id, hover }, Vec::new())
        }
        Input::Down(at) => {
            let tie = place(at).and_then(|snap| snap.tie);
            let steps = tie.and_then(|tie| commands::cut_at(id, tie.segment, tie.along_ppb, sight));
            steps.map_or((State::Cutting { id, hover }, Vec::new()), |steps| {
                (State::Resting, steps)
            })
        }
        Input::Key(Key::Escape) | Input::GiveUp => (State::Resting, Vec::new()),
        _ => (State::Cutting { id, hover }, Vec::new()),
    }
}

fn press(grip: Grip, from: PlanPoint, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) if (from.squared_distance_mm2(at.point) as f64).sqrt() > sight.reach_mm / 3.0 => {
            let mut steps = vec![Step::Begin(grip.label())];
            if let Grip::NewCorner(id, _, index) = &grip {
                steps.push(Step::Select(Some(Selection::Vertex(*id, *index))));
            }
            let (state, more) = carry(grip, from, (None, None), false, Input::Move(at), sight);
            steps.extend(more);
            (state, steps)
        }
        // A click on one of many selected things selects it alone.
        Input::Up(at) if matches!(&grip, Grip::Marks { marks, .. } if marks.len() > 1) => {
            (State::Resting, vec![Step::Select(pick(at.point, sight))])
        }
        Input::Up(_) | Input::Key(Key::Escape) | Input::GiveUp => (State::Resting, Vec::new()),
        _ => (State::Pressed { grip, from }, Vec::new()),
    }
}

fn carry(
    grip: Grip,
    from: PlanPoint,
    (snap, said): (Option<Snap>, Option<(PlanPoint, Sentence)>),
    is_carried: bool,
    input: Input,
    sight: &Sight<'_>,
) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) => {
            let (edits, snap) = grip.moved(from, at, sight);
            let said = grip.said(at.point).map(|said| (at.point, said));
            let state = State::Moving {
                grip,
                from,
                snap,
                is_carried,
                said,
            };
            (state, vec![Step::Change(edits)])
        }
        Input::Up(at) if !is_carried => put_down(&grip, from, at, sight),
        Input::Down(at) if is_carried => put_down(&grip, from, at, sight),
        Input::Key(Key::Escape) | Input::GiveUp => (State::Resting, vec![Step::Cancel]),
        Input::Key(Key::Enter) if is_carried => {
            let copies = copies(&grip);
            (State::Resting, copies.into_iter().chain([Step::Commit]).collect())
        }
        _ => {
            let state = State::Moving {
                grip,
                from,
                snap,
                is_carried,
                said,
            };
            (state, Vec::new())
        }
    }
}

fn put_down(grip: &Grip, from: PlanPoint, at: At, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let (edits, _) = grip.moved(from, at, sight);
    let steps = [Step::Change(edits)]
        .into_iter()
        .chain(copies(grip))
        .chain([Step::Commit]);
    (State::Resting, steps.collect())
}

/// Copies are selected once they are there.
fn copies(grip: &Grip) -> Option<Step> {
    let Grip::Marks { marks, copies, .. } = grip else {
        return None;
    };
    let first = (*copies)?;
    let ids = (0..marks.len()).map(|index| MarkId(first.0.saturating_add(index as u32)));
    Some(Step::Pick(ids.collect()))
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
