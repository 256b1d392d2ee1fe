//! The figures of walking and mix in detail.

use super::{SHED_METHODS, SHED_WALKS_S, TO, WalkDetails, shed_methods, waiting};
use crate::figures::axis::Entry;
use crate::figures::expression::{constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::unit::{self, Unit};
use crate::measures::walk::destinations::Destination;
use crate::plan::document::UnitSystem;
use crate::say;

/// Axes whose entries come with the details.
const OPEN_AXES: [&str; 3] = ["best_center", "indirect_front", "busiest_segment"];

/// Every leaf, with how many cells it has where nothing is known.
const LEAVES: [(&str, Unit, &[&str], usize); 18] = [
    (
        "walk.shed_areas",
        unit::LAND,
        &["shed_method", "shed_walk"],
        SHED_METHODS * SHED_WALKS_S.len(),
    ),
    ("walk.shed_circles", unit::COUNT, &[], 1),
    ("walk.drawn_center_homes", unit::HOMES, &[], 1),
    ("walk.best_center_homes", unit::HOMES, &["best_center"], 1),
    ("walk.directness_homes", unit::HOMES, &["directness_to"], TO.len()),
    ("walk.directness_sums", unit::HOMES, &["directness_to"], TO.len()),
    ("walk.directness_most_of", unit::NUMBER, &["directness_to"], TO.len()),
    ("walk.indirect_fronts", unit::NUMBER, &["indirect_front"], 1),
    ("walk.indirect_front_homes", unit::HOMES, &["indirect_front"], 1),
    ("walk.segment_walks", unit::COUNT, &["busiest_segment"], 1),
    ("walk.walked_length", unit::DISTANCE, &[], 1),
    ("walk.walked_length_busiest", unit::DISTANCE, &[], 1),
    ("mix.reached_homes", unit::HOMES, &["shed_walk"], SHED_WALKS_S.len()),
    (
        "mix.reached_evenness_sums",
        unit::HOMES,
        &["shed_walk"],
        SHED_WALKS_S.len(),
    ),
    (
        "mix.needs_reached_sums",
        unit::HOMES,
        &["shed_walk"],
        SHED_WALKS_S.len(),
    ),
    (
        "walk.sure_need_homes",
        unit::HOMES,
        &["need", "shed_walk"],
        Destination::NEEDS.len() * SHED_WALKS_S.len(),
    ),
    ("mix.developed_cells", unit::COUNT, &[], 1),
    ("mix.unlike_neighbors", unit::NUMBER, &[], 1),
];

/// What each of [`LEAVES`] is called.
fn leaf_titles() -> [&'static str; LEAVES.len()] {
    [
        say!("measures-shed-areas"),
        say!("measures-shed-circles"),
        say!("measures-drawn-center"),
        say!("measures-best-center-homes"),
        say!("measures-directness-homes"),
        say!("measures-directness-sums"),
        say!("measures-directness-most"),
        say!("measures-indirect-fronts"),
        say!("measures-indirect-front-homes"),
        say!("measures-segment-walks"),
        say!("measures-walked-length"),
        say!("measures-walked-busiest"),
        say!("measures-reached-homes"),
        say!("measures-reached-evenness"),
        say!("measures-needs-sums"),
        say!("measures-sure-need-homes"),
        say!("measures-developed-cells"),
        say!("measures-unlike-neighbors"),
    ]
}

/// Declares the details. Needs what [`crate::measures::homes::declare`], [`crate::measures::walk::declare`] and
/// [`crate::measures::mix::declare`] declare.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("shed_method", say!("measures-shed-method"), &shed_methods());
    graph.fixed_axis(
        "shed_walk",
        say!("measures-walk"),
        &[
            ("5min", say!("measures-within-5")),
            ("10min", say!("measures-within-10")),
        ],
    );
    for (axis, title, to) in [
        ("directness_to", say!("measures-destination"), &TO[..]),
        ("need", say!("measures-daily-need"), &Destination::NEEDS[..]),
    ] {
        let to: Vec<(&str, &str)> = to.iter().map(|held| (held.id(), held.title())).collect();
        graph.fixed_axis(axis, title, &to);
    }
    let titles = [
        say!("measures-best-center"),
        say!("measures-indirect-front"),
        say!("measures-busiest-segment"),
    ];
    for (id, title) in OPEN_AXES.into_iter().zip(titles) {
        graph.open_axis(id, title);
    }
    for ((id, unit, axes, _), title) in LEAVES.into_iter().zip(leaf_titles()) {
        let _ = graph.counted(id, title, unit).over(axes);
    }
    let _ = graph
        .chosen("walk.shed_times", say!("measures-shed-time"), unit::MINUTES)
        .over(&["shed_walk"]);
    declare_walks(graph);
    declare_mix(graph);
}

fn declare_walks(graph: &mut GraphBuilder) {
    let sheds = ["shed_method", "shed_walk"];
    graph
        .figure("walk.shed_area", say!("measures-shed-area"), unit::LAND)
        .over(&sheds)
        .formula(figure("walk.shed_areas"));
    let radius = || figure("walk.base_speed") * figure("walk.shed_times");
    graph
        .figure("walk.shed_circle_area", say!("measures-shed-circle"), unit::LAND)
        .over(&["shed_walk"])
        .formula(constant(std::f64::consts::PI, unit::NUMBER) * figure("walk.shed_circles") * radius() * radius());
    graph
        .figure("walk.ped_shed_ratio", say!("measures-shed-ratio"), unit::SHARE)
        .over(&sheds)
        .formula(figure("walk.shed_areas") / figure("walk.shed_circle_area"));

    graph
        .figure("walk.directness_mean", say!("measures-directness-mean"), unit::NUMBER)
        .over(&["directness_to"])
        .formula(figure("walk.directness_sums") / figure("walk.directness_homes"));
    graph
        .figure("walk.directness_90th", say!("measures-directness-90"), unit::NUMBER)
        .over(&["directness_to"])
        .formula(figure("walk.directness_most_of"));
    graph
        .figure("walk.worst_directness", say!("measures-worst-directness"), unit::NUMBER)
        .over(&["indirect_front"])
        .formula(figure("walk.indirect_fronts"));
    graph
        .figure(
            "walk.worst_directness_homes",
            say!("measures-worst-directness-homes"),
            unit::HOMES,
        )
        .over(&["indirect_front"])
        .formula(figure("walk.indirect_front_homes"));

    graph
        .figure(
            "walk.sure_need_homes_share",
            say!("measures-sure-need-share"),
            unit::SHARE,
        )
        .over(&["need", "shed_walk"])
        .formula(figure("walk.sure_need_homes") / figure("homes.count"));

    let best = ["best_center"];
    graph
        .figure("walk.best_center_5min_homes", say!("measures-best-5"), unit::HOMES)
        .over(&best)
        .formula(figure("walk.best_center_homes"));
    graph
        .figure(
            "walk.best_center_5min_homes_share",
            say!("measures-best-5-share"),
            unit::SHARE,
        )
        .over(&best)
        .formula(figure("walk.best_center_homes") / figure("homes.count"));
    graph
        .figure(
            "walk.best_center_5min_more_homes",
            say!("measures-best-5-more"),
            unit::HOMES,
        )
        .over(&best)
        .formula(figure("walk.best_center_homes") - figure("walk.drawn_center_homes"));

    graph
        .figure(
            "walk.busiest_segment_walks",
            say!("measures-busiest-walks"),
            unit::COUNT,
        )
        .over(&["busiest_segment"])
        .formula(figure("walk.segment_walks"));
    graph
        .figure("walk.busiest_tenth_share", say!("measures-busiest-tenth"), unit::SHARE)
        .formula(figure("walk.walked_length_busiest") / figure("walk.walked_length"));
}

fn declare_mix(graph: &mut GraphBuilder) {
    let walks = ["shed_walk"];
    graph
        .figure("mix.reached_evenness", say!("measures-evenness-mean"), unit::NUMBER)
        .over(&walks)
        .formula(figure("mix.reached_evenness_sums") / figure("mix.reached_homes"));
    graph
        .figure("mix.needs_reached", say!("measures-needs-mean"), unit::NUMBER)
        .over(&walks)
        .formula(figure("mix.needs_reached_sums") / figure("homes.count"));
    graph
        .figure("mix.dissimilarity", say!("measures-dissimilarity"), unit::SHARE)
        .formula(figure("mix.unlike_neighbors") / figure("mix.developed_cells"));
}

/// Sets every leaf, places told in these units; without details each says that they are to come.
pub fn set(inputs: &mut Inputs, details: Option<&WalkDetails>, units: UnitSystem) {
    inputs.set_chosen("walk.shed_times", numbers(&SHED_WALKS_S.map(|seconds| seconds as f64)));
    let Some(details) = details else {
        for axis in OPEN_AXES {
            inputs.set_entries(axis, none(waiting()));
        }
        for (id, _, _, cells) in LEAVES {
            inputs.set_counted(id, vec![Cell::Unknown(waiting().to_owned()); cells], None);
        }
        return;
    };
    let best = details
        .best_center
        .map(|at| vec![Entry::new("best", at.in_words(units))]);
    inputs.set_entries("best_center", best.unwrap_or_else(|| none(say!("measures-none-point"))));
    let busiest = details.busiest_segment.iter();
    let entries: Vec<Entry> = busiest.map(|(title, _)| Entry::new("segment", title.clone())).collect();
    let is_walked = !entries.is_empty();
    inputs.set_entries(
        "busiest_segment",
        if is_walked {
            entries
        } else {
            none(say!("measures-none-segment"))
        },
    );
    let fronts = (1..).zip(&details.indirect_fronts);
    let entries: Vec<Entry> = fronts
        .map(|(number, front)| Entry::new(format!("front_{number}"), front.title.clone()))
        .collect();
    let has_fronts = !entries.is_empty();
    inputs.set_entries(
        "indirect_front",
        if has_fronts {
            entries
        } else {
            none(say!("measures-none-front"))
        },
    );

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
        None => unknown(say!("measures-nobody-walks")),
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
        details.sure_needs.clone(),
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
