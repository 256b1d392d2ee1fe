//! From runs of vertices to edges: each pair of neighbors once, with the lines that cover it.

use super::ids::{EdgeId, VertexId};
use super::noding::Noding;
use super::segments::SourceId;
use crate::order;

/// Edges sorted by their ends, lower vertex first, and what covers them.
pub(super) struct Edges {
    pub ends: Vec<[VertexId; 2]>,
    /// Where the edges with a given lower vertex begin; one more at the end.
    pub starts_by_lower: Vec<u32>,
    /// Where the sources of each edge begin in `sources`; one more at the end.
    pub source_starts: Vec<u32>,
    pub sources: Vec<SourceId>,
}

impl Edges {
    /// Merges the pieces of all runs; `sources[span]` names the line of each span.
    pub fn of(noding: &Noding, span_sources: &[SourceId]) -> Self {
        let vertex_count = noding.vertices.len();
        let mut piece_starts = vec![0_u32; vertex_count + 1];
        for_each_piece(noding, |_, lower, _| piece_starts[lower as usize + 1] += 1);
        for vertex in 0..vertex_count {
            piece_starts[vertex + 1] += piece_starts[vertex];
        }
        let mut cursors = piece_starts.clone();
        // A piece is packed as its higher vertex and its source; its lower vertex is the bucket it lies in.
        let mut pieces = vec![0_u64; piece_starts[vertex_count] as usize];
        for_each_piece(noding, |span, lower, higher| {
            let cursor = &mut cursors[lower as usize];
            pieces[*cursor as usize] = u64::from(higher) << 32 | u64::from(span_sources[span].0);
            *cursor += 1;
        });
        let mut edges = Self {
            ends: Vec::with_capacity(pieces.len()),
            starts_by_lower: Vec::with_capacity(vertex_count + 1),
            source_starts: Vec::with_capacity(pieces.len() + 1),
            sources: Vec::with_capacity(pieces.len()),
        };
        for lower in 0..vertex_count {
            edges.starts_by_lower.push(edges.ends.len() as u32);
            let bucket = &mut pieces[piece_starts[lower] as usize..piece_starts[lower + 1] as usize];
            order::sort_numbers(bucket);
            let mut last = None;
            for &piece in bucket.iter() {
                let (higher, source) = ((piece >> 32) as u32, SourceId(piece as u32));
                if last.is_none_or(|last: u64| (last >> 32) as u32 != higher) {
                    edges.ends.push([VertexId(lower as u32), VertexId(higher)]);
                    edges.source_starts.push(edges.sources.len() as u32);
                }
                if last != Some(piece) {
                    edges.sources.push(source);
                }
                last = Some(piece);
            }
        }
        edges.starts_by_lower.push(edges.ends.len() as u32);
        edges.source_starts.push(edges.sources.len() as u32);
        edges
    }

    /// The edge between two vertices, the lower first.
    pub fn between(&self, lower: VertexId, higher: VertexId) -> Option<EdgeId> {
        let bucket = self.starts_by_lower[lower.0 as usize]..self.starts_by_lower[lower.0 as usize + 1];
        bucket.map(EdgeId).find(|edge| self.ends[edge.0 as usize][1] == higher)
    }
}

/// Calls `visit(span, lower, higher)` for every pair of neighbors along every run.
fn for_each_piece(noding: &Noding, mut visit: impl FnMut(usize, u32, u32)) {
    for span in 0..noding.run_starts.len() - 1 {
        let run = &noding.runs[noding.run_starts[span] as usize..noding.run_starts[span + 1] as usize];
        for pair in run.windows(2) {
            visit(span, pair[0].min(pair[1]), pair[0].max(pair[1]));
        }
    }
}
