//! The editors: one view for the lines of all of them, with one field for numbers.
//!
//! Lines are plain data and drawn anew whole: views that follow signals of their own would each be compiled apart.

use hobnail_core::say;
use leptos::prelude::*;

use super::drawn::drawn;
use crate::app::editor::lines::{Key, Kind, Line};
use crate::app::editor::{Change, EditorShown, EditorsShown};
use crate::app::store::Store;

/// The editor beside the rail; nothing where nothing is edited.
#[component]
pub fn Editor(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    panel(store, "palette editor", say!("panels-editor"), |shown| &shown.editor)
}

/// The cut through a street, over the foot of the drawing.
#[component]
pub fn CutPanel(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    panel(store, "cut-panel editor", say!("panels-cut"), |shown| &shown.cut)
}

fn panel(store: Store, class: &'static str, label: &'static str, of: fn(&EditorsShown) -> &EditorShown) -> AnyView {
    let shown = move || store.editors.with(|shown| of(shown).clone());
    let leave = move || store.act(|app| app.point_line(None));
    view! {
        <section
            class=class
            aria-label=label
            on:pointerleave=move |_| leave()
            on:focusout=move |_| leave()
        >
            {move || {
                let EditorShown { name, drawing, lines } = shown();
                let lines: Vec<AnyView> = lines.into_iter().map(|held| line(store, held)).collect();
                view! { {drawing.map(drawn)}<div class="editor-lines" data-editor=name>{lines}</div> }
            }}
        </section>
    }
    .into_any()
}

/// A button that does something in the editors.
#[must_use]
pub fn command(store: Store, key: Key, words: &str) -> AnyView {
    button(store, &Line::command(key, words), Change::Pick(1), words.to_owned())
}

/// A button of a line: its own, or one that steps its number.
fn button(store: Store, line: &Line, change: Change, words: String) -> AnyView {
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
    view! {
        <button
            id=(!is_step).then(|| key.id())
            type="button"
            class=class
            aria-label=label
            aria-disabled=line.is_off.to_string()
            aria-expanded=is_on
            on:click=move |_| store.edit(key, &change)
        >
            {words}
        </button>
    }
    .into_any()
}

/// What is typed, ticked or slid.
fn input(store: Store, line: &Line) -> AnyView {
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
    view! {
        <input
            id=key.id()
            type=sort
            class=class
            inputmode=mode
            max=most
            autocomplete="off"
            aria-invalid=(!line.refused.is_empty()).to_string()
            aria-valuetext=spoken
            prop:value=line.value.clone()
            prop:checked=line.is_on == Some(true)
            on:change=move |event| changed(event_target_value(&event), event_target_checked(&event))
            on:input=move |event| if kind == Kind::Slider { changed(event_target_value(&event), false) }
        />
    }
    .into_any()
}

fn select(store: Store, line: &Line) -> AnyView {
    let key = line.key;
    let option = |(place, words): (usize, &String)| {
        let place = place.to_string();
        view! { <option value=place.clone() selected=place == line.value>{words.clone()}</option> }.into_any()
    };
    let options: Vec<AnyView> = line.options.iter().enumerate().map(option).collect();
    view! {
        <select
            id=key.id()
            prop:value=line.value.clone()
            on:change=move |event| store.edit(key, &Change::Pick(event_target_value(&event).parse().unwrap_or_default()))
        >
            {options}
        </select>
    }
    .into_any()
}

/// One line.
fn line(store: Store, line: Line) -> AnyView {
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
    let name = match line.kind {
        Kind::Command => None,
        _ if control.is_some() => Some(view! { <label for=key.id()>{line.label}</label> }.into_any()),
        _ => Some(view! { <p>{line.label}</p> }.into_any()),
    };
    let value = (line.kind == Kind::Fact).then_some(line.value);
    let class = if line.is_cell {
        class.to_owned() + " is-cell"
    } else {
        class.to_owned()
    };
    let point = move || store.act(|app| app.point_line(Some(key)));
    view! {
        <div class=class on:pointerenter=move |_| point() on:focusin=move |_| point()>
            {name}
            {less}
            {control}
            {more}
            <strong>{value}</strong>
            <span class="unit">{line.more}</span>
            <span class="hint">{line.hint}</span>
            <span class="refused" role="alert">{line.refused}</span>
        </div>
    }
    .into_any()
}
