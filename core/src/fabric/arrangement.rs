//! The planar arrangement of drawn lines: vertices, edges, and the faces they enclose.

use super::below::span_below;
use super::edges::Edges;
use super::faces::Faces;
use super::grid::Cells;
use super::ids::{EdgeId, FaceId, HalfEdgeId, VertexId};
use super::noded_cells::NodedCells;
use super::noding::Noding;
use super::pixels::{Span, key_of};
use super::rotation::next_half_edges;
use super::segments::{SourceId, SourceSegment};
use crate::order;
use crate::plan::PlanPoint;

/// What a set of drawn segments makes of the plane: where they meet, and what they enclose.
///
/// Edges meet at vertices only; every vertex has an edge. The arrangement is a function of the *set* of segments: neither
/// their order nor their direction nor repetition matters. Rounding moves a line by less than a millimeter.
/// With V vertices, E edges, F faces (the unbounded one included) and C components, `V − E + F = 1 + C`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Arrangement {
    vertices: Box<[PlanPoint]>,
    ends: Box<[[VertexId; 2]]>,
    lengths_um: Box<[u64]>,
    source_starts: Box<[u32]>,
    sources: Box<[SourceId]>,
    next: Box<[HalfEdgeId]>,
    loop_of: Box<[u32]>,
    loop_starts: Box<[HalfEdgeId]>,
    face_of_loop: Box<[FaceId]>,
    outer_loops: Box<[u32]>,
    twice_areas_mm2: Box<[i128]>,
    hole_starts: Box<[u32]>,
    holes: Box<[u32]>,
}

impl Arrangement {
    /// The arrangement of `segments`.
    ///
    /// Snap rounding on the millimeter grid: every end and every crossing (rounded to its half-open pixel) is a vertex,
    /// and a segment that passes through the pixel of a vertex is led through the vertex.
    /// Cost: O(n + k) for n segments with k crossings spread evenly over the drawing.
    ///
    /// ```
    /// use hobnail_core::fabric::{Arrangement, SourceId, SourceSegment};
    /// use hobnail_core::plan::PlanPoint;
    /// let p = PlanPoint::new;
    /// let square = [p(0, 0), p(1000, 0), p(1000, 1000), p(0, 1000), p(0, 0)];
    /// let sides = square.windows(2).map(|side| SourceSegment::new(side[0], side[1], SourceId(0)));
    /// let across = SourceSegment::new(p(-500, 500), p(1500, 500), SourceId(1));
    /// let cut = Arrangement::of(&sides.chain([across]).collect::<Vec<_>>());
    /// let areas: Vec<i128> = cut.bounded_faces().map(|face| cut.twice_area_mm2(face)).collect();
    /// assert_eq!(areas, [1_000_000, 1_000_000]);
    /// assert_eq!(cut.vertices().len(), 8);
    /// ```
    #[must_use]
    pub fn of(segments: &[SourceSegment]) -> Self {
        Self::noded(segments, None)
    }

    /// The same, with what the cells of the last noding yielded.
    pub(super) fn noded(segments: &[SourceSegment], noded: Option<&mut NodedCells>) -> Self {
        // From west to east, as they will be swept: the order decides nothing but what memory is near.
        let drawn: Vec<(Span, SourceId)> = segments
            .iter()
            .filter_map(|segment| Some((Span::between(segment.a, segment.b)?, segment.source)))
            .collect();
        let mut west_ends: Vec<(u64, u32)> = drawn.iter().map(|(span, _)| key_of(span.a)).zip(0..).collect();
        order::sort_keyed(&mut west_ends);
        let (spans, span_sources): (Vec<Span>, Vec<SourceId>) =
            west_ends.into_iter().map(|(_, place)| drawn[place as usize]).unzip();
        let cells = Cells::of(&spans);
        let noding = Noding::of(&spans, &cells, noded);
        let edges = Edges::of(&noding, &span_sources);
        let next = next_half_edges(&noding.vertices, &edges);
        let faces = Faces::of(&noding.vertices, &edges, &next, |vertex| {
            let piece = |span: u32, x_mm: i32| {
                let span_over = spans[span as usize];
                (span_over.a.x_mm <= x_mm && x_mm < span_over.b.x_mm)
                    .then(|| noding.piece_over(span, x_mm))
                    .flatten()
            };
            let [lower, higher] = span_below(&cells, noding.vertices[vertex.0 as usize], piece)?;
            edges.between(lower, higher).map(EdgeId::forward)
        });
        let vertices = noding.vertices;
        let point = |vertex: VertexId| vertices[vertex.0 as usize];
        let length_um = |&[lower, higher]: &[VertexId; 2]| point(lower).distance_um(point(higher));
        Self {
            lengths_um: edges.ends.iter().map(length_um).collect(),
            vertices: vertices.into(),
            ends: edges.ends.into(),
            source_starts: edges.source_starts.into(),
            sources: edges.sources.into(),
            next: next.into(),
            loop_of: faces.loop_of.into(),
            loop_starts: faces.loop_starts.into(),
            face_of_loop: faces.face_of_loop.into(),
            outer_loops: faces.outer_loops.into(),
            twice_areas_mm2: faces.twice_areas_mm2.into(),
            hole_starts: faces.hole_starts.into(),
            holes: faces.holes.into(),
        }
    }

    /// Where the vertices are, sorted by x, then y.
    #[must_use]
    pub fn vertices(&self) -> &[PlanPoint] {
        &self.vertices
    }

    /// The ends of every edge, lower vertex first, sorted.
    #[must_use]
    pub fn edge_ends(&self) -> &[[VertexId; 2]] {
        &self.ends
    }

    /// Where a vertex is.
    #[must_use]
    #[inline(always)]
    pub fn point(&self, vertex: VertexId) -> PlanPoint {
        self.vertices[vertex.0 as usize]
    }

    /// How many edges there are.
    #[must_use]
    pub fn edge_count(&self) -> usize {
        self.ends.len()
    }

    /// All edges, in order.
    pub fn edges(&self) -> impl ExactSizeIterator<Item = EdgeId> + use<> {
        (0..self.ends.len() as u32).map(EdgeId)
    }

    /// The ends of an edge, lower vertex first.
    #[must_use]
    #[inline(always)]
    pub fn ends(&self, edge: EdgeId) -> [VertexId; 2] {
        self.ends[edge.0 as usize]
    }

    /// The lines that cover an edge, ascending, each once.
    #[must_use]
    pub fn sources(&self, edge: EdgeId) -> &[SourceId] {
        let edge = edge.0 as usize;
        &self.sources[self.source_starts[edge] as usize..self.source_starts[edge + 1] as usize]
    }

    /// The length of an edge in integer micrometers, correctly rounded.
    #[must_use]
    #[inline(always)]
    pub fn length_um(&self, edge: EdgeId) -> u64 {
        self.lengths_um[edge.0 as usize]
    }

    /// The vertex a half-edge leaves.
    #[must_use]
    #[inline(always)]
    pub fn origin(&self, half_edge: HalfEdgeId) -> VertexId {
        self.ends(half_edge.edge())[usize::from(!half_edge.is_forward())]
    }

    /// The vertex a half-edge arrives at.
    #[must_use]
    #[inline(always)]
    pub fn target(&self, half_edge: HalfEdgeId) -> VertexId {
        self.origin(half_edge.twin())
    }

    /// How many edges meet at each vertex.
    #[must_use]
    pub fn degrees(&self) -> Vec<u32> {
        let mut degrees = vec![0; self.vertices.len()];
        for vertex in self.ends.iter().flatten() {
            degrees[vertex.0 as usize] += 1;
        }
        degrees
    }

    /// The component of each vertex, numbered in the order of their lowest vertices. Cost: almost linear.
    #[must_use]
    pub fn components(&self) -> Vec<u32> {
        // Each vertex points at a lower one of its component; the lowest points at itself.
        let mut toward: Vec<u32> = (0..self.vertices.len() as u32).collect();
        fn lowest(toward: &mut [u32], mut vertex: u32) -> u32 {
            while toward[vertex as usize] != vertex {
                toward[vertex as usize] = toward[toward[vertex as usize] as usize];
                vertex = toward[vertex as usize];
            }
            vertex
        }
        for &[p, q] in &self.ends {
            let (p, q) = (lowest(&mut toward, p.0), lowest(&mut toward, q.0));
            toward[p.max(q) as usize] = p.min(q);
        }
        let mut count = 0;
        let mut components: Vec<u32> = Vec::with_capacity(toward.len());
        for (vertex, &lower) in toward.iter().enumerate() {
            if lower as usize == vertex {
                components.push(count);
                count += 1;
            } else {
                components.push(components[lower as usize]);
            }
        }
        components
    }

    /// The half-edge that follows around the face on the left.
    #[must_use]
    #[inline(always)]
    pub fn next(&self, half_edge: HalfEdgeId) -> HalfEdgeId {
        self.next[half_edge.0 as usize]
    }

    /// The face to the left of a half-edge.
    #[must_use]
    #[inline(always)]
    pub fn face(&self, half_edge: HalfEdgeId) -> FaceId {
        self.face_of_loop[self.loop_of[half_edge.0 as usize] as usize]
    }

    /// How many faces there are, the unbounded one included.
    #[must_use]
    pub fn face_count(&self) -> usize {
        self.outer_loops.len() + 1
    }

    /// How many connected components there are.
    #[must_use]
    pub fn component_count(&self) -> usize {
        self.holes.len()
    }

    /// All faces but the unbounded one, in order.
    pub fn bounded_faces(&self) -> impl ExactSizeIterator<Item = FaceId> + use<> {
        (0..self.outer_loops.len() as u32).map(|index| FaceId(index + 1))
    }

    /// Twice the area of a face in square millimeters, net of the components inside it; 0 for the unbounded face.
    #[must_use]
    pub fn twice_area_mm2(&self, face: FaceId) -> i128 {
        match face.0.checked_sub(1) {
            Some(index) => self.twice_areas_mm2[index as usize],
            None => 0,
        }
    }

    /// A half-edge of the outer loop of a face; `None` for the unbounded face.
    #[must_use]
    pub fn outer_loop(&self, face: FaceId) -> Option<HalfEdgeId> {
        let index = face.0.checked_sub(1)?;
        Some(self.loop_starts[self.outer_loops[index as usize] as usize])
    }

    /// A half-edge of each loop around a component that lies in a face, in the order of their lowest vertices.
    pub fn hole_loops(&self, face: FaceId) -> impl ExactSizeIterator<Item = HalfEdgeId> + '_ {
        let index = face.0 as usize;
        self.holes[self.hole_starts[index] as usize..self.hole_starts[index + 1] as usize]
            .iter()
            .map(|&hole| self.loop_starts[hole as usize])
    }

    /// All loops of a face: the outer one first.
    pub fn loops(&self, face: FaceId) -> impl Iterator<Item = HalfEdgeId> + '_ {
        self.outer_loop(face).into_iter().chain(self.hole_loops(face))
    }

    /// The half-edges around a loop, from `start` on. Dead ends are walked on both sides.
    pub fn around(&self, start: HalfEdgeId) -> impl Iterator<Item = HalfEdgeId> + '_ {
        Around {
            arrangement: self,
            start,
            here: Some(start),
        }
    }
}

/// A walk around a loop. Loops are walked at every corner of every face while a pointer moves.
struct Around<'a> {
    arrangement: &'a Arrangement,
    start: HalfEdgeId,
    here: Option<HalfEdgeId>,
}

impl Iterator for Around<'_> {
    type Item = HalfEdgeId;

    #[inline(always)]
    fn next(&mut self) -> Option<HalfEdgeId> {
        let here = self.here?;
        let next = self.arrangement.next(here);
        self.here = (next != self.start).then_some(next);
        Some(here)
    }
}

/// The edges as spans: vertices are sorted, so a lower vertex is a lower point.
pub(super) fn spans_of(vertices: &[PlanPoint], ends: &[[VertexId; 2]]) -> Vec<Span> {
    let point = |vertex: VertexId| vertices[vertex.0 as usize];
    ends.iter()
        .map(|&[lower, higher]| Span {
            a: point(lower),
            b: point(higher),
        })
        .collect()
}

#[cfg(test)]
mod tests;
