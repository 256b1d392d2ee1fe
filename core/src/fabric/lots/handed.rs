//! The same lots on a face and on its mirror image.
//!
//! Lots follow one another along a front in one direction, so a row of several building types, or of lots at a slanting
//! end, would end otherwise on the mirror image. So each face is laid as it is or as its mirror image, whichever way its
//! shape leans; what leans neither way is told by the order of its fronts. What is left after both is its own image.

use std::sync::Arc;

use super::region::Pieces;
use super::{Front, LaidLots, Lot, LotKey};
use crate::plan::PlanPoint;

/// A shape that leans less than this, of the cube of its fronts' lengths, leans by rounding.
const LEAST_LEANING: f64 = 1e-4;

/// Lengths of fronts are told apart by so much, in micrometers: beyond rounding to the grid.
const APART_UM: u64 = 100_000;

/// Whether the face is laid as its mirror image. Cost: the corners of its land, and where the shape leans neither way the
/// square of its fronts.
pub(super) fn is_laid_mirrored(key: &LotKey) -> bool {
    let (leaning, scale) = leaning(key);
    if leaning.abs() > LEAST_LEANING * scale {
        return leaning < 0.0;
    }
    let told: Vec<u64> = key.fronts.iter().map(told_apart).collect();
    let mut backward = told.clone();
    backward.reverse();
    least_turn(&backward) < least_turn(&told)
}

/// Which way the land leans, seen along each front from its middle: toward its end, or toward its start where negative;
/// summed over fronts by the square of their lengths. And the cube of those lengths. The mirror image has the other sign.
fn leaning(key: &LotKey) -> (f64, f64) {
    let Some(middle) = middle_of(&key.land.pieces) else {
        return (0.0, 0.0);
    };
    let (mut leaning, mut scale) = (0.0, 0.0);
    for front in &key.fronts {
        let (Some(first), Some(last)) = (front.centerline.first(), front.centerline.last()) else {
            continue;
        };
        let [(x, y), (to_x, to_y)] = [first, last].map(|end| (f64::from(end.x_mm), f64::from(end.y_mm)));
        let (along_x, along_y) = (to_x - x, to_y - y);
        let length = (along_x * along_x + along_y * along_y).sqrt();
        let (off_x, off_y) = (middle.0 - (x + to_x) / 2.0, middle.1 - (y + to_y) / 2.0);
        leaning += length * (along_x * off_x + along_y * off_y);
        scale += length * length * length;
    }
    (leaning, scale)
}

/// The middle of land by area, in millimeters; `None` where it has none.
fn middle_of(pieces: &Pieces) -> Option<(f64, f64)> {
    let origin = pieces.first()?.first()?.first()?;
    let from_origin = |point: &PlanPoint| {
        let along = |to: i32, from: i32| f64::from(to) - f64::from(from);
        (along(point.x_mm, origin.x_mm), along(point.y_mm, origin.y_mm))
    };
    let (mut twice_area, mut sum_x, mut sum_y) = (0.0, 0.0, 0.0);
    for ring in pieces.iter().flatten() {
        for (point, next) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            let ((a_x, a_y), (b_x, b_y)) = (from_origin(point), from_origin(next));
            let cross = a_x * b_y - b_x * a_y;
            twice_area += cross;
            sum_x += (a_x + b_x) * cross;
            sum_y += (a_y + b_y) * cross;
        }
    }
    let part = 3.0 * twice_area;
    (twice_area > 0.0).then(|| {
        (
            f64::from(origin.x_mm) + sum_x / part,
            f64::from(origin.y_mm) + sum_y / part,
        )
    })
}

/// What tells a front from others, whichever way the plan is turned: its length, and below it the width of its street, the
/// building type along it alone, and whether it is a head.
fn told_apart(front: &Front) -> u64 {
    let steps = (front.length_um() + APART_UM / 2) / APART_UM;
    let own = front.own.map_or(0, |own| u64::from(own.id.0) + 1);
    (steps << 32) | (u64::from(front.half_width_mm & 0xffff) << 16) | ((own & 0x7fff) << 1) | u64::from(front.is_head)
}

/// The order around the face that reads least, from whichever front it begins.
fn least_turn(around: &[u64]) -> Vec<u64> {
    let mut turned = around.to_vec();
    let mut least = around.to_vec();
    for _ in around {
        turned.rotate_left(1);
        if turned < least {
            least.copy_from_slice(&turned);
        }
    }
    least
}

/// The mirror image of a face, its fronts around it the same way as before.
pub(super) fn mirrored(key: &LotKey) -> LotKey {
    let mut image = key.clone();
    let mut land = (*key.land).clone();
    land.pieces.iter_mut().flatten().for_each(|ring| mirror(ring));
    image.land = Arc::new(land);
    image.fronts.reverse();
    for front in &mut image.fronts {
        mirror(&mut front.centerline);
    }
    for beside in &mut image.beside {
        mirror(&mut beside.line);
    }
    image
}

/// The lots of a face, from those laid on its mirror image.
pub(super) fn mirrored_back(mut laid: LaidLots, key: &LotKey) -> LaidLots {
    for of_front in laid.lots.chunk_by_mut(Lot::is_beside) {
        of_front.reverse();
        let is_on = |front: &&Front| of_front.first().is_some_and(|lot| lot.is_on(front));
        let length_um = key.fronts.iter().find(is_on).map_or(0, Front::length_um);
        for lot in of_front {
            let [from_um, to_um] = lot.front_um;
            lot.front_um = [length_um.saturating_sub(to_um), length_um.saturating_sub(from_um)];
            lot.faces[0] = -lot.faces[0];
            mirror(&mut lot.outline);
            mirror(&mut lot.footprint);
        }
    }
    laid.left.mirror();
    laid
}

/// Mirrors a line or ring east to west and turns it around: what lay on its left lies there still.
pub(super) fn mirror(points: &mut [PlanPoint]) {
    points.reverse();
    for point in points {
        point.x_mm = point.x_mm.saturating_neg();
    }
}

impl Lot {
    fn is_beside(&self, other: &Self) -> bool {
        (self.side, self.is_at_head) == (other.side, other.is_at_head)
    }

    fn is_on(&self, front: &Front) -> bool {
        (self.side, self.is_at_head) == (front.side, front.is_head)
    }
}
