//! How many people would walk as far: homes, each by the share of walks that are at least as long as its own.
//!
//! Of all walks people take, a share `e^(−d ÷ mean)` is at least `d` long. A home whose walk to a destination is `d` long
//! counts by that share, so a home next door counts whole and one a mile away for a sixth. Walks are measured at the
//! base speed, waits at crossings and slopes with them, and rounded to the nearest eighth of a mile, which errs by less
//! than half a percent; homes beyond the last of [`DISTANCES`], and those half an hour away, count nothing.
//!
//! It says how far the walks are, not how many are walked: who walks depends on more than the way.
//!
//! Source: see the factor `walking.mean_walk`.

use super::KNOTS_S;
use crate::figures::expression::{constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::unit;
use crate::measures::worked::{self, Worked};
use crate::message;
use crate::say;

/// Lengths of walks, an eighth of a mile apart: ids and titles.
const DISTANCES: [(&str, &str); 12] = [
    ("mi_0", "0 mi"),
    ("mi_125", "0.125 mi"),
    ("mi_250", "0.25 mi"),
    ("mi_375", "0.375 mi"),
    ("mi_500", "0.5 mi"),
    ("mi_625", "0.625 mi"),
    ("mi_750", "0.75 mi"),
    ("mi_875", "0.875 mi"),
    ("mi_1000", "1 mi"),
    ("mi_1125", "1.125 mi"),
    ("mi_1250", "1.25 mi"),
    ("mi_1375", "1.375 mi"),
];

/// An eighth of a mile.
const STEP_M: f64 = 1_609.344 / 8.0;

const BOTH: &[&str] = &["destination", "walk_distance"];

const WORKED: [Worked; 2] = [
    Worked::product(
        "walk.homes_likely_by_distance",
        message!("measures-homes-likely-distance"),
        unit::HOMES,
        "walk.homes_at_distance",
        "walk.walks_as_long",
    )
    .over(BOTH),
    Worked::quotient(
        "walk.homes_likely_share",
        message!("measures-homes-likely-share"),
        unit::SHARE,
        "walk.homes_likely",
        "homes.count",
    )
    .over(&["destination"]),
];

/// Declares homes by the share of walks as long as theirs. Needs what [`super::declare`] declares.
pub(super) fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("walk_distance", say!("measures-walk-distance"), &DISTANCES);
    let along = &["walk_distance"];
    let _ = graph
        .chosen("walk.distances", say!("measures-walk-distance"), unit::DISTANCE)
        .over(along);
    let _ = graph.factor("walking.mean_walk", say!("measures-mean-walk"), unit::DISTANCE);
    let _ = graph
        .counted(
            "walk.homes_at_distance",
            say!("measures-homes-at-distance"),
            unit::HOMES,
        )
        .over(BOTH);
    graph
        .figure("walk.walks_as_long", say!("measures-walks-as-long"), unit::SHARE)
        .over(along)
        .formula((constant(0.0, unit::NUMBER) - figure("walk.distances") / figure("walking.mean_walk")).exponential());
    worked::declare(graph, &WORKED);
    graph
        .figure("walk.homes_likely", say!("measures-homes-likely"), unit::HOMES)
        .over(&["destination"])
        .sum("walk.homes_likely_by_distance", along);
}

/// Sets the leaves, from homes within each of [`KNOTS_S`] by destination.
pub(super) fn set_inputs(inputs: &mut Inputs, homes_within: &[Result<Vec<f64>, String>], base_speed_m_per_s: f64) {
    let distances: Vec<f64> = (0..DISTANCES.len()).map(|place| place as f64 * STEP_M).collect();
    let mut cells = Vec::with_capacity(homes_within.len() * DISTANCES.len());
    for homes in homes_within {
        let mut before = 0.0;
        for distance_m in &distances {
            cells.push(match homes {
                Ok(homes) => {
                    // Everything nearer than half a step beyond; the first takes in the homes right there.
                    let within = homes_within_s(homes, (distance_m + STEP_M / 2.0) / base_speed_m_per_s);
                    Cell::Number(within - std::mem::replace(&mut before, within))
                }
                Err(reason) => Cell::Unknown(reason.clone()),
            });
        }
    }
    inputs.set_chosen("walk.distances", numbers(&distances));
    inputs.set_counted("walk.homes_at_distance", cells, Some("homes_by_walk"));
}

/// Homes within a walking time: a straight line between knots.
fn homes_within_s(homes: &[f64], time_s: f64) -> f64 {
    let after = KNOTS_S.partition_point(|knot_s| (*knot_s as f64) < time_s);
    let knot = |place: usize| Some((*KNOTS_S.get(place)? as f64, *homes.get(place)?));
    match (after.checked_sub(1).and_then(knot), knot(after)) {
        (Some((from_s, fewer)), Some((to_s, more))) => fewer + (more - fewer) * ((time_s - from_s) / (to_s - from_s)),
        (Some((_, homes)), None) | (None, Some((_, homes))) => homes,
        (None, None) => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use crate::measures;
    use crate::measures::walk::KNOTS_S;
    use crate::measures::walk::destinations::Destination;

    fn evaluated(homes: impl Fn(f64) -> f64, speed: f64) -> crate::figures::Evaluation {
        let mut measured = measures::tests::village();
        measured.walk.base_speed_m_per_s = speed;
        measured.walk.homes_within =
            vec![Ok(KNOTS_S.iter().map(|time_s| homes(*time_s as f64)).collect()); Destination::ALL.len()];
        measures::tests::evaluated(&measured)
    }

    fn numbers(evaluation: &crate::figures::Evaluation, id: &str) -> Vec<f64> {
        let index = evaluation.graph().index(id).unwrap();
        let cells = 0..evaluation.cell_count(index);
        cells
            .map(|cell| evaluation.cell(index, cell).number().unwrap())
            .collect()
    }

    /// Check case W-A9, derived: with a decay of 1.71 to the mile (Yang and Diez-Roux 2012, from memory) 0.652 of walks are
    /// longer than a quarter mile and 0.181 longer than a mile.
    #[test]
    fn shares_of_walks_as_long_are_those_of_the_decay() {
        let shares = numbers(&evaluated(|_| 1.0, 1.4), "walk.walks_as_long");
        for (place, expected) in [(0, 1.0), (2, 0.652), (8, 0.181)] {
            assert!((shares[place] - expected).abs() <= 0.001, "{place}: {}", shares[place]);
        }
    }

    #[test]
    fn homes_next_door_count_whole_and_those_beyond_count_nothing() {
        let at_once = numbers(&evaluated(|_| 214.0, 1.4), "walk.homes_likely_share");
        let never = numbers(&evaluated(|_| 0.0, 1.4), "walk.homes_likely_share");
        for (near, far) in at_once.iter().zip(&never) {
            assert!((near - 1.0).abs() < 1e-12 && *far == 0.0, "{near} {far}");
        }
        // All at a quarter mile, 300 s at 3 miles an hour.
        let speed = 0.25 * 1_609.344 / 300.0;
        let there = numbers(
            &evaluated(|time_s| if time_s < 300.0 { 0.0 } else { 214.0 }, speed),
            "walk.homes_likely_share",
        );
        assert!((there[0] - 0.652).abs() < 0.001, "{}", there[0]);
    }

    /// Homes spread evenly over a mile, an oracle: the integral of the decay.
    #[test]
    fn rounding_to_eighths_of_a_mile_errs_by_less_than_half_a_percent() {
        let speed = 1_609.344 / 1_200.0;
        let spread = |time_s: f64| 214.0 * (time_s / 1_200.0).min(1.0);
        let share = numbers(&evaluated(spread, speed), "walk.homes_likely_share")[0];
        let integral = (1.0 - crate::number::exp(-1.71)) / 1.71;
        assert!((share / integral - 1.0).abs() < 0.005, "{share} {integral}");
    }
}
