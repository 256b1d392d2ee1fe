//! Base data on its way into the plan: a dialog that shows how far a file is read, what is wrong with it, and what it
//! holds.

use crate::browser::view::{self, View, element, value_of};
use hobnail_core::say;

use super::base_choices::{choices, what_is_taken};
use crate::app::App;
use crate::app::bases::{ACCEPTED, BASE, FaultSaid, Opening, Stage};
use crate::app::store::{BASE_INPUT, Store};
use crate::browser::{document, files};
use crate::live::memo;

/// A command of the panel.
pub(super) fn command(name: &'static str, words: impl Into<View>, work: impl Fn() + 'static) -> view::Element {
    view::command().with("data-command", name).on_press(work).holds(words)
}

fn choose() {
    files::choose(BASE_INPUT);
}

/// The way to begin with base data.
pub fn start() -> View {
    element("li")
        .holds(
            view::button()
                .class("menu-line")
                .with("data-begin", "base")
                .on_press(choose)
                .holds(element("span").class("choice-name").holds(say!("bases-begin")))
                .holds(element("span").class("choice-more").holds(say!("bases-about"))),
        )
        .into()
}

/// The lines of the plan's menu, and the input that they open.
pub fn lines(store: Store) -> View {
    let heights = memo(move || store.plan.with(|plan| plan.heights.clone()));
    View::nothing()
        .and(
            element("section")
                .class("picture to-draw")
                .with("aria-labelledby", "bases-title")
                .holds(element("h2").with("id", "bases-title").holds(say!("bases-title")))
                .holds(element("p").class("choice-more").holds(say!("bases-about")))
                .holds(command("base", say!("bases-choose"), choose))
                .holds(move || {
                    let words = heights.get();
                    (!words.is_empty()).then(|| {
                        View::nothing()
                            .and(element("p").class("choice-more").mark("data-heights").holds(words))
                            .and(command("heights-remove", say!("heights-remove"), move || {
                                store.act(App::remove_heights)
                            }))
                    })
                }),
        )
        .and(
            element("input")
                .with("id", BASE_INPUT)
                .class("visually-hidden")
                .with("type", "file")
                .mark("multiple")
                .with("accept", ACCEPTED)
                .with("tabindex", "-1")
                .with("aria-hidden", "true")
                .on("change", move |event| store.read_bases(files::chosen_bases(&event))),
        )
}

/// The panel.
pub fn bases(store: Store) -> View {
    element("dialog")
        .with("id", BASE)
        .class("base")
        .with("aria-labelledby", "base-title")
        .on("close", move |_| store.let_base_go())
        .holds(move || {
            store
                .opening
                .with(|opening| opening.as_ref().map(|opening| card(store, opening)))
        })
        .into()
}

fn card(store: Store, opening: &Opening) -> View {
    let close = |words: &'static str| command("base-close", words, || document::set_open(BASE, false));
    let (stage, body, foot): (_, View, View) = match &opening.stage {
        Stage::Reading(percent) => (
            "reading",
            element("progress")
                .with("max", "100")
                .with("aria-label", say!("bases-progress"))
                .property("value", percent.to_string())
                .into(),
            close(say!("bases-cancel")).into(),
        ),
        Stage::Refused(list) => (
            "refused",
            View::nothing().and(faults(list)).and(again(store, opening)),
            close(say!("bases-close")).into(),
        ),
        Stage::Read(opened) => (
            "read",
            View::nothing()
                .and(choices(store, opened))
                .and((!opened.base.faults.is_empty()).then(|| faults(&opened.base.faults)))
                .and((opened.can_be_read_again() || opening.is_table()).then(|| again(store, opening))),
            View::nothing()
                .and(
                    (opened.base.grid.is_some() || !opened.base.features.is_empty()).then(|| {
                        what_is_taken(opened).and(
                            command("base-take", say!("bases-take"), move || store.take_base())
                                .with("aria-disabled", opened.preview.is_err().to_string()),
                        )
                    }),
                )
                .and(close(say!("bases-cancel"))),
        ),
    };
    element("div")
        .class("base-card")
        .with("data-base", stage)
        .holds(
            element("header")
                .holds(
                    element("h2")
                        .with("id", "base-title")
                        .with("tabindex", "-1")
                        .holds(say!("bases-title")),
                )
                .holds(
                    element("p")
                        .with("role", "status")
                        .mark("data-base-words")
                        .holds(opening.words()),
                ),
        )
        .holds(element("div").class("base-body").holds(body))
        .holds(element("footer").holds(foot))
        .into()
}

/// What is wrong, each with its place.
fn faults(list: &[FaultSaid]) -> View {
    let one = |fault: &FaultSaid| {
        element("li")
            .holds(element("b").holds(fault.place.clone()))
            .holds(element("span").holds(fault.words.clone()))
    };
    element("section")
        .class("base-faults")
        .with("aria-labelledby", "base-faults-title")
        .holds(
            element("h3")
                .with("id", "base-faults-title")
                .holds(say!("bases-faults")),
        )
        .holds(
            element("ul")
                .mark("data-base-faults")
                .holds(list.iter().map(one).collect::<View>()),
        )
        .into()
}

/// What can be typed to read the file in another way.
fn again(store: Store, opening: &Opening) -> View {
    let field = |(place, words): (usize, &'static str)| {
        let typed = move |event| {
            store.opening.update(|opening| {
                let again = opening.as_mut().and_then(|opening| opening.again.get_mut(place));
                if let Some(text) = again {
                    *text = value_of(&event);
                }
            });
        };
        element("label")
            .class("base-field")
            .holds(element("span").holds(words))
            .holds(
                element("input")
                    .with("type", "text")
                    .with("data-base-again", place)
                    .property("value", opening.again.get(place).cloned())
                    .on("change", typed),
            )
    };
    let words = [say!("bases-again-system"), say!("bases-again-x"), say!("bases-again-y")];
    let count = if opening.is_table() { 3 } else { 1 };
    let read = move || {
        let again = store
            .opening
            .with_untracked(|opening| opening.as_ref().map(|opening| opening.again.clone()));
        store.read_base(again.unwrap_or_default());
    };
    element("section")
        .class("base-again")
        .with("aria-labelledby", "base-again-title")
        .holds(element("h3").with("id", "base-again-title").holds(say!("bases-again")))
        .holds(element("p").class("choice-more").holds(say!("bases-again-about")))
        .holds(words.into_iter().enumerate().take(count).map(field).collect::<View>())
        .holds(command("base-again", say!("bases-again-read"), read))
        .into()
}
