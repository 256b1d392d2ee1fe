//! Layers that are made for what is in view.

use crate::browser::painter::Prepared;
use crate::canvas::camera::Camera;
use crate::canvas::layers::trees::Window;
use crate::canvas::picture::Layer;

/// So much of the view is made around it.
const LASTING: f64 = 0.5;

/// A layer of many small things: made for what is in view and a margin, and only from near.
pub(super) struct Near {
    from_px_per_m: f64,
    pub(super) held: Option<(Window, Prepared)>,
    pub(super) is_outdated: bool,
}

impl Near {
    pub(super) const fn from(from_px_per_m: f64) -> Self {
        Self {
            from_px_per_m,
            held: None,
            is_outdated: false,
        }
    }

    /// Makes the layer where what is in view, with this share of it around it, is not held yet.
    pub(super) fn bring(&mut self, camera: &Camera, margin: f64, make: impl FnOnce(&Window) -> Layer) {
        if camera.px_per_m() < self.from_px_per_m {
            self.held = None;
            return;
        }
        let visible = camera.visible();
        let window = Window {
            least: visible.least.to_m(),
            most: visible.most.to_m(),
        };
        let needed = window.grown(margin);
        let covering = self.held.as_ref().map(|(made_for, _)| *made_for);
        let covering = covering.filter(|made_for| made_for.contains(&needed));
        if covering.is_none() || self.is_outdated {
            // What is made lasts for a while of moving about.
            let made_for = covering.unwrap_or_else(|| window.grown(LASTING));
            let before = self.held.as_ref().map(|(_, layer)| layer);
            self.held = Some((made_for, Prepared::instead_of(before, make(&made_for))));
            self.is_outdated = false;
        }
    }
}
