//! The rail of tools: each with a word and a key.

use hobnail_core::say;
use leptos::prelude::*;

use super::icons::ToolIcon;
use crate::app::live::memo;
use crate::app::store::{CANVAS, RAIL, Store};
use crate::browser::document;
use crate::tools::ToolKind;

/// The rail.
#[component]
pub fn Rail(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let chosen = memo(move || store.hand.with(|hand| hand.tool));
    let tool = move |kind: ToolKind| {
        let is_chosen = move || chosen.get() == Some(kind);
        view! {
            <button
                type="button"
                class="tool"
                data-tool=kind.word().to_lowercase()
                aria-pressed=move || is_chosen().to_string()
                aria-keyshortcuts=kind.key().to_uppercase().to_string()
                on:click=move |event| {
                    store.act(|app| app.choose_tool(kind));
                    // A pointer goes on at the drawing; the keyboard stays where it is.
                    if event.detail() > 0 {
                        document::focus_on(CANVAS);
                    }
                }
            >
                <ToolIcon kind/>
                <span class="word">{kind.word()}</span>
                <kbd>{kind.key().to_uppercase().to_string()}</kbd>
            </button>
        }
    };
    view! {
        <div id=RAIL class="rail" role="toolbar" aria-label=say!("panels-tools") aria-orientation="vertical" data-tools>
            {ToolKind::ALL.map(tool).collect_view()}
        </div>
    }
}
