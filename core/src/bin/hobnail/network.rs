//! `hobnail network`: measure a bare street network.

use hobnail_core::report::network_report::{Coordinates, InputFile, NetworkRequest, Note, Refusal, network_report};
use hobnail_core::say;

use crate::streams::{Streams, name_of, usage};

/// Arguments as understood.
#[derive(Debug, PartialEq)]
struct Arguments {
    streets: String,
    points: Option<String>,
    meters: bool,
    about: Option<[f64; 2]>,
    tolerance_m: f64,
    within_m: Vec<f64>,
    json: bool,
}

/// Runs the command; the answer is the exit code.
pub fn run(words: &[String], streams: &mut Streams) -> u8 {
    if words.iter().any(|word| word == "--help" || word == "-h") {
        streams.out(&usage(say!("command-line-usage-network")));
        return 0;
    }
    let arguments = match parse(words) {
        Ok(arguments) => arguments,
        Err(faults) => return streams.refuse("network", &faults, say!("command-line-usage-network")),
    };
    let streets = streams.read(&arguments.streets);
    let points = arguments.points.as_ref().map(|path| streams.read(path));
    let (Some(streets), None | Some(Some(_))) = (&streets, &points) else {
        return 2;
    };
    let request = NetworkRequest {
        streets,
        points: points.as_ref().and_then(Option::as_deref),
        coordinates: if arguments.meters {
            Coordinates::Meters
        } else {
            Coordinates::Degrees { about: arguments.about }
        },
        tolerance_m: arguments.tolerance_m,
        within_m: &arguments.within_m,
    };
    let path_of = |file: InputFile| match file {
        InputFile::Streets => name_of(&arguments.streets),
        InputFile::Points => arguments.points.as_deref().map_or("", name_of),
    };
    let told = |notes: &[Note]| -> String {
        notes
            .iter()
            .map(|note| format!("{}: {}\n", path_of(note.file), note.text))
            .collect()
    };
    match network_report(&request) {
        Ok(report) => {
            streams.err(&told(&report.notes));
            streams.out(&if arguments.json {
                report.to_json()
            } else {
                report.to_words()
            });
            u8::from(!report.notes.is_empty())
        }
        Err(refusal) => {
            let (file, notes) = match &refusal {
                Refusal::Unreadable { file, .. } => (Some(*file), String::new()),
                Refusal::NoStreets { notes } => (Some(InputFile::Streets), told(notes)),
                Refusal::Network { .. } => (Some(InputFile::Streets), String::new()),
                Refusal::Center { .. } | Refusal::Tolerance { .. } | Refusal::Within { .. } => (None, String::new()),
            };
            let place = file.map_or("hobnail network", path_of);
            streams.err(&format!("{notes}{place}: {refusal}\n"));
            2
        }
    }
}

/// Understands the words after the command, or says everything that is wrong with them.
fn parse(words: &[String]) -> Result<Arguments, Vec<String>> {
    let mut faults = Vec::new();
    let mut paths = Vec::new();
    let mut arguments = Arguments {
        streets: String::new(),
        points: None,
        meters: false,
        about: None,
        tolerance_m: 0.0,
        within_m: vec![200.0, 400.0, 800.0],
        json: false,
    };
    let mut rest = words.iter();
    while let Some(word) = rest.next() {
        let mut value = || {
            let value = rest.next();
            if value.is_none() {
                faults.push(say!("command-line-needs-value", option = word));
            }
            value
        };
        let result = match word.as_str() {
            "--meters" => {
                arguments.meters = true;
                Ok(())
            }
            "--json" => {
                arguments.json = true;
                Ok(())
            }
            "--points" => {
                arguments.points = value().cloned();
                Ok(())
            }
            "--tolerance" => value().map_or(Ok(()), |text| {
                numbers(text, 1..=1).map(|list| arguments.tolerance_m = list[0])
            }),
            "--within" => value().map_or(Ok(()), |text| {
                numbers(text, 1..=100).map(|list| arguments.within_m = list)
            }),
            "--about" => value().map_or(Ok(()), |text| {
                numbers(text, 2..=2).map(|list| arguments.about = Some([list[0], list[1]]))
            }),
            flag if flag.starts_with("--") => {
                faults.push(say!("command-line-no-option", option = flag.escape_debug().to_string()));
                Ok(())
            }
            path => {
                paths.push(path.to_owned());
                Ok(())
            }
        };
        if let Err(fault) = result {
            faults.push(format!("{word}: {fault}"));
        }
    }
    match paths.as_slice() {
        [] => faults.push(say!("command-line-no-streets").to_owned()),
        [streets] => arguments.streets.clone_from(streets),
        [_, others @ ..] => faults.push(say!("command-line-one-file", names = others.join(" "))),
    }
    if arguments.streets == "-" && arguments.points.as_deref() == Some("-") {
        faults.push(say!("command-line-one-input").to_owned());
    }
    if arguments.meters && arguments.about.is_some() {
        faults.push(say!("command-line-about-meters").to_owned());
    }
    if faults.is_empty() { Ok(arguments) } else { Err(faults) }
}

/// Numbers set apart by commas.
fn numbers(text: &str, count: std::ops::RangeInclusive<usize>) -> Result<Vec<f64>, String> {
    let list: Result<Vec<f64>, _> = text.split(',').map(|part| part.trim().parse::<f64>()).collect();
    match list {
        Ok(list) if count.contains(&list.len()) => Ok(list),
        Ok(list) => Err(say!(
            "command-line-number-count",
            count = list.len(),
            wanted = count.end()
        )),
        Err(_) => Err(say!("command-line-not-numbers", word = text.escape_debug().to_string())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parsed(text: &str) -> Result<Arguments, Vec<String>> {
        let words: Vec<String> = text.split_whitespace().map(str::to_owned).collect();
        parse(&words)
    }

    #[test]
    fn every_option_is_understood_in_any_order() {
        let arguments =
            parsed("--json --within 100,250.5 s.geojson --points p.geojson --tolerance 0.5 --about 24.9,60.2")
                .expect("good arguments");
        assert_eq!(
            arguments,
            Arguments {
                streets: "s.geojson".to_owned(),
                points: Some("p.geojson".to_owned()),
                meters: false,
                about: Some([24.9, 60.2]),
                tolerance_m: 0.5,
                within_m: vec![100.0, 250.5],
                json: true,
            }
        );
        assert!(parsed("- --meters").expect("good arguments").meters);
    }

    #[test]
    fn every_fault_of_the_arguments_is_told() {
        let faults =
            parsed("a b --within 1,x --tolerance 1,2 --fast --meters --about 1,2 --points").expect_err("faulty");
        let expected = [
            "--within: 1,x is not a number or numbers set apart by commas",
            "--tolerance: 2 numbers instead of 1",
            "no option --fast",
            "--points needs a value",
            "one file of streets, not also b",
            "--about goes with degrees, not with --meters",
        ];
        assert_eq!(faults, expected);
        assert_eq!(parsed("").expect_err("no file"), ["no file of streets"]);
        assert_eq!(
            parsed("- --points -").expect_err("one input twice"),
            ["streets and points can not both come from standard input"]
        );
    }
}
