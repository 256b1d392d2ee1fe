//! What tints and textures of the plan mean; a map over it has a legend of its own.

use crate::browser::view::{View, element};
use hobnail_core::plan::LandUse;
use hobnail_core::say;

use super::palette::swatch;
use crate::app::words::sentence_case;
use crate::canvas::palette;

/// The legend.
pub fn legend() -> View {
    let uses = [
        LandUse::Residential,
        LandUse::Business,
        LandUse::Industrial,
        LandUse::Civic,
        LandUse::Leisure,
        LandUse::Natural,
    ];
    let lines = uses.map(|land_use| {
        element("li")
            .holds(swatch(Some(land_use)))
            .holds(sentence_case(palette::use_word(land_use)))
    });
    element("details")
        .class("legend")
        .mark("open")
        .holds(element("summary").holds(say!("panels-legend")))
        .holds(
            element("ul")
                .holds(lines)
                .holds(
                    element("li")
                        .class("is-wide")
                        .holds(
                            element("svg")
                                .class("swatch")
                                .with("width", "22")
                                .with("height", "22")
                                .with("viewBox", "0 0 22 22")
                                .with("aria-hidden", "true")
                                .holds(
                                    element("rect")
                                        .with("x", "1")
                                        .with("y", "1")
                                        .with("width", "20")
                                        .with("height", "20")
                                        .with("fill", palette::tint(LandUse::Residential).css())
                                        .with("stroke", palette::SOFT_INK.css()),
                                )
                                .holds(
                                    element("path")
                                        .with("d", "M11 1 V21")
                                        .with("stroke", palette::SOFT_INK.css()),
                                )
                                .holds(
                                    element("rect")
                                        .with("x", "4")
                                        .with("y", "6")
                                        .with("width", "5")
                                        .with("height", "9")
                                        .with("fill", palette::building(LandUse::Residential).css())
                                        .with("stroke", palette::INK.css()),
                                )
                                .holds(
                                    element("rect")
                                        .with("x", "13")
                                        .with("y", "6")
                                        .with("width", "5")
                                        .with("height", "9")
                                        .with("fill", palette::building(LandUse::Residential).css())
                                        .with("stroke", palette::INK.css()),
                                ),
                        )
                        .holds(say!("panels-legend-lots")),
                )
                .holds(
                    element("li")
                        .class("is-wide")
                        .holds(
                            element("svg")
                                .class("swatch")
                                .with("width", "22")
                                .with("height", "22")
                                .with("viewBox", "0 0 22 22")
                                .with("aria-hidden", "true")
                                .holds(
                                    element("rect")
                                        .with("x", "1")
                                        .with("y", "1")
                                        .with("width", "20")
                                        .with("height", "20")
                                        .with("fill", palette::PAPER.css()),
                                )
                                .holds(
                                    element("path")
                                        .with("d", "M1 9 L9 1 M1 15 L15 1 M1 21 L21 1 M7 21 L21 7 M13 21 L21 13")
                                        .with("stroke", palette::NO_LOT.at(0.6).css()),
                                ),
                        )
                        .holds(say!("panels-legend-no-lot")),
                ),
        )
        .into()
}
