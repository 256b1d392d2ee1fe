//! `hobnail measure`: every figure of a plan, or the first-level figures of a folder of plans.

use hobnail_core::order::OrderedSet;

use hobnail_core::plan::PhaseId;
use hobnail_core::plan::land::OwnerGroup;
use hobnail_core::plan::scope::{Scope, Standing};
use hobnail_core::report::measure_report::{MeasureRefusal, Measuring};
use hobnail_core::say;

use crate::class_table;
use crate::streams::{Streams, name_of, usage};

/// Arguments as understood.
#[derive(Debug, Default, PartialEq)]
struct Arguments {
    plan: String,
    alternative: Option<String>,
    scope: Scope,
    basis: Option<String>,
    json: bool,
}

/// Runs the command; the answer is the exit code.
pub fn run(words: &[String], streams: &mut Streams) -> u8 {
    if words.iter().any(|word| word == "--help" || word == "-h") {
        streams.out(&usage(say!("command-line-usage-measure")));
        return 0;
    }
    if words.iter().any(|word| word == "--table") {
        return class_table::run(words, streams);
    }
    let arguments = match parse(words) {
        Ok(arguments) => arguments,
        Err(faults) => return streams.refuse("measure", &faults, say!("command-line-usage-measure")),
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
    let mut measuring = Measuring::open(bytes, arguments.alternative.as_deref()).map_err(in_words)?;
    measuring.look_at(arguments.scope.clone()).map_err(in_words)?;
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
            "--today" => arguments.scope.standing = Standing::Today,
            "--phases" | "--without" => match rest.next() {
                Some(list) if word == "--phases" => match phases(list) {
                    Ok(phases) => arguments.scope.phases = Some(phases),
                    Err(fault) => faults.push(format!("{word}: {fault}")),
                },
                Some(list) => match owners(list) {
                    Ok(owners) => arguments.scope.left_out_owners = owners,
                    Err(fault) => faults.push(format!("{word}: {fault}")),
                },
                None => faults.push(say!("command-line-needs-value", option = word)),
            },
            "--alternative" | "--basis" => match rest.next() {
                Some(value) if word == "--basis" => arguments.basis = Some(value.clone()),
                Some(value) => arguments.alternative = Some(value.clone()),
                None => faults.push(say!("command-line-needs-value", option = word)),
            },
            option if option.starts_with('-') && option != "-" => {
                faults.push(say!(
                    "command-line-no-option",
                    option = option.escape_debug().to_string()
                ));
            }
            _ => paths.push(word.clone()),
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
    if arguments.scope.standing == Standing::Today && arguments.scope.phases.is_some() {
        faults.push(say!("command-line-today-phases").to_owned());
    }
    if faults.is_empty() { Ok(arguments) } else { Err(faults) }
}

/// Numbers of phases set apart by commas.
fn phases(list: &str) -> Result<OrderedSet<PhaseId>, String> {
    let read = |word: &str| {
        let number = word.trim().parse().map(PhaseId);
        number.map_err(|_| say!("command-line-not-a-phase", word = word.escape_debug().to_string()))
    };
    list.split(',').map(read).collect()
}

/// Groups of owners set apart by commas.
fn owners(list: &str) -> Result<OrderedSet<OwnerGroup>, String> {
    let read = |word: &str| {
        let group = OwnerGroup::ALL.into_iter().find(|group| group.word() == word.trim());
        group.ok_or_else(|| {
            let words = OwnerGroup::ALL.map(OwnerGroup::word).join(", ");
            say!(
                "command-line-no-owners",
                word = word.escape_debug().to_string(),
                words = words
            )
        })
    };
    list.split(',').map(read).collect()
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
            scope: Scope {
                phases: Some([PhaseId(0), PhaseId(2)].into()),
                left_out_owners: [OwnerGroup::Unwilling].into(),
                standing: Standing::Proposed,
            },
            basis: Some("homes.count".to_owned()),
            json: true,
        };
        let given = "--json --without unwilling plan.geojson --phases 2,0 --basis homes.count --alternative Repair";
        assert_eq!(parse(&words(given)), Ok(expected));
    }

    #[test]
    fn every_fault_is_told() {
        let faults = parse(&words(
            "a b --loud --today --phases 1,x --phases 1 --without me --basis",
        ))
        .unwrap_err();
        assert_eq!(
            faults,
            [
                "no option --loud",
                "--phases: x is not the number of a phase",
                "--without: me is no group of owners; there are: public, willing, unknown, unwilling",
                "--basis needs a value",
                "one plan at a time, not 2: a, b",
                "--today goes without --phases: nothing proposed stands today",
            ]
        );
    }
}
