//! The status line: what the tool waits for, what is selected, and zooming.

use crate::browser::view::{View, command, element};
use hobnail_core::say;

use super::help::help_button;
use super::language::languages;
use super::mode::{by_tap, page_menu};
use super::typed::typed_fields;
use crate::app::App;
use crate::app::store::{STATUS, Store, ZOOM_STEP};
use crate::live::memo;
use crate::tools::ToolKind;

/// The status line.
pub fn status(store: Store) -> View {
    let awaits = memo(move || store.hand.with(|hand| hand.awaits.clone()));
    let selected = memo(move || store.hand.with(|hand| hand.selected.clone()));
    let tool = memo(move || store.hand.with(|hand| hand.tool));
    element("footer")
        .with("id", STATUS)
        .class("status")
        .holds(element("p").class("awaits").mark("data-awaits").holds(awaits))
        .holds(move || {
            let is_by_points = matches!(tool.get(), Some(ToolKind::Street | ToolKind::Area | ToolKind::Place));
            is_by_points.then(|| element("p").class("by-keys").holds(say!("panels-by-keys")))
        })
        .holds(typed_fields(store))
        .holds(by_tap(store))
        .holds(move || {
            selected.get().map(|words| {
                View::nothing()
                    .and(element("p").class("selected").mark("data-selected").holds(words))
                    .and(
                        command()
                            .with("data-command", "delete")
                            .with("aria-keyshortcuts", "Delete")
                            .on_press(move || store.act(App::delete))
                            .holds(say!("panels-delete")),
                    )
            })
        })
        .holds(help_button(store))
        .holds(page_menu(store))
        .holds(languages(store))
        .holds(
            element("div")
                .class("group zoom")
                .with("role", "group")
                .with("aria-label", say!("panels-zoom"))
                .holds(
                    command()
                        .with("data-command", "zoom-out")
                        .with("aria-label", say!("panels-zoom-out"))
                        .on_press(move || store.act(|app| app.zoom(1.0 / ZOOM_STEP)))
                        .holds("−"),
                )
                .holds(
                    command()
                        .with("data-command", "fit")
                        .with("aria-keyshortcuts", "0")
                        .on_press(move || store.act(App::fit))
                        .holds(say!("panels-zoom-fit")),
                )
                .holds(
                    command()
                        .with("data-command", "zoom-in")
                        .with("aria-label", say!("panels-zoom-in"))
                        .on_press(move || store.act(|app| app.zoom(ZOOM_STEP)))
                        .holds("+"),
                ),
        )
        .into()
}
