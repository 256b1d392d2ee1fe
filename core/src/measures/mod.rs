//! What is there: figures counted from the drawing. Each file declares its part of the graph over leaves that the
//! counting side fills through [`MeasureInputs`].

pub mod palette;

pub mod frontage;

pub mod form;

pub mod land;

pub mod soft;

pub mod density;

pub mod breakdown;

pub mod program;

pub mod allowance;

pub mod yardsticks;

pub mod place_sources;

pub mod walk_network;

pub mod homes;

pub mod mix;

pub mod walk;

pub mod details;

pub mod slopes;

pub mod street_grades;

pub mod streets;

pub mod sun;

pub mod count;

mod worked;

use crate::factors::Factors;
use crate::figures::axis::Entry;
use crate::figures::check::GraphFault;
use crate::figures::graph::{Graph, GraphBuilder};
use crate::figures::inputs::{Inputs, numbers};

/// What the drawing and its settings say, ready for the figures.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasureInputs {
    /// The plan's building types, in palette order.
    pub building_types: Vec<BuildingTypeInput>,
    /// Who can walk where.
    pub walk: walk::WalkInput,
    /// Streets and blocks.
    pub streets: streets::StreetInputs,
    /// Land, soft areas, densities and the program.
    pub form: form::FormInputs,
    /// What takes longer than a frame; `None` until it is worked out.
    pub details: Option<details::WalkDetails>,
}

/// One building type.
#[derive(Clone, Debug, PartialEq)]
pub struct BuildingTypeInput {
    /// Its id in the palette, and its name.
    pub entry: Entry,
    /// Homes on one lot; 0 for a type without homes.
    pub homes_per_lot: f64,
    /// People in one home; 0 for a type without homes.
    pub people_per_home: f64,
    /// Gross floor area of each use on one lot, in the order of [`mix::uses`].
    pub floor_per_lot_m2: [f64; mix::USES],
    /// Jobs on a square meter of the floor of each workplace, as the type says; 0 where it has no such floor.
    pub jobs_per_m2: [f64; mix::WORKPLACES],
}

/// Declares every figure of this module.
pub fn declare(graph: &mut GraphBuilder) {
    homes::declare(graph);
    walk::declare(graph);
    mix::declare(graph);
    details::declare(graph);
    streets::declare(graph);
    form::declare(graph);
}

/// The graph of every figure of this module.
///
/// # Errors
/// The faults of the declarations; a test holds that there is none.
pub fn graph() -> Result<Graph, Vec<GraphFault>> {
    let mut builder = GraphBuilder::new();
    declare(&mut builder);
    builder.build()
}

/// Which factors fill which factor leaf, a factor for each cell.
pub const FACTOR_LEAVES: [(&str, &[&str]); 18] = [
    ("land.lot_yield_share", &["land.lot_yield_share"]),
    ("program.floor_per_seat", &["program.floor_per_seat"]),
    ("people.household_scale", &["people.household_scale"]),
    ("people.workers_per_home", &["people.workers_per_home"]),
    ("people.occupied_share", &["people.occupied_share"]),
    ("parks.land_per_person", &["parks.land_per_person"]),
    ("parks.people_per_park", &["parks.people_per_park"]),
    ("shops.floor_per_person", &["shops.floor_per_person"]),
    ("parking.area_per_space", &["parking.area_per_space"]),
    ("walking.mean_walk", &["walking.mean_walk"]),
    ("walking.crossing_design_speed", &["walking.crossing_design_speed"]),
    ("walking.crossing_check_speed", &["walking.crossing_check_speed"]),
    ("walking.push_button", &["walking.push_button"]),
    ("schools.site", &["schools.site"]),
    ("schools.site_per_seat", &["schools.site_per_seat"]),
    ("walking.planning_speed", &["walking.planning_speed"]),
    ("walking.slower_speed", &["walking.slower_speed"]),
    (
        mix::FLOOR_PER_JOB_SCALE,
        &[
            "jobs.floor_per_job_scale.work",
            "jobs.floor_per_job_scale.shops",
            "jobs.floor_per_job_scale.learning",
            "jobs.floor_per_job_scale.gathering",
        ],
    ),
];

/// Leaf values from what was counted and from the factor tables.
///
/// # Errors
/// The ids of the factors the tables lack.
pub fn inputs(measured: &MeasureInputs, factors: &Factors) -> Result<Inputs, Vec<String>> {
    let mut inputs = first_level_inputs(measured, factors)?;
    measured.streets.set_rest(&mut inputs);
    Ok(inputs)
}

/// Leaf values without those of streets and blocks that no first-level figure needs
/// ([`streets::StreetInputs::of_first_level`]).
///
/// # Errors
/// The ids of the factors the tables lack.
pub fn first_level_inputs(measured: &MeasureInputs, factors: &Factors) -> Result<Inputs, Vec<String>> {
    let mut inputs = Inputs::new();
    let types = &measured.building_types;
    inputs.set_entries("building_type", types.iter().map(|one| one.entry.clone()).collect());
    let homes_per_lot: Vec<f64> = types.iter().map(|one| one.homes_per_lot).collect();
    inputs.set_chosen("homes.per_lot", numbers(&homes_per_lot));
    let people_per_home: Vec<f64> = types.iter().map(|one| one.people_per_home).collect();
    inputs.set_chosen("people.per_home_of_type", numbers(&people_per_home));
    let floor_per_lot = |first: usize| -> Vec<f64> {
        types
            .iter()
            .flat_map(|one| one.floor_per_lot_m2.iter().skip(first))
            .copied()
            .collect()
    };
    inputs.set_chosen("mix.floor_per_lot", numbers(&floor_per_lot(0)));
    inputs.set_chosen("jobs.floor_per_lot", numbers(&floor_per_lot(mix::FIRST_WORKPLACE)));
    let jobs_per_m2: Vec<f64> = types.iter().flat_map(|one| one.jobs_per_m2).collect();
    inputs.set_chosen("jobs.per_floor_area", numbers(&jobs_per_m2));
    walk::set_inputs(&mut inputs, &measured.walk);
    measured.streets.set_first_level(&mut inputs);
    measured.form.set(&mut inputs);
    details::set(&mut inputs, measured.details.as_ref(), measured.streets.units);

    let mut missing = Vec::new();
    for (leaf, ids) in FACTOR_LEAVES {
        let mut rows = Vec::new();
        for id in ids {
            match factors.get(id) {
                Some(factor) => rows.push(factor.clone()),
                None => missing.push((*id).to_owned()),
            }
        }
        inputs.set_factor(leaf, rows);
    }
    if missing.is_empty() { Ok(inputs) } else { Err(missing) }
}

#[cfg(test)]
pub(crate) mod tests;
