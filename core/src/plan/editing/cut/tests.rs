use super::*;
use crate::plan::editing::test_lines::{line, points};
use crate::plan::flatten::flatten;

#[test]
fn a_run_is_cut_where_it_is_told_and_joined_again() {
    let whole = line(&[(0, 0), (100_000, 0), (100_000, 50_000)]);
    let (first, second) = cut(&whole, 0, 300_000_000).expect("two parts");
    assert_eq!(points(&first), [(0, 0), (30_000, 0)]);
    assert_eq!(points(&second), [(30_000, 0), (100_000, 0), (100_000, 50_000)]);
    assert_eq!(join(&first, &second), (whole.clone(), false));
    assert_eq!(join(&second, &first), (whole.clone(), false));
    let reversed: Vec<_> = second.iter().rev().copied().collect();
    assert_eq!(join(&first, &reversed), (whole, true));
}

#[test]
fn joining_after_cutting_restores_any_run() {
    let whole = line(&[(0, 0), (71_003, 13_007), (90_011, 88_001), (-20_000, 120_000)]);
    for segment in 0..3 {
        for step in 1..40 {
            let (first, second) = cut(&whole, segment, step * 25_000_000).expect("two parts");
            assert_eq!(join(&first, &second).0, whole, "segment {segment}, step {step}");
        }
    }
}

#[test]
fn a_corner_is_cut_at_itself_and_ends_are_not() {
    let whole = line(&[(0, 0), (100_000, 0), (100_000, 50_000)]);
    let (first, second) = cut(&whole, 0, WHOLE_PPB).expect("two parts");
    assert_eq!(points(&first), [(0, 0), (100_000, 0)]);
    assert_eq!(points(&second), [(100_000, 0), (100_000, 50_000)]);
    assert_eq!(cut(&whole, 0, 0), None);
    assert_eq!(cut(&whole, 1, WHOLE_PPB), None);
    assert_eq!(cut(&whole, 2, 0), None);
}

#[test]
fn a_cut_curve_stays_on_its_curve() {
    let mut whole = line(&[(0, 0), (100_000, 0), (100_000, 100_000)]);
    whole[1].corner_radius_mm = 40_000;
    // The middle of the arc about (60 m, 40 m) is 40 m from there, toward the corner: 60 + 28.284, 40 − 28.284. Its
    // tangent meets the legs 40 tan 22.5° = 16.569 m after and before the tangent points.
    let (first, second) = cut(&whole, 0, WHOLE_PPB).expect("two parts");
    assert_eq!(points(&first), [(0, 0), (76_569, 0), (88_284, 11_716)]);
    assert_eq!(
        points(&second),
        [(88_284, 11_716), (100_000, 23_431), (100_000, 100_000)]
    );
    assert_eq!(
        (first[1].corner_radius_mm, second[1].corner_radius_mm),
        (40_000, 40_000)
    );
    let middle = PlanPoint::new(60_000, 40_000);
    for part in [&first, &second] {
        let flat = flatten(part);
        let on_curve = flat.iter().filter(|at| at.x_mm > 60_000 && at.y_mm < 40_000);
        for at in on_curve {
            let from_middle_um = at.distance_um(middle) as i64;
            assert!((from_middle_um - 40_000_000).abs() < 3_000, "{at:?}: {from_middle_um}");
        }
    }
}

#[test]
fn a_curve_cut_anywhere_stays_within_millimeters() {
    let mut whole = line(&[(0, 0), (100_000, 10_000), (60_000, 90_000), (160_000, 150_000)]);
    whole[1].corner_radius_mm = 25_000;
    whole[2].corner_radius_mm = 4_000_000;
    let flat: Vec<Vertex> = flatten(&whole).into_iter().map(Vertex::at).collect();
    let mut cuts = 0;
    for segment in 0..3 {
        for step in 1..30 {
            let Some((first, second)) = cut(&whole, segment, step * 33_000_000) else {
                continue;
            };
            cuts += 1;
            for at in flatten(&first).into_iter().chain(flatten(&second)) {
                let (_, foot) = nearest_tie(MarkId(0), &flat, at).expect("a foot");
                let apart_mm2 = foot.squared_distance_mm2(at);
                assert!(
                    apart_mm2 <= 15 * 15,
                    "segment {segment}, step {step}: {at:?} is off by √{apart_mm2}"
                );
            }
        }
    }
    assert!(cuts > 60, "{cuts}");
}

#[test]
fn ends_apart_are_joined_by_a_straight_run() {
    let (joined, is_turned) = join(
        &line(&[(0, 0), (10_000, 0)]),
        &line(&[(50_000, 5_000), (20_000, 1_000)]),
    );
    assert!(is_turned);
    assert_eq!(points(&joined), [(0, 0), (10_000, 0), (20_000, 1_000), (50_000, 5_000)]);
}
