//! The typed program: what is asked, what is drawn of it, what is left.

use hobnail_core::say;
use leptos::prelude::*;

use super::fields::fields;
use crate::app::store::Store;
use crate::browser::document;

/// Id of the card.
const PROGRAM: &str = "program";

/// The program, while it stands open.
pub fn program(store: Store) -> AnyView {
    view! {
        <section id=PROGRAM class="palette program-card" tabindex="-1" aria-labelledby="program-title" data-program>
            <p class="program-head">
                <span id="program-title" class="palette-title">{say!("panels-program")}</span>
                <button type="button" class="command" data-program-done on:click=move |_| store.act(|app| app.show_program(false))>{say!("panels-program-done")}</button>
            </p>
            <p class="choice-more">{say!("panels-program-about")}</p>
            <p class="program-columns" aria-hidden="true"><span>{say!("panels-program-asked")}</span><span>{say!("panels-program-drawn")}</span><span>{say!("panels-program-left")}</span></p>
            <div class="choices">{fields(store, |forms| &forms.program)}</div>
        </section>
    }
    .into_any()
}

/// The button that opens it.
pub fn program_button(store: Store, words: &'static str) -> AnyView {
    let open = move |_| {
        store.is_new.set(false);
        store.act(|app| app.show_program(true));
        // The keyboard goes on in the card, once it stands in the page.
        document::soon(|| document::focus_on(PROGRAM));
    };
    view! { <button type="button" class="command show" data-program-open on:click=open>{words}</button> }.into_any()
}
