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
//! Not counted: slopes, setbacks, land beyond the site, and rights-of-way of streets that only pass near.

pub mod claims;

pub mod count;

use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::unit;
use crate::say;

/// How many [`parts`] there are.
pub const PARTS: usize = 7;

/// The parts of the land bar, in order.
#[must_use]
pub fn parts() -> [(&'static str, &'static str); PARTS] {
    [
        ("homes", say!("measures-part-homes")),
        ("shops_and_work", say!("measures-part-shops-work")),
        ("civic", say!("measures-part-civic")),
        ("green", say!("measures-part-green")),
        ("water", say!("measures-part-water")),
        ("streets", say!("measures-part-streets")),
        ("unused", say!("measures-part-unused")),
    ]
}

/// How many [`sources`] there are.
pub const SOURCES: usize = 6;

/// What says to which part land belongs.
#[must_use]
pub fn sources() -> [(&'static str, &'static str); SOURCES] {
    [
        ("right_of_way", say!("measures-from-right-of-way")),
        ("held_back", say!("measures-from-held-back")),
        ("blocks", say!("measures-from-blocks")),
        ("places", say!("measures-from-places")),
        ("soft_areas", say!("measures-from-soft-areas")),
        ("nothing", say!("measures-from-nothing")),
    ]
}

/// How many [`constraint_kinds`] there are.
pub const CONSTRAINT_KINDS: usize = 9;

/// What holds land back, in the order of [`HELD_BY`](crate::fabric::constraints::HELD_BY).
#[must_use]
pub fn constraint_kinds() -> [(&'static str, &'static str); CONSTRAINT_KINDS] {
    [
        ("water", say!("measures-held-water")),
        ("wetland", say!("measures-held-wetland")),
        ("floodplain", say!("measures-held-floodplain")),
        ("steep", say!("measures-held-steep")),
        ("conservation", say!("measures-held-conservation")),
        ("contaminated", say!("measures-held-contaminated")),
        ("easement", say!("measures-held-easement")),
        ("keep", say!("measures-held-keep")),
        ("owner_left_out", say!("measures-held-owner")),
    ]
}

/// How many [`constraint_counts`] there are.
pub const CONSTRAINT_COUNTS: usize = 5;

/// What is counted of land under constraints: all of it, then what an area answers no for, in the order of
/// [`SWITCHES`](crate::fabric::constraints::SWITCHES).
#[must_use]
pub fn constraint_counts() -> [(&'static str, &'static str); CONSTRAINT_COUNTS] {
    [
        ("covered", say!("measures-count-covered")),
        ("not_buildable", say!("measures-count-not-buildable")),
        ("not_in_site", say!("measures-count-not-in-site")),
        ("not_in_buildable", say!("measures-count-not-in-buildable")),
        ("not_walkable", say!("measures-count-not-walkable")),
    ]
}

/// How many [`open_spaces`] there are.
pub const OPEN_SPACES: usize = 6;

/// Kinds of open space, in order.
#[must_use]
pub fn open_spaces() -> [(&'static str, &'static str); OPEN_SPACES] {
    [
        ("parks", say!("measures-open-parks")),
        ("squares", say!("measures-open-squares")),
        ("natural", say!("measures-open-natural")),
        ("held_back", say!("measures-open-held-back")),
        ("in_lots", say!("measures-open-in-lots")),
        ("soft", say!("measures-open-soft")),
    ]
}

/// Land as counted on the drawing, in square meters.
#[derive(Clone, Debug, PartialEq)]
pub struct LandInputs {
    /// By part of the land bar, then by what says so.
    pub parts_m2: [[f64; SOURCES]; PARTS],
    /// Under constraints, by kind, then by what is counted.
    pub constraints_m2: [[f64; CONSTRAINT_COUNTS]; CONSTRAINT_KINDS],
    /// Open space, by kind; what is planted in lots is worked out from the lots, and parks in soft areas from those.
    pub open_space_m2: [f64; OPEN_SPACES],
    /// Whether a site boundary is drawn.
    pub has_boundary: bool,
}

/// Declares land and its axes. Needs what [`super::homes::declare`] and [`super::soft::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("land_part", say!("measures-land-part"), &parts());
    graph.fixed_axis("land_source", say!("measures-land-source"), &sources());
    graph.fixed_axis("constraint_kind", say!("measures-constraint-kind"), &constraint_kinds());
    graph.fixed_axis(
        "constraint_count",
        say!("measures-constraint-count"),
        &constraint_counts(),
    );
    graph.fixed_axis("open_space", say!("measures-open-space-kind"), &open_spaces());

    declare_bar(graph);
    declare_constraints(graph);
    declare_open_space(graph);
}

fn declare_bar(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("land.counted", say!("measures-land-counted"), unit::LAND)
        .over(&["land_part", "land_source"]);
    graph
        .figure("land.bar", say!("measures-land-bar"), unit::LAND)
        .over(&["land_part"])
        .sum("land.counted", &["land_source"]);
    graph
        .figure("land.site", say!("measures-site-area"), unit::LAND)
        .sum("land.bar", &["land_part"]);
    graph
        .figure("land.bar_share", say!("measures-land-bar-share"), unit::SHARE)
        .over(&["land_part"])
        .formula(figure("land.bar") / figure("land.site"));
    graph
        .figure("land.by_source", say!("measures-land-by-source"), unit::LAND)
        .over(&["land_source"])
        .sum("land.counted", &["land_part"]);
    for (id, title, source) in [
        ("land.right_of_way", say!("measures-land-right-of-way"), "right_of_way"),
        ("land.held_back", say!("measures-from-held-back"), "held_back"),
        ("land.with_use", say!("measures-land-with-use"), "blocks"),
        ("land.of_places", say!("measures-land-of-places"), "places"),
        ("land.of_soft_areas", say!("measures-land-of-soft"), "soft_areas"),
        ("land.without_use", say!("measures-land-without-use"), "nothing"),
    ] {
        graph
            .figure(id, title, unit::LAND)
            .entry("land.by_source", "land_source", source);
    }
    graph
        .figure("land.buildable", say!("measures-land-buildable"), unit::LAND)
        .formula(
            figure("land.with_use")
                + figure("land.of_places")
                + figure("land.of_soft_areas")
                + figure("land.without_use"),
        );
    graph
        .figure(
            "land.right_of_way_share",
            say!("measures-right-of-way-share"),
            unit::SHARE,
        )
        .formula(figure("land.right_of_way") / figure("land.site"));
}

fn declare_constraints(graph: &mut GraphBuilder) {
    let _ = graph
        .counted(
            "land.constraints_counted",
            say!("measures-land-constraints"),
            unit::LAND,
        )
        .over(&["constraint_kind", "constraint_count"]);
    for (id, title, count) in [
        (
            "land.under_constraints",
            say!("measures-land-constraints-kind"),
            "covered",
        ),
        (
            "land.held_back_by_kind",
            say!("measures-held-back-kind"),
            "not_buildable",
        ),
        (
            "land.not_in_site_by_kind",
            say!("measures-not-in-site-kind"),
            "not_in_site",
        ),
        (
            "land.not_in_buildable_by_kind",
            say!("measures-not-in-buildable-kind"),
            "not_in_buildable",
        ),
        (
            "land.not_walkable_by_kind",
            say!("measures-not-walkable-kind"),
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
            say!("measures-not-in-site"),
            "land.not_in_site_by_kind",
        ),
        (
            "land.not_in_buildable",
            say!("measures-not-in-buildable"),
            "land.not_in_buildable_by_kind",
        ),
    ] {
        graph.figure(id, title, unit::LAND).sum(of, &["constraint_kind"]);
    }
}

fn declare_open_space(graph: &mut GraphBuilder) {
    let _ = graph
        .counted("land.open_space_counted", say!("measures-open-drawn"), unit::LAND)
        .over(&["open_space"]);
    let _ = graph
        .chosen("lots.planted_share", say!("measures-planted-share"), unit::SHARE)
        .over(&["building_type"]);
    graph
        .figure(
            "land.planted_in_lots_by_building_type",
            say!("measures-planted-type"),
            unit::LAND,
        )
        .over(&["building_type"])
        .formula(figure("lots.land_by_building_type") * figure("lots.planted_share"));
    graph
        .figure("land.planted_in_lots", say!("measures-planted"), unit::LAND)
        .sum("land.planted_in_lots_by_building_type", &["building_type"]);
    let _ = graph
        .chosen("land.is_in_lots", say!("measures-is-planted"), unit::NUMBER)
        .over(&["open_space"]);
    let _ = graph
        .chosen("land.is_soft_park", say!("measures-is-soft-park"), unit::NUMBER)
        .over(&["open_space"]);
    graph
        .figure("land.open_space", say!("measures-open-space"), unit::LAND)
        .over(&["open_space"])
        .formula(
            figure("land.open_space_counted")
                + figure("land.planted_in_lots") * figure("land.is_in_lots")
                + figure("land.park_in_soft_areas") * figure("land.is_soft_park"),
        );
    for (id, title, kind) in [
        ("land.parks", say!("measures-parks"), "parks"),
        ("land.squares", say!("measures-squares"), "squares"),
    ] {
        graph
            .figure(id, title, unit::LAND)
            .entry("land.open_space_counted", "open_space", kind);
    }
    graph
        .figure("land.park_land", say!("measures-park-land"), unit::LAND)
        .formula(figure("land.parks") + figure("land.squares") + figure("land.park_in_soft_areas"));
}

impl LandInputs {
    /// Sets the leaves of this file.
    pub fn set(&self, inputs: &mut Inputs) {
        let counted = if self.has_boundary {
            say!("measures-counted-site")
        } else {
            say!("measures-counted-no-boundary")
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
        let is_in_lots = open_spaces().map(|(id, _)| f64::from(u8::from(id == "in_lots")));
        inputs.set_chosen("land.is_in_lots", numbers(&is_in_lots));
        let is_soft = open_spaces().map(|(id, _)| f64::from(u8::from(id == "soft")));
        inputs.set_chosen("land.is_soft_park", numbers(&is_soft));
    }
}

#[cfg(test)]
mod tests;
