//! What a face is by itself, kept from one fabric to the next.
//!
//! A face's outline, its inner point and its land depend on its boundary, the rights-of-way along it and the constraints
//! near it, and on nothing else. All of that is written down as a list of integers, which is compared exactly: a face
//! that has not changed costs one list and one comparison.

use std::sync::Arc;

use super::anchors::anchor_of;
use super::arrangement::Arrangement;
use super::block_outline::{BlockLengths, ring_lengths};
use super::constraints::Constraint;
use super::ids::{FaceId, HalfEdgeId};
use super::kept::Kept;
use super::land::{Bounds, Land, add_wider_beyond, land_key, land_of};
use super::noded_cells::NodedCells;
use super::outlines::Outliner;
use crate::plan::PlanPoint;

/// Rings of a face, shell first.
pub type FaceRings = Vec<Vec<PlanPoint>>;

/// What a face is by itself.
#[derive(Clone, Debug)]
pub(super) struct FaceShape {
    pub outline: Arc<FaceRings>,
    pub anchor: PlanPoint,
    pub land: Arc<Land>,
    /// Its lengths as a block of its own, where its boundary passes no vertex twice.
    pub as_block: Option<BlockLengths>,
}

/// What is kept from one fabric to the next: faces under all they depend on, and how their lines met.
#[derive(Clone, Debug, Default)]
pub struct LandCache {
    shapes: Kept<FaceShape>,
    /// What the cells of the last fabric's noding yielded.
    pub(super) noded: NodedCells,
    /// Memory for the key at hand.
    key: Vec<i32>,
}

/// Begins a loop of the boundary in a key; no coordinate and no width is as low.
const LOOP: i32 = i32::MIN;
/// Begins what a key adds where rights-of-way are kept for streets that are not there.
const KEPT: i32 = i32::MIN + 2;
/// Begins a constraint in a key.
const CONSTRAINT: i32 = i32::MIN + 1;
/// Begins a strip of a wider street beyond a corner in a key.
const BEYOND: i32 = i32::MIN + 2;

impl LandCache {
    /// What a face is. `half_width_mm` gives half the right-of-way along a half-edge, a multiple of a half, and
    /// `built_half_width_mm` the part of it that belongs to a street that is there.
    pub(super) fn shape(
        &mut self,
        arrangement: &Arrangement,
        outliner: &mut Outliner<'_>,
        face: FaceId,
        half_width_mm: impl Fn(HalfEdgeId) -> f64,
        built_half_width_mm: impl Fn(HalfEdgeId) -> f64,
        constraints: &[(Bounds, Constraint)],
    ) -> FaceShape {
        let mut key = std::mem::take(&mut self.key);
        key.clear();
        add_key_of(arrangement, face, &half_width_mm, constraints, &mut key);
        let mut around = arrangement.loops(face).flat_map(|start| arrangement.around(start));
        let keeps = around.any(|half_edge| built_half_width_mm(half_edge) < half_width_mm(half_edge));
        if keeps {
            key.push(KEPT);
            add_key_of(arrangement, face, &built_half_width_mm, constraints, &mut key);
        }
        let shape = self.shapes.get_or(&key, || {
            let boundary = outliner.outline(face).shell;
            let around = arrangement.outer_loop(face).map(|start| arrangement.around(start));
            let is_plain = around.is_some_and(|around| around.count() == boundary.len());
            let widths: Vec<f64> = boundary
                .iter()
                .map(|half_edge| built_half_width_mm(*half_edge))
                .collect();
            let whole = land_key(arrangement, outliner, face, half_width_mm, constraints);
            let mut land = land_of(&whole);
            if keeps {
                let built = land_key(arrangement, outliner, face, &built_half_width_mm, constraints);
                land.twice_kept_mm2 = (land_of(&built).twice_area_mm2 - land.twice_area_mm2).max(0);
            }
            let corner = arrangement.outer_loop(face).map(|start| arrangement.origin(start));
            let anchor = anchor_of(arrangement, face).or(corner.map(|vertex| arrangement.point(vertex)));
            FaceShape {
                as_block: is_plain
                    .then(|| ring_lengths(arrangement, &boundary, &widths))
                    .flatten(),
                land: Arc::new(land),
                outline: Arc::new(whole.outline().to_vec()),
                anchor: anchor.unwrap_or_default(),
            }
        });
        self.key = key;
        shape
    }

    /// Ends a fabric: what it did not ask for is forgotten.
    pub(super) fn end_fabric(&mut self) {
        self.shapes.end_round();
    }
}

fn add_key_of(
    arrangement: &Arrangement,
    face: FaceId,
    half_width_mm: &impl Fn(HalfEdgeId) -> f64,
    constraints: &[(Bounds, Constraint)],
    key: &mut Vec<i32>,
) {
    let mut points = Vec::new();
    let mut beyond = Vec::new();
    for start in arrangement.loops(face) {
        key.push(LOOP);
        for half_edge in arrangement.around(start) {
            let point = arrangement.point(arrangement.origin(half_edge));
            let width_mm = half_width_mm(half_edge);
            key.extend_from_slice(&[point.x_mm, point.y_mm, (width_mm * 2.0) as i32]);
            if !constraints.is_empty() {
                points.push(point);
            }
            let after = arrangement.next(half_edge);
            let widths = [width_mm, half_width_mm(after)];
            add_wider_beyond(arrangement, [half_edge, after], widths, half_width_mm, &mut beyond);
        }
    }
    for strip in beyond {
        key.push(BEYOND);
        key.extend(strip.iter().flat_map(|point| [point.x_mm, point.y_mm]));
    }
    if !constraints.is_empty() {
        let bounds = Bounds::of(&points);
        for (_, near) in constraints.iter().filter(|(other, _)| bounds.meets(other)) {
            key.extend([CONSTRAINT, near.held_by as i32]);
            key.extend(near.answers.map(i32::from));
            key.extend(near.outline.iter().flat_map(|point| [point.x_mm, point.y_mm]));
        }
    }
}
