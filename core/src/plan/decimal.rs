//! Numbers as a document holds them: decimals of at most 15 digits and 22 places, which come back from files as they were.
//!
//! Digits and power of ten of such a number are whole numbers that a float holds, so one division gives the nearest float,
//! and whoever reads the text the simple way gets the same one. To read any number of 17 digits exactly takes tables of
//! powers of ten, which would weigh 7 kB on the page.

use super::document::Settings;

/// What fewer than 16 digits can tell, and a float holds with one digit more.
const LIMIT: f64 = 1e15;

/// The largest power of ten that a float holds.
const MOST_PLACES: u32 = 22;

/// The decimal nearest to a number, to one in its last place; `None` beyond ±10¹⁵ and for what is not finite.
///
/// A decimal is nearest to itself. Numbers below 10⁻²² become zero.
#[must_use]
pub fn nearest(value: f64) -> Option<f64> {
    if !(value.abs() <= LIMIT) {
        return None;
    }
    let mut power = 1.0;
    let mut places = 0;
    while places < MOST_PLACES && (value * power * 10.0).abs() < LIMIT {
        power *= 10.0;
        places += 1;
    }
    Some((value * power).round() / power)
}

/// Whether a document may hold this number.
#[must_use]
pub fn is_decimal(value: f64) -> bool {
    nearest(value).is_some_and(|decimal| decimal.to_bits() == value.to_bits())
}

impl Settings {
    /// All chosen values and changed factors.
    pub(super) fn numbers(&self) -> impl Iterator<Item = f64> {
        let factors = self.overridden_factors.values();
        let factors = factors.flat_map(|factor| [factor.low, factor.typical, factor.high]);
        self.chosen.values().copied().chain(factors)
    }

    /// The settings with the decimal nearest to each number; what has none stays, and no document takes it.
    #[must_use]
    pub fn in_decimals(mut self) -> Self {
        let factors = self.overridden_factors.values_mut();
        let factors = factors.flat_map(|factor| [&mut factor.low, &mut factor.typical, &mut factor.high]);
        for value in self.chosen.values_mut().chain(factors) {
            *value = nearest(*value).unwrap_or(*value);
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A generator of bits (SplitMix64), so that a failing number is found again.
    fn bits(state: &mut u64) -> u64 {
        *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut bits = *state;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        bits ^ (bits >> 31)
    }

    /// Numbers of every size that has a decimal, some of few digits and most of as many as a float has.
    fn numbers() -> impl Iterator<Item = f64> {
        let mut state = 1;
        (0..200_000).map(move |_| {
            let drawn = bits(&mut state);
            let size = (bits(&mut state) % 38) as i32 - 22;
            let digits = if drawn.is_multiple_of(3) {
                drawn % 1000
            } else {
                drawn >> 11
            };
            let value: f64 = format!("{digits}e{size}").parse().expect("a number");
            let value = value % LIMIT;
            if drawn.is_multiple_of(2) { value } else { -value }
        })
    }

    #[test]
    fn a_decimal_is_nearest_to_itself_and_as_the_standard_library_reads_it() {
        for value in numbers() {
            let decimal = nearest(value).unwrap_or_else(|| panic!("{value:e} has one"));
            assert!(is_decimal(decimal), "{value:e} {decimal:e}");
            // No farther off than one in the fifteenth digit, or in the last place.
            let most = (value.abs() * 1e-14).max(1e-22);
            assert!((value - decimal).abs() <= most, "{value:e} {decimal:e}");
            // It is the float of a text of as many digits.
            let text = format!("{decimal:.14e}");
            assert_eq!(
                text.parse::<f64>().map(f64::to_bits),
                Ok(decimal.to_bits()),
                "{value:e}"
            );
        }
    }

    #[test]
    fn what_is_no_decimal_is_refused() {
        for value in [f64::NAN, f64::INFINITY, 1.1e15, -1e300] {
            assert_eq!(nearest(value), None, "{value}");
        }
        for value in [0.1 + 0.2, 12.0 * 0.3048, 1.0 / 3.0] {
            assert!(!is_decimal(value), "{value}");
        }
        for value in [0.0, -0.0, 1e15, 0.3, 3.6576, 1e-22, 0.333_333_333_333_333] {
            assert!(is_decimal(value), "{value}");
        }
        assert_eq!(nearest(12.0 * 0.3048), Some(3.6576));
    }
}
