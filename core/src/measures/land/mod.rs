//! Land: the site, what streets take of it, what holds it back, and what the rest is given to.
//!
//! Every place of the site is counted once. Land under a right-of-way is street, whatever else lies there; of the rest,
//! land under a constraint that may not be built upon is held back, by the first of the kinds in the stated order
//! ([`HELD_BY`](crate::fabric::constraints::HELD_BY)); what is left is buildable. Buildable land of a block is given to
//! the uses of its building types; in a block without a use, to the places drawn over it, then to soft areas; the rest
//! is not yet given a use. So the land bar sums to the site.
//!
//! The site is what its boundary encloses. Without a boundary it is the land within streets, with the soft areas and
//! places drawn beyond them.
//!
//! Not counted: slopes, setbacks, land beyond the site, and right-of-ways of streets that only pass near.

pub mod claims;

pub mod count;

use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::unit;

/// The parts of the land bar, in order.
pub const PARTS: [(&str, &str); 7] = [
    ("homes", "homes"),
    ("shops_and_work", "shops and work"),
    ("civic", "civic"),
    ("green", "green"),
    ("water", "water"),
    ("streets", "streets"),
    ("unused", "not yet given a use"),
];

/// What says to which part land belongs.
pub const SOURCES: [(&str, &str); 6] = [
    ("right_of_way", "right-of-ways"),
    ("held_back", "land held back"),
    ("blocks", "blocks with a use"),
    ("places", "places drawn over blocks without a use"),
    ("soft_areas", "soft areas"),
    ("nothing", "nothing yet"),
];

/// What holds land back, in the order of [`HELD_BY`](crate::fabric::constraints::HELD_BY).
pub const CONSTRAINT_KINDS: [(&str, &str); 9] = [
    ("water", "open water"),
    ("wetland", "wetland"),
    ("floodplain", "floodplain"),
    ("steep", "steep land"),
    ("conservation", "conservation"),
    ("contaminated", "contaminated ground"),
    ("easement", "easements"),
    ("keep", "kept as it is"),
    ("owner_left_out", "owners left out"),
];

/// What is counted of land under constraints: all of it, then what an area answers no for, in the order of
/// [`SWITCHES`](crate::fabric::constraints::SWITCHES).
pub const CONSTRAINT_COUNTS: [(&str, &str); 5] = [
    ("covered", "covered"),
    ("not_buildable", "may not be built upon"),
    ("not_in_site", "not counted in the whole site"),
    ("not_in_buildable", "not counted as buildable"),
    ("not_walkable", "not to be walked across"),
];

/// Kinds of open space, in order.
pub const OPEN_SPACES: [(&str, &str); 5] = [
    ("parks", "parks"),
    ("squares", "squares"),
    ("natural", "natural land"),
    ("held_back", "green land held back"),
    ("in_lots", "planted in lots"),
];

/// Land as counted on the drawing, in square meters.
#[derive(Clone, Debug, PartialEq)]
pub struct LandInputs {
    /// By part of the land bar, then by what says so.
    pub parts_m2: [[f64; SOURCES.len()]; PARTS.len()],
    /// Under constraints, by kind, then by what is counted.
    pub constraints_m2: [[f64; CONSTRAINT_COUNTS.len()]; CONSTRAINT_KINDS.len()],
    /// Open space, by kind; what is planted in lots is worked out from the lots.
    pub open_space_m2: [f64; OPEN_SPACES.len()],
    /// Whether a site boundary is drawn.
    pub has_boundary: bool,
}

/// Declares land and its axes. Needs what [`super::homes::declare`] and [`super::soft::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("land_part", "use of land", &PARTS);
    graph.fixed_axis("land_source", "what gives land its use", &SOURCES);
    graph.fixed_axis("constraint_kind", "what holds land back", &CONSTRAINT_KINDS);
    graph.fixed_axis("constraint_count", "what is counted", &CONSTRAINT_COUNTS);
    graph.fixed_axis("open_space", "kind of open space", &OPEN_SPACES);

    declare_bar(graph);
    declare_constraints(graph);
    declare_open_space(graph);
}

fn declare_bar(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("land.counted", "land counted on the drawing", unit::LAND)
        .over(&["land_part", "land_source"]);
    graph
        .figure("land.bar", "land by use", unit::LAND)
        .over(&["land_part"])
        .sum("land.counted", &["land_source"]);
    graph
        .figure("land.site", "site area", unit::LAND)
        .sum("land.bar", &["land_part"]);
    graph
        .figure("land.bar_share", "share of the site by use", unit::SHARE)
        .over(&["land_part"])
        .formula(figure("land.bar") / figure("land.site"));
    graph
        .figure("land.by_source", "land by what gives it its use", unit::LAND)
        .over(&["land_source"])
        .sum("land.counted", &["land_part"]);
    for (id, title, source) in [
        ("land.right_of_way", "land in right-of-ways", "right_of_way"),
        ("land.held_back", "land held back", "held_back"),
        ("land.with_use", "buildable land of blocks with a use", "blocks"),
        ("land.of_places", "buildable land of places", "places"),
        ("land.of_soft_areas", "buildable land of soft areas", "soft_areas"),
        ("land.without_use", "buildable land without a use", "nothing"),
    ] {
        graph
            .figure(id, title, unit::LAND)
            .entry("land.by_source", "land_source", source);
    }
    graph.figure("land.buildable", "buildable land", unit::LAND).formula(
        figure("land.with_use") + figure("land.of_places") + figure("land.of_soft_areas") + figure("land.without_use"),
    );
    graph
        .figure(
            "land.right_of_way_share",
            "share of the site in right-of-ways",
            unit::SHARE,
        )
        .formula(figure("land.right_of_way") / figure("land.site"));
}

fn declare_constraints(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("land.constraints_counted", "land under constraints", unit::LAND)
        .over(&["constraint_kind", "constraint_count"]);
    for (id, title, count) in [
        ("land.under_constraints", "land under constraints by kind", "covered"),
        ("land.held_back_by_kind", "land held back by kind", "not_buildable"),
        (
            "land.not_in_site_by_kind",
            "land not counted in the whole site by kind",
            "not_in_site",
        ),
        (
            "land.not_in_buildable_by_kind",
            "land not counted as buildable by kind",
            "not_in_buildable",
        ),
        (
            "land.not_walkable_by_kind",
            "land not to be walked across by kind",
            "not_walkable",
        ),
    ] {
        graph.figure(id, title, unit::LAND).over(&["constraint_kind"]).entry(
            "land.constraints_counted",
            "constraint_count",
            count,
        );
    }
    for (id, title, of) in [
        (
            "land.not_in_site",
            "land not counted in the whole site",
            "land.not_in_site_by_kind",
        ),
        (
            "land.not_in_buildable",
            "land not counted as buildable",
            "land.not_in_buildable_by_kind",
        ),
    ] {
        graph.figure(id, title, unit::LAND).sum(of, &["constraint_kind"]);
    }
}

fn declare_open_space(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("land.open_space_counted", "open space drawn", unit::LAND)
        .over(&["open_space"]);
    let _ = graph
        .chosen("lots.planted_share", "share of a lot that is planted", unit::SHARE)
        .over(&["building_type"]);
    graph
        .figure(
            "land.planted_in_lots_by_building_type",
            "planted land in lots by building type",
            unit::LAND,
        )
        .over(&["building_type"])
        .formula(figure("lots.land_by_building_type") * figure("lots.planted_share"));
    graph
        .figure("land.planted_in_lots", "planted land in lots", unit::LAND)
        .sum("land.planted_in_lots_by_building_type", &["building_type"]);
    let _ = graph
        .chosen(
            "land.is_in_lots",
            "whether a kind of open space is land planted in lots",
            unit::NUMBER,
        )
        .over(&["open_space"]);
    graph
        .figure("land.open_space", "open space by kind", unit::LAND)
        .over(&["open_space"])
        .formula(figure("land.open_space_counted") + figure("land.planted_in_lots") * figure("land.is_in_lots"));
    for (id, title, kind) in [
        ("land.parks", "land in parks", "parks"),
        ("land.squares", "land in squares", "squares"),
    ] {
        graph
            .figure(id, title, unit::LAND)
            .entry("land.open_space_counted", "open_space", kind);
    }
    graph
        .figure("land.park_land", "park land", unit::LAND)
        .formula(figure("land.parks") + figure("land.squares") + figure("land.park_in_soft_areas"));
}

impl LandInputs {
    /// Sets the leaves of this file.
    pub fn set(&self, inputs: &mut Inputs) {
        let counted = if self.has_boundary {
            "land of the site"
        } else {
            "land within streets, since no site boundary is drawn"
        };
        inputs.set_counted("land.counted", numbers(&self.parts_m2.concat()), Some(counted));
        inputs.set_counted(
            "land.constraints_counted",
            numbers(&self.constraints_m2.concat()),
            Some("constraints"),
        );
        inputs.set_counted(
            "land.open_space_counted",
            numbers(&self.open_space_m2),
            Some("open_space"),
        );
        let is_in_lots = OPEN_SPACES.map(|(id, _)| f64::from(u8::from(id == "in_lots")));
        inputs.set_chosen("land.is_in_lots", numbers(&is_in_lots));
    }
}

#[cfg(test)]
mod tests;
