//! Lines as tests write them.

use crate::plan::{PlanPoint, Vertex};

/// A line through these places.
pub fn line(points: &[(i32, i32)]) -> Vec<Vertex> {
    points.iter().map(|&(x, y)| Vertex::at(PlanPoint::new(x, y))).collect()
}

/// The places of its vertices.
pub fn points(line: &[Vertex]) -> Vec<(i32, i32)> {
    line.iter()
        .map(|vertex| (vertex.point.x_mm, vertex.point.y_mm))
        .collect()
}
