//! Every dependency may be used and passed on under the project's own license.

use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

use serde_json::Value;

use crate::layout::top_level;

/// Licenses of what is published: they ask for no more than their own text beside the program.
const PUBLISHED: [&str; 12] = [
    "0BSD",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// What may be used besides in tests, which nobody is given as a program.
const ONLY_IN_TESTS: [&str; 1] = ["MPL-2.0"];

/// Whether an SPDX expression can be satisfied with allowed licenses.
///
/// `AND` binds stronger than `OR`; a slash is an old way to write `OR`.
fn is_satisfied(expression: &str, allowed: &BTreeSet<&str>) -> bool {
    let spaced = expression
        .replace('/', " OR ")
        .replace('(', " ( ")
        .replace(')', " ) ")
        .replace(" WITH ", "+WITH+");
    let words: Vec<String> = spaced
        .split_whitespace()
        .map(|word| word.replace("+WITH+", " WITH "))
        .collect();
    let mut rest = words.as_slice();
    any_of(&mut rest, allowed) == Some(true) && rest.is_empty()
}

/// `None` where the words are no expression; so for all of these.
fn any_of(words: &mut &[String], allowed: &BTreeSet<&str>) -> Option<bool> {
    let mut satisfied = all_of(words, allowed)?;
    while skip(words, "OR") {
        satisfied |= all_of(words, allowed)?;
    }
    Some(satisfied)
}

fn all_of(words: &mut &[String], allowed: &BTreeSet<&str>) -> Option<bool> {
    let mut satisfied = one(words, allowed)?;
    while skip(words, "AND") {
        satisfied &= one(words, allowed)?;
    }
    Some(satisfied)
}

fn one(words: &mut &[String], allowed: &BTreeSet<&str>) -> Option<bool> {
    if skip(words, "(") {
        let satisfied = any_of(words, allowed)?;
        return skip(words, ")").then_some(satisfied);
    }
    let (license, rest) = words.split_first()?;
    *words = rest;
    Some(allowed.contains(license.as_str()))
}

fn skip(words: &mut &[String], word: &str) -> bool {
    let Some(rest) = words.strip_prefix(&[word.to_string()]) else {
        return false;
    };
    *words = rest;
    true
}

#[test]
fn expressions_are_read_as_spdx_means_them() {
    let allowed = BTreeSet::from(["MIT", "Apache-2.0 WITH LLVM-exception", "Zlib"]);
    for good in [
        "MIT",
        "MIT OR GPL-3.0",
        "GPL-3.0/MIT",
        "(GPL-3.0 OR Zlib) AND MIT",
        "GPL-3.0 AND ISC OR MIT",
    ] {
        assert!(is_satisfied(good, &allowed), "{good}");
    }
    assert!(is_satisfied("Apache-2.0 WITH LLVM-exception OR GPL-3.0", &allowed));
    for bad in [
        "",
        "GPL-3.0",
        "MIT AND GPL-3.0",
        "Apache-2.0",
        "MIT OR",
        "(MIT",
        "MIT)",
        "MIT Zlib",
    ] {
        assert!(!is_satisfied(bad, &allowed), "{bad}");
    }
}

#[test]
fn every_dependency_has_a_license_we_may_use() {
    let cargo = std::env::var("CARGO").expect("cargo runs this test");
    let arguments = ["metadata", "--locked", "--format-version", "1"];
    let output = Command::new(cargo)
        .current_dir(top_level())
        .args(arguments)
        .output()
        .expect("cargo starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let metadata: Value = serde_json::from_slice(&output.stdout).expect("cargo prints JSON");
    let published = published(&metadata);
    assert!(
        published.len() > 50,
        "the page alone has more dependencies than {}",
        published.len()
    );
    let strict = BTreeSet::from(PUBLISHED);
    let wide: BTreeSet<&str> = strict.iter().copied().chain(ONLY_IN_TESTS).collect();
    let mut faults = Vec::new();
    for package in list(&metadata["packages"]) {
        let (id, license) = (text(&package["id"]), text(&package["license"]));
        let allowed = if published.contains(id) { &strict } else { &wide };
        if !is_satisfied(license, allowed) {
            faults.push(format!("{} has the license `{license}`", text(&package["name"])));
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}

/// The ids of what the command line and the page are made of: normal dependencies, not those of tests.
fn published(metadata: &Value) -> BTreeSet<&str> {
    let mut nodes = BTreeMap::new();
    for node in list(&metadata["resolve"]["nodes"]) {
        nodes.insert(text(&node["id"]), node);
    }
    let ours = |name: &str| ["hobnail_core", "hobnail_readers", "hobnail_web"].contains(&name);
    let packages = list(&metadata["packages"]);
    let mut open: Vec<&str> = packages
        .iter()
        .filter(|package| ours(text(&package["name"])))
        .map(|package| text(&package["id"]))
        .collect();
    let mut found = BTreeSet::new();
    while let Some(id) = open.pop() {
        if found.insert(id) {
            for dependency in list(&nodes[id]["deps"]) {
                let kinds = list(&dependency["dep_kinds"]);
                if kinds.iter().any(|kind| kind["kind"].is_null()) {
                    open.push(text(&dependency["pkg"]));
                }
            }
        }
    }
    found
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}
