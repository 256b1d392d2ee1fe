//! A plan as the text of an address, and back; and how long the text is beside the plan file.
//!
//! The village is the sample sketch; `copies` is the village with nine more alternatives that are copies of its own;
//! `streets` are networks without names and uses.

mod common;

use common::plans;
use hobnail_core::exchange::{address, plan_file};
use hobnail_core::plan::{AlternativeId, Document};

/// The compact village of the sample sketches.
const VILLAGE: &[u8] = include_bytes!("../../sample-sketches/compact-village.geojson");

/// Runs the bench; in the browser it is called by the test program.
pub fn main() {
    let village = || plan_file::read(VILLAGE).ok().map(|opened| opened.document);
    run("village", village);
    run("copies", || {
        let mut document = village()?;
        let first = document.alternatives.values().next()?.clone();
        document
            .alternatives
            .extend((1..10).map(|id| (AlternativeId(id), first.clone())));
        Some(document)
    });
    for size in [100, 1_000] {
        run(&format!("streets/{size}"), || Some(plans::plan_of(&common::grid(size))));
    }
}

fn run(name: &str, document: impl Fn() -> Option<Document>) {
    let [encode, decode] = ["encode", "decode"].map(|what| format!("address/{what}/{name}"));
    if ![&encode, &decode].into_iter().any(|what| common::is_wanted(what)) {
        return;
    }
    let Some(document) = document() else { return };
    let Ok(told) = address::encode(&document) else { return };
    let file = plan_file::write(&document).map_or(0, |file| file.len());
    common::print_length(&format!("address/length/{name}"), told.text.len(), file);
    common::measure(&encode, || address::encode(&document).is_ok());
    common::measure(&decode, || address::decode(&told.text).is_ok());
}
