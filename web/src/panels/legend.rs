//! What tints, textures and edges of the drawing mean.

use hobnail_core::plan::LandUse;
use leptos::prelude::*;

use super::palette::Swatch;
use crate::app::store::Store;
use crate::app::words::sentence_case;
use crate::canvas::palette;

/// The legend.
#[component]
pub fn Legend(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let _ = store;
    let uses = [
        LandUse::Residential,
        LandUse::Business,
        LandUse::Industrial,
        LandUse::Civic,
        LandUse::Leisure,
        LandUse::Natural,
    ];
    let lines = uses.map(|land_use| {
        view! {
            <li><Swatch land_use=Some(land_use)/>{sentence_case(palette::use_word(land_use))}</li>
        }
    });
    let (wash, edge) = (palette::SHED.at(0.2).css(), palette::SHED_EDGE.css());
    view! {
        <details class="legend" open>
            <summary>"Legend"</summary>
            <ul>
                {lines.collect_view()}
                <li>
                    <svg class="swatch" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
                        <rect x="1" y="1" width="20" height="20" fill=wash.clone()></rect>
                        <path d="M2 2 V20" stroke=edge.clone() stroke-width="3"></path>
                    </svg>
                    "5 minutes to the center"
                </li>
                <li>
                    <svg class="swatch" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
                        <rect x="1" y="1" width="20" height="20" fill=wash></rect>
                        <path d="M2 2 V20" stroke=edge stroke-width="1.25" stroke-dasharray="4 2.5"></path>
                    </svg>
                    "10 minutes to the center"
                </li>
            </ul>
        </details>
    }
}
