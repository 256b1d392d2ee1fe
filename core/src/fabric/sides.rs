//! The sides of a face: runs of its boundary along one hand of one street, between corners.
//!
//! A side is what a person means by "this side of the square". Lots front on it where the street section allows.

use super::arrangement::Arrangement;
use super::carriers::Carrier;
use super::ids::{FaceId, HalfEdgeId};
use super::run::Run;
use super::streets::DrawnLines;
use crate::plan::land::{Fronting, Hand};
use crate::plan::{MarkId, PlanPoint, SideUse};

/// One side of a face.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Side {
    /// The half-edges along it, the face on their left.
    pub half_edges: Run,
    /// The street it faces, by its place in [`DrawnLines::streets`], and the hand it lies on; `None` along the site
    /// boundary.
    pub street: Option<(u32, Hand)>,
    /// Its length in micrometers.
    pub length_um: u64,
}

/// Puts the sides of a face, loop by loop, in order around it, in place of `sides`.
///
/// A side ends where the street or the hand changes and where the boundary turns by more than 45°. Cost: linear.
pub fn add_sides(arrangement: &Arrangement, carriers: &[Option<Carrier>], face: FaceId, sides: &mut Vec<Side>) {
    let facing = |half_edge: HalfEdgeId| {
        carriers[half_edge.edge().0 as usize].map(|carrier| (carrier.street, carrier.hand_of_face(half_edge)))
    };
    sides.clear();
    for start in arrangement.loops(face) {
        let ends_before = |before: HalfEdgeId, here: HalfEdgeId| {
            facing(before) != facing(here) || turns_a_corner(arrangement, before, here)
        };
        // A loop without any corner is one side that begins where the loop does.
        let mut pairs = arrangement
            .around(start)
            .map(|before| (before, arrangement.next(before)));
        let is_corner_at_start = || {
            let last = arrangement.around(start).last();
            last.is_some_and(|last| ends_before(last, start))
        };
        let first = if is_corner_at_start() {
            start
        } else {
            pairs
                .find(|(before, here)| *here != start && ends_before(*before, *here))
                .map_or(start, |(_, here)| here)
        };
        let mut before = None;
        for half_edge in arrangement.around(first) {
            let length_um = arrangement.length_um(half_edge.edge());
            let goes_on = before.is_some_and(|before| !ends_before(before, half_edge));
            before = Some(half_edge);
            match sides.last_mut() {
                Some(side) if goes_on => {
                    side.half_edges.push(half_edge);
                    side.length_um += length_um;
                }
                _ => sides.push(Side {
                    half_edges: Run::One([half_edge]),
                    street: facing(half_edge),
                    length_um,
                }),
            }
        }
    }
}

/// Whether the boundary turns by more than 45° from one half-edge to the next, exact.
fn turns_a_corner(arrangement: &Arrangement, before: HalfEdgeId, here: HalfEdgeId) -> bool {
    let (a, b, c) = (
        arrangement.point(arrangement.origin(before)),
        arrangement.point(arrangement.target(before)),
        arrangement.point(arrangement.target(here)),
    );
    let wide = |from: i32, to: i32| i128::from(i64::from(to) - i64::from(from));
    let (ux, uy) = (wide(a.x_mm, b.x_mm), wide(a.y_mm, b.y_mm));
    let (vx, vy) = (wide(b.x_mm, c.x_mm), wide(b.y_mm, c.y_mm));
    (ux * vy - uy * vx).abs() > ux * vx + uy * vy
}

/// Whether lots may front on a side by the street section alone.
#[must_use]
pub fn section_lets_front(lines: &DrawnLines, side: &Side) -> bool {
    side.street
        .is_some_and(|(street, hand)| lines.streets[street as usize].fronts[usize::from(hand == Hand::Right)])
}

/// Whether lots front on a side: what the use mark says of it, else what the street section allows.
#[must_use]
pub fn lots_front(lines: &DrawnLines, side: &Side, said: Option<&SideUse>) -> bool {
    said.map_or_else(
        || section_lets_front(lines, side),
        |said| said.fronting == Fronting::Front,
    )
}

/// The side that a mark's side entry speaks of: among those along that hand of that street, the nearest to its point.
#[must_use]
pub fn side_spoken_of(arrangement: &Arrangement, lines: &DrawnLines, sides: &[Side], said: &SideUse) -> Option<usize> {
    let matching = sides.iter().enumerate().filter(|(_, side)| {
        side.street
            .is_some_and(|(street, hand)| lines.streets[street as usize].mark == said.street && hand == said.hand)
    });
    let nearest = matching
        .min_by(|(_, a), (_, b)| distance_mm(arrangement, a, said.at).total_cmp(&distance_mm(arrangement, b, said.at)));
    nearest.map(|(index, _)| index)
}

/// The side of a face nearest to a point, among those along a street.
#[must_use]
pub fn nearest_side(arrangement: &Arrangement, sides: &[Side], point: PlanPoint) -> Option<usize> {
    let along_streets = sides.iter().enumerate().filter(|(_, side)| side.street.is_some());
    let nearest = along_streets
        .min_by(|(_, a), (_, b)| distance_mm(arrangement, a, point).total_cmp(&distance_mm(arrangement, b, point)));
    nearest.map(|(index, _)| index)
}

/// Distance from a point to a side, in millimeters.
#[must_use]
pub fn distance_mm(arrangement: &Arrangement, side: &Side, point: PlanPoint) -> f64 {
    let to_edge = |half_edge: &HalfEdgeId| {
        let [a, b] = arrangement
            .ends(half_edge.edge())
            .map(|vertex| arrangement.point(vertex));
        let squared_length = a.squared_distance_mm2(b) as f64;
        let (px, py) = (
            f64::from(point.x_mm) - f64::from(a.x_mm),
            f64::from(point.y_mm) - f64::from(a.y_mm),
        );
        let (dx, dy) = (
            f64::from(b.x_mm) - f64::from(a.x_mm),
            f64::from(b.y_mm) - f64::from(a.y_mm),
        );
        let share = ((px * dx + py * dy) / squared_length).clamp(0.0, 1.0);
        crate::number::length(px - share * dx, py - share * dy)
    };
    side.half_edges.iter().map(to_edge).fold(f64::INFINITY, f64::min)
}

/// A point in the middle of a side, on the street's centerline.
#[must_use]
pub fn middle_of(arrangement: &Arrangement, side: &Side) -> Option<PlanPoint> {
    let mut remaining_um = side.length_um / 2;
    for half_edge in side.half_edges.iter() {
        let length_um = arrangement.length_um(half_edge.edge());
        let (a, b) = (
            arrangement.point(arrangement.origin(*half_edge)),
            arrangement.point(arrangement.target(*half_edge)),
        );
        if remaining_um <= length_um && length_um > 0 {
            let share = remaining_um as f64 / length_um as f64;
            let between = |from: i32, to: i32| from + ((f64::from(to) - f64::from(from)) * share).round() as i32;
            return Some(PlanPoint::new(between(a.x_mm, b.x_mm), between(a.y_mm, b.y_mm)));
        }
        remaining_um -= length_um.min(remaining_um);
    }
    None
}

/// The street mark a side faces.
#[must_use]
pub fn street_mark(lines: &DrawnLines, side: &Side) -> Option<(MarkId, Hand)> {
    side.street
        .map(|(street, hand)| (lines.streets[street as usize].mark, hand))
}
