//! Areas of a walk-shed. There are several in use and they differ widely, so each is named with its method.
//!
//! - hull: the convex hull of all reached pieces. On an endless fine square grid it is a diamond of 2 r², 2/π of the
//!   circle, so no such grid can do better by this method.
//! - buffer: the reached pieces widened by a distance, round at their ends.
//! - enclosed: the blocks whose whole boundary is reached.
//!
//! The headline of a shed is none of these but the homes, jobs and lots reached; areas are compared with a published
//! target only under that target's own method.

use crate::order;
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay::ShapeType;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use super::graph::{LinkId, Network};
use super::reach::Reach;
use crate::fabric::{Arrangement, SourceId, segments_of_line};
use crate::number;
use crate::plan::PlanPoint;

/// Buffers are worked out on a grid of tenths of a millimeter; the legal range of ±100 km stays within 30 bits.
const GRID_PER_MM: i32 = 10;

/// Corners of a full circle in a buffer. Sides of an inscribed 256-gon leave out 1e-4 of the circle, and circles are
/// only the ends of a buffer.
const CIRCLE_CORNERS: f64 = 256.0;

/// The widest buffer: 1 km; beyond it buffers of the legal range would leave the grid.
pub const WIDEST_BUFFER_M: f64 = 1_000.0;

/// Area of the convex hull of all pieces, in m²; their ends are rounded to the millimeter. O(n log n), exact.
#[must_use]
pub fn hull_area_m2(network: &Network, reach: &Reach) -> f64 {
    twice_hull_area_mm2(points_of(network, reach)) as f64 / 2e6
}

/// The convex hull of all pieces, counterclockwise; their ends are rounded to the millimeter. O(n log n), exact.
#[must_use]
pub fn hull(network: &Network, reach: &Reach) -> Vec<PlanPoint> {
    hull_of(points_of(network, reach))
}

fn points_of(network: &Network, reach: &Reach) -> Vec<PlanPoint> {
    let points = reach.pieces().iter().flat_map(|&piece| network.stretch_points(piece));
    points.collect()
}

/// Twice the area of the convex hull of points, in mm².
#[must_use]
pub fn twice_hull_area_mm2(points: Vec<PlanPoint>) -> i128 {
    let hull = hull_of(points);
    let Some(&first) = hull.first() else { return 0 };
    hull.windows(2)
        .map(|side| i128::from(first.cross(side[0], side[1])))
        .sum()
}

/// The corners of the convex hull of points, counterclockwise: Andrew's monotone chain.
fn hull_of(mut points: Vec<PlanPoint>) -> Vec<PlanPoint> {
    order::sort(&mut points);
    points.dedup();
    let half = |points: &mut dyn Iterator<Item = PlanPoint>| {
        let mut chain: Vec<PlanPoint> = Vec::new();
        for point in points {
            while let [.., before, last] = chain[..]
                && before.cross(last, point) <= 0
            {
                chain.pop();
            }
            chain.push(point);
        }
        chain.pop();
        chain
    };
    let mut hull = half(&mut points.iter().copied());
    hull.extend(half(&mut points.iter().rev().copied()));
    hull
}

/// Area of the blocks enclosed by links reached over their whole length, in m²: the bounded faces these links make.
#[must_use]
pub fn enclosed_area_m2(network: &Network, reach: &Reach) -> f64 {
    enclosed_by_m2(network, &reach.whole_links(network))
}

/// Area of the bounded faces that these links make, in m².
#[must_use]
pub fn enclosed_by_m2(network: &Network, links: &[LinkId]) -> f64 {
    let segments: Vec<_> = links
        .iter()
        .flat_map(|&link| segments_of_line(network.link_points(link), SourceId(link.0)).collect::<Vec<_>>())
        .collect();
    let arrangement = Arrangement::of(&segments);
    let twice_mm2: i128 = arrangement
        .bounded_faces()
        .map(|face| arrangement.twice_area_mm2(face))
        .sum();
    twice_mm2 as f64 / 2e6
}

/// Area of all pieces widened by `distance_m` to every side, round at their ends, in m²; each place counts once.
///
/// A rectangle for every straight piece and, at every point where pieces leave more than half of the directions free,
/// the sector between them; their union is taken on an integer grid, so the answer is the same everywhere. Ends of
/// pieces are rounded to the millimeter, circles to 256 corners. `None` unless the distance is more than zero and at
/// most [`WIDEST_BUFFER_M`].
#[must_use]
pub fn buffer_area_m2(network: &Network, reach: &Reach, distance_m: f64) -> Option<f64> {
    let union = buffer(network, reach, distance_m)?;
    let twice: i128 = union.iter().flatten().map(|ring| twice_ring_area(ring)).sum();
    Some(twice.unsigned_abs() as f64 / 2.0 / f64::from(GRID_PER_MM * GRID_PER_MM) / 1e6)
}

/// The land of [`buffer_area_m2`] as pieces, each a shell and its holes, rounded to the millimeter.
#[must_use]
pub fn buffer_pieces(network: &Network, reach: &Reach, distance_m: f64) -> Option<Vec<Vec<Vec<PlanPoint>>>> {
    let to_mm = |grid: i32| (f64::from(grid) / f64::from(GRID_PER_MM)).round() as i32;
    let ring = |ring: Vec<IntPoint>| -> Vec<PlanPoint> {
        let points = ring.iter().map(|point| PlanPoint::new(to_mm(point.x), to_mm(point.y)));
        points.collect()
    };
    let union = buffer(network, reach, distance_m)?;
    let pieces = union.into_iter().map(|piece| piece.into_iter().map(ring).collect());
    Some(pieces.collect())
}

fn buffer(network: &Network, reach: &Reach, distance_m: f64) -> Option<Vec<Vec<Vec<IntPoint>>>> {
    if !(0.0..=WIDEST_BUFFER_M).contains(&distance_m) || distance_m <= 0.0 {
        return None;
    }
    let mut sides: Vec<(PlanPoint, PlanPoint)> = Vec::new();
    for &piece in reach.pieces() {
        let points = network.stretch_points(piece);
        sides.extend(
            points
                .windows(2)
                .filter(|side| side[0] != side[1])
                .map(|side| (side[0].min(side[1]), side[0].max(side[1]))),
        );
    }
    order::sort(&mut sides);
    sides.dedup();
    let distance = distance_m * 1_000.0 * f64::from(GRID_PER_MM);
    let mut shapes: Vec<Vec<IntPoint>> = sides.iter().map(|&(a, b)| rectangle(a, b, distance)).collect();
    // Both directions of every side, by the point they leave.
    let mut leaving: Vec<(PlanPoint, PlanPoint)> = sides.iter().flat_map(|&(a, b)| [(a, b), (b, a)]).collect();
    order::sort(&mut leaving);
    for at_point in leaving.chunk_by(|a, b| a.0 == b.0) {
        let ends: Vec<PlanPoint> = at_point.iter().map(|&(_, end)| end).collect();
        shapes.extend(sector(at_point[0].0, &ends, distance));
    }
    let mut overlay = Overlay::new(shapes.iter().map(Vec::len).sum());
    overlay.add_source(&shapes, ShapeType::Subject);
    Some(overlay.overlay(OverlayRule::Subject, FillRule::NonZero))
}

/// A grid point near a point and an offset in grid units.
fn offset(point: PlanPoint, x: f64, y: f64) -> IntPoint {
    IntPoint::new(
        point.x_mm * GRID_PER_MM + x.round() as i32,
        point.y_mm * GRID_PER_MM + y.round() as i32,
    )
}

/// Unit vector from one point to another.
fn direction(from: PlanPoint, to: PlanPoint) -> (f64, f64) {
    let (x, y) = (
        f64::from(to.x_mm) - f64::from(from.x_mm),
        f64::from(to.y_mm) - f64::from(from.y_mm),
    );
    let length = number::length(x, y);
    (x / length, y / length)
}

/// The side widened by `distance` grid units, with flat ends, counterclockwise.
fn rectangle(a: PlanPoint, b: PlanPoint, distance: f64) -> Vec<IntPoint> {
    let (x, y) = direction(a, b);
    let (x, y) = (x * distance, y * distance);
    vec![offset(a, y, -x), offset(b, y, -x), offset(b, -y, x), offset(a, -y, x)]
}

/// The part of the circle about a point that the rectangles to `ends` leave open; `None` when they leave none.
///
/// Only one gap between neighboring directions can be more than half a turn; narrower ones are covered from both sides.
fn sector(point: PlanPoint, ends: &[PlanPoint], distance: f64) -> Option<Vec<IntPoint>> {
    let (before, after) = widest_gap(point, ends)?;
    let ((from_x, from_y), (to_x, to_y)) = (direction(point, before), direction(point, after));
    // From a quarter turn past the gap's first direction to a quarter turn before its last.
    let (start_x, start_y) = (-from_y * distance, from_x * distance);
    let start = number::atan2(from_x, -from_y);
    let end = number::atan2(-to_x, to_y);
    let turn = if end > start {
        end - start
    } else {
        end - start + std::f64::consts::TAU
    };
    let steps = (turn / std::f64::consts::TAU * CIRCLE_CORNERS).ceil().max(1.0);
    let mut corners = vec![offset(point, 0.0, 0.0), offset(point, start_x, start_y)];
    let mut step = 1.0;
    while step < steps {
        let angle = start + turn * step / steps;
        corners.push(offset(
            point,
            number::cos(angle) * distance,
            number::sin(angle) * distance,
        ));
        step += 1.0;
    }
    corners.push(offset(point, to_y * distance, -to_x * distance));
    Some(corners)
}

/// The two directions, counterclockwise neighbors, between which more than half a turn lies open; exact.
fn widest_gap(point: PlanPoint, ends: &[PlanPoint]) -> Option<(PlanPoint, PlanPoint)> {
    // A direction has more than half a turn after it when no direction lies to its left or straight behind.
    let open_after = |&from: &PlanPoint| {
        ends.iter().all(|&other| {
            let side = point.cross(from, other);
            side < 0 || (side == 0 && !opposite(point, from, other))
        })
    };
    let open_before = |&to: &PlanPoint| {
        ends.iter().all(|&other| {
            let side = point.cross(to, other);
            side > 0 || (side == 0 && !opposite(point, to, other))
        })
    };
    Some((
        ends.iter().copied().find(open_after)?,
        ends.iter().copied().find(open_before)?,
    ))
}

/// Whether two points lie in opposite directions, given that they lie on a line with the point between or beside.
fn opposite(point: PlanPoint, a: PlanPoint, b: PlanPoint) -> bool {
    let part = |point: i32, a: i32, b: i32| {
        (i64::from(a) - i64::from(point)).signum() * (i64::from(b) - i64::from(point)).signum()
    };
    part(point.x_mm, a.x_mm, b.x_mm) < 0 || part(point.y_mm, a.y_mm, b.y_mm) < 0
}

/// Twice the signed area of a ring.
fn twice_ring_area(ring: &[IntPoint]) -> i128 {
    let ahead = ring.iter().skip(1).chain(ring.first());
    ring.iter()
        .zip(ahead)
        .map(|(a, b)| i128::from(a.x) * i128::from(b.y) - i128::from(b.x) * i128::from(a.y))
        .sum()
}

#[cfg(test)]
mod tests;
