//! The native command line, to compare its numbers with the page's.

use std::path::PathBuf;
use std::process::Command;

use serde_json::Value;

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

/// A figure of a sample sketch, as the command line measures it.
fn figure(sample: &str, id: &str) -> Value {
    let sketch = top_level().join("sample-sketches").join(sample);
    let measured = hobnail(&["measure", sketch.to_str().expect("the path is text"), "--json"]);
    let measured: Value = serde_json::from_str(&measured).expect("hobnail prints JSON");
    let held = measured["figures"].as_array().expect("hobnail prints figures");
    let found = held.iter().find(|held| held["id"] == id);
    found.unwrap_or_else(|| panic!("hobnail has no figure {id}")).clone()
}

/// The rows of a table that hold anything, as the command line measures them: id, value and text.
pub fn rows(sample: &str, id: &str) -> Vec<(String, f64, String)> {
    let rows = figure(sample, id)["rows"].clone();
    let rows = rows.as_array().expect("the figure is a table").clone();
    let row = |row: Value| {
        let id = row["at"][0].as_str().expect("a row has a place").to_owned();
        let shown = row["shown"].as_str().expect("a row is shown as text").to_owned();
        Some((id, row["value"].as_f64().filter(|value| *value > 0.0)?, shown))
    };
    rows.into_iter().filter_map(row).collect()
}
