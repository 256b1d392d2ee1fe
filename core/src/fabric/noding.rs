//! Snap rounding in one pass: every span becomes a run of vertices on the grid, and runs meet only at vertices.
//!
//! Hot pixels are those of all ends and of all crossings of the drawn spans. Each span is led through the center of every
//! hot pixel it passes through (half-open pixels, see `pixels`). The result depends on the set of spans only.
//! Source: J. D. Hobby, "Practical segment intersection with finite precision output", Computational Geometry 13 (1999).
//!
//! Everything is decided cell by cell: a crossing is found in the cell that holds its rounded point, since both spans
//! are filed there, and a pixel only concerns the spans filed in its cell. Cells are swept in columns from west to east;
//! the vertices of a column are sorted among themselves and appended, so that all vertices end up sorted by (x, y)
//! and every run is met in its own direction without a sort of its own.

use super::grid::Cells;
use super::ids::VertexId;
use super::noded_cells::NodedCells;
use super::pixels::{Span, key_of, passes, point_of, rounded_crossing};
use crate::order;
use crate::plan::PlanPoint;

/// A cell with more spans than this is split, where splitting helps.
const CROWDED: usize = 24;

/// Splitting helps when it leaves at most this share of the pairs to test, in percent.
const WORTHWHILE_PERCENT: u64 = 80;

/// Hot pixels per span above which a cell is split even though that saves no pair: each pixel is tested with each span.
const PIXELS_PER_SPAN: usize = 16;

/// Spans led through hot pixels.
pub(super) struct Noding {
    /// All hot pixels, sorted by (x, y).
    pub vertices: Vec<PlanPoint>,
    /// Where the run of each span begins in `runs`; one more at the end.
    pub run_starts: Vec<u32>,
    /// The vertices along each span, from its `a` to its `b`.
    pub runs: Vec<u32>,
}

impl Noding {
    /// Leads every span through the hot pixels. Cost: O(n + k) for n spans with k crossings spread evenly; crowded cells
    /// are split until they are sparse. Cells whose spans are those of the last noding are taken from `noded`, which then
    /// holds this one's.
    pub fn of(spans: &[Span], cells: &Cells, mut noded: Option<&mut NodedCells>) -> Self {
        let last = noded.as_mut().map(|noded| noded.begin(&cells.grid));
        let mut sweep = Sweep::default();
        let mut vertices: Vec<PlanPoint> = Vec::with_capacity(spans.len() * 2);
        let mut meetings: Vec<(u32, u32)> = Vec::with_capacity(spans.len() * 4);
        let mut run_starts = vec![0_u32; spans.len() + 1];
        for column in 0..cells.grid.columns() {
            for row in 0..cells.grid.rows() {
                match (&mut noded, &last) {
                    (Some(noded), Some(last)) => sweep.cell_again(spans, cells, (column, row), last, noded),
                    _ => sweep.cell(spans, cells, column, row),
                }
            }
            order::sort_keyed(&mut sweep.pixels);
            for &(key, place) in &sweep.pixels {
                let vertex = vertices.len() as u32;
                vertices.push(point_of(key));
                for &span in sweep.met(place) {
                    run_starts[span as usize + 1] += 1;
                    meetings.push((span, vertex));
                }
            }
            sweep.pixels.clear();
            sweep.ends.clear();
            sweep.meetings.clear();
        }
        for index in 0..spans.len() {
            run_starts[index + 1] += run_starts[index];
        }
        let mut cursors = run_starts.clone();
        let mut runs = vec![0_u32; meetings.len()];
        for (span, vertex) in meetings {
            let cursor = &mut cursors[span as usize];
            runs[*cursor as usize] = vertex;
            *cursor += 1;
        }
        for (index, span) in spans.iter().enumerate() {
            if span.b.y_mm < span.a.y_mm {
                let run = &mut runs[run_starts[index] as usize..run_starts[index + 1] as usize];
                descend_within_columns(run, &vertices);
            }
        }
        Self {
            vertices,
            run_starts,
            runs,
        }
    }

    /// The piece of a span's run that is over `x_mm`, from its west end (with) to its east end (without), and its ends.
    pub fn piece_over(&self, span: u32, x_mm: i32) -> Option<(Span, [VertexId; 2])> {
        let run = &self.runs[self.run_starts[span as usize] as usize..self.run_starts[span as usize + 1] as usize];
        let east = run.partition_point(|&vertex| self.vertices[vertex as usize].x_mm <= x_mm);
        let ends = [*run.get(east.checked_sub(1)?)?, *run.get(east)?];
        let [a, b] = ends.map(|vertex| self.vertices[vertex as usize]);
        Some((Span { a, b }, ends.map(VertexId)))
    }
}

/// A falling span meets the pixels of one column from top to bottom, while vertices ascend.
fn descend_within_columns(run: &mut [u32], vertices: &[PlanPoint]) {
    for column in run.chunk_by_mut(|&p, &q| vertices[p as usize].x_mm == vertices[q as usize].x_mm) {
        column.reverse();
    }
}

/// A rectangle of pixels, both corners included.
#[derive(Clone, Copy)]
struct Pixels {
    low: PlanPoint,
    high: PlanPoint,
}

impl Pixels {
    fn holds(self, p: PlanPoint) -> bool {
        p.x_mm >= self.low.x_mm && p.x_mm <= self.high.x_mm && p.y_mm >= self.low.y_mm && p.y_mm <= self.high.y_mm
    }

    /// Whether the span may pass through a pixel of the rectangle: exact for its border drawn half a pixel outside.
    fn may_meet(self, span: Span) -> bool {
        let (y_low, y_high) = span.y_range();
        if span.b.x_mm < self.low.x_mm
            || span.a.x_mm > self.high.x_mm
            || y_high < self.low.y_mm
            || y_low > self.high.y_mm
        {
            return false;
        }
        let (dx, dy) = (
            i64::from(span.b.x_mm) - i64::from(span.a.x_mm),
            i64::from(span.b.y_mm) - i64::from(span.a.y_mm),
        );
        // The pixel centers farthest to either side of the line; half a pixel more moves the doubled cross by |dx| + |dy|.
        let (left, right) = if dy >= 0 {
            (
                PlanPoint::new(self.low.x_mm, self.high.y_mm),
                PlanPoint::new(self.high.x_mm, self.low.y_mm),
            )
        } else {
            (self.high, self.low)
        };
        let reach = dx + dy.abs();
        2 * span.a.cross(span.b, left) + reach >= 0 && 2 * span.a.cross(span.b, right) - reach <= 0
    }

    fn is_one_pixel(self) -> bool {
        self.low == self.high
    }

    /// The two halves, cut across x or across y. A side of one pixel is not cut: the second half is then `None`.
    fn halves(self, across_x: bool) -> (Self, Option<Self>) {
        let middle = |low: i32, high: i32| low + (high - low) / 2;
        let (mut first, mut second) = (self, self);
        if across_x {
            first.high.x_mm = middle(self.low.x_mm, self.high.x_mm);
            second.low.x_mm = first.high.x_mm + 1;
            (first, (second.low.x_mm <= second.high.x_mm).then_some(second))
        } else {
            first.high.y_mm = middle(self.low.y_mm, self.high.y_mm);
            second.low.y_mm = first.high.y_mm + 1;
            (first, (second.low.y_mm <= second.high.y_mm).then_some(second))
        }
    }
}

/// What one column of cells has yielded so far, and scratch memory.
#[derive(Default)]
struct Sweep {
    /// Spans of the cell at hand and of the halves it was split into, as a stack.
    stack: Vec<(Span, u32)>,
    /// Hot pixels of the cell at hand, packed.
    hot: Vec<u64>,
    /// Hot pixels of the column: packed point, and its place in `ends`.
    pixels: Vec<(u64, u32)>,
    /// Where the spans of each pixel end in `meetings`, which is where the next one's begin.
    ends: Vec<u32>,
    meetings: Vec<u32>,
}

impl Sweep {
    /// Notes a pixel whose spans were put at the end of `meetings`, up to `end`.
    fn push(&mut self, key: u64, end: u32) {
        self.pixels.push((key, self.ends.len() as u32));
        self.ends.push(end);
    }

    /// The spans that meet in the pixel of this place.
    fn met(&self, place: u32) -> &[u32] {
        let place = place as usize;
        let first = if place == 0 { 0 } else { self.ends[place - 1] };
        &self.meetings[first as usize..self.ends[place] as usize]
    }

    fn cell(&mut self, spans: &[Span], cells: &Cells, column: u32, row: u32) {
        let here = cells.spans_in(column, row);
        if here.is_empty() {
            return;
        }
        self.stack.clear();
        self.stack
            .extend(here.iter().map(|&index| (spans[index as usize], index)));
        let low = cells.grid.corner(column, row);
        let last = (1_i32 << cells.grid.shift()) - 1;
        let high = PlanPoint::new(low.x_mm + last, low.y_mm + last);
        self.area(Pixels { low, high }, 0);
    }

    /// A cell, as `last` holds it where its spans are the same; notes it in `noded`.
    fn cell_again(
        &mut self,
        spans: &[Span],
        cells: &Cells,
        (column, row): (u32, u32),
        last: &NodedCells,
        noded: &mut NodedCells,
    ) {
        let here = cells.spans_in(column, row);
        let place = column as usize * cells.grid.rows() as usize + row as usize;
        let spans_here = || here.iter().map(|&index| spans[index as usize]);
        let same = last
            .cell(place)
            .filter(|held| spans_here().eq(held.spans.iter().copied()));
        if let Some(held) = same {
            let mut end = self.meetings.len() as u32;
            for &(key, count) in held.pixels {
                end += count;
                self.push(key, end);
            }
            self.meetings
                .extend(held.meetings.iter().map(|&local| here[local as usize]));
            let (pixels, meetings) = (held.pixels.iter().copied(), held.meetings.iter().copied());
            noded.push(spans_here(), pixels, meetings);
            return;
        }
        let (pixels, meetings) = (self.pixels.len(), self.meetings.len());
        self.cell(spans, cells, column, row);
        let pixels = self.pixels[pixels..]
            .iter()
            .map(|&(key, place)| (key, self.met(place).len() as u32));
        // Every span met is one of the cell's, which are in order.
        let local = |index: &u32| here.binary_search(index).map_or(0, |place| place as u32);
        noded.push(spans_here(), pixels, self.meetings[meetings..].iter().map(local));
    }

    /// Handles a rectangle whose spans lie on the stack from `from` on.
    fn area(&mut self, area: Pixels, from: usize) {
        if self.stack.len() - from <= CROWDED || area.is_one_pixel() {
            self.find_hot_pixels(area, from);
            self.lead_through_hot_pixels(from);
        } else {
            self.crowded_area(area, from);
        }
    }

    fn crowded_area(&mut self, area: Pixels, from: usize) {
        let pairs = |count: usize| (count as u64).pow(2);
        let to = self.stack.len();
        let cost = |across_x: bool| {
            let (first, second) = area.halves(across_x);
            let met = |half: Pixels| {
                self.stack[from..to]
                    .iter()
                    .filter(|(span, _)| half.may_meet(*span))
                    .count()
            };
            second.map_or(u64::MAX, |second| pairs(met(first)) + pairs(met(second)))
        };
        let (cost_x, cost_y) = (cost(true), cost(false));
        let best = cost_x.min(cost_y);
        if best.saturating_mul(100) >= pairs(to - from).saturating_mul(WORTHWHILE_PERCENT) {
            self.find_hot_pixels(area, from);
            if self.hot.len() <= PIXELS_PER_SPAN * (to - from) {
                self.lead_through_hot_pixels(from);
                return;
            }
        }
        let (first, second) = area.halves(cost_x <= cost_y);
        for half in std::iter::once(first).chain(second) {
            for index in from..to {
                let entry = self.stack[index];
                if half.may_meet(entry.0) {
                    self.stack.push(entry);
                }
            }
            self.area(half, to);
            self.stack.truncate(to);
        }
    }

    /// Collects the hot pixels of a rectangle: ends and rounded crossings that lie in it.
    fn find_hot_pixels(&mut self, area: Pixels, from: usize) {
        self.hot.clear();
        let spans = &self.stack[from..];
        for (index, &(first, _)) in spans.iter().enumerate() {
            if area.holds(first.a) {
                self.hot.push(key_of(first.a));
            }
            if area.holds(first.b) {
                self.hot.push(key_of(first.b));
            }
            for &(second, _) in &spans[..index] {
                if let Some(crossing) = rounded_crossing(first, second)
                    && area.holds(crossing)
                {
                    self.hot.push(key_of(crossing));
                }
            }
        }
        order::sort_numbers(&mut self.hot);
        self.hot.dedup();
    }

    fn lead_through_hot_pixels(&mut self, from: usize) {
        for index in 0..self.hot.len() {
            let key = self.hot[index];
            let p = point_of(key);
            for &(span, index) in &self.stack[from..] {
                if passes(span, p) {
                    self.meetings.push(index);
                }
            }
            self.push(key, self.meetings.len() as u32);
        }
    }
}
