//! What was drawn and gives the rest its meaning: constraints and places.

use super::number;
use super::write::{Features, Geometry};
use crate::exchange::json::Json;
use crate::exchange::stored::Writing;
use crate::fabric::regions::united;
use crate::plan::{Footprint, Mark, MarkId, PlanPoint};
use crate::study::Study;

use super::land::area_m2;

/// Land that something holds back, as drawn.
pub(super) fn add_constraints(study: &Study, features: &mut Features) {
    for_each(study, |id, mark| {
        let Mark::Constraint(area) = mark else { return };
        let pieces = pieces_of(&area.outline);
        let mut properties = Writing::default();
        properties.put("constraint", &area.kind);
        properties.put("name", &area.name);
        properties.put("buildable", &area.is_buildable);
        properties.put("counts_in_site", &area.counts_in_site);
        properties.put("counts_in_buildable", &area.counts_in_buildable);
        properties.put("walkable", &area.is_walkable);
        properties.put_json("area_m2", number(area_m2(&pieces)));
        features.add("constraint", id.0 as usize, &Geometry::Land(&pieces), properties);
    });
}

/// Places people go to, as drawn.
pub(super) fn add_places(study: &Study, features: &mut Features) {
    for_each(study, |id, mark| {
        let Mark::Place(place) = mark else { return };
        let (mut lines, mut pieces) = (Vec::new(), Vec::new());
        let geometry = match &place.footprint {
            Footprint::Point(point) => Geometry::Point(*point),
            Footprint::Line(line) => {
                lines.push(line.clone());
                Geometry::Lines(&lines)
            }
            Footprint::Area(outline) => {
                pieces = pieces_of(outline);
                Geometry::Land(&pieces)
            }
        };
        let mut properties = Writing::default();
        properties.put("place", &place.kind);
        properties.put("name", &place.name);
        properties.put("certainty", &place.certainty);
        properties.put_json("minimum_size_m2", Json::Integer(i64::from(place.minimum_size_m2)));
        if matches!(geometry, Geometry::Land(_)) {
            properties.put_json("area_m2", number(area_m2(&pieces)));
        }
        features.add("place", id.0 as usize, &geometry, properties);
    });
}

/// The land of a drawn outline, which may wind either way and cross itself.
fn pieces_of(outline: &[PlanPoint]) -> Vec<Vec<Vec<PlanPoint>>> {
    let mut outline = outline.to_vec();
    if crate::fabric::regions::twice_area_mm2(&outline) < 0 {
        outline.reverse();
    }
    united(&[outline])
}

/// Visits what is looked at of the alternative's marks, in order.
fn for_each(study: &Study, mut visit: impl FnMut(MarkId, &Mark)) {
    let document = study.seen();
    let held = document.alternatives.get(&study.alternative());
    for (id, mark) in held.into_iter().flat_map(|held| &held.marks) {
        visit(*id, mark);
    }
}
