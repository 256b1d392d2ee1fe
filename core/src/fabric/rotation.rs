//! Which half-edge follows which around a face: the order of edges around each vertex, decided by exact cross products.

use super::edges::Edges;
use super::ids::{HalfEdgeId, VertexId};
use crate::order;
use crate::plan::PlanPoint;

/// For every half-edge, the one that follows it around the face on its left.
///
/// Arriving at a vertex, the next half-edge is the one clockwise after the way back. Cost: linear, for vertices of
/// ordinary degree.
pub(super) fn next_half_edges(vertices: &[PlanPoint], edges: &Edges) -> Vec<HalfEdgeId> {
    let mut incoming_starts = vec![0_u32; vertices.len() + 1];
    for &[_, higher] in &edges.ends {
        incoming_starts[higher.0 as usize + 1] += 1;
    }
    for vertex in 0..vertices.len() {
        incoming_starts[vertex + 1] += incoming_starts[vertex];
    }
    let mut cursors = incoming_starts.clone();
    let mut incoming = vec![0_u32; edges.ends.len()];
    for (edge, &[_, higher]) in edges.ends.iter().enumerate() {
        let cursor = &mut cursors[higher.0 as usize];
        incoming[*cursor as usize] = edge as u32;
        *cursor += 1;
    }
    let mut next = vec![HalfEdgeId(0); edges.ends.len() * 2];
    let mut around: Vec<(PlanPoint, HalfEdgeId)> = Vec::new();
    for (vertex, &center) in vertices.iter().enumerate() {
        // Higher vertices lie in the half plane from straight down (without) to straight up (with), lower ones in the
        // other; within a half plane the sign of the cross product is a total order, counterclockwise.
        around.clear();
        let target = |VertexId(id): VertexId| vertices[id as usize];
        for edge in edges.starts_by_lower[vertex]..edges.starts_by_lower[vertex + 1] {
            around.push((target(edges.ends[edge as usize][1]), HalfEdgeId(edge * 2)));
        }
        let to_higher = around.len();
        sort_counterclockwise(center, &mut around);
        for &edge in &incoming[incoming_starts[vertex] as usize..incoming_starts[vertex + 1] as usize] {
            around.push((target(edges.ends[edge as usize][0]), HalfEdgeId(edge * 2 + 1)));
        }
        sort_counterclockwise(center, &mut around[to_higher..]);
        let Some(&(_, mut clockwise)) = around.last() else {
            continue;
        };
        for &(_, leaving) in &around {
            next[leaving.twin().0 as usize] = clockwise;
            clockwise = leaving;
        }
    }
    next
}

/// Sorts half-edges that leave `center` into one half plane. No two have the same direction: edges meet at ends only.
fn sort_counterclockwise(center: PlanPoint, leaving: &mut [(PlanPoint, HalfEdgeId)]) {
    order::sort_few_by(leaving, |(p, _), (q, _)| 0.cmp(&center.cross(*p, *q)));
}
