//! The heights of the ground: contours as thin brown lines, each fifth heavier and labeled with its height, and slopes in
//! classes. Brown is what maps draw the ground in, by common practice.

use hobnail_core::figures::unit::System;
use hobnail_core::measures::slopes::Slopes;
use hobnail_core::number;
use hobnail_core::plan::document::{Topography, UnitSystem};
use hobnail_core::report::drawing::contours::{Field, levels};
use hobnail_core::report::drawing::ground::{self, HEAVIER_EACH};

use crate::canvas::palette;
use crate::canvas::picture::{Align, Fill, Item, Layer, Path, Stroke, Words};
use crate::canvas::scene::Scale;

/// Contours lie so far apart on screen at least, where the ground rises as it does on average. Common practice, no source.
const APART_PX: f64 = 16.0;
/// Labels of a line may stand so close, in meters, and are so far apart on screen.
const LABELS_M: f64 = 25.0;
const LABELS_PX: f64 = 330.0;
const MOST_LABELS: f64 = 1_000.0;
const LABEL_PX: f64 = 11.0;
/// Widths of a contour and of each fifth.
const THIN_PX: f64 = 0.9;
const INDEX_PX: f64 = 2.0;

/// The interval between contours at a scale: the number in the page's unit, and how long that unit is in millimeters.
#[must_use]
pub fn interval(px_per_m: f64, mean_slope: f64, units: UnitSystem) -> (f64, f64) {
    let system = match units {
        UnitSystem::Metric => System::Metric,
        UnitSystem::UsCustomary => System::Customary,
    };
    ground::interval(APART_PX / px_per_m, mean_slope, system)
}

/// The contours, undermost the thin ones; their labels; and how many lines there are. Cost: linear in the heights for
/// each level.
#[must_use]
pub fn contours(held: &Topography, (interval, unit_mm): (f64, f64)) -> (Layer, Layer, usize) {
    let field = Field::of(held);
    let Some(range) = field.range() else {
        return (Layer::default(), Layer::default(), 0);
    };
    let (first, levels) = levels(range, interval * unit_mm);
    let lines = field.lines(&levels);
    let (mut thin, mut heavy) = (Path::default(), Path::default());
    let mut labels = Layer::default();
    let count = lines.len();
    for (place, (line, is_closed)) in lines {
        let number = first + place as i32;
        let is_heavy = number % HEAVIER_EACH == 0;
        if is_heavy {
            label(&line, (f64::from(number) * interval).to_string(), &mut labels);
        }
        let path = if is_heavy { &mut heavy } else { &mut thin };
        match is_closed {
            true => path.ring(line),
            false => path.line(line),
        }
    }
    let mut layer = Layer::default();
    layer.stroke(thin, Stroke::drawn(palette::CONTOUR, THIN_PX), 0.0);
    layer.stroke(heavy, Stroke::drawn(palette::CONTOUR, INDEX_PX), 0.0);
    (layer, labels, count)
}

/// Labels along a line, from its middle on both ways: the closer to it the sooner seen.
fn label(line: &[(f64, f64)], text: String, labels: &mut Layer) {
    let runs = || line.iter().zip(line.iter().skip(1));
    let length_of = |(a, b): (&(f64, f64), &(f64, f64))| number::length(b.0 - a.0, b.1 - a.1);
    let length_m: f64 = runs().map(length_of).sum();
    let width_px = text.len() as f64 * LABEL_PX;
    // The place of a label among those to either side of the middle; of a line too long to be seen fewer.
    let step_m = LABELS_M.max(length_m / MOST_LABELS);
    let beside = (length_m / 2.0 / step_m).floor();
    let (mut place, mut walked_m) = (-beside, 0.0);
    for (a, b) in runs() {
        let run_m = length_of((a, b));
        while place <= beside && run_m > 0.0 && length_m / 2.0 + place * step_m <= walked_m + run_m {
            let share = (length_m / 2.0 + place * step_m - walked_m) / run_m;
            // With how many others it is left out at half the scale.
            let halvings = (place as i32).trailing_zeros().min(8);
            let apart_m = step_m * f64::from(1 << halvings);
            let (from, to) = if a.0 <= b.0 { (a, b) } else { (b, a) };
            labels.items.push(Item::Words(Words {
                at: (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share),
                shift_px: (0.0, 0.0),
                text: text.clone(),
                size_px: LABEL_PX,
                is_bold: false,
                color: palette::CONTOUR_WORDS,
                halo: palette::PAPER.at(0.85),
                angle_rad: number::atan2(to.1 - from.1, to.0 - from.0),
                align: Align::Middle,
                from_px_per_m: (LABELS_PX / apart_m).max(width_px / length_m),
            }));
            place += 1.0;
        }
        walked_m += run_m;
    }
}

/// Slopes in classes between these borders over the whole of the heights, the steeper upon the flatter.
#[must_use]
pub fn slopes(held: &Topography, borders: [i32; 4]) -> Layer {
    let slopes = Slopes::of(held);
    let mut layer = Layer::default();
    if slopes.values.is_empty() {
        return layer;
    }
    // A border all around that is flatter than anything, so that what is steep is closed at the edge.
    const OUTSIDE: i32 = -1_000_000_000;
    let columns = slopes.columns + 2;
    let mut values = vec![OUTSIDE; held.heights_mm.len()];
    for (place, slope) in slopes.values.iter().enumerate() {
        let (column, row) = (place % slopes.columns, place / slopes.columns);
        if let Some(value) = values.get_mut((row + 1) * columns + column + 1) {
            *value = *slope;
        }
    }
    let field = Field {
        columns,
        values: &values,
        ..Field::of(held)
    };
    for (class, border) in [0].into_iter().chain(borders).enumerate() {
        let mut path = Path::default();
        for (_, (ring, _)) in field.lines(&[border]) {
            path.ring(ring);
        }
        layer.fill(path, Fill::Flat(palette::class(Scale::Ramp, class as u8)));
    }
    layer
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::PlanPoint;

    /// 10 % to the east, 40 by 30 points of 10 m, from 100 m on.
    fn plane() -> Topography {
        Topography {
            south_west: PlanPoint::new(0, 0),
            spacing_mm: 10_000,
            columns: 40,
            heights_mm: (0..1200).map(|place| 100_000 + (place % 40) * 1_000).collect(),
            source: String::new(),
        }
    }

    #[test]
    fn the_interval_follows_scale_steepness_and_unit() {
        let metric = |px_per_m, slope| interval(px_per_m, slope, UnitSystem::Metric).0.to_string();
        assert_eq!([metric(2.0, 0.1), metric(0.5, 0.1), metric(0.2, 0.1)], ["1", "5", "10"]);
        assert_eq!([metric(1.0, 0.0), metric(0.001, 1.0)], ["1", "100"]);
        let (feet, unit_mm) = interval(1.0, 0.05, UnitSystem::UsCustomary);
        assert_eq!(
            (feet.to_string(), unit_mm.to_string()),
            ("5".to_owned(), "304.8".to_owned())
        );
        // Of 1170 steps east each rises 10 %, of 1160 steps north none.
        assert!((ground::mean_slope(&plane()) - 117.0 / 2330.0).abs() < 1e-12);
    }

    #[test]
    fn each_fifth_contour_is_heavier_and_labeled() {
        let (lines, labels, count) = contours(&plane(), (2.0, 1_000.0));
        // 100 to 139 m: 102, 104 … 138, since the lowest has no line.
        assert_eq!(count, 19);
        let [Item::Shape(thin), Item::Shape(heavy)] = lines.items.as_slice() else {
            panic!("{lines:?}")
        };
        assert_eq!((thin.path.runs().count(), heavy.path.runs().count()), (16, 3));
        let mut said: Vec<&str> = Vec::new();
        for item in &labels.items {
            let Item::Words(words) = item else { panic!("{item:?}") };
            assert!((words.at.0 - (words.text.parse::<f64>().unwrap() - 100.0) * 10.0).abs() < 1e-6);
            assert!(words.angle_rad.abs() <= std::f64::consts::FRAC_PI_2 + 1e-9);
            if !said.contains(&words.text.as_str()) {
                said.push(&words.text);
            }
        }
        assert_eq!(said, ["110", "120", "130"]);
    }

    #[test]
    fn slopes_are_filled_class_upon_class_to_the_edge() {
        let layer = slopes(&plane(), hobnail_core::measures::slopes::SHIPPED);
        let bounds = |item: &Item| {
            let Item::Shape(shape) = item else { panic!("{item:?}") };
            let points = shape.path.runs().flat_map(|(points, _)| points.to_vec());
            points.fold([f64::INFINITY, f64::NEG_INFINITY], |[west, east], at| {
                [west.min(at.0), east.max(at.0)]
            })
        };
        // All of it is 10 %: above 0, 5 and 8.
        assert_eq!(layer.items.len(), 3);
        for item in &layer.items {
            let [west, east] = bounds(item);
            assert!(
                (west - 10.0).abs() < 0.01 && (east - 380.0).abs() < 0.01,
                "{west} {east}"
            );
        }
    }
}
