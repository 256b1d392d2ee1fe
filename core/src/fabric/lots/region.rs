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

/// The outer ring of the largest piece.
pub(super) fn largest_ring(pieces: Pieces) -> Option<Vec<PlanPoint>> {
    largest_piece(&pieces)?.into_iter().next()
}

pub(super) fn largest_piece(pieces: &Pieces) -> Option<Vec<Vec<PlanPoint>>> {
    let area = |piece: &Vec<Vec<PlanPoint>>| -> i128 { piece.iter().map(|ring| twice_area_mm2(ring)).sum() };
    pieces.iter().max_by_key(|piece| area(piece)).cloned()
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

pub(super) fn is_inside(place: Spot, edges: impl Iterator<Item = (Spot, Spot)>) -> bool {
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
    fn drawn(state: &mut u64, most: u64) -> f64 {
        *state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((*state >> 33) % most) as f64
    }

    #[test]
    fn crossings_found_near_a_segment_are_all_there_are() {
        let mut state = 7;
        let mut found = 0;
        for case in 0..500 {
            let mut spot = || Spot {
                x: drawn(&mut state, 90_000) + drawn(&mut state, 1_000) / 1_000.0,
                y: drawn(&mut state, 60_000) - drawn(&mut state, 1_000) / 1_000.0,
            };
            let ring = |corners: [Spot; 7]| corners.map(Spot::rounded).to_vec();
            let region = Region::of(vec![
                vec![ring([(); 7].map(|()| spot()))],
                vec![ring([(); 7].map(|()| spot()))],
            ]);
            // Every third upright, every third level, as fronts and lots often lie.
            let (a, mut b) = (spot(), spot());
            match case % 3 {
                0 => b.x = a.x,
                1 => b.y = a.y,
                _ => {}
            }
            let near: Vec<f64> = region.crossings(a, b).collect();
            let all = region.edges.iter().filter_map(|&(c, d)| crossing(a, b, c, d));
            assert_eq!(near, all.collect::<Vec<f64>>(), "case {case}");
            found += near.len();
        }
        assert!(found > 1_000, "{found} crossings");
    }
}
