//! Properties that hold for every plan, checked over random ones.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking, in its helpers too"
)]

mod details;
mod fabric;
mod generate;
mod land;
mod network;
mod plan;
mod random;
mod samples;
mod streets;
mod study;

/// How many cases a property is tried on: `usual`, times the number in `HOBNAIL_CASES` for a long run.
fn cases(usual: u64) -> u64 {
    let times = std::env::var("HOBNAIL_CASES").ok().and_then(|times| times.parse().ok());
    usual * times.unwrap_or(1)
}
