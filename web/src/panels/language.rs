//! The language of the window.

use hobnail_core::messages::{self, Language};
use leptos::prelude::*;

use crate::app::store::Store;

/// A button for each language that the window does not speak, named in that language so that whoever needs it finds it.
pub fn languages(store: Store) -> AnyView {
    let others = Language::ALL.into_iter().filter(|other| *other != messages::language());
    let one = |other: Language| {
        view! {
            <button
                type="button"
                class="command"
                lang=other.code()
                data-language=other.code()
                on:click=move |_| store.use_language(other)
            >
                {other.own_name()}
            </button>
        }
        .into_any()
    };
    others.map(one).collect::<Vec<_>>().into_any()
}
