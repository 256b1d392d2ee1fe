//! Who can walk to a neighborhood center.
//!
//! The network gives the homes within each walking time at a base speed; the walking speed itself is an uncertain
//! factor here. Whoever walks at `speed` reaches in five minutes what takes `5 min × speed ÷ base speed` at the base
//! speed. Not counted: waiting at crossings beyond what the network's times hold, and people who cannot walk.

use crate::figures::expression::{constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::unit;

/// Declares the walk to the center, and the axis `walk_knot`. Needs what [`super::homes::declare`] declares.
pub fn declare(graph: &mut GraphBuilder) {
    graph.open_axis("walk_knot", "knot of the walking curve");

    let _ = graph
        .counted("walk.center_times", "walking time to the nearest center", unit::MINUTES)
        .over(&["walk_knot"]);
    let _ = graph
        .counted(
            "walk.center_homes",
            "homes within a walking time of a center",
            unit::HOMES,
        )
        .over(&["walk_knot"]);
    let _ = graph.chosen("walk.base_speed", "base walking speed", unit::WALKING_SPEED);
    let _ = graph.factor("walking.planning_speed", "walking speed", unit::WALKING_SPEED);

    graph
        .figure("walk.center_5min_base_time", "time at base speed", unit::MINUTES)
        .formula(constant(300.0, unit::MINUTES) * figure("walking.planning_speed") / figure("walk.base_speed"));
    graph
        .figure(
            "walk.center_5min_homes",
            "homes within 5 minutes of a center",
            unit::HOMES,
        )
        .lookup(
            "walk.center_times",
            "walk.center_homes",
            "walk_knot",
            "walk.center_5min_base_time",
        );
    graph
        .figure(
            "walk.center_5min_homes_share",
            "share of homes within 5 minutes of a center",
            unit::SHARE,
        )
        .formula(figure("walk.center_5min_homes") / figure("homes.count"));
}
