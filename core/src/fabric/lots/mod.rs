//! Lots: how the land of a face is divided among the streets it fronts on.
//!
//! A face is laid front by front: sides with a building type of their own first, then the others, the longest first, so
//! that the lot at a corner faces the longer side and is laid once. Along a front lots follow one another, each as wide
//! as its building type asks half-way back and as deep as it asks; what is left over widens them a little, and the
//! ends stay odd. Where another front lies opposite, both share the depth between them. Only whole lots count: a lot
//! keeps at least [`LEAST_LOT_SHARE`] of its type's typical lot, else its land is odd land.
//!
//! A building type without homes (a school, a strip of shops) that fits nowhere whole is laid once, smaller: its floor
//! area is a share of the typical one.
//!
//! Buildings keep from fences and property lines that ask for it ([`LineBeside`]): the room on a lot ends there.
//!
//! A face and its mirror image have the same lots.
//!
//! What it does not know: the shape of real parcels, easements, slopes, utilities, trees.

mod beside;
mod footprint;
mod front_line;
mod handed;
mod key;
mod laying;
mod left;
mod region;
mod spot;

#[cfg(test)]
mod tests;

use std::sync::Arc;

use super::land::Land;
use crate::plan::land::Beside;
use crate::plan::{BuildingTypeId, Document, PlanPoint};

pub use key::{Facing, lot_type};
pub use left::Left;
pub use region::{Pieces, twice_area_of_pieces};

/// The least share of a typical lot's land that is still a whole lot: three quarters, common practice, no source. More
/// leaves corners empty that are built on in every town; less counts slivers as homes.
pub const LEAST_LOT_SHARE: f64 = 0.75;

/// The most by which lots are widened to use up a front: a quarter. Common practice, no source.
pub const MOST_WIDENING: f64 = 1.25;

/// The most by which lots are deepened to reach the land behind them: a quarter. Common practice, no source.
pub const MOST_DEEPENING: f64 = 1.25;

/// How much of a lot's width may be missing at the last lot of a front, whose neighbors then give way: a fiftieth, so
/// that a front drawn just long enough for its lots holds them all after rounding to the grid.
pub const WIDTH_TOLERANCE: f64 = 0.02;

/// A building type as lots are laid for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LotType {
    /// Which building type.
    pub id: BuildingTypeId,
    /// Width of the lot along the front, in millimeters.
    pub width_mm: u32,
    /// Depth of the lot, in millimeters.
    pub depth_mm: u32,
    /// Share of the lot under buildings, in thousandths.
    pub coverage_thousandths: u16,
    /// Whether there are homes on it, so that only whole lots count.
    pub has_homes: bool,
    /// Whether anything is built on it; land of other types is not divided into lots.
    pub is_built: bool,
}

impl LotType {
    fn twice_area_mm2(self) -> f64 {
        2.0 * f64::from(self.width_mm) * f64::from(self.depth_mm)
    }
}

/// A building type and its share of a face's land.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LandShare {
    /// The building type.
    pub lot_type: LotType,
    /// Its share, in parts per million.
    pub share_ppm: u32,
}

/// A side of the face on which lots front.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Front {
    /// Which side of the face, by its place among the face's sides.
    pub side: u32,
    /// Whether it is the head of the dead end at the end of that side, not the side itself.
    pub is_head: bool,
    /// The street's centerline along it, the face on its left; across the street's end for a head.
    pub centerline: Vec<PlanPoint>,
    /// From the centerline to the edge of the right-of-way, in millimeters.
    pub half_width_mm: u32,
    /// The building type along this side alone.
    pub own: Option<LotType>,
    /// From the right-of-way to the building, in millimeters; `None` for the usual.
    pub setback_mm: Option<u32>,
}

impl Front {
    /// Length of its centerline, in micrometers.
    fn length_um(&self) -> u64 {
        let pairs = self.centerline.windows(2);
        pairs.map(|pair| pair[0].distance_um(pair[1])).sum()
    }
}

/// A fence or a property line, and what it asks of the lots beside it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineBeside {
    /// Its points; those of a parcel end where they began.
    pub line: Vec<PlanPoint>,
    /// Whether it is that of a parcel, of whose own lots nothing is asked.
    pub is_around: bool,
    /// What is asked.
    pub asked: Beside,
}

/// All that the lots of a face depend on: equal keys have equal lots.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LotKey {
    /// The buildable land.
    pub land: Arc<Land>,
    /// The sides lots front on, in order around the face.
    pub fronts: Vec<Front>,
    /// The program, in its own order.
    pub program: Vec<LandShare>,
    /// Lines near the land that buildings may have to keep from.
    pub beside: Vec<LineBeside>,
}

/// One lot.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// What stands on it.
    pub building_type: BuildingTypeId,
    /// How much of a typical lot it counts for, in millionths: one million for a whole lot.
    pub counts_ppm: u32,
    /// The side of the face it fronts on.
    pub side: u32,
    /// Whether it fronts on the head of the dead end at the end of that side.
    pub is_at_head: bool,
    /// Where its front begins and ends along the side, in micrometers of the centerline.
    pub front_um: [u64; 2],
    /// Its outline, counterclockwise.
    pub outline: Vec<PlanPoint>,
    /// Twice its area in square millimeters.
    pub twice_area_mm2: i128,
    /// The building's footprint inside its setbacks; empty where none fits.
    pub footprint: Vec<PlanPoint>,
    /// Compass-like direction its front faces, from the lot to the street, as a displacement in micrometers.
    pub faces: [i32; 2],
}

impl Lot {
    /// Whether there is no room for its building between setbacks and what lines beside it ask. Homes, jobs and floor are
    /// those of its building type all the same.
    #[must_use]
    pub fn lacks_room(&self, document: &Document) -> bool {
        let held = document.building_types.get(&self.building_type);
        self.footprint.is_empty() && held.is_some_and(|held| held.coverage_thousandths > 0)
    }
}

/// The lots of one face, and the land that is left.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LaidLots {
    /// The lots, front by front.
    pub lots: Vec<Lot>,
    /// Land that is in no lot.
    pub left: Left,
}

/// Lays the lots of a face. See the [module](self).
///
/// Cost: about the square of the face's corners for each lot, and a boolean operation on the face for each front.
#[must_use]
pub fn lay(key: &LotKey) -> LaidLots {
    if handed::is_laid_mirrored(key) {
        handed::mirrored_back(laying::lay(&handed::mirrored(key)), key)
    } else {
        laying::lay(key)
    }
}
