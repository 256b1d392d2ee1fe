//! How a plan is drawn, whatever it is drawn on: what the page and the exports share.
//!
//! Positions are in meters, x east and y north; for drawing only, no measure uses them.

pub mod contours;
pub mod ground;
pub mod offset;
pub mod profile;
pub mod tones;
pub mod uses;
pub mod ways;
pub mod words;

use crate::order;

/// The place inside an outline with the most room to either side, and how much that is: for words.
#[must_use]
pub fn widest_place(outline: &[(f64, f64)]) -> Option<((f64, f64), f64)> {
    const LINES: u32 = 9;
    let (low, high) = outline
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), point| {
            (low.min(point.1), high.max(point.1))
        });
    (1..=LINES)
        .flat_map(|line| {
            let y = low + (high - low) * f64::from(line) / f64::from(LINES + 1);
            let next = outline.iter().cycle().skip(1);
            let crossed = outline.iter().zip(next).filter(|(a, b)| (a.1 <= y) != (b.1 <= y));
            let mut crossings: Vec<f64> = crossed
                .map(|(a, b)| a.0 + (b.0 - a.0) * (y - a.1) / (b.1 - a.1))
                .collect();
            order::sort_by(&mut crossings, f64::total_cmp);
            let inside = crossings.chunks_exact(2).filter_map(|pair| match pair {
                [west, east] => Some(((f64::midpoint(*west, *east), y), east - west)),
                _ => None,
            });
            inside.collect::<Vec<_>>()
        })
        // Among places with about as much room the one nearest the middle is taken.
        .max_by(|one, other| {
            let middle = f64::midpoint(low, high);
            let worth = |(at, room_m): &((f64, f64), f64)| room_m - (at.1 - middle).abs() * 0.25;
            worth(one).total_cmp(&worth(other))
        })
}
