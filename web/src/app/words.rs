//! Sentences about the open plan: what is selected, what changed, how long something is.

use hobnail_core::figures::display::grouped;
use hobnail_core::figures::unit::{ACRE_M2, SQUARE_FOOT_M2};
use hobnail_core::messages::{self, Argument, Message, ToArgument};
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Document, Footprint, Mark, StreetRole, StreetSection, StripKind, UseMark};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::editor::quantity::number;
use crate::browser::words::uppercase;
use crate::canvas::layers::marks;
use crate::tools::drawing::{Quantity, Sentence};
use crate::tools::{Selection, shape};

pub(super) const METERS_PER_FOOT: f64 = 0.3048;

/// Words of a table, said where they are shown: in the language of that moment.
pub type Words = Message;

/// A length, rounded to the tenth of a meter or the foot.
#[must_use]
pub fn length(length_m: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric if length_m < 100.0 => format!("{length_m:.1} m"),
        UnitSystem::Metric => grouped(length_m, 0) + " m",
        UnitSystem::UsCustomary => say!("page-feet", number = grouped(length_m / METERS_PER_FOOT, 0)),
    }
}

/// An area of land: whole square meters or feet while it is small, then hectares or acres to the hundredth.
#[must_use]
pub fn area(area_m2: f64, units: UnitSystem) -> String {
    const LARGE_M2: f64 = 2_000.0;
    let (value, unit, decimals) = match units {
        UnitSystem::Metric if area_m2 < LARGE_M2 => (area_m2, "m²", 0),
        UnitSystem::Metric => (area_m2 / 10_000.0, "ha", 2),
        UnitSystem::UsCustomary if area_m2 < LARGE_M2 => {
            return say!("page-square-feet", number = format!("{:.0}", area_m2 / SQUARE_FOOT_M2));
        }
        UnitSystem::UsCustomary => return say!("page-acres", number = format!("{:.2}", area_m2 / ACRE_M2)),
    };
    format!("{value:.decimals$} {unit}")
}

/// A sentence about what is drawn, its numbers in the page's units.
#[must_use]
pub fn said(sentence: &Sentence, units: UnitSystem) -> String {
    let words = sentence.given.iter().map(|quantity| match quantity {
        Quantity::Count(number) => number.to_string(),
        Quantity::Length(length_mm) => length(length_mm / 1000.0, units),
        Quantity::Area(area_m2) => area(*area_m2, units),
    });
    let words: Vec<String> = words.collect();
    let values: Vec<Argument<'_>> = words.iter().map(ToArgument::to_argument).collect();
    messages::words_with(sentence.message, sentence.names, &values)
}

/// A length as it is typed, in feet or meters; `None` for what is no length above zero. A comma parts decimals in meters
/// and thousands in feet.
#[must_use]
pub fn typed_length_mm(text: &str, units: UnitSystem) -> Option<f64> {
    let text = match units {
        UnitSystem::Metric => text.replace(',', "."),
        UnitSystem::UsCustomary => without_thousands(text)?,
    };
    let number = number(&text)?;
    let length_m = match units {
        UnitSystem::Metric => number,
        UnitSystem::UsCustomary => number * METERS_PER_FOOT,
    };
    // Longer than any plan is a slip of the hand.
    const LONGEST_M: f64 = 100_000.0;
    (length_m > 0.0 && length_m < LONGEST_M).then_some(length_m * 1000.0)
}

/// A number without the commas between its thousands; `None` where they stand elsewhere.
fn without_thousands(text: &str) -> Option<String> {
    let (whole, decimals) = text.split_once('.').unwrap_or((text, ""));
    let is_parted = whole.trim().split(',').skip(1).all(|thousand| thousand.len() == 3);
    (is_parted && !decimals.contains(',')).then(|| text.replace(',', ""))
}

/// A length as it stands in a field, in feet or meters to the tenth.
#[must_use]
pub fn length_field(length_mm: f64, units: UnitSystem) -> String {
    let value = match units {
        UnitSystem::Metric => length_mm / 1000.0,
        UnitSystem::UsCustomary => length_mm / 1000.0 / METERS_PER_FOOT,
    };
    let words = format!("{value:.1}");
    words.strip_suffix(".0").map_or(words.clone(), str::to_owned)
}

/// What is selected together: numbers of streets and of other things.
#[must_use]
pub fn together(streets: usize, others: usize) -> String {
    match (streets, others) {
        (streets, 0) => say!("page-selected-streets", count = streets),
        (0, others) => say!("page-selected-things", count = others),
        (streets, others) => say!("page-selected-both", streets = streets, things = others),
    }
}

/// A walking pace.
#[must_use]
pub fn pace(meters_per_second: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric => format!("{meters_per_second:.2} m/s"),
        UnitSystem::UsCustomary => say!(
            "page-feet-per-second",
            number = format!("{:.1}", meters_per_second / METERS_PER_FOOT)
        ),
    }
}

/// What a plan that was just opened holds.
#[must_use]
pub fn opened(study: &Study) -> String {
    let document = study.document();
    say!(
        "page-opened",
        plan = document.heading.name,
        alternative = alternative(study)
    )
}

/// Which alternative is shown, and its size.
#[must_use]
pub fn alternative(study: &Study) -> String {
    let name = study
        .document()
        .alternatives
        .get(&study.alternative())
        .map(|found| found.name.as_str());
    let streets = study.fabric().lines.streets.len();
    let faces = study.fabric().face_of_mark.len();
    say!(
        "page-alternative",
        name = name.unwrap_or_else(|| say!("page-alternative-unnamed")),
        streets = streets,
        blocks = faces
    )
}

/// How much street lies within five minutes of a center, or why that can not be said.
#[must_use]
pub fn walk(study: &Study) -> String {
    match study.walk() {
        Ok(_) => {
            let reached_m = study.walk_shed(300).length_um() as f64 / 1e6;
            let units = study.document().settings.units;
            say!("page-walk-reached", length = length(reached_m, units))
        }
        Err(reason) => format!("{}.", sentence_case(reason)),
    }
}

/// What is selected.
#[must_use]
pub fn selected(study: &Study, selection: Selection) -> String {
    let document = study.document();
    let Some(mark) = document.mark(study.alternative(), selection.mark()) else {
        return String::new();
    };
    let units = document.settings.units;
    match (selection, mark) {
        (Selection::Street(_), Mark::Street(found)) => street(document, found, units),
        (Selection::Vertex(_, index), Mark::Street(found)) => {
            let is_tied = found.line.get(index).is_some_and(|vertex| vertex.tie.is_some());
            let (count, street) = (found.line.len(), street_name(found));
            if is_tied {
                say!(
                    "page-selected-corner-held",
                    number = index + 1,
                    count = count,
                    street = street
                )
            } else {
                say!(
                    "page-selected-corner",
                    number = index + 1,
                    count = count,
                    street = street
                )
            }
        }
        (_, Mark::Place(place)) => {
            let extent = match &place.footprint {
                Footprint::Point(_) => say!("page-extent-point").to_owned(),
                Footprint::Line(_) => say!("page-extent-stretch").to_owned(),
                Footprint::Area(outline) => area(shape::area_m2(outline), units),
            };
            let kind = marks::word(place.kind);
            if place.name.is_empty() {
                say!("page-selected-place", kind = kind, extent = extent)
            } else {
                say!(
                    "page-selected-place-named",
                    kind = kind,
                    name = place.name,
                    extent = extent
                )
            }
        }
        (_, Mark::Use(found)) => use_of_land(document, found),
        (_, other) => other_mark(other, units),
    }
}

/// What a mark is that is no street, place or use: its kind, its name, its size.
fn other_mark(mark: &Mark, units: UnitSystem) -> String {
    let name = match mark {
        Mark::Constraint(area) => area.name.as_str(),
        Mark::SiteAccess(access) => &access.name,
        Mark::Parcel(parcel) => crate::canvas::palette::owner_word(parcel.owner),
        Mark::Barrier(barrier) => &barrier.name,
        Mark::Outside(outside) => &outside.name,
        Mark::Note(note) => &note.text,
        _ => "",
    };
    let size = match shape::of(mark) {
        Some(Footprint::Area(outline)) => area(shape::area_m2(&outline), units),
        _ => String::new(),
    };
    let parts = [super::fields::title(mark), name, size.as_str()];
    let held: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    held.join(", ")
}

fn street(document: &Document, street: &Street, units: UnitSystem) -> String {
    let length_m = street
        .line
        .windows(2)
        .filter_map(|ends| match ends {
            [a, b] => Some(a.point.distance_um(b.point) as f64 / 1e6),
            _ => None,
        })
        .sum();
    let (name, long) = (street_name(street), length(length_m, units));
    match document.street_sections.get(&street.section) {
        Some(section) => {
            let width = length(f64::from(section.right_of_way_mm()) / 1000.0, units);
            say!(
                "page-selected-street",
                street = name,
                section = section.name,
                width = width,
                length = long
            )
        }
        None => say!("page-selected-street-alone", street = name, length = long),
    }
}

/// The name of a street, or what it is where it has none.
#[must_use]
pub fn street_name(street: &Street) -> String {
    if street.name.is_empty() {
        match street.role {
            StreetRole::Path => say!("page-path"),
            StreetRole::Alley => say!("page-alley"),
            StreetRole::Lane => say!("page-lane"),
            StreetRole::Thoroughfare | StreetRole::NeighborhoodStreet => say!("page-street"),
        }
        .to_owned()
    } else {
        street.name.clone()
    }
}

fn use_of_land(document: &Document, mark: &UseMark) -> String {
    let portions = mark.program.iter().filter_map(|portion| {
        let name = &document.building_types.get(&portion.building_type)?.name;
        let percent = (f64::from(portion.share_ppm) / 10_000.0).round();
        Some(if percent >= 100.0 {
            name.clone()
        } else {
            format!("{percent:.0}% {name}")
        })
    });
    let portions: Vec<String> = portions.collect();
    let program = if portions.is_empty() {
        say!("page-block-no-use").to_owned()
    } else {
        portions.join(", ")
    };
    match mark.sides.len() {
        0 => say!("page-selected-block", program = program),
        sides => say!("page-selected-block-sides", program = program, count = sides),
    }
}

/// A street section in words: strips from left to right with their widths, and the target speed.
#[must_use]
pub fn cut(section: &StreetSection, units: UnitSystem) -> String {
    let strips = section.strips.iter().map(|strip| {
        let name = match strip.kind {
            StripKind::Walk => say!("page-strip-walk"),
            StripKind::Planting => say!("page-strip-planting"),
            StripKind::Parking => say!("page-strip-parking"),
            StripKind::Bicycle => say!("page-strip-bicycles"),
            StripKind::Travel => say!("page-strip-travel"),
            StripKind::Median => say!("page-strip-median"),
            StripKind::Swale => say!("page-strip-swale"),
        };
        let width_m = f64::from(strip.width_mm) / 1000.0;
        match units {
            UnitSystem::Metric => format!("{name} {width_m:.1}"),
            UnitSystem::UsCustomary => format!("{name} {:.0}", width_m / METERS_PER_FOOT),
        }
    });
    let strips: Vec<String> = strips.collect();
    let strips = sentence_case(&strips.join(", "));
    match (section.target_speed_km_h, units) {
        (0, _) => strips,
        (speed, UnitSystem::Metric) => format!("{strips}; {speed} km/h"),
        (speed, UnitSystem::UsCustomary) => {
            let speed = format!("{:.0}", f64::from(speed) / 1.609_344);
            say!("page-strips-mph", strips = strips, speed = speed)
        }
    }
}

/// The sentence with a capital first letter.
#[must_use]
pub fn sentence_case(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(String::from).unwrap_or_default();
    uppercase(&first) + letters.as_str()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::drawing::sentence;

    #[test]
    fn typed_lengths_are_read_in_the_units_shown() {
        assert_eq!(typed_length_mm(" 36,5", UnitSystem::Metric), Some(36_500.0));
        let thousands = typed_length_mm("1,200.5", UnitSystem::UsCustomary).expect("a length");
        assert!((thousands - 365_912.4).abs() < 1e-6, "{thousands}");
        for none in ["36,5", "1,2000", "1.2,000"] {
            assert_eq!(typed_length_mm(none, UnitSystem::UsCustomary), None, "{none}");
        }
        let feet = typed_length_mm("120", UnitSystem::UsCustomary).expect("a length");
        assert!((feet - 36_576.0).abs() < 1e-6);
        for none in ["", "-3", "0", "x", "1e9"] {
            assert_eq!(typed_length_mm(none, UnitSystem::Metric), None, "{none}");
        }
        assert_eq!(length_field(30_480.0, UnitSystem::UsCustomary), "100");
        assert_eq!(length_field(12_340.0, UnitSystem::Metric), "12.3");
    }

    #[test]
    fn areas_and_sentences_take_the_units_of_the_page() {
        assert_eq!(area(1_200.0, UnitSystem::Metric), "1200 m²");
        assert_eq!(area(40_468.564_224, UnitSystem::UsCustomary), "10.00 acres");
        let tape = sentence!(
            "tools-tape-area",
            length = Quantity::Length(30_480.0),
            area = Quantity::Area(40_468.564_224)
        );
        assert_eq!(said(&tape, UnitSystem::UsCustomary), "total 100 ft, area 10.00 acres");
    }

    #[test]
    fn lengths_are_rounded_in_their_units() {
        assert_eq!(length(12.34, UnitSystem::Metric), "12.3 m");
        assert_eq!(length(123.4, UnitSystem::Metric), "123 m");
        assert_eq!(length(30.48, UnitSystem::UsCustomary), "100 ft");
        assert_eq!(length(2_106.168, UnitSystem::UsCustomary), "6,910 ft");
        assert_eq!(length(2_106.168, UnitSystem::Metric), "2,106 m");
    }
}
