//! Homes, people, jobs and floor area by building type, by price band and by phase.
//!
//! Each is what one lot (or one home) of a building type holds, times its lots in a phase: those laid and the rough ones
//! of soft areas. A price or rent band is a building type's own, so what the type holds is in its band whole: homes, the
//! people in them, its floor, and the jobs on that floor. The parts of each table sum to the figure of the whole plan.
//!
//! Floor area is without parked cars. Not counted: what is not counted in the whole either; a lot is in the phase of its
//! block whole.

use super::mix::jobs_on;
use super::worked::{self, Worked};
use crate::figures::graph::GraphBuilder;
use crate::figures::unit;
use crate::message;
use crate::say;

/// Declares the axes `price_band` and `phase` and the tables over them. Needs what [`super::homes::declare`],
/// [`super::mix::declare`], [`super::soft::declare`], [`super::density::declare`] and [`super::yardsticks::declare`]
/// declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis(
        "price_band",
        say!("measures-price-band"),
        &super::density::price_bands(),
    );
    graph.open_axis("phase", say!("measures-phase"));
    let _ = graph
        .counted("lots.by_phase", say!("measures-lots-type-phase"), unit::LOTS)
        .over(BY_TYPE_AND_PHASE);
    let _ = graph
        .chosen("land.soft_in_phase", say!("measures-soft-in-phase"), unit::NUMBER)
        .over(&["soft_area", "phase"]);
    let _ = graph
        .chosen("homes.in_price_band", say!("measures-in-band"), unit::NUMBER)
        .over(BY_TYPE_AND_BAND);
    graph
        .figure(
            "lots.jobs_by_workplace",
            say!("measures-jobs-lot-workplace"),
            unit::JOBS_PER_LOT,
        )
        .over(&["building_type", "workplace"])
        .formula(jobs_on("jobs.floor_per_lot"));
    worked::declare(graph, &WORKED);
}

const BY_TYPE: &[&str] = &["building_type"];
const BY_TYPE_AND_BAND: &[&str] = &["building_type", "price_band"];
const BY_TYPE_AND_PHASE: &[&str] = &["building_type", "phase"];

/// What is one operation on two figures, or a total: lots by phase, what is on one lot, and then each quantity by type and
/// band, by band, by type and phase, and by phase.
const WORKED: [Worked; 22] = [
    Worked::product(
        "lots.soft_by_soft_area_and_phase",
        message!("measures-soft-lots-area-phase"),
        unit::LOTS,
        "lots.soft_by_soft_area",
        "land.soft_in_phase",
    )
    .over(&["soft_area", "building_type", "phase"]),
    Worked::total(
        "lots.soft_by_phase",
        message!("measures-soft-lots-phase"),
        unit::LOTS,
        "lots.soft_by_soft_area_and_phase",
        &["soft_area"],
    )
    .over(BY_TYPE_AND_PHASE),
    Worked::sum(
        "lots.all_by_phase",
        message!("measures-all-lots-phase"),
        unit::LOTS,
        "lots.by_phase",
        "lots.soft_by_phase",
    )
    .over(BY_TYPE_AND_PHASE),
    Worked::total(
        "lots.floor_area",
        message!("measures-floor-lot"),
        unit::AREA_PER_LOT,
        "mix.floor_per_lot",
        &["use"],
    )
    .over(BY_TYPE),
    Worked::total(
        "lots.jobs",
        message!("measures-jobs-lot"),
        unit::JOBS_PER_LOT,
        "lots.jobs_by_workplace",
        &["workplace"],
    )
    .over(BY_TYPE),
    Worked::product(
        "people.per_home_here",
        message!("measures-people-per-home-here"),
        unit::PEOPLE_PER_HOME,
        "people.per_home_of_type",
        "people.household_scale",
    )
    .over(BY_TYPE),
    Worked::product(
        "homes.by_building_type_and_price_band",
        message!("measures-homes-type-band"),
        unit::HOMES,
        "homes.by_building_type",
        "homes.in_price_band",
    )
    .over(BY_TYPE_AND_BAND),
    Worked::total(
        "homes.by_price_band",
        message!("measures-homes-band"),
        unit::HOMES,
        "homes.by_building_type_and_price_band",
        BY_TYPE,
    )
    .over(&["price_band"]),
    Worked::product(
        "homes.by_building_type_and_phase",
        message!("measures-homes-type-phase"),
        unit::HOMES,
        "lots.all_by_phase",
        "homes.per_lot",
    )
    .over(BY_TYPE_AND_PHASE),
    Worked::total(
        "homes.by_phase",
        message!("measures-homes-phase"),
        unit::HOMES,
        "homes.by_building_type_and_phase",
        BY_TYPE,
    )
    .over(&["phase"]),
    Worked::product(
        "people.by_building_type_and_price_band",
        message!("measures-people-type-band"),
        unit::PEOPLE,
        "people.by_building_type",
        "homes.in_price_band",
    )
    .over(BY_TYPE_AND_BAND),
    Worked::total(
        "people.by_price_band",
        message!("measures-people-band"),
        unit::PEOPLE,
        "people.by_building_type_and_price_band",
        BY_TYPE,
    )
    .over(&["price_band"]),
    Worked::product(
        "people.by_building_type_and_phase",
        message!("measures-people-type-phase"),
        unit::PEOPLE,
        "homes.by_building_type_and_phase",
        "people.per_home_here",
    )
    .over(BY_TYPE_AND_PHASE),
    Worked::total(
        "people.by_phase",
        message!("measures-people-phase"),
        unit::PEOPLE,
        "people.by_building_type_and_phase",
        BY_TYPE,
    )
    .over(&["phase"]),
    Worked::product(
        "jobs.by_building_type_and_price_band",
        message!("measures-jobs-type-band"),
        unit::JOBS,
        "jobs.by_building_type",
        "homes.in_price_band",
    )
    .over(BY_TYPE_AND_BAND),
    Worked::total(
        "jobs.by_price_band",
        message!("measures-jobs-band"),
        unit::JOBS,
        "jobs.by_building_type_and_price_band",
        BY_TYPE,
    )
    .over(&["price_band"]),
    Worked::product(
        "jobs.by_building_type_and_phase",
        message!("measures-jobs-type-phase"),
        unit::JOBS,
        "lots.all_by_phase",
        "lots.jobs",
    )
    .over(BY_TYPE_AND_PHASE),
    Worked::total(
        "jobs.by_phase",
        message!("measures-jobs-phase"),
        unit::JOBS,
        "jobs.by_building_type_and_phase",
        BY_TYPE,
    )
    .over(&["phase"]),
    Worked::product(
        "density.floor_by_building_type_and_price_band",
        message!("measures-floor-type-band"),
        unit::AREA,
        "density.floor_by_building_type",
        "homes.in_price_band",
    )
    .over(BY_TYPE_AND_BAND),
    Worked::total(
        "density.floor_by_price_band",
        message!("measures-floor-band"),
        unit::AREA,
        "density.floor_by_building_type_and_price_band",
        BY_TYPE,
    )
    .over(&["price_band"]),
    Worked::product(
        "density.floor_by_building_type_and_phase",
        message!("measures-floor-type-phase"),
        unit::AREA,
        "lots.all_by_phase",
        "lots.floor_area",
    )
    .over(BY_TYPE_AND_PHASE),
    Worked::total(
        "density.floor_by_phase",
        message!("measures-floor-phase"),
        unit::AREA,
        "density.floor_by_building_type_and_phase",
        BY_TYPE,
    )
    .over(&["phase"]),
];

#[cfg(test)]
mod tests;
