//! The status line: what the tool waits for, what is selected, and zooming.

use hobnail_core::say;
use leptos::prelude::*;

use super::help::help_button;
use super::language::languages;
use super::mode::{by_tap, page_menu};
use super::typed::TypedFields;
use crate::app::App;
use crate::app::live::memo;
use crate::app::store::{STATUS, Store, ZOOM_STEP};

/// The status line.
#[component]
pub fn Status(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let awaits = memo(move || store.hand.with(|hand| hand.awaits.clone()));
    let selected = memo(move || store.hand.with(|hand| hand.selected.clone()));
    view! {
        <footer id=STATUS class="status">
            <p class="awaits" data-awaits>{awaits}</p>
            <TypedFields store/>
            {by_tap(store)}
            {move || {
                selected.get().map(|words| {
                    view! {
                        <p class="selected" data-selected>{words}</p>
                        <button type="button" class="command" data-command="delete" aria-keyshortcuts="Delete" on:click=move |_| store.act(App::delete)>
                            {say!("panels-delete")}
                        </button>
                    }
                })
            }}
            {help_button(store)}
            {page_menu(store)}
            {languages(store)}
            <div class="group zoom" role="group" aria-label=say!("panels-zoom")>
                <button type="button" class="command" data-command="zoom-out" aria-label=say!("panels-zoom-out") on:click=move |_| store.act(|app| app.zoom(1.0 / ZOOM_STEP))>"−"</button>
                <button type="button" class="command" data-command="fit" aria-keyshortcuts="0" on:click=move |_| store.act(App::fit)>{say!("panels-zoom-fit")}</button>
                <button type="button" class="command" data-command="zoom-in" aria-label=say!("panels-zoom-in") on:click=move |_| store.act(|app| app.zoom(ZOOM_STEP))>"+"</button>
            </div>
        </footer>
    }
}
