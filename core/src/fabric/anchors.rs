//! A point inside a face, to name the face by and to write on.

use super::arrangement::Arrangement;
use super::ids::{FaceId, HalfEdgeId};
use crate::order;
use crate::plan::PlanPoint;

/// The horizontal lines tried, as shares of the height of the face in sixteenths, the middle first.
const SIXTEENTHS: [i64; 15] = [8, 4, 12, 6, 10, 2, 14, 7, 9, 5, 11, 3, 13, 1, 15];

/// How many lines are tried before the best point found so far is taken.
const LINES_COMPARED: usize = 3;

/// A grid point strictly inside a bounded face: in the middle of the widest gap of a few horizontal lines across it.
///
/// `None` for the unbounded face, and for a face so thin that none of fifteen lines has a grid point inside.
/// Cost: linear in the half-edges of the face, times the lines tried.
#[must_use]
pub fn anchor_of(arrangement: &Arrangement, face: FaceId) -> Option<PlanPoint> {
    let outer = arrangement.outer_loop(face)?;
    let point = |half_edge: HalfEdgeId| arrangement.point(arrangement.origin(half_edge));
    let heights = || arrangement.around(outer).map(|half_edge| point(half_edge).y_mm);
    let (low, high) = (i64::from(heights().min()?), i64::from(heights().max()?));
    let boundary: Vec<[PlanPoint; 2]> = arrangement
        .loops(face)
        .flat_map(|start| arrangement.around(start))
        .map(|half_edge| [point(half_edge), point(half_edge.twin())])
        .collect();
    let mut best: Option<(i64, PlanPoint)> = None;
    for (tried, sixteenths) in SIXTEENTHS.into_iter().enumerate() {
        if tried >= LINES_COMPARED && best.is_some() {
            break;
        }
        let y = (low + (high - low) * sixteenths / 16) as i32;
        let found = widest_gap(&boundary, y);
        if let Some((width, p)) = found
            && best.is_none_or(|(widest, _)| width > widest)
        {
            best = Some((width, p));
        }
    }
    best.map(|(_, p)| p)
}

/// The widest gap in the face at height `y`, just above, and a grid point inside near its middle.
fn widest_gap(boundary: &[[PlanPoint; 2]], y: i32) -> Option<(i64, PlanPoint)> {
    // Half a millimeter above `y` no vertex lies, so gaps begin and end where edges pass from `y` to beyond.
    let mut crossings: Vec<i64> = boundary
        .iter()
        .filter(|[p, q]| (p.y_mm <= y) != (q.y_mm <= y))
        .map(|&[p, q]| {
            let (dx, dy) = (
                i64::from(q.x_mm) - i64::from(p.x_mm),
                i64::from(q.y_mm) - i64::from(p.y_mm),
            );
            let up = 2 * (i64::from(y) - i64::from(p.y_mm)) + 1;
            let (numerator, denominator) = if dy > 0 { (dx * up, 2 * dy) } else { (-dx * up, -2 * dy) };
            i64::from(p.x_mm) + numerator.div_euclid(denominator)
        })
        .collect();
    order::sort(&mut crossings);
    let mut gaps: Vec<(i64, i64)> = crossings.chunks_exact(2).map(|gap| (gap[1] - gap[0], gap[0])).collect();
    order::sort_by_key(&mut gaps, |&(width, west)| (-width, west));
    let inside = |&(width, west): &(i64, i64)| {
        let x = (west + (width + 1) / 2) as i32;
        [y, y + 1, y - 1]
            .into_iter()
            .map(|y| PlanPoint::new(x, y))
            .find(|&p| is_strictly_inside(boundary, p))
            .map(|p| (width, p))
    };
    gaps.iter().find_map(inside)
}

/// Whether a point lies inside the boundary and on no part of it: a ray to the north, just east of it, counts edges.
fn is_strictly_inside(boundary: &[[PlanPoint; 2]], p: PlanPoint) -> bool {
    let mut inside = false;
    for &[a, b] in boundary {
        let (a, b) = (a.min(b), a.max(b));
        let side = a.cross(b, p);
        let within = a <= p && p <= b && (a.y_mm.min(b.y_mm)..=a.y_mm.max(b.y_mm)).contains(&p.y_mm);
        if side == 0 && within {
            return false;
        }
        if a.x_mm <= p.x_mm && p.x_mm < b.x_mm && side < 0 {
            inside = !inside;
        }
    }
    inside
}
