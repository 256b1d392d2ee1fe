//! Counting land on a fabric, in integers: the parts of every face sum to the face.

use super::claims::{ClaimCache, Claimant, Claims};
use super::{CONSTRAINT_COUNTS, CONSTRAINT_KINDS, LandInputs, OPEN_SPACES, PARTS, SOURCES};
use crate::fabric::constraints::{HeldBy, LandSwitch};
use crate::fabric::{Fabric, FaceOfLand};
use crate::measures::frontage::PaintedFace;
use crate::measures::soft::portions;
use crate::plan::{AlternativeId, BuildingType, Document, LandUse, MarkId, PlaceKind, SoftArea};

/// Leisure land of building types with at least this share of the lot paved is a square, else a park: a quarter. Common
/// practice, no source. Smaller counts a park with a ball court among the squares; larger a green with broad walks.
pub const LEAST_PAVED_SQUARE_THOUSANDTHS: u16 = 250;

/// Parts per million in a whole.
const WHOLE_PPM: i128 = 1_000_000;

/// A part of the land bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Homes,
    ShopsAndWork,
    Civic,
    Green,
    Water,
    Streets,
    Unused,
}

/// What gives land its part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Source {
    RightOfWay,
    HeldBack,
    Blocks,
    Places,
    SoftAreas,
    Nothing,
}

/// A kind of open space that is counted on the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum OpenSpace {
    Parks,
    Squares,
    Natural,
    HeldBack,
}

/// Land of one alternative, twice the square millimeters of each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LandCount {
    /// By part of the land bar, then by what gives it its part.
    pub parts: [[i128; SOURCES]; PARTS],
    /// Under constraints, by kind, then by what is counted.
    pub constraints: [[i128; CONSTRAINT_COUNTS]; CONSTRAINT_KINDS],
    /// Open space drawn, by kind.
    pub open_space: [i128; OPEN_SPACES],
    /// Land of each soft area, in order of their marks.
    pub soft: Vec<(MarkId, i128)>,
    /// The whole site.
    pub site: i128,
    /// Whether a site boundary is drawn.
    pub has_boundary: bool,
}

impl LandCount {
    /// Counts the land of a fabric whose painted faces are `painted`.
    ///
    /// Cost: linear in the faces, and a boolean operation for each area drawn over a face without a use that the cache
    /// does not know.
    #[must_use]
    pub fn of(
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        painted: &[PaintedFace],
        cache: &mut ClaimCache,
    ) -> Self {
        let claims = Claims::of(document, alternative);
        let softs = claims
            .claimants()
            .filter(|(_, claimant)| matches!(claimant, Claimant::Soft(_)));
        let mut count = Self {
            parts: Default::default(),
            constraints: Default::default(),
            open_space: Default::default(),
            soft: softs.map(|(id, _)| (id, 0)).collect(),
            site: 0,
            has_boundary: fabric.lines.boundary.len() > 3,
        };
        let mut painted_of: Vec<Option<&PaintedFace>> = vec![None; fabric.faces.len() + 1];
        for held in painted {
            if let Some(place) = painted_of.get_mut(held.face.0 as usize) {
                *place = Some(held);
            }
        }
        for face in fabric.faces.iter().filter(|face| face.is_in_site) {
            count.add_streets_and_constraints(face);
            match painted_of.get(face.id.0 as usize).copied().flatten() {
                Some(held) => count.add_painted(document, face, held),
                None => {
                    let mut rest = face.land.twice_area_mm2;
                    for (place, area) in claims.of_face(face, cache) {
                        count.add_claim(document, &claims, place, area);
                        rest -= area;
                    }
                    count.add(Part::Unused, Source::Nothing, rest);
                }
            }
        }
        if !count.has_boundary {
            for (place, area) in claims.beyond(fabric, cache) {
                count.site += area;
                count.add_claim(document, &claims, place, area);
            }
        }
        cache.end_round();
        count
    }

    /// The same in square meters, ready for the figures.
    #[must_use]
    pub fn inputs(&self) -> LandInputs {
        LandInputs {
            parts_m2: self.parts.map(|row| row.map(square_meters)),
            constraints_m2: self.constraints.map(|row| row.map(square_meters)),
            open_space_m2: self.open_space.map(square_meters),
            has_boundary: self.has_boundary,
        }
    }

    fn add(&mut self, part: Part, source: Source, area: i128) {
        self.parts[part as usize][source as usize] += area;
    }

    fn add_open(&mut self, kind: Option<OpenSpace>, area: i128) {
        if let Some(kind) = kind {
            self.open_space[kind as usize] += area;
        }
    }

    fn add_streets_and_constraints(&mut self, face: &FaceOfLand) {
        let land = &face.land;
        self.site += land.twice_face_mm2;
        // What is kept for a street that is not there is no street, and has no use.
        let streets = land.twice_right_of_way_mm2() - land.twice_kept_mm2;
        self.add(Part::Streets, Source::RightOfWay, streets);
        self.add(Part::Unused, Source::Nothing, land.twice_kept_mm2);
        for (held_by, area) in land.constrained.says_no_to(LandSwitch::Buildable) {
            let part = part_held_by(held_by);
            self.add(part, Source::HeldBack, area);
            self.add_open((part == Part::Green).then_some(OpenSpace::HeldBack), area);
        }
        for (held_by, counts) in &land.constrained.twice_mm2 {
            let row = self.constraints[*held_by as usize].iter_mut();
            row.zip(counts).for_each(|(sum, count)| *sum += count);
        }
    }

    /// Buildable land of a block with a use, by its building types. What rounding leaves over goes to the largest.
    fn add_painted(&mut self, document: &Document, face: &FaceOfLand, painted: &PaintedFace) {
        let mut rest = face.land.twice_area_mm2;
        let mut largest: Option<(i128, &BuildingType)> = None;
        for (id, land_m2) in &painted.land_m2 {
            let Some(held) = document.building_types.get(id) else {
                continue;
            };
            // Land of a face is far below what a float holds in square millimeters.
            let area = ((land_m2 * 2e6).round() as i128).min(rest).max(0);
            rest -= area;
            self.add_used(held, Source::Blocks, area);
            if largest.is_none_or(|(most, _)| area > most) {
                largest = Some((area, held));
            }
        }
        // Shares are whole millionths of the land.
        let types = painted.land_m2.len() as i128;
        let whole = i64::try_from(face.land.twice_area_mm2).unwrap_or(i64::MAX);
        let is_rounding = rest.abs() <= types * (i128::from(whole / WHOLE_PPM as i64) + 2);
        match largest {
            Some((_, held)) if is_rounding => self.add_used(held, Source::Blocks, rest),
            _ => self.add(Part::Unused, Source::Nothing, rest),
        }
    }

    fn add_used(&mut self, held: &BuildingType, source: Source, area: i128) {
        self.add(part_of(held.land_use), source, area);
        if source == Source::Blocks {
            self.add_open(open_space_of(held), area);
        }
    }

    fn add_claim(&mut self, document: &Document, claims: &Claims<'_>, place: usize, area: i128) {
        match claims.claimants().nth(place) {
            Some((_, Claimant::Place(kind))) => {
                self.add(part_of_place(kind), Source::Places, area);
                self.add_open((kind == PlaceKind::Park).then_some(OpenSpace::Parks), area);
            }
            Some((id, Claimant::Soft(soft))) => {
                if let Some((_, sum)) = self.soft.iter_mut().find(|(held, _)| *held == id) {
                    *sum += area;
                }
                self.add_soft(document, soft, area);
            }
            None => {}
        }
    }

    /// Land of a soft area by its program; what the program leaves is not yet given a use.
    fn add_soft(&mut self, document: &Document, soft: &SoftArea, area: i128) {
        let mut rest = area;
        for portion in portions(soft) {
            let share = (area * i128::from(portion.share_ppm) / WHOLE_PPM).min(rest).max(0);
            if let Some(held) = document.building_types.get(&portion.building_type) {
                self.add_used(held, Source::SoftAreas, share);
                rest -= share;
            }
        }
        self.add(Part::Unused, Source::SoftAreas, rest);
    }
}

/// Square meters from twice the square millimeters.
#[must_use]
pub fn square_meters(twice_mm2: i128) -> f64 {
    twice_mm2 as f64 / 2e6
}

/// The place among [`parts`](super::parts) of land that is used so.
#[must_use]
pub const fn place_of_use(land_use: LandUse) -> usize {
    part_of(land_use) as usize
}

/// The place among [`parts`](super::parts) of land that such a place claims.
#[must_use]
pub const fn place_of_place(kind: PlaceKind) -> usize {
    part_of_place(kind) as usize
}

/// The place among [`parts`](super::parts) of land that is held back so.
#[must_use]
pub const fn place_held_by(held_by: HeldBy) -> usize {
    part_held_by(held_by) as usize
}

const fn part_of(land_use: LandUse) -> Part {
    match land_use {
        LandUse::Residential => Part::Homes,
        LandUse::Business | LandUse::Industrial => Part::ShopsAndWork,
        LandUse::Civic => Part::Civic,
        LandUse::Leisure | LandUse::Natural => Part::Green,
    }
}

const fn part_of_place(kind: PlaceKind) -> Part {
    match kind {
        PlaceKind::Park => Part::Green,
        PlaceKind::School | PlaceKind::CommunityHall | PlaceKind::Clinic => Part::Civic,
        PlaceKind::Shop => Part::ShopsAndWork,
        PlaceKind::Center | PlaceKind::TransitStop => Part::Unused,
    }
}

/// Land held back is water, or green where it is left open; contaminated ground and land of owners left out have no use.
const fn part_held_by(held_by: HeldBy) -> Part {
    match held_by {
        HeldBy::Water => Part::Water,
        HeldBy::Wetland
        | HeldBy::Floodplain
        | HeldBy::Steep
        | HeldBy::Conservation
        | HeldBy::Easement
        | HeldBy::Keep => Part::Green,
        HeldBy::Contaminated | HeldBy::OwnerLeftOut => Part::Unused,
    }
}

fn open_space_of(held: &BuildingType) -> Option<OpenSpace> {
    match held.land_use {
        LandUse::Leisure if held.paved_thousandths >= LEAST_PAVED_SQUARE_THOUSANDTHS => Some(OpenSpace::Squares),
        LandUse::Leisure => Some(OpenSpace::Parks),
        LandUse::Natural => Some(OpenSpace::Natural),
        _ => None,
    }
}

/// Whether land of a building type is park land: parks and squares.
#[must_use]
pub fn is_park(held: &BuildingType) -> bool {
    held.land_use == LandUse::Leisure
}
