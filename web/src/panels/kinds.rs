//! The palettes of the area tool and the place tool: what is drawn next, and its fields.

use crate::browser::view::{View, element};
use hobnail_core::plan::PlaceKind;
use hobnail_core::say;

use super::details_of::details_of;
use super::palette::texture_strokes;
use crate::app::store::Store;
use crate::canvas::layers::marks;
use crate::canvas::palette;
use crate::live::memo;
use crate::tools::drafts::{CONSTRAINTS, PLACES};

/// A line of a palette: its words, and its sign as a fill, a line color and a path.
type Kind = (&'static str, String, String, &'static str);

const FRAME: &str = "M1 1 H21 V21 H1 Z";
const DOT: &str = "M11 5.5 a5.5 5.5 0 1 0 .1 0 Z";
const DIAMOND: &str = "M11 2.5 L19.5 11 L11 19.5 L2.5 11 Z";
const SQUARE: &str = "M5 5 H17 V17 H5 Z";
const TRIANGLE: &str = "M11 4 L18 17 H4 Z";

/// The palette of areas, or that of places.
pub fn kinds(store: Store, is_area: bool) -> View {
    let held = usize::from(!is_area);
    let chosen = memo(move || store.forms.with(|forms| forms.chosen[held]));
    let line = move |(place, (words, fill, color, path)): (usize, Kind)| {
        element("label")
            .class("choice")
            .holds(
                element("input")
                    .with("type", "radio")
                    .with("name", "kind")
                    .with("value", words)
                    .property("checked", move || chosen.get() == place)
                    .on("change", move |_| store.act(|app| app.choose_draft(is_area, place))),
            )
            .holds(
                element("svg")
                    .class("swatch")
                    .with("width", "22")
                    .with("height", "22")
                    .with("viewBox", "0 0 22 22")
                    .with("aria-hidden", "true")
                    .holds(element("path").with("d", path).with("fill", fill).with("stroke", color)),
            )
            .holds(element("span").class("choice-name").holds(words))
            .into()
    };
    let kinds = if is_area { areas() } else { places() };
    let lines: Vec<View> = kinds.into_iter().enumerate().map(line).collect();
    element("div")
        .class("palette")
        .with("data-palette", if is_area { "areas" } else { "places" })
        .holds(
            element("p")
                .with("id", "kinds-title")
                .class("palette-title")
                .holds(say!("panels-draw")),
        )
        .holds(
            element("div")
                .class("choices")
                .with("role", "radiogroup")
                .with("aria-labelledby", "kinds-title")
                .holds(lines),
        )
        .holds(super::manners::snap_switch(store))
        .holds(details_of(store, true))
        .into()
}

fn areas() -> Vec<Kind> {
    let ink = || palette::INK.css();
    let clear = || "none".to_owned();
    let soft = palette::tint(hobnail_core::plan::LandUse::Residential).css();
    let mut kinds = vec![
        (say!("panels-site"), clear(), ink(), FRAME),
        (
            say!("panels-soft-area"),
            soft,
            palette::SOFT_INK.css(),
            "M11 2 C20 2 20 20 11 20 S2 2 11 2 Z",
        ),
    ];
    kinds.extend(CONSTRAINTS.map(|kind| {
        let (color, texture) = palette::constraint(kind);
        (
            palette::constraint_word(kind),
            clear(),
            palette::darkened(color).css(),
            texture_strokes(texture),
        )
    }));
    kinds.push((say!("panels-parcel"), clear(), ink(), "M2 4 H20 V18 H2 Z M11 4 V18"));
    kinds.push((
        say!("panels-outside"),
        clear(),
        ink(),
        "M3 19 V10 L8 6 L13 10 V19 Z M13 19 V13 H19 V19",
    ));
    kinds
}

fn places() -> Vec<Kind> {
    let ink = || palette::INK.css();
    let clear = || "none".to_owned();
    let mut kinds: Vec<Kind> = Vec::new();
    for kind in PLACES {
        let path = match kind {
            PlaceKind::Center => "M11 2 a9 9 0 1 0 .1 0 Z M11 8 a3 3 0 1 1 -.1 0 Z",
            PlaceKind::TransitStop => SQUARE,
            PlaceKind::School | PlaceKind::CommunityHall | PlaceKind::Clinic => DIAMOND,
            PlaceKind::Park | PlaceKind::Shop => DOT,
        };
        kinds.push((marks::word(kind), ink(), ink(), path));
    }
    kinds.push((say!("panels-site-access"), clear(), ink(), TRIANGLE));
    kinds.push((
        say!("panels-barrier"),
        clear(),
        ink(),
        "M2 11 H20 M6 7 V15 M11 7 V15 M16 7 V15",
    ));
    kinds.push((
        say!("panels-crossing"),
        clear(),
        ink(),
        "M2 7 H20 M2 15 H20 M8 7 V15 M11 7 V15 M14 7 V15",
    ));
    kinds.push((say!("panels-note"), clear(), ink(), "M3 4 H19 V15 H10 L6 19 V15 H3 Z"));
    kinds
}
