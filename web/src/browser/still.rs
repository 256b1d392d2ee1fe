//! The plan as it was painted last, aside from the screen. While the view of a large plan moves this is moved, since to
//! paint so many paths takes a browser longer than a frame.

use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use super::painter::{Painter, View};
use super::pictures::canvas_of;
use crate::canvas::picture::Color;

/// So much of the screen's width and height is painted beyond each of its sides, which a view that moves uncovers.
pub const MARGIN: f64 = 0.25;

/// What was painted, and how the plan lay on it.
pub struct Still {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    view: View,
}

impl Painter {
    /// Paints aside from here on, until it is shown; how the plan lies there that lies so on the screen. Where the browser
    /// has no memory for that it goes on on the screen, which is as right and slower.
    pub fn paint_aside(&mut self, view: View) -> View {
        let kept = self.still.take().filter(|still| still.is_about(&self.canvas));
        let kept = kept.map(|still| (still.canvas, still.context));
        let made = kept.or_else(|| {
            let (width, height) = size_about(&self.canvas);
            canvas_of(width, height)
        });
        let Some((canvas, context)) = made else { return view };
        let view = self.beside_margin(view);
        self.context = context.clone();
        self.still = Some(Still { canvas, context, view });
        view
    }

    /// How the plan lies within the margin that lies so on the screen.
    fn beside_margin(&self, mut view: View) -> View {
        let [.., x_px, y_px] = &mut view.matrix;
        *x_px += (self.size_px.0 * MARGIN).round();
        *y_px += (self.size_px.1 * MARGIN).round();
        view
    }

    /// Whether what was painted aside covers the screen in this view, up to this share of its width and height at an edge.
    #[must_use]
    pub fn is_covered(&self, view: &View, most_uncovered: f64) -> bool {
        let Some(still) = self.still.as_ref().filter(|still| still.is_about(&self.canvas)) else {
            return false;
        };
        let [scale, x_px, y_px] = still.moved(view);
        let sides = [(x_px, self.size_px.0), (y_px, self.size_px.1)];
        sides.iter().all(|(start_px, size_px)| {
            let start = start_px / size_px;
            start.max(1.0 - scale * (1.0 + 2.0 * MARGIN) - start) <= most_uncovered
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
        still.view != self.beside_margin(*view)
    }
}

impl Still {
    /// Whether it is as large as the screen and its margins.
    fn is_about(&self, screen: &HtmlCanvasElement) -> bool {
        (f64::from(self.canvas.width()), f64::from(self.canvas.height())) == size_about(screen)
    }

    /// How many times as large as painted it is in this view, and where its upper left corner lies on the screen.
    fn moved(&self, view: &View) -> [f64; 3] {
        let scale = view.px_per_unit / self.view.px_per_unit;
        let [.., was_x_px, was_y_px] = self.view.matrix;
        let [.., x_px, y_px] = view.matrix;
        [scale, x_px - scale * was_x_px, y_px - scale * was_y_px]
    }
}

/// Width and height of the screen with its margins, in device pixels.
fn size_about(screen: &HtmlCanvasElement) -> (f64, f64) {
    let about = |px: u32| (f64::from(px) * (1.0 + 2.0 * MARGIN)).ceil();
    (about(screen.width()), about(screen.height()))
}
