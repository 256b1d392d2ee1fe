//! Soft areas: what a bubble says before any street exists, and how it hands over to the blocks drawn inside.
//!
//! A block drawn inside a soft area takes the area's program until it is given a use of its own. What counts as a block
//! is decided by reach: the streets around a face must be long enough for its land, at the depth of the program's
//! deepest lot. So the whole site, or what a first street leaves of it, stays a soft area; a block of ordinary depth
//! does not.

use crate::fabric::FaceOfLand;
use crate::plan::inside::goes_around;
use crate::plan::land::Portion;
use crate::plan::{AlternativeId, Document, Mark, MarkId, SoftArea};

/// Parts per million in a whole.
const WHOLE_PPM: u64 = 1_000_000;

/// The soft areas of one alternative, gathered once for many faces.
#[derive(Clone, Debug)]
pub struct SoftAreas<'a> {
    areas: Vec<(MarkId, &'a SoftArea, u64)>,
}

impl<'a> SoftAreas<'a> {
    /// Those of `alternative`, in order of their marks. Cost: the marks of the alternative.
    #[must_use]
    pub fn of(document: &'a Document, alternative: AlternativeId) -> Self {
        let marks = document.alternatives.get(&alternative).into_iter();
        let areas = marks
            .flat_map(|held| &held.marks)
            .filter_map(|(id, mark)| match mark {
                Mark::SoftArea(area) => Some((*id, area, deepest_lot_mm(document, area))),
                _ => None,
            })
            .collect();
        Self { areas }
    }

    /// The soft area whose program a face takes: see [`inherited_program`].
    #[must_use]
    pub fn inherited_by(&self, face: &FaceOfLand) -> Option<(MarkId, &'a SoftArea)> {
        if self.areas.is_empty() || face.use_mark.is_some() {
            return None;
        }
        let around = |(_, area, _): &&(MarkId, &SoftArea, u64)| goes_around(&area.outline, face.anchor);
        let (id, area, depth_mm) = self.areas.iter().find(around)?;
        let along_streets = face.sides.iter().filter(|side| side.street.is_some());
        let streets_um: u128 = along_streets.map(|side| u128::from(side.length_um)).sum();
        // Land in mm² times two thousand is at most length in μm times depth in mm times two.
        let reached = streets_um * u128::from(*depth_mm) * 2;
        let land = face.land.twice_area_mm2.max(0).unsigned_abs() * 1000;
        (streets_um > 0 && land <= reached).then_some((*id, *area))
    }

    /// The areas with their marks, in order.
    pub fn iter(&self) -> impl Iterator<Item = (MarkId, &'a SoftArea)> + '_ {
        self.areas.iter().map(|(id, area, _)| (*id, *area))
    }
}

/// The soft area whose program a face takes: the first around its anchor, where the face has no use mark of its own and
/// the streets around it reach its land. For many faces gather [`SoftAreas`] once.
#[must_use]
pub fn inherited_program<'a>(
    document: &'a Document,
    alternative: AlternativeId,
    face: &FaceOfLand,
) -> Option<(MarkId, &'a SoftArea)> {
    SoftAreas::of(document, alternative).inherited_by(face)
}

/// A soft area's program as portions of its land: each share times the intensity.
#[must_use]
pub fn portions(area: &SoftArea) -> Vec<Portion> {
    let intensity_ppm = u64::from(area.intensity_ppm).min(WHOLE_PPM);
    let held = area.program.iter();
    held.map(|portion| Portion {
        building_type: portion.building_type,
        // Half a millionth up; a share is at most u32::MAX, and the intensity at most a whole.
        share_ppm: ((u64::from(portion.share_ppm) * intensity_ppm + WHOLE_PPM / 2) / WHOLE_PPM) as u32,
    })
    .collect()
}

fn deepest_lot_mm(document: &Document, area: &SoftArea) -> u64 {
    let types = area
        .program
        .iter()
        .filter_map(|portion| document.building_types.get(&portion.building_type));
    types.map(|held| u64::from(held.lot_depth_mm)).max().unwrap_or(0)
}

#[cfg(test)]
mod tests;
