//! The page's outermost element: the drawing and the panels around it.

use crate::browser::view::{View, command, element, mount};
use hobnail_core::say;

use crate::app::App;
use crate::app::mode::Mode;
use crate::app::store::{Store, TEXT_SIZE};
use crate::browser::files;
use crate::panels::bar::bar;
use crate::panels::base_image::laying;
use crate::panels::bases::bases;
use crate::panels::column::column;
use crate::panels::drawing::drawing;
use crate::panels::editor::cut_panel;
use crate::panels::enlarged::enlarged;
use crate::panels::help::help;
use crate::panels::map::map_panel;
use crate::panels::palette::palette;
use crate::panels::rail::rail;
use crate::panels::status::status;
use crate::panels::welcome::welcome;

/// Shows the whole page, and takes its canvas once it stands there.
pub fn show() {
    let store = App::new().map(Store::new);
    let view = match &store {
        Ok(store) => desk(*store),
        Err(fault) => element("p")
            .class("fatal")
            .with("role", "alert")
            .holds(fault.to_string())
            .into(),
    };
    mount(view);
    if let Ok(store) = store {
        store.take_canvas();
    }
}

fn desk(store: Store) -> View {
    files::accept_drops();
    element("div")
        .class("desk")
        .on("drop", move |event| {
            files::read_dropped(&event, move |sorted| store.open_sorted(sorted));
        })
        .holds(
            element("a")
                .class("skip")
                .with("href", "#drawing")
                .holds(say!("page-skip")),
        )
        .holds(bar(store))
        .holds(
            element("section")
                .class("tools to-draw")
                .with("aria-label", say!("page-drawing-tools"))
                .holds(rail(store))
                .holds(palette(store)),
        )
        .holds(drawing(store))
        .holds(map_panel(store))
        .holds(move || (store.mode.get() != Mode::Projector).then(|| enlarged(store)))
        .holds(cut_panel(store))
        .holds(welcome(store))
        .holds(column(store))
        .holds(status(store))
        .holds(help(store))
        .holds(laying(store))
        .holds(bases(store))
        .holds(notice(store))
        .holds(
            element("span")
                .with("id", TEXT_SIZE)
                .class("text-size")
                .with("aria-hidden", "true"),
        )
        .holds(
            element("p")
                .class("visually-hidden")
                .with("role", "status")
                .with("aria-live", "polite")
                .mark("data-said")
                .holds(move || store.said.get()),
        )
        .into()
}

/// What went wrong, until it is dismissed.
fn notice(store: Store) -> View {
    element("div")
        .with("role", "alert")
        .class("notice-place")
        .holds(move || {
            store.notice.get().map(|(words, is_calm)| {
                element("div")
                    .class("notice")
                    .class_if("is-calm", is_calm)
                    .mark("data-notice")
                    .holds(element("p").holds(words))
                    .holds(
                        command()
                            .on_press(move || store.act(App::dismiss_notice))
                            .holds(say!("page-dismiss")),
                    )
            })
        })
        .into()
}
