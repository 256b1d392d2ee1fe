//! Homes, people, jobs and floor area by building type, by price band and by phase.
//!
//! Each is what one lot (or one home) of a building type holds, times its lots in a phase: those laid and the rough ones
//! of soft areas. A price or rent band is a building type's own, so what the type holds is in its band whole: homes, the
//! people in them, its floor, and the jobs on that floor. The parts of each table sum to the figure of the whole plan.
//!
//! Floor area is without parked cars. Not counted: what is not counted in the whole either; a lot is in the phase of its
//! block whole.

use super::mix::jobs_on;
use crate::figures::expression::{Expression, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::unit::{self, Unit};
use crate::say;

/// One quantity told by building type, price band and phase.
struct Quantity {
    unit: Unit,
    /// Its table by building type, declared elsewhere.
    by_type: &'static str,
    /// Its table by building type and phase, from lots by both.
    in_phases: Expression<String>,
    /// Ids and titles of the tables by type and band, by band, by type and phase, by phase.
    tables: [(&'static str, &'static str); 4],
}

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
    declare_lots(graph);
    declare_on_one_lot(graph);
    let _ = graph
        .chosen("homes.in_price_band", say!("measures-in-band"), unit::NUMBER)
        .over(&["building_type", "price_band"]);
    for quantity in quantities() {
        declare_quantity(graph, quantity);
    }
}

/// Lots by building type and phase: those laid, and the rough ones of soft areas.
fn declare_lots(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("lots.by_phase", say!("measures-lots-type-phase"), unit::LOTS)
        .over(&["building_type", "phase"]);
    let _ = graph
        .chosen("land.soft_in_phase", say!("measures-soft-in-phase"), unit::NUMBER)
        .over(&["soft_area", "phase"]);
    graph
        .figure(
            "lots.soft_by_soft_area_and_phase",
            say!("measures-soft-lots-area-phase"),
            unit::LOTS,
        )
        .over(&["soft_area", "building_type", "phase"])
        .formula(figure("lots.soft_by_soft_area") * figure("land.soft_in_phase"));
    graph
        .figure("lots.soft_by_phase", say!("measures-soft-lots-phase"), unit::LOTS)
        .over(&["building_type", "phase"])
        .sum("lots.soft_by_soft_area_and_phase", &["soft_area"]);
    graph
        .figure("lots.all_by_phase", say!("measures-all-lots-phase"), unit::LOTS)
        .over(&["building_type", "phase"])
        .formula(figure("lots.by_phase") + figure("lots.soft_by_phase"));
}

/// Floor area and jobs on one lot of each building type.
fn declare_on_one_lot(graph: &mut GraphBuilder) {
    graph
        .figure("lots.floor_area", say!("measures-floor-lot"), unit::AREA_PER_LOT)
        .over(&["building_type"])
        .sum("mix.floor_per_lot", &["use"]);
    graph
        .figure(
            "lots.jobs_by_workplace",
            say!("measures-jobs-lot-workplace"),
            unit::JOBS_PER_LOT,
        )
        .over(&["building_type", "workplace"])
        .formula(jobs_on("jobs.floor_per_lot"));
    graph
        .figure("lots.jobs", say!("measures-jobs-lot"), unit::JOBS_PER_LOT)
        .over(&["building_type"])
        .sum("lots.jobs_by_workplace", &["workplace"]);
}

fn quantities() -> [Quantity; 4] {
    let lots = || figure("lots.all_by_phase");
    [
        Quantity {
            unit: unit::HOMES,
            by_type: "homes.by_building_type",
            in_phases: lots() * figure("homes.per_lot"),
            tables: [
                (
                    "homes.by_building_type_and_price_band",
                    say!("measures-homes-type-band"),
                ),
                ("homes.by_price_band", say!("measures-homes-band")),
                ("homes.by_building_type_and_phase", say!("measures-homes-type-phase")),
                ("homes.by_phase", say!("measures-homes-phase")),
            ],
        },
        Quantity {
            unit: unit::PEOPLE,
            by_type: "people.by_building_type",
            in_phases: figure("homes.by_building_type_and_phase")
                * figure("people.per_home_of_type")
                * figure("people.household_scale"),
            tables: [
                (
                    "people.by_building_type_and_price_band",
                    say!("measures-people-type-band"),
                ),
                ("people.by_price_band", say!("measures-people-band")),
                ("people.by_building_type_and_phase", say!("measures-people-type-phase")),
                ("people.by_phase", say!("measures-people-phase")),
            ],
        },
        Quantity {
            unit: unit::JOBS,
            by_type: "jobs.by_building_type",
            in_phases: lots() * figure("lots.jobs"),
            tables: [
                ("jobs.by_building_type_and_price_band", say!("measures-jobs-type-band")),
                ("jobs.by_price_band", say!("measures-jobs-band")),
                ("jobs.by_building_type_and_phase", say!("measures-jobs-type-phase")),
                ("jobs.by_phase", say!("measures-jobs-phase")),
            ],
        },
        Quantity {
            unit: unit::AREA,
            by_type: "density.floor_by_building_type",
            in_phases: lots() * figure("lots.floor_area"),
            tables: [
                (
                    "density.floor_by_building_type_and_price_band",
                    say!("measures-floor-type-band"),
                ),
                ("density.floor_by_price_band", say!("measures-floor-band")),
                (
                    "density.floor_by_building_type_and_phase",
                    say!("measures-floor-type-phase"),
                ),
                ("density.floor_by_phase", say!("measures-floor-phase")),
            ],
        },
    ]
}

fn declare_quantity(graph: &mut GraphBuilder, quantity: Quantity) {
    let [
        (type_and_band, type_and_band_title),
        (band, band_title),
        (type_and_phase, type_and_phase_title),
        (phase, phase_title),
    ] = quantity.tables;
    let unit = quantity.unit;
    graph
        .figure(type_and_band, type_and_band_title, unit)
        .over(&["building_type", "price_band"])
        .formula(figure(quantity.by_type) * figure("homes.in_price_band"));
    graph
        .figure(band, band_title, unit)
        .over(&["price_band"])
        .sum(type_and_band, &["building_type"]);
    graph
        .figure(type_and_phase, type_and_phase_title, unit)
        .over(&["building_type", "phase"])
        .formula(quantity.in_phases);
    graph
        .figure(phase, phase_title, unit)
        .over(&["phase"])
        .sum(type_and_phase, &["building_type"]);
}

#[cfg(test)]
mod tests;
