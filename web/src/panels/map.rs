//! The map over the drawing: which one, in one control, and what its signs mean.

use crate::browser::document;
use crate::browser::view::{View, element, value_of};
use hobnail_core::say;

use crate::app::class_maps;
use crate::app::maps::{Line, Map, Mark};
use crate::app::store::{MAP_CARD, Store};
use crate::app::words::sentence_case;
use crate::canvas::layers::{classes, needs, routes, shed};
use crate::canvas::palette;
use crate::canvas::picture::Color;
use crate::canvas::scene::{Node, Scale};
use crate::live::{always, memo};

/// The control and its legend.
pub fn map_panel(store: Store) -> View {
    let chosen = memo(move || store.legend.with(|legend| legend.map));
    let lines = memo(move || store.legend.with(|legend| legend.lines.clone()));
    let note = memo(move || store.legend.with(|legend| legend.note.clone()));
    let all = Map::all();
    let option = move |map: &Map| {
        let map = *map;
        element("option")
            .with("value", map.id())
            .with("selected", move || chosen.get() == map)
            .holds(map.words())
    };
    let options = |is_here: fn(&Map) -> bool| all.iter().filter(|map| is_here(map)).map(option).collect::<View>();
    let walks = options(|map| matches!(map, Map::Walk(_)));
    let rules = options(|map| matches!(map, Map::Counted(_)));
    let others = options(|map| !matches!(map, Map::Walk(_) | Map::Counted(_)));
    let choose = move |event| {
        let id = value_of(&event);
        if let Some(map) = all.iter().find(|map| map.id() == id) {
            store.show_map(*map);
        }
    };
    // With more lines the card has another size, once the tasks before this one are done.
    let length = memo(move || lines.with(Vec::len));
    always(move || {
        let _followed = (chosen.get(), length.get(), store.is_new.get());
        document::after_this(async move { store.resize() });
    });
    element("section")
        .class("map")
        .with("id", MAP_CARD)
        .with("aria-labelledby", "map-title")
        .with("data-map", move || chosen.get().id())
        .holds(
            element("label")
                .with("id", "map-title")
                .with("for", "map")
                .holds(say!("panels-map")),
        )
        .holds(
            element("select")
                .with("id", "map")
                .on("change", choose)
                .holds(others)
                .holds(element("optgroup").with("label", say!("panels-map-walks")).holds(walks))
                .holds(element("optgroup").with("label", say!("panels-map-rules")).holds(rules)),
        )
        .holds(
            element("ul")
                .class("map-legend")
                .with("tabindex", "0")
                .holds(move || lines.get().into_iter().map(line).collect::<View>()),
        )
        .holds(element("p").class("map-note").holds(note))
        .into()
}

fn line(line: Line) -> View {
    let name = match line.mark {
        Mark::Near => "near".to_owned(),
        Mark::Far => "far".to_owned(),
        Mark::Needs(needs) => needs.to_string(),
        Mark::Node(Node::Crossing) => "counted".to_owned(),
        Mark::Node(Node::Head) => "head".to_owned(),
        Mark::Node(Node::LeftOut) => "left-out".to_owned(),
        Mark::Walks(class) => format!("walks-{class}"),
        Mark::Front(rank) => format!("front-{rank}"),
        Mark::Best => "best".to_owned(),
        Mark::Class(_, class) => format!("class-{class}"),
        Mark::Steep(place) => format!("steep-{place}"),
        Mark::Figure(name) => name.to_owned(),
    };
    let is_long = matches!(
        line.mark,
        Mark::Front(_) | Mark::Best | Mark::Figure(_) | Mark::Steep(_)
    );
    element("li")
        .with("data-legend", name)
        .class_if("is-long", is_long)
        .holds(sign(line.mark))
        .holds(element("span").class("map-words").holds(sentence_case(&line.words)))
        .holds(element("span").class("map-value").mark("data-value").holds(line.value))
        .into()
}

/// A path of a sign: outline, inside, line, its width and dashes.
type Piece = (&'static str, String, Color, f64, String);

/// What a sign is drawn of, and what is written on it in which color, around which that of its halo.
fn pieces(mark: Mark) -> (Vec<Piece>, Option<(String, Color, Color)>) {
    const ACROSS: &str = "M0 11 H34";
    const DISK: &str = "M6 11 a11 11 0 1 0 22 0 a11 11 0 1 0 -22 0 Z";
    let clear = || "none".to_owned();
    let line = |color, width_px| (ACROSS, clear(), color, width_px, String::new());
    let form = |outline, inside: Color, width_px| (outline, inside.css(), palette::SHED_EDGE, width_px, String::new());
    match mark {
        Mark::Near | Mark::Far => {
            let (width_px, dash) = if mark == Mark::Near {
                (palette::HEAVY_PX, "")
            } else {
                (palette::MEDIUM_PX, "9 4")
            };
            let wash = palette::SHED.at(0.2).css();
            let pieces = vec![
                ("M0 2 H34 V20 H0 Z", wash, palette::CLEAR, 0.0, String::new()),
                ("M0 19 H34", clear(), palette::SHED_EDGE, width_px, dash.to_owned()),
            ];
            (pieces, None)
        }
        Mark::Needs(needs) => {
            let width_px = needs::band_px(needs);
            let pieces = vec![
                line(palette::SHED_EDGE, width_px + 1.5),
                line(palette::needs(needs), width_px),
            ];
            (pieces, Some((needs.to_string(), palette::SHED_EDGE, palette::PAPER)))
        }
        Mark::Walks(class) => {
            let mut band = line(palette::SHED_EDGE, routes::band_px(class));
            if class == 0 {
                band.4 = routes::NOBODY_DASH_PX.map(|px| px.to_string()).join(" ");
            }
            (vec![band], None)
        }
        Mark::Front(rank) => {
            let disk = form(DISK, palette::SHED_EDGE, 0.0);
            (vec![disk], Some((rank.to_string(), palette::PAPER, palette::SHED_EDGE)))
        }
        Mark::Best => {
            let star = "M17 2 L19.5 8 L26 8.6 L21.1 12.8 L22.6 19.2 L17 15.8 L11.4 19.2 L12.9 12.8 L8 8.6 L14.5 8 Z";
            (vec![form(star, palette::PAPER, shed::STAR_LINE_PX)], None)
        }
        Mark::Node(Node::Crossing) => {
            let disk = "M11 11 a6 6 0 1 0 12 0 a6 6 0 1 0 -12 0 Z";
            (vec![form(disk, palette::SHED_EDGE, 1.5)], None)
        }
        Mark::Node(Node::Head) => (vec![form("M11.5 5.5 h11 v11 h-11 Z", palette::SHED_EDGE, 1.5)], None),
        Mark::Node(Node::LeftOut) => (vec![form("M17 4.5 L23.5 16.2 H10.5 Z", palette::PAPER, 1.5)], None),
        Mark::Class(scale, class) => {
            let inside = palette::class(scale, class);
            let wash = (
                "M1 3 H33 V19 H1 Z",
                inside.css(),
                palette::SOFT_INK,
                palette::FINE_PX,
                String::new(),
            );
            let cuts = match scale {
                Scale::Kinds => palette::class_cuts(class).2,
                Scale::Ramp => "",
            };
            let cuts = (cuts, clear(), palette::PAPER, 3.0, String::new());
            let number = (scale == Scale::Kinds).then(|| ((class + 1).to_string(), palette::SHED_EDGE, palette::PAPER));
            (vec![wash, cuts], number)
        }
        Mark::Steep(place) => {
            let color = palette::class(Scale::Kinds, class_maps::STEEP[usize::from(place) % 2]);
            (
                vec![
                    line(palette::PAPER, classes::BAND_PX + 3.0),
                    line(color, classes::BAND_PX),
                ],
                None,
            )
        }
        Mark::Figure(_) => (Vec::new(), None),
    }
}

/// A sign of the map as it looks on the drawing.
fn sign(mark: Mark) -> View {
    let (pieces, text) = pieces(mark);
    let path = |(outline, fill, line, width_px, dash): Piece| {
        element("path")
            .with("d", outline)
            .with("fill", fill)
            .with("stroke", line.css())
            .with("stroke-width", width_px)
            .with("stroke-dasharray", dash)
    };
    let write = |(text, color, halo): (String, Color, Color)| {
        element("text")
            .with("x", "17")
            .with("y", "15.5")
            .with("text-anchor", "middle")
            .with("stroke", halo.css())
            .with("fill", color.css())
            .holds(text)
    };
    element("svg")
        .class("map-sign")
        .with("width", "34")
        .with("height", "22")
        .with("viewBox", "0 0 34 22")
        .with("aria-hidden", "true")
        .holds(pieces.into_iter().map(path).collect::<View>())
        .holds(text.map(write))
        .into()
}
