//! The drawing: the canvas, described in words for those who do not see it.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::live::memo;
use crate::app::store::{CANVAS, STATUS, Store};
use crate::browser::events;

/// The canvas.
#[component]
pub fn Drawing(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let described = memo(move || store.plan.with(|plan| plan.described.clone()));
    let tool = memo(move || store.hand.with(|hand| hand.tool.map(|tool| tool.word().to_lowercase())));
    let canvas = NodeRef::<leptos::html::Canvas>::new();
    Effect::new(move |_| {
        if canvas.get().is_some() {
            store.take_canvas();
        }
    });
    view! {
        <main class="sheet">
            <canvas
                id=CANVAS
                node_ref=canvas
                tabindex="0"
                role="application"
                aria-roledescription=say!("panels-drawing")
                aria-label=described
                aria-describedby=STATUS
                data-drawing
                data-tool=tool
                on:pointerdown=move |event| store.handle(events::pointer_down(&event))
                on:pointermove=move |event| store.handle(events::pointer_move(&event))
                on:pointerup=move |event| store.handle(events::pointer_up(&event))
                on:pointercancel=move |event| store.handle(events::pointer_lost(&event))
                on:pointerleave=move |_| store.handle(crate::input::Event::Left)
                on:wheel=move |event| store.handle(events::wheel(&event))
                on:contextmenu=move |event| event.prevent_default()
            ></canvas>
        </main>
        <div class="focus-frame" aria-hidden="true"></div>
    }
}
