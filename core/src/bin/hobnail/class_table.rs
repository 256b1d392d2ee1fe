//! `hobnail measure DIR --table OUT.csv`: the first-level figures of every plan file of a folder.

use std::path::{Path, PathBuf};

use hobnail_core::figures::unit::System;
use hobnail_core::order;
use hobnail_core::report::class_table::ClassTable;
use hobnail_core::say;

use crate::export::units;
use crate::streams::{Streams, usage};

/// Arguments as understood.
#[derive(Debug, Default, PartialEq)]
struct Arguments {
    folder: String,
    table: String,
    system: Option<System>,
}

/// Runs the command; the answer is the exit code.
pub fn run(words: &[String], streams: &mut Streams) -> u8 {
    let arguments = match parse(words) {
        Ok(arguments) => arguments,
        Err(faults) => {
            let told: String = faults
                .iter()
                .map(|fault| format!("hobnail measure: {fault}\n"))
                .collect();
            streams.err(&format!("{told}\n{}", usage(say!("command-line-usage-measure"))));
            return 2;
        }
    };
    let files = match plan_files(Path::new(&arguments.folder)) {
        Ok(files) => files,
        Err(error) => {
            return refused(
                streams,
                &say!("command-line-can-not-read", file = arguments.folder, error = error),
            );
        }
    };
    if files.is_empty() {
        return refused(streams, &say!("command-line-no-plan-files", folder = arguments.folder));
    }
    let mut table = ClassTable::new(arguments.system);
    for path in &files {
        let name = path
            .file_name()
            .map_or_else(String::new, |name| name.to_string_lossy().into_owned());
        let bytes = std::fs::read(path).map_err(|error| {
            let error = error.to_string();
            say!("command-line-can-not-read", file = name, error = error)
        });
        table.add(&name, bytes.as_deref().map_err(Clone::clone));
    }
    let text = match table.to_csv() {
        Ok(text) => text,
        Err(fault) => return refused(streams, &fault),
    };
    if arguments.table == "-" {
        streams.out(&text);
    } else if let Err(error) = std::fs::write(&arguments.table, text) {
        let error = error.to_string();
        return refused(
            streams,
            &say!("command-line-can-not-write", file = arguments.table, error = error),
        );
    }
    let faulty = table.faulty();
    if faulty > 0 {
        streams.err(&(say!("command-line-table-faults", count = faulty) + "\n"));
    }
    u8::from(faulty > 0)
}

fn refused(streams: &mut Streams, fault: &str) -> u8 {
    streams.err(&format!("{fault}\n"));
    2
}

/// The files of a folder that may be plans, by name; folders within are not looked into.
fn plan_files(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(|error| error.to_string())? {
        let path = entry.map_err(|error| error.to_string())?.path();
        let extension = path
            .extension()
            .map(|extension| extension.to_string_lossy().to_ascii_lowercase());
        if matches!(extension.as_deref(), Some("geojson" | "json")) && !path.is_dir() {
            files.push(path);
        }
    }
    order::sort(&mut files);
    Ok(files)
}

/// Understands the words after the command, or says everything that is wrong with them.
fn parse(words: &[String]) -> Result<Arguments, Vec<String>> {
    let mut faults = Vec::new();
    let mut folders: Vec<String> = Vec::new();
    let mut arguments = Arguments::default();
    let mut rest = words.iter();
    while let Some(word) = rest.next() {
        match word.as_str() {
            "--table" | "--units" => match rest.next() {
                Some(value) if word == "--table" => arguments.table.clone_from(value),
                Some(value) => match units(value) {
                    Ok(system) => arguments.system = Some(system),
                    Err(fault) => faults.push(fault),
                },
                None => faults.push(say!("command-line-needs-value", option = word)),
            },
            option if option.starts_with('-') => faults.push(say!(
                "command-line-not-with-table",
                option = option.escape_debug().to_string()
            )),
            _ => folders.push(word.clone()),
        }
    }
    match folders.as_slice() {
        [folder] => arguments.folder.clone_from(folder),
        held => faults.push(say!("command-line-one-folder", count = held.len())),
    }
    if faults.is_empty() { Ok(arguments) } else { Err(faults) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(words: &str) -> Vec<String> {
        words.split_whitespace().map(str::to_owned).collect()
    }

    #[test]
    fn arguments_are_understood_in_any_order() {
        let expected = Arguments {
            folder: "class".to_owned(),
            table: "out.csv".to_owned(),
            system: Some(System::Metric),
        };
        assert_eq!(parse(&words("--table out.csv class --units metric")), Ok(expected));
    }

    #[test]
    fn every_fault_is_told() {
        let faults = parse(&words("--json --units yards --table")).unwrap_err();
        assert_eq!(
            faults,
            [
                "--json does not go with --table",
                "--units: yards is not us or metric",
                "--table needs a value",
                "--table takes one folder of plan files, not 0",
            ]
        );
    }
}
