//! The palette of the chosen tool: street sections, or building types and how much of the land a stroke paints.

use hobnail_core::say;
use leptos::prelude::*;

use super::drawn::drawn;
use super::editor::{Editor, command};
use super::manners::Manners;
use super::selection::SelectionPanel;
use crate::app::editor::edits::{EDIT_BUILDING_TYPE, EDIT_SECTION};
use crate::app::editor::lines::Key;
use crate::app::editor::small_drawing;
use crate::app::live::memo;
use crate::app::shown::{BuildingTypeShown, SectionShown};
use crate::app::store::Store;
use crate::canvas::palette;
use crate::tools::{Brush, Choices, ToolKind};

/// The palette; nothing for tools that need none.
#[component]
pub fn Palette(
    /// The page's store.
    store: Store,
) -> impl IntoView {
    let tool = memo(move || store.hand.with(|hand| hand.tool));
    let is_program = memo(move || store.forms.with(|forms| !forms.program.is_empty()));
    let is_editing = memo(move || store.editors.with(|shown| shown.editor.is_apart()));
    move || match tool.get() {
        _ if is_program.get() => super::program::program(store),
        _ if is_editing.get() => view! { <Editor store/> }.into_any(),
        Some(ToolKind::Select) => view! {
            <div class="palettes">
                <SelectionPanel store/>
                <Editor store/>
                {super::details_of::details_of_selected(store)}
            </div>
        }
        .into_any(),
        Some(ToolKind::Area) => super::kinds::kinds(store, true),
        Some(ToolKind::Place) => super::kinds::kinds(store, false),
        Some(ToolKind::Street) => view! { <Sections store/> }.into_any(),
        Some(ToolKind::Use) => view! { <BuildingTypes store/> }.into_any(),
        _ => ().into_any(),
    }
}

/// Changes what is chosen.
pub fn choose(store: Store, change: impl FnOnce(&mut Choices)) {
    store.act(|app| {
        let mut choices = *app.choices();
        change(&mut choices);
        app.choose(choices);
    });
}

#[component]
fn Sections(store: Store) -> impl IntoView {
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
        view! {
            <label class="choice">
                {drawn(drawing)}
                <input
                    type="radio"
                    name="street-section"
                    value=id.to_string()
                    prop:checked=move || chosen.get() == Some(id)
                    on:change=move |_| choose(store, |choices| choices.section = id)
                />
                <span class="choice-words">
                    <span class="choice-name">{section.name}</span>
                    <span class="choice-more">{section.width}</span>
                </span>
            </label>
        }
    };
    view! {
        <div class="palette" data-palette="street-section">
            <Manners store/>
            <p id="street-section-title" class="palette-title">{say!("panels-section")}</p>
            <div class="choices" role="radiogroup" aria-labelledby="street-section-title">{move || sections.get().into_iter().map(line).collect_view()}</div>
            <div class="cut">
                <p class="choice-more">{cut}</p>
                {command(store, Key::panel(EDIT_SECTION), say!("panels-section-edit"))}
            </div>
        </div>
    }
}

#[component]
fn BuildingTypes(store: Store) -> impl IntoView {
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
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name="building-type"
                    value=id.to_string()
                    prop:checked=move || chosen.get() == Some(Some(id))
                    on:change=move |_| choose(store, |choices| choices.building_type = Some(id))
                />
                <Swatch land_use=Some(found.land_use)/>
                <span class="choice-name">{found.name}</span>
            </label>
        }
    };
    let brushes = [
        (Brush::Nearest, say!("panels-brush-nearest")),
        (Brush::Whole, say!("panels-brush-whole")),
        (Brush::Side, say!("panels-brush-side")),
    ];
    let brush_line = move |(kind, words): (Brush, &'static str)| {
        view! {
            <label class="choice brush">
                <input
                    type="radio"
                    name="brush"
                    value=words
                    prop:checked=move || brush.get() == Some(kind)
                    on:change=move |_| choose(store, |choices| choices.brush = kind)
                />
                <span class="choice-words">{words}</span>
            </label>
        }
    };
    view! {
        <div class="palette" data-palette="building-type">
            <div role="radiogroup" aria-labelledby="brush-title">
                <p id="brush-title" class="palette-title">{say!("panels-paint")}</p>
                {brushes.map(brush_line).collect_view()}
            </div>
            <p id="building-type-title" class="palette-title">{say!("panels-building-type")}</p>
            <div class="choices" role="radiogroup" aria-labelledby="building-type-title">
                {move || types.get().into_iter().map(line).collect_view()}
                <label class="choice">
                    <input
                        type="radio"
                        name="building-type"
                        value="none"
                        prop:checked=move || chosen.get() == Some(None)
                        on:change=move |_| choose(store, |choices| choices.building_type = None)
                    />
                    <Swatch land_use=None/>
                    <span class="choice-name">{say!("panels-no-use")}</span>
                </label>
            </div>
            <div class="cut">
                <p class="choice-more">
                    {move || described.get().map_or_else(
                        || say!("panels-no-use-about").to_owned(),
                        |found| format!("{}: {}, {}.", found.name, palette::use_word(found.land_use), found.holds),
                    )}
                </p>
                <div hidden=move || described.with(Option::is_none)>
                    {command(store, Key::panel(EDIT_BUILDING_TYPE), say!("panels-building-type-edit"))}
                </div>
            </div>
        </div>
    }
}

/// A square in the tint and texture of a use.
#[component]
pub fn Swatch(
    /// The use; `None` for land without one.
    land_use: Option<hobnail_core::plan::LandUse>,
) -> impl IntoView {
    let fill = land_use.map_or(palette::PAPER, palette::tint).css();
    let line = land_use.map_or(palette::SOFT_INK, palette::tone).css();
    let texture = land_use
        .and_then(palette::texture)
        .map(texture_strokes)
        .unwrap_or_default();
    view! {
        <svg class="swatch" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
            <rect x="1" y="1" width="20" height="20" fill=fill stroke=line.clone()></rect>
            <path d=texture stroke=line fill="none"></path>
        </svg>
    }
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
