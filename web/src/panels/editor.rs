//! The editors: one component for the lines of all of them, with one field for numbers.

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
    panel(store, "palette editor", |shown| &shown.editor)
}

/// The cut through a street, over the foot of the drawing.
#[component]
pub fn CutPanel(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    panel(store, "cut-panel editor", |shown| &shown.cut)
}

fn panel(store: Store, class: &'static str, of: fn(&EditorsShown) -> &EditorShown) -> AnyView {
    let lines = Memo::new(move |_| store.editors.with(|shown| of(shown).lines.clone()));
    let drawing = Memo::new(move |_| store.editors.with(|shown| of(shown).drawing.clone()));
    let name = Memo::new(move |_| store.editors.with(|shown| of(shown).name));
    let keys =
        Memo::new(move |_| lines.with(|lines| lines.iter().map(|line| (line.key, line.kind)).collect::<Vec<_>>()));
    view! {
        <section class=class data-editor=name hidden=move || name.get().is_empty() aria-label="Editor">
            {move || drawing.get().map(drawn)}
            <div class="editor-lines">
                {move || keys.get().into_iter().map(|(key, kind)| line(store, key, kind, lines)).collect_view()}
            </div>
        </section>
    }
    .into_any()
}

/// A button that does something in the editors.
#[must_use]
pub fn command(store: Store, key: Key, words: &'static str) -> AnyView {
    view! {
        <button id=key.id() type="button" class="command" on:click=move |_| store.edit(key, &Change::Pick(1))>
            {words}
        </button>
    }
    .into_any()
}

/// One line, which follows what the store shows under its key.
fn line(store: Store, key: Key, kind: Kind, lines: Memo<Vec<Line>>) -> AnyView {
    let held = Memo::new(move |_| {
        let found = |lines: &Vec<Line>| lines.iter().find(|line| line.key == key && line.kind == kind).cloned();
        lines.with(found).unwrap_or_default()
    });
    let of = move |part: fn(&Line) -> &String| move || held.with(|line| part(line).clone());
    let (label, more) = (of(|line| &line.label), of(|line| &line.more));
    // What was typed and refused stays to be mended: the field is written anew only when its value changes.
    let value = Memo::new(move |_| held.with(|line| line.value.clone()));
    let refused = of(|line| &line.refused);
    let hint = of(|line| &line.hint);
    let is_on = move || held.with(|line| line.is_on);
    let is_cell = held.with_untracked(|line| line.is_cell);
    let edit = move |change: Change| store.edit(key, &change);
    let point = move |key: Option<Key>| store.act(|app| app.point_line(key));
    let id = key.id();
    let named = id.clone();
    let name = move || view! { <label for=named.clone()>{label}</label> };
    let step = move |steps: i8, sign: &'static str, word: &'static str| {
        view! {
            <button
                type="button"
                class="command sign"
                aria-label=move || word.to_owned() + &label()
                on:click=move |_| edit(Change::Step(steps))
            >
                {sign}
            </button>
        }
    };
    let typed = move |kind: &'static str, is_short: bool| {
        view! {
            <input
                id=id.clone()
                type="text"
                class=kind
                inputmode=is_short.then_some("decimal")
                autocomplete="off"
                prop:value=value
                aria-invalid=move || (!refused().is_empty()).to_string()
                on:change=move |event| edit(Change::Text(event_target_value(&event)))
            />
        }
    };
    let class = match kind {
        Kind::Title => "title",
        Kind::Words => "words",
        Kind::Warning => "warning",
        Kind::Fact => "fact",
        Kind::Number => "number",
        Kind::Text => "text",
        Kind::Choice => "choice-of",
        Kind::Check => "check",
        Kind::Command => "does",
        Kind::Slider => "slider",
    };
    let id = key.id();
    let control = match kind {
        Kind::Title => view! { <h3 class="palette-title">{label}</h3> }.into_any(),
        Kind::Words | Kind::Warning => view! { <p>{label}</p> }.into_any(),
        Kind::Fact => view! { <span>{label}</span><strong data-value>{value}</strong> }.into_any(),
        Kind::Number => view! {
            {name()}
            {step(-1, "−", "Less: ")}
            {typed("short", true)}
            {step(1, "+", "More: ")}
            <span class="unit">{more}</span>
        }
        .into_any(),
        Kind::Text => view! { {name()}{typed("long", false)} }.into_any(),
        Kind::Choice => {
            let option = move |(place, words): (usize, String)| {
                view! { <option value=place selected=move || value.get() == place.to_string()>{words}</option> }
            };
            view! {
                {name()}
                <select id=id on:change=move |event| edit(Change::Pick(event_target_value(&event).parse().unwrap_or_default()))>
                    {move || held.with(|line| line.options.clone()).into_iter().enumerate().map(option).collect_view()}
                </select>
            }
            .into_any()
        }
        Kind::Check => view! {
            <input
                id=id
                type="checkbox"
                prop:checked=move || is_on() == Some(true)
                on:change=move |event| edit(Change::Pick(usize::from(event_target_checked(&event))))
            />
            {name()}
        }
        .into_any(),
        Kind::Command => view! {
            <button
                id=id
                type="button"
                class="command"
                class:sign=is_cell
                aria-label=label
                aria-disabled=move || held.with(|line| line.is_off).to_string()
                aria-expanded=move || is_on().map(|is_on| is_on.to_string())
                on:click=move |_| edit(Change::Pick(1))
            >
                {move || held.with(|line| if line.is_cell { line.value.clone() } else { line.label.clone() })}
            </button>
            <span class="unit">{more}</span>
        }
        .into_any(),
        Kind::Slider => view! {
            {name()}
            <input
                id=id
                type="range"
                min="0"
                max="1000"
                step="5"
                prop:value=value
                aria-valuetext=more
                on:input=move |event| edit(Change::Text(event_target_value(&event)))
            />
            <span class="unit">{more}</span>
        }
        .into_any(),
    };
    view! {
        <div
            class=class
            class:is-cell=is_cell
            on:pointerenter=move |_| point(Some(key))
            on:focusin=move |_| point(Some(key))
            on:pointerleave=move |_| point(None)
            on:focusout=move |_| point(None)
        >
            {control}
            <span class="hint">{hint}</span>
            <span class="refused" role="alert">{refused}</span>
        </div>
    }
    .into_any()
}
