//! What the drawing leaves open and the cautions it calls for, each line with its place on the drawing.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::live::memo;
use crate::app::places::NoteShown;
use crate::app::store::Store;

/// The notes; nothing where there are none.
#[component]
pub fn Notes(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let notes = memo(move || store.notes.get());
    let listed = move |title: &'static str, is_caution: bool| {
        let lines: Vec<_> = notes.with(|notes| {
            let held = notes.iter().filter(|note| note.is_caution == is_caution);
            held.map(|note| line(store, note.clone()).into_any()).collect()
        });
        (!lines.is_empty()).then(|| {
            view! {
                <section class="notes" aria-label=title data-cautions=is_caution.to_string()>
                    <h3>{title}</h3>
                    <ul>{lines}</ul>
                </section>
            }
            .into_any()
        })
    };
    move || {
        [
            listed(say!("panels-notes-open"), false),
            listed(say!("panels-notes-codes"), true),
        ]
        .into_iter()
        .flatten()
        .collect_view()
    }
}

fn line(store: Store, note: NoteShown) -> impl IntoView {
    let NoteShown { words, place, .. } = note;
    let label = say!("panels-show-what", what = words);
    let show = place.map(|place| {
        let (focused, entered, pressed) = (place.clone(), place.clone(), place);
        view! {
            <button
                type="button"
                class="command"
                aria-label=label
                on:focus=move |_| store.point_out(Some(focused.clone()))
                on:blur=move |_| store.point_out(None)
                on:pointerenter=move |_| store.point_out(Some(entered.clone()))
                on:pointerleave=move |_| store.point_out(None)
                on:click=move |_| store.act(|app| app.go_to(pressed.clone()))
            >
                {say!("panels-show")}
            </button>
        }
    });
    view! { <li data-note><span>{words}</span>{show}</li> }
}
