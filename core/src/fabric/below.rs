//! The edge directly below a point, exactly: how a face is found without looking at all of it.

use super::grid::Cells;
use super::pixels::Span;
use crate::plan::PlanPoint;

/// The topmost of the filed spans below `p` just east of it, among spans that meet at ends only.
///
/// "Just east" settles what a vertical ray through vertices would leave open: spans count from their west end (with) to
/// their east end (without), vertical ones never, and of two that leave the same vertex the steeper is above. A span
/// through `p` is not below it. Cost: the spans filed in the cells between `p` and the answer.
pub(super) fn span_below(cells: &Cells, spans: &[Span], p: PlanPoint) -> Option<u32> {
    let grid = &cells.grid;
    let column = u32::try_from(grid.column_of(p.x_mm))
        .ok()
        .filter(|&column| column < grid.columns())?;
    let top = grid.row_of(p.y_mm).min(grid.rows() as i32 - 1);
    let mut best: Option<u32> = None;
    for row in (0..=top).rev() {
        for &index in cells.spans_in(column, row as u32) {
            let span = spans[index as usize];
            if span.a.x_mm <= p.x_mm
                && p.x_mm < span.b.x_mm
                && span.a.cross(span.b, p) > 0
                && best.is_none_or(|best| is_above(span, spans[best as usize]))
            {
                best = Some(index);
            }
        }
        if let Some(index) = best {
            let floor = PlanPoint::new(p.x_mm, grid.corner(column, row as u32).y_mm);
            let span = spans[index as usize];
            // Whatever is filed only further down lies below this row.
            if span.a.cross(span.b, floor) <= 0 {
                return Some(index);
            }
        }
    }
    best
}

/// Whether `first` runs above `second` where both are, for spans that overlap in x and meet at ends only.
fn is_above(first: Span, second: Span) -> bool {
    let side = if first.a.x_mm >= second.a.x_mm {
        second.a.cross(second.b, first.a)
    } else {
        -first.a.cross(first.b, second.a)
    };
    if side != 0 {
        side > 0
    } else {
        second.a.cross(second.b, first.b) > 0
    }
}
