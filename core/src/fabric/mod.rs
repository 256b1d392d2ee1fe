//! From drawn lines to the planar arrangement: faces, blocks, frontage, lots, land.
//!
//! In reading order: [`segments`](SourceSegment) go in, the [`Arrangement`] comes out.

pub mod block_outline;
pub mod constraints;
pub mod joins;
pub mod land;
pub mod links;
pub mod lots;
pub mod plan_fabric;
pub mod regions;
pub mod sides;
pub mod streets;

mod anchors;
mod arrangement;
mod below;
mod blocks;
mod carriers;
mod chains;
mod edges;
mod face_cache;
mod faces;
mod grid;
mod ids;
pub(crate) mod kept;
mod locator;
mod noded_cells;
mod noding;
mod outlines;
mod overlaps;
mod pixels;
mod rotation;
mod run;
mod segments;

pub use anchors::anchor_of;
pub use arrangement::Arrangement;
pub use blocks::blocks;
pub use carriers::{Carrier, carriers};
pub use chains::{ChainId, Chains};
pub use face_cache::{FaceRings, LandCache};
pub use ids::{EdgeId, FaceId, HalfEdgeId, VertexId};
pub use locator::{Foot, Locator};
pub use outlines::{Outline, Outliner};
pub use plan_fabric::{Fabric, FaceOfLand};
pub use run::Run;
pub use segments::{SourceId, SourceSegment, segments_of_line};
