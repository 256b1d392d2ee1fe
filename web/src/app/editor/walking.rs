//! The editor of the settings of walking: pace, slower walkers, and how much makes each daily need.

use hobnail_core::figures::unit;
use hobnail_core::measures::walk::settings::{ALL, Setting};
use hobnail_core::plan::defaults::WALKING_PACE_MM_PER_S;
use hobnail_core::plan::document::{FactorOverride, Settings, UnitSystem};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::allowance;
use super::edits::{self, refuse};
use super::lines::{Key, Line, Part};
use super::quantity::{self, Bounded, Quantity};
use super::{Change, EditorShown};
use crate::app::words::sentence_case;

/// Fields: the pace, the three values of the slower walkers, then the settings of core in their order.
const PACE: u8 = 0;
const SLOWER: u8 = 1;
const SETTINGS_FROM: u8 = 10;

const SLOWER_ID: &str = "walking.slower_speed";

fn pace_field() -> Bounded {
    Bounded {
        label: say!("page-walking-pace"),
        quantity: &quantity::PACE,
        bounds: [305.0, 2743.0],
    }
}

fn slower_fields() -> [Bounded; 3] {
    [
        slower(say!("page-walking-slower-low")),
        slower(say!("page-walking-slower-typical")),
        slower(say!("page-walking-slower-high")),
    ]
}

const fn slower(label: &'static str) -> Bounded {
    Bounded {
        label,
        quantity: &quantity::FACTOR_PACE,
        bounds: [1.0, 10.0],
    }
}

/// The field of a setting of core.
fn field_of(setting: &Setting) -> Bounded {
    let quantity: &'static Quantity = match setting.unit.code {
        "s" => &quantity::SETTING_TIME,
        "m" => &quantity::SETTING_LENGTH,
        "m/s" => &quantity::SETTING_SPEED,
        "m2" if setting.unit == unit::LAND => &quantity::SETTING_LAND,
        "m2" => &quantity::SETTING_FLOOR,
        _ => &quantity::COUNT,
    };
    Bounded {
        label: setting.title(),
        quantity,
        bounds: [0.0, setting.default * 100.0],
    }
}

/// The editor.
pub(super) fn shown(study: &Study) -> EditorShown {
    let document = study.document();
    let units = document.settings.units;
    let key = |field| Key::new(Part::Walking, 0, field);
    let mut lines = vec![
        Line::title(0, say!("page-walking")),
        Line::sign(
            Key::panel(edits::CLOSE),
            say!("page-editor-done"),
            say!("page-editor-done").to_owned(),
        ),
        Line::title(1, say!("page-walking-speeds")),
    ];
    let mut add = |field: &Bounded, key: Key, stored: f64, default: f64, source: &str| {
        let hint = say!(
            "page-default",
            value = field.quantity.words(default, units),
            source = source
        );
        let mut line = Line::number(key, field, stored, units).with_hint(hint);
        line.label = sentence_case(&line.label);
        lines.push(line);
    };
    let pace = f64::from(document.settings.walking_pace_mm_per_s);
    add(
        &pace_field(),
        key(PACE),
        pace,
        f64::from(WALKING_PACE_MM_PER_S),
        say!("page-walking-pace-source"),
    );
    let (held, default) = (slower_of(study, false), slower_of(study, true));
    for (place, field) in slower_fields().iter().enumerate() {
        let (stored, default) = (held[place], default[place]);
        add(
            field,
            key(SLOWER + place as u8),
            stored,
            default,
            source_of_slower(study, place).as_str(),
        );
    }
    for (setting, field) in ALL.iter().zip(SETTINGS_FROM..) {
        add(
            &field_of(setting),
            key(field),
            setting.of(document),
            setting.default,
            setting.source(),
        );
    }
    lines.insert(7, Line::title(2, say!("page-walking-enough")));
    lines.insert(8, Line::words(3, say!("page-walking-places")));
    lines.extend(allowance::lines(document));
    EditorShown {
        name: "walking",
        drawing: None,
        lines,
        profile: None,
    }
}

/// Low, typical and high speed of slower walkers in feet per second; as shipped where `is_shipped` or nothing else is
/// said.
fn slower_of(study: &Study, is_shipped: bool) -> [f64; 3] {
    let own = study.document().settings.overridden_factors.get(SLOWER_ID);
    if let Some(own) = own.filter(|_| !is_shipped) {
        return [own.low, own.typical, own.high];
    }
    study.shipped_factors().get(SLOWER_ID).map_or([0.0; 3], |factor| {
        let spread = factor.spread;
        // As written in the table: the tail of the conversion there and back is cut off.
        [spread.low, spread.typical, spread.high].map(|value| (value / factor.scale * 1e6).round() / 1e6)
    })
}

/// Where the shipped value comes from.
fn source_of_slower(study: &Study, place: usize) -> String {
    use hobnail_core::figures::leaf::{Given, How};
    let given = [Given::Low, Given::Typical, Given::High];
    let factor = study.shipped_factors().get(SLOWER_ID);
    let source = factor.and_then(|factor| {
        let mut sources = factor.sources.iter();
        sources.find(|source| given.get(place).is_some_and(|given| source.gives.contains(given)))
    });
    source.map_or_else(String::new, |source| {
        if source.how == How::FromMemory {
            say!("page-from-memory", source = source.title)
        } else {
            source.title.clone()
        }
    })
}

/// The settings after a line was changed.
pub(super) fn changed(study: &Study, key: Key, change: &Change) -> Result<Settings, String> {
    let document = study.document();
    let units: UnitSystem = document.settings.units;
    let mut after = document.settings.clone();
    match key.field {
        PACE => {
            let pace = pace_field().read(f64::from(after.walking_pace_mm_per_s), change, units)?;
            after.walking_pace_mm_per_s = pace as u32;
        }
        field if field >= allowance::FIELDS_FROM => allowance::change(document, field, change, &mut after)?,
        field if field < SETTINGS_FROM => {
            let place = usize::from(field - SLOWER);
            let mut values = slower_of(study, false);
            if let (Some(field), Some(value)) = (slower_fields().get(place), values.get_mut(place)) {
                *value = field.read(*value, change, units)?;
            }
            let [low, typical, high] = values;
            if !(low <= typical && typical <= high) {
                return Err(refuse(say!("page-walking-out-of-order")));
            }
            after.overridden_factors.remove(SLOWER_ID);
            let shipped = slower_of(study, true);
            if !values
                .iter()
                .zip(shipped)
                .all(|(value, shipped)| quantity::is_same(*value, shipped))
            {
                let own = FactorOverride {
                    low,
                    typical,
                    high,
                    source: say!("page-walking-own-source").to_owned(),
                };
                after.overridden_factors.insert(SLOWER_ID.to_owned(), own);
            }
        }
        field => {
            if let Some(setting) = ALL.get(usize::from(field - SETTINGS_FROM)) {
                let stored = setting.of(document);
                let value = field_of(setting).read(stored, change, units)?;
                after.chosen.remove(setting.id);
                if !quantity::is_same(value, setting.default) {
                    after.chosen.insert(setting.id.to_owned(), value);
                }
            }
        }
    }
    Ok(after)
}
