//! Buildable land of random streets: against distances to the streets, and against the areas of the `geo` library.

use geo::{Area, BooleanOps, Coord, LineString, MultiPolygon, Polygon};
use hobnail_core::fabric::{Fabric, FaceOfLand, LandCache};
use hobnail_core::plan::land::{ConstraintArea, ConstraintKind};
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{
    AlternativeId, Document, Mark, MarkId, PlanPoint, Street, StreetRole, StreetSection, StreetSectionId, Strip,
    StripKind, Vertex,
};

use super::drawings::drawing;
use crate::random::Random;

const ONLY: AlternativeId = AlternativeId(0);

const DRAWINGS: u64 = if cfg!(debug_assertions) { 300 } else { 3_000 };

/// A street of a section, without a line.
pub fn street_of_section(section: StreetSectionId) -> Street {
    Street {
        line: Vec::new(),
        section,
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    }
}

/// A plan whose streets are a random drawing blown up to some hundred meters, each of one of the widths.
fn plan(random: &mut Random, widths_mm: &[u32]) -> Document {
    let origin = GeographicPoint::checked_from_deg(0.0, 0.0).unwrap();
    let mut document = Document::new("", origin);
    document.street_sections.clear();
    for (id, &width_mm) in (0..).zip(widths_mm) {
        let section = StreetSection {
            name: String::new(),
            strips: vec![Strip {
                kind: StripKind::Travel,
                width_mm,
            }],
            target_speed_km_h: 30,
            walkable: true,
            cyclable: true,
            drivable: true,
            fronts_left: true,
            fronts_right: true,
        };
        document.street_sections.insert(StreetSectionId(id), section);
    }
    // Kinds of drawing with room between their lines.
    let (kind, scale) = *random.pick(&[(2, 5_000), (6, 4_000), (7, 12_000), (0, 40_000)]);
    let blown_up = |p: PlanPoint| PlanPoint::new(p.x_mm * scale, p.y_mm * scale);
    let mut marks = Vec::new();
    for segment in drawing(kind, random).iter().filter(|segment| segment.a != segment.b) {
        let section = StreetSectionId(random.within(0, widths_mm.len() as i32 - 1) as u32);
        marks.push(Mark::Street(Street {
            line: vec![Vertex::at(blown_up(segment.a)), Vertex::at(blown_up(segment.b))],
            ..street_of_section(section)
        }));
    }
    for _ in 0..random.within(0, 3) {
        let (x, y) = (random.within(-200_000, 200_000), random.within(-200_000, 200_000));
        let corners = [
            (0, 0),
            (random.within(1_000, 150_000), 0),
            (0, random.within(1_000, 150_000)),
        ];
        marks.push(Mark::Constraint(ConstraintArea {
            name: String::new(),
            outline: corners.iter().map(|(dx, dy)| PlanPoint::new(x + dx, y + dy)).collect(),
            kind: ConstraintKind::Wetland,
            is_buildable: random.within(0, 3) == 0,
            counts_in_site: true,
            counts_in_buildable: false,
            is_walkable: false,
        }));
    }
    if let Some(alternative) = document.alternatives.get_mut(&ONLY) {
        alternative.marks = (0..).map(MarkId).zip(marks).collect();
    }
    document
}

fn for_each_plan(widths_mm: &[u32], check: impl Fn(&Document, &Fabric, &mut Random, &str)) {
    for seed in 0..DRAWINGS {
        let mut random = Random(seed);
        let document = plan(&mut random, widths_mm);
        let fabric = Fabric::of(&document, ONLY, &mut LandCache::default());
        check(&document, &fabric, &mut random, &format!("seed {seed}"));
    }
}

fn held_back(document: &Document) -> Vec<Vec<PlanPoint>> {
    let marks = document.alternatives[&ONLY].marks.values();
    let outlines = marks.filter_map(|mark| match mark {
        Mark::Constraint(area) if !area.is_buildable => Some(area.outline.clone()),
        _ => None,
    });
    outlines.collect()
}

fn line_string(ring: &[PlanPoint]) -> LineString<f64> {
    ring.iter()
        .map(|p| Coord {
            x: f64::from(p.x_mm),
            y: f64::from(p.y_mm),
        })
        .collect()
}

pub fn polygon(rings: &[Vec<PlanPoint>]) -> Polygon<f64> {
    let (shell, holes) = rings.split_first().unwrap();
    Polygon::new(line_string(shell), holes.iter().map(|hole| line_string(hole)).collect())
}

pub fn perimeter_mm(rings: &[Vec<PlanPoint>]) -> f64 {
    let around = rings
        .iter()
        .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
    around.map(|(p, q)| p.distance_um(*q) as f64 / 1e3).sum()
}

/// The area of the pieces of land is the area stated, and with streets of no width land is what `geo` leaves of the face.
#[test]
fn land_areas_agree_with_geo() {
    for_each_plan(&[0], |document, fabric, _, case| {
        for face in &fabric.faces {
            let stated_mm2 = face.land.twice_area_mm2 as f64 / 2.0;
            let pieces: f64 = face
                .land
                .pieces
                .iter()
                .map(|piece| polygon(piece).unsigned_area())
                .sum();
            assert!(
                (pieces - stated_mm2).abs() <= 1e-9 * stated_mm2,
                "{case}: {pieces} and {stated_mm2}"
            );
            let mut left = MultiPolygon::new(vec![polygon(&face.outline)]);
            let mut edges_mm = perimeter_mm(&face.outline);
            for outline in held_back(document) {
                left = left.difference(&polygon(std::slice::from_ref(&outline)));
                edges_mm += perimeter_mm(&[outline]);
            }
            // Where outlines cross, corners are rounded to the millimeter.
            let bound_mm2 = edges_mm + 1e-6 * stated_mm2;
            assert!(
                (left.unsigned_area() - stated_mm2).abs() <= bound_mm2,
                "{case}: {} mm², {stated_mm2} mm² at {:?}",
                left.unsigned_area(),
                face.anchor
            );
        }
    });
}

/// How a point lies to a ring: whether it winds around the point, and the least distance to it.
fn lies(ring: &[PlanPoint], p: PlanPoint) -> (bool, f64) {
    let (mut winding, mut nearest) = (0, f64::INFINITY);
    for (&a, &b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        nearest = nearest.min(distance_mm(a, b, p));
        if a.y_mm <= p.y_mm && b.y_mm > p.y_mm && a.cross(b, p) > 0 {
            winding += 1;
        } else if a.y_mm > p.y_mm && b.y_mm <= p.y_mm && a.cross(b, p) < 0 {
            winding -= 1;
        }
    }
    (winding != 0, nearest)
}

fn distance_mm(a: PlanPoint, b: PlanPoint, p: PlanPoint) -> f64 {
    let part = |a: i32, b: i32| f64::from(b) - f64::from(a);
    let (dx, dy, px, py) = (
        part(a.x_mm, b.x_mm),
        part(a.y_mm, b.y_mm),
        part(a.x_mm, p.x_mm),
        part(a.y_mm, p.y_mm),
    );
    let along = ((dx * px + dy * py) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
    hobnail_core::number::length(px - along * dx, py - along * dy)
}

/// Boolean operations and strips round to the millimeter, twice.
const ROUNDED_MM: f64 = 3.0;

fn check_point(fabric: &Fabric, face: &FaceOfLand, held_back: &[Vec<PlanPoint>], p: PlanPoint, case: &str) {
    let is_land = face.land.pieces.iter().any(|piece| {
        let mut rings = piece.iter().map(|ring| lies(ring, p));
        rings.next().is_some_and(|shell| shell.0) && !rings.any(|hole| hole.0)
    });
    if held_back.iter().any(|outline| lies(outline, p).1 <= ROUNDED_MM) {
        return;
    }
    let mut is_clear = true;
    let mut is_taken = held_back.iter().any(|outline| lies(outline, p).0);
    let arrangement = &fabric.arrangement;
    for start in arrangement.loops(face.id) {
        for half_edge in arrangement.around(start) {
            let carrier = fabric.carriers[half_edge.edge().0 as usize].unwrap();
            let half_mm = f64::from(fabric.lines.streets[carrier.street as usize].right_of_way_mm) / 2.0;
            let (a, b) = (
                arrangement.point(arrangement.origin(half_edge)),
                arrangement.point(arrangement.target(half_edge)),
            );
            let near_mm = distance_mm(a, b, p);
            // The strip lies on the left; what is abreast of the edge and nearer than half the width is taken.
            let abreast = |a: PlanPoint, b: PlanPoint| {
                let dot = |a: i32, b: i32, p: i32| (i64::from(b) - i64::from(a)) * (i64::from(p) - i64::from(a));
                dot(a.x_mm, b.x_mm, p.x_mm) + dot(a.y_mm, b.y_mm, p.y_mm) > 0
            };
            let is_beside = abreast(a, b) && abreast(b, a) && a.cross(b, p) > 0;
            is_taken |= is_beside && near_mm < half_mm - ROUNDED_MM;
            // No miter reaches farther than the limit from the wider of two streets.
            is_clear &= near_mm > 4.0 * half_mm.max(10_000.0) + ROUNDED_MM;
        }
    }
    assert!(!(is_taken && is_land), "{case}: {p:?} is taken and stands as land");
    assert!(
        is_taken || !is_clear || is_land,
        "{case}: {p:?} is clear of all and is not land"
    );
}

/// Land keeps half a right-of-way from the streets around it and clear of land held back; what is far from both is land.
#[test]
fn land_is_what_streets_and_land_held_back_leave() {
    for_each_plan(&[6_000, 20_000], |document, fabric, random, case| {
        let held_back = held_back(document);
        for face in &fabric.faces {
            let area_mm2 = fabric.arrangement.twice_area_mm2(face.id);
            assert!(face.land.twice_area_mm2 >= 0, "{case}");
            // Rounding may add a sliver along a street of almost no width, never along these.
            assert!(face.land.twice_area_mm2 < area_mm2, "{case}");
            for _ in 0..30 {
                let near = *random.pick(&face.outline[0]);
                let reach = *random.pick(&[9_000, 60_000]);
                let p = PlanPoint::new(
                    near.x_mm + random.within(-reach, reach),
                    near.y_mm + random.within(-reach, reach),
                );
                if fabric.locator.face_at(p) == face.id {
                    check_point(fabric, face, &held_back, p, case);
                }
            }
        }
    });
}
