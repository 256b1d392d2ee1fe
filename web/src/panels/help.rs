//! Help: what the tool in hand does, and three first steps for whoever has drawn nothing here yet.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::live::memo;
use crate::app::shown::Help;
use crate::app::store::Store;
use crate::tools::ToolKind;

/// Its id, which the button names.
const HELP: &str = "help";

/// What a tool does, line by line.
fn words(tool: ToolKind) -> &'static str {
    match tool {
        ToolKind::Select => say!("help-select"),
        ToolKind::Area => say!("help-area"),
        ToolKind::Street => say!("help-street"),
        ToolKind::Use => say!("help-use"),
        ToolKind::Place => say!("help-place"),
        ToolKind::Pan => say!("help-view"),
    }
}

/// The button that opens and closes it.
pub fn help_button(store: Store) -> AnyView {
    let is_open = move || store.help.with(|help| *help != Help::Closed);
    let toggle = move |_| {
        let next = if is_open() { Help::Closed } else { Help::Tool };
        store.help.set(next);
    };
    view! {
        <button
            type="button"
            class="command"
            data-command="help"
            aria-expanded=move || is_open().to_string()
            aria-controls=HELP
            on:click=toggle
        >
            {say!("help-open")}
        </button>
    }
    .into_any()
}

/// Help itself, over the foot of the drawing. The first steps make room as soon as the first is taken.
pub fn help(store: Store) -> AnyView {
    let is_busy = memo(move || store.hand.with(|hand| hand.is_busy));
    Effect::new(move |_| {
        if is_busy.get() && store.help.with_untracked(|help| *help == Help::FirstSteps) {
            store.help.set(Help::Closed);
        }
    });
    let shown = move || {
        let tool = store.hand.with(|hand| hand.tool).unwrap_or(ToolKind::Select);
        let (title, words, other) = match store.help.with(|help| *help) {
            Help::Closed => return None,
            // The first steps are no steps for whoever only looks.
            Help::Tool if store.is_looking.get() => (tool.word(), words(tool), None),
            Help::Tool => (
                tool.word(),
                words(tool),
                Some((Help::FirstSteps, say!("help-first-title"))),
            ),
            Help::FirstSteps => (
                say!("help-first-title"),
                say!("help-first"),
                Some((Help::Tool, tool.word())),
            ),
        };
        let close = move |_| store.help.set(Help::Closed);
        let section = view! {
            <section id=HELP class="help" aria-labelledby="help-title" data-help>
                <h2 id="help-title">{title}</h2>
                {words.lines().map(|line| view! { <p>{line}</p> }.into_any()).collect::<Vec<_>>()}
                <div class="group">
                    <button type="button" class="command" data-command="help-close" on:click=close>{say!("help-close")}</button>
                    {other.map(|(next, words)| view! { <button type="button" class="command" data-command="help-other" on:click=move |_| store.help.set(next)>{words}</button> }.into_any())}
                </div>
            </section>
        };
        Some(section.into_any())
    };
    shown.into_any()
}
