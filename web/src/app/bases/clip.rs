//! What of a line or an outline lies within a box of the plan, or within the site.
//!
//! Lines by the shares at which a segment enters and leaves (Liang and Barsky, "A new concept and method for line
//! clipping", *ACM Transactions on Graphics* 3, 1984); outlines by integer boolean operations. Points within stay as they
//! are; only where something is cut they are new, to the nearest millimeter.

use std::slice;

use hobnail_core::fabric::regions::{Combined, Ring, combined, twice_area_mm2};
use hobnail_core::order;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::coordinates::LIMIT_MM;
use hobnail_core::plan::inside::goes_around;

/// West, south, east and north, in millimeters.
pub type Sides = [i32; 4];

/// Whether a point lies within the box or on its edge.
#[must_use]
pub fn holds([west, south, east, north]: Sides, point: PlanPoint) -> bool {
    (west..=east).contains(&point.x_mm) && (south..=north).contains(&point.y_mm)
}

/// Whether the box around an outline and this box share a point.
#[must_use]
pub fn reaches([west, south, east, north]: Sides, outline: &[PlanPoint]) -> bool {
    let beyond = |is_beyond: fn(PlanPoint, i32) -> bool, side: i32| outline.iter().all(|point| is_beyond(*point, side));
    !(beyond(|point, west| point.x_mm < west, west)
        || beyond(|point, east| point.x_mm > east, east)
        || beyond(|point, south| point.y_mm < south, south)
        || beyond(|point, north| point.y_mm > north, north))
}

/// The box as an outline.
#[must_use]
pub fn corners([west, south, east, north]: Sides) -> Ring {
    let corners = [(west, south), (east, south), (east, north), (west, north)];
    corners.map(|(x, y)| PlanPoint::new(x, y)).to_vec()
}

/// The point this share along from one to another.
fn between(from: PlanPoint, to: PlanPoint, share: f64) -> PlanPoint {
    let along = |from: i32, to: i32| (f64::from(from) + share * (f64::from(to) - f64::from(from))).round() as i32;
    PlanPoint::new(along(from.x_mm, to.x_mm), along(from.y_mm, to.y_mm))
}

/// The parts of a line within the box, in its direction. Cost: linear.
#[must_use]
pub fn line(sides: Sides, line: &[PlanPoint]) -> Vec<Vec<PlanPoint>> {
    let mut parts: Vec<Vec<PlanPoint>> = Vec::new();
    let mut is_open = false;
    for pair in line.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let Some((enters, leaves)) = segment(sides, from, to) else {
            is_open = false;
            continue;
        };
        let end = if leaves < 1.0 { between(from, to, leaves) } else { to };
        match parts.last_mut() {
            Some(part) if is_open && enters <= 0.0 => part.push(end),
            _ => parts.push(vec![if enters > 0.0 { between(from, to, enters) } else { from }, end]),
        }
        is_open = leaves >= 1.0;
    }
    for part in &mut parts {
        part.dedup();
    }
    parts.retain(|part| part.len() > 1);
    parts
}

/// The parts of a line within an outline, in its direction: cut where the outline crosses it, each part kept whose middle
/// lies inside. Cost: segments times sides of the outline.
#[must_use]
pub fn line_within(outline: &[PlanPoint], line: &[PlanPoint]) -> Vec<Vec<PlanPoint>> {
    let mut parts: Vec<Vec<PlanPoint>> = Vec::new();
    let mut is_open = false;
    for pair in line.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let mut cuts = vec![0.0, 1.0];
        for (&a, &b) in outline.iter().zip(outline.iter().cycle().skip(1)) {
            cuts.extend(crossing([from, to], [a, b]));
        }
        order::sort_by(&mut cuts, f64::total_cmp);
        for share in cuts.windows(2) {
            let is_inside =
                share[0] < share[1] && goes_around(outline, between(from, to, f64::midpoint(share[0], share[1])));
            if is_inside {
                let end = between(from, to, share[1]);
                match parts.last_mut() {
                    Some(part) if is_open => part.push(end),
                    _ => parts.push(vec![between(from, to, share[0]), end]),
                }
            }
            is_open = is_inside || is_open && share[0] >= share[1];
        }
    }
    for part in &mut parts {
        part.dedup();
    }
    parts.retain(|part| part.len() > 1);
    parts
}

/// The share along a segment at which another crosses it, away from its ends.
fn crossing([from, to]: [PlanPoint; 2], [a, b]: [PlanPoint; 2]) -> Option<f64> {
    let step = |from: PlanPoint, to: PlanPoint| {
        let [x, y] = [f64::from(from.x_mm), f64::from(from.y_mm)];
        [f64::from(to.x_mm) - x, f64::from(to.y_mm) - y]
    };
    let cross = |[x, y]: [f64; 2], [other_x, other_y]: [f64; 2]| x * other_y - y * other_x;
    let (along, side, gap) = (step(from, to), step(a, b), step(from, a));
    let turn = cross(along, side);
    // Of no use where both run alike: then the sides beside this one cross, or nothing does.
    let (share, at) = (cross(gap, side) / turn, cross(gap, along) / turn);
    (turn != 0.0 && share > 0.0 && share < 1.0 && (0.0..=1.0).contains(&at)).then_some(share)
}

/// From which to which share of a segment it lies within the box.
fn segment([west, south, east, north]: Sides, from: PlanPoint, to: PlanPoint) -> Option<(f64, f64)> {
    let [x, y] = [f64::from(from.x_mm), f64::from(from.y_mm)];
    let [step_x, step_y] = [f64::from(to.x_mm) - x, f64::from(to.y_mm) - y];
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (step, room) in [
        (-step_x, x - f64::from(west)),
        (step_x, f64::from(east) - x),
        (-step_y, y - f64::from(south)),
        (step_y, f64::from(north) - y),
    ] {
        if step < 0.0 {
            enters = enters.max(room / step);
        } else if step > 0.0 {
            leaves = leaves.min(room / step);
        } else if room < 0.0 {
            return None;
        }
    }
    (enters <= leaves).then_some((enters, leaves))
}

/// The land of an outline without its holes, within another outline: pieces, each a shell and its holes. An outline of
/// which nothing is cut stays as it was, and pieces no wider than what rounding leaves are none. A piece can come to touch
/// itself in a point, where a hole touches its outline; the plan then says that it does.
///
/// Which way they wind matters nowhere. Cost: a boolean operation, and one more where there are holes.
#[must_use]
pub fn land(within: &Ring, outline: &Ring, holes: &[Ring]) -> Vec<Vec<Ring>> {
    let mut pieces = combined([outline], Combined::Within, slice::from_ref(within));
    if !holes.is_empty() {
        pieces = combined(pieces.iter().flatten(), Combined::Without, holes);
    }
    let area = |ring: &Ring| twice_area_mm2(ring).abs();
    match pieces.as_mut_slice() {
        [only] if only.first().map(area) == Some(area(outline)) => only[0].clone_from(outline),
        _ => pieces.retain(|piece| piece.first().is_some_and(is_seen)),
    }
    pieces
}

/// Whether a ring is wider than the two millimeters by which rounding can part edges that are one.
fn is_seen(ring: &Ring) -> bool {
    let length_um: u64 = ring
        .iter()
        .zip(ring.iter().cycle().skip(1))
        .map(|(from, to)| from.distance_um(*to))
        .sum();
    twice_area_mm2(ring).abs() * 1_000 > 2 * i128::from(length_um)
}

/// Most cuts that open holes, for one outline.
const MOST_CUTS: usize = 1_000;

/// The same land without holes: pieces are cut from south to north through a hole, again and again. Gives how many holes
/// are filled all the same, since they are narrower than a cut or too many. Cost: a boolean operation for each side of a
/// cut, of which there are no more than holes.
#[must_use]
pub fn divided(pieces: Vec<Vec<Ring>>) -> (Vec<Ring>, u32) {
    const FAR: i32 = 2 * LIMIT_MM;
    let (mut open, mut done, mut filled, mut cuts) = (pieces, Vec::new(), 0, 0);
    while let Some(mut piece) = open.pop() {
        let holes = piece.len().saturating_sub(1);
        let spans = piece.iter().skip(1).filter_map(|hole| {
            let across = || hole.iter().map(|point| point.x_mm);
            Some([across().min()?, across().max()?])
        });
        let widest = spans.max_by_key(|[west, east]| east - west);
        if let Some([west, east]) = widest.filter(|[west, east]| east - west > 1 && cuts < MOST_CUTS) {
            cuts += 1;
            let middle = west.midpoint(east);
            for [from, to] in [[middle, FAR], [-FAR, middle]] {
                let side = [(from, -FAR), (to, -FAR), (to, FAR), (from, FAR)].map(|(x, y)| PlanPoint::new(x, y));
                open.extend(combined(&piece, Combined::Within, &[side.to_vec()]));
            }
        } else if !piece.is_empty() {
            filled += holes as u32;
            done.push(piece.swap_remove(0));
        }
    }
    (done, filled)
}

/// A piece as one ring, which goes to each hole and back the same way: by the parity of its edges the same points are
/// inside. Cost: linear.
#[must_use]
pub fn joined(piece: Vec<Ring>) -> Ring {
    let start = piece.first().and_then(|outline| outline.first()).copied();
    let mut all = Ring::new();
    for ring in piece {
        let first = ring.first().copied();
        all.extend(ring);
        all.extend(first);
        all.extend(start);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(points: &[(i32, i32)]) -> Vec<PlanPoint> {
        points.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect()
    }

    const BOX: Sides = [0, 0, 100, 100];

    #[test]
    fn a_line_that_leaves_and_comes_back_falls_apart() {
        let parts = line(BOX, &at(&[(-50, 50), (50, 50), (50, 150), (80, 150), (80, 20)]));
        assert_eq!(parts, [at(&[(0, 50), (50, 50), (50, 100)]), at(&[(80, 100), (80, 20)])]);
        assert_eq!(line(BOX, &at(&[(-50, 120), (120, 120)])), Vec::<Vec<PlanPoint>>::new());
    }

    #[test]
    fn a_line_is_cut_at_an_outline_with_a_notch() {
        let notched = at(&[(0, 0), (100, 0), (100, 100), (50, 40), (0, 100)]);
        let across = line_within(&notched, &at(&[(-50, 70), (150, 70)]));
        assert_eq!(across, [at(&[(0, 70), (25, 70)]), at(&[(75, 70), (100, 70)])]);
        let bent = at(&[(10, 10), (90, 10), (90, 20)]);
        assert_eq!(line_within(&notched, &bent), [bent]);
        assert_eq!(
            line_within(&notched, &at(&[(10, 10), (10, -10)])),
            [at(&[(10, 10), (10, 0)])]
        );
        assert_eq!(
            line_within(&notched, &at(&[(40, 90), (60, 90)])),
            Vec::<Vec<PlanPoint>>::new()
        );
    }

    #[test]
    fn an_outline_is_cut_along_the_box_and_stays_as_it_is_within() {
        let of = |points: &[(i32, i32)]| land(&corners(BOX), &at(points), &[]);
        let cut = of(&[(50, 50), (150, 50), (150, 80), (50, 80)]);
        assert_eq!(twice_area_mm2(&cut[0][0]), 2 * 50 * 30);
        assert!(cut.len() == 1 && cut[0][0].iter().all(|point| holds(BOX, *point)));
        assert_eq!(of(&[(150, 50), (250, 50), (150, 80)]), Vec::<Vec<Ring>>::new());
        assert_eq!(
            of(&[(100, 0), (150, 50), (100, 50)]),
            Vec::<Vec<Ring>>::new(),
            "a side is no land"
        );
        let clockwise = [(10, 10), (10, 60), (40, 60), (60, 60), (60, 10)];
        assert_eq!(of(&clockwise), [vec![at(&clockwise)]]);
        let around = of(&[(-10, -10), (110, -10), (110, 110), (-10, 110)]);
        assert_eq!(twice_area_mm2(&around[0][0]), 2 * 10_000);
    }

    #[test]
    fn what_two_boxes_share_is_asked_of_outlines_beyond_each_side() {
        assert!(reaches(BOX, &at(&[(90, 90), (200, 90), (200, 200)])));
        for beyond in [
            [(101, 0), (200, 0), (200, 100)],
            [(-1, 0), (-9, 0), (-9, 100)],
            [(0, 101), (9, 102), (9, 103)],
            [(0, -1), (9, -1), (9, -5)],
        ] {
            assert!(!reaches(BOX, &at(&beyond)), "{beyond:?}");
        }
    }

    #[test]
    fn holes_are_opened_by_cuts() {
        let square = |low: i32, high: i32| at(&[(low, low), (high, low), (high, high), (low, high)]);
        let piece = [square(0, 90), square(10, 20), square(30, 40), square(60, 61)];
        let (outlines, filled) = divided(combined(&piece[..1], Combined::Without, &piece[1..]));
        let area: i128 = outlines.iter().map(|ring| twice_area_mm2(ring)).sum();
        // The hole of a millimeter is narrower than a cut.
        assert_eq!((area, filled), (2 * (8_100 - 200), 1));
        assert_eq!(divided(Vec::new()), (Vec::new(), 0));
    }

    #[test]
    fn of_a_joined_piece_no_place_in_a_hole_is_inside() {
        let square = |low: i32, high: i32| at(&[(low, low), (high, low), (high, high), (low, high)]);
        let joined = joined(vec![square(0, 90), square(10, 80), square(82, 88)]);
        let points: Vec<(f64, f64)> = joined
            .iter()
            .map(|point| (f64::from(point.x_mm), f64::from(point.y_mm)))
            .collect();
        let (at, room) = crate::canvas::layers::land::widest_place(&points).unwrap();
        assert!(
            room > 0.0 && (at.1 < 10.0 || at.1 > 80.0 || !(10.0..80.0).contains(&at.0)),
            "{at:?}"
        );
        assert_eq!(super::joined(Vec::new()), Ring::new());
    }
}
