//! `cargo task fuzz NAME MINUTES`: mutated inputs against one reader, or against each in turn.

use std::time::SystemTime;

use crate::process::{cargo, run};
use crate::project::Project;

/// The seed of the checks, so that they repeat.
const SEED: u64 = 1;

/// Gives the target `name` (or each, for `all`) inputs for so many minutes, each time others.
pub fn fuzz(project: &Project, name: &str, minutes: f64) -> Result<(), String> {
    let now = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH);
    let seed = now.map_or(SEED, |time| time.as_secs());
    feed(project, name, minutes * 60.0, seed, &["--profile", "fuzz"])
}

/// Gives every target inputs for so many seconds, each time the same.
pub fn check(project: &Project, seconds: f64) -> Result<(), String> {
    feed(project, "all", seconds, SEED, &[])
}

/// Every kept finding is replayed first. Built as the tests are, with overflow checks and assertions on; `profile` builds
/// the same for speed, which takes longer than a check does.
fn feed(project: &Project, name: &str, seconds: f64, seed: u64, profile: &[&str]) -> Result<(), String> {
    // The readers of base data are a package of their own, and so are their targets, which are named for that.
    let is_base = name.starts_with("base_");
    for (package, program, is_asked) in [
        ("hobnail_core", "fuzz", !is_base),
        ("hobnail_readers", "fuzz_readers", is_base || name == "all"),
    ] {
        if is_asked {
            let arguments = ["test", "--locked", "--package", package, "--test", program];
            let mut command = cargo(project, &arguments);
            command.args(profile);
            run(command.args(["--", name, &seconds.to_string(), &seed.to_string()]))?;
        }
    }
    Ok(())
}
