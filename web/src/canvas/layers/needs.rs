//! The map of the five daily needs: a band along each front, the deeper and the thicker the more needs are in reach, and
//! their number on it.

use hobnail_core::order;
use std::sync::Arc;

use hobnail_core::measures::walk::destinations::Destination;

use crate::canvas::layers::map_words;
use crate::canvas::offset::{between, length};
use crate::canvas::palette;
use crate::canvas::picture::{Layer, Path, Stroke};
use crate::canvas::scene::Scene;

/// From this scale on numbers are written.
const NUMBERS_FROM_PX_PER_M: f64 = 0.25;

/// The most needs.
const MOST: u8 = Destination::NEEDS.len() as u8;

/// Width of the band of fronts that reach so many needs, in pixels.
#[must_use]
pub fn band_px(needs: u8) -> f64 {
    2.5 + 0.8 * f64::from(needs.min(MOST))
}

/// The bands, those with the most needs on top.
#[must_use]
pub fn bands(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let of = |needs: u8| {
        let mut path = Path::default();
        for (line, _) in scene.needs.iter().filter(|(_, held)| *held == needs) {
            path.line(line.iter().copied());
        }
        Arc::new(path)
    };
    for needs in 0..=MOST {
        let path = of(needs);
        let cut = |color, width_px| Stroke {
            has_round_ends: false,
            ..Stroke::drawn(color, width_px)
        };
        layer.stroke(path.clone(), cut(palette::SHED_EDGE, band_px(needs) + 1.5), 0.0);
        layer.stroke(path, cut(palette::needs(needs), band_px(needs)), 0.0);
    }
    layer
}

/// The numbers, on the longest stretches first.
#[must_use]
pub fn numbers(scene: &Scene) -> Layer {
    let mut found: Vec<_> = scene
        .needs
        .iter()
        .filter_map(|(line, needs)| {
            let length_m = length(line);
            let at = between(line, length_m / 2.0, length_m).first().copied()?;
            Some((length_m, at, *needs))
        })
        .collect();
    order::sort_by(&mut found, |one, other| other.0.total_cmp(&one.0));
    let words = found
        .into_iter()
        .map(|(_, at, needs)| map_words(at, (0.0, 0.0), needs.to_string(), NUMBERS_FROM_PX_PER_M));
    Layer { items: words.collect() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::picture::Item;
    use hobnail_core::order::OrderedSet;

    #[test]
    fn each_count_has_a_width_and_a_number_of_its_own() {
        let line = |x: f64| vec![(x, 0.0), (x + 50.0, 0.0)];
        let scene = Scene {
            needs: (0..=MOST).map(|needs| (line(f64::from(needs) * 60.0), needs)).collect(),
            ..Scene::default()
        };
        let layer = bands(&scene);
        let widths: Vec<_> = layer
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Shape(shape) => shape.stroke.map(|stroke| stroke.width),
                _ => None,
            })
            .collect();
        assert_eq!(widths.len(), 2 * (usize::from(MOST) + 1), "an edge and a band each");
        let bands: OrderedSet<u64> = (0..=MOST).map(|needs| band_px(needs).to_bits()).collect();
        assert_eq!(bands.len(), usize::from(MOST) + 1, "told apart without color");
        let texts: Vec<_> = numbers(&scene)
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Words(words) => Some(words.text.clone()),
                _ => None,
            })
            .collect();
        assert_eq!(texts, ["0", "1", "2", "3", "4", "5"]);
    }
}
