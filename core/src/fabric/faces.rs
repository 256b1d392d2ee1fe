//! Loops of half-edges, and the faces they bound.

use super::edges::Edges;
use super::ids::{FaceId, HalfEdgeId, VertexId};
use crate::order;
use crate::plan::PlanPoint;

/// The loops of an arrangement and how they make faces.
pub(super) struct Faces {
    /// The loop of every half-edge.
    pub loop_of: Vec<u32>,
    /// A half-edge of every loop: its lowest.
    pub loop_starts: Vec<HalfEdgeId>,
    /// The face to the left of every loop.
    pub face_of_loop: Vec<FaceId>,
    /// The outer loop of every bounded face, from face 1 on.
    pub outer_loops: Vec<u32>,
    /// Twice the area of every bounded face, net of holes, from face 1 on.
    pub twice_areas_mm2: Vec<i128>,
    /// Where the holes of each face (the unbounded one included) begin in `holes`; one more at the end.
    pub hole_starts: Vec<u32>,
    /// Loops around components that lie inside a face.
    pub holes: Vec<u32>,
}

/// A loop with the face on its left.
struct Loop {
    start: HalfEdgeId,
    /// Twice the signed area; positive when it runs counterclockwise, as the outer loop of a face does.
    twice_area_mm2: i128,
    lowest: VertexId,
}

impl Faces {
    /// Traces the loops and finds in which face each component lies. `half_edge_below` answers the edge directly below
    /// the lowest vertex of a component, west to east, or `None` when nothing lies below.
    pub fn of(
        vertices: &[PlanPoint],
        edges: &Edges,
        next: &[HalfEdgeId],
        half_edge_below: impl Fn(VertexId) -> Option<HalfEdgeId>,
    ) -> Self {
        let (loop_of, loops) = trace(vertices, edges, next);
        let mut face_of_loop = vec![FaceId::OUTSIDE; loops.len()];
        let (mut outer_loops, mut twice_areas_mm2) = (Vec::new(), Vec::new());
        let mut around_components = Vec::new();
        for (index, traced) in loops.iter().enumerate() {
            // A bounded face has an area, so a loop without one runs around a tree.
            if traced.twice_area_mm2 > 0 {
                outer_loops.push(index as u32);
                twice_areas_mm2.push(traced.twice_area_mm2);
                face_of_loop[index] = FaceId(outer_loops.len() as u32);
            } else {
                around_components.push((u64::from(traced.lowest.0), index as u32));
            }
        }
        // In ascending order of lowest vertex: what lies directly below a component starts lower, so it is settled.
        order::sort_keyed(&mut around_components);
        if around_components.len() > 1 {
            for &(_, component) in &around_components {
                if let Some(half_edge) = half_edge_below(loops[component as usize].lowest) {
                    face_of_loop[component as usize] = face_of_loop[loop_of[half_edge.0 as usize] as usize];
                }
            }
        }
        let mut hole_starts = vec![0_u32; outer_loops.len() + 2];
        for &(_, component) in &around_components {
            let face = face_of_loop[component as usize];
            hole_starts[face.0 as usize + 1] += 1;
            if face != FaceId::OUTSIDE {
                twice_areas_mm2[face.0 as usize - 1] += loops[component as usize].twice_area_mm2;
            }
        }
        for face in 0..=outer_loops.len() {
            hole_starts[face + 1] += hole_starts[face];
        }
        let mut cursors = hole_starts.clone();
        let mut holes = vec![0_u32; around_components.len()];
        for &(_, component) in &around_components {
            let cursor = &mut cursors[face_of_loop[component as usize].0 as usize];
            holes[*cursor as usize] = component;
            *cursor += 1;
        }
        Self {
            loop_of,
            loop_starts: loops.iter().map(|traced| traced.start).collect(),
            face_of_loop,
            outer_loops,
            twice_areas_mm2,
            hole_starts,
            holes,
        }
    }
}

fn trace(vertices: &[PlanPoint], edges: &Edges, next: &[HalfEdgeId]) -> (Vec<u32>, Vec<Loop>) {
    const UNTRACED: u32 = u32::MAX;
    let mut loop_of = vec![UNTRACED; next.len()];
    let mut loops: Vec<Loop> = Vec::new();
    for start in 0..next.len() {
        if loop_of[start] != UNTRACED {
            continue;
        }
        let index = loops.len() as u32;
        let mut lowest = VertexId(u32::MAX);
        let mut twice_area_mm2 = 0_i128;
        let mut half_edge = HalfEdgeId(start as u32);
        while loop_of[half_edge.0 as usize] == UNTRACED {
            loop_of[half_edge.0 as usize] = index;
            let [lower, higher] = edges.ends[half_edge.edge().0 as usize];
            lowest = lowest.min(lower);
            let (p, q) = (vertices[lower.0 as usize], vertices[higher.0 as usize]);
            // The doubled trapezoid under the edge, counted against the way it is walked.
            let trapezoid = (i64::from(q.x_mm) - i64::from(p.x_mm)) * (i64::from(p.y_mm) + i64::from(q.y_mm));
            twice_area_mm2 += i128::from(if half_edge.is_forward() { -trapezoid } else { trapezoid });
            half_edge = next[half_edge.0 as usize];
        }
        loops.push(Loop {
            start: HalfEdgeId(start as u32),
            twice_area_mm2,
            lowest,
        });
    }
    (loop_of, loops)
}
