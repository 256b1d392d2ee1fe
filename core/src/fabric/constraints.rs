//! What holds land back, and how much of each face it covers.
//!
//! A constraint is an area with four questions it answers: may the land be built upon, does it count as land of the
//! whole-site density, does it count as buildable land, may people walk across it. Where areas overlap, land is counted
//! once: as the first in the order of [`HELD_BY`] among the areas that answer no. Land under a right-of-way is street
//! and no longer anybody's constraint.

use crate::order::OrderedMap;

use super::land::{LandKey, area_left_mm2};
use crate::plan::land::{ConstraintArea, ConstraintKind, OwnerGroup, Parcel};
use crate::plan::{Mark, PlanPoint};

/// What holds land back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeldBy {
    /// Open water.
    Water,
    /// Wetland.
    Wetland,
    /// Land that floods.
    Floodplain,
    /// Land too steep to build upon.
    Steep,
    /// Land under conservation.
    Conservation,
    /// Contaminated ground.
    Contaminated,
    /// An easement or utility corridor.
    Easement,
    /// Land kept as it is by choice.
    Keep,
    /// Land of an owner who is left out of the count.
    OwnerLeftOut,
}

/// What can hold land back, in the order in which overlapping land is counted.
pub const HELD_BY: [HeldBy; 9] = [
    HeldBy::Water,
    HeldBy::Wetland,
    HeldBy::Floodplain,
    HeldBy::Steep,
    HeldBy::Conservation,
    HeldBy::Contaminated,
    HeldBy::Easement,
    HeldBy::Keep,
    HeldBy::OwnerLeftOut,
];

/// A question a constraint answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LandSwitch {
    /// May it be built upon?
    Buildable,
    /// Does it count as land of the whole-site density?
    CountsInSite,
    /// Does it count as buildable land?
    CountsInBuildable,
    /// May people walk across it?
    Walkable,
}

/// The questions, in order.
pub const SWITCHES: [LandSwitch; 4] = [
    LandSwitch::Buildable,
    LandSwitch::CountsInSite,
    LandSwitch::CountsInBuildable,
    LandSwitch::Walkable,
];

/// An area that constrains land.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Constraint {
    /// What it is.
    pub held_by: HeldBy,
    /// Its answers, in the order of [`SWITCHES`].
    pub answers: [bool; SWITCHES.len()],
    /// Its outline, closed by itself.
    pub outline: Vec<PlanPoint>,
}

/// Land of one face under constraints, twice the square millimeters of each.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ConstrainedLand {
    /// Under any constraint, then for each question under one that answers no; by what holds it, empty ones left out.
    pub twice_mm2: Vec<(HeldBy, [i128; 1 + SWITCHES.len()])>,
}

impl Constraint {
    /// The constraint a mark makes: a constraint area, or a parcel whose owner is left out. `None` for all others, and
    /// for outlines that enclose nothing.
    #[must_use]
    pub fn of(mark: &Mark, is_left_out: impl Fn(OwnerGroup) -> bool) -> Option<Self> {
        let constraint = match mark {
            Mark::Constraint(area) => Self::of_area(area),
            Mark::Parcel(parcel) if is_left_out(parcel.owner) => Self::of_parcel(parcel),
            _ => return None,
        };
        (constraint.outline.len() > 2).then_some(constraint)
    }

    fn of_area(area: &ConstraintArea) -> Self {
        Self {
            held_by: held_by(area.kind),
            answers: [
                area.is_buildable,
                area.counts_in_site,
                area.counts_in_buildable,
                area.is_walkable,
            ],
            outline: area.outline.clone(),
        }
    }

    /// Land of an owner who is left out is no part of the project: nothing is built there, it is land of no density, and
    /// people may walk across it.
    fn of_parcel(parcel: &Parcel) -> Self {
        Self {
            held_by: HeldBy::OwnerLeftOut,
            answers: [false, false, false, true],
            outline: parcel.outline.clone(),
        }
    }

    /// Whether it answers a question with no.
    #[must_use]
    pub const fn says_no_to(&self, switch: LandSwitch) -> bool {
        !self.answers[switch as usize]
    }
}

const fn held_by(kind: ConstraintKind) -> HeldBy {
    match kind {
        ConstraintKind::Water => HeldBy::Water,
        ConstraintKind::Floodplain => HeldBy::Floodplain,
        ConstraintKind::Wetland => HeldBy::Wetland,
        ConstraintKind::Steep => HeldBy::Steep,
        ConstraintKind::Easement => HeldBy::Easement,
        ConstraintKind::Conservation => HeldBy::Conservation,
        ConstraintKind::Contaminated => HeldBy::Contaminated,
        ConstraintKind::Keep => HeldBy::Keep,
    }
}

impl ConstrainedLand {
    /// Land under any constraint, by what holds it.
    pub fn under_any(&self) -> impl Iterator<Item = (HeldBy, i128)> + '_ {
        self.twice_mm2.iter().map(|(held_by, counts)| (*held_by, counts[0]))
    }

    /// Land an area of which answers no to a question, by what holds it.
    pub fn says_no_to(&self, switch: LandSwitch) -> impl Iterator<Item = (HeldBy, i128)> + '_ {
        let counted = self.twice_mm2.iter();
        counted.map(move |(held_by, counts)| (*held_by, counts[1 + switch as usize]))
    }

    /// Twice the land that is held back, in square millimeters.
    #[must_use]
    pub fn twice_held_back_mm2(&self) -> i128 {
        self.says_no_to(LandSwitch::Buildable).map(|(_, area)| area).sum()
    }

    /// Counts the constraints of a face, whose buildable land is `twice_land_mm2`.
    ///
    /// What an area takes is the difference of two areas, each worked on its own from the face's outline, so that the
    /// parts sum to the whole exactly; where rounding of crossings would make a part smaller than nothing it is nothing.
    /// Cost: a boolean operation for each kind near the face and each set of answers.
    #[must_use]
    pub fn of(key: &LandKey, twice_land_mm2: i128) -> Self {
        let near = key.near();
        if near.is_empty() {
            return Self::default();
        }
        let mut known: OrderedMap<Vec<bool>, i128> = OrderedMap::new();
        // What is left for building is known already.
        known.insert(
            near.iter().map(|one| one.says_no_to(LandSwitch::Buildable)).collect(),
            twice_land_mm2,
        );
        let mut left = |taken: &[bool]| *known.entry(taken.to_vec()).or_insert_with(|| area_left_mm2(key, taken));
        let mut counts: OrderedMap<HeldBy, [i128; 1 + SWITCHES.len()]> = OrderedMap::new();
        for column in 0..=SWITCHES.len() {
            let takes_part = |one: &Constraint| match column.checked_sub(1) {
                None => true,
                Some(question) => !one.answers[question],
            };
            let mut taken = vec![false; near.len()];
            let mut kinds: Vec<(HeldBy, i128)> = Vec::new();
            let whole = left(&taken);
            for held_by in HELD_BY {
                let added = near
                    .iter()
                    .zip(&mut taken)
                    .filter(|(one, _)| one.held_by == held_by && takes_part(one));
                let count = added.map(|(_, taken)| *taken = true).count();
                if count > 0 {
                    kinds.push((held_by, left(&taken)));
                }
            }
            // From the last: never more left after an area than before it.
            let mut after = kinds.last().map_or(whole, |(_, left)| *left);
            for place in (0..kinds.len()).rev() {
                let before = place.checked_sub(1).map_or(whole, |before| kinds[before].1).max(after);
                counts.entry(kinds[place].0).or_default()[column] = before - after;
                after = before;
            }
        }
        Self {
            twice_mm2: counts
                .into_iter()
                .filter(|(_, counts)| counts.iter().any(|count| *count != 0))
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests;
