//! What can be done to a selection at once: each a button with words, a key and one gesture.

use hobnail_core::plan::editing::cut::{cut, join};
use hobnail_core::plan::editing::motion::{self, Motion};
use hobnail_core::plan::editing::{direction, meeting, offset};
use hobnail_core::plan::street::{Street, Tie};
use hobnail_core::plan::tie::WHOLE_PPB;
use hobnail_core::plan::{Alternative, Edit, Mark, MarkId, PlanPoint, PlanVector, UseMark, Vertex};
use hobnail_core::say;

use super::grip::grip_of_marks;
use super::many::{enclosed, middle, movable};
use super::{State, picked_up};
use crate::tools::near::{self, Foot};
use crate::tools::snap::holds_on;
use crate::tools::{Label, Selection, Sight, Step};

/// A command on what is selected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is said by its words")]
pub enum Command {
    Duplicate,
    TurnLeft,
    TurnRight,
    MirrorSideways,
    MirrorUpright,
    Cut,
    Join,
    OffsetLeft,
    OffsetRight,
}

impl Command {
    /// All commands, in the order of the panel.
    pub const ALL: [Self; 9] = [
        Self::Duplicate,
        Self::TurnLeft,
        Self::TurnRight,
        Self::MirrorSideways,
        Self::MirrorUpright,
        Self::OffsetLeft,
        Self::OffsetRight,
        Self::Cut,
        Self::Join,
    ];

    /// The words on its button.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Duplicate => say!("tools-duplicate"),
            Self::TurnLeft => say!("tools-turn-left"),
            Self::TurnRight => say!("tools-turn-right"),
            Self::MirrorSideways => say!("tools-mirror-sideways"),
            Self::MirrorUpright => say!("tools-mirror-upright"),
            Self::Cut => say!("tools-cut"),
            Self::Join => say!("tools-join"),
            Self::OffsetLeft => say!("tools-offset-left"),
            Self::OffsetRight => say!("tools-offset-right"),
        }
    }

    /// Its key at the drawing.
    #[must_use]
    pub const fn key(self) -> char {
        match self {
            Self::Duplicate => 'd',
            Self::TurnLeft => '[',
            Self::TurnRight => ']',
            Self::MirrorSideways => 'x',
            Self::MirrorUpright => 'y',
            Self::Cut => 'k',
            Self::Join => 'j',
            Self::OffsetLeft => ',',
            Self::OffsetRight => '.',
        }
    }

    /// Whether it turns, mirrors or sets off what is selected.
    #[must_use]
    pub const fn turns_or_sets_off(self) -> bool {
        !matches!(self, Self::Duplicate | Self::Cut | Self::Join)
    }

    /// Whether it can be done to so many marks, so many of them streets.
    #[must_use]
    pub const fn fits(self, marks: usize, streets: usize) -> bool {
        match self {
            Self::Cut | Self::OffsetLeft | Self::OffsetRight => marks == 1 && streets == 1,
            Self::Join => marks == 2 && streets == 2,
            _ => marks > 0,
        }
    }
}

/// The next state and steps of a command's key; `None` where it can not be done.
pub(super) fn by_key(key: char, sight: &Sight<'_>) -> Option<(State, Vec<Step>)> {
    let command = Command::ALL.into_iter().find(|command| command.key() == key)?;
    let ids = movable(sight);
    let alternative = sight.drawn()?;
    let street = |id: &MarkId| alternative.marks.get(id).and_then(Mark::as_street);
    let streets: Vec<(MarkId, &Street)> = ids.iter().filter_map(|id| Some((*id, street(id)?))).collect();
    if !command.fits(ids.len(), streets.len()) {
        return None;
    }
    let turn_rad = (f64::from(sight.choices.drawing.turn_millidegrees) / 1_000.0).to_radians();
    let offset_mm = i32::try_from(sight.choices.drawing.offset_mm).unwrap_or(i32::MAX);
    let about = |motion: &dyn Fn(PlanPoint) -> Motion, label: Label| moved(&ids, motion, label, sight);
    let steps = match command {
        Command::Duplicate => {
            let grip = grip_of_marks(&ids, Some(sight.next_id), sight)?;
            return picked_up(grip);
        }
        Command::TurnLeft => about(&|middle| Motion::turn(middle, turn_rad), Label::Turn),
        Command::TurnRight => about(&|middle| Motion::turn(middle, -turn_rad), Label::Turn),
        Command::MirrorSideways => about(&|middle| Motion::mirror(middle, true), Label::Mirror),
        Command::MirrorUpright => about(&|middle| Motion::mirror(middle, false), Label::Mirror),
        Command::Cut => {
            let (id, street) = *streets.first()?;
            match sight.selection {
                Some(Selection::Vertex(_, index)) if index > 0 && index + 1 < street.line.len() => {
                    cut_at(id, index as u32, 0, sight)
                }
                _ => return Some((State::Cutting { id, hover: None }, Vec::new())),
            }
        }
        Command::Join => joined(*streets.first()?, *streets.get(1)?, sight),
        Command::OffsetLeft => set_off(*streets.first()?, offset_mm, sight),
        Command::OffsetRight => set_off(*streets.first()?, -offset_mm, sight),
    };
    Some((State::Resting, steps?))
}

/// One gesture of these edits, and what is selected after it.
fn gesture(label: Label, edits: Vec<Edit>, selected: Vec<MarkId>) -> Vec<Step> {
    vec![
        Step::Begin(label),
        Step::Change(edits),
        Step::Commit,
        Step::Pick(selected),
    ]
}

/// The steps that shift what is selected: a corner by itself, else marks whole.
#[must_use]
pub fn nudge(by: PlanVector, sight: &Sight<'_>) -> Option<Vec<Step>> {
    let Some(Selection::Vertex(id, index)) = sight.selection else {
        return moved(&movable(sight), &|_| Motion::shift(by), Label::MoveSelection, sight);
    };
    let alternative = sight.drawn()?;
    let mut street = alternative.marks.get(&id)?.as_street()?.clone();
    let vertex = street.line.get_mut(index)?;
    vertex.point = vertex.point + by;
    if let Some(tie) = vertex.tie {
        let held = alternative.marks.get(&tie.street)?.as_street()?;
        let foot = near::foot_on_street(vertex.point, tie.street, held)?;
        (vertex.point, vertex.tie) = (foot.point, Some(foot.tie));
    }
    Some(vec![
        Step::Begin(Label::MoveCorner),
        Step::Change(vec![replaced(id, Some(Mark::Street(street)), sight)]),
        Step::Commit,
    ])
}

fn replaced(id: MarkId, after: Option<Mark>, sight: &Sight<'_>) -> Edit {
    Edit::mark(sight.document, sight.alternative, id, after)
}

fn moved(ids: &[MarkId], motion: &dyn Fn(PlanPoint) -> Motion, label: Label, sight: &Sight<'_>) -> Option<Vec<Step>> {
    let alternative = sight.drawn()?;
    let held = ids
        .iter()
        .filter_map(|id| Some((*id, alternative.marks.get(id)?.clone())));
    let mut marks: Vec<(MarkId, Mark)> = held.collect();
    let motion = motion(middle(&marks)?);
    marks.extend(enclosed(ids, sight));
    let after = motion::moved(alternative, &marks, &motion, None).into_iter();
    let edits = after.map(|(id, mark)| replaced(id, Some(mark), sight)).collect();
    let mut steps = gesture(label, edits, ids.to_vec());
    // The same things stay selected, and in the same way.
    steps.pop();
    Some(steps)
}

/// A street cut at a place: the second part is a new street that holds on to the end of the first.
pub(super) fn cut_at(id: MarkId, segment: u32, along_ppb: u32, sight: &Sight<'_>) -> Option<Vec<Step>> {
    let alternative = sight.drawn()?;
    let street = alternative.marks.get(&id)?.as_street()?;
    let (first, mut second) = cut(&street.line, segment, along_ppb)?;
    if let Some(vertex) = second.first_mut() {
        vertex.tie = first.len().checked_sub(2).map(|last| Tie {
            street: id,
            segment: last as u32,
            along_ppb: WHOLE_PPB,
        });
    }
    let parts = [first, second].map(|line| Street { line, ..street.clone() });
    let second_id = sight.next_id;
    let mut edits = sides_renamed(alternative, sight, &|side_street, at| {
        let apart = |part: &Street| near::foot_on_street(at, id, part).map_or(f64::MAX, |foot| foot.distance_mm);
        let [first, second] = &parts;
        (side_street == id && apart(second) < apart(first)).then_some((second_id, false))
    });
    let [first, second] = parts;
    edits.push(replaced(id, Some(Mark::Street(first)), sight));
    edits.push(replaced(second_id, Some(Mark::Street(second)), sight));
    Some(gesture(Label::CutStreet, edits, vec![id, second_id]))
}

/// Two streets as one, which keeps the section and name of the first.
fn joined(
    (first_id, first): (MarkId, &Street),
    (second_id, second): (MarkId, &Street),
    sight: &Sight<'_>,
) -> Option<Vec<Step>> {
    let alternative = sight.drawn()?;
    // Holds on each other end with the joint; so does a hold on a street that holds on to either: it would go in a circle.
    let freed = |street: &Street| {
        let mut line = street.line.clone();
        for vertex in &mut line {
            vertex.tie = vertex.tie.filter(|tie| {
                !holds_on(alternative, tie.street, first_id) && !holds_on(alternative, tie.street, second_id)
            });
        }
        line
    };
    let (line, is_turned) = join(&freed(first), &freed(second));
    let mut edits = sides_renamed(alternative, sight, &|street, _| {
        (street == second_id).then_some((first_id, is_turned))
    });
    let whole = Street { line, ..first.clone() };
    edits.push(replaced(first_id, Some(Mark::Street(whole)), sight));
    edits.push(replaced(second_id, None, sight));
    Some(gesture(Label::JoinStreets, edits, vec![first_id]))
}

/// Edits of uses whose sides face a street that bears another id now; with them whether left and right change.
fn sides_renamed(
    alternative: &Alternative,
    sight: &Sight<'_>,
    renamed: &dyn Fn(MarkId, PlanPoint) -> Option<(MarkId, bool)>,
) -> Vec<Edit> {
    use hobnail_core::plan::land::Hand;
    let uses = alternative
        .marks
        .iter()
        .filter_map(|(id, mark)| Some((*id, mark.as_use()?)));
    let changed = uses.filter_map(|(id, mark): (MarkId, &UseMark)| {
        let mut after = mark.clone();
        for side in &mut after.sides {
            if let Some((street, is_turned)) = renamed(side.street, side.at) {
                side.street = street;
                side.hand = match (side.hand, is_turned) {
                    (Hand::Left, true) => Hand::Right,
                    (Hand::Right, true) => Hand::Left,
                    (hand, false) => hand,
                };
            }
        }
        (after != *mark).then(|| replaced(id, Some(Mark::Use(after)), sight))
    });
    changed.collect()
}

/// A copy set off to a side; its ends run on, or stop short, to meet the streets that hold the ends of the original.
fn set_off((id, street): (MarkId, &Street), left_mm: i32, sight: &Sight<'_>) -> Option<Vec<Step>> {
    let alternative = sight.drawn()?;
    let mut line = offset::offset(&street.line, left_mm);
    if line.len() < 2 {
        return None;
    }
    let most_mm = 4.0 * f64::from(left_mm).abs();
    for is_last in [false, true] {
        let original = if is_last {
            street.line.last()
        } else {
            street.line.first()
        };
        let tie = original.and_then(|vertex| vertex.tie).filter(|tie| tie.street != id);
        let held = tie.and_then(|tie| Some((tie.street, alternative.marks.get(&tie.street)?.as_street()?)));
        if is_last {
            line.reverse();
        }
        if let (Some((held_id, held)), [end, next, ..]) = (held, line.as_slice())
            && let Some(foot) = met(next.point, end.point, held_id, held, most_mm)
            && let Some(end) = line.first_mut()
        {
            *end = Vertex {
                tie: Some(foot.tie),
                ..Vertex::at(foot.point)
            };
        }
        if is_last {
            line.reverse();
        }
    }
    let copy_id = sight.next_id;
    let copy = Street {
        line,
        name: String::new(),
        ..street.clone()
    };
    let edits = vec![replaced(copy_id, Some(Mark::Street(copy)), sight)];
    Some(gesture(Label::OffsetStreet, edits, vec![copy_id]))
}

/// Where the line from `inner` through `end` meets a street, nearest to `end` and no farther than `most_mm`.
fn met(inner: PlanPoint, end: PlanPoint, id: MarkId, street: &Street, most_mm: f64) -> Option<Foot> {
    let (along, _) = direction(inner, end)?;
    let place = |point: PlanPoint| (f64::from(point.x_mm), f64::from(point.y_mm));
    let mut best: Option<(f64, Foot)> = None;
    for ends in street.line.windows(2) {
        let [a, b] = ends else { continue };
        let Some((run, _)) = direction(a.point, b.point) else {
            continue;
        };
        let Some((x, y)) = meeting((place(end), along), (place(a.point), run)) else {
            continue;
        };
        let at = PlanPoint::new(x.round() as i32, y.round() as i32);
        let apart_mm = (at.squared_distance_mm2(end) as f64).sqrt();
        let is_on = near::foot_on_segment(at, a.point, b.point).2 <= 1.0;
        if is_on && apart_mm <= most_mm && best.is_none_or(|(held_mm, _)| apart_mm < held_mm) {
            best = near::foot_on_street(at, id, street).map(|foot| (apart_mm, foot));
        }
    }
    best.map(|(_, foot)| foot)
}
