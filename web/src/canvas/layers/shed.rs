//! The walk-shed: a calm wash over the land of the reached fronts, with crisp five- and ten-minute edges.
//!
//! Reach is exact along streets; the wash shows it to the depth of a usual lot on either side.

use crate::canvas::palette;
use crate::canvas::picture::{Align, Item, Layer, Path, Wash, Words};
use crate::canvas::scene::Scene;

/// How broad the wash lies about a street, in meters: half a right-of-way and a lot depth on either side.
pub const BREADTH_M: f64 = 84.0;

/// The washes, the widest first, each with its minutes in words at its farthest end.
#[must_use]
pub fn sheds(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for (rank, shed) in scene.sheds.iter().enumerate() {
        let mut path = Path::default();
        for stretch in &shed.stretches {
            path.line(stretch.iter().copied());
        }
        let mut inside = Path::default();
        for land in &shed.lands {
            inside.ring(land.iter().copied());
        }
        if path.is_empty() {
            continue;
        }
        let is_inner = rank + 1 == scene.sheds.len();
        layer.items.push(Item::Wash(Wash {
            lines: path,
            inside,
            width_m: BREADTH_M,
            fill: palette::SHED.at(if is_inner { 0.06 } else { 0.055 }),
            edge: palette::SHED_EDGE,
            edge_px: if is_inner {
                palette::HEAVY_PX
            } else {
                palette::MEDIUM_PX
            },
        }));
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
            lands: Vec::new(),
            ends: vec![(f64::from(minutes) * 60.0, 0.0)],
        };
        let scene = Scene {
            sheds: vec![shed(10), shed(5)],
            ..Scene::default()
        };
        let edges: Vec<f64> = sheds(&scene)
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Wash(wash) => Some(wash.edge_px),
                _ => None,
            })
            .collect();
        assert_eq!(edges.len(), 2);
        assert!(edges[0] < edges[1], "{edges:?}");
        assert_eq!(minutes(&scene).items.len(), 2);
    }
}
