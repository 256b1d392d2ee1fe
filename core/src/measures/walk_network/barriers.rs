//! Where a barrier cuts a street: everywhere they cross but at a crossing that is drawn, and where the street passes
//! over or under (is not on the ground).

use crate::order;
use crate::plan::PlanPoint;

/// A place where a line crosses another, along the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// How far along the second line, in micrometers.
    pub along_um: u64,
    /// Where, to the nearest millimeter.
    pub at: PlanPoint,
}

/// Where `barrier` crosses a street whose points lie `along_um` along it: in order, each place once.
///
/// Decided by exact signs, a point on a line taken as on its left: a street that only touches the barrier with a bend
/// is not cut, one that ends on it is cut there when it comes from the right, and no crossing is found twice.
#[must_use]
pub fn cuts(barrier: &[PlanPoint], street: &[(PlanPoint, u64)]) -> Vec<Cut> {
    let mut found: Vec<Cut> = Vec::new();
    for piece in street.windows(2) {
        let [(p, start_um), (q, end_um)] = [piece[0], piece[1]];
        for wall in barrier.windows(2) {
            let [a, b] = [wall[0], wall[1]];
            if apart(p.x_mm, q.x_mm, a.x_mm, b.x_mm) || apart(p.y_mm, q.y_mm, a.y_mm, b.y_mm) {
                continue;
            }
            let (of_p, of_q) = (a.cross(b, p), a.cross(b, q));
            let (of_a, of_b) = (p.cross(q, a), p.cross(q, b));
            if (of_p >= 0) == (of_q >= 0) || (of_a >= 0) == (of_b >= 0) {
                continue;
            }
            let share = of_p as f64 / (of_p as f64 - of_q as f64);
            let between = |from: i32, to: i32| f64::from(from) + share * (f64::from(to) - f64::from(from));
            found.push(Cut {
                along_um: start_um + (share * (end_um - start_um) as f64).round() as u64,
                at: PlanPoint::new(
                    between(p.x_mm, q.x_mm).round() as i32,
                    between(p.y_mm, q.y_mm).round() as i32,
                ),
            });
        }
    }
    order::sort_by_key(&mut found, |cut| cut.along_um);
    // Twice at one place is there and back: a touch.
    let groups = found.chunk_by(|a, b| a.along_um == b.along_um);
    groups
        .filter(|group| group.len() % 2 == 1)
        .map(|group| group[0])
        .collect()
}

fn apart(p: i32, q: i32, a: i32, b: i32) -> bool {
    p.max(q) < a.min(b) || a.max(b) < p.min(q)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(points: &[(i32, i32)]) -> Vec<PlanPoint> {
        points.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect()
    }

    fn along(points: &[(i32, i32)]) -> Vec<(PlanPoint, u64)> {
        let points = line(points);
        let mut sum = 0;
        let mut held = Vec::new();
        for (place, point) in points.iter().enumerate() {
            sum += place
                .checked_sub(1)
                .map_or(0, |before| points[before].distance_um(*point));
            held.push((*point, sum));
        }
        held
    }

    #[track_caller]
    fn check(barrier: &[(i32, i32)], street: &[(i32, i32)], expected_um: &[u64]) {
        let found: Vec<u64> = cuts(&line(barrier), &along(street))
            .iter()
            .map(|cut| cut.along_um)
            .collect();
        assert_eq!(found, expected_um);
        let mut turned = line(barrier);
        turned.reverse();
        assert_eq!(
            cuts(&turned, &along(street)).len(),
            expected_um.len(),
            "drawn the other way"
        );
    }

    #[test]
    fn a_barrier_cuts_a_street_once_wherever_they_cross() {
        check(&[(50, -10), (50, 10)], &[(0, 0), (100, 0)], &[50_000]);
        // Through a bend of the street, and through a bend of the barrier.
        check(&[(50, -10), (50, 10)], &[(0, 0), (50, 0), (100, 5)], &[50_000]);
        check(&[(40, -10), (50, 0), (40, 10)], &[(0, 3), (100, 3)], &[47_000]);
        check(&[(50, -10), (50, 0), (60, 10)], &[(0, 0), (100, 0)], &[50_000]);
        // There and back again.
        check(
            &[(50, -10), (50, 10)],
            &[(0, 0), (100, 0), (100, 5), (0, 5)],
            &[50_000, 155_000],
        );
        // Beside it, and along it.
        check(&[(50, 1), (50, 10)], &[(0, 0), (100, 0)], &[]);
        check(&[(20, 0), (70, 0)], &[(0, 0), (100, 0)], &[]);
    }

    #[test]
    fn a_bend_that_only_touches_is_not_cut() {
        check(&[(0, 0), (100, 0)], &[(20, 10), (50, 0), (80, 10)], &[]);
        // Two streets that end on a barrier from either side: one of them is cut there.
        let barrier = line(&[(0, 0), (100, 0)]);
        let from_left = cuts(&barrier, &along(&[(50, 10), (50, 0)]));
        let from_right = cuts(&barrier, &along(&[(50, -10), (50, 0)]));
        assert_eq!((from_left.len(), from_right.len()), (0, 1));
        assert_eq!(from_right[0].along_um, 10_000);
    }
}
