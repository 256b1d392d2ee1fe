//! What of the drawing is in view beside the panels: sizes are taken, and what a card covers is moved from under it.

use super::covered::{bounds, card, insets, rail};
use super::store::{CANVAS, CUT, PALETTES, Store, TEXT_SIZE};
use crate::browser::document;

impl Store {
    /// Takes the sizes of the drawing, of the page's text and of the panels over the drawing.
    pub fn resize(self) {
        const USUAL_TEXT_PX: f64 = 16.0;
        let text_px = document::size_of(TEXT_SIZE).map_or(USUAL_TEXT_PX, |(width_px, _)| width_px.max(1.0));
        let mut size_px = None;
        self.stage.update(|stage| {
            size_px = stage.as_mut().map(|stage| {
                stage.draw_larger(text_px / USUAL_TEXT_PX);
                stage.fit_to_screen()
            });
        });
        let Some((width_px, height_px)) = size_px else { return };
        let insets = insets(width_px, height_px);
        self.stage.update(|stage| {
            if let Some(stage) = stage {
                let seen_px = (insets.left_px, width_px - insets.right_px);
                stage.put_furniture(seen_px, insets.bottom_px, card(seen_px), rail(insets.left_px));
            }
        });
        self.act(|app| app.resize(width_px, height_px, insets));
    }

    /// Moves the view where a card over the drawing covers what is selected.
    pub(super) fn uncover(self) {
        let card = bounds(CUT).or_else(|| bounds(PALETTES));
        if let (Some([left_px, top_px, ..]), Some([left, top, right, bottom])) = (bounds(CANVAS), card) {
            let card = [left - left_px, top - top_px, right - left_px, bottom - top_px];
            let (right_px, down_px) = self.with(|app| app.covered_px(card));
            let frames = document::size_of(TEXT_SIZE).map_or(1.0, |(_, frames)| frames.max(1.0));
            if right_px != 0.0 || down_px != 0.0 {
                self.glide((right_px / frames, down_px / frames), frames);
            }
        }
    }

    /// Moves the view by a step in each of so many frames.
    fn glide(self, step_px: (f64, f64), frames: f64) {
        self.act(|app| app.move_view(step_px));
        if frames > 1.0 {
            document::before_next_frame(move || self.glide(step_px, frames - 1.0));
        }
    }
}
