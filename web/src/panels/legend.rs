//! What tints and textures of the plan mean; a map over it has a legend of its own.

use hobnail_core::plan::LandUse;
use hobnail_core::say;
use leptos::prelude::*;

use super::palette::Swatch;
use crate::app::words::sentence_case;
use crate::canvas::palette;

/// The legend.
#[component]
pub fn Legend() -> impl IntoView {
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
    view! {
        <details class="legend" open>
            <summary>{say!("panels-legend")}</summary>
            <ul>
                {lines.collect_view()}
                <li class="is-wide">
                    <svg class="swatch" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
                        <rect x="1" y="1" width="20" height="20" fill=palette::tint(LandUse::Residential).css() stroke=palette::SOFT_INK.css()></rect>
                        <path d="M11 1 V21" stroke=palette::SOFT_INK.css()></path>
                        <rect x="4" y="6" width="5" height="9" fill=palette::building(LandUse::Residential).css() stroke=palette::INK.css()></rect>
                        <rect x="13" y="6" width="5" height="9" fill=palette::building(LandUse::Residential).css() stroke=palette::INK.css()></rect>
                    </svg>
                    {say!("panels-legend-lots")}
                </li>
                <li class="is-wide">
                    <svg class="swatch" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
                        <rect x="1" y="1" width="20" height="20" fill=palette::PAPER.css()></rect>
                        <path d="M1 9 L9 1 M1 15 L15 1 M1 21 L21 1 M7 21 L21 7 M13 21 L21 13" stroke=palette::NO_LOT.at(0.6).css()></path>
                    </svg>
                    {say!("panels-legend-no-lot")}
                </li>
            </ul>
        </details>
    }
}
