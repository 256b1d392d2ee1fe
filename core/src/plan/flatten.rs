//! Rounded corners to straight pieces: the one place where arcs become polylines.
//!
//! A vertex with a corner radius is replaced by an arc tangent to both adjoining segments, and the arc by chords whose
//! sagitta is at most [`SAGITTA_MM`] before its points are rounded to the millimeter. A corner may use up to half of a
//! segment whose other end is rounded too, and all of one whose other end is sharp; a larger radius is reduced to fit.
//! The ends of a line are never rounded, not even where it closes on itself, so that what meets it there stays joined.
//!
//! Each corner depends only on itself and its two neighbors, and not on the direction of the line: the flattened
//! reverse is the reversed flattening, point for point.

use super::coordinates::PlanPoint;
use super::street::Vertex;
use crate::number;

/// Largest distance between an arc and its chords, in millimeters, before rounding. Smaller draws more pieces than can
/// be seen or built; larger shows as corners on a print at 1 : 200.
pub const SAGITTA_MM: f64 = 10.0;

/// A corner's rounding: the arc's points in order along the line, first and last tangent to the segments.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Arc {
    /// Index of the rounded vertex in the given line.
    pub vertex: usize,
    /// Points from the tangent point before the vertex to the one after it.
    pub points: Vec<PlanPoint>,
}

/// The polyline a centerline is drawn and measured by; repeated points are left out.
///
/// Fewer than two points come back for a line that has no length. Cost: linear in the points returned.
///
/// ```
/// use hobnail_core::plan::{PlanPoint, Vertex, flatten::flatten};
/// let mut line = [(0, 0), (100_000, 0), (100_000, 100_000)].map(|(x, y)| Vertex::at(PlanPoint::new(x, y)));
/// line[1].corner_radius_mm = 20_000;
/// let flat = flatten(&line);
/// assert_eq!(flat[1], PlanPoint::new(80_000, 0));
/// assert_eq!(flat[flat.len() - 2], PlanPoint::new(100_000, 20_000));
/// ```
#[must_use]
pub fn flatten(line: &[Vertex]) -> Vec<PlanPoint> {
    let mut arcs = arcs(line).into_iter().peekable();
    let mut points: Vec<PlanPoint> = Vec::with_capacity(line.len());
    let push = |points: &mut Vec<PlanPoint>, point: PlanPoint| {
        if points.last() != Some(&point) {
            points.push(point);
        }
    };
    for (index, vertex) in line.iter().enumerate() {
        match arcs.next_if(|arc| arc.vertex == index) {
            Some(arc) => arc.points.into_iter().for_each(|point| push(&mut points, point)),
            None => push(&mut points, vertex.point),
        }
    }
    points
}

/// The arcs of a centerline's rounded corners, in order along it; corners too slight or too sharp to round have none.
#[must_use]
pub fn arcs(line: &[Vertex]) -> Vec<Arc> {
    (0..line.len()).filter_map(|index| arc_at(line, index)).collect()
}

/// The arc at one vertex of a centerline, `None` where it is not rounded. Cost: the points returned.
#[must_use]
pub fn arc_at(line: &[Vertex], vertex: usize) -> Option<Arc> {
    let is_rounded = vertex > 0 && vertex + 1 < line.len() && line[vertex].corner_radius_mm > 0;
    let points = is_rounded.then(|| corner(line, vertex)).flatten()?;
    Some(Arc { vertex, points })
}

/// The arc at vertex `index` of `line`, a rounded one with a neighbor on either side.
fn corner(line: &[Vertex], index: usize) -> Option<Vec<PlanPoint>> {
    let vertex = line[index];
    let (before, after) = (line[index - 1], line[index + 1]);
    // Only inner vertices are rounded, so only they take their half of the segment.
    let is_rounded = |neighbor: usize| neighbor > 0 && neighbor + 1 < line.len() && line[neighbor].corner_radius_mm > 0;
    let legs = [
        Leg::new(vertex.point, before.point, is_rounded(index - 1)),
        Leg::new(vertex.point, after.point, is_rounded(index + 1)),
    ];
    let is_swapped = before.point > after.point;
    let [first, second] = if is_swapped { [legs[1], legs[0]] } else { legs };
    let mut points = arc_between(vertex.point, first, second, f64::from(vertex.corner_radius_mm))?;
    if is_swapped {
        points.reverse();
    }
    Some(points)
}

/// One of the two segments at a corner, seen from the corner.
#[derive(Clone, Copy)]
struct Leg {
    x_mm: i64,
    y_mm: i64,
    length_mm: f64,
    usable_mm: f64,
}

impl Leg {
    fn new(corner: PlanPoint, end: PlanPoint, is_shared: bool) -> Self {
        let length_mm = (corner.squared_distance_mm2(end) as f64).sqrt();
        Self {
            x_mm: i64::from(end.x_mm) - i64::from(corner.x_mm),
            y_mm: i64::from(end.y_mm) - i64::from(corner.y_mm),
            length_mm,
            usable_mm: if is_shared { length_mm / 2.0 } else { length_mm },
        }
    }
}

/// The arc from `first` to `second` about their common corner; `None` where the legs have no length or no angle.
fn arc_between(corner: PlanPoint, first: Leg, second: Leg, radius_mm: f64) -> Option<Vec<PlanPoint>> {
    let cross = first.x_mm * second.y_mm - first.y_mm * second.x_mm;
    if cross == 0 {
        return None;
    }
    let lengths = first.length_mm * second.length_mm;
    let cosine = (first.x_mm * second.x_mm + first.y_mm * second.y_mm) as f64 / lengths;
    let sine = cross.unsigned_abs() as f64 / lengths;
    // Cotangent of half the angle between the legs, by whichever form does not cancel.
    let cotangent = if cosine < 0.0 {
        sine / (1.0 - cosine)
    } else {
        (1.0 + cosine) / sine
    };
    let tangent_length_mm = (radius_mm * cotangent).min(first.usable_mm).min(second.usable_mm);
    let radius_mm = tangent_length_mm / cotangent;
    let (x, y) = (f64::from(corner.x_mm), f64::from(corner.y_mm));
    let along = |leg: Leg| {
        let share = tangent_length_mm / leg.length_mm;
        (x + leg.x_mm as f64 * share, y + leg.y_mm as f64 * share)
    };
    let (start, end) = (along(first), along(second));
    // The center lies a radius from the first tangent point, square to the leg, on the second leg's side.
    let hand = if cross > 0 { 1.0 } else { -1.0 };
    let center = (
        start.0 - hand * first.y_mm as f64 / first.length_mm * radius_mm,
        start.1 + hand * first.x_mm as f64 / first.length_mm * radius_mm,
    );
    // The arc turns by what the legs lack to a straight line, against the hand.
    let turn_rad = std::f64::consts::PI - number::atan2(sine, cosine);
    let chord_turn_rad = 2.0 * number::acos((1.0 - SAGITTA_MM / radius_mm).max(-1.0));
    let pieces = (turn_rad / chord_turn_rad).ceil().max(1.0) as u32;
    let start_rad = number::atan2(start.1 - center.1, start.0 - center.0);
    let rounded = |(x_mm, y_mm): (f64, f64)| PlanPoint::new(x_mm.round() as i32, y_mm.round() as i32);
    let mut points = vec![rounded(start)];
    for piece in 1..pieces {
        let angle_rad = start_rad - hand * turn_rad * f64::from(piece) / f64::from(pieces);
        points.push(rounded((
            center.0 + radius_mm * number::cos(angle_rad),
            center.1 + radius_mm * number::sin(angle_rad),
        )));
    }
    points.push(rounded(end));
    Some(points)
}

#[cfg(test)]
mod tests;
