//! What of a line or an area lies within a box.
//!
//! Lines by the parameters at which a segment enters and leaves (Liang and Barsky, "A new concept and method for line
//! clipping", *ACM Transactions on Graphics* 3, 1984); areas side by side of the box (Sutherland and Hodgman, "Reentrant
//! polygon clipping", *Communications of the ACM* 17, 1974), which leaves seams along the box where an area falls apart.

use crate::base::Position;

/// West, south, east, north.
pub type Sides = [f64; 4];

/// Whether a position lies within the box or on its edge.
#[must_use]
pub fn holds(sides: &Sides, [x, y]: Position) -> bool {
    let [west, south, east, north] = *sides;
    (west..=east).contains(&x) && (south..=north).contains(&y)
}

/// The parts of a line within the box, in its direction.
#[must_use]
pub fn line(sides: &Sides, line: &[Position]) -> Vec<Vec<Position>> {
    let mut parts: Vec<Vec<Position>> = Vec::new();
    let mut open = false;
    for pair in line.windows(2) {
        let [from, to] = [pair[0], pair[1]];
        let Some((enters, leaves)) = segment(sides, from, to) else {
            open = false;
            continue;
        };
        let along = |share: f64| {
            if share <= 0.0 {
                from
            } else if share >= 1.0 {
                to
            } else {
                [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
            }
        };
        match parts.last_mut() {
            Some(part) if open && enters <= 0.0 => part.push(along(leaves)),
            _ => parts.push(vec![along(enters), along(leaves)]),
        }
        open = leaves >= 1.0;
    }
    parts.retain(|part| part.windows(2).any(|pair| pair[0] != pair[1]));
    parts
}

/// From which to which share of a segment it lies within the box.
fn segment(sides: &Sides, from: Position, to: Position) -> Option<(f64, f64)> {
    let [west, south, east, north] = *sides;
    let [step_x, step_y] = [to[0] - from[0], to[1] - from[1]];
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (step, room) in [
        (-step_x, from[0] - west),
        (step_x, east - from[0]),
        (-step_y, from[1] - south),
        (step_y, north - from[1]),
    ] {
        if step == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if step < 0.0 {
            enters = enters.max(room / step);
        } else {
            leaves = leaves.min(room / step);
        }
    }
    (enters <= leaves).then_some((enters, leaves))
}

/// The part of a ring within the box; empty where none is. The ring is closed by itself.
#[must_use]
pub fn ring(sides: &Sides, ring: &[Position]) -> Vec<Position> {
    let [west, south, east, north] = *sides;
    let mut kept = ring.to_vec();
    for (axis, limit, sign) in [(0, west, 1.0), (0, east, -1.0), (1, south, 1.0), (1, north, -1.0)] {
        let inside = |point: &Position| sign * (point[axis] - limit) >= 0.0;
        let mut next = Vec::with_capacity(kept.len());
        for (index, point) in kept.iter().enumerate() {
            let before = kept[(index + kept.len() - 1) % kept.len()];
            if inside(point) != inside(&before) {
                let share = (limit - before[axis]) / (point[axis] - before[axis]);
                let other = 1 - axis;
                let mut crossing = before;
                crossing[axis] = limit;
                crossing[other] = before[other] + share * (point[other] - before[other]);
                next.push(crossing);
            }
            if inside(point) {
                next.push(*point);
            }
        }
        kept = next;
    }
    if kept.len() < 3 { Vec::new() } else { kept }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOX: Sides = [0.0, 0.0, 10.0, 10.0];

    #[test]
    fn a_line_that_leaves_and_comes_back_is_two_parts() {
        let bent = [[5.0, 5.0], [15.0, 5.0], [15.0, 8.0], [5.0, 8.0], [4.0, 8.0]];
        let parts = line(&BOX, &bent);
        assert_eq!(
            parts,
            [vec![[5.0, 5.0], [10.0, 5.0]], vec![[10.0, 8.0], [5.0, 8.0], [4.0, 8.0]]]
        );
        assert_eq!(line(&BOX, &[[-5.0, 5.0], [15.0, 5.0]]), [vec![[0.0, 5.0], [10.0, 5.0]]]);
        assert!(line(&BOX, &[[-5.0, 5.0], [5.0, 16.0]]).is_empty());
        assert_eq!(line(&BOX, &bent[3..]), [bent[3..].to_vec()]);
    }

    #[test]
    fn a_ring_is_cut_to_the_box() {
        let square = [[5.0, 5.0], [15.0, 5.0], [15.0, 15.0], [5.0, 15.0]];
        let mut kept = ring(&BOX, &square);
        kept.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
        assert_eq!(kept, [[5.0, 5.0], [5.0, 10.0], [10.0, 5.0], [10.0, 10.0]]);
        assert!(ring(&BOX, &[[11.0, 0.0], [12.0, 0.0], [12.0, 5.0]]).is_empty());
    }
}
