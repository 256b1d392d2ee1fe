//! One edit through the study: a vertex dragged, everything brought up to date.
//!
//! In the networks every second face is painted and a center stands in the middle; the village is the sample sketch.
//! `study/paint` gives a face another use and its own again; `study/open` is the same from nothing; `study/details` is what is worked out once the drawing rests, on plans of at most
//! [`MOST_WITH_DETAILS`] streets.

mod common;

use common::plans;
use hobnail_core::exchange::plan_file;
use hobnail_core::measures::details::WalkDetails;
use hobnail_core::plan::{Document, Edit, Mark, PlanPoint, Vertex};
use hobnail_core::study::Study;

/// The compact village of the sample sketches.
const VILLAGE: &[u8] = include_bytes!("../../sample-sketches/compact-village.geojson");

/// The largest network whose details are worked out: of larger ones they take minutes.
const MOST_WITH_DETAILS: usize = 10_000;

/// Runs the bench; in the browser it is called by the test program.
pub fn main() {
    run("village", true, || {
        plan_file::read(VILLAGE).ok().map(|opened| opened.document)
    });
    for (shape, make) in common::SHAPES {
        for size in [1_000, 10_000, 100_000] {
            run(&format!("{shape}/{size}"), size <= MOST_WITH_DETAILS, || {
                Some(plans::plan_of(&make(size)))
            });
        }
    }
}

fn run(name: &str, has_details: bool, document: impl Fn() -> Option<Document>) {
    let [open, drag, paint, details] = ["open", "drag", "paint", "details"].map(|what| format!("study/{what}/{name}"));
    if ![&open, &drag, &paint, &details]
        .into_iter()
        .any(|what| common::is_wanted(what))
    {
        return;
    }
    let Some(document) = document() else { return };
    common::measure(&open, || Study::open(document.clone()).map(drop));
    let Ok(mut study) = Study::open(document) else { return };
    if has_details {
        common::measure(&details, || {
            WalkDetails::of(
                &study.seen(),
                study.alternative(),
                study.fabric(),
                study.painted(),
                study.walks(),
            )
        });
    }
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
    let _ended = study.cancel();
    if let Some((id, mark)) = plans::a_use(&study) {
        let other = study.document().building_types.keys().next().copied();
        if study.begin("Paint").is_err() {
            return;
        }
        let mut is_other = false;
        common::measure(&paint, || {
            is_other = !is_other;
            let mut painted = mark.clone();
            if let (true, Some(portion), Some(other)) = (is_other, painted.program.first_mut(), other) {
                portion.building_type = other;
            }
            let alternative = study.alternative();
            let before = Some(Box::new(Mark::Use(mark.clone())));
            let after = Some(Box::new(Mark::Use(painted)));
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
    common::print_peak_memory(&format!("study/{name}"));
}
