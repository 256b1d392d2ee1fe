//! Mutated inputs against everything that reads what others wrote.
//!
//! Without arguments every kept finding, every seed and a fixed number of mutations are tried, the same each time.
//! `NAME SECONDS [SEED]` mutates for that long against one target, or against each for the name `all`.
//! An input that panics, or takes too long, is kept in `tests/fixtures/fuzz/NAME/findings/` and replayed ever after.
//! To add a target write a line in `targets.rs`.
#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a program that reports to a person"
)]
#![allow(clippy::expect_used, reason = "what fails here is the test, not a reader")]
#![allow(
    clippy::disallowed_methods,
    reason = "the clock says when to stop and what takes too long"
)]

mod driver;

mod memory;

mod mutate;

mod plan;

mod program;

mod targets;

use std::process::ExitCode;

fn main() -> ExitCode {
    program::run(targets::TARGETS)
}
