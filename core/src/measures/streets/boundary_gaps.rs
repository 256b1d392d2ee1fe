//! How far apart the ways in and out lie along the site's boundary.
//!
//! Every way in is laid on the boundary at the point nearest to it; the gaps are the lengths of boundary from each to the
//! next, all the way round. Published rules for connections to a neighboring site ask for their mean and their longest.
//! What is not counted: boundary that can not be connected across (water, rail, steep land), which such rules leave out,
//! is measured here with the rest.

use super::ways::CountedPlace;
use crate::number;
use crate::order;
use crate::plan::PlanPoint;
use crate::say;

/// The gaps from each way in to the next, in order along the boundary from its first corner; each at the way it begins
/// at, with its length in meters. One way in has one gap, the whole boundary; none without a boundary or a way in.
///
/// Cost: every way in against every side of the boundary.
#[must_use]
pub fn boundary_gaps(boundary: &[PlanPoint], ways_in: &[CountedPlace]) -> Vec<CountedPlace> {
    let mut placed: Vec<(f64, usize)> = Vec::new();
    for (way, held) in ways_in.iter().enumerate() {
        placed.extend(along_mm(boundary, held.at).map(|along_mm| (along_mm, way)));
    }
    order::sort_by(&mut placed, |a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let whole_mm: f64 = sides(boundary).map(|[a, b]| length_mm(a, b)).sum();
    let gap = |place: usize| {
        let (from_mm, way) = placed[place];
        let next = placed.get(place + 1);
        let to_mm = next.map_or(whole_mm + placed[0].0, |(along_mm, _)| *along_mm);
        CountedPlace {
            title: say!("measures-gap-from", place = ways_in[way].title),
            at: ways_in[way].at,
            count: (to_mm - from_mm) / 1e3,
        }
    };
    (0..placed.len()).map(gap).collect()
}

/// How far along a ring the point of it nearest to `point` lies, in millimeters; `None` for no ring.
fn along_mm(ring: &[PlanPoint], point: PlanPoint) -> Option<f64> {
    let mut nearest: Option<(f64, f64)> = None;
    let mut start_mm = 0.0;
    for [a, b] in sides(ring) {
        let (dx, dy) = difference(a, b);
        let (px, py) = difference(a, point);
        let length_mm = length_mm(a, b);
        let share = if length_mm > 0.0 {
            ((px * dx + py * dy) / (length_mm * length_mm)).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let away_mm = number::length(px - share * dx, py - share * dy);
        if nearest.is_none_or(|(least_mm, _)| away_mm < least_mm) {
            nearest = Some((away_mm, start_mm + share * length_mm));
        }
        start_mm += length_mm;
    }
    nearest.map(|(_, along_mm)| along_mm)
}

fn sides(ring: &[PlanPoint]) -> impl Iterator<Item = [PlanPoint; 2]> + '_ {
    let ahead = ring.iter().skip(1).chain(ring.first());
    ring.iter().zip(ahead).map(|(a, b)| [*a, *b])
}

fn difference(from: PlanPoint, to: PlanPoint) -> (f64, f64) {
    (
        f64::from(to.x_mm) - f64::from(from.x_mm),
        f64::from(to.y_mm) - f64::from(from.y_mm),
    )
}

fn length_mm(a: PlanPoint, b: PlanPoint) -> f64 {
    let (x, y) = difference(a, b);
    number::length(x, y)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measures::form::tests::{check, feet, rectangle_ft};

    const FOOT_M: f64 = 0.3048;

    fn gaps_ft(boundary: &[PlanPoint], ways: &[PlanPoint]) -> Vec<f64> {
        let way = |at: &PlanPoint| CountedPlace {
            title: "way in".to_owned(),
            at: *at,
            count: 1.0,
        };
        let ways: Vec<CountedPlace> = ways.iter().map(way).collect();
        let gaps = boundary_gaps(boundary, &ways);
        gaps.iter().map(|gap| gap.count / FOOT_M).collect()
    }

    /// Check case N-A13. Derived from the LEED v4 plan rating for neighborhoods, prerequisite Smart location: connections
    /// across a boundary with an adjacent site on average every 600 feet and at least every 800 feet. A site of 500 by 400
    /// feet has 1,800 feet of boundary.
    #[test]
    fn n_a13_connections_to_an_adjacent_site() {
        let site = rectangle_ft(0, 0, 500, 400);
        let passes = |ways: &[PlanPoint], expected: [f64; 3]| {
            let gaps = gaps_ft(&site, ways);
            assert_eq!(gaps.len(), 3);
            for (gap, expected) in gaps.iter().zip(expected) {
                check("gap", *gap, expected, 1e-9);
            }
            let mean = gaps.iter().sum::<f64>() / 3.0;
            check("mean", mean, 600.0, 1e-9);
            mean <= 600.0 + 1e-9 && gaps.iter().all(|gap| *gap <= 800.0)
        };
        // From the southwestern corner: 0, 500 and 1,200 feet along; 0, 400 and 1,300.
        assert!(passes(
            &[feet(0, 0), feet(500, 0), feet(200, 400)],
            [500.0, 700.0, 600.0]
        ));
        assert!(!passes(
            &[feet(0, 0), feet(400, 0), feet(100, 400)],
            [400.0, 900.0, 500.0]
        ));
    }

    #[test]
    fn ways_off_the_boundary_are_laid_on_it_and_one_way_has_it_all() {
        let site = rectangle_ft(0, 0, 500, 400);
        let near = gaps_ft(&site, &[feet(250, -20), feet(520, 200)]);
        check("first", near[0], 250.0 + 200.0, 1e-9);
        check("second", near[1], 1_800.0 - 450.0, 1e-9);
        check("the whole", gaps_ft(&site, &[feet(250, 0)])[0], 1_800.0, 1e-9);
        assert!(gaps_ft(&[], &[feet(0, 0)]).is_empty());
        assert!(gaps_ft(&site, &[]).is_empty());
    }
}
