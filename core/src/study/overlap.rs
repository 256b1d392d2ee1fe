//! How much land two faces share.
//!
//! The question behind carrying uses over: which faces of yesterday does a face of today lie on, and by how much?

use crate::order;
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use crate::fabric::regions::twice_area_mm2;
use crate::plan::PlanPoint;

/// A face as rings: the outer ring counterclockwise, each hole clockwise, none closed by repetition.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rings {
    /// The outer ring first, then the holes.
    pub rings: Vec<Vec<PlanPoint>>,
}

/// An axis-parallel box around points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bounds {
    low: PlanPoint,
    high: PlanPoint,
}

impl Rings {
    /// Rings turned so that each begins at its least point, holes sorted: equal faces have equal values.
    #[must_use]
    pub fn canonical(mut rings: Vec<Vec<PlanPoint>>) -> Self {
        for ring in &mut rings {
            let least = ring
                .iter()
                .enumerate()
                .min_by_key(|(_, point)| **point)
                .map_or(0, |(index, _)| index);
            ring.rotate_left(least);
        }
        if let Some((_, holes)) = rings.split_first_mut() {
            order::sort(holes);
        }
        Self { rings }
    }

    /// Twice the area, in square millimeters, holes taken out.
    #[must_use]
    pub fn twice_area_mm2(&self) -> i128 {
        self.rings.iter().map(|ring| twice_area_mm2(ring)).sum()
    }

    /// The box around the outer ring; `None` for a face without points.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        let outer = self.rings.first()?;
        let first = *outer.first()?;
        Some(outer.iter().fold(
            Bounds {
                low: first,
                high: first,
            },
            |bounds, point| Bounds {
                low: PlanPoint::new(bounds.low.x_mm.min(point.x_mm), bounds.low.y_mm.min(point.y_mm)),
                high: PlanPoint::new(bounds.high.x_mm.max(point.x_mm), bounds.high.y_mm.max(point.y_mm)),
            },
        ))
    }
}

impl Bounds {
    /// Whether two boxes share more than an edge.
    #[must_use]
    pub const fn overlap(&self, other: &Self) -> bool {
        self.low.x_mm < other.high.x_mm
            && other.low.x_mm < self.high.x_mm
            && self.low.y_mm < other.high.y_mm
            && other.low.y_mm < self.high.y_mm
    }
}

/// Twice the area two faces share, in square millimeters.
///
/// Crossings of their boundaries are rounded to the millimeter grid, so the area is exact to about one millimeter times
/// the length of the shared boundary; it is the same on every machine.
#[must_use]
pub fn twice_shared_area_mm2(a: &Rings, b: &Rings) -> i128 {
    let contours = |face: &Rings| -> Vec<Vec<IntPoint>> {
        face.rings
            .iter()
            .map(|ring| ring.iter().map(|point| IntPoint::new(point.x_mm, point.y_mm)).collect())
            .collect()
    };
    let shapes =
        Overlay::from_subj_and_clip(&contours(a), &contours(b)).overlay(OverlayRule::Intersect, FillRule::NonZero);
    let rings = shapes.iter().flatten();
    rings
        .map(|ring| {
            let points: Vec<PlanPoint> = ring.iter().map(|point| PlanPoint::new(point.x, point.y)).collect();
            twice_area_mm2(&points)
        })
        .sum::<i128>()
        .abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(low_mm: i32, high_mm: i32) -> Vec<PlanPoint> {
        vec![
            PlanPoint::new(low_mm, low_mm),
            PlanPoint::new(high_mm, low_mm),
            PlanPoint::new(high_mm, high_mm),
            PlanPoint::new(low_mm, high_mm),
        ]
    }

    #[test]
    fn shared_area_of_squares_and_holes() {
        let mut hole = square(40, 60);
        hole.reverse();
        let with_hole = Rings::canonical(vec![square(0, 100), hole]);
        let plain = Rings::canonical(vec![square(50, 150)]);
        assert_eq!(with_hole.twice_area_mm2(), 2 * (10_000 - 400));
        assert_eq!(twice_shared_area_mm2(&with_hole, &plain), 2 * (2_500 - 100));
        assert_eq!(twice_shared_area_mm2(&plain, &with_hole), 2 * (2_500 - 100));
        let apart = Rings::canonical(vec![square(200, 300)]);
        assert_eq!(twice_shared_area_mm2(&with_hole, &apart), 0);
    }

    #[test]
    fn canonical_rings_compare_equal_wherever_they_start() {
        let mut turned = square(0, 10);
        turned.rotate_left(2);
        assert_eq!(Rings::canonical(vec![square(0, 10)]), Rings::canonical(vec![turned]));
    }
}
