//! The figures of streets and blocks.

use super::frontage_shares::FRONTING;
use super::methods::{ALPHA, GAMMA, HOW_MANY, HOW_MANY_LENGTHS, HOW_MANY_SOME, LONGEST, MEDIAN_LENGTH, MOST_HOMES};
use crate::figures::expression::figure;
use crate::figures::graph::GraphBuilder;
use crate::figures::unit;
use crate::network::counting_rule::COUNTING_RULES;

/// Kinds of way, in the order of [`super::site_streets::WAYS`].
const WAY_ENTRIES: [(&str, &str); 3] = [("streets", "streets"), ("alleys", "alleys"), ("paths", "paths")];

/// How many links meet, in the order of [`super::RuleCount::intersections`].
const LEGS: [(&str, &str); 3] = [
    ("two", "two, at a corner of two streets or a sharp bend"),
    ("three", "three"),
    ("four_or_more", "four or more"),
];

/// Why vehicles from outside do not reach the front of a home, in the order they are filled.
pub(super) const FRONT_NOT_REACHED: [(&str, &str); 3] = [
    ("cut_off", "on streets that no way in reaches"),
    ("on_paths", "on a path, where vehicles may come by an alley behind"),
    ("no_front", "on no street"),
];

/// Declares streets and blocks. Needs what [`crate::measures::homes::declare`] declares.
pub fn declare(graph: &mut GraphBuilder) {
    lengths(graph);
    counting(graph);
    indices(graph);
    dead_ends(graph);
    ways(graph);
    frontage(graph);
    blocks(graph);
    sun(graph);
}

fn lengths(graph: &mut GraphBuilder) {
    graph.fixed_axis("way", "kind of way", &WAY_ENTRIES);
    graph.open_axis("street_section", "street section");
    let _ = graph
        .counted("streets.drawn", "length drawn inside the site", unit::LENGTH)
        .over(&["way", "street_section"]);
    graph
        .figure("streets.length_by_section", "length by street section", unit::LENGTH)
        .over(&["street_section"])
        .sum("streets.drawn", &["way"]);
    graph
        .figure(
            "streets.length_by_way",
            "length of streets, alleys and paths",
            unit::LENGTH,
        )
        .over(&["way"])
        .sum("streets.drawn", &["street_section"]);
    graph
        .figure("streets.length", "length of streets", unit::LENGTH)
        .entry("streets.length_by_way", "way", "streets");
    graph
        .figure(
            "streets.length_per_home",
            "street length per home",
            unit::LENGTH_PER_HOME,
        )
        .formula(figure("streets.length") / figure("homes.count"));
}

fn counting(graph: &mut GraphBuilder) {
    let rules = COUNTING_RULES.map(|rule| (rule.id, rule.name));
    graph.fixed_axis("counting_rule", "counting rule", &rules);
    graph.laid_down(&COUNTING_RULES.map(|rule| rule.source));
    graph.fixed_axis("legs", "how many links meet", &LEGS);
    let by_rule = &["counting_rule"];
    let _ = graph
        .counted(
            "streets.counted_intersections",
            "intersections counted, by how many links meet",
            unit::INTERSECTIONS,
        )
        .over(&["counting_rule", "legs"]);
    let _ = graph
        .counted("streets.counted_heads", "heads of dead ends counted", unit::COUNT)
        .over(by_rule);
    let _ = graph
        .counted("streets.counted_links", "links counted", unit::NUMBER)
        .over(by_rule);
    let _ = graph
        .counted(
            "streets.density_land",
            "land that the rule divides its intersections by",
            unit::LAND,
        )
        .over(by_rule);
    let _ = graph
        .chosen(
            "streets.least_link_node_ratio",
            "least link-node ratio the rule itself asks for",
            unit::NUMBER,
        )
        .over(by_rule);

    graph
        .figure(
            "streets.intersections",
            "intersections, by counting rule",
            unit::INTERSECTIONS,
        )
        .over(by_rule)
        .sum("streets.counted_intersections", &["legs"]);
    graph
        .figure(
            "streets.intersection_density",
            "intersection density, by counting rule",
            unit::INTERSECTIONS_PER_LAND,
        )
        .over(by_rule)
        .formula(figure("streets.intersections") / figure("streets.density_land"));
    graph
        .figure(
            "streets.counted_nodes",
            "nodes counted: intersections and heads of dead ends, by counting rule",
            unit::COUNT,
        )
        .over(by_rule)
        .formula(figure("streets.intersections") + figure("streets.counted_heads"));
    graph
        .figure(
            "streets.link_node_ratio",
            "link-node ratio, by counting rule",
            unit::NUMBER,
        )
        .over(by_rule)
        .formula(figure("streets.counted_links") / figure("streets.counted_nodes"));
    graph
        .figure(
            "streets.link_node_ratio_by_least",
            "link-node ratio by the least its own rule asks for: 1 or more passes",
            unit::NUMBER,
        )
        .over(by_rule)
        .formula(figure("streets.link_node_ratio") / figure("streets.least_link_node_ratio"));
    graph
        .figure(
            "streets.connected_node_ratio",
            "connected node ratio: intersections by nodes, by counting rule",
            unit::NUMBER,
        )
        .over(by_rule)
        .formula(figure("streets.intersections") / figure("streets.counted_nodes"));
}

fn indices(graph: &mut GraphBuilder) {
    graph.open_axis("street_part", "connected part");
    let _ = graph
        .counted(
            "streets.part_nodes",
            "nodes in each connected part (rule: links over nodes)",
            unit::COUNT,
        )
        .over(&["street_part"]);
    let _ = graph
        .counted(
            "streets.part_links",
            "links in each connected part (rule: links over nodes)",
            unit::COUNT,
        )
        .over(&["street_part"]);
    graph
        .figure("streets.parts", "connected parts of the street network", unit::COUNT)
        .method(&HOW_MANY, &["streets.part_nodes"], &["street_part"]);
    graph
        .figure("streets.graph_nodes", "nodes (rule: links over nodes)", unit::COUNT)
        .sum("streets.part_nodes", &["street_part"]);
    graph
        .figure("streets.graph_links", "links (rule: links over nodes)", unit::COUNT)
        .sum("streets.part_links", &["street_part"]);
    graph
        .figure("streets.cycles", "independent cycles", unit::COUNT)
        .formula(figure("streets.graph_links") - figure("streets.graph_nodes") + figure("streets.parts"));
    graph
        .figure("streets.beta", "beta index (rule: links over nodes)", unit::NUMBER)
        .formula(figure("streets.graph_links") / figure("streets.graph_nodes"));
    graph
        .figure(
            "streets.alpha",
            "alpha index, planar (rule: links over nodes)",
            unit::NUMBER,
        )
        .method(&ALPHA, &["streets.cycles", "streets.graph_nodes"], &[]);
    graph
        .figure(
            "streets.gamma",
            "gamma index, planar (rule: links over nodes)",
            unit::NUMBER,
        )
        .method(&GAMMA, &["streets.graph_links", "streets.graph_nodes"], &[]);
}

fn dead_ends(graph: &mut GraphBuilder) {
    graph.open_axis("dead_end", "dead end");
    let _ = graph
        .counted("streets.dead_end_lengths", "length of each dead end", unit::LENGTH)
        .over(&["dead_end"]);
    let along = &["dead_end"];
    graph.figure("streets.dead_ends", "dead ends", unit::COUNT).method(
        &HOW_MANY_LENGTHS,
        &["streets.dead_end_lengths"],
        along,
    );
    graph
        .figure("streets.dead_end_length", "length of all dead ends", unit::LENGTH)
        .sum("streets.dead_end_lengths", along);
    graph
        .figure("streets.longest_dead_end", "longest dead end", unit::LENGTH)
        .method(&LONGEST, &["streets.dead_end_lengths"], along);
}

fn ways(graph: &mut GraphBuilder) {
    graph.open_axis("way_in", "way in");
    graph.open_axis("single_place", "single street or crossing");
    graph.fixed_axis(
        "front_not_reached",
        "why vehicles do not reach the front",
        &FRONT_NOT_REACHED,
    );
    let _ = graph
        .counted(
            "streets.leading_in",
            "streets and alleys that lead in at each way in",
            unit::COUNT,
        )
        .over(&["way_in"]);
    let _ = graph
        .counted(
            "streets.streets_leading_in",
            "streets that lead in at each way in, alleys aside",
            unit::COUNT,
        )
        .over(&["way_in"]);
    let _ = graph
        .counted(
            "streets.homes_behind",
            "homes that vehicles reach over one street or crossing alone: ways in, then those most homes hang on",
            unit::HOMES,
        )
        .over(&["single_place"]);
    let _ = graph
        .counted(
            "streets.fronts_not_reached",
            "homes whose front vehicles from outside do not reach, by why",
            unit::HOMES,
        )
        .over(&["front_not_reached"]);
    graph
        .figure("streets.ways_in_and_out", "ways in and out", unit::COUNT)
        .method(&HOW_MANY, &["streets.leading_in"], &["way_in"]);
    graph
        .figure(
            "streets.ways_over_streets",
            "ways in and out over streets, alleys aside",
            unit::COUNT,
        )
        .method(&HOW_MANY_SOME, &["streets.streets_leading_in"], &["way_in"]);
    graph.open_axis("boundary_gap", "stretch of boundary between ways in");
    let gaps = &["boundary_gap"];
    let _ = graph
        .counted(
            "streets.boundary_gaps",
            "boundary from each way in to the next",
            unit::LENGTH,
        )
        .over(gaps);
    graph
        .figure(
            "streets.boundary_gap_longest",
            "longest stretch of boundary without a way in",
            unit::LENGTH,
        )
        .method(&LONGEST, &["streets.boundary_gaps"], gaps);
    graph
        .figure(
            "streets.boundary_gap_total",
            "boundary between ways in, all together",
            unit::LENGTH,
        )
        .sum("streets.boundary_gaps", gaps);
    graph
        .figure(
            "streets.boundary_gap_mean",
            "boundary between ways in, mean",
            unit::LENGTH,
        )
        .formula(figure("streets.boundary_gap_total") / figure("streets.boundary_gap_count"));
    graph
        .figure(
            "streets.boundary_gap_count",
            "stretches of boundary between ways in",
            unit::COUNT,
        )
        .method(&HOW_MANY_LENGTHS, &["streets.boundary_gaps"], gaps);
    graph
        .figure(
            "streets.most_homes_behind_one",
            "most homes behind a single street or crossing",
            unit::HOMES,
        )
        .method(&MOST_HOMES, &["streets.homes_behind"], &["single_place"]);
    graph
        .figure(
            "streets.most_homes_behind_one_share",
            "share of homes behind a single street or crossing, at most",
            unit::SHARE,
        )
        .formula(figure("streets.most_homes_behind_one") / figure("homes.count"));
    graph
        .figure(
            "streets.homes_not_reached_in_front",
            "homes whose front vehicles from outside do not reach",
            unit::HOMES,
        )
        .sum("streets.fronts_not_reached", &["front_not_reached"]);
}

fn frontage(graph: &mut GraphBuilder) {
    graph.fixed_axis("fronting", "what fronts", &FRONTING);
    let _ = graph
        .counted("streets.frontage", "street frontage by what fronts", unit::LENGTH)
        .over(&["fronting"]);
    graph
        .figure(
            "streets.frontage_total",
            "street frontage, both sides of streets",
            unit::LENGTH,
        )
        .sum("streets.frontage", &["fronting"]);
    graph
        .figure(
            "streets.frontage_share",
            "share of street frontage by what fronts",
            unit::SHARE,
        )
        .over(&["fronting"])
        .formula(figure("streets.frontage") / figure("streets.frontage_total"));
}

fn blocks(graph: &mut GraphBuilder) {
    graph.open_axis("block", "block");
    let along = &["block"];
    let _ = graph
        .counted(
            "blocks.perimeters",
            "perimeter of each block with streets all round, along the right-of-way",
            unit::LENGTH,
        )
        .over(along);
    let _ = graph
        .counted(
            "blocks.longest_sides",
            "longest side of each block with streets all round, along the right-of-way",
            unit::LENGTH,
        )
        .over(along);
    graph
        .figure("blocks.count", "blocks with streets all round", unit::COUNT)
        .method(&HOW_MANY_LENGTHS, &["blocks.perimeters"], along);
    graph
        .figure("blocks.perimeter_median", "block perimeter, median", unit::LENGTH)
        .method(&MEDIAN_LENGTH, &["blocks.perimeters"], along);
    graph
        .figure("blocks.perimeter_longest", "block perimeter, longest", unit::LENGTH)
        .method(&LONGEST, &["blocks.perimeters"], along);
    graph
        .figure("blocks.perimeter_total", "block perimeters together", unit::LENGTH)
        .sum("blocks.perimeters", along);
    graph
        .figure("blocks.perimeter_mean", "block perimeter, mean", unit::LENGTH)
        .formula(figure("blocks.perimeter_total") / figure("blocks.count"));
    graph
        .figure("blocks.length_median", "block length, median", unit::LENGTH)
        .method(&MEDIAN_LENGTH, &["blocks.longest_sides"], along);
    graph
        .figure("blocks.length_longest", "block length, longest", unit::LENGTH)
        .method(&LONGEST, &["blocks.longest_sides"], along);
}

fn sun(graph: &mut GraphBuilder) {
    let _ = graph.counted(
        "sun.east_west_streets",
        "length of streets within 20° of east-west",
        unit::LENGTH,
    );
    let _ = graph.counted(
        "sun.east_west_blocks",
        "blocks with an axis within 15° of east-west, at least as long along it as across",
        unit::COUNT,
    );
    let _ = graph.counted("sun.lots", "lots with homes", unit::LOTS);
    let _ = graph.counted(
        "sun.solar_lots",
        "lots with homes at least 75 ft deep with their front line within 30° of east-west",
        unit::LOTS,
    );
    graph
        .figure(
            "sun.streets_share",
            "share of street length that lies east-west",
            unit::SHARE,
        )
        .formula(figure("sun.east_west_streets") / figure("streets.length"));
    graph
        .figure("sun.blocks_share", "share of blocks that lie east-west", unit::SHARE)
        .formula(figure("sun.east_west_blocks") / figure("blocks.count"));
    graph
        .figure(
            "sun.lots_share",
            "share of lots with homes that have the sun",
            unit::SHARE,
        )
        .formula(figure("sun.solar_lots") / figure("sun.lots"));
}
