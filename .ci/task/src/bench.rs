//! `cargo task bench`: timings of core, native and in Chromium, side by side, and of other libraries on the same inputs.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

use crate::chromium::Chromium;
use crate::process::{cargo, program, run};
use crate::project::{Project, find_on_path};
use crate::test::{build_page, in_browser};
use crate::tools::WasmTools;

/// Nanoseconds by the id of the operation.
type Medians = BTreeMap<String, f64>;

/// Other libraries, from PyPI, in an environment of their own below the target folder.
const PEERS: [&str; 4] = ["shapely==2.2.0", "scipy==1.17.1", "igraph==1.0.0", "numpy==2.4.6"];

/// The benches whose inputs other libraries are given.
const SHARED: [&str; 2] = ["noding", "paths"];

/// Runs the benches natively, the same in Chromium and other libraries on the same inputs, where these are to be had.
pub fn bench(project: &Project) -> Result<(), String> {
    let native = medians(&mut native(project, &[]))?;
    let in_chromium = match Chromium::find() {
        Some(chromium) => {
            let tools = WasmTools::install(project)?;
            through_the_page(project, &tools, &chromium)?;
            let arguments = ["--profile", "page", "--test", "benches", "--", "--nocapture"];
            medians(&mut in_browser(project, &tools, &chromium, &arguments)?)?
        }
        None => {
            println!("no Chromium here: the benches ran natively only");
            Medians::new()
        }
    };
    println!("\n{}\n", side_by_side(&native, &in_chromium));
    run(&mut opening(project, &[]))?;
    if find_on_path("python3").is_none() {
        println!("no Python here: other libraries were not timed");
        return Ok(());
    }
    peers(project, &native)
}

/// Times the readers of base data on extracts of some size, beside bare loops of the libraries they stand on; with these
/// further arguments.
pub fn opening(project: &Project, arguments: &[&str]) -> Command {
    let bench = [
        "bench",
        "--locked",
        "--package",
        "hobnail_readers",
        "--bench",
        "opening",
    ];
    let mut command = cargo(project, &bench);
    command.args(arguments);
    command
}

/// Times what the page does while a hand drags a corner, on the page as it is published.
fn through_the_page(project: &Project, tools: &WasmTools, chromium: &Chromium) -> Result<(), String> {
    build_page(project, tools)?;
    let arguments = [
        "bench",
        "--locked",
        "--package",
        "hobnail_end_to_end",
        "--bench",
        "drag",
    ];
    let mut command = cargo(project, &arguments);
    command
        .env("HOBNAIL_CHROMIUM", &chromium.browser)
        .env("HOBNAIL_CHROMEDRIVER", &chromium.driver);
    run(&mut command)
}

/// Times other libraries on what the benches write, and prints how they compare with the medians.
fn peers(project: &Project, native: &Medians) -> Result<(), String> {
    let folder = project.target.join("peers");
    let inputs = folder.join("inputs");
    fs::create_dir_all(&inputs).map_err(|fault| format!("{}: {fault}", inputs.display()))?;
    for bench in SHARED {
        let mut command = cargo(
            project,
            &["bench", "--locked", "--package", "hobnail_core", "--bench", bench],
        );
        run(command.args(["--", "--write"]).arg(&inputs))?;
    }
    let mut lines = String::new();
    for (id, time) in native {
        // A string can always be written to.
        let _ = writeln!(lines, "{id} {time:.0}");
    }
    let results = folder.join("native.txt");
    fs::write(&results, lines).map_err(|fault| format!("{}: {fault}", results.display()))?;
    let environment = folder.join("environment");
    run(program("python3", &project.root, &["-m", "venv"]).arg(&environment))?;
    let python = environment.join("bin/python");
    let python = python.to_string_lossy();
    run(program(&python, &project.root, &["-m", "pip", "install", "--quiet"]).args(PEERS))?;
    run(program(&python, &project.root, &["tests/peers/peers.py"])
        .arg(&inputs)
        .arg(&results))
}

/// `cargo bench` of core, with these further arguments.
pub fn native(project: &Project, arguments: &[&str]) -> Command {
    let mut command = cargo(
        project,
        &["bench", "--locked", "--package", "hobnail_core", "--benches"],
    );
    command.args(arguments);
    command
}

/// Runs it, passing on what it prints, and reads the medians from the lines that hold one.
fn medians(command: &mut Command) -> Result<Medians, String> {
    let mut child = command
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|fault| format!("cargo could not start: {fault}"))?;
    let mut medians = Medians::new();
    if let Some(output) = child.stdout.take() {
        for line in BufReader::new(output).lines() {
            let line = line.map_err(|fault| format!("what the bench printed could not be read: {fault}"))?;
            println!("{line}");
            medians.extend(median(&line));
        }
    }
    let status = child.wait().map_err(|fault| format!("the bench was lost: {fault}"))?;
    if status.success() {
        Ok(medians)
    } else {
        Err(format!("the bench ended with {status}"))
    }
}

/// The id and the median of a line `operation/shape/size nanoseconds`.
fn median(line: &str) -> Option<(String, f64)> {
    let (id, time) = line.trim().split_once(' ')?;
    let time = time.parse().ok()?;
    (id.split('/').count() >= 3).then(|| (id.to_string(), time))
}

fn side_by_side(native: &Medians, in_chromium: &Medians) -> String {
    let width = native.keys().map(String::len).max().unwrap_or(0);
    let mut lines = vec![format!(
        "{:width$}  {:>10}  {:>10}  {:>5}",
        "ms", "native", "Chromium", "ratio"
    )];
    for (id, time) in native {
        let milliseconds = time / 1e6;
        let other = match in_chromium.get(id) {
            Some(other) => format!("{:10.3}  {:5.2}", other / 1e6, other / time),
            None => format!("{:>10}  {:>5}", "-", "-"),
        };
        lines.push(format!("{id:width$}  {milliseconds:10.3}  {other}"));
    }
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_lines_of_a_bench_hold_a_median() {
        assert_eq!(
            median("noding/grid/1000 123456"),
            Some(("noding/grid/1000".to_string(), 123_456.0))
        );
        assert_eq!(
            median("    noding/grid/1000 5"),
            Some(("noding/grid/1000".to_string(), 5.0))
        );
        assert_eq!(median("Running benches/noding.rs (target/release/noding)"), None);
        assert_eq!(median("test result: ok. 1 passed"), None);
    }

    #[test]
    fn both_times_stand_in_one_line() {
        let native = Medians::from([
            ("reach/grid/1000".to_string(), 2e6),
            ("reach/grid/10000".to_string(), 3e7),
        ]);
        let in_chromium = Medians::from([("reach/grid/1000".to_string(), 3e6)]);
        let table = side_by_side(&native, &in_chromium);
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(lines[1], "reach/grid/1000        2.000       3.000   1.50");
        assert_eq!(lines[2], "reach/grid/10000      30.000           -      -");
    }
}
