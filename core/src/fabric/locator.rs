//! Where a point is: in which face, and how near to which edge.

use super::arrangement::{Arrangement, spans_of};
use super::below::span_below;
use super::grid::Cells;
use super::ids::{EdgeId, FaceId};
use super::pixels::Span;
use crate::plan::PlanPoint;

/// An index over the edges of one arrangement, for many questions.
#[derive(Clone, Debug)]
pub struct Locator {
    spans: Vec<Span>,
    cells: Cells,
    face_above: Vec<FaceId>,
}

/// The nearest place on an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Foot {
    /// The edge; the lowest of those equally near.
    pub edge: EdgeId,
    /// The place, rounded to the grid.
    pub point: PlanPoint,
    /// How far along the edge it is from its lower vertex, in micrometers; at most the rounded length of the edge.
    pub along_um: u64,
}

impl Locator {
    /// The index of an arrangement. Cost: linear.
    #[must_use]
    pub fn of(arrangement: &Arrangement) -> Self {
        let spans = spans_of(arrangement.vertices(), arrangement.edge_ends());
        Self {
            cells: Cells::of(&spans),
            spans,
            face_above: arrangement
                .edges()
                .map(|edge| arrangement.face(edge.forward()))
                .collect(),
        }
    }

    /// The face a point is in, exactly. A point on an edge is in the face directly south of it, on a vertical edge in the
    /// face to the east.
    ///
    /// Cost: the edges in the grid cells between the point and the first edge south of it.
    #[must_use]
    pub fn face_at(&self, p: PlanPoint) -> FaceId {
        let piece = |edge: u32, x_mm: i32| {
            let span = self.spans[edge as usize];
            (span.a.x_mm <= x_mm && x_mm < span.b.x_mm).then_some((span, edge))
        };
        span_below(&self.cells, p, piece).map_or(FaceId::OUTSIDE, |edge| self.face_above[edge as usize])
    }

    /// The nearest place on any edge, by exact distance; of edges equally near the lowest. `None` without edges.
    ///
    /// Cost: the edges in the grid cells around the point, out to the answer.
    #[must_use]
    pub fn nearest(&self, p: PlanPoint) -> Option<Foot> {
        let grid = &self.cells.grid;
        let (column, row) = (grid.column_of(p.x_mm), grid.row_of(p.y_mm));
        let (last_column, last_row) = (grid.columns() as i32 - 1, grid.rows() as i32 - 1);
        let beyond = |at: i32, last: i32| (-at).max(at - last).max(0);
        let first_ring = beyond(column, last_column).max(beyond(row, last_row));
        let final_ring = column.max(last_column - column).max(row).max(last_row - row);
        let mut best: Option<(SquaredDistance, u32)> = None;
        for ring in first_ring..=final_ring {
            let columns = (column - ring).max(0)..=(column + ring).min(last_column);
            for at in columns {
                let is_side = at == column - ring || at == column + ring;
                // The whole side of the ring, or only its two ends.
                let step = if is_side { 1 } else { (2 * ring).max(1) };
                let from = row - ring;
                let skipped = if is_side { from.min(0).abs() } else { 0 };
                let mut cell_row = from + skipped;
                while cell_row <= (row + ring).min(last_row) {
                    if cell_row >= 0 {
                        self.compare_cell(p, at as u32, cell_row as u32, &mut best);
                    }
                    cell_row += step;
                }
            }
            // All that lies nearer than the border of the rings so far has been seen.
            let border = grid.margin_around(p, column, row, ring);
            if let Some((distance, _)) = best
                && distance.whole < border.saturating_mul(border)
            {
                break;
            }
        }
        best.map(|(_, index)| foot_on(EdgeId(index), self.spans[index as usize], p))
    }

    fn compare_cell(&self, p: PlanPoint, column: u32, row: u32, best: &mut Option<(SquaredDistance, u32)>) {
        for &index in self.cells.spans_in(column, row) {
            let found = (SquaredDistance::between(self.spans[index as usize], p), index);
            if best.is_none_or(|best| found < best) {
                *best = Some(found);
            }
        }
    }
}

/// A squared distance in mm² as an exact mixed number, `whole + rest/of` with `rest < of`.
#[derive(Clone, Copy, Debug)]
struct SquaredDistance {
    whole: u64,
    rest: u64,
    of: u64,
}

impl SquaredDistance {
    fn between(span: Span, p: PlanPoint) -> Self {
        let (along, squared_length) = (dot(span, p), span.a.squared_distance_mm2(span.b));
        let to_end = if along <= 0 {
            Some(span.a)
        } else if along >= squared_length {
            Some(span.b)
        } else {
            None
        };
        if let Some(end) = to_end {
            return Self {
                whole: end.squared_distance_mm2(p) as u64,
                rest: 0,
                of: 1,
            };
        }
        let (cross, of) = (span.a.cross(span.b, p).unsigned_abs(), squared_length as u64);
        if let Some(squared) = cross.checked_mul(cross) {
            return Self {
                whole: squared / of,
                rest: squared % of,
                of,
            };
        }
        let (squared, wide) = (u128::from(cross) * u128::from(cross), u128::from(of));
        Self {
            whole: (squared / wide) as u64,
            rest: (squared % wide) as u64,
            of,
        }
    }
}

impl Ord for SquaredDistance {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        let cross = |p: &Self, q: &Self| u128::from(p.rest) * u128::from(q.of);
        self.whole
            .cmp(&other.whole)
            .then_with(|| cross(self, other).cmp(&cross(other, self)))
    }
}

impl PartialOrd for SquaredDistance {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for SquaredDistance {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for SquaredDistance {}

/// The scalar product of the span and the way from its `a` to `p`.
fn dot(span: Span, p: PlanPoint) -> i64 {
    let part = |a: i32, b: i32, p: i32| (i64::from(b) - i64::from(a)) * (i64::from(p) - i64::from(a));
    part(span.a.x_mm, span.b.x_mm, p.x_mm) + part(span.a.y_mm, span.b.y_mm, p.y_mm)
}

fn foot_on(edge: EdgeId, span: Span, p: PlanPoint) -> Foot {
    let squared_length = i128::from(span.a.squared_distance_mm2(span.b));
    let along = i128::from(dot(span, p)).clamp(0, squared_length);
    // The share `along / squared_length` of an amount, rounded half up.
    let share = |amount: i128| (2 * amount * along + squared_length).div_euclid(2 * squared_length);
    let part = |a: i32, b: i32| a + share(i128::from(b) - i128::from(a)) as i32;
    Foot {
        edge,
        point: PlanPoint::new(part(span.a.x_mm, span.b.x_mm), part(span.a.y_mm, span.b.y_mm)),
        along_um: share(i128::from(span.a.distance_um(span.b))) as u64,
    }
}
