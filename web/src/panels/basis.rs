//! The basis of a number: how it was worked out; every number it rests on opens in turn, down to counts and sources.

use crate::browser::view::{Element, View, button, element};
use hobnail_core::figures::basis::{Basis, Row, Step};
use hobnail_core::say;

use crate::app::basis::{BasisShown, line_words, origin_words, row_words};
use crate::app::counted_land::row_id;
use crate::app::figures::Influences;
use crate::app::store::Store;
use crate::app::words::sentence_case;
use crate::live::{Live, Memo, live_here, memo};

/// Tables longer than this are cut, and say so.
const MOST_ROWS: usize = 40;

/// Whether the basis of a figure stands open.
pub fn is_open(store: Store, figure: String) -> Memo<bool> {
    memo(move || shown(store, &figure, &mut |_| ()))
}

/// Reads the open basis of a figure; whether there is one.
fn shown(store: Store, figure: &str, read: &mut dyn FnMut(&BasisShown)) -> bool {
    store.bases_shown.with(|all| {
        let found = all.iter().find(|shown| shown.opened.figure == figure);
        found.map(read).is_some()
    })
}

/// The open basis of a figure, and the command that pins it.
pub fn basis_tree(store: Store, figure: String) -> View {
    let (id, pinned) = (figure.clone(), figure.clone());
    let basis = memo(move || {
        let mut basis = None;
        shown(store, &id, &mut |shown| basis = Some(shown.basis.clone()));
        basis
    });
    let is_pinned = memo(move || {
        let mut is_pinned = false;
        shown(store, &pinned, &mut |shown| is_pinned = shown.opened.is_pinned);
        is_pinned
    });
    let title = basis.with_untracked(|basis| Some(basis.as_ref()?.steps.first()?.title.clone()));
    let toggled = figure.clone();
    let pin = button()
        .class("command pin")
        .with("aria-label", title.map(|title| say!("panels-pin-what", what = title)))
        .with("aria-pressed", move || is_pinned.get().to_string())
        .on_press(move || store.act(|app| app.toggle_pin(&toggled)))
        .holds(say!("panels-pin"));
    // Which steps stand open below their parents; by path, so that one step may be open in two places.
    let opened = live_here(hobnail_core::order::OrderedSet::<String>::new());
    View::nothing().and(pin).and(move || {
        let figure = figure.clone();
        basis.get().and_then(|basis| {
            let first = basis.steps.first()?.clone();
            let path = first.id.clone();
            Some(
                View::nothing()
                    .and(step(store, &basis, &first, path, opened, 0))
                    .and(doubt(store, figure)),
            )
        })
    })
}

/// Where the doubt in the open figure comes from.
fn doubt(store: Store, figure: String) -> View {
    const MOST: usize = 6;
    let influences = memo(move || {
        let mut influences = None;
        shown(store, &figure, &mut |shown| influences.clone_from(&shown.influences));
        influences
    });
    View::from(move || {
        influences.get().map(|influences| match influences {
            Influences::None(reason) => element("p").class("basis-note").holds(sentence_case(&reason)),
            Influences::Shares(shares) => {
                let lines = shares.into_iter().take(MOST).map(|(title, share)| {
                    let percent = format!("{:.0}%", share * 100.0);
                    element("tr")
                        .holds(element("th").with("scope", "row").holds(sentence_case(&title)))
                        .holds(element("td").holds(percent))
                });
                element("div")
                    .class("doubt")
                    .holds(element("p").holds(say!("panels-basis-doubt")))
                    .holds(element("table").holds(element("tbody").holds(lines.collect::<View>())))
            }
        })
    })
}

/// Has an element show on the drawing what a figure counted, while it is pointed at or has the focus.
pub(super) fn points_out(store: Store, figure: String, shown: Element) -> Element {
    let focused = figure.clone();
    let leave = move || store.act(|app| app.point_out_figure(None));
    shown
        .on("pointerenter", move |_| {
            store.act(|app| app.point_out_figure(Some(figure.clone())));
        })
        .on("focusin", move |event| {
            // What it stands in speaks of another figure.
            event.stop_propagation();
            store.act(|app| app.point_out_figure(Some(focused.clone())));
        })
        .on("pointerleave", move |_| leave())
        .on("focusout", move |_| leave())
}

fn step(
    store: Store,
    basis: &Basis,
    shown: &Step,
    path: String,
    opened: Live<hobnail_core::order::OrderedSet<String>>,
    depth: usize,
) -> View {
    let below: Vec<View> = shown
        .opens
        .iter()
        .filter_map(|id| {
            let found = basis.steps.iter().find(|step| step.id == *id)?.clone();
            let path = format!("{path}/{id}");
            let basis = basis.clone();
            let (is_open_path, toggled, inner) = (path.clone(), path.clone(), path);
            let is_open = memo(move || opened.with(|opened| opened.contains(&is_open_path)));
            let toggle = move |_| {
                opened.update(|opened| {
                    if !opened.remove(&toggled) {
                        opened.insert(toggled.clone());
                    }
                });
            };
            let (title, value) = (
                sentence_case(&found.title),
                found.row.as_ref().map(row_words).unwrap_or_default(),
            );
            Some(
                element("li")
                    .holds(
                        points_out(store, row_or_whole(&found), button())
                            .class("basis-opens")
                            .with("data-step", found.id.clone())
                            .with("aria-expanded", move || is_open.get().to_string())
                            .on("click", toggle)
                            .holds(element("span").class("basis-title").holds(title))
                            .holds(element("span").class("basis-value").holds(value)),
                    )
                    .holds(move || {
                        is_open
                            .get()
                            .then(|| step(store, &basis, &found, inner.clone(), opened, depth + 1))
                    })
                    .into(),
            )
        })
        .collect();
    let conversions = shown
        .conversions
        .iter()
        .map(|text| element("p").class("basis-note").holds(text.clone()));
    let changed = (!shown.changed_factors.is_empty()).then(|| {
        element("p")
            .class("basis-changed")
            .holds(say!("panels-basis-changed", factors = shown.changed_factors.join(", ")))
    });
    element("div")
        .class("basis-step")
        .with("data-depth", depth.to_string())
        .holds(element("p").class("basis-words").holds(origin_words(shown)))
        .holds(shown.row.as_ref().map(working))
        .holds(conversions.collect::<View>())
        .holds(shown.row.as_ref().map(sources))
        .holds(changed)
        .holds(rest_table(store, &shown.id, &shown.rest))
        .holds((!below.is_empty()).then(|| element("ul").class("basis-below").holds(below)))
        .into()
}

/// The row given in full: each line of its working, or just its value where nothing was worked out.
fn working(row: &Row) -> View {
    if row.lines.is_empty() {
        return element("p").class("basis-numbers").holds(row_words(row)).into();
    }
    let lines = row.lines.iter().map(|line| {
        let (held, zeros): (Vec<_>, Vec<_>) = line.terms.iter().partition(|term| !term.value.starts_with("0 "));
        let left_out = held.len().saturating_sub(MOST_ROWS);
        let terms = held.into_iter().take(MOST_ROWS).map(|term| {
            let words = match &term.weight {
                Some(weight) => say!(
                    "panels-basis-weighed",
                    label = term.label,
                    value = term.value,
                    weight = weight
                ),
                None => format!("{}: {}", term.label, term.value),
            };
            element("li").holds(words)
        });
        let terms: Vec<_> = terms.collect();
        View::nothing()
            .and(element("p").class("basis-numbers").holds(line_words(line)))
            .and((!terms.is_empty()).then(|| element("ul").class("basis-terms").with("tabindex", "0").holds(terms)))
            .and((left_out > 0).then(|| {
                element("p")
                    .class("basis-note")
                    .holds(say!("panels-basis-more", count = left_out))
            }))
            .and((!zeros.is_empty()).then(|| {
                element("p")
                    .class("basis-note")
                    .holds(say!("panels-basis-zeros", count = zeros.len()))
            }))
    });
    lines.collect::<View>()
}

fn sources(row: &Row) -> View {
    let lines = row
        .sources
        .iter()
        .map(|source| element("p").class("basis-source").holds(source.clone()));
    lines.collect::<View>()
}

/// The id of the row given in full, where a table has others.
fn row_or_whole(shown: &Step) -> String {
    match &shown.row {
        Some(row) if !row.label.is_empty() => row_id(&shown.id, row.cell),
        _ => shown.id.clone(),
    }
}

fn rest_table(store: Store, figure: &str, rows: &[Row]) -> Option<Element> {
    let left_out = rows.len().saturating_sub(MOST_ROWS);
    let lines: Vec<_> = rows
        .iter()
        .take(MOST_ROWS)
        .map(|row| {
            points_out(store, row_id(figure, row.cell), element("tr"))
                .holds(element("th").with("scope", "row").holds(row.label.clone()))
                .holds(element("td").holds(row.value.clone()))
        })
        .collect();
    (!lines.is_empty()).then(|| {
        element("details")
            .class("basis-rest")
            .holds(element("summary").holds(say!("panels-basis-rows", count = rows.len())))
            .holds(element("table").holds(element("tbody").holds(lines)))
            .holds((left_out > 0).then(|| {
                element("p")
                    .class("basis-note")
                    .holds(say!("panels-basis-more", count = left_out))
            }))
    })
}
