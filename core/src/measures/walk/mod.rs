//! Who can walk where: homes within a walking time of the center, of each of the five daily needs, of all five.
//!
//! The network gives the homes within each walking time at a base speed; the walking speed itself is an uncertain
//! factor here. Whoever walks at `speed` reaches in five minutes what takes `5 min × speed ÷ base speed` at the base
//! speed; so a wait at a crossing is stretched with the walk, which errs by seconds. Distance starts at the lot front,
//! and homes of a lot are spread evenly over its front. Where the ground slopes the worse of the walks there and back
//! counts.
//!
//! A need is met at a place of its kind, at lots that hold at least a minimum of it, and at what lies outside the site;
//! [`settings`] names the minimums, [`sources`] says how they are counted. Not counted: homes on land no street
//! reaches (they are in the whole and within no time), and people who can not walk.

pub mod curves;
pub mod destinations;
mod likely;
pub mod settings;
pub mod sources;
pub mod walks;

use crate::figures::expression::{constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::unit;
use crate::say;

use destinations::Destination;

pub use curves::KNOTS_S;
pub use walks::Walks;

/// What is counted of walking.
#[derive(Clone, Debug, PartialEq)]
pub struct WalkInput {
    /// Homes within each of [`KNOTS_S`] at the base speed, by destination in the order of [`Destination::ALL`]; or why
    /// it can not be worked out.
    pub homes_within: Vec<Result<Vec<f64>, String>>,
    /// The speed at which the network's walking times were worked.
    pub base_speed_m_per_s: f64,
    /// The value of each of [`settings::ALL`], in order.
    pub settings: Vec<f64>,
}

/// A walk somebody takes: the word of its ids, its minutes, the speed it is taken at, and how its titles tell that speed.
struct Walk {
    id: &'static str,
    minutes: u32,
    speed: &'static str,
    pace: &'static str,
}

const WALKS: [Walk; 4] = [
    Walk {
        id: "5min",
        minutes: 5,
        speed: "walking.planning_speed",
        pace: "planning",
    },
    Walk {
        id: "10min",
        minutes: 10,
        speed: "walking.planning_speed",
        pace: "planning",
    },
    Walk {
        id: "5min_slower",
        minutes: 5,
        speed: "walking.slower_speed",
        pace: "slower",
    },
    Walk {
        id: "10min_slower",
        minutes: 10,
        speed: "walking.slower_speed",
        pace: "slower",
    },
];

/// Declares homes within a walk, and the axes `destination` and `walk_knot`. Needs what [`super::homes::declare`]
/// declares.
pub fn declare(graph: &mut GraphBuilder) {
    let titles: Vec<(&str, &str)> = Destination::ALL.iter().map(|held| (held.id(), held.title())).collect();
    graph.fixed_axis("destination", say!("measures-destination"), &titles);
    let knots: Vec<(String, String)> = KNOTS_S
        .iter()
        .map(|time_s| (format!("s_{time_s}"), format!("{time_s} s")))
        .collect();
    let knots: Vec<(&str, &str)> = knots.iter().map(|(id, title)| (id.as_str(), title.as_str())).collect();
    graph.fixed_axis("walk_knot", say!("measures-walking-time"), &knots);

    let _ = graph
        .counted("walk.times", say!("measures-walking-time"), unit::MINUTES)
        .over(&["walk_knot"]);
    let _ = graph
        .counted("walk.homes_within", say!("measures-homes-within"), unit::HOMES)
        .over(&["destination", "walk_knot"]);
    let _ = graph.chosen("walk.base_speed", say!("measures-base-speed"), unit::WALKING_SPEED);
    let _ = graph.factor(
        "walking.planning_speed",
        say!("measures-walking-speed"),
        unit::WALKING_SPEED,
    );
    let _ = graph.factor(
        "walking.slower_speed",
        say!("measures-slower-speed"),
        unit::WALKING_SPEED,
    );
    settings::declare(graph);

    for walk in &WALKS {
        let Walk {
            id,
            minutes,
            speed,
            pace,
        } = walk;
        let time = format!("walk.base_time_{id}");
        graph
            .figure(
                &time,
                &say!("measures-walk-base-time", minutes = minutes, pace = pace),
                unit::MINUTES,
            )
            .formula(constant(f64::from(minutes * 60), unit::MINUTES) * figure(speed) / figure("walk.base_speed"));
        let homes = format!("walk.homes_within_{id}");
        graph
            .figure(
                &homes,
                &say!("measures-walk-homes", minutes = minutes, pace = pace),
                unit::HOMES,
            )
            .over(&["destination"])
            .lookup("walk.times", "walk.homes_within", "walk_knot", &time);
        graph
            .figure(
                &format!("walk.homes_share_within_{id}"),
                &say!("measures-walk-homes-share", minutes = minutes, pace = pace),
                unit::SHARE,
            )
            .over(&["destination"])
            .formula(figure(&homes) / figure("homes.count"));
    }
    declare_headlines(graph);
    likely::declare(graph);
}

/// The figures of one destination each that are shown by themselves.
fn declare_headlines(graph: &mut GraphBuilder) {
    graph
        .figure("walk.center_5min_homes", say!("measures-center-5"), unit::HOMES)
        .entry("walk.homes_within_5min", "destination", Destination::Center.id());
    let share = |graph: &mut GraphBuilder, id: &str, title: &str, of: &str, destination: Destination| {
        graph.figure(id, title, unit::SHARE).entry(
            &format!("walk.homes_share_within_{of}"),
            "destination",
            destination.id(),
        );
    };
    share(
        graph,
        "walk.center_5min_homes_share",
        say!("measures-center-5-share"),
        "5min",
        Destination::Center,
    );
    share(
        graph,
        "walk.center_5min_homes_share_slower",
        say!("measures-center-5-slower"),
        "5min_slower",
        Destination::Center,
    );
    share(
        graph,
        "walk.all_five_10min_homes_share",
        say!("measures-five-10"),
        "10min",
        Destination::AllFive,
    );
    share(
        graph,
        "walk.all_five_sure_10min_homes_share",
        say!("measures-five-sure-10"),
        "10min",
        Destination::AllFiveSure,
    );
    share(
        graph,
        "walk.all_five_10min_homes_share_slower",
        say!("measures-five-10-slower"),
        "10min_slower",
        Destination::AllFive,
    );
    share(
        graph,
        "walk.park_5min_homes_share",
        say!("measures-park-5"),
        "5min",
        Destination::Park,
    );
}

/// Sets the leaves of [`declare`] that are counted or chosen.
pub fn set_inputs(inputs: &mut Inputs, walk: &WalkInput) {
    let times: Vec<f64> = KNOTS_S.iter().map(|time_s| *time_s as f64).collect();
    inputs.set_counted("walk.times", numbers(&times), None);
    let mut cells = Vec::with_capacity(Destination::ALL.len() * KNOTS_S.len());
    for homes in &walk.homes_within {
        match homes {
            Ok(homes) => cells.extend(homes.iter().map(|homes| Cell::Number(*homes))),
            Err(reason) => cells.extend(KNOTS_S.iter().map(|_| Cell::Unknown(reason.clone()))),
        }
    }
    inputs.set_counted("walk.homes_within", cells, Some("homes_by_walk"));
    inputs.set_chosen("walk.base_speed", numbers(&[walk.base_speed_m_per_s]));
    likely::set_inputs(inputs, &walk.homes_within, walk.base_speed_m_per_s);
    settings::set_inputs(inputs, &walk.settings);
}

#[cfg(test)]
pub(crate) mod test_plans;
#[cfg(test)]
mod tests;
