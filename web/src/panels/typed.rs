//! Length and bearing of the next run, to be typed while drawing.

use hobnail_core::say;
use leptos::prelude::*;

use super::field::length_unit;
use crate::app::live::memo;
use crate::app::store::{CANVAS, Store, TYPED};
use crate::browser::{document, events};
use crate::input::Key;

/// What the two fields are called, and how they are read.
fn words() -> [(&'static str, &'static str); 2] {
    [
        (say!("panels-typed-length"), say!("panels-typed-length-about")),
        (say!("panels-typed-bearing"), say!("panels-typed-bearing-about")),
    ]
}

/// The fields, while a next point is waited for.
#[component]
pub fn TypedFields(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let is_metric = memo(move || store.plan.with(|plan| plan.is_metric));
    let is_open = memo(move || store.hand.with(|hand| hand.typed.is_some()));
    let one = move |place: usize| {
        let (words, about) = words()[place];
        let text = memo(move || {
            store.hand.with(|hand| {
                let typed = hand.typed.as_ref()?;
                Some((typed.words[place].clone(), typed.live[place].clone()))
            })
        });
        view! {
            <label class="number" title=about>
                <span>{words}</span>
                <input
                    id=TYPED[place]
                    type="text"
                    inputmode="text"
                    autocomplete="off"
                    aria-description=about
                    prop:value=move || text.get().map(|(held, _)| held)
                    placeholder=move || text.get().map(|(_, live)| live)
                    on:input=move |event| {
                        let typed = event_target_value(&event);
                        store.act(|app| app.type_next(place, typed));
                    }
                    on:keydown=move |event| {
                        if let Some(key) = events::field_key(&event) {
                            store.act(|app| app.end_typing(key == Key::Enter));
                            document::focus_on(CANVAS);
                        }
                    }
                />
                <span>{move || if place == 0 { length_unit(is_metric.get()) } else { "°" }}</span>
                <span class="choice-more at-board">{about}</span>
            </label>
        }
        .into_any()
    };
    move || {
        is_open
            .get()
            .then(|| view! { <div class="typed" role="group" aria-label=say!("panels-typed")>{one(0)}{one(1)}</div> })
    }
}
