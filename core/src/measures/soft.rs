//! Soft areas: what a bubble says before any street exists, and how it hands over to the blocks drawn inside.
//!
//! Until its streets are drawn a soft area holds as many lots as its land usually makes: its land, the share of it given
//! to a building type, the share of land that becomes lots when streets are taken off (uncertain, and the range says
//! so), by the typical lot. Land of blocks with a use, rights-of-way and land held back are taken off before.
//!
//! A block that lies in a soft area for the most part takes the area's program until it is given a use of its own. What
//! counts as a block is decided by reach: the streets around a face must be long enough for its land, at the depth of the
//! program's deepest lot. So the whole site, or what a first street leaves of it, stays a soft area; a block of ordinary
//! depth does not.

use crate::fabric::FaceOfLand;
use crate::fabric::land::Bounds;
use crate::fabric::regions::{minus, twice_area_mm2};
use crate::figures::axis::Entry;
use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::unit;
use crate::measures::mix::jobs_on;
use crate::measures::worked::{self, Worked};
use crate::message;
use crate::plan::document::UnitSystem;
use crate::plan::inside::{goes_around, segments_meet};
use crate::plan::land::Portion;
use crate::plan::{AlternativeId, Document, Mark, MarkId, PlanPoint, SoftArea};
use crate::say;

/// Parts per million in a whole.
const WHOLE_PPM: u64 = 1_000_000;

/// The soft areas of one alternative, gathered once for many faces.
#[derive(Clone, Debug)]
pub struct SoftAreas<'a> {
    areas: Vec<Gathered<'a>>,
}

#[derive(Clone, Debug)]
struct Gathered<'a> {
    id: MarkId,
    area: &'a SoftArea,
    bounds: Bounds,
    deepest_lot_mm: u64,
}

impl<'a> SoftAreas<'a> {
    /// Those of `alternative`, in order of their marks. Cost: the marks of the alternative.
    #[must_use]
    pub fn of(document: &'a Document, alternative: AlternativeId) -> Self {
        let marks = document.alternatives.get(&alternative).into_iter();
        let areas = marks
            .flat_map(|held| &held.marks)
            .filter_map(|(id, mark)| match mark {
                Mark::SoftArea(area) => Some(Gathered {
                    id: *id,
                    area,
                    bounds: Bounds::of(&area.outline),
                    deepest_lot_mm: deepest_lot_mm(document, area),
                }),
                _ => None,
            })
            .collect();
        Self { areas }
    }

    /// The soft area whose program a face takes: see [`inherited_program`].
    ///
    /// Cost: the face's corners times those of the areas near it, and a boolean operation where their outlines meet.
    #[must_use]
    pub fn inherited_by(&self, face: &FaceOfLand) -> Option<(MarkId, &'a SoftArea)> {
        if self.areas.is_empty() || face.use_mark.is_some() {
            return None;
        }
        let bounds = Bounds::of(face.outline.iter().flatten());
        let mut near = self.areas.iter().filter(|held| held.bounds.meets(&bounds));
        let held = near.find(|held| is_mostly_in(face, &held.area.outline))?;
        let along_streets = face.sides.iter().filter(|side| side.street.is_some());
        let streets_um: u128 = along_streets.map(|side| u128::from(side.length_um)).sum();
        // Land in mm² times two thousand is at most length in μm times depth in mm times two.
        let reached = streets_um * u128::from(held.deepest_lot_mm) * 2;
        let land = face.land.twice_area_mm2.max(0).unsigned_abs() * 1000;
        (streets_um > 0 && land <= reached).then_some((held.id, held.area))
    }

    /// The areas with their marks, in order.
    pub fn iter(&self) -> impl Iterator<Item = (MarkId, &'a SoftArea)> + '_ {
        self.areas.iter().map(|held| (held.id, held.area))
    }
}

/// The soft area whose program a face takes: the first that holds more than half of it, where the face has no use mark
/// of its own and the streets around it reach its land. For many faces gather [`SoftAreas`] once.
#[must_use]
pub fn inherited_program<'a>(
    document: &'a Document,
    alternative: AlternativeId,
    face: &FaceOfLand,
) -> Option<(MarkId, &'a SoftArea)> {
    SoftAreas::of(document, alternative).inherited_by(face)
}

/// Whether an outline holds more than half of a face.
fn is_mostly_in(face: &FaceOfLand, outline: &[PlanPoint]) -> bool {
    let edges_of = |ring: &[PlanPoint]| -> Vec<[PlanPoint; 2]> {
        let after = ring.iter().cycle().skip(1);
        ring.iter().zip(after).map(|(a, b)| [*a, *b]).collect()
    };
    let around = edges_of(outline);
    let mut boundary = face.outline.iter().flat_map(|ring| edges_of(ring));
    let shares_a_point = |edge: [PlanPoint; 2]| around.iter().any(|other| segments_meet(edge, *other));
    if !boundary.any(shares_a_point) {
        // The face is inside or outside as a whole, unless the outline lies within the face.
        let is_in =
            |ring: &[PlanPoint], point: Option<&PlanPoint>| point.is_some_and(|point| goes_around(ring, *point));
        let shell = face.outline.first();
        let holds_the_face = shell.is_some_and(|shell| is_in(outline, shell.first()));
        let lies_within = shell.is_some_and(|shell| is_in(shell, outline.first()));
        if holds_the_face || !lies_within {
            return holds_the_face;
        }
    }
    let outside: i128 = minus(&face.outline, &[outline.to_vec()])
        .iter()
        .map(|ring| twice_area_mm2(ring))
        .sum();
    2 * outside < face.land.twice_face_mm2
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

/// One soft area, ready for the figures.
#[derive(Clone, Debug, PartialEq)]
pub struct SoftInput {
    /// Its mark, and where it is.
    pub entry: Entry,
    /// Its land in square meters, without what blocks, streets and constraints take.
    pub land_m2: f64,
    /// The share of its land given to each building type, in palette order.
    pub shares: Vec<f64>,
    /// The phase it is built in, by its place among the phases.
    pub phase: usize,
}

/// Soft areas, ready for the figures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SoftInputs {
    /// The areas, in order of their marks.
    pub areas: Vec<SoftInput>,
    /// For each building type how many lots a square meter makes; 0 where its lot has no land.
    pub lots_per_m2: Vec<f64>,
    /// For each building type whether its land is park land.
    pub is_park: Vec<bool>,
}

/// Where a soft area is, in words.
#[must_use]
pub fn words_for(outline: &[PlanPoint], units: UnitSystem) -> String {
    let at = PlanPoint::mean_of(outline).unwrap_or_default();
    say!("measures-soft-at").to_owned() + " " + &at.in_words(units)
}

/// Declares what soft areas hold, and the axis `soft_area`. Needs what [`super::homes::declare`], [`super::mix::declare`]
/// and [`super::density::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.open_axis("soft_area", say!("measures-soft-area"));

    let _ = graph
        .counted("land.soft", say!("measures-soft-land"), unit::LAND)
        .over(&["soft_area"]);
    let _ = graph
        .chosen("land.soft_share", say!("measures-soft-share"), unit::SHARE)
        .over(&["soft_area", "building_type"]);
    let _ = graph.factor("land.lot_yield_share", say!("measures-lot-yield"), unit::SHARE);
    let _ = graph
        .chosen("lots.per_land", say!("measures-lots-per-land"), unit::LOTS_PER_LAND)
        .over(&["building_type"]);

    graph
        .figure("land.lots_in_soft_areas", say!("measures-soft-lot-land"), unit::LAND)
        .over(&["soft_area", "building_type"])
        .formula(figure("land.soft") * figure("land.soft_share") * figure("land.lot_yield_share"));
    graph
        .figure(
            "people.soft_by_building_type",
            say!("measures-soft-people-type"),
            unit::PEOPLE,
        )
        .over(BY_TYPE)
        .formula(
            figure("homes.soft_by_building_type")
                * figure("people.per_home_of_type")
                * figure("people.household_scale"),
        );
    graph
        .figure(
            "jobs.soft_by_building_type",
            say!("measures-soft-jobs-type-workplace"),
            unit::JOBS,
        )
        .over(&["building_type", "workplace"])
        .formula(jobs_on("jobs.soft_floor_area_by_building_type"));
    let _ = graph
        .chosen("land.is_park", say!("measures-is-park"), unit::NUMBER)
        .over(BY_TYPE);
    worked::declare(graph, &WORKED);
}

const BY_TYPE: &[&str] = &["building_type"];
const BY_AREA: &[&str] = &["soft_area"];
const BY_AREA_AND_TYPE: &[&str] = &["soft_area", "building_type"];

/// What is one operation on two figures, or a total.
const WORKED: [Worked; 15] = [
    Worked::product(
        "lots.soft_by_soft_area",
        message!("measures-soft-lots-area-type"),
        unit::LOTS,
        "land.lots_in_soft_areas",
        "lots.per_land",
    )
    .over(BY_AREA_AND_TYPE),
    Worked::total(
        "lots.soft_by_building_type",
        message!("measures-soft-lots-type"),
        unit::LOTS,
        "lots.soft_by_soft_area",
        BY_AREA,
    )
    .over(BY_TYPE),
    Worked::product(
        "homes.soft_by_building_type",
        message!("measures-soft-homes-type"),
        unit::HOMES,
        "lots.soft_by_building_type",
        "homes.per_lot",
    )
    .over(BY_TYPE),
    Worked::total(
        "homes.soft",
        message!("measures-soft-homes"),
        unit::HOMES,
        "homes.soft_by_building_type",
        BY_TYPE,
    ),
    Worked::product(
        "homes.soft_by_soft_area_and_building_type",
        message!("measures-soft-homes-area-type"),
        unit::HOMES,
        "lots.soft_by_soft_area",
        "homes.per_lot",
    )
    .over(BY_AREA_AND_TYPE),
    Worked::total(
        "homes.soft_by_soft_area",
        message!("measures-soft-homes-area"),
        unit::HOMES,
        "homes.soft_by_soft_area_and_building_type",
        BY_TYPE,
    )
    .over(BY_AREA),
    Worked::total(
        "people.soft",
        message!("measures-soft-people"),
        unit::PEOPLE,
        "people.soft_by_building_type",
        BY_TYPE,
    ),
    Worked::product(
        "mix.soft_floor_area_by_building_type",
        message!("measures-soft-floor-type-use"),
        unit::AREA,
        "lots.soft_by_building_type",
        "mix.floor_per_lot",
    )
    .over(&["building_type", "use"]),
    Worked::total(
        "mix.soft_floor_area",
        message!("measures-soft-floor-use"),
        unit::AREA,
        "mix.soft_floor_area_by_building_type",
        BY_TYPE,
    )
    .over(&["use"]),
    Worked::product(
        "jobs.soft_floor_area_by_building_type",
        message!("measures-soft-floor-type-workplace"),
        unit::AREA,
        "lots.soft_by_building_type",
        "jobs.floor_per_lot",
    )
    .over(&["building_type", "workplace"]),
    Worked::total(
        "jobs.soft_floor_area",
        message!("measures-soft-floor-workplace"),
        unit::AREA,
        "jobs.soft_floor_area_by_building_type",
        BY_TYPE,
    )
    .over(&["workplace"]),
    Worked::total(
        "jobs.soft_by_workplace",
        message!("measures-soft-jobs-workplace"),
        unit::JOBS,
        "jobs.soft_by_building_type",
        BY_TYPE,
    )
    .over(&["workplace"]),
    Worked::total(
        "jobs.soft",
        message!("measures-soft-jobs"),
        unit::JOBS,
        "jobs.soft_by_workplace",
        &["workplace"],
    ),
    Worked::product(
        "land.park_in_soft_areas_by_building_type",
        message!("measures-soft-parks-area-type"),
        unit::LAND,
        "land.lots_in_soft_areas",
        "land.is_park",
    )
    .over(BY_AREA_AND_TYPE),
    Worked::total(
        "land.park_in_soft_areas",
        message!("measures-soft-parks"),
        unit::LAND,
        "land.park_in_soft_areas_by_building_type",
        BY_AREA_AND_TYPE,
    ),
];

impl SoftInputs {
    /// Sets the leaves of this file; there are `phases` phases.
    pub fn set(&self, inputs: &mut Inputs, phases: usize) {
        inputs.set_entries("soft_area", self.areas.iter().map(|area| area.entry.clone()).collect());
        let land: Vec<f64> = self.areas.iter().map(|area| area.land_m2).collect();
        inputs.set_counted("land.soft", numbers(&land), Some("soft_areas"));
        let shares: Vec<f64> = self.areas.iter().flat_map(|area| area.shares.iter().copied()).collect();
        inputs.set_chosen("land.soft_share", numbers(&shares));
        let in_phase = |area: &SoftInput| -> Vec<f64> {
            (0..phases)
                .map(|phase| f64::from(u8::from(phase == area.phase)))
                .collect()
        };
        let in_phases: Vec<f64> = self.areas.iter().flat_map(in_phase).collect();
        inputs.set_chosen("land.soft_in_phase", numbers(&in_phases));
        inputs.set_chosen("lots.per_land", numbers(&self.lots_per_m2));
        let is_park: Vec<f64> = self
            .is_park
            .iter()
            .map(|is_park| f64::from(u8::from(*is_park)))
            .collect();
        inputs.set_chosen("land.is_park", numbers(&is_park));
    }
}

#[cfg(test)]
mod tests;
