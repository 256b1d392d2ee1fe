//! The status line: what the tool waits for, what is selected, whether the plan is kept, and zooming.

use leptos::prelude::*;

use crate::app::App;
use crate::app::keeping::KeptShown;
use crate::app::store::{STATUS, Store, ZOOM_STEP};

/// The status line.
#[component]
pub fn Status(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let awaits = Memo::new(move |_| store.hand.with(|hand| hand.awaits.clone()));
    let selected = Memo::new(move |_| store.hand.with(|hand| hand.selected.clone()));
    view! {
        <footer id=STATUS class="status">
            <p class="awaits" data-awaits>{awaits}</p>
            {move || {
                selected.get().map(|words| {
                    view! {
                        <p class="selected" data-selected>{words}</p>
                        <button type="button" class="command" data-command="delete" aria-keyshortcuts="Delete" on:click=move |_| store.act(App::delete)>
                            "Delete"
                        </button>
                    }
                })
            }}
            <Kept store/>
            <div class="group zoom" role="group" aria-label="Zoom">
                <button type="button" class="command" data-command="zoom-out" aria-label="Zoom out" on:click=move |_| store.act(|app| app.zoom(1.0 / ZOOM_STEP))>"−"</button>
                <button type="button" class="command" data-command="fit" aria-keyshortcuts="0" on:click=move |_| store.act(App::fit)>"Fit"</button>
                <button type="button" class="command" data-command="zoom-in" aria-label="Zoom in" on:click=move |_| store.act(|app| app.zoom(ZOOM_STEP))>"+"</button>
            </div>
        </footer>
    }
}

/// Whether the plan is kept in this browser and, where it is not, what helps.
#[component]
fn Kept(store: Store) -> impl IntoView {
    let command = move |name: &'static str, words: &'static str, work: fn(Store)| {
        view! {
            <button type="button" class="command" data-command=name on:click=move |_| work(store)>{words}</button>
        }
        .into_any()
    };
    view! {
        <p
            class="kept"
            role="status"
            data-kept=move || match store.kept.get() {
                KeptShown::Nothing => "",
                KeptShown::Kept => "yes",
                KeptShown::Keeping => "soon",
                KeptShown::NotKept { .. } => "no",
            }
        >
            {move || store.kept.get().words()}
        </p>
        {move || {
            let KeptShown::NotKept { can_copy, can_reopen, .. } = store.kept.get() else { return Vec::new() };
            let mut commands = vec![command("save-not-kept", "Save", Store::save)];
            if can_copy {
                commands.push(command("keep-as-copy", "Go on as a copy", |store| store.act(App::keep_as_copy)));
            }
            if can_reopen {
                commands.push(command("open-kept-again", "Open what the other window kept", Store::open_kept_again));
            }
            commands
        }}
    }
}
