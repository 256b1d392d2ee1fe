//! The native command line, to compare its numbers with the page's.

use std::path::PathBuf;
use std::process::Command;

use crate::browser::top_level;

/// What `hobnail` prints for these arguments; a test fails when the command could not run at all.
pub fn hobnail(arguments: &[&str]) -> String {
    let program = std::env::var_os("HOBNAIL_COMMAND_LINE")
        .map_or_else(|| top_level().join("target/release/hobnail"), PathBuf::from);
    let output = Command::new(&program).args(arguments).output().unwrap_or_else(|fault| {
        panic!(
            "{} could not start: {fault}; `cargo build --release --bin hobnail` makes it",
            program.display()
        )
    });
    let errors = String::from_utf8_lossy(&output.stderr);
    // 1 says that the sketch has things to fix; it was measured all the same.
    assert!(
        matches!(output.status.code(), Some(0 | 1)),
        "hobnail {arguments:?}: {}: {errors}",
        output.status
    );
    String::from_utf8(output.stdout).expect("hobnail prints text")
}
