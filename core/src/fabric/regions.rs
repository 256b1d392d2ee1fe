//! Land as pieces with holes, and what an outline takes of it.
//!
//! Integer millimeters and integer boolean operations: the same on every machine. Where edges cross, the crossing is
//! rounded to the grid, so an area is exact to about a millimeter times the length of what was cut.

use std::cell::Cell;

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;
use i_overlay::i_shape::int::shape::IntShapes;

use super::constraints::LandSwitch;
use super::land::{Bounds, land_key};
use super::plan_fabric::Fabric;
use super::{FaceId, Outliner};
use crate::plan::PlanPoint;

/// A closed ring, not closed by repetition.
pub type Ring = Vec<PlanPoint>;

/// How some rings and others are put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Combined {
    /// What is left of the first without the others.
    Without,
    /// What lies in both.
    Within,
}

/// Pieces of land, each a shell and its holes, of some rings (shells counterclockwise, holes clockwise) and others.
///
/// The others may wind either way and overlap. Cost: one boolean operation.
#[must_use]
pub fn combined<'a>(rings: impl IntoIterator<Item = &'a Ring>, how: Combined, others: &[Ring]) -> Vec<Vec<Ring>> {
    let rule = match how {
        Combined::Without => OverlayRule::Difference,
        Combined::Within => OverlayRule::Intersect,
    };
    let shapes = overlaid(rule, |overlay| {
        for ring in rings {
            overlay.add_path_iter(ring.iter().map(int_point), ShapeType::Subject);
        }
        for ring in others {
            add_taken(overlay, ring);
        }
    });
    let back = |ring: Vec<IntPoint<i32>>| ring.iter().map(|point| PlanPoint::new(point.x, point.y)).collect();
    shapes
        .into_iter()
        .map(|shape| shape.into_iter().map(back).collect())
        .collect()
}

thread_local! {
    /// Memory for boolean operations: thousands are made in a row.
    static OVERLAY: Cell<Option<Overlay<i32>>> = const { Cell::new(None) };
}

/// The shapes that a boolean operation makes of the rings that `fill` adds.
pub(super) fn overlaid(rule: OverlayRule, fill: impl FnOnce(&mut Overlay<i32>)) -> IntShapes<i32> {
    let mut overlay = OVERLAY.take().unwrap_or_else(|| Overlay::new(256));
    overlay.clear();
    fill(&mut overlay);
    let shapes = overlay.overlay(rule, FillRule::NonZero);
    OVERLAY.set(Some(overlay));
    shapes
}

/// Adds a ring that is taken away or cut to, counterclockwise whichever way it winds, so that overlapping ones add up
/// under the non-zero rule instead of cancelling.
pub(super) fn add_taken(overlay: &mut Overlay<i32>, ring: &[PlanPoint]) {
    if twice_area_mm2(ring) < 0 {
        overlay.add_path_iter(ring.iter().rev().map(int_point), ShapeType::Clip);
    } else {
        overlay.add_path_iter(ring.iter().map(int_point), ShapeType::Clip);
    }
}

pub(super) fn int_point(point: &PlanPoint) -> IntPoint<i32> {
    IntPoint::new(point.x_mm, point.y_mm)
}

/// What is left of some rings (shells counterclockwise, holes clockwise) after `taken`, in rings of the same kind.
///
/// Rings of `taken` may wind either way and overlap. Cost: one boolean operation.
#[must_use]
pub fn minus(rings: &[Ring], taken: &[Ring]) -> Vec<Ring> {
    combined(rings, Combined::Without, taken)
        .into_iter()
        .flatten()
        .collect()
}

/// Pieces of land covered by any of some rings; where shells wind counterclockwise and holes clockwise, holes stay.
///
/// Cost: one boolean operation.
#[must_use]
pub fn united<'a>(rings: impl IntoIterator<Item = &'a Ring>) -> Vec<Vec<Ring>> {
    combined(rings, Combined::Without, &[])
}

/// Twice the signed area of a ring in square millimeters: positive where it winds counterclockwise.
#[must_use]
pub fn twice_area_mm2(ring: &[PlanPoint]) -> i128 {
    let Some(origin) = ring.first() else { return 0 };
    let triangles = ring.windows(2).map(|pair| i128::from(origin.cross(pair[0], pair[1])));
    triangles.sum()
}

/// Land beyond all faces, as what has to be taken from an outline drawn there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Beyond {
    taken: Vec<(Bounds, Ring)>,
}

impl Beyond {
    /// Beyond the faces of a fabric: land enclosed by streets, rights-of-way of the streets around it, and land held
    /// back are not there. Cost: the outer boundary of the drawing.
    #[must_use]
    pub fn of(fabric: &Fabric) -> Self {
        let mut outliner = Outliner::new(&fabric.arrangement);
        let half_width_mm = |half_edge| fabric.half_width_mm(half_edge);
        let key = land_key(&fabric.arrangement, &mut outliner, FaceId::OUTSIDE, half_width_mm, &[]);
        let held_back = fabric
            .constraints
            .iter()
            .filter(|one| one.says_no_to(LandSwitch::Buildable));
        let rings = key
            .outline()
            .iter()
            .chain(key.strips())
            .chain(held_back.map(|one| &one.outline));
        let taken = rings
            .filter(|ring| ring.len() > 2)
            .map(|ring| (Bounds::of(ring), ring.clone()));
        Self { taken: taken.collect() }
    }

    /// What is taken near an outline.
    #[must_use]
    pub fn taken_from(&self, outline: &[PlanPoint]) -> Vec<Ring> {
        let bounds = Bounds::of(outline);
        let near = self.taken.iter().filter(|(other, _)| bounds.meets(other));
        near.map(|(_, ring)| ring.clone()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(low: i32, high: i32) -> Ring {
        [(low, low), (high, low), (high, high), (low, high)]
            .map(|(x, y)| PlanPoint::new(x, y))
            .to_vec()
    }

    fn area(rings: &[Ring]) -> i128 {
        rings.iter().map(|ring| twice_area_mm2(ring)).sum::<i128>() / 2
    }

    #[test]
    fn overlapping_rings_are_taken_once_whichever_way_they_wind() {
        let mut clockwise = square(5, 15);
        clockwise.reverse();
        let left = minus(&[square(0, 10)], &[square(5, 15), clockwise]);
        assert_eq!(area(&left), 75);
    }

    #[test]
    fn a_ring_inside_leaves_a_hole() {
        let left = minus(&[square(0, 10)], &[square(4, 6)]);
        assert_eq!((left.len(), area(&left)), (2, 96));
        // The hole stays one when more is taken.
        assert_eq!(area(&minus(&left, &[square(5, 20)])), 96 - 24);
    }
}
