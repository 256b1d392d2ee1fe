//! The plan as it was painted last, aside from the screen. While the view of a large plan moves this is moved, since to
//! paint so many paths takes a browser longer than a frame.

use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use super::painter::{Painter, View};
use super::pictures::canvas_of;
use crate::canvas::picture::Color;

/// What was painted, and how the plan lay then.
pub struct Still {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    view: View,
}

impl Painter {
    /// Paints aside from here on, as the plan lies in this view, until it is shown. Where the browser has no memory for
    /// that it goes on on the screen, which is as right and slower.
    pub fn paint_aside(&mut self, view: View) {
        let [width_px, height_px] = [self.canvas.width(), self.canvas.height()];
        let kept = self.still.take().filter(|still| still.is_as_large_as(&self.canvas));
        let kept = kept.map(|still| (still.canvas, still.context));
        let made = kept.or_else(|| canvas_of(f64::from(width_px), f64::from(height_px)));
        self.still = made.map(|(canvas, context)| Still { canvas, context, view });
        if let Some(still) = &self.still {
            self.context = still.context.clone();
        }
    }

    /// Whether what was painted aside covers most of the screen in this view.
    #[must_use]
    pub fn is_covered(&self, view: &View) -> bool {
        let Some(still) = self.still.as_ref().filter(|still| still.is_as_large_as(&self.canvas)) else {
            return false;
        };
        let [scale, x_px, y_px] = still.moved(view);
        let sides = [(x_px, self.size_px.0), (y_px, self.size_px.1)];
        sides.iter().all(|(start_px, size_px)| {
            let start = start_px / size_px;
            start.max(1.0 - scale - start) < 0.4
        })
    }

    /// Paints on the screen again: first what was painted aside, where it lies in this view, with this color around it.
    /// Whether it lies elsewhere than it was painted.
    pub fn show_aside(&mut self, view: &View, around: Color) -> bool {
        self.context = self.shown.clone();
        if self.still.is_some() {
            self.clear(around);
        }
        let Some(still) = &self.still else { return false };
        let [scale, x_px, y_px] = still.moved(view);
        let corner_px = [x_px, y_px].map(|px| (px * self.ratio).round());
        // Six finite numbers are always accepted, and a canvas that can not be read can still be drawn.
        let _ = (self.context).set_transform(scale, 0.0, 0.0, scale, corner_px[0], corner_px[1]);
        let _ = (self.context).draw_image_with_html_canvas_element(&still.canvas, 0.0, 0.0);
        still.view != *view
    }
}

impl Still {
    fn is_as_large_as(&self, canvas: &HtmlCanvasElement) -> bool {
        (self.canvas.width(), self.canvas.height()) == (canvas.width(), canvas.height())
    }

    /// How many times as large as painted it is in this view, and where its upper left corner lies on the screen.
    fn moved(&self, view: &View) -> [f64; 3] {
        let scale = view.px_per_unit / self.view.px_per_unit;
        let [.., was_x_px, was_y_px] = self.view.matrix;
        let [.., x_px, y_px] = view.matrix;
        [scale, x_px - scale * was_x_px, y_px - scale * was_y_px]
    }
}
