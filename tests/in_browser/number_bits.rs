//! The bits of every function of `number`, in one number.

use hobnail_core::number;

/// One number that stands for the bits of every function of `number` at 4,096 arguments each.
#[must_use]
pub fn fingerprint() -> u64 {
    let functions: [fn(f64) -> f64; 15] = [
        number::sin,
        number::cos,
        number::tan,
        |x| number::asin(x / 64.0),
        |x| number::acos(x / 64.0),
        number::atan,
        number::sinh,
        number::cosh,
        number::tanh,
        number::asinh,
        |x| number::atanh(x / 64.0),
        number::exp,
        |x| number::ln(x.abs()),
        |x| number::log10(x.abs()),
        |x| number::length(x, 1.0 / x),
    ];
    let of_two: [fn(f64, f64) -> f64; 2] = [number::atan2, |x, y| number::power(x.abs(), y / 16.0)];
    let mut bytes = Vec::new();
    let mut last = 0.3;
    for step in 0..4_096_u32 {
        // From -64 to 64, no value with a short binary fraction among them.
        let x = f64::from(step) / 32.0 - 64.0 + 0.012_345_678_9;
        for function in functions {
            bytes.extend(bytes_of(function(x)));
        }
        for function in of_two {
            bytes.extend(bytes_of(function(x, last)));
        }
        last = x;
    }
    fnv_1a(&bytes)
}

/// The FNV-1a hash, 64 bits.
#[must_use]
pub fn fnv_1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3)
    })
}

/// The bytes of a number; which of the many NaNs it is, is no part of an answer.
fn bytes_of(value: f64) -> [u8; 8] {
    if value.is_nan() { f64::NAN } else { value }.to_le_bytes()
}

/// The fingerprint, as first worked out natively on x86-64.
pub const WRITTEN_DOWN: u64 = 10_274_285_844_909_776_208;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn number_gives_the_bits_written_down() {
        assert_eq!(fingerprint(), WRITTEN_DOWN);
    }
}
