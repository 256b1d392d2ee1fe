//! `hobnail export`: a plan as an address. `hobnail open`: the plan of an address.

use hobnail_core::exchange::{address, plan_file};
use hobnail_core::say;

use crate::streams::{Streams, name_of, usage};

/// What a plan is exported to.
const ADDRESS: &str = "address";

/// Arguments of `export` as understood.
#[derive(Debug, Default, PartialEq)]
struct Export {
    plan: String,
    base: Option<String>,
}

/// Runs `export`; the answer is the exit code.
pub fn export(words: &[String], streams: &mut Streams) -> u8 {
    if asks_for_help(words) {
        streams.out(&usage(say!("command-line-usage-export")));
        return 0;
    }
    let arguments = match parse_export(words) {
        Ok(arguments) => arguments,
        Err(faults) => return refuse("export", &faults, say!("command-line-usage-export"), streams),
    };
    let Some(bytes) = streams.read(&arguments.plan) else {
        return 2;
    };
    let place = name_of(&arguments.plan);
    let opened = match plan_file::read(&bytes) {
        Ok(opened) => opened,
        Err(refusal) => {
            streams.err(&format!("{place}: {refusal}\n"));
            return 2;
        }
    };
    for fault in &opened.faults {
        streams.err(&format!("{place}: {fault}\n"));
    }
    let told = match address::encode(&opened.document) {
        Ok(told) => told,
        Err(too_large) => {
            streams.err(&format!("{place}: {too_large}\n"));
            return 2;
        }
    };
    for part in &told.left_out {
        streams.err(&format!("{place}: {}\n", part.before_copying()));
    }
    let base = arguments.base.map_or_else(String::new, |base| base + "#");
    streams.out(&format!("{base}{}\n", told.text));
    u8::from(!opened.faults.is_empty())
}

/// Runs `open`; the answer is the exit code.
pub fn open(words: &[String], streams: &mut Streams) -> u8 {
    if asks_for_help(words) {
        streams.out(&usage(say!("command-line-usage-open")));
        return 0;
    }
    let given = match parse_open(words) {
        Ok(given) => given,
        Err(faults) => return refuse("open", &faults, say!("command-line-usage-open"), streams),
    };
    let text = if given == "-" {
        match streams.read(&given) {
            Some(bytes) => String::from_utf8_lossy(&bytes).into_owned(),
            None => return 2,
        }
    } else {
        given
    };
    let opened = match address::decode(&text) {
        Ok(opened) => opened,
        Err(fault) => {
            streams.err(&format!("hobnail open: {fault}\n"));
            return 2;
        }
    };
    for part in &opened.left_out {
        streams.err(&format!("hobnail open: {}\n", part.after_opening()));
    }
    match plan_file::write(&opened.document) {
        Ok(file) => {
            streams.out(&file);
            0
        }
        Err(fault) => {
            streams.err(&format!("hobnail open: {fault}\n"));
            2
        }
    }
}

fn asks_for_help(words: &[String]) -> bool {
    words.iter().any(|word| word == "--help" || word == "-h")
}

fn refuse(command: &str, faults: &[String], words: &str, streams: &mut Streams) -> u8 {
    let faults: String = faults
        .iter()
        .map(|fault| format!("hobnail {command}: {fault}\n"))
        .collect();
    streams.err(&format!("{faults}\n{}", usage(words)));
    2
}

/// Understands the words after `export`, or says everything that is wrong with them.
fn parse_export(words: &[String]) -> Result<Export, Vec<String>> {
    let mut faults = Vec::new();
    let mut paths: Vec<String> = Vec::new();
    let mut export = Export::default();
    let mut to = None;
    let mut rest = words.iter();
    while let Some(word) = rest.next() {
        match word.as_str() {
            "--to" | "--base" => match rest.next() {
                Some(value) if word == "--to" => to = Some(value.clone()),
                Some(value) => export.base = Some(value.clone()),
                None => faults.push(say!("command-line-needs-value", option = word)),
            },
            option if option.starts_with('-') && option != "-" => faults.push(no_option(option)),
            _ => paths.push(word.clone()),
        }
    }
    match paths.as_slice() {
        [plan] => export.plan.clone_from(plan),
        [] => faults.push(say!("command-line-no-plan").to_owned()),
        more => faults.push(say!(
            "command-line-one-plan",
            count = more.len(),
            names = more.join(", ")
        )),
    }
    match to.as_deref() {
        Some(ADDRESS) => {}
        Some(other) => faults.push(say!(
            "command-line-no-target",
            name = other.escape_debug().to_string(),
            names = ADDRESS
        )),
        None => faults.push(say!("command-line-to-what", names = ADDRESS)),
    }
    if faults.is_empty() { Ok(export) } else { Err(faults) }
}

/// Understands the words after `open`.
fn parse_open(words: &[String]) -> Result<String, Vec<String>> {
    let is_option = |word: &&String| word.starts_with('-') && *word != "-";
    let mut faults: Vec<String> = words.iter().filter(is_option).map(|word| no_option(word)).collect();
    let given: Vec<&String> = words.iter().filter(|word| !is_option(word)).collect();
    match given.as_slice() {
        [address] if faults.is_empty() => return Ok((*address).clone()),
        [_] => {}
        [] => faults.push(say!("command-line-no-address").to_owned()),
        more => faults.push(say!("command-line-one-address", count = more.len())),
    }
    Err(faults)
}

fn no_option(option: &str) -> String {
    say!("command-line-no-option", option = option.escape_debug().to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(words: &str) -> Vec<String> {
        words.split_whitespace().map(str::to_owned).collect()
    }

    #[test]
    fn arguments_are_understood_in_any_order() {
        let expected = Export {
            plan: "-".to_owned(),
            base: Some("https://example.org/".to_owned()),
        };
        let given = "--base https://example.org/ - --to address";
        assert_eq!(parse_export(&words(given)), Ok(expected));
        assert_eq!(parse_open(&words("1abc")), Ok("1abc".to_owned()));
    }

    #[test]
    fn every_fault_is_told() {
        let faults = parse_export(&words("a b --loud --to table --base")).unwrap_err();
        assert_eq!(
            faults,
            [
                "no option --loud",
                "--base needs a value",
                "one plan at a time, not 2: a, b",
                "--to: nothing can be made that is called table; there is: address",
            ]
        );
        assert_eq!(
            parse_export(&words("a")),
            Err(vec![
                "--to is missing: what is to be made? there is: address".to_owned()
            ])
        );
        assert_eq!(
            parse_open(&words("--loud a b")),
            Err(vec![
                "no option --loud".to_owned(),
                "one address at a time, not 2".to_owned()
            ])
        );
    }
}
