use super::*;
use crate::tools::fixtures::{Scene, at, street};

const NEW: MarkId = MarkId(9);

fn p(x: i32, y: i32) -> PlanPoint {
    PlanPoint::new(x, y)
}

#[track_caller]
fn check(scene: &Scene, pointer: (i32, i32), trace: &[PlanPoint], reason: Reason, expected: (i32, i32)) {
    let landing = land(at(pointer.0, pointer.1), NEW, trace, &scene.sight());
    assert_eq!(landing.snap.reason, reason, "{landing:?}");
    assert_eq!(landing.snap.point, p(expected.0, expected.1));
    let is_guided = !matches!(reason, Reason::Grid | Reason::OnStreet | Reason::Intersection);
    assert_eq!(!landing.lines.is_empty(), is_guided, "{landing:?}");
}

/// A street to the east, and one that leaves it at 3 in 4.
fn scene() -> Scene {
    Scene::with(&[
        (1, street(&[(0, 0), (100_000, 0)])),
        (2, street(&[(40_000, 0), (70_000, 40_000)])),
    ])
}

#[test]
fn streets_go_on_beyond_their_ends() {
    let scene = scene();
    check(&scene, (120_033, 900), &[], Reason::Extension, (120_000, 0));
    // 19.7 m on along 3 in 4.
    check(&scene, (82_300, 55_400), &[], Reason::Extension, (81_820, 55_760));
    check(&scene, (160_000, 900), &[], Reason::Grid, (160_000, 900));
}

#[test]
fn runs_are_straight_square_or_parallel() {
    let scene = scene();
    let before = [p(0, 70_000), p(10_000, 60_000)];
    // 14.1 m on at 45° down: 9.97 m each way.
    check(&scene, (20_300, 50_300), &before, Reason::StraightOn, (19_970, 50_030));
    // A right angle to a run at 45° down is 45° up; 28.3 m along it.
    check(&scene, (30_000, 80_500), &before, Reason::Square, (30_223, 80_223));
    check(
        &scene,
        (38_040, 30_900),
        &[p(10_000, 30_000)],
        Reason::Parallel,
        (38_000, 30_000),
    );
    check(&scene, (10_500, 30_040), &before, Reason::Square, (10_000, 30_000));
}

#[test]
fn a_street_is_met_at_a_right_angle_with_a_hold() {
    let scene = scene();
    let trace = [p(20_040, 50_000)];
    let landing = land(at(20_900, 800), NEW, &trace, &scene.sight());
    assert_eq!(
        (landing.snap.point, landing.snap.reason),
        (p(20_040, 0), Reason::Square)
    );
    assert_eq!(
        landing.snap.tie.map(|tie| (tie.street, tie.along_ppb)),
        Some((MarkId(1), 200_400_000))
    );
    check(&scene, (28_000, 800), &trace, Reason::OnStreet, (28_000, 0));
}

#[test]
fn a_guide_is_followed_to_the_street_it_meets() {
    let scene = Scene::with(&[
        (1, street(&[(0, 0), (100_000, 0)])),
        (2, street(&[(0, 20_000), (30_000, 60_000)])),
    ]);
    // Parallel to street 2 from (70, 40) back to street 1 at 70 − 30 = 40 m; a right angle would land at 70 m.
    let landing = land(at(40_700, 700), NEW, &[p(70_000, 40_000)], &scene.sight());
    assert_eq!(
        (landing.snap.point, landing.snap.reason),
        (p(40_000, 0), Reason::Parallel)
    );
    assert!(landing.snap.tie.is_some());
}

#[test]
fn two_guides_cross() {
    let scene = Scene::with(&[
        (1, street(&[(0, 0), (40_000, 0)])),
        (2, street(&[(80_000, -60_000), (80_000, -20_000)])),
    ]);
    let landing = land(at(80_700, 600), NEW, &[], &scene.sight());
    assert_eq!(
        (landing.snap.point, landing.snap.reason),
        (p(80_000, 0), Reason::Guides)
    );
    assert_eq!(
        landing.lines,
        [[p(40_000, 0), p(80_000, 0)], [p(80_000, -20_000), p(80_000, 0)]]
    );
}

#[test]
fn blocks_repeat_along_a_street() {
    let scene = Scene::with(&[
        (1, street(&[(0, 0), (300_000, 0)])),
        (2, street(&[(50_000, -9_000), (50_000, 9_000)])),
        (3, street(&[(130_000, -9_000), (130_000, 9_000)])),
    ]);
    check(&scene, (211_200, 900), &[], Reason::EqualBlock, (210_000, 0));
    check(&scene, (213_000, 900), &[], Reason::OnStreet, (213_000, 0));
    let short = land(at(1_000, 30_000), NEW, &[], &scene.sight());
    assert_eq!(
        short.snap.reason,
        Reason::Grid,
        "50 − 80 m lies before the street begins"
    );
}

#[test]
fn snapping_is_suspended_by_alt_and_by_choice() {
    let mut scene = scene();
    let mut pointer = at(40_033, 771);
    assert_eq!(
        land(pointer, NEW, &[], &scene.sight()).snap.reason,
        Reason::Intersection
    );
    pointer.modifiers.alt = true;
    let free = land(pointer, NEW, &[], &scene.sight());
    assert_eq!(
        (free.snap.point, free.snap.reason, free.snap.tie),
        (p(40_000, 800), Reason::Free, None)
    );
    scene.choices.drawing.snaps = false;
    assert_eq!(
        land(at(40_033, 771), NEW, &[], &scene.sight()).snap.reason,
        Reason::Free
    );
}

#[test]
fn what_is_typed_holds() {
    let scene = scene();
    let trace = [p(0, 50_000), p(20_000, 50_000)];
    let with = |length_mm, bearing_degrees, is_turn| {
        let mut sight = scene.sight();
        sight.typed = Typed {
            length_mm,
            bearing_degrees,
            is_turn,
        };
        land(at(50_030, 61_000), NEW, &trace, &sight).snap.point
    };
    assert_eq!(with(Some(10_000.0), Some(180.0), false), p(20_000, 40_000), "south");
    assert_eq!(
        with(Some(10_000.0), Some(90.0), true),
        p(20_000, 40_000),
        "right of the run before"
    );
    assert_eq!(with(Some(10_000.0), Some(-90.0), true), p(20_000, 60_000), "left of it");
    assert_eq!(
        with(None, Some(90.0), false),
        p(50_000, 50_000),
        "as far east as the pointer"
    );
    let along = with(Some(20_000.0), None, false);
    assert!(
        along.distance_um(trace[1]).abs_diff(20_000_000) < 1_000,
        "toward the pointer"
    );
    let mut sight = scene.sight();
    sight.typed.length_mm = Some(50_000.0);
    sight.typed.bearing_degrees = Some(180.0);
    let held = land(at(0, 0), NEW, &trace, &sight).snap;
    assert_eq!(
        (held.point, held.tie.map(|tie| tie.street)),
        (p(20_000, 0), Some(MarkId(1)))
    );
}

#[test]
fn the_nearest_run_is_a_street_or_the_edge() {
    let scene = scene();
    let (along, _, is_street) = nearest_run(p(60_000, 20_000), NEW, &scene.sight()).expect("a run");
    assert!(is_street && (along.0 - 0.6).abs() < 1e-9);
    let (_, _, is_street) = nearest_run(p(490_000, 400_000), NEW, &scene.sight()).expect("a run");
    assert!(!is_street);
}
