//! The walk-shed: a calm wash over the land of the reached fronts, with crisp five- and ten-minute edges.
//!
//! Reach is exact along streets; the wash shows it to the depth of a usual lot on either side.

use std::sync::Arc;

use crate::canvas::contour::around;
use crate::canvas::palette;
use crate::canvas::picture::{Align, Fill, Item, Layer, Path, Stroke, Words};
use crate::canvas::scene::Scene;

/// How far the wash lies from a street, in meters: half a right-of-way and the depth of a usual lot.
pub const DEPTH_M: f64 = 42.0;

/// Land this small in the middle of a block is washed with what is around it, in square meters.
const LEAST_HOLE_M2: f64 = 4_000.0;

/// The washes, the widest first, each with its edge.
#[must_use]
pub fn sheds(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let sets: Vec<_> = scene.sheds.iter().map(|shed| shed.stretches.as_slice()).collect();
    for (rank, rings) in around(&sets, DEPTH_M, LEAST_HOLE_M2).into_iter().enumerate() {
        let mut path = Path::default();
        for ring in rings {
            path.ring(ring);
        }
        let is_inner = rank + 1 == scene.sheds.len();
        let opacity = if is_inner { 0.06 } else { 0.055 };
        let edge_px = if is_inner {
            palette::HEAVY_PX
        } else {
            palette::MEDIUM_PX
        };
        let dash_px: &[f64] = if is_inner { &[] } else { &[9.0, 4.0] };
        let path = Arc::new(path);
        layer.fill(path.clone(), Fill::Flat(palette::SHED.at(opacity)));
        layer.stroke(path, Stroke::drawn(palette::SHED_EDGE, edge_px).dashed(dash_px), 0.0);
    }
    layer
}

/// The minutes, written where each walk ends farthest out.
#[must_use]
pub fn minutes(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for shed in &scene.sheds {
        if let Some(end) = shed.ends.first() {
            layer.items.push(Item::Words(Words {
                at: *end,
                shift_px: (0.0, 0.0),
                text: format!("{} min", shed.minutes),
                size_px: 13.0,
                is_bold: true,
                color: palette::SHED_EDGE,
                halo: palette::PAPER,
                angle_rad: 0.0,
                align: Align::Middle,
                from_px_per_m: 0.1,
            }));
        }
    }
    layer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::scene::Shed;

    #[test]
    fn the_wider_wash_lies_below_with_the_finer_edge() {
        let shed = |minutes| Shed {
            minutes,
            stretches: vec![vec![(0.0, 0.0), (f64::from(minutes) * 60.0, 0.0)]],
            ends: vec![(f64::from(minutes) * 60.0, 0.0)],
        };
        let scene = Scene {
            sheds: vec![shed(10), shed(5)],
            ..Scene::default()
        };
        let edges: Vec<Stroke> = sheds(&scene)
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Shape(shape) => shape.stroke,
                _ => None,
            })
            .collect();
        assert_eq!(edges.len(), 2);
        assert!(
            !edges[0].dash_px.is_empty() && edges[1].dash_px.is_empty(),
            "told apart without color"
        );
        assert_eq!(minutes(&scene).items.len(), 2);
    }
}
