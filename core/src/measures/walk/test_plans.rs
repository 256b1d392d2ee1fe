//! Small plans for the tests of this folder: a ladder of streets with uses and places.

use crate::order::OrderedMap;

use crate::fabric::{Fabric, LandCache};
use crate::measures::frontage::{Painted, PaintedCache, painted_faces};
use crate::measures::walk::Walks;
use crate::plan::building::{BuildingType, FloorUse, Story};
use crate::plan::land::{OutsideContext, Portion};
use crate::plan::projection::GeographicPoint;
use crate::plan::street::{Status, StreetOwner};
use crate::plan::{
    AlternativeId, BuildingTypeId, Certainty, Document, Footprint, Mark, MarkId, Place, PlaceKind, PlanPoint, Street,
    StreetRole, StreetSectionId, UseMark, Vertex,
};

pub const FIRST: AlternativeId = AlternativeId(0);

/// A point in meters.
pub fn at(x_m: i32, y_m: i32) -> PlanPoint {
    PlanPoint::new(x_m * 1_000, y_m * 1_000)
}

/// A plan being drawn.
#[derive(Clone)]
pub struct Drawing {
    pub document: Document,
}

impl Drawing {
    pub fn new() -> Self {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        Self {
            document: Document::new("Drawn for a test", origin),
        }
    }

    /// Streets of section `section` around `columns` × `rows` blocks of `width_m` × `depth_m`, from the origin.
    pub fn blocks(columns: i32, rows: i32, width_m: i32, depth_m: i32) -> Self {
        let mut drawing = Self::new();
        for row in 0..=rows {
            drawing.street(&[at(0, row * depth_m), at(columns * width_m, row * depth_m)], 2);
        }
        for column in 0..=columns {
            drawing.street(&[at(column * width_m, 0), at(column * width_m, rows * depth_m)], 2);
        }
        drawing
    }

    pub fn add(&mut self, mark: Mark) -> MarkId {
        let id = self.document.next_mark_id();
        self.marks().insert(id, mark);
        id
    }

    pub fn marks(&mut self) -> &mut OrderedMap<MarkId, Mark> {
        &mut self.document.alternatives.get_mut(&FIRST).expect("the first").marks
    }

    pub fn street(&mut self, points: &[PlanPoint], section: u32) -> MarkId {
        self.add(Mark::Street(Street {
            line: points.iter().map(|point| Vertex::at(*point)).collect(),
            section: StreetSectionId(section),
            name: String::new(),
            role: StreetRole::NeighborhoodStreet,
            owner: StreetOwner::Town,
            status: Status::New,
            is_outside: false,
            level: 0,
            phase: None,
        }))
    }

    /// Paints the face around a point with one building type.
    pub fn paint(&mut self, anchor: PlanPoint, building_type: BuildingTypeId) -> MarkId {
        self.add(Mark::Use(UseMark {
            anchor,
            program: vec![Portion {
                building_type,
                share_ppm: 1_000_000,
            }],
            land_m2: 0,
            sides: Vec::new(),
            phase: None,
        }))
    }

    pub fn place(&mut self, kind: PlaceKind, footprint: Footprint, certainty: Certainty) -> MarkId {
        self.add(Mark::Place(Place {
            name: String::new(),
            kind,
            footprint,
            minimum_size_m2: 0,
            certainty,
            phase: None,
        }))
    }

    pub fn outside(&mut self, point: PlanPoint, homes: u32, jobs: u32, shop_floor_m2: u32) -> MarkId {
        self.add(Mark::Outside(OutsideContext {
            name: String::new(),
            footprint: Footprint::Point(point),
            homes,
            jobs,
            shop_floor_m2,
        }))
    }

    pub fn choose(&mut self, id: &str, value: f64) {
        self.document.settings.chosen.insert(id.to_owned(), value);
    }

    /// A building type of its own: lots of 10 m by 30 m, homes on each, and floors.
    pub fn building_type(&mut self, homes_per_lot: u32, floors: &[(FloorUse, u32, u32)]) -> BuildingTypeId {
        let id = BuildingTypeId(1_000 + self.document.building_types.len() as u32);
        let mut made: BuildingType = self.document.building_types[&BuildingTypeId(0)].clone();
        made.name = format!("made for a test, {}", id.0);
        made.lot_width_mm = 10_000;
        made.lot_depth_mm = 30_000;
        made.homes_per_lot = homes_per_lot;
        made.stories = floors
            .iter()
            .map(|&(floor_use, floor_area_m2, jobs_per_floor_hectare)| Story {
                floor_use,
                floor_area_m2,
                height_mm: 3_000,
                jobs_per_floor_hectare,
            })
            .collect();
        self.document.building_types.insert(id, made);
        id
    }

    /// The same drawing elsewhere: every point moved by `to`. A mirrored drawing has its hands changed.
    pub fn moved(&self, to: impl Fn(PlanPoint) -> PlanPoint) -> Self {
        let mut moved = self.clone();
        let all = |points: &mut Vec<PlanPoint>| points.iter_mut().for_each(|point| *point = to(*point));
        let footprint = |held: &mut Footprint| match held {
            Footprint::Point(point) => *point = to(*point),
            Footprint::Line(points) | Footprint::Area(points) => all(points),
        };
        for mark in moved.marks().values_mut() {
            match mark {
                Mark::Street(street) => street
                    .line
                    .iter_mut()
                    .for_each(|vertex| vertex.point = to(vertex.point)),
                Mark::Use(held) => held.anchor = to(held.anchor),
                Mark::Place(place) => footprint(&mut place.footprint),
                Mark::Outside(outside) => footprint(&mut outside.footprint),
                Mark::Barrier(barrier) => all(&mut barrier.line),
                Mark::Crossing(crossing) => crossing.at = to(crossing.at),
                other => panic!("no test moves {other:?}"),
            }
        }
        moved
    }

    pub fn worked(&self) -> Worked {
        let fabric = Fabric::of(&self.document, FIRST, &mut LandCache::default());
        let painted = painted_faces(&self.document, FIRST, &fabric, &mut PaintedCache::default());
        let walks = Walks::of(&self.document, FIRST, &fabric, &painted).expect("a network");
        Worked { fabric, painted, walks }
    }
}

/// What follows from a drawing.
pub struct Worked {
    pub fabric: Fabric,
    pub painted: Painted,
    pub walks: Walks,
}
