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
    let apart = |p: i32, q: i32, r: i32, s: i32| p.max(q) < r.min(s) || r.max(s) < p.min(q);
    if apart(a.x_mm, b.x_mm, c.x_mm, d.x_mm) || apart(a.y_mm, b.y_mm, c.y_mm, d.y_mm) {
        return false;
    }
    let divides =
        |a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint| a.cross(b, c).signum() * a.cross(b, d).signum() <= 0;
    divides(a, b, c, d) && divides(c, d, a, b)
}
