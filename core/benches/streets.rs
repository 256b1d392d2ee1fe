//! Counting streets and blocks on a fabric that stands: lengths, nodes by every rule, dead ends, ways in and out, frontage,
//! blocks and how they lie.
//!
//! The village is the sample sketch; in the networks every second face is painted.

mod common;

use common::plans;
use hobnail_core::exchange::plan_file;
use hobnail_core::measures::streets::StreetInputs;
use hobnail_core::plan::Document;
use hobnail_core::study::Study;

/// The compact village of the sample sketches.
const VILLAGE: &[u8] = include_bytes!("../../sample-sketches/compact-village.geojson");

/// Runs the bench; in the browser it is called by the test program.
pub fn main() {
    run("village", || {
        plan_file::read(VILLAGE).ok().map(|opened| opened.document)
    });
    for (shape, make) in common::SHAPES {
        for size in [300, 1_000, 10_000] {
            run(&format!("{shape}/{size}"), || Some(plans::plan_of(&make(size))));
        }
    }
}

fn run(name: &str, document: impl Fn() -> Option<Document>) {
    let id = format!("streets/count/{name}");
    if !common::is_wanted(&id) {
        return;
    }
    let Some(study) = document().and_then(|document| Study::open(document).ok()) else {
        return;
    };
    let (document, alternative) = (study.document(), study.alternative());
    common::measure(&id, || {
        StreetInputs::of(document, alternative, study.fabric(), study.painted())
    });
}
