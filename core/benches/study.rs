//! One edit through the study: a vertex dragged, everything brought up to date.
//!
//! In the networks every second face is painted and a center stands in the middle; the village is the sample sketch.
//! `study/paint` gives a face another use and its own again; `study/open` is the same from nothing; `study/details` is
//! what is worked out once the drawing rests, on plans of at most [`MOST_WITH_DETAILS`] streets.

mod common;

use common::plans;
use hobnail_core::exchange::plan_file;
use hobnail_core::measures::details::WalkDetails;
use hobnail_core::plan::{Document, Edit, Mark, MarkId, PlanPoint, Vertex};
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
    run("town/10000", true, || Some(plans::town_of(&common::grid(10_000))));
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
    if let Some((id, street)) = plans::a_street(&study) {
        measure_gesture(&drag, &mut study, id, Mark::Street(street.clone()), |step| {
            let mut moved = street.clone();
            let from = moved.line[0].point;
            moved.line[0] = Vertex::at(PlanPoint::new(from.x_mm + step % 7 * 100, from.y_mm + step % 5 * 100));
            Mark::Street(moved)
        });
    }
    let other = study.document().building_types.keys().next().copied();
    if let (Some((id, held)), Some(other)) = (plans::a_use(&study), other) {
        measure_gesture(&paint, &mut study, id, Mark::Use(held.clone()), |step| {
            let mut painted = held.clone();
            if let (1, Some(portion)) = (step % 2, painted.program.first_mut()) {
                portion.building_type = other;
            }
            Mark::Use(painted)
        });
    }
    common::print_peak_memory(&format!("study/{name}"));
}

/// One gesture on a mark, given up at its end; `after` says what the mark is at each step, counted from 1.
fn measure_gesture(name: &str, study: &mut Study, id: MarkId, mark: Mark, after: impl Fn(i32) -> Mark) {
    if study.begin("Bench").is_err() {
        return;
    }
    let (alternative, before) = (study.alternative(), Some(Box::new(mark)));
    let mut step = 0;
    common::measure(name, || {
        step += 1;
        let edit = Edit::Mark {
            alternative,
            id,
            before: before.clone(),
            after: Some(Box::new(after(step))),
        };
        study.change(vec![edit]).is_ok()
    });
    let _ended = study.cancel();
}
