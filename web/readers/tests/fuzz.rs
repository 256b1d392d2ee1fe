//! Mutated inputs against each reader: none may panic, take long or keep more than its share of memory.
//!
//! Made of the parts of `tests/fuzz/`; the arguments are the same, `NAME SECONDS [SEED]` or nothing.
#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a program that reports to a person"
)]
#![allow(clippy::expect_used, reason = "what fails here is the test, not a reader")]
#![allow(
    clippy::disallowed_methods,
    reason = "the clock says when to stop and what takes too long"
)]

#[path = "../../../tests/fuzz/driver.rs"]
mod driver;

#[path = "../../../tests/fuzz/mutate.rs"]
mod mutate;

#[path = "../../../tests/fuzz/program.rs"]
mod program;

use std::process::ExitCode;

use driver::Target;
use hobnail_core::measures::slopes::Slopes;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::document::Topography;
use hobnail_core::report::drawing::contours::{Field, levels};
use hobnail_readers::grid::resampled::resampled;
use hobnail_readers::options::Options;
use hobnail_readers::system::System;

const TARGETS: &[Target] = &[
    Target {
        name: "base_osm_xml",
        read: any,
        seeds: &["tests/fixtures/readers/small/streets.osm"],
    },
    Target {
        name: "base_osm_pbf",
        read: any,
        seeds: &["tests/fixtures/readers/network/plain.osm.pbf"],
    },
    Target {
        name: "base_geojson",
        read: any,
        seeds: &[
            "tests/fixtures/streets/d1_grid/streets.geojson",
            "sample-sketches",
            "tests/fixtures/readers/small/counts.geojson",
            "tests/fixtures/readers/small/zones.geojson",
        ],
    },
    Target {
        name: "base_shapefile",
        read: any,
        seeds: &["tests/fixtures/readers/small/lots.zip"],
    },
    Target {
        name: "base_drawing",
        read: any,
        seeds: &[
            "tests/fixtures/readers/drawing/bends_and_blocks.dxf",
            "tests/fixtures/readers/drawing/splines_and_texts.dxf",
            "tests/fixtures/readers/drawing/splines_and_texts_in_bytes.dxf",
        ],
    },
    Target {
        name: "base_table",
        read: any,
        seeds: &["tests/fixtures/readers/small/places.csv"],
    },
    Target {
        name: "base_grid",
        read: any,
        seeds: &["tests/fixtures/readers/small/heights.asc"],
    },
    Target {
        name: "base_geotiff",
        read: any,
        seeds: &[
            "tests/fixtures/readers/heights/strips.tif",
            "tests/fixtures/readers/heights/tiles_lzw.tif",
            "tests/fixtures/readers/heights/tiles_deflate.tif",
            "tests/fixtures/readers/heights/parameters.tif",
            "tests/fixtures/readers/heights/picture.tif",
        ],
    },
    Target {
        name: "base_world_file",
        read: any,
        seeds: &["tests/fixtures/readers/small/map.jgw"],
    },
    Target {
        name: "base_hgt",
        read: named_heights,
        seeds: &["tests/fixtures/readers/small/heights.named"],
    },
    Target {
        name: "base_system",
        read: system,
        seeds: &[
            "tests/fixtures/readers/small/state_plane.prj",
            "tests/fixtures/readers/small/utm.prj",
        ],
    },
];

fn main() -> ExitCode {
    program::run(TARGETS)
}

fn any(input: &[u8]) {
    let options = Options {
        origin_deg: Some([24.9452, 60.1708]),
        box_deg: Some([-180.0, -90.0, 180.0, 90.0]),
        system: None,
        picture_px: Some([4_000, 3_000]),
        ..Options::default()
    };
    let chosen = Options {
        system: Some("EPSG:26986".to_owned()),
        picture_px: Some([u32::MAX, 1]),
        ..Options::default()
    };
    for options in [options, chosen] {
        let Ok(base) = hobnail_readers::read("N42W072.hgt", input.to_vec(), options) else {
            continue;
        };
        let middle = base.grids.first().and_then(|grid| {
            let middle = [grid.columns as f64 / 2.0, grid.rows as f64 / 2.0];
            grid.system.to_degrees(grid.position(middle))
        });
        let Some(plan) = middle.and_then(|middle| System::plan(middle).ok()) else {
            continue;
        };
        let found = resampled(&base.grids, &plan, [-1e5, -1e5, 1e5, 1e5], None);
        let topography = Topography {
            south_west: PlanPoint::new(found.south_west_mm[0], found.south_west_mm[1]),
            spacing_mm: found.spacing_mm,
            columns: found.columns,
            heights_mm: found.heights_mm,
            source: String::new(),
        };
        let _ = Slopes::of(&topography);
        let field = Field::of(&topography);
        let levels = field.range().map(|range| levels(range, 5_000.0).1);
        let _ = field.lines(&levels.unwrap_or_default());
    }
}

/// A file whose name is the input's first line, and whose heights are the rest of it, again and again: this format is known
/// by its length alone.
fn named_heights(input: &[u8]) {
    const LENGTH: usize = 1201 * 1201 * 2;
    let end = input.iter().position(|byte| *byte == b'\n').unwrap_or(input.len());
    let (name, rest) = input.split_at(end);
    let heights: Vec<u8> = rest.iter().skip(1).chain(&[0]).copied().cycle().take(LENGTH).collect();
    let options = Options {
        box_deg: Some([-71.9, 42.1, -71.8, 42.2]),
        ..Options::default()
    };
    for options in [options, Options::default()] {
        let _ = hobnail_readers::read(&String::from_utf8_lossy(name), heights.clone(), options);
    }
}

fn system(input: &[u8]) {
    let text = String::from_utf8_lossy(input);
    if let Ok(system) = System::named(&text) {
        for point in [[0.0, 0.0], [1e6, -1e6], [f64::MAX, f64::NAN]] {
            let degrees = system.to_degrees(point);
            let _ = degrees.and_then(|degrees| system.from_degrees(degrees));
        }
    }
}
