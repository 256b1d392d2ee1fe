//! Whether a point lies inside an outline, and whether outlines may share land, exactly.

use super::coordinates::PlanPoint;

/// Whether `outline`, closed by itself, goes around `point` at least once, in either direction.
///
/// A point on the outline is inside where the land directly east of it is, or for a level edge the land north of it, so
/// that of outlines side by side exactly one holds it. Outlines of fewer than three points hold nothing.
/// Cost: linear in the outline.
///
/// ```
/// use hobnail_core::plan::PlanPoint;
/// use hobnail_core::plan::inside::goes_around;
/// let at = |x, y| PlanPoint::new(x, y);
/// let square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];
/// assert!(goes_around(&square, at(5, 5)) && goes_around(&square, at(0, 0)));
/// assert!(!goes_around(&square, at(10, 5)) && !goes_around(&square, at(5, 11)));
/// ```
#[must_use]
pub fn goes_around(outline: &[PlanPoint], point: PlanPoint) -> bool {
    let after = outline.iter().cycle().skip(1);
    let turns: i32 = outline
        .iter()
        .zip(after)
        .map(|(&a, &b)| {
            if a.y_mm <= point.y_mm && b.y_mm > point.y_mm {
                i32::from(a.cross(b, point) > 0)
            } else if a.y_mm > point.y_mm && b.y_mm <= point.y_mm {
                -i32::from(a.cross(b, point) < 0)
            } else {
                0
            }
        })
        .sum();
    turns != 0
}

/// Whether two segments share a point, exact.
#[must_use]
pub fn segments_meet([a, b]: [PlanPoint; 2], [c, d]: [PlanPoint; 2]) -> bool {
    let sides = |p: PlanPoint, q: PlanPoint, r: PlanPoint| p.cross(q, r).signum();
    let (c_side, d_side) = (sides(a, b, c), sides(a, b, d));
    let (a_side, b_side) = (sides(c, d, a), sides(c, d, b));
    let is_within = |p: PlanPoint, q: PlanPoint, r: PlanPoint| {
        (p.x_mm.min(q.x_mm)..=p.x_mm.max(q.x_mm)).contains(&r.x_mm)
            && (p.y_mm.min(q.y_mm)..=p.y_mm.max(q.y_mm)).contains(&r.y_mm)
    };
    (c_side * d_side < 0 && a_side * b_side < 0)
        || (c_side == 0 && is_within(a, b, c))
        || (d_side == 0 && is_within(a, b, d))
        || (a_side == 0 && is_within(c, d, a))
        || (b_side == 0 && is_within(c, d, b))
}

/// Whether two outlines, each closed by itself, may share land.
///
/// `false` is certain: their edges share no point, and neither goes around a corner of the other. `true` is also said of
/// outlines that only touch. Cost: the edges of each that are near the box of the other, against one another.
#[must_use]
pub fn outlines_may_overlap(one: &[PlanPoint], other: &[PlanPoint]) -> bool {
    let (Some(first), Some(second)) = (one.first(), other.first()) else {
        return false;
    };
    let in_box = |[a, b]: [PlanPoint; 2], (low, high): (PlanPoint, PlanPoint)| {
        a.x_mm.min(b.x_mm) <= high.x_mm
            && a.x_mm.max(b.x_mm) >= low.x_mm
            && a.y_mm.min(b.y_mm) <= high.y_mm
            && a.y_mm.max(b.y_mm) >= low.y_mm
    };
    let box_of = |points: &[PlanPoint]| {
        points.iter().fold((points[0], points[0]), |(low, high), point| {
            (
                PlanPoint::new(low.x_mm.min(point.x_mm), low.y_mm.min(point.y_mm)),
                PlanPoint::new(high.x_mm.max(point.x_mm), high.y_mm.max(point.y_mm)),
            )
        })
    };
    // Neither is empty: the first points were found.
    let (around_one, around_other) = (box_of(one), box_of(other));
    let near: Vec<[PlanPoint; 2]> = edges(other).filter(|edge| in_box(*edge, around_one)).collect();
    let mut near_other = edges(one).filter(|edge| in_box(*edge, around_other));
    let meets = |edge: &[PlanPoint; 2]| {
        let around = (
            PlanPoint::new(edge[0].x_mm.min(edge[1].x_mm), edge[0].y_mm.min(edge[1].y_mm)),
            PlanPoint::new(edge[0].x_mm.max(edge[1].x_mm), edge[0].y_mm.max(edge[1].y_mm)),
        );
        near.iter()
            .any(|held| in_box(*held, around) && segments_meet(*held, *edge))
    };
    near_other.any(|edge| meets(&edge)) || goes_around(one, *second) || goes_around(other, *first)
}

fn edges(outline: &[PlanPoint]) -> impl Iterator<Item = [PlanPoint; 2]> + '_ {
    let after = outline.iter().cycle().skip(1);
    outline.iter().zip(after).map(|(a, b)| [*a, *b])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(west: i32, south: i32, side: i32) -> Vec<PlanPoint> {
        [(0, 0), (side, 0), (side, side), (0, side)]
            .map(|(x, y)| PlanPoint::new(west + x, south + y))
            .to_vec()
    }

    #[test]
    fn outlines_apart_share_no_land_and_all_others_may() {
        let held = square(0, 0, 100);
        let both = |other: &[PlanPoint]| {
            let there = outlines_may_overlap(&held, other);
            assert_eq!(there, outlines_may_overlap(other, &held));
            there
        };
        assert!(both(&square(50, 50, 100)), "across a corner");
        assert!(both(&square(20, 20, 10)), "inside");
        assert!(both(&square(-50, -50, 300)), "around");
        assert!(both(&square(0, 0, 100)), "the same");
        assert!(both(&square(100, 0, 50)), "side by side");
        assert!(!both(&square(101, 0, 50)));
        assert!(!both(&square(0, -60, 50)));
        // An angle whose box holds the square, and whose land does not.
        let angle = [(-10, -10), (300, -10), (300, -5), (-5, -5), (-5, 300), (-10, 300)];
        assert!(!both(&angle.map(|(x, y)| PlanPoint::new(x, y))));
        assert!(!both(&[]));
    }
}
