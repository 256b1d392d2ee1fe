//! What a fence or a property line asks of the lots beside it, as fields.

use hobnail_core::plan::Beside;
use hobnail_core::plan::document::UnitSystem;

use super::{Field, FieldShown, Unit, Value};

/// The most stories that can be asked for.
const MOST_STORIES: f64 = 60.0;

/// Most stories, how far buildings keep away, and how near a lot stands beside the line.
pub(super) fn fields(beside: Option<Beside>, units: UnitSystem) -> [FieldShown; 3] {
    let held = beside.unwrap_or_default();
    let perhaps = |unit: Unit, stored: Option<u32>| {
        let nothing = Value::Number(String::new(), unit.shown(units).1);
        stored.map_or(nothing, |stored| unit.number(f64::from(stored), units))
    };
    [
        Field::StoriesBeside.shown(perhaps(Unit::Count, held.stories.map(u32::from))),
        Field::ClearBeside.shown(perhaps(Unit::Length, held.clear_mm)),
        Field::ReachBeside.shown(perhaps(Unit::Length, Some(held.reach_mm))),
    ]
}

/// Puts one of them. What says no more than the usual is nothing said. `None` where the text says nothing legal.
pub(super) fn put(beside: &mut Option<Beside>, field: Field, text: &str, units: UnitSystem) -> Option<()> {
    let mut held = beside.unwrap_or_default();
    let is_empty = text.trim().is_empty();
    let length = || Some(Unit::Length.read(text, units)? as u32);
    match field {
        Field::StoriesBeside if is_empty => held.stories = None,
        Field::StoriesBeside => {
            let stories = Unit::Count.read(text, units)?;
            held.stories = Some((1.0..=MOST_STORIES).contains(&stories).then_some(stories as u8)?);
        }
        Field::ClearBeside if is_empty => held.clear_mm = None,
        Field::ClearBeside => held.clear_mm = Some(length()?),
        Field::ReachBeside if is_empty => held.reach_mm = Beside::USUAL_REACH_MM,
        Field::ReachBeside => held.reach_mm = length()?,
        _ => return None,
    }
    *beside = Some(held).filter(|held| *held != Beside::default());
    Some(())
}
