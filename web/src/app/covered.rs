//! Where panels lie over the drawing, measured on the page.

use hobnail_core::number::within;

use super::store::{BAR, CANVAS, COLUMN, ENLARGED, MAP_CARD, RAIL, STATUS};
use crate::browser::document;
use crate::canvas::camera::Insets;

/// The bounds of a part of the page; what is not shown has none.
#[must_use]
pub fn bounds(id: &str) -> Option<[f64; 4]> {
    document::bounds_of(id).filter(|[left, top, right, bottom]| right > left && bottom > top)
}

/// Left and bottom of the map's card on what is seen of the drawing, by its left and its right; where the card lies elsewhere
/// the drawing reaches as far as that.
#[must_use]
pub fn card((left_px, right_px): (f64, f64)) -> (f64, f64) {
    match (bounds(CANVAS), bounds(MAP_CARD)) {
        (Some([canvas_left_px, top_px, _, bottom_px]), Some([card_left_px, card_top_px, _, card_bottom_px]))
            if card_top_px < bottom_px - 1.0 && (left_px..right_px).contains(&(card_left_px - canvas_left_px)) =>
        {
            (card_left_px - canvas_left_px, card_bottom_px - top_px)
        }
        _ => (right_px, 0.0),
    }
}

/// Top and bottom on the drawing of the panel that takes this much of its left: the rail, or the column, which is as high as
/// the drawing.
#[must_use]
pub fn rail(left_px: f64) -> (f64, f64) {
    match (bounds(CANVAS), bounds(RAIL)) {
        (Some([canvas_left_px, canvas_top_px, ..]), Some([_, top_px, right_px, bottom_px]))
            if right_px - canvas_left_px <= left_px + 1.0 =>
        {
            (top_px - canvas_top_px, bottom_px - canvas_top_px)
        }
        _ => (f64::NEG_INFINITY, f64::INFINITY),
    }
}

/// Where the panels lie over the drawing, measured on the page; none where they lie beside it.
#[must_use]
pub fn insets(width_px: f64, height_px: f64) -> Insets {
    let Some([canvas_left, canvas_top, ..]) = bounds(CANVAS) else {
        return Insets::default();
    };
    let (canvas_right, canvas_bottom) = (canvas_left + width_px, canvas_top + height_px);
    let column = bounds(COLUMN);
    let is_below = column.is_some_and(|[_, top, ..]| top >= canvas_bottom - 1.0);
    if is_below || bounds(RAIL).is_some_and(|[_, _, _, bottom]| bottom <= canvas_top) {
        return Insets::default();
    }
    let mut held = Insets::default();
    // Each panel lies at the side of the drawing that it is nearer to.
    for [left, _, right, _] in [bounds(RAIL), column].into_iter().flatten() {
        if left + right < canvas_left + canvas_right {
            held.left_px = within(right - canvas_left, 0.0, width_px / 2.0);
        } else {
            held.right_px = within(canvas_right - left, 0.0, width_px / 2.0);
        }
    }
    for [_, top, _, bottom] in [BAR, STATUS].into_iter().filter_map(bounds) {
        if top + bottom < canvas_top + canvas_bottom {
            held.top_px = within(bottom - canvas_top, 0.0, height_px / 3.0).max(held.top_px);
        } else {
            held.bottom_px = within(canvas_bottom - top, 0.0, height_px / 3.0).max(held.bottom_px);
        }
    }
    // Enlarged figures, where they lie over the foot of the drawing.
    if let Some([left, top, _, bottom]) = bounds(ENLARGED)
        && left < canvas_right - held.right_px - 1.0
        && bottom <= canvas_bottom + 1.0
    {
        held.bottom_px = within(canvas_bottom - top, held.bottom_px, height_px / 2.0);
    }
    held
}
