//! Where marks other than streets and uses lie, read and replaced in one way.

use hobnail_core::plan::land::{Barrier, Crossing, Note, OutsideContext, Parcel, SiteAccess};
use hobnail_core::plan::{Alternative, ConstraintArea, Document, Footprint, Mark, MarkId, Place, PlanPoint, SoftArea};

use super::near;

/// Where a mark lies; `None` for streets and uses, which lie in ways of their own.
#[must_use]
pub fn of(mark: &Mark) -> Option<Footprint> {
    Some(match mark {
        Mark::Street(_) | Mark::Use(_) => return None,
        Mark::SoftArea(SoftArea { outline, .. })
        | Mark::Constraint(ConstraintArea { outline, .. })
        | Mark::Parcel(Parcel { outline, .. }) => Footprint::Area(outline.clone()),
        Mark::Barrier(barrier) => Footprint::Line(barrier.line.clone()),
        Mark::SiteAccess(SiteAccess { at, .. }) | Mark::Crossing(Crossing { at, .. }) | Mark::Note(Note { at, .. }) => {
            Footprint::Point(*at)
        }
        Mark::Place(Place { footprint, .. }) | Mark::Outside(OutsideContext { footprint, .. }) => footprint.clone(),
    })
}

/// The mark laid elsewhere. What only knows a point takes the first, what only knows points takes all of them.
#[must_use]
pub fn laid(mut mark: Mark, shape: Footprint) -> Mark {
    match &mut mark {
        Mark::Street(_) | Mark::Use(_) => {}
        Mark::Place(Place { footprint, .. }) | Mark::Outside(OutsideContext { footprint, .. }) => *footprint = shape,
        Mark::SoftArea(SoftArea { outline: held, .. })
        | Mark::Constraint(ConstraintArea { outline: held, .. })
        | Mark::Parcel(Parcel { outline: held, .. })
        | Mark::Barrier(Barrier { line: held, .. }) => *held = into_points(shape),
        Mark::SiteAccess(SiteAccess { at, .. }) | Mark::Crossing(Crossing { at, .. }) | Mark::Note(Note { at, .. }) => {
            *at = shape.points().first().copied().unwrap_or(*at)
        }
    }
    mark
}

/// The points of a shape, to keep.
#[must_use]
pub fn into_points(shape: Footprint) -> Vec<PlanPoint> {
    match shape {
        Footprint::Point(point) => vec![point],
        Footprint::Line(points) | Footprint::Area(points) => points,
    }
}

/// A shape of the same kind with other points.
#[must_use]
pub fn with_points(shape: &Footprint, points: Vec<PlanPoint>) -> Footprint {
    match (shape, points.first()) {
        (Footprint::Point(at), first) => Footprint::Point(first.copied().unwrap_or(*at)),
        (Footprint::Line(_), _) => Footprint::Line(points),
        (Footprint::Area(_), _) => Footprint::Area(points),
    }
}

/// Fewest points of a shape of this kind.
#[must_use]
pub const fn fewest_points(shape: &Footprint) -> usize {
    match shape {
        Footprint::Point(_) => 1,
        Footprint::Line(_) => 2,
        Footprint::Area(_) => 3,
    }
}

/// The middles between neighboring points: where a corner can be pulled out. An outline has one more than a line.
#[must_use]
pub fn middles(points: &[PlanPoint], is_closed: bool) -> Vec<PlanPoint> {
    let closing = points.first().filter(|_| is_closed && points.len() >= 3);
    let middle = |one: i32, other: i32| (i64::from(one) + i64::from(other)).div_euclid(2) as i32;
    let ends = points.iter().zip(points.iter().skip(1).chain(closing));
    ends.map(|(a, b)| PlanPoint::new(middle(a.x_mm, b.x_mm), middle(a.y_mm, b.y_mm)))
        .collect()
}

/// Where a press at `from` takes hold of a corner: its place, and whether it is a new one in the middle of a run.
#[must_use]
pub fn corner_at(from: PlanPoint, points: &[PlanPoint], is_closed: bool, reach_mm: f64) -> Option<(usize, bool)> {
    let near = |of: &[PlanPoint]| {
        let away = |point: &PlanPoint| (from.squared_distance_mm2(*point) as f64).sqrt();
        let held = of.iter().map(away).enumerate().filter(|(_, mm)| *mm <= reach_mm);
        held.min_by(|one, other| one.1.total_cmp(&other.1))
            .map(|(place, _)| place)
    };
    let corner = near(points).map(|place| (place, false));
    corner.or_else(|| near(&middles(points, is_closed)).map(|place| (place + 1, true)))
}

/// The points with one of them moved or, where it is new, put in; one that is let go within reach of a neighbor goes
/// away, as long as at least `fewest` are left.
#[must_use]
pub fn with_corner(
    mut points: Vec<PlanPoint>,
    (place, is_new): (usize, bool),
    to: PlanPoint,
    fewest: usize,
    reach_mm: f64,
) -> Vec<PlanPoint> {
    if is_new {
        points.insert(place.min(points.len()), to);
    } else if let Some(point) = points.get_mut(place) {
        *point = to;
    }
    let count = points.len().max(1);
    let mut neighbors = [(place + count - 1) % count, (place + 1) % count].into_iter();
    let is_near = |other: &PlanPoint| (other.squared_distance_mm2(to) as f64).sqrt() <= reach_mm;
    let joins = neighbors.any(|other| other != place && points.get(other).is_some_and(is_near));
    if joins && count > fewest {
        points.remove(place);
    }
    points
}

/// The nearest area whose edge is within reach.
#[must_use]
pub fn area_by_edge(from: PlanPoint, alternative: &Alternative, reach_mm: f64) -> Option<MarkId> {
    let away = |(id, mark): (&MarkId, &Mark)| match of(mark)? {
        Footprint::Area(outline) => Some((*id, near::foot_on_outline(from, &outline)?.1)),
        _ => None,
    };
    let near = alternative
        .marks
        .iter()
        .filter_map(away)
        .filter(|(_, mm)| *mm <= reach_mm);
    near.min_by(|one, other| one.1.total_cmp(&other.1)).map(|(id, _)| id)
}

/// The smallest area around a point.
#[must_use]
pub fn area_around(from: PlanPoint, alternative: &Alternative) -> Option<MarkId> {
    let size = |(id, mark): (&MarkId, &Mark)| match of(mark)? {
        Footprint::Area(outline) if near::is_inside(from, &outline) => Some((*id, area_m2(&outline))),
        _ => None,
    };
    let around = alternative.marks.iter().filter_map(size);
    around.min_by(|one, other| one.1.total_cmp(&other.1)).map(|(id, _)| id)
}

/// The land inside an outline, in square meters.
#[must_use]
pub fn area_m2(outline: &[PlanPoint]) -> f64 {
    hobnail_core::fabric::regions::twice_area_mm2(outline).unsigned_abs() as f64 / 2e6
}

/// All outlines and lines that a corner may land on, but that of mark `except`, and the site's where it is asked for.
pub fn outlines(
    document: &Document,
    alternative: &Alternative,
    except: MarkId,
    with_site: bool,
) -> impl Iterator<Item = Footprint> {
    let marks = alternative.marks.iter().filter(move |(id, _)| **id != except);
    let site = with_site.then(|| Footprint::Area(document.site.boundary.clone()));
    marks.filter_map(|(_, mark)| of(mark)).chain(site)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn p(x: i32, y: i32) -> PlanPoint {
        PlanPoint::new(x, y)
    }

    #[test]
    fn a_corner_let_go_on_its_neighbor_joins_it() {
        let square = vec![p(0, 0), p(100, 0), p(100, 100), p(0, 100)];
        let joined = with_corner(square.clone(), (3, false), p(0, 1), 3, 2.0);
        assert_eq!(joined, vec![p(0, 0), p(100, 0), p(100, 100)]);
        let kept = with_corner(joined.clone(), (0, false), p(100, 0), 3, 2.0);
        assert_eq!(kept.len(), 3, "an outline keeps three");
        let more = with_corner(square, (4, true), p(-50, 50), 3, 2.0);
        assert_eq!(more.last(), Some(&p(-50, 50)));
    }

    #[test]
    fn corners_come_before_the_middles_between_them() {
        let outline = [p(0, 0), p(10_000, 0), p(10_000, 10_000)];
        assert_eq!(corner_at(p(9_900, 0), &outline, true, 500.0), Some((1, false)));
        assert_eq!(corner_at(p(5_000, 5_000), &outline, true, 500.0), Some((3, true)));
        assert_eq!(
            corner_at(p(5_000, 5_000), &outline, false, 500.0),
            None,
            "a line does not close"
        );
        assert!((area_m2(&outline) - 50.0).abs() < 1e-9);
    }
}
