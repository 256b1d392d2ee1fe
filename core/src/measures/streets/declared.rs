//! The figures of streets and blocks.

use super::frontage_shares::fronting;
use super::methods::{ALPHA, GAMMA, HOW_MANY, HOW_MANY_LENGTHS, HOW_MANY_SOME, LONGEST, MEDIAN_LENGTH, MOST_HOMES};
use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::unit;
use crate::network::counting_rule::COUNTING_RULES;
use crate::say;

/// Kinds of way, in the order of [`super::site_streets::WAYS`].
fn way_entries() -> [(&'static str, &'static str); 3] {
    [
        ("streets", say!("measures-way-streets")),
        ("alleys", say!("measures-way-alleys")),
        ("paths", say!("measures-way-paths")),
    ]
}

/// How many links meet, in the order of [`super::RuleCount::intersections`].
fn legs() -> [(&'static str, &'static str); 3] {
    [
        ("two", say!("measures-legs-two")),
        ("three", say!("measures-legs-three")),
        ("four_or_more", say!("measures-legs-four")),
    ]
}

/// Why vehicles from outside do not reach the front of a home, in the order they are filled.
pub(super) fn fronts_not_reached() -> [(&'static str, &'static str); 3] {
    [
        ("cut_off", say!("measures-front-cut-off")),
        ("on_paths", say!("measures-front-on-paths")),
        ("no_front", say!("measures-front-none")),
    ]
}

/// Declares streets and blocks. Needs what [`crate::measures::homes::declare`] declares.
pub fn declare(graph: &mut GraphBuilder) {
    lengths(graph);
    counting(graph);
    indices(graph);
    dead_ends(graph);
    ways(graph);
    frontage(graph);
    super::street_sides::declare(graph);
    blocks(graph);
    sun(graph);
}

fn lengths(graph: &mut GraphBuilder) {
    graph.fixed_axis("way", say!("measures-way-kind"), &way_entries());
    graph.open_axis("street_section", say!("measures-street-section"));
    let _ = graph
        .counted("streets.drawn", say!("measures-length-drawn"), unit::LENGTH)
        .over(&["way", "street_section"]);
    graph
        .figure(
            "streets.length_by_section",
            say!("measures-length-section"),
            unit::LENGTH,
        )
        .over(&["street_section"])
        .sum("streets.drawn", &["way"]);
    graph
        .figure("streets.length_by_way", say!("measures-length-way"), unit::LENGTH)
        .over(&["way"])
        .sum("streets.drawn", &["street_section"]);
    graph
        .figure("streets.length", say!("measures-length-streets"), unit::LENGTH)
        .entry("streets.length_by_way", "way", "streets");
    graph
        .figure(
            "streets.length_per_home",
            say!("measures-length-per-home"),
            unit::LENGTH_PER_HOME,
        )
        .formula(figure("streets.length") / figure("homes.count"));
}

fn counting(graph: &mut GraphBuilder) {
    let rules = COUNTING_RULES.map(|rule| (rule.id, rule.name()));
    graph.fixed_axis("counting_rule", say!("measures-counting-rule"), &rules);
    graph.laid_down(&COUNTING_RULES.map(|rule| rule.source()));
    graph.fixed_axis("legs", say!("measures-legs"), &legs());
    let by_rule = &["counting_rule"];
    let _ = graph
        .counted(
            "streets.counted_intersections",
            say!("measures-intersections-legs"),
            unit::INTERSECTIONS,
        )
        .over(&["counting_rule", "legs"]);
    let _ = graph
        .counted("streets.counted_heads", say!("measures-heads"), unit::COUNT)
        .over(by_rule);
    let _ = graph
        .counted("streets.counted_links", say!("measures-links"), unit::NUMBER)
        .over(by_rule);
    let _ = graph
        .counted("streets.density_land", say!("measures-density-land"), unit::LAND)
        .over(by_rule);
    let _ = graph
        .chosen(
            "streets.least_link_node_ratio",
            say!("measures-least-ratio"),
            unit::NUMBER,
        )
        .over(by_rule);

    graph
        .figure(
            "streets.intersections",
            say!("measures-intersections"),
            unit::INTERSECTIONS,
        )
        .over(by_rule)
        .sum("streets.counted_intersections", &["legs"]);
    graph
        .figure(
            "streets.intersection_density",
            say!("measures-intersection-density"),
            unit::INTERSECTIONS_PER_LAND,
        )
        .over(by_rule)
        .formula(figure("streets.intersections") / figure("streets.density_land"));
    graph
        .figure("streets.counted_nodes", say!("measures-nodes"), unit::COUNT)
        .over(by_rule)
        .formula(figure("streets.intersections") + figure("streets.counted_heads"));
    graph
        .figure("streets.link_node_ratio", say!("measures-link-node"), unit::NUMBER)
        .over(by_rule)
        .formula(figure("streets.counted_links") / figure("streets.counted_nodes"));
    graph
        .figure(
            "streets.link_node_ratio_by_least",
            say!("measures-link-node-least"),
            unit::NUMBER,
        )
        .over(by_rule)
        .formula(figure("streets.link_node_ratio") / figure("streets.least_link_node_ratio"));
    graph
        .figure(
            "streets.connected_node_ratio",
            say!("measures-connected-node"),
            unit::NUMBER,
        )
        .over(by_rule)
        .formula(figure("streets.intersections") / figure("streets.counted_nodes"));
}

fn indices(graph: &mut GraphBuilder) {
    graph.open_axis("street_part", say!("measures-part"));
    let _ = graph
        .counted("streets.part_nodes", say!("measures-part-nodes"), unit::COUNT)
        .over(&["street_part"]);
    let _ = graph
        .counted("streets.part_links", say!("measures-part-links"), unit::COUNT)
        .over(&["street_part"]);
    graph
        .figure("streets.parts", say!("measures-parts"), unit::COUNT)
        .method(&HOW_MANY, &["streets.part_nodes"], &["street_part"]);
    graph
        .figure("streets.graph_nodes", say!("measures-graph-nodes"), unit::COUNT)
        .sum("streets.part_nodes", &["street_part"]);
    graph
        .figure("streets.graph_links", say!("measures-graph-links"), unit::COUNT)
        .sum("streets.part_links", &["street_part"]);
    graph
        .figure("streets.cycles", say!("measures-cycles"), unit::COUNT)
        .formula(figure("streets.graph_links") - figure("streets.graph_nodes") + figure("streets.parts"));
    graph
        .figure("streets.beta", say!("measures-beta"), unit::NUMBER)
        .formula(figure("streets.graph_links") / figure("streets.graph_nodes"));
    graph
        .figure("streets.alpha", say!("measures-alpha-index"), unit::NUMBER)
        .method(&ALPHA, &["streets.cycles", "streets.graph_nodes"], &[]);
    graph
        .figure("streets.gamma", say!("measures-gamma-index"), unit::NUMBER)
        .method(&GAMMA, &["streets.graph_links", "streets.graph_nodes"], &[]);
}

fn dead_ends(graph: &mut GraphBuilder) {
    graph.open_axis("dead_end", say!("measures-dead-end-axis"));
    let _ = graph
        .counted(
            "streets.dead_end_lengths",
            say!("measures-dead-end-lengths"),
            unit::LENGTH,
        )
        .over(&["dead_end"]);
    let along = &["dead_end"];
    graph
        .figure("streets.dead_ends", say!("measures-dead-ends"), unit::COUNT)
        .method(&HOW_MANY_LENGTHS, &["streets.dead_end_lengths"], along);
    graph
        .figure(
            "streets.dead_end_length",
            say!("measures-dead-ends-length"),
            unit::LENGTH,
        )
        .sum("streets.dead_end_lengths", along);
    graph
        .figure(
            "streets.longest_dead_end",
            say!("measures-dead-end-longest"),
            unit::LENGTH,
        )
        .method(&LONGEST, &["streets.dead_end_lengths"], along);
}

fn ways(graph: &mut GraphBuilder) {
    graph.open_axis("way_in", say!("measures-way-in-axis"));
    graph.open_axis("single_place", say!("measures-single-place"));
    graph.fixed_axis(
        "front_not_reached",
        say!("measures-front-not-reached"),
        &fronts_not_reached(),
    );
    let _ = graph
        .counted("streets.leading_in", say!("measures-leading-in"), unit::COUNT)
        .over(&["way_in"]);
    let _ = graph
        .counted(
            "streets.streets_leading_in",
            say!("measures-streets-leading-in"),
            unit::COUNT,
        )
        .over(&["way_in"]);
    let _ = graph
        .counted("streets.homes_behind", say!("measures-homes-behind"), unit::HOMES)
        .over(&["single_place"]);
    let _ = graph
        .counted(
            "streets.fronts_not_reached",
            say!("measures-fronts-not-reached"),
            unit::HOMES,
        )
        .over(&["front_not_reached"]);
    graph
        .figure("streets.ways_in_and_out", say!("measures-ways-in-out"), unit::COUNT)
        .method(&HOW_MANY, &["streets.leading_in"], &["way_in"]);
    graph
        .figure(
            "streets.ways_over_streets",
            say!("measures-ways-over-streets"),
            unit::COUNT,
        )
        .method(&HOW_MANY_SOME, &["streets.streets_leading_in"], &["way_in"]);
    graph.open_axis("boundary_gap", say!("measures-gap-axis"));
    let gaps = &["boundary_gap"];
    let _ = graph
        .counted("streets.boundary_gaps", say!("measures-gaps"), unit::LENGTH)
        .over(gaps);
    graph
        .figure(
            "streets.boundary_gap_longest",
            say!("measures-gap-longest"),
            unit::LENGTH,
        )
        .method(&LONGEST, &["streets.boundary_gaps"], gaps);
    graph
        .figure("streets.boundary_gap_total", say!("measures-gap-total"), unit::LENGTH)
        .sum("streets.boundary_gaps", gaps);
    graph
        .figure("streets.boundary_gap_mean", say!("measures-gap-mean"), unit::LENGTH)
        .formula(figure("streets.boundary_gap_total") / figure("streets.boundary_gap_count"));
    graph
        .figure("streets.boundary_gap_count", say!("measures-gap-count"), unit::COUNT)
        .method(&HOW_MANY_LENGTHS, &["streets.boundary_gaps"], gaps);
    graph
        .figure(
            "streets.most_homes_behind_one",
            say!("measures-most-behind"),
            unit::HOMES,
        )
        .method(&MOST_HOMES, &["streets.homes_behind"], &["single_place"]);
    graph
        .figure(
            "streets.most_homes_behind_one_share",
            say!("measures-most-behind-share"),
            unit::SHARE,
        )
        .formula(figure("streets.most_homes_behind_one") / figure("homes.count"));
    graph
        .figure(
            "streets.homes_not_reached_in_front",
            say!("measures-homes-not-reached"),
            unit::HOMES,
        )
        .sum("streets.fronts_not_reached", &["front_not_reached"]);
}

fn frontage(graph: &mut GraphBuilder) {
    graph.fixed_axis("fronting", say!("measures-fronting"), &fronting());
    let _ = graph
        .counted("streets.frontage", say!("measures-frontage"), unit::LENGTH)
        .over(&["fronting"]);
    graph
        .figure("streets.frontage_total", say!("measures-frontage-total"), unit::LENGTH)
        .sum("streets.frontage", &["fronting"]);
    graph
        .figure("streets.frontage_share", say!("measures-frontage-share"), unit::SHARE)
        .over(&["fronting"])
        .formula(figure("streets.frontage") / figure("streets.frontage_total"));
}

fn blocks(graph: &mut GraphBuilder) {
    graph.open_axis("block", say!("measures-block"));
    let along = &["block"];
    let _ = graph
        .counted("blocks.perimeters", say!("measures-perimeters"), unit::LENGTH)
        .over(along);
    let _ = graph
        .counted("blocks.longest_sides", say!("measures-longest-sides"), unit::LENGTH)
        .over(along);
    graph
        .figure("blocks.count", say!("measures-blocks"), unit::COUNT)
        .method(&HOW_MANY_LENGTHS, &["blocks.perimeters"], along);
    graph
        .figure(
            "blocks.perimeter_median",
            say!("measures-perimeter-median"),
            unit::LENGTH,
        )
        .method(&MEDIAN_LENGTH, &["blocks.perimeters"], along);
    graph
        .figure(
            "blocks.perimeter_longest",
            say!("measures-perimeter-longest"),
            unit::LENGTH,
        )
        .method(&LONGEST, &["blocks.perimeters"], along);
    graph
        .figure("blocks.perimeter_total", say!("measures-perimeter-total"), unit::LENGTH)
        .sum("blocks.perimeters", along);
    graph
        .figure("blocks.perimeter_mean", say!("measures-perimeter-mean"), unit::LENGTH)
        .formula(figure("blocks.perimeter_total") / figure("blocks.count"));
    graph
        .figure(
            "blocks.length_median",
            say!("measures-block-length-median"),
            unit::LENGTH,
        )
        .method(&MEDIAN_LENGTH, &["blocks.longest_sides"], along);
    graph
        .figure(
            "blocks.length_longest",
            say!("measures-block-length-longest"),
            unit::LENGTH,
        )
        .method(&LONGEST, &["blocks.longest_sides"], along);
}

fn sun(graph: &mut GraphBuilder) {
    let _ = graph.counted("sun.east_west_streets", say!("measures-sun-streets"), unit::LENGTH);
    let _ = graph.counted("sun.east_west_blocks", say!("measures-sun-blocks"), unit::COUNT);
    let _ = graph.counted("sun.lots", say!("measures-sun-lots"), unit::LOTS);
    let _ = graph.counted("sun.solar_lots", say!("measures-sun-lots-solar"), unit::LOTS);
    graph
        .figure("sun.streets_share", say!("measures-sun-streets-share"), unit::SHARE)
        .formula(figure("sun.east_west_streets") / figure("streets.length"));
    graph
        .figure("sun.blocks_share", say!("measures-sun-blocks-share"), unit::SHARE)
        .formula(figure("sun.east_west_blocks") / figure("blocks.count"));
    graph
        .figure("sun.lots_share", say!("measures-sun-lots-share"), unit::SHARE)
        .formula(figure("sun.solar_lots") / figure("sun.lots"));
}
