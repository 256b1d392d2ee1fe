//! What of a line or an outline lies within a box of the plan.
//!
//! Lines by the shares at which a segment enters and leaves (Liang and Barsky, "A new concept and method for line
//! clipping", *ACM Transactions on Graphics* 3, 1984); outlines side by side of the box (Sutherland and Hodgman,
//! "Reentrant polygon clipping", *Communications of the ACM* 17, 1974), which leaves seams along the box where an outline
//! falls apart. Points within stay as they are; only ends on the box are new, to the nearest millimeter.

use hobnail_core::order;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::inside::goes_around;

/// West, south, east and north, in millimeters.
pub type Sides = [i32; 4];

/// Whether a point lies within the box or on its edge.
#[must_use]
pub fn holds([west, south, east, north]: Sides, point: PlanPoint) -> bool {
    (west..=east).contains(&point.x_mm) && (south..=north).contains(&point.y_mm)
}

/// The point this share along from one to another.
fn between(from: PlanPoint, to: PlanPoint, share: f64) -> PlanPoint {
    let along = |from: i32, to: i32| (f64::from(from) + share * (f64::from(to) - f64::from(from))).round() as i32;
    PlanPoint::new(along(from.x_mm, to.x_mm), along(from.y_mm, to.y_mm))
}

/// The parts of a line within the box, in its direction. Cost: linear.
#[must_use]
pub fn line(sides: Sides, line: &[PlanPoint]) -> Vec<Vec<PlanPoint>> {
    let mut parts: Vec<Vec<PlanPoint>> = Vec::new();
    let mut is_open = false;
    for pair in line.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let Some((enters, leaves)) = segment(sides, from, to) else {
            is_open = false;
            continue;
        };
        let end = if leaves < 1.0 { between(from, to, leaves) } else { to };
        match parts.last_mut() {
            Some(part) if is_open && enters <= 0.0 => part.push(end),
            _ => parts.push(vec![if enters > 0.0 { between(from, to, enters) } else { from }, end]),
        }
        is_open = leaves >= 1.0;
    }
    for part in &mut parts {
        part.dedup();
    }
    parts.retain(|part| part.len() > 1);
    parts
}

/// The parts of a line within an outline, in its direction: cut where the outline crosses it, each part kept whose middle
/// lies inside. Cost: segments times sides of the outline.
#[must_use]
pub fn line_within(outline: &[PlanPoint], line: &[PlanPoint]) -> Vec<Vec<PlanPoint>> {
    let mut parts: Vec<Vec<PlanPoint>> = Vec::new();
    let mut is_open = false;
    for pair in line.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let mut cuts = vec![0.0, 1.0];
        for (&a, &b) in outline.iter().zip(outline.iter().cycle().skip(1)) {
            cuts.extend(crossing([from, to], [a, b]));
        }
        order::sort_by(&mut cuts, f64::total_cmp);
        for share in cuts.windows(2) {
            let is_inside =
                share[0] < share[1] && goes_around(outline, between(from, to, f64::midpoint(share[0], share[1])));
            if is_inside {
                let end = between(from, to, share[1]);
                match parts.last_mut() {
                    Some(part) if is_open => part.push(end),
                    _ => parts.push(vec![between(from, to, share[0]), end]),
                }
            }
            is_open = is_inside || is_open && share[0] >= share[1];
        }
    }
    for part in &mut parts {
        part.dedup();
    }
    parts.retain(|part| part.len() > 1);
    parts
}

/// The share along a segment at which another crosses it, away from its ends.
fn crossing([from, to]: [PlanPoint; 2], [a, b]: [PlanPoint; 2]) -> Option<f64> {
    let step = |from: PlanPoint, to: PlanPoint| {
        let [x, y] = [f64::from(from.x_mm), f64::from(from.y_mm)];
        [f64::from(to.x_mm) - x, f64::from(to.y_mm) - y]
    };
    let cross = |[x, y]: [f64; 2], [other_x, other_y]: [f64; 2]| x * other_y - y * other_x;
    let (along, side, gap) = (step(from, to), step(a, b), step(from, a));
    let turn = cross(along, side);
    // Of no use where both run alike: then the sides beside this one cross, or nothing does.
    let (share, at) = (cross(gap, side) / turn, cross(gap, along) / turn);
    (turn != 0.0 && share > 0.0 && share < 1.0 && (0.0..=1.0).contains(&at)).then_some(share)
}

/// From which to which share of a segment it lies within the box.
fn segment([west, south, east, north]: Sides, from: PlanPoint, to: PlanPoint) -> Option<(f64, f64)> {
    let [x, y] = [f64::from(from.x_mm), f64::from(from.y_mm)];
    let [step_x, step_y] = [f64::from(to.x_mm) - x, f64::from(to.y_mm) - y];
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (step, room) in [
        (-step_x, x - f64::from(west)),
        (step_x, f64::from(east) - x),
        (-step_y, y - f64::from(south)),
        (step_y, f64::from(north) - y),
    ] {
        if step < 0.0 {
            enters = enters.max(room / step);
        } else if step > 0.0 {
            leaves = leaves.min(room / step);
        } else if room < 0.0 {
            return None;
        }
    }
    (enters <= leaves).then_some((enters, leaves))
}

/// The part of an outline within the box; `None` where it has no area. Cost: linear.
#[must_use]
pub fn outline([west, south, east, north]: Sides, outline: &[PlanPoint]) -> Option<Vec<PlanPoint>> {
    let mut kept = outline.to_vec();
    for (is_upward, limit, sign) in [(false, west, 1), (false, east, -1), (true, south, 1), (true, north, -1)] {
        let room = |point: PlanPoint| {
            let at = if is_upward { point.y_mm } else { point.x_mm };
            i64::from(sign) * (i64::from(at) - i64::from(limit))
        };
        let mut next = Vec::with_capacity(kept.len());
        for (place, &to) in kept.iter().enumerate() {
            let from = kept[if place == 0 { kept.len() - 1 } else { place - 1 }];
            let (before, after) = (room(from), room(to));
            if (before < 0) != (after < 0) {
                next.push(between(from, to, before as f64 / (before - after) as f64));
            }
            if after >= 0 {
                next.push(to);
            }
        }
        kept = next;
    }
    kept.dedup();
    while kept.len() > 1 && kept.first() == kept.last() {
        kept.pop();
    }
    (kept.len() > 2).then_some(kept)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(points: &[(i32, i32)]) -> Vec<PlanPoint> {
        points.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect()
    }

    const BOX: Sides = [0, 0, 100, 100];

    #[test]
    fn a_line_that_leaves_and_comes_back_falls_apart() {
        let parts = line(BOX, &at(&[(-50, 50), (50, 50), (50, 150), (80, 150), (80, 20)]));
        assert_eq!(parts, [at(&[(0, 50), (50, 50), (50, 100)]), at(&[(80, 100), (80, 20)])]);
        assert_eq!(line(BOX, &at(&[(-50, 120), (120, 120)])), Vec::<Vec<PlanPoint>>::new());
    }

    #[test]
    fn a_line_is_cut_at_an_outline_with_a_notch() {
        let notched = at(&[(0, 0), (100, 0), (100, 100), (50, 40), (0, 100)]);
        let across = line_within(&notched, &at(&[(-50, 70), (150, 70)]));
        assert_eq!(across, [at(&[(0, 70), (25, 70)]), at(&[(75, 70), (100, 70)])]);
        let bent = at(&[(10, 10), (90, 10), (90, 20)]);
        assert_eq!(line_within(&notched, &bent), [bent]);
        assert_eq!(
            line_within(&notched, &at(&[(10, 10), (10, -10)])),
            [at(&[(10, 10), (10, 0)])]
        );
        assert_eq!(
            line_within(&notched, &at(&[(40, 90), (60, 90)])),
            Vec::<Vec<PlanPoint>>::new()
        );
    }

    #[test]
    fn an_outline_is_cut_along_the_box() {
        let cut = outline(BOX, &at(&[(50, 50), (150, 50), (150, 80), (50, 80)])).unwrap();
        assert_eq!(cut, at(&[(50, 50), (100, 50), (100, 80), (50, 80)]));
        assert_eq!(outline(BOX, &at(&[(150, 50), (250, 50), (150, 80)])), None);
        let around = at(&[(-10, -10), (110, -10), (110, 110), (-10, 110)]);
        assert_eq!(outline(BOX, &around).map(|cut| cut.len()), Some(4));
    }
}
