use super::*;

use CountedKind::{Alley, Path, Street};
use LinkEnd::{At, Leaves, Stub};

fn link(from: u32, to: u32, kind: CountedKind, street: u32) -> CountedLink {
    CountedLink {
        ends: [At(from), At(to)],
        kind,
        street,
    }
}

/// A link from a node to an end that is none.
fn loose(from: u32, end: LinkEnd, kind: CountedKind, street: u32) -> CountedLink {
    CountedLink {
        ends: [At(from), end],
        kind,
        street,
    }
}

fn count(rule: &CountingRule, links: &[CountedLink]) -> Counted {
    super::count(rule, links, &[])
}

fn rule(id: &str) -> &'static CountingRule {
    counting_rule(id).expect("a known rule")
}

/// A grid of `side` × `side` nodes; every street end has one outer link when `outer`. Rows are streets 0.., columns
/// streets 100...
fn grid(side: u32, outer: bool) -> Vec<CountedLink> {
    let mut links = Vec::new();
    let node = |row: u32, column: u32| row * side + column;
    for line in 0..side {
        for step in 0..side - 1 {
            links.push(link(node(line, step), node(line, step + 1), Street, line));
            links.push(link(node(step, line), node(step + 1, line), Street, 100 + line));
        }
        if outer {
            for (near, street) in [
                (node(line, 0), line),
                (node(line, side - 1), line),
                (node(0, line), 100 + line),
                (node(side - 1, line), 100 + line),
            ] {
                links.push(loose(near, Leaves, Street, street));
            }
        }
    }
    links
}

/// Check case N-A2: 3 × 3 nodes, full grid, with one outer link from each boundary street end. Derived from the rule of
/// Orlando FL code s 68.404 "Connectivity Index".
#[test]
fn n_a2_three_by_three_with_and_without_outer_links() {
    let near = |counted: &Counted, ratio: f64| {
        let told = counted.link_node_ratio().expect("nodes");
        assert!((told - ratio).abs() <= 0.001, "{told} is not {ratio}");
    };
    let orlando = count(rule("orlando-68-404"), &grid(3, true));
    assert_eq!((orlando.nodes.len(), orlando.link_halves), (9, 48));
    near(&orlando, 2.667);
    let inner = count(rule("textbook"), &grid(3, true));
    assert_eq!((inner.nodes.len(), inner.link_halves), (9, 24));
    near(&inner, 1.333);
    assert_eq!(count(rule("textbook"), &grid(3, false)), inner);
}

/// Check case N-A6: four through junctions, and one T-junction whose stem serves only a cul-de-sac. Derived from the
/// definition of intersection density in LEED 2009 for Neighborhood Development (credit SLLc1).
#[test]
fn n_a6_a_junction_that_serves_only_a_dead_end_does_not_count() {
    let mut links = grid(2, true);
    // Cut the first street between nodes 0 and 1 at node 50, and hang a cul-de-sac on it.
    links.retain(|link| link.ends != [At(0), At(1)]);
    links.push(link(0, 50, Street, 0));
    links.push(link(50, 1, Street, 0));
    links.push(link(50, 51, Street, 7));
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [0, 1, 2, 3]);
}

/// The same definition: nor a junction that is the only way into an area, nor any beyond it.
#[test]
fn an_area_behind_a_single_junction_does_not_count() {
    let mut links = grid(2, true);
    links.retain(|link| link.ends != [At(0), At(1)]);
    links.push(link(0, 50, Street, 0));
    links.push(link(50, 1, Street, 0));
    // A stem to a ring of three junctions, with a street across it.
    for (from, to) in [(50, 60), (60, 61), (61, 62), (62, 60), (61, 62)] {
        links.push(link(from, to, Street, 8));
    }
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [0, 1, 2, 3]);
    // With a second way out from the ring all of it counts, the first junction too.
    links.push(loose(62, Leaves, Street, 9));
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [0, 1, 2, 3, 50, 60, 61, 62]);
}

#[test]
fn without_outer_links_the_largest_mesh_counts() {
    let mut links = grid(3, false);
    links.push(link(4, 70, Street, 9));
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [1, 3, 4, 5, 7]);
}

#[test]
fn pieces_joined_where_nothing_counts_are_one_link() {
    // A street of three pieces between a crossing and a dead-end head; the section changes on the way.
    let cross = [(0, 10), (0, 11), (0, 12)].map(|(from, to)| link(from, to, Street, 1));
    let mut links = cross.to_vec();
    for (from, to) in [(0, 1), (1, 2), (2, 3)] {
        links.push(link(from, to, Street, 1));
    }
    let counted = count(rule("cary-7-10-3"), &links);
    assert_eq!(counted.nodes, [0, 3, 10, 11, 12]);
    assert_eq!(counted.heads, [3, 10, 11, 12]);
    assert_eq!(counted.link_halves, 8);
}

/// Check case N-A12: Cary NC Land Development Ordinance 7.10.3, published: 5 links, 4 nodes, ratio 1.25, passes 1.2.
/// Here: four crossings in a row of streets off the site, and stub-outs that count as links.
#[test]
fn n_a12_stubs_are_links_by_the_rule_of_cary() {
    let cary = rule("cary-7-10-3");
    let ring = [(0, 1), (1, 2), (2, 3), (3, 0)].map(|(from, to)| link(from, to, Street, 1));
    let mut links = ring.to_vec();
    links.push(loose(0, Stub, Street, 2));
    for node in 1..4 {
        links.push(loose(node, Leaves, Street, 3));
    }
    let counted = count(cary, &links);
    assert_eq!((counted.nodes.len(), counted.link_halves), (4, 10));
    assert_eq!(counted.link_node_ratio(), Some(1.25));
    assert!(counted.link_node_ratio() >= cary.least_ratio);
}

#[test]
fn alleys_count_only_where_the_rule_says() {
    let mut links = grid(2, true);
    links.push(link(0, 80, Alley, 40));
    links.push(link(80, 3, Alley, 40));
    assert_eq!(count(rule("durham-13-6-1"), &links).link_halves, 8);
    assert_eq!(count(rule("cary-7-10-3"), &links).link_halves, 10);
}

#[test]
fn rules_have_distinct_ids_and_sources() {
    for (index, rule) in COUNTING_RULES.iter().enumerate() {
        assert!(!rule.source.is_empty() && !rule.name.is_empty());
        assert!(COUNTING_RULES[..index].iter().all(|other| other.id != rule.id));
    }
    assert_eq!(counting_rule("no-such-rule"), None);
}

#[test]
fn nothing_drawn_is_nothing_counted() {
    for rule in &COUNTING_RULES {
        assert_eq!(count(rule, &[]), Counted::default());
    }
}

/// Greenville IL code, s 153.1068: the crossing with the street that gives access is no node, and the piece that leads
/// there is a piece of street. A ring with one way in: four nodes, four links and one beyond: 1.25, passes 1.20.
#[test]
fn the_piece_to_the_street_that_gives_access_counts_by_the_rule_of_greenville() {
    let greenville = rule("greenville-153-1068");
    let mut links = vec![loose(0, Leaves, Street, 0)];
    links.extend([(0, 1), (1, 2), (2, 3), (3, 0)].map(|(from, to)| link(from, to, Street, 1)));
    links.extend([(1, 11), (2, 12), (3, 13)].map(|(from, to)| link(from, to, Street, to)));
    let counted = count(greenville, &links);
    assert_eq!(
        (counted.nodes.len(), counted.heads.len(), counted.link_halves),
        (7, 3, 16)
    );
    let without_heads: Vec<CountedLink> = links.into_iter().filter(|link| link.street < 2).collect();
    // Only the entrance has three legs, and the ring from it to itself is one link.
    let counted = count(greenville, &without_heads);
    assert_eq!((counted.nodes.as_slice(), counted.link_halves), ([0].as_slice(), 4));
}

/// Durham NC Unified Development Ordinance, 13.6.1: a sharp bend is a node.
#[test]
fn a_sharp_bend_is_a_node_by_the_rule_of_durham_alone() {
    let links = [link(0, 1, Street, 0), link(1, 2, Street, 0)];
    let durham = super::count(rule("durham-13-6-1"), &links, &[1]);
    assert_eq!((durham.nodes.as_slice(), durham.link_halves), ([0, 1, 2].as_slice(), 4));
    let cary = super::count(rule("cary-7-10-3"), &links, &[1]);
    assert_eq!((cary.nodes.as_slice(), cary.link_halves), ([0, 2].as_slice(), 2));
    // Where an alley comes in nothing changes for a rule that does not count alleys.
    let with_alley = [links[0], links[1], link(1, 9, Alley, 5)];
    let durham = super::count(rule("durham-13-6-1"), &with_alley, &[1]);
    assert_eq!((durham.nodes.len(), durham.heads.len()), (3, 2));
}

#[test]
fn a_street_across_the_site_without_a_crossing_counts_nothing() {
    let across = CountedLink {
        ends: [Leaves, Leaves],
        kind: Street,
        street: 7,
    };
    for rule in &COUNTING_RULES {
        let mut links = grid(3, true);
        let alone = count(rule, &links);
        links.push(across);
        assert_eq!(count(rule, &links), alone, "{}", rule.id);
    }
}

#[test]
fn parts_are_those_that_hold_a_node() {
    let mut links = grid(2, false);
    links.extend([(70, 71), (71, 72), (71, 73)].map(|(from, to)| link(from, to, Street, 9)));
    links.push(link(80, 81, Path, 9));
    let counted = count(rule("textbook"), &links);
    let parts: Vec<(u32, u64, u64)> = counted
        .parts
        .iter()
        .map(|part| (part.lowest_node, part.nodes, part.link_halves))
        .collect();
    assert_eq!(parts, [(0, 4, 8), (70, 4, 6)]);
}
