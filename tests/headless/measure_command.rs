//! The command line on every sample: the same figures as the library, bases to their ends, refusals in words.

use std::path::{Path, PathBuf};

use hobnail_core::exchange::plan_file;
use hobnail_core::report::measure_report::Measuring;

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name)
}

/// The samples by name, with the names of their alternatives.
fn samples() -> Vec<(String, Vec<u8>, Vec<String>)> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder("sample-sketches"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.retain(|path| path.extension().is_some_and(|extension| extension == "geojson"));
    files.sort();
    files
        .into_iter()
        .map(|path| {
            let bytes = std::fs::read(&path).unwrap();
            let document = plan_file::read(&bytes).unwrap().document;
            let names = document.alternatives.values().map(|held| held.name.clone()).collect();
            (path.file_stem().unwrap().to_string_lossy().into_owned(), bytes, names)
        })
        .collect()
}

/// Invariant 3: the command line prints the figures of the study behind the page.
#[test]
fn the_command_prints_the_same_as_the_library() {
    for (sample, bytes, alternatives) in samples() {
        let path = folder("sample-sketches").join(format!("{sample}.geojson"));
        for alternative in alternatives {
            let run = std::process::Command::new(env!("CARGO_BIN_EXE_hobnail"))
                .arg("measure")
                .arg(&path)
                .args(["--alternative", &alternative, "--json"])
                .output()
                .unwrap();
            let library = Measuring::open(&bytes, Some(&alternative))
                .unwrap()
                .report()
                .to_json()
                .unwrap();
            assert_eq!(
                String::from_utf8(run.stdout).unwrap(),
                library,
                "{sample}, {alternative}"
            );
            assert_eq!(
                run.status.code(),
                Some(0),
                "{sample}: {}",
                String::from_utf8_lossy(&run.stderr)
            );
        }
    }
}

#[test]
fn a_basis_ends_at_counted_things_and_sources() {
    let path = folder("sample-sketches/compact-village.geojson");
    let run = std::process::Command::new(env!("CARGO_BIN_EXE_hobnail"))
        .arg("measure")
        .arg(&path)
        .args(["--basis", "walk.center_5min_homes_share"])
        .output()
        .unwrap();
    let basis = String::from_utf8(run.stdout).unwrap();
    for part in [
        "[walk.center_5min_homes_share]",
        "counted on the drawing",
        "common practice, no source",
    ] {
        assert!(basis.contains(part), "no `{part}` in:\n{basis}");
    }
}

#[test]
fn a_part_of_a_plan_is_measured_as_such() {
    let path = folder("sample-sketches/compact-village.geojson");
    let homes = |options: &[&str]| {
        let run = std::process::Command::new(env!("CARGO_BIN_EXE_hobnail"))
            .arg("measure")
            .arg(&path)
            .arg("--json")
            .args(options)
            .output()
            .unwrap();
        let report: serde_json::Value = serde_json::from_slice(&run.stdout).unwrap();
        let figures = report["figures"].as_array().unwrap().iter();
        let mut homes = figures
            .filter(|figure| figure["id"] == "homes.count")
            .map(|figure| figure["value"].as_f64());
        (
            report["scope"].as_str().map(str::to_owned),
            homes.next().flatten().unwrap(),
        )
    };
    let (none, all) = homes(&[]);
    let (first, part) = homes(&["--phases", "0"]);
    let (second, rest) = homes(&["--phases", "1"]);
    let (today, standing) = homes(&["--today"]);
    assert_eq!(none, None);
    assert_eq!(first.as_deref(), Some("phase Main street and square alone"));
    assert_eq!(second.as_deref(), Some("phase Out to the creek alone"));
    assert_eq!((today.as_deref(), standing), (Some("as it stands today"), 0.0));
    assert!(
        0.0 < part && part < all && 0.0 <= rest && rest < all,
        "{part} and {rest} of {all}"
    );
}

#[test]
fn what_can_not_be_measured_is_said_with_code_2() {
    let check = |arguments: &[&str], code: i32, words: &str| {
        let run = std::process::Command::new(env!("CARGO_BIN_EXE_hobnail"))
            .args(arguments)
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&run.stderr).into_owned();
        assert_eq!(run.status.code(), Some(code), "{arguments:?}: {said}");
        assert!(said.contains(words), "{arguments:?}: {said}");
    };
    let village = folder("sample-sketches/compact-village.geojson");
    let village = village.to_str().unwrap();
    check(
        &["measure", "no-such-plan.geojson"],
        2,
        "no-such-plan.geojson: can not be read",
    );
    check(
        &["measure", village, "--alternative", "Nowhere"],
        2,
        "no alternative called `Nowhere`",
    );
    check(
        &["measure", village, "--basis", "homes.none"],
        2,
        "no figure `homes.none`",
    );
    check(&["measure"], 2, "which plan?");
    check(
        &["measure", village, "--phases", "7"],
        2,
        "there is no phase 7; there are: 0 Main street and square, 1 Out to the creek",
    );
}
