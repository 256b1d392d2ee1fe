//! Opening extracts of some size step by step, as the worker does: megabytes a second and the most memory held, beside a
//! bare loop over the same bytes by the library that the reader stands on.
//!
//! Extracts are made by a seeded generator ([`extracts`]): OpenStreetMap as XML and PBF, and GeoJSON, of 5, 50 and 200 MB.
//! A word picks those of whose id it is a run of whole parts: `cargo bench --package hobnail_readers --bench opening -- osm_xml/50`.
//! A line says `id nanoseconds`, what follows it are the same times as ratios.
#![allow(clippy::print_stdout, reason = "a bench prints what it measured")]
#![allow(clippy::expect_used, reason = "what fails here is the bench, not a reader")]
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

mod extracts;

#[path = "../../../tests/fuzz/memory.rs"]
mod memory;

use std::hint::black_box;
use std::time::Instant;

use hobnail_readers::options::Options;
use hobnail_readers::{Progress, Reader};
use quick_xml::events::Event;
use serde::de::IgnoredAny;

/// Megabytes of an extract, and how often it is opened.
const SIZES: [(usize, usize); 3] = [(5, 5), (50, 3), (200, 1)];

/// A format: its name, what makes an extract of so many bytes, and the bare loop over one, which counts what it meets.
struct Format {
    name: &'static str,
    file: &'static str,
    make: fn(usize) -> Vec<u8>,
    bare: fn(&[u8]) -> u64,
    /// A larger extract holds more positions than the readers keep.
    whole_bytes: usize,
}

const FORMATS: [Format; 3] = [
    Format {
        name: "osm_xml",
        file: "extract.osm",
        make: extracts::xml,
        bare: bare_xml,
        whole_bytes: 200_000_000,
    },
    Format {
        name: "osm_pbf",
        file: "extract.osm.pbf",
        make: extracts::pbf,
        bare: bare_pbf,
        whole_bytes: 5_000_000,
    },
    Format {
        name: "geojson",
        file: "extract.geojson",
        make: extracts::geojson,
        bare: bare_geojson,
        whole_bytes: 50_000_000,
    },
];

fn main() {
    let wanted = std::env::args().skip(1).find(|argument| !argument.starts_with("--"));
    for (megabytes, runs) in SIZES {
        for format in &FORMATS {
            let id = format!("opening/{}/{megabytes}", format.name);
            let is_part = |wanted: &String| format!("/{id}/").contains(&format!("/{wanted}/"));
            if wanted.as_ref().is_none_or(is_part) {
                measure(&id, format, megabytes * 1_000_000, runs);
            }
        }
    }
}

fn measure(id: &str, format: &Format, bytes: usize, runs: usize) {
    let extract = (format.make)(bytes);
    let bare_s = median_s(runs, || (format.bare)(&extract));
    // Where the file holds more than is kept, it is opened for a town, as for a plan with a place.
    let options = || Options {
        box_deg: (bytes > format.whole_bytes).then_some(extracts::TOWN_DEG),
        ..Options::default()
    };
    let mut most_bytes = 0;
    let mut features = 0;
    let opening_s = median_s(runs, || {
        // The file's own bytes are held meanwhile, and counted below.
        let copy = extract.clone();
        let (count, bytes) = memory::most_bytes(|| opened(format.file, copy, options()));
        (most_bytes, features) = (bytes, count);
        count
    });
    let size = extract.len() as f64;
    println!("{id} {:.0}", opening_s * 1e9);
    println!(
        "    {:.1} MB of {features} features at {:.1} MB/s, {:.2} of the bare loop's {:.1} MB/s; at most {:.2} times the file in memory, its own bytes among them",
        size / 1e6,
        size / 1e6 / opening_s,
        bare_s / opening_s,
        size / 1e6 / bare_s,
        most_bytes as f64 / size + 1.0,
    );
}

/// How many features are read.
fn opened(file: &str, bytes: Vec<u8>, options: Options) -> usize {
    let mut reader = Reader::new(file, bytes, options).expect("the extract is of a known format");
    while reader.step() != Progress::Done {}
    let base = reader.finish().expect("the extract holds something");
    let faults = &base.faults;
    assert!(faults.is_empty(), "{faults:?}");
    base.layers.iter().map(|layer| layer.features.len()).sum()
}

fn median_s<T>(runs: usize, mut work: impl FnMut() -> T) -> f64 {
    let mut times: Vec<f64> = (0..runs)
        .map(|_| {
            let start = Instant::now();
            black_box(work());
            start.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[runs / 2]
}

fn bare_xml(bytes: &[u8]) -> u64 {
    let mut reader = quick_xml::Reader::from_reader(bytes);
    let mut buffer = Vec::new();
    let mut count = 0;
    while !matches!(reader.read_event_into(&mut buffer).expect("it is XML"), Event::Eof) {
        buffer.clear();
        count += 1;
    }
    count
}

fn bare_pbf(bytes: &[u8]) -> u64 {
    let mut count = 0;
    let reader = osmpbf::ElementReader::new(bytes);
    reader.for_each(|_| count += 1).expect("it is PBF");
    count
}

fn bare_geojson(bytes: &[u8]) -> u64 {
    serde_json::from_slice::<IgnoredAny>(bytes).expect("it is JSON");
    bytes.len() as u64
}
