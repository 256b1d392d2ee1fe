//! The column of figures: a number and its name to a line, and its basis below it on request.

use hobnail_core::say;
use leptos::prelude::*;

use super::basis::BasisTree;
use super::enlarged::{Enlarge, Enlarged};
use super::land_bar::LandBarPanel;
use super::legend::Legend;
use super::measured::MeasuredPanel;
use super::notes::Notes;
use crate::app::figures::{Heading, Row, headings, short_title};
use crate::app::live::memo;
use crate::app::mode::Mode;
use crate::app::store::{COLUMN, Store};
use crate::app::words::sentence_case;

/// The column.
#[component]
pub fn Column(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let headings = store.with(|app| headings(app.study()));
    let under = move |heading: Heading| view! { <Under store heading/> };
    view! {
        <aside id=COLUMN class="column" aria-labelledby="figures-title">
            {super::remarks::answering(store)}
            <div class="column-head">
                <h2 id="figures-title">{say!("panels-figures")}</h2>
                <p class="column-note">{say!("panels-figures-note")}</p>
            </div>
            {move || (store.mode.get() == Mode::Projector).then(|| view! { <Enlarged store/> })}
            <MeasuredPanel store/>
            <LandBarPanel store/>
            <Figures store heading=None/>
            {headings.into_iter().map(under).collect_view()}
            {super::remarks::remarks(store)}
            <Notes store/>
            <Legend/>
            <p class="caution">
                {say!("panels-caution")}
            </p>
        </aside>
    }
}

/// A heading that opens, and the figures under it.
#[component]
fn Under(store: Store, heading: Heading) -> impl IntoView {
    let is_open = memo(move || store.open_headings.with(|open| open.contains(&heading)));
    let id = format!("under-{}", heading.words().to_lowercase().replace(' ', "-"));
    let controls = id.clone();
    view! {
        <section class="under" data-heading=heading.words()>
            <h3>
                <button
                    type="button"
                    class="heading-line"
                    aria-expanded=move || is_open.get().to_string()
                    aria-controls=controls
                    on:click=move |_| store.toggle_heading(heading)
                >
                    {heading.words()}
                </button>
            </h3>
            <div id=id>{move || is_open.get().then(|| view! { <Figures store heading=Some(heading)/> })}</div>
        </section>
    }
}

/// The figures of the first level, or those under a heading.
#[component]
fn Figures(store: Store, heading: Option<Heading>) -> impl IntoView {
    let ids = memo(move || {
        store.figures.with(|rows| {
            let here = rows.iter().filter(|row| row.heading == heading);
            here.map(|row| row.id.clone()).collect::<Vec<_>>()
        })
    });
    view! {
        <ul class="figures" class:is-further=heading.is_some()>
            <For each=move || ids.get() key=Clone::clone let(id)>
                <Figure store id/>
            </For>
        </ul>
    }
}

#[component]
fn Figure(store: Store, id: String) -> impl IntoView {
    let wanted = id.clone();
    let row = memo(move || {
        let found = |rows: &Vec<Row>| rows.iter().find(|row| row.id == wanted).cloned();
        store.figures.with(found)
    });
    let open = id.clone();
    let is_open = memo(move || {
        store
            .basis
            .with(|basis| basis.as_ref().is_some_and(|basis| basis.figure == open))
    });
    let toggled = id.clone();
    let basis_id = format!("basis-{}", id.replace('.', "-"));
    let controls = basis_id.clone();
    let is_table = memo(move || row.with(|row| row.as_ref().is_some_and(|row| row.is_table)));
    let has_place = memo(move || row.with(|row| row.as_ref().is_some_and(|row| row.has_place)));
    let is_asked = id == "homes.of_asked";
    let shown = StoredValue::new(id.clone());
    let point_out = move || store.act(|app| app.point_out_figure(Some(shown.get_value())));
    let leave = move || store.act(|app| app.point_out_figure(None));
    view! {
        <li
            class="figure"
            class:is-table=is_table
            class:is-open=is_open
            class:has-place=move || has_place.get() || is_asked
            data-figure=id
            on:pointerenter=move |_| point_out()
            on:focusin=move |_| point_out()
            on:pointerleave=move |_| leave()
            on:focusout=move |_| leave()
        >
            <button
                type="button"
                class="figure-line"
                aria-expanded=move || is_open.get().to_string()
                aria-controls=controls
                on:click=move |_| store.toggle_basis(&toggled)
            >
                <span class="figure-title">{move || row.get().map(|row| title(&row))}</span>
                <span class="figure-value" data-value>
                    {move || row.get().map(|row| parts(&row.value).map(|(class, words)| view! { <span class=class>{words}</span> }).collect_view())}
                </span>
                <span class="figure-range" data-range>{move || row.get().and_then(|row| row.range)}</span>
                {move || row.get().and_then(|row| row.change).map(change)}
                {move || row.get().and_then(|row| row.reason).map(|reason| view! { <span class="figure-reason">{reason}</span> })}
            </button>
            {move || has_place.get().then(|| view! {
                <button
                    type="button"
                    class="command show"
                    aria-label=move || row.get().map(|row| say!("panels-show-what", what = row.title))
                    on:click=move |_| store.act(|app| app.go_to_figure(&shown.get_value()))
                >
                    {say!("panels-show")}
                </button>
            })}
            {move || is_open.get().then(|| view! { <Enlarge store figure=shown.get_value()/> })}
            {is_asked.then(|| super::program::program_button(store, say!("panels-program")))}
            {move || is_open.get().then(|| table(row.get().map(|row| row.cells).unwrap_or_default()))}
            <div id=basis_id class="basis" hidden=move || !is_open.get()>
                {move || is_open.get().then(|| view! { <BasisTree store/> })}
            </div>
        </li>
    }
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
pub(super) fn change((words, is_clear): (String, bool)) -> impl IntoView {
    view! { <span class="figure-change" class:is-clear=is_clear data-change>{words}</span> }
}

/// The rows of a table, below its title.
fn table(cells: Vec<(String, String)>) -> Option<impl IntoView> {
    (!cells.is_empty()).then(|| {
        let lines = cells.into_iter().map(|(label, value)| {
            view! { <tr><th scope="row">{sentence_case(&label)}</th><td>{value}</td></tr> }
        });
        view! { <table class="figure-table"><tbody>{lines.collect_view()}</tbody></table> }
    })
}

/// A number in words as its parts: the number itself is set larger than what stands around it.
pub(super) fn parts(value: &str) -> impl Iterator<Item = (&'static str, String)> + use<> {
    let begins = value
        .find(|letter: char| letter.is_ascii_digit() || letter == '−' || letter == '—')
        .unwrap_or_default();
    let rest = value.get(begins..).unwrap_or_default();
    let ends = rest.find(' ').unwrap_or(rest.len());
    let (number, after) = rest.split_at(ends);
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
