//! Units in the language of the window. Codes and the words that units are read by stay English.

use crate::say;
use crate::text::exchanged;

/// A unit as it is read in the language of the window: of `homes/acre` and `ft2/lot` every noun is said, and squares are
/// written as such.
#[must_use]
pub fn in_words(unit: &str) -> String {
    let squares = [("m2", "m²"), ("ft2", "ft²"), ("mi2", "mi²")];
    squares.iter().fold(in_plain_words(unit), |words, (plain, shown)| {
        exchanged(&words, plain, shown)
    })
}

/// The same in letters that every reader of tables takes as they are: symbols stay.
#[must_use]
pub fn in_plain_words(unit: &str) -> String {
    let mut words = String::with_capacity(unit.len());
    for part in unit.split_inclusive(['/', ' ']) {
        let noun = part.trim_end_matches(['/', ' ']);
        words.push_str(noun_in_words(noun));
        words.push_str(part.get(noun.len()..).unwrap_or_default());
    }
    words
}

fn noun_in_words(noun: &str) -> &str {
    match noun {
        "home" => say!("figures-unit-home"),
        "homes" => say!("figures-unit-homes"),
        "person" => say!("figures-unit-person"),
        "people" => say!("figures-unit-people"),
        "job" => say!("figures-unit-job"),
        "jobs" => say!("figures-unit-jobs"),
        "lot" => say!("figures-unit-lot"),
        "lots" => say!("figures-unit-lots"),
        "acre" => say!("figures-unit-acre"),
        "acres" => say!("figures-unit-acres"),
        "seat" => say!("figures-unit-seat"),
        "seats" => say!("figures-unit-seats"),
        "space" => say!("figures-unit-space"),
        "spaces" => say!("figures-unit-spaces"),
        "intersection" => say!("figures-unit-intersection"),
        "intersections" => say!("figures-unit-intersections"),
        symbol => symbol,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::messages::{Language, use_language};

    #[test]
    fn nouns_of_units_are_said_and_symbols_stay() {
        let units = [
            "homes",
            "homes/acre",
            "ft2/lot",
            "person/home",
            "space",
            "m",
            "home/m2",
            "1/s",
            "kg home/s",
        ];
        assert_eq!(units.map(in_plain_words), units);
        assert_eq!(
            ["ft2/lot", "home/m2", "intersections/mi2", "jobs/1000ft2"].map(in_words),
            ["ft²/lot", "home/m²", "intersections/mi²", "jobs/1000ft²"]
        );
        use_language(Language::Spanish);
        let said = units.map(in_plain_words);
        let expected = [
            "viviendas",
            "viviendas/acre",
            "ft2/lote",
            "persona/vivienda",
            "espacio",
            "m",
            "vivienda/m2",
            "1/s",
            "kg vivienda/s",
        ];
        assert_eq!(said, expected);
        use_language(Language::English);
    }
}
