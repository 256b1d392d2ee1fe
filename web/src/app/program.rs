//! The typed program, line by line: what is asked, what is drawn of it, what is left.

use hobnail_core::figures::value::{CellValue, Content};
use hobnail_core::measures::palette::type_entry_id;
use hobnail_core::plan::document::{Target, TargetKind};
use hobnail_core::study::Study;
use hobnail_core::study::first_level::system;
use hobnail_core::{message, say};

use super::fields::{Field, FieldShown, Unit, Value};
use super::words::Words;

/// Kinds of targets but homes of one type: the last part of the ids of their figures, and words.
const KINDS: [(TargetKind, &str, Words); 6] = [
    (TargetKind::Homes, "homes", message!("page-program-homes")),
    (
        TargetKind::ShopFloorM2,
        "shop_floor",
        message!("page-program-shop-floor"),
    ),
    (
        TargetKind::WorkFloorM2,
        "work_floor",
        message!("page-program-work-floor"),
    ),
    (
        TargetKind::SchoolSeats,
        "school_seats",
        message!("page-program-school-seats"),
    ),
    (TargetKind::ParkLandM2, "park_land", message!("page-program-park-land")),
    (TargetKind::ParkingSpaces, "parking", message!("page-program-parking")),
];

/// What stands for a number that is not known.
const UNKNOWN: &str = "—";

/// What a target is stored in.
#[must_use]
pub const fn unit_of(what: TargetKind) -> Unit {
    match what {
        TargetKind::ShopFloorM2 | TargetKind::WorkFloorM2 => Unit::Floor,
        TargetKind::ParkLandM2 => Unit::Land,
        _ => Unit::Count,
    }
}

/// The lines of the program: homes in all, homes of each building type that holds any, and the other kinds.
#[must_use]
pub fn lines(study: &Study) -> Vec<FieldShown> {
    let document = study.document();
    let line = |what: TargetKind, words: &str, drawn: String, left: String| {
        let asked = document.program.iter().filter(|target| target.what == what);
        let asked: u64 = asked.map(|target| u64::from(target.asked)).sum();
        let unit = unit_of(what);
        let value = if document.program.iter().any(|target| target.what == what) {
            unit.number(asked as f64, document.settings.units)
        } else {
            Value::Number(String::new(), unit.shown(document.settings.units).1)
        };
        FieldShown {
            field: Field::Asked(what),
            words: words.to_owned(),
            value,
            beside: [drawn, left],
        }
    };
    let mut lines = Vec::new();
    for (what, id, words) in KINDS {
        let drawn = shown(study, &["program.drawn.", id].concat(), None);
        let left = shown(study, &["program.left.", id].concat(), None);
        lines.push(line(what, words.words(), drawn, left));
        if what != TargetKind::Homes {
            continue;
        }
        for (id, held) in document
            .building_types
            .iter()
            .filter(|(_, held)| held.homes_per_lot > 0)
        {
            let at = Some(type_entry_id(*id));
            let drawn = shown(study, "program.drawn.homes_of", at.as_deref());
            let left = shown(study, "program.left.homes_of", at.as_deref());
            lines.push(line(TargetKind::HomesOf(*id), &held.name, drawn, left));
        }
    }
    lines
}

/// The program with one line typed anew, or left out.
#[must_use]
pub fn with(program: &[Target], what: TargetKind, asked: Option<u32>) -> Vec<Target> {
    let place = program.iter().position(|line| line.what == what);
    let mut lines: Vec<Target> = program.iter().filter(|line| line.what != what).copied().collect();
    if let Some(asked) = asked {
        let place = place.unwrap_or(lines.len()).min(lines.len());
        lines.insert(place, Target { what, asked });
    }
    lines
}

/// A figure as shown, of one entry where it is a table; what is below zero is said to be beyond.
fn shown(study: &Study, figure: &str, entry: Option<&str>) -> String {
    let evaluation = study.evaluation();
    let Some(index) = evaluation.graph().index(figure) else {
        return UNKNOWN.to_owned();
    };
    let figure = evaluation.figure_value(index, system(study.document()));
    let cell: Option<CellValue> = match figure.content {
        Content::Single(cell) => Some(cell),
        Content::Table { rows, .. } => rows
            .into_iter()
            .find(|row| row.at.first().map(String::as_str) == entry)
            .map(|row| row.value),
    };
    let Some(cell) = cell.filter(|cell| cell.value.is_some()) else {
        return if entry.is_some() {
            String::new()
        } else {
            UNKNOWN.to_owned()
        };
    };
    match cell.shown.strip_prefix('−').or_else(|| cell.shown.strip_prefix('-')) {
        Some(beyond) => say!("page-program-beyond", number = beyond),
        None => cell.shown,
    }
}
