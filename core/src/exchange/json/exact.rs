//! The float nearest to a decimal number of text, from one that is near.
//!
//! `serde_json` reads numbers to the last place but one or two, or exactly with tables of powers that would weigh 7 kB on
//! the page. A number that is near is taken to the nearest by comparing the text with the middle between it and its
//! neighbors, in whole numbers of any length. Method: W. D. Clinger, "How to Read
//! Floating Point Numbers Accurately", PLDI 1990 (from memory).

use std::cmp::Ordering;

use super::Json;

/// More digits than ever decide: what is beyond only tells whether a number is larger than its first ones.
const MOST_DIGITS: usize = 800;

/// A number in so many letters, one of them a point, has at most fifteen digits.
const FEW_LETTERS: usize = 16;

/// Numbers whose first digit stands so far behind the point are zero.
const LEAST_POWER: i64 = -400;

/// Takes every number of `json`, read from `text`, to the nearest float. Cost: linear in the text, and some
/// microseconds for each number of more than fifteen digits.
pub fn set_numbers(json: &mut Json, text: &[u8]) {
    set(json, &mut Numbers { rest: text });
}

fn set(json: &mut Json, numbers: &mut Numbers<'_>) {
    match json {
        Json::Integer(_) => drop(numbers.next()),
        Json::Number(number) => *number = numbers.next().map_or(*number, |text| nearest(text, *number)),
        Json::List(values) => {
            for value in values {
                set(value, numbers);
            }
        }
        Json::Members(members) => {
            for (_, value) in members {
                set(value, numbers);
            }
        }
        Json::Null | Json::Bool(_) | Json::Text(_) => {}
    }
}

/// The texts of all numbers in JSON that was read without fault, in their order.
struct Numbers<'text> {
    rest: &'text [u8],
}

impl<'text> Iterator for Numbers<'text> {
    type Item = &'text [u8];

    fn next(&mut self) -> Option<&'text [u8]> {
        let mut is_string = false;
        let mut letters = self.rest.iter().enumerate();
        while let Some((start, letter)) = letters.next() {
            match letter {
                // What is escaped ends no string.
                b'\\' => drop(letters.next()),
                b'"' => is_string = !is_string,
                b'-' | b'0'..=b'9' if !is_string => {
                    let is_part = |letter: &u8| matches!(letter, b'0'..=b'9' | b'+' | b'-' | b'.' | b'e' | b'E');
                    let rest = self.rest.get(start..)?;
                    let length = rest.iter().position(|letter| !is_part(letter)).unwrap_or(rest.len());
                    let (number, rest) = rest.split_at(length);
                    self.rest = rest;
                    return Some(number);
                }
                _ => {}
            }
        }
        None
    }
}

/// The float nearest to the number that `text` tells, ties to the even one, from a finite one that is a few steps off.
fn nearest(text: &[u8], near: f64) -> f64 {
    // Digits and power of ten are whole numbers that a float holds: one division gave the nearest, as for coordinates.
    if text.len() <= FEW_LETTERS && !text.iter().any(|letter| matches!(letter, b'e' | b'E')) {
        near
    } else {
        brought_nearest(text, near)
    }
}

fn brought_nearest(text: &[u8], near: f64) -> f64 {
    let Some(decimal) = Decimal::of(text) else { return near };
    let mut bits = near.abs().to_bits();
    while f64::from_bits(bits + 1).is_finite() && decimal.is_beyond_half(bits, !bits.is_multiple_of(2)) {
        bits += 1;
    }
    while bits > 0 && !decimal.is_beyond_half(bits - 1, bits.is_multiple_of(2)) {
        bits -= 1;
    }
    f64::from_bits(bits).copysign(near)
}

/// A number that is not negative: digits as one whole number, times a power of ten.
struct Decimal {
    digits: Whole,
    power: i64,
}

impl Decimal {
    /// What a text says without its sign; `None` for zero and what rounds to it.
    fn of(text: &[u8]) -> Option<Self> {
        let mut parts = text.splitn(2, |letter| matches!(letter, b'e' | b'E'));
        let mantissa = parts.next()?;
        let mut power = parts.next().map_or(0, whole);
        let mut digits = Whole::default();
        let (mut count, mut is_fraction, mut is_more) = (0, false, false);
        for letter in mantissa {
            match letter {
                b'.' => is_fraction = true,
                b'0'..=b'9' => {
                    power -= i64::from(is_fraction);
                    if count < MOST_DIGITS {
                        digits.times_and(10, u32::from(letter - b'0'));
                        count += usize::from(!digits.0.is_empty());
                    } else {
                        power += 1;
                        is_more |= *letter != b'0';
                    }
                }
                _ => {}
            }
        }
        if is_more {
            digits.times_and(10, 1);
            power -= 1;
        }
        (count > 0 && power + count as i64 > LEAST_POWER).then_some(Self { digits, power })
    }

    /// Whether it is larger than the middle between the float of these bits and the next larger one, or is the middle and
    /// that counts.
    fn is_beyond_half(&self, bits: u64, counts_middle: bool) -> bool {
        const FRACTION_BITS: u64 = 52;
        let exponent = (bits >> FRACTION_BITS) as i64;
        let fraction = bits & ((1 << FRACTION_BITS) - 1);
        // The float is mantissa · 2^power, and the middle (2 · mantissa + 1) · 2^(power − 1).
        let (mantissa, power) = match exponent {
            0 => (fraction, -1074),
            _ => (fraction | 1 << FRACTION_BITS, exponent - 1075),
        };
        let middle = 2 * mantissa + 1;
        let mut right = Whole(vec![middle as u32, (middle >> 32) as u32]);
        let mut left = self.digits.clone();
        let fives = if self.power < 0 { &mut right } else { &mut left };
        for _ in 0..self.power.unsigned_abs() {
            fives.times_and(5, 0);
        }
        let by = self.power - (power - 1);
        let twos = if by < 0 { &mut right } else { &mut left };
        twos.double(by.unsigned_abs());
        match left.compare(&right) {
            Ordering::Equal => counts_middle,
            order => order == Ordering::Greater,
        }
    }
}

/// An exponent's whole number, as far as it matters.
fn whole(text: &[u8]) -> i64 {
    const FAR: i64 = 1 << 32;
    let digits = text.iter().filter(|letter| letter.is_ascii_digit());
    let size = digits.fold(0, |size: i64, digit| (size * 10 + i64::from(digit - b'0')).min(FAR));
    if text.first() == Some(&b'-') { -size } else { size }
}

/// A whole number of any length, its lowest 32 bits first, without zeros at its end.
#[derive(Clone, Default)]
struct Whole(Vec<u32>);

impl Whole {
    /// Becomes so many times itself and so much more.
    fn times_and(&mut self, factor: u32, more: u32) {
        let mut carried = u64::from(more);
        for part in &mut self.0 {
            carried += u64::from(*part) * u64::from(factor);
            *part = carried as u32;
            carried >>= 32;
        }
        if carried > 0 {
            self.0.push(carried as u32);
        }
    }

    /// Is doubled so many times.
    fn double(&mut self, times: u64) {
        self.times_and(1 << (times % 32), 0);
        let zeros = std::iter::repeat_n(0, (times / 32) as usize);
        self.0.splice(0..0, zeros);
    }

    fn compare(&self, other: &Self) -> Ordering {
        let size = |whole: &Self| whole.0.iter().rposition(|part| *part > 0).map_or(0, |last| last + 1);
        let order = size(self).cmp(&size(other));
        let parts = |whole: &Self| whole.0.clone().into_iter().take(size(whole)).rev();
        order.then_with(|| parts(self).cmp(parts(other)))
    }
}

#[cfg(test)]
mod tests {
    use super::super::parse;
    use super::*;

    /// Random bits (SplitMix64), the same in every run.
    fn bits(state: &mut u64) -> u64 {
        *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut bits = *state;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        bits ^ (bits >> 31)
    }

    /// That a text is read as the standard library reads it, and the nearest is found from some steps off as well.
    #[track_caller]
    fn check(text: &str) {
        let expected: f64 = text.parse().expect("a number");
        let Ok(json) = parse(text.as_bytes()) else {
            assert!(expected.abs() > 1e308, "{text} is refused");
            return;
        };
        let read = json.as_number().map(f64::to_bits);
        assert_eq!(read, Some(expected.to_bits()), "{text}");
        for steps in [1, 2, 5] {
            let off = expected.abs().to_bits().saturating_sub(steps);
            let found = brought_nearest(text.as_bytes(), f64::from_bits(off).copysign(expected));
            assert_eq!(found.to_bits(), expected.to_bits(), "{text} from {steps} below");
        }
    }

    #[test]
    fn numbers_are_read_as_the_standard_library_reads_them() {
        let mut state = 1;
        for case in 0..30_000_u64 {
            let drawn = bits(&mut state);
            let real = f64::from_bits(drawn);
            if real.is_finite() {
                check(&format!("{real:e}"));
                check(&format!("{real:?}"));
            }
            let digits = bits(&mut state) >> (drawn % 60);
            check(&format!("{digits}.{}e{}", drawn % 100_000, case as i64 % 640 - 340));
            check(&format!("-0.{:020}{digits}", drawn % 1000));
        }
    }

    #[test]
    fn middles_go_to_the_even_float_and_what_is_beside_them_does_not() {
        // 2^53 + 1 lies in the middle of two floats; so does the middle of the two least.
        for text in [
            "9007199254740993",
            "9007199254740993.0",
            "9007199254740992.9999999999999999999999999999",
            "9007199254740993.0000000000000000000000000001",
            "9007199254740995.0",
            "2.4703282292062327208299439634110764e-324",
            "2.4703282292062327208e-324",
            "2.2250738585072011e-308",
            "2.2250738585072014e-308",
            "1.7976931348623157e307",
            "0.1e-1000",
            "0.0e5",
            "-0.0",
            "18446744073709551616",
            "18446744073709551615",
        ] {
            check(text);
        }
        check(&format!("0.{}1e{}", "0".repeat(2_000), 2_001));
        check(&format!("1{}e-{}", "3".repeat(3_000), 3_000));
        check(&format!("9007199254740993.{}1", "0".repeat(1_500)));
    }

    #[test]
    fn numbers_are_found_among_texts_and_names() {
        let text = r#"{"1e5":[-1,0.1,"2.5 \" 3.5",{"\\":1.7e-3}],"b":true,"c":null,"c":12345678901234567890.5}"#;
        let numbers: Vec<&[u8]> = Numbers { rest: text.as_bytes() }.collect();
        assert_eq!(numbers, [&b"-1"[..], b"0.1", b"1.7e-3", b"12345678901234567890.5"]);
    }
}
