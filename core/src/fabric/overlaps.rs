//! Whether two outlines may share land, told without a boolean operation.

use super::land::Bounds;
use crate::plan::PlanPoint;
use crate::plan::inside::{goes_around, segments_meet};

/// Whether two outlines, each closed by itself, may share land.
///
/// `false` is certain: their edges share no point, and neither goes around a corner of the other. `true` is also said of
/// outlines that only touch. Cost: the edges of each that are near the box of the other, against one another.
#[must_use]
pub fn outlines_may_overlap(one: &[PlanPoint], other: &[PlanPoint]) -> bool {
    let (Some(first), Some(second)) = (one.first(), other.first()) else {
        return false;
    };
    let near = |outline, around: Bounds| {
        edges(outline)
            .filter_map(move |edge| Some((Bounds::of(&edge), edge)).filter(|(bounds, _)| around.meets(bounds)))
    };
    let held: Vec<(Bounds, [PlanPoint; 2])> = near(other, Bounds::of(one)).collect();
    let meets = |(bounds, edge): &(Bounds, [PlanPoint; 2])| {
        let mut held = held.iter();
        held.any(|(around, held)| around.meets(bounds) && segments_meet(*held, *edge))
    };
    near(one, Bounds::of(other)).any(|edge| meets(&edge)) || goes_around(one, *second) || goes_around(other, *first)
}

fn edges(outline: &[PlanPoint]) -> impl Iterator<Item = [PlanPoint; 2]> + '_ {
    let after = outline.iter().cycle().skip(1);
    outline.iter().zip(after).map(|(a, b)| [*a, *b])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(west: i32, south: i32, side: i32) -> Vec<PlanPoint> {
        [(0, 0), (side, 0), (side, side), (0, side)]
            .map(|(x, y)| PlanPoint::new(west + x, south + y))
            .to_vec()
    }

    #[test]
    fn outlines_apart_share_no_land_and_all_others_may() {
        let held = square(0, 0, 100);
        let both = |other: &[PlanPoint]| {
            let there = outlines_may_overlap(&held, other);
            assert_eq!(there, outlines_may_overlap(other, &held));
            there
        };
        assert!(both(&square(50, 50, 100)), "across a corner");
        assert!(both(&square(20, 20, 10)), "inside");
        assert!(both(&square(-50, -50, 300)), "around");
        assert!(both(&square(0, 0, 100)), "the same");
        assert!(both(&square(100, 0, 50)), "side by side");
        assert!(!both(&square(101, 0, 50)));
        assert!(!both(&square(0, -60, 50)));
        // An angle whose box holds the square, and whose land does not.
        let angle = [(-10, -10), (300, -10), (300, -5), (-5, -5), (-5, 300), (-10, 300)];
        assert!(!both(&angle.map(|(x, y)| PlanPoint::new(x, y))));
        assert!(!both(&[]));
    }
}
