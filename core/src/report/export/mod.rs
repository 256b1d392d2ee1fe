//! A plan for other programs: drawings, all that is derived as GeoJSON, every figure as a table.
//!
//! Each export is a pure function of an open plan, seen as it is looked at, and gives text. What a plan file holds is not
//! repeated here: a plan is handed on as its file, and nothing that is exported is read back.
//!
//! What takes longer than a frame is there when it was worked out before ([`Study::work_details`]); else those numbers
//! are left open.

mod csv;
mod dxf;
mod geojson;
mod sheet;
mod svg;

pub use csv::{csv, csv_line};
pub use dxf::dxf;
pub use geojson::geojson;
pub use svg::svg;

use crate::study::Study;

/// A figure, or the row of it at an entry of its first axis; `None` where it can not be worked out.
fn figure(study: &Study, id: &str, row: &str) -> Option<f64> {
    let index = study.graph().index(id)?;
    let values = study.evaluation_for(index);
    let mut cells = 0..values.cell_count(index);
    let cell = cells.find(|cell| {
        let place = values.place(index, *cell);
        place.first().is_none_or(|entry| entry.id == row)
    })?;
    values.cell(index, cell).number()
}
