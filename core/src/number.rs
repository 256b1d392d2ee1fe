//! The one door to float functions whose last bit the language does not guarantee.
//!
//! Every function here is `libm`'s, compiled into the program on every target, so native and wasm agree to the bit.
//! `sqrt`, `abs`, `floor`, `ceil`, `trunc` and `round` are exact everywhere and are used directly.

/// Sine of an angle in radians.
#[must_use]
pub fn sin(angle_rad: f64) -> f64 {
    libm::sin(angle_rad)
}

/// Cosine of an angle in radians.
#[must_use]
pub fn cos(angle_rad: f64) -> f64 {
    libm::cos(angle_rad)
}

/// Tangent of an angle in radians.
#[must_use]
pub fn tan(angle_rad: f64) -> f64 {
    libm::tan(angle_rad)
}

/// Inverse sine, in radians.
#[must_use]
pub fn asin(x: f64) -> f64 {
    libm::asin(x)
}

/// Inverse cosine, in radians.
#[must_use]
pub fn acos(x: f64) -> f64 {
    libm::acos(x)
}

/// Inverse tangent, in radians.
#[must_use]
pub fn atan(x: f64) -> f64 {
    libm::atan(x)
}

/// Angle of the direction `(x, y)`, counterclockwise from the x axis, in radians.
#[must_use]
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Hyperbolic sine.
#[must_use]
pub fn sinh(x: f64) -> f64 {
    libm::sinh(x)
}

/// Hyperbolic cosine.
#[must_use]
pub fn cosh(x: f64) -> f64 {
    libm::cosh(x)
}

/// Hyperbolic tangent.
#[must_use]
pub fn tanh(x: f64) -> f64 {
    libm::tanh(x)
}

/// Inverse hyperbolic sine.
#[must_use]
pub fn asinh(x: f64) -> f64 {
    libm::asinh(x)
}

/// Inverse hyperbolic tangent.
#[must_use]
pub fn atanh(x: f64) -> f64 {
    libm::atanh(x)
}

/// Natural exponential.
#[must_use]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm.
#[must_use]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// Decimal logarithm.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `base` raised to `exponent`.
#[must_use]
pub fn power(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// A number, or the bound it lies beyond; the lower one where bounds cross. What `f64::clamp` answers, for bounds that
/// are worked out: it never stops the program, and brings none of the 2 kB that say why it would.
///
/// ```
/// use hobnail_core::number::within;
/// assert_eq!([0.0, 1.5, 3.0].map(|value| within(value, 1.0, 2.0)), [1.0, 1.5, 2.0]);
/// assert_eq!(within(0.0, 2.0, 1.0), 2.0);
/// ```
#[must_use]
pub fn within(value: f64, low: f64, high: f64) -> f64 {
    let held = if value > high { high } else { value };
    if held < low { low } else { held }
}

/// Length of the vector `(x, y)`: the square root of the sum of squares, each step correctly rounded.
///
/// ```
/// assert_eq!(hobnail_core::number::length(3.0, 4.0), 5.0);
/// ```
#[must_use]
pub fn length(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}
