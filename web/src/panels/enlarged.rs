//! Figures enlarged for the back of the room: at most three, over the drawing.

use hobnail_core::say;
use leptos::prelude::*;

use super::column::{change, parts};
use crate::app::figures::{Row, short_title};
use crate::app::live::memo;
use crate::app::store::Store;

/// The enlarged figures; nothing where none is.
#[component]
pub fn Enlarged(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let one = move |row: Row| {
        let words = short_title(&row);
        let id = row.id.clone();
        let label = say!("panels-no-longer-enlarged", what = words);
        view! {
            <li class="enlarged-figure" data-enlarged=id>
                <p class="enlarged-title">{words}</p>
                <p class="enlarged-value">
                    {parts(&row.value).map(|(class, words)| view! { <span class=class>{words}</span> }).collect_view()}
                </p>
                <p class="figure-range">{row.range}{row.reason}</p>
                {row.change.map(change)}
                <button type="button" class="command close" aria-label=label on:click=move |_| store.toggle_enlarged(&row.id)>"×"</button>
            </li>
        }
    };
    move || {
        let rows = store.enlarged.get();
        (!rows.is_empty()).then(|| view! { <section class="enlarged" aria-label=say!("panels-enlarged")><ul>{rows.into_iter().map(one).collect_view()}</ul></section> })
    }
}

/// The command that enlarges a figure whose basis stands open.
#[component]
pub fn Enlarge(
    /// The page's store.
    store: Store,
    /// The figure's id.
    figure: String,
) -> impl IntoView {
    let id = figure.clone();
    let is_enlarged = memo(move || store.enlarged.with(|rows| rows.iter().any(|row| row.id == id)));
    view! {
        <button
            type="button"
            class="command enlarge"
            aria-pressed=move || is_enlarged.get().to_string()
            on:click=move |_| store.toggle_enlarged(&figure)
        >
            {say!("panels-enlarge")}
        </button>
    }
}
