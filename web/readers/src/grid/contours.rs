//! Lines of equal height.
//!
//! Marching squares of the crate `contour`: on each edge between two centers the line crosses where the heights between
//! them, taken as straight, reach its height. The crate closes its lines around the grid and around cells without a
//! value; those parts are cut away, so that a line ends where the heights end.

use contour::ContourBuilder;

use super::Grid;
use crate::base::Position;
use crate::fault::{Limited, What};

/// Most lines' heights, and most cells, of one request: some seconds of work.
const MOST_LEVELS: f64 = 500.0;
const MOST_CELLS: usize = 4_000_000;

/// A line of equal height.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour {
    /// The height, in meters.
    pub height_m: f64,
    /// The line, in the grid's system.
    pub line: Vec<Position>,
}

/// Lines at every multiple of an interval in meters, from the lowest; lines of one height in the order the grid is
/// passed.
///
/// # Errors
/// [`What::TooMuch`] when they would be too many: a wider interval or a smaller area is needed.
pub fn contours(grid: &Grid, interval_m: f64) -> Result<Vec<Contour>, What> {
    let too_much = |limit: u64| {
        let of = Limited::Contours;
        What::TooMuch { limit, of }
    };
    if interval_m.is_nan() || interval_m <= 0.0 || grid.columns < 2 || grid.rows < 2 {
        return Ok(Vec::new());
    }
    if grid.values.len() > MOST_CELLS {
        return Err(too_much(MOST_CELLS as u64));
    }
    let heights: Vec<f64> = grid
        .values
        .iter()
        .map(|value| f64::from(*value) * grid.height_unit_m)
        .collect();
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    for height in heights.iter().filter(|height| height.is_finite()) {
        least = least.min(*height);
        most = most.max(*height);
    }
    let (first, last) = ((least / interval_m).ceil(), (most / interval_m).floor());
    if first.is_nan() || last.is_nan() || first > last {
        return Ok(Vec::new());
    }
    if last - first > MOST_LEVELS {
        return Err(too_much(MOST_LEVELS as u64));
    }
    let builder = ContourBuilder::new(grid.columns, grid.rows, true);
    let mut found = Vec::new();
    for index in 0..=(last - first) as usize {
        let height_m = (first + index as f64) * interval_m;
        let lines = builder.lines(&heights, &[height_m]).map_err(What::broken)?;
        for line in lines.iter().flat_map(|level| &level.geometry().0) {
            let line: Vec<Position> = line.0.iter().map(|point| [point.x, point.y]).collect();
            for part in inner_parts(grid, &line) {
                let line = part
                    .into_iter()
                    .map(|[x, y]| grid.position([x - 0.5, y - 0.5]))
                    .collect();
                found.push(Contour { height_m, line });
            }
        }
    }
    Ok(found)
}

/// The parts of a closed line that lie between centers with heights: the crate counts from the outer corner of the first
/// cell, and what it closes around the grid lies on 0 or on the last column or row.
fn inner_parts(grid: &Grid, line: &[Position]) -> Vec<Vec<Position>> {
    let [columns, rows] = [grid.columns as f64, grid.rows as f64];
    // A point beside a cell without a value is not a number, and so not inside.
    let inner = |[x, y]: &Position| (*x > 0.0 && *x < columns && *y > 0.0 && *y < rows).then_some([*x, *y]);
    let mut points: Vec<Option<Position>> = line.iter().map(inner).collect();
    let is_closed = points.first() == points.last() && points.iter().all(Option::is_some);
    if !is_closed {
        // A ring that is cut is begun at a cut, so that no part is in two pieces.
        points.pop();
        let cut = points.iter().position(Option::is_none).unwrap_or_default();
        points.rotate_left(cut);
    }
    let mut parts = vec![Vec::new()];
    for point in points {
        match (point, parts.last_mut()) {
            (Some(point), Some(part)) => part.push(point),
            _ => parts.push(Vec::new()),
        }
    }
    for part in &mut parts {
        part.dedup();
    }
    parts.retain(|part| part.len() > 1);
    parts
}

#[cfg(test)]
mod tests {
    use super::super::tests::grid;
    use super::*;

    /// A hill: every point of a line has its height, and the lines of a height that does not reach the edge are closed.
    #[test]
    fn every_point_of_a_line_has_its_height() {
        let values: Vec<f32> = (0..400)
            .map(|index| {
                let [x, y] = [(index % 20) as f32 - 9.3, (index / 20) as f32 - 8.7];
                50.0 - 0.3 * x * x - 0.2 * y * y - 0.05 * x * y
            })
            .collect();
        let grid = grid(20, 5.0, &values);
        let lines = contours(&grid, 2.0).unwrap();
        assert!(lines.len() > 15, "{}", lines.len());
        for contour in &lines {
            for point in &contour.line {
                let height = grid.height_m(*point).unwrap();
                assert!(
                    (height - contour.height_m).abs() < 1e-6,
                    "{height} on {}",
                    contour.height_m
                );
            }
        }
        let top = lines.iter().filter(|contour| contour.height_m > 45.0);
        for contour in top {
            assert_eq!(contour.line.first(), contour.line.last(), "{}", contour.height_m);
        }
    }

    #[test]
    fn lines_end_where_heights_end() {
        let mut values: Vec<f32> = (0..100).map(|index| (index % 10) as f32).collect();
        values[45] = f32::NAN;
        let grid = grid(10, 1.0, &values);
        let lines = contours(&grid, 2.5).unwrap();
        let of = |height: f64| lines.iter().filter(move |line| (line.height_m - height).abs() < 1e-9);
        // Straight from north to south, through nothing that is not there.
        assert_eq!(of(2.5).count(), 1);
        assert_eq!(of(5.0).count(), 2);
        for line in of(2.5) {
            assert!(line.line.iter().all(|point| (point[0] - 2.5).abs() < 1e-9));
        }
        assert!(matches!(contours(&grid, 0.001), Err(What::TooMuch { .. })));
        assert_eq!(contours(&grid, 0.0), Ok(Vec::new()));
    }
}
