//! Why an address gives no plan, and why a plan gives no address.

use std::fmt;

use crate::say;

/// Why an address gives no plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AddressFault {
    /// There is nothing behind the `#`.
    Empty,
    /// What is there is no plan of any version.
    NoPlan,
    /// It was made by a newer version of this program.
    Newer,
    /// It was cut short or altered.
    Damaged,
    /// It holds more than any plan may.
    TooMuch,
    /// It says something that can not be, though nothing was altered since it was made.
    Impossible,
}

/// Why a plan gives no address: it is too large for one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooLarge;

impl fmt::Display for AddressFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Empty => say!("exchange-address-empty"),
            Self::NoPlan => say!("exchange-address-no-plan"),
            Self::Newer => say!("exchange-address-newer"),
            Self::Damaged => say!("exchange-address-damaged"),
            Self::TooMuch => say!("exchange-address-too-much"),
            Self::Impossible => say!("exchange-address-impossible"),
        })
    }
}

impl std::error::Error for AddressFault {}

impl fmt::Display for TooLarge {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(say!("exchange-address-too-large"))
    }
}

impl std::error::Error for TooLarge {}
