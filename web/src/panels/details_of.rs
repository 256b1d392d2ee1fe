//! What is selected, or is drawn next, in its own fields.

use crate::browser::view::{View, command, element};
use hobnail_core::say;

use super::fields::fields;
use crate::app::App;
use crate::app::store::Store;
use crate::live::memo;

/// The details, with a way to delete what they speak of where nothing else stands beside them.
pub fn details_of(store: Store, can_delete: bool) -> View {
    let title = memo(move || {
        store.forms.with(|forms| {
            if forms.is_selected || forms.details.is_empty() {
                forms.title.to_owned()
            } else {
                say!("panels-next", what = forms.title)
            }
        })
    });
    let about = memo(move || store.forms.with(|forms| forms.about.clone()));
    let is_selected = memo(move || store.forms.with(|forms| forms.is_selected));
    let delete = move || {
        let button = command()
            .mark("data-details-delete")
            .on_press(move || store.act(App::delete))
            .holds(say!("panels-delete"));
        (can_delete && is_selected.get()).then_some(button)
    };
    element("div")
        .class("details")
        .mark("data-details")
        .holds(
            element("p")
                .class("details-title")
                .holds(element("span").class("palette-title").holds(title))
                .holds(
                    element("span")
                        .class("choice-more")
                        .mark("data-details-about")
                        .holds(about),
                ),
        )
        .holds(fields(store, |forms| &forms.details))
        .holds(delete)
        .into()
}

/// The details of what is selected, in a palette of their own; nothing where nothing is.
pub fn details_of_selected(store: Store) -> View {
    let is_selected = memo(move || store.forms.with(|forms| forms.is_selected));
    let shown = move || {
        let card = || {
            element("div")
                .class("palette")
                .with("data-palette", "details")
                .holds(details_of(store, false))
        };
        is_selected.get().then(card)
    };
    View::from(shown)
}
