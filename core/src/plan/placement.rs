//! Where a base image lies: laid by points that are known both on the picture and on the plan.
//!
//! A picture is a square of shares, right and down from its top left corner, that a projective map takes to its four
//! corners on the plan. One pair of points shifts it, two turn and scale it too, three stretch it (an affine map), and
//! four straighten a photograph taken from the side (a projective map).
//!
//! Formula: the map of the unit square to a quadrilateral is P. Heckbert, "Fundamentals of Texture Mapping and Image
//! Warping", 1989, section 2.2.3, from memory; a map of four points to four is that of the second four after the inverse
//! of the first's.

use std::fmt;

use super::PlanPoint;
use crate::say;

/// A place on a picture: shares of its width from the left and of its height from the top.
pub type OnPicture = [f64; 2];

/// A projective map of the plane, rows of a matrix that takes (x, y, 1).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement([[f64; 3]; 3]);

/// Why points do not say where a picture lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlacementFault {
    /// Two of them lie on one another.
    Together,
    /// Three of them lie in one line, or nearly.
    InLine,
    /// The picture would be torn: a corner of it would lie beyond the horizon or the plan.
    Torn,
}

impl fmt::Display for PlacementFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Together => say!("plan-picture-together"),
            Self::InLine => say!("plan-picture-in-line"),
            Self::Torn => say!("plan-picture-torn"),
        })
    }
}

impl std::error::Error for PlacementFault {}

/// Points nearer than this, in meters, can not turn or scale a picture.
const LEAST_APART_M: f64 = 0.5;

impl Placement {
    /// The map of a picture's shares to a plan's meters, from its corners: top left, top right, bottom right, bottom
    /// left.
    ///
    /// # Errors
    /// [`PlacementFault`] when three corners lie in one line.
    pub fn of_corners(corners: &[PlanPoint; 4]) -> Result<Self, PlacementFault> {
        Self::of_quadrilateral(corners.map(PlanPoint::to_m))
    }

    fn of_quadrilateral([a, b, c, d]: [(f64, f64); 4]) -> Result<Self, PlacementFault> {
        let doubled =
            |p: (f64, f64), q: (f64, f64), r: (f64, f64)| ((q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0)).abs();
        let least = [doubled(a, b, c), doubled(b, c, d), doubled(c, d, a), doubled(d, a, b)];
        if least.into_iter().any(|area| area < LEAST_APART_M * LEAST_APART_M) {
            return Err(PlacementFault::InLine);
        }
        let (dx1, dx2, sx) = (b.0 - c.0, d.0 - c.0, a.0 - b.0 + c.0 - d.0);
        let (dy1, dy2, sy) = (b.1 - c.1, d.1 - c.1, a.1 - b.1 + c.1 - d.1);
        // Twice the area of the triangle b, c, d, which is none of the small ones.
        let whole = dx1 * dy2 - dx2 * dy1;
        let g = (sx * dy2 - dx2 * sy) / whole;
        let h = (dx1 * sy - sx * dy1) / whole;
        Ok(Self([
            [b.0 - a.0 + g * b.0, d.0 - a.0 + h * d.0, a.0],
            [b.1 - a.1 + g * b.1, d.1 - a.1 + h * d.1, a.1],
            [g, h, 1.0],
        ]))
    }

    /// Where a place on the picture lies, in meters; not finite beyond the horizon.
    #[must_use]
    pub fn on_plan(&self, [right, down]: OnPicture) -> (f64, f64) {
        let [x, y, _] = self.applied(right, down);
        (x, y)
    }

    /// The place on the picture that lies at `(x, y)` meters.
    #[must_use]
    pub fn on_picture(&self, (x_m, y_m): (f64, f64)) -> OnPicture {
        let [right, down, _] = self.inverse().applied(x_m, y_m);
        [right, down]
    }

    /// Where a point goes, and by what it was divided.
    fn applied(&self, x: f64, y: f64) -> [f64; 3] {
        let [a, b, c] = self.0.map(|[along, across, fixed]| along * x + across * y + fixed);
        [a / c, b / c, c]
    }

    /// The inverse but for a factor, which a projective map does not feel.
    fn inverse(&self) -> Self {
        let m = &self.0;
        let minor = |row: usize, column: usize| {
            let (r, s) = ((row + 1) % 3, (row + 2) % 3);
            let (c, d) = ((column + 1) % 3, (column + 2) % 3);
            m[r][c] * m[s][d] - m[r][d] * m[s][c]
        };
        let row = |column: usize| [minor(0, column), minor(1, column), minor(2, column)];
        Self([row(0), row(1), row(2)])
    }

    /// This map, and `then` after it.
    fn then(&self, then: &Self) -> Self {
        let cell = |row: [f64; 3], column: usize| {
            row[0] * self.0[0][column] + row[1] * self.0[1][column] + row[2] * self.0[2][column]
        };
        Self(then.0.map(|row| [cell(row, 0), cell(row, 1), cell(row, 2)]))
    }
}

/// The corners of a picture that lies at `corners`, moved so that each place on it comes to its point of the plan: the
/// first of a pair is where it lies now. Of more than four pairs the first four count. O(1).
///
/// ```
/// use hobnail_core::plan::PlanPoint;
/// use hobnail_core::plan::placement::moved;
/// let at = |x_m: i32, y_m: i32| PlanPoint::new(x_m * 1000, y_m * 1000);
/// let square = [at(0, 10), at(10, 10), at(10, 0), at(0, 0)];
/// // The lower left corner stays, the upper left goes east: a quarter turn to the right.
/// let pairs = [(at(0, 0), at(0, 0)), (at(0, 10), at(10, 0))];
/// assert_eq!(moved(&square, &pairs), Ok([at(10, 0), at(10, -10), at(0, -10), at(0, 0)]));
/// ```
///
/// # Errors
/// [`PlacementFault`] when the pairs do not say where it lies.
pub fn moved(corners: &[PlanPoint; 4], pairs: &[(PlanPoint, PlanPoint)]) -> Result<[PlanPoint; 4], PlacementFault> {
    let pairs: Vec<[(f64, f64); 2]> = pairs.iter().map(|(now, then)| [now.to_m(), then.to_m()]).collect();
    let map = match pairs.as_slice() {
        [] => return Ok(*corners),
        [[now, then]] => Placement([[1.0, 0.0, then.0 - now.0], [0.0, 1.0, then.1 - now.1], [0.0, 0.0, 1.0]]),
        [first, second] => similarity(first, second)?,
        [first, second, third] => {
            // The fourth corner of a parallelogram keeps the map affine.
            let fourth = |side: usize| {
                let (p, q, r) = (first[side], second[side], third[side]);
                (p.0 + r.0 - q.0, p.1 + r.1 - q.1)
            };
            projective([first, second, third, &[fourth(0), fourth(1)]])?
        }
        [first, second, third, fourth, ..] => projective([first, second, third, fourth])?,
    };
    let divided = corners.map(|corner| {
        let (x, y) = corner.to_m();
        map.applied(x, y)
    });
    // Where the picture crosses the horizon, corners are divided by numbers of both signs.
    let is_whole = divided.iter().all(|[.., by]| by * divided[0][2] > 0.0);
    let point = |[x, y, _]: [f64; 3]| PlanPoint::checked_from_m(x, y);
    match divided.map(point) {
        [Some(a), Some(b), Some(c), Some(d)] if is_whole => Placement::of_corners(&[a, b, c, d]).map(|_| [a, b, c, d]),
        _ => Err(PlacementFault::Torn),
    }
}

/// A shift, a turn and a scale that take two points to theirs.
fn similarity(first: &[(f64, f64); 2], second: &[(f64, f64); 2]) -> Result<Placement, PlacementFault> {
    let run = |side: usize| (second[side].0 - first[side].0, second[side].1 - first[side].1);
    let (now, then) = (run(0), run(1));
    let squared = |(x, y): (f64, f64)| x * x + y * y;
    if squared(now).min(squared(then)) < LEAST_APART_M * LEAST_APART_M {
        return Err(PlacementFault::Together);
    }
    // The quotient of the runs as complex numbers.
    let along = (then.0 * now.0 + then.1 * now.1) / squared(now);
    let turned = (then.1 * now.0 - then.0 * now.1) / squared(now);
    let [(x, y), (to_x, to_y)] = *first;
    Ok(Placement([
        [along, -turned, to_x - along * x + turned * y],
        [turned, along, to_y - turned * x - along * y],
        [0.0, 0.0, 1.0],
    ]))
}

/// The map that takes four points to theirs.
fn projective(pairs: [&[(f64, f64); 2]; 4]) -> Result<Placement, PlacementFault> {
    let now = Placement::of_quadrilateral(pairs.map(|pair| pair[0]))?;
    let then = Placement::of_quadrilateral(pairs.map(|pair| pair[1]))?;
    Ok(now.inverse().then(&then))
}

/// The corners of a picture scaled about the first of two points on the plan, so that the second comes to lie this many
/// meters from it.
///
/// # Errors
/// [`PlacementFault`] when the points lie on one another or the picture would reach beyond the plan.
pub fn scaled(
    corners: &[PlanPoint; 4],
    from: PlanPoint,
    to: PlanPoint,
    length_m: f64,
) -> Result<[PlanPoint; 4], PlacementFault> {
    let ((x, y), (to_x, to_y)) = (from.to_m(), to.to_m());
    let now_m = ((to_x - x) * (to_x - x) + (to_y - y) * (to_y - y)).sqrt();
    let factor = length_m / now_m;
    if now_m < LEAST_APART_M || !factor.is_finite() {
        return Err(PlacementFault::Together);
    }
    let then = PlanPoint::checked_from_m(x + (to_x - x) * factor, y + (to_y - y) * factor);
    moved(corners, &[(from, from), (to, then.ok_or(PlacementFault::Torn)?)])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(x_m: f64, y_m: f64) -> PlanPoint {
        PlanPoint::checked_from_m(x_m, y_m).unwrap()
    }

    fn lying() -> [PlanPoint; 4] {
        [at(-60.0, 45.0), at(60.0, 45.0), at(60.0, -45.0), at(-60.0, -45.0)]
    }

    fn is_near(one: (f64, f64), other: (f64, f64)) -> bool {
        (one.0 - other.0).abs() < 0.002 && (one.1 - other.1).abs() < 0.002
    }

    #[test]
    fn corners_and_places_between_come_where_they_are_laid() {
        let corners = [at(0.0, 100.0), at(140.0, 90.0), at(120.0, -10.0), at(-20.0, 0.0)];
        let placement = Placement::of_corners(&corners).unwrap();
        for (share, corner) in [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]]
            .into_iter()
            .zip(corners)
        {
            assert!(is_near(placement.on_plan(share), corner.to_m()));
        }
        for share in [[0.5, 0.5], [0.1, 0.9], [0.73, 0.21]] {
            let [right, down] = placement.on_picture(placement.on_plan(share));
            assert!((right - share[0]).abs() < 1e-12 && (down - share[1]).abs() < 1e-12);
        }
    }

    /// Lines stay lines under a projective map, so the diagonals of a picture meet where those of its corners do: derived.
    #[test]
    fn the_middle_of_a_picture_lies_where_its_diagonals_meet() {
        let corners = [at(0.0, 80.0), at(100.0, 120.0), at(90.0, 0.0), at(10.0, 10.0)];
        let [a, b, c, d] = corners.map(PlanPoint::to_m);
        let cross = |p: (f64, f64), q: (f64, f64)| p.0 * q.1 - p.1 * q.0;
        let (r, s) = ((c.0 - a.0, c.1 - a.1), (d.0 - b.0, d.1 - b.1));
        let share = cross((b.0 - a.0, b.1 - a.1), s) / cross(r, s);
        let meet = (a.0 + share * r.0, a.1 + share * r.1);
        assert!(is_near(
            Placement::of_corners(&corners).unwrap().on_plan([0.5, 0.5]),
            meet
        ));
    }

    #[test]
    fn every_pair_brings_its_place_to_its_point() {
        let pairs = [
            (at(-50.0, 40.0), at(200.0, 310.0)),
            (at(55.0, 30.0), at(330.0, 290.0)),
            (at(40.0, -42.0), at(310.0, 180.0)),
            (at(-52.0, -38.0), at(190.0, 200.0)),
        ];
        let before = Placement::of_corners(&lying()).unwrap();
        for count in 1..=4 {
            let after = Placement::of_corners(&moved(&lying(), &pairs[..count]).unwrap()).unwrap();
            for (now, then) in &pairs[..count] {
                let came = after.on_plan(before.on_picture(now.to_m()));
                assert!(is_near(came, then.to_m()), "{count} {came:?}");
            }
        }
    }

    #[test]
    fn two_pairs_keep_its_shape_and_three_keep_its_sides_parallel() {
        let pairs = [
            (at(-50.0, 40.0), at(200.0, 310.0)),
            (at(55.0, 30.0), at(330.0, 290.0)),
            (at(40.0, -42.0), at(310.0, 180.0)),
        ];
        let length = |p: PlanPoint, q: PlanPoint| {
            let ((x, y), (to_x, to_y)) = (p.to_m(), q.to_m());
            ((to_x - x) * (to_x - x) + (to_y - y) * (to_y - y)).sqrt()
        };
        let [a, b, c, d] = moved(&lying(), &pairs[..2]).unwrap();
        assert!((length(a, b) / length(b, c) - 120.0 / 90.0).abs() < 1e-4);
        assert!((length(a, c) / length(b, d) - 1.0).abs() < 1e-4);
        let [a, b, c, d] = moved(&lying(), &pairs).unwrap();
        let run = |p: PlanPoint, q: PlanPoint| (q.to_m().0 - p.to_m().0, q.to_m().1 - p.to_m().1);
        assert!(is_near(run(a, b), run(d, c)));
    }

    #[test]
    fn a_known_length_scales_about_its_first_end() {
        let corners = scaled(&lying(), at(-60.0, -45.0), at(60.0, -45.0), 300.0).unwrap();
        assert_eq!(corners[3], at(-60.0, -45.0));
        assert_eq!(corners[1], at(240.0, 180.0));
        assert_eq!(
            scaled(&lying(), at(1.0, 1.0), at(1.0, 1.0), 10.0),
            Err(PlacementFault::Together)
        );
    }

    #[test]
    fn what_does_not_say_where_it_lies_is_refused() {
        let together = [(at(0.0, 0.0), at(0.0, 0.0)), (at(0.0, 0.1), at(50.0, 0.0))];
        assert_eq!(moved(&lying(), &together), Err(PlacementFault::Together));
        let in_line = [
            (at(0.0, 0.0), at(0.0, 0.0)),
            (at(10.0, 0.0), at(10.0, 0.0)),
            (at(20.0, 0.0), at(20.0, 5.0)),
        ];
        assert_eq!(moved(&lying(), &in_line), Err(PlacementFault::InLine));
        // Parallel sides that are to meet within the picture: it would reach beyond the horizon.
        let torn = [
            (at(-10.0, 10.0), at(-1.0, 10.0)),
            (at(10.0, 10.0), at(1.0, 10.0)),
            (at(10.0, -10.0), at(30.0, -10.0)),
            (at(-10.0, -10.0), at(-30.0, -10.0)),
        ];
        assert_eq!(moved(&lying(), &torn), Err(PlacementFault::Torn));
    }
}
