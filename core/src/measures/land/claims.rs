//! Areas drawn over land that no block has taken yet: places with land, then soft areas.
//!
//! Land is claimed once: by the places in order of their marks, then by the soft areas in order of theirs. A place claims
//! land by what it is (a park is green, a school civic); a center or a stop claims none. Only buildable land of blocks
//! without a use is there to be claimed, and without a site boundary land beyond all streets too.

use crate::order::OrderedMap;

use crate::fabric::land::Bounds;
use crate::fabric::regions::{Beyond, Ring, minus, twice_area_mm2};
use crate::fabric::{Fabric, FaceOfLand};
use crate::plan::{AlternativeId, Document, Footprint, Mark, MarkId, PlaceKind, SoftArea};

/// An area that claims land.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Claimant<'a> {
    /// A place with land.
    Place(PlaceKind),
    /// A soft area.
    Soft(&'a SoftArea),
}

/// The claims of one alternative, in order.
#[derive(Clone, Debug)]
pub struct Claims<'a> {
    claims: Vec<(MarkId, Claimant<'a>, &'a [crate::plan::PlanPoint], Bounds)>,
}

impl<'a> Claims<'a> {
    /// The claims of `alternative`. Outlines that enclose nothing claim nothing.
    #[must_use]
    pub fn of(document: &'a Document, alternative: AlternativeId) -> Self {
        let marks = document.alternatives.get(&alternative).into_iter();
        let mut places = Vec::new();
        let mut softs = Vec::new();
        for (id, mark) in marks.flat_map(|held| &held.marks) {
            match mark {
                Mark::Place(place) if claims_land(place.kind) => {
                    if let Footprint::Area(outline) = &place.footprint {
                        places.push((*id, Claimant::Place(place.kind), outline.as_slice()));
                    }
                }
                Mark::SoftArea(area) => softs.push((*id, Claimant::Soft(area), area.outline.as_slice())),
                _ => {}
            }
        }
        let claims = places
            .into_iter()
            .chain(softs)
            .filter(|(.., outline)| outline.len() > 2);
        Self {
            claims: claims
                .map(|(id, claimant, outline)| (id, claimant, outline, Bounds::of(outline)))
                .collect(),
        }
    }

    /// Whether nothing is claimed.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.claims.is_empty()
    }

    /// Who claims, in order.
    pub fn claimants(&self) -> impl Iterator<Item = (MarkId, Claimant<'a>)> + '_ {
        self.claims.iter().map(|(id, claimant, ..)| (*id, *claimant))
    }

    /// What each claimant gets of a face's buildable land, by its place among the claimants, in twice square millimeters.
    pub fn of_face(&self, face: &FaceOfLand, cache: &mut ClaimCache) -> Vec<(usize, i128)> {
        if self.is_empty() {
            return Vec::new();
        }
        let bounds = Bounds::of(face.land.pieces.iter().flatten().flatten());
        let near: Vec<usize> = (0..self.claims.len())
            .filter(|place| bounds.meets(&self.claims[*place].3))
            .collect();
        if near.is_empty() {
            return Vec::new();
        }
        let key = CutKey {
            rings: face.land.pieces.concat(),
            cuts: near.iter().map(|place| vec![self.claims[*place].2.to_vec()]).collect(),
        };
        let mut before = face.land.twice_area_mm2;
        let left = cache.left_after(key);
        let got = left.into_iter().map(|after| {
            let after = after.min(before);
            std::mem::replace(&mut before, after) - after
        });
        near.into_iter().zip(got).filter(|(_, area)| *area > 0).collect()
    }

    /// What each claimant gets of the land beyond all faces.
    pub fn beyond(&self, fabric: &Fabric, cache: &mut ClaimCache) -> Vec<(usize, i128)> {
        if self.is_empty() {
            return Vec::new();
        }
        let beyond = Beyond::of(fabric);
        let mut got = Vec::new();
        for (place, (.., outline, bounds)) in self.claims.iter().enumerate() {
            let mut taken = beyond.taken_from(outline);
            let earlier = self.claims[..place].iter().filter(|(.., other)| bounds.meets(other));
            taken.extend(earlier.map(|(_, _, outline, _)| outline.to_vec()));
            let mut ring = outline.to_vec();
            if twice_area_mm2(&ring) < 0 {
                ring.reverse();
            }
            let key = CutKey {
                rings: vec![ring],
                cuts: vec![taken],
            };
            let left = cache.left_after(key).first().copied().unwrap_or(0);
            if left > 0 {
                got.push((place, left));
            }
        }
        got
    }
}

/// Whether a place of this kind takes land of its own.
const fn claims_land(kind: PlaceKind) -> bool {
    match kind {
        PlaceKind::Park | PlaceKind::School | PlaceKind::CommunityHall | PlaceKind::Clinic | PlaceKind::Shop => true,
        PlaceKind::Center | PlaceKind::TransitStop => false,
    }
}

/// Land and what is cut from it, one cut after the other: equal keys leave equal areas.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct CutKey {
    rings: Vec<Ring>,
    cuts: Vec<Vec<Ring>>,
}

/// Claims already cut, kept from one count to the next under all they depend on.
#[derive(Clone, Debug, Default)]
pub struct ClaimCache {
    held: OrderedMap<CutKey, Vec<i128>>,
    kept: OrderedMap<CutKey, Vec<i128>>,
}

impl ClaimCache {
    /// Twice the area left after each cut.
    fn left_after(&mut self, key: CutKey) -> Vec<i128> {
        if let Some(left) = self.kept.get(&key) {
            return left.clone();
        }
        let left = self.held.remove(&key).unwrap_or_else(|| {
            let mut rings = key.rings.clone();
            let cuts = key.cuts.iter().map(|cut| {
                rings = minus(&rings, cut);
                rings.iter().map(|ring| twice_area_mm2(ring)).sum()
            });
            cuts.collect()
        });
        self.kept.insert(key, left.clone());
        left
    }

    /// Ends a count: what was not asked for since the last one is forgotten.
    pub fn end_round(&mut self) {
        self.held = std::mem::take(&mut self.kept);
    }
}
