//! An order of points in which neighbors on the ground are neighbors in memory: along a Hilbert curve.

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
    keyed.sort_unstable();
    keyed.into_iter().map(|(_, index)| index).collect()
}

/// Position of a cell along the Hilbert curve of [`LEVELS`] levels.
fn hilbert_position(mut x: u32, mut y: u32) -> u64 {
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

#[cfg(test)]
mod tests {
    use super::*;

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
