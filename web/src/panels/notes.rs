//! What the drawing leaves open, each line with its place on the drawing.

use leptos::prelude::*;

use crate::app::places::NoteShown;
use crate::app::store::Store;

/// The notes; nothing where the drawing leaves nothing open.
#[component]
pub fn Notes(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let notes = Memo::new(move |_| store.notes.get());
    move || {
        let held = notes.get();
        (!held.is_empty()).then(|| {
            view! {
                <section class="notes" aria-labelledby="notes-title">
                    <h3 id="notes-title">"Left open on the drawing"</h3>
                    <ul>{held.into_iter().map(|note| line(store, note)).collect_view()}</ul>
                </section>
            }
        })
    }
}

fn line(store: Store, note: NoteShown) -> impl IntoView {
    let NoteShown { words, place } = note;
    let label = format!("Show on the drawing: {words}");
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
                "Show"
            </button>
        }
    });
    view! { <li data-note><span>{words}</span>{show}</li> }
}
