//! Heights for a plan: grids of a file asked at the points of a regular grid in the plan's millimeters.
//!
//! The points stand at whole multiples of their spacing from the plan's origin, so that the same area asked twice gives
//! the same heights. Rows and columns at the outside without any height are left out. What is missing within takes the
//! height of the nearest point that has one, counted along rows and columns, and is counted, to be said: a plan's heights
//! have no gaps, and none becomes 0.

use super::Grid;
use crate::base::Position;
use crate::system::System;

/// Most points of the plan's grid: heights of so many are drawn and measured while a hand moves.
pub const MOST_POINTS: u32 = 40_000;

/// Distances between points to choose from, in millimeters.
const SPACINGS_MM: [u32; 10] = [
    1_000, 2_000, 5_000, 10_000, 20_000, 30_000, 50_000, 100_000, 200_000, 500_000,
];

/// Points may stand so much closer than the file's cells, as 30 m for a second of arc.
const CLOSER: f64 = 0.95;

/// What lies beyond, in meters, is no height of ground but a mark that the file does not name: the deepest trench and the
/// highest summit are within 12 km of the sea (common knowledge).
const FARTHEST_M: f64 = 12_000.0;

/// Heights on a regular grid of the plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Resampled {
    /// Where the southwestern point stands, east and north of the plan's origin.
    pub south_west_mm: [i32; 2],
    /// Distance between points.
    pub spacing_mm: u32,
    /// Points of a row.
    pub columns: u32,
    /// Heights, rows from south to north; none where no point has one.
    pub heights_mm: Vec<i32>,
    /// How many points the whole area has.
    pub asked: u32,
    /// How many of the heights are those of a neighbor.
    pub filled: u32,
}

/// The spacing for an area and cells of a size: the closest that is not finer than the cells and stays below
/// [`MOST_POINTS`].
#[must_use]
pub fn spacing_mm([west, south, east, north]: [f64; 4], cell_mm: f64) -> u32 {
    let fits = |spacing_mm: &&u32| {
        let spacing = f64::from(**spacing_mm);
        let count = |length: f64| (length / spacing).ceil() + 2.0;
        spacing >= cell_mm * CLOSER && count(east - west) * count(north - south) <= f64::from(MOST_POINTS)
    };
    // The widest serves 100 km, which is more than can be asked for.
    *SPACINGS_MM.iter().find(fits).unwrap_or(&500_000)
}

/// Heights of an area of the plan (west, south, east, north in millimeters), from the first grid that has one at each
/// point, bilinear between its centers; `unit_m` is meters in a unit of height, each grid's own without it.
/// Cost: linear in [`MOST_POINTS`] and the grids.
#[must_use]
pub fn resampled(grids: &[Grid], plan: &System, sides_mm: [f64; 4], unit_m: Option<f64>) -> Resampled {
    let cell_mm = grids.iter().map(cell_mm).fold(f64::INFINITY, f64::min);
    if !cell_mm.is_finite() || !sides_mm.iter().all(|side| side.abs() < 1e9) {
        return Resampled::default();
    }
    let spacing_mm = spacing_mm(sides_mm, cell_mm);
    let spacing = f64::from(spacing_mm);
    let [west, south, east, north] = [
        (sides_mm[0] / spacing).floor() as i32,
        (sides_mm[1] / spacing).floor() as i32,
        (sides_mm[2] / spacing).ceil() as i32,
        (sides_mm[3] / spacing).ceil() as i32,
    ];
    let height_mm = |column: i32, row: i32| -> Option<i32> {
        let at = [f64::from(column) * spacing, f64::from(row) * spacing];
        let at_m = at.map(|mm| mm / 1000.0);
        let degrees = plan.to_degrees(at_m);
        let of_grid = |grid: &Grid| {
            let scale = unit_m.map_or(1.0, |unit_m| unit_m / grid.height_unit_m);
            let height_m = match grid.laid {
                Some(laid) => grid.height_m(laid.of_plan(at_m))?,
                None => grid.height_at_deg_m(degrees?)?,
            };
            Some(height_m * scale)
        };
        let height_m = grids.iter().find_map(of_grid)?;
        (height_m.abs() < FARTHEST_M).then(|| (height_m * 1000.0).round() as i32)
    };
    let mut held = Vec::new();
    // First and last column, first and last row with a height.
    let mut kept = [i32::MAX, i32::MIN, i32::MAX, i32::MIN];
    for row in south..=north {
        for column in west..=east {
            let height = height_mm(column, row);
            if height.is_some() {
                kept = [
                    kept[0].min(column),
                    kept[1].max(column),
                    kept[2].min(row),
                    kept[3].max(row),
                ];
            }
            held.push(height);
        }
    }
    let mut found = Resampled {
        asked: held.len() as u32,
        spacing_mm,
        ..Resampled::default()
    };
    if kept[0] > kept[1] {
        return found;
    }
    let whole = (east - west + 1) as usize;
    let columns = (kept[1] - kept[0] + 1) as usize;
    let mut inner = Vec::new();
    for row in kept[2]..=kept[3] {
        let start = (row - south) as usize * whole + (kept[0] - west) as usize;
        inner.extend(held.iter().skip(start).take(columns).copied());
    }
    found.filled = fill(&mut inner, columns);
    found.south_west_mm = [kept[0], kept[2]].map(|place| place.saturating_mul(spacing_mm as i32));
    found.columns = columns as u32;
    found.heights_mm = inner.into_iter().map(Option::unwrap_or_default).collect();
    found
}

/// The longer side of a cell in the middle of a grid, in millimeters.
fn cell_mm(grid: &Grid) -> f64 {
    let [width_m, height_m] = grid.cell_m(grid.rows / 2);
    width_m.max(height_m) * 1000.0
}

/// Gives what is missing the height of its nearest neighbor along rows and columns; how many there were. Where one has
/// a height, all have one afterwards.
fn fill(heights: &mut [Option<i32>], columns: usize) -> u32 {
    let mut filled = 0;
    let mut edge: Vec<usize> = (0..heights.len()).filter(|place| heights[*place].is_some()).collect();
    while !edge.is_empty() {
        let mut next = Vec::new();
        for place in edge {
            let column = place % columns;
            let neighbors = [
                (column > 0).then(|| place - 1),
                (column + 1 < columns).then(|| place + 1),
                place.checked_sub(columns),
                Some(place + columns),
            ];
            for neighbor in neighbors.into_iter().flatten() {
                if heights.get(neighbor) == Some(&None) {
                    heights[neighbor] = heights[place];
                    filled += 1;
                    next.push(neighbor);
                }
            }
        }
        edge = next;
    }
    filled
}

/// What a file's grids are, together: what a person is told before heights are taken.
#[derive(Clone, Debug, PartialEq)]
pub struct About {
    /// West, south, east and north of the outermost centers, in degrees; in millimeters from its zero of a grid that is
    /// placed by hand.
    pub bounds_deg: [f64; 4],
    /// Width and height of the first grid's cells, in meters.
    pub cell_m: Position,
    /// How many cells there are.
    pub cells: f64,
    /// How many of them have no height.
    pub empty: f64,
    /// The lowest height, in units of the first grid.
    pub lowest: f64,
    /// The highest.
    pub highest: f64,
    /// Meters in a unit of height of the first grid: as the file says; where it does not, feet where its coordinates are
    /// in feet, which is common practice and no more, so a person is to look at it.
    pub unit_m: f64,
}

impl About {
    /// All of it in the order above, as it is told to the page.
    #[must_use]
    pub fn numbers(&self) -> Vec<f64> {
        let mut numbers = self.bounds_deg.to_vec();
        numbers.extend(self.cell_m);
        numbers.extend([self.cells, self.empty, self.lowest, self.highest, self.unit_m]);
        numbers
    }
}

/// The unit of a grid's heights, or of its coordinates where those are in feet and the heights are not said to be.
fn likely_unit_m(grid: &Grid) -> f64 {
    let of_system = grid.system.unit_m().filter(|unit_m| (0.3..0.31).contains(unit_m));
    of_system
        .filter(|_| grid.height_unit_m == 1.0)
        .unwrap_or(grid.height_unit_m)
}

/// What these grids are; `None` of none, and where nothing has a height or a place on Earth. Linear in the cells.
#[must_use]
pub fn about(grids: &[Grid]) -> Option<About> {
    let first = grids.first()?;
    let mut about = About {
        bounds_deg: [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY],
        cell_m: first.cell_m(first.rows / 2),
        cells: 0.0,
        empty: 0.0,
        lowest: f64::INFINITY,
        highest: f64::NEG_INFINITY,
        unit_m: likely_unit_m(first),
    };
    for grid in grids {
        let last = [grid.columns, grid.rows].map(|count| count.saturating_sub(1) as f64);
        for corner in [[0.0, 0.0], [last[0], 0.0], last, [0.0, last[1]]] {
            let corner = grid.position(corner);
            let [x, y] = match grid.laid {
                Some(laid) => laid.from_zero_mm(corner),
                None => grid.system.to_degrees(corner)?,
            };
            let [west, south, east, north] = about.bounds_deg;
            about.bounds_deg = [west.min(x), south.min(y), east.max(x), north.max(y)];
        }
        about.cells += grid.values.len() as f64;
        let scale = grid.height_unit_m / first.height_unit_m;
        for value in &grid.values {
            let height = f64::from(*value) * scale;
            if (height * first.height_unit_m).abs() < FARTHEST_M {
                about.lowest = about.lowest.min(height);
                about.highest = about.highest.max(height);
            } else {
                about.empty += 1.0;
            }
        }
    }
    (about.lowest <= about.highest).then_some(about)
}

#[cfg(test)]
mod tests {
    use super::super::tests::grid;
    use super::*;

    const AREA_MM: [f64; 4] = [5_000.0, -95_000.0, 85_000.0, -15_000.0];

    fn plan() -> System {
        System::plan([-71.0, 42.0]).unwrap()
    }

    /// 100 + 0.05 x − 0.02 y on cells of a size, some of them without a height.
    fn plane(cell_m: f64, count: usize, is_hole: impl Fn(usize, usize) -> bool) -> Grid {
        let value = |index: usize| {
            let (column, row) = (index % count, index / count);
            let height = 100.0 + cell_m * (0.05 * column as f64 + 0.02 * row as f64);
            if is_hole(column, row) { f32::NAN } else { height as f32 }
        };
        let values: Vec<f32> = (0..count * count).map(value).collect();
        grid(count, cell_m, &values)
    }

    #[test]
    fn a_plane_is_the_same_plane_in_the_plan() {
        for cell_m in [2.0, 3.0, 8.0] {
            let grid = plane(cell_m, 60, |_, _| false);
            let found = resampled(&[grid], &plan(), AREA_MM, None);
            assert_eq!((found.filled, found.heights_mm.len() as u32), (0, found.asked));
            for (place, height) in found.heights_mm.iter().enumerate() {
                let (column, row) = (place as i32 % found.columns as i32, place as i32 / found.columns as i32);
                let spacing = found.spacing_mm as i32;
                let [x, y] = [
                    f64::from(found.south_west_mm[0] + column * spacing),
                    f64::from(found.south_west_mm[1] + row * spacing),
                ];
                let expected = 100_000.0 + 0.05 * x - 0.02 * y;
                // Heights of the file are of 24 bits, and there and back by degrees is a hair.
                assert!(
                    (f64::from(*height) - expected).abs() < 1.0,
                    "{cell_m} m, {x} {y}: {height}"
                );
            }
        }
    }

    #[test]
    fn points_are_no_closer_than_cells_and_no_more_than_can_be_drawn() {
        let side = |meters: f64| [0.0, 0.0, meters * 1000.0, meters * 1000.0];
        assert_eq!(spacing_mm(side(600.0), 3_048.0), 5_000);
        assert_eq!(spacing_mm(side(600.0), 30_870.0), 30_000);
        assert_eq!(spacing_mm(side(1_500.0), 1_000.0), 10_000);
        for meters in [10.0, 400.0, 2_000.0, 9_000.0, 41_000.0] {
            let sides = side(meters);
            let spacing = f64::from(spacing_mm(sides, 1_000.0));
            let count = (sides[2] / spacing).ceil() + 1.0;
            assert!(count * count <= f64::from(MOST_POINTS), "{meters}");
        }
    }

    #[test]
    fn holes_take_the_nearest_height_and_are_counted() {
        let with_hole = plane(5.0, 30, |column, row| column == 8 && row == 10);
        let found = resampled(&[with_hole], &plan(), AREA_MM, None);
        assert_eq!((found.spacing_mm, found.filled), (5_000, 1));
        let lowest = *found.heights_mm.iter().min().unwrap();
        assert!(lowest > 100_000, "a hole did not become {lowest} mm");
    }

    #[test]
    fn what_lies_beyond_the_file_is_left_out_and_said() {
        let found = resampled(&[plane(5.0, 10, |_, _| false)], &plan(), AREA_MM, None);
        // Columns 1 to 9 east, rows −45 to −15 north; the area reaches 17 of each.
        assert_eq!(found.asked, 17 * 17);
        assert_eq!((found.columns, found.heights_mm.len(), found.filled), (9, 63, 0));
        assert_eq!(found.south_west_mm, [5_000, -45_000]);
        let far = [9e6, 9e6, 9.1e6, 9.1e6];
        let none = resampled(&[plane(5.0, 10, |_, _| false)], &plan(), far, None);
        assert_eq!((none.columns, none.heights_mm.len()), (0, 0));
    }

    #[test]
    fn another_unit_is_another_height() {
        let grid = || [plane(5.0, 30, |_, _| false)];
        let meters = resampled(&grid(), &plan(), AREA_MM, None);
        let feet = resampled(&grid(), &plan(), AREA_MM, Some(0.3048));
        for (meter, foot) in meters.heights_mm.iter().zip(&feet.heights_mm) {
            assert!((f64::from(*meter) * 0.3048 - f64::from(*foot)).abs() <= 1.0);
        }
    }

    #[test]
    fn what_grids_are_is_said_without_their_holes() {
        let about = about(&[plane(10.0, 20, |column, _| column == 0)]).unwrap();
        assert_eq!((about.cells, about.empty, about.unit_m), (400.0, 20.0, 1.0));
        assert!((about.lowest - 100.5).abs() < 1e-4 && (about.highest - 113.3).abs() < 1e-4);
        let [west, south, east, north] = about.bounds_deg;
        assert!(west < east && south < north && (west + 71.0).abs() < 1e-9);
        assert_eq!(super::about(&[plane(10.0, 5, |_, _| true)]), None);
        // Massachusetts in US survey feet; a file that names a unit of height keeps it.
        let mut in_feet = plane(10.0, 5, |_, _| false);
        in_feet.system = System::named("EPSG:2249").unwrap();
        in_feet.first = [750_000.0, 3_000_000.0];
        let unit_m = |grid: &Grid| super::about(std::slice::from_ref(grid)).unwrap().unit_m;
        assert!((unit_m(&in_feet) - 1200.0 / 3937.0).abs() < 1e-12);
        in_feet.height_unit_m = 0.3048;
        assert_eq!(unit_m(&in_feet), 0.3048);
    }
}
