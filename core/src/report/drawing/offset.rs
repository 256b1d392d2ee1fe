//! Lines beside lines: offsets, shortened ends, even spacing along. In meters, for drawing only; no measure uses them.

/// Sharpest corner an offset follows to its point: the miter may reach this many times the offset.
const MITER_LIMIT: f64 = 3.0;

/// The line `left_m` to the left of `line` (to the right where negative), with mitered corners.
#[must_use]
pub fn beside(line: &[(f64, f64)], left_m: f64) -> Vec<(f64, f64)> {
    let normals: Vec<(f64, f64)> = line.windows(2).map(normal).collect();
    line.iter()
        .enumerate()
        .map(|(index, point)| {
            let before = index.checked_sub(1).and_then(|before| normals.get(before));
            let after = normals.get(index);
            let (x, y) = match (before, after) {
                (Some(before), Some(after)) => miter(*before, *after),
                (Some(only), None) | (None, Some(only)) => *only,
                (None, None) => (0.0, 0.0),
            };
            (point.0 + x * left_m, point.1 + y * left_m)
        })
        .collect()
}

/// The line without its first `start_m` and last `end_m`; empty when nothing is left.
#[must_use]
pub fn shortened(line: &[(f64, f64)], start_m: f64, end_m: f64) -> Vec<(f64, f64)> {
    let length_m = length(line);
    if start_m + end_m >= length_m {
        return Vec::new();
    }
    between(line, start_m, length_m - end_m)
}

/// The part of the line from `from_m` to `to_m` along it.
#[must_use]
pub fn between(line: &[(f64, f64)], from_m: f64, to_m: f64) -> Vec<(f64, f64)> {
    let mut part = Vec::new();
    let mut walked_m = 0.0;
    for ends in line.windows(2) {
        let [a, b] = ends else { continue };
        let run_m = distance(*a, *b);
        let (first, last) = (from_m.max(walked_m), to_m.min(walked_m + run_m));
        if last > first && run_m > 0.0 {
            let at = |along_m: f64| {
                let share = (along_m - walked_m) / run_m;
                (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
            };
            if part.is_empty() {
                part.push(at(first));
            }
            part.push(at(last));
        }
        walked_m += run_m;
    }
    part
}

/// Points about `spacing_m` apart along the line, evenly, half a space from either end.
#[must_use]
pub fn spaced(line: &[(f64, f64)], spacing_m: f64) -> Vec<(f64, f64)> {
    let length_m = length(line);
    let count = (length_m / spacing_m).floor();
    if count < 1.0 {
        return Vec::new();
    }
    let step_m = length_m / count;
    let mut points = Vec::with_capacity(count as usize);
    let mut walked_m = 0.0;
    let mut next_m = step_m / 2.0;
    for ends in line.windows(2) {
        let [a, b] = ends else { continue };
        let run_m = distance(*a, *b);
        while next_m <= walked_m + run_m && run_m > 0.0 {
            let share = (next_m - walked_m) / run_m;
            points.push((a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share));
            next_m += step_m;
        }
        walked_m += run_m;
    }
    points
}

/// Length of the line in meters.
#[must_use]
pub fn length(line: &[(f64, f64)]) -> f64 {
    line.windows(2).fold(0.0, |sum, ends| match ends {
        [a, b] => sum + distance(*a, *b),
        _ => sum,
    })
}

fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    (x * x + y * y).sqrt()
}

/// Unit vector to the left of a run; zero for a run without length.
fn normal(ends: &[(f64, f64)]) -> (f64, f64) {
    let [a, b] = ends else { return (0.0, 0.0) };
    let length_m = distance(*a, *b);
    if length_m > 0.0 {
        (-(b.1 - a.1) / length_m, (b.0 - a.0) / length_m)
    } else {
        (0.0, 0.0)
    }
}

/// The vector to the corner of two lines offset by one to the left, no longer than [`MITER_LIMIT`].
fn miter(before: (f64, f64), after: (f64, f64)) -> (f64, f64) {
    let sum = (before.0 + after.0, before.1 + after.1);
    let squared = sum.0 * sum.0 + sum.1 * sum.1;
    let scale = 2.0 / squared;
    if squared > 0.0 && scale * squared.sqrt() <= MITER_LIMIT {
        (sum.0 * scale, sum.1 * scale)
    } else {
        after
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(one: &[(f64, f64)], other: &[(f64, f64)]) {
        assert_eq!(one.len(), other.len(), "{one:?} {other:?}");
        for (a, b) in one.iter().zip(other) {
            assert!(distance(*a, *b) < 1e-9, "{one:?} {other:?}");
        }
    }

    #[test]
    fn a_corner_is_mitered() {
        let line = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)];
        close(&beside(&line, 2.0), &[(0.0, 2.0), (8.0, 2.0), (8.0, 10.0)]);
        close(&beside(&line, -2.0), &[(0.0, -2.0), (12.0, -2.0), (12.0, 10.0)]);
    }

    #[test]
    fn a_hairpin_does_not_shoot_away() {
        let line = [(0.0, 0.0), (10.0, 0.0), (0.0, 0.01)];
        for point in beside(&line, 2.0) {
            assert!(point.0.abs() < 20.0 && point.1.abs() < 20.0, "{point:?}");
        }
    }

    #[test]
    fn ends_are_cut_off_along_the_line() {
        let line = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)];
        close(&shortened(&line, 4.0, 12.0), &[(4.0, 0.0), (8.0, 0.0)]);
        close(&shortened(&line, 4.0, 3.0), &[(4.0, 0.0), (10.0, 0.0), (10.0, 7.0)]);
        assert!(shortened(&line, 10.0, 10.0).is_empty());
    }

    #[test]
    fn trees_stand_evenly() {
        let line = [(0.0, 0.0), (20.0, 0.0)];
        close(&spaced(&line, 9.0), &[(5.0, 0.0), (15.0, 0.0)]);
        assert!(spaced(&line, 30.0).is_empty());
        assert_eq!(spaced(&[(0.0, 0.0), (7.0, 0.0), (7.0, 20.0)], 9.0).len(), 3);
    }
}
