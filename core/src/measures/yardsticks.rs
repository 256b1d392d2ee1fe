//! Yardsticks: what as many people, or as much floor, have elsewhere, beside what is drawn.
//!
//! Households are the homes that are lived in; [`super::homes`] takes every home as lived in. Park land, parks and shop
//! floor are held against what the whole country has for as many people; the shops of a country are more than those of
//! its neighborhoods. The site of a school is what an older guideline asked of one elementary school with all the seats
//! drawn. Land of parking is that of the spaces on lots were they all beside one another under the open sky; floor by
//! parking space is told by group of lots, and where homes and shops share a lot nobody can say whose a space is.
//!
//! None of it is a demand: whether there is enough is for the town's own rules, and for whoever asks.

use super::worked::{self, Worked};
use crate::figures::expression::{Comparison, choose, constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::unit::{self, ACRE_M2, Unit};
use crate::message;
use crate::messages::Message;
use crate::say;

/// The factors these figures rest on: ids, titles and units.
const FACTORS: [(&str, Message, Unit); 7] = [
    (
        "people.occupied_share",
        message!("measures-occupied-share"),
        unit::SHARE,
    ),
    (
        "parks.land_per_person",
        message!("measures-parks-land-person"),
        unit::AREA_PER_PERSON,
    ),
    ("parks.people_per_park", message!("measures-people-park"), unit::PEOPLE),
    (
        "shops.floor_per_person",
        message!("measures-shops-floor-person"),
        unit::AREA_PER_PERSON,
    ),
    (
        "parking.area_per_space",
        message!("measures-area-space"),
        unit::AREA_PER_SPACE,
    ),
    ("schools.site", message!("measures-school-site-first"), unit::LAND),
    (
        "schools.site_per_seat",
        message!("measures-school-site-seat"),
        unit::AREA_PER_SEAT,
    ),
];

const WORKED: [Worked; 15] = [
    Worked::product(
        "people.households",
        message!("measures-households"),
        unit::HOMES,
        "homes.count",
        "people.occupied_share",
    ),
    Worked::product(
        "people.in_households",
        message!("measures-in-households"),
        unit::PEOPLE,
        "people.count",
        "people.occupied_share",
    ),
    Worked::quotient(
        "land.park_land_per_person",
        message!("measures-park-per-person"),
        unit::AREA_PER_PERSON,
        "land.park_land",
        "people.count",
    ),
    Worked::product(
        "land.park_land_elsewhere",
        message!("measures-park-elsewhere"),
        unit::LAND,
        "people.count",
        "parks.land_per_person",
    ),
    Worked::quotient(
        "land.park_land_elsewhere_share",
        message!("measures-park-elsewhere-share"),
        unit::SHARE,
        "land.park_land",
        "land.park_land_elsewhere",
    ),
    Worked::quotient(
        "land.parks_elsewhere",
        message!("measures-parks-elsewhere"),
        unit::NUMBER,
        "people.count",
        "parks.people_per_park",
    ),
    Worked::product(
        "mix.shop_floor_elsewhere",
        message!("measures-shop-elsewhere"),
        unit::AREA,
        "people.count",
        "shops.floor_per_person",
    ),
    Worked::quotient(
        "mix.shop_floor_elsewhere_share",
        message!("measures-shop-elsewhere-share"),
        unit::SHARE,
        "program.drawn.shop_floor",
        "mix.shop_floor_elsewhere",
    ),
    Worked::product(
        "density.parking_land",
        message!("measures-parking-land"),
        unit::LAND,
        "density.parking_spaces",
        "parking.area_per_space",
    ),
    Worked::quotient(
        "density.parking_land_share",
        message!("measures-parking-land-share"),
        unit::SHARE,
        "density.parking_land",
        "density.built_lot_land",
    ),
    Worked::product(
        "density.parking_by_building_type_and_group",
        message!("measures-parking-type-group"),
        unit::PARKING_SPACES,
        "density.parking_by_building_type",
        "lots.in_group",
    )
    .over(&["building_type", "lot_group"]),
    Worked::product(
        "density.floor_by_building_type_and_group",
        message!("measures-floor-type-group"),
        unit::AREA,
        "density.floor_by_building_type",
        "lots.in_group",
    )
    .over(&["building_type", "lot_group"]),
    Worked::quotient(
        "density.floor_per_space",
        message!("measures-floor-per-space"),
        unit::AREA_PER_SPACE,
        "density.floor_by_group",
        "density.parking_by_group",
    )
    .over(&["lot_group"]),
    Worked::product(
        "land.school_site_of_seats",
        message!("measures-school-site-seats"),
        unit::LAND,
        "program.drawn.school_seats",
        "schools.site_per_seat",
    ),
    Worked::quotient(
        "land.school_site_share",
        message!("measures-school-site-share"),
        unit::SHARE,
        "land.school_land",
        "land.school_site",
    ),
];

/// The most that a rating of walkable neighborhoods lets the site of an elementary school take: 5 acres. No school meets
/// it and the older guideline.
///
/// Source: LEED v4 for Neighborhood Development, plan, credit Neighborhood schools, as a page on the credit tells (read).
pub const MOST_SCHOOL_SITE_M2: f64 = 5.0 * ACRE_M2;

/// Declares the yardsticks. Needs what [`super::homes::declare`], [`super::mix::declare`] and [`super::form::declare`]
/// declare.
pub fn declare(graph: &mut GraphBuilder) {
    for (id, title, unit) in &FACTORS {
        let _ = graph.factor(id, title.words(), *unit);
    }
    worked::declare(graph, &WORKED);
    graph
        .figure(
            "density.floor_by_building_type",
            say!("measures-floor-type"),
            unit::AREA,
        )
        .over(&["building_type"])
        .sum("mix.floor_area_by_building_type", &["use"]);
    let by_group = &["lot_group"];
    graph
        .figure(
            "density.parking_by_group",
            say!("measures-parking-group"),
            unit::PARKING_SPACES,
        )
        .over(by_group)
        .sum("density.parking_by_building_type_and_group", &["building_type"]);
    graph
        .figure("density.floor_by_group", say!("measures-floor-group"), unit::AREA)
        .over(by_group)
        .sum("density.floor_by_building_type_and_group", &["building_type"]);
    graph
        .figure("land.school_site", say!("measures-school-site"), unit::LAND)
        .formula(choose(
            figure("program.drawn.school_seats"),
            Comparison::AtMost,
            constant(0.0, unit::SEATS),
            figure("land.school_site_of_seats"),
            figure("schools.site") + figure("land.school_site_of_seats"),
        ));
}

#[cfg(test)]
mod tests;
