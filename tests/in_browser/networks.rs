//! Street networks with outside answers, and the fingerprint of what each measured natively.
//!
//! The numbers themselves are held against outside answers by core's own tests; here only that they are the same bytes
//! in the browser. `HOBNAIL_UPDATE=1 cargo test -p hobnail_in_browser --lib` writes the fingerprints anew.

use hobnail_core::report::network_report::{Coordinates, NetworkRequest, network_report};

use crate::number_bits::fnv_1a;

/// One network.
pub struct Case {
    /// Its folder in `tests/fixtures/streets/`.
    pub name: &'static str,
    streets: &'static [u8],
    points: &'static [u8],
    coordinates: Coordinates,
    tolerance_m: f64,
}

macro_rules! case {
    ($name:literal, $coordinates:expr, $tolerance_m:literal) => {
        Case {
            name: $name,
            streets: include_bytes!(concat!("../fixtures/streets/", $name, "/streets.geojson")),
            points: include_bytes!(concat!("../fixtures/streets/", $name, "/points.geojson")),
            coordinates: $coordinates,
            tolerance_m: $tolerance_m,
        }
    };
}

/// Drawn in meters, and one real network in degrees.
pub const CASES: [Case; 5] = [
    case!("d1_grid", Coordinates::Meters, 0.0),
    case!("d2_crossers", Coordinates::Meters, 0.0),
    case!("d3_gaps", Coordinates::Meters, 0.5),
    case!("d4_holes_loops", Coordinates::Meters, 0.0),
    case!("dr_helsinki", Coordinates::Degrees { about: None }, 0.0),
];

/// Name and fingerprint of each case, a line each.
pub const WRITTEN_DOWN: &str = include_str!("../fixtures/measured/networks.txt");

/// The same, worked out now.
///
/// # Errors
/// A sentence when a network could not be measured.
pub fn fingerprints() -> Result<String, String> {
    let mut lines = String::new();
    for case in &CASES {
        let request = NetworkRequest {
            streets: case.streets,
            points: Some(case.points),
            coordinates: case.coordinates,
            tolerance_m: case.tolerance_m,
            within_m: &[200.0, 400.0, 800.0],
        };
        let report = network_report(&request).map_err(|refusal| format!("{}: {refusal}", case.name))?;
        lines.push_str(&format!("{} {:016x}\n", case.name, fnv_1a(report.to_json().as_bytes())));
    }
    Ok(lines)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_network_measures_as_written_down() {
        let now = fingerprints().expect("every network can be measured");
        if std::env::var_os("HOBNAIL_UPDATE").is_some() {
            let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../fixtures/measured/networks.txt");
            std::fs::write(file, now).expect("the fixtures can be written");
        } else {
            assert_eq!(
                now, WRITTEN_DOWN,
                "if these are right: HOBNAIL_UPDATE=1 cargo test -p hobnail_in_browser --lib"
            );
        }
    }
}
