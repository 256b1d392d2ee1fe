//! The outline of everything within some distance of lines: the edge of a walk-shed as it is drawn.
//!
//! The distance to the nearest line is worked out on a square grid and the outline drawn through it by linear
//! interpolation, so it lies within a quarter of a cell of the true one. For drawing only; reach itself is exact.

use std::collections::BTreeMap;

/// Finest cell, in meters: its quarter is two pixels at a scale of one pixel per meter, along an edge that is drawn by
/// convention.
const FINEST_CELL_M: f64 = 8.0;
/// Most cells of the grid: it stays within a few milliseconds however large the plan is.
const MOST_CELLS: f64 = 60_000.0;

/// A polyline in meters.
type Line = Vec<(f64, f64)>;

/// Rings about everything within `distance_m` of each set of lines, outer ones and holes alike, for filling by parity.
/// Holes smaller than `least_hole_m2` are left out.
///
/// The sets are nested, the widest first, as walks of ten and of five minutes are: lines of the narrower set are worked
/// in once, and those alone that are new in the wider one are added to them.
#[must_use]
pub fn around(sets: &[&[Line]], distance_m: f64, least_hole_m2: f64) -> Vec<Vec<Line>> {
    let Some(mut field) = Field::over(sets.iter().copied().flatten(), distance_m) else {
        return vec![Vec::new(); sets.len()];
    };
    let mut held: &[Line] = &[];
    let mut outlines = Vec::with_capacity(sets.len());
    for lines in sets.iter().rev() {
        for line in lines.iter().filter(|line| !held.contains(line)) {
            for ends in line.windows(2) {
                if let [a, b] = ends {
                    field.approach(*a, *b);
                }
            }
        }
        held = lines;
        let mut rings = field.rings();
        // The inside lies to the left, so a hole runs clockwise.
        rings.retain(|ring| {
            let area_m2 = signed_area_m2(ring);
            area_m2 > 0.0 || -area_m2 >= least_hole_m2
        });
        outlines.push(rings);
    }
    outlines.reverse();
    outlines
}

/// Distances to the nearest line at the corners of a grid.
struct Field {
    least: (f64, f64),
    cell_m: f64,
    columns: usize,
    rows: usize,
    /// The distance the outline is drawn at.
    level_m: f64,
    /// Distances are worked out up to this one.
    reach_m: f64,
    squared_m2: Vec<f64>,
}

impl Field {
    /// A grid that covers everything within the distance, with a free margin all around.
    fn over<'a>(lines: impl Iterator<Item = &'a Line>, level_m: f64) -> Option<Self> {
        let mut points = lines.flatten();
        let first = *points.next()?;
        let (low, high) = points.fold((first, first), |(low, high), point| {
            (
                (low.0.min(point.0), low.1.min(point.1)),
                (high.0.max(point.0), high.1.max(point.1)),
            )
        });
        let (width_m, height_m) = (high.0 - low.0 + 2.0 * level_m, high.1 - low.1 + 2.0 * level_m);
        let cell_m = FINEST_CELL_M.max((width_m * height_m / MOST_CELLS).sqrt());
        let margin_m = level_m + 2.0 * cell_m;
        let count = |extent_m: f64| ((extent_m + 4.0 * cell_m) / cell_m).ceil() as usize + 1;
        let (columns, rows) = (count(width_m), count(height_m));
        Some(Self {
            least: (low.0 - margin_m, low.1 - margin_m),
            cell_m,
            columns,
            rows,
            level_m,
            reach_m: level_m + 1.5 * cell_m,
            squared_m2: vec![f64::INFINITY; columns * rows],
        })
    }

    /// Takes the segment `a`–`b` into the distances of the corners it can matter to: row by row those between the
    /// two slanted edges of the band about it.
    fn approach(&mut self, a: (f64, f64), b: (f64, f64)) {
        let reach_m = self.reach_m;
        let (a, b) = if a.1 <= b.1 { (a, b) } else { (b, a) };
        let (ux, uy) = (b.0 - a.0, b.1 - a.1);
        let squared = ux * ux + uy * uy;
        let per_squared = if squared > 0.0 { 1.0 / squared } else { 0.0 };
        let (west, east) = (a.0.min(b.0) - reach_m, a.0.max(b.0) + reach_m);
        for row in self.range(a.1 - reach_m, b.1 + reach_m, self.least.1, self.rows) {
            let y = self.least.1 + row as f64 * self.cell_m - a.1;
            // Where the part of the segment within reach of this row begins and ends.
            let (mut low, mut high) = (west, east);
            if uy > 0.0 {
                let along = |y: f64| a.0 + ux * (y / uy).clamp(0.0, 1.0);
                let (one, other) = (along(y - reach_m), along(y + reach_m));
                low = one.min(other) - reach_m;
                high = one.max(other) + reach_m;
            }
            let columns = self.range(low, high, self.least.0, self.columns);
            let start = row * self.columns;
            let Some(cells) = self.squared_m2.get_mut(start + columns.start..start + columns.end) else {
                continue;
            };
            let mut x = self.least.0 + columns.start as f64 * self.cell_m - a.0;
            for held in cells {
                let share = ((x * ux + y * uy) * per_squared).clamp(0.0, 1.0);
                let (dx, dy) = (x - share * ux, y - share * uy);
                *held = held.min(dx * dx + dy * dy);
                x += self.cell_m;
            }
        }
    }

    fn range(&self, from_m: f64, to_m: f64, least_m: f64, count: usize) -> std::ops::Range<usize> {
        let first = ((from_m - least_m) / self.cell_m).floor().max(0.0) as usize;
        let last = ((to_m - least_m) / self.cell_m).ceil().max(0.0) as usize;
        first.min(count)..(last + 1).min(count)
    }

    /// The distance at a corner of the grid.
    fn at(&self, column: usize, row: usize) -> f64 {
        let squared_m2 = self.squared_m2.get(row * self.columns + column).copied();
        squared_m2.unwrap_or(f64::INFINITY).sqrt()
    }

    /// The outline at the level, the nearer side on the left.
    fn rings(&self) -> Vec<Line> {
        // Each crossing of a grid edge leads to the next one in its cell.
        let mut next: BTreeMap<Crossing, Crossing> = BTreeMap::new();
        let level_m2 = self.level_m * self.level_m;
        let is_near = |place: usize| {
            self.squared_m2
                .get(place)
                .is_some_and(|squared_m2| *squared_m2 < level_m2)
        };
        for row in 0..self.rows - 1 {
            let mut place = row * self.columns;
            let mut west = [is_near(place), is_near(place + self.columns)];
            for column in 0..self.columns - 1 {
                place += 1;
                let east = [is_near(place), is_near(place + self.columns)];
                if west != east || west[0] != west[1] {
                    next.extend(self.pieces(column, row).into_iter().flatten());
                }
                west = east;
            }
        }
        let mut rings = Vec::new();
        while let Some((start, first)) = next.pop_first() {
            let mut ring = vec![self.point(start)];
            let mut here = first;
            while here != start {
                ring.push(self.point(here));
                match next.remove(&here) {
                    Some(after) => here = after,
                    None => break,
                }
            }
            rings.push(ring);
        }
        rings
    }

    /// The pieces of outline in one cell. Where two opposite corners are near the middle of the cell decides.
    fn pieces(&self, column: usize, row: usize) -> [Option<(Crossing, Crossing)>; 2] {
        let corners = [(0, 0), (1, 0), (1, 1), (0, 1)].map(|(right, up)| self.at(column + right, row + up));
        let near = corners.map(|distance_m| distance_m * distance_m < self.level_m * self.level_m);
        let south = Crossing {
            column,
            row,
            is_upright: false,
        };
        let north = Crossing {
            column,
            row: row + 1,
            is_upright: false,
        };
        let west = Crossing {
            column,
            row,
            is_upright: true,
        };
        let east = Crossing {
            column: column + 1,
            row,
            is_upright: true,
        };
        match near {
            [false, false, false, false] | [true, true, true, true] => [None, None],
            [true, false, false, false] => [Some((south, west)), None],
            [false, true, false, false] => [Some((east, south)), None],
            [false, false, true, false] => [Some((north, east)), None],
            [false, false, false, true] => [Some((west, north)), None],
            [true, true, false, false] => [Some((east, west)), None],
            [false, true, true, false] => [Some((north, south)), None],
            [false, false, true, true] => [Some((west, east)), None],
            [true, false, false, true] => [Some((south, north)), None],
            [false, true, true, true] => [Some((west, south)), None],
            [true, false, true, true] => [Some((south, east)), None],
            [true, true, false, true] => [Some((east, north)), None],
            [true, true, true, false] => [Some((north, west)), None],
            [true, false, true, false] | [false, true, false, true] => {
                let middle_m = corners.iter().sum::<f64>() / 4.0;
                let is_joined = middle_m < self.level_m;
                match (near[0], is_joined) {
                    (true, true) => [Some((south, east)), Some((north, west))],
                    (true, false) => [Some((south, west)), Some((north, east))],
                    (false, true) => [Some((west, south)), Some((east, north))],
                    (false, false) => [Some((east, south)), Some((west, north))],
                }
            }
        }
    }

    /// Where the outline crosses a grid edge.
    fn point(&self, crossing: Crossing) -> (f64, f64) {
        let Crossing {
            column,
            row,
            is_upright,
        } = crossing;
        let from_m = self.at(column, row);
        let to_m = if is_upright {
            self.at(column, row + 1)
        } else {
            self.at(column + 1, row)
        };
        let share = if from_m.is_finite() && to_m.is_finite() {
            ((self.level_m - from_m) / (to_m - from_m)).clamp(0.0, 1.0)
        } else {
            0.5
        };
        let (right, up) = if is_upright { (0.0, share) } else { (share, 0.0) };
        (
            self.least.0 + (column as f64 + right) * self.cell_m,
            self.least.1 + (row as f64 + up) * self.cell_m,
        )
    }
}

/// A grid edge: from the corner to the next one above or to the right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Crossing {
    column: usize,
    row: usize,
    is_upright: bool,
}

fn signed_area_m2(ring: &[(f64, f64)]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    #[test]
    fn a_single_street_has_a_capsule_about_it() {
        let rings = &around(&[&[vec![(0.0, 0.0), (300.0, 120.0)]]], 42.0, 0.0)[0];
        assert_eq!(rings.len(), 1);
        let length_m = (300.0_f64 * 300.0 + 120.0 * 120.0).sqrt();
        let expected_m2 = 2.0 * 42.0 * length_m + PI * 42.0 * 42.0;
        let area_m2 = signed_area_m2(&rings[0]);
        assert!(
            (area_m2 / expected_m2 - 1.0).abs() < 0.005,
            "{area_m2} is not {expected_m2}"
        );
    }

    #[test]
    fn every_point_of_the_outline_lies_at_the_distance() {
        let lines = vec![
            vec![(0.0, 0.0), (200.0, 0.0), (200.0, 150.0)],
            vec![(40.0, -90.0), (60.0, 130.0)],
            vec![(500.0, 500.0), (501.0, 500.0)],
        ];
        let rings = around(&[&lines], 30.0, 0.0).remove(0);
        assert!(rings.len() >= 2, "the far street has an outline of its own");
        for (x, y) in rings.into_iter().flatten() {
            let nearest_m = lines
                .iter()
                .flat_map(|line| line.windows(2))
                .map(|ends| {
                    let (a, b) = (ends[0], ends[1]);
                    let (ux, uy) = (b.0 - a.0, b.1 - a.1);
                    let share = (((x - a.0) * ux + (y - a.1) * uy) / (ux * ux + uy * uy)).clamp(0.0, 1.0);
                    ((x - a.0 - share * ux).powi(2) + (y - a.1 - share * uy).powi(2)).sqrt()
                })
                .fold(f64::INFINITY, f64::min);
            assert!(
                (nearest_m - 30.0).abs() < FINEST_CELL_M / 4.0,
                "{nearest_m} at {x}, {y}"
            );
        }
    }

    #[test]
    fn small_holes_are_left_out_and_large_ones_kept() {
        let block = |size: f64| vec![(0.0, 0.0), (size, 0.0), (size, size), (0.0, size), (0.0, 0.0)];
        // The hole of a block of 100 m is 16 m wide, that of 300 m is 216 m wide.
        let rings = |size: f64, least_hole_m2| around(&[&[block(size)]], 42.0, least_hole_m2)[0].len();
        assert_eq!(rings(100.0, 2_500.0), 1);
        assert_eq!(rings(100.0, 0.0), 2);
        assert_eq!(rings(300.0, 2_500.0), 2);
    }

    #[test]
    fn nested_sets_have_the_outlines_they_would_have_alone() {
        let narrow = vec![vec![(0.0, 0.0), (100.0, 0.0)], vec![(50.0, 0.0), (50.0, 80.0)]];
        let mut wide = narrow.clone();
        wide.push(vec![(100.0, 0.0), (260.0, 90.0)]);
        let both = around(&[&wide, &narrow], 42.0, 0.0);
        assert_eq!(both[0], around(&[&wide], 42.0, 0.0)[0]);
        let alone_m2 = signed_area_m2(&around(&[&narrow], 42.0, 0.0)[0][0]);
        let nested_m2 = signed_area_m2(&both[1][0]);
        assert!(
            (nested_m2 / alone_m2 - 1.0).abs() < 0.002,
            "only the grid differs: {nested_m2} and {alone_m2}"
        );
    }

    #[test]
    fn nothing_has_no_outline() {
        assert_eq!(around(&[&[], &[]], 42.0, 0.0), vec![Vec::<Line>::new(), Vec::new()]);
    }
}
