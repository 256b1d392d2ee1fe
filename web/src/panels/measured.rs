//! What part of the plan is measured.

use hobnail_core::say;
use leptos::prelude::*;

use super::editor::command;
use crate::app::editor::edits::WALKING;
use crate::app::editor::lines::Key;
use crate::app::live::memo;
use crate::app::scopes::Part;
use crate::app::store::Store;

/// The control; nothing for a plan with nothing to choose.
#[component]
pub fn MeasuredPanel(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let parts = memo(move || store.measured.with(|measured| measured.parts.clone()));
    let chosen = memo(move || store.measured.with(|measured| measured.part));
    let without = memo(move || store.measured.with(|measured| measured.without_unwilling));
    let words = memo(move || store.measured.with(|measured| measured.words.clone()));
    let choose = move |event| {
        let id = event_target_value(&event);
        let found = parts.with_untracked(|parts| parts.iter().map(|(part, _)| *part).find(|part| part.id() == id));
        if let Some(part) = found {
            store.act(|app| app.measure(part, without.get_untracked() == Some(true)));
        }
    };
    let option = move |(part, words): (Part, String)| {
        view! { <option value=part.id() selected=move || chosen.get() == part>{words}</option> }
    };
    view! {
        <div class="measured" data-measured=move || chosen.get().id()>
            <label for="measured">{say!("panels-measured")}</label>
            <select id="measured" on:change=choose>{move || parts.get().into_iter().map(option).collect_view()}</select>
            {move || without.get().map(|is_without| view! {
                <label class="choice">
                    <input
                        type="checkbox"
                        id="without-unwilling"
                        prop:checked=is_without
                        on:change=move |event| store.act(|app| app.measure(chosen.get_untracked(), event_target_checked(&event)))
                    />
                    <span class="choice-words">{say!("panels-without-unwilling")}</span>
                </label>
            })}
            {command(store, Key::panel(WALKING), say!("panels-settings"))}
            {move || words.get().map(|words| view! { <p class="measured-part" data-part-measured>{say!("panels-measured-part", what = words)}</p> })}
        </div>
    }
}
