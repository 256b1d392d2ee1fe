//! What part of the plan is measured.

use crate::browser::view::{View, element, is_checked, value_of};
use hobnail_core::say;

use super::editor::command;
use crate::app::editor::edits::WALKING;
use crate::app::editor::lines::Key;
use crate::app::scopes::Part;
use crate::app::store::Store;
use crate::live::memo;

/// The control; nothing for a plan with nothing to choose.
pub fn measured_panel(store: Store) -> View {
    let parts = memo(move || store.measured.with(|measured| measured.parts.clone()));
    let chosen = memo(move || store.measured.with(|measured| measured.part));
    let without = memo(move || store.measured.with(|measured| measured.without_unwilling));
    let words = memo(move || store.measured.with(|measured| measured.words.clone()));
    let choose = move |event| {
        let id = value_of(&event);
        let found = parts.with_untracked(|parts| parts.iter().map(|(part, _)| *part).find(|part| part.id() == id));
        if let Some(part) = found {
            store.act(|app| app.measure(part, without.get_untracked() == Some(true)));
        }
    };
    let option = move |(part, words): (Part, String)| {
        element("option")
            .with("value", part.id())
            .with("selected", move || chosen.get() == part)
            .holds(words)
    };
    element("div")
        .class("measured")
        .with("data-measured", move || chosen.get().id())
        .holds(element("label").with("for", "measured").holds(say!("panels-measured")))
        .holds(
            element("select")
                .with("id", "measured")
                .on("change", choose)
                .holds(move || parts.get().into_iter().map(option).collect::<View>()),
        )
        .holds(move || {
            without.get().map(|is_without| {
                element("label")
                    .class("choice")
                    .holds(
                        element("input")
                            .with("type", "checkbox")
                            .with("id", "without-unwilling")
                            .property("checked", is_without)
                            .on("change", move |event| {
                                store.act(|app| app.measure(chosen.get_untracked(), is_checked(&event)))
                            }),
                    )
                    .holds(
                        element("span")
                            .class("choice-words")
                            .holds(say!("panels-without-unwilling")),
                    )
            })
        })
        .holds(command(store, Key::panel(WALKING), say!("panels-settings")))
        .holds(move || {
            words.get().map(|words| {
                element("p")
                    .class("measured-part")
                    .mark("data-part-measured")
                    .holds(say!("panels-measured-part", what = words))
            })
        })
        .into()
}
