//! Sentences about the open plan: what is selected, what changed, how long something is.

use hobnail_core::figures::unit::{ACRE_M2, SQUARE_FOOT_M2};
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Document, Footprint, Mark, StreetRole, StreetSection, StripKind, UseMark};
use hobnail_core::study::Study;

use super::editor::quantity::number;
use super::figures::Row;
use crate::canvas::layers::marks;
use crate::tools::drawing::Piece;
use crate::tools::{Selection, shape};

pub(super) const METERS_PER_FOOT: f64 = 0.3048;

/// A length, rounded to the tenth of a meter or the foot.
#[must_use]
pub fn length(length_m: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric if length_m < 100.0 => format!("{length_m:.1} m"),
        UnitSystem::Metric => format!("{length_m:.0} m"),
        UnitSystem::UsCustomary => format!("{:.0} ft", length_m / METERS_PER_FOOT),
    }
}

/// An area of land: whole square meters or feet while it is small, then hectares or acres to the hundredth.
#[must_use]
pub fn area(area_m2: f64, units: UnitSystem) -> String {
    const LARGE_M2: f64 = 2_000.0;
    let (value, unit, decimals) = match units {
        UnitSystem::Metric if area_m2 < LARGE_M2 => (area_m2, "m²", 0),
        UnitSystem::Metric => (area_m2 / 10_000.0, "ha", 2),
        UnitSystem::UsCustomary if area_m2 < LARGE_M2 => (area_m2 / SQUARE_FOOT_M2, "sq ft", 0),
        UnitSystem::UsCustomary => (area_m2 / ACRE_M2, "acres", 2),
    };
    format!("{value:.decimals$} {unit}")
}

/// A sentence about what is drawn, its numbers in the page's units.
#[must_use]
pub fn pieces(said: &[Piece], units: UnitSystem) -> String {
    let mut words = String::new();
    for piece in said {
        match piece {
            Piece::Words(held) => words.push_str(held),
            Piece::Count(number) => words.push_str(&number.to_string()),
            Piece::Length(length_mm) => words.push_str(&length(length_mm / 1000.0, units)),
            Piece::Area(area_m2) => words.push_str(&area(*area_m2, units)),
        }
    }
    words
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
        (streets, 0) => format!("{} selected", count(streets, "street")),
        (0, others) => format!("{} selected", count(others, "thing")),
        (streets, others) => format!(
            "{} and {} selected",
            count(streets, "street"),
            count(others, "other thing")
        ),
    }
}

/// A walking pace.
#[must_use]
pub fn pace(meters_per_second: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric => format!("{meters_per_second:.2} m/s"),
        UnitSystem::UsCustomary => format!("{:.1} ft/s", meters_per_second / METERS_PER_FOOT),
    }
}

/// What a plan that was just opened holds.
#[must_use]
pub fn opened(study: &Study) -> String {
    let document = study.document();
    format!("Opened {}. {}", document.heading.name, alternative(study))
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
    format!(
        "{}: {} drawn and {} painted.",
        name.unwrap_or("Alternative"),
        count(streets, "street"),
        count(faces, "block")
    )
}

/// How much street lies within five minutes of a center, or why that can not be said.
#[must_use]
pub fn walk(study: &Study) -> String {
    match study.walk() {
        Ok(_) => {
            let reached_m = study.walk_shed(300).length_um() as f64 / 1e6;
            let units = study.document().settings.units;
            format!(
                "{} of street lie within 5 minutes of a center.",
                length(reached_m, units)
            )
        }
        Err(reason) => format!("{}.", sentence_case(reason)),
    }
}

/// What a step did and which first-level figures it moved.
#[must_use]
pub fn what_changed(label: &str, before: &[Row], now: &[Row]) -> String {
    let moved: Vec<String> = now
        .iter()
        .filter_map(|row| {
            let was = before.iter().find(|was| was.id == row.id)?;
            (was.value != row.value).then(|| format!("{} {}, was {}", row.title, row.value, was.value))
        })
        .collect();
    let label = sentence_case(label);
    if moved.is_empty() {
        format!("{label}. No figure changed.")
    } else {
        format!("{label}. {}.", moved.join("; "))
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
            let hold = if is_tied { ", held by another street" } else { "" };
            format!(
                "Corner {} of {} of {}{hold}",
                index + 1,
                found.line.len(),
                street_name(found)
            )
        }
        (_, Mark::Place(place)) => {
            let extent = match &place.footprint {
                Footprint::Point(_) => "a point".to_owned(),
                Footprint::Line(_) => "a stretch of street".to_owned(),
                Footprint::Area(outline) => area(shape::area_m2(outline), units),
            };
            let name = if place.name.is_empty() {
                String::new()
            } else {
                format!(" “{}”", place.name)
            };
            format!("{}{name}, {extent}", marks::word(place.kind))
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
    let section = document.street_sections.get(&street.section);
    let section_words = section.map_or_else(String::new, |section| {
        let width_m = f64::from(section.right_of_way_mm()) / 1000.0;
        format!(", {}, right-of-way {}", section.name, length(width_m, units))
    });
    format!(
        "{}{section_words}, {} long",
        street_name(street),
        length(length_m, units)
    )
}

/// The name of a street, or what it is where it has none.
#[must_use]
pub fn street_name(street: &Street) -> String {
    if street.name.is_empty() {
        match street.role {
            StreetRole::Path => "Path",
            StreetRole::Alley => "Alley",
            StreetRole::Lane => "Lane",
            StreetRole::Thoroughfare | StreetRole::NeighborhoodStreet => "Street",
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
    let sides = match mark.sides.len() {
        0 => String::new(),
        sides => format!("; {} of its own", count(sides, "side")),
    };
    let program = if portions.is_empty() {
        "no use but its sides".to_owned()
    } else {
        portions.join(", ")
    };
    format!("Block: {program}{sides}")
}

/// A street section in words: strips from left to right with their widths, and the target speed.
#[must_use]
pub fn cut(section: &StreetSection, units: UnitSystem) -> String {
    let strips = section.strips.iter().map(|strip| {
        let name = match strip.kind {
            StripKind::Walk => "walk",
            StripKind::Planting => "planting",
            StripKind::Parking => "parking",
            StripKind::Bicycle => "bicycles",
            StripKind::Travel => "travel",
            StripKind::Median => "median",
            StripKind::Swale => "swale",
        };
        let width_m = f64::from(strip.width_mm) / 1000.0;
        match units {
            UnitSystem::Metric => format!("{name} {width_m:.1}"),
            UnitSystem::UsCustomary => format!("{name} {:.0}", width_m / METERS_PER_FOOT),
        }
    });
    let strips: Vec<String> = strips.collect();
    let speed = match (section.target_speed_km_h, units) {
        (0, _) => String::new(),
        (speed, UnitSystem::Metric) => format!("; {speed} km/h"),
        (speed, UnitSystem::UsCustomary) => format!("; {:.0} mph", f64::from(speed) / 1.609_344),
    };
    format!("{}{speed}", sentence_case(&strips.join(", ")))
}

/// A number of things: `1 street`, `12 streets`.
#[must_use]
pub fn count(number: usize, thing: &str) -> String {
    if number == 1 {
        format!("1 {thing}")
    } else {
        format!("{number} {thing}s")
    }
}

/// The sentence with a capital first letter.
#[must_use]
pub fn sentence_case(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(id: &str, value: &str) -> Row {
        Row {
            heading: None,
            id: id.to_owned(),
            title: id.to_owned(),
            value: value.to_owned(),
            range: None,
            reason: None,
            change: None,
            is_table: false,
            cells: Vec::new(),
            has_place: false,
        }
    }

    #[test]
    fn only_what_moved_is_said() {
        let before = [row("homes", "700 homes"), row("jobs", "90 jobs")];
        let now = [row("homes", "712 homes"), row("jobs", "90 jobs")];
        assert_eq!(
            what_changed("draw street", &before, &now),
            "Draw street. homes 712 homes, was 700 homes."
        );
        assert_eq!(
            what_changed("draw street", &now, &now),
            "Draw street. No figure changed."
        );
    }

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
        let said = [Piece::Count(2), Piece::Words(" blocks of "), Piece::Length(30_480.0)];
        assert_eq!(pieces(&said, UnitSystem::UsCustomary), "2 blocks of 100 ft");
    }

    #[test]
    fn lengths_are_rounded_in_their_units() {
        assert_eq!(length(12.34, UnitSystem::Metric), "12.3 m");
        assert_eq!(length(123.4, UnitSystem::Metric), "123 m");
        assert_eq!(length(30.48, UnitSystem::UsCustomary), "100 ft");
    }
}
