//! Street trees: one crown about every nine meters, only near and only in view, for there are many.

use std::sync::Arc;

use crate::canvas::offset::{beside, shortened, spaced};
use crate::canvas::palette;
use crate::canvas::picture::{Fill, Layer, Path, Stroke};
use crate::canvas::scene::{Scene, Standing};

/// From this scale on trees are drawn.
pub const TREES_FROM_PX_PER_M: f64 = 0.8;

/// Usual spacing of street trees, in meters (common practice, no source).
const SPACING_M: f64 = 9.0;
const LEAST_CROWN_M: f64 = 1.9;
const CROWN_SPREAD_M: f64 = 0.9;

/// A part of the plan in meters: south-west and north-east corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// South-west corner.
    pub least: (f64, f64),
    /// North-east corner.
    pub most: (f64, f64),
}

impl Window {
    /// Whether all of `other` lies in it.
    #[must_use]
    pub fn contains(&self, other: &Self) -> bool {
        self.least.0 <= other.least.0
            && self.least.1 <= other.least.1
            && self.most.0 >= other.most.0
            && self.most.1 >= other.most.1
    }

    /// The window grown by this share of itself on every side.
    #[must_use]
    pub fn grown(&self, share: f64) -> Self {
        let (x, y) = (
            (self.most.0 - self.least.0) * share,
            (self.most.1 - self.least.1) * share,
        );
        Self {
            least: (self.least.0 - x, self.least.1 - y),
            most: (self.most.0 + x, self.most.1 + y),
        }
    }

    /// Whether the box about a line comes into it.
    #[must_use]
    pub fn meets(&self, line: &[(f64, f64)]) -> bool {
        let outside = |is_outside: &dyn Fn(&(f64, f64)) -> bool| line.iter().all(is_outside);
        !(outside(&|point| point.0 < self.least.0)
            || outside(&|point| point.0 > self.most.0)
            || outside(&|point| point.1 < self.least.1)
            || outside(&|point| point.1 > self.most.1))
    }
}

/// The trees of all streets that come into `window`.
#[must_use]
pub fn trees(scene: &Scene, window: &Window) -> Layer {
    let mut crowns = Path::default();
    let standing = scene.ways.iter().filter(|way| way.standing != Standing::Removed);
    for way in standing.filter(|way| window.meets(&way.line)) {
        let Some(profile) = scene.profiles.get(way.profile) else {
            continue;
        };
        let line = shortened(&way.line, way.clear_start_m, way.clear_end_m);
        for left_m in &profile.tree_rows_m {
            for place in spaced(&beside(&line, *left_m), SPACING_M) {
                crowns.circle(place, LEAST_CROWN_M + CROWN_SPREAD_M * unevenness(place));
            }
        }
    }
    let mut layer = Layer::default();
    let crowns = Arc::new(crowns);
    layer.fill(crowns.clone(), Fill::Flat(palette::CROWN.at(0.85)));
    layer.stroke(crowns, Stroke::drawn(palette::CROWN_LINE, palette::FINE_PX), 0.0);
    layer
}

/// A number in 0 to 1 that depends on the place alone, so that crowns differ a little and never flicker.
fn unevenness((x, y): (f64, f64)) -> f64 {
    let mixed = (x * 10.0).round() as i64 as u64 ^ ((y * 10.0).round() as i64 as u64).rotate_left(32);
    let mixed = mixed.wrapping_mul(0x9E37_79B9_7F4A_7C15);
    (mixed >> 40) as f64 / f64::from(1u32 << 24)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::profile::Profile;
    use crate::canvas::scene::Way;

    #[test]
    fn only_streets_in_view_have_trees_drawn() {
        let scene = Scene {
            profiles: vec![Profile {
                right_of_way_m: 16.0,
                tree_rows_m: vec![5.0, -5.0],
                ..Profile::default()
            }],
            ways: vec![Way {
                line: vec![(0.0, 0.0), (100.0, 0.0)],
                profile: 0,
                clear_start_m: 14.0,
                clear_end_m: 14.0,
                standing: Standing::New,
            }],
            ..Scene::default()
        };
        let window = |x: f64| Window {
            least: (x, -50.0),
            most: (x + 100.0, 50.0),
        };
        let drawn = trees(&scene, &window(10.0));
        let count: usize = drawn
            .items
            .iter()
            .filter_map(|item| match item {
                crate::canvas::picture::Item::Shape(shape) if shape.fill.is_some() => Some(shape.path.circles().len()),
                _ => None,
            })
            .sum();
        assert_eq!(count, 16, "72 m clear of corners hold eight trees on either side");
        assert!(trees(&scene, &window(500.0)).items.is_empty());
    }
}
