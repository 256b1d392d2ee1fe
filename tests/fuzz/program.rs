//! What the arguments of a program of mutated inputs say, and running it.

use std::process::ExitCode;
use std::time::Duration;

use crate::driver::{self, Effort, Target};

/// The seed when none is given, so that a run without one repeats.
const SEED: u64 = 1;

/// Mutations per target when no time is given.
const FEW: u64 = 500;

/// Runs the targets that the program's arguments pick.
pub fn run(targets: &'static [Target]) -> ExitCode {
    driver::finds_a_planted_fault();
    match ask(targets, std::env::args().skip(1).collect()) {
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
fn ask(all: &'static [Target], arguments: Vec<String>) -> Result<Asked, String> {
    let words: Vec<&str> = arguments
        .iter()
        .map(String::as_str)
        .filter(|word| !word.starts_with('-'))
        .collect();
    let matching = |word: &str| all.iter().filter(|target| target.name.contains(word)).collect();
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
    let picked: Vec<_> = all
        .iter()
        .filter(|target| *name == "all" || target.name == *name)
        .collect();
    if picked.is_empty() {
        let names: Vec<_> = all.iter().map(|target| target.name).collect();
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
