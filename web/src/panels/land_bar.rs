//! The land bar: parts of one line as long as the site's land, each in its tint and texture, and said below in words.

use crate::browser::view::{View, button, element};
use hobnail_core::say;

use super::basis::{basis_tree, is_open, points_out};
use super::palette::{swatch, texture_strokes};
use crate::app::counted_land::part_id;
use crate::app::land_bar::{FIGURE, Part, Tint};
use crate::app::store::Store;
use crate::app::words::sentence_case;
use crate::canvas::palette;
use crate::canvas::picture::Texture;
use crate::live::{Memo, memo};

const WIDTH_PX: f64 = 300.0;
const HEIGHT_PX: f64 = 26.0;

/// The bar; nothing before any land is drawn.
pub fn land_bar_panel(store: Store) -> View {
    let bar = memo(move || store.land_bar.get());
    let is_open = is_open(store, FIGURE.to_owned());
    let is_known = memo(move || bar.with(|bar| !bar.parts.is_empty()));
    let is_absent = move || bar.with(|bar| bar.parts.is_empty() && bar.reason.is_none());
    let drawn = move || bar.with(|bar| bar.parts.clone());
    element("section")
        .class("land-bar")
        .with("aria-labelledby", "land-bar-title")
        .mark("data-bar")
        .with("hidden", is_absent)
        .holds(
            button()
                .class("figure-line")
                .with("aria-expanded", move || is_open.get().to_string())
                .with("aria-controls", "basis-of-land-bar")
                .on_press(move || store.toggle_basis(FIGURE))
                .holds(
                    element("span")
                        .with("id", "land-bar-title")
                        .class("figure-title")
                        .holds(say!("panels-land-bar")),
                )
                .holds(move || {
                    is_known.get().then(|| {
                        element("svg")
                            .class("bar-drawn")
                            .with("viewBox", format!("0 0 {WIDTH_PX} {HEIGHT_PX}"))
                            .with("preserveAspectRatio", "none")
                            .with("aria-hidden", "true")
                            .holds(bar_of(store, &drawn()))
                    })
                }),
        )
        .holds(move || {
            bar.with(|bar| bar.reason.clone())
                .map(|reason| element("p").class("figure-reason").holds(sentence_case(&reason)))
        })
        .holds(element("ul").class("bar-parts").holds(move || {
            drawn()
                .into_iter()
                .map(|held| part(store, is_open, held))
                .collect::<View>()
        }))
        .holds(
            element("div")
                .with("id", "basis-of-land-bar")
                .class("basis")
                .with("hidden", move || !is_open.get())
                .holds(move || is_open.get().then(|| basis_tree(store, FIGURE.to_owned()))),
        )
        .into()
}

/// The parts side by side.
fn bar_of(store: Store, parts: &[Part]) -> View {
    let mut left_px = 0.0;
    let drawn: Vec<_> = parts
        .iter()
        .enumerate()
        .map(|(place, part)| {
            let width_px = part.share * WIDTH_PX;
            let (fill, line, texture) = look(part.tint);
            let id = format!("bar-texture-{place}");
            let pattern = texture.map(|texture| {
                element("pattern")
                    .with("id", id.clone())
                    .with("width", "20")
                    .with("height", "20")
                    .with("patternUnits", "userSpaceOnUse")
                    .holds(
                        element("path")
                            .with("d", texture_strokes(texture))
                            .with("stroke", line)
                            .with("fill", "none")
                            .with("stroke-width", "1"),
                    )
            });
            let over = texture.map(|_| {
                element("rect")
                    .with("x", left_px)
                    .with("y", "0")
                    .with("width", width_px)
                    .with("height", HEIGHT_PX)
                    .with("fill", format!("url(#{id})"))
            });
            let bar = points_out(store, part_id(&part.id), element("g"))
                .holds(pattern)
                .holds(
                    element("rect")
                        .with("x", left_px)
                        .with("y", "0")
                        .with("width", width_px)
                        .with("height", HEIGHT_PX)
                        .with("fill", fill)
                        .with("stroke", palette::INK.css())
                        .with("stroke-width", "0.75"),
                )
                .holds(over);
            left_px += width_px;
            bar
        })
        .collect();
    drawn.into()
}

/// Fill, line and texture of a part.
fn look(tint: Tint) -> (String, String, Option<Texture>) {
    match tint {
        Tint::Use(land_use) => (
            palette::tint(land_use).css(),
            palette::tone(land_use).css(),
            palette::texture(land_use),
        ),
        Tint::Water => (
            palette::WATER.at(0.35).css(),
            palette::WATER.css(),
            Some(Texture::Waves),
        ),
        Tint::Streets => (palette::PAVED.css(), palette::SOFT_INK.css(), None),
        Tint::NoUse => (palette::PAPER.css(), palette::SOFT_INK.css(), None),
    }
}

/// A part in words, which opens the basis of them all.
fn part(store: Store, is_open: Memo<bool>, part: Part) -> View {
    let swatch = match part.tint {
        Tint::Use(land_use) => swatch(Some(land_use)),
        tint => {
            let (fill, line, texture) = look(tint);
            element("svg")
                .class("swatch")
                .with("width", "22")
                .with("height", "22")
                .with("viewBox", "0 0 22 22")
                .with("aria-hidden", "true")
                .holds(
                    element("rect")
                        .with("x", "1")
                        .with("y", "1")
                        .with("width", "20")
                        .with("height", "20")
                        .with("fill", fill)
                        .with("stroke", palette::SOFT_INK.css()),
                )
                .holds(
                    element("path")
                        .with("d", texture.map(texture_strokes).unwrap_or_default())
                        .with("stroke", line)
                        .with("fill", "none"),
                )
                .into()
        }
    };
    points_out(store, part_id(&part.id), element("li"))
        .with("data-part", part.id)
        .with("data-share", part.share.to_string())
        .holds(
            button()
                .class("bar-part")
                .with("aria-expanded", move || is_open.get().to_string())
                .with("aria-controls", "basis-of-land-bar")
                .on_press(move || store.toggle_basis(FIGURE))
                .holds(swatch)
                .holds(element("span").class("bar-words").holds(sentence_case(&part.words)))
                .holds(element("span").class("bar-share").mark("data-value").holds(part.shown)),
        )
        .into()
}
