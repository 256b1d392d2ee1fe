//! The editor of a building type: all that one lot of it holds, in groups.

use hobnail_core::plan::building::{EnvelopeClass, PriceBand};
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::validate::building_type_faults;
use hobnail_core::plan::{BuildingType, BuildingTypeId, Document, FloorUse, LandUse, Story};

use super::edits::{self, refuse};
use super::lines::{Key, Line, Part};
use super::quantity::{self, Bounded, Quantity};
use super::{Change, EditorShown};
use crate::app::words::sentence_case;
use crate::canvas::palette;

/// Fields of a type whole, besides its numbers.
const NAME: u8 = 0;
const LAND_USE: u8 = 1;
const ENVELOPE: u8 = 2;
const PRICE: u8 = 3;
const ADD: u8 = 4;
const NUMBERS_FROM: u8 = 10;
/// Fields of a story, besides its numbers.
const FLOOR_USE: u8 = 0;
const REMOVE: u8 = 1;

const TITLE: &str = "Building type";
const NAME_LABEL: &str = "Name";
const LAND_USE_LABEL: &str = "Land is tinted as";
const ENVELOPE_LABEL: &str = "Envelope";
const PRICE_LABEL: &str = "Price or rent";
const STORIES: &str = "Building, from the ground up";
const STORY: &str = "Story";
const USE_OF: &str = "Use of story";
const REMOVE_STORY: &str = "Remove story";
const ADD_STORY: &str = "Add a story";
const ENVELOPE_AND_PRICE: &str = "Envelope and price";
const NO_NAME: &str = "a name can not be empty";

/// A number of `T`.
struct Number<T> {
    /// The title above it, where a group begins.
    group: &'static str,
    field: Bounded,
    get: fn(&T) -> f64,
    set: fn(&mut T, f64),
}

const fn bounded(label: &'static str, quantity: &'static Quantity, least: f64, most: f64) -> Bounded {
    Bounded {
        label,
        quantity,
        bounds: [least, most],
    }
}

const NUMBERS: [Number<BuildingType>; 8] = [
    Number {
        group: "Lot",
        field: bounded("Width along the street", &quantity::LOT_LENGTH, 3048.0, 609_600.0),
        get: |held| f64::from(held.lot_width_mm),
        set: |held, value| held.lot_width_mm = value as u32,
    },
    Number {
        group: "",
        field: bounded("Depth", &quantity::LOT_LENGTH, 3048.0, 609_600.0),
        get: |held| f64::from(held.lot_depth_mm),
        set: |held, value| held.lot_depth_mm = value as u32,
    },
    Number {
        group: "Homes and people",
        field: bounded("Homes on a lot", &quantity::COUNT, 0.0, 2000.0),
        get: |held| f64::from(held.homes_per_lot),
        set: |held, value| held.homes_per_lot = value as u32,
    },
    Number {
        group: "",
        field: bounded("People per home", &quantity::PEOPLE, 0.0, 20_000.0),
        get: |held| f64::from(held.persons_per_home_thousandths),
        set: |held, value| held.persons_per_home_thousandths = value as u32,
    },
    Number {
        group: "Parking",
        field: bounded("Parking on a lot", &quantity::SPACES, 0.0, 1_000_000.0),
        get: |held| f64::from(held.parking_per_lot_hundredths),
        set: |held, value| held.parking_per_lot_hundredths = value as u32,
    },
    Number {
        group: "Land cover of a lot",
        field: bounded("Under buildings", &quantity::THOUSANDTHS, 0.0, 1000.0),
        get: |held| f64::from(held.coverage_thousandths),
        set: |held, value| held.coverage_thousandths = value as u16,
    },
    Number {
        group: "",
        field: bounded("Paved", &quantity::THOUSANDTHS, 0.0, 1000.0),
        get: |held| f64::from(held.paved_thousandths),
        set: |held, value| held.paved_thousandths = value as u16,
    },
    Number {
        group: "",
        field: bounded("Planted", &quantity::THOUSANDTHS, 0.0, 1000.0),
        get: |held| f64::from(held.planted_thousandths),
        set: |held, value| held.planted_thousandths = value as u16,
    },
];

const OF_STORY: [Number<Story>; 3] = [
    Number {
        group: "",
        field: bounded("Floor area on a lot", &quantity::FLOOR, 1.0, 1_000_000.0),
        get: |held| f64::from(held.floor_area_m2),
        set: |held, value| held.floor_area_m2 = value as u32,
    },
    Number {
        group: "",
        field: bounded("Height, floor to floor", &quantity::WIDTH, 1829.0, 30_480.0),
        get: |held| f64::from(held.height_mm),
        set: |held, value| held.height_mm = value as u32,
    },
    Number {
        group: "",
        field: bounded("Jobs on the floor", &quantity::JOBS_ON_FLOOR, 0.0, 20_000.0),
        get: |held| f64::from(held.jobs_per_floor_hectare),
        set: |held, value| held.jobs_per_floor_hectare = value as u32,
    },
];

const LAND_USES: [LandUse; 6] = [
    LandUse::Residential,
    LandUse::Business,
    LandUse::Industrial,
    LandUse::Civic,
    LandUse::Leisure,
    LandUse::Natural,
];
const FLOOR_USES: [(FloorUse, &str); 6] = [
    (FloorUse::Home, "Homes"),
    (FloorUse::Work, "Work"),
    (FloorUse::Shop, "Shops"),
    (FloorUse::Learning, "Learning"),
    (FloorUse::Gathering, "Gathering"),
    (FloorUse::Parking, "Parking"),
];
const ENVELOPES: [(EnvelopeClass, &str); 3] = [
    (EnvelopeClass::Older, "As in older buildings"),
    (EnvelopeClass::Code, "As the code asks"),
    (EnvelopeClass::Better, "Better than the code"),
];
const PRICES: [(PriceBand, &str); 3] = [
    (PriceBand::Lower, "Below the middle"),
    (PriceBand::Middle, "About the middle"),
    (PriceBand::Upper, "Above the middle"),
];

/// The editor; `None` where there is no such type.
pub(super) fn shown(document: &Document, id: BuildingTypeId) -> Option<EditorShown> {
    let held = document.building_types.get(&id)?;
    let units = document.settings.units;
    let key = |field| Key::new(Part::BuildingType, 0, field);
    let mut lines = vec![
        Line::title(0, TITLE),
        Line::sign(Key::panel(edits::CLOSE), edits::DONE, edits::DONE.to_owned()),
        Line::text(key(NAME), NAME_LABEL, &held.name),
    ];
    let uses = LAND_USES.iter().map(|found| sentence_case(palette::use_word(*found)));
    let chosen = LAND_USES.iter().position(|found| *found == held.land_use);
    lines.push(Line::choice(
        key(LAND_USE),
        LAND_USE_LABEL,
        uses.collect(),
        chosen.unwrap_or_default(),
    ));
    for (fault, index) in building_type_faults(held).into_iter().zip(20..) {
        lines.push(Line::warning(index, edits::fault_words(&fault)));
    }
    add_numbers(&mut lines, &NUMBERS, held, key(NUMBERS_FROM), units);
    lines.push(Line::title(1, STORIES));
    for (index, story) in held.stories.iter().enumerate() {
        let key = |field| Key::new(Part::Story, index as u16, field);
        let number = " ".to_owned() + &(index + 1).to_string();
        let uses = FLOOR_USES.iter().map(|(_, words)| (*words).to_owned()).collect();
        let chosen = FLOOR_USES.iter().position(|(found, _)| *found == story.floor_use);
        let chosen = chosen.unwrap_or_default();
        let name = STORY.to_owned() + &number;
        lines.push(Line::fact(40 + index as u16, &name, String::new()).in_row(name.clone()));
        lines.push(Line::choice(key(FLOOR_USE), "", uses, chosen).in_row(USE_OF.to_owned() + &number));
        lines.push(Line::sign(key(REMOVE), "×", REMOVE_STORY.to_owned() + &number));
        add_numbers(&mut lines, &OF_STORY, story, key(NUMBERS_FROM), units);
    }
    lines.push(Line::command(key(ADD), ADD_STORY));
    lines.push(Line::title(2, ENVELOPE_AND_PRICE));
    let words = ENVELOPES.iter().map(|(_, words)| (*words).to_owned()).collect();
    let chosen = ENVELOPES.iter().position(|(found, _)| *found == held.envelope);
    lines.push(Line::choice(
        key(ENVELOPE),
        ENVELOPE_LABEL,
        words,
        chosen.unwrap_or_default(),
    ));
    let words = PRICES.iter().map(|(_, words)| (*words).to_owned()).collect();
    let chosen = PRICES.iter().position(|(found, _)| *found == held.price_band);
    lines.push(Line::choice(key(PRICE), PRICE_LABEL, words, chosen.unwrap_or_default()));
    edits::add_palette_lines(&mut lines, edits::users_of_type(document, id));
    Some(EditorShown {
        name: "building-type",
        drawing: None,
        lines,
    })
}

fn add_numbers<T>(lines: &mut Vec<Line>, numbers: &[Number<T>], held: &T, first: Key, units: UnitSystem) {
    for (number, field) in numbers.iter().zip(first.field..) {
        if !number.group.is_empty() {
            lines.push(Line::title(100 + u16::from(field), number.group));
        }
        let key = Key { field, ..first };
        lines.push(Line::number(key, &number.field, (number.get)(held), units));
    }
}

/// The type after a line was changed.
pub(super) fn changed(
    held: &BuildingType,
    key: Key,
    change: &Change,
    units: UnitSystem,
) -> Result<BuildingType, String> {
    let mut after = held.clone();
    match (key.part, key.field, change) {
        (Part::BuildingType, NAME, Change::Text(name)) => {
            name.trim().clone_into(&mut after.name);
            if after.name.is_empty() {
                return Err(refuse(NO_NAME));
            }
        }
        (Part::BuildingType, LAND_USE, Change::Pick(chosen)) => {
            pick(&LAND_USES, *chosen, &mut after.land_use, |held| *held)
        }
        (Part::BuildingType, ENVELOPE, Change::Pick(chosen)) => {
            pick(&ENVELOPES, *chosen, &mut after.envelope, |held| held.0)
        }
        (Part::BuildingType, PRICE, Change::Pick(chosen)) => {
            pick(&PRICES, *chosen, &mut after.price_band, |held| held.0)
        }
        (Part::BuildingType, ADD, _) => after.stories.push(another(held)),
        (Part::BuildingType, field, _) => set(&NUMBERS, &mut after, field, change, units)?,
        (Part::Story, REMOVE, _) => {
            let index = usize::from(key.index);
            if index < after.stories.len() {
                after.stories.remove(index);
            }
        }
        (_, field, _) => {
            if let Some(story) = after.stories.get_mut(usize::from(key.index)) {
                match change {
                    Change::Pick(chosen) => pick(&FLOOR_USES, *chosen, &mut story.floor_use, |held| held.0),
                    _ => set(&OF_STORY, story, field, change, units)?,
                }
            }
        }
    }
    Ok(after)
}

/// A story like the last one; of homes where there is none.
fn another(held: &BuildingType) -> Story {
    held.stories.last().copied().unwrap_or(Story {
        floor_use: FloorUse::Home,
        floor_area_m2: 100,
        height_mm: 3048,
        jobs_per_floor_hectare: 0,
    })
}

fn pick<O, T>(options: &[O], chosen: usize, place: &mut T, of: fn(&O) -> T) {
    if let Some(found) = options.get(chosen) {
        *place = of(found);
    }
}

fn set<T>(numbers: &[Number<T>], held: &mut T, field: u8, change: &Change, units: UnitSystem) -> Result<(), String> {
    if let Some(number) = numbers.get(usize::from(field.saturating_sub(NUMBERS_FROM))) {
        let stored = number.field.read((number.get)(held), change, units)?;
        (number.set)(held, stored);
    }
    Ok(())
}

/// The bounded numbers of a type and of a story, for tests.
#[cfg(test)]
pub(super) fn bounds() -> Vec<Bounded> {
    let stories = OF_STORY.iter().map(|number| number.field);
    NUMBERS.iter().map(|number| number.field).chain(stories).collect()
}
