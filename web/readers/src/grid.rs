//! Heights on a grid, and what they are at a point.
//!
//! A cell's value is the height at its center. Rows run from north to south, columns from west to east. Cells without a
//! value are `NaN` and nothing that needs them has one.

pub mod laid;
pub mod resampled;

use crate::base::Position;
use crate::clip::Sides;
use crate::fault::{Limited, What};
use crate::system::System;
use laid::Laid;

/// Most cells that are kept: 100 MB.
pub const MOST_CELLS: usize = 25_000_000;

/// Heights on a grid.
#[derive(Clone, Debug)]
pub struct Grid {
    /// The coordinate system of its columns and rows.
    pub system: System,
    /// Where it lies in the plan, where it has no system and is placed by hand; `system` then says nothing.
    pub laid: Option<Laid>,
    /// How many columns.
    pub columns: usize,
    /// How many rows.
    pub rows: usize,
    /// The center of the northwestern cell, in the system's units.
    pub first: Position,
    /// The width and height of a cell, in the system's units, above 0.
    pub step: Position,
    /// Meters in a unit of height.
    pub height_unit_m: f64,
    /// The heights, row by row, in units of height.
    pub values: Vec<f32>,
}

impl Grid {
    /// The height of a cell in units of height; `None` outside and where there is no value.
    #[must_use]
    pub fn value(&self, column: usize, row: usize) -> Option<f64> {
        if column >= self.columns || row >= self.rows {
            return None;
        }
        let value = f64::from(*self.values.get(row * self.columns + column)?);
        value.is_finite().then_some(value)
    }

    /// Column and row of a position of the grid's system, with fractions, whole numbers at centers.
    #[must_use]
    pub fn cell(&self, [x, y]: Position) -> Position {
        [(x - self.first[0]) / self.step[0], (self.first[1] - y) / self.step[1]]
    }

    /// A position of the grid's system, from column and row with fractions.
    #[must_use]
    pub fn position(&self, [column, row]: Position) -> Position {
        [
            self.first[0] + column * self.step[0],
            self.first[1] - row * self.step[1],
        ]
    }

    /// The height in meters at a position of the grid's system: bilinear between the four centers around it,
    /// h = Σ hᵢ·wᵢ with the products of the distances to the opposite sides as weights. `None` beyond the outermost
    /// centers, and where a center that weighs has no value. What is within a millionth of a cell of a center is on it,
    /// so that a position there and back through degrees is the same.
    #[must_use]
    pub fn height_m(&self, position: Position) -> Option<f64> {
        let on_center = |at: f64| if (at - at.round()).abs() < 1e-6 { at.round() } else { at };
        let [column, row] = self.cell(position).map(on_center);
        let inside = |at: f64, count: usize| (0.0..=(count as f64 - 1.0)).contains(&at);
        if !(inside(column, self.columns) && inside(row, self.rows)) {
            return None;
        }
        let [right, down] = [column.fract(), row.fract()];
        let (column, row) = (column as usize, row as usize);
        let mut height = 0.0;
        for (over, under, weight) in [
            (0, 0, (1.0 - right) * (1.0 - down)),
            (1, 0, right * (1.0 - down)),
            (0, 1, (1.0 - right) * down),
            (1, 1, right * down),
        ] {
            if weight > 0.0 {
                height += weight * self.value(column + over, row + under)?;
            }
        }
        Some(height * self.height_unit_m)
    }

    /// The height in meters at a longitude and latitude.
    #[must_use]
    pub fn height_at_deg_m(&self, position_deg: Position) -> Option<f64> {
        self.height_m(self.system.from_degrees(position_deg)?)
    }

    /// Width and height of a cell of a row, in meters. Where the system is of degrees, those of WGS84 at the row's
    /// latitude: a degree of longitude is a·cos φ / √(1 − e² sin² φ)·π/180, one of latitude
    /// a(1 − e²) / (1 − e² sin² φ)^1.5·π/180.
    #[must_use]
    pub fn cell_m(&self, row: usize) -> Position {
        let of_hand = self.laid.map(|laid| laid.unit_m);
        if let Some(unit_m) = of_hand.or_else(|| self.system.unit_m()) {
            return self.step.map(|side| side * unit_m);
        }
        let [_, latitude] = self.position([0.0, row as f64]);
        let degree = degree_m(latitude);
        [self.step[0] * degree[0], self.step[1] * degree[1]]
    }
}

/// Meters in a degree of longitude and one of latitude at a latitude in degrees, on WGS84.
#[must_use]
pub fn degree_m(latitude_deg: f64) -> Position {
    const EQUATORIAL_M: f64 = 6_378_137.0;
    const FLATTENING: f64 = 1.0 / 298.257_223_563;
    const ECCENTRICITY_2: f64 = FLATTENING * (2.0 - FLATTENING);
    let (sine, cosine) = latitude_deg.to_radians().sin_cos();
    let shape = 1.0 - ECCENTRICITY_2 * sine * sine;
    let along = EQUATORIAL_M * cosine / shape.sqrt();
    let across = EQUATORIAL_M * (1.0 - ECCENTRICITY_2) / (shape * shape.sqrt());
    [along.to_radians(), across.to_radians()]
}

/// A grid that is being read: only what lies within the box is kept.
pub struct Builder {
    grid: Grid,
    /// First column and row that are kept.
    from: [usize; 2],
}

impl Builder {
    /// For a grid of columns and rows, with the northwestern center and the step in the system's units; cells that are
    /// more than one away from the box (in degrees) are not kept.
    ///
    /// # Errors
    /// [`What::TooMuch`] when more than [`MOST_CELLS`] remain, [`What::NothingWithin`] when none.
    pub fn new(
        system: System,
        [columns, rows]: [usize; 2],
        first: Position,
        step: Position,
        sides: Option<Sides>,
    ) -> Result<Self, What> {
        let mut grid = Grid {
            system,
            laid: None,
            columns,
            rows,
            first,
            step,
            height_unit_m: 1.0,
            values: Vec::new(),
        };
        let mut from = [0; 2];
        if let Some(sides) = sides {
            let (least, most) = window(&grid, sides).ok_or(What::NothingWithin)?;
            from = least;
            grid.first = grid.position(least.map(|index| index as f64));
            grid.columns = most[0] - least[0] + 1;
            grid.rows = most[1] - least[1] + 1;
        }
        let cells = grid.columns.saturating_mul(grid.rows);
        if cells > MOST_CELLS {
            let limit = MOST_CELLS as u64;
            let of = Limited::Cells;
            return Err(What::TooMuch { limit, of });
        }
        grid.values = vec![f32::NAN; cells];
        Ok(Self { grid, from })
    }

    /// First column and row that are kept, and how many.
    #[must_use]
    pub fn kept(&self) -> ([usize; 2], [usize; 2]) {
        (self.from, [self.grid.columns, self.grid.rows])
    }

    /// Sets a cell by its column and row in the whole grid; nothing for one that is not kept.
    pub fn set(&mut self, column: usize, row: usize, value: f32) {
        let [left, top] = self.from;
        if column < left || row < top || column - left >= self.grid.columns {
            return;
        }
        let index = (row - top) * self.grid.columns + (column - left);
        if let Some(cell) = self.grid.values.get_mut(index) {
            *cell = if value.is_finite() { value } else { f32::NAN };
        }
    }

    /// That it has no place on Earth, and where it lies in the plan.
    pub fn lay(&mut self, laid: Laid) {
        self.grid.laid = Some(laid);
    }

    /// What a unit of height is in meters.
    pub fn heights_in(&mut self, unit_m: f64) {
        self.grid.height_unit_m = unit_m;
    }

    /// The grid.
    #[must_use]
    pub fn finish(self) -> Grid {
        self.grid
    }
}

/// First and last column and row within a box of degrees, one more on each side; by the box's outline, since its edges
/// are bent in the grid's system.
fn window(grid: &Grid, [west, south, east, north]: Sides) -> Option<([usize; 2], [usize; 2])> {
    const PIECES: usize = 16;
    let (mut least, mut most) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for index in 0..=PIECES {
        let share = index as f64 / PIECES as f64;
        let (x, y) = (west + share * (east - west), south + share * (north - south));
        for corner in [[x, south], [x, north], [west, y], [east, y]] {
            // A position without an answer can not be in the grid.
            let Some(position) = grid.system.from_degrees(corner) else {
                continue;
            };
            for (axis, at) in grid.cell(position).into_iter().enumerate() {
                least[axis] = least[axis].min(at);
                most[axis] = most[axis].max(at);
            }
        }
    }
    let mut found = ([0; 2], [0; 2]);
    for (axis, count) in [grid.columns, grid.rows].into_iter().enumerate() {
        let last = count as f64 - 1.0;
        let [from, to] = [
            (least[axis] - 1.0).floor().max(0.0),
            (most[axis] + 1.0).ceil().min(last),
        ];
        if from.is_nan() || to.is_nan() || from > to {
            return None;
        }
        found.0[axis] = from as usize;
        found.1[axis] = to as usize;
    }
    Some(found)
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    /// A grid in meters about the origin of a plan.
    pub(crate) fn grid(columns: usize, cell_m: f64, values: &[f32]) -> Grid {
        Grid {
            system: System::plan([-71.0, 42.0]).unwrap(),
            laid: None,
            columns,
            rows: values.len() / columns,
            first: [0.0, 0.0],
            step: [cell_m, cell_m],
            height_unit_m: 1.0,
            values: values.to_vec(),
        }
    }

    #[test]
    fn heights_between_centers_are_bilinear() {
        let grid = grid(2, 10.0, &[0.0, 10.0, 20.0, f32::NAN]);
        assert_eq!(grid.height_m([0.0, 0.0]), Some(0.0));
        assert_eq!(grid.height_m([5.0, 0.0]), Some(5.0));
        assert_eq!(grid.height_m([0.0, -10.0]), Some(20.0));
        assert_eq!(grid.height_m([5.0, -5.0]), None, "a center without a value weighs");
        assert_eq!(grid.height_m([10.1, 0.0]), None, "beyond the outermost center");
    }

    /// Cases I-01 to I-03 of the collected check cases: degrees on WGS84, derived.
    #[test]
    fn degrees_are_as_long_as_on_wgs84() {
        for (latitude, along, across) in [
            (0.0, 111_319.49, 110_574.28),
            (40.0, 85_393.86, 111_034.63),
            (45.0, 78_846.84, 111_131.78),
        ] {
            let [found_along, found_across] = degree_m(latitude);
            assert!((found_along - along).abs() < 0.05, "{latitude}: {found_along}");
            assert!((found_across - across).abs() < 0.05, "{latitude}: {found_across}");
        }
    }

    #[test]
    fn only_what_lies_within_the_box_is_kept() {
        let mut builder = Builder::new(
            System::degrees(),
            [100, 50],
            [10.0, 50.0],
            [0.01, 0.01],
            Some([10.2, 49.7, 10.3, 49.8]),
        )
        .unwrap();
        builder.set(25, 25, 7.0);
        // Ten cells wide and high from column and row 20, and one or two more on each side.
        let (from, kept) = builder.kept();
        assert!(from.iter().all(|first| (18..=19).contains(first)), "{from:?}");
        assert!(kept.iter().all(|count| (13..=15).contains(count)), "{kept:?}");
        let grid = builder.finish();
        assert_eq!(grid.values.len(), kept[0] * kept[1]);
        assert_eq!(grid.value(25 - from[0], 25 - from[1]), Some(7.0));
        let outside = Builder::new(
            System::degrees(),
            [10, 10],
            [0.0, 0.0],
            [0.1, 0.1],
            Some([5.0, 5.0, 6.0, 6.0]),
        );
        assert!(matches!(outside, Err(What::NothingWithin)));
    }
}
