//! The documents say what is so.

use std::collections::BTreeSet;
use std::fs;

use crate::layout::{sources_below, top_level};

fn read(name: &str) -> String {
    fs::read_to_string(top_level().join(name)).unwrap_or_else(|fault| panic!("{name}: {fault}"))
}

/// The text under the heading `## NAME`, up to the next heading of that level.
fn section<'a>(document: &'a str, name: &str) -> &'a str {
    let start = document
        .find(&format!("\n## {name}\n"))
        .unwrap_or_else(|| panic!("there is no heading {name}"));
    let text = &document[start + 1..];
    text.find("\n## ").map_or(text, |end| &text[..end])
}

#[test]
fn the_developers_page_stays_short() {
    let lines = read("DEVELOPERS.md").lines().count();
    assert!(lines < 300, "DEVELOPERS.md has {lines} lines");
}

/// Each invariant ends with its test: `Guarded by` and the names of test functions in backticks.
#[test]
fn every_invariant_names_tests_that_exist() {
    let document = read("DEVELOPERS.md");
    let mut sources = String::new();
    for folder in ["core", "web", "tests", ".ci/task/src"] {
        for (_, text) in sources_below(&top_level().join(folder)) {
            sources.push_str(&text);
        }
    }
    let mut faults = Vec::new();
    let mut invariants = 0;
    for item in section(&document, "Invariants").split("\n- ").skip(1) {
        invariants += 1;
        let Some((_, guards)) = item.split_once("Guarded by") else {
            faults.push(format!("no guard: {item}"));
            continue;
        };
        let names: Vec<&str> = guards.split('`').skip(1).step_by(2).collect();
        if names.is_empty() {
            faults.push(format!("no test is named: {item}"));
        }
        for name in names {
            if !sources.contains(&format!("fn {name}(")) {
                faults.push(format!("there is no test `{name}`"));
            }
        }
    }
    assert!(invariants > 0, "no invariant was found, so the search itself is wrong");
    assert_eq!(faults, Vec::<String>::new());
}

#[test]
fn every_dependency_has_a_line_that_says_why() {
    let manifest = read("Cargo.toml");
    let (_, rest) = manifest
        .split_once("[workspace.dependencies]\n")
        .expect("dependencies are named once, there");
    let lines = rest.lines().take_while(|line| !line.starts_with('['));
    let names: BTreeSet<&str> = lines.filter_map(|line| Some(line.split_once(" = ")?.0)).collect();
    assert!(names.contains("serde"), "the manifest was not understood: {names:?}");
    let document = read("DEVELOPERS.md");
    let section = section(&document, "Dependencies");
    let of_ours = |name: &&str| name.starts_with("hobnail_");
    let missing: Vec<&str> = names
        .into_iter()
        .filter(|name| !of_ours(name))
        .filter(|name| {
            !section
                .lines()
                .any(|line| line.starts_with("- ") && line.contains(&format!("`{name}`")))
        })
        .collect();
    assert_eq!(missing, Vec::<&str>::new());
}
