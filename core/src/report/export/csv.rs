//! Every figure as a table for a spreadsheet: comma-separated values by RFC 4180, one line for each number.
//!
//! Columns, named in the first line and the same in every language: `id`, `at` (the entries of a table's row), `title`,
//! `row` (their titles), `value`, `unit`, `low`, `high`, `basis`, `sources`, `changed_factors`, `why_none`. Values stand
//! in full in the units asked for, not rounded as they are shown; low and high are the range from stated inputs. What is
//! counted, chosen or a factor is there beside what is worked out, told apart by `basis`: `counted`, `chosen`, `factor`,
//! `worked`, `method`. Sources are those of every factor that goes into the line, and where a counting rule is laid down.

use crate::figures::Evaluation;
use crate::figures::graph::{LeafKind, NodeIndex, Operator};
use crate::figures::leaf::LeafValue;
use crate::figures::unit::{System, in_plain_words};
use crate::figures::value::{CellValue, Content};
use crate::study::Study;

/// The columns, in order.
pub const COLUMNS: [&str; 12] = [
    "id",
    "at",
    "title",
    "row",
    "value",
    "unit",
    "low",
    "high",
    "basis",
    "sources",
    "changed_factors",
    "why_none",
];

/// Parts several entries of one field.
const BETWEEN: &str = "; ";

/// Every number of the graph, figures and what they rest on, in working order.
///
/// Cost: the draws of every figure, a second or two.
#[must_use]
pub fn csv(study: &mut Study, system: System) -> String {
    let values = study.evaluation_mut();
    let mut text = csv_line(&COLUMNS);
    let indices: Vec<NodeIndex> = values.graph().indices().collect();
    for index in indices {
        let figure = values.figure_value_with_range(index, system);
        let node = values.graph().node(index);
        let shown = node.unit.shown(system);
        let unit = in_plain_words(shown.many);
        let basis = basis_word(values, index);
        let changed = figure.changed_factors.join(BETWEEN);
        let of_all_factors = (!matches!(node.operator, Operator::Leaf(_))).then(|| sources_below(values, index));
        let mut add = |cell: usize, at: &[String], titles: &[String], held: &CellValue| {
            let number = |value: Option<f64>| value.map_or_else(String::new, |value| (value / shown.scale).to_string());
            let sources = of_all_factors
                .clone()
                .unwrap_or_else(|| sources_of(values, index, Some(cell)));
            text += &csv_line(&[
                &figure.id,
                &at.join(BETWEEN),
                &figure.title,
                &titles.join(BETWEEN),
                &number(held.value),
                &unit,
                &number(held.low),
                &number(held.high),
                basis,
                &sources.join(BETWEEN),
                &changed,
                held.reason.as_deref().unwrap_or_default(),
            ]);
        };
        match &figure.content {
            Content::Single(held) => add(0, &[], &[], held),
            Content::Table { rows, .. } => {
                for (cell, row) in rows.iter().enumerate() {
                    add(cell, &row.at, &row.titles, &row.value);
                }
            }
        }
    }
    text
}

fn basis_word(values: &Evaluation, index: NodeIndex) -> &'static str {
    match values.graph().node(index).operator {
        Operator::Leaf(LeafKind::Counted) => "counted",
        Operator::Leaf(LeafKind::Chosen) => "chosen",
        Operator::Leaf(LeafKind::Factor) => "factor",
        Operator::Method { .. } => "method",
        _ => "worked",
    }
}

/// The sources of every leaf below a figure, each once, in the order of the leaves.
fn sources_below(values: &Evaluation, index: NodeIndex) -> Vec<String> {
    let mut all = Vec::new();
    for leaf in values.leaves_of(index) {
        add_new(&mut all, sources_of(values, leaf, None));
    }
    all
}

/// The sources of one cell of a leaf, or of all its cells.
fn sources_of(values: &Evaluation, leaf: NodeIndex, cell: Option<usize>) -> Vec<String> {
    let mut all = Vec::new();
    let factors = values.leaf(leaf).map_or(&[][..], LeafValue::factors);
    for (_, factor) in factors
        .iter()
        .enumerate()
        .filter(|(at, _)| cell.is_none_or(|cell| cell == *at))
    {
        add_new(&mut all, factor.sources.iter().map(ToString::to_string));
    }
    for axis in &values.graph().node(leaf).axes {
        let axis = values.graph().axis(*axis);
        let place = cell.map(|cell| values.place(leaf, cell));
        let stands_at = |source: usize| {
            let mut held = place.iter().flatten();
            place.is_none() || held.any(|entry| axis.place_of(&entry.id) == Some(source))
        };
        let laid_down = axis.sources.iter().enumerate().filter(|(source, _)| stands_at(*source));
        add_new(&mut all, laid_down.map(|(_, source)| source.clone()));
    }
    all
}

fn add_new(all: &mut Vec<String>, more: impl IntoIterator<Item = String>) {
    for source in more {
        if !source.is_empty() && !all.contains(&source) {
            all.push(source);
        }
    }
}

/// A line of fields by RFC 4180: a field with a comma, a quote or a line's end stands in quotes, its quotes doubled.
///
/// ```
/// use hobnail_core::report::export::csv_line;
/// assert_eq!(csv_line(&["1,5", "a \"b\"", "c"]), "\"1,5\",\"a \"\"b\"\"\",c\r\n");
/// ```
#[must_use]
pub fn csv_line(fields: &[&str]) -> String {
    let mut line = String::new();
    for (place, field) in fields.iter().enumerate() {
        if place > 0 {
            line.push(',');
        }
        if field.contains([',', '"', '\r', '\n']) {
            line.extend(["\"", &field.replace('"', "\"\""), "\""]);
        } else {
            line.push_str(field);
        }
    }
    line.push_str("\r\n");
    line
}
