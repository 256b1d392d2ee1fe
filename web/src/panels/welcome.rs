//! What to begin with or go on with, shown while nothing is drawn and nothing was opened.

use crate::browser::view::{View, button, command, element, presses};
use hobnail_core::say;

use crate::app::files::{SAMPLES, Sample};
use crate::app::keeping::Recent;
use crate::app::shown::Help;
use crate::app::store::{CANVAS, FILE_INPUT, Store, WELCOME_TITLE};
use crate::browser::{document, files};
use crate::live::{live_here, memo};
use crate::tools::ToolKind;

/// Ways to begin with nothing drawn: the tool, its name in the page, and words.
fn starts() -> [(ToolKind, &'static str, &'static str, &'static str); 2] {
    [
        (
            ToolKind::Area,
            "site",
            say!("panels-begin-site"),
            say!("panels-begin-site-about"),
        ),
        (
            ToolKind::Street,
            "streets",
            say!("panels-begin-streets"),
            say!("panels-begin-streets-about"),
        ),
    ]
}

/// Begins with nothing drawn; where this browser keeps no plan the first steps are shown.
fn begin_anew(store: Store) {
    store.is_new.set(false);
    if store.recent.with_untracked(Vec::is_empty) {
        store.help.set(Help::FirstSteps);
    }
}

/// The card of beginnings.
pub fn welcome(store: Store) -> View {
    let sample = move |sample: &'static Sample| {
        element("li").holds(
            button()
                .class("menu-line")
                .with("data-begin", sample.file)
                .on_press(move || {
                    store.open_sample(sample);
                    document::focus_on(CANVAS);
                })
                .holds(element("span").class("choice-name").holds(sample.title.words()))
                .holds(element("span").class("choice-more").holds(sample.about.words())),
        )
    };
    let start = move |(tool, name, title, about): (ToolKind, &'static str, &'static str, &'static str)| {
        let begin = move |_| {
            begin_anew(store);
            store.act(|app| app.choose_tool(tool));
            document::focus_on(CANVAS);
        };
        element("li")
            .holds(
                button()
                    .class("menu-line")
                    .with("data-begin", name)
                    .on("click", begin)
                    .holds(element("span").class("choice-name").holds(title))
                    .holds(element("span").class("choice-more").holds(about)),
            )
            .into()
    };
    View::from(move || {
        store.is_new.get().then(|| {
            element("section")
                .class("welcome")
                .with("aria-labelledby", WELCOME_TITLE)
                .mark("data-welcome")
                .holds(recent_plans(store))
                .holds(
                    element("h2")
                        .with("id", WELCOME_TITLE)
                        .with("tabindex", "-1")
                        .class("to-draw")
                        .holds(say!("panels-begin")),
                )
                .holds(
                    element("ul")
                        .class("to-draw")
                        .holds(starts().into_iter().map(start).collect::<Vec<View>>())
                        .holds(super::bases::start())
                        .holds(super::base_image::start()),
                )
                .holds(element("h2").holds(move || {
                    if store.is_looking.get() {
                        say!("mode-look-at")
                    } else {
                        say!("panels-begin-samples")
                    }
                }))
                .holds(element("ul").holds(SAMPLES.iter().map(sample).collect::<View>()))
                .holds(
                    element("div")
                        .class("welcome-more")
                        .holds(
                            button()
                                .class("command to-draw")
                                .with("data-begin", "blank")
                                .on_press(move || {
                                    begin_anew(store);
                                    document::focus_on(CANVAS);
                                })
                                .holds(say!("panels-begin-blank")),
                        )
                        .holds(super::program::program_button(store, say!("panels-begin-program")))
                        .holds(
                            command()
                                .with("data-begin", "file")
                                .on_press(move || files::choose(FILE_INPUT))
                                .holds(say!("panels-begin-file")),
                        ),
                )
        })
    })
}

/// Plans that this browser keeps; nothing where it keeps none.
fn recent_plans(store: Store) -> View {
    // The plan of which is asked whether it shall be forgotten.
    let asked = live_here(String::new());
    let one = move |plan: Recent| {
        let (id, opened) = (plan.id.clone(), plan.id.clone());
        let (name, when) = (plan.name.clone(), plan.when.clone());
        let is_asked = {
            let id = plan.id.clone();
            memo(move || asked.with(|asked| *asked == id))
        };
        let of_plan = say!("panels-forget-plan", name = name);
        // One button asks and then forgets, so that the keyboard stays on it; a double click only asks.
        let forget = move |clicks: i32| {
            if !is_asked.get_untracked() {
                asked.set(id.clone());
            } else if clicks < 2 {
                store.forget(plan.clone());
            }
        };
        let words = move || {
            if is_asked.get() {
                say!("panels-forget-for-good")
            } else {
                say!("panels-forget")
            }
        };
        let keep = move || {
            let keep = move |_| asked.set(String::new());
            let button = command().mark("data-keep").on("click", keep).holds(say!("panels-keep"));
            is_asked.get().then_some(button)
        };
        element("li")
            .class("recent")
            .holds(
                button()
                    .class("menu-line")
                    .with("data-recent", opened.clone())
                    .on_press(move || {
                        store.open_kept(opened.clone());
                        document::focus_on(CANVAS);
                    })
                    .holds(element("span").class("choice-name").holds(name))
                    .holds(element("span").class("choice-more").holds(when)),
            )
            .holds(
                command()
                    .mark("data-forget")
                    .with("title", of_plan)
                    .on("click", move |event| forget(presses(&event)))
                    .holds(words),
            )
            .holds(keep)
            .into()
    };
    View::from(move || {
        let plans = store.recent.get();
        (!plans.is_empty()).then(|| {
            View::nothing()
                .and(element("h2").holds(say!("panels-go-on")))
                .and(element("ul").holds(plans.into_iter().map(one).collect::<Vec<View>>()))
                .and(lasting(store))
        })
    })
}

/// Whether the browser holds on to the kept plans, and a way to ask it to.
fn lasting(store: Store) -> View {
    View::from(move || {
        let is_lasting = store.is_lasting.get()?;
        let words = if is_lasting {
            say!("panels-lasting")
        } else {
            say!("panels-not-lasting")
        };
        let ask = move || {
            command()
                .mark("data-ask-to-last")
                .on_press(move || store.ask_to_last())
                .holds(say!("panels-ask-to-last"))
        };
        let line = element("p")
            .class("lasting")
            .with("data-lasting", is_lasting.to_string());
        Some(line.holds(words).holds((!is_lasting).then(ask)))
    })
}
