//! Chains, outlines, anchors and the locator, over the same drawings.

use hobnail_core::fabric::{
    Arrangement, Chains, EdgeId, FaceId, HalfEdgeId, Locator, Outliner, SourceSegment, anchor_of,
};
use hobnail_core::plan::PlanPoint;

use super::drawings::{KINDS, drawing};
use crate::random::Random;

const DRAWINGS: u64 = if cfg!(debug_assertions) { 3_000 } else { 30_000 };

fn for_each_arrangement(check: impl Fn(&Arrangement, &mut Random, &str)) {
    for seed in 0..DRAWINGS {
        let mut random = Random(seed);
        let segments: Vec<SourceSegment> = drawing(seed % KINDS, &mut random);
        check(
            &Arrangement::of(&segments),
            &mut random,
            &format!("seed {seed}: {segments:?}"),
        );
    }
}

/// Every edge is in exactly one chain; chains run between nodes and have none inside.
#[test]
fn chains_cover_every_edge_once() {
    for_each_arrangement(|arrangement, _, case| {
        let is_forced = |vertex: hobnail_core::fabric::VertexId| vertex.0.is_multiple_of(7);
        let chains = Chains::of(arrangement, is_forced);
        let mut covered = vec![0; arrangement.edge_count()];
        for chain in chains.ids() {
            let vertices: Vec<_> = chains.vertices(arrangement, chain).collect();
            assert_eq!(
                [vertices[0], vertices[vertices.len() - 1]],
                chains.ends(chain),
                "{case}"
            );
            for vertex in &vertices[1..vertices.len() - 1] {
                assert!(chains.nodes().binary_search(vertex).is_err(), "{case}");
                assert!(chains.degree(*vertex) == 2 && !is_forced(*vertex), "{case}");
            }
            for (half_edge, pair) in chains.half_edges(chain).iter().zip(vertices.windows(2)) {
                let ends = [arrangement.origin(*half_edge), arrangement.target(*half_edge)];
                assert_eq!(ends, pair, "{case}");
                assert_eq!(chains.chain_of(half_edge.edge()), chain, "{case}");
                covered[half_edge.edge().0 as usize] += 1;
            }
            let edges = chains.half_edges(chain).iter().map(|half_edge| half_edge.edge());
            let length_um: u64 = edges.map(|edge| arrangement.length_um(edge)).sum();
            assert_eq!(chains.length_um(chain), length_um, "{case}");
            for node in chains.ends(chain) {
                assert!(chains.nodes().binary_search(&node).is_ok(), "{case}");
            }
        }
        assert!(covered.iter().all(|&times| times == 1), "{case}");
        // Half the sum of degrees counts chains; a degree-2 node stands for itself.
        let degrees: u32 = chains.nodes().iter().map(|&node| chains.degree(node)).sum();
        assert_eq!(degrees as usize, 2 * chains.count(), "{case}");
    });
}

/// An outline is one counterclockwise ring and clockwise ones, each simple, and encloses the area of the face.
#[test]
fn outlines_are_simple_rings_that_enclose_the_face() {
    let doubled = |arrangement: &Arrangement, ring: &[HalfEdgeId]| -> i128 {
        let at = |vertex| arrangement.point(vertex);
        let parts = ring.iter().map(|&half_edge| {
            let (p, q) = (at(arrangement.origin(half_edge)), at(arrangement.target(half_edge)));
            i128::from(p.x_mm) * i128::from(q.y_mm) - i128::from(q.x_mm) * i128::from(p.y_mm)
        });
        parts.sum()
    };
    for_each_arrangement(|arrangement, _, case| {
        let mut outliner = Outliner::new(arrangement);
        for face in arrangement.bounded_faces() {
            let outline = outliner.outline(face);
            let mut area = doubled(arrangement, &outline.shell);
            assert!(area > 0, "{case}");
            for hole in &outline.holes {
                let hole = doubled(arrangement, hole);
                assert!(hole < 0, "{case}");
                area += hole;
            }
            assert_eq!(area, arrangement.twice_area_mm2(face), "{case}");
            for ring in std::iter::once(&outline.shell).chain(&outline.holes) {
                let mut vertices: Vec<_> = ring.iter().map(|&half_edge| arrangement.origin(half_edge)).collect();
                for (index, &half_edge) in ring.iter().enumerate() {
                    assert_eq!(
                        arrangement.target(half_edge),
                        vertices[(index + 1) % ring.len()],
                        "{case}"
                    );
                    assert_eq!(arrangement.face(half_edge), face, "{case}");
                }
                vertices.sort_unstable();
                vertices.dedup();
                assert_eq!(vertices.len(), ring.len(), "{case}");
            }
        }
        let shells: usize = arrangement
            .bounded_faces()
            .map(|face| outliner.outline(face).shell.len())
            .sum();
        assert!(shells <= 2 * arrangement.edge_count(), "{case}");
        assert!(outliner.outline(FaceId::OUTSIDE).shell.is_empty(), "{case}");
    });
}

/// The face found from an anchor is the face the anchor was made for, and no edge runs through it.
#[test]
fn anchors_lie_in_their_faces() {
    for_each_arrangement(|arrangement, _, case| {
        let locator = Locator::of(arrangement);
        for face in arrangement.bounded_faces() {
            if let Some(anchor) = anchor_of(arrangement, face) {
                assert_eq!(locator.face_at(anchor), face, "{anchor:?} {case}");
                assert!(!lies_on_an_edge(arrangement, anchor), "{anchor:?} {case}");
            }
        }
        assert_eq!(anchor_of(arrangement, FaceId::OUTSIDE), None);
    });
}

fn lies_on_an_edge(arrangement: &Arrangement, p: PlanPoint) -> bool {
    arrangement.edge_ends().iter().any(|ends| {
        let [a, b] = ends.map(|vertex| arrangement.point(vertex));
        let farthest = a.squared_distance_mm2(p).max(b.squared_distance_mm2(p));
        a.cross(b, p) == 0 && farthest <= a.squared_distance_mm2(b)
    })
}

fn somewhere(arrangement: &Arrangement, random: &mut Random) -> PlanPoint {
    let near = *random.pick(arrangement.vertices());
    let reach = *random.pick(&[1, 4, 30, 2_000, 90_000_000]);
    let moved = |v: i32, by: i32| (v + by).clamp(-100_000_000, 100_000_000);
    PlanPoint::new(
        moved(near.x_mm, random.within(-reach, reach)),
        moved(near.y_mm, random.within(-reach, reach)),
    )
}

/// The face a point is in, by winding around it, for points on no edge.
#[test]
fn location_agrees_with_winding() {
    for_each_arrangement(|arrangement, random, case| {
        if arrangement.vertices().is_empty() {
            return;
        }
        let locator = Locator::of(arrangement);
        for _ in 0..20 {
            let p = somewhere(arrangement, random);
            let at = |vertex| arrangement.point(vertex);
            if lies_on_an_edge(arrangement, p) {
                continue;
            }
            let winds_around = |start: HalfEdgeId| {
                let mut winding = 0;
                for half_edge in arrangement.around(start) {
                    let (a, b) = (at(arrangement.origin(half_edge)), at(arrangement.target(half_edge)));
                    if a.y_mm <= p.y_mm && b.y_mm > p.y_mm && a.cross(b, p) > 0 {
                        winding += 1;
                    } else if a.y_mm > p.y_mm && b.y_mm <= p.y_mm && a.cross(b, p) < 0 {
                        winding -= 1;
                    }
                }
                winding != 0
            };
            let holds = |&face: &FaceId| {
                arrangement.outer_loop(face).is_some_and(winds_around)
                    && !arrangement.hole_loops(face).any(winds_around)
            };
            let expected: Vec<FaceId> = arrangement.bounded_faces().filter(holds).collect();
            assert!(expected.len() <= 1, "{p:?} {case}");
            let expected = expected.first().copied().unwrap_or(FaceId::OUTSIDE);
            assert_eq!(locator.face_at(p), expected, "{p:?} {case}");
        }
    });
}

/// The nearest edge, by comparing exact fractions over all edges; of equals the lowest.
#[test]
fn the_nearest_edge_is_the_nearest_of_all() {
    // Squared distances as fractions; coordinates are kept small enough for products of two of them.
    let squared = |a: PlanPoint, b: PlanPoint, p: PlanPoint| -> (i128, i128) {
        let d = |p: PlanPoint, q: PlanPoint| {
            (
                i128::from(q.x_mm) - i128::from(p.x_mm),
                i128::from(q.y_mm) - i128::from(p.y_mm),
            )
        };
        let dot = |u: (i128, i128), v: (i128, i128)| u.0 * v.0 + u.1 * v.1;
        let (along, whole) = (dot(d(a, b), d(a, p)), dot(d(a, b), d(a, b)));
        if along <= 0 {
            (dot(d(a, p), d(a, p)), 1)
        } else if along >= whole {
            (dot(d(b, p), d(b, p)), 1)
        } else {
            (i128::from(a.cross(b, p)).pow(2), whole)
        }
    };
    for_each_arrangement(|arrangement, random, case| {
        let reaches = |p: &PlanPoint| p.x_mm.abs() < 2_000 && p.y_mm.abs() < 2_000;
        if arrangement.vertices().is_empty() || !arrangement.vertices().iter().all(reaches) {
            return;
        }
        let locator = Locator::of(arrangement);
        for _ in 0..20 {
            let p = somewhere(arrangement, random);
            let p = PlanPoint::new(p.x_mm.clamp(-9_000, 9_000), p.y_mm.clamp(-9_000, 9_000));
            let distance = |edge: EdgeId| {
                let [a, b] = arrangement.ends(edge).map(|vertex| arrangement.point(vertex));
                squared(a, b, p)
            };
            let nearest = arrangement.edges().min_by(|&e, &f| {
                let (d, other) = (distance(e), distance(f));
                (d.0 * other.1).cmp(&(other.0 * d.1)).then(e.cmp(&f))
            });
            let foot = locator.nearest(p).unwrap();
            assert_eq!(Some(foot.edge), nearest, "{p:?} {case}");
            let [a, b] = arrangement.ends(foot.edge).map(|vertex| arrangement.point(vertex));
            assert!(foot.along_um <= a.distance_um(b), "{p:?} {case}");
            // The foot is rounded by at most half the diagonal of a pixel.
            assert!(a.distance_um(foot.point).abs_diff(foot.along_um) <= 708, "{p:?} {case}");
            let (numerator, denominator) = distance(foot.edge);
            let exact_um = (numerator as f64 / denominator as f64).sqrt() * 1e3;
            assert!(
                (foot.point.distance_um(p) as f64 - exact_um).abs() <= 708.0,
                "{p:?} {case}"
            );
        }
    });
}
