//! Where a wide or fast street passes an intersection: who has to wait to get where.
//!
//! The street parts what meets there into two hands. Walking along it costs no wait; what lies on either hand joins it
//! at half its wait, so that crossing from hand to hand costs the whole of it, and two streets on one hand reach each
//! other without any. Half for joining is the mean: half of a street's own fronts lie across it.

use crate::order;
use crate::order::OrderedMap;
use std::cmp::Ordering;

/// One end of a link at an intersection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leg {
    /// Which way it leaves, east.
    pub dx: i64,
    /// Which way it leaves, north.
    pub dy: i64,
    /// The street it is a piece of.
    pub street: u32,
    /// Cost of the wait to cross it.
    pub wait: u64,
}

/// A street that passes an intersection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Passing {
    /// Its two legs, by their place.
    pub legs: [usize; 2],
    /// Cost of the wait to cross it.
    pub wait: u64,
}

impl Leg {
    fn cross(&self, other: &Self) -> i128 {
        i128::from(self.dx) * i128::from(other.dy) - i128::from(self.dy) * i128::from(other.dx)
    }

    fn dot(&self, other: &Self) -> i128 {
        i128::from(self.dx) * i128::from(other.dx) + i128::from(self.dy) * i128::from(other.dy)
    }

    fn leaves_like(&self, other: &Self) -> bool {
        self.cross(other) == 0 && self.dot(other) > 0
    }

    /// Which half of the turn counterclockwise from `start` this lies in.
    fn half_from(&self, start: &Self) -> u8 {
        let cross = start.cross(self);
        u8::from(cross < 0 || (cross == 0 && start.dot(self) < 0))
    }

    /// Whether this comes before `end` in the turn counterclockwise from `start`.
    fn lies_between(&self, start: &Self, end: &Self) -> bool {
        match self.half_from(start).cmp(&end.half_from(start)) {
            Ordering::Equal => self.cross(end) > 0,
            order => order.is_lt(),
        }
    }
}

/// The streets that pass: two legs of one street, or of two streets that go straight on into each other (within 45°)
/// and both make people wait or neither does. The straightest are paired first; each leg belongs to one at most.
#[must_use]
pub fn passing(legs: &[Leg]) -> Vec<Passing> {
    let mut pairs: Vec<(bool, f64, [usize; 2])> = Vec::new();
    for (i, a) in legs.iter().enumerate() {
        for (j, b) in legs.iter().enumerate().skip(i + 1) {
            let dot = a.dot(b) as f64;
            let straightness = dot / ((a.dot(a) as f64).sqrt() * (b.dot(b) as f64).sqrt());
            let goes_on = a.dot(b) < 0 && a.cross(b).abs() <= -a.dot(b);
            let is_one = a.street == b.street;
            if is_one || (goes_on && (a.wait > 0) == (b.wait > 0)) {
                pairs.push((!is_one, straightness, [i, j]));
            }
        }
    }
    order::sort_by(&mut pairs, |a, b| {
        a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).then(a.2.cmp(&b.2))
    });
    let mut is_taken = vec![false; legs.len()];
    let mut found = Vec::new();
    for (.., [i, j]) in pairs {
        if !is_taken[i] && !is_taken[j] {
            (is_taken[i], is_taken[j]) = (true, true);
            found.push(Passing {
                legs: [i, j],
                wait: legs[i].wait.max(legs[j].wait),
            });
        }
    }
    found
}

/// A corner of an intersection: legs that reach each other without a wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Corner {
    /// The legs, by their place.
    pub legs: Vec<usize>,
    /// Cost between the corner and the middle of the intersection: half of every wait between.
    pub cost: u64,
}

/// The corners that are parted from the middle of the intersection by a wait. Legs in none are at the middle.
#[must_use]
pub fn corners(legs: &[Leg], passing: &[Passing]) -> Vec<Corner> {
    let mut by_hands: OrderedMap<Vec<u8>, Corner> = OrderedMap::new();
    for (place, leg) in legs.iter().enumerate() {
        let mut hands = Vec::with_capacity(passing.len());
        let mut cost = 0;
        for street in passing {
            let ends = street.legs.map(|end| &legs[end]);
            let is_on = street.legs.contains(&place) || ends.iter().any(|end| leg.leaves_like(end));
            let hand = match is_on {
                true => 0,
                false if leg.lies_between(ends[0], ends[1]) => 1,
                false => 2,
            };
            cost += if is_on { 0 } else { street.wait / 2 };
            hands.push(if street.wait == 0 { 0 } else { hand });
        }
        if cost > 0 {
            let corner = by_hands
                .entry(hands)
                .or_insert_with(|| Corner { legs: Vec::new(), cost });
            corner.legs.push(place);
        }
    }
    by_hands.into_values().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn leg(dx: i64, dy: i64, street: u32, wait: u64) -> Leg {
        Leg { dx, dy, street, wait }
    }

    /// Cost between two legs by the corners they stand at.
    fn between(legs: &[Leg], a: usize, b: usize) -> u64 {
        let corners = corners(legs, &passing(legs));
        let of = |leg: usize| corners.iter().find(|corner| corner.legs.contains(&leg));
        match (of(a), of(b)) {
            (Some(one), Some(other)) if one == other => 0,
            (one, other) => one.map_or(0, |corner| corner.cost) + other.map_or(0, |corner| corner.cost),
        }
    }

    #[test]
    fn a_wide_street_is_crossed_at_its_wait_and_walked_along_at_none() {
        // East and west the wide street, north and south two narrow ones, and a path to the northeast.
        let legs = [
            leg(9, 0, 0, 40),
            leg(-7, 1, 0, 40),
            leg(0, 5, 1, 0),
            leg(1, -5, 2, 0),
            leg(3, 3, 3, 0),
        ];
        assert_eq!(passing(&legs)[0], Passing { legs: [0, 1], wait: 40 });
        assert_eq!(between(&legs, 0, 1), 0);
        assert_eq!(between(&legs, 2, 3), 40);
        assert_eq!(between(&legs, 4, 3), 40);
        assert_eq!(between(&legs, 2, 4), 0, "both stand on the north side");
        assert_eq!(between(&legs, 2, 0), 20);
        assert_eq!(between(&legs, 3, 1), 20);
    }

    #[test]
    fn two_wide_streets_make_each_other_wait() {
        let legs = [leg(1, 0, 0, 40), leg(0, 1, 1, 10), leg(-1, 0, 0, 40), leg(0, -1, 1, 10)];
        assert_eq!(between(&legs, 0, 2), 10, "along the wider, across the other");
        assert_eq!(between(&legs, 1, 3), 40);
        assert_eq!(between(&legs, 0, 1), 25, "round a corner half of both, in the mean");
    }

    #[test]
    fn a_street_that_ends_here_parts_nothing() {
        let legs = [leg(1, 0, 0, 40), leg(0, 1, 1, 0), leg(0, -1, 1, 0)];
        assert!(corners(&legs, &passing(&legs)[..1]).is_empty());
        assert_eq!(between(&legs, 1, 2), 0);
    }

    #[test]
    fn streets_that_go_straight_on_into_each_other_are_one() {
        let legs = [leg(5, 0, 0, 40), leg(-5, 1, 7, 35), leg(0, 1, 2, 0), leg(0, -1, 3, 0)];
        assert_eq!(between(&legs, 2, 3), 40);
        // A wide street never pairs with a narrow one that goes on straight.
        let legs = [leg(5, 0, 0, 40), leg(-5, 0, 7, 0), leg(0, 1, 2, 0), leg(0, -1, 2, 0)];
        assert_eq!(between(&legs, 2, 3), 0);
    }

    #[test]
    fn mirrored_and_turned_intersections_cost_the_same() {
        let legs = [
            leg(90, 13, 0, 40),
            leg(-71, 10, 0, 40),
            leg(4, 50, 1, 12),
            leg(10, -50, 1, 12),
            leg(30, 33, 3, 0),
            leg(-30, 12, 4, 0),
        ];
        let mirrored = legs.map(|leg| Leg { dx: -leg.dx, ..leg });
        let turned = legs.map(|leg| Leg {
            dx: -leg.dy,
            dy: leg.dx,
            ..leg
        });
        for a in 0..legs.len() {
            for b in 0..legs.len() {
                let cost = between(&legs, a, b);
                assert_eq!(between(&mirrored, a, b), cost, "{a} {b}");
                assert_eq!(between(&turned, a, b), cost, "{a} {b}");
            }
        }
    }
}
