//! Fields to type into and choose from: one line each, with its words before it.

use crate::browser::view::{Event, View, command, element, is_checked, value_of};
use hobnail_core::say;

use super::remarks::TABLES;
use crate::app::App;
use crate::app::fields::{Field, FieldShown, Value};
use crate::app::forms::Forms;
use crate::app::store::{Store, WORDS};
use crate::browser::document;
use crate::live::memo;

/// Which fields of the forms are meant.
pub type Of = fn(&Forms) -> &Vec<FieldShown>;

/// The lines of these fields.
pub fn fields(store: Store, of: Of) -> View {
    let ids = memo(move || {
        store
            .forms
            .with(|forms| of(forms).iter().map(|shown| shown.field).collect::<Vec<_>>())
    });
    let lines = move || {
        let ids = ids.get();
        ids.into_iter()
            .map(|field| line(store, of, field))
            .collect::<Vec<View>>()
    };
    element("div").class("form").holds(lines).into()
}

fn line(store: Store, of: Of, field: Field) -> View {
    let shown = memo(move || {
        let found = |forms: &Forms| of(forms).iter().find(|shown| shown.field == field).cloned();
        store.forms.with(found)
    });
    let Some(first) = shown.get_untracked() else {
        return View::nothing();
    };
    let value = move || shown.with(|shown| shown.as_ref().map(|shown| shown.value.clone()));
    let text = move || match value() {
        Some(Value::Text(text) | Value::Number(text, _)) => text,
        _ => String::new(),
    };
    let set = move |text: String| store.act(|app| app.set_field(field, &text));
    let typed = move |event: Event| {
        set(value_of(&event));
        document::put_back(&event, &text());
    };
    let control: View = match first.value {
        Value::Text(_) | Value::Number(..) => {
            let kind = if matches!(first.value, Value::Text(_)) {
                "text"
            } else {
                "number"
            };
            // What somebody said takes several lines, as it was said.
            let is_long = field == Field::Text;
            let names = matches!(field, Field::Author | Field::AlternativeTable).then_some(TABLES);
            element(if is_long { "textarea" } else { "input" })
                .with("id", is_long.then_some(WORDS))
                .with("type", (!is_long).then_some(kind))
                .with("step", "any")
                .with("list", names)
                .property("value", text)
                .on("change", typed)
                .into()
        }
        Value::Flag(_) => {
            let is_on = move || value() == Some(Value::Flag(true));
            let changed = move |event| set(is_checked(&event).to_string());
            element("input")
                .with("type", "checkbox")
                .property("checked", is_on)
                .on("change", changed)
                .into()
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
                element("option")
                    .with("value", place.to_string())
                    .property("selected", move || chosen() == place)
                    .holds(words)
                    .into()
            };
            let options = move || options.get().into_iter().enumerate().map(option).collect::<Vec<View>>();
            element("select")
                .on("change", move |event| set(value_of(&event)))
                .holds(options)
                .into()
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
    element("div")
        .class("form-line")
        .holds(
            element("label")
                .class("form-field")
                .class_if("is-flag", matches!(first.value, Value::Flag(_)))
                .with("data-field", name)
                .holds(element("span").class("form-words").holds(words))
                .holds(control)
                .holds(element("span").class("form-unit").holds(unit)),
        )
        .holds(element("span").class("form-drawn").holds(move || beside(0)))
        .holds(element("span").class("form-left").holds(move || beside(1)))
        .holds(phase_commands(store, field))
        .into()
}

/// What can be done with a phase besides naming it.
fn phase_commands(store: Store, field: Field) -> Option<View> {
    let Field::PhaseName(id) = field else { return None };
    let earlier = move |_| store.act(|app: &mut App| app.move_phase_earlier(id));
    let delete = move |_| store.act(|app: &mut App| app.delete_phase(id));
    let commands = View::nothing()
        .and(
            command()
                .with("data-phase-earlier", id.to_string())
                .on("click", earlier)
                .holds(say!("panels-phase-earlier")),
        )
        .and(
            command()
                .with("data-phase-delete", id.to_string())
                .on("click", delete)
                .holds(say!("panels-delete")),
        );
    Some(commands)
}
