//! Between the plan and the map: positions of a file to plan points, and the middle of a file's data.

use crate::exchange::fault::FileFaultKind;
use crate::exchange::geojson::Feature;
use crate::exchange::plan_file::Refusal;
use crate::exchange::stored::Reader;
use crate::plan::coordinates::PlanPoint;
use crate::plan::projection::{GeographicPoint, NDEG_PER_DEG, Projection};

/// Origins taken from data are rounded to this: a millionth of a degree, for the reader's eye.
const ORIGIN_STEP_NDEG: i64 = NDEG_PER_DEG / 1_000_000;

/// The plan points of positions in degrees. The first that is none, or lies beyond the plan, is a fault.
pub(super) fn to_plan(positions: &[[f64; 2]], projection: &Projection, reader: &mut Reader) -> Option<Vec<PlanPoint>> {
    let mut points = Vec::with_capacity(positions.len());
    for &[longitude_deg, latitude_deg] in positions {
        let Some(position) = GeographicPoint::checked_from_deg(longitude_deg, latitude_deg) else {
            reader.fault(FileFaultKind::NotAPosition);
            return None;
        };
        let Some(point) = projection.plan_from_geographic(position) else {
            reader.fault(FileFaultKind::BeyondPlan);
            return None;
        };
        points.push(point);
    }
    Some(points)
}

/// The plane about the middle of all positions, of the shorter way round the Earth.
pub(super) fn about_middle(features: &[Feature<'_>]) -> Result<Projection, Refusal> {
    let positions = || {
        features
            .iter()
            .filter_map(|feature| feature.geometry.as_ref())
            .flat_map(|held| held.positions())
    };
    let legal: Vec<GeographicPoint> = positions()
        .filter_map(|[longitude_deg, latitude_deg]| GeographicPoint::checked_from_deg(longitude_deg, latitude_deg))
        .collect();
    if legal.is_empty() {
        let is_any = positions().next().is_some();
        return Err(if is_any {
            Refusal::NotDegrees
        } else {
            Refusal::NoPositions
        });
    }
    let bounds = |values: &mut dyn Iterator<Item = i64>| {
        values.fold((i64::MAX, i64::MIN), |(low, high), value| {
            (low.min(value), high.max(value))
        })
    };
    let turn_ndeg = 360 * NDEG_PER_DEG;
    let (west, east) = bounds(&mut legal.iter().map(|point| point.longitude_ndeg));
    // Seen from the other side of the Earth, data about the date line are not torn apart.
    let (other_west, other_east) = bounds(&mut legal.iter().map(|point| point.longitude_ndeg.rem_euclid(turn_ndeg)));
    let middle = if other_east - other_west < east - west {
        (other_west + other_east) / 2
    } else {
        (west + east) / 2
    };
    let longitude_ndeg = if middle > turn_ndeg / 2 {
        middle - turn_ndeg
    } else {
        middle
    };
    let (south, north) = bounds(&mut legal.iter().map(|point| point.latitude_ndeg));
    let rounded = |ndeg: i64| ndeg / ORIGIN_STEP_NDEG * ORIGIN_STEP_NDEG;
    let origin = GeographicPoint {
        longitude_ndeg: rounded(longitude_ndeg),
        latitude_ndeg: rounded((south + north) / 2),
    };
    Projection::about(origin).map_err(Refusal::Origin)
}

/// A ring without the repeated first point at its end.
pub(super) fn unclosed(mut ring: Vec<PlanPoint>) -> Vec<PlanPoint> {
    if ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    ring
}
