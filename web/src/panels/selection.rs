//! What can be done to the selection: commands with words and keys, and the numbers they take.

use hobnail_core::say;
use leptos::prelude::*;

use super::field::number_field;
use crate::app::App;
use crate::app::editing::{Field, SelectionShown};
use crate::app::live::memo;
use crate::app::store::{CANVAS, Store};
use crate::browser::document;
use crate::tools::select::commands::Command;

/// The panel; nothing where nothing is selected.
#[component]
pub fn SelectionPanel(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let words = memo(move || {
        let words = |shown: &SelectionShown| shown.words.clone();
        store.hand.with(|hand| hand.selection.as_ref().map(words))
    });
    let commands = memo(move || {
        let held = |shown: &SelectionShown| shown.commands.clone();
        store
            .hand
            .with(|hand| hand.selection.as_ref().map(held).unwrap_or_default())
    });
    let largest = memo(move || store.hand.with(|hand| Some(hand.selection.as_ref()?.radius.clone()?.1)));
    let has_radius = memo(move || largest.get().is_some());
    let button = move |id: &'static str, words: &'static str, key: String, work: fn(&mut App, usize), place: usize| {
        let shortcut = key.clone();
        view! {
            <button
                type="button"
                class="command"
                data-command=id
                aria-keyshortcuts=shortcut
                on:click=move |event| {
                    store.act(|app| work(app, place));
                    if event.detail() > 0 {
                        document::focus_on(CANVAS);
                    }
                }
            >
                <span class="word">{words}</span>
                <kbd>{if id == "remove" { say!("panels-key-delete").to_owned() } else { key }}</kbd>
            </button>
        }
        .into_any()
    };
    let of = move |command: Command| {
        let place = Command::ALL
            .iter()
            .position(|held| *held == command)
            .unwrap_or_default();
        let key = command.key().to_uppercase().to_string();
        let work = |app: &mut App, place: usize| {
            if let Some(command) = Command::ALL.get(place) {
                app.command(*command);
            }
        };
        let button = button(command.words(), command.words(), key, work, place);
        let field = match command {
            Command::TurnLeft => Some(number_field(store, Field::Turn, say!("panels-turn-by"))),
            Command::OffsetLeft => Some(number_field(store, Field::Offset, say!("panels-offset-by"))),
            _ => None,
        };
        view! { {field}{button} }.into_any()
    };
    let is_open = memo(move || words.with(Option::is_some));
    move || {
        is_open.get().then(|| {
            view! {
                <div class="palette selection" data-palette="selection">
                    <p class="palette-title">{say!("panels-selection")}</p>
                    <p class="choice-more">{words}</p>
                    {move || has_radius.get().then(|| view! {
                        <div class="numbers">
                            {number_field(store, Field::Radius, say!("panels-radius"))}
                            <p class="choice-more">{move || largest.get().map(|largest| say!("panels-radius-most", length = largest))}</p>
                        </div>
                    })}
                    <div class="commands">
                        {button("move", say!("panels-move"), "M".to_owned(), |app, _| app.pick_up(), 0)}
                        {button("remove", say!("panels-delete"), "Delete".to_owned(), |app, _| app.delete(), 0)}
                        {move || commands.get().into_iter().map(of).collect_view()}
                    </div>
                    <p class="choice-more">{say!("panels-selection-about")}</p>
                </div>
            }
        })
    }
}
