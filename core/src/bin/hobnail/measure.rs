//! `hobnail measure`: every figure of a plan.

use hobnail_core::report::measure_report::{MeasureRefusal, Measuring};

use crate::streams::{Streams, name_of};

const USAGE: &str = "\
usage: hobnail measure PLAN.geojson [--alternative NAME] [--json] [--basis FIGURE]

Measures one alternative of a plan file, its first where none is named. PLAN may be - for standard
input. A plan that is unfinished or has faults is measured as it stands, and the faults are told.

  --alternative NAME  which alternative
  --json              all figures with their ranges as JSON
  --basis FIGURE      how one figure was worked out, down to its sources

Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.
";

/// Arguments as understood.
#[derive(Debug, Default, PartialEq)]
struct Arguments {
    plan: String,
    alternative: Option<String>,
    basis: Option<String>,
    json: bool,
}

/// Runs the command; the answer is the exit code.
pub fn run(words: &[String], streams: &mut Streams) -> u8 {
    if words.iter().any(|word| word == "--help" || word == "-h") {
        streams.out(USAGE);
        return 0;
    }
    let arguments = match parse(words) {
        Ok(arguments) => arguments,
        Err(faults) => {
            let faults: String = faults
                .iter()
                .map(|fault| format!("hobnail measure: {fault}\n"))
                .collect();
            streams.err(&format!("{faults}\n{USAGE}"));
            return 2;
        }
    };
    let Some(bytes) = streams.read(&arguments.plan) else {
        return 2;
    };
    match measure(&bytes, &arguments) {
        Ok((answer, faults)) => {
            let place = name_of(&arguments.plan);
            streams.err(
                &faults
                    .iter()
                    .map(|fault| format!("{place}: {fault}\n"))
                    .collect::<String>(),
            );
            streams.out(&answer);
            u8::from(!faults.is_empty())
        }
        Err(refusal) => {
            streams.err(&format!("{}: {refusal}\n", name_of(&arguments.plan)));
            2
        }
    }
}

/// The answer, and what is to be fixed.
fn measure(bytes: &[u8], arguments: &Arguments) -> Result<(String, Vec<String>), String> {
    let in_words = |refusal: MeasureRefusal| refusal.to_string();
    let measuring = Measuring::open(bytes, arguments.alternative.as_deref()).map_err(in_words)?;
    let faults = measuring.faults().to_vec();
    let answer = match &arguments.basis {
        Some(figure) => {
            let basis = measuring.basis(figure).map_err(in_words)?;
            if arguments.json {
                serde_json::to_string_pretty(&basis).map_err(|fault| fault.to_string())? + "\n"
            } else {
                basis.to_string()
            }
        }
        None if arguments.json => measuring.report().to_json().map_err(|fault| fault.to_string())?,
        None => measuring.report().to_words(),
    };
    Ok((answer, faults))
}

/// Understands the words after the command, or says everything that is wrong with them.
fn parse(words: &[String]) -> Result<Arguments, Vec<String>> {
    let mut faults = Vec::new();
    let mut paths: Vec<String> = Vec::new();
    let mut arguments = Arguments::default();
    let mut rest = words.iter();
    while let Some(word) = rest.next() {
        match word.as_str() {
            "--json" => arguments.json = true,
            "--alternative" | "--basis" => match rest.next() {
                Some(value) if word == "--basis" => arguments.basis = Some(value.clone()),
                Some(value) => arguments.alternative = Some(value.clone()),
                None => faults.push(format!("{word} needs a value")),
            },
            option if option.starts_with('-') && option != "-" => {
                faults.push(format!("no option {}", option.escape_debug()));
            }
            _ => paths.push(word.clone()),
        }
    }
    match paths.as_slice() {
        [plan] => arguments.plan.clone_from(plan),
        [] => faults.push("which plan? name one file, or - for standard input".to_owned()),
        more => faults.push(format!("one plan at a time, not {}: {}", more.len(), more.join(", "))),
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
            plan: "plan.geojson".to_owned(),
            alternative: Some("Repair".to_owned()),
            basis: Some("homes.count".to_owned()),
            json: true,
        };
        assert_eq!(
            parse(&words("--json plan.geojson --basis homes.count --alternative Repair")),
            Ok(expected)
        );
    }

    #[test]
    fn every_fault_is_told() {
        let faults = parse(&words("a b --loud --basis")).unwrap_err();
        assert_eq!(
            faults,
            [
                "no option --loud",
                "--basis needs a value",
                "one plan at a time, not 2: a, b"
            ]
        );
    }
}
