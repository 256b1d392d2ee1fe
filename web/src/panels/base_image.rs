//! The picture under the drawing: chosen, faded, laid and taken away in the plan's menu; while it is being laid, what a
//! press on the drawing does.

use crate::browser::view::{self, View, element, value_of};
use hobnail_core::say;

use crate::app::App;
use crate::app::shown::Help;
use crate::app::store::{CANVAS, PICTURE_INPUT, Store};
use crate::browser::{document, files, pictures};
use crate::live::memo;

fn command(name: &'static str, words: &'static str, work: impl Fn() + 'static) -> View {
    let pressed = move |_| work();
    view::command()
        .with("data-command", name)
        .on("click", pressed)
        .holds(words)
        .into()
}

fn choose() {
    files::choose(PICTURE_INPUT);
}

/// The way to begin with a picture.
pub fn start() -> View {
    element("li")
        .holds(
            view::button()
                .class("menu-line")
                .with("data-begin", "picture")
                .on("click", |_| choose())
                .holds(element("span").class("choice-name").holds(say!("picture-begin")))
                .holds(element("span").class("choice-more").holds(say!("picture-begin-about"))),
        )
        .into()
}

/// The lines of the plan's menu, and the input that they open.
pub fn lines(store: Store) -> View {
    let name = memo(move || store.base_image.with(|shown| shown.name.clone()));
    let percent = memo(move || store.base_image.with(|shown| shown.opacity_percent));
    let lay = move |is_by_length: bool| {
        store.help.set(Help::Closed);
        store.act(|app| app.begin_laying(is_by_length));
        document::focus_on(CANVAS);
    };
    let shown = move || {
        let name = name.get();
        if name.is_empty() {
            return command("picture", say!("picture-choose"), choose);
        }
        let fade = move |event| {
            let percent = value_of(&event).parse().unwrap_or_default();
            store.act(|app| app.fade_picture(percent));
        };
        View::nothing()
            .and(element("p").class("picture-name").mark("data-picture-name").holds(name))
            .and(
                element("label")
                    .class("picture-fade")
                    .holds(element("span").holds(say!("picture-fade")))
                    .holds(
                        element("input")
                            .with("type", "range")
                            .with("min", "0")
                            .with("max", "100")
                            .with("step", "5")
                            .mark("data-picture-fade")
                            .property("value", move || percent.get().to_string())
                            .on("change", fade),
                    ),
            )
            .and(
                element("div")
                    .class("group")
                    .holds(command("picture-points", say!("picture-by-points"), move || lay(false)))
                    .holds(command("picture-length", say!("picture-by-length"), move || lay(true))),
            )
            .and(
                element("div")
                    .class("group")
                    .holds(command("picture", say!("picture-another"), choose))
                    .holds(command("picture-remove", say!("picture-remove"), move || {
                        store.act(App::remove_picture)
                    })),
            )
    };
    View::nothing()
        .and(
            element("section")
                .class("picture to-draw")
                .with("aria-labelledby", "picture-title")
                .holds(element("h2").with("id", "picture-title").holds(say!("picture-title")))
                .holds(shown),
        )
        .and(
            element("input")
                .with("id", PICTURE_INPUT)
                .class("visually-hidden")
                .with("type", "file")
                .mark("multiple")
                .with("accept", pictures::ACCEPTED)
                .with("tabindex", "-1")
                .with("aria-hidden", "true")
                .on("change", move |event| {
                    files::read_chosen(&event, move |sorted| store.open_sorted(sorted));
                }),
        )
}

/// While the picture is being laid: what is awaited, over the foot of the drawing.
pub fn laying(store: Store) -> View {
    let shown = memo(move || store.base_image.with(|shown| (shown.awaits.clone(), shown.asks_length)));
    let card = move || {
        let (awaits, asks_length) = shown.get();
        let awaits = awaits?;
        let typed = move |event| {
            let text = value_of(&event);
            store.act(|app| app.type_picture_length(&text));
        };
        let length: Option<View> = asks_length.then(|| {
            element("label")
                .class("picture-length")
                .holds(element("span").holds(say!("picture-length-field")))
                .holds(
                    element("input")
                        .with("type", "text")
                        .with("inputmode", "decimal")
                        .mark("data-picture-length")
                        .on("change", typed),
                )
                .into()
        });
        let section = element("section")
            .class("help")
            .with("aria-label", say!("picture-title"))
            .mark("data-laying")
            .holds(element("p").holds(awaits))
            .holds(length)
            .holds(
                element("div")
                    .class("group")
                    .holds(command("picture-done", say!("picture-done"), move || {
                        store.act(App::end_laying)
                    }))
                    .holds(command("picture-back", say!("picture-back"), move || {
                        store.act(App::give_laying_up)
                    })),
            );
        Some(View::from(section))
    };
    card.into()
}
