//! What we heard, what changed: the remarks pinned to the drawing, their votes, and the steps that answer them.

use crate::browser::view::{View, button, command, element, value_of};
use crate::live::{live_here, memo};
use hobnail_core::say;

use crate::app::App;
use crate::app::remarks::{Key, RemarkShown, RemarksShown, Sort};
use crate::app::store::Store;
use crate::browser::document;

/// Id of the list with the names of tables.
pub const TABLES: &str = "tables";

const SORTS: [Sort; 3] = [Sort::Votes, Sort::Table, Sort::Number];

/// The remarks, and how to write one.
pub fn remarks(store: Store) -> View {
    let of = move |part: fn(&RemarksShown) -> String| memo(move || store.remarks.with(part));
    let keys = memo(move || {
        let key = |shown: &RemarksShown| shown.remarks.iter().map(|one| one.key).collect::<Vec<Key>>();
        store.remarks.with(key)
    });
    let has_any = move || keys.with(|keys| !keys.is_empty());
    let count = of(|shown| shown.count.clone());
    let tables = memo(move || store.remarks.with(|shown| shown.tables.clone()));
    let table = |name: String| element("option").with("value", name).into();
    let sort = move |event| {
        let place: usize = value_of(&event).parse().unwrap_or_default();
        store.act(|app| app.sort_remarks(SORTS.get(place).copied().unwrap_or_default()));
    };
    let sorts = [
        say!("remarks-by-votes"),
        say!("remarks-by-table"),
        say!("remarks-by-number"),
    ];
    let sorts = (0..).zip(sorts);
    let sorts: Vec<View> = sorts
        .map(|(place, words): (i32, _)| element("option").with("value", place).holds(words).into())
        .collect();
    let lines = move || {
        keys.get()
            .into_iter()
            .map(|key| line(store, key))
            .collect::<Vec<View>>()
    };
    element("section")
        .class("remarks")
        .with("aria-labelledby", "remarks-title")
        .holds(element("h3").with("id", "remarks-title").holds(say!("remarks-title")))
        .holds(
            element("datalist")
                .with("id", TABLES)
                .holds(move || tables.get().into_iter().map(table).collect::<Vec<View>>()),
        )
        .holds(element("p").class("choice-more").mark("data-remark-count").holds(count))
        .holds(
            element("div")
                .class("group")
                .holds(
                    command()
                        .with("data-command", "remark")
                        .on_press(move || store.act(App::write_remark))
                        .holds(say!("remarks-write")),
                )
                .holds(
                    command()
                        .with("data-command", "remarks-text")
                        .with("hidden", move || !has_any())
                        .on_press(move || store.save_remarks())
                        .holds(say!("remarks-text")),
                ),
        )
        .holds(
            element("label")
                .class("remarks-sort")
                .with("hidden", move || !has_any())
                .holds(say!("remarks-sort"))
                .holds(
                    element("select")
                        .with("id", "remarks-sort")
                        .on("change", sort)
                        .holds(sorts),
                ),
        )
        .holds(element("ol").class("remarks-list").holds(lines))
        .into()
}

/// Id of the button that shows a remark.
fn id_of(key: Key) -> String {
    ["remark-", &key.0.to_string(), "-", &key.1.to_string()].concat()
}

fn line(store: Store, key: Key) -> View {
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
            .collect::<Vec<View>>()
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
    element("li")
        .class("remark")
        .with("data-remark", of(|one| one.number.to_string()))
        .class_if("is-answered-now", is_answered_now)
        .holds(
            button()
                .with("id", id_of(key))
                .class("remark-line")
                .on_press(move || store.act(|app| app.show_remark(key)))
                .holds(
                    element("span")
                        .class("remark-number")
                        .holds(of(|one| one.number.to_string())),
                )
                .holds(element("span").class("remark-text").holds(of(|one| one.text.clone()))),
        )
        .holds(
            element("p")
                .class("remark-about")
                .mark("data-about")
                .holds(of(|one| one.about.clone())),
        )
        .holds(element("ul").class("remark-answers").holds(answers))
        .holds(figures)
        .holds(
            element("p")
                .class("remark-about")
                .mark("data-open")
                .with("hidden", move || !is_open())
                .holds(say!("remarks-open")),
        )
        .holds(
            command()
                .mark("data-answer")
                .with("aria-pressed", move || is_answered_now.get().to_string())
                .on("click", press)
                .holds(say!("remarks-answer")),
        )
        .holds(move || is_answered_now.get().then(|| links(store)))
        .into()
}

/// Sentences below one another; nothing where there are none.
fn listed(held: Vec<String>) -> Option<View> {
    let line = |words: String| element("li").holds(words).into();
    (!held.is_empty()).then(|| {
        let lines: Vec<View> = held.into_iter().map(line).collect();
        element("ul")
            .class("remark-figures")
            .mark("data-changed")
            .holds(lines)
            .into()
    })
}

/// One thing that answers a remark.
fn answer(store: Store, key: Key, place: usize, words: String, at: Option<crate::app::places::Place>) -> View {
    let label = say!("panels-show-what", what = words);
    let show: Option<View> = at.map(|at| {
        command()
            .with("aria-label", label)
            .on_press(move || store.act(|app| app.go_to(at.clone())))
            .holds(say!("panels-show"))
            .into()
    });
    let label = say!("remarks-unlink-what", what = words);
    let unlink = move |_| {
        store.act(|app| app.unlink(key, place));
        document::focus_on(&id_of(key));
    };
    element("li")
        .mark("data-answer-step")
        .holds(element("span").holds(words))
        .holds(show)
        .holds(
            command()
                .with("aria-label", label)
                .mark("data-unlink")
                .on("click", unlink)
                .holds("×"),
        )
        .into()
}

/// What can be linked to the remark that is being answered, and what has changed since.
fn links(store: Store) -> View {
    let steps = memo(move || store.remarks.with(|shown| shown.steps.clone()));
    let changes = memo(move || store.remarks.with(|shown| shown.changes.clone()));
    let option =
        |(place, words): (usize, String)| element("option").with("value", place.to_string()).holds(words).into();
    let options = move || steps.get().into_iter().map(option).collect::<Vec<View>>();
    // The last step is linkable at once; pressing links what the list holds, since arrow keys go through it.
    let chosen = live_here(String::new());
    let link = move |_| {
        let typed = chosen.get_untracked().parse().ok();
        let last = || steps.with_untracked(|steps| steps.first().map(|(place, _)| *place));
        if let Some(place) = typed.or_else(last) {
            store.act(|app| app.link_step(place));
        }
        chosen.set(String::new());
    };
    let keep = move |_| store.act(App::keep_changes);
    element("div")
        .class("remark-links")
        .holds(element("p").class("choice-more").holds(say!("remarks-answer-about")))
        .holds(
            element("div")
                .class("group")
                .with("hidden", move || steps.with(Vec::is_empty))
                .holds(
                    element("label").holds(say!("remarks-link-step")).holds(
                        element("select")
                            .mark("data-link-step")
                            .property("value", move || chosen.get())
                            .on("change", move |event| chosen.set(value_of(&event)))
                            .holds(options),
                    ),
                )
                .holds(
                    command()
                        .with("data-command", "link-step")
                        .on("click", link)
                        .holds(say!("remarks-link")),
                ),
        )
        .holds(
            command()
                .with("data-command", "link-selected")
                .on_press(move || store.act(App::link_selected))
                .holds(say!("remarks-link-selected")),
        )
        .holds(move || {
            changes.with(|held| !held.is_empty()).then(|| {
                element("div")
                    .mark("data-changes")
                    .holds(element("p").class("remark-about").holds(say!("remarks-changes")))
                    .holds(listed(changes.get()))
                    .holds(
                        command()
                            .with("data-command", "keep-changes")
                            .on("click", keep)
                            .holds(say!("remarks-keep")),
                    )
            })
        })
        .into()
}

/// Which remark is being answered, beside the drawing; nothing while none is.
pub fn answering(store: Store) -> View {
    let words = memo(move || store.remarks.with(|shown| shown.answering_words.clone()));
    let done = move |_| store.act(|app| app.answer(None));
    let shown = move || {
        words.get().map(|words| {
            element("p")
                .class("answering")
                .mark("data-answering")
                .holds(words)
                .holds(
                    command()
                        .with("data-command", "answered")
                        .on("click", done)
                        .holds(say!("remarks-done")),
                )
        })
    };
    shown.into()
}
