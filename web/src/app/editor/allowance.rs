//! Settings beside those of walking: what a town's rule on homes takes off and allows, how far apart street trees stand,
//! and where classes of slope end.

use hobnail_core::measures::allowance::{AllowanceInputs, HOMES_BY_LAND, share_id};
use hobnail_core::measures::land::constraint_kinds;
use hobnail_core::measures::slopes::{BORDERS, SHIPPED, STEEPEST, THOUSANDTHS, borders};
use hobnail_core::measures::streets::street_sides::{TREE_SPACING, TREE_SPACING_M};
use hobnail_core::plan::Document;
use hobnail_core::plan::document::Settings;
use hobnail_core::say;

use super::Change;
use super::edits::refuse;
use super::lines::{Key, Line, Part};
use super::quantity::{self, Bounded};
use crate::app::words::sentence_case;

/// Fields: the spacing of trees, homes by land, a share for each kind of constraint, then the borders of slope classes.
pub const FIELDS_FROM: u8 = 100;
const TREES: u8 = FIELDS_FROM;
const HOMES: u8 = FIELDS_FROM + 1;
const SHARES_FROM: u8 = FIELDS_FROM + 2;

/// A share of land is taken off by rules that were read for these kinds; for the others it is common practice.
const READ: [&str; 3] = ["wetland", "floodplain", "steep"];

/// A setting: its id, its field, what it is now, what it is unless chosen, and where that comes from.
struct Setting {
    id: String,
    field: Bounded,
    stored: f64,
    default: f64,
    source: &'static str,
}

fn setting(document: &Document, field: u8) -> Option<Setting> {
    let held = AllowanceInputs::of(document);
    let field_of = |label, quantity, bounds| Bounded {
        label,
        quantity,
        bounds,
    };
    Some(match field {
        TREES => Setting {
            id: TREE_SPACING.to_owned(),
            field: field_of(say!("page-tree-spacing"), &quantity::SETTING_LENGTH, [2.0, 100.0]),
            stored: document
                .settings
                .chosen
                .get(TREE_SPACING)
                .copied()
                .unwrap_or(TREE_SPACING_M),
            default: TREE_SPACING_M,
            source: say!("page-common-practice"),
        },
        // A home to the square meter is more than any rule allows.
        HOMES => Setting {
            id: HOMES_BY_LAND.to_owned(),
            field: field_of(
                say!("measures-allowed-by-land"),
                &quantity::SETTING_HOMES_BY_LAND,
                [0.0, 1.0],
            ),
            stored: held.homes_by_land.unwrap_or(0.0),
            default: 0.0,
            source: say!("page-allowance-none"),
        },
        _ => {
            let place = usize::from(field.checked_sub(SHARES_FROM)?);
            let kinds = constraint_kinds();
            let Some((kind, label)) = kinds.get(place).copied() else {
                let place = place - kinds.len();
                return Some(Setting {
                    id: (*BORDERS.get(place)?).to_owned(),
                    field: field_of(say!("heights-border"), &quantity::GRADE, [0.5, percent(STEEPEST)]),
                    stored: percent(borders(document)[place]),
                    default: percent(SHIPPED[place]),
                    source: say!("heights-border-source"),
                });
            };
            Setting {
                id: share_id(kind),
                field: field_of(label, &quantity::SETTING_SHARE, [0.0, 1.0]),
                stored: *held.shares.get(place)?,
                default: *AllowanceInputs::default().shares.get(place)?,
                source: if READ.contains(&kind) {
                    say!("page-allowance-source")
                } else {
                    say!("page-common-practice")
                },
            }
        }
    })
}

/// A slope in thousandths of a percent in percent.
fn percent(thousandths: i32) -> f64 {
    f64::from(thousandths) / f64::from(THOUSANDTHS)
}

/// The lines of these settings.
pub(super) fn lines(document: &Document) -> Vec<Line> {
    let units = document.settings.units;
    let slopes_from = SHARES_FROM + constraint_kinds().len() as u8;
    let mut lines = Vec::new();
    let mut field = FIELDS_FROM;
    while let Some(setting) = setting(document, field) {
        match field {
            TREES => lines.push(Line::title(4, say!("page-trees"))),
            HOMES => {
                lines.push(Line::title(5, say!("page-allowance")));
                lines.push(Line::words(6, say!("page-allowance-about")));
            }
            SHARES_FROM => lines.push(Line::words(7, say!("page-allowance-shares"))),
            _ if field == slopes_from => {
                lines.push(Line::title(8, say!("heights-map")));
                lines.push(Line::words(9, say!("heights-border-about")));
            }
            _ => {}
        }
        let default = setting.field.quantity.words(setting.default, units);
        let hint = say!("page-default", value = default, source = setting.source);
        let key = Key::new(Part::Walking, 0, field);
        let mut line = Line::number(key, &setting.field, setting.stored, units).with_hint(hint);
        line.label = sentence_case(&line.label);
        if let Some(place) = field.checked_sub(slopes_from) {
            line.label = say!("heights-border-of", number = place + 1);
        }
        lines.push(line);
        field += 1;
    }
    lines
}

/// Brings a change of one of these lines into the settings; what is as shipped is no choice.
pub(super) fn change(document: &Document, field: u8, change: &Change, after: &mut Settings) -> Result<(), String> {
    if let Some(setting) = setting(document, field) {
        let value = setting.field.read(setting.stored, change, document.settings.units)?;
        let slopes_from = SHARES_FROM + constraint_kinds().len() as u8;
        if let Some(place) = field.checked_sub(slopes_from) {
            // Each class ends at a steeper slope than the one before.
            let mut borders = borders(document).map(percent);
            borders[usize::from(place)] = value;
            if borders.windows(2).any(|pair| pair[0] >= pair[1]) {
                return Err(refuse(say!("heights-border-refused")));
            }
        }
        after.chosen.remove(&setting.id);
        if !quantity::is_same(value, setting.default) {
            after.chosen.insert(setting.id, value);
        }
    }
    Ok(())
}
