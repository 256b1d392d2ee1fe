//! The rail of tools: each with a word and a key.

use crate::browser::view::{View, button, element, presses};
use hobnail_core::say;

use super::icons::tool_icon;
use crate::app::store::{CANVAS, RAIL, Store};
use crate::browser::document;
use crate::browser::words::lowercase;
use crate::live::memo;
use crate::tools::ToolKind;

/// The rail.
pub fn rail(store: Store) -> View {
    let chosen = memo(move || store.hand.with(|hand| hand.tool));
    let tool = move |kind: ToolKind| {
        let is_chosen = move || chosen.get() == Some(kind);
        button()
            .class("tool")
            .with("data-tool", lowercase(kind.word()))
            .with("aria-pressed", move || is_chosen().to_string())
            .with("aria-keyshortcuts", kind.key().to_ascii_uppercase().to_string())
            .on("click", move |event| {
                store.act(|app| app.choose_tool(kind));
                // A pointer goes on at the drawing; the keyboard stays where it is.
                if presses(&event) > 0 {
                    document::focus_on(CANVAS);
                }
            })
            .holds(tool_icon(kind))
            .holds(element("span").class("word").holds(kind.word()))
            .holds(element("kbd").holds(kind.key().to_ascii_uppercase().to_string()))
    };
    element("div")
        .with("id", RAIL)
        .class("rail")
        .with("role", "toolbar")
        .with("aria-label", say!("panels-tools"))
        .with("aria-orientation", "vertical")
        .mark("data-tools")
        .holds(ToolKind::ALL.map(tool))
        .into()
}
