//! Fields to type into and choose from: one line each, with its words before it.

use hobnail_core::say;
use leptos::prelude::*;

use super::remarks::TABLES;
use crate::app::App;
use crate::app::fields::{Field, FieldShown, Value};
use crate::app::forms::Forms;
use crate::app::live::memo;
use crate::app::store::Store;
use crate::browser::document;

/// Which fields of the forms are meant.
pub type Of = fn(&Forms) -> &Vec<FieldShown>;

/// The lines of these fields.
pub fn fields(store: Store, of: Of) -> AnyView {
    let ids = memo(move || {
        store
            .forms
            .with(|forms| of(forms).iter().map(|shown| shown.field).collect::<Vec<_>>())
    });
    let lines = move || {
        let ids = ids.get();
        ids.into_iter()
            .map(|field| line(store, of, field))
            .collect::<Vec<AnyView>>()
    };
    view! { <div class="form">{lines}</div> }.into_any()
}

fn line(store: Store, of: Of, field: Field) -> AnyView {
    let shown = memo(move || {
        let found = |forms: &Forms| of(forms).iter().find(|shown| shown.field == field).cloned();
        store.forms.with(found)
    });
    let Some(first) = shown.get_untracked() else {
        return ().into_any();
    };
    let value = move || shown.with(|shown| shown.as_ref().map(|shown| shown.value.clone()));
    let text = move || match value() {
        Some(Value::Text(text) | Value::Number(text, _)) => text,
        _ => String::new(),
    };
    let set = move |text: String| store.act(|app| app.set_field(field, &text));
    let typed = move |event: leptos::ev::Event| {
        set(event_target_value(&event));
        document::put_back(&event, &text());
    };
    let control = match first.value {
        Value::Text(_) | Value::Number(..) => {
            let kind = if matches!(first.value, Value::Text(_)) {
                "text"
            } else {
                "number"
            };
            let names = matches!(field, Field::Author | Field::AlternativeTable).then_some(TABLES);
            view! { <input type=kind step="any" list=names prop:value=text on:change=typed/> }.into_any()
        }
        Value::Flag(_) => {
            let is_on = move || value() == Some(Value::Flag(true));
            let changed = move |event| set(event_target_checked(&event).to_string());
            view! { <input type="checkbox" prop:checked=is_on on:change=changed/> }.into_any()
        }
        Value::Choice(..) => {
            let options = memo(move || match value() {
                Some(Value::Choice(options, _)) => options,
                _ => Vec::new(),
            });
            let chosen = move || match value() {
                Some(Value::Choice(_, chosen)) => chosen,
                _ => 0,
            };
            let option = move |(place, words): (usize, String)| {
                view! { <option value=place.to_string() prop:selected=move || chosen() == place>{words}</option> }
                    .into_any()
            };
            let options = move || {
                options
                    .get()
                    .into_iter()
                    .enumerate()
                    .map(option)
                    .collect::<Vec<AnyView>>()
            };
            view! { <select on:change=move |event| set(event_target_value(&event))>{options}</select> }.into_any()
        }
    };
    let unit = move || match value() {
        Some(Value::Number(_, unit)) => unit,
        _ => "",
    };
    let beside =
        move |place: usize| shown.with(|shown| shown.as_ref().and_then(|shown| shown.beside.get(place).cloned()));
    let words = first.words;
    let name = words.clone();
    view! {
        <div class="form-line">
            <label class="form-field" class:is-flag=matches!(first.value, Value::Flag(_)) data-field=name>
                <span class="form-words">{words}</span>
                {control}
                <span class="form-unit">{unit}</span>
            </label>
            <span class="form-drawn">{move || beside(0)}</span>
            <span class="form-left">{move || beside(1)}</span>
            {phase_commands(store, field)}
        </div>
    }
    .into_any()
}

/// What can be done with a phase besides naming it.
fn phase_commands(store: Store, field: Field) -> Option<AnyView> {
    let Field::PhaseName(id) = field else { return None };
    let earlier = move |_| store.act(|app: &mut App| app.move_phase_earlier(id));
    let delete = move |_| store.act(|app: &mut App| app.delete_phase(id));
    let commands = view! {
        <button type="button" class="command" data-phase-earlier=id.to_string() on:click=earlier>{say!("panels-phase-earlier")}</button>
        <button type="button" class="command" data-phase-delete=id.to_string() on:click=delete>{say!("panels-delete")}</button>
    };
    Some(commands.into_any())
}
