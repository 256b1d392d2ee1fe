//! Scale bar and north arrow, in pixels of the screen.

use hobnail_core::say;
use std::sync::Arc;

use hobnail_core::plan::document::UnitSystem;

use crate::canvas::palette;
use crate::canvas::picture::{Align, Fill, Item, Layer, Path, Stroke, Words};
use crate::input::ScreenPoint;

/// A round length for the scale bar: how long it is drawn, and its words.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Its length on screen.
    pub length_px: f64,
    /// Its length in words.
    pub words: String,
    /// How far apart contours are, where there are any.
    pub contours: Option<String>,
}

const METERS_PER_FOOT: f64 = 0.3048;
const FEET_PER_MILE: f64 = 5280.0;

/// The longest round length of at most `most_px` at this scale: 1, 2 or 5 times a power of ten.
#[must_use]
pub fn bar(px_per_m: f64, most_px: f64, units: UnitSystem) -> Bar {
    let most_m = most_px / px_per_m;
    match units {
        UnitSystem::Metric if most_m >= 1000.0 => {
            let length_km = round_down(most_m / 1000.0);
            named(length_km * 1000.0 * px_per_m, length_km, "km")
        }
        UnitSystem::Metric => {
            let length_m = round_down(most_m);
            named(length_m * px_per_m, length_m, "m")
        }
        UnitSystem::UsCustomary if most_m >= FEET_PER_MILE * METERS_PER_FOOT => {
            let length_miles = round_down(most_m / METERS_PER_FOOT / FEET_PER_MILE);
            let length_m = length_miles * FEET_PER_MILE * METERS_PER_FOOT;
            named(length_m * px_per_m, length_miles, say!("drawing-miles"))
        }
        UnitSystem::UsCustomary => {
            let length_ft = round_down(most_m / METERS_PER_FOOT);
            named(length_ft * METERS_PER_FOOT * px_per_m, length_ft, say!("drawing-feet"))
        }
    }
}

/// The scale bar with its left end at `at`, and the north arrow to its left.
#[must_use]
pub fn furniture(at: ScreenPoint, bar: &Bar) -> Layer {
    let mut layer = Layer::default();
    let (x, y) = (at.x_px + 34.0, at.y_px);
    let halo = Stroke::drawn(palette::PAPER.at(0.85), 4.0);
    let mut outline = Path::default();
    outline.ring([
        (x, y - 5.0),
        (x + bar.length_px, y - 5.0),
        (x + bar.length_px, y),
        (x, y),
    ]);
    let outline = Arc::new(outline);
    layer.stroke(outline.clone(), halo, 0.0);
    layer.fill(outline.clone(), Fill::Flat(palette::PAPER));
    let mut half = Path::default();
    let middle = x + bar.length_px / 2.0;
    half.ring([(x, y - 5.0), (middle, y - 5.0), (middle, y), (x, y)]);
    layer.fill(half, Fill::Flat(palette::INK));
    layer.stroke(outline, Stroke::drawn(palette::INK, palette::MEDIUM_PX), 0.0);
    layer
        .items
        .push(words((x + bar.length_px, y - 15.0), bar.words.clone()));
    layer.items.push(words((x, y - 15.0), "0".to_owned()));

    if let Some(said) = &bar.contours {
        let mut said = words((x + bar.length_px + 30.0, y - 15.0), said.clone());
        if let Item::Words(words) = &mut said {
            words.align = Align::Right;
            words.is_bold = false;
            words.color = palette::CONTOUR_WORDS;
        }
        layer.items.push(said);
    }
    let (north_x, foot) = (at.x_px + 8.0, y + 1.0);
    let mut right = Path::default();
    right.ring([(north_x, foot - 34.0), (north_x + 7.0, foot), (north_x, foot - 7.0)]);
    let mut left = Path::default();
    left.ring([(north_x, foot - 34.0), (north_x - 7.0, foot), (north_x, foot - 7.0)]);
    let mut both = Path::default();
    both.ring([
        (north_x, foot - 34.0),
        (north_x + 7.0, foot),
        (north_x, foot - 7.0),
        (north_x - 7.0, foot),
    ]);
    let both = Arc::new(both);
    layer.stroke(both.clone(), halo, 0.0);
    layer.fill(left, Fill::Flat(palette::INK));
    layer.fill(right, Fill::Flat(palette::PAPER));
    layer.stroke(both, Stroke::drawn(palette::INK, palette::MEDIUM_PX), 0.0);
    layer.items.push(words((north_x, foot - 44.0), "N".to_owned()));
    layer
}

fn named(length_px: f64, count: f64, unit: &str) -> Bar {
    Bar {
        length_px,
        words: format!("{count} {unit}"),
        contours: None,
    }
}

/// The largest of 1, 2, 5, 10, 20, … (and 0.1, 0.2, 0.5 …) that is not above `most`.
fn round_down(most: f64) -> f64 {
    let decade = hobnail_core::number::power(10.0, hobnail_core::number::log10(most).floor());
    [5.0, 2.0]
        .into_iter()
        .map(|step| step * decade)
        .find(|length| *length <= most)
        .unwrap_or(decade)
}

fn words(at: (f64, f64), text: String) -> Item {
    Item::Words(Words {
        at,
        shift_px: (0.0, 0.0),
        text,
        size_px: 12.0,
        is_bold: true,
        color: palette::INK,
        halo: palette::PAPER.at(0.85),
        angle_rad: 0.0,
        align: Align::Middle,
        from_px_per_m: 0.0,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_a_round_length_that_fits() {
        let metric = bar(0.8, 160.0, UnitSystem::Metric);
        assert_eq!(metric.words, "200 m");
        assert!((metric.length_px - 160.0).abs() < 1e-9);
        let feet = bar(0.8, 160.0, UnitSystem::UsCustomary);
        assert_eq!(feet.words, "500 ft");
        assert!((feet.length_px - 500.0 * 0.3048 * 0.8).abs() < 1e-9);
        assert_eq!(bar(0.01, 160.0, UnitSystem::Metric).words, "10 km");
        assert_eq!(bar(0.01, 160.0, UnitSystem::UsCustomary).words, "5 mi");
    }
}
