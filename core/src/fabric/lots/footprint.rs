//! The building on a lot: a rectangle inside its setbacks, as large as the type's coverage asks.

use super::LotType;
use super::spot::Spot;
use crate::plan::PlanPoint;

/// Lots narrower than this carry attached buildings, which reach both side lines. Common practice, no source.
const ATTACHED_WIDTH_MM: u32 = 9_000;

/// Yard to each side line of a detached building: 5 feet. Common practice, no source.
const SIDE_YARD_MM: f64 = 1_524.0;

/// Usual depth from the right-of-way to a building: 10 feet, and a foot where most of the lot is built upon. Common
/// practice, no source; a town's own rules come first.
const SETBACK_MM: f64 = 3_048.0;
const CLOSE_SETBACK_MM: f64 = 305.0;

/// So far within a building's front and rear its room is looked at: past rounding at the lot's own edges.
const EDGE_MM: f64 = 2.0;

/// In how many steps a depth is looked for where the usual one does not fit.
const DEPTHS_TRIED: u32 = 24;

/// From this coverage on a building stands close to the walk and to its neighbors.
const CLOSE_COVERAGE_THOUSANDTHS: u16 = 500;

/// The footprint; empty where nothing is covered or no rectangle of at least half the area asked for fits.
///
/// `room` is the lot, or what of it may be built upon, and `lot_mm2` the area of the whole; `front` is the middle of the
/// lot's front and `inward` the direction into the lot.
pub(super) fn footprint(
    room: &[PlanPoint],
    lot_mm2: f64,
    front: Spot,
    inward: Spot,
    lot_type: LotType,
    setback_mm: Option<u32>,
) -> Vec<PlanPoint> {
    let area = lot_mm2 * f64::from(lot_type.coverage_thousandths) / 1000.0;
    if area <= 0.0 {
        return Vec::new();
    }
    let is_close = lot_type.coverage_thousandths >= CLOSE_COVERAGE_THOUSANDTHS;
    let setback = setback_mm.map_or(if is_close { CLOSE_SETBACK_MM } else { SETBACK_MM }, f64::from);
    let yard = if is_close || lot_type.width_mm < ATTACHED_WIDTH_MM {
        0.0
    } else {
        SIDE_YARD_MM
    };
    let along = inward.left().times(-1.0);
    let corners: Vec<Spot> = room.iter().map(|point| Spot::of(*point)).collect();
    // The room from the building's front to its rear, and at every corner of the lot between: lots that taper or have a
    // notch give less.
    let room = |depth: f64| {
        let (mut left, mut right) = (f64::NEG_INFINITY, f64::INFINITY);
        for deep in [EDGE_MM, depth / 2.0, depth - EDGE_MM] {
            let place = front.plus(inward.times(setback + deep));
            let (to_left, to_right) = room_at(&corners, place, along);
            (left, right) = (left.max(to_left), right.min(to_right));
        }
        for corner in &corners {
            let deep = corner.minus(front).dot(inward) - setback;
            let across = corner.minus(front).dot(along);
            if deep > 0.0 && deep < depth {
                if across <= 0.0 {
                    left = left.max(across);
                } else {
                    right = right.min(across);
                }
            }
        }
        (left + yard, right - yard)
    };
    let behind = room_behind(&corners, front, inward) - setback;
    let covered = |depth: f64| {
        let (left, right) = room(depth);
        (right - left).max(0.0) * depth.max(0.0)
    };
    let mut depth = (area.sqrt() * 1.1).max(1.0).min(behind);
    for _ in 0..2 {
        let (left, right) = room(depth);
        if right <= left {
            break;
        }
        depth = (area / (right - left)).min(behind);
    }
    if covered(depth) < area / 2.0 {
        // Where the lot gives way behind, by a slanting end or a line to keep from: as deep as covers most, and no deeper
        // than it takes.
        let tried = (1..=DEPTHS_TRIED).map(|part| behind * f64::from(part) / f64::from(DEPTHS_TRIED));
        let mut most = 0.0;
        for tried in tried {
            if covered(tried) > most && most < area {
                (most, depth) = (covered(tried), tried);
            }
        }
        if most < area / 2.0 {
            return Vec::new();
        }
        let (left, right) = room(depth);
        depth = depth.min(area / (right - left));
    }
    let (left, right) = room(depth);
    let corner = |across: f64, deep: f64| front.plus(along.times(across)).plus(inward.times(setback + deep));
    [
        corner(left, 0.0),
        corner(right, 0.0),
        corner(right, depth),
        corner(left, depth),
    ]
    .map(Spot::rounded)
    .to_vec()
}

/// How far a lot reaches to both sides of a place, along a direction.
fn room_at(corners: &[Spot], place: Spot, along: Spot) -> (f64, f64) {
    let mut room = (f64::NEG_INFINITY, f64::INFINITY);
    for at in 0..corners.len() {
        let (a, b) = (corners[at], corners[(at + 1) % corners.len()]);
        let (from, to) = (a.minus(place).cross(along), b.minus(place).cross(along));
        if (from > 0.0) == (to > 0.0) {
            continue;
        }
        let on_line = a.toward(b, from / (from - to)).minus(place).dot(along);
        if on_line <= 0.0 {
            room.0 = room.0.max(on_line);
        } else {
            room.1 = room.1.min(on_line);
        }
    }
    if room.0.is_finite() && room.1.is_finite() {
        room
    } else {
        (0.0, 0.0)
    }
}

/// How far a lot reaches inward from its front.
fn room_behind(corners: &[Spot], front: Spot, inward: Spot) -> f64 {
    let far = corners.iter().map(|corner| corner.minus(front).dot(inward));
    far.fold(0.0, f64::max)
}
