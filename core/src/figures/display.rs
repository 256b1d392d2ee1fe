//! How numbers are written: in full for a basis, and rounded to what the range allows for the page.
//!
//! This is the only place where numbers are rounded. Metric and US customary differ here and nowhere else.

use serde::Serialize;

use super::leaf::Cell;
use super::range::{DRAWS, Range};
use super::unit::{self, System, Unit};
use crate::number;
use crate::say;
use crate::text;

/// Significant digits of a number in a basis. Enough for the printed steps to lead back to the printed results.
pub const FULL_DIGITS: i32 = 6;

/// A number as the page shows it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shown {
    /// All of it: `about 40 homes, likely 32 to 47`.
    pub text: String,
    /// The number and its unit alone: `40 homes`.
    pub short: String,
    /// What the number is rounded to, in coherent units; `None` when there is no number.
    pub step: Option<f64>,
}

/// A number rounded to what its range allows.
///
/// The step is the largest of 1, 2, 5 times a power of ten that is at most a tenth of the range's width; without a
/// range, three significant digits. Counted things and shares are never shown finer than whole ones and whole percents.
#[must_use]
pub fn shown(cell: &Cell, range: &Range, unit: &Unit, system: System) -> Shown {
    let value = match cell {
        Cell::Number(value) => *value,
        Cell::Unknown(reason) => {
            return Shown {
                text: unknown(reason),
                short: "—".to_owned(),
                step: None,
            };
        }
    };
    let scale = unit.shown(system).scale;
    let step = step(value, range, unit, system);
    let short = with_unit(&rounded(value / scale, step), unit, system);
    let text = match range {
        Range::Certain => short.clone(),
        Range::Likely { low, high, failed } => {
            let low = rounded(low / scale, step);
            let high = rounded(high / scale, step);
            if low == high && low == rounded(value / scale, step) {
                // The doubt is less than the rounding: a range would only repeat the number.
                with_missing_draws(short.clone(), *failed)
            } else {
                let about = say!("figures-about-range", amount = short, low = low, high = high);
                with_missing_draws(about, *failed)
            }
        }
        Range::Unknown { failed } => with_missing_draws(say!("figures-about", amount = short), *failed),
    };
    Shown {
        text,
        short,
        step: Some(step * scale),
    }
}

fn with_missing_draws(shown: String, failed: u32) -> String {
    if failed == 0 {
        return shown;
    }
    let draws = grouped(DRAWS as f64, 0);
    say!("figures-draws-missing", shown = shown, failed = failed, draws = draws)
}

/// What stands in the place of a number that there is none of.
pub(super) fn unknown(reason: &str) -> String {
    [say!("figures-unknown"), " ", reason].concat()
}

/// What a number is rounded to, in shown units.
fn step(value: f64, range: &Range, unit: &Unit, system: System) -> f64 {
    let scale = unit.shown(system).scale;
    let width = match range {
        Range::Likely { low, high, .. } => (high - low) / scale,
        Range::Certain | Range::Unknown { .. } => 0.0,
    };
    let step = if width > 0.0 {
        round_step(width / 10.0)
    } else if unit.finest > 0.0 || value == 0.0 {
        0.0
    } else {
        ten_to(magnitude(value / scale) - 2)
    };
    let finest = unit.finest / scale;
    if step > 0.0 || finest > 0.0 {
        step.max(finest)
    } else {
        1.0
    }
}

/// The largest of 1, 2, 5 times a power of ten that is at most `most`.
fn round_step(most: f64) -> f64 {
    let ten = ten_to(magnitude(most));
    [5.0, 2.0]
        .into_iter()
        .map(|times| times * ten)
        .find(|step| *step <= most)
        .unwrap_or(ten)
}

/// A number as [`shown`] rounds it, and what it is rounded to; both in shown units.
pub(super) fn as_shown(value: f64, range: &Range, unit: &Unit, system: System) -> (f64, f64) {
    let step = step(value, range, unit, system);
    ((value / unit.shown(system).scale / step).round() * step, step)
}

/// How many decimal places a number has that is rounded to this step.
pub(super) fn places(step: f64) -> usize {
    (-magnitude(step)).max(0) as usize
}

fn rounded(value: f64, step: f64) -> String {
    grouped((value / step).round() * step, places(step))
}

/// A number in full with its unit, for a basis: six significant digits, none of them idle.
#[must_use]
pub fn in_full(value: f64, unit: &Unit, system: System) -> String {
    with_unit(&digits(value / unit.shown(system).scale), unit, system)
}

/// A constant of a definition, for formulas in words.
#[must_use]
pub fn number_in_words(value: f64, unit: &Unit) -> String {
    in_full(value, unit, System::Metric)
}

/// Six significant digits; whole numbers in full up to fifteen digits; idle zeros after the point left out.
#[must_use]
pub fn digits(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    if value.fract() == 0.0 && value.abs() < 1e15 {
        return grouped(value, 0);
    }
    let places = FULL_DIGITS - 1 - magnitude(value);
    if !(0..=12).contains(&places) && !(-9..0).contains(&places) {
        return scientific(value);
    }
    let text = grouped(value, places.max(0) as usize);
    match text.split_once('.') {
        Some((whole, fraction)) => match fraction.trim_end_matches('0') {
            "" => whole.to_owned(),
            fraction => format!("{whole}.{fraction}"),
        },
        None => text,
    }
}

fn scientific(value: f64) -> String {
    let digits = |exponent: i32| {
        // In two steps: no float holds a power of ten beyond 308 digits.
        let value = value / ten_to(exponent / 2) / ten_to(exponent - exponent / 2);
        grouped(value, FULL_DIGITS as usize - 1)
    };
    let exponent = magnitude(value);
    let shown = digits(exponent);
    // Nines may round up to ten, whose digit stands one place further up.
    let (exponent, shown) = if text::holds(&shown, "10.") {
        (exponent + 1, digits(exponent + 1))
    } else {
        (exponent, shown)
    };
    [&shown, "e", &grouped(f64::from(exponent), 0)].concat()
}

/// A number with so many decimal places, groups of three parted by commas, and a true minus sign.
#[must_use]
pub fn grouped(value: f64, places: usize) -> String {
    let text = format!("{:.places$}", value.abs());
    let (whole, fraction) = text
        .split_once('.')
        .map_or((text.as_str(), None), |(w, f)| (w, Some(f)));
    let mut out = String::new();
    // A number that rounds to zero has no sign.
    if value < 0.0 && text.chars().any(|digit| ('1'..='9').contains(&digit)) {
        out.push('−');
    }
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    if let Some(fraction) = fraction {
        out.push('.');
        out.push_str(fraction);
    }
    out
}

/// A number with its unit, in the singular for 1.
pub(super) fn with_unit(number: &str, unit: &Unit, system: System) -> String {
    let shown = unit.shown(system);
    let name = if number == "1" { shown.one } else { shown.many };
    match name {
        "" => number.to_owned(),
        "%" => format!("{number}%"),
        name => [number, " ", &unit::in_words(name)].concat(),
    }
}

/// The power of ten a number's first digit stands at: 0 for 1 to 9.99…, −1 for 0.1. The number must not be zero.
fn magnitude(value: f64) -> i32 {
    let value = value.abs();
    let near = number::log10(value).floor() as i32;
    // Beside a power of ten the logarithm may be off by its last digit.
    if ten_to(near + 1) <= value {
        near + 1
    } else if ten_to(near) > value {
        near - 1
    } else {
        near
    }
}

/// A power of ten: the number nearest to it up to 22 digits before or after the point, where powers are whole numbers
/// that a float holds; beyond, off by a few units in the last place.
fn ten_to(exponent: i32) -> f64 {
    let power = (0..exponent.abs()).fold(1.0, |power, _| power * 10.0);
    if exponent < 0 { 1.0 / power } else { power }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::unit;

    #[track_caller]
    fn check(value: f64, range: Range, unit: unit::Unit, system: System, expected: &str) {
        assert_eq!(shown(&Cell::Number(value), &range, &unit, system).text, expected);
    }

    fn likely(low: f64, high: f64) -> Range {
        Range::Likely { low, high, failed: 0 }
    }

    #[test]
    fn powers_of_ten_are_the_nearest_there_are() {
        for exponent in -22..=22 {
            let nearest: f64 = format!("1e{exponent}").parse().unwrap();
            assert_eq!(ten_to(exponent).to_bits(), nearest.to_bits(), "{exponent}");
        }
    }

    #[test]
    fn numbers_are_rounded_to_what_the_range_allows() {
        let metric = System::Metric;
        check(
            39.7,
            likely(32.2, 47.4),
            unit::HOMES,
            metric,
            "about 40 homes, likely 32 to 47",
        );
        check(
            1234.0,
            likely(900.0, 1600.0),
            unit::HOMES,
            metric,
            "about 1,250 homes, likely 900 to 1,600",
        );
        check(
            0.6249,
            likely(0.551, 0.705),
            unit::SHARE,
            metric,
            "about 62%, likely 55 to 71",
        );
        check(
            1.3411,
            likely(1.15, 1.44),
            unit::WALKING_SPEED,
            metric,
            "about 1.34 m/s, likely 1.14 to 1.44",
        );
        check(
            0.3,
            likely(0.1, 0.9),
            unit::HOMES,
            metric,
            "about 0 homes, likely 0 to 1",
        );
        check(640.0, Range::Certain, unit::HOMES, metric, "640 homes");
        check(1.0, Range::Certain, unit::HOMES, metric, "1 home");
        check(123_456.0, Range::Certain, unit::LAND, metric, "12.3 ha");
        check(123_456.0, Range::Certain, unit::LAND, System::Customary, "30.5 acres");
        check(0.0, Range::Certain, unit::LAND, metric, "0 ha");
        check(
            5.0,
            Range::Unknown { failed: 300 },
            unit::JOBS,
            metric,
            "about 5 jobs; no range (no result in 300 of 2,000 draws)",
        );
    }

    #[test]
    fn a_missing_number_is_shown_with_its_reason() {
        let cell = Cell::Unknown("no center is drawn".to_owned());
        let text = shown(&cell, &Range::Certain, &unit::SHARE, System::Metric).text;
        assert_eq!(text, "cannot be worked out: no center is drawn");
    }

    #[test]
    fn numbers_in_full_have_six_digits_and_no_idle_ones() {
        for (value, expected) in [
            (1234.0, "1,234"),
            (0.7, "0.7"),
            (1.0 / 3.0, "0.333333"),
            (-2.5, "−2.5"),
            (1_234_567.891, "1,234,568"),
            (12.345_678, "12.3457"),
            (0.000_012_345_678, "0.0000123457"),
            (1.5e-12, "1.50000e−12"),
            (2.5e20, "2.50000e20"),
            (-9.999_999_9e20, "−1.00000e21"),
            (3.25e300, "3.25000e300"),
            (1e-300, "1.00000e−300"),
            (0.0, "0"),
        ] {
            assert_eq!(digits(value), expected);
        }
        assert_eq!(in_full(0.7, &unit::SHARE, System::Metric), "70%");
        assert_eq!(grouped(-0.001, 1), "0.0");
        assert_eq!(grouped(-1_234_567.0, 0), "−1,234,567");
    }

    #[test]
    fn steps_are_round() {
        for (most, expected) in [
            (1.0, 1.0),
            (1.99, 1.0),
            (2.0, 2.0),
            (4.99, 2.0),
            (5.0, 5.0),
            (0.07, 0.05),
            (1000.0, 1000.0),
        ] {
            assert!((round_step(most) / expected - 1.0).abs() < 1e-12, "{most}");
        }
    }
}
