//! A field for a number of drawing and editing, in the units of the page.

use crate::browser::view::{View, element, value_of};
use hobnail_core::say;

use crate::app::editing::Field;
use crate::app::store::Store;
use crate::live::memo;
use hobnail_core::plan::document::UnitSystem;

/// The unit of lengths, as a field shows it.
#[must_use]
pub fn length_unit(is_metric: bool) -> &'static str {
    if is_metric { "m" } else { say!("panels-feet") }
}

/// A field with its words and unit.
pub fn number_field(store: Store, field: Field, words: &'static str) -> View {
    let is_metric = memo(move || store.plan.with(|plan| plan.is_metric));
    let text = memo(move || {
        let units = if is_metric.get() {
            UnitSystem::Metric
        } else {
            UnitSystem::UsCustomary
        };
        store.hand.with(|hand| match field {
            Field::Radius => hand
                .selection
                .as_ref()
                .and_then(|shown| shown.radius.clone())
                .map(|(held, _)| held),
            _ => hand.choices.map(|choices| field.text(&choices.drawing, units)),
        })
    });
    let unit = move || {
        if field == Field::Turn {
            "°"
        } else {
            length_unit(is_metric.get())
        }
    };
    element("label")
        .class("number")
        .holds(element("span").holds(words))
        .holds(
            element("input")
                .with("type", "text")
                .with("inputmode", "decimal")
                .with("autocomplete", "off")
                .with("data-number", field.id())
                .property("value", text)
                .on("change", move |event| {
                    let typed = value_of(&event);
                    store.act(|app| app.type_into(field, &typed));
                }),
        )
        .holds(element("span").holds(unit))
        .into()
}
