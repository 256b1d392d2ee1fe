//! Streets between intersections, where they meet, and what fronts on them.

use super::write::{Features, Geometry};
use super::{number, whole};
use crate::exchange::json::Json;
use crate::exchange::stored::Writing;
use crate::measures::streets::site_streets::{SiteStreets, points_of, street_name};
use crate::measures::walk_network::ground::Ground;
use crate::network::counting_rule::COUNTING_RULES;
use crate::network::{LinkId, Stretch};
use crate::number as float;
use crate::plan::PlanPoint;
use crate::study::Study;

/// A slope is that of a piece at most this long: 20 m, as walking is timed.
const SLOPE_PIECE_M: f64 = 20.0;

/// Every street, alley and path between intersections. The lengths of those in the site, by what they are, sum to the
/// figures of street length.
pub(super) fn add_segments(study: &Study, features: &mut Features) {
    let (document, fabric) = (study.seen(), study.fabric());
    let streets = SiteStreets::of(&document, study.alternative(), fabric);
    let ground = document.topography.as_ref().and_then(Ground::of);
    for (place, (held, link)) in (0_u32..).zip(streets.links.iter().zip(&fabric.links.links)) {
        let Some(line) = fabric.lines.streets.get(link.street as usize) else {
            continue;
        };
        let mark = document
            .mark(study.alternative(), line.mark)
            .and_then(|mark| mark.as_street());
        let points: Vec<PlanPoint> = points_of(fabric, place).collect();
        let mut properties = Writing::default();
        properties.put_word("name", street_name(&document, study.alternative(), fabric, link.street));
        if let Some(section) = document.street_sections.get(&line.section) {
            properties.put_word("street_section", &section.name);
            properties.put_json("target_speed_km_h", whole(u32::from(section.target_speed_km_h)));
        }
        properties.put("role", &line.role);
        if let Some(mark) = mark {
            properties.put("status", &mark.status);
        }
        properties.put_json("in_site", Json::Bool(held.is_inside));
        properties.put_json("walkable", Json::Bool(line.walkable));
        properties.put_json("right_of_way_m", number(f64::from(line.right_of_way_mm) / 1e3));
        properties.put_json("length_m", number(link.length_um as f64 / 1e6));
        properties.put_json(
            "walks_one_from_each_home_to_each_need",
            number(walks(study, place, link.length_um)),
        );
        if let Some(ground) = &ground {
            let (rise_m, steepest) = slope(ground, &points);
            properties.put_json("rise_m", number(rise_m));
            properties.put_json("steepest_slope_percent", number(steepest * 100.0));
        }
        features.add("segment", place as usize + 1, &Geometry::Lines(&[points]), properties);
    }
}

/// The most walks along any part of a link; `None` before they are worked out.
fn walks(study: &Study, link: u32, length_um: u64) -> Option<f64> {
    let by_link = &study.details()?.walks_by_link;
    let mut most = 0.0_f64;
    let whole = Stretch {
        link: LinkId(link),
        from_um: 0,
        to_um: length_um,
    };
    study.walks().network().for_each_piece(whole, |piece| {
        most = most.max(by_link.get(piece.link.0 as usize).copied().unwrap_or_default());
    });
    Some(most)
}

/// How much higher the last point of a line is than its first, in meters, and the steepest of its pieces either way.
fn slope(ground: &Ground<'_>, points: &[PlanPoint]) -> (f64, f64) {
    let height_m = |point: Option<&PlanPoint>| point.map_or(0.0, |point| ground.height_m(point.to_m()));
    let mut steepest = 0.0_f64;
    for ends in points.windows(2) {
        let ((x, y), (to_x, to_y)) = (ends[0].to_m(), ends[1].to_m());
        let length_m = float::length(to_x - x, to_y - y);
        let pieces = (length_m / SLOPE_PIECE_M).ceil().max(1.0);
        let at = |piece: f64| ground.height_m((x + (to_x - x) * piece / pieces, y + (to_y - y) * piece / pieces));
        let mut piece = 0.0;
        while piece < pieces && length_m > 0.0 {
            let rise_m = at(piece + 1.0) - at(piece);
            steepest = steepest.max(rise_m.abs() / (length_m / pieces));
            piece += 1.0;
        }
    }
    (height_m(points.last()) - height_m(points.first()), steepest)
}

/// Where streets, alleys and paths meet or end. A rule counts as many of them as the figures say.
pub(super) fn add_intersections(study: &Study, features: &mut Features) {
    let fabric = study.fabric();
    let places = study.street_places();
    let mut legs = vec![0_u32; fabric.links.nodes.len()];
    for node in fabric.links.links.iter().flat_map(|link| link.ends) {
        if let Some(legs) = legs.get_mut(node as usize) {
            *legs += 1;
        }
    }
    for (place, (at, legs)) in fabric.links.nodes.iter().zip(legs).enumerate() {
        let counting = COUNTING_RULES.iter().zip(&places.rules);
        let counting = counting.filter(|(_, counted)| counted.points.contains(at));
        let ids = counting.map(|(rule, _)| Json::Text(rule.id.to_owned()));
        let mut properties = Writing::default();
        properties.put_json("legs", whole(legs));
        properties.put_json("counted_by", Json::List(ids.collect()));
        features.add("intersection", place + 1, &Geometry::Point(*at), properties);
    }
}

/// Stretches of street, on their centerlines, with the lots of one building type that front there from one side.
pub(super) fn add_fronts(study: &Study, features: &mut Features) {
    let (document, fabric, painted) = (study.seen(), study.fabric(), study.painted());
    let fronts = painted.iter().flat_map(|held| &held.fronts);
    for (place, front) in fronts.enumerate() {
        let Stretch { link, from_um, to_um } = front.stretch;
        let Some(street) = fabric.links.links.get(link.0 as usize) else {
            continue;
        };
        let [(id, lots)] = front.lots;
        let held = painted.palette.get(id);
        let mut properties = Writing::default();
        properties.put_word(
            "name",
            street_name(&document, study.alternative(), fabric, street.street),
        );
        properties.put_word("building_type", held.map_or("", |held| held.name.as_str()));
        properties.put_json("length_m", number((to_um - from_um) as f64 / 1e6));
        properties.put_json("lots", number(lots));
        let homes = held.map(|held| f64::from(held.homes_per_lot) * lots);
        properties.put_json("homes", number(homes));
        let line = part_of(points_of(fabric, link.0), from_um, to_um);
        let lines = [line];
        let geometry = match &lines[0][..] {
            [only] => Geometry::Point(*only),
            _ => Geometry::Lines(&lines),
        };
        features.add("front", place + 1, &geometry, properties);
    }
}

/// The part of a line between two places along it; one point where they are one on the grid.
fn part_of(points: impl Iterator<Item = PlanPoint>, from_um: u64, to_um: u64) -> Vec<PlanPoint> {
    let mut part = Vec::new();
    let mut push = |point: PlanPoint| {
        if part.last() != Some(&point) {
            part.push(point);
        }
    };
    let mut walked_um = 0;
    let mut before: Option<PlanPoint> = None;
    for point in points {
        if let Some(before) = before {
            let length_um = before.distance_um(point);
            let (first, last) = (from_um.max(walked_um), to_um.min(walked_um + length_um));
            let at = |along_um: u64| {
                let share = (along_um - walked_um) as f64 / length_um as f64;
                let between = |a: i32, b: i32| a + ((f64::from(b) - f64::from(a)) * share).round() as i32;
                PlanPoint::new(between(before.x_mm, point.x_mm), between(before.y_mm, point.y_mm))
            };
            if first <= last && length_um > 0 {
                push(at(first));
                push(at(last));
            }
            walked_um += length_um;
        }
        before = Some(point);
    }
    part
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::document::Topography;

    const fn at(x_m: i32, y_m: i32) -> PlanPoint {
        PlanPoint::new(x_m * 1_000, y_m * 1_000)
    }

    /// Ground that is level for 100 m and then rises by 10 m on 100 m.
    #[test]
    fn a_slope_is_that_of_its_steepest_piece() {
        let topography = Topography {
            south_west: at(0, 0),
            spacing_mm: 100_000,
            columns: 3,
            heights_mm: vec![5_000, 5_000, 15_000, 5_000, 5_000, 15_000],
            source: "made up".to_owned(),
        };
        let ground = Ground::of(&topography).unwrap();
        let (rise_m, steepest) = slope(&ground, &[at(0, 0), at(200, 0)]);
        assert!(
            (rise_m - 10.0).abs() < 1e-9 && (steepest - 0.1).abs() < 1e-9,
            "{rise_m} {steepest}"
        );
        let (rise_m, steepest) = slope(&ground, &[at(200, 0), at(150, 0)]);
        assert!(
            (rise_m + 5.0).abs() < 1e-9 && (steepest - 0.1).abs() < 1e-9,
            "{rise_m} {steepest}"
        );
        assert_eq!(slope(&ground, &[at(50, 0)]), (0.0, 0.0));
    }

    #[test]
    fn a_part_of_a_line_ends_where_it_should() {
        let line = || [at(0, 0), at(10, 0), at(10, 10)].into_iter();
        assert_eq!(part_of(line(), 5_000_000, 12_000_000), [at(5, 0), at(10, 0), at(10, 2)]);
        assert_eq!(part_of(line(), 0, 20_000_000), [at(0, 0), at(10, 0), at(10, 10)]);
        assert_eq!(part_of(line(), 10_000_000, 10_000_000), [at(10, 0)]);
        assert_eq!(part_of(line(), 20_000_000, 20_000_000), [at(10, 10)]);
    }
}
