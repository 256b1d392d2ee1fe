//! Land not yet taken while lots are laid on a face.

use super::spot::{Spot, crossing};
use crate::fabric::regions::{Combined, combined, twice_area_mm2};
use crate::order;
use crate::plan::PlanPoint;

/// Pieces of land, each an outer ring and its holes.
pub type Pieces = Vec<Vec<Vec<PlanPoint>>>;

/// Land with its edges at hand.
#[derive(Clone, Debug)]
pub(super) struct Region {
    pub pieces: Pieces,
    edges: Vec<(Spot, Spot)>,
}

impl Region {
    pub fn of(pieces: Pieces) -> Self {
        let edges = pieces.iter().flatten().flat_map(|ring| edges_of(ring)).collect();
        Self { pieces, edges }
    }

    /// Whether a place lies inside: an odd number of edges to its right.
    pub fn holds(&self, place: Spot) -> bool {
        is_inside(place, self.edges.iter().copied())
    }

    /// Where edges cross the segment `a` to `b`, as shares of it.
    fn crossings(&self, a: Spot, b: Spot) -> impl Iterator<Item = f64> + '_ {
        // Edges whose box is apart from the segment's by more than rounding do not cross it.
        let (west, east) = (a.x.min(b.x) - 1.0, a.x.max(b.x) + 1.0);
        let (south, north) = (a.y.min(b.y) - 1.0, a.y.max(b.y) + 1.0);
        let is_near = move |c: Spot, d: Spot| {
            c.x.max(d.x) >= west && c.x.min(d.x) <= east && c.y.max(d.y) >= south && c.y.min(d.y) <= north
        };
        let near = self.edges.iter().filter(move |(c, d)| is_near(*c, *d));
        near.filter_map(move |&(c, d)| crossing(a, b, c, d))
    }

    /// Twice the area in square millimeters that pieces of this land have inside a ring of four convex corners, holes
    /// not taken off; `None` for any other ring. No piece of the land in the ring is larger, but for rounding.
    ///
    /// Each piece's outer ring is clipped at the ring's sides one after another: exact for areas, however the piece is
    /// shaped. Source: I. E. Sutherland, G. W. Hodgman, "Reentrant polygon clipping", Communications of the ACM 17 (1974).
    pub fn most_twice_area_in(&self, ring: &[PlanPoint]) -> Option<f64> {
        let &[a, b, c, d] = ring else { return None };
        let sides = [[a, b, c], [b, c, d], [c, d, a], [d, a, b]];
        if sides.iter().any(|[a, b, c]| a.cross(*b, *c) <= 0) {
            return None;
        }
        let (mut held, mut clipped) = (Vec::new(), Vec::new());
        let mut most = 0.0;
        for outer in self.pieces.iter().filter_map(|piece| piece.first()) {
            held.clear();
            held.extend(outer.iter().map(|point| Spot::of(*point).minus(Spot::of(a))));
            for [from, to, _] in sides {
                let start = Spot::of(from).minus(Spot::of(a));
                let along = Spot::of(to).minus(Spot::of(from));
                clipped.clear();
                let mut before = held.last().copied().unwrap_or(start);
                let mut before_left = along.cross(before.minus(start));
                for &corner in &held {
                    let left = along.cross(corner.minus(start));
                    if (left >= 0.0) != (before_left >= 0.0) {
                        clipped.push(before.toward(corner, before_left / (before_left - left)));
                    }
                    if left >= 0.0 {
                        clipped.push(corner);
                    }
                    (before, before_left) = (corner, left);
                }
                std::mem::swap(&mut held, &mut clipped);
            }
            let mut last = held.last().copied();
            for &corner in &held {
                most += last.map_or(0.0, |last| last.cross(corner));
                last = Some(corner);
            }
        }
        Some(most)
    }

    /// The parts of the segment `a` to `b` inside, as shares of it, in order.
    pub fn parts_inside(&self, a: Spot, b: Spot) -> Vec<(f64, f64)> {
        let mut cuts = vec![0.0, 1.0];
        cuts.extend(self.crossings(a, b));
        order::sort_by(&mut cuts, f64::total_cmp);
        let mut parts: Vec<(f64, f64)> = Vec::new();
        for pair in cuts.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            if to <= from || !self.holds(a.toward(b, (from + to) / 2.0)) {
                continue;
            }
            match parts.last_mut() {
                Some(last) if last.1 >= from => last.1 = to,
                _ => parts.push((from, to)),
            }
        }
        parts
    }

    /// How far a ray from `start` runs before it meets an edge, at most `most`, and where that is.
    pub fn run_of_ray(&self, start: Spot, direction: Spot, most: f64) -> (f64, Spot) {
        let end = start.plus(direction.times(most));
        let share = self.crossings(start, end).fold(1.0, f64::min);
        (most * share, start.toward(end, share))
    }

    /// Whether a ring lies wholly inside, not touching any edge.
    pub fn holds_ring(&self, ring: &[Spot]) -> bool {
        let Some(first) = ring.first() else { return false };
        self.holds(*first) && !self.meets_ring(ring)
    }

    /// Whether any edge crosses a ring or begins inside it.
    fn meets_ring(&self, ring: &[Spot]) -> bool {
        edges_meet_ring(self.edges.iter().copied(), ring)
    }

    /// What is left without these rings.
    pub fn without(&self, rings: &[Vec<PlanPoint>]) -> Self {
        Self::of(without(&self.pieces, rings))
    }

    /// The part of this land inside a ring, less some others.
    pub fn part_in(&self, ring: &[PlanPoint], less: &[Vec<PlanPoint>]) -> Pieces {
        let inside = combined(self.pieces.iter().flatten(), Combined::Within, &[ring.to_vec()]);
        if less.is_empty() {
            inside
        } else {
            combined(inside.iter().flatten(), Combined::Without, less)
        }
    }
}

/// What is left of some land without these rings.
pub(super) fn without(pieces: &Pieces, rings: &[Vec<PlanPoint>]) -> Pieces {
    combined(pieces.iter().flatten(), Combined::Without, rings)
}

/// Whether the outline of one lot crosses a ring or begins inside it.
pub(super) fn outline_meets_ring(outline: &[PlanPoint], ring: &[Spot]) -> bool {
    edges_meet_ring(edges_of(outline), ring)
}

fn edges_meet_ring(edges: impl Iterator<Item = (Spot, Spot)>, ring: &[Spot]) -> bool {
    let (mut low, mut high) = (ring[0], ring[0]);
    for corner in ring {
        low = Spot {
            x: low.x.min(corner.x),
            y: low.y.min(corner.y),
        };
        high = Spot {
            x: high.x.max(corner.x),
            y: high.y.max(corner.y),
        };
    }
    let mut near = edges.filter(|(c, d)| {
        c.x.min(d.x) <= high.x && c.x.max(d.x) >= low.x && c.y.min(d.y) <= high.y && c.y.max(d.y) >= low.y
    });
    let around = || (0..ring.len()).map(|at| (ring[at], ring[(at + 1) % ring.len()]));
    near.any(|(c, d)| around().any(|(a, b)| crossing(a, b, c, d).is_some()) || is_inside(c, around()))
}

fn edges_of(ring: &[PlanPoint]) -> impl Iterator<Item = (Spot, Spot)> + '_ {
    (0..ring.len()).map(|at| (Spot::of(ring[at]), Spot::of(ring[(at + 1) % ring.len()])))
}

fn is_inside(place: Spot, edges: impl Iterator<Item = (Spot, Spot)>) -> bool {
    let mut is_inside = false;
    for (a, b) in edges {
        if (a.y > place.y) != (b.y > place.y) {
            let x = a.x + (place.y - a.y) / (b.y - a.y) * (b.x - a.x);
            is_inside ^= x > place.x;
        }
    }
    is_inside
}

/// Twice the area of pieces in square millimeters, holes taken off.
#[must_use]
pub fn twice_area_of_pieces(pieces: &Pieces) -> i128 {
    pieces.iter().flatten().map(|ring| twice_area_mm2(ring)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A number below `most`, from a linear congruence: the same on every machine.
    fn drawn(state: &mut u64, most: u64) -> i32 {
        *state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((*state >> 33) % most) as i32
    }

    #[test]
    fn no_piece_in_a_convex_ring_is_larger_than_the_most_and_without_holes_all_of_it_is() {
        let p = PlanPoint::new;
        let mut state = 7;
        let (mut asked, mut parted) = (0, 0);
        for case in 0..600 {
            // Land with notches and teeth, a part of it taken.
            let mut land = vec![p(0, 0), p(90_000, -5_000)];
            for step in 0..6 {
                land.push(p(80_000 - 14_000 * step, 20_000 + drawn(&mut state, 40_000)));
            }
            let low = [(); 2].map(|()| drawn(&mut state, 60_000));
            let taken = vec![
                p(low[0], low[1] - 10_000),
                p(low[0] + 25_000, low[1] - 9_000),
                p(low[0] + 24_000, low[1] + 4_000),
                p(low[0] + 1_000, low[1] + 5_000),
            ];
            let region = Region::of(without(&vec![vec![land]], &[taken]));
            let mut corner = |x: i32, y: i32| p(x + drawn(&mut state, 9_000), y + drawn(&mut state, 9_000));
            let (x, y) = (case * 150 - 20_000, (case % 7) * 9_000 - 15_000);
            let ring = vec![
                corner(x, y),
                corner(x + 22_000, y),
                corner(x + 22_000, y + 30_000),
                corner(x, y + 30_000),
            ];
            let Some(most) = region.most_twice_area_in(&ring) else {
                continue;
            };
            asked += 1;
            let pieces = region.part_in(&ring, &[]);
            let outer = pieces.iter().map(|piece| twice_area_mm2(&piece[0]) as f64);
            let largest = outer.clone().fold(0.0, f64::max);
            // Crossings are rounded by a millimeter or two along some hundred meters.
            let rounding = 2e6;
            assert!(largest <= most + rounding, "case {case}: {largest} of {most}");
            if region.pieces.iter().all(|piece| piece.len() == 1) {
                let all: f64 = outer.sum();
                assert!((all - most).abs() <= rounding, "case {case}: {all} of {most}");
            }
            parted += u32::from(pieces.len() > 1);
        }
        assert!(asked > 400 && parted > 5, "{asked} asked, {parted} in parts");
    }

    #[test]
    fn only_rings_of_four_convex_corners_are_answered() {
        let ring =
            |corners: &[(i32, i32)]| -> Vec<PlanPoint> { corners.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect() };
        let square = ring(&[(0, 0), (100, 0), (100, 100), (0, 100)]);
        let region = Region::of(vec![vec![square.clone()]]);
        assert_eq!(region.most_twice_area_in(&square), Some(20_000.0));
        let half = ring(&[(50, -50), (500, -50), (500, 500), (50, 500)]);
        assert_eq!(region.most_twice_area_in(&half), Some(10_000.0));
        let apart = ring(&[(101, 0), (200, 0), (200, 90), (101, 90)]);
        assert_eq!(region.most_twice_area_in(&apart), Some(0.0));
        for other in [
            ring(&[(0, 0), (100, 0), (100, 100)]),
            ring(&[(0, 0), (0, 100), (100, 100), (100, 0)]),
            ring(&[(0, 0), (100, 0), (20, 20), (0, 100)]),
            ring(&[(0, 0), (100, 100), (100, 0), (0, 100)]),
        ] {
            assert_eq!(region.most_twice_area_in(&other), None, "{other:?}");
        }
    }
}
