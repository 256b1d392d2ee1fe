//! The editor of a building type: all that one lot of it holds, in groups.

use hobnail_core::plan::building::{EnvelopeClass, PriceBand};
use hobnail_core::plan::defaults::usual_jobs_per_floor_hectare;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::validate::building_type_faults;
use hobnail_core::plan::{BuildingType, BuildingTypeId, Document, FloorUse, LandUse, Story};
use hobnail_core::{message, say};

use super::edits::{self, refuse};
use super::lines::{Key, Line, Part};
use super::quantity::{self, Bounded, Quantity};
use super::{Change, EditorShown};
use crate::app::words::{Words, sentence_case};
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

/// A number of `T`.
struct Number<T> {
    /// The title above it, where a group begins; empty elsewhere.
    group: Option<Words>,
    label: Words,
    quantity: &'static Quantity,
    bounds: [f64; 2],
    get: fn(&T) -> f64,
    set: fn(&mut T, f64),
}

impl<T> Number<T> {
    fn field(&self) -> Bounded {
        Bounded {
            label: self.label.words(),
            quantity: self.quantity,
            bounds: self.bounds,
        }
    }
}

const NUMBERS: [Number<BuildingType>; 8] = [
    Number {
        group: Some(message!("page-type-lot")),
        label: message!("page-type-width"),
        quantity: &quantity::LOT_LENGTH,
        bounds: [3048.0, 609_600.0],
        get: |held| f64::from(held.lot_width_mm),
        set: |held, value| held.lot_width_mm = value as u32,
    },
    Number {
        group: None,
        label: message!("page-type-depth"),
        quantity: &quantity::LOT_LENGTH,
        bounds: [3048.0, 609_600.0],
        get: |held| f64::from(held.lot_depth_mm),
        set: |held, value| held.lot_depth_mm = value as u32,
    },
    Number {
        group: Some(message!("page-type-homes-and-people")),
        label: message!("page-type-homes"),
        quantity: &quantity::COUNT,
        bounds: [0.0, 2000.0],
        get: |held| f64::from(held.homes_per_lot),
        set: |held, value| held.homes_per_lot = value as u32,
    },
    Number {
        group: None,
        label: message!("page-type-people"),
        quantity: &quantity::PEOPLE,
        bounds: [0.0, 20_000.0],
        get: |held| f64::from(held.persons_per_home_thousandths),
        set: |held, value| held.persons_per_home_thousandths = value as u32,
    },
    Number {
        group: Some(message!("page-type-parking")),
        label: message!("page-type-parking-on-lot"),
        quantity: &quantity::SPACES,
        bounds: [0.0, 1_000_000.0],
        get: |held| f64::from(held.parking_per_lot_hundredths),
        set: |held, value| held.parking_per_lot_hundredths = value as u32,
    },
    Number {
        group: Some(message!("page-type-cover")),
        label: message!("page-type-under-buildings"),
        quantity: &quantity::THOUSANDTHS,
        bounds: [0.0, 1000.0],
        get: |held| f64::from(held.coverage_thousandths),
        set: |held, value| held.coverage_thousandths = value as u16,
    },
    Number {
        group: None,
        label: message!("page-type-paved"),
        quantity: &quantity::THOUSANDTHS,
        bounds: [0.0, 1000.0],
        get: |held| f64::from(held.paved_thousandths),
        set: |held, value| held.paved_thousandths = value as u16,
    },
    Number {
        group: None,
        label: message!("page-type-planted"),
        quantity: &quantity::THOUSANDTHS,
        bounds: [0.0, 1000.0],
        get: |held| f64::from(held.planted_thousandths),
        set: |held, value| held.planted_thousandths = value as u16,
    },
];

const OF_STORY: [Number<Story>; 3] = [
    Number {
        group: None,
        label: message!("page-type-floor-area"),
        quantity: &quantity::FLOOR,
        bounds: [1.0, 1_000_000.0],
        get: |held| f64::from(held.floor_area_m2),
        set: |held, value| held.floor_area_m2 = value as u32,
    },
    Number {
        group: None,
        label: message!("page-type-height"),
        quantity: &quantity::WIDTH,
        bounds: [1829.0, 30_480.0],
        get: |held| f64::from(held.height_mm),
        set: |held, value| held.height_mm = value as u32,
    },
    Number {
        group: None,
        label: message!("page-type-jobs"),
        quantity: &quantity::JOBS_ON_FLOOR,
        bounds: [0.0, 20_000.0],
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
const FLOOR_USES: [(FloorUse, Words); 6] = [
    (FloorUse::Home, message!("page-floor-homes")),
    (FloorUse::Work, message!("page-floor-work")),
    (FloorUse::Shop, message!("page-floor-shops")),
    (FloorUse::Learning, message!("page-floor-learning")),
    (FloorUse::Gathering, message!("page-floor-gathering")),
    (FloorUse::Parking, message!("page-floor-parking")),
];
const ENVELOPES: [(EnvelopeClass, Words); 3] = [
    (EnvelopeClass::Older, message!("page-envelope-older")),
    (EnvelopeClass::Code, message!("page-envelope-code")),
    (EnvelopeClass::Better, message!("page-envelope-better")),
];
const PRICES: [(PriceBand, Words); 3] = [
    (PriceBand::Lower, message!("page-price-lower")),
    (PriceBand::Middle, message!("page-price-middle")),
    (PriceBand::Upper, message!("page-price-upper")),
];

/// The editor; `None` where there is no such type.
pub(super) fn shown(document: &Document, id: BuildingTypeId) -> Option<EditorShown> {
    let held = document.building_types.get(&id)?;
    let units = document.settings.units;
    let key = |field| Key::new(Part::BuildingType, 0, field);
    let mut lines = vec![
        Line::title(0, say!("page-building-type")),
        Line::sign(
            Key::panel(edits::CLOSE),
            say!("page-editor-done"),
            say!("page-editor-done").to_owned(),
        ),
        Line::text(key(NAME), say!("page-name"), &held.name),
    ];
    let uses = LAND_USES.iter().map(|found| sentence_case(palette::use_word(*found)));
    let chosen = LAND_USES.iter().position(|found| *found == held.land_use);
    lines.push(Line::choice(
        key(LAND_USE),
        say!("page-type-tint"),
        uses.collect(),
        chosen.unwrap_or_default(),
    ));
    for (fault, index) in building_type_faults(held).into_iter().zip(20..) {
        lines.push(Line::warning(index, edits::fault_words(&fault)));
    }
    add_numbers(&mut lines, &NUMBERS, held, key(NUMBERS_FROM), units);
    lines.push(Line::title(1, say!("page-type-stories")));
    for (index, story) in held.stories.iter().enumerate() {
        let key = |field| Key::new(Part::Story, index as u16, field);
        let number = index + 1;
        let uses = FLOOR_USES.iter().map(|(_, words)| words.words().to_owned()).collect();
        let chosen = FLOOR_USES.iter().position(|(found, _)| *found == story.floor_use);
        let chosen = chosen.unwrap_or_default();
        let name = say!("page-story", number = number);
        lines.push(Line::fact(40 + index as u16, &name, String::new()).in_row(name.clone()));
        lines.push(Line::choice(key(FLOOR_USE), "", uses, chosen).in_row(say!("page-story-use", number = number)));
        lines.push(Line::sign(key(REMOVE), "×", say!("page-story-remove", number = number)));
        // Jobs come last, and only where people work.
        let shown = OF_STORY.len() - usize::from(!story.floor_use.holds_jobs());
        add_numbers(&mut lines, &OF_STORY[..shown], story, key(NUMBERS_FROM), units);
    }
    lines.push(Line::command(key(ADD), say!("page-type-add-story")));
    lines.push(Line::title(2, say!("page-type-envelope-and-price")));
    let words = ENVELOPES.iter().map(|(_, words)| words.words().to_owned()).collect();
    let chosen = ENVELOPES.iter().position(|(found, _)| *found == held.envelope);
    lines.push(Line::choice(
        key(ENVELOPE),
        say!("page-type-envelope"),
        words,
        chosen.unwrap_or_default(),
    ));
    let words = PRICES.iter().map(|(_, words)| words.words().to_owned()).collect();
    let chosen = PRICES.iter().position(|(found, _)| *found == held.price_band);
    lines.push(Line::choice(
        key(PRICE),
        say!("page-type-price"),
        words,
        chosen.unwrap_or_default(),
    ));
    edits::add_palette_lines(&mut lines, edits::users_of_type(document, id));
    Some(EditorShown {
        name: "building-type",
        drawing: None,
        lines,
        profile: None,
    })
}

fn add_numbers<T>(lines: &mut Vec<Line>, numbers: &[Number<T>], held: &T, first: Key, units: UnitSystem) {
    for (number, field) in numbers.iter().zip(first.field..) {
        let group = number.group.map_or("", Words::words);
        if !group.is_empty() {
            lines.push(Line::title(100 + u16::from(field), group));
        }
        let key = Key { field, ..first };
        lines.push(Line::number(key, &number.field(), (number.get)(held), units));
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
                return Err(refuse(say!("page-name-empty")));
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
                    Change::Pick(chosen) => {
                        let before = story.floor_use;
                        pick(&FLOOR_USES, *chosen, &mut story.floor_use, |held| held.0);
                        if story.floor_use != before {
                            story.jobs_per_floor_hectare = usual_jobs_per_floor_hectare(story.floor_use);
                        }
                    }
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
        let stored = number.field().read((number.get)(held), change, units)?;
        (number.set)(held, stored);
    }
    Ok(())
}

/// The bounded numbers of a type and of a story, for tests.
#[cfg(test)]
pub(super) fn bounds() -> Vec<Bounded> {
    let stories = OF_STORY.iter().map(Number::field);
    NUMBERS.iter().map(Number::field).chain(stories).collect()
}
