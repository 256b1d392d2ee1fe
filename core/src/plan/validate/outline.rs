//! Lines and outlines: whether they have length or area, and whether an outline crosses itself.

use super::{FaultKind, FaultPlace, Findings};
use crate::order;
use crate::plan::coordinates::PlanPoint;
use crate::plan::inside::segments_meet;

/// Checks a line, whose points are `points`; `place` says where a point of it is.
pub(super) fn check_line(
    points: &[PlanPoint],
    place: impl Fn(Option<PlanPoint>) -> FaultPlace,
    findings: &mut Findings,
) {
    if !are_legal(points, &place, findings) {
        return;
    }
    if distinct_count(points, 2) < 2 {
        findings.add(place(points.first().copied()), FaultKind::TooShortLine);
    }
}

/// Checks an outline, closed by itself.
pub(super) fn check_outline(
    points: &[PlanPoint],
    place: impl Fn(Option<PlanPoint>) -> FaultPlace,
    findings: &mut Findings,
) {
    if !are_legal(points, &place, findings) {
        return;
    }
    if distinct_count(points, 3) < 3 {
        findings.add(place(points.first().copied()), FaultKind::TooFewCorners);
    } else if twice_area_mm2(points) == 0 && points.windows(3).all(|three| three[0].cross(three[1], three[2]) == 0) {
        findings.add(place(points.first().copied()), FaultKind::NoArea);
    } else if let Some(point) = self_crossing(points) {
        findings.add(place(Some(point)), FaultKind::CrossesItself);
    }
}

/// Checks that points are within the legal range; each that is not is a fault.
pub(super) fn are_legal(
    points: &[PlanPoint],
    place: impl Fn(Option<PlanPoint>) -> FaultPlace,
    findings: &mut Findings,
) -> bool {
    let illegal = points.iter().filter(|point| !point.is_legal());
    let before = findings.faults.len();
    illegal.for_each(|&point| findings.add(place(Some(point)), FaultKind::BeyondLimit));
    findings.faults.len() == before
}

/// How many distinct points there are, counted up to `enough`.
fn distinct_count(points: &[PlanPoint], enough: usize) -> usize {
    let mut distinct: Vec<PlanPoint> = Vec::with_capacity(enough);
    for point in points {
        if distinct.len() < enough && !distinct.contains(point) {
            distinct.push(*point);
        }
    }
    distinct.len()
}

/// Whether an outline, closed by itself, runs clockwise, exact; one without area does not.
#[must_use]
pub fn is_clockwise(outline: &[PlanPoint]) -> bool {
    twice_area_mm2(outline) < 0
}

/// Twice the signed area of an outline, exact: positive when counterclockwise.
fn twice_area_mm2(points: &[PlanPoint]) -> i128 {
    let edges = points.iter().zip(points.iter().cycle().skip(1));
    edges
        .map(|(a, b)| i128::from(a.x_mm) * i128::from(b.y_mm) - i128::from(b.x_mm) * i128::from(a.y_mm))
        .sum()
}

/// A point near which an outline crosses or touches itself: an end of one of two edges that share more than the corner
/// between them. Cost: edges are compared where their spans in x overlap.
#[must_use]
pub fn self_crossing(points: &[PlanPoint]) -> Option<PlanPoint> {
    let mut corners: Vec<PlanPoint> = points.to_vec();
    corners.dedup();
    if corners.len() > 1 && corners.first() == corners.last() {
        corners.pop();
    }
    let count = corners.len();
    let edge = |index: usize| (corners[index], corners[(index + 1) % count]);
    let mut order: Vec<usize> = (0..count).collect();
    let low = |index: usize| edge(index).0.x_mm.min(edge(index).1.x_mm);
    let high = |index: usize| edge(index).0.x_mm.max(edge(index).1.x_mm);
    order::sort_by_key(&mut order, |&index| (low(index), index));
    let mut open: Vec<usize> = Vec::new();
    for index in order {
        open.retain(|&earlier| high(earlier) >= low(index));
        let (a, b) = edge(index);
        for &earlier in &open {
            let (c, d) = edge(earlier);
            let follows = (earlier + 1) % count == index;
            let precedes = (index + 1) % count == earlier;
            let is_crossing = if follows || precedes {
                let (before, corner, after) = if follows { (c, a, b) } else { (a, c, d) };
                is_turning_back(before, corner, after)
            } else {
                segments_meet([a, b], [c, d])
            };
            if is_crossing {
                return Some(a);
            }
        }
        open.push(index);
    }
    None
}

/// Whether the way from `before` by `corner` to `after` runs back on itself.
fn is_turning_back(before: PlanPoint, corner: PlanPoint, after: PlanPoint) -> bool {
    let (u, v) = (before - corner, after - corner);
    let dot = i64::from(u.x_mm) * i64::from(v.x_mm) + i64::from(u.y_mm) * i64::from(v.y_mm);
    corner.cross(before, after) == 0 && dot > 0
}
