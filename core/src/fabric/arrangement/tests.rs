//! Small drawings worked by hand, in meters.

use super::*;
use crate::fabric::{Chains, Outliner, segments_of_line};

fn p(x_m: i32, y_m: i32) -> PlanPoint {
    PlanPoint::new(x_m * 1000, y_m * 1000)
}

fn arranged(lines: &[&[(i32, i32)]]) -> Arrangement {
    let mut segments = Vec::new();
    for (line, id) in lines.iter().zip(0..) {
        let points: Vec<PlanPoint> = line.iter().map(|&(x, y)| p(x, y)).collect();
        segments.extend(segments_of_line(&points, SourceId(id)));
    }
    Arrangement::of(&segments)
}

/// Vertices, edges, bounded faces, components.
#[track_caller]
fn check_counts(arrangement: &Arrangement, expected: [usize; 4]) {
    let counts = [
        arrangement.vertices().len(),
        arrangement.edge_count(),
        arrangement.face_count() - 1,
        arrangement.component_count(),
    ];
    assert_eq!(counts, expected);
    let components = arrangement.components();
    assert_eq!(
        components.iter().max().map_or(0, |last| *last as usize + 1),
        expected[3]
    );
}

/// Areas of the bounded faces in square meters, ascending.
fn areas_m2(arrangement: &Arrangement) -> Vec<i128> {
    let faces = arrangement.bounded_faces();
    let mut areas: Vec<i128> = faces.map(|face| arrangement.twice_area_mm2(face) / 2_000_000).collect();
    areas.sort_unstable();
    areas
}

const SQUARE: &[(i32, i32)] = &[(0, 0), (100, 0), (100, 100), (0, 100), (0, 0)];

#[test]
fn nothing_drawn_is_nothing() {
    check_counts(&Arrangement::of(&[]), [0, 0, 0, 0]);
    check_counts(&arranged(&[&[(1, 1), (1, 1)], &[(2, 2)], &[]]), [0, 0, 0, 0]);
}

#[test]
fn two_streets_cross() {
    let cross = arranged(&[&[(0, 50), (100, 50)], &[(50, 0), (50, 100)]]);
    check_counts(&cross, [5, 4, 0, 1]);
    assert!(cross.vertices().contains(&p(50, 50)));
    assert_eq!(cross.sources(EdgeId(0)), [SourceId(0)]);
}

#[test]
fn a_street_ends_on_another() {
    check_counts(&arranged(&[&[(0, 0), (100, 0)], &[(50, 80), (50, 0)]]), [4, 3, 0, 1]);
}

#[test]
fn overlaps_count_once_and_name_both_lines() {
    let overlap = arranged(&[&[(0, 0), (60, 0)], &[(100, 0), (40, 0)]]);
    check_counts(&overlap, [4, 3, 0, 1]);
    let sources: Vec<&[SourceId]> = overlap.edges().map(|edge| overlap.sources(edge)).collect();
    assert_eq!(
        sources,
        [&[SourceId(0)][..], &[SourceId(0), SourceId(1)], &[SourceId(1)]]
    );
}

#[test]
fn a_line_drawn_there_and_back_encloses_nothing() {
    check_counts(&arranged(&[&[(0, 0), (50, 20), (0, 0)]]), [2, 1, 0, 1]);
}

#[test]
fn a_line_that_crosses_itself_makes_a_loop() {
    let looped = arranged(&[&[(0, 0), (60, 0), (60, 40), (30, 40), (30, -20)]]);
    check_counts(&looped, [6, 6, 1, 1]);
    assert_eq!(areas_m2(&looped), [30 * 40]);
}

#[test]
fn a_ring_without_intersections_is_one_chain() {
    let ring = arranged(&[SQUARE]);
    check_counts(&ring, [4, 4, 1, 1]);
    let chains = Chains::of(&ring, |_| false);
    assert_eq!(
        (chains.count(), chains.pure_ring_count(), chains.self_loops().count()),
        (1, 1, 1)
    );
    assert_eq!(chains.nodes(), [VertexId(0)]);
    let cut = Chains::of(&ring, |vertex| ring.point(vertex) == p(100, 0));
    assert_eq!((cut.nodes().len(), cut.pure_ring_count()), (1, 0));
    assert_eq!(
        cut.ends(cut.chain_of(EdgeId(0))).map(|node| ring.point(node)),
        [p(100, 0); 2]
    );
}

#[test]
fn a_face_inside_a_face_is_its_hole() {
    let inner: &[(i32, i32)] = &[(30, 30), (70, 30), (70, 60), (30, 60), (30, 30)];
    let innermost: &[(i32, i32)] = &[(40, 40), (50, 40), (50, 50), (40, 50), (40, 40)];
    let nested = arranged(&[innermost, SQUARE, inner]);
    check_counts(&nested, [12, 12, 3, 3]);
    assert_eq!(areas_m2(&nested), [100, 1_200 - 100, 10_000 - 1_200]);
    let outer = nested.face(nested.outer_loop(FaceId(1)).unwrap());
    assert_eq!(nested.hole_loops(outer).len(), 1);
    assert_eq!(nested.hole_loops(FaceId::OUTSIDE).len(), 1);
}

#[test]
fn islands_lie_in_the_face_around_them() {
    // A free-standing street and a ring in the square, and a ring beside it that starts further left and lower.
    let islands = arranged(&[
        SQUARE,
        &[(20, 20), (30, 25)],
        &[(60, 60), (80, 60), (80, 80), (60, 60)],
        &[(-10, -50), (20, -50), (20, -20), (-10, -50)],
    ]);
    check_counts(&islands, [12, 11, 3, 4]);
    assert_eq!(areas_m2(&islands), [200, 450, 10_000 - 200]);
    let square = islands
        .bounded_faces()
        .find(|&face| islands.hole_loops(face).len() == 2);
    assert_eq!(
        square.map(|face| islands.twice_area_mm2(face)),
        Some(2 * 9_800 * 1_000_000)
    );
}

#[test]
fn what_hangs_below_an_overhang_is_outside() {
    // The lowest vertex of the small ring has an edge of the arch directly above and nothing below it.
    let arch: &[(i32, i32)] = &[
        (0, 0),
        (0, 90),
        (90, 90),
        (90, 0),
        (80, 0),
        (80, 80),
        (10, 80),
        (10, 0),
        (0, 0),
    ];
    let under = arranged(&[arch, &[(40, 20), (50, 20), (50, 30), (40, 20)]]);
    check_counts(&under, [11, 11, 2, 2]);
    assert_eq!(under.hole_loops(FaceId::OUTSIDE).len(), 2);
}

#[test]
fn a_component_below_a_shared_vertex_sees_the_steepest_edge() {
    // Straight below the lowest vertex of the small ring lies a corner from which two edges leave to the east.
    let fan = arranged(&[
        &[(0, 0), (100, 60), (100, -60), (0, 0)],
        &[(-80, -90), (0, 0)],
        &[(0, 10), (5, 20), (-5, 20), (0, 10)],
        &[(40, 5), (44, 9), (40, 9), (40, 5)],
    ]);
    let holes: Vec<usize> = fan.bounded_faces().map(|face| fan.hole_loops(face).len()).collect();
    assert_eq!(holes.iter().sum::<usize>(), 1);
    assert_eq!(fan.hole_loops(FaceId::OUTSIDE).len(), 2);
}

#[test]
fn dead_ends_keep_both_sides_in_one_face() {
    let spur = arranged(&[SQUARE, &[(50, 0), (50, 40)]]);
    check_counts(&spur, [6, 6, 1, 1]);
    let edge = spur.edges().find(|&edge| spur.length_um(edge) == 40_000_000).unwrap();
    assert_eq!(spur.face(edge.forward()), spur.face(edge.backward()));
    assert_eq!(Outliner::new(&spur).perimeter_um(FaceId(1)), 400_000_000);
    assert_eq!(spur.around(spur.outer_loop(FaceId(1)).unwrap()).count(), 7);
}

#[test]
fn a_ring_on_a_bridge_is_a_hole_of_the_outline() {
    let inner: &[(i32, i32)] = &[(40, 40), (60, 40), (60, 60), (40, 60), (40, 40)];
    let bridged = arranged(&[SQUARE, inner, &[(40, 40), (0, 40)]]);
    check_counts(&bridged, [9, 10, 2, 1]);
    let outer = bridged
        .bounded_faces()
        .find(|&face| bridged.twice_area_mm2(face) == 2 * 9_600 * 1_000_000);
    let outline = Outliner::new(&bridged).outline(outer.unwrap());
    assert_eq!((outline.shell.len(), outline.holes.len()), (5, 1));
}

#[test]
fn a_line_through_a_pixel_is_led_through_its_center() {
    let q = PlanPoint::new;
    let segments = [
        SourceSegment::new(q(0, 0), q(1_000, 1), SourceId(0)),
        SourceSegment::new(q(400, 0), q(400, -50), SourceId(1)),
    ];
    let led = Arrangement::of(&segments);
    check_counts(&led, [4, 3, 0, 1]);
}

#[test]
fn a_star_of_many_rays_keeps_their_order() {
    let rays: Vec<SourceSegment> = (0..360)
        .map(|ray| {
            let angle = f64::from(ray).to_radians();
            let (y, x) = (crate::number::sin(angle), crate::number::cos(angle));
            let tip = PlanPoint::new((x * 1e6).round() as i32, (y * 1e6).round() as i32);
            SourceSegment::new(PlanPoint::default(), tip, SourceId(ray))
        })
        .collect();
    let star = Arrangement::of(&rays);
    check_counts(&star, [361, 360, 0, 1]);
    // Around the only face, rays follow each other clockwise, each out and back.
    let start = star.hole_loops(FaceId::OUTSIDE).next().unwrap();
    let tips: Vec<PlanPoint> = star
        .around(start)
        .filter(|&half_edge| star.point(star.origin(half_edge)) == PlanPoint::default())
        .map(|half_edge| star.point(star.target(half_edge)))
        .collect();
    assert_eq!(tips.len(), 360);
    let turns = tips.iter().zip(tips.iter().cycle().skip(1));
    assert!(turns.into_iter().all(|(p, q)| PlanPoint::default().cross(*p, *q) < 0));
}

/// Sixty lines at random, of which one moves at a time, now and then all of them: with what the last noding yielded the
/// arrangement is the one made anew. A bundle of lines through nearly one place makes crowded cells.
#[test]
fn noding_from_the_last_equals_noding_anew() {
    let mut state = 11_u64;
    let mut next = |below: u64| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) % below) as i32
    };
    let mut noded = NodedCells::default();
    let mut segments = Vec::new();
    for step in 0..300 {
        let changed = if step % 100 == 0 {
            0..60
        } else {
            step % 60..step % 60 + 1
        };
        for line in changed {
            let reach = if line < 40 { 4_000 } else { 40 };
            let mut end = || PlanPoint::new(next(reach), next(reach));
            let segment = SourceSegment::new(end(), end(), SourceId(line as u32));
            segments.truncate(60);
            match segments.get_mut(line) {
                Some(held) => *held = segment,
                None => segments.push(segment),
            }
        }
        let anew = Arrangement::of(&segments);
        assert_eq!(Arrangement::noded(&segments, Some(&mut noded)), anew, "step {step}");
    }
}
