//! The map of walking routes: a band along each segment of street, the wider the more walks go along it.
//!
//! All bands have one dark color, and a white casing that parts them from land of any hue: width alone is the sign.

use std::sync::Arc;

use crate::canvas::palette;
use crate::canvas::picture::{Layer, Path, Stroke};
use crate::canvas::scene::Scene;

/// The highest class of walks.
pub const MOST: u8 = 5;

/// Width of the white casing, on either side, in pixels.
pub const CASING_PX: f64 = 1.5;

/// Dashes of segments that nobody walks along.
pub const NOBODY_DASH_PX: [f64; 2] = [2.0, 4.0];

/// Width of the band of a class of walks, in pixels.
#[must_use]
pub const fn band_px(class: u8) -> f64 {
    match class {
        0 => palette::MEDIUM_PX,
        1 => 2.0,
        2 => 4.0,
        3 => 6.5,
        4 => 9.5,
        _ => 13.0,
    }
}

/// The bands, the widest on top; all casings lie below all bands, so that routes run into each other.
#[must_use]
pub fn bands(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let of = |class: u8| {
        let mut path = Path::default();
        for (line, _) in scene.routes.iter().filter(|(_, held)| *held == class) {
            path.line(line.iter().copied());
        }
        Arc::new(path)
    };
    for class in 0..=MOST {
        let casing = Stroke::drawn(palette::PAPER, band_px(class) + 2.0 * CASING_PX);
        layer.stroke(of(class), casing, 0.0);
    }
    for class in 0..=MOST {
        let band = Stroke::drawn(palette::SHED_EDGE, band_px(class));
        let dash_px: &[f64] = if class == 0 { &NOBODY_DASH_PX } else { &[] };
        layer.stroke(of(class), band.dashed(dash_px), 0.0);
    }
    layer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::layers::strokes;
    use crate::canvas::picture::Width;

    #[test]
    fn classes_are_told_apart_by_width_alone() {
        for class in 0..MOST {
            let (one, next) = (band_px(class), band_px(class + 1));
            assert!(next >= one * 1.35 && next >= one + 0.7, "{class}: {one} and {next}");
        }
        let line = |x: f64| vec![(x, 0.0), (x + 50.0, 0.0)];
        let scene = Scene {
            routes: (0..=MOST).map(|class| (line(f64::from(class) * 60.0), class)).collect(),
            ..Scene::default()
        };
        let strokes = strokes(&bands(&scene));
        let (casings, bands) = strokes.split_at(usize::from(MOST) + 1);
        for (casing, band) in casings.iter().zip(bands) {
            let (Width::Pixels(around), Width::Pixels(width)) = (casing.width, band.width) else {
                panic!("drawn in pixels: {casing:?} {band:?}")
            };
            assert!(around >= width + 2.0, "white shows on both sides");
            assert_eq!((casing.color, band.color), (palette::PAPER, palette::SHED_EDGE));
        }
        assert_eq!(bands.len(), usize::from(MOST) + 1);
        let dashed: Vec<bool> = bands.iter().map(|band| !band.dash_px.is_empty()).collect();
        assert_eq!(
            dashed,
            [true, false, false, false, false, false],
            "only where nobody walks"
        );
    }
}
