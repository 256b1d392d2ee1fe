//! The column of figures: a number and its name to a line, and its basis below it on request.

use crate::browser::view::{Element, View, button, element};
use hobnail_core::say;

use super::basis::{basis_tree, is_open, points_out};
use super::enlarged::{enlarge, enlarged};
use super::land_bar::land_bar_panel;
use super::legend::legend;
use super::measured::measured_panel;
use super::notes::notes;
use crate::app::figures::{Heading, Row, headings, short_title};
use crate::app::mode::Mode;
use crate::app::store::{COLUMN, Store};
use crate::app::words::sentence_case;
use crate::browser::words::lowercase;
use crate::live::{live_here, memo};

/// The column.
pub fn column(store: Store) -> View {
    let headings = store.with(|app| headings(app.study()));
    let under = move |heading: Heading| under(store, heading);
    element("aside")
        .with("id", COLUMN)
        .class("column")
        .with("aria-labelledby", "figures-title")
        .holds(super::remarks::answering(store))
        .holds(
            element("div")
                .class("column-head")
                .holds(element("h2").with("id", "figures-title").holds(say!("panels-figures")))
                .holds(element("p").class("column-note").holds(say!("panels-figures-note"))),
        )
        .holds(move || (store.mode.get() == Mode::Projector).then(|| enlarged(store)))
        .holds(measured_panel(store))
        .holds(land_bar_panel(store))
        .holds(figures(store, None))
        .holds(headings.into_iter().map(under).collect::<View>())
        .holds(super::remarks::remarks(store))
        .holds(notes(store))
        .holds(legend())
        .holds(element("p").class("caution").holds(say!("panels-caution")))
        .into()
}

/// A heading that opens, and the figures under it.
fn under(store: Store, heading: Heading) -> View {
    let is_open = memo(move || store.open_headings.with(|open| open.contains(&heading)));
    let id = format!("under-{}", lowercase(heading.words()).replace(' ', "-"));
    let controls = id.clone();
    element("section")
        .class("under")
        .with("data-heading", heading.words())
        .holds(
            element("h3").holds(
                button()
                    .class("heading-line")
                    .with("aria-expanded", move || is_open.get().to_string())
                    .with("aria-controls", controls)
                    .on_press(move || store.toggle_heading(heading))
                    .holds(heading.words()),
            ),
        )
        .holds(
            element("div")
                .with("id", id)
                .holds(move || is_open.get().then(|| figures(store, Some(heading)))),
        )
        .into()
}

/// The figures of the first level, or those under a heading.
fn figures(store: Store, heading: Option<Heading>) -> View {
    let ids = memo(move || {
        store.figures.with(|rows| {
            let here = rows.iter().filter(|row| row.heading == heading);
            here.map(|row| row.id.clone()).collect::<Vec<_>>()
        })
    });
    element("ul")
        .class("figures")
        .class_if("is-further", heading.is_some())
        .holds(move || ids.get().into_iter().map(|id| figure(store, id)).collect::<View>())
        .into()
}

fn figure(store: Store, id: String) -> View {
    let wanted = id.clone();
    let row = memo(move || {
        let found = |rows: &Vec<Row>| rows.iter().find(|row| row.id == wanted).cloned();
        store.figures.with(found)
    });
    let is_open = is_open(store, id.clone());
    let toggled = id.clone();
    let basis_id = format!("basis-{}", id.replace('.', "-"));
    let controls = basis_id.clone();
    let is_table = memo(move || row.with(|row| row.as_ref().is_some_and(|row| row.is_table)));
    let has_place = memo(move || row.with(|row| row.as_ref().is_some_and(|row| row.has_place)));
    let is_asked = id == "homes.of_asked";
    let shown = live_here(id.clone());
    let line = element("li")
        .class("figure")
        .class_if("is-table", is_table)
        .class_if("is-open", is_open)
        .class_if("has-place", move || has_place.get() || is_asked)
        .with("data-figure", id.clone());
    points_out(store, id, line)
        .holds(
            button()
                .class("figure-line")
                .with("aria-expanded", move || is_open.get().to_string())
                .with("aria-controls", controls)
                .on_press(move || store.toggle_basis(&toggled))
                .holds(
                    element("span")
                        .class("figure-title")
                        .holds(move || row.get().map(|row| title(&row))),
                )
                .holds(element("span").class("figure-value").mark("data-value").holds(move || {
                    row.get().map(|row| {
                        parts(&row.value)
                            .map(|(class, words)| element("span").class(class).holds(words))
                            .collect::<View>()
                    })
                }))
                .holds(
                    element("span")
                        .class("figure-range")
                        .mark("data-range")
                        .holds(move || row.get().and_then(|row| row.range)),
                )
                .holds(move || row.get().and_then(|row| row.change).map(change))
                .holds(move || {
                    row.get()
                        .and_then(|row| row.reason)
                        .map(|reason| element("span").class("figure-reason").holds(reason))
                }),
        )
        .holds(move || {
            has_place.get().then(|| {
                button()
                    .class("command show")
                    .with("aria-label", move || {
                        row.get().map(|row| say!("panels-show-what", what = row.title))
                    })
                    .on_press(move || store.act(|app| app.go_to_figure(&shown.get_untracked())))
                    .holds(say!("panels-show"))
            })
        })
        .holds(move || is_open.get().then(|| enlarge(store, shown.get_untracked())))
        .holds(is_asked.then(|| super::program::program_button(store, say!("panels-program"))))
        .holds(move || {
            is_open
                .get()
                .then(|| table(row.get().map(|row| row.cells).unwrap_or_default()))
        })
        .holds(
            element("div")
                .with("id", basis_id)
                .class("basis")
                .with("hidden", move || !is_open.get())
                .holds(move || is_open.get().then(|| basis_tree(store, shown.get_untracked()))),
        )
        .into()
}

/// What the figure is called here: on the first level there is little room.
fn title(row: &Row) -> String {
    if row.heading.is_none() {
        short_title(row)
    } else {
        sentence_case(&row.title)
    }
}

/// What has changed since the marked moment.
pub(super) fn change((words, is_clear): (String, bool)) -> View {
    element("span")
        .class("figure-change")
        .class_if("is-clear", is_clear)
        .mark("data-change")
        .holds(words)
        .into()
}

/// The rows of a table, below its title.
fn table(cells: Vec<(String, String)>) -> Option<Element> {
    (!cells.is_empty()).then(|| {
        let lines = cells.into_iter().map(|(label, value)| {
            element("tr")
                .holds(element("th").with("scope", "row").holds(sentence_case(&label)))
                .holds(element("td").holds(value))
        });
        element("table")
            .class("figure-table")
            .holds(element("tbody").holds(lines.collect::<View>()))
    })
}

/// A number in words as its parts: the number itself is set larger than what stands around it.
pub(super) fn parts(value: &str) -> impl Iterator<Item = (&'static str, String)> + use<> {
    let begins = value
        .find(|letter: char| letter.is_ascii_digit() || letter == '−' || letter == '—')
        .unwrap_or_default();
    let rest = value.get(begins..).unwrap_or_default();
    let ends = rest.find(' ').unwrap_or(rest.len());
    let (number, after) = rest.split_at_checked(ends).unwrap_or((rest, ""));
    let before = value.get(..begins).unwrap_or_default();
    let all = [
        ("figure-words", before),
        ("figure-number", number),
        ("figure-words", after),
    ];
    let held: Vec<_> = all.map(|(class, words)| (class, words.to_owned())).into();
    held.into_iter().filter(|(_, words)| !words.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_number_is_told_from_the_words_around_it() {
        let of = |value: &str| parts(value).map(|(_, words)| words).collect::<Vec<_>>();
        assert_eq!(of("about 1,760 people"), ["about ", "1,760", " people"]);
        assert_eq!(of("98%"), ["98%"]);
        assert_eq!(of("—"), ["—"]);
        assert_eq!(of("none"), ["none"]);
    }
}
