//! The figures of walking and mix in detail.

use super::{SHED_METHODS, SHED_WALKS_S, TO, WAITING, WalkDetails};
use crate::figures::axis::Entry;
use crate::figures::expression::{constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::unit::{self, Unit};

/// Axes whose entries come with the details.
const OPEN_AXES: [(&str, &str); 3] = [
    ("best_center", "best point for a center"),
    ("indirect_front", "front with the least direct walks to a center"),
    ("busiest_segment", "busiest segment"),
];

/// Every leaf, with how many cells it has where nothing is known.
const LEAVES: [(&str, &str, Unit, &[&str], usize); 17] = [
    (
        "walk.shed_areas",
        "area of the center's walk-shed",
        unit::LAND,
        &["shed_method", "shed_walk"],
        SHED_METHODS.len() * SHED_WALKS_S.len(),
    ),
    ("walk.shed_circles", "circles around a center", unit::COUNT, &[], 1),
    (
        "walk.drawn_center_homes",
        "homes within 5 minutes of the center as drawn, at the plan's pace",
        unit::HOMES,
        &[],
        1,
    ),
    (
        "walk.best_center_homes",
        "homes within 5 minutes of the best point",
        unit::HOMES,
        &["best_center"],
        1,
    ),
    (
        "walk.directness_homes",
        "homes with a walk",
        unit::HOMES,
        &["directness_to"],
        TO.len(),
    ),
    (
        "walk.directness_sums",
        "directness of homes, added up",
        unit::HOMES,
        &["directness_to"],
        TO.len(),
    ),
    (
        "walk.directness_most_of",
        "directness that nine tenths of homes do not exceed",
        unit::NUMBER,
        &["directness_to"],
        TO.len(),
    ),
    (
        "walk.indirect_fronts",
        "mean directness of a front",
        unit::NUMBER,
        &["indirect_front"],
        1,
    ),
    (
        "walk.indirect_front_homes",
        "homes of a front",
        unit::HOMES,
        &["indirect_front"],
        1,
    ),
    (
        "walk.segment_walks",
        "walks along a segment",
        unit::COUNT,
        &["busiest_segment"],
        1,
    ),
    (
        "walk.walked_length",
        "length of segments by walks along them",
        unit::DISTANCE,
        &[],
        1,
    ),
    (
        "walk.walked_length_busiest",
        "length by walks along it, on the busiest tenth",
        unit::DISTANCE,
        &[],
        1,
    ),
    (
        "mix.reached_homes",
        "homes with floor area in reach",
        unit::HOMES,
        &["shed_walk"],
        SHED_WALKS_S.len(),
    ),
    (
        "mix.reached_evenness_sums",
        "evenness of the floor area homes reach, added up",
        unit::HOMES,
        &["shed_walk"],
        SHED_WALKS_S.len(),
    ),
    (
        "mix.needs_reached_sums",
        "homes by daily needs in reach, added up",
        unit::HOMES,
        &["shed_walk"],
        SHED_WALKS_S.len(),
    ),
    (
        "mix.developed_cells",
        "hectare cells with floor area",
        unit::COUNT,
        &[],
        1,
    ),
    (
        "mix.unlike_neighbors",
        "shares of unlike neighbors, added up",
        unit::NUMBER,
        &[],
        1,
    ),
];

/// Declares the details. Needs what [`crate::measures::homes::declare`], [`crate::measures::walk::declare`] and
/// [`crate::measures::mix::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("shed_method", "how the area is taken", &SHED_METHODS);
    graph.fixed_axis(
        "shed_walk",
        "walk",
        &[("5min", "within 5 minutes"), ("10min", "within 10 minutes")],
    );
    let to: Vec<(&str, &str)> = TO.iter().map(|held| (held.id(), held.title())).collect();
    graph.fixed_axis("directness_to", "destination", &to);
    for (id, title) in OPEN_AXES {
        graph.open_axis(id, title);
    }
    for (id, title, unit, axes, _) in LEAVES {
        let _ = graph.counted(id, title, unit).over(axes);
    }
    let _ = graph
        .chosen("walk.shed_times", "time of the walk", unit::MINUTES)
        .over(&["shed_walk"]);
    declare_walks(graph);
    declare_mix(graph);
}

fn declare_walks(graph: &mut GraphBuilder) {
    let sheds = ["shed_method", "shed_walk"];
    graph
        .figure(
            "walk.shed_area",
            "area of the center's walk-shed, by method",
            unit::LAND,
        )
        .over(&sheds)
        .formula(figure("walk.shed_areas"));
    let radius = || figure("walk.base_speed") * figure("walk.shed_times");
    graph
        .figure(
            "walk.shed_circle_area",
            "circle of the same walking distance",
            unit::LAND,
        )
        .over(&["shed_walk"])
        .formula(constant(std::f64::consts::PI, unit::NUMBER) * figure("walk.shed_circles") * radius() * radius());
    graph
        .figure("walk.ped_shed_ratio", "walk-shed by its circle, by method", unit::SHARE)
        .over(&sheds)
        .formula(figure("walk.shed_areas") / figure("walk.shed_circle_area"));

    graph
        .figure(
            "walk.directness_mean",
            "length of the walk by the straight distance, mean over homes",
            unit::NUMBER,
        )
        .over(&["directness_to"])
        .formula(figure("walk.directness_sums") / figure("walk.directness_homes"));
    graph
        .figure(
            "walk.directness_90th",
            "length of the walk by the straight distance that nine tenths of homes do not exceed",
            unit::NUMBER,
        )
        .over(&["directness_to"])
        .formula(figure("walk.directness_most_of"));
    graph
        .figure(
            "walk.worst_directness",
            "least direct walks to a center, by front",
            unit::NUMBER,
        )
        .over(&["indirect_front"])
        .formula(figure("walk.indirect_fronts"));
    graph
        .figure(
            "walk.worst_directness_homes",
            "homes with the least direct walks to a center",
            unit::HOMES,
        )
        .over(&["indirect_front"])
        .formula(figure("walk.indirect_front_homes"));

    let best = ["best_center"];
    graph
        .figure(
            "walk.best_center_5min_homes",
            "homes within 5 minutes of the best point for a center",
            unit::HOMES,
        )
        .over(&best)
        .formula(figure("walk.best_center_homes"));
    graph
        .figure(
            "walk.best_center_5min_homes_share",
            "share of homes within 5 minutes of the best point for a center",
            unit::SHARE,
        )
        .over(&best)
        .formula(figure("walk.best_center_homes") / figure("homes.count"));
    graph
        .figure(
            "walk.best_center_5min_more_homes",
            "homes the best point has more than the center as drawn",
            unit::HOMES,
        )
        .over(&best)
        .formula(figure("walk.best_center_homes") - figure("walk.drawn_center_homes"));

    graph
        .figure(
            "walk.busiest_segment_walks",
            "walks along the busiest segment, one for each home and daily need",
            unit::COUNT,
        )
        .over(&["busiest_segment"])
        .formula(figure("walk.segment_walks"));
    graph
        .figure(
            "walk.busiest_tenth_share",
            "share of walking along the busiest tenth of street length",
            unit::SHARE,
        )
        .formula(figure("walk.walked_length_busiest") / figure("walk.walked_length"));
}

fn declare_mix(graph: &mut GraphBuilder) {
    let walks = ["shed_walk"];
    graph
        .figure(
            "mix.reached_evenness",
            "evenness of the floor area a home reaches, mean over homes",
            unit::NUMBER,
        )
        .over(&walks)
        .formula(figure("mix.reached_evenness_sums") / figure("mix.reached_homes"));
    graph
        .figure(
            "mix.needs_reached",
            "how many of the five daily needs a home reaches, mean over homes",
            unit::NUMBER,
        )
        .over(&walks)
        .formula(figure("mix.needs_reached_sums") / figure("homes.count"));
    graph
        .figure(
            "mix.dissimilarity",
            "share of neighboring hectares of another use, mean over hectares",
            unit::SHARE,
        )
        .formula(figure("mix.unlike_neighbors") / figure("mix.developed_cells"));
}

/// Sets every leaf; without details each says that they are to come.
pub fn set(inputs: &mut Inputs, details: Option<&WalkDetails>) {
    inputs.set_chosen("walk.shed_times", numbers(&SHED_WALKS_S.map(|seconds| seconds as f64)));
    let Some(details) = details else {
        for (axis, _) in OPEN_AXES {
            inputs.set_entries(axis, none(WAITING));
        }
        for (id, _, _, _, cells) in LEAVES {
            inputs.set_counted(id, vec![Cell::Unknown(WAITING.to_owned()); cells], None);
        }
        return;
    };
    let best = details.best_center.map(|at| vec![Entry::new("best", at.in_words())]);
    inputs.set_entries("best_center", best.unwrap_or_else(|| none("no point")));
    let busiest = details.busiest_segment.iter();
    let entries: Vec<Entry> = busiest.map(|(title, _)| Entry::new("segment", title.clone())).collect();
    let is_walked = !entries.is_empty();
    inputs.set_entries("busiest_segment", if is_walked { entries } else { none("no segment") });
    let fronts = (1..).zip(&details.indirect_fronts);
    let entries: Vec<Entry> = fronts
        .map(|(number, front)| Entry::new(format!("front_{number}"), front.title.clone()))
        .collect();
    let has_fronts = !entries.is_empty();
    inputs.set_entries("indirect_front", if has_fronts { entries } else { none("no front") });

    let unknown = |reason: &str| vec![Cell::Unknown(reason.to_owned())];
    let of_fronts = |number: fn(&super::IndirectFront) -> f64| {
        if has_fronts {
            details
                .indirect_fronts
                .iter()
                .map(|front| Cell::Number(number(front)))
                .collect()
        } else {
            // The reason is that of the walk to a center.
            details.directness_homes.first().cloned().into_iter().collect()
        }
    };
    let busiest = match &details.busiest_segment {
        Some((_, walks)) => vec![Cell::Number(*walks)],
        None => unknown("nobody walks to a daily need"),
    };
    let walked = |place: usize| details.walked_m.get(place).cloned().into_iter().collect();
    let cells: [Vec<Cell>; LEAVES.len()] = [
        details.shed_areas_m2.clone(),
        details.circles.clone(),
        details.drawn_center_homes.clone(),
        details.best_center_homes.clone(),
        details.directness_homes.clone(),
        details.directness_sums.clone(),
        details.directness_most_of.clone(),
        of_fronts(|front| front.directness),
        of_fronts(|front| front.homes),
        busiest,
        walked(0),
        walked(1),
        details.mix_homes.clone(),
        details.mix_sums.clone(),
        details.needs_reached.clone(),
        details.cells.clone(),
        details.unlike_neighbors.clone(),
    ];
    for ((id, ..), cells) in LEAVES.iter().zip(cells) {
        inputs.set_counted(id, cells, Some("walk_details"));
    }
}

/// The one entry of an axis that holds nothing.
fn none(title: &str) -> Vec<Entry> {
    vec![Entry::new("none", title)]
}
