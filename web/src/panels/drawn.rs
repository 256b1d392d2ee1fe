//! A drawing of an editor as it stands in the page.

use leptos::prelude::*;

use crate::app::editor::drawn::Drawing;

/// The drawing: an image with its words for those who listen, or nothing to them where it has none.
#[must_use]
pub fn drawn(drawing: Drawing) -> AnyView {
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
        .map(|(ink, path)| view! { <path class=ink d=path></path> });
    let labels = drawing
        .labels
        .into_iter()
        .map(|label| view! { <text x=label.x_mm y=label.y_mm>{label.text}</text> });
    let is_silent = drawing.described.is_empty();
    view! {
        <svg
            class="section-drawn"
            viewBox=view
            width=px(width)
            height=px(height)
            font-size=drawing.letter_mm
            role="img"
            aria-label=drawing.described
            aria-hidden=is_silent.to_string()
        >
            {paths.collect_view()}
            {labels.collect_view()}
        </svg>
    }
    .into_any()
}
