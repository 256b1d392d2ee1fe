//! The alternatives as small plans, and what can be done with the one in view.

use crate::browser::view::{View, button, command, element};
use hobnail_core::plan::AlternativeId;
use hobnail_core::say;

use super::drawn::drawn;
use super::fields::fields;
use crate::app::App;
use crate::app::alternatives::AlternativeShown;
use crate::app::store::Store;
use crate::live::memo;

/// What can be done with the alternative in view.
type Command = (&'static str, &'static str, fn(&mut App));

fn commands() -> [Command; 3] {
    [
        ("copy", say!("panels-alternative-copy"), App::copy_alternative),
        (
            "earlier",
            say!("panels-alternative-earlier"),
            App::move_alternative_earlier,
        ),
        ("delete", say!("panels-delete"), App::delete_alternative),
    ]
}

/// The menu of the alternatives.
pub fn alternatives(store: Store) -> View {
    let ids = memo(move || {
        store
            .alternatives
            .with(|all| all.iter().map(|one| one.id).collect::<Vec<_>>())
    });
    // The button stays the same while what it shows changes, so that it keeps the keyboard.
    let small = move |id: AlternativeId| {
        let shown = memo(move || {
            store
                .alternatives
                .with(|all| all.iter().find(|one| one.id == id).cloned())
        });
        let is_shown = move || shown.with(|one| one.as_ref().is_some_and(|one| one.is_shown).to_string());
        let inside = move |AlternativeShown {
                               drawing, name, about, ..
                           }| {
            View::nothing()
                .and(drawn(drawing))
                .and(element("span").class("choice-name").holds(name))
                .and(element("span").class("choice-more").holds(about))
        };
        button()
            .class("small-plan")
            .with("data-alternative", id.to_string())
            .with("aria-pressed", is_shown)
            .on_press(move || store.act(|app| app.show_alternative(id)))
            .holds(move || shown.get().map(inside))
            .into()
    };
    let command = |(name, words, work): Command| {
        command()
            .with("data-command", ["alternative-", name].concat())
            .on_press(move || store.act(work))
            .holds(words)
    };
    super::menu("alternatives", super::summary(say!("panels-alternatives")))
        .holds(
            element("div")
                .class("menu-card")
                .holds(
                    element("p")
                        .class("choice-more")
                        .holds(say!("panels-alternatives-about")),
                )
                .holds(
                    element("div")
                        .class("small-plans")
                        .holds(move || ids.get().into_iter().map(small).collect::<Vec<View>>()),
                )
                .holds(
                    element("div")
                        .class("to-draw")
                        .holds(fields(store, |forms| &forms.alternative))
                        .holds(element("div").class("group").holds(commands().map(command)))
                        .holds(
                            element("p")
                                .class("choice-more")
                                .holds(say!("panels-alternatives-files")),
                        ),
                ),
        )
        .into()
}
