//! The edge directly below a point, exactly: how a face is found without looking at all of it.

use super::grid::Cells;
use super::pixels::Span;
use crate::plan::PlanPoint;

/// The topmost span below `p` just east of it, among spans that meet at ends only. `piece(filed, x)` answers the piece of
/// a filed span that is over `x`, from its west end (with) to its east end (without), and what it is called.
///
/// "Just east" settles what a vertical ray through vertices would leave open: vertical spans are over no `x`, and of two
/// that leave the same vertex the steeper is above. A span through `p` is not below it. A piece must keep within half a
/// pixel of the span it was filed under. Cost: the spans filed in the cells between `p` and the answer.
pub(super) fn span_below<T: Copy>(
    cells: &Cells,
    p: PlanPoint,
    piece: impl Fn(u32, i32) -> Option<(Span, T)>,
) -> Option<T> {
    let grid = &cells.grid;
    let column = u32::try_from(grid.column_of(p.x_mm))
        .ok()
        .filter(|&column| column < grid.columns())?;
    let top = grid.row_of(p.y_mm).min(grid.rows() as i32 - 1);
    let mut best: Option<(Span, T)> = None;
    for row in (0..=top).rev() {
        for &index in cells.spans_in(column, row as u32) {
            let Some((span, name)) = piece(index, p.x_mm) else {
                continue;
            };
            if span.a.cross(span.b, p) > 0 && best.is_none_or(|(best, _)| is_above(span, best)) {
                best = Some((span, name));
            }
        }
        if let Some((span, name)) = best {
            let floor = PlanPoint::new(p.x_mm, grid.corner(column, row as u32).y_mm);
            // Whatever is filed only further down lies below this row.
            if span.a.cross(span.b, floor) <= 0 {
                return Some(name);
            }
        }
    }
    best.map(|(_, name)| name)
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
