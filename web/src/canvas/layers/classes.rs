//! Maps that part the plan into classes: land washed and streets banded in the color of their class, each with its
//! number or value written on it, so that color is never alone; and the buildings alone, as figure and ground.

use hobnail_core::measures::frontage::PaintedFace;
use std::sync::Arc;

use super::map_words;
use crate::canvas::palette;
use crate::canvas::picture::{Fill, Layer, Path, Stroke};
use crate::canvas::scene::{Scale, Scene};
use crate::canvas::scene_of::meters;

/// Width of a street's band, in pixels.
pub const BAND_PX: f64 = 6.0;

/// Opacity of land in the color of its kind, so that streets of the same kind stand out on it.
pub const WASH: f32 = 0.5;

/// The washes of land, over its own tints.
#[must_use]
pub fn washes(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for wash in &scene.washes {
        let mut path = Path::default();
        wash.rings.iter().for_each(|ring| path.ring(ring.iter().copied()));
        let path = Arc::new(path);
        // Paper first: the land's own tint and texture would speak beside the class.
        layer.fill(path.clone(), Fill::Flat(palette::PAPER));
        let opacity = if wash.scale == Scale::Ramp { 1.0 } else { WASH };
        layer.fill(
            path.clone(),
            Fill::Flat(palette::class(wash.scale, wash.class).at(opacity)),
        );
        let (_, texture, _) = palette::class_cuts(wash.class);
        if let (Scale::Kinds, Some(texture)) = (wash.scale, texture) {
            layer.fill(path.clone(), Fill::Textured(texture, palette::PAPER));
        }
        layer.stroke(path, Stroke::drawn(palette::SOFT_INK, palette::FINE_PX), 0.0);
    }
    layer
}

/// The bands of streets; all casings lie below all bands.
#[must_use]
pub fn bands(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let path_of = |is_in: &dyn Fn(u8) -> bool| {
        let mut path = Path::default();
        for (line, _) in scene.bands.iter().filter(|(_, class)| is_in(*class)) {
            path.line(line.iter().copied());
        }
        Arc::new(path)
    };
    layer.stroke(path_of(&|_| true), Stroke::drawn(palette::PAPER, BAND_PX + 3.0), 0.0);
    let most = scene.bands.iter().map(|(_, class)| *class).max().unwrap_or_default();
    for class in 0..=most {
        let mut band = Stroke::drawn(palette::class(Scale::Kinds, class), BAND_PX);
        let (dashes_px, ..) = palette::class_cuts(class);
        band.has_round_ends = dashes_px.is_empty();
        let band = band.dashed(dashes_px);
        layer.stroke(path_of(&|held| held == class), band, 0.0);
    }
    layer
}

/// The numbers and values of land and streets.
#[must_use]
pub fn tags(scene: &Scene) -> Layer {
    let tags = scene.tags.iter();
    Layer {
        items: tags
            .map(|(at, text)| map_words(*at, (0.0, 4.5), text.clone(), 0.0))
            .collect(),
    }
}

/// Every building, in ink, whatever its use.
#[must_use]
pub fn figure_and_ground(painted: &[PaintedFace]) -> Layer {
    let mut path = Path::default();
    for lot in painted.iter().flat_map(|face| &face.laid.lots) {
        path.ring(meters(&lot.footprint));
    }
    let mut layer = Layer::default();
    layer.fill(path, Fill::Flat(palette::INK));
    layer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::layers::strokes;
    use crate::canvas::scene::Wash;

    #[test]
    fn land_and_streets_are_drawn_in_the_color_of_their_class() {
        let ring = vec![(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)];
        let scene = Scene {
            washes: vec![Wash {
                rings: vec![ring.clone()],
                scale: Scale::Ramp,
                class: 2,
            }],
            bands: vec![(ring.clone(), 0), (ring, 3)],
            tags: vec![((1.0, 1.0), "7.8".to_owned())],
            ..Scene::default()
        };
        assert_eq!(washes(&scene).items.len(), 3, "paper, its wash and its line");
        let colors: Vec<_> = strokes(&bands(&scene)).iter().map(|stroke| stroke.color).collect();
        let [first, fourth] = [0, 3].map(|class| palette::class(Scale::Kinds, class));
        assert_eq!(colors, [palette::PAPER, first, fourth]);
        assert_eq!(tags(&scene).items.len(), 1);
    }
}
