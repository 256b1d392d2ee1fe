//! Enclosed land, as tools see it, from the fabric.

use hobnail_core::fabric::Fabric;
use hobnail_core::plan::PlanPoint;

use crate::canvas::scene_of::run_of;
use crate::tools::{Land, LandSide};

/// The enclosed land at a point.
#[must_use]
pub fn land_at(fabric: &Fabric, point: PlanPoint) -> Option<Land> {
    let face = fabric.face_at(point)?;
    let sides = face.sides.iter().filter_map(|side| {
        let (street, hand) = side.street?;
        let street = fabric.lines.streets.get(street as usize)?;
        Some(LandSide {
            street: street.mark,
            hand,
            run: run_of(fabric, &side.half_edges),
            half_width_mm: f64::from(street.right_of_way_mm) / 2.0,
        })
    });
    let sides: Vec<LandSide> = sides.collect();
    Some(Land {
        outline: face.outline.first().cloned().unwrap_or_default(),
        use_mark: face.use_mark,
        land_m2: face.land_m2().round() as u32,
        is_on_site_boundary: sides.len() < face.sides.len(),
        sides,
    })
}
