//! Factor tables: each value with low, typical, high, unit, source, year and how sure.
//!
//! The tables are TOML files beside this one, compiled in as the constants that the build writes of them. A row names
//! where each of its three values comes from: read (and where), from memory, or common practice without a source; none
//! is invented. Ids are stable for ever: draws and the user's own values hang on them, so a renamed row keeps its old
//! ids as `aliases`.
//!
//! Titles and notes of the shipped factors stand in the message files as well, in every language; those of a table that
//! somebody else wrote are shown as they are.

mod overrides;
mod read;

pub use overrides::{Override, OverrideFault};
pub use read::{FactorFault, read_table};

use crate::order::OrderedMap;
use std::sync::Arc;

use crate::figures::leaf::{Factor, Given, How, SpreadKind};

/// A row of a shipped table; its title and note are messages.
struct ShippedFactor {
    id: &'static str,
    unit: &'static str,
    low: f64,
    typical: f64,
    high: f64,
    kind: SpreadKind,
    group: Option<&'static str>,
    aliases: &'static [&'static str],
    sources: &'static [ShippedSource],
}

/// A source of such a row.
struct ShippedSource {
    gives: &'static [Given],
    how: How,
    title: &'static str,
    edition: Option<&'static str>,
    year: Option<u16>,
    table: Option<&'static str>,
    via: Option<&'static str>,
}

// The tables shipped with the program, by file name: `SHIPPED`.
include!(concat!(env!("OUT_DIR"), "/factors.rs"));

/// All factors by id, and the ids they had before.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Factors {
    rows: OrderedMap<String, Arc<Factor>>,
    aliases: OrderedMap<String, String>,
}

impl Factors {
    /// The factors shipped with the program, their titles and notes in the language of the window.
    ///
    /// # Errors
    /// Every fault in the tables; a test holds that there is none.
    pub fn shipped() -> Result<Self, Vec<FactorFault>> {
        read::take_shipped_tables(SHIPPED)
    }

    /// The factor with this id, or that had it before.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&Arc<Factor>> {
        self.rows.get(self.current_id(id))
    }

    /// Every factor, by id.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<Factor>> {
        self.rows.values()
    }

    /// The present id of a factor that may have been renamed.
    #[must_use]
    pub fn current_id<'a>(&'a self, id: &'a str) -> &'a str {
        self.aliases.get(id).map_or(id, String::as_str)
    }
}

/// The message with the title of a shipped factor; the one with its note has `-note` behind.
fn message_of(id: &str) -> String {
    "factor-".to_owned() + &id.replace(['.', '_'], "-")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shipped_tables_have_no_fault() {
        match Factors::shipped() {
            Ok(factors) => assert!(factors.iter().count() > 5),
            Err(faults) => panic!(
                "{}",
                faults.iter().map(|fault| format!("{fault}\n")).collect::<String>()
            ),
        }
    }

    #[test]
    fn what_is_shipped_is_what_the_tables_say() {
        let tables = [
            ("land.toml", include_str!("land.toml")),
            ("people.toml", include_str!("people.toml")),
            ("walking.toml", include_str!("walking.toml")),
        ];
        assert_eq!(Factors::shipped().unwrap(), read::read_toml_tables(&tables).unwrap());
    }

    #[test]
    fn the_messages_of_shipped_factors_say_what_the_tables_say_in_every_language() {
        use crate::messages::{Language, find, use_language};
        let tables = [
            include_str!("land.toml"),
            include_str!("people.toml"),
            include_str!("walking.toml"),
        ];
        let written = read::read_toml_tables(&tables.map(|text| ("", text))).unwrap();
        for factor in written.iter() {
            let id = message_of(&factor.id);
            let note = id.clone() + "-note";
            let noted = (!factor.note.is_empty()).then(|| factor.note.clone());
            assert_eq!(find(&id).as_ref(), Some(&factor.title));
            assert_eq!(find(&note), noted, "{note}");
            use_language(Language::Spanish);
            assert!(find(&id).is_some_and(|title| title != factor.title), "{id}");
            assert_eq!(
                find(&note).is_some_and(|said| said != factor.note),
                noted.is_some(),
                "{note}"
            );
            use_language(Language::English);
        }
    }

    #[test]
    fn every_shipped_value_says_where_it_comes_from() {
        for factor in Factors::shipped().unwrap().iter() {
            for given in [Given::Low, Given::Typical, Given::High] {
                let sources = factor.sources.iter().filter(|source| source.gives.contains(&given));
                assert_eq!(sources.count(), 1, "{} {}", factor.id, given.word());
            }
            for source in &factor.sources {
                assert_eq!(
                    source.how == How::CommonPractice,
                    source.title.is_empty(),
                    "{}",
                    factor.id
                );
            }
        }
    }

    #[track_caller]
    fn check_value(id: &str, expected: f64, tolerance: f64) {
        let typical = Factors::shipped().unwrap().get(id).unwrap().spread.typical;
        assert!((typical - expected).abs() <= tolerance, "{id}: {typical}");
    }

    #[test]
    fn shipped_values_are_the_published_ones() {
        // Five minutes at 3 mph are a quarter mile: Ewing, Pedestrian- and Transit-Friendly Design, abstract page.
        check_value("walking.planning_speed", 0.25 * 1609.344 / 300.0, 1e-12);
        // 3.5 ft/s is 1.07 m/s: MUTCD 2009, section 4E.06.
        check_value("walking.crossing_design_speed", 1.07, 0.005);
        // 4.74 and 4.25 ft/s are 1.44 and 1.30 m/s: HCM 2010, chapter 4.
        check_value("walking.crossing_speed_age_13_to_60", 1.44, 0.005);
        check_value("walking.crossing_speed_over_60", 1.30, 0.005);
    }
}
