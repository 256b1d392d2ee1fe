//! Everything that reads what others wrote, a line each.

use hobnail_core::exchange::geojson_lines;
use hobnail_core::factors;

use crate::driver::Target;
use crate::plan;

/// The targets, by name.
pub const TARGETS: &[Target] = &[
    Target {
        name: "street_lines",
        read: street_lines,
        seeds: &STREETS,
    },
    Target {
        name: "street_points",
        read: street_points,
        seeds: &STREETS,
    },
    Target {
        name: "factor_table",
        read: factor_table,
        seeds: &["core/src/factors"],
    },
    Target {
        name: "plan_file",
        read: plan::plan_file,
        seeds: &[
            "tests/fixtures/plan_file/version_1.geojson",
            "sample-sketches",
            STREETS[0],
        ],
    },
    Target {
        name: "measured_plan",
        read: plan::measured_plan,
        seeds: &["tests/fixtures/plan_file/version_1.geojson", "sample-sketches"],
    },
    Target {
        name: "journal",
        read: plan::journal,
        seeds: &["tests/fixtures/journal/version_1.journal"],
    },
    Target {
        name: "address",
        read: plan::address,
        seeds: &ADDRESSES,
    },
    Target {
        name: "address_opened",
        read: plan::address_opened,
        seeds: &[ADDRESSES[0], ADDRESSES[1], "tests/fixtures/fuzz/address/seeds"],
    },
];

const ADDRESSES: [&str; 2] = [
    "tests/fixtures/address/version_1/everything.txt",
    "tests/fixtures/address/version_1/village.txt",
];

const STREETS: [&str; 4] = [
    "tests/fixtures/streets/d1_grid/streets.geojson",
    "tests/fixtures/streets/d2_crossers/streets.geojson",
    "tests/fixtures/streets/d3_gaps/points.geojson",
    "tests/fixtures/streets/d4_holes_loops/streets.geojson",
];

fn street_lines(input: &[u8]) {
    // A fault with its place is as good an answer as a reading; what must not happen is neither.
    let _ = geojson_lines::read_lines(input);
}

fn street_points(input: &[u8]) {
    let _ = geojson_lines::read_points(input);
}

fn factor_table(input: &[u8]) {
    // Not text is for the caller to say, before a reader of text is asked.
    if let Ok(text) = std::str::from_utf8(input) {
        let _ = factors::read_table("mutated.toml", text);
    }
}
