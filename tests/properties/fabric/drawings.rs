//! Random drawings of every awkward kind, small enough for the slow arrangement.

use hobnail_core::fabric::{SourceId, SourceSegment};
use hobnail_core::plan::PlanPoint;

use crate::random::Random;

/// How many kinds [`drawing`] knows.
pub const KINDS: u64 = 10;

/// A drawing of the given kind (modulo [`KINDS`]).
pub fn drawing(kind: u64, random: &mut Random) -> Vec<SourceSegment> {
    let count = random.within(1, 14);
    match kind % KINDS {
        // Everything collides.
        0 => scattered(random, count, 0, 7),
        1 => scattered(random, count, 0, 3),
        2 => scattered(random, count, -40, 40),
        3 => scattered(random, count, -100_000_000, 100_000_000),
        // Long and nearly parallel: crossings far from anything, at shallow angles.
        4 => (0..count)
            .map(|index| {
                let (y, z) = (random.within(-3, 3), random.within(-3, 3));
                let (x, w) = (random.within(-3, 3), random.within(-3, 3));
                segment((x - 100_000_000, y), (w + 100_000_000, z), index)
            })
            .collect(),
        // Collinear overlaps along a few directions, with repeated points.
        5 => (0..count)
            .map(|index| {
                let (dx, dy) = *random.pick(&[(1, 0), (0, 1), (1, 1), (2, -1), (3, 2), (0, 0)]);
                let (from, to) = (random.within(-5, 5), random.within(-5, 5));
                segment((dx * from, dy * from), (dx * to, dy * to), index)
            })
            .collect(),
        // Closed rings inside rings, and rings beside each other.
        6 => (0..random.within(1, 4)).flat_map(|index| ring(random, index)).collect(),
        // A polyline that wanders over itself.
        7 => {
            let mut here = (0, 0);
            (0..count)
                .map(|index| {
                    let there = (here.0 + random.within(-6, 6), here.1 + random.within(-6, 6));
                    let step = segment(here, there, index / 4);
                    here = there;
                    step
                })
                .collect()
        }
        // A star whose rays almost meet.
        8 => (0..count)
            .map(|index| {
                let (x, y) = (random.within(-900, 900), random.within(-900, 900));
                let (jitter_x, jitter_y) = (random.within(-1, 1), random.within(-1, 1));
                segment((x, y), (jitter_x - x, jitter_y - y), index)
            })
            .collect(),
        // A crowd: more segments than a cell holds before it is split.
        _ => {
            let crowd = random.within(30, 80);
            let side = *random.pick(&[2, 5, 30, 1_000]);
            scattered(random, crowd, 0, side)
        }
    }
}

fn segment(a: (i32, i32), b: (i32, i32), source: i32) -> SourceSegment {
    SourceSegment::new(
        PlanPoint::new(a.0, a.1),
        PlanPoint::new(b.0, b.1),
        SourceId(source as u32),
    )
}

fn scattered(random: &mut Random, count: i32, low: i32, high: i32) -> Vec<SourceSegment> {
    (0..count)
        .map(|index| {
            let mut point = || (random.within(low, high), random.within(low, high));
            let (a, b) = (point(), point());
            segment(a, b, index % 5)
        })
        .collect()
}

fn ring(random: &mut Random, index: i32) -> Vec<SourceSegment> {
    let (x, y) = (random.within(-4, 4) * 10, random.within(-4, 4) * 10);
    let (w, h) = (random.within(1, 60), random.within(1, 60));
    let corners = [(x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y)];
    corners
        .windows(2)
        .map(|side| segment(side[0], side[1], index))
        .collect()
}
