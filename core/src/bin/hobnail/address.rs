//! `hobnail export`: a plan as an address. `hobnail open`: the plan of an address.

use hobnail_core::exchange::{address, plan_file};
use hobnail_core::say;

use crate::streams::{Streams, name_of, usage};

/// Makes the address of a plan file, behind `base` where one is given; the answer is the exit code.
pub fn export(plan: &str, base: Option<&str>, streams: &mut Streams) -> u8 {
    let Some(bytes) = streams.read(plan) else {
        return 2;
    };
    let place = name_of(plan);
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
    let base = base.map_or_else(String::new, |base| [base, "#", address::NAME].concat());
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
        Err(faults) => return streams.refuse("open", &faults, say!("command-line-usage-open")),
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
    fn an_address_is_understood() {
        assert_eq!(parse_open(&words("1abc")), Ok("1abc".to_owned()));
    }

    #[test]
    fn every_fault_is_told() {
        assert_eq!(
            parse_open(&words("--loud a b")),
            Err(vec![
                "no option --loud".to_owned(),
                "one address at a time, not 2".to_owned()
            ])
        );
    }
}
