//! The command `hobnail network` as a person runs it: files, standard input, exit codes, messages.

use std::io::Write;
use std::process::{Command, Output, Stdio};

use serde_json::Value;

fn fixture(file: &str) -> String {
    format!("{}/../tests/fixtures/streets/{file}", env!("CARGO_MANIFEST_DIR"))
}

/// Runs the command with these words and this standard input.
fn run(words: &[&str], input: &[u8]) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_hobnail"))
        .args(words)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    // A command that refuses its arguments does not wait for its input.
    let _ = child.stdin.take().expect("a pipe").write_all(input);
    child.wait_with_output().expect("the command ends")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("text")
}

#[track_caller]
fn check(words: &[&str], input: &[u8], code: i32, out: &str, err: &str) {
    let output = run(words, input);
    let (told_out, told_err) = (text(&output.stdout), text(&output.stderr));
    let story = format!("{words:?}\nout: {told_out}\nerr: {told_err}");
    assert_eq!(output.status.code(), Some(code), "{story}");
    assert!(
        told_out.contains(out) && (!out.is_empty() || told_out.is_empty()),
        "{story}"
    );
    assert!(
        told_err.contains(err) && (!err.is_empty() || told_err.is_empty()),
        "{story}"
    );
}

const CROSS: &[u8] = br#"{"type":"MultiLineString","coordinates":[[[-30,0],[30,0]],[[0,-40],[0,40]]]}"#;

#[test]
fn a_fine_sketch_is_measured_in_words() {
    let streets = fixture("d1_grid/streets.geojson");
    let points = fixture("d1_grid/points.geojson");
    let words = [
        "network",
        streets.as_str(),
        "--points",
        points.as_str(),
        "--meters",
        "--within",
        "400",
    ];
    check(
        &words,
        b"",
        0,
        "4,717 m of street in 1 connected part: 41 links between 24 nodes, 0 of them dead ends.",
        "",
    );
    check(
        &words,
        b"",
        0,
        "within  400 m  4,383 m of street, 615 dwellings (93 %)",
        "",
    );
}

#[test]
fn standard_input_is_a_file_too() {
    check(
        &["network", "-", "--meters"],
        CROSS,
        0,
        "140 m of street in 1 connected part: 4 links between 5 nodes",
        "",
    );
    let streets = fixture("d1_grid/streets.geojson");
    let points = std::fs::read(fixture("d1_grid/points.geojson")).expect("points");
    let words = ["network", streets.as_str(), "--points", "-", "--meters", "--json"];
    let output = run(&words, &points);
    let answer: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(answer["walk"]["origins"][0]["sheds"]["400"]["dwellings_reached"], 615);
    assert_eq!(answer["walk"]["radii"], serde_json::json!([200, 400, 800]));
}

#[test]
fn things_to_fix_are_told_and_the_rest_measured() {
    let streets = br#"{"type":"FeatureCollection","features":[
        {"type":"Feature","geometry":{"type":"LineString","coordinates":[[0,0],[9,0]]}},
        {"type":"Feature","properties":{"name":"Mill Pond"},"geometry":{"type":"Polygon","coordinates":[]}}]}"#;
    let message =
        "standard input: feature 1 (Mill Pond): is a Polygon, not a LineString or MultiLineString, left out\n";
    check(&["network", "-", "--meters"], streets, 1, "9 m of street", message);
    let gap = br#"{"type":"MultiLineString","coordinates":[[[0,0],[90,0]],[[40,50],[40,0.3]]]}"#;
    let message =
        "standard input: feature 0: the end at 40.000, 0.300 is joined to feature 0, extended to 40.000, 0.000\n";
    check(
        &["network", "-", "--meters", "--tolerance", "0.5"],
        gap,
        1,
        "140 m of street in 1 connected part",
        message,
    );
    check(
        &["network", "-", "--meters"],
        gap,
        0,
        "140 m of street in 2 connected parts",
        "",
    );
}

#[test]
fn what_can_not_run_says_why() {
    check(
        &["network", "-"],
        b"{",
        2,
        "",
        "standard input: the file is not JSON to its end: it breaks off in line 1, column 1\n",
    );
    check(&["network", "-"], b"{}", 2, "", "standard input: not GeoJSON");
    check(
        &["network", "no-such-file.geojson"],
        b"",
        2,
        "",
        "no-such-file.geojson: can not be read: ",
    );
    let empty = br#"{"type":"FeatureCollection","features":[]}"#;
    check(
        &["network", "-"],
        empty,
        2,
        "",
        "standard input: no street to measure\n",
    );
    check(&["network"], b"", 2, "", "hobnail network: no file of streets\n");
    check(
        &["network", "-", "--within", "soon"],
        CROSS,
        2,
        "",
        "--within: soon is not a number",
    );
    check(
        &["network", "-", "--meters", "--within", "0"],
        CROSS,
        2,
        "",
        "a walk of 0 m is not more than 0",
    );
    check(
        &["network", "-", "--meters", "--tolerance", "11"],
        CROSS,
        2,
        "",
        "a tolerance of 11 m is not between",
    );
    check(&["paint"], b"", 2, "", "hobnail: no command paint\n");
    check(&[], b"", 2, "", "hobnail network STREETS.geojson");
    // A bad points file is named by its own name.
    let streets = fixture("d1_grid/streets.geojson");
    check(
        &["network", &streets, "--meters", "--points", "-"],
        b"[1]",
        2,
        "",
        "standard input: not GeoJSON",
    );
}

#[test]
fn degrees_beyond_the_earth_are_told_with_their_place() {
    let streets =
        br#"{"type":"MultiLineString","coordinates":[[[24.9,60.1],[24.91,60.1]],[[500000,6700000],[500100,6700000]]]}"#;
    let message = "standard input: feature 0: 500000, 6700000 is no longitude and latitude within 100 km of the others, \
                   its line left out\n";
    check(&["network", "-"], streets, 1, "556 m of street", message);
}

#[test]
fn help_and_version_are_answered() {
    check(&["--help"], b"", 0, "hobnail network STREETS.geojson", "");
    check(&["measure", "--help"], b"", 0, "--basis FIGURE", "");
    check(&["network", "--help"], b"", 0, "--tolerance M", "");
    check(&["--version"], b"", 0, "hobnail ", "");
}
