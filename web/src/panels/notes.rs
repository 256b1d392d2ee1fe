//! What the drawing leaves open and the cautions it calls for, each line with its place on the drawing.

use crate::browser::view::{View, command, element};
use hobnail_core::say;

use crate::app::places::NoteShown;
use crate::app::store::Store;
use crate::live::memo;

/// The notes; nothing where there are none.
pub fn notes(store: Store) -> View {
    let notes = memo(move || store.notes.get());
    let listed = move |title: &'static str, is_caution: bool| {
        let lines: Vec<_> = notes.with(|notes| {
            let held = notes.iter().filter(|note| note.is_caution == is_caution);
            held.map(|note| line(store, note.clone())).collect()
        });
        (!lines.is_empty()).then(|| {
            element("section")
                .class("notes")
                .with("aria-label", title)
                .with("data-cautions", is_caution.to_string())
                .holds(element("h3").holds(title))
                .holds(element("ul").holds(lines))
        })
    };
    View::from(move || {
        [
            listed(say!("panels-notes-open"), false),
            listed(say!("panels-notes-codes"), true),
        ]
        .into_iter()
        .flatten()
        .collect::<View>()
    })
}

fn line(store: Store, note: NoteShown) -> View {
    let NoteShown { words, place, .. } = note;
    let label = say!("panels-show-what", what = words);
    let show = place.map(|place| {
        let (focused, entered, pressed) = (place.clone(), place.clone(), place);
        command()
            .with("aria-label", label)
            .on("focus", move |_| store.point_out(Some(focused.clone())))
            .on("blur", move |_| store.point_out(None))
            .on("pointerenter", move |_| store.point_out(Some(entered.clone())))
            .on("pointerleave", move |_| store.point_out(None))
            .on_press(move || store.act(|app| app.go_to(pressed.clone())))
            .holds(say!("panels-show"))
    });
    element("li")
        .mark("data-note")
        .holds(element("span").holds(words))
        .holds(show)
        .into()
}
