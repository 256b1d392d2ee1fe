//! The typed program: what is asked, what is drawn of it, what is left.

use crate::browser::view::{View, button, command, element};
use hobnail_core::say;

use super::fields::fields;
use crate::app::store::Store;
use crate::browser::document;

/// Id of the card.
const PROGRAM: &str = "program";

/// The program, while it stands open.
pub fn program(store: Store) -> View {
    element("section")
        .with("id", PROGRAM)
        .class("palette program-card")
        .with("tabindex", "-1")
        .with("aria-labelledby", "program-title")
        .mark("data-program")
        .holds(
            element("p")
                .class("program-head")
                .holds(
                    element("span")
                        .with("id", "program-title")
                        .class("palette-title")
                        .holds(say!("panels-program")),
                )
                .holds(
                    command()
                        .mark("data-program-done")
                        .on_press(move || store.act(|app| app.show_program(false)))
                        .holds(say!("panels-program-done")),
                ),
        )
        .holds(element("p").class("choice-more").holds(say!("panels-program-about")))
        .holds(
            element("p")
                .class("program-columns")
                .with("aria-hidden", "true")
                .holds(element("span").holds(say!("panels-program-asked")))
                .holds(element("span").holds(say!("panels-program-drawn")))
                .holds(element("span").holds(say!("panels-program-left"))),
        )
        .holds(
            element("div")
                .class("choices")
                .holds(fields(store, |forms| &forms.program)),
        )
        .into()
}

/// The button that opens it.
pub fn program_button(store: Store, words: &'static str) -> View {
    let open = move |_| {
        store.is_new.set(false);
        store.act(|app| app.show_program(true));
        // The keyboard goes on in the card, once it stands in the page.
        document::soon(|| document::focus_on(PROGRAM));
    };
    button()
        .class("command show")
        .mark("data-program-open")
        .on("click", open)
        .holds(words)
        .into()
}
