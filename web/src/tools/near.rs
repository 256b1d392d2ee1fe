//! What lies near a point: feet on streets, corners, crossings. The tools pick and snap with it.

use hobnail_core::order;
use hobnail_core::plan::mark::Mark;
use hobnail_core::plan::street::{Street, Tie};
use hobnail_core::plan::tie::{WHOLE_PPB, nearest_tie};
use hobnail_core::plan::{Alternative, MarkId, PlanPoint};

/// The nearest point of a street to some point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foot {
    /// Where on the street, ready to hold on to.
    pub tie: Tie,
    /// That place, rounded to 1 mm.
    pub point: PlanPoint,
    /// How far it is, in millimeters.
    pub distance_mm: f64,
}

/// The foot of `from` on the segment `a`–`b`: the share of its length from `a`, the place, and how far it is in mm.
#[must_use]
pub fn foot_on_segment(from: PlanPoint, a: PlanPoint, b: PlanPoint) -> (f64, PlanPoint, f64) {
    let (ax, ay) = (f64::from(a.x_mm), f64::from(a.y_mm));
    let (ux, uy) = (f64::from(b.x_mm) - ax, f64::from(b.y_mm) - ay);
    let (vx, vy) = (f64::from(from.x_mm) - ax, f64::from(from.y_mm) - ay);
    let squared = ux * ux + uy * uy;
    let share = if squared > 0.0 {
        ((ux * vx + uy * vy) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let (fx, fy) = (ax + ux * share, ay + uy * share);
    let (dx, dy) = (f64::from(from.x_mm) - fx, f64::from(from.y_mm) - fy);
    let point = PlanPoint::new(fx.round() as i32, fy.round() as i32);
    (share, point, (dx * dx + dy * dy).sqrt())
}

/// The foot of `from` on `street`, whose mark is `id`; `None` for a line without segments.
#[must_use]
pub fn foot_on_street(from: PlanPoint, id: MarkId, street: &Street) -> Option<Foot> {
    let (tie, point) = nearest_tie(id, &street.line, from)?;
    Some(Foot {
        tie,
        point,
        distance_mm: (from.squared_distance_mm2(point) as f64).sqrt(),
    })
}

/// All streets drawn on `alternative`, with their ids.
pub fn streets(alternative: &Alternative) -> impl Iterator<Item = (MarkId, &Street)> {
    alternative
        .marks
        .iter()
        .filter_map(|(id, mark)| mark.as_street().map(|street| (*id, street)))
}

/// The nearest street within `reach_mm` of `from`, other than `except`; the least id of equals.
#[must_use]
pub fn nearest_street(
    from: PlanPoint,
    alternative: &Alternative,
    except: Option<MarkId>,
    reach_mm: f64,
) -> Option<(MarkId, Foot)> {
    street_beside(from, alternative, except.as_slice(), reach_mm)
}

/// [`nearest_street`] leaving out several.
#[must_use]
pub fn street_beside(
    from: PlanPoint,
    alternative: &Alternative,
    except: &[MarkId],
    reach_mm: f64,
) -> Option<(MarkId, Foot)> {
    streets(alternative)
        .filter(|(id, street)| !except.contains(id) && may_reach(from, street, reach_mm))
        .filter_map(|(id, street)| foot_on_street(from, id, street).map(|foot| (id, foot)))
        .filter(|(_, foot)| foot.distance_mm <= reach_mm)
        .min_by(|(_, one), (_, other)| one.distance_mm.total_cmp(&other.distance_mm))
}

/// The nearest crossing of two streets within `reach_mm` of `from`, leaving out `except`, held by the first of the two.
///
/// Only segments within reach are looked at, so a plan of ten thousand segments costs one pass over them.
#[must_use]
pub fn nearest_crossing(
    from: PlanPoint,
    alternative: &Alternative,
    except: Option<MarkId>,
    reach_mm: f64,
) -> Option<Foot> {
    crossing_beside(from, alternative, except.as_slice(), reach_mm)
}

/// [`nearest_crossing`] leaving out several.
#[must_use]
pub fn crossing_beside(from: PlanPoint, alternative: &Alternative, except: &[MarkId], reach_mm: f64) -> Option<Foot> {
    let mut near = Vec::new();
    for (id, street) in streets(alternative) {
        if except.contains(&id) || !may_reach(from, street, reach_mm) {
            continue;
        }
        for (segment, ends) in street.line.windows(2).enumerate() {
            if let [a, b] = ends
                && foot_on_segment(from, a.point, b.point).2 <= reach_mm
            {
                near.push((id, segment, a.point, b.point, street.level));
            }
        }
    }
    let mut best: Option<Foot> = None;
    for (index, one) in near.iter().enumerate() {
        for other in near.iter().skip(index + 1) {
            let neighbors = one.0 == other.0 && one.1.abs_diff(other.1) <= 1;
            if neighbors || one.4 != other.4 {
                continue;
            }
            let Some((share, point)) = crossing(one.2, one.3, other.2, other.3) else {
                continue;
            };
            let distance_mm = (from.squared_distance_mm2(point) as f64).sqrt();
            if distance_mm <= reach_mm && best.is_none_or(|found| distance_mm < found.distance_mm) {
                let tie = Tie {
                    street: one.0,
                    segment: one.1 as u32,
                    along_ppb: (share * f64::from(WHOLE_PPB)).round() as u32,
                };
                best = Some(Foot {
                    tie,
                    point,
                    distance_mm,
                });
            }
        }
    }
    best
}

/// Where the segments `a`–`b` and `c`–`d` meet in one point, ends included: the share along `a`–`b` and the place
/// rounded to 1 mm. `None` where they are apart or lie along each other.
#[must_use]
pub fn crossing(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint) -> Option<(f64, PlanPoint)> {
    let (from_c, from_d) = (a.cross(b, c), a.cross(b, d));
    let (from_a, from_b) = (c.cross(d, a), c.cross(d, b));
    let apart = |one: i64, other: i64| (one > 0 && other > 0) || (one < 0 && other < 0);
    if apart(from_c, from_d) || apart(from_a, from_b) || from_a == from_b {
        return None;
    }
    let share = from_a as f64 / (from_a as f64 - from_b as f64);
    let at = |from: i32, to: i32| (f64::from(from) + (f64::from(to) - f64::from(from)) * share).round() as i32;
    Some((share, PlanPoint::new(at(a.x_mm, b.x_mm), at(a.y_mm, b.y_mm))))
}

/// The nearest vertex of `street` within `reach_mm`: its index and distance.
#[must_use]
pub fn nearest_vertex(from: PlanPoint, street: &Street, reach_mm: f64) -> Option<(usize, f64)> {
    street
        .line
        .iter()
        .enumerate()
        .map(|(index, vertex)| (index, (from.squared_distance_mm2(vertex.point) as f64).sqrt()))
        .filter(|(_, distance_mm)| *distance_mm <= reach_mm)
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

/// The foot of `from` on a closed outline, and how far it is in mm; `None` for fewer than two points.
#[must_use]
pub fn foot_on_outline(from: PlanPoint, outline: &[PlanPoint]) -> Option<(PlanPoint, f64)> {
    let next = outline.iter().cycle().skip(1);
    outline
        .iter()
        .zip(next)
        .filter(|(a, b)| a != b)
        .map(|(a, b)| {
            let (_, point, distance_mm) = foot_on_segment(from, *a, *b);
            (point, distance_mm)
        })
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

/// Whether `point` lies inside the closed outline, by the parity of edges to its east; exact in integers.
#[must_use]
pub fn is_inside(point: PlanPoint, outline: &[PlanPoint]) -> bool {
    let next = outline.iter().cycle().skip(1);
    outline.iter().zip(next).fold(false, |inside, (a, b)| {
        let (low, high) = if a.y_mm <= b.y_mm { (a, b) } else { (b, a) };
        let spans = low.y_mm <= point.y_mm && point.y_mm < high.y_mm;
        inside ^ (spans && low.cross(*high, point) > 0)
    })
}

/// The foot of `from` on a line, and how far it is in mm; `None` for fewer than two points.
#[must_use]
pub fn foot_on_line(from: PlanPoint, line: &[PlanPoint]) -> Option<(PlanPoint, f64)> {
    let feet = line.windows(2).filter_map(|ends| match ends {
        [a, b] => Some(foot_on_segment(from, *a, *b)),
        _ => None,
    });
    feet.map(|(_, point, distance_mm)| (point, distance_mm))
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

/// The distance from `from` in mm of a place (zero inside its land), or of any other mark that is a point or a line.
#[must_use]
pub fn distance_to_place_mm(from: PlanPoint, mark: &Mark) -> Option<f64> {
    use hobnail_core::plan::Footprint;
    let to_point = |point: &PlanPoint| (from.squared_distance_mm2(*point) as f64).sqrt();
    match &super::shape::of(mark)? {
        Footprint::Point(point) => Some(to_point(point)),
        Footprint::Line(line) => foot_on_line(from, line)
            .map(|(_, distance_mm)| distance_mm)
            .or_else(|| line.first().map(to_point)),
        Footprint::Area(_) if mark.as_place().is_none() => None,
        Footprint::Area(outline) if is_inside(from, outline) => Some(0.0),
        Footprint::Area(outline) => foot_on_outline(from, outline).map(|(_, distance_mm)| distance_mm),
    }
}

/// Whether the box about `street` comes within `reach_mm` of `from`: a cheap no for most streets.
pub fn may_reach(from: PlanPoint, street: &Street, reach_mm: f64) -> bool {
    let (mut west, mut east, mut south, mut north) = (i32::MAX, i32::MIN, i32::MAX, i32::MIN);
    for vertex in &street.line {
        west = west.min(vertex.point.x_mm);
        east = east.max(vertex.point.x_mm);
        south = south.min(vertex.point.y_mm);
        north = north.max(vertex.point.y_mm);
    }
    let outside = |value: i32, low: i32, high: i32| {
        f64::from(low) - f64::from(value) > reach_mm || f64::from(value) - f64::from(high) > reach_mm
    };
    !outside(from.x_mm, west, east) && !outside(from.y_mm, south, north)
}

/// Where other streets, older than `younger`, meet street `id`: how far along its line from corner to corner, in millimeters, and
/// the place; in order along it, each place once. Streets of another level pass by.
///
/// Cost: the street's runs times the runs of the streets whose boxes come near each.
#[must_use]
pub fn junctions(alternative: &Alternative, id: MarkId, younger: Option<MarkId>) -> Vec<(f64, PlanPoint)> {
    const SAME_PLACE_MM: f64 = 1_000.0;
    let Some(street) = alternative.marks.get(&id).and_then(Mark::as_street) else {
        return Vec::new();
    };
    let is_young = |other: MarkId| younger.is_some_and(|younger| other >= younger);
    let mut found = Vec::new();
    let mut from_start_mm = 0.0;
    for (segment, ends) in street.line.windows(2).enumerate() {
        let [a, b] = ends else { continue };
        let length_mm = (a.point.squared_distance_mm2(b.point) as f64).sqrt();
        for (end, vertex) in [(0.0, a), (length_mm, b)] {
            if vertex.tie.is_some_and(|tie| !is_young(tie.street)) {
                found.push((from_start_mm + end, vertex.point));
            }
        }
        let middle = PlanPoint::mean_of(&[a.point, b.point]).unwrap_or(a.point);
        for (other, across) in streets(alternative) {
            if other == id || is_young(other) || !may_reach(middle, across, length_mm / 2.0 + SAME_PLACE_MM) {
                continue;
            }
            for vertex in &across.line {
                let tie = vertex
                    .tie
                    .filter(|tie| tie.street == id && tie.segment as usize == segment);
                if let Some(tie) = tie {
                    let share = f64::from(tie.along_ppb) / f64::from(WHOLE_PPB);
                    found.push((from_start_mm + share * length_mm, vertex.point));
                }
            }
            for run in across.line.windows(2) {
                if let [c, d] = run
                    && across.level == street.level
                    && let Some((share, point)) = crossing(a.point, b.point, c.point, d.point)
                {
                    found.push((from_start_mm + share * length_mm, point));
                }
            }
        }
        from_start_mm += length_mm;
    }
    order::sort_by(&mut found, |(one, _), (other, _)| one.total_cmp(other));
    found.dedup_by(|(later, _), (earlier, _)| *later - *earlier < SAME_PLACE_MM);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{alternative_with, street};

    #[test]
    fn a_foot_lies_square_to_the_street() {
        let line = street(&[(0, 0), (100_000, 0), (100_000, 50_000)]);
        let foot = foot_on_street(PlanPoint::new(40_000, 3_000), MarkId(4), &line).expect("a foot");
        assert_eq!(foot.point, PlanPoint::new(40_000, 0));
        assert_eq!(foot.tie.segment, 0);
        assert_eq!(foot.tie.along_ppb, 400_000_000);
        assert!((foot.distance_mm - 3_000.0).abs() < 1e-9);
        let beyond = foot_on_street(PlanPoint::new(101_000, 60_000), MarkId(4), &line).expect("a foot");
        assert_eq!((beyond.tie.segment, beyond.tie.along_ppb), (1, 1_000_000_000));
    }

    #[test]
    fn crossings_are_found_and_parallels_are_not() {
        let p = PlanPoint::new;
        assert_eq!(crossing(p(0, 0), p(10, 0), p(5, -5), p(5, 5)), Some((0.5, p(5, 0))));
        assert_eq!(
            crossing(p(0, 0), p(10, 0), p(5, 0), p(5, 5)),
            Some((0.5, p(5, 0))),
            "a T counts"
        );
        assert_eq!(crossing(p(0, 0), p(10, 0), p(0, 1), p(10, 1)), None);
        assert_eq!(crossing(p(0, 0), p(10, 0), p(2, 0), p(12, 0)), None, "along each other");
        assert_eq!(crossing(p(0, 0), p(10, 0), p(11, -5), p(11, 5)), None);
    }

    #[test]
    fn the_nearest_crossing_within_reach_is_held_by_a_street() {
        let alternative = alternative_with(&[
            (1, street(&[(0, 0), (100_000, 0)])),
            (2, street(&[(30_000, -50_000), (30_000, 50_000)])),
            (3, street(&[(60_000, -50_000), (60_000, 50_000)])),
        ]);
        let found = nearest_crossing(PlanPoint::new(31_000, 500), &alternative, None, 3_000.0).expect("a crossing");
        assert_eq!(found.point, PlanPoint::new(30_000, 0));
        assert_eq!((found.tie.street, found.tie.along_ppb), (MarkId(1), 300_000_000));
        assert_eq!(
            nearest_crossing(PlanPoint::new(45_000, 0), &alternative, None, 3_000.0),
            None
        );
        let without = nearest_crossing(PlanPoint::new(31_000, 500), &alternative, Some(MarkId(2)), 3_000.0);
        assert_eq!(without, None, "a street being drawn does not snap to itself");
    }

    #[test]
    fn junctions_stand_in_order_along_a_street() {
        let mut side = street(&[(60_000, 0), (60_000, 50_000)]);
        crate::tools::fixtures::tied(&mut side, 0, 1, 0, 600_000_000);
        let alternative = alternative_with(&[
            (1, street(&[(0, 0), (100_000, 0), (100_000, 80_000)])),
            (2, side),
            (3, street(&[(20_000, -50_000), (20_000, 50_000)])),
            (4, street(&[(50_000, 70_000), (150_000, 70_000)])),
        ]);
        let found: Vec<_> = junctions(&alternative, MarkId(1), None)
            .into_iter()
            .map(|(along_mm, point)| (along_mm.round() as i32, point.x_mm, point.y_mm))
            .collect();
        assert_eq!(
            found,
            [(20_000, 20_000, 0), (60_000, 60_000, 0), (170_000, 100_000, 70_000)]
        );
        assert_eq!(junctions(&alternative, MarkId(1), Some(MarkId(4))).len(), 2);
    }

    #[test]
    fn inside_is_decided_exactly() {
        let ring = [(0, 0), (10, 0), (10, 10), (0, 10)].map(|(x, y)| PlanPoint::new(x, y));
        assert!(is_inside(PlanPoint::new(5, 5), &ring));
        assert!(!is_inside(PlanPoint::new(15, 5), &ring));
        let reversed: Vec<_> = ring.iter().rev().copied().collect();
        assert!(is_inside(PlanPoint::new(5, 5), &reversed));
    }
}
