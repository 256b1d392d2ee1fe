//! The same lots on a face and on its mirror image.
//!
//! Lots follow one another along a front in one direction, so a row of several building types, or of lots at a slanting
//! end, would end otherwise on the mirror image. So each face is laid as it is or as its mirror image, whichever way its
//! shape leans; what leans neither way is told by the order of its fronts. What is left after both is its own image.

use std::sync::Arc;

use super::left::Left;
use super::region::Pieces;
use super::{Front, LaidLots, Lot, LotKey};
use crate::fabric::land::Land;
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
    let told: Vec<_> = key.fronts.iter().map(told_apart).collect();
    let backward: Vec<_> = told.iter().rev().cloned().collect();
    least_turn(&backward).lt(least_turn(&told))
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

/// What tells a front from others, whichever way the plan is turned.
fn told_apart(front: &Front) -> (u64, u32, Option<super::LotType>, bool, Option<u32>) {
    let length_um: u64 = front
        .centerline
        .windows(2)
        .map(|pair| pair[0].distance_um(pair[1]))
        .sum();
    let steps = (length_um + APART_UM / 2) / APART_UM;
    (steps, front.half_width_mm, front.own, front.is_head, front.setback_mm)
}

/// The order around the face that reads least, from whichever front it begins.
fn least_turn<T: Ord>(around: &[T]) -> impl Iterator<Item = &T> {
    let turn = |start: usize| around.iter().cycle().skip(start).take(around.len());
    let least = (0..around.len()).reduce(|least, start| if turn(start).lt(turn(least)) { start } else { least });
    turn(least.unwrap_or(0))
}

/// The mirror image of a face, its fronts around it the same way as before.
pub(super) fn mirrored(key: &LotKey) -> LotKey {
    let front = |front: &Front| Front {
        centerline: mirrored_ring(&front.centerline),
        ..front.clone()
    };
    LotKey {
        land: Arc::new(Land {
            pieces: mirrored_pieces(&key.land.pieces),
            ..(*key.land).clone()
        }),
        fronts: key.fronts.iter().rev().map(front).collect(),
        program: key.program.clone(),
    }
}

/// The lots of a face, from those laid on its mirror image.
pub(super) fn mirrored_back(laid: LaidLots, key: &LotKey) -> LaidLots {
    let length_of = |lot: &Lot| -> u64 {
        let mut fronts = key.fronts.iter();
        let front = fronts.find(|front| front.side == lot.side && front.is_head == lot.is_at_head);
        let centerline = front.map_or(&[][..], |front| &front.centerline);
        centerline.windows(2).map(|pair| pair[0].distance_um(pair[1])).sum()
    };
    let mut lots: Vec<Lot> = Vec::with_capacity(laid.lots.len());
    for of_front in laid
        .lots
        .chunk_by(|a, b| (a.side, a.is_at_head) == (b.side, b.is_at_head))
    {
        let length_um = of_front.first().map_or(0, length_of);
        lots.extend(of_front.iter().rev().map(|lot| {
            let [from_um, to_um] = lot.front_um;
            Lot {
                front_um: [length_um.saturating_sub(to_um), length_um.saturating_sub(from_um)],
                outline: mirrored_ring(&lot.outline),
                footprint: mirrored_ring(&lot.footprint),
                faces: [-lot.faces[0], lot.faces[1]],
                ..lot.clone()
            }
        }));
    }
    let (before, taken) = laid.left.into_parts();
    let taken = taken.iter().map(|ring| mirrored_ring(ring)).collect();
    LaidLots {
        lots,
        left: Left::of(mirrored_pieces(&before), taken),
    }
}

fn mirrored_pieces(pieces: &Pieces) -> Pieces {
    let piece = |piece: &Vec<Vec<PlanPoint>>| piece.iter().map(|ring| mirrored_ring(ring)).collect();
    pieces.iter().map(piece).collect()
}

/// A line or ring mirrored east to west and read backward: what lay on its left lies there still.
fn mirrored_ring(points: &[PlanPoint]) -> Vec<PlanPoint> {
    let mirrored = |point: &PlanPoint| PlanPoint::new(point.x_mm.saturating_neg(), point.y_mm);
    points.iter().rev().map(mirrored).collect()
}
