//! The basis of a number: how it was worked out; every number it rests on opens in turn, down to counts and sources.

use hobnail_core::figures::basis::{Basis, Row, Step};
use hobnail_core::say;
use leptos::prelude::*;

use crate::app::basis::{line_words, origin_words, row_words};
use crate::app::figures::Influences;
use crate::app::live::memo;
use crate::app::store::Store;
use crate::app::words::sentence_case;

/// Tables longer than this are cut, and say so.
const MOST_ROWS: usize = 40;

/// The open basis of the store.
#[component]
pub fn BasisTree(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let basis = memo(move || store.basis.with(|open| open.as_ref().map(|open| open.basis.clone())));
    // Which steps stand open below their parents; by path, so that one step may be open in two places.
    let opened = RwSignal::new(hobnail_core::order::OrderedSet::<String>::new());
    move || {
        basis.get().and_then(|basis| {
            let first = basis.steps.first()?.clone();
            let path = first.id.clone();
            Some(view! {
                {step(&basis, &first, path, opened, 0)}
                <Doubt store/>
            })
        })
    }
}

/// Where the doubt in the open figure comes from.
#[component]
fn Doubt(store: Store) -> impl IntoView {
    const MOST: usize = 6;
    let influences = memo(move || {
        store
            .basis
            .with(|open| open.as_ref().and_then(|open| open.influences.clone()))
    });
    move || {
        influences.get().map(|influences| match influences {
            Influences::None(reason) => view! { <p class="basis-note">{sentence_case(&reason)}</p> }.into_any(),
            Influences::Shares(shares) => {
                let lines = shares.into_iter().take(MOST).map(|(title, share)| {
                    let percent = format!("{:.0}%", share * 100.0);
                    view! { <tr><th scope="row">{sentence_case(&title)}</th><td>{percent}</td></tr> }
                });
                view! {
                    <div class="doubt">
                        <p>{say!("panels-basis-doubt")}</p>
                        <table><tbody>{lines.collect_view()}</tbody></table>
                    </div>
                }
                .into_any()
            }
        })
    }
}

fn step(
    basis: &Basis,
    shown: &Step,
    path: String,
    opened: RwSignal<hobnail_core::order::OrderedSet<String>>,
    depth: usize,
) -> AnyView {
    let below: Vec<AnyView> = shown
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
            let (title, value) = (sentence_case(&found.title), found.row.as_ref().map(row_words).unwrap_or_default());
            Some(
                view! {
                    <li>
                        <button type="button" class="basis-opens" data-step=found.id.clone() aria-expanded=move || is_open.get().to_string() on:click=toggle>
                            <span class="basis-title">{title}</span>
                            <span class="basis-value">{value}</span>
                        </button>
                        {move || is_open.get().then(|| step(&basis, &found, inner.clone(), opened, depth + 1))}
                    </li>
                }
                .into_any(),
            )
        })
        .collect();
    let conversions = shown
        .conversions
        .iter()
        .map(|text| view! { <p class="basis-note">{text.clone()}</p> });
    let changed = (!shown.changed_factors.is_empty())
        .then(|| view! { <p class="basis-changed">{say!("panels-basis-changed", factors = shown.changed_factors.join(", "))}</p> });
    view! {
        <div class="basis-step" data-depth=depth.to_string()>
            <p class="basis-words">{origin_words(shown)}</p>
            {shown.row.as_ref().map(working)}
            {conversions.collect_view()}
            {shown.row.as_ref().map(sources)}
            {changed}
            {rest_table(&shown.rest)}
            {(!below.is_empty()).then(|| view! { <ul class="basis-below">{below}</ul> })}
        </div>
    }
    .into_any()
}

/// The row given in full: each line of its working, or just its value where nothing was worked out.
fn working(row: &Row) -> AnyView {
    if row.lines.is_empty() {
        return view! { <p class="basis-numbers">{row_words(row)}</p> }.into_any();
    }
    let lines = row.lines.iter().map(|line| {
        let (held, zeros): (Vec<_>, Vec<_>) = line.terms.iter().partition(|term| !term.value.starts_with("0 "));
        let left_out = held.len().saturating_sub(MOST_ROWS);
        let terms = held.into_iter().take(MOST_ROWS).map(|term| {
            let words = match &term.weight {
                Some(weight) => say!("panels-basis-weighed", label = term.label, value = term.value, weight = weight),
                None => format!("{}: {}", term.label, term.value),
            };
            view! { <li>{words}</li> }
        });
        let terms: Vec<_> = terms.collect();
        view! {
            <p class="basis-numbers">{line_words(line)}</p>
            {(!terms.is_empty()).then(|| view! { <ul class="basis-terms" tabindex="0">{terms}</ul> })}
            {(left_out > 0).then(|| view! { <p class="basis-note">{say!("panels-basis-more", count = left_out)}</p> })}
            {(!zeros.is_empty()).then(|| view! { <p class="basis-note">{say!("panels-basis-zeros", count = zeros.len())}</p> })}
        }
    });
    lines.collect_view().into_any()
}

fn sources(row: &Row) -> impl IntoView + use<> {
    let lines = row
        .sources
        .iter()
        .map(|source| view! { <p class="basis-source">{source.clone()}</p> });
    lines.collect_view()
}

fn rest_table(rows: &[Row]) -> Option<impl IntoView + use<>> {
    let left_out = rows.len().saturating_sub(MOST_ROWS);
    let lines: Vec<_> = rows
        .iter()
        .take(MOST_ROWS)
        .map(|row| view! { <tr><th scope="row">{row.label.clone()}</th><td>{row.value.clone()}</td></tr> })
        .collect();
    (!lines.is_empty()).then(|| {
        view! {
            <details class="basis-rest">
                <summary>{say!("panels-basis-rows", count = rows.len())}</summary>
                <table><tbody>{lines}</tbody></table>
                {(left_out > 0).then(|| view! { <p class="basis-note">{say!("panels-basis-more", count = left_out)}</p> })}
            </details>
        }
    })
}
