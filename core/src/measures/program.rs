//! The program typed first: what is asked for, what is drawn, what is left.
//!
//! Drawn is what the lots and soft areas hold. What is left goes below zero where more is drawn than asked. School seats
//! follow from the floor area of schools by a factor; park land is parks and squares; parking is that on lots.
//!
//! Not counted: anything outside the site, parking along streets, parks smaller than a rule may ask for.

use crate::order::OrderedMap;

use crate::figures::axis::Entry;
use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::unit::{self, Unit};
use crate::measures::palette::Palette;
use crate::plan::Document;
use crate::plan::document::TargetKind;

/// One kind of target: the last part of its ids, its words, and its unit.
struct Kind {
    id: &'static str,
    title: &'static str,
    unit: Unit,
}

/// The kinds of targets but homes of one type.
const KINDS: [Kind; 6] = [
    Kind {
        id: "homes",
        title: "homes",
        unit: unit::HOMES,
    },
    Kind {
        id: "shop_floor",
        title: "shop floor area",
        unit: unit::AREA,
    },
    Kind {
        id: "work_floor",
        title: "work floor area",
        unit: unit::AREA,
    },
    Kind {
        id: "school_seats",
        title: "school seats",
        unit: unit::SEATS,
    },
    Kind {
        id: "park_land",
        title: "park land",
        unit: unit::LAND,
    },
    Kind {
        id: "parking",
        title: "parking spaces",
        unit: unit::PARKING_SPACES,
    },
];

/// Homes asked of one building type.
#[derive(Clone, Debug, PartialEq)]
pub struct HomesAsked {
    /// The building type.
    pub entry: Entry,
    /// How many.
    pub homes: f64,
    /// For each building type as built whether it is this one.
    pub is_type: Vec<bool>,
}

/// The typed program, ready for the figures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ProgramInputs {
    /// What is asked of each of the kinds, in order: homes, shop floor, work floor, school seats, park land, parking.
    pub asked: [Option<f64>; KINDS.len()],
    /// Homes asked of single building types, in palette order.
    pub homes_of: Vec<HomesAsked>,
}

impl ProgramInputs {
    /// The program of a document. Lines that ask for the same are one; homes of any type that nobody asked for as such
    /// are the sum of those of single types.
    #[must_use]
    pub fn of(document: &Document, palette: &Palette) -> Self {
        let mut asked: OrderedMap<TargetKind, f64> = OrderedMap::new();
        for target in &document.program {
            *asked.entry(target.what).or_insert(0.0) += f64::from(target.asked);
        }
        let mut homes_of = Vec::new();
        for (what, homes) in &asked {
            let TargetKind::HomesOf(id) = what else { continue };
            let held = document.building_types.get(id);
            let title = held.map_or_else(
                || "a building type that is not in the palette".to_owned(),
                |held| held.name.clone(),
            );
            homes_of.push(HomesAsked {
                entry: Entry::new(format!("type_{id}"), title),
                homes: *homes,
                is_type: palette.iter().map(|held| held.base == *id).collect(),
            });
        }
        let of_types = (!homes_of.is_empty()).then(|| homes_of.iter().map(|one| one.homes).sum());
        let of = |what: TargetKind| asked.get(&what).copied();
        Self {
            asked: [
                of(TargetKind::Homes).or(of_types),
                of(TargetKind::ShopFloorM2),
                of(TargetKind::WorkFloorM2),
                of(TargetKind::SchoolSeats),
                of(TargetKind::ParkLandM2),
                of(TargetKind::ParkingSpaces),
            ],
            homes_of,
        }
    }

    /// Sets the leaves of this file.
    pub fn set(&self, inputs: &mut Inputs) {
        for (kind, asked) in KINDS.iter().zip(&self.asked) {
            let nothing = || Cell::Unknown(format!("the program does not ask for {}", kind.title));
            let cell = asked.map_or_else(nothing, Cell::Number);
            inputs.set_chosen(&format!("program.typed.{}", kind.id), vec![cell]);
        }
        inputs.set_entries(
            "asked_type",
            self.homes_of.iter().map(|one| one.entry.clone()).collect(),
        );
        let homes: Vec<f64> = self.homes_of.iter().map(|one| one.homes).collect();
        inputs.set_chosen("program.typed.homes_of", numbers(&homes));
        let is_type = self.homes_of.iter().flat_map(|one| &one.is_type);
        let is_type: Vec<f64> = is_type.map(|is_type| f64::from(u8::from(*is_type))).collect();
        inputs.set_chosen("program.is_type", numbers(&is_type));
    }
}

/// Declares the program, and the axis `asked_type`. Needs what [`super::homes::declare`], [`super::mix::declare`],
/// [`super::land::declare`] and [`super::density::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    for (id, title, use_of_floor) in [
        ("program.drawn.shop_floor", "shop floor area drawn", "shops"),
        ("program.drawn.work_floor", "work floor area drawn", "work"),
        ("program.school_floor", "school floor area drawn", "learning"),
    ] {
        graph
            .figure(id, title, unit::AREA)
            .entry("mix.floor_area", "use", use_of_floor);
    }
    let _ = graph.factor(
        "program.floor_per_seat",
        "floor area per school seat",
        unit::AREA_PER_SEAT,
    );
    graph
        .figure("program.drawn.homes", "homes drawn", unit::HOMES)
        .formula(figure("homes.count"));
    graph
        .figure("program.drawn.school_seats", "school seats drawn", unit::SEATS)
        .formula(figure("program.school_floor") / figure("program.floor_per_seat"));
    graph
        .figure("program.drawn.park_land", "park land drawn", unit::LAND)
        .formula(figure("land.park_land"));
    graph
        .figure("program.drawn.parking", "parking spaces drawn", unit::PARKING_SPACES)
        .formula(figure("density.parking_spaces"));
    for Kind { id, title, unit } in KINDS {
        let of = |step: &str| format!("program.{step}.{id}");
        let _ = graph.chosen(&of("typed"), &format!("{title} typed into the program"), unit);
        graph
            .figure(&of("asked"), &format!("{title} asked"), unit)
            .formula(figure(&of("typed")));
        graph
            .figure(&of("left"), &format!("{title} left to draw"), unit)
            .formula(figure(&of("asked")) - figure(&of("drawn")));
    }
    declare_homes_of_types(graph);
    graph
        .figure("homes.of_asked", "homes drawn of asked", unit::SHARE)
        .formula(figure("program.drawn.homes") / figure("program.asked.homes"));
}

fn declare_homes_of_types(graph: &mut GraphBuilder) {
    graph.open_axis("asked_type", "building type asked for");
    let _ = graph
        .chosen(
            "program.typed.homes_of",
            "homes of a type typed into the program",
            unit::HOMES,
        )
        .over(&["asked_type"]);
    let _ = graph
        .chosen(
            "program.is_type",
            "whether a building type is the one asked for",
            unit::NUMBER,
        )
        .over(&["asked_type", "building_type"]);
    graph
        .figure("program.asked.homes_of", "homes asked by type", unit::HOMES)
        .over(&["asked_type"])
        .formula(figure("program.typed.homes_of"));
    graph
        .figure(
            "program.homes_by_asked_type_and_building_type",
            "homes by type asked for and building type",
            unit::HOMES,
        )
        .over(&["asked_type", "building_type"])
        .formula(figure("homes.by_building_type") * figure("program.is_type"));
    graph
        .figure("program.drawn.homes_of", "homes drawn by type asked for", unit::HOMES)
        .over(&["asked_type"])
        .sum("program.homes_by_asked_type_and_building_type", &["building_type"]);
    graph
        .figure("program.left.homes_of", "homes left to draw by type", unit::HOMES)
        .over(&["asked_type"])
        .formula(figure("program.asked.homes_of") - figure("program.drawn.homes_of"));
}
