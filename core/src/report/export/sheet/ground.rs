//! Contours of the ground, from the plan's heights: each fifth heavier, with its height beside it.
//!
//! What they are worth is said with them: they come from a grid, and are no survey.

use super::{FINE_MM, Item, LayerId, MEDIUM_MM, Sheet, lined};
use crate::figures::unit::System;
use crate::report::drawing::contours::{Field, levels};
use crate::report::drawing::ground::{HEAVIER_EACH, interval, mean_slope};
use crate::report::drawing::tones;
use crate::say;
use crate::study::Study;

/// Contours lie so far apart on paper at least, in millimeters, where the ground rises as it does on average. Common
/// practice, no source.
const APART_MM: f64 = 4.0;

/// Adds the contours, and what is to be said of them. Cost: linear in the heights, for each contour.
pub(super) fn add_contours(study: &Study, scale: f64, system: System, sheet: &mut Sheet) {
    let Some(held) = &study.document().topography else {
        return;
    };
    let field = Field::of(held);
    let Some(range) = field.range() else { return };
    let (interval, unit_mm) = interval(APART_MM * scale / 1e3, mean_slope(held), system);
    let (first, levels) = levels(range, interval * unit_mm);
    let (mut thin, mut heavy) = (Vec::new(), Vec::new());
    let lines = field.lines(&levels);
    if lines.is_empty() {
        return;
    }
    for (place, course) in lines {
        let number = first + place as i32;
        let items = if number % HEAVIER_EACH == 0 {
            &mut heavy
        } else {
            &mut thin
        };
        items.push(Item::Contour(course, f64::from(number) * interval));
    }
    let unit = match system {
        System::Metric => "m",
        System::Customary => say!("drawing-feet"),
    };
    let spacing = (f64::from(held.spacing_mm) / unit_mm * 10.0).round() / 10.0;
    sheet.contours = say!(
        "export-contours-about",
        interval = interval.to_string(),
        spacing = spacing.to_string(),
        unit = unit,
        source = held.source
    );
    sheet.add(LayerId::Contours, lined(tones::CONTOUR, FINE_MM, ""), thin);
    sheet.add(LayerId::IndexContours, lined(tones::CONTOUR, MEDIUM_MM, ""), heavy);
}
