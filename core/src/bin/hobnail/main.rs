//! The command line: parse, call, print; no logic.
//!
//! Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.

mod measure;
mod network;
mod streams;

use std::ffi::OsString;
use std::process::ExitCode;

use streams::Streams;

const USAGE: &str = "\
usage: hobnail measure PLAN.geojson [options]      every figure of a plan
       hobnail network STREETS.geojson [options]   measure a bare street network
       hobnail COMMAND --help                      what a command takes
       hobnail --version

A file may be - for standard input.
Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.
";

fn main() -> ExitCode {
    let arguments: Vec<OsString> = std::env::args_os().skip(1).collect();
    let mut streams = Streams::default();
    let words: Vec<String> = arguments
        .iter()
        .map(|argument| argument.to_string_lossy().into_owned())
        .collect();
    let code = match words.first().map(String::as_str) {
        Some("measure") => measure::run(&words[1..], &mut streams),
        Some("network") => network::run(&words[1..], &mut streams),
        Some("--help" | "-h" | "help") => {
            streams.out(USAGE);
            0
        }
        Some("--version") => {
            streams.out(concat!("hobnail ", env!("CARGO_PKG_VERSION"), "\n"));
            0
        }
        Some(other) => {
            streams.err(&format!("hobnail: no command {}\n\n{USAGE}", other.escape_debug()));
            2
        }
        None => {
            streams.err(USAGE);
            2
        }
    };
    ExitCode::from(streams.finish(code))
}
