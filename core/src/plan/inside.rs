//! Whether a point lies inside an outline, and whether segments meet, exactly.

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
