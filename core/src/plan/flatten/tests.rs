use super::*;

fn line(points: &[(i32, i32, u32)]) -> Vec<Vertex> {
    let vertex = |&(x, y, corner_radius_mm): &(i32, i32, u32)| Vertex {
        corner_radius_mm,
        ..Vertex::at(PlanPoint::new(x, y))
    };
    points.iter().map(vertex).collect()
}

#[track_caller]
fn check(points: &[(i32, i32, u32)], expected: &[(i32, i32)]) {
    let expected: Vec<PlanPoint> = expected.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect();
    assert_eq!(flatten(&line(points)), expected);
}

/// Distance from `point` to the segment from `a` to `b`, in millimeters.
fn distance_mm(point: PlanPoint, a: PlanPoint, b: PlanPoint) -> f64 {
    let length = (a.squared_distance_mm2(b) as f64).sqrt();
    (a.cross(b, point) as f64).abs() / length
}

#[test]
fn sharp_corners_stay_and_repeated_points_go() {
    check(
        &[(0, 0, 0), (10, 0, 0), (10, 0, 0), (10, 10, 0)],
        &[(0, 0), (10, 0), (10, 10)],
    );
    check(&[(5, 5, 0), (5, 5, 9)], &[(5, 5)]);
    check(&[], &[]);
}

#[test]
fn ends_straight_runs_and_turns_back_are_not_rounded() {
    check(
        &[(0, 0, 900), (1000, 0, 900), (2000, 0, 900)],
        &[(0, 0), (1000, 0), (2000, 0)],
    );
    check(&[(0, 0, 0), (1000, 0, 900), (0, 0, 0)], &[(0, 0), (1000, 0), (0, 0)]);
}

#[test]
fn a_right_angle_is_rounded_at_its_radius() {
    let flat = flatten(&line(&[(0, 0, 0), (50_000, 0, 12_000), (50_000, -50_000, 0)]));
    let center = (38_000.0, -12_000.0);
    assert_eq!(flat[1], PlanPoint::new(38_000, 0));
    assert_eq!(flat[flat.len() - 2], PlanPoint::new(50_000, -12_000));
    for pair in flat[1..flat.len() - 1].windows(2) {
        let to_center = |x: f64, y: f64| number::length(x - center.0, y - center.1);
        assert!((to_center(f64::from(pair[0].x_mm), f64::from(pair[0].y_mm)) - 12_000.0).abs() < 0.8);
        let (middle_x, middle_y) = (
            f64::from(pair[0].x_mm + pair[1].x_mm) / 2.0,
            f64::from(pair[0].y_mm + pair[1].y_mm) / 2.0,
        );
        let sagitta_mm = 12_000.0 - to_center(middle_x, middle_y);
        assert!(sagitta_mm < SAGITTA_MM + 1.0, "sagitta {sagitta_mm} mm");
    }
    // A quarter turn of 12 m takes 2 acos(1 − 10/12000) = 0.0817 rad a chord: 20 chords.
    assert_eq!(flat.len(), 2 + 21);
}

#[test]
fn a_radius_too_large_is_reduced_to_the_segments() {
    // The end segments are wholly usable.
    let flat = flatten(&line(&[(0, 0, 0), (10_000, 0, 4_000_000_000), (10_000, 30_000, 0)]));
    assert_eq!(flat[0], PlanPoint::new(0, 0));
    assert_eq!(flat[flat.len() - 2], PlanPoint::new(10_000, 10_000));
    // Two rounded corners halve the segment between them.
    let flat = flatten(&line(&[
        (0, 0, 0),
        (0, 90_000, 60_000),
        (20_000, 90_000, 60_000),
        (20_000, 0, 0),
    ]));
    assert!(flat.contains(&PlanPoint::new(10_000, 90_000)));
    assert!(flat.contains(&PlanPoint::new(0, 80_000)) && flat.contains(&PlanPoint::new(20_000, 80_000)));
}

#[test]
fn flattening_does_not_depend_on_direction_and_stays_near_the_corner() {
    let mut state = 7_u64;
    let mut next = |limit: u64| {
        // Knuth's linear congruential generator, MMIX constants.
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % limit
    };
    for round in 0..2000 {
        let span = [100, 5_000, 200_000, 200_000_001][round % 4];
        let points: Vec<(i32, i32, u32)> = (0..2 + next(6))
            .map(|_| {
                let coordinate = |value: u64| value as i32 - (span / 2) as i32;
                (
                    coordinate(next(span)),
                    coordinate(next(span)),
                    (next(2) * next(span)) as u32,
                )
            })
            .collect();
        let forward = line(&points);
        let flat = flatten(&forward);
        let mut reversed = forward.clone();
        reversed.reverse();
        let mut back = flatten(&reversed);
        back.reverse();
        assert_eq!(flat, back, "{points:?}");
        assert_eq!(flat.first(), forward.first().map(|vertex| &vertex.point));
        for arc in arcs(&forward) {
            assert!(arc.points.iter().all(|point| point.is_legal()), "{points:?}");
            let (a, b, c) = (
                forward[arc.vertex - 1].point,
                forward[arc.vertex].point,
                forward[arc.vertex + 1].point,
            );
            assert!(distance_mm(arc.points[0], a, b) < 1.0, "{points:?}");
            assert!(distance_mm(arc.points[arc.points.len() - 1], b, c) < 1.0, "{points:?}");
        }
    }
}
