use hobnail_core::order::OrderedSet;

use hobnail_core::fabric::{Arrangement, FaceId, HalfEdgeId, SourceSegment};
use hobnail_core::plan::PlanPoint;

use super::drawings::{KINDS, drawing};
use super::oracle;
use crate::random::Random;

/// Drawings per property: all of them in an optimized build, a tenth while developing.
const DRAWINGS: u64 = if cfg!(debug_assertions) { 10_000 } else { 100_000 };

fn for_each_drawing(count: u64, check: impl Fn(&[SourceSegment], &str)) {
    for seed in 0..count {
        let mut random = Random(seed);
        let segments = drawing(seed % KINDS, &mut random);
        check(&segments, &format!("seed {seed}: {segments:?}"));
    }
}

fn twice_area_of_loop(arrangement: &Arrangement, start: HalfEdgeId) -> i128 {
    let at = |half_edge| arrangement.point(arrangement.origin(half_edge));
    let wide = |p: PlanPoint| (i128::from(p.x_mm), i128::from(p.y_mm));
    let around = arrangement.around(start);
    around
        .map(|half_edge| {
            let ((px, py), (qx, qy)) = (wide(at(half_edge)), wide(at(arrangement.next(half_edge))));
            px * qy - qx * py
        })
        .sum()
}

/// `V − E + F = 1 + C`, with components counted by joining ends, and inner areas that sum to the outer boundary's.
#[test]
fn euler_holds_and_areas_add_up() {
    for_each_drawing(DRAWINGS, |segments, case| {
        let arrangement = Arrangement::of(segments);
        let mut parent: Vec<usize> = (0..arrangement.vertices().len()).collect();
        fn root(parent: &mut [usize], mut v: usize) -> usize {
            while parent[v] != v {
                parent[v] = parent[parent[v]];
                v = parent[v];
            }
            v
        }
        for &[lower, higher] in arrangement.edge_ends() {
            let (p, q) = (
                root(&mut parent, lower.0 as usize),
                root(&mut parent, higher.0 as usize),
            );
            parent[p.max(q)] = p.min(q);
        }
        let components = (0..parent.len()).filter(|&v| parent[v] == v).count();
        assert_eq!(arrangement.component_count(), components, "{case}");
        let counted = arrangement.vertices().len() as i64 - arrangement.edge_count() as i64;
        assert_eq!(
            counted + arrangement.face_count() as i64,
            1 + components as i64,
            "{case}"
        );

        let inner: i128 = arrangement
            .bounded_faces()
            .map(|face| arrangement.twice_area_mm2(face))
            .sum();
        let around = arrangement.hole_loops(FaceId::OUTSIDE);
        let outer: i128 = around.map(|start| -twice_area_of_loop(&arrangement, start)).sum();
        assert_eq!(inner, outer, "{case}");
    });
}

#[test]
fn equals_the_slow_arrangement() {
    for_each_drawing(DRAWINGS / 10, |segments, case| {
        let (fast, slow) = (Arrangement::of(segments), oracle::arrange(segments));
        assert_eq!(fast.vertices(), slow.vertices, "{case}");
        assert_eq!(fast.edge_count(), slow.edges.len(), "{case}");
        for (edge, (ends, sources)) in fast.edges().zip(&slow.edges) {
            assert_eq!(fast.ends(edge).map(|vertex| fast.point(vertex)), *ends, "{case}");
            assert!(fast.sources(edge).iter().eq(sources), "{case}: {ends:?}");
        }
        let mut areas: Vec<i128> = fast.bounded_faces().map(|face| fast.twice_area_mm2(face)).collect();
        areas.sort_unstable();
        assert_eq!(areas, slow.twice_areas_mm2, "{case}");
        assert_eq!(fast.component_count(), slow.components, "{case}");
    });
}

/// Snap rounding makes no new crossings: edges meet at their ends only.
#[test]
fn edges_meet_at_ends_only() {
    for_each_drawing(DRAWINGS / 4, |segments, case| {
        let arrangement = Arrangement::of(segments);
        let point = |vertex| arrangement.point(vertex);
        let ends: Vec<[PlanPoint; 2]> = arrangement.edge_ends().iter().map(|ends| ends.map(point)).collect();
        assert_eq!(oracle::meeting_off_ends(&ends), None, "{case}");
    });
}

/// Order, direction and repetition of the segments do not matter.
#[test]
fn depends_on_the_set_of_segments_only() {
    for_each_drawing(DRAWINGS / 4, |segments, case| {
        let mut random = Random(segments.len() as u64);
        let mut written_otherwise = segments.to_vec();
        for _ in 0..random.within(0, 4) {
            written_otherwise.push(*random.pick(segments));
        }
        for index in (1..written_otherwise.len()).rev() {
            written_otherwise.swap(index, random.within(0, index as i32) as usize);
        }
        for segment in &mut written_otherwise {
            if random.within(0, 1) == 1 {
                (segment.a, segment.b) = (segment.b, segment.a);
            }
        }
        assert_eq!(Arrangement::of(segments), Arrangement::of(&written_otherwise), "{case}");
    });
}

/// Rounding moves no end.
#[test]
fn every_end_is_a_vertex() {
    for_each_drawing(DRAWINGS / 10, |segments, case| {
        let arrangement = Arrangement::of(segments);
        let vertices: OrderedSet<PlanPoint> = arrangement.vertices().iter().copied().collect();
        for segment in segments.iter().filter(|segment| segment.a != segment.b) {
            assert!(vertices.contains(&segment.a) && vertices.contains(&segment.b), "{case}");
        }
    });
}
