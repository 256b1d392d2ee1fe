//! Coordinate systems against `pyproj` (`tests/fixtures/readers/README.md`).

use std::io::Read;

use hobnail_readers::base::{Geometry, Position};
use hobnail_readers::options::Options;
use hobnail_readers::system::System;

use super::{bytes, text};

/// Positions by system: longitude and latitude, then x and y.
fn points() -> Vec<(u32, Position, Position)> {
    let table = text("readers/systems/points.csv");
    let row = |line: &str| {
        let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
        (cells[0] as u32, [cells[1], cells[2]], [cells[3], cells[4]])
    };
    table.lines().skip(1).map(row).collect()
}

/// The system carries every position there and back to a millimeter on the ground.
#[track_caller]
fn check(system: &System, code: u32) -> usize {
    let unit_m = system.unit_m().expect("the systems of the table are projected");
    let mut count = 0;
    for (_, degrees, [x, y]) in points().into_iter().filter(|point| point.0 == code) {
        let [found_x, found_y] = system.from_degrees(degrees).expect("it is on Earth");
        let off_m = (found_x - x).hypot(found_y - y) * unit_m;
        assert!(off_m < 0.001, "{code} {degrees:?}: {off_m} m");
        let [longitude, latitude] = system.to_degrees([x, y]).expect("it is on Earth");
        let north_m = (latitude - degrees[1]) * 111_000.0;
        let east_m = (longitude - degrees[0]) * 111_320.0 * degrees[1].to_radians().cos();
        let off_m = north_m.hypot(east_m);
        assert!(off_m < 0.001, "{code} {degrees:?} back: {off_m} m");
        count += 1;
    }
    count
}

#[test]
fn a_thousand_positions_agree_to_a_millimeter() {
    let mut codes: Vec<u32> = points().iter().map(|point| point.0).collect();
    codes.dedup();
    assert_eq!(codes.len(), 8);
    let counts = codes.iter().map(|code| {
        check(
            &System::from_epsg(*code).unwrap_or_else(|what| panic!("{what:?}")),
            *code,
        )
    });
    assert_eq!(counts.sum::<usize>(), 1_000);
}

#[test]
fn the_table_itself_is_read_by_its_degrees() {
    let base = super::read("readers/systems/points.csv", Options::default());
    assert_eq!(
        (base.layers[0].features.len(), base.faults.as_slice()),
        (1_000, [].as_slice())
    );
    let first = points()[0].1;
    assert_eq!(base.layers[0].features[0].geometry, Geometry::Points(vec![first]));
}

#[test]
fn well_known_text_in_three_spellings_is_the_same_system() {
    let mut table = String::new();
    flate2::read::GzDecoder::new(bytes("readers/systems/well_known.txt.gz").as_slice())
        .read_to_string(&mut table)
        .unwrap();
    let mut count = 0;
    for line in table.lines() {
        let (code, well_known) = line.split_once('|').unwrap();
        let system = System::from_wkt(well_known).unwrap_or_else(|what| panic!("{what:?}: {well_known}"));
        assert!(system.is_certain, "{}", system.definition);
        check(&system, code.parse().unwrap());
        count += 1;
    }
    assert_eq!(count, 24);
}

/// The plan's own plane, against the positions that core's own projection is held to.
#[test]
fn the_plans_plane_is_that_of_core() {
    let table = text("projection/points.csv");
    for line in table.lines().skip(1) {
        let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
        let plan = System::plan([cells[0], cells[1]]).unwrap();
        let [east, north] = plan.from_degrees([cells[2], cells[3]]).unwrap();
        let off_m = (east - cells[4]).hypot(north - cells[5]);
        assert!(off_m < 1e-5, "{line}: {off_m} m");
    }
}

/// Case I-05 of the collected check cases: Snyder, *Map Projections: A Working Manual*, USGS Professional Paper 1395,
/// numerical example of UTM on Clarke 1866; from memory.
#[test]
fn snyders_example_comes_out() {
    let system = System::from_proj("+proj=tmerc +lat_0=0 +lon_0=-75 +k=0.9996 +a=6378206.4 +es=.00676866 +units=m");
    let system = system.unwrap();
    assert!(!system.is_certain);
    let [x, y] = system.from_degrees([-73.5, 40.5]).unwrap();
    assert!((x - 127_106.5).abs() < 0.1 && (y - 4_484_124.4).abs() < 0.1, "{x} {y}");
}

#[test]
fn what_is_no_system_is_refused() {
    for bad in [
        "",
        "EPSG:999999",
        "EPSG:x",
        "+proj=nothing",
        "+proj=longlat +nadgrids=conus",
        "+proj=geocent +datum=WGS84",
        "PROJCS[",
        "PROJCS[\"a\"]",
        &"A[".repeat(5_000),
        &"x".repeat(30_000),
    ] {
        assert!(System::named(bad).is_err(), "{bad:.40}");
    }
    // NAD27 has a shift that only its tables know.
    let old = System::named("+proj=longlat +ellps=clrk66").unwrap();
    assert!(!old.is_certain);
}
