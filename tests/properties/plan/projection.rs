//! The plan's plane against an outside reference, and positions stored with nine decimals.

use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::coordinates::LIMIT_MM;
use hobnail_core::plan::projection::{GeographicPoint, Projection};
use proptest::prelude::*;

#[test]
fn the_plane_agrees_with_the_reference_to_a_millimeter() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/fixtures/projection/points.csv");
    check_against_reference(&std::fs::read_to_string(path).unwrap(), 40);
}

/// Each line holds the origin, the position, and its plane coordinates as the reference gives them.
fn check_against_reference(csv: &str, expected_count: usize) {
    let mut count = 0;
    let mut largest_error_m: f64 = 0.0;
    for line in csv.lines().skip(1) {
        let fields: Vec<f64> = line.split(',').map(|field| field.parse().unwrap()).collect();
        let projection = Projection::about(GeographicPoint::checked_from_deg(fields[0], fields[1]).unwrap()).unwrap();
        let (east_m, north_m) = projection.m_from_deg(fields[2], fields[3]).unwrap();
        let error_m = (east_m - fields[4]).abs().max((north_m - fields[5]).abs());
        assert!(error_m < 0.001, "{line}: {east_m}, {north_m}");
        largest_error_m = largest_error_m.max(error_m);
        let (longitude_deg, latitude_deg) = projection.deg_from_m(fields[4], fields[5]);
        assert!(
            (longitude_deg - fields[2]).abs() < 1e-9 && (latitude_deg - fields[3]).abs() < 1e-9,
            "{line}"
        );
        count += 1;
    }
    assert_eq!(count, expected_count);
    // The reference is printed to a micrometer; agreement is to its last digit.
    assert!(largest_error_m < 2e-6, "largest error {largest_error_m} m");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4096))]

    #[test]
    fn nine_decimals_keep_every_millimeter(
        longitude_ndeg in -180_000_000_000_i64..=180_000_000_000,
        latitude_ndeg in -89_000_000_000_i64..=89_000_000_000,
        x_mm in -LIMIT_MM..=LIMIT_MM,
        y_mm in -LIMIT_MM..=LIMIT_MM,
    ) {
        let projection = Projection::about(GeographicPoint { longitude_ndeg, latitude_ndeg }).unwrap();
        let point = PlanPoint::new(x_mm, y_mm);
        let stored = projection.geographic_from_plan(point);
        let (longitude_deg, latitude_deg) = stored.to_deg();
        let text = (format!("{longitude_deg:.9}"), format!("{latitude_deg:.9}"));
        let read = GeographicPoint::checked_from_deg(text.0.parse().unwrap(), text.1.parse().unwrap());
        prop_assert_eq!(read, Some(stored));
        prop_assert_eq!(projection.plan_from_geographic(stored), Some(point));
    }
}
