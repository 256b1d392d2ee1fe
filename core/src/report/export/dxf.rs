//! The drawing for drafting programs: an ASCII DXF file of version AC1015, with the layers of the sheet.
//!
//! Source: "DXF Reference", Autodesk, for version AC1015 (from memory); every sample is read and audited without errors by
//! ezdxf, an independent reader (`tests/fixtures/exports/`). A unit is a meter or an international foot, as the header's
//! `$INSUNITS` says. Center lines keep their arcs; everything else is outlines as straight as the plan measures them; contours of the ground lie at their heights.
//! Nothing is cut off, contours and streets around the site as little as the site: a surveyor goes on from the whole of it,
//! and clips it by hand where that is wanted. On the paper of [`svg`](super::svg()) all of it ends some way around the site.
//! Land by use and buildings are filled too, with the pale and dark colors of the table of colors.
//!
//! Written here rather than by a library: half a dozen kinds of entities are needed, all of them written the same way, while the library
//! there is (crate `dxf`) carries every entity of twenty versions with readers, pictures and identifiers made by chance.

mod frame;
mod writer;

use super::sheet::{Item, Sheet};
use super::svg::edges_of_band;
use crate::figures::unit::System;
use crate::say;
use crate::study::Study;
use writer::{Vertex, Writer};

/// Units of the drawing by the system of units: its number for the header, and meters in one.
const fn unit(system: System) -> (u32, f64) {
    match system {
        System::Metric => (6, 1.0),
        System::Customary => (2, 0.3048),
    }
}

/// The drawing of an open plan, with type sized for one to `scale`, in meters or feet.
///
/// Cost: that of the union of the rights-of-way, and the length of the text: about two megabytes for a village of 700 homes.
#[must_use]
pub fn dxf(study: &Study, scale: f64, system: System) -> String {
    let sheet = Sheet::of(study, scale, system);
    let (code, unit_m) = unit(system);
    let [(west, south), (east, north)] = sheet.bounds().unwrap_or([(0.0, 0.0), (100.0, 100.0)]);
    let mut out = Writer::new(unit_m);
    // What is filled lies below all lines.
    for group in sheet.groups.iter().filter(|group| group.layer.layer().fill > 0) {
        for item in &group.items {
            if let Item::Rings(rings) = item {
                out.hatch(group.layer.layer(), rings);
            }
        }
    }
    for group in &sheet.groups {
        let layer = group.layer.layer().id;
        group.items.iter().for_each(|item| add(layer, item, scale, &mut out));
    }
    let line_m = 4.2 * scale / 1e3;
    let units = match system {
        System::Metric => say!("export-units-meters"),
        System::Customary => say!("export-units-feet"),
    };
    let heading = &study.document().heading.name;
    let below = [heading.as_str(), units, say!("export-note"), &sheet.contours];
    for (line, text) in (1_u32..).zip(below).filter(|(_, text)| !text.is_empty()) {
        let at = (west, south - line_m * f64::from(line + 1));
        out.text(writer::SHEET, at, text, 2.6 * scale / 1e3, 0.0, false);
    }
    frame::around(out, code, unit_m, [(west, south), (east, north)])
}

fn add(layer: &str, item: &Item, scale: f64, out: &mut Writer) {
    let straight = |line: &[(f64, f64)]| -> Vec<Vertex> { line.iter().map(|(x, y)| (*x, *y, 0.0)).collect() };
    match item {
        Item::Rings(rings) => rings
            .iter()
            .for_each(|ring| out.polyline(layer, &straight(ring), true, None)),
        Item::Arcs(turns) => out.polyline(layer, turns, false, None),
        Item::Line(line) => out.polyline(layer, &straight(line), false, None),
        Item::Contour((line, is_closed), height) => out.polyline(layer, &straight(line), *is_closed, Some(*height)),
        Item::Band(line, width_m) => {
            for edge in edges_of_band(line, *width_m) {
                out.polyline(layer, &straight(&edge), false, None);
            }
        }
        Item::Circle(at, radius_m) => out.circle(layer, *at, *radius_m),
        Item::Words(words) => {
            let height_m = words.size_mm * 0.72 * scale / 1e3;
            out.text(layer, words.at, &words.text, height_m, words.angle_rad, true);
        }
    }
}
