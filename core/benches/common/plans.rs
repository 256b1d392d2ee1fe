//! Plans over the bench's networks.

use hobnail_core::fabric::{Fabric, LandCache};
use hobnail_core::plan::land::Portion;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    AlternativeId, BuildingTypeId, Certainty, Document, Footprint, Mark, MarkId, Place, PlaceKind, PlanPoint, Street,
    StreetRole, StreetSectionId, UseMark, Vertex,
};
use hobnail_core::study::Study;

use super::Piece;

const ONLY: AlternativeId = AlternativeId(0);

/// Half the side of the site in a town: 500 m, about a hundred blocks.
const HALF_SITE_MM: i32 = 500_000;

/// A plan whose streets are these pieces, every second face painted, a center at the middle piece.
pub fn plan_of(pieces: &[Piece]) -> Document {
    painted_plan(pieces, &[], 2)
}

/// A town whose streets are these pieces, and a neighborhood in it: a site around the center, of which every block is
/// painted.
pub fn town_of(pieces: &[Piece]) -> Document {
    let middle = middle_of(pieces);
    let corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)];
    let site = corners
        .map(|(east, north)| PlanPoint::new(middle.x_mm + east * HALF_SITE_MM, middle.y_mm + north * HALF_SITE_MM));
    painted_plan(pieces, &site, 1)
}

fn middle_of(pieces: &[Piece]) -> PlanPoint {
    pieces.get(pieces.len() / 2).map_or_else(PlanPoint::default, |[a, b]| {
        PlanPoint::new((a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2)
    })
}

fn painted_plan(pieces: &[Piece], site: &[PlanPoint], every: usize) -> Document {
    let mut document = Document::new(
        "Bench",
        GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        },
    );
    document.site.boundary = site.to_vec();
    let streets = pieces.iter().map(|piece| street(*piece));
    let mut marks: Vec<Mark> = streets.collect();
    lay(&mut document, &marks);
    let fabric = Fabric::of(&document, ONLY, &mut LandCache::default());
    let painted = fabric
        .faces
        .iter()
        .filter(|face| face.is_in_site)
        .step_by(every)
        .zip(0..)
        .map(|(face, place)| painted(face.anchor, place % 6));
    marks.extend(painted);
    marks.push(center(middle_of(pieces)));
    lay(&mut document, &marks);
    document
}

/// A street in the middle of the drawing.
pub fn a_street(study: &Study) -> Option<(MarkId, Street)> {
    let marks = &study.document().alternatives.get(&ONLY)?.marks;
    let streets: Vec<_> = marks
        .iter()
        .filter_map(|(id, mark)| Some((*id, mark.as_street()?)))
        .collect();
    streets
        .get(streets.len() / 2)
        .map(|(id, street)| (*id, (*street).clone()))
}

/// A painted face in the middle of the list.
pub fn a_use(study: &Study) -> Option<(MarkId, UseMark)> {
    let marks = &study.document().alternatives.get(&ONLY)?.marks;
    let uses: Vec<_> = marks
        .iter()
        .filter_map(|(id, mark)| Some((*id, mark.as_use()?)))
        .collect();
    uses.get(uses.len() / 2).map(|(id, held)| (*id, (*held).clone()))
}

fn lay(document: &mut Document, marks: &[Mark]) {
    if let Some(held) = document.alternatives.get_mut(&ONLY) {
        held.marks = (0..).map(MarkId).zip(marks.iter().cloned()).collect();
    }
}

fn street([a, b]: Piece) -> Mark {
    Mark::Street(Street {
        line: vec![Vertex::at(a), Vertex::at(b)],
        section: StreetSectionId(2),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    })
}

fn painted(anchor: PlanPoint, building_type: u32) -> Mark {
    let program = vec![Portion {
        building_type: BuildingTypeId(building_type),
        share_ppm: 1_000_000,
    }];
    Mark::Use(UseMark {
        anchor,
        program,
        land_m2: 0,
        sides: Vec::new(),
        phase: None,
    })
}

fn center(at: PlanPoint) -> Mark {
    Mark::Place(Place {
        name: String::new(),
        kind: PlaceKind::Center,
        footprint: Footprint::Point(at),
        minimum_size_m2: 0,
        certainty: Certainty::Committed,
        phase: None,
    })
}
