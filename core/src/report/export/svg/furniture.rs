//! What stands around a drawing: heading, scale bar, north arrow, legend, and what it may be used for.

use super::MARGIN_MM;
use super::writer::{Anchor, Writer, number};
use crate::figures::unit::System;
use crate::number as float;
use crate::report::drawing::tones;
use crate::report::drawing::words::{constraint_word, use_word};
use crate::report::export::sheet::{
    GLYPH_SHARE, Hatch, Look, MEDIUM_MM, Sheet, Words, hatch_of_use, look_of_constraint,
};
use crate::say;
use crate::study::Study;

/// The narrowest sheet, in millimeters: the heading and the note need it.
const LEAST_WIDTH_MM: f64 = 180.0;

/// Feet in meters.
const FOOT_M: f64 = 0.3048;

/// Height of ordinary type, and from line to line, in millimeters.
const TYPE_MM: f64 = 2.6;
const LINE_MM: f64 = 4.2;

/// Longest scale bar, in millimeters.
const BAR_MM: f64 = 60.0;

/// Adds it below a drawing of this size; gives back the size of the sheet. All in millimeters.
pub(super) fn add(
    study: &Study,
    sheet: &Sheet,
    scale: f64,
    system: System,
    (width_mm, height_mm): (f64, f64),
    out: &mut Writer,
) -> (f64, f64) {
    let document = study.document();
    let width = (width_mm + 2.0 * MARGIN_MM).max(LEAST_WIDTH_MM);
    let (left, right) = (MARGIN_MM, width - MARGIN_MM);
    let mut y = height_mm + 2.0 * MARGIN_MM;
    out.open_layer("sheet", say!("export-layer-sheet"));
    out.open_look(&Look {
        fill: Some((tones::INK, 1.0)),
        ..Look::default()
    });
    let held = document.alternatives.get(&study.alternative());
    let alternative = held.map_or("", |held| held.name.as_str());
    say_at(out, (left, y), &document.heading.name, 5.5, true, Anchor::Start);
    let scope = study.scope().in_words(document);
    let under = scope.map_or_else(
        || alternative.to_owned(),
        |scope| [alternative, " (", &scope, ")"].concat(),
    );
    y += 6.5;
    say_at(out, (left, y), &under, 3.4, false, Anchor::Start);
    bar(out, (right, y), scale, system);
    y += LINE_MM + 1.5;
    y = legend(out, sheet, (left, y), right - 75.0);
    let said = [
        (document.heading.about.as_str(), false),
        (&sheet.contours, false),
        (say!("export-note"), true),
    ];
    for (text, is_bold) in said {
        for line in wrapped(text, right - left) {
            say_at(out, (left, y), &line, TYPE_MM, is_bold, Anchor::Start);
            y += LINE_MM;
        }
    }
    out.close("g");
    out.close("g");
    (width, y + MARGIN_MM - LINE_MM)
}

fn say_at(out: &mut Writer, at: (f64, f64), text: &str, size_mm: f64, is_bold: bool, anchor: Anchor) {
    let words = Words {
        at,
        text: text.to_owned(),
        size_mm,
        angle_rad: 0.0,
        is_bold,
    };
    out.words(at, &words, anchor, false);
}

/// The scale bar with the scale in words, and the north arrow left of it; `right` is where the bar ends.
fn bar(out: &mut Writer, (right, y): (f64, f64), scale: f64, system: System) {
    let (unit_m, unit) = match system {
        System::Metric => (1.0, "m"),
        System::Customary => (FOOT_M, say!("drawing-feet")),
    };
    let length = round_down(BAR_MM * scale / 1e3 / unit_m);
    let length_mm = length * unit_m * 1e3 / scale;
    let start = right - length_mm;
    let outline = rectangle((start, y), (length_mm, 1.6));
    line_around(out, &outline, tones::PAPER);
    out.path(&rectangle((start, y), (length_mm / 2.0, 1.6)));
    say_at(out, (start, y - 2.2), "0", TYPE_MM, true, Anchor::Middle);
    let end = [&length.to_string(), " ", unit].concat();
    say_at(out, (right, y - 2.2), &end, TYPE_MM, true, Anchor::End);
    let whole = crate::figures::display::grouped(scale, 0);
    let feet = scale / 12.0;
    let words = if system == System::Customary && feet.fract() == 0.0 {
        say!(
            "export-scale-feet",
            feet = crate::figures::display::grouped(feet, 0),
            scale = whole
        )
    } else {
        say!("export-scale", scale = whole)
    };
    say_at(out, (right, y + 4.4), &words, TYPE_MM, false, Anchor::End);
    let (x, foot) = (start - 9.0, y + 2.0);
    line_around(
        out,
        &arrow((x, foot), &[(0.0, -12.0), (2.4, 0.0), (0.0, -2.4), (-2.4, 0.0)]),
        tones::PAPER,
    );
    out.path(&arrow((x, foot), &[(0.0, -12.0), (0.0, -2.4), (-2.4, 0.0)]));
    say_at(out, (x, foot - 14.4), say!("export-north"), 3.2, true, Anchor::Middle);
}

/// A closed path filled in a color, with an ink line around it.
fn line_around(out: &mut Writer, path: &str, color: u32) {
    out.open_look(&Look {
        fill: Some((color, 1.0)),
        stroke: Some((tones::INK, MEDIUM_MM)),
        ..Look::default()
    });
    out.path(path);
    out.close("g");
}

fn rectangle((x, y): (f64, f64), (width, height): (f64, f64)) -> String {
    arrow((x, y), &[(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)])
}

/// A closed path through corners about a place.
fn arrow((x, y): (f64, f64), corners: &[(f64, f64)]) -> String {
    let mut path = String::from("M");
    for (right, down) in corners {
        for part in [x + right, y + down] {
            path.push(' ');
            number(part, &mut path);
        }
    }
    path.push('Z');
    path
}

/// Swatches of what is drawn, each with its word; gives back where the next line stands.
fn legend(out: &mut Writer, sheet: &Sheet, (left, top): (f64, f64), right: f64) -> f64 {
    let outline = Some((tones::INK, MEDIUM_MM / 2.0));
    let mut held: Vec<(Look, &str)> = Vec::new();
    for land_use in &sheet.uses {
        let look = Look {
            fill: Some((tones::tint(*land_use), 1.0)),
            hatch: hatch_of_use(*land_use).map(|hatch| (hatch, tones::tone(*land_use))),
            stroke: outline,
            ..Look::default()
        };
        held.push((look, use_word(*land_use)));
    }
    if sheet.is_mixed {
        let look = Look {
            hatch: Some((Hatch::Bands, tones::SOFT_INK)),
            stroke: outline,
            ..Look::default()
        };
        held.push((look, say!("export-layer-second-use")));
    }
    for kind in &sheet.constraints {
        held.push((look_of_constraint(*kind), constraint_word(*kind)));
    }
    if !sheet.contours.is_empty() {
        // Waves in the brown of contours say at this size what they are.
        let look = Look {
            hatch: Some((Hatch::Waves, tones::CONTOUR)),
            ..Look::default()
        };
        held.push((look, say!("export-layer-contours")));
    }
    let (mut x, mut y) = (left, top);
    for (look, word) in held {
        let width = 8.0 + word.chars().count() as f64 * TYPE_MM * GLYPH_SHARE + 5.0;
        if x + width > right && x > left {
            (x, y) = (left, y + LINE_MM + 0.8);
        }
        let swatch = rectangle((x, y - 1.7), (6.0, 3.4));
        out.open_look(&look);
        out.path(&swatch);
        out.close("g");
        if let Some((hatch, color)) = look.hatch {
            out.open_hatch(hatch, color);
            out.path(&swatch);
            out.close("g");
        }
        say_at(out, (x + 7.5, y), word, TYPE_MM, false, Anchor::Start);
        x += width;
    }
    y + LINE_MM + 2.0
}

/// Text in lines that fit a width in millimeters.
fn wrapped(text: &str, width_mm: f64) -> Vec<String> {
    let most = (width_mm / (TYPE_MM * GLYPH_SHARE)).max(20.0) as usize;
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + word.chars().count() < most => line.extend([" ", word]),
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The largest of 1, 2, 5, 10, 20, … that is not above `most`.
fn round_down(most: f64) -> f64 {
    let decade = float::power(10.0, float::log10(most).floor());
    let mut steps = [5.0, 2.0].into_iter().map(|step| step * decade);
    steps.find(|length| *length <= most).unwrap_or(decade)
}
