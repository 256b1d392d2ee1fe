//! The editor of a street section: its strips, who may use it, and where it is narrower than is common.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::validate::section_faults;
use hobnail_core::plan::{Document, StreetSection, StreetSectionId, Strip, StripKind};
use hobnail_core::{message, say};

use super::drawn::{Drawing, of_strips};
use super::edits::{self, refuse};
use super::lines::{Key, Line, Part};
use super::quantity::{self, Bounded};
use super::{Change, EditorShown};
use crate::app::words::{self, Words, sentence_case};

/// Fields of a section whole.
const NAME: u8 = 0;
const ADD: u8 = 1;
const TARGET_SPEED: u8 = 2;
const SWITCHES_FROM: u8 = 3;
/// Fields of a strip.
const KIND: u8 = 0;
const WIDTH: u8 = 1;
pub(super) const TO_LEFT: u8 = 2;
pub(super) const TO_RIGHT: u8 = 3;
pub(super) const REMOVE: u8 = 4;

/// Pixels to a meter in the palette: one scale for all sections.
const PALETTE_PX_PER_M: f64 = 6.4;

const KINDS: [(StripKind, Words); 7] = [
    (StripKind::Walk, message!("page-kind-walk")),
    (StripKind::Planting, message!("page-kind-planting")),
    (StripKind::Parking, message!("page-kind-parking")),
    (StripKind::Bicycle, message!("page-kind-bicycle")),
    (StripKind::Travel, message!("page-kind-travel")),
    (StripKind::Median, message!("page-kind-median")),
    (StripKind::Swale, message!("page-kind-swale")),
];

fn strip_width_field() -> Bounded {
    Bounded {
        label: say!("page-strip-width"),
        quantity: &quantity::WIDTH,
        bounds: [305.0, 30_480.0],
    }
}

fn speed_field() -> Bounded {
    Bounded {
        label: say!("page-target-speed"),
        quantity: &quantity::SPEED,
        bounds: [0.0, 130.0],
    }
}

/// A box of a section.
struct Switch {
    label: Words,
    of: fn(&mut StreetSection) -> &mut bool,
}

const SWITCHES: [Switch; 5] = [
    Switch {
        label: message!("page-may-walk"),
        of: |section| &mut section.walkable,
    },
    Switch {
        label: message!("page-may-cycle"),
        of: |section| &mut section.cyclable,
    },
    Switch {
        label: message!("page-may-drive"),
        of: |section| &mut section.drivable,
    },
    Switch {
        label: message!("page-fronts-left"),
        of: |section| &mut section.fronts_left,
    },
    Switch {
        label: message!("page-fronts-right"),
        of: |section| &mut section.fronts_right,
    },
];

/// A width below which a strip is said to be narrow.
struct Common {
    kind: StripKind,
    /// Up to which target speed, in kilometers per hour.
    up_to_km_h: u16,
    least_mm: u32,
    source: Words,
}

/// Travel and parking lanes by target speed in miles per hour, in feet: below 20, 8; to 25, 9; to 35, 10; above, 12. The
/// first that fits counts.
const COMMON: [Common; 9] = [
    common(StripKind::Travel, 31, 2438, BY_SPEED),
    common(StripKind::Travel, 41, 2743, BY_SPEED),
    common(StripKind::Travel, 57, 3048, BY_SPEED),
    common(StripKind::Travel, u16::MAX, 3658, BY_SPEED),
    common(StripKind::Parking, 41, 2134, BY_SPEED),
    common(StripKind::Parking, 57, 2438, BY_SPEED),
    common(StripKind::Parking, u16::MAX, 2743, BY_SPEED),
    common(StripKind::Walk, u16::MAX, 1524, message!("page-source-walk")),
    common(StripKind::Bicycle, u16::MAX, 1524, message!("page-source-bicycle")),
];
const BY_SPEED: Words = message!("page-source-by-speed");

/// Feet rounded to tenths of a meter: so much less is no narrower.
const TOLERANCE_MM: u32 = 50;

const fn common(kind: StripKind, up_to_km_h: u16, least_mm: u32, source: Words) -> Common {
    Common {
        kind,
        up_to_km_h,
        least_mm,
        source,
    }
}

/// The editor; `None` where there is no such section.
pub(super) fn shown(document: &Document, id: StreetSectionId) -> Option<EditorShown> {
    let section = document.street_sections.get(&id)?;
    let units = document.settings.units;
    let key = |field| Key::new(Part::Section, 0, field);
    let mut lines = vec![
        Line::title(0, say!("page-section")),
        Line::sign(
            Key::panel(edits::CLOSE),
            say!("page-editor-done"),
            say!("page-editor-done").to_owned(),
        ),
        Line::text(key(NAME), say!("page-name"), &section.name),
        Line::fact(1, say!("page-right-of-way"), width(section.right_of_way_mm(), units)),
        Line::title(2, say!("page-strips")),
    ];
    for (index, strip) in section.strips.iter().enumerate() {
        add_strip_lines(&mut lines, section, index, strip, units);
    }
    lines.push(Line::command(key(ADD), say!("page-strip-add")));
    lines.extend(
        narrow(section, units)
            .into_iter()
            .zip(10..)
            .map(|(words, index)| Line::warning(index, words)),
    );
    for (fault, index) in section_faults(section).into_iter().zip(20..) {
        lines.push(Line::warning(index, edits::fault_words(&fault)));
    }
    lines.push(Line::words(3, say!("page-section-caution")));
    lines.push(Line::title(4, say!("page-speed-and-use")));
    lines.push(Line::number(
        key(TARGET_SPEED),
        &speed_field(),
        f64::from(section.target_speed_km_h),
        units,
    ));
    let mut held = section.clone();
    for (switch, field) in SWITCHES.iter().zip(SWITCHES_FROM..) {
        lines.push(Line::check(key(field), switch.label.words(), *(switch.of)(&mut held)));
    }
    edits::add_palette_lines(&mut lines, edits::users_of_section(document, id));
    Some(EditorShown {
        name: "section",
        drawing: Some(drawing(section, units)),
        lines,
        profile: None,
    })
}

fn add_strip_lines(lines: &mut Vec<Line>, section: &StreetSection, index: usize, strip: &Strip, units: UnitSystem) {
    let key = |field| Key::new(Part::Strip, index as u16, field);
    let count = section.strips.len();
    let number = index + 1;
    let chosen = KINDS.iter().position(|(kind, _)| *kind == strip.kind);
    let options = KINDS.iter().map(|(_, words)| words.words().to_owned()).collect();
    lines.extend([
        Line::choice(key(KIND), "", options, chosen.unwrap_or_default()).in_row(say!(
            "page-strip",
            number = number,
            count = count
        )),
        Line::number(key(WIDTH), &strip_width_field(), f64::from(strip.width_mm), units).in_row(say!(
            "page-strip-width-of",
            number = number,
            count = count
        )),
        Line::sign(
            key(TO_LEFT),
            "←",
            say!("page-strip-to-left", number = number, count = count),
        )
        .off_if(index == 0),
        Line::sign(
            key(TO_RIGHT),
            "→",
            say!("page-strip-to-right", number = number, count = count),
        )
        .off_if(index + 1 == count),
        Line::sign(
            key(REMOVE),
            "×",
            say!("page-strip-remove", number = number, count = count),
        )
        .off_if(count == 1),
    ]);
}

/// The section after a line was changed.
pub(super) fn changed(
    section: &StreetSection,
    key: Key,
    change: &Change,
    units: UnitSystem,
) -> Result<StreetSection, String> {
    let mut after = section.clone();
    let index = usize::from(key.index);
    match (key.part, key.field, change) {
        (Part::Section, NAME, Change::Text(name)) => {
            name.trim().clone_into(&mut after.name);
            if after.name.is_empty() {
                return Err(refuse(say!("page-name-empty")));
            }
        }
        (Part::Section, ADD, _) => after.strips.push(Strip {
            kind: StripKind::Planting,
            width_mm: match units {
                UnitSystem::Metric => 2000,
                UnitSystem::UsCustomary => 1829,
            },
        }),
        (Part::Section, TARGET_SPEED, _) => {
            let speed = speed_field().read(f64::from(section.target_speed_km_h), change, units)?;
            after.target_speed_km_h = speed as u16;
        }
        (Part::Section, field, Change::Pick(is_on)) => {
            if let Some(switch) = SWITCHES.get(usize::from(field.saturating_sub(SWITCHES_FROM))) {
                *(switch.of)(&mut after) = *is_on == 1;
            }
        }
        (Part::Strip, TO_LEFT, _) if index == 0 => return Err(refuse(say!("page-strip-no-place"))),
        (Part::Strip, TO_LEFT, _) if index < after.strips.len() => after.strips.swap(index - 1, index),
        (Part::Strip, TO_RIGHT, _) if index + 1 >= after.strips.len() => {
            return Err(refuse(say!("page-strip-no-place")));
        }
        (Part::Strip, TO_RIGHT, _) => after.strips.swap(index, index + 1),
        (Part::Strip, REMOVE, _) if after.strips.len() < 2 => return Err(refuse(say!("page-strip-last"))),
        (Part::Strip, REMOVE, _) if index < after.strips.len() => drop(after.strips.remove(index)),
        (Part::Strip, field, _) => {
            if let Some(strip) = after.strips.get_mut(index) {
                match (field, change) {
                    (KIND, Change::Pick(chosen)) => {
                        strip.kind = KINDS.get(*chosen).map_or(strip.kind, |(kind, _)| *kind);
                    }
                    (WIDTH, _) => {
                        strip.width_mm = strip_width_field().read(f64::from(strip.width_mm), change, units)? as u32
                    }
                    _ => {}
                }
            }
        }
        _ => {}
    }
    Ok(after)
}

/// Where strips are narrower than is common, a sentence for the narrowest of each kind.
pub(super) fn narrow(section: &StreetSection, units: UnitSystem) -> Vec<String> {
    let mut sentences = Vec::new();
    for (kind, name) in KINDS {
        let of_kind = section.strips.iter().filter(|strip| strip.kind == kind);
        let Some(narrowest_mm) = of_kind.map(|strip| strip.width_mm).min() else {
            continue;
        };
        let fits = |common: &&Common| common.kind == kind && section.target_speed_km_h <= common.up_to_km_h;
        let Some(common) = COMMON.iter().find(fits) else {
            continue;
        };
        if narrowest_mm + TOLERANCE_MM < common.least_mm {
            let (narrowest, least) = (width(narrowest_mm, units), width(common.least_mm, units));
            sentences.push(say!(
                "page-strip-narrow",
                strip = name.words(),
                width = narrowest,
                least = least,
                source = common.source.words()
            ));
        }
    }
    sentences
}

/// A width in words, to the tenth of a meter or of a foot.
pub(super) fn width(width_mm: u32, units: UnitSystem) -> String {
    let shown = quantity::WIDTH.shown(units);
    let tenths = (f64::from(width_mm) / shown.scale * 10.0).round();
    quantity::written(tenths, 1) + " " + (shown.unit)()
}

/// The word for a kind of strip.
pub(super) fn kind_word(kind: StripKind) -> &'static str {
    KINDS
        .iter()
        .find(|(known, _)| *known == kind)
        .map_or("", |(_, word)| word.words())
}

/// The section drawn, to fill its place.
pub(super) fn drawing(section: &StreetSection, units: UnitSystem) -> Drawing {
    of_strips(&section.strips, sentence_case(&words::cut(section, units)))
}

/// Strips drawn for the palette, at one scale for all.
#[must_use]
pub fn small_drawing(strips: &[Strip]) -> Drawing {
    Drawing {
        px_per_m: Some(PALETTE_PX_PER_M),
        ..of_strips(strips, String::new())
    }
}

#[cfg(test)]
pub(super) fn strip_width() -> Bounded {
    strip_width_field()
}
