//! Reading factor tables. Every fault is returned, with its table and row.

use crate::order::OrderedMap;
use std::fmt;
use std::sync::Arc;

use serde::Deserialize;

use super::{Factors, ShippedFactor, ShippedSource};
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
    kind: SpreadKind,
    group: Option<String>,
    #[serde(default)]
    aliases: Vec<String>,
    #[serde(default)]
    note: String,
    #[serde(default)]
    source: Vec<Source>,
}

/// Reads one factor table: its factors and their earlier ids.
///
/// # Errors
/// Text that is not TOML or has unknown or missing fields; otherwise every fault of every row.
pub fn read_table(name: &str, text: &str) -> Result<Factors, Vec<FactorFault>> {
    read_toml_tables(&[(name, text)])
}

pub(super) fn read_toml_tables(tables: &[(&str, &str)]) -> Result<Factors, Vec<FactorFault>> {
    take_tables(tables.iter().map(|(name, text)| {
        let read = toml::from_str::<TableFile>(text).map_err(|fault| fault.to_string().trim_end().to_owned());
        (*name, read.map(|file| file.factor))
    }))
}

pub(super) fn take_shipped_tables(tables: &[(&str, &[ShippedFactor])]) -> Result<Factors, Vec<FactorFault>> {
    take_tables(
        tables
            .iter()
            .map(|(name, rows)| (*name, Ok(rows.iter().map(row_of).collect()))),
    )
}

fn row_of(shipped: &ShippedFactor) -> FactorRow {
    let id = super::message_of(shipped.id);
    FactorRow {
        id: shipped.id.to_owned(),
        // A factor without a title is told as a fault.
        title: messages::find(&id).unwrap_or_default(),
        unit: shipped.unit.to_owned(),
        low: shipped.low,
        typical: shipped.typical,
        high: shipped.high,
        kind: shipped.kind,
        group: shipped.group.map(str::to_owned),
        aliases: shipped.aliases.iter().copied().map(str::to_owned).collect(),
        note: messages::find(&(id + "-note")).unwrap_or_default(),
        source: shipped.sources.iter().map(source_of).collect(),
    }
}

fn source_of(shipped: &ShippedSource) -> Source {
    Source {
        gives: shipped.gives.to_vec(),
        how: shipped.how,
        title: shipped.title.to_owned(),
        edition: shipped.edition.map(str::to_owned),
        year: shipped.year,
        table: shipped.table.map(str::to_owned),
        via: shipped.via.map(str::to_owned),
    }
}

fn take_tables<'a>(
    tables: impl Iterator<Item = (&'a str, Result<Vec<FactorRow>, String>)>,
) -> Result<Factors, Vec<FactorFault>> {
    let mut factors = Factors::default();
    let mut faults = Vec::new();
    for (name, rows) in tables {
        let mut fault = |row: Option<&str>, problem: String| {
            faults.push(FactorFault {
                table: name.to_owned(),
                row: row.map(str::to_owned),
                problem,
            });
        };
        let rows = match rows {
            Ok(rows) => rows,
            Err(problem) => {
                fault(None, problem);
                continue;
            }
        };
        for row in rows {
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
        kind: row.kind,
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
        sources: row.source,
        note: row.note,
        shipped: None,
    };
    (Some(factor), problems)
}

/// Each of low, typical and high needs exactly one source, and a source must say what it is.
fn source_problems(sources: &[Source]) -> Vec<String> {
    let mut problems = Vec::new();
    let mut count: OrderedMap<Given, usize> = OrderedMap::new();
    for source in sources {
        for given in &source.gives {
            *count.entry(*given).or_default() += 1;
        }
        let titled = !source.title.trim().is_empty();
        match source.how {
            How::CommonPractice if titled => {
                problems.push(say!("factors-practice-with-title").to_owned());
            }
            How::Read | How::FromMemory if !titled => {
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
