//! Splines as lines: points of a curve of weighted control points over knots, by de Boor's algorithm (C. de Boor, "On
//! calculating with B-splines", *Journal of Approximation Theory* 6, 1972), on the control points with their weights.

use crate::base::Position;

/// Highest degree that is read; drawings use 3, some 5.
const HIGHEST_DEGREE: usize = 11;

/// How often a piece between two knots is halved at most.
const DEEPEST: u32 = 10;

/// A control point times its weight, and the weight.
type Weighted = [f64; 3];

/// A curve.
#[derive(Clone, Default)]
pub struct Spline {
    /// The degree of its pieces.
    pub degree: i64,
    /// The knots, none less than the one before.
    pub knots: Vec<f64>,
    /// The control points.
    pub points: Vec<Position>,
    /// Their weights; none where all weigh the same.
    pub weights: Vec<f64>,
}

impl Spline {
    /// Whether the parts make a curve.
    pub fn is_whole(&self) -> bool {
        let count = self.points.len();
        let is_degree = usize::try_from(self.degree).is_ok_and(|degree| {
            (1..=HIGHEST_DEGREE).contains(&degree) && count > degree && self.knots.len() == count + degree + 1
        });
        is_degree
            && self.knots.windows(2).all(|pair| pair[0] <= pair[1])
            && self.weights.iter().all(|weight| *weight > 0.0)
            && (self.weights.is_empty() || self.weights.len() == count)
    }

    /// Points along the curve: no chord is farther from it than `sagitta`, as looked at in its quarters. `None` where the
    /// parts do not make a curve. Cost: linear in the pieces and their points, times the degree squared.
    pub fn flattened(&self, sagitta: f64) -> Option<Vec<Position>> {
        let degree = usize::try_from(self.degree).ok().filter(|_| self.is_whole())?;
        let count = self.points.len();
        let weighted = |(place, [x, y]): (usize, &Position)| {
            let weight = self.weights.get(place).copied().unwrap_or(1.0);
            [x * weight, y * weight, weight]
        };
        let points: Vec<Weighted> = self.points.iter().enumerate().map(weighted).collect();
        let curve = Curve {
            degree,
            knots: &self.knots,
            points: &points,
            sagitta,
        };
        let mut found = vec![curve.at(degree, self.knots[degree])?];
        for span in degree..count {
            let (from, to) = (self.knots[span], self.knots[span + 1]);
            if from < to {
                curve.add_span(span, [from, to], &mut found)?;
            }
        }
        found.dedup();
        Some(found)
    }
}

struct Curve<'a> {
    degree: usize,
    knots: &'a [f64],
    points: &'a [Weighted],
    sagitta: f64,
}

impl Curve<'_> {
    /// The point at a parameter of the piece that begins at this knot.
    fn at(&self, span: usize, parameter: f64) -> Option<Position> {
        let mut parts = [[0.0; 3]; HIGHEST_DEGREE + 1];
        let first = span - self.degree;
        for (part, point) in parts.iter_mut().zip(self.points.get(first..=span)?) {
            *part = *point;
        }
        for level in 1..=self.degree {
            for place in (level..=self.degree).rev() {
                let from = self.knots[first + place];
                let to = self.knots[span + 1 + place - level];
                let share = if from < to {
                    (parameter - from) / (to - from)
                } else {
                    0.0
                };
                let before = parts[place - 1];
                for (part, before) in parts[place].iter_mut().zip(before) {
                    *part = (1.0 - share) * before + share * *part;
                }
            }
        }
        let [x, y, weight] = parts[self.degree];
        let point = [x / weight, y / weight];
        point.iter().all(|value| value.is_finite()).then_some(point)
    }

    /// The points of a piece behind its first: as many chords as its degree, each halved while it is too far off.
    fn add_span(&self, span: usize, [from, to]: [f64; 2], found: &mut Vec<Position>) -> Option<()> {
        let mut start = (from, *found.last()?);
        for step in 1..=self.degree {
            let parameter = if step == self.degree {
                to
            } else {
                from + (to - from) * step as f64 / self.degree as f64
            };
            let end = (parameter, self.at(span, parameter)?);
            self.add_chord(span, start, end, DEEPEST, found)?;
            start = end;
        }
        Some(())
    }

    fn add_chord(
        &self,
        span: usize,
        from: (f64, Position),
        to: (f64, Position),
        deeper: u32,
        found: &mut Vec<Position>,
    ) -> Option<()> {
        let parameter = |share: f64| from.0 + (to.0 - from.0) * share;
        let middle = (parameter(0.5), self.at(span, parameter(0.5))?);
        let quarters = [
            self.at(span, parameter(0.25))?,
            middle.1,
            self.at(span, parameter(0.75))?,
        ];
        let is_near = quarters.iter().all(|point| away(*point, from.1, to.1) <= self.sagitta);
        if is_near || deeper == 0 {
            found.push(to.1);
            return Some(());
        }
        self.add_chord(span, from, middle, deeper - 1, found)?;
        self.add_chord(span, middle, to, deeper - 1, found)
    }
}

/// How far a point is from a chord.
fn away([x, y]: Position, from: Position, to: Position) -> f64 {
    let [right, up] = [to[0] - from[0], to[1] - from[1]];
    let squared = right * right + up * up;
    let along = ((x - from[0]) * right + (y - from[1]) * up) / squared;
    let share = if squared > 0.0 { along.clamp(0.0, 1.0) } else { 0.0 };
    (x - from[0] - share * right).hypot(y - from[1] - share * up)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_of_a_circle_is_one_of_three_weighted_points() {
        // Exact for a conic: weights 1, √½, 1 (L. Piegl, W. Tiller, "The NURBS Book", 1997, section 7.3).
        let spline = Spline {
            degree: 2,
            knots: vec![0.0, 0.0, 0.0, 1.0, 1.0, 1.0],
            points: vec![[10.0, 0.0], [10.0, 10.0], [0.0, 10.0]],
            weights: vec![1.0, 0.5_f64.sqrt(), 1.0],
        };
        let found = spline.flattened(0.001).unwrap();
        assert_eq!((found[0], found[found.len() - 1]), ([10.0, 0.0], [0.0, 10.0]));
        for [x, y] in &found {
            assert!((x.hypot(*y) - 10.0).abs() < 1e-12);
        }
        for pair in found.windows(2) {
            let middle = [(pair[0][0] + pair[1][0]) / 2.0, (pair[0][1] + pair[1][1]) / 2.0];
            assert!(10.0 - middle[0].hypot(middle[1]) < 0.0011);
        }
        assert!(found.len() < 80, "{}", found.len());
    }

    #[test]
    fn parts_that_make_no_curve_are_refused() {
        let spline = |degree, knots: &[f64], points: usize, weights: &[f64]| Spline {
            degree,
            knots: knots.to_vec(),
            points: vec![[0.0, 1.0]; points],
            weights: weights.to_vec(),
        };
        let knots = [0.0, 0.0, 1.0, 1.0];
        assert_eq!(spline(1, &knots, 2, &[]).flattened(0.1), Some(vec![[0.0, 1.0]]));
        for wrong in [
            spline(0, &knots, 2, &[]),
            spline(-3, &knots, 2, &[]),
            spline(1, &knots, 3, &[]),
            spline(1, &[0.0, 1.0, 0.5, 1.0], 2, &[]),
            spline(1, &[f64::NAN; 4], 2, &[]),
            spline(1, &knots, 2, &[1.0]),
            spline(1, &knots, 2, &[1.0, 0.0]),
            spline(90, &[0.0; 200], 109, &[]),
        ] {
            assert_eq!(wrong.flattened(0.1), None);
        }
    }
}
