//! Enclosed land, as tools see it, from the fabric.

use hobnail_core::fabric::Fabric;
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{Alternative, PlanPoint};

use crate::canvas::scene_of::run_of;
use crate::tools::select::middles;
use crate::tools::{Land, LandSide, near};

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
        is_among_streets: face.sides.iter().all(|side| side.street.is_some()),
        sides,
    })
}

/// Whether a street that does not stand there today has the middle of a run inside the site; without a drawn boundary,
/// whether there is any. Cost: corners of streets times those of the site.
#[must_use]
pub fn has_streets_inside(site: &[PlanPoint], drawn: &Alternative) -> bool {
    let is_inside = |point: PlanPoint| site.is_empty() || near::is_inside(point, site);
    near::streets(drawn).any(|(_, street)| street.status != Status::Existing && middles(street).any(is_inside))
}
