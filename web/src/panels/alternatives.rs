//! The alternatives as small plans, and what can be done with the one in view.

use hobnail_core::plan::AlternativeId;
use hobnail_core::say;
use leptos::prelude::*;

use super::drawn::drawn;
use super::fields::fields;
use crate::app::App;
use crate::app::alternatives::AlternativeShown;
use crate::app::live::memo;
use crate::app::store::Store;

/// What can be done with the alternative in view.
type Command = (&'static str, &'static str, fn(&mut App));

fn commands() -> [Command; 3] {
    [
        ("copy", say!("panels-alternative-copy"), App::copy_alternative),
        (
            "earlier",
            say!("panels-alternative-earlier"),
            App::move_alternative_earlier,
        ),
        ("delete", say!("panels-delete"), App::delete_alternative),
    ]
}

/// The menu of the alternatives.
pub fn alternatives(store: Store) -> AnyView {
    let ids = memo(move || {
        store
            .alternatives
            .with(|all| all.iter().map(|one| one.id).collect::<Vec<_>>())
    });
    // The button stays the same while what it shows changes, so that it keeps the keyboard.
    let small = move |id: AlternativeId| {
        let shown = memo(move || {
            store
                .alternatives
                .with(|all| all.iter().find(|one| one.id == id).cloned())
        });
        let is_shown = move || shown.with(|one| one.as_ref().is_some_and(|one| one.is_shown).to_string());
        let inside = move |AlternativeShown {
                               drawing, name, about, ..
                           }| {
            view! {
                {drawn(drawing)}
                <span class="choice-name">{name}</span>
                <span class="choice-more">{about}</span>
            }
        };
        view! {
            <button
                type="button"
                class="small-plan"
                data-alternative=id.to_string()
                aria-pressed=is_shown
                on:click=move |_| store.act(|app| app.show_alternative(id))
            >
                {move || shown.get().map(inside)}
            </button>
        }
        .into_any()
    };
    let command = |(name, words, work): Command| {
        view! { <button type="button" class="command" data-command=["alternative-", name].concat() on:click=move |_| store.act(work)>{words}</button> }
            .into_any()
    };
    view! {
        <details class="menu" data-menu="alternatives">
            <summary class="command">{say!("panels-alternatives")}</summary>
            <div class="menu-card">
                <p class="choice-more">{say!("panels-alternatives-about")}</p>
                <div class="small-plans">{move || ids.get().into_iter().map(small).collect::<Vec<AnyView>>()}</div>
                <div class="to-draw">
                    {fields(store, |forms| &forms.alternative)}
                    <div class="group">{commands().map(command).collect_view()}</div>
                    <p class="choice-more">{say!("panels-alternatives-files")}</p>
                </div>
            </div>
        </details>
    }
    .into_any()
}
