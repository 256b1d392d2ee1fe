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

mod mutate;

mod plan;

mod targets;

use std::process::ExitCode;
use std::time::Duration;

use driver::{Effort, Target};

/// The seed when none is given, so that a run without one repeats.
const SEED: u64 = 1;

/// Mutations per target when no time is given.
const FEW: u64 = 500;

fn main() -> ExitCode {
    driver::finds_a_planted_fault();
    match ask(std::env::args().skip(1).collect()) {
        Ok(Asked { targets, effort, seed }) => {
            let failed = targets
                .iter()
                .filter(|target| !driver::try_target(target, effort, seed))
                .count();
            println!("test result: {} passed; {failed} failed", targets.len() - failed);
            if failed == 0 {
                ExitCode::SUCCESS
            } else {
                ExitCode::FAILURE
            }
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

/// What is to be run.
struct Asked {
    targets: Vec<&'static Target>,
    effort: Effort,
    seed: u64,
}

/// Understands the arguments. A lone word picks targets that contain it, as it picks tests in other test programs;
/// flags of those programs are passed over, since `cargo test` hands every program the same ones.
fn ask(arguments: Vec<String>) -> Result<Asked, String> {
    let words: Vec<&str> = arguments
        .iter()
        .map(String::as_str)
        .filter(|word| !word.starts_with('-'))
        .collect();
    let matching = |word: &str| {
        targets::TARGETS
            .iter()
            .filter(|target| target.name.contains(word))
            .collect()
    };
    let (name, seconds, seed) = match words.as_slice() {
        [] => {
            return Ok(Asked {
                targets: matching(""),
                effort: Effort::Count(FEW),
                seed: SEED,
            });
        }
        [word] => {
            return Ok(Asked {
                targets: matching(word),
                effort: Effort::Count(FEW),
                seed: SEED,
            });
        }
        [name, seconds] => (name, seconds, SEED),
        [name, seconds, seed] => (name, seconds, seed.parse().map_err(|_| format!("`{seed}` is no seed"))?),
        _ => return Err("arguments: NAME SECONDS [SEED]".to_string()),
    };
    let picked: Vec<_> = targets::TARGETS
        .iter()
        .filter(|target| *name == "all" || target.name == *name)
        .collect();
    if picked.is_empty() {
        let names: Vec<_> = targets::TARGETS.iter().map(|target| target.name).collect();
        return Err(format!("there is no target `{name}`; there are: {}", names.join(", ")));
    }
    let seconds = seconds
        .parse()
        .ok()
        .and_then(|seconds| Duration::try_from_secs_f64(seconds).ok());
    let time = seconds.ok_or("the second argument is a number of seconds")?;
    Ok(Asked {
        targets: picked,
        effort: Effort::Time(time),
        seed,
    })
}
