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
use crate::measures::palette::{Palette, type_entry_id};
use crate::message;
use crate::messages::Message;
use crate::plan::Document;
use crate::plan::document::TargetKind;
use crate::say;

/// One kind of target: the last part of its ids, its unit, and the words where the program does not ask for it.
struct Kind {
    id: &'static str,
    unit: Unit,
    not_asked: Message,
}

/// The kinds of targets but homes of one type.
const KINDS: [Kind; 6] = [
    Kind {
        id: "homes",
        unit: unit::HOMES,
        not_asked: message!("measures-not-asked-homes"),
    },
    Kind {
        id: "shop_floor",
        unit: unit::AREA,
        not_asked: message!("measures-not-asked-shop-floor"),
    },
    Kind {
        id: "work_floor",
        unit: unit::AREA,
        not_asked: message!("measures-not-asked-work-floor"),
    },
    Kind {
        id: "school_seats",
        unit: unit::SEATS,
        not_asked: message!("measures-not-asked-school-seats"),
    },
    Kind {
        id: "park_land",
        unit: unit::LAND,
        not_asked: message!("measures-not-asked-park-land"),
    },
    Kind {
        id: "parking",
        unit: unit::PARKING_SPACES,
        not_asked: message!("measures-not-asked-parking"),
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
                || say!("measures-type-not-in-palette").to_owned(),
                |held| held.name.clone(),
            );
            homes_of.push(HomesAsked {
                entry: Entry::new(type_entry_id(*id), title),
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
            let nothing = || Cell::Unknown(kind.not_asked.words().to_owned());
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
        ("program.drawn.shop_floor", say!("measures-drawn-shop-floor"), "shops"),
        ("program.drawn.work_floor", say!("measures-drawn-work-floor"), "work"),
        ("program.school_floor", say!("measures-drawn-school-floor"), "learning"),
    ] {
        graph
            .figure(id, title, unit::AREA)
            .entry("mix.floor_area", "use", use_of_floor);
    }
    let _ = graph.factor(
        "program.floor_per_seat",
        say!("measures-floor-per-seat"),
        unit::AREA_PER_SEAT,
    );
    graph
        .figure("program.drawn.homes", say!("measures-drawn-homes"), unit::HOMES)
        .formula(figure("homes.count"));
    graph
        .figure("program.drawn.school_seats", say!("measures-drawn-seats"), unit::SEATS)
        .formula(figure("program.school_floor") / figure("program.floor_per_seat"));
    graph
        .figure("program.drawn.park_land", say!("measures-drawn-parks"), unit::LAND)
        .formula(figure("land.park_land"));
    graph
        .figure(
            "program.drawn.parking",
            say!("measures-drawn-parking"),
            unit::PARKING_SPACES,
        )
        .formula(figure("density.parking_spaces"));
    for Kind { id, unit, .. } in KINDS {
        let of = |step: &str| format!("program.{step}.{id}");
        let _ = graph.chosen(&of("typed"), &say!("measures-program-typed", what = id), unit);
        graph
            .figure(&of("asked"), &say!("measures-program-asked", what = id), unit)
            .formula(figure(&of("typed")));
        graph
            .figure(&of("left"), &say!("measures-program-left", what = id), unit)
            .formula(figure(&of("asked")) - figure(&of("drawn")));
    }
    declare_homes_of_types(graph);
    graph
        .figure("homes.of_asked", say!("measures-homes-of-asked"), unit::SHARE)
        .formula(figure("program.drawn.homes") / figure("program.asked.homes"));
}

fn declare_homes_of_types(graph: &mut GraphBuilder) {
    graph.open_axis("asked_type", say!("measures-asked-type"));
    let _ = graph
        .chosen("program.typed.homes_of", say!("measures-homes-of-typed"), unit::HOMES)
        .over(&["asked_type"]);
    let _ = graph
        .chosen("program.is_type", say!("measures-is-asked-type"), unit::NUMBER)
        .over(&["asked_type", "building_type"]);
    graph
        .figure(
            "program.asked.homes_of",
            say!("measures-homes-of-asked-type"),
            unit::HOMES,
        )
        .over(&["asked_type"])
        .formula(figure("program.typed.homes_of"));
    graph
        .figure(
            "program.homes_by_asked_type_and_building_type",
            say!("measures-homes-asked-built"),
            unit::HOMES,
        )
        .over(&["asked_type", "building_type"])
        .formula(figure("homes.by_building_type") * figure("program.is_type"));
    graph
        .figure("program.drawn.homes_of", say!("measures-homes-of-drawn"), unit::HOMES)
        .over(&["asked_type"])
        .sum("program.homes_by_asked_type_and_building_type", &["building_type"]);
    graph
        .figure("program.left.homes_of", say!("measures-homes-of-left"), unit::HOMES)
        .over(&["asked_type"])
        .formula(figure("program.asked.homes_of") - figure("program.drawn.homes_of"));
}
