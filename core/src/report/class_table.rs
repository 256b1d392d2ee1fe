//! `hobnail measure DIR --table`: the first-level figures of many plan files, for a teacher with a class's forty files.
//!
//! One line for each alternative of each file, the figures of the column beside the drawing across, without ranges, in
//! full in one system of units. A file that can not be opened has a line that says so. Faults, notes and reasons why a
//! figure can not be worked out stand in columns of their own.

use crate::exchange::plan_file;
use crate::figures::graph::Node;
use crate::figures::unit::{System, in_plain_words};
use crate::figures::value::{CellValue, Content};
use crate::measures;
use crate::plan::validate::validate;
use crate::report::export::csv_line;
use crate::say;
use crate::study::Study;
use crate::study::first_level::{FIRST_LEVEL, first_level, system};

/// Parts several entries of one field.
const BETWEEN: &str = "; ";

/// A table as it grows.
#[derive(Debug, Default)]
pub struct ClassTable {
    rows: Vec<Row>,
    system: Option<System>,
}

#[derive(Debug, Default)]
struct Row {
    /// File, plan, alternative, and the table of people that drew it.
    names: [String; 4],
    /// In coherent units, in the order of the columns; empty for a file that can not be opened.
    values: Vec<Option<f64>>,
    reasons: Vec<String>,
    notes: Vec<String>,
    faults: Vec<String>,
}

impl ClassTable {
    /// An empty table in a system of units; without one in that of the first plan that opens.
    #[must_use]
    pub const fn new(system: Option<System>) -> Self {
        Self {
            rows: Vec::new(),
            system,
        }
    }

    /// Adds a file: its bytes, or why there are none. Cost: the plan measured once for each alternative.
    pub fn add(&mut self, file: &str, bytes: Result<&[u8], String>) {
        let unopened = |fault: String| Row {
            names: [file.to_owned(), String::new(), String::new(), String::new()],
            faults: vec![fault],
            ..Row::default()
        };
        let opened = bytes.and_then(|bytes| plan_file::read(bytes).map_err(|refusal| refusal.to_string()));
        let opened = match opened {
            Ok(opened) => opened,
            Err(fault) => return self.rows.push(unopened(fault)),
        };
        let mut faults: Vec<String> = opened.faults.iter().map(ToString::to_string).collect();
        faults.extend(validate(&opened.document).iter().map(ToString::to_string));
        let mut study = match Study::open(opened.document) {
            Ok(study) => study,
            Err(fault) => return self.rows.push(unopened(fault.to_string())),
        };
        self.system.get_or_insert(system(study.document()));
        let held = study.document().alternatives.iter();
        let alternatives: Vec<_> = held
            .map(|(id, held)| (*id, held.name.clone(), held.table.clone()))
            .collect();
        for (id, name, table) in alternatives {
            study.show_alternative(id);
            let mut row = Row {
                names: [file.to_owned(), study.document().heading.name.clone(), name, table],
                notes: study.notes().iter().map(ToString::to_string).collect(),
                faults: faults.clone(),
                ..Row::default()
            };
            row.faults.extend(study.override_faults().iter().cloned());
            for figure in first_level(&study) {
                for held in cells(&figure.content) {
                    row.values.push(held.value);
                    if let Some(reason) = &held.reason {
                        row.reasons.push([&figure.title, ": ", reason].concat());
                    }
                }
            }
            self.rows.push(row);
        }
    }

    /// How many lines tell of something to be fixed, files that can not be opened among them.
    #[must_use]
    pub fn faulty(&self) -> usize {
        self.rows.iter().filter(|row| !row.faults.is_empty()).count()
    }

    /// The table by RFC 4180, the names of the columns first.
    ///
    /// # Errors
    /// Why the program's own figures can not be built; a test holds that they can.
    pub fn to_csv(&self) -> Result<String, String> {
        let graph = measures::graph().map_err(|faults| {
            let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
            faults.join(BETWEEN)
        })?;
        let system = self.system.unwrap_or_default();
        let mut columns: Vec<(String, f64)> = Vec::new();
        for node in FIRST_LEVEL
            .iter()
            .filter_map(|id| graph.index(id))
            .map(|index| graph.node(index))
        {
            let shown = node.unit.shown(system);
            let mut add = |title: String| {
                let unit = in_plain_words(shown.many);
                let named = if unit.is_empty() {
                    title
                } else {
                    [&title, " (", &unit, ")"].concat()
                };
                columns.push((named, shown.scale));
            };
            match entries(&graph, node) {
                Some(entries) => entries.for_each(|entry| add([&node.title, ": ", entry].concat())),
                None => add(node.title.clone()),
            }
        }
        let before = [
            say!("report-table-file"),
            say!("report-table-plan"),
            say!("report-table-alternative"),
            say!("report-table-people"),
        ];
        let after = [
            say!("report-table-unknown"),
            say!("report-table-notes"),
            say!("report-table-faults"),
        ];
        let names = columns.iter().map(|(name, _)| name.as_str());
        let header: Vec<&str> = before.into_iter().chain(names).chain(after).collect();
        let mut text = csv_line(&header);
        for row in &self.rows {
            let mut fields = row.names.to_vec();
            for (place, (_, scale)) in columns.iter().enumerate() {
                let value = row.values.get(place).copied().flatten();
                fields.push(value.map_or_else(String::new, |value| (value / scale).to_string()));
            }
            fields.extend([&row.reasons, &row.notes, &row.faults].map(|list| list.join(BETWEEN)));
            let fields: Vec<&str> = fields.iter().map(String::as_str).collect();
            text += &csv_line(&fields);
        }
        Ok(text)
    }
}

fn cells(content: &Content) -> Vec<&CellValue> {
    match content {
        Content::Single(held) => vec![held],
        Content::Table { rows, .. } => rows.iter().map(|row| &row.value).collect(),
    }
}

/// The titles of the entries of a table over one fixed axis; `None` for a single number.
fn entries<'a>(graph: &'a crate::figures::graph::Graph, node: &Node) -> Option<impl Iterator<Item = &'a str>> {
    let axis = graph.axis(*node.axes.first()?);
    Some(axis.fixed.iter().flatten().map(|entry| entry.title.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A column of the table is the same entry for every plan.
    #[test]
    fn first_level_tables_have_one_fixed_axis() {
        let graph = measures::graph().unwrap();
        for id in FIRST_LEVEL {
            let axes = &graph.node(graph.index(id).unwrap()).axes;
            assert!(axes.len() <= 1, "{id}");
            assert!(axes.iter().all(|axis| graph.axis(*axis).fixed.is_some()), "{id}");
        }
    }

    #[test]
    fn a_file_that_can_not_be_opened_has_a_line() {
        let mut table = ClassTable::new(None);
        table.add("broken.geojson", Ok(b"{"));
        table.add("locked.geojson", Err("may not be read".to_owned()));
        assert_eq!(table.faulty(), 2);
        let text = table.to_csv().unwrap();
        let lines: Vec<&str> = text.split_terminator("\r\n").collect();
        assert_eq!(lines.len(), 3);
        assert!(lines[1].starts_with("broken.geojson,"), "{}", lines[1]);
        assert!(lines[2].ends_with(",may not be read"), "{}", lines[2]);
    }
}
