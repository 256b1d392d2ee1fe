//! Lots, homes and people: how many the land as painted holds.
//!
//! Homes are the lots of each building type, in all phases, times the homes on one, and the rough homes of soft areas. People are homes times the building type's own
//! number of people per home, times one factor for how local households compare with those numbers. Not counted: second
//! homes on a lot that the type does not name, empty homes, people in institutions.

use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::unit;
use crate::say;

/// Declares homes and people, and the axis `building_type`.
pub fn declare(graph: &mut GraphBuilder) {
    graph.open_axis("building_type", say!("measures-building-type"));

    let _ = graph
        .chosen("homes.per_lot", say!("measures-homes-per-lot"), unit::HOMES_PER_LOT)
        .over(&["building_type"]);
    let _ = graph
        .chosen(
            "people.per_home_of_type",
            say!("measures-people-per-home"),
            unit::PEOPLE_PER_HOME,
        )
        .over(&["building_type"]);
    let _ = graph.factor("people.household_scale", say!("measures-household-scale"), unit::NUMBER);

    graph
        .figure("lots.by_building_type", say!("measures-lots-type"), unit::LOTS)
        .over(&["building_type"])
        .sum("lots.by_phase", &["phase"]);
    graph
        .figure("homes.by_building_type", say!("measures-homes-type"), unit::HOMES)
        .over(&["building_type"])
        .formula(figure("lots.by_building_type") * figure("homes.per_lot") + figure("homes.soft_by_building_type"));
    graph
        .figure("homes.count", say!("measures-homes"), unit::HOMES)
        .sum("homes.by_building_type", &["building_type"]);
    graph
        .figure("people.by_building_type", say!("measures-people-type"), unit::PEOPLE)
        .over(&["building_type"])
        .formula(
            figure("homes.by_building_type") * figure("people.per_home_of_type") * figure("people.household_scale"),
        );
    graph
        .figure("people.count", say!("measures-people"), unit::PEOPLE)
        .sum("people.by_building_type", &["building_type"]);
}
