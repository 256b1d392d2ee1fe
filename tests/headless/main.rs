//! Tests of the core from outside, as another crate sees it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking, in its helpers too"
)]

mod arrangement;
mod export_command;
mod language;
mod measure_command;
mod network_cases;
mod network_command;
mod samples;
mod street_cases;
