use super::*;
use crate::plan::PlanPoint;
use crate::plan::editing::test_lines::{line, points};
use crate::plan::flatten::flatten;

#[test]
fn a_bend_is_set_off_on_either_side() {
    let bend = line(&[(0, 0), (100_000, 0), (100_000, 100_000)]);
    assert_eq!(
        points(&offset(&bend, 20_000)),
        [(0, 20_000), (80_000, 20_000), (80_000, 100_000)]
    );
    assert_eq!(
        points(&offset(&bend, -20_000)),
        [(0, -20_000), (120_000, -20_000), (120_000, 100_000)]
    );
    assert_eq!(points(&offset(&bend, 0)), points(&bend));
    assert!(offset(&line(&[(5, 5), (5, 5)]), 10).is_empty());
}

#[test]
fn radii_keep_their_middle() {
    let mut bend = line(&[(0, 0), (100_000, 0), (100_000, 100_000)]);
    bend[1].corner_radius_mm = 30_000;
    assert_eq!(offset(&bend, 20_000)[1].corner_radius_mm, 10_000);
    assert_eq!(offset(&bend, 40_000)[1].corner_radius_mm, 0);
    let outer = offset(&bend, -20_000);
    assert_eq!(outer[1].corner_radius_mm, 50_000);
    let middle = PlanPoint::new(70_000, 30_000);
    for at in flatten(&outer).iter().filter(|at| at.x_mm > 70_000 && at.y_mm < 30_000) {
        assert!((at.distance_um(middle) as i64 - 50_000_000).abs() < 2_000, "{at:?}");
    }
}

#[test]
fn a_straight_line_stays_parallel_in_any_direction() {
    for step in 0..60 {
        let end = (90_000 - step * 3_001, step * 2_503 - 70_000);
        let off = offset(&line(&[(0, 0), end]), 17_500);
        let length = (f64::from(end.0) * f64::from(end.0) + f64::from(end.1) * f64::from(end.1)).sqrt();
        for vertex in &off {
            let cross =
                f64::from(end.0) * f64::from(vertex.point.y_mm) - f64::from(end.1) * f64::from(vertex.point.x_mm);
            assert!((cross / length - 17_500.0).abs() < 1.0, "{end:?}");
        }
    }
}

#[test]
fn runs_too_short_for_the_inner_side_go() {
    let bay = line(&[(0, 0), (50_000, 0), (50_000, 10_000), (100_000, 10_000)]);
    let step = offset(&bay, 20_000);
    assert_eq!(
        points(&step),
        [(0, 20_000), (30_000, 20_000), (30_000, 30_000), (100_000, 30_000)]
    );
    let notch = line(&[
        (0, 0),
        (50_000, 0),
        (50_000, 10_000),
        (55_000, 10_000),
        (55_000, 0),
        (100_000, 0),
    ]);
    let over = offset(&notch, -4_000);
    assert!(over.iter().all(|vertex| vertex.point.y_mm <= 6_000), "{over:?}");
    for pair in over.windows(2) {
        assert!(
            pair[1].point.x_mm >= pair[0].point.x_mm,
            "no run turns around: {over:?}"
        );
    }
}

#[test]
fn a_ring_is_set_off_as_a_ring() {
    let ring = line(&[(0, 0), (60_000, 0), (60_000, 60_000), (0, 60_000), (0, 0)]);
    let inner = [
        (10_000, 10_000),
        (50_000, 10_000),
        (50_000, 50_000),
        (10_000, 50_000),
        (10_000, 10_000),
    ];
    assert_eq!(points(&offset(&ring, 10_000)), inner);
}
