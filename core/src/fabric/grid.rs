//! A uniform grid over the drawing: which spans may concern a square cell.
//!
//! Cells are squares of `2^shift` pixels, numbered down the columns from the lower left, so that walking the cells in
//! order sweeps the drawing from west to east.

use super::pixels::Span;
use crate::plan::PlanPoint;

/// Spans that a cell should hold on average. More makes pairs within a cell costlier, fewer makes longer lists of cells;
/// measured flat between 2 and 8.
const SPANS_PER_CELL: i128 = 4;

/// The layout of the cells.
#[derive(Clone, Debug)]
pub(super) struct Grid {
    low: PlanPoint,
    shift: u32,
    columns: u32,
    rows: u32,
}

/// For every cell, the spans whose pixels may lie in it: `items[starts[cell]..starts[cell + 1]]`.
#[derive(Clone, Debug)]
pub(super) struct Cells {
    pub grid: Grid,
    starts: Vec<u32>,
    items: Vec<u32>,
}

impl Grid {
    /// A grid suited to the spans: with mean length L on area A, a cell of side s holds about n·s·(s + L)/A of n spans.
    fn suited_to(spans: &[Span]) -> Self {
        let (mut low, mut high) = (PlanPoint::new(i32::MAX, i32::MAX), PlanPoint::new(i32::MIN, i32::MIN));
        // Lengths of all spans together stay far below what an integer of 64 bits holds.
        let mut total_length = 0_i64;
        for span in spans {
            let (y_low, y_high) = span.y_range();
            low = PlanPoint::new(low.x_mm.min(span.a.x_mm), low.y_mm.min(y_low));
            high = PlanPoint::new(high.x_mm.max(span.b.x_mm), high.y_mm.max(y_high));
            total_length += i64::from(span.b.x_mm - span.a.x_mm) + i64::from(y_high - y_low);
        }
        if spans.is_empty() {
            (low, high) = (PlanPoint::default(), PlanPoint::default());
        }
        let count = spans.len().max(1) as i128;
        let (width, height) = (
            i128::from(high.x_mm - low.x_mm) + 1,
            i128::from(high.y_mm - low.y_mm) + 1,
        );
        let mean_length = i128::from(total_length) / count;
        let square = mean_length * mean_length + 4 * SPANS_PER_CELL * width * height / count;
        let root = (square as f64).sqrt() as i128;
        let side = ((root - mean_length) / 2).max(1);
        // The power of two nearest to the side in ratio, within a limit on the number of cells.
        let mut shift = (side * side * 2).ilog2() / 2;
        let cells_along = |length: i128, shift: u32| ((length - 1) >> shift) + 1;
        while cells_along(width, shift) * cells_along(height, shift) > 4 * count + 64 {
            shift += 1;
        }
        Self {
            low,
            shift,
            columns: cells_along(width, shift) as u32,
            rows: cells_along(height, shift) as u32,
        }
    }

    pub fn columns(&self) -> u32 {
        self.columns
    }

    pub fn rows(&self) -> u32 {
        self.rows
    }

    /// Pixels along the side of a cell, as a power of two.
    pub fn shift(&self) -> u32 {
        self.shift
    }

    /// The lower left pixel of a cell.
    pub fn corner(&self, column: u32, row: u32) -> PlanPoint {
        PlanPoint::new(
            self.low.x_mm + ((column as i32) << self.shift),
            self.low.y_mm + ((row as i32) << self.shift),
        )
    }

    /// The column of an `x`; below 0 or at `columns` and beyond when it is off the grid.
    pub fn column_of(&self, x_mm: i32) -> i32 {
        (x_mm - self.low.x_mm) >> self.shift
    }

    /// The row of a `y`; below 0 or at `rows` and beyond when it is off the grid.
    pub fn row_of(&self, y_mm: i32) -> i32 {
        (y_mm - self.low.y_mm) >> self.shift
    }

    /// How far, in millimeters, it is at least from `p` to anything filed only outside the square of cells within `ring`
    /// of the cell at `column`, `row`, which holds `p`.
    pub fn margin_around(&self, p: PlanPoint, column: i32, row: i32, ring: i32) -> u64 {
        let margin = |low: i32, at: i32, v: i32| {
            let first = i64::from(low) + (i64::from(at - ring) << self.shift);
            let last = i64::from(low) + (i64::from(at + ring + 1) << self.shift) - 1;
            (i64::from(v) - first).min(last - i64::from(v))
        };
        margin(self.low.x_mm, column, p.x_mm)
            .min(margin(self.low.y_mm, row, p.y_mm))
            .max(0) as u64
    }

    /// Calls `visit` with every cell that holds a pixel the span passes through, and perhaps a neighbor above or below.
    fn visit_cells(&self, span: Span, mut visit: impl FnMut(u32)) {
        let (first, last) = (self.column_of(span.a.x_mm), self.column_of(span.b.x_mm));
        let (y_low, y_high) = span.y_range();
        let mut visit_rows = |column: i32, y_low: i32, y_high: i32| {
            let (mut row, top) = (self.row_of(y_low), self.row_of(y_high));
            while row <= top {
                visit(column as u32 * self.rows + row as u32);
                row += 1;
            }
        };
        if first == last {
            return visit_rows(first, y_low, y_high);
        }
        let (dx, dy) = (
            i64::from(span.b.x_mm - span.a.x_mm),
            i64::from(span.b.y_mm - span.a.y_mm),
        );
        let mut y_in = (span.a.y_mm, span.a.y_mm);
        for column in first..=last {
            // Between two columns of pixels the span is at a half x; there y is only known to lie between two integers.
            let y_out = if column == last {
                (span.b.y_mm, span.b.y_mm)
            } else {
                let border = 2 * (i64::from(self.low.x_mm) + (i64::from(column + 1) << self.shift)) - 1;
                let rise = (dy * (border - 2 * i64::from(span.a.x_mm))).div_euclid(2 * dx) as i32;
                let y = span.a.y_mm + rise;
                (y, y + 1)
            };
            visit_rows(column, y_in.0.min(y_out.0).max(y_low), y_in.1.max(y_out.1).min(y_high));
            y_in = y_out;
        }
    }
}

impl Cells {
    /// Files every span under the cells it may concern. Cost: linear in the number of entries, about 2 to 4 per span.
    pub fn of(spans: &[Span]) -> Self {
        let grid = Grid::suited_to(spans);
        let cell_count = grid.columns as usize * grid.rows as usize;
        let mut starts = vec![0_u32; cell_count + 1];
        let mut entries: Vec<(u32, u32)> = Vec::with_capacity(spans.len() * 3);
        for (index, &span) in spans.iter().enumerate() {
            grid.visit_cells(span, |cell| {
                starts[cell as usize + 1] += 1;
                entries.push((cell, index as u32));
            });
        }
        for cell in 0..cell_count {
            starts[cell + 1] += starts[cell];
        }
        let mut cursors = starts.clone();
        let mut items = vec![0_u32; entries.len()];
        for (cell, index) in entries {
            let cursor = &mut cursors[cell as usize];
            items[*cursor as usize] = index;
            *cursor += 1;
        }
        Self { grid, starts, items }
    }

    /// The spans filed under a cell, in ascending order.
    pub fn spans_in(&self, column: u32, row: u32) -> &[u32] {
        let cell = column as usize * self.grid.rows as usize + row as usize;
        &self.items[self.starts[cell] as usize..self.starts[cell + 1] as usize]
    }

    /// Calls `visit` with the spans filed under the cells within `reach_mm` of a point on either axis, some repeatedly.
    pub fn visit_square(&self, center: PlanPoint, reach_mm: i64, mut visit: impl FnMut(u32)) {
        let within = |low: i32, at: i32, count: u32| {
            let cell = |v: i64| ((v - i64::from(low)) >> self.grid.shift).clamp(-1, i64::from(count));
            let (first, last) = (cell(i64::from(at) - reach_mm), cell(i64::from(at) + reach_mm));
            first.max(0) as u32..(last + 1).clamp(0, i64::from(count)) as u32
        };
        for column in within(self.grid.low.x_mm, center.x_mm, self.grid.columns) {
            for row in within(self.grid.low.y_mm, center.y_mm, self.grid.rows) {
                self.spans_in(column, row).iter().for_each(|&index| visit(index));
            }
        }
    }
}
