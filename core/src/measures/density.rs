//! Densities, each with its land; floor-area ratio; how evenly homes are divided over types.
//!
//! Homes are those drawn as lots and the rough ones of soft areas. Three densities: on land of the whole site (what does
//! not count in the site left out), on buildable land (rights-of-way left out, and what does not count as buildable), and
//! on the land of lots with homes. A lot with homes above shops is a lot with homes whole.
//!
//! Floor-area ratio is gross floor area by the land of the lots it stands on, parked cars left out; for work, shops,
//! schools and halls on the lots that have such floor. Land of lots is as they are laid, in soft areas the typical lot.
//!
//! Not counted: floor area, homes and land outside the site; parking along streets.

use crate::figures::axis::Entry;
use crate::figures::expression::{Binary, Expression, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::method::{Method, MethodInput, MethodStep, MethodTerm};
use crate::figures::unit::{self, Dimension};
use crate::say;

/// How many [`lot_groups`] there are.
pub const LOT_GROUPS: usize = 5;

/// Groups of lots whose land is counted together.
#[must_use]
pub fn lot_groups() -> [(&'static str, &'static str); LOT_GROUPS] {
    [
        ("with_homes", say!("measures-group-with-homes")),
        ("with_other_floor", say!("measures-group-other-floor")),
        ("built", say!("measures-group-built")),
        ("with_learning", say!("measures-group-learning")),
        ("without_homes", say!("measures-group-without-homes")),
    ]
}

/// How many [`price_bands`] there are.
pub const PRICE_BANDS: usize = 3;

/// Price or rent bands, in order.
#[must_use]
pub fn price_bands() -> [(&'static str, &'static str); PRICE_BANDS] {
    [
        ("lower", say!("measures-band-lower")),
        ("middle", say!("measures-band-middle")),
        ("upper", say!("measures-band-upper")),
    ]
}

/// Lots of one building type, ready for the figures.
#[derive(Clone, Debug, PartialEq)]
pub struct LotInput {
    /// Land of its lots as laid, in square meters.
    pub land_m2: f64,
    /// Land of its typical lot, in square meters.
    pub typical_m2: f64,
    /// Whether its lots are in each group, in the order of [`lot_groups`].
    pub groups: [bool; LOT_GROUPS],
    /// Share of the lot that is planted; 0 for types without buildings, whose land is open as a whole.
    pub planted_share: f64,
    /// Parking spaces on a lot.
    pub parking_per_lot: f64,
    /// Its price band, by its place in [`price_bands`].
    pub price_band: usize,
    /// Its lots in each phase.
    pub lots_by_phase: Vec<f64>,
}

/// Lots and phases, ready for the figures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DensityInputs {
    /// The building types, in palette order.
    pub types: Vec<LotInput>,
    /// The phases; a plan without any is built in one.
    pub phases: Vec<Entry>,
    /// Land of blocks to be built on that is in no lot, in square meters: no street reaches it, or a row ends there.
    pub land_left_m2: f64,
}

/// Declares densities and their axes. Needs what [`super::homes::declare`], [`super::mix::declare`],
/// [`super::land::declare`] and [`super::soft::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("lot_group", say!("measures-lot-group"), &lot_groups());
    declare_lot_land(graph);
    declare_densities(graph);
    declare_ratios(graph);
    declare_kinds_of_homes(graph);
    let _ = graph
        .chosen(
            "lots.parking",
            say!("measures-parking-per-lot"),
            unit::PARKING_SPACES_PER_LOT,
        )
        .over(&["building_type"]);
    graph
        .figure(
            "density.parking_by_building_type",
            say!("measures-parking-by-type"),
            unit::PARKING_SPACES,
        )
        .over(&["building_type"])
        .formula((figure("lots.by_building_type") + figure("lots.soft_by_building_type")) * figure("lots.parking"));
    graph
        .figure("density.parking_spaces", say!("measures-parking"), unit::PARKING_SPACES)
        .sum("density.parking_by_building_type", &["building_type"]);
}

fn declare_lot_land(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("lots.land_laid", say!("measures-lot-land"), unit::LAND)
        .over(&["building_type"]);
    let _ = graph
        .chosen("lots.typical_area", say!("measures-lot-typical"), unit::AREA_PER_LOT)
        .over(&["building_type"]);
    let _ = graph
        .chosen("lots.in_group", say!("measures-lots-in-group"), unit::NUMBER)
        .over(&["building_type", "lot_group"]);
    graph
        .figure("lots.land_by_building_type", say!("measures-lot-land-type"), unit::LAND)
        .over(&["building_type"])
        .formula(figure("lots.land_laid") + figure("lots.soft_by_building_type") * figure("lots.typical_area"));
    let _ = graph.counted("lots.land_left", say!("measures-land-left"), unit::LAND);
    graph
        .figure("land.in_no_lot", say!("measures-no-lot"), unit::LAND)
        .formula(figure("lots.land_left"));
    graph
        .figure(
            "lots.land_by_building_type_and_group",
            say!("measures-lot-land-type-group"),
            unit::LAND,
        )
        .over(&["building_type", "lot_group"])
        .formula(figure("lots.land_by_building_type") * figure("lots.in_group"));
    graph
        .figure("lots.land_by_group", say!("measures-lot-land-group"), unit::LAND)
        .over(&["lot_group"])
        .sum("lots.land_by_building_type_and_group", &["building_type"]);
    for (id, title, group) in [
        (
            "density.residential_lot_land",
            say!("measures-land-with-homes"),
            "with_homes",
        ),
        (
            "density.other_lot_land",
            say!("measures-land-other-floor"),
            "with_other_floor",
        ),
        ("density.built_lot_land", say!("measures-land-built"), "built"),
        ("land.school_land", say!("measures-land-school"), "with_learning"),
    ] {
        graph
            .figure(id, title, unit::LAND)
            .entry("lots.land_by_group", "lot_group", group);
    }
}

fn declare_densities(graph: &mut GraphBuilder) {
    graph
        .figure("density.site_land", say!("measures-density-site-land"), unit::LAND)
        .formula(figure("land.site") - figure("land.not_in_site"));
    graph
        .figure(
            "density.buildable_land",
            say!("measures-density-buildable-land"),
            unit::LAND,
        )
        .formula(figure("land.buildable") + figure("land.held_back") - figure("land.not_in_buildable"));
    for (id, title, land) in [
        (
            "density.homes_per_site",
            say!("measures-density-site"),
            "density.site_land",
        ),
        (
            "density.homes_per_buildable",
            say!("measures-density-buildable"),
            "density.buildable_land",
        ),
        (
            "density.homes_per_residential_lots",
            say!("measures-density-lots"),
            "density.residential_lot_land",
        ),
    ] {
        graph
            .figure(id, title, unit::HOMES_PER_LAND)
            .formula(figure("homes.count") / figure(land));
    }
}

fn declare_ratios(graph: &mut GraphBuilder) {
    graph
        .figure("density.floor_area", say!("measures-floor-no-parking"), unit::AREA)
        .sum("mix.floor_area", &["use"]);
    graph
        .figure("density.other_floor_area", say!("measures-floor-other"), unit::AREA)
        .sum("jobs.floor_area", &["workplace"]);
    graph
        .figure("density.floor_area_ratio", say!("measures-far-other"), unit::NUMBER)
        .formula(figure("density.other_floor_area") / figure("density.other_lot_land"));
    graph
        .figure("density.floor_area_ratio_all", say!("measures-far-all"), unit::NUMBER)
        .formula(figure("density.floor_area") / figure("density.built_lot_land"));
}

fn declare_kinds_of_homes(graph: &mut GraphBuilder) {
    graph
        .figure("homes.type_diversity", say!("measures-type-diversity"), unit::NUMBER)
        .method(&DIVERSITY, &["homes.by_building_type"], &["building_type"]);
}

/// Simpson's diversity `1 − Σ (n ÷ N)²` of homes over building types: 0 when all are of one type, up to
/// `1 − 1 ÷ types` when there are as many of each.
///
/// Source: LEED v4 for Neighborhood Development, credit Housing types and affordability, read in a page on the credit.
/// Types are those of the plan's palette; a rule that has its own categories counts by those.
pub static DIVERSITY: Method = Method {
    name: || say!("measures-diversity-name"),
    words: || say!("measures-diversity-words"),
    inputs: &[unit::HOMES.dimension],
    gives: Dimension::NONE,
    evaluate: diversity,
    steps: diversity_steps,
};

fn diversity(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([counts], [result]) = (inputs, results) else {
        return Err(say!("measures-diversity-one-list").to_owned());
    };
    if counts.iter().any(|count| *count < 0.0) {
        return Err(say!("measures-homes-below-zero").to_owned());
    }
    let total: f64 = counts.iter().sum();
    if total <= 0.0 {
        return Err(say!("measures-no-homes").to_owned());
    }
    // Of whole homes both squares are whole, so that a threshold such as 0.7 is met exactly.
    let alike: f64 = counts.iter().map(|count| count * count).sum();
    *result = ((total * total - alike) / (total * total)).max(0.0);
    Ok(())
}

fn diversity_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    let [counts] = inputs else {
        return Vec::new();
    };
    let term = |term: MethodTerm| Expression::Figure(term);
    let binary = |operation, left, right| Expression::Binary(operation, Box::new(left), Box::new(right));
    let one = Expression::Constant(1.0, unit::NUMBER);
    let sum = |parts: Vec<Expression<MethodTerm>>| {
        parts
            .into_iter()
            .reduce(|sum, part| binary(Binary::Add, sum, part))
            .unwrap_or(one.clone())
    };
    let present: Vec<usize> = (0..counts.values.len())
        .filter(|cell| counts.values[*cell] > 0.0)
        .collect();
    let homes = |cell: usize| term(MethodTerm::Input { input: 0, cell });
    let mut steps = vec![MethodStep {
        title: say!("measures-all-homes").to_owned(),
        unit: unit::HOMES,
        formula: sum(present.iter().map(|cell| homes(*cell)).collect()),
    }];
    for cell in &present {
        steps.push(MethodStep {
            title: say!("measures-share-of", what = counts.labels[*cell]),
            unit: unit::SHARE,
            formula: binary(Binary::Divide, homes(*cell), term(MethodTerm::Step(0))),
        });
    }
    let squares = (1..=present.len()).map(|step| {
        let share = term(MethodTerm::Step(step));
        binary(Binary::Multiply, share.clone(), share)
    });
    let alike = sum(squares.collect());
    steps.push(MethodStep {
        title: say!("measures-diversity").to_owned(),
        unit: unit::NUMBER,
        formula: binary(Binary::Subtract, one.clone(), alike),
    });
    steps
}

impl DensityInputs {
    /// Sets the leaves of this file.
    pub fn set(&self, inputs: &mut Inputs) {
        let column = |of: &dyn Fn(&LotInput) -> f64| numbers(&self.types.iter().map(of).collect::<Vec<f64>>());
        let flag = |is: bool| f64::from(u8::from(is));
        inputs.set_entries("phase", self.phases.clone());
        inputs.set_counted("lots.land_laid", column(&|one| one.land_m2), Some("lots"));
        inputs.set_counted("lots.land_left", numbers(&[self.land_left_m2]), Some("lots"));
        inputs.set_chosen("lots.typical_area", column(&|one| one.typical_m2));
        let groups: Vec<f64> = self.types.iter().flat_map(|one| one.groups.map(flag)).collect();
        inputs.set_chosen("lots.in_group", numbers(&groups));
        let in_band =
            |one: &LotInput| -> Vec<f64> { (0..PRICE_BANDS).map(|band| flag(band == one.price_band)).collect() };
        let in_bands: Vec<f64> = self.types.iter().flat_map(in_band).collect();
        inputs.set_chosen("homes.in_price_band", numbers(&in_bands));
        let by_phase: Vec<f64> = self
            .types
            .iter()
            .flat_map(|one| one.lots_by_phase.iter().copied())
            .collect();
        inputs.set_counted("lots.by_phase", numbers(&by_phase), Some("lots"));
        inputs.set_chosen("lots.parking", column(&|one| one.parking_per_lot));
        inputs.set_chosen("lots.planted_share", column(&|one| one.planted_share));
    }
}

#[cfg(test)]
mod tests;
