//! Tests of core that run inside a browser, as it is compiled for one.
//!
//! What is compared between machines is worked out here, so that the native test and the one in the browser run the
//! same code and hold it against the same written-down answer.

pub mod measured;

pub mod networks;

pub mod number_bits;
