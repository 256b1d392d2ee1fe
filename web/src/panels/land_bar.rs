//! The land bar: parts of one line as long as the site's land, each in its tint and texture, and said below in words.

use hobnail_core::say;
use leptos::prelude::*;

use super::basis::BasisTree;
use super::palette::{Swatch, texture_strokes};
use crate::app::land_bar::{FIGURE, Part, Tint};
use crate::app::live::memo;
use crate::app::store::Store;
use crate::app::words::sentence_case;
use crate::canvas::palette;
use crate::canvas::picture::Texture;

const WIDTH_PX: f64 = 300.0;
const HEIGHT_PX: f64 = 26.0;

/// The bar; nothing before any land is drawn.
#[component]
pub fn LandBarPanel(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let bar = memo(move || store.land_bar.get());
    let is_open = memo(move || {
        store
            .basis
            .with(|basis| basis.as_ref().is_some_and(|basis| basis.figure == FIGURE))
    });
    let is_known = memo(move || bar.with(|bar| !bar.parts.is_empty()));
    let is_absent = move || bar.with(|bar| bar.parts.is_empty() && bar.reason.is_none());
    let drawn = move || bar.with(|bar| bar.parts.clone());
    view! {
        <section class="land-bar" aria-labelledby="land-bar-title" data-bar hidden=is_absent>
            <button
                type="button"
                class="figure-line"
                aria-expanded=move || is_open.get().to_string()
                aria-controls="basis-of-land-bar"
                on:click=move |_| store.toggle_basis(FIGURE)
            >
                <span id="land-bar-title" class="figure-title">{say!("panels-land-bar")}</span>
                {move || is_known.get().then(|| view! {
                    <svg class="bar-drawn" viewBox=format!("0 0 {WIDTH_PX} {HEIGHT_PX}") preserveAspectRatio="none" aria-hidden="true">
                        {bar_of(&drawn())}
                    </svg>
                })}
            </button>
            {move || bar.with(|bar| bar.reason.clone()).map(|reason| view! { <p class="figure-reason">{sentence_case(&reason)}</p> })}
            <ul class="bar-parts">{move || drawn().into_iter().map(|held| part(store, is_open, held)).collect_view()}</ul>
            <div id="basis-of-land-bar" class="basis" hidden=move || !is_open.get()>
                {move || is_open.get().then(|| view! { <BasisTree store/> })}
            </div>
        </section>
    }
}

/// The parts side by side.
fn bar_of(parts: &[Part]) -> impl IntoView + use<> {
    let mut left_px = 0.0;
    let drawn: Vec<_> = parts
        .iter()
        .enumerate()
        .map(|(place, part)| {
            let width_px = part.share * WIDTH_PX;
            let (fill, line, texture) = look(part.tint);
            let id = format!("bar-texture-{place}");
            let pattern = texture.map(|texture| {
                view! {
                    <pattern id=id.clone() width="20" height="20" patternUnits="userSpaceOnUse">
                        <path d=texture_strokes(texture) stroke=line fill="none" stroke-width="1"></path>
                    </pattern>
                }
            });
            let over = texture.map(|_| {
                view! { <rect x=left_px y="0" width=width_px height=HEIGHT_PX fill=format!("url(#{id})")></rect> }
            });
            let bar = view! {
                {pattern}
                <rect x=left_px y="0" width=width_px height=HEIGHT_PX fill=fill stroke=palette::INK.css() stroke-width="0.75"></rect>
                {over}
            };
            left_px += width_px;
            bar
        })
        .collect();
    drawn
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
fn part(store: Store, is_open: Memo<bool>, part: Part) -> impl IntoView {
    let swatch = match part.tint {
        Tint::Use(land_use) => view! { <Swatch land_use=Some(land_use)/> }.into_any(),
        tint => {
            let (fill, line, texture) = look(tint);
            view! {
                <svg class="swatch" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
                    <rect x="1" y="1" width="20" height="20" fill=fill stroke=palette::SOFT_INK.css()></rect>
                    <path d=texture.map(texture_strokes).unwrap_or_default() stroke=line fill="none"></path>
                </svg>
            }
            .into_any()
        }
    };
    view! {
        <li data-part=part.id data-share=part.share.to_string()>
            <button
                type="button"
                class="bar-part"
                aria-expanded=move || is_open.get().to_string()
                aria-controls="basis-of-land-bar"
                on:click=move |_| store.toggle_basis(FIGURE)
            >
                {swatch}
                <span class="bar-words">{sentence_case(&part.words)}</span>
                <span class="bar-share" data-value>{part.shown}</span>
            </button>
        </li>
    }
}
