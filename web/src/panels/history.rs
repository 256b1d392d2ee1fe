//! The history: every step to go back to, a replay, and the moment that changes are shown against.

use crate::browser::view::{View, button, command, element, value_of};
use hobnail_core::say;

use crate::app::App;
use crate::app::remarks::RemarksShown;
use crate::app::store::Store;
use crate::browser::document;
use crate::live::{Live, memo};

/// Id of the button that opens the menu.
const MENU: &str = "history-menu";

/// Id of the field with the name of a moment.
const NAME: &str = "moment-name";

/// The menu of the history.
pub fn history(store: Store) -> View {
    let name = Live::new(String::new());
    let marked = memo(move || store.history.with(|history| history.marked.clone()));
    let replay_words = move || {
        if store.is_replaying.get() {
            say!("panels-replay-stop")
        } else {
            say!("panels-replay")
        }
    };
    let step = move |(place, words): (usize, String)| {
        let is_here = move || store.history.with(|history| history.done == place);
        let label = say!("remarks-link-what", what = words);
        // The list counts from the beginning, remarks from the first step.
        let is_linkable = move || {
            let steps = |shown: &RemarksShown| shown.steps.iter().any(|(step, _)| step + 1 == place);
            store.remarks.with(steps)
        };
        let link = move || {
            is_linkable().then(|| {
                command()
                    .with("aria-label", label.clone())
                    .on_press(move || {
                        store.act(|app| app.link_step(place - 1));
                        document::focus_on(MENU);
                    })
                    .holds(say!("remarks-link"))
            })
        };
        element("li")
            .holds(
                button()
                    .class("menu-line step")
                    .with("aria-current", move || is_here().then_some("step"))
                    .on_press(move || store.act(|app| app.go_to_step(place)))
                    .holds(element("span").class("choice-more").holds(place.to_string()))
                    .holds(words),
            )
            .holds(link)
    };
    let answering = move || store.remarks.with(|shown| shown.answering_words.clone());
    let steps = move || {
        let steps = store.history.with(|history| history.steps.clone());
        let begin = std::iter::once(say!("panels-history-begin").to_owned());
        let mut all: Vec<_> = begin.chain(steps).enumerate().collect();
        // The last is looked for most.
        all.reverse();
        all.into_iter().map(step).collect::<View>()
    };
    super::menu("history", super::summary(say!("panels-history")).with("id", MENU))
        .holds(
            element("div")
                .class("menu-card")
                .holds(element("p").class("palette-title").holds(answering))
                .holds(element("ol").class("steps").holds(steps))
                .holds(move || {
                    let is_back = store.history.with(|history| history.done < history.steps.len());
                    is_back.then(|| element("p").class("choice-more").holds(say!("panels-history-back")))
                })
                .holds(
                    command()
                        .with("data-command", "replay")
                        .on_press(move || store.replay())
                        .holds(replay_words),
                )
                .holds(
                    element("form")
                        .class("moment")
                        .with("data-field", "Moment")
                        .on("submit", move |event| {
                            event.prevent_default();
                            store.act(|app| app.mark_moment(&name.get_untracked()));
                            store.ask();
                        })
                        .holds(element("label").with("for", NAME).holds(say!("panels-moment-name")))
                        .holds(
                            element("input")
                                .with("id", NAME)
                                .with("type", "text")
                                .with("maxlength", "60")
                                .property("value", move || name.get())
                                .on("input", move |event| name.set(value_of(&event))),
                        )
                        .holds(
                            element("button")
                                .with("type", "submit")
                                .class("command")
                                .with("data-command", "mark")
                                .holds(say!("panels-moment-mark")),
                        ),
                )
                .holds(move || {
                    marked.get().map(|words| {
                        element("p")
                            .class("moment")
                            .mark("data-marked")
                            .holds(say!("panels-moment-compared", name = words))
                            .holds(
                                command()
                                    .with("data-command", "forget-moment")
                                    .on_press(move || store.act(App::forget_moment))
                                    .holds(say!("panels-moment-forget")),
                            )
                    })
                }),
        )
        .into()
}
