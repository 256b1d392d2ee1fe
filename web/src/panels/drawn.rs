//! A drawing of an editor as it stands in the page.

use crate::browser::view::{View, element};

use crate::app::editor::drawn::Drawing;

/// The drawing: an image with its words for those who listen, or nothing to them where it has none.
#[must_use]
pub fn drawn(drawing: Drawing) -> View {
    let [left, top, width, height] = drawing.view_mm;
    let view = [left, top, width, height].map(|mm| mm.to_string()).join(" ");
    let px = |mm: i32| {
        drawing
            .px_per_m
            .map(|scale| (f64::from(mm) / 1000.0 * scale).to_string())
    };
    let paths = drawing
        .paths
        .into_iter()
        .map(|(ink, path)| element("path").class(ink).with("d", path));
    let labels = drawing.labels.into_iter().map(|label| {
        element("text")
            .with("x", label.x_mm)
            .with("y", label.y_mm)
            .holds(label.text)
    });
    let is_silent = drawing.described.is_empty();
    element("svg")
        .class("section-drawn")
        .with("viewBox", view)
        .with("width", px(width))
        .with("height", px(height))
        .with("font-size", drawing.letter_mm)
        .with("role", "img")
        .with("aria-label", drawing.described)
        .with("aria-hidden", is_silent.to_string())
        .holds(paths.collect::<View>())
        .holds(labels.collect::<View>())
        .into()
}
