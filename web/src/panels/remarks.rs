//! What we heard, what changed: the remarks pinned to the drawing, their votes, and the steps that answer them.

use hobnail_core::say;
use leptos::prelude::*;

use crate::app::App;
use crate::app::live::{Live, memo};
use crate::app::remarks::{Key, RemarkShown, RemarksShown, Sort};
use crate::app::store::Store;
use crate::browser::document;

/// Id of the list with the names of tables.
pub const TABLES: &str = "tables";

const SORTS: [Sort; 3] = [Sort::Votes, Sort::Table, Sort::Number];

/// The remarks, and how to write one.
pub fn remarks(store: Store) -> AnyView {
    let of = move |part: fn(&RemarksShown) -> String| memo(move || store.remarks.with(part));
    let keys = memo(move || {
        let key = |shown: &RemarksShown| shown.remarks.iter().map(|one| one.key).collect::<Vec<Key>>();
        store.remarks.with(key)
    });
    let has_any = move || keys.with(|keys| !keys.is_empty());
    let count = of(|shown| shown.count.clone());
    let tables = memo(move || store.remarks.with(|shown| shown.tables.clone()));
    let table = |name: String| view! { <option value=name></option> }.into_any();
    let sort = move |event| {
        let place: usize = event_target_value(&event).parse().unwrap_or_default();
        store.act(|app| app.sort_remarks(SORTS.get(place).copied().unwrap_or_default()));
    };
    let sorts = [
        say!("remarks-by-votes"),
        say!("remarks-by-table"),
        say!("remarks-by-number"),
    ];
    let sorts = (0..).zip(sorts);
    let sorts: Vec<AnyView> = sorts
        .map(|(place, words): (i32, _)| view! { <option value=place>{words}</option> }.into_any())
        .collect();
    let lines = move || {
        keys.get()
            .into_iter()
            .map(|key| line(store, key))
            .collect::<Vec<AnyView>>()
    };
    view! {
        <section class="remarks" aria-labelledby="remarks-title">
            <h3 id="remarks-title">{say!("remarks-title")}</h3>
            <datalist id=TABLES>{move || tables.get().into_iter().map(table).collect::<Vec<AnyView>>()}</datalist>
            <p class="choice-more" data-remark-count>{count}</p>
            <div class="group">
                <button type="button" class="command" data-command="remark" on:click=move |_| store.act(App::write_remark)>{say!("remarks-write")}</button>
                <button type="button" class="command" data-command="remarks-text" hidden=move || !has_any() on:click=move |_| store.save_remarks()>{say!("remarks-text")}</button>
            </div>
            <label class="remarks-sort" hidden=move || !has_any()>
                {say!("remarks-sort")}
                <select id="remarks-sort" on:change=sort>{sorts}</select>
            </label>
            <ol class="remarks-list">{lines}</ol>
        </section>
    }
    .into_any()
}

/// Id of the button that shows a remark.
fn id_of(key: Key) -> String {
    ["remark-", &key.0.to_string(), "-", &key.1.to_string()].concat()
}

fn line(store: Store, key: Key) -> AnyView {
    let shown = memo(move || {
        let found = |shown: &RemarksShown| shown.remarks.iter().find(|one| one.key == key).cloned();
        store.remarks.with(found)
    });
    let of =
        move |part: fn(&RemarkShown) -> String| move || shown.with(|one| one.as_ref().map(part).unwrap_or_default());
    let is_open = move || shown.with(|one| one.as_ref().is_some_and(|one| one.answers.is_empty()));
    let is_answered_now = memo(move || store.remarks.with(|shown| shown.answering == Some(key)));
    let answers = move || {
        let held = shown.with(|one| one.as_ref().map(|one| one.answers.clone()).unwrap_or_default());
        let held = held.into_iter().enumerate();
        held.map(|(place, (words, at))| answer(store, key, place, words, at))
            .collect::<Vec<AnyView>>()
    };
    let figures = move || {
        let held = shown.with(|one| one.as_ref().map(|one| one.figures.clone()).unwrap_or_default());
        listed(held)
    };
    let press = move |_| {
        let next = (!is_answered_now.get_untracked()).then_some(key);
        store.act(|app| app.answer(next));
        store.ask();
    };
    view! {
        <li class="remark" data-remark=of(|one| one.number.to_string()) class:is-answered-now=is_answered_now>
            <button type="button" id=id_of(key) class="remark-line" on:click=move |_| store.act(|app| app.show_remark(key))>
                <span class="remark-number">{of(|one| one.number.to_string())}</span>
                <span class="remark-text">{of(|one| one.text.clone())}</span>
            </button>
            <p class="remark-about" data-about>{of(|one| one.about.clone())}</p>
            <ul class="remark-answers">{answers}</ul>
            {figures}
            <p class="remark-about" data-open hidden=move || !is_open()>{say!("remarks-open")}</p>
            <button type="button" class="command" data-answer aria-pressed=move || is_answered_now.get().to_string() on:click=press>{say!("remarks-answer")}</button>
            {move || is_answered_now.get().then(|| links(store))}
        </li>
    }
    .into_any()
}

/// Sentences below one another; nothing where there are none.
fn listed(held: Vec<String>) -> Option<AnyView> {
    let line = |words: String| view! { <li>{words}</li> }.into_any();
    (!held.is_empty()).then(|| {
        let lines: Vec<AnyView> = held.into_iter().map(line).collect();
        view! { <ul class="remark-figures" data-changed>{lines}</ul> }.into_any()
    })
}

/// One thing that answers a remark.
fn answer(store: Store, key: Key, place: usize, words: String, at: Option<crate::app::places::Place>) -> AnyView {
    let label = say!("panels-show-what", what = words);
    let show = at.map(|at| {
        view! {
            <button type="button" class="command" aria-label=label on:click=move |_| store.act(|app| app.go_to(at.clone()))>{say!("panels-show")}</button>
        }
        .into_any()
    });
    let label = say!("remarks-unlink-what", what = words);
    let unlink = move |_| {
        store.act(|app| app.unlink(key, place));
        document::focus_on(&id_of(key));
    };
    view! {
        <li data-answer-step>
            <span>{words}</span>
            {show}
            <button type="button" class="command" aria-label=label data-unlink on:click=unlink>"×"</button>
        </li>
    }
    .into_any()
}

/// What can be linked to the remark that is being answered, and what has changed since.
fn links(store: Store) -> AnyView {
    let steps = memo(move || store.remarks.with(|shown| shown.steps.clone()));
    let changes = memo(move || store.remarks.with(|shown| shown.changes.clone()));
    let option =
        |(place, words): (usize, String)| view! { <option value=place.to_string()>{words}</option> }.into_any();
    let options = move || steps.get().into_iter().map(option).collect::<Vec<AnyView>>();
    // The last step is linkable at once; pressing links what the list holds, since arrow keys go through it.
    let chosen = Live::new(String::new());
    let link = move |_| {
        let typed = chosen.get_untracked().parse().ok();
        let last = || steps.with_untracked(|steps| steps.first().map(|(place, _)| *place));
        if let Some(place) = typed.or_else(last) {
            store.act(|app| app.link_step(place));
        }
        chosen.set(String::new());
    };
    let keep = move |_| store.act(App::keep_changes);
    view! {
        <div class="remark-links">
            <p class="choice-more">{say!("remarks-answer-about")}</p>
            <div class="group" hidden=move || steps.with(Vec::is_empty)>
                <label>
                    {say!("remarks-link-step")}
                    <select data-link-step prop:value=move || chosen.get() on:change=move |event| chosen.set(event_target_value(&event))>{options}</select>
                </label>
                <button type="button" class="command" data-command="link-step" on:click=link>{say!("remarks-link")}</button>
            </div>
            <button type="button" class="command" data-command="link-selected" on:click=move |_| store.act(App::link_selected)>{say!("remarks-link-selected")}</button>
            {move || changes.with(|held| !held.is_empty()).then(|| view! {
                <div data-changes>
                    <p class="remark-about">{say!("remarks-changes")}</p>
                    {listed(changes.get())}
                    <button type="button" class="command" data-command="keep-changes" on:click=keep>{say!("remarks-keep")}</button>
                </div>
            }.into_any())}
        </div>
    }
    .into_any()
}

/// Which remark is being answered, beside the drawing; nothing while none is.
pub fn answering(store: Store) -> AnyView {
    let words = memo(move || store.remarks.with(|shown| shown.answering_words.clone()));
    let done = move |_| store.act(|app| app.answer(None));
    let shown = move || {
        words.get().map(|words| {
            view! {
                <p class="answering" data-answering>
                    {words}
                    <button type="button" class="command" data-command="answered" on:click=done>{say!("remarks-done")}</button>
                </p>
            }
            .into_any()
        })
    };
    shown.into_any()
}
