use super::*;
use crate::plan::PlanPoint;
use crate::plan::flatten::{arc_at, flatten};

fn line(points: &[(i32, i32)]) -> Vec<Vertex> {
    points.iter().map(|&(x, y)| Vertex::at(PlanPoint::new(x, y))).collect()
}

#[test]
fn the_largest_radius_is_what_flattening_reduces_to() {
    // A right angle: the radius equals the shorter leg.
    let bend = line(&[(0, 0), (100_000, 0), (100_000, 60_000)]);
    let found = corner(&bend, 1, false).expect("a corner");
    assert!((found.largest_mm - 60_000.0).abs() < 1e-6);
    assert_eq!(corner(&bend, 0, false), None);
    assert_eq!(corner(&bend, 2, false), None);
    assert_eq!(corner(&line(&[(0, 0), (10, 0), (20, 0)]), 1, false), None);
    // 60° between the legs: half of them is 30°, and the radius leg · tan 30°.
    let sharp = line(&[(60_000, 0), (0, 0), (30_000, 51_962)]);
    let found = corner(&sharp, 1, false).expect("a corner");
    assert!((found.largest_mm - 34_641.0).abs() < 1.0, "{}", found.largest_mm);
    let mut rounded = sharp.clone();
    rounded[1].corner_radius_mm = 1_000_000;
    let arc = arc_at(&rounded, 1).expect("an arc");
    assert_eq!(arc.points.first(), Some(&PlanPoint::new(60_000, 0)));
}

#[test]
fn a_handle_gives_the_radius_back() {
    let bend = line(&[(0, 0), (70_000, 0), (70_000, 140_000)]);
    let found = corner(&bend, 1, false).expect("a corner");
    // Sharp, the handle lies a quarter of the shorter leg inside: 17.5 m on the diagonal.
    let (x, y) = found.handle(0.0);
    assert!((x - 57_625.6).abs() < 0.1 && (y - 12_374.4).abs() < 0.1, "{x} {y}");
    for radius in [0.0, 5_000.0, 33_300.0, 70_000.0] {
        assert!((found.radius_at(found.handle(radius)) - radius).abs() < 1e-6);
    }
    assert!(
        (found.radius_at((-9e6, 9e6)) - 70_000.0).abs() < 1e-6,
        "no more than fits"
    );
    assert!(found.radius_at((9e6, -9e6)).abs() < 1e-9);
}

#[test]
fn rounding_all_leaves_no_corner() {
    let mut curve = line(&[(0, 0), (80_000, 0), (80_000, 80_000), (200_000, 80_000)]);
    round_all(&mut curve);
    assert_eq!(
        curve.iter().map(|vertex| vertex.corner_radius_mm).collect::<Vec<_>>(),
        [0, 40_000, 40_000, 0]
    );
    let flat = flatten(&curve);
    for turn in flat.windows(3) {
        let (one, _) = direction(turn[0], turn[1]).expect("a run");
        let (other, _) = direction(turn[1], turn[2]).expect("a run");
        assert!(
            one.0 * other.0 + one.1 * other.1 > 0.98,
            "no bend of more than 11° at {:?}",
            turn[1]
        );
    }
}
