//! Ties: vertices that hold on to a place along another street and go where it goes.
//!
//! A tie names a street, a segment of its centerline and a share of that segment. The *foot* is that place, rounded to
//! the millimeter (on the arc, where the corner is rounded there), and a tied vertex stands on it. Whenever a street
//! changes, [`settle_ties`] works out what follows, as more edits of the same gesture:
//! - a street moved or reshaped takes its ties along, at their shares;
//! - vertices added or removed, a street cut in two or joined to another leave each tie at its place;
//! - a removed street lets go of what held on to it, where it stands;
//! - a tied vertex that is moved by itself goes back to its foot: to move it, let it go or tie it elsewhere.
//!
//! Streets never hold on to each other in a circle: an edit that would is refused. A file that does so is opened with
//! the offending ties let go ([`release_unusable_ties`]), each listed.

use crate::order;
use crate::order::{OrderedMap, OrderedSet};
use crate::say;
use std::fmt;

use super::coordinates::PlanPoint;
use super::document::Document;
use super::edit::Edit;
use super::flatten::{Arc, arc_at};
use super::ids::{AlternativeId, MarkId};
use super::mark::Mark;
use super::street::{Street, Tie, Vertex};

mod follow;

use follow::Streets;

/// Parts per billion in a whole: the end of a segment.
pub const WHOLE_PPB: u32 = 1_000_000_000;

/// A tie follows a cut to another street when that street passes within this distance of where it stood. Feet are
/// rounded to a millimeter and so are the cut's new vertices, which can bend the line by two more.
const SAME_PLACE_MM: i64 = 3;

/// Why ties can not be settled.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TieFault {
    /// Streets that would hold on to each other in a circle, each to the next and the last to the first.
    Circle(Vec<MarkId>),
}

impl fmt::Display for TieFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self::Circle(streets) = self;
        if let [street] = streets.as_slice() {
            return formatter.write_str(&say!("plan-tie-to-itself", street = street.0));
        }
        let mut streets = streets.iter().map(|street| street.0.to_string());
        let first = streets.next().unwrap_or_default();
        let circle = streets.fold(first, |from, to| say!("plan-tie-from-to", from = from, to = to));
        formatter.write_str(&say!("plan-tie-circle", streets = circle))
    }
}

impl std::error::Error for TieFault {}

/// A tie that was let go on opening, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReleasedTie {
    /// The street whose vertex was tied.
    pub street: MarkId,
    /// The vertex, from 0.
    pub vertex: usize,
    /// The tie it had.
    pub tie: Tie,
    /// Why it could not be kept.
    pub reason: ReleaseReason,
}

/// Why a tie could not be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReleaseReason {
    /// There is no such street in the alternative.
    NoStreet,
    /// The street has no such segment, or the share lies beyond its end.
    NoPlace,
    /// It closed a circle.
    Circle,
}

/// The point where a tie at this place of `line` stands: exact share of the segment, rounded to the millimeter with
/// halves upward; where a corner of the segment is rounded, the point of the flattened line nearest to that. `None` where
/// the line has no such place.
#[must_use]
pub fn foot(line: &[Vertex], segment: u32, along_ppb: u32) -> Option<PlanPoint> {
    let segment = segment as usize;
    let (start, end) = (line.get(segment)?.point, line.get(segment + 1)?.point);
    if along_ppb > WHOLE_PPB {
        return None;
    }
    let rounded = |from: i32, to: i32| {
        let (whole, difference) = (i128::from(WHOLE_PPB), i128::from(to) - i128::from(from));
        let twice = 2 * (i128::from(from) * whole + difference * i128::from(along_ppb)) + whole;
        twice.div_euclid(2 * whole) as i32
    };
    let point = PlanPoint::new(rounded(start.x_mm, end.x_mm), rounded(start.y_mm, end.y_mm));
    // The arc takes over between its tangent point and the corner.
    let is_beyond = |tangent: Option<&PlanPoint>, corner: PlanPoint| {
        tangent.is_some_and(|tangent| corner.squared_distance_mm2(point) < corner.squared_distance_mm2(*tangent))
    };
    let arcs: [Option<Arc>; 2] = [arc_at(line, segment), arc_at(line, segment + 1)];
    match &arcs {
        [None, None] => Some(point),
        [Some(arc), _] if is_beyond(arc.points.last(), start) => Some(nearest_on(&arc.points, point)),
        [_, Some(arc)] if is_beyond(arc.points.first(), end) => Some(nearest_on(&arc.points, point)),
        // Tangent points are rounded, which turns the straight piece between them by a hair: the foot is on that piece,
        // so that the drawn line passes through the foot's millimeter.
        [at_start, at_end] => {
            let from = at_start.as_ref().and_then(|arc| arc.points.last()).unwrap_or(&start);
            let to = at_end.as_ref().and_then(|arc| arc.points.first()).unwrap_or(&end);
            Some(nearest_on(&[*from, *to], point))
        }
    }
}

/// The place along `line` nearest to `point`, as a tie to `street`, and its foot; `None` for a line without vertices to
/// hold on to. Among equally near places the first along the line is taken. Cost: linear in the vertices.
///
/// ```
/// use hobnail_core::plan::{MarkId, PlanPoint, Vertex, tie::nearest_tie};
/// let line = [(0, 0), (1000, 0)].map(|(x, y)| Vertex::at(PlanPoint::new(x, y)));
/// let (tie, foot) = nearest_tie(MarkId(7), &line, PlanPoint::new(250, 90)).unwrap();
/// assert_eq!((tie.segment, tie.along_ppb, foot), (0, 250_000_000, PlanPoint::new(250, 0)));
/// ```
#[must_use]
pub fn nearest_tie(street: MarkId, line: &[Vertex], point: PlanPoint) -> Option<(Tie, PlanPoint)> {
    nearest_within(street, line, 0..line.len().saturating_sub(1), point)
}

/// [`nearest_tie`] among some of the segments.
fn nearest_within(
    street: MarkId,
    line: &[Vertex],
    segments: std::ops::Range<usize>,
    point: PlanPoint,
) -> Option<(Tie, PlanPoint)> {
    segments
        .filter_map(|segment| {
            let along_ppb = nearest_share(line.get(segment)?.point, line.get(segment + 1)?.point, point);
            let segment = u32::try_from(segment).ok()?;
            let foot = foot(line, segment, along_ppb)?;
            Some((
                Tie {
                    street,
                    segment,
                    along_ppb,
                },
                foot,
            ))
        })
        .min_by_key(|(tie, foot)| (foot.squared_distance_mm2(point), tie.segment))
}

/// Share of the segment from `start` to `end` nearest to `point`, in parts per billion, rounded.
pub(crate) fn nearest_share(start: PlanPoint, end: PlanPoint, point: PlanPoint) -> u32 {
    let across = |from: i32, to: i32| i128::from(to) - i128::from(from);
    let (x, y) = (across(start.x_mm, end.x_mm), across(start.y_mm, end.y_mm));
    let squared = x * x + y * y;
    if squared == 0 {
        return 0;
    }
    let dot = x * across(start.x_mm, point.x_mm) + y * across(start.y_mm, point.y_mm);
    let share = (dot * i128::from(WHOLE_PPB) + squared / 2).div_euclid(squared);
    share.clamp(0, i128::from(WHOLE_PPB)) as u32
}

/// The point of a polyline nearest to `point`, rounded to the millimeter.
fn nearest_on(points: &[PlanPoint], point: PlanPoint) -> PlanPoint {
    let line: Vec<Vertex> = points.iter().map(|&point| Vertex::at(point)).collect();
    nearest_tie(MarkId(0), &line, point).map_or(point, |(_, foot)| foot)
}

/// The further edits that keep ties true when `edits` are made to `document`: apply them after `edits`.
///
/// Streets that neither change nor hold on to one that does are left as they are. Ties written by `edits` themselves
/// refer to the streets as `edits` leave them. Cost: one look at each vertex of the alternative; almost linear in the
/// streets that hold on to others; for each street cut, its vertices times its ties.
///
/// # Errors
/// [`TieFault::Circle`] when streets would hold on to each other in a circle; nothing should then be applied.
pub fn settle_ties(document: &Document, alternative: AlternativeId, edits: &[Edit]) -> Result<Vec<Edit>, TieFault> {
    let streets = Streets::over(document, alternative, edits);
    if streets.changed.is_empty() {
        return Ok(Vec::new());
    }
    let mut settled: OrderedMap<MarkId, Street> = OrderedMap::new();
    // A street that holds on to none neither moves by itself nor is part of a circle.
    let holders = streets.holders();
    for (id, street) in &holders {
        if let Some(rewritten) = streets.with_ties_kept_in_place(*id, street) {
            settled.insert(*id, rewritten);
        }
    }
    let holds = |id: MarkId| settled.get(&id).or_else(|| streets.after(id));
    let holders: Vec<MarkId> = holders.iter().map(|(id, _)| *id).collect();
    let order = in_holding_order(&holders, |id| holds(id).map_or_else(Vec::new, ties_of))?;
    // Held streets come first, so each foot is read from a line that is already in place.
    let mut moved = streets.changed.clone();
    for id in order {
        let Some(street) = settled.get(&id).or_else(|| streets.after(id)) else {
            continue;
        };
        let is_affected = moved.contains(&id) || ties_of(street).iter().any(|held| moved.contains(held));
        if !is_affected {
            continue;
        }
        let mut standing = street.clone();
        for vertex in &mut standing.line {
            let Some(tie) = vertex.tie else { continue };
            let held = settled.get(&tie.street).or_else(|| streets.after(tie.street));
            match held.and_then(|held| foot(&held.line, tie.segment, tie.along_ppb)) {
                Some(foot) => vertex.point = foot,
                None => vertex.tie = None,
            }
        }
        if standing != *street {
            moved.insert(id);
            settled.insert(id, standing);
        }
    }
    let edit = |(id, street): (MarkId, Street)| {
        let before = streets.after(id)?;
        (street != *before).then(|| Edit::Mark {
            alternative,
            id,
            before: Some(Box::new(Mark::Street(before.clone()))),
            after: Some(Box::new(Mark::Street(street))),
        })
    };
    Ok(settled.into_iter().filter_map(edit).collect())
}

/// Lets go of ties that can not be kept: to no street, to no place of it, or closing a circle
/// ([`circle_closing_holds`]). Coordinates stay. The released are listed in order of street and vertex.
pub fn release_unusable_ties(marks: &mut OrderedMap<MarkId, Mark>) -> Vec<ReleasedTie> {
    let segments = |mark: &Mark| Some(mark.as_street()?.line.len().saturating_sub(1));
    let segment_counts = OrderedMap::from_iter(marks.iter().filter_map(|(id, mark)| Some((*id, segments(mark)?))));
    let reason_against = |tie: Tie| match segment_counts.get(&tie.street) {
        None => Some(ReleaseReason::NoStreet),
        Some(&count) if tie.segment as usize >= count || tie.along_ppb > WHOLE_PPB => Some(ReleaseReason::NoPlace),
        Some(_) => None,
    };
    let ids: Vec<MarkId> = segment_counts.keys().copied().collect();
    let closing = circle_closing_holds(&ids, |id| {
        let line = marks
            .get(&id)
            .and_then(Mark::as_street)
            .map_or(&[][..], |street| &street.line);
        let usable = line
            .iter()
            .filter_map(|vertex| vertex.tie)
            .filter(|tie| reason_against(*tie).is_none());
        let mut held: Vec<MarkId> = usable.map(|tie| tie.street).collect();
        order::sort(&mut held);
        held.dedup();
        held
    });
    let mut released = Vec::new();
    for (&street, mark) in marks.iter_mut() {
        let Mark::Street(body) = mark else { continue };
        for (vertex, held_vertex) in body.line.iter_mut().enumerate() {
            let Some(tie) = held_vertex.tie else { continue };
            let is_closing = closing.contains(&(street, tie.street));
            if let Some(reason) = reason_against(tie).or(is_closing.then_some(ReleaseReason::Circle)) {
                held_vertex.tie = None;
                released.push(ReleasedTie {
                    street,
                    vertex,
                    tie,
                    reason,
                });
            }
        }
    }
    released
}

/// The streets a street holds on to, each once, in order of id.
#[must_use]
pub fn ties_of(street: &Street) -> Vec<MarkId> {
    let mut held: Vec<MarkId> = street
        .line
        .iter()
        .filter_map(|vertex| Some(vertex.tie?.street))
        .collect();
    order::sort(&mut held);
    held.dedup();
    held
}

/// `ids` ordered so that each comes after all it holds on to; ids not among `ids` are passed over.
///
/// # Errors
/// [`TieFault::Circle`] with the first circle met.
pub fn in_holding_order(ids: &[MarkId], held_by: impl Fn(MarkId) -> Vec<MarkId>) -> Result<Vec<MarkId>, TieFault> {
    let mut circle = None;
    let order = walk(ids, held_by, |path, closing| {
        if circle.is_none() {
            let start = path.iter().position(|(id, _)| *id == closing).unwrap_or(0);
            circle = Some(path[start..].iter().map(|(id, _)| *id).collect());
        }
    });
    circle.map_or(Ok(order), |circle| Err(TieFault::Circle(circle)))
}

/// The holds that close a circle with others: each as the street that holds and the street it holds on to. Without them
/// there is no circle left. Streets are walked depth first from the least id up, so the choice is always the same.
///
/// Cost: linear in streets and holds, times a logarithm.
#[must_use]
pub fn circle_closing_holds(ids: &[MarkId], held_by: impl Fn(MarkId) -> Vec<MarkId>) -> OrderedSet<(MarkId, MarkId)> {
    let mut closing = OrderedSet::new();
    walk(ids, held_by, |path, to| {
        closing.extend(path.last().map(|(from, _)| (*from, to)))
    });
    closing
}

/// Walks from each of `ids` to what it holds on to, depth first; gives the ids in the order they were left, and calls
/// `on_circle` with the path walked and the street on it that its last holds on to.
fn walk(
    ids: &[MarkId],
    held_by: impl Fn(MarkId) -> Vec<MarkId>,
    mut on_circle: impl FnMut(&[(MarkId, Vec<MarkId>)], MarkId),
) -> Vec<MarkId> {
    let known = OrderedSet::from_iter(ids.iter().copied());
    let mut order = Vec::with_capacity(ids.len());
    let (mut done, mut on_path) = (OrderedSet::new(), OrderedSet::new());
    for &start in ids {
        // A path of streets, each with what it holds on to and has not yet been looked at.
        let mut path: Vec<(MarkId, Vec<MarkId>)> = Vec::new();
        if !done.contains(&start) {
            path.push((start, held_by(start)));
            on_path.insert(start);
        }
        while let Some((id, waiting)) = path.last_mut() {
            let id = *id;
            match waiting.pop() {
                None => {
                    done.insert(id);
                    on_path.remove(&id);
                    order.push(id);
                    path.pop();
                }
                Some(next) if done.contains(&next) || !known.contains(&next) => {}
                Some(next) if on_path.contains(&next) => on_circle(&path, next),
                Some(next) => {
                    path.push((next, held_by(next)));
                    on_path.insert(next);
                }
            }
        }
    }
    order
}

#[cfg(test)]
mod tests;
