//! Properties that hold for every plan, checked over random ones.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking, in its helpers too"
)]

mod fabric;
mod plan;
mod random;
mod study;
