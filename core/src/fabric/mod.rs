//! From drawn lines to the planar arrangement: faces, blocks, frontage, lots, land.
//!
//! In reading order: [`segments`](SourceSegment) go in, the [`Arrangement`] comes out.

mod arrangement;
mod below;
mod edges;
mod faces;
mod grid;
mod ids;
mod noding;
mod pixels;
mod rotation;
mod segments;

pub use arrangement::Arrangement;
pub use ids::{EdgeId, FaceId, HalfEdgeId, VertexId};
pub use segments::{SourceId, SourceSegment, segments_of_line};
