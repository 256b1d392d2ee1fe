//! The document: one site, its palettes and program, and one to many alternatives.

use std::sync::Arc;

use crate::order::{OrderedMap, OrderedSet};

use super::building::BuildingType;
use super::coordinates::PlanPoint;
use super::ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
use super::mark::Mark;
use super::street::StreetSection;

/// All that one plan file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// Name, remarks and where on Earth the plan lies.
    pub heading: Heading,
    /// The site's boundary.
    pub site: Site,
    /// What is asked for, typed by the user.
    pub program: Vec<Target>,
    /// Street sections to choose from.
    pub street_sections: OrderedMap<StreetSectionId, StreetSection>,
    /// Building types to choose from.
    pub building_types: OrderedMap<BuildingTypeId, BuildingType>,
    /// Phases, in order of their ids.
    pub phases: OrderedMap<PhaseId, Phase>,
    /// Chosen settings and overridden factors.
    pub settings: Settings,
    /// Ground heights, where known.
    pub topography: Option<Topography>,
    /// The picture underneath, where there is one.
    pub base_image: Option<BaseImage>,
    /// The alternatives; there is always at least one.
    pub alternatives: OrderedMap<AlternativeId, Alternative>,
}

/// What the document is called and where it lies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// The plan's name.
    pub name: String,
    /// What it shows; demo plans say here that they are invented.
    pub about: String,
    /// Longitude of the plan's origin, WGS84, in billionths of a degree.
    pub origin_longitude_ndeg: i64,
    /// Latitude of the plan's origin, WGS84, in billionths of a degree.
    pub origin_latitude_ndeg: i64,
}

/// The land the plan is for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Site {
    /// Its boundary, closed by itself; empty where none has been drawn yet.
    pub boundary: Vec<PlanPoint>,
}

/// One line of the typed program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Target {
    /// What is asked for.
    pub what: TargetKind,
    /// How much, in the unit of its kind.
    pub asked: u32,
}

/// What a program may ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TargetKind {
    /// Homes of any type.
    Homes,
    /// Homes of one building type.
    HomesOf(BuildingTypeId),
    /// Shop floor area, in square meters.
    ShopFloorM2,
    /// Work floor area, in square meters.
    WorkFloorM2,
    /// School seats.
    SchoolSeats,
    /// Park land, in square meters.
    ParkLandM2,
    /// Parking spaces.
    ParkingSpaces,
}

/// A phase of building.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Phase {
    /// Its name.
    pub name: String,
}

/// Chosen settings and overridden factors.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings {
    /// The one walking pace of the plan, in millimeters per second.
    pub walking_pace_mm_per_s: u32,
    /// Units numbers are shown in.
    pub units: UnitSystem,
    /// Chosen values by setting id.
    pub chosen: OrderedMap<String, f64>,
    /// Factors the user has changed, by factor id.
    pub overridden_factors: OrderedMap<String, FactorOverride>,
    /// Ids of the rule lists in force.
    pub rule_lists: Vec<String>,
}

/// A user's own values for one factor.
#[derive(Clone, Debug, PartialEq)]
pub struct FactorOverride {
    /// Low value.
    pub low: f64,
    /// Typical value.
    pub typical: f64,
    /// High value.
    pub high: f64,
    /// Where the values come from, in the user's words.
    pub source: String,
}

/// Units numbers are shown in. Measures are metric inside; this is display only.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum UnitSystem {
    /// Meters and hectares.
    Metric,
    /// Feet and acres.
    UsCustomary,
}

/// Ground heights on a regular grid.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Topography {
    /// Where the south-west sample lies.
    pub south_west: PlanPoint,
    /// Distance between samples, in millimeters.
    pub spacing_mm: u32,
    /// Samples from west to east in each row.
    pub columns: u32,
    /// Heights in millimeters, rows from south to north.
    pub heights_mm: Vec<i32>,
    /// Where the heights come from.
    pub source: String,
}

/// A picture laid under the drawing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BaseImage {
    /// What it is, such as a file name.
    pub name: String,
    /// Its media type, such as `image/png`.
    pub media_type: String,
    /// Where its four corners lie: top left, top right, bottom right, bottom left.
    pub corners: [PlanPoint; 4],
    /// How much it shows, in thousandths.
    pub opacity_thousandths: u16,
    /// The file's bytes, shared by all copies of the document.
    pub bytes: Arc<[u8]>,
}

/// One way to lay out the site.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Alternative {
    /// Its name.
    pub name: String,
    /// The table or person that drew it, empty where nobody is named.
    pub table: String,
    /// What is drawn on it.
    pub marks: OrderedMap<MarkId, Mark>,
}

impl Document {
    /// A mark id not used in any alternative: one more than the largest that is used or that a remark's answers name,
    /// so that no link comes to mean something else; or the least free one when there is no more. O(marks).
    #[must_use]
    pub fn next_mark_id(&self) -> MarkId {
        let ids_of = |alternative: &Alternative| {
            let named = alternative.marks.values().filter_map(Mark::as_note);
            let named = named.flat_map(|note| &note.answers).flat_map(|answer| &answer.marks);
            named.chain(alternative.marks.keys().next_back()).max().copied()
        };
        let largest = self.alternatives.values().filter_map(ids_of).max();
        match largest {
            None => MarkId(0),
            Some(MarkId(u32::MAX)) => {
                let used: OrderedSet<MarkId> = self
                    .alternatives
                    .values()
                    .flat_map(|alternative| alternative.marks.keys().copied())
                    .collect();
                (0..=u32::MAX)
                    .map(MarkId)
                    .find(|id| !used.contains(id))
                    .unwrap_or(MarkId(u32::MAX))
            }
            Some(MarkId(largest)) => MarkId(largest + 1),
        }
    }

    /// The mark `id` of alternative `alternative`.
    #[must_use]
    pub fn mark(&self, alternative: AlternativeId, id: MarkId) -> Option<&Mark> {
        self.alternatives.get(&alternative)?.marks.get(&id)
    }
}
