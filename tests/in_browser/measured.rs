//! The sample sketches and what each of their alternatives measured when a person last looked.
//!
//! `HOBNAIL_UPDATE=1 cargo test -p hobnail_in_browser --lib` writes the files anew; a person reads the difference.

use hobnail_core::report::measure_report::Measuring;

/// One alternative of a sample sketch.
pub struct Measured {
    /// The sample's file in `sample-sketches/`.
    pub file: &'static str,
    /// What stands in it.
    pub plan: &'static [u8],
    /// The alternative's name.
    pub alternative: &'static str,
    /// The file in `tests/fixtures/measured/`.
    pub written_down_in: &'static str,
    /// What stands in that: the bytes of the report.
    pub report: &'static str,
}

macro_rules! measured {
    ($sample:literal, $alternative:literal, $report:literal) => {
        Measured {
            file: $sample,
            plan: include_bytes!(concat!("../../sample-sketches/", $sample)),
            alternative: $alternative,
            written_down_in: $report,
            report: include_str!(concat!("../fixtures/measured/", $report)),
        }
    };
}

/// Every alternative of every sample sketch.
pub const MEASURED: &[Measured] = &[
    measured!("blank-site.geojson", "Alternative 1", "blank-site.json"),
    measured!("compact-village.geojson", "Compact village", "compact-village.json"),
    measured!(
        "conventional-subdivision.geojson",
        "Conventional subdivision",
        "conventional-subdivision.json"
    ),
    measured!(
        "repaired-strip.geojson",
        "As it stands",
        "repaired-strip-as-it-stands.json"
    ),
    measured!("repaired-strip.geojson", "Repaired", "repaired-strip-repaired.json"),
];

/// The report of an alternative, as `hobnail measure FILE --json --alternative NAME` prints it.
///
/// # Errors
/// A sentence when the plan could not be measured.
pub fn report(plan: &[u8], alternative: &str) -> Result<String, String> {
    let measuring = Measuring::open(plan, Some(alternative)).map_err(|refusal| refusal.to_string())?;
    measuring.report().to_json().map_err(|fault| fault.to_string())
}

#[cfg(test)]
mod tests {
    use hobnail_core::order::OrderedSet;
    use std::path::Path;

    use hobnail_core::exchange::plan_file;

    use super::*;

    fn tests_folder() -> &'static Path {
        Path::new(env!("CARGO_MANIFEST_DIR"))
            .parent()
            .expect("this package is in the folder of tests")
    }

    #[test]
    fn every_sample_measures_as_written_down() {
        let update = std::env::var_os("HOBNAIL_UPDATE").is_some();
        let mut differing = Vec::new();
        for sample in MEASURED {
            let report = report(sample.plan, sample.alternative).expect("a sample can be measured");
            if update {
                let file = tests_folder().join("fixtures/measured").join(sample.written_down_in);
                std::fs::write(file, report).expect("the fixtures can be written");
            } else if report != sample.report {
                differing.push(first_difference(sample, &report));
            }
        }
        assert!(
            differing.is_empty(),
            "{}\nif these are right: HOBNAIL_UPDATE=1 cargo test -p hobnail_in_browser --lib",
            differing.join("\n")
        );
    }

    fn first_difference(sample: &Measured, report: &str) -> String {
        let pairs = sample.report.lines().zip(report.lines()).zip(1..);
        let found = pairs.into_iter().find(|((then, now), _)| then != now);
        let place = match found {
            Some(((then, now), line)) => format!("line {line} was `{}`, is `{}`", then.trim(), now.trim()),
            None => format!(
                "{} lines were, {} are",
                sample.report.lines().count(),
                report.lines().count()
            ),
        };
        format!("{}: {place}", sample.written_down_in)
    }

    #[test]
    fn every_alternative_of_every_sample_is_listed() {
        let mut there = OrderedSet::new();
        let folder = tests_folder().with_file_name("sample-sketches");
        for entry in std::fs::read_dir(folder).expect("the samples can be listed") {
            let file = entry.expect("the samples can be listed").path();
            if file.extension().is_some_and(|extension| extension == "geojson") {
                let name = file
                    .file_name()
                    .expect("a file has a name")
                    .to_string_lossy()
                    .into_owned();
                let opened = plan_file::read(&std::fs::read(&file).expect("a sample can be read")).expect("it opens");
                there.extend(
                    opened
                        .document
                        .alternatives
                        .values()
                        .map(|held| (name.clone(), held.name.clone())),
                );
            }
        }
        let listed: OrderedSet<(String, String)> = MEASURED
            .iter()
            .map(|sample| (sample.file.to_string(), sample.alternative.to_string()))
            .collect();
        assert_eq!(listed, there);
    }
}
