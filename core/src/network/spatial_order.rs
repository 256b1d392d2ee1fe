//! An order of points in which neighbors on the ground are neighbors in memory: along a Hilbert curve.

use crate::order;
use crate::plan::PlanPoint;

/// Levels of the curve: cells of the legal range (200 km) halved 24 times are about 12 mm.
const LEVELS: u32 = 24;

/// Indices of `points` ordered along a Hilbert curve over their bounds, ties by index. O(n log n).
pub(super) fn spatial_order(points: &[PlanPoint]) -> Vec<u32> {
    let west = points.iter().map(|point| point.x_mm).min().unwrap_or(0);
    let south = points.iter().map(|point| point.y_mm).min().unwrap_or(0);
    let span = points
        .iter()
        .map(|point| point.x_mm.abs_diff(west).max(point.y_mm.abs_diff(south)))
        .max()
        .unwrap_or(0);
    // Bring the larger side of the bounds to at most 2^LEVELS cells.
    let shift = (u32::BITS - span.leading_zeros()).saturating_sub(LEVELS);
    let mut keyed: Vec<(u64, u32)> = points
        .iter()
        .zip(0..)
        .map(|(point, index)| {
            let cell_x = point.x_mm.abs_diff(west) >> shift;
            let cell_y = point.y_mm.abs_diff(south) >> shift;
            (hilbert_position(cell_x, cell_y), index)
        })
        .collect();
    order::sort_keyed(&mut keyed);
    keyed.into_iter().map(|(_, index)| index).collect()
}

/// Position of a cell along the Hilbert curve of [`LEVELS`] levels.
fn hilbert_position(x: u32, y: u32) -> u64 {
    let (mut position, mut turn) = (0_u64, 0);
    for level in (0..LEVELS).rev() {
        let quadrant = ((x >> level) & 1) << 1 | ((y >> level) & 1);
        let (place, next) = QUADRANTS[turn][quadrant as usize];
        position = (position << 2) | u64::from(place);
        turn = usize::from(next);
    }
    position
}

/// By how the curve is turned in a square (as it is, its axes swapped, both turned about, both) and by quadrant (south
/// west, north west, south east, north east): when the curve comes to it, and how it is turned there.
const QUADRANTS: [[(u8, u8); 4]; 4] = [
    [(0, 1), (1, 0), (3, 3), (2, 0)],
    [(0, 0), (3, 2), (1, 1), (2, 1)],
    [(2, 2), (3, 1), (1, 2), (0, 3)],
    [(2, 3), (1, 3), (3, 0), (0, 2)],
];

#[cfg(test)]
mod tests {
    use super::*;

    /// The same curve by turning the coordinates themselves.
    fn position_by_turning(mut x: u32, mut y: u32) -> u64 {
        let mut position = 0_u64;
        for level in (0..LEVELS).rev() {
            let (right, upper) = ((x >> level) & 1, (y >> level) & 1);
            position = (position << 2) | u64::from((3 * right) ^ upper);
            // Turn the quadrant so that the curve inside it starts where the last one ended.
            if upper == 0 {
                if right == 1 {
                    let mask = (1 << level) - 1;
                    x = !x & mask;
                    y = !y & mask;
                }
                (x, y) = (y, x);
            }
        }
        position
    }

    #[test]
    fn turned_quadrants_give_the_curve_of_turned_coordinates() {
        let mut state = 5_u64;
        let mut next = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (state >> 40) as u32
        };
        for _ in 0..10_000 {
            let (x, y) = (next(), next());
            assert_eq!(hilbert_position(x, y), position_by_turning(x, y), "{x} {y}");
        }
    }

    #[test]
    fn consecutive_cells_of_the_curve_are_neighbors() {
        let mut cells: Vec<(u64, u32, u32)> = (0..16_u32)
            .flat_map(|x| (0..16_u32).map(move |y| (hilbert_position(x, y), x, y)))
            .collect();
        cells.sort_unstable();
        for pair in cells.windows(2) {
            let steps = pair[0].1.abs_diff(pair[1].1) + pair[0].2.abs_diff(pair[1].2);
            assert_eq!(steps, 1, "{pair:?}");
        }
    }

    #[test]
    fn every_point_appears_once_and_ties_keep_their_order() {
        let points = [
            PlanPoint::new(5, 5),
            PlanPoint::new(-100_000_000, 100_000_000),
            PlanPoint::new(5, 5),
        ];
        let order = spatial_order(&points);
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, [0, 1, 2]);
        let place = |index| order.iter().position(|&other| other == index);
        assert!(place(0) < place(2));
    }
}
