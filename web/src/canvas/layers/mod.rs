//! The layers of the drawing, undermost first. Each reads the scene and gives plain data to paint.

pub mod classes;
pub mod drafted;
pub mod fronts;
pub mod furniture;
pub mod heights;
pub mod land;
pub mod lots;
pub mod marks;
pub mod needs;
pub mod nodes;
pub mod overlay;
pub mod routes;
pub mod shed;
pub mod streets;
pub mod trees;

use super::palette;
use super::picture::{Align, Item, Words};
#[cfg(test)]
use super::picture::{Layer, Stroke};

/// Words of a map on the drawing, upright, from a scale on.
fn map_words(at: (f64, f64), shift_px: (f64, f64), text: String, from_px_per_m: f64) -> Item {
    Item::Words(Words {
        at,
        shift_px,
        text,
        size_px: 13.0,
        is_bold: true,
        color: palette::SHED_EDGE,
        halo: palette::PAPER,
        angle_rad: 0.0,
        align: Align::Middle,
        from_px_per_m,
    })
}

/// The strokes of a layer's shapes, in order.
#[cfg(test)]
fn strokes(layer: &Layer) -> Vec<Stroke> {
    let strokes = layer.items.iter().filter_map(|item| match item {
        Item::Shape(shape) => shape.stroke,
        _ => None,
    });
    strokes.collect()
}
