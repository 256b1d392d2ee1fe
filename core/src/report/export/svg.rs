//! The drawing as a picture at true scale: Scalable Vector Graphics, for drafting programs and for print.
//!
//! Width and height are millimeters of paper and so is a unit of the picture, so that 100 m are 100 mm at 1:1000. North is
//! up. Of a plan with a site what lies around it is drawn for 80 m, then cut off. Every layer is a group whose id is the layer's name, with a title for people; the last group, `sheet`, holds the
//! heading, scale bar, north arrow, legend, and what the drawing may be used for. Nothing outside the file is asked for:
//! type is named and not carried along.

mod furniture;
mod writer;

use super::sheet::{LayerId, Sheet, Turn, frame_of};
use crate::figures::unit::System;
use crate::report::drawing::offset::beside;
use crate::study::Study;
use writer::{Frame, Writer};

/// Paper around the drawing, in millimeters.
const MARGIN_MM: f64 = 12.0;

/// The drawing of an open plan at one to `scale`, with lengths in a system of units.
///
/// Cost: that of the union of the rights-of-way, and the length of the text: about half a megabyte for a village of 700 homes.
#[must_use]
pub fn svg(study: &Study, scale: f64, system: System) -> String {
    let sheet = Sheet::of(study, scale, system);
    let [(west, south), (east, north)] = frame_of(study, &sheet);
    let mm_per_m = 1e3 / scale;
    let frame = Frame {
        origin_m: (west, north),
        mm_per_m,
        margin_mm: MARGIN_MM,
    };
    let (width_mm, height_mm) = ((east - west) * mm_per_m, (north - south) * mm_per_m);
    let mut out = Writer::new(frame);
    out.open_frame((width_mm, height_mm), MARGIN_MM);
    let mut open: Option<LayerId> = None;
    for group in &sheet.groups {
        if open != Some(group.layer) {
            if open.is_some() {
                out.close("g");
            }
            let layer = group.layer.layer();
            out.open_layer(layer.id, layer.title.words());
            open = Some(group.layer);
        }
        out.open_look(&group.look);
        for item in &group.items {
            out.item(item);
        }
        out.close("g");
        if let Some((hatch, color)) = group.look.hatch {
            out.open_hatch(hatch, color);
            for item in &group.items {
                out.item(item);
            }
            out.close("g");
        }
    }
    if open.is_some() {
        out.close("g");
    }
    out.close("g");
    let size_mm = furniture::add(study, &sheet, scale, system, (width_mm, height_mm), &mut out);
    out.done(size_mm)
}

/// The edges of a strip along a line.
pub(super) fn edges_of_band(line: &[(f64, f64)], width_m: f64) -> [Vec<(f64, f64)>; 2] {
    [beside(line, width_m / 2.0), beside(line, -width_m / 2.0)]
}

/// The radius of an arc between two corners.
pub(super) fn radius(from: Turn, to: Turn) -> f64 {
    let chord = crate::number::length(to.0 - from.0, to.1 - from.1);
    chord * (1.0 + from.2 * from.2) / (4.0 * from.2.abs())
}
