//! Homes and people: how many the land as painted holds.
//!
//! Until lots are laid, homes follow from land: the share of buildable land that becomes lots, by the area of a lot of
//! the painted type, by the homes on it. Not counted: homes on land without a building type, second homes on a lot that
//! the type does not name, rounding to whole lots.

use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::unit;

/// Declares homes and people, and the axes `building_type` and `face`.
pub fn declare(graph: &mut GraphBuilder) {
    graph.open_axis("building_type", "building type");
    graph.open_axis("face", "block face");

    let _ = graph
        .counted("land.by_face", "buildable land in each face", unit::LAND)
        .over(&["building_type", "face"]);
    let _ = graph.factor("land.lot_yield_share", "share of land that becomes lots", unit::SHARE);
    let _ = graph
        .chosen("homes.lot_area", "area of a lot", unit::AREA_PER_LOT)
        .over(&["building_type"]);
    let _ = graph
        .chosen("homes.per_lot", "homes on a lot", unit::HOMES_PER_LOT)
        .over(&["building_type"]);
    let _ = graph.factor("people.per_home", "people per home", unit::PEOPLE_PER_HOME);

    graph
        .figure("land.by_building_type", "buildable land by building type", unit::LAND)
        .over(&["building_type"])
        .sum("land.by_face", &["face"]);
    graph
        .figure("homes.by_building_type", "homes by building type", unit::HOMES)
        .over(&["building_type"])
        .formula(
            figure("land.by_building_type") * figure("land.lot_yield_share") / figure("homes.lot_area")
                * figure("homes.per_lot"),
        );
    graph
        .figure("homes.count", "homes", unit::HOMES)
        .sum("homes.by_building_type", &["building_type"]);
    graph
        .figure("people.count", "people", unit::PEOPLE)
        .formula(figure("homes.count") * figure("people.per_home"));
}
