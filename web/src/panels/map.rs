//! The map over the drawing: which one, in one control, and what its signs mean.

use leptos::prelude::*;

use crate::app::maps::{Line, Map, Mark};
use crate::app::store::Store;
use crate::app::words::sentence_case;
use crate::canvas::layers::needs::band_px;
use crate::canvas::palette;
use crate::canvas::scene::Node;

/// The control and its legend.
#[component]
pub fn MapPanel(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let chosen = Memo::new(move |_| store.legend.with(|legend| legend.map));
    let lines = Memo::new(move |_| store.legend.with(|legend| legend.lines.clone()));
    let note = Memo::new(move |_| store.legend.with(|legend| legend.note.clone()));
    let all = Map::all();
    let option = move |map: &Map| {
        let map = *map;
        view! { <option value=map.id() selected=move || chosen.get() == map>{map.words()}</option> }
    };
    let options = |is_here: fn(&Map) -> bool| all.iter().filter(|map| is_here(map)).map(option).collect_view();
    let walks = options(|map| matches!(map, Map::Walk(_)));
    let rules = options(|map| matches!(map, Map::Counted(_)));
    let others = options(|map| matches!(map, Map::Plain | Map::Five));
    let choose = move |event| {
        let id = event_target_value(&event);
        if let Some(map) = all.iter().find(|map| map.id() == id) {
            store.show_map(*map);
        }
    };
    view! {
        <section class="map" aria-labelledby="map-title" data-map=move || chosen.get().id()>
            <label id="map-title" for="map">"Map over the plan"</label>
            <select id="map" on:change=choose>
                {others}
                <optgroup label="Walking time">{walks}</optgroup>
                <optgroup label="Intersections counted">{rules}</optgroup>
            </select>
            <ul class="map-legend">{move || lines.get().into_iter().map(line).collect_view()}</ul>
            <p class="map-note">{note}</p>
        </section>
    }
}

fn line(line: Line) -> impl IntoView {
    let name = match line.mark {
        Mark::Near => "near".to_owned(),
        Mark::Far => "far".to_owned(),
        Mark::Needs(needs) => needs.to_string(),
        Mark::Node(Node::Crossing) => "counted".to_owned(),
        Mark::Node(Node::Head) => "head".to_owned(),
        Mark::Node(Node::LeftOut) => "left-out".to_owned(),
    };
    view! {
        <li data-legend=name>
            <Sign mark=line.mark/>
            <span class="map-words">{sentence_case(&line.words)}</span>
            <span class="map-value" data-value>{line.value}</span>
        </li>
    }
}

/// A sign of the map as it looks on the drawing.
#[component]
fn Sign(mark: Mark) -> impl IntoView {
    let drawn = match mark {
        Mark::Near | Mark::Far => {
            let (width, dash) = if mark == Mark::Near {
                ("2.5", "")
            } else {
                ("1.25", "9 4")
            };
            view! {
                <rect y="2" width="34" height="18" fill=palette::SHED.at(0.2).css()></rect>
                <path d="M0 19 H34" stroke=palette::SHED_EDGE.css() stroke-width=width stroke-dasharray=dash></path>
            }
            .into_any()
        }
        Mark::Needs(needs) => {
            let width = band_px(needs);
            view! {
                <path d="M0 11 H34" stroke=palette::SHED_EDGE.css() stroke-width=width + 1.5></path>
                <path d="M0 11 H34" stroke=palette::needs(needs).css() stroke-width=width></path>
                <text x="17" y="15.5" text-anchor="middle" stroke=palette::PAPER.css() fill=palette::SHED_EDGE.css()>{needs.to_string()}</text>
            }
            .into_any()
        }
        Mark::Node(node) => {
            let (outline, is_full) = match node {
                Node::Crossing => ("M11 11 a6 6 0 1 0 12 0 a6 6 0 1 0 -12 0 Z", true),
                Node::Head => ("M11.5 5.5 h11 v11 h-11 Z", true),
                Node::LeftOut => ("M17 4.5 L23.5 16.2 H10.5 Z", false),
            };
            let inside = if is_full { palette::SHED_EDGE } else { palette::PAPER };
            view! { <path d=outline class="node" fill=inside.css() stroke=palette::SHED_EDGE.css() stroke-width="1.5"></path> }
                .into_any()
        }
    };
    view! { <svg class="map-sign" width="34" height="22" viewBox="0 0 34 22" aria-hidden="true">{drawn}</svg> }
}
