//! `hobnail export`: a plan for other programs, to standard output.

use hobnail_core::figures::unit::System;
use hobnail_core::report::export;
use hobnail_core::report::measure_report::Measuring;
use hobnail_core::say;
use hobnail_core::study::first_level::system;

use crate::address;
use crate::streams::{Streams, name_of, usage};

/// Formats, as they are named after `--to`.
const FORMATS: [&str; 5] = ["svg", "dxf", "geojson", "csv", ADDRESS];

/// The format that is no file.
const ADDRESS: &str = "address";

/// Arguments as understood.
#[derive(Debug, Default, PartialEq)]
struct Arguments {
    plan: String,
    format: String,
    alternative: Option<String>,
    system: Option<System>,
    scale: Option<f64>,
    base: Option<String>,
}

/// Runs the command; the answer is the exit code.
pub fn run(words: &[String], streams: &mut Streams) -> u8 {
    if words.iter().any(|word| word == "--help" || word == "-h") {
        streams.out(&usage(say!("command-line-usage-export")));
        return 0;
    }
    let arguments = match parse(words) {
        Ok(arguments) => arguments,
        Err(faults) => return streams.refuse("export", &faults, say!("command-line-usage-export")),
    };
    if arguments.format == ADDRESS {
        return address::export(&arguments.plan, arguments.base.as_deref(), streams);
    }
    let Some(bytes) = streams.read(&arguments.plan) else {
        return 2;
    };
    let place = name_of(&arguments.plan);
    match export(&bytes, &arguments) {
        Ok((text, faults)) => {
            let told: String = faults.iter().map(|fault| format!("{place}: {fault}\n")).collect();
            streams.err(&told);
            streams.out(&text);
            u8::from(!faults.is_empty())
        }
        Err(refusal) => {
            streams.err(&format!("{place}: {refusal}\n"));
            2
        }
    }
}

/// The text, and what is to be fixed in the plan.
fn export(bytes: &[u8], arguments: &Arguments) -> Result<(String, Vec<String>), String> {
    let opened = Measuring::open(bytes, arguments.alternative.as_deref());
    let mut measuring = opened.map_err(|refusal| refusal.to_string())?;
    let study = measuring.worked_study();
    let system = arguments.system.unwrap_or_else(|| system(study.document()));
    let scale = arguments.scale.unwrap_or(match system {
        System::Metric => 1000.0,
        System::Customary => 1200.0,
    });
    let text = match arguments.format.as_str() {
        "svg" => export::svg(study, scale, system),
        "dxf" => export::dxf(study, scale, system),
        "csv" => export::csv(study, system),
        _ => export::geojson(study).map_err(|fault| fault.to_string())?,
    };
    Ok((text, measuring.faults().to_vec()))
}

/// Understands the words after the command, or says everything that is wrong with them.
fn parse(words: &[String]) -> Result<Arguments, Vec<String>> {
    let mut faults = Vec::new();
    let mut paths: Vec<String> = Vec::new();
    let mut arguments = Arguments::default();
    let mut rest = words.iter();
    while let Some(word) = rest.next() {
        if !word.starts_with('-') || word == "-" {
            paths.push(word.clone());
            continue;
        }
        if !["--to", "--alternative", "--units", "--scale", "--base"].contains(&word.as_str()) {
            faults.push(say!("command-line-no-option", option = word.escape_debug().to_string()));
            continue;
        }
        let Some(value) = rest.next() else {
            faults.push(say!("command-line-needs-value", option = word));
            continue;
        };
        match word.as_str() {
            "--to" if FORMATS.contains(&value.as_str()) => arguments.format.clone_from(value),
            "--to" => faults.push(no_format(value)),
            "--base" => arguments.base = Some(value.clone()),
            "--units" => match units(value) {
                Ok(system) => arguments.system = Some(system),
                Err(fault) => faults.push(fault),
            },
            "--scale" => match scale(value) {
                Some(scale) => arguments.scale = Some(scale),
                None => faults.push(say!("command-line-no-scale", word = value.escape_debug().to_string())),
            },
            _ => arguments.alternative = Some(value.clone()),
        }
    }
    match paths.as_slice() {
        [plan] => arguments.plan.clone_from(plan),
        [] => faults.push(say!("command-line-no-plan").to_owned()),
        more => faults.push(say!(
            "command-line-one-plan",
            count = more.len(),
            names = more.join(", ")
        )),
    }
    if arguments.format.is_empty() && !words.iter().any(|word| word == "--to") {
        faults.push(say!("command-line-to-what", formats = FORMATS.join(", ")));
    }
    if faults.is_empty() { Ok(arguments) } else { Err(faults) }
}

fn no_format(word: &str) -> String {
    say!(
        "command-line-no-format",
        word = word.escape_debug().to_string(),
        formats = FORMATS.join(", ")
    )
}

/// The scale a word names: `1000` or `1:1000` for one to a thousand, `100ft` for an inch to a hundred feet; from 1:50 to
/// 1:100,000.
fn scale(word: &str) -> Option<f64> {
    let (number, times) = match word.strip_suffix("ft") {
        Some(feet) => (feet, 12.0),
        None => (word.strip_prefix("1:").unwrap_or(word), 1.0),
    };
    let scale = number.parse::<f64>().ok()? * times;
    (50.0..=100_000.0).contains(&scale).then_some(scale)
}

/// The units a word after `--units` names, or what is wrong with it.
pub fn units(word: &str) -> Result<System, String> {
    match word {
        "us" => Ok(System::Customary),
        "metric" => Ok(System::Metric),
        other => Err(say!("command-line-no-units", word = other.escape_debug().to_string())),
    }
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
            plan: "plan.geojson".to_owned(),
            format: "csv".to_owned(),
            alternative: Some("Repair".to_owned()),
            system: Some(System::Metric),
            scale: Some(1200.0),
            base: None,
        };
        let given = "--units metric plan.geojson --scale 100ft --alternative Repair --to csv";
        assert_eq!(parse(&words(given)), Ok(expected));
    }

    #[test]
    fn every_fault_is_told() {
        let faults = parse(&words("a b --to paper --units yards --scale 3 --loud --alternative")).unwrap_err();
        assert_eq!(
            faults,
            [
                "--to: there is no paper; there are: svg, dxf, geojson, csv, address",
                "--units: yards is not us or metric",
                "--scale: 3 is not a scale such as 1000, 1:1000 or 100ft, from 1:50 to 1:100000",
                "no option --loud",
                "--alternative needs a value",
                "one plan at a time, not 2: a, b",
            ]
        );
        assert_eq!(
            parse(&words("a")).unwrap_err(),
            ["to what? --to and one of: svg, dxf, geojson, csv, address"]
        );
    }
}
