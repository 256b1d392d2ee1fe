//! Help: what the tool in hand does, and three first steps for whoever has drawn nothing here yet.

use crate::browser::view::{View, command, element};
use hobnail_core::say;

use crate::app::shown::Help;
use crate::app::store::Store;
use crate::live::{always, memo};
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
pub fn help_button(store: Store) -> View {
    let is_open = move || store.help.with(|help| *help != Help::Closed);
    let toggle = move |_| {
        let next = if is_open() { Help::Closed } else { Help::Tool };
        store.help.set(next);
    };
    command()
        .with("data-command", "help")
        .with("aria-expanded", move || is_open().to_string())
        .with("aria-controls", HELP)
        .on("click", toggle)
        .holds(say!("help-open"))
        .into()
}

/// Help itself, over the foot of the drawing. The first steps make room as soon as the first is taken.
pub fn help(store: Store) -> View {
    let is_busy = memo(move || store.hand.with(|hand| hand.is_busy));
    always(move || {
        if is_busy.get() && store.help.with_untracked(|help| *help == Help::FirstSteps) {
            store.help.set(Help::Closed);
        }
    });
    let shown = move || {
        let tool = store.hand.with(|hand| hand.tool).unwrap_or(ToolKind::Select);
        let (title, words, other) = match store.help.with(|help| *help) {
            Help::Closed => return View::nothing(),
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
        let section = element("section")
            .with("id", HELP)
            .class("help")
            .with("aria-labelledby", "help-title")
            .mark("data-help")
            .holds(element("h2").with("id", "help-title").holds(title))
            .holds(
                words
                    .lines()
                    .map(|line| element("p").holds(line).into())
                    .collect::<Vec<View>>(),
            )
            .holds(
                element("div")
                    .class("group")
                    .holds(
                        command()
                            .with("data-command", "help-close")
                            .on("click", close)
                            .holds(say!("help-close")),
                    )
                    .holds(other.map(|(next, words)| {
                        command()
                            .with("data-command", "help-other")
                            .on_press(move || store.help.set(next))
                            .holds(words)
                    }))
                    .holds(
                        command()
                            .with("data-command", "licenses")
                            .on("click", move |_| store.save_licenses())
                            .holds(say!("help-licenses")),
                    ),
            );
        section.into()
    };
    shown.into()
}
