//! The bar on top: the plan's name, its alternatives, undo and redo, samples, open, save and share.

use crate::browser::view::{View, button, command, element};
use hobnail_core::say;

use super::alternatives::alternatives;
use super::history::history;
use super::icons::back_icon;
use super::kept::kept;
use crate::app::App;
use crate::app::bases::ACCEPTED;
use crate::app::files::SAMPLES;
use crate::app::store::{BAR, FILE_INPUT, Store};
use crate::browser::{document, files, pictures};
use crate::live::{always, memo};

/// Id of the menu of samples.
const SAMPLES_MENU: &str = "samples-menu";

/// The bar.
pub fn bar(store: Store) -> View {
    let name = memo(move || store.plan.with(|plan| plan.name.clone()));
    let undo = memo(move || store.plan.with(|plan| plan.undo.clone()));
    let redo = memo(move || store.plan.with(|plan| plan.redo.clone()));
    let is_busy = memo(move || store.hand.with(|hand| hand.is_busy));
    always(move || {
        let name = name.get();
        if !store.is_new.get() {
            document::set_title(&format!("{name} – Hobnail"));
        }
    });
    element("header")
        .with("id", BAR)
        .class("bar")
        .holds(
            element("div")
                .class("names")
                .holds(element("span").class("program").holds("Hobnail"))
                .holds(super::plan_menu::plan_menu(store)),
        )
        .holds(super::mode::looking_line(store))
        .holds(kept(store))
        .holds(alternatives(store))
        .holds(
            element("div")
                .class("group steps-back to-draw")
                .with("role", "group")
                .with("aria-label", say!("panels-history"))
                .holds(
                    command()
                        .with("data-command", "undo")
                        .with("aria-keyshortcuts", "Control+Z")
                        .with("aria-disabled", move || {
                            (undo.get().is_none() && !is_busy.get()).to_string()
                        })
                        .on_press(move || store.act(App::undo))
                        .holds(back_icon())
                        .holds(element("span").class("word").holds(say!("panels-undo")))
                        .holds(element("kbd").holds(say!("mode-key-undo")))
                        .holds(
                            element("span")
                                .class("command-more")
                                .mark("data-undo-word")
                                .holds(move || undo.get()),
                        ),
                )
                .holds(
                    button()
                        .class("command forward")
                        .with("data-command", "redo")
                        .with("aria-keyshortcuts", "Control+Shift+Z")
                        .with("aria-disabled", move || redo.get().is_none().to_string())
                        .on_press(move || store.act(App::redo))
                        .holds(back_icon())
                        .holds(element("span").class("word").holds(say!("panels-redo")))
                        .holds(element("kbd").holds(say!("mode-key-redo")))
                        .holds(element("span").class("command-more").holds(move || redo.get())),
                )
                .holds(history(store)),
        )
        .holds(
            element("div")
                .class("group files to-draw")
                .with("role", "group")
                .with("aria-label", say!("panels-plan"))
                .holds(samples(store))
                .holds(
                    command()
                        .with("data-command", "open")
                        .with("aria-keyshortcuts", "Control+O")
                        .on_press(move || files::choose(FILE_INPUT))
                        .holds(say!("panels-open")),
                )
                .holds(
                    element("input")
                        .with("id", FILE_INPUT)
                        .class("visually-hidden")
                        .with("type", "file")
                        .mark("multiple")
                        .with(
                            "accept",
                            [
                                ".geojson,.json,application/geo+json,",
                                pictures::ACCEPTED,
                                ",",
                                ACCEPTED,
                            ]
                            .concat(),
                        )
                        .with("tabindex", "-1")
                        .with("aria-hidden", "true")
                        .on("change", move |event| {
                            files::read_chosen(&event, move |sorted| store.open_sorted(sorted))
                        }),
                )
                .holds(
                    command()
                        .with("data-command", "save")
                        .with("aria-keyshortcuts", "Control+S")
                        .on_press(move || store.save())
                        .holds(say!("panels-save")),
                ),
        )
        .holds(super::share::share(store))
        .into()
}

fn samples(store: Store) -> View {
    let one = move |sample: &'static crate::app::files::Sample| {
        element("li").holds(
            button()
                .class("menu-line")
                .with("data-sample", sample.file)
                .on_press(move || {
                    document::set_open(SAMPLES_MENU, false);
                    store.open_sample(sample);
                })
                .holds(element("span").class("choice-name").holds(sample.title.words()))
                .holds(element("span").class("choice-more").holds(sample.about.words())),
        )
    };
    super::menu("samples", super::summary(say!("panels-samples")))
        .with("id", SAMPLES_MENU)
        .holds(element("ul").holds(SAMPLES.iter().map(one).collect::<View>()))
        .into()
}
