//! How streets are drawn: point to point, as a curve, as a grid of blocks; the tape; and whether points snap.

use crate::browser::view::{View, element, is_checked};
use hobnail_core::say;

use super::field::number_field;
use super::palette::choose;
use crate::app::editing::Field;
use crate::app::store::Store;
use crate::live::memo;
use crate::tools::drawing::Manner;

/// The choice of manner, and what belongs to it.
pub fn manners(store: Store) -> View {
    let drawing = memo(move || store.hand.with(|hand| hand.choices.map(|choices| choices.drawing)));
    let is_chosen = move |manner| drawing.get().is_some_and(|drawing| drawing.manner == manner);
    let one = move |manner: Manner| {
        element("label")
            .class("choice")
            .holds(
                element("input")
                    .with("type", "radio")
                    .with("name", "manner")
                    .with("value", manner.words())
                    .property("checked", move || is_chosen(manner))
                    .on("change", move |_| {
                        choose(store, |choices| choices.drawing.manner = manner)
                    }),
            )
            .holds(element("span").class("choice-name").holds(manner.words()))
    };
    let is_blocks = memo(move || is_chosen(Manner::Blocks));
    View::nothing()
        .and(
            element("div")
                .with("role", "radiogroup")
                .with("aria-labelledby", "manner-title")
                .holds(
                    element("p")
                        .with("id", "manner-title")
                        .class("palette-title")
                        .holds(say!("panels-draw")),
                )
                .holds(element("div").class("pairs").holds(Manner::ALL.map(one))),
        )
        .and(move || {
            is_blocks.get().then(|| {
                element("div")
                    .class("numbers")
                    .holds(number_field(store, Field::BlockLength, say!("panels-block-length")))
                    .holds(number_field(store, Field::BlockDepth, say!("panels-block-depth")))
                    .holds(element("p").class("choice-more").holds(say!("panels-about-blocks")))
            })
        })
        .and(snap_switch(store))
}

/// Whether points land on what is near: for every tool that sets points.
pub fn snap_switch(store: Store) -> View {
    let snaps = memo(move || {
        store
            .hand
            .with(|hand| hand.choices.is_some_and(|choices| choices.drawing.snaps))
    });
    element("label")
        .class("choice")
        .holds(
            element("input")
                .with("type", "checkbox")
                .with("id", "snaps")
                .property("checked", move || snaps.get())
                .on("change", move |event| {
                    let is_on = is_checked(&event);
                    choose(store, |choices| choices.drawing.snaps = is_on);
                }),
        )
        .holds(element("span").class("choice-name").holds(say!("panels-snap")))
        .into()
}
