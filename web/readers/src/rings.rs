//! Rings put together: holes to the outer ring around them.

use crate::base::Position;

/// Most comparisons of a hole with the points of outer rings: about a second.
const MOST_COMPARED: usize = 100_000_000;

/// Areas of outer rings, each hole in the first whose ring is around its first point; and whether every hole was tried.
#[must_use]
pub fn with_holes(outer: Vec<Vec<Position>>, inner: Vec<Vec<Position>>) -> (Vec<Vec<Vec<Position>>>, bool) {
    let points: usize = outer.iter().map(Vec::len).sum();
    let mut areas: Vec<Vec<Vec<Position>>> = outer.into_iter().map(|ring| vec![ring]).collect();
    if points.saturating_mul(inner.len()) > MOST_COMPARED {
        return (areas, false);
    }
    for hole in inner {
        let Some(first) = hole.first().copied() else { continue };
        let around = areas
            .iter_mut()
            .find(|area| area.first().is_some_and(|ring| is_inside(ring, first)));
        if let Some(area) = around {
            area.push(hole);
        }
    }
    (areas, true)
}

/// Whether a position is inside a ring, by the parity of edges to its east.
fn is_inside(ring: &[Position], [x, y]: Position) -> bool {
    let mut inside = false;
    for (index, to) in ring.iter().enumerate() {
        let from = ring[(index + ring.len() - 1) % ring.len()];
        if (from[1] > y) != (to[1] > y) {
            let crossing = from[0] + (y - from[1]) / (to[1] - from[1]) * (to[0] - from[0]);
            inside ^= crossing > x;
        }
    }
    inside
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(at: f64, side: f64) -> Vec<Position> {
        vec![[at, at], [at + side, at], [at + side, at + side], [at, at + side]]
    }

    #[test]
    fn a_hole_goes_to_the_ring_around_it() {
        let (areas, is_whole) = with_holes(vec![square(0.0, 4.0), square(10.0, 4.0)], vec![square(11.0, 1.0)]);
        assert!(is_whole);
        assert_eq!(
            areas,
            [vec![square(0.0, 4.0)], vec![square(10.0, 4.0), square(11.0, 1.0)]]
        );
    }
}
