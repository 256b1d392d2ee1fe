//! The drawing: the canvas, described in words for those who do not see it.

use crate::browser::view::{View, element};
use hobnail_core::say;

use crate::app::store::{CANVAS, STATUS, Store};
use crate::browser::words::lowercase;
use crate::browser::{document, events};
use crate::live::memo;

/// The canvas.
pub fn drawing(store: Store) -> View {
    let described = memo(move || store.plan.with(|plan| plan.described.clone()));
    let tool = memo(move || store.hand.with(|hand| hand.tool.map(|tool| lowercase(tool.word()))));
    View::nothing()
        .and(
            element("main").class("sheet").holds(
                element("canvas")
                    .with("id", CANVAS)
                    .with("tabindex", "0")
                    .with("role", "application")
                    .with("aria-roledescription", say!("panels-drawing"))
                    .with("aria-label", described)
                    .with("aria-describedby", STATUS)
                    .mark("data-drawing")
                    .with("data-tool", tool)
                    .on("pointerdown", move |event| store.handle(events::pointer_down(&event)))
                    .on("pointermove", move |event| store.handle(events::pointer_move(&event)))
                    .on("pointerup", move |event| {
                        store.handle(events::pointer_up(&event));
                        // Only now, since on a phone what a menu held moves the drawing.
                        document::close_menu();
                    })
                    // The last of a press or tap: the browser gives the keyboard to the drawing before.
                    .on("click", move |_| store.type_words())
                    .on("pointercancel", move |event| store.handle(events::pointer_lost(&event)))
                    .on("pointerleave", move |_| store.handle(crate::input::Event::Left))
                    .on("wheel", move |event| store.handle(events::wheel(&event)))
                    .on("contextmenu", move |event| event.prevent_default()),
            ),
        )
        .and(element("div").class("focus-frame").with("aria-hidden", "true"))
}
