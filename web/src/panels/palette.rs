//! The palette of the chosen tool: street sections, or building types and how much of the land a stroke paints.

use crate::browser::view::{View, element};
use hobnail_core::say;

use super::drawn::drawn;
use super::editor::{command, editor};
use super::manners::manners;
use super::selection::selection_panel;
use crate::app::editor::edits::{EDIT_BUILDING_TYPE, EDIT_SECTION};
use crate::app::editor::lines::Key;
use crate::app::editor::small_drawing;
use crate::app::shown::{BuildingTypeShown, SectionShown};
use crate::app::store::{PALETTES, Store};
use crate::canvas::palette;
use crate::live::memo;
use crate::tools::{Brush, Choices, ToolKind};

/// The palette; nothing for tools that need none.
pub fn palette(store: Store) -> View {
    let tool = memo(move || store.hand.with(|hand| hand.tool));
    let is_program = memo(move || store.forms.with(|forms| !forms.program.is_empty()));
    let is_editing = memo(move || store.editors.with(|shown| shown.editor.is_apart()));
    View::from(move || match tool.get() {
        _ if is_program.get() => super::program::program(store),
        _ if is_editing.get() => editor(store),
        Some(ToolKind::Select) => element("div")
            .class("palettes")
            .with("id", PALETTES)
            .holds(selection_panel(store))
            .holds(editor(store))
            .holds(super::details_of::details_of_selected(store))
            .into(),
        Some(ToolKind::Area) => super::kinds::kinds(store, true),
        Some(ToolKind::Place) => super::kinds::kinds(store, false),
        Some(ToolKind::Street) => sections(store),
        Some(ToolKind::Use) => building_types(store),
        _ => View::nothing(),
    })
}

/// Changes what is chosen.
pub fn choose(store: Store, change: impl FnOnce(&mut Choices)) {
    store.act(|app| {
        let mut choices = *app.choices();
        change(&mut choices);
        app.choose(choices);
    });
}

fn sections(store: Store) -> View {
    let sections = memo(move || store.plan.with(|plan| plan.sections.clone()));
    let chosen = memo(move || store.hand.with(|hand| hand.choices.map(|choices| choices.section)));
    let cut = move || {
        let chosen = chosen.get();
        sections.with(|sections| {
            let found = sections.iter().find(|section| Some(section.id) == chosen);
            found.map(|section| section.cut.clone())
        })
    };
    let line = move |section: SectionShown| {
        let id = section.id;
        let drawing = small_drawing(&section.strips);
        element("label")
            .class("choice")
            .holds(drawn(drawing))
            .holds(
                element("input")
                    .with("type", "radio")
                    .with("name", "street-section")
                    .with("value", id.to_string())
                    .property("checked", move || chosen.get() == Some(id))
                    .on("change", move |_| choose(store, |choices| choices.section = id)),
            )
            .holds(
                element("span")
                    .class("choice-words")
                    .holds(element("span").class("choice-name").holds(section.name))
                    .holds(element("span").class("choice-more").holds(section.width)),
            )
    };
    element("div")
        .class("palette")
        .with("data-palette", "street-section")
        .holds(manners(store))
        .holds(
            element("p")
                .with("id", "street-section-title")
                .class("palette-title")
                .holds(say!("panels-section")),
        )
        .holds(
            element("div")
                .class("choices")
                .with("role", "radiogroup")
                .with("aria-labelledby", "street-section-title")
                .holds(move || sections.get().into_iter().map(line).collect::<View>()),
        )
        .holds(
            element("div")
                .class("cut")
                .holds(element("p").class("choice-more").holds(cut))
                .holds(command(store, Key::panel(EDIT_SECTION), say!("panels-section-edit"))),
        )
        .into()
}

fn building_types(store: Store) -> View {
    let types = memo(move || store.plan.with(|plan| plan.building_types.clone()));
    let chosen = memo(move || {
        store
            .hand
            .with(|hand| hand.choices.map(|choices| choices.building_type))
    });
    let brush = memo(move || store.hand.with(|hand| hand.choices.map(|choices| choices.brush)));
    let described = memo(move || {
        let chosen = chosen.get().flatten();
        types.with(|types| types.iter().find(|found| Some(found.id) == chosen).cloned())
    });
    let line = move |found: BuildingTypeShown| {
        let id = found.id;
        element("label")
            .class("choice")
            .holds(
                element("input")
                    .with("type", "radio")
                    .with("name", "building-type")
                    .with("value", id.to_string())
                    .property("checked", move || chosen.get() == Some(Some(id)))
                    .on("change", move |_| {
                        choose(store, |choices| choices.building_type = Some(id))
                    }),
            )
            .holds(swatch(Some(found.land_use)))
            .holds(element("span").class("choice-name").holds(found.name))
    };
    let brushes = [
        (Brush::Nearest, say!("panels-brush-nearest")),
        (Brush::Whole, say!("panels-brush-whole")),
        (Brush::Side, say!("panels-brush-side")),
    ];
    let brush_line = move |(kind, words): (Brush, &'static str)| {
        element("label")
            .class("choice brush")
            .holds(
                element("input")
                    .with("type", "radio")
                    .with("name", "brush")
                    .with("value", words)
                    .property("checked", move || brush.get() == Some(kind))
                    .on("change", move |_| choose(store, |choices| choices.brush = kind)),
            )
            .holds(element("span").class("choice-words").holds(words))
    };
    element("div")
        .class("palette")
        .with("data-palette", "building-type")
        .holds(
            element("div")
                .with("role", "radiogroup")
                .with("aria-labelledby", "brush-title")
                .holds(
                    element("p")
                        .with("id", "brush-title")
                        .class("palette-title")
                        .holds(say!("panels-paint")),
                )
                .holds(brushes.map(brush_line)),
        )
        .holds(
            element("p")
                .with("id", "building-type-title")
                .class("palette-title")
                .holds(say!("panels-building-type")),
        )
        .holds(
            element("div")
                .class("choices")
                .with("role", "radiogroup")
                .with("aria-labelledby", "building-type-title")
                .holds(move || types.get().into_iter().map(line).collect::<View>())
                .holds(
                    element("label")
                        .class("choice")
                        .holds(
                            element("input")
                                .with("type", "radio")
                                .with("name", "building-type")
                                .with("value", "none")
                                .property("checked", move || chosen.get() == Some(None))
                                .on("change", move |_| choose(store, |choices| choices.building_type = None)),
                        )
                        .holds(swatch(None))
                        .holds(element("span").class("choice-name").holds(say!("panels-no-use"))),
                ),
        )
        .holds(
            element("div")
                .class("cut")
                .holds(element("p").class("choice-more").holds(move || {
                    described.get().map_or_else(
                        || say!("panels-no-use-about").to_owned(),
                        |found| {
                            format!(
                                "{}: {}, {}.",
                                found.name,
                                palette::use_word(found.land_use),
                                found.holds
                            )
                        },
                    )
                }))
                .holds(
                    element("div")
                        .with("hidden", move || described.with(Option::is_none))
                        .holds(command(
                            store,
                            Key::panel(EDIT_BUILDING_TYPE),
                            say!("panels-building-type-edit"),
                        )),
                ),
        )
        .into()
}

/// A square in the tint and texture of a use.
pub fn swatch(land_use: Option<hobnail_core::plan::LandUse>) -> View {
    let fill = land_use.map_or(palette::PAPER, palette::tint).css();
    let line = land_use.map_or(palette::SOFT_INK, palette::tone).css();
    let texture = land_use
        .and_then(palette::texture)
        .map(texture_strokes)
        .unwrap_or_default();
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
                .with("fill", fill)
                .with("stroke", line.clone()),
        )
        .holds(
            element("path")
                .with("d", texture)
                .with("stroke", line)
                .with("fill", "none"),
        )
        .into()
}

/// Strokes that look like the texture on the drawing, in a square of 22 pixels.
#[must_use]
pub const fn texture_strokes(texture: crate::canvas::picture::Texture) -> &'static str {
    use crate::canvas::picture::Texture;
    match texture {
        Texture::Diagonal | Texture::Bands => "M1 9 L9 1 M1 15 L15 1 M1 21 L21 1 M7 21 L21 7 M13 21 L21 13",
        Texture::Crossed => {
            "M1 9 L9 1 M1 17 L17 1 M5 21 L21 5 M13 21 L21 13 M1 13 L9 21 M1 5 L17 21 M5 1 L21 17 M13 1 L21 9"
        }
        Texture::Upright => "M6 1 V21 M11 1 V21 M16 1 V21",
        Texture::Dots => "M6 6 h.1 M14 6 h.1 M10 11 h.1 M18 11 h.1 M6 16 h.1 M14 16 h.1",
        Texture::Grass => "M6 10 V6 M4.5 10 L4 7 M7.5 10 L8 7 M15 18 V14 M13.5 18 L13 15 M16.5 18 L17 15",
        Texture::Waves => "M1 7 q2.5 -3 5 0 t5 0 t5 0 t5 0 M1 15 q2.5 -3 5 0 t5 0 t5 0 t5 0",
    }
}
