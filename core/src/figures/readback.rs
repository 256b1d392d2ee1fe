//! Reads a printed basis back and works it with intervals: the guard of "a printed basis leads to the number shown".
//!
//! The reader knows the printed text alone: numbers, units, signs and the few words formulas are written with. A
//! printed number stands for every number that prints so.

use super::basis::{Basis, Row, Step, mean_of_list, sum_of_list};
use super::unit::{Dimension, read_unit};
use crate::number;

/// How wide a printed number is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Reading {
    /// Half a unit of the last printed digit.
    LastDigit,
    /// Half a unit of the sixth significant digit where that is finer: idle zeros are left out in print.
    SixDigits,
}

#[derive(Clone, Copy, Debug)]
struct Interval {
    low: f64,
    high: f64,
}

impl Interval {
    const WHOLE: Self = Self {
        low: f64::NEG_INFINITY,
        high: f64::INFINITY,
    };

    fn corners(a: Self, b: Self, apply: impl Fn(f64, f64) -> f64) -> Self {
        let corners = [(a.low, b.low), (a.low, b.high), (a.high, b.low), (a.high, b.high)].map(|(a, b)| apply(a, b));
        if corners.iter().any(|corner| corner.is_nan()) {
            return Self::WHOLE;
        }
        Self {
            low: corners.iter().copied().fold(f64::INFINITY, f64::min),
            high: corners.iter().copied().fold(f64::NEG_INFINITY, f64::max),
        }
    }

    fn hull(self, other: Self) -> Self {
        Self {
            low: self.low.min(other.low),
            high: self.high.max(other.high),
        }
    }

    fn meets(self, other: Self) -> bool {
        let slack = 1e-12 * (self.low.abs() + self.high.abs() + other.low.abs() + other.high.abs());
        self.low <= other.high + slack && other.low <= self.high + slack
    }
}

/// A value read: its interval in coherent units and its dimension.
type Read = (Interval, Dimension);

struct Reader<'a> {
    text: &'a str,
    reading: Reading,
    /// Every number read, as printed with its unit.
    numbers: Vec<String>,
}

impl<'a> Reader<'a> {
    fn new(text: &'a str, reading: Reading) -> Self {
        Self {
            text,
            reading,
            numbers: Vec::new(),
        }
    }

    fn takes(&mut self, token: &str) -> bool {
        let rest = self.text.trim_start();
        match rest.strip_prefix(token) {
            Some(rest) => {
                self.text = rest;
                true
            }
            None => false,
        }
    }

    fn expect(&mut self, token: &str) {
        assert!(self.takes(token), "`{token}` expected at `{}`", self.text);
    }

    fn formula(&mut self) -> Read {
        if !self.takes("if ") {
            return self.sum();
        }
        let left = self.sum();
        let sign = ["<", "≤", ">", "≥"]
            .into_iter()
            .find(|sign| self.takes(sign))
            .expect("a comparison");
        let right = self.sum();
        assert_eq!(left.1, right.1, "unlike units compared");
        self.expect("then");
        let then = self.formula();
        self.expect("else");
        let otherwise = self.formula();
        let (a, b) = (left.0, right.0);
        let (surely, possibly) = match sign {
            "<" => (a.high < b.low, a.low < b.high),
            "≤" => (a.high <= b.low, a.low <= b.high),
            ">" => (a.low > b.high, a.high > b.low),
            _ => (a.low >= b.high, a.high >= b.low),
        };
        match (surely, possibly) {
            (true, _) => then,
            (_, false) => otherwise,
            _ => (then.0.hull(otherwise.0), then.1),
        }
    }

    fn sum(&mut self) -> Read {
        let mut total = self.product();
        loop {
            let apply: fn(f64, f64) -> f64 = if self.takes("+") {
                |a, b| a + b
            } else if self.takes("−") {
                |a, b| a - b
            } else {
                return total;
            };
            let next = self.product();
            assert_eq!(total.1, next.1, "unlike units added before `{}`", self.text);
            total.0 = Interval::corners(total.0, next.0, apply);
        }
    }

    fn product(&mut self) -> Read {
        let mut total = self.atom();
        loop {
            if self.takes("×") {
                let next = self.atom();
                total = (Interval::corners(total.0, next.0, |a, b| a * b), total.1.times(next.1));
            } else if self.takes("÷") {
                let next = self.atom();
                let quotient = if next.0.low <= 0.0 && next.0.high >= 0.0 {
                    Interval::WHOLE
                } else {
                    Interval::corners(total.0, next.0, |a, b| a / b)
                };
                total = (quotient, total.1.over(next.1));
            } else {
                return total;
            }
        }
    }

    fn pair(&mut self) -> (Read, Read) {
        let left = self.formula();
        self.expect(";");
        let right = self.formula();
        self.expect(")");
        (left, right)
    }

    fn atom(&mut self) -> Read {
        if self.takes("smaller of (") {
            let (left, right) = self.pair();
            assert_eq!(left.1, right.1);
            (Interval::corners(left.0, right.0, f64::min), left.1)
        } else if self.takes("larger of (") {
            let (left, right) = self.pair();
            assert_eq!(left.1, right.1);
            (Interval::corners(left.0, right.0, f64::max), left.1)
        } else if self.takes("power of (") {
            let (base, exponent) = self.pair();
            let middle = ((exponent.0.low + exponent.0.high) * 4.0).round() / 8.0;
            let dimension = base.1.to_power(middle).expect("a whole power");
            let mut raised = Interval::corners(base.0, exponent.0, number::power);
            if base.0.low < 0.0 && base.0.high > 0.0 {
                raised = raised.hull(Interval { low: 0.0, high: 0.0 });
            }
            (raised, dimension)
        } else if self.takes("exp (") {
            let of = self.formula();
            self.expect(")");
            (Interval::corners(of.0, of.0, |a, _| number::exp(a)), of.1)
        } else if self.takes("ln (") {
            let of = self.formula();
            self.expect(")");
            (Interval::corners(of.0, of.0, |a, _| number::ln(a)), of.1)
        } else if self.takes("(") {
            let inside = self.formula();
            self.expect(")");
            inside
        } else {
            self.number()
        }
    }

    /// A number with its unit: `1,234.5 acres`, `92%`, `−3`.
    fn number(&mut self) -> Read {
        self.text = self.text.trim_start();
        let start = self.text;
        let is_part = |letter: char| letter.is_ascii_digit() || "−.,e".contains(letter);
        let mut end = start.find(|letter| !is_part(letter)).unwrap_or(start.len());
        // A comma or sign at the end belongs to what follows.
        end = start[..end].trim_end_matches([',', '−', 'e']).len();
        let digits = start[..end].replace(',', "").replace('−', "-");
        let value: f64 = digits
            .parse()
            .unwrap_or_else(|_| panic!("a number expected at `{start}`"));
        let (mantissa, exponent) = digits.split_once('e').unwrap_or((&digits, "0"));
        let places = mantissa.split_once('.').map_or(0, |(_, places)| places.len());
        let ten = |power: i32| format!("1e{power}").parse::<f64>().unwrap();
        let mut half = 0.5 * ten(exponent.parse::<i32>().unwrap() - places as i32);
        if self.reading == Reading::SixDigits {
            let sixth = match format!("{:e}", value.abs()).split_once('e') {
                Some((_, magnitude)) if value != 0.0 => 0.5 * ten(magnitude.parse::<i32>().unwrap() - 5),
                _ => 0.0,
            };
            half = half.min(sixth);
        }
        let rest = &start[end..];
        let (unit, rest) = match rest.strip_prefix('%') {
            Some(rest) => ("%", rest),
            None => {
                let word = rest.strip_prefix(' ').unwrap_or("");
                let end = word
                    .find(|letter: char| !(letter.is_ascii_alphanumeric() || "/²".contains(letter)))
                    .unwrap_or(word.len());
                match read_unit(&word[..end]) {
                    Some(_) if end > 0 => (&word[..end], &word[end..]),
                    _ => ("", rest),
                }
            }
        };
        self.text = rest;
        self.numbers.push(start[..start.len() - rest.len()].to_owned());
        let (dimension, scale) = read_unit(unit).unwrap();
        let interval = Interval {
            low: (value - half) * scale,
            high: (value + half) * scale,
        };
        (interval, dimension)
    }

    fn whole(mut self) -> (Read, Vec<String>) {
        let read = self.formula();
        assert_eq!(self.text.trim(), "", "left over");
        (read, self.numbers)
    }
}

/// A value the printed text gives: parses it whole.
fn read_value(text: &str, reading: Reading) -> Read {
    Reader::new(text, reading).whole().0
}

/// The number a printed text gives, in coherent units.
pub(crate) fn read_middle(text: &str) -> f64 {
    let (interval, _) = read_value(text, Reading::SixDigits);
    (interval.low + interval.high) / 2.0
}

/// The formulas printed in a step's text, each with its listed terms and its result.
fn printed_lines(step_text: &str) -> Vec<(String, Vec<String>, String)> {
    let mut body = step_text.lines().skip(1).peekable();
    // A worked figure's first line is its formula in words.
    if body.peek().is_some_and(|line| line.starts_with("  = ")) {
        body.next();
    }
    let mut lines = Vec::new();
    let mut open: Option<(String, Vec<String>)> = None;
    for line in body {
        match (line.strip_prefix("  = "), line.strip_prefix("    "), open.take()) {
            (Some(formula), _, None) => open = Some((formula.to_owned(), Vec::new())),
            (Some(result), _, Some((formula, terms))) => lines.push((formula, terms, result.to_owned())),
            (None, Some(term), Some((formula, mut terms))) => {
                terms.push(term.to_owned());
                open = Some((formula, terms));
            }
            (_, _, still) => open = still,
        }
    }
    assert!(open.is_none(), "a formula without a result in\n{step_text}");
    lines
}

/// The value of a printed line: its formula, or the sum or mean of its listed terms.
fn read_line(formula: &str, terms: &[String], reading: Reading) -> (Read, Vec<String>) {
    let numbers = terms.iter().map(|term| {
        let number = term
            .strip_prefix("and ")
            .or_else(|| term.rsplit_once(": ").map(|(_, number)| number));
        number.unwrap().to_owned()
    });
    let formula = match formula {
        sum if sum == sum_of_list() => numbers.collect::<Vec<String>>().join(" + "),
        mean if mean == mean_of_list() => {
            let pairs: Vec<(String, String)> = numbers
                .map(|pair| {
                    pair.split_once("; ")
                        .map(|(a, b)| (a.to_owned(), b.to_owned()))
                        .unwrap()
                })
                .collect();
            let products: Vec<String> = pairs
                .iter()
                .map(|(value, weight)| format!("({value}) × ({weight})"))
                .collect();
            let weights: Vec<String> = pairs.iter().map(|(_, weight)| format!("({weight})")).collect();
            format!("({}) ÷ ({})", products.join(" + "), weights.join(" + "))
        }
        formula => formula.to_owned(),
    };
    Reader::new(&formula, reading).whole()
}

/// Checks every printed step of a basis and returns how many formulas were checked.
///
/// Each formula, read with half a unit of the last printed digit and again with six digits, must lead to the result
/// printed beside it, with its dimension; each number in it must stand in a step it opens, or be one of its definition.
#[track_caller]
pub(crate) fn check_basis(basis: &Basis) -> usize {
    check_within(basis, Some(1e-3))
}

/// As [`check_basis`], for numbers that may nearly cancel, which six digits need not pin down.
#[track_caller]
pub(crate) fn check_basis_loosely(basis: &Basis) -> usize {
    check_within(basis, None)
}

#[track_caller]
fn check_within(basis: &Basis, widest: Option<f64>) -> usize {
    let text = basis.to_string();
    let blocks: Vec<&str> = text.split("\n\n").collect();
    assert_eq!(blocks.len(), basis.steps.len(), "a block of text for each step");
    let mut checked = 0;
    for (block, step) in blocks.iter().zip(&basis.steps) {
        assert!(
            block.lines().next().unwrap().ends_with(&format!("[{}]", step.id)),
            "{block}"
        );
        for (formula, terms, result) in printed_lines(block) {
            for reading in [Reading::LastDigit, Reading::SixDigits] {
                let ((worked, dimension), _) = read_line(&formula, &terms, reading);
                let (shown, shown_dimension) = read_value(&result, reading);
                assert_eq!(dimension, shown_dimension, "{formula} = {result}\n{block}");
                assert!(
                    worked.meets(shown),
                    "{formula} gives {worked:?}, not {result} ({reading:?})\n{block}"
                );
            }
            let ((worked, _), numbers) = read_line(&formula, &terms, Reading::SixDigits);
            let (shown, _) = read_value(&result, Reading::SixDigits);
            // Read with six digits the formula must pin the number down, or it would show nothing.
            let size = shown.high.abs().max(shown.low.abs());
            assert!(
                widest.is_none_or(|widest| worked.high - worked.low <= widest * size + 1e-9),
                "{formula} says too little: {worked:?}\n{block}"
            );
            for number in numbers.iter().filter(|_| terms.is_empty()) {
                check_number_opens(number, step, basis);
            }
            checked += 1;
        }
        check_ends(step, basis);
    }
    checked
}

fn rows(step: &Step) -> impl Iterator<Item = &Row> {
    step.row.iter().chain(&step.rest)
}

/// A number in a formula is a value of a step it opens, of an earlier line or entry, or of the definition.
#[track_caller]
fn check_number_opens(number: &str, step: &Step, basis: &Basis) {
    let opened = basis
        .steps
        .iter()
        .filter(|other| step.opens.contains(&other.id) || other.id == step.id);
    let mut values = opened.flat_map(rows).map(|row| row.value.as_str());
    let defined = match &step.origin {
        super::basis::Origin::Worked { words } | super::basis::Origin::Method { words, .. } => words.as_str(),
        _ => "",
    };
    let own_lines = step
        .row
        .iter()
        .flat_map(|row| &row.lines)
        .map(|line| line.result.as_str());
    let found = values.any(|value| value == number)
        || own_lines.into_iter().any(|result| result == number)
        || defined.contains(number)
        // A method's small whole constants: nothing from, number of kinds.
        || (matches!(step.origin, super::basis::Origin::Method { .. }) && number.parse::<u8>().is_ok());
    assert!(found, "{number} in {} opens nothing", step.id);
}

/// Every step is reached and ends at leaves: what it opens is there, and a leaf opens nothing.
#[track_caller]
fn check_ends(step: &Step, basis: &Basis) {
    use super::basis::Origin;
    for id in &step.opens {
        assert!(basis.steps.iter().any(|other| other.id == *id), "{id} is not there");
    }
    match step.origin {
        Origin::Worked { .. } | Origin::Method { .. } => assert!(!step.opens.is_empty(), "{} ends in the air", step.id),
        Origin::Counted { .. } | Origin::Chosen => assert!(step.opens.is_empty()),
        Origin::Factor => {
            for row in rows(step) {
                assert!(row.sources.len() >= 2, "{} has no source", step.id);
            }
        }
    }
}

#[test]
fn a_wrong_number_is_caught() {
    let (read, _) = read_line("4.35 ha × 92% ÷ 450 m²/lot × 1 homes/lot", &[], Reading::SixDigits);
    assert!(read.0.meets(read_value("88.9333 homes", Reading::SixDigits).0));
    assert!(!read.0.meets(read_value("88.9343 homes", Reading::SixDigits).0));
    assert_eq!(read.1, read_unit("homes").unwrap().0);
}

#[test]
fn printed_formulas_read_as_meant() {
    let middle = |text: &str| {
        let ((interval, _), _) = read_line(text, &[], Reading::SixDigits);
        (interval.low + interval.high) / 2.0
    };
    for (text, expected) in [
        ("2 + 3 × 4", 14.0),
        ("8 − 3 − 2", 3.0),
        ("16 ÷ 4 ÷ 2", 2.0),
        ("larger of (1,250; smaller of (3; 4)) − (−2)", 1_252.0),
        ("if 3 m < 4 m then 1 ha else 2 ha", 10_000.0),
        ("power of (3 m; 2)", 9.0),
        ("ln (exp (2))", 2.0),
        ("1.50000e−12 × 1e3", 1.5e-9),
    ] {
        let found = middle(text);
        assert!((found / expected - 1.0).abs() < 1e-4, "{text}: {found}");
    }
}
