//! Figures enlarged for the back of the room: at most three, over the drawing.

use crate::browser::view::{View, button, element};
use hobnail_core::say;

use super::column::{change, parts};
use crate::app::figures::{Row, short_title};
use crate::app::store::{ENLARGED, Store};
use crate::live::memo;

/// The enlarged figures; nothing where none is.
pub fn enlarged(store: Store) -> View {
    let one = move |row: Row| {
        let words = short_title(&row);
        let id = row.id.clone();
        let label = say!("panels-no-longer-enlarged", what = words);
        element("li")
            .class("enlarged-figure")
            .with("data-enlarged", id)
            .holds(element("p").class("enlarged-title").holds(words))
            .holds(
                element("p").class("enlarged-value").holds(
                    parts(&row.value)
                        .map(|(class, words)| element("span").class(class).holds(words))
                        .collect::<View>(),
                ),
            )
            .holds(element("p").class("figure-range").holds(row.range).holds(row.reason))
            .holds(row.change.map(change))
            .holds(
                button()
                    .class("command close")
                    .with("aria-label", label)
                    .on_press(move || store.toggle_enlarged(&row.id))
                    .holds("×"),
            )
    };
    View::from(move || {
        let rows = store.enlarged.get();
        (!rows.is_empty()).then(|| {
            element("section")
                .with("id", ENLARGED)
                .class("enlarged")
                .with("aria-label", say!("panels-enlarged"))
                .holds(element("ul").holds(rows.into_iter().map(one).collect::<View>()))
        })
    })
}

/// The command that enlarges a figure whose basis stands open.
pub fn enlarge(store: Store, figure: String) -> View {
    let id = figure.clone();
    let is_enlarged = memo(move || store.enlarged.with(|rows| rows.iter().any(|row| row.id == id)));
    button()
        .class("command enlarge")
        .with("aria-pressed", move || is_enlarged.get().to_string())
        .on_press(move || store.toggle_enlarged(&figure))
        .holds(say!("panels-enlarge"))
        .into()
}
