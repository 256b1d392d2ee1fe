//! Formulas worked cell by cell: what they are, how one number follows, how they are written.
//!
//! A formula refers to other figures by `R`: their ids while declared, their place in the graph once built.
//! Numbers that cannot be worked out are NaN inside the engine and never leave it as such.

use std::ops;

use super::unit::Unit;
use crate::number;
use crate::say;

/// Operations on two numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binary {
    /// Sum; both sides of one dimension.
    Add,
    /// Difference; both sides of one dimension.
    Subtract,
    /// Product.
    Multiply,
    /// Quotient.
    Divide,
    /// The smaller; both sides of one dimension.
    Minimum,
    /// The larger; both sides of one dimension.
    Maximum,
    /// The first raised to the second. A dimensioned base needs a constant exponent that leaves whole powers.
    Power,
}

/// Functions of one plain number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Function {
    /// Natural exponential.
    Exponential,
    /// Natural logarithm.
    Logarithm,
}

/// How two numbers are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comparison {
    /// Smaller than.
    Below,
    /// Smaller than or equal to.
    AtMost,
    /// Larger than.
    Above,
    /// Larger than or equal to.
    AtLeast,
}

/// A formula over figures referred to by `R`.
#[derive(Clone, Debug, PartialEq)]
pub enum Expression<R> {
    /// Another figure.
    Figure(R),
    /// A number that is part of the definition, in coherent units.
    Constant(f64, Unit),
    /// Two numbers.
    Binary(Binary, Box<Self>, Box<Self>),
    /// A function of a plain number.
    Function(Function, Box<Self>),
    /// One of two formulas, by a comparison.
    Choose(Box<Choice<R>>),
}

/// `if left compares with right then … else …`. Only the chosen side has to be workable.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice<R> {
    /// Left of the comparison.
    pub left: Expression<R>,
    /// The comparison.
    pub comparison: Comparison,
    /// Right of the comparison.
    pub right: Expression<R>,
    /// Taken when it holds.
    pub then: Expression<R>,
    /// Taken when it does not.
    pub otherwise: Expression<R>,
}

/// The figure named `id`, in a declaration.
#[must_use]
pub fn figure(id: &str) -> Expression<String> {
    Expression::Figure(id.to_owned())
}

/// A number that is part of a definition, given in coherent units.
#[must_use]
pub const fn constant(coherent: f64, unit: Unit) -> Expression<String> {
    Expression::Constant(coherent, unit)
}

impl Expression<String> {
    /// The smaller of this and `other`.
    #[must_use]
    pub fn at_most(self, other: Self) -> Self {
        binary(Binary::Minimum, self, other)
    }

    /// The larger of this and `other`.
    #[must_use]
    pub fn at_least(self, other: Self) -> Self {
        binary(Binary::Maximum, self, other)
    }

    /// This raised to `exponent`.
    #[must_use]
    pub fn to_power(self, exponent: Self) -> Self {
        binary(Binary::Power, self, exponent)
    }

    /// The natural exponential of this.
    #[must_use]
    pub fn exponential(self) -> Self {
        Self::Function(Function::Exponential, Box::new(self))
    }

    /// The natural logarithm of this.
    #[must_use]
    pub fn logarithm(self) -> Self {
        Self::Function(Function::Logarithm, Box::new(self))
    }
}

/// `then` where `left` compares with `right`, else `otherwise`.
#[must_use]
pub fn choose(
    left: Expression<String>,
    comparison: Comparison,
    right: Expression<String>,
    then: Expression<String>,
    otherwise: Expression<String>,
) -> Expression<String> {
    Expression::Choose(Box::new(Choice {
        left,
        comparison,
        right,
        then,
        otherwise,
    }))
}

fn binary(operation: Binary, left: Expression<String>, right: Expression<String>) -> Expression<String> {
    Expression::Binary(operation, Box::new(left), Box::new(right))
}

impl ops::Add for Expression<String> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        binary(Binary::Add, self, other)
    }
}

impl ops::Sub for Expression<String> {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        binary(Binary::Subtract, self, other)
    }
}

impl ops::Mul for Expression<String> {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        binary(Binary::Multiply, self, other)
    }
}

impl ops::Div for Expression<String> {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        binary(Binary::Divide, self, other)
    }
}

/// `x` when finite, else NaN: a number too large to hold is one that cannot be worked out.
#[must_use]
pub const fn settled(x: f64) -> f64 {
    if x.is_finite() { x } else { f64::NAN }
}

impl Binary {
    /// The result, or NaN when there is none.
    #[must_use]
    pub fn apply(self, left: f64, right: f64) -> f64 {
        match self {
            Self::Add => settled(left + right),
            Self::Subtract => settled(left - right),
            Self::Multiply => settled(left * right),
            Self::Divide => settled(left / right),
            // `f64::min` would pass over a side that cannot be worked out.
            Self::Minimum if left.is_nan() || right.is_nan() => f64::NAN,
            Self::Maximum if left.is_nan() || right.is_nan() => f64::NAN,
            Self::Minimum if right < left => right,
            Self::Maximum if right > left => right,
            Self::Minimum | Self::Maximum => left,
            // `pow(x, 0)` is 1 even for NaN.
            Self::Power if left.is_nan() || right.is_nan() => f64::NAN,
            Self::Power => settled(number::power(left, right)),
        }
    }

    /// Why two workable numbers have no result, in words about the written right side.
    #[must_use]
    pub fn why_not(self, right_words: &str, right: f64) -> String {
        match self {
            Self::Divide if right == 0.0 => say!("figures-divides-by-zero", what = right_words),
            Self::Power => say!("figures-no-power").to_owned(),
            _ => too_large().to_owned(),
        }
    }

    const fn binds(self) -> u8 {
        match self {
            Self::Add | Self::Subtract => 1,
            Self::Multiply | Self::Divide => 2,
            Self::Minimum | Self::Maximum | Self::Power => ATOM,
        }
    }
}

/// Why a sum or product of workable numbers is not one.
#[must_use]
pub fn too_large() -> &'static str {
    say!("figures-too-large-result")
}

impl Function {
    /// The result, or NaN when there is none.
    #[must_use]
    pub fn apply(self, x: f64) -> f64 {
        match self {
            Self::Exponential => settled(number::exp(x)),
            Self::Logarithm => settled(number::ln(x)),
        }
    }

    /// Why a workable number has no result.
    #[must_use]
    pub fn why_not(self, words: &str) -> String {
        match self {
            Self::Exponential => too_large().to_owned(),
            Self::Logarithm => say!("figures-no-logarithm", what = words),
        }
    }
}

impl Comparison {
    /// Whether it holds; neither side may be NaN.
    #[must_use]
    pub fn holds(self, left: f64, right: f64) -> bool {
        match self {
            Self::Below => left < right,
            Self::AtMost => left <= right,
            Self::Above => left > right,
            Self::AtLeast => left >= right,
        }
    }

    /// The sign it is written with.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Below => "<",
            Self::AtMost => "≤",
            Self::Above => ">",
            Self::AtLeast => "≥",
        }
    }
}

/// What stands at the ends of a formula, to be written.
pub enum Term<'a, R> {
    /// A figure.
    Figure(&'a R),
    /// A constant in coherent units.
    Constant(f64, &'a Unit),
}

const ATOM: u8 = 3;

impl<R> Expression<R> {
    /// Every figure referred to, in order of appearance, repeats included.
    pub fn references<'a>(&'a self, found: &mut Vec<&'a R>) {
        match self {
            Self::Figure(id) => found.push(id),
            Self::Constant(..) => {}
            Self::Binary(_, left, right) => {
                left.references(found);
                right.references(found);
            }
            Self::Function(_, of) => of.references(found),
            Self::Choose(choice) => {
                for part in [&choice.left, &choice.right, &choice.then, &choice.otherwise] {
                    part.references(found);
                }
            }
        }
    }

    /// The same formula over other references.
    pub fn map<S>(&self, to: &mut impl FnMut(&R) -> S) -> Expression<S> {
        match self {
            Self::Figure(id) => Expression::Figure(to(id)),
            Self::Constant(value, unit) => Expression::Constant(*value, *unit),
            Self::Binary(operation, left, right) => {
                Expression::Binary(*operation, Box::new(left.map(to)), Box::new(right.map(to)))
            }
            Self::Function(function, of) => Expression::Function(*function, Box::new(of.map(to))),
            Self::Choose(choice) => Expression::Choose(Box::new(Choice {
                left: choice.left.map(to),
                comparison: choice.comparison,
                right: choice.right.map(to),
                then: choice.then.map(to),
                otherwise: choice.otherwise.map(to),
            })),
        }
    }

    /// The formula's number from those of its ends; NaN when it cannot be worked out.
    pub fn evaluate(&self, value_of: &mut impl FnMut(&R) -> f64) -> f64 {
        match self {
            Self::Figure(id) => value_of(id),
            Self::Constant(value, _) => *value,
            Self::Binary(operation, left, right) => {
                let left = left.evaluate(value_of);
                operation.apply(left, right.evaluate(value_of))
            }
            Self::Function(function, of) => function.apply(of.evaluate(value_of)),
            Self::Choose(choice) => {
                let left = choice.left.evaluate(value_of);
                let right = choice.right.evaluate(value_of);
                if left.is_nan() || right.is_nan() {
                    f64::NAN
                } else if choice.comparison.holds(left, right) {
                    choice.then.evaluate(value_of)
                } else {
                    choice.otherwise.evaluate(value_of)
                }
            }
        }
    }

    /// Writes the formula, its ends through `write`: in words with titles, with numbers with values.
    ///
    /// ```
    /// use hobnail_core::figures::expression::{figure, Term};
    /// let formula = (figure("a") - figure("b")) / figure("c");
    /// let written = formula.write(&mut |term| match term {
    ///     Term::Figure(id) => id.clone(),
    ///     Term::Constant(value, _) => value.to_string(),
    /// });
    /// assert_eq!(written, "(a − b) ÷ c");
    /// ```
    pub fn write(&self, write: &mut dyn FnMut(Term<'_, R>) -> String) -> String {
        self.write_within(0, write)
    }

    fn write_within(&self, needed: u8, write: &mut dyn FnMut(Term<'_, R>) -> String) -> String {
        let (binds, text) = match self {
            Self::Figure(id) => (ATOM, guarded(write(Term::Figure(id)), needed)),
            Self::Constant(value, unit) => (ATOM, guarded(write(Term::Constant(*value, unit)), needed)),
            Self::Binary(operation, left, right) => {
                let binds = operation.binds();
                let text = match operation {
                    Binary::Minimum => pair(say!("figures-smaller-of"), left, right, write),
                    Binary::Maximum => pair(say!("figures-larger-of"), left, right, write),
                    Binary::Power => pair(say!("figures-power-of"), left, right, write),
                    Binary::Add => infix(left, " + ", right, binds, binds, write),
                    Binary::Subtract => infix(left, " − ", right, binds, binds + 1, write),
                    Binary::Multiply => infix(left, " × ", right, binds, binds, write),
                    Binary::Divide => infix(left, " ÷ ", right, binds, binds + 1, write),
                };
                (binds, text)
            }
            Self::Function(function, of) => {
                let name = match function {
                    Function::Exponential => "exp",
                    Function::Logarithm => "ln",
                };
                (ATOM, format!("{name} ({})", of.write_within(0, write)))
            }
            Self::Choose(choice) => (
                0,
                say!(
                    "figures-choice",
                    left = choice.left.write_within(1, write),
                    sign = choice.comparison.sign(),
                    right = choice.right.write_within(1, write),
                    then = choice.then.write_within(1, write),
                    otherwise = choice.otherwise.write_within(1, write),
                ),
            ),
        };
        if binds < needed { format!("({text})") } else { text }
    }
}

fn infix<R>(
    left: &Expression<R>,
    sign: &str,
    right: &Expression<R>,
    left_needs: u8,
    right_needs: u8,
    write: &mut dyn FnMut(Term<'_, R>) -> String,
) -> String {
    let left = left.write_within(left_needs, write);
    let right = right.write_within(right_needs, write);
    format!("{left}{sign}{right}")
}

fn pair<R>(
    name: &str,
    left: &Expression<R>,
    right: &Expression<R>,
    write: &mut dyn FnMut(Term<'_, R>) -> String,
) -> String {
    let left = left.write_within(0, write);
    let right = right.write_within(0, write);
    format!("{name} ({left}; {right})")
}

/// A negative number inside a formula stands in parentheses, so that no two signs meet.
fn guarded(text: String, needed: u8) -> String {
    if needed > 0 && text.starts_with('−') {
        format!("({text})")
    } else {
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::unit::NUMBER;

    #[track_caller]
    fn check_written(formula: &Expression<String>, expected: &str) {
        let written = formula.write(&mut |term| match term {
            Term::Figure(id) => id.clone(),
            Term::Constant(value, _) => value.to_string().replace('-', "−"),
        });
        assert_eq!(written, expected);
    }

    #[test]
    fn formulas_are_written_with_the_parentheses_they_need() {
        let [a, b, c] = ["a", "b", "c"].map(figure);
        check_written(&(a.clone() - (b.clone() - c.clone())), "a − (b − c)");
        check_written(&(a.clone() + b.clone() * c.clone()), "a + b × c");
        check_written(&((a.clone() + b.clone()) * c.clone()), "(a + b) × c");
        check_written(&(a.clone() / (b.clone() * c.clone())), "a ÷ (b × c)");
        check_written(&(a.clone() - constant(-2.0, NUMBER)), "a − (−2)");
        check_written(
            &choose(
                a.clone(),
                Comparison::AtMost,
                b.clone() + c.clone(),
                a.clone().at_most(b.clone()),
                c.clone().logarithm(),
            ),
            "if a ≤ b + c then smaller of (a; b) else ln (c)",
        );
        check_written(
            &(a.clone() * choose(a, Comparison::Above, b.clone(), b, c)),
            "a × (if a > b then b else c)",
        );
    }

    #[test]
    fn operations_without_a_result_give_none() {
        assert!(Binary::Divide.apply(1.0, 0.0).is_nan());
        assert!(Binary::Divide.apply(0.0, 0.0).is_nan());
        assert!(Binary::Power.apply(-1.0, 0.5).is_nan());
        assert!(Binary::Power.apply(0.0, -1.0).is_nan());
        assert!(Binary::Power.apply(f64::NAN, 0.0).is_nan());
        assert!(Binary::Minimum.apply(f64::NAN, 1.0).is_nan());
        assert!(Binary::Maximum.apply(1.0, f64::NAN).is_nan());
        assert!(Binary::Multiply.apply(1e300, 1e300).is_nan());
        assert!(Function::Logarithm.apply(0.0).is_nan());
        assert!(Function::Logarithm.apply(-1.0).is_nan());
        assert!(Function::Exponential.apply(1e6).is_nan());
    }

    #[test]
    fn operations_give_their_result() {
        let cases = [
            (Binary::Add, 5.0),
            (Binary::Subtract, 1.0),
            (Binary::Multiply, 6.0),
            (Binary::Divide, 1.5),
            (Binary::Minimum, 2.0),
            (Binary::Maximum, 3.0),
            (Binary::Power, 9.0),
        ];
        for (operation, expected) in cases {
            assert!((operation.apply(3.0, 2.0) - expected).abs() < 1e-15, "{operation:?}");
        }
        assert!((Function::Exponential.apply(1.0) - std::f64::consts::E).abs() < 1e-15);
        assert!((Function::Logarithm.apply(std::f64::consts::E) - 1.0).abs() < 1e-15);
        assert!(Comparison::AtMost.holds(1.0, 1.0) && !Comparison::Below.holds(1.0, 1.0));
        assert!(Comparison::AtLeast.holds(1.0, 1.0) && !Comparison::Above.holds(1.0, 1.0));
    }
}
