//! The walk-shed: a calm wash over the land of the reached fronts, with crisp five- and ten-minute edges.
//!
//! Reach is exact along streets; the wash shows it to the depth of a usual lot on either side.

use hobnail_core::say;
use std::sync::Arc;

use crate::canvas::contour::around;
use crate::canvas::layers::map_words;
use crate::canvas::palette;
use crate::canvas::picture::{Fill, Form, Item, Layer, Path, Sign, Stroke};
use crate::canvas::scene::Scene;

/// How far the wash lies from a street, in meters: half a right-of-way and the depth of a usual lot.
pub const DEPTH_M: f64 = 42.0;

/// Land this small in the middle of a block is washed with what is around it, in square meters.
const LEAST_HOLE_M2: f64 = 4_000.0;

/// From the middle of the star to its points, in pixels.
const STAR_PX: f64 = 12.0;

/// Width of its line, in pixels.
pub const STAR_LINE_PX: f64 = 2.0;

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

/// The best single point for a center: an open star.
#[must_use]
pub fn best(scene: &Scene) -> Layer {
    let star = |at| {
        Item::Sign(Sign {
            at,
            shift_px: (0.0, 0.0),
            form: Form::Star,
            radius_px: STAR_PX,
            fill: palette::PAPER,
            line: palette::SHED_EDGE,
            line_px: STAR_LINE_PX,
        })
    };
    Layer {
        items: scene.best.into_iter().map(star).collect(),
    }
}

/// The minutes, written where each walk ends farthest out, and what the star is.
#[must_use]
pub fn minutes(scene: &Scene) -> Layer {
    let words = |at, shift_px, text| map_words(at, shift_px, text, 0.1);
    let below = (0.0, STAR_PX + 10.0);
    let best = scene
        .best
        .map(|at| words(at, below, say!("drawing-best-point").to_owned()));
    let ends = scene.sheds.iter().filter_map(|shed| {
        Some(words(
            shed.end?,
            (0.0, 0.0),
            say!("drawing-minutes", count = shed.minutes),
        ))
    });
    Layer {
        items: best.into_iter().chain(ends).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::layers::strokes;
    use crate::canvas::scene::Shed;

    #[test]
    fn the_wider_wash_lies_below_with_the_finer_edge() {
        let shed = |minutes| Shed {
            minutes,
            stretches: vec![vec![(0.0, 0.0), (f64::from(minutes) * 60.0, 0.0)]],
            end: Some((f64::from(minutes) * 60.0, 0.0)),
        };
        let scene = Scene {
            sheds: vec![shed(10), shed(5)],
            ..Scene::default()
        };
        let edges = strokes(&sheds(&scene));
        assert_eq!(edges.len(), 2);
        assert!(
            !edges[0].dash_px.is_empty() && edges[1].dash_px.is_empty(),
            "told apart without color"
        );
        assert_eq!(minutes(&scene).items.len(), 2);
    }

    #[test]
    fn the_best_point_is_an_open_star_that_says_what_it_is() {
        let scene = Scene {
            best: Some((20.0, 10.0)),
            ..Scene::default()
        };
        let [Item::Sign(star)] = best(&scene).items[..] else {
            panic!("one sign")
        };
        assert_eq!(
            (star.form, star.at, star.fill),
            (Form::Star, (20.0, 10.0), palette::PAPER)
        );
        assert!(matches!(&minutes(&scene).items[..], [Item::Words(words)] if words.text == "best point"));
    }
}
