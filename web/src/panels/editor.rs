//! The editors: one view for the lines of all of them, with one field for numbers.
//!
//! Lines are plain data and drawn anew whole: lines that follow values of their own would each be compiled apart.

use crate::browser::view::{self, View, element, is_checked, value_of};
use hobnail_core::say;

use super::drawn::drawn;
use crate::app::editor::lines::{Key, Kind, Line};
use crate::app::editor::{Change, EditorShown, EditorsShown};
use crate::app::store::{CUT, Store};

/// The editor beside the rail; nothing where nothing is edited.
pub fn editor(store: Store) -> View {
    let name = say!("panels-editor");
    panel(store, ["editor", "palette editor", name], |shown| &shown.editor)
}

/// The cut through a street, over the foot of the drawing.
pub fn cut_panel(store: Store) -> View {
    let name = say!("panels-cut");
    panel(store, [CUT, "cut-panel editor", name], |shown| &shown.cut)
}

fn panel(store: Store, [id, class, label]: [&'static str; 3], of: fn(&EditorsShown) -> &EditorShown) -> View {
    let shown = move || store.editors.with(|shown| of(shown).clone());
    let leave = move || store.act(|app| app.point_line(None));
    element("section")
        .with("id", id)
        .class(class)
        .with("aria-label", label)
        .on("pointerleave", move |_| leave())
        .on("focusout", move |_| leave())
        .holds(move || {
            let EditorShown {
                name,
                drawing,
                lines,
                profile,
            } = shown();
            let lines: Vec<View> = lines.into_iter().map(|held| line(store, held)).collect();
            View::nothing().and(drawing.map(drawn)).and(profile.map(drawn)).and(
                element("div")
                    .class("editor-lines")
                    .with("data-editor", name)
                    .holds(lines),
            )
        })
        .into()
}

/// A button that does something in the editors.
#[must_use]
pub fn command(store: Store, key: Key, words: &str) -> View {
    button(store, &Line::command(key, words), Change::Pick(1), words.to_owned())
}

/// A button of a line: its own, or one that steps its number.
fn button(store: Store, line: &Line, change: Change, words: String) -> View {
    let key = line.key;
    let is_step = matches!(change, Change::Step(_));
    let class = if is_step || line.is_cell {
        "command sign"
    } else {
        "command"
    };
    let label = match change {
        Change::Step(steps) if steps < 0 => Some(say!("panels-less", what = line.label)),
        Change::Step(_) => Some(say!("panels-more", what = line.label)),
        _ => line.is_cell.then(|| line.label.clone()),
    };
    let is_on = line.is_on.map(|is_on| is_on.to_string());
    view::button()
        .with("id", (!is_step).then(|| key.id()))
        .class(class)
        .with("aria-label", label)
        .with("aria-disabled", line.is_off.to_string())
        .with("aria-expanded", is_on)
        .on_press(move || store.edit(key, &change))
        .holds(words)
        .into()
}

/// What is typed, ticked or slid.
fn input(store: Store, line: &Line) -> View {
    let (key, kind) = (line.key, line.kind);
    let (sort, class, mode) = match kind {
        Kind::Check => ("checkbox", "", None),
        Kind::Slider => ("range", "", None),
        Kind::Number => ("text", "short", Some("decimal")),
        _ => ("text", "long", None),
    };
    let most = (kind == Kind::Slider).then_some("1000");
    let spoken = most.map(|_| line.more.clone());
    let changed = move |value: String, is_on: bool| {
        let change = match kind {
            Kind::Check => Change::Pick(usize::from(is_on)),
            _ => Change::Text(value),
        };
        store.edit(key, &change);
    };
    let slid = move |event| {
        if kind == Kind::Slider {
            changed(value_of(&event), false);
        }
    };
    element("input")
        .with("id", key.id())
        .with("type", sort)
        .class(class)
        .with("inputmode", mode)
        .with("max", most)
        .with("autocomplete", "off")
        .with("aria-invalid", (!line.refused.is_empty()).to_string())
        .with("aria-valuetext", spoken)
        .property("value", line.value.clone())
        .property("checked", line.is_on == Some(true))
        .on("change", move |event| changed(value_of(&event), is_checked(&event)))
        .on("input", slid)
        .into()
}

fn select(store: Store, line: &Line) -> View {
    let key = line.key;
    let option = |(place, words): (usize, &String)| {
        let place = place.to_string();
        element("option")
            .with("value", place.clone())
            .with("selected", place == line.value)
            .holds(words.clone())
            .into()
    };
    let options: Vec<View> = line.options.iter().enumerate().map(option).collect();
    element("select")
        .with("id", key.id())
        .property("value", line.value.clone())
        .on("change", move |event| {
            store.edit(key, &Change::Pick(value_of(&event).parse().unwrap_or_default()))
        })
        .holds(options)
        .into()
}

/// One line.
fn line(store: Store, line: Line) -> View {
    let key = line.key;
    let (class, control) = match line.kind {
        Kind::Title => ("title", None),
        Kind::Words => ("words", None),
        Kind::Warning => ("warning", None),
        Kind::Fact => ("fact", None),
        Kind::Number => ("number", Some(input(store, &line))),
        Kind::Text => ("text", Some(input(store, &line))),
        Kind::Choice => ("choice-of", Some(select(store, &line))),
        Kind::Check => ("check", Some(input(store, &line))),
        Kind::Slider => ("slider", Some(input(store, &line))),
        Kind::Command => {
            let words = if line.is_cell { &line.value } else { &line.label };
            ("does", Some(button(store, &line, Change::Pick(1), words.clone())))
        }
    };
    let step = |steps: i8, sign: &str| {
        (line.kind == Kind::Number).then(|| button(store, &line, Change::Step(steps), sign.to_owned()))
    };
    let (less, more) = (step(-1, "−"), step(1, "+"));
    let name: Option<View> = match line.kind {
        Kind::Command => None,
        _ if control.is_some() => Some(element("label").with("for", key.id()).holds(line.label).into()),
        _ => Some(element("p").holds(line.label).into()),
    };
    let value = (line.kind == Kind::Fact).then_some(line.value);
    let class = if line.is_cell {
        class.to_owned() + " is-cell"
    } else {
        class.to_owned()
    };
    let point = move || store.act(|app| app.point_line(Some(key)));
    element("div")
        .class(class)
        .on("pointerenter", move |_| point())
        .on("focusin", move |_| point())
        .holds(name)
        .holds(less)
        .holds(control)
        .holds(more)
        .holds(element("strong").holds(value))
        .holds(element("span").class("unit").holds(line.more))
        .holds(element("span").class("hint").holds(line.hint))
        .holds(
            element("span")
                .class("refused")
                .with("role", "alert")
                .holds(line.refused),
        )
        .into()
}
