//! What is selected, or is drawn next, in its own fields.

use hobnail_core::say;
use leptos::prelude::*;

use super::fields::fields;
use crate::app::App;
use crate::app::live::memo;
use crate::app::store::Store;

/// The details, with a way to delete what they speak of where nothing else stands beside them.
pub fn details_of(store: Store, can_delete: bool) -> AnyView {
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
        let button = view! {
            <button type="button" class="command" data-details-delete on:click=move |_| store.act(App::delete)>{say!("panels-delete")}</button>
        };
        (can_delete && is_selected.get()).then(|| button.into_any())
    };
    view! {
        <div class="details" data-details>
            <p class="details-title"><span class="palette-title">{title}</span> <span class="choice-more" data-details-about>{about}</span></p>
            {fields(store, |forms| &forms.details)}
            {delete}
        </div>
    }
    .into_any()
}

/// The details of what is selected, in a palette of their own; nothing where nothing is.
pub fn details_of_selected(store: Store) -> AnyView {
    let is_selected = memo(move || store.forms.with(|forms| forms.is_selected));
    let shown = move || {
        let card = || view! { <div class="palette" data-palette="details">{details_of(store, false)}</div> }.into_any();
        is_selected.get().then(card)
    };
    view! { {shown} }.into_any()
}
