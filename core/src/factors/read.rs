//! Reading factor tables. Every fault is returned, with its table and row.

use crate::order::OrderedMap;
use std::fmt;
use std::sync::Arc;

use serde::Deserialize;

use super::Factors;
use crate::figures::leaf::{Factor, Given, How, Source, Spread, SpreadKind};
use crate::figures::unit::read_unit;
use crate::messages;
use crate::say;

/// A fault in a factor table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FactorFault {
    /// The table's name.
    pub table: String,
    /// The row's id, when the table could be read that far.
    pub row: Option<String>,
    /// What is wrong.
    pub problem: String,
}

impl fmt::Display for FactorFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.row {
            Some(row) => out.write_str(&say!(
                "factors-fault-in-row",
                table = self.table,
                factor = row,
                fault = self.problem
            )),
            None => write!(out, "{}: {}", self.table, self.problem),
        }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableFile {
    #[serde(default)]
    factor: Vec<FactorRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FactorRow {
    id: String,
    /// Empty in the shipped tables, as the note is: both are said by messages.
    #[serde(default)]
    title: String,
    unit: String,
    low: f64,
    typical: f64,
    high: f64,
    kind: KindName,
    group: Option<String>,
    #[serde(default)]
    aliases: Vec<String>,
    #[serde(default)]
    note: String,
    #[serde(default)]
    source: Vec<SourceRow>,
}

#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum KindName {
    Positive,
    Share,
    Bounds,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SourceRow {
    gives: Vec<GivenName>,
    how: HowName,
    title: Option<String>,
    edition: Option<String>,
    year: Option<u16>,
    table: Option<String>,
    via: Option<String>,
}

#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum GivenName {
    Low,
    Typical,
    High,
}

#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum HowName {
    Read,
    FromMemory,
    CommonPractice,
}

/// Reads one factor table: its factors and their earlier ids.
///
/// # Errors
/// Text that is not TOML or has unknown or missing fields; otherwise every fault of every row.
pub fn read_table(name: &str, text: &str) -> Result<Factors, Vec<FactorFault>> {
    read_toml_tables(&[(name, text)])
}

pub(super) fn read_toml_tables(tables: &[(&str, &str)]) -> Result<Factors, Vec<FactorFault>> {
    read_tables(tables, |text| {
        toml::from_str(text).map_err(|fault| fault.to_string().trim_end().to_owned())
    })
}

pub(super) fn read_json_tables(tables: &[(&str, &str)]) -> Result<Factors, Vec<FactorFault>> {
    read_tables(tables, |text| {
        let mut file: TableFile = serde_json::from_slice(text.as_bytes()).map_err(|fault| fault.to_string())?;
        for row in &mut file.factor {
            let id = super::message_of(&row.id);
            // A factor without a title is told as a fault.
            row.title = messages::find(&id).unwrap_or_default();
            row.note = messages::find(&(id + "-note")).unwrap_or_default();
        }
        Ok(file)
    })
}

fn read_tables(
    tables: &[(&str, &str)],
    parse: impl Fn(&str) -> Result<TableFile, String>,
) -> Result<Factors, Vec<FactorFault>> {
    let mut factors = Factors::default();
    let mut faults = Vec::new();
    for (name, text) in tables {
        let mut fault = |row: Option<&str>, problem: String| {
            faults.push(FactorFault {
                table: (*name).to_owned(),
                row: row.map(str::to_owned),
                problem,
            });
        };
        let file = match parse(text) {
            Ok(file) => file,
            Err(problem) => {
                fault(None, problem);
                continue;
            }
        };
        for row in file.factor {
            let id = row.id.clone();
            for alias in &row.aliases {
                if factors.aliases.insert(alias.clone(), id.clone()).is_some() {
                    fault(Some(&id), say!("factors-alias-twice", alias = alias));
                }
            }
            let (factor, problems) = factor_of(row);
            for problem in problems {
                fault(Some(&id), problem);
            }
            if let Some(factor) = factor
                && factors.rows.insert(id.clone(), Arc::new(factor)).is_some()
            {
                fault(Some(&id), say!("factors-id-twice").to_owned());
            }
        }
    }
    for (alias, id) in &factors.aliases {
        if factors.rows.contains_key(alias) {
            faults.push(FactorFault {
                table: say!("factors-all-tables").to_owned(),
                row: Some(id.clone()),
                problem: say!("factors-alias-is-id", alias = alias),
            });
        }
    }
    if faults.is_empty() { Ok(factors) } else { Err(faults) }
}

fn factor_of(row: FactorRow) -> (Option<Factor>, Vec<String>) {
    let mut problems = Vec::new();
    if row.title.trim().is_empty() {
        problems.push(say!("factors-no-title").to_owned());
    }
    let unit = read_unit(&row.unit);
    if unit.is_none() {
        problems.push(say!("factors-unknown-unit", unit = row.unit));
    }
    problems.extend(source_problems(&row.source));
    let Some((dimension, scale)) = unit else {
        return (None, problems);
    };
    let spread = Spread {
        low: row.low * scale,
        typical: row.typical * scale,
        high: row.high * scale,
        kind: match row.kind {
            KindName::Positive => SpreadKind::Positive,
            KindName::Share => SpreadKind::Share,
            KindName::Bounds => SpreadKind::Bounds,
        },
    };
    problems.extend(spread.faults());
    let factor = Factor {
        id: row.id,
        title: row.title,
        dimension,
        unit: row.unit,
        scale,
        spread,
        group: row.group,
        sources: row.source.into_iter().map(source_of).collect(),
        note: row.note,
        shipped: None,
    };
    (Some(factor), problems)
}

/// Each of low, typical and high needs exactly one source, and a source must say what it is.
fn source_problems(sources: &[SourceRow]) -> Vec<String> {
    let mut problems = Vec::new();
    let mut count: OrderedMap<Given, usize> = OrderedMap::new();
    for source in sources {
        for given in &source.gives {
            *count.entry(given_of(given)).or_default() += 1;
        }
        let titled = source.title.as_ref().is_some_and(|title| !title.trim().is_empty());
        match source.how {
            HowName::CommonPractice if titled => {
                problems.push(say!("factors-practice-with-title").to_owned());
            }
            HowName::Read | HowName::FromMemory if !titled => {
                problems.push(say!("factors-source-no-title").to_owned());
            }
            _ => {}
        }
        if source.year.is_some_and(|year| !(1500..=2200).contains(&year)) {
            problems.push(say!("factors-source-year").to_owned());
        }
    }
    for given in [Given::Low, Given::Typical, Given::High] {
        match count.get(&given).copied().unwrap_or(0) {
            1 => {}
            0 => problems.push(say!("factors-no-source", value = given.word())),
            _ => problems.push(say!("factors-two-sources", value = given.word())),
        }
    }
    problems
}

fn given_of(name: &GivenName) -> Given {
    match name {
        GivenName::Low => Given::Low,
        GivenName::Typical => Given::Typical,
        GivenName::High => Given::High,
    }
}

fn source_of(row: SourceRow) -> Source {
    Source {
        gives: row.gives.iter().map(given_of).collect(),
        how: match row.how {
            HowName::Read => How::Read,
            HowName::FromMemory => How::FromMemory,
            HowName::CommonPractice => How::CommonPractice,
        },
        title: row.title.unwrap_or_default(),
        edition: row.edition,
        year: row.year,
        table: row.table,
        via: row.via,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check_faults(text: &str, expected: &[&str]) {
        let faults = read_table("test.toml", text).expect_err("the table has faults");
        let found: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(found.len(), expected.len(), "{found:#?}");
        for (found, expected) in found.iter().zip(expected) {
            assert!(found.contains(expected), "{found} does not say `{expected}`");
        }
    }

    const SOUND: &str = r#"
        [[factor]]
        id = "a.b"
        title = "something"
        unit = "ft2/job"
        low = 200
        typical = 250
        high = 300
        kind = "positive"
        aliases = ["a.old"]
        [[factor.source]]
        gives = ["low", "typical", "high"]
        how = "read"
        title = "A Handbook"
        year = 1999
    "#;

    #[test]
    fn a_sound_row_is_read_in_coherent_units() {
        let factors = read_table("test.toml", SOUND).unwrap();
        let factor = factors.get("a.old").unwrap();
        assert_eq!(factor.id, "a.b");
        assert!((factor.spread.typical - 23.225_76).abs() < 1e-9);
        assert_eq!(factors.current_id("a.old"), "a.b");
    }

    #[test]
    fn every_fault_of_a_table_is_returned() {
        let text = SOUND
            .replace("ft2/job", "furlong")
            .replace("\"something\"", "\" \"")
            .replace("[\"low\", \"typical\", \"high\"]", "[\"low\", \"low\"]");
        check_faults(
            &text,
            &[
                "no title",
                "`furlong`",
                "more than one source gives `low`",
                "`typical`",
                "`high`",
            ],
        );
        check_faults(
            &format!("{SOUND}{SOUND}"),
            &["the alias `a.old` stands twice", "the id stands twice"],
        );
        check_faults(&SOUND.replace("low = 200", "low = 260"), &["must not fall"]);
        check_faults(&SOUND.replace("low = 200", "low = nan"), &["finite"]);
        check_faults(&SOUND.replace("\"positive\"", "\"share\""), &["below 1"]);
        check_faults(&SOUND.replace("a.old", "a.b"), &["is the id of a factor"]);
        check_faults(&SOUND.replace("1999", "99"), &["year"]);
        check_faults(&SOUND.replace("\"read\"", "\"common_practice\""), &["has no title"]);
        check_faults(&SOUND.replace("title = \"A Handbook\"", ""), &["needs a title"]);
        check_faults(&SOUND.replace("kind =", "kinds ="), &["unknown field"]);
        check_faults("[[factor", &["test.toml"]);
    }
}
