//! Lots and the buildings on them, as laid.

use super::land::{BlockOf, block};
use super::number;
use super::write::{Features, Geometry};
use crate::exchange::json::Json;
use crate::exchange::stored::Writing;
use crate::fabric::regions::{twice_area_mm2, united};
use crate::plan::BuildingType;
use crate::study::Study;

/// Every lot, with what stands on it. Their numbers sum to the figures but for rough ones of soft areas.
pub(super) fn add_lots(study: &Study, block_of: &BlockOf, features: &mut Features) {
    let painted = study.painted();
    let laid = painted.iter().flat_map(|held| {
        let lots = held.laid.lots.iter().zip(&held.built);
        lots.map(|(lot, built)| (held.face, lot, painted.palette.get(*built)))
    });
    for (place, (face, lot, held)) in laid.enumerate() {
        // A type without homes that fits nowhere whole is laid once as a part of a lot.
        let lots = f64::from(lot.counts_ppm) / 1e6;
        let mut properties = Writing::default();
        properties.put_json("block", block(block_of, face));
        if let Some(held) = held {
            add_type(study, held, lots, &mut properties);
        }
        properties.put_json("lots", number(lots));
        properties.put_json("area_m2", number(lot.twice_area_mm2 as f64 / 2e6));
        features.add("lot", place + 1, &Geometry::Land(&united([&lot.outline])), properties);
        if lot.footprint.is_empty() {
            continue;
        }
        let mut properties = Writing::default();
        properties.put_word("lot", &["lot-", &(place + 1).to_string()].concat());
        if let Some(held) = held {
            add_type(study, held, lots, &mut properties);
            let height_mm: u32 = held.stories.iter().map(|story| story.height_mm).sum();
            properties.put_json("height_m", number(f64::from(height_mm) / 1e3));
        }
        let footprint_m2 = twice_area_mm2(&lot.footprint).unsigned_abs() as f64 / 2e6;
        properties.put_json("footprint_m2", number(footprint_m2));
        let footprint = [vec![lot.footprint.clone()]];
        features.add("building", place + 1, &Geometry::Land(&footprint), properties);
    }
}

fn add_type(study: &Study, held: &BuildingType, lots: f64, properties: &mut Writing) {
    properties.put("building_type", &held.name);
    properties.put("use", &held.land_use);
    properties.put_json("stories", Json::Integer(held.stories.len() as i64));
    properties.put_json("homes", number(f64::from(held.homes_per_lot) * lots));
    let floor_m2: f64 = held.stories.iter().map(|story| f64::from(story.floor_area_m2)).sum();
    properties.put_json("floor_area_m2", number(floor_m2 * lots));
    properties.put_json("jobs", number(study.jobs_on_lot(held) * lots));
    let spaces = f64::from(held.parking_per_lot_hundredths) / 100.0;
    properties.put_json("parking_spaces", number(spaces * lots));
}
