//! Where alternatives agree: streets that several of them draw along the same way.

use super::PlanPoint;
use super::document::Alternative;
use super::flatten::flatten;
use super::street::Status;
use crate::number;

/// How near to one another streets of two alternatives count as one, in meters: by hand and on paper nobody draws the
/// same line twice. Less than half the depth of a block. Common practice, no source.
pub const NEAR_M: f64 = 15.0;

/// Cosine of the most that they may turn from one another: 20°. Common practice, no source.
const LEAST_COSINE: f64 = 0.939_692_620_785_908_4;

/// Pieces that streets are looked at in, in meters at most.
const PIECE_M: f64 = 10.0;

/// A stretch of a street along which as many alternatives draw a street.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// Its course, in meters east and north of the plan's origin.
    pub line: Vec<(f64, f64)>,
    /// In how many alternatives a street runs along it, its own included.
    pub alternatives: u32,
}

impl Stretch {
    /// Its length in meters.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        let ends = self.line.iter().zip(self.line.iter().skip(1));
        ends.map(|(from, to)| number::length(to.0 - from.0, to.1 - from.1))
            .sum()
    }
}

/// A straight run of a street.
struct Run {
    alternative: usize,
    street: usize,
    from: (f64, f64),
    /// Its direction, of length one.
    along: (f64, f64),
    length_m: f64,
}

/// The streets of these alternatives in stretches, each with how many alternatives have a street within [`NEAR_M`] that
/// turns from it by 20° at most. Streets to be removed are left out. Each alternative's own lines are given, so a street
/// that three drew appears three times, near itself.
///
/// Cost: the product of the length of all streets and the number of their runs.
#[must_use]
pub fn street_agreement(alternatives: &[&Alternative]) -> Vec<Stretch> {
    let mut runs = Vec::new();
    let mut street = 0;
    for (alternative, held) in alternatives.iter().enumerate() {
        for mark in held.marks.values() {
            let drawn = mark.as_street().filter(|street| street.status != Status::Removed);
            let points = drawn.map(|street| flatten(&street.line)).unwrap_or_default();
            street += 1;
            let ends = points.iter().zip(points.iter().skip(1));
            runs.extend(ends.filter_map(|(from, to)| run(alternative, street, *from, *to)));
        }
    }
    let mut stretches: Vec<Stretch> = Vec::new();
    // The street that the last stretch belongs to.
    let mut last = 0;
    let mut is_near = vec![false; alternatives.len()];
    for run in &runs {
        let pieces = (run.length_m / PIECE_M).ceil().max(1.0) as u32;
        let at = |piece: f64| run.at(run.length_m * piece / f64::from(pieces));
        for piece in 0..pieces {
            let middle = at(f64::from(piece) + 0.5);
            is_near.fill(false);
            for other in &runs {
                is_near[other.alternative] = is_near[other.alternative] || other.runs_along(run, middle);
            }
            let count = is_near.iter().filter(|is_near| **is_near).count() as u32;
            let end = at(f64::from(piece) + 1.0);
            match stretches.last_mut() {
                Some(stretch) if last == run.street && stretch.alternatives == count => stretch.line.push(end),
                _ => stretches.push(Stretch {
                    line: vec![at(f64::from(piece)), end],
                    alternatives: count,
                }),
            }
            last = run.street;
        }
    }
    stretches
}

fn run(alternative: usize, street: usize, from: PlanPoint, to: PlanPoint) -> Option<Run> {
    let (from, to) = (from.to_m(), to.to_m());
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let length_m = number::length(x, y);
    (length_m > 0.0).then_some(Run {
        alternative,
        street,
        from,
        along: (x / length_m, y / length_m),
        length_m,
    })
}

impl Run {
    fn at(&self, along_m: f64) -> (f64, f64) {
        (
            self.from.0 + self.along.0 * along_m,
            self.from.1 + self.along.1 * along_m,
        )
    }

    /// Whether it passes a place of the other near enough and in its direction, or against it.
    fn runs_along(&self, other: &Self, place: (f64, f64)) -> bool {
        let cosine = self.along.0 * other.along.0 + self.along.1 * other.along.1;
        if cosine.abs() < LEAST_COSINE {
            return false;
        }
        let to_place = (place.0 - self.from.0, place.1 - self.from.1);
        let along_m = to_place.0 * self.along.0 + to_place.1 * self.along.1;
        let nearest = self.at(number::within(along_m, 0.0, self.length_m));
        number::length(place.0 - nearest.0, place.1 - nearest.1) <= NEAR_M
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixtures::street;
    use crate::plan::{Mark, MarkId};

    fn in_mm(points: &[(i32, i32)]) -> Vec<(i32, i32)> {
        points.iter().map(|(x, y)| (x * 1000, y * 1000)).collect()
    }

    fn alternative(streets: &[&[(i32, i32)]]) -> Alternative {
        Alternative {
            marks: (0..)
                .map(MarkId)
                .zip(streets.iter().map(|points| Mark::Street(street(&in_mm(points)))))
                .collect(),
            ..Alternative::default()
        }
    }

    /// In millimeters.
    fn lengths(alternatives: &[Alternative], count: u32) -> i64 {
        let all: Vec<&Alternative> = alternatives.iter().collect();
        let stretches = street_agreement(&all);
        let of_these = stretches.iter().filter(|stretch| stretch.alternatives == count);
        (of_these.map(Stretch::length_m).sum::<f64>() * 1e3).round() as i64
    }

    #[test]
    fn streets_side_by_side_agree_and_one_across_does_not() {
        let tables = [
            alternative(&[&[(0, 0), (200, 0)]]),
            // The same way, drawn backward and 10 m off.
            alternative(&[&[(200, 10), (0, 10)]]),
            // Across both.
            alternative(&[&[(100, -100), (100, 100)]]),
        ];
        assert_eq!(lengths(&tables, 2), 400_000);
        assert_eq!(lengths(&tables, 1), 200_000);
        assert_eq!(lengths(&tables, 3), 0);
    }

    #[test]
    fn a_street_agrees_as_far_as_the_other_goes() {
        let tables = [alternative(&[&[(0, 0), (200, 0)]]), alternative(&[&[(0, 5), (100, 5)]])];
        // Within reach of the other's end, to the next piece.
        assert_eq!(lengths(&tables, 2), 100_000 + 110_000);
        assert_eq!(lengths(&tables, 1), 90_000);
    }

    #[test]
    fn an_alternative_agrees_with_itself_once() {
        let tables = [alternative(&[&[(0, 0), (100, 0)], &[(0, 8), (100, 8)]])];
        assert_eq!(lengths(&tables, 1), 200_000);
        assert_eq!(lengths(&tables, 2), 0);
    }

    #[test]
    fn streets_farther_than_near_do_not_agree() {
        let tables = [
            alternative(&[&[(0, 0), (100, 0)]]),
            alternative(&[&[(0, 16), (100, 16)]]),
        ];
        assert_eq!(lengths(&tables, 1), 200_000);
    }

    #[test]
    fn all_lengths_add_up_to_what_is_drawn() {
        let tables = [
            alternative(&[&[(0, 0), (70, 0), (130, 40), (190, 47)]]),
            alternative(&[&[(0, 9), (75, 3), (120, 50)], &[(-50, 2), (20, -1)]]),
        ];
        let all: Vec<&Alternative> = tables.iter().collect();
        let drawn = |points: &[(f64, f64)]| {
            Stretch {
                line: points.to_vec(),
                alternatives: 0,
            }
            .length_m()
        };
        let expected = drawn(&[(0.0, 0.0), (70.0, 0.0), (130.0, 40.0), (190.0, 47.0)])
            + drawn(&[(0.0, 9.0), (75.0, 3.0), (120.0, 50.0)])
            + drawn(&[(-50.0, 2.0), (20.0, -1.0)]);
        let found: f64 = street_agreement(&all).iter().map(Stretch::length_m).sum();
        assert!((found - expected).abs() < 1e-9, "{found} {expected}");
    }
}
