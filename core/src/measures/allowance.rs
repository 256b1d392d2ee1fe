//! Homes a town's rule allows: so many to the land that is left when shares of the land that holds back are taken off.
//!
//! Adjusted land is the site, less the rights-of-way of streets that stand, less a share of the land under each kind of
//! constraint; below zero more is taken than there is, and none are allowed. The homes allowed are that land times homes
//! by land, whole ones. The shares are those of one town's rule
//! and may be chosen anew under the ids of [`share_id`]; homes by land differ from zone to zone, so they have none until
//! the document's settings say them under [`HOMES_BY_LAND`].
//!
//! Source: Marshall Township, Pennsylvania, section 919, cluster option (read): wetland and floodway whole, the other
//! floodplain by half, land steeper than 25 % by 0.8 and of 15 to 25 % by 0.4; 1.00 or 2.25 homes to the acre by zone. A
//! plan knows one kind of floodplain and of steep land: the lesser floodplain and the greater steepness are taken. Water,
//! conservation, contaminated ground, easements and owners left out are taken whole, common practice; land kept by choice
//! is no constraint of a town's.
//!
//! Land under two kinds counts for the first in the order of [`HELD_BY`](crate::fabric::constraints::HELD_BY), where the
//! rule takes the strictest.

use super::land::{CONSTRAINT_KINDS, constraint_kinds};
use super::worked::{self, Worked};
use crate::figures::expression::{Expression, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::method::{Method, MethodInput, MethodStep};
use crate::figures::unit;
use crate::message;
use crate::plan::Document;
use crate::say;

/// The setting, and the leaf, of homes by land that the rule allows, in homes to a square meter.
pub const HOMES_BY_LAND: &str = "land.allowed_homes_by_land";

/// Share of the land under each kind of constraint that is taken off, in the order of [`constraint_kinds`].
const SHARES: [f64; CONSTRAINT_KINDS] = [1.0, 1.0, 0.5, 0.8, 1.0, 1.0, 1.0, 0.0, 1.0];

/// The setting of the share that is taken off of land under a kind of constraint.
#[must_use]
pub fn share_id(kind: &str) -> String {
    "land.allowance_share.".to_owned() + kind
}

const BY_KIND: &[&str] = &["constraint_kind"];

const WORKED: [Worked; 2] = [
    Worked::product(
        "land.allowance_taken_by_kind",
        message!("measures-allowance-taken-kind"),
        unit::LAND,
        "land.under_constraints",
        "land.allowance_shares",
    )
    .over(BY_KIND),
    Worked::sum(
        "land.allowance_taken",
        message!("measures-allowance-taken"),
        unit::LAND,
        "land.standing_right_of_way",
        "land.allowance_constrained",
    ),
];

/// What the document's settings say of the town's rule.
#[derive(Clone, Debug, PartialEq)]
pub struct AllowanceInputs {
    /// Share taken off by kind of constraint, in the order of [`constraint_kinds`].
    pub shares: [f64; CONSTRAINT_KINDS],
    /// Homes to a square meter; `None` where none are said.
    pub homes_by_land: Option<f64>,
}

impl Default for AllowanceInputs {
    fn default() -> Self {
        Self {
            shares: SHARES,
            homes_by_land: None,
        }
    }
}

impl AllowanceInputs {
    /// The settings of a document; a share that is not between 0 and 1, and homes that are not above 0, do not count.
    #[must_use]
    pub fn of(document: &Document) -> Self {
        let mut held = Self::default();
        let chosen = &document.settings.chosen;
        if chosen.is_empty() {
            return held;
        }
        for ((kind, _), share) in constraint_kinds().into_iter().zip(&mut held.shares) {
            let own = chosen.get(&share_id(kind)).copied();
            *share = own.filter(|own| (0.0..=1.0).contains(own)).unwrap_or(*share);
        }
        let homes = chosen.get(HOMES_BY_LAND).copied();
        held.homes_by_land = homes.filter(|homes| homes.is_finite() && *homes > 0.0);
        held
    }

    /// Sets the leaves of this file.
    pub fn set(&self, inputs: &mut Inputs) {
        inputs.set_chosen("land.allowance_shares", numbers(&self.shares));
        let unsaid = || Cell::Unknown(say!("measures-no-allowed-homes").to_owned());
        let homes = self.homes_by_land.map_or_else(unsaid, Cell::Number);
        inputs.set_chosen(HOMES_BY_LAND, vec![homes]);
    }
}

/// Declares what a town's rule allows. Needs what [`super::land::declare`] declares; the rights-of-way are counted by
/// [`super::streets::StreetInputs::of`].
pub fn declare(graph: &mut GraphBuilder) {
    let _ = graph
        .chosen("land.allowance_shares", say!("measures-allowance-shares"), unit::SHARE)
        .over(BY_KIND);
    let _ = graph.chosen(HOMES_BY_LAND, say!("measures-allowed-by-land"), unit::HOMES_PER_LAND);
    let _ = graph.counted(
        "land.standing_right_of_way",
        say!("measures-standing-right-of-way"),
        unit::LAND,
    );
    worked::declare(graph, &WORKED);
    graph
        .figure(
            "land.allowance_constrained",
            say!("measures-allowance-constrained"),
            unit::LAND,
        )
        .sum("land.allowance_taken_by_kind", BY_KIND);
    graph
        .figure("land.adjusted", say!("measures-adjusted-land"), unit::LAND)
        .formula(figure("land.site") - figure("land.allowance_taken"));
    graph
        .figure("land.allowed_homes", say!("measures-allowed-homes"), unit::HOMES)
        .method(&WHOLE_HOMES, &["land.adjusted", HOMES_BY_LAND], &[]);
}

/// Whole homes on land at so many to the land.
static WHOLE_HOMES: Method = Method {
    name: || say!("measures-whole-homes-name"),
    words: || say!("measures-whole-homes-words"),
    inputs: &[unit::LAND.dimension, unit::HOMES_PER_LAND.dimension],
    gives: unit::HOMES.dimension,
    evaluate: whole_homes,
    steps: whole_homes_steps,
};

/// So near below a whole number of homes the number is whole: products of acres and homes to the acre err in their last
/// bits.
const NEARLY_WHOLE: f64 = 1e-9;

fn whole_of(land_m2: f64, homes_by_land: f64) -> f64 {
    (land_m2 * homes_by_land * (1.0 + NEARLY_WHOLE)).floor().max(0.0)
}

fn whole_homes(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([[land_m2], [homes_by_land]], [result]) = (inputs, results) else {
        return Err(say!("measures-two-numbers").to_owned());
    };
    *result = whole_of(*land_m2, *homes_by_land);
    Ok(())
}

fn whole_homes_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    let [land, homes] = inputs else {
        return Vec::new();
    };
    let number = |input: &MethodInput| input.values.first().copied().unwrap_or(0.0);
    vec![MethodStep {
        title: say!("measures-whole-homes").to_owned(),
        unit: unit::HOMES,
        formula: Expression::Constant(whole_of(number(land), number(homes)), unit::HOMES),
    }]
}

#[cfg(test)]
mod tests;
