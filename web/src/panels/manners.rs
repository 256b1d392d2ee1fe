//! How streets are drawn: point to point, as a curve, as a grid of blocks; the tape; and whether points snap.

use hobnail_core::say;
use leptos::prelude::*;

use super::field::number_field;
use super::palette::choose;
use crate::app::editing::Field;
use crate::app::live::memo;
use crate::app::store::Store;
use crate::tools::drawing::Manner;

/// The choice of manner, and what belongs to it.
#[component]
pub fn Manners(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let drawing = memo(move || store.hand.with(|hand| hand.choices.map(|choices| choices.drawing)));
    let is_chosen = move |manner| drawing.get().is_some_and(|drawing| drawing.manner == manner);
    let one = move |manner: Manner| {
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name="manner"
                    value=manner.words()
                    prop:checked=move || is_chosen(manner)
                    on:change=move |_| choose(store, |choices| choices.drawing.manner = manner)
                />
                <span class="choice-name">{manner.words()}</span>
            </label>
        }
    };
    let is_blocks = memo(move || is_chosen(Manner::Blocks));
    view! {
        <div role="radiogroup" aria-labelledby="manner-title">
            <p id="manner-title" class="palette-title">{say!("panels-draw")}</p>
            <div class="pairs">{Manner::ALL.map(one).collect_view()}</div>
        </div>
        {move || is_blocks.get().then(|| view! {
            <div class="numbers">
                {number_field(store, Field::BlockLength, say!("panels-block-length"))}
                {number_field(store, Field::BlockDepth, say!("panels-block-depth"))}
                <p class="choice-more">{say!("panels-about-blocks")}</p>
            </div>
        })}
        {snap_switch(store)}
    }
}

/// Whether points land on what is near: for every tool that sets points.
pub fn snap_switch(store: Store) -> AnyView {
    let snaps = memo(move || {
        store
            .hand
            .with(|hand| hand.choices.is_some_and(|choices| choices.drawing.snaps))
    });
    view! {
        <label class="choice">
            <input
                type="checkbox"
                id="snaps"
                prop:checked=move || snaps.get()
                on:change=move |event| {
                    let is_on = event_target_checked(&event);
                    choose(store, |choices| choices.drawing.snaps = is_on);
                }
            />
            <span class="choice-name">{say!("panels-snap")}</span>
        </label>
    }
    .into_any()
}
