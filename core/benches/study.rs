//! One edit through the study: a vertex dragged, everything brought up to date.
//!
//! In the networks every second face is painted and a center stands in the middle; the village is the sample sketch.
//! `study/open` is the same from nothing.

mod common;

use common::plans;
use hobnail_core::exchange::plan_file;
use hobnail_core::plan::{Document, Edit, Mark, PlanPoint, Vertex};
use hobnail_core::study::Study;

/// The compact village of the sample sketches.
const VILLAGE: &[u8] = include_bytes!("../../sample-sketches/compact-village.geojson");

/// Runs the bench; in the browser it is called by the test program.
pub fn main() {
    run("village", || {
        plan_file::read(VILLAGE).ok().map(|opened| opened.document)
    });
    for (shape, make) in common::SHAPES {
        for size in [1_000, 10_000, 100_000] {
            run(&format!("{shape}/{size}"), || Some(plans::plan_of(&make(size))));
        }
    }
}

fn run(name: &str, document: impl Fn() -> Option<Document>) {
    let [open, drag] = ["open", "drag"].map(|what| format!("study/{what}/{name}"));
    if !common::is_wanted(&open) && !common::is_wanted(&drag) {
        return;
    }
    let Some(document) = document() else { return };
    common::measure(&open, || Study::open(document.clone()).map(drop));
    let Ok(mut study) = Study::open(document) else { return };
    let Some((id, street)) = plans::a_street(&study) else {
        return;
    };
    if study.begin("Drag").is_err() {
        return;
    }
    let mut step = 0;
    common::measure(&drag, || {
        step += 1;
        let mut moved = street.clone();
        let from = moved.line[0].point;
        moved.line[0] = Vertex::at(PlanPoint::new(from.x_mm + step % 7 * 100, from.y_mm + step % 5 * 100));
        let before = Some(Box::new(Mark::Street(street.clone())));
        let after = Some(Box::new(Mark::Street(moved)));
        let alternative = study.alternative();
        study
            .change(vec![Edit::Mark {
                alternative,
                id,
                before,
                after,
            }])
            .is_ok()
    });
}
