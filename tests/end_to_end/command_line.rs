//! The native command line, to compare its numbers with the page's.

use std::path::{Path, PathBuf};
use std::process::Command;

use hobnail_core::exchange::json::{self, Json};

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

/// A figure of a plan file as the command line measures it.
fn figure(plan: &Path, id: &str) -> Json {
    let measured = hobnail(&["measure", plan.to_str().expect("the path is text"), "--json"]);
    let measured = json::parse(measured.as_bytes()).expect("hobnail prints JSON");
    let figures = measured.member("figures").and_then(Json::as_list);
    let is_it = |held: &&Json| held.member("id").and_then(Json::as_text) == Some(id);
    let found = figures.expect("hobnail prints figures").iter().find(is_it);
    found.unwrap_or_else(|| panic!("hobnail has no figure {id}")).clone()
}

/// The text a figure of a plan file is shown as.
pub fn shown(plan: &Path, id: &str) -> String {
    let figure = figure(plan, id);
    let text = figure.member("shown").and_then(Json::as_text);
    text.expect("a figure is shown as text").to_owned()
}

/// The rows of a table that hold anything, as the command line measures them: id, value and text. Numbers are read to the
/// last place.
pub fn rows(sample: &str, id: &str) -> Vec<(String, f64, String)> {
    let found = figure(&top_level().join("sample-sketches").join(sample), id);
    let text = |held: &Json| held.as_text().map(str::to_owned);
    let row = |row: &Json| {
        let id = row
            .member("at")
            .and_then(Json::as_list)
            .and_then(|at| text(at.first()?));
        let shown = row.member("shown").and_then(text).expect("a row is shown as text");
        let value = row.member("value").and_then(Json::as_number);
        Some((
            id.expect("a row has a place"),
            value.filter(|value| *value > 0.0)?,
            shown,
        ))
    };
    let rows = found.member("rows").and_then(Json::as_list);
    rows.expect("the figure is a table").iter().filter_map(row).collect()
}
