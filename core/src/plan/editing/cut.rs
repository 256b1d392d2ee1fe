//! Cutting a centerline in two and joining two end to end.

use super::rounding::corner;
use super::{ahead, direction, place, rounded};
use crate::plan::MarkId;
use crate::plan::coordinates::PlanPoint;
use crate::plan::flatten::{Arc, arc_at};
use crate::plan::street::Vertex;
use crate::plan::tie::{WHOLE_PPB, foot, nearest_tie};

/// Ends at most this far apart are one place: feet are rounded to a millimeter.
const SAME_PLACE_MM: i64 = 3;
/// A joint that bends the line by at most this is none.
const STRAIGHT_MM: i64 = 1;

/// The two parts of a line cut at a place of a segment, the second beginning where the first ends; `None` at its ends
/// and where it has no such place.
///
/// A cut within a rounded corner leaves both parts on its curve: each gets a corner of its own on the tangent there, of
/// the same radius. What the cut corner held on to, the first part holds. Cost: linear in the vertices.
#[must_use]
pub fn cut(line: &[Vertex], segment: u32, along_ppb: u32) -> Option<(Vec<Vertex>, Vec<Vertex>)> {
    let at = foot(line, segment, along_ppb)?;
    let segment = segment as usize;
    // A radius that was reduced to fit would grow where the cut gives it more room.
    let mut fitted = line.to_vec();
    for index in 0..line.len() {
        if let (Some(corner), Some(vertex)) = (corner(line, index, false), fitted.get_mut(index)) {
            vertex.corner_radius_mm = vertex.corner_radius_mm.min(corner.largest_mm as u32);
        }
    }
    let line = &fitted;
    let (start, end) = (line.get(segment)?, line.get(segment + 1)?);
    let at_vertex = [segment, segment + 1].into_iter().find(|index| {
        line.get(*index)
            .is_some_and(|vertex| vertex.point == at || (along_ppb == if *index == segment { 0 } else { WHOLE_PPB }))
    });
    if let Some(index) = at_vertex {
        if index == 0 || index + 1 >= line.len() {
            return None;
        }
        if arc_at(line, index).is_none() {
            let mut joint = *line.get(index)?;
            joint.corner_radius_mm = 0;
            let first = line.get(..index)?.iter().copied().chain([joint]).collect();
            let rest = line.get(index + 1..)?.iter().copied();
            let second = [Vertex::at(joint.point)].into_iter().chain(rest).collect();
            return Some((first, second));
        }
    }
    let arcs = [arc_at(line, segment), arc_at(line, segment + 1)];
    let on_arc = arcs.into_iter().flatten().find(|arc| is_on(arc, at));
    let (before, after) = match &on_arc {
        Some(arc) => (arc.vertex, arc.vertex + 1),
        None => (segment + 1, segment + 1),
    };
    let mut first = line.get(..before)?.to_vec();
    let mut second = line.get(after..)?.to_vec();
    let mut joint = at;
    if let Some(arc) = on_arc
        && let Some((one, on_curve, other)) = tangent_corners(line.get(arc.vertex)?.point, &arc, at)
    {
        joint = on_curve;
        // Between two rounded corners a vertex tells each how much of the run is its own.
        let is_rounded = |vertex: Option<&Vertex>| vertex.is_some_and(|vertex| vertex.corner_radius_mm > 0);
        if is_rounded(first.last()) {
            first.extend(arc.points.first().map(|tangent| Vertex::at(*tangent)));
        }
        if is_rounded(second.first()) {
            let tangent = arc.points.last().map(|tangent| Vertex::at(*tangent));
            second.splice(0..0, tangent);
        }
        first.push(one);
        second.insert(0, other);
    }
    first.push(Vertex::at(joint));
    second.insert(0, Vertex::at(joint));
    let is_short = |part: &[Vertex]| part.windows(2).all(|ends| matches!(ends, [a, b] if a.point == b.point));
    (start.point != end.point && !is_short(&first) && !is_short(&second)).then_some((first, second))
}

/// Whether `at` is a place of the arc other than its ends.
fn is_on(arc: &Arc, at: PlanPoint) -> bool {
    let line: Vec<Vertex> = arc.points.iter().map(|point| Vertex::at(*point)).collect();
    let is_end = |end: Option<&PlanPoint>| end == Some(&at);
    let near = nearest_tie(MarkId(0), &line, at);
    near.is_some_and(|(_, foot)| foot.squared_distance_mm2(at) <= SAME_PLACE_MM * SAME_PLACE_MM)
        && !is_end(arc.points.first())
        && !is_end(arc.points.last())
}

/// Where the tangent of an arc at `at` meets the two legs of its corner, as corners of the arc's radius, and `at` moved
/// on to the arc itself. With a and b from the middle to a tangent point and to `at`, of radius r, the meeting lies
/// r tan(φ/2) = r |a × b| / (r² + a · b) from the tangent point.
fn tangent_corners(corner: PlanPoint, arc: &Arc, at: PlanPoint) -> Option<(Vertex, PlanPoint, Vertex)> {
    let (start, end) = (*arc.points.first()?, *arc.points.last()?);
    let (to_start, tangent_mm) = direction(corner, start)?;
    let (to_end, _) = direction(corner, end)?;
    let cosine = to_start.0 * to_end.0 + to_start.1 * to_end.1;
    let sine = (to_start.0 * to_end.1 - to_start.1 * to_end.0).abs();
    let radius_mm = tangent_mm * sine / (1.0 + cosine);
    let across = (to_start.0 + to_end.0, to_start.1 + to_end.1);
    let across_length = (across.0 * across.0 + across.1 * across.1).sqrt();
    let inward = (across.0 / across_length, across.1 / across_length);
    let from_corner_mm = (tangent_mm * tangent_mm + radius_mm * radius_mm).sqrt();
    let middle = ahead(place(corner), inward, from_corner_mm);
    let ((out, _), radius) = (direction(rounded(middle), at)?, radius_mm);
    let joint = ahead(middle, out, radius);
    let meeting = |tangent: PlanPoint| {
        let (tangent, b) = (place(tangent), (joint.0 - middle.0, joint.1 - middle.1));
        let a = (tangent.0 - middle.0, tangent.1 - middle.1);
        let along_mm = radius * (a.0 * b.1 - a.1 * b.0).abs() / (radius * radius + a.0 * b.0 + a.1 * b.1);
        let (toward, _) = direction(rounded(tangent), corner)?;
        let mut vertex = Vertex::at(rounded(ahead(tangent, toward, along_mm)));
        vertex.corner_radius_mm = radius.round() as u32;
        Some(vertex)
    };
    Some((meeting(start)?, rounded(joint), meeting(end)?))
}

/// Two lines as one, joined where their ends are nearest; the first keeps its direction. Ends in one place become one
/// vertex, which goes where it bends nothing and holds nothing; ends apart are joined by a straight run. Also whether the
/// second was turned about.
/// Cost: linear in the vertices.
#[must_use]
pub fn join(first: &[Vertex], second: &[Vertex]) -> (Vec<Vertex>, bool) {
    let end = |line: &[Vertex], is_last: bool| if is_last { line.last() } else { line.first() }.map(|end| end.point);
    let apart_mm2 = |at_last: bool, to_last: bool| match (end(first, at_last), end(second, to_last)) {
        (Some(one), Some(other)) => one.squared_distance_mm2(other),
        _ => i64::MAX,
    };
    let ways = [(true, false), (true, true), (false, true), (false, false)];
    let nearest = ways
        .into_iter()
        .min_by_key(|(at_last, to_last)| apart_mm2(*at_last, *to_last));
    let (at_last, to_last) = nearest.unwrap_or((true, false));
    let mut second = second.to_vec();
    let is_turned = at_last == to_last;
    if is_turned {
        second.reverse();
    }
    let (head, tail) = if at_last {
        (first.to_vec(), second)
    } else {
        (second, first.to_vec())
    };
    let joint = head.len();
    let mut line = head;
    if apart_mm2(at_last, to_last) > SAME_PLACE_MM * SAME_PLACE_MM {
        line.extend(tail);
        return (line, is_turned);
    }
    if let (Some(last), Some(first)) = (line.last_mut(), tail.first()) {
        last.tie = last.tie.or(first.tie);
    }
    line.extend(tail.into_iter().skip(1));
    let around = joint.checked_sub(2).and_then(|before| line.get(before..=joint));
    if let Some([before, at, after]) = around {
        let ends = [*before, *after].map(|vertex| Vertex::at(vertex.point));
        let is_straight = nearest_tie(MarkId(0), &ends, at.point)
            .is_some_and(|(_, foot)| foot.squared_distance_mm2(at.point) <= STRAIGHT_MM * STRAIGHT_MM);
        // Between rounded corners it tells each how much of the run is its own.
        let is_shared = before.corner_radius_mm > 0 && after.corner_radius_mm > 0;
        if is_straight && at.tie.is_none() && !is_shared {
            line.remove(joint - 1);
        }
    }
    (line, is_turned)
}

#[cfg(test)]
mod tests;
