//! The exact questions snap rounding asks: where do two spans cross, on the grid, and does a span pass through a pixel?
//!
//! The pixel of a grid point `(x, y)` is half-open: `[x − ½, x + ½) × [y − ½, y + ½)`. Every point of the plane lies in
//! exactly one pixel, so rounding is "half up" on both axes and no decision depends on which span is asked first.

use crate::plan::PlanPoint;

/// A straight piece with `a < b` in the order of points (by x, then y).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Span {
    pub a: PlanPoint,
    pub b: PlanPoint,
}

impl Span {
    /// The span between two points; `None` when they coincide.
    pub fn between(p: PlanPoint, q: PlanPoint) -> Option<Self> {
        match p.cmp(&q) {
            std::cmp::Ordering::Less => Some(Self { a: p, b: q }),
            std::cmp::Ordering::Equal => None,
            std::cmp::Ordering::Greater => Some(Self { a: q, b: p }),
        }
    }

    /// The least and the greatest y of the span.
    pub fn y_range(self) -> (i32, i32) {
        if self.a.y_mm <= self.b.y_mm {
            (self.a.y_mm, self.b.y_mm)
        } else {
            (self.b.y_mm, self.a.y_mm)
        }
    }
}

/// A point packed so that integer order is the order of points.
pub(super) fn key_of(p: PlanPoint) -> u64 {
    let biased = |v: i32| u64::from((v as u32) ^ 0x8000_0000);
    biased(p.x_mm) << 32 | biased(p.y_mm)
}

/// The point a key was made of.
pub(super) fn point_of(key: u64) -> PlanPoint {
    let unbiased = |v: u32| (v ^ 0x8000_0000) as i32;
    PlanPoint::new(unbiased((key >> 32) as u32), unbiased(key as u32))
}

/// The grid point whose pixel holds the crossing of two spans that cross in the interior of both; `None` when they do
/// not. Touching at an end is not a crossing: the end is a vertex already.
pub(super) fn rounded_crossing(first: Span, second: Span) -> Option<PlanPoint> {
    let (a, b, c, d) = (first.a, first.b, second.a, second.b);
    if a.x_mm > d.x_mm || c.x_mm > b.x_mm {
        return None;
    }
    let ((first_low, first_high), (second_low, second_high)) = (first.y_range(), second.y_range());
    if first_low > second_high || second_low > first_high {
        return None;
    }
    let (side_c, side_d) = (a.cross(b, c), a.cross(b, d));
    if !strictly_opposite(side_c, side_d) || !strictly_opposite(c.cross(d, a), c.cross(d, b)) {
        return None;
    }
    // The crossing is c + (d − c)·n/m with n = |side_c| and m = |side_c| + |side_d|.
    let (n, m) = (side_c.abs(), side_c.abs() + side_d.abs());
    Some(PlanPoint::new(
        c.x_mm + rounded_share(d.x_mm - c.x_mm, n, m),
        c.y_mm + rounded_share(d.y_mm - c.y_mm, n, m),
    ))
}

fn strictly_opposite(p: i64, q: i64) -> bool {
    (p < 0 && q > 0) || (p > 0 && q < 0)
}

/// `floor(difference·n/m + ½)` for `0 ≤ n ≤ m < 2⁵⁸` and `|difference| < 2²⁸`, exact.
///
/// A float quotient proposes and integers decide. The proposal is off by less than 10⁻⁶ before truncation, so by at most
/// one after it, and the remainder `2·difference·n + m − 2·m·quotient` is then below `4·m < 2⁶⁰` in size: computed modulo
/// 2⁶⁴ it is exact even where the products wrap.
fn rounded_share(difference: i32, n: i64, m: i64) -> i32 {
    let mut quotient = (f64::from(difference) * (n as f64 / m as f64) + 0.5) as i64;
    let twice = 2 * m;
    let mut remainder = (2 * i64::from(difference))
        .wrapping_mul(n)
        .wrapping_add(m)
        .wrapping_sub(twice.wrapping_mul(quotient));
    while remainder < 0 {
        quotient -= 1;
        remainder += twice;
    }
    while remainder >= twice {
        quotient += 1;
        remainder -= twice;
    }
    quotient as i32
}

/// Whether a span meets the half-open pixel of `p`, exact.
///
/// The ends of a span are pixel centers, so an end is in the pixel only when it is `p`; otherwise the span holds all of
/// what its line has in the pixel, or nothing, and the bounding box tells which. The line meets the open pixel when `p`
/// is nearer than half a pixel in the line's own measure, `2·|cross| < |dx| + |dy|`. At equality it touches one corner
/// only, which counts when it is the lower left one: the line then falls from left to right, below `p`.
pub(super) fn passes(span: Span, p: PlanPoint) -> bool {
    let (a, b) = (span.a, span.b);
    if p.x_mm < a.x_mm || p.x_mm > b.x_mm {
        return false;
    }
    let (low, high) = span.y_range();
    if p.y_mm < low || p.y_mm > high {
        return false;
    }
    let (dx, dy) = (
        i64::from(b.x_mm) - i64::from(a.x_mm),
        i64::from(b.y_mm) - i64::from(a.y_mm),
    );
    let twice_cross = 2 * a.cross(b, p);
    if dy >= 0 {
        twice_cross.abs() < dx + dy
    } else {
        -(dx - dy) < twice_cross && twice_cross <= dx - dy
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::coordinates::LIMIT_MM;

    fn span(a: (i32, i32), b: (i32, i32)) -> Span {
        Span::between(PlanPoint::new(a.0, a.1), PlanPoint::new(b.0, b.1)).unwrap()
    }

    #[test]
    fn crossings_round_half_up_whichever_span_is_named_first() {
        let (rising, falling) = (span((0, 0), (1, 1)), span((0, 1), (1, 0)));
        assert_eq!(rounded_crossing(rising, falling), Some(PlanPoint::new(1, 1)));
        assert_eq!(rounded_crossing(falling, rising), Some(PlanPoint::new(1, 1)));
        let (rising, falling) = (span((-1, -1), (0, 0)), span((-1, 0), (0, -1)));
        assert_eq!(rounded_crossing(rising, falling), Some(PlanPoint::new(0, 0)));
    }

    #[test]
    fn touching_and_overlapping_spans_do_not_cross() {
        assert_eq!(rounded_crossing(span((0, 0), (9, 0)), span((4, 0), (4, 9))), None);
        assert_eq!(rounded_crossing(span((0, 0), (9, 0)), span((4, 0), (20, 0))), None);
        assert_eq!(rounded_crossing(span((0, 0), (9, 9)), span((9, 9), (20, 0))), None);
    }

    #[test]
    fn the_share_is_exact_at_the_limits_of_the_plane() {
        let (n, m) = (79_999_999_999_999_999_i64, 159_999_999_999_999_998);
        assert_eq!(rounded_share(2 * LIMIT_MM, n, m), LIMIT_MM);
        assert_eq!(rounded_share(-2 * LIMIT_MM, n, m), -LIMIT_MM);
        for difference in [-200_000_000, -3, -1, 0, 1, 7, 199_999_999] {
            for (n, m) in [(1_i64, 3_i64), (0, 5), (5, 5), (1, 2), (m / 3, m), (m - 1, m)] {
                let numerator = 2 * i128::from(difference) * i128::from(n) + i128::from(m);
                let expected = numerator.div_euclid(2 * i128::from(m));
                assert_eq!(
                    i128::from(rounded_share(difference, n, m)),
                    expected,
                    "{difference}·{n}/{m}"
                );
            }
        }
    }

    /// The slow way: clip the span to the closed pixel with exact fractions of a common denominator, then look whether
    /// any point of the piece is off the upper and right edges.
    fn passes_slowly(span: Span, p: PlanPoint) -> bool {
        // Everything is scaled by 2 so that pixel borders are whole; the span is a + t·(b − a) with t in [0, 1].
        let scaled = |v: i32| 2 * i128::from(v);
        let (ax, ay) = (scaled(span.a.x_mm), scaled(span.a.y_mm));
        let (dx, dy) = (scaled(span.b.x_mm) - ax, scaled(span.b.y_mm) - ay);
        let (left, bottom) = (scaled(p.x_mm) - 1, scaled(p.y_mm) - 1);
        // t is kept as a fraction (numerator, positive denominator).
        let less = |s: (i128, i128), t: (i128, i128)| s.0 * t.1 < t.0 * s.1;
        let (mut from, mut to) = ((0, 1), (1, 1));
        for (start, step, low) in [(ax, dx, left), (ay, dy, bottom)] {
            let high = low + 2;
            if step == 0 {
                if start < low || start >= high {
                    return false;
                }
                continue;
            }
            let fraction = |border: i128| {
                if step > 0 {
                    (border - start, step)
                } else {
                    (start - border, -step)
                }
            };
            let (enter, leave) = if step > 0 {
                (fraction(low), fraction(high))
            } else {
                (fraction(high), fraction(low))
            };
            from = if less(from, enter) { enter } else { from };
            to = if less(leave, to) { leave } else { to };
        }
        if less(to, from) {
            return false;
        }
        // The piece [from, to] is in the closed pixel; a middle point lies off an edge unless the piece runs along it.
        let middle = (from.0 * to.1 + to.0 * from.1, 2 * from.1 * to.1);
        let inside = |t: (i128, i128)| {
            let (x, y) = (ax * t.1 + t.0 * dx, ay * t.1 + t.0 * dy);
            x >= left * t.1 && x < (left + 2) * t.1 && y >= bottom * t.1 && y < (bottom + 2) * t.1
        };
        inside(from) || inside(to) || inside(middle)
    }

    #[test]
    fn passing_through_a_half_open_pixel_agrees_with_clipping() {
        let range = -3..=3;
        for (bx, by) in range.clone().flat_map(|x| (-3..=3).map(move |y| (x, y))) {
            let Some(span) = Span::between(PlanPoint::new(0, 0), PlanPoint::new(bx, by)) else {
                continue;
            };
            for (px, py) in (-4..=4).flat_map(|x| (-4..=4).map(move |y| (x, y))) {
                let p = PlanPoint::new(px, py);
                assert_eq!(passes(span, p), passes_slowly(span, p), "{span:?} through {p:?}");
            }
        }
    }
}
