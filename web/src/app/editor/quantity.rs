//! Numbers as they are typed and shown in the page's units, and as they are stored: whole millimeters, thousandths, parts
//! per million, or a setting's own unit.
//!
//! A stored number is shown by the roundest number that gives the same stored one back, so that what is shown can be
//! typed again and changes nothing.

use hobnail_core::figures::unit::ACRE_M2;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::say;

/// A number as it is shown in one system of units.
#[derive(Clone, Copy, Debug)]
pub struct Shown {
    /// The unit behind it.
    pub unit: fn() -> &'static str,
    /// Stored units in one shown unit.
    pub scale: f64,
    /// What a press of less or more changes, in shown units.
    pub step: f64,
}

/// What a number measures.
#[derive(Clone, Copy, Debug)]
pub struct Quantity {
    /// In metric units.
    pub metric: Shown,
    /// In US customary units.
    pub customary: Shown,
    /// Whether it is stored as a whole number.
    pub is_whole: bool,
}

/// A number that can be changed: what it is, and between which stored values it lies.
#[derive(Clone, Copy, Debug)]
pub struct Bounded {
    /// What it is, as a person reads it.
    pub label: &'static str,
    /// What it measures.
    pub quantity: &'static Quantity,
    /// The least and the greatest stored value.
    pub bounds: [f64; 2],
}

const FOOT_MM: f64 = 304.8;
const SQUARE_FOOT_M2: f64 = 0.092_903_04;
const MILE_KM: f64 = 1.609_344;

const fn shown(unit: fn() -> &'static str, scale: f64, step: f64) -> Shown {
    Shown { unit, scale, step }
}

const fn same(unit: fn() -> &'static str, scale: f64, step: f64) -> Quantity {
    Quantity {
        metric: shown(unit, scale, step),
        customary: shown(unit, scale, step),
        is_whole: true,
    }
}

const fn length(metric_step: f64, customary_step: f64) -> Quantity {
    Quantity {
        metric: shown(|| "m", 1000.0, metric_step),
        customary: shown(|| say!("page-unit-feet"), FOOT_MM, customary_step),
        is_whole: true,
    }
}

/// Widths of strips, heights and setbacks, stored in millimeters.
pub const WIDTH: Quantity = length(0.1, 0.5);
/// Widths and depths of lots, stored in millimeters.
pub const LOT_LENGTH: Quantity = length(0.5, 1.0);
/// Speed of traffic, stored in kilometers per hour.
pub const SPEED: Quantity = Quantity {
    metric: shown(|| "km/h", 1.0, 5.0),
    customary: shown(|| say!("page-unit-mph"), MILE_KM, 5.0),
    is_whole: true,
};
/// Floor area, stored in square meters.
pub const FLOOR: Quantity = Quantity {
    metric: shown(|| "m²", 1.0, 10.0),
    customary: shown(|| say!("page-unit-square-feet"), SQUARE_FOOT_M2, 100.0),
    is_whole: true,
};
/// Walking pace, stored in millimeters per second.
pub const PACE: Quantity = Quantity {
    metric: shown(|| "m/s", 1000.0, 0.05),
    customary: shown(|| say!("page-unit-feet-per-second"), FOOT_MM, 0.1),
    is_whole: true,
};
/// Walking speed of a factor, which is written in feet per second.
pub const FACTOR_PACE: Quantity = Quantity {
    metric: shown(|| "m/s", 1000.0 / FOOT_MM, 0.05),
    customary: shown(|| say!("page-unit-feet-per-second"), 1.0, 0.1),
    is_whole: false,
};
/// Things that are counted.
pub const COUNT: Quantity = same(|| "", 1.0, 1.0);
/// Grades, stored in percent.
pub const GRADE: Quantity = loose(shown(|| "%", 1.0, 0.5), shown(|| "%", 1.0, 0.5));
/// Shares stored in thousandths.
pub const THOUSANDTHS: Quantity = same(|| "%", 10.0, 5.0);
/// Shares stored in parts per million.
pub const PARTS_PER_MILLION: Quantity = same(|| "%", 10_000.0, 5.0);
/// People per home, stored in thousandths.
pub const PEOPLE: Quantity = same(|| say!("page-unit-people"), 1000.0, 0.1);
/// Parking spaces, stored in hundredths.
pub const SPACES: Quantity = same(|| say!("page-unit-spaces"), 100.0, 0.5);
/// Jobs on a hectare of floor: shown as they are stored, or on 1,000 square feet.
pub const JOBS_ON_FLOOR: Quantity = Quantity {
    metric: shown(|| say!("page-unit-per-hectare"), 1.0, 10.0),
    customary: shown(|| say!("page-unit-per-1000-square-feet"), 10.0 / SQUARE_FOOT_M2, 0.1),
    is_whole: true,
};

/// Numbers of settings, stored in the coherent unit as they are chosen.
const fn loose(metric: Shown, customary: Shown) -> Quantity {
    Quantity {
        metric,
        customary,
        is_whole: false,
    }
}

/// Floor of a setting, stored in square meters.
pub const SETTING_FLOOR: Quantity = loose(
    shown(|| "m²", 1.0, 10.0),
    shown(|| say!("page-unit-square-feet"), SQUARE_FOOT_M2, 100.0),
);
/// Land of a setting, stored in square meters.
pub const SETTING_LAND: Quantity = loose(
    shown(|| "ha", 10_000.0, 0.01),
    shown(|| say!("page-unit-acres"), ACRE_M2, 0.05),
);
/// Time of a setting, stored in seconds.
pub const SETTING_TIME: Quantity = loose(shown(|| "s", 1.0, 1.0), shown(|| "s", 1.0, 1.0));
/// Length of a setting, stored in meters.
pub const SETTING_LENGTH: Quantity = loose(
    shown(|| "m", 1.0, 1.0),
    shown(|| say!("page-unit-feet"), FOOT_MM / 1000.0, 5.0),
);
/// Speed of traffic of a setting, stored in meters per second.
pub const SETTING_SPEED: Quantity = loose(
    shown(|| "km/h", 1.0 / 3.6, 5.0),
    shown(|| say!("page-unit-mph"), MILE_KM / 3.6, 5.0),
);

/// A share of a setting, stored as it is.
pub const SETTING_SHARE: Quantity = loose(shown(|| "%", 0.01, 5.0), shown(|| "%", 0.01, 5.0));
/// Homes by land of a setting, stored in homes to a square meter.
pub const SETTING_HOMES_BY_LAND: Quantity = loose(
    shown(|| say!("page-unit-homes-per-hectare"), 1e-4, 1.0),
    shown(|| say!("page-unit-homes-per-acre"), 1.0 / ACRE_M2, 0.25),
);

const POWERS: [f64; 4] = [1.0, 10.0, 100.0, 1000.0];

impl Quantity {
    /// As it is shown in these units.
    #[must_use]
    pub const fn shown(&self, units: UnitSystem) -> &Shown {
        match units {
            UnitSystem::Metric => &self.metric,
            UnitSystem::UsCustomary => &self.customary,
        }
    }

    fn stored(&self, number: f64, units: UnitSystem) -> f64 {
        let stored = number * self.shown(units).scale;
        if self.is_whole { stored.round() } else { stored }
    }

    /// The roundest number that gives `stored` back, at most to the thousandth.
    #[must_use]
    pub fn text(&self, stored: f64, units: UnitSystem) -> String {
        let number = stored / self.shown(units).scale;
        for coarse in [100.0, 10.0] {
            let round = (number / coarse).round() * coarse;
            if is_same(self.stored(round, units), stored) {
                return written(round, 0);
            }
        }
        for (places, power) in POWERS.iter().enumerate() {
            let digits = (number * power).round();
            if is_same(self.stored(digits / power, units), stored) {
                return written(digits, places);
            }
        }
        written((number * 1000.0).round(), 3)
    }

    /// Number and unit.
    #[must_use]
    pub fn words(&self, stored: f64, units: UnitSystem) -> String {
        let text = self.text(stored, units);
        match (self.shown(units).unit)() {
            "" => text,
            "%" => text + "%",
            unit => text + " " + unit,
        }
    }

    /// The next stored value on the grid of steps, up or down.
    fn stepped(&self, stored: f64, steps: i8, units: UnitSystem) -> f64 {
        let step = self.shown(units).step;
        let number = number(&self.text(stored, units)).unwrap_or_default() / step;
        // A hair, so that a number that lies on the grid but for its binary tail counts as on it.
        let next = if steps > 0 {
            (number + 1e-6).floor() + 1.0
        } else {
            (number - 1e-6).ceil() - 1.0
        };
        self.stored(next * step, units)
    }
}

impl Bounded {
    /// What is stored after a typed text or a step.
    ///
    /// # Errors
    /// A sentence that says what is wrong: no number, or one out of bounds.
    pub fn read(&self, stored: f64, change: &super::Change, units: UnitSystem) -> Result<f64, String> {
        let after = match change {
            super::Change::Text(text) if *text == self.quantity.text(stored, units) => stored,
            super::Change::Text(text) => {
                let number = number(text).ok_or_else(|| self.sentence(say!("page-not-a-number")))?;
                self.quantity.stored(number, units)
            }
            super::Change::Step(steps) => self.quantity.stepped(stored, *steps, units),
            super::Change::Pick(_) => stored,
        };
        let [least, most] = self.bounds;
        if after >= least && after <= most {
            return Ok(after);
        }
        let least = self.quantity.text(least, units);
        Err(self.sentence(&say!(
            "page-from-to",
            least = least,
            most = self.quantity.words(most, units)
        )))
    }

    fn sentence(&self, words: &str) -> String {
        self.label.to_owned() + ": " + words + "."
    }
}

/// Whether two stored numbers are the same but for the last places of their binary form.
pub(super) fn is_same(one: f64, other: f64) -> bool {
    (one - other).abs() <= other.abs() * 1e-9
}

/// A number that is not below zero, from its digits down to the last place.
pub(super) fn written(digits: f64, places: usize) -> String {
    let digits = digits.max(0.0) as u64;
    let power = POWERS.get(places).map_or(1, |power| *power as u64);
    let mut text = (digits / power).to_string();
    if places > 0 {
        let rest = (power + digits % power).to_string();
        text.push('.');
        text.push_str(rest.get(1..).unwrap_or_default());
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    text
}

/// A number of digits with at most one point; `None` for anything else. It is the nearest there is: digits and divisor
/// are whole numbers that a float holds. The standard library's reading of floats is not asked anywhere on the page,
/// since its table of powers of ten weighs 10 kB there.
#[must_use]
pub fn number(text: &str) -> Option<f64> {
    const MOST_DIGITS: usize = 15;
    let text = text.trim();
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let mut digits = 0_u64;
    let mut count = 0;
    for letter in whole.chars().chain(part.chars()) {
        digits = digits * 10 + u64::from(letter.to_digit(10)?);
        count += 1;
        if count > MOST_DIGITS {
            return None;
        }
    }
    let mut divisor = 1_u64;
    for _ in part.chars() {
        divisor *= 10;
    }
    (count > 0).then(|| digits as f64 / divisor as f64)
}

/// The same, with a sign before it or none.
#[must_use]
pub fn signed_number(text: &str) -> Option<f64> {
    let text = text.trim();
    match text.strip_prefix('-') {
        Some(digits) => number(digits).map(|number| -number),
        None => number(text.strip_prefix('+').unwrap_or(text)),
    }
}
