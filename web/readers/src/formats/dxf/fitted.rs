//! Splines that a drawing gives by points alone: a curve laid through them.
//!
//! What lies between the points is not in the file ("DXF Reference", 2012, SPLINE, groups 11 to 13), so the curve is this
//! reader's own, and a fault says so. It is the cubic spline whose parameter is the length of the chords (C. de Boor, "A
//! Practical Guide to Splines", 1978, chapter IV, for the equations of its slopes; J. Ahlberg, E. Nilson, J. Walsh, "The
//! Theory of Splines and Their Applications", 1967, for chords as parameter; both from memory): it passes through every
//! point, with tangent and curvature that do not jump. Its ends follow the tangents that the file gives, or are not bent;
//! one that closes runs on through its first point as through any other.

use super::spline::Spline;
use crate::base::Position;

/// Points nearer to the one before than this, in the drawing's units, are the same: they say nothing of the direction.
const SAME: f64 = 1e-9;

/// Points that a curve passes through.
#[derive(Default)]
pub struct Fitted {
    /// The points, in their order.
    pub points: Vec<Position>,
    /// Which way the curve runs at its first and at its last point, of any length; 0 where the file does not say.
    pub tangents: [Position; 2],
}

/// The equations of slopes: `before`·m₋₁ + `here`·m + `behind`·m₊₁ = `value`.
#[derive(Clone, Copy)]
struct Row {
    before: f64,
    here: f64,
    behind: f64,
    value: Position,
}

impl Fitted {
    /// The curve, in pieces of the third degree; `None` where there are less than two points apart. Cost: linear in the
    /// points.
    pub fn curve(&self, is_closed: bool) -> Option<Spline> {
        let mut points: Vec<Position> = Vec::with_capacity(self.points.len() + 1);
        for point in &self.points {
            if points.last().is_none_or(|last| apart(*last, *point) > SAME) {
                points.push(*point);
            }
        }
        let is_closed = is_closed && points.len() > 2;
        if let (true, [first, .., last]) = (is_closed, points.as_slice()) {
            let first = *first;
            if apart(first, *last) > SAME {
                points.push(first);
            }
        }
        let chords: Vec<f64> = points.windows(2).map(|pair| apart(pair[0], pair[1])).collect();
        let slopes = if is_closed {
            closed_slopes(&points, &chords)?
        } else {
            open_slopes(&points, &chords, self.tangents)?
        };
        Some(pieces(&points, &chords, &slopes)).filter(Spline::is_whole)
    }
}

fn apart(from: Position, to: Position) -> f64 {
    (to[0] - from[0]).hypot(to[1] - from[1])
}

/// Both coordinates by the same rule.
fn each(rule: impl Fn(usize) -> f64) -> Position {
    [rule(0), rule(1)]
}

/// The curvature does not jump at a point between two chords.
fn inner([before, here, behind]: [Position; 3], [first, second]: [f64; 2]) -> Row {
    let value = |axis: usize| {
        let rises = [
            (here[axis] - before[axis]) / first,
            (behind[axis] - here[axis]) / second,
        ];
        3.0 * (second * rises[0] + first * rises[1])
    };
    Row {
        before: second,
        here: 2.0 * (first + second),
        behind: first,
        value: each(value),
    }
}

fn open_slopes(points: &[Position], chords: &[f64], tangents: [Position; 2]) -> Option<Vec<Position>> {
    let end = |tangent: Position, from: Position, to: Position, chord: f64| {
        let length = apart([0.0; 2], tangent);
        // The parameter is a length, so the curve runs at speed 1.
        let (here, other, value) = if length > 0.0 {
            (1.0, 0.0, tangent.map(|part| part / length))
        } else {
            (2.0, 1.0, each(|axis| 3.0 * (to[axis] - from[axis]) / chord))
        };
        (here, other, value)
    };
    let [first, second, ..] = points else { return None };
    let [.., before_last, last] = points else { return None };
    let (here, behind, value) = end(tangents[0], *first, *second, *chords.first()?);
    let mut rows = vec![Row {
        before: 0.0,
        here,
        behind,
        value,
    }];
    for (points, chords) in points.windows(3).zip(chords.windows(2)) {
        rows.push(inner([points[0], points[1], points[2]], [chords[0], chords[1]]));
    }
    let (here, before, value) = end(tangents[1], *before_last, *last, *chords.last()?);
    rows.push(Row {
        before,
        here,
        behind: 0.0,
        value,
    });
    Some(solved(rows))
}

/// Where the last point is the first again. The two numbers beyond the corners of the matrix are taken in by the
/// formula of Sherman and Morrison (1950).
fn closed_slopes(points: &[Position], chords: &[f64]) -> Option<Vec<Position>> {
    let around = points.len() - 1;
    let mut rows = Vec::with_capacity(around);
    for place in 0..around {
        let previous = (place + around - 1) % around;
        rows.push(inner(
            [points[previous], points[place], points[place + 1]],
            [chords[previous], chords[place]],
        ));
    }
    let (above, below) = (rows.first()?.before, rows.last()?.behind);
    let pivot = -rows.first()?.here;
    rows.first_mut()?.here -= pivot;
    rows.last_mut()?.here -= above * below / pivot;
    let mut corner = rows.clone();
    for row in &mut corner {
        row.value = [0.0; 2];
    }
    corner.first_mut()?.value = [pivot; 2];
    corner.last_mut()?.value = [below; 2];
    let (mut slopes, corner) = (solved(rows), solved(corner));
    let beyond = |ends: &[Position], axis: usize| Some(ends.first()?[axis] + above * ends.last()?[axis] / pivot);
    let shares = [0, 1].map(|axis| Some(beyond(&slopes, axis)? / (1.0 + beyond(&corner, axis)?)));
    let shares = [shares[0]?, shares[1]?];
    for (slope, corner) in slopes.iter_mut().zip(&corner) {
        *slope = each(|axis| slope[axis] - shares[axis] * corner[axis]);
    }
    slopes.push(*slopes.first()?);
    Some(slopes)
}

/// The slopes by elimination, which needs no pivots: every row's middle weighs more than its sides.
fn solved(mut rows: Vec<Row>) -> Vec<Position> {
    for place in 1..rows.len() {
        let above = rows[place - 1];
        let row = &mut rows[place];
        let share = row.before / above.here;
        row.here -= share * above.behind;
        row.value = each(|axis| row.value[axis] - share * above.value[axis]);
    }
    let mut slopes = vec![[0.0; 2]; rows.len()];
    let mut behind = [0.0; 2];
    for (row, slope) in rows.iter().zip(&mut slopes).rev() {
        behind = each(|axis| (row.value[axis] - row.behind * behind[axis]) / row.here);
        *slope = behind;
    }
    slopes
}

/// The curve as a spline of the third degree whose pieces meet in the points.
fn pieces(points: &[Position], chords: &[f64], slopes: &[Position]) -> Spline {
    let mut spline = Spline {
        degree: 3,
        knots: vec![0.0; 4],
        points: points.first().copied().into_iter().collect(),
        weights: Vec::new(),
    };
    let mut along = 0.0;
    for ((points, slopes), chord) in points.windows(2).zip(slopes.windows(2)).zip(chords) {
        along += chord;
        spline.knots.extend([along; 3]);
        spline.points.extend([
            each(|axis| points[0][axis] + slopes[0][axis] * chord / 3.0),
            each(|axis| points[1][axis] - slopes[1][axis] * chord / 3.0),
            points[1],
        ]);
    }
    spline.knots.push(along);
    spline
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fitted(points: &[Position], tangents: [Position; 2]) -> Fitted {
        let points = points.to_vec();
        Fitted { points, tangents }
    }

    /// The slopes at the points, from the control points beside them.
    fn slopes(spline: &Spline) -> Vec<Position> {
        let pieces = spline
            .points
            .windows(4)
            .step_by(3)
            .zip(spline.knots[3..].windows(4).step_by(3));
        let first = |(points, knots): (&[Position], &[f64])| {
            each(|axis| 3.0 * (points[1][axis] - points[0][axis]) / (knots[1] - knots[0]))
        };
        pieces.map(first).collect()
    }

    fn is_near(found: &[Position], expected: &[Position]) {
        assert_eq!(found.len(), expected.len());
        for (found, expected) in found.iter().zip(expected) {
            assert!(apart(*found, *expected) < 1e-9, "{found:?} is not {expected:?}");
        }
    }

    const POINTS: [Position; 5] = [[0.0, 0.0], [10.0, 10.0], [30.0, 0.0], [60.0, 5.0], [61.0, 20.0]];
    const NONE: [Position; 2] = [[0.0; 2]; 2];

    // SciPy 1.17.1, CubicSpline over the lengths of chords, computed: its first derivative at each point but the last.
    #[test]
    fn slopes_are_those_that_scipy_computes() {
        let led = [[0.0, 5.0], [0.3, 0.4]];
        is_near(
            &slopes(&fitted(&POINTS, NONE).curve(false).unwrap()),
            &[
                [0.687573870884, 0.964295446584],
                [0.746172601792, 0.192729450392],
                [1.098283640583, -0.507146730731],
                [0.409713035214, 0.800109531052],
            ],
        );
        is_near(
            &slopes(&fitted(&POINTS, led).curve(false).unwrap()),
            &[
                [0.0, 1.0],
                [0.959047863825, 0.185602379114],
                [1.086512176794, -0.526808665708],
                [0.175736146451, 0.902613511731],
            ],
        );
        is_near(
            &slopes(&fitted(&POINTS, led).curve(true).unwrap()),
            &[
                [0.290135909394, 0.592046865627],
                [0.880309587159, 0.319991010464],
                [1.034235871085, -0.575529553496],
                [0.529591318748, 0.949802130384],
                [-0.431685976189, 0.683055206245],
            ],
        );
    }

    #[test]
    fn every_point_is_on_the_curve() {
        for is_closed in [false, true] {
            let found = fitted(&POINTS, NONE).curve(is_closed).unwrap().flattened(0.01).unwrap();
            for point in &POINTS {
                assert!(found.contains(point), "{point:?}");
            }
            assert_eq!(found.first() == found.last(), is_closed);
        }
    }

    #[test]
    fn points_in_a_row_give_the_straight_line() {
        let row: Vec<Position> = [0.0, 1.0, 7.0, 8.0, 30.0]
            .map(|along| [along * 3.0, 5.0 - along])
            .to_vec();
        let curve = fitted(&row, NONE).curve(false).unwrap();
        is_near(&slopes(&curve), &[[3.0 / 10_f64.sqrt(), -1.0 / 10_f64.sqrt()]; 4]);
        for [x, y] in curve.flattened(0.01).unwrap() {
            assert!((x + 3.0 * y - 15.0).abs() < 1e-9);
        }
        let two = fitted(&row[..2], NONE).curve(true).unwrap();
        assert_eq!(two.flattened(0.01).unwrap().last(), Some(&row[1]));
    }

    #[test]
    fn a_quarter_of_a_circle_is_met_where_its_ends_are_led_and_less_so_where_they_are_not() {
        // Points every 22.5 degrees of a circle with a radius of 100; farthest away, SciPy 1.17.1, CubicSpline, computed.
        const FARTHEST: [f64; 3] = [0.761875313, 0.013580447, 0.006434937];
        let around = |count: usize, of: usize| -> Vec<Position> {
            (0..count)
                .map(|place| std::f64::consts::TAU * place as f64 / of as f64)
                .map(|angle| [100.0 * angle.cos(), 100.0 * angle.sin()])
                .collect()
        };
        let off = |curve: Spline| {
            let points = curve.flattened(1e-4).unwrap();
            let away = points.iter().map(|[x, y]| (x.hypot(*y) - 100.0).abs());
            away.fold(0.0, f64::max)
        };
        let quarter = around(5, 16);
        let found = [
            off(fitted(&quarter, NONE).curve(false).unwrap()),
            off(fitted(&quarter, [[0.0, 2.0], [-3.0, 0.0]]).curve(false).unwrap()),
            off(fitted(&around(16, 16), NONE).curve(true).unwrap()),
        ];
        for (found, farthest) in found.iter().zip(FARTHEST) {
            assert!((found - farthest).abs() < 1e-5, "{found} is not {farthest}");
        }
    }

    #[test]
    fn points_that_coincide_count_once_and_one_alone_gives_no_curve() {
        let doubled: Vec<Position> = POINTS.iter().flat_map(|point| [*point; 2]).collect();
        for is_closed in [false, true] {
            let once = fitted(&POINTS, NONE).curve(is_closed).unwrap();
            let twice = fitted(&doubled, NONE).curve(is_closed).unwrap();
            assert_eq!((once.points, once.knots), (twice.points, twice.knots));
            for wrong in [&[][..], &POINTS[..1], &[[1.0, 1.0]; 9]] {
                assert!(fitted(wrong, NONE).curve(is_closed).is_none());
            }
        }
        let mut ring = POINTS.to_vec();
        ring.push(POINTS[0]);
        let closed = fitted(&ring, NONE).curve(true).unwrap();
        assert_eq!(closed.points, fitted(&POINTS, NONE).curve(true).unwrap().points);
    }
}
