//! One edit through the study: a vertex dragged, everything brought up to date.
//!
//! Every second face is painted and a center stands in the middle. `study/open` is the same from nothing.

mod common;

use common::plans;
use hobnail_core::plan::{Edit, PlanPoint, Vertex};
use hobnail_core::study::Study;

/// Runs the bench; in the browser it is called by the test program.
pub fn main() {
    for (shape, make) in common::SHAPES {
        for size in [1_000, 10_000, 100_000] {
            let document = plans::plan_of(&make(size));
            common::measure(&format!("study/open/{shape}/{size}"), || {
                Study::open(document.clone()).map(drop)
            });
            let Ok(mut study) = Study::open(document) else { continue };
            let Some((id, street)) = plans::a_street(&study) else {
                continue;
            };
            if study.begin("Drag").is_err() {
                continue;
            }
            let mut step = 0;
            common::measure(&format!("study/drag/{shape}/{size}"), || {
                step += 1;
                let mut moved = street.clone();
                let from = moved.line[0].point;
                moved.line[0] = Vertex::at(PlanPoint::new(from.x_mm + step % 7 * 100, from.y_mm + step % 5 * 100));
                let before = Some(Box::new(hobnail_core::plan::Mark::Street(street.clone())));
                let after = Some(Box::new(hobnail_core::plan::Mark::Street(moved)));
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
    }
}
