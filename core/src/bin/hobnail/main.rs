//! The command line: parse, call, print; no logic.
//!
//! Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.

mod class_table;
mod export;
mod measure;
mod network;
mod streams;

use std::ffi::OsString;
use std::process::ExitCode;

use hobnail_core::messages::{Language, use_language};
use hobnail_core::say;

use streams::{Streams, usage};

fn main() -> ExitCode {
    let arguments: Vec<OsString> = std::env::args_os().skip(1).collect();
    let mut streams = Streams::default();
    let mut words: Vec<String> = arguments
        .iter()
        .map(|argument| argument.to_string_lossy().into_owned())
        .collect();
    let code = match take_language(&mut words) {
        Ok(()) => answer(&words, &mut streams),
        Err(fault) => {
            streams.err(&format!("hobnail: {fault}\n\n{}", usage(say!("command-line-usage"))));
            2
        }
    };
    ExitCode::from(streams.finish(code))
}

/// Takes `--language CODE` out of the words, wherever it stands, and speaks that language from here on; the last one
/// counts. Or says what is wrong with it.
fn take_language(words: &mut Vec<String>) -> Result<(), String> {
    while let Some(place) = words.iter().position(|word| word == "--language") {
        words.remove(place);
        if place == words.len() {
            return Err(say!("command-line-needs-value", option = "--language"));
        }
        let code = words.remove(place);
        let language = Language::of_code(&code).ok_or_else(|| {
            let codes = Language::ALL.map(Language::code).join(", ");
            say!(
                "command-line-no-language",
                code = code.escape_debug().to_string(),
                codes = codes
            )
        })?;
        use_language(language);
    }
    Ok(())
}

/// Runs the command; the answer is the exit code.
fn answer(words: &[String], streams: &mut Streams) -> u8 {
    match words.first().map(String::as_str) {
        Some("export") => export::run(&words[1..], streams),
        Some("measure") => measure::run(&words[1..], streams),
        Some("network") => network::run(&words[1..], streams),
        Some("--help" | "-h" | "help") => {
            streams.out(&usage(say!("command-line-usage")));
            0
        }
        Some("--version") => {
            streams.out(concat!("hobnail ", env!("CARGO_PKG_VERSION"), "\n"));
            0
        }
        Some(other) => {
            let fault = say!("command-line-no-command", name = other.escape_debug().to_string());
            streams.err(&format!("hobnail: {fault}\n\n{}", usage(say!("command-line-usage"))));
            2
        }
        None => {
            streams.err(&usage(say!("command-line-usage")));
            2
        }
    }
}
