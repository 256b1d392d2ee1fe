//! The layers of the drawing, undermost first. Each reads the scene and gives plain data to paint.

pub mod fronts;
pub mod furniture;
pub mod land;
pub mod lots;
pub mod marks;
pub mod needs;
pub mod nodes;
pub mod overlay;
pub mod routes;
pub mod shed;
pub mod streets;
pub mod trees;
