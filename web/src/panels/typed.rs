//! Length and bearing of the next run, to be typed while drawing.

use crate::browser::view::{View, element, value_of};
use hobnail_core::say;

use super::field::length_unit;
use crate::app::store::{CANVAS, Store, TYPED};
use crate::browser::{document, events};
use crate::input::Key;
use crate::live::memo;

/// What the two fields are called, and how they are read.
fn words() -> [(&'static str, &'static str); 2] {
    [
        (say!("panels-typed-length"), say!("panels-typed-length-about")),
        (say!("panels-typed-bearing"), say!("panels-typed-bearing-about")),
    ]
}

/// The fields, while a next point is waited for.
pub fn typed_fields(store: Store) -> View {
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
        element("label")
            .class("number")
            .with("title", about)
            .holds(element("span").holds(words))
            .holds(
                element("input")
                    .with("id", TYPED[place])
                    .with("type", "text")
                    .with("inputmode", "text")
                    .with("autocomplete", "off")
                    .with("aria-description", about)
                    .property("value", move || text.get().map(|(held, _)| held))
                    .with("placeholder", move || text.get().map(|(_, live)| live))
                    .on("input", move |event| {
                        let typed = value_of(&event);
                        store.act(|app| app.type_next(place, typed));
                    })
                    .on("keydown", move |event| {
                        if let Some(key) = events::field_key(&event) {
                            store.act(|app| app.end_typing(key == Key::Enter));
                            document::focus_on(CANVAS);
                        }
                    }),
            )
            .holds(element("span").holds(move || if place == 0 { length_unit(is_metric.get()) } else { "°" }))
            .holds(element("span").class("choice-more at-board").holds(about))
    };
    View::from(move || {
        is_open.get().then(|| {
            element("div")
                .class("typed")
                .with("role", "group")
                .with("aria-label", say!("panels-typed"))
                .holds(one(0))
                .holds(one(1))
        })
    })
}
