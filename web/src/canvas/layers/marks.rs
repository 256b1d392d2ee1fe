//! Places and site accesses: each kind has its own form, and a word.

use hobnail_core::order;
use std::sync::Arc;

use hobnail_core::plan::PlaceKind;

use crate::canvas::layers::land::middle;
use crate::canvas::offset::{between, length};
use crate::canvas::palette;
use crate::canvas::picture::{Align, Color, Form, Item, Layer, Path, Sign, Stroke, Words};
use crate::canvas::scene::{Extent, PlaceSign, Scene};

pub use hobnail_core::report::drawing::words::place_word as word;

/// Signs of all places, and of connections to the existing streets.
#[must_use]
pub fn places(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for access in &scene.accesses {
        layer
            .items
            .push(sign(*access, Form::Triangle, 7.0, palette::PAPER, palette::INK));
    }
    for place in &scene.places {
        match &place.extent {
            Extent::Point(_) => {}
            Extent::Line(line) => {
                let mut path = Path::default();
                path.line(line.iter().copied());
                let path = Arc::new(path);
                layer.stroke(path.clone(), Stroke::drawn(palette::PAPER, 8.0), 0.0);
                layer.stroke(path, Stroke::drawn(palette::INK, 4.5), 0.0);
            }
            Extent::Area(outline) => {
                let mut path = Path::default();
                path.ring(outline.iter().copied());
                let path = Arc::new(path);
                layer.stroke(path.clone(), Stroke::drawn(palette::PAPER, 5.0), 0.0);
                layer.stroke(path, Stroke::drawn(palette::INK, palette::HEAVY_PX), 0.0);
            }
        }
        if let Some(at) = place_of_sign(&place.extent) {
            mark(&mut layer, place, at);
        }
    }
    layer
}

/// Names of all places.
#[must_use]
pub fn names(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    // The center first: where names are in each other's way the first is kept.
    let mut places: Vec<&PlaceSign> = scene.places.iter().collect();
    order::sort_by_key(&mut places, |place| place.kind != PlaceKind::Center);
    // Of places on the same land, such as a center and its square, the first gives its name to both.
    let mut named: Vec<(f64, f64)> = Vec::new();
    for place in places {
        if let Some(at) = place_of_sign(&place.extent).filter(|at| !named.contains(at)) {
            named.push(at);
            layer.items.push(Item::Words(Words {
                at,
                shift_px: (form_of(place.kind).1 + 5.0, 0.0),
                text: place.name.clone(),
                size_px: 14.0,
                is_bold: true,
                color: palette::INK,
                halo: palette::PAPER,
                angle_rad: 0.0,
                align: Align::Right,
                from_px_per_m: if place.kind == PlaceKind::Center { 0.1 } else { 0.6 },
            }));
        }
    }
    layer
}

fn mark(layer: &mut Layer, place: &PlaceSign, at: (f64, f64)) {
    let inside = if place.is_hoped_for {
        palette::PAPER
    } else {
        palette::INK
    };
    let (form, radius_px) = form_of(place.kind);
    layer.items.push(sign(at, form, radius_px, inside, palette::INK));
    if place.kind == PlaceKind::Center {
        layer
            .items
            .push(sign(at, Form::Round, 4.0, palette::PAPER, palette::INK));
    }
}

const fn form_of(kind: PlaceKind) -> (Form, f64) {
    match kind {
        PlaceKind::Center => (Form::Round, 9.0),
        PlaceKind::TransitStop => (Form::Square, 6.5),
        PlaceKind::School | PlaceKind::Clinic | PlaceKind::CommunityHall => (Form::Diamond, 7.5),
        PlaceKind::Park | PlaceKind::Shop => (Form::Round, 5.5),
    }
}

/// Where the sign of a place stands: on it, in the middle.
#[must_use]
pub fn place_of_sign(extent: &Extent) -> Option<(f64, f64)> {
    match extent {
        Extent::Point(point) => Some(*point),
        Extent::Line(line) => between(line, length(line) / 2.0, length(line)).first().copied(),
        Extent::Area(outline) => middle(outline),
    }
}

fn sign(at: (f64, f64), form: Form, radius_px: f64, fill: Color, line: Color) -> Item {
    Item::Sign(Sign {
        at,
        shift_px: (0.0, 0.0),
        form,
        radius_px,
        fill,
        line,
        line_px: 1.75,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_center_names_the_square_that_it_is() {
        let square = Extent::Area(vec![(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)]);
        let place = |kind, name: &str, extent: &Extent| PlaceSign {
            kind,
            name: name.to_owned(),
            extent: extent.clone(),
            is_hoped_for: false,
        };
        let scene = Scene {
            places: vec![
                place(PlaceKind::Park, "Park", &square),
                place(PlaceKind::Center, "Lantern Square", &square),
                place(PlaceKind::Park, "Withy Green", &Extent::Point((90.0, 0.0))),
            ],
            ..Scene::default()
        };
        let layer = names(&scene);
        let said = layer.items.iter().filter_map(|item| match item {
            Item::Words(words) => Some(words.text.as_str()),
            _ => None,
        });
        assert_eq!(said.collect::<Vec<_>>(), ["Lantern Square", "Withy Green"]);
    }
}
