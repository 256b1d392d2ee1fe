//! Draws the sample sketches into `sample-sketches/`, or into the folder given.
//!
//! The same program draws the same bytes; a test holds the files to it. Run from the top folder:
//! `cargo run --example draw_samples`.

mod scenario;

use std::error::Error;
use std::path::PathBuf;

use hobnail_core::exchange::plan_file;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args_os().nth(1).map_or_else(
        || PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../sample-sketches")),
        PathBuf::from,
    );
    for sample in scenario::samples()? {
        let path = folder.join(sample.name).with_extension("geojson");
        std::fs::write(&path, plan_file::write(&sample.document)?)
            .map_err(|why| format!("{}: {why}", path.display()))?;
    }
    Ok(())
}
