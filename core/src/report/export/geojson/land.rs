//! The site, its blocks, and the land in them.

use super::write::{Features, Geometry};
use super::{number, whole};
use crate::exchange::json::Json;
use crate::exchange::stored::{Stored, Writing};
use crate::fabric::block_outline::{BlockOutline, block_outlines};
use crate::fabric::regions::{Ring, twice_area_mm2, united};
use crate::fabric::{FaceId, FaceOfLand};
use crate::measures::frontage::PaintedFace;
use crate::order::OrderedMap;
use crate::plan::{Document, LandUse, PlanPoint};
use crate::report::export::figure;
use crate::study::Study;

/// The number of the block of each face, by the face's id; `None` for the unbounded face.
pub(super) type BlockOf = Vec<Option<usize>>;

/// The land that counts as the site: all enclosed land within the boundary, or within streets where none is drawn.
pub(super) fn add_site(study: &Study, features: &mut Features) {
    let in_site = study.fabric().faces.iter().filter(|face| face.is_in_site);
    let rings: Vec<&Ring> = in_site.flat_map(|face| face.outline.iter()).collect();
    let pieces = united(rings);
    let mut properties = Writing::default();
    properties.put_json("area_m2", number(area_m2(&pieces)));
    for (name, id) in [
        ("right_of_way_m2", "land.right_of_way"),
        ("held_back_m2", "land.held_back"),
        ("buildable_m2", "land.buildable"),
        ("homes", "homes.count"),
        ("homes_per_hectare", "density.homes_per_site"),
    ] {
        let scale = if name == "homes_per_hectare" { 1e4 } else { 1.0 };
        properties.put_json(name, number(figure(study, id, "").map(|value| value * scale)));
    }
    features.add("site", 1, &Geometry::Land(&pieces), properties);
}

/// Every block; gives back the block of each face.
pub(super) fn add_blocks(study: &Study, features: &mut Features) -> BlockOf {
    let fabric = study.fabric();
    let outlines = block_outlines(&fabric.lines, &fabric.arrangement, &fabric.carriers, &fabric.blocks);
    let mut block_of: BlockOf = vec![None; fabric.arrangement.face_count()];
    for (place, (faces, outline)) in fabric.blocks.iter().zip(&outlines).enumerate() {
        for face in faces {
            if let Some(held) = block_of.get_mut(face.0 as usize) {
                *held = Some(place + 1);
            }
        }
        add_block(study, place + 1, faces, outline.as_ref(), features);
    }
    block_of
}

fn add_block(study: &Study, block: usize, faces: &[FaceId], outline: Option<&BlockOutline>, features: &mut Features) {
    let fabric = study.fabric();
    let held: Vec<&FaceOfLand> = faces.iter().filter_map(|face| fabric.face(*face)).collect();
    let pieces = match outline {
        Some(outline) => united(&[ring_of(outline)]),
        None => united(held.iter().flat_map(|face| face.outline.iter())),
    };
    let painted = study.painted();
    let of_block = painted.iter().filter(|held| faces.contains(&held.face));
    let (mut homes, mut lots) = (0.0, 0.0);
    for held in of_block {
        homes += painted.homes_on(held);
        lots += held.lots.iter().map(|(_, lots)| lots).sum::<f64>();
    }
    let buildable: i128 = held.iter().map(|face| face.land.twice_area_mm2).sum();
    let mut properties = Writing::default();
    properties.put_json("in_site", Json::Bool(held.iter().all(|face| face.is_in_site)));
    properties.put_json("streets_all_round", Json::Bool(outline.is_some()));
    properties.put_json(
        "perimeter_m",
        number(outline.map(|outline| outline.lengths.perimeter_mm / 1e3)),
    );
    properties.put_json(
        "longest_side_m",
        number(outline.map(|outline| outline.lengths.longest_side_mm / 1e3)),
    );
    properties.put_json("area_m2", number(area_m2(&pieces)));
    properties.put_json("buildable_m2", number(buildable as f64 / 2e6));
    properties.put_json("lots", number(lots));
    properties.put_json("homes", number(homes));
    features.add("block", block, &Geometry::Land(&pieces), properties);
}

/// The outline of a block on the grid of the plan.
fn ring_of(outline: &BlockOutline) -> Ring {
    let (x_mm, y_mm) = (f64::from(outline.origin.x_mm), f64::from(outline.origin.y_mm));
    let corners = outline.corners_mm.iter();
    let on_grid = corners.map(|(x, y)| PlanPoint::new((x_mm + x).round() as i32, (y_mm + y).round() as i32));
    on_grid.collect()
}

/// Buildable land of every enclosed area in the site, with its use. Together they are the buildable land of the figures,
/// but for places and soft areas beyond the streets of a plan without a boundary.
pub(super) fn add_land(study: &Study, block_of: &BlockOf, features: &mut Features) {
    let (document, painted) = (study.seen(), study.painted());
    for (place, face) in study.fabric().faces.iter().filter(|face| face.is_in_site).enumerate() {
        let held = painted.iter().find(|held| held.face == face.id);
        let mut properties = Writing::default();
        properties.put_json("block", block(block_of, face.id));
        let land_use = held.and_then(|held| main_use(&document, held));
        properties.put_json("use", land_use.map_or(Json::Null, |land_use| land_use.to_json()));
        properties.put_json("area_m2", number(face.land_m2()));
        if let Some(held) = held {
            properties.put_json("lots", number(held.lots.iter().map(|(_, lots)| lots).sum::<f64>()));
            properties.put_json("homes", number(painted.homes_on(held)));
            properties.put_json(
                "homes_per_hectare_of_its_land",
                number(painted.homes_by_land(held).map(|homes| homes * 1e4)),
            );
            let by_type = held.land_m2.iter().filter_map(|(id, land_m2)| {
                let name = document.building_types.get(id)?.name.clone();
                Some((name, Json::Number(*land_m2)))
            });
            properties.put_json("area_by_building_type_m2", Json::Members(by_type.collect()));
        }
        features.add("land", place + 1, &Geometry::Land(&face.land.pieces), properties);
    }
}

/// The use of most of a face's land: the first of equals.
pub(super) fn main_use(document: &Document, held: &PaintedFace) -> Option<LandUse> {
    let mut sums: OrderedMap<LandUse, f64> = OrderedMap::new();
    for (id, land_m2) in &held.land_m2 {
        if let Some(found) = document.building_types.get(id) {
            *sums.entry(found.land_use).or_default() += land_m2;
        }
    }
    let most = sums
        .iter()
        .reduce(|most, next| if next.1 > most.1 { next } else { most });
    most.map(|(land_use, _)| *land_use)
}

/// The number of a face's block.
pub(super) fn block(block_of: &BlockOf, face: FaceId) -> Json {
    let held = block_of.get(face.0 as usize).copied().flatten();
    held.map_or(Json::Null, |block| whole(block as u32))
}

/// The area of pieces of land, in square meters.
pub(super) fn area_m2(pieces: &[Vec<Ring>]) -> f64 {
    let twice: i128 = pieces.iter().flatten().map(|ring| twice_area_mm2(ring)).sum();
    twice as f64 / 2e6
}
