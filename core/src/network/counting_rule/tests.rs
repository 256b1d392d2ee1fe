use super::*;

fn link(from: u32, to: u32, kind: CountedKind, street: u32) -> CountedLink {
    CountedLink { from, to, kind, street }
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
            links.push(link(node(line, step), node(line, step + 1), CountedKind::Street, line));
            links.push(link(
                node(step, line),
                node(step + 1, line),
                CountedKind::Street,
                100 + line,
            ));
        }
        if outer {
            for (far, near, street) in [
                (0, node(line, 0), line),
                (1, node(line, side - 1), line),
                (2, node(0, line), 100 + line),
                (3, node(side - 1, line), 100 + line),
            ] {
                links.push(link(1_000 + 4 * line + far, near, CountedKind::Outer, street));
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
    links.retain(|link| (link.from, link.to) != (0, 1));
    links.push(link(0, 50, CountedKind::Street, 0));
    links.push(link(50, 1, CountedKind::Street, 0));
    links.push(link(50, 51, CountedKind::Street, 7));
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [0, 1, 2, 3]);
}

/// The same definition: nor a junction that is the only way into an area, nor any beyond it.
#[test]
fn an_area_behind_a_single_junction_does_not_count() {
    let mut links = grid(2, true);
    links.retain(|link| (link.from, link.to) != (0, 1));
    links.push(link(0, 50, CountedKind::Street, 0));
    links.push(link(50, 1, CountedKind::Street, 0));
    // A stem to a ring of three junctions, with a street across it.
    for (from, to) in [(50, 60), (60, 61), (61, 62), (62, 60), (61, 62)] {
        links.push(link(from, to, CountedKind::Street, 8));
    }
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [0, 1, 2, 3]);
    // With a second way out from the ring all of it counts, the first junction too.
    links.push(link(62, 900, CountedKind::Outer, 9));
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [0, 1, 2, 3, 50, 60, 61, 62]);
}

#[test]
fn without_outer_links_the_largest_mesh_counts() {
    let mut links = grid(3, false);
    links.push(link(4, 70, CountedKind::Street, 9));
    let counted = count(rule("leed-nd-intersections"), &links);
    assert_eq!(counted.nodes, [1, 3, 4, 5, 7]);
}

#[test]
fn pieces_joined_where_nothing_counts_are_one_link() {
    // A street of three pieces between a crossing and a dead-end head; the section changes on the way.
    let cross = [(0, 10), (0, 11), (0, 12)].map(|(from, to)| link(from, to, CountedKind::Street, 1));
    let mut links = cross.to_vec();
    for (from, to) in [(0, 1), (1, 2), (2, 3)] {
        links.push(link(from, to, CountedKind::Street, 1));
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
    let ring = [(0, 1), (1, 2), (2, 3), (3, 0)].map(|(from, to)| link(from, to, CountedKind::Street, 1));
    let mut links = ring.to_vec();
    links.push(link(0, 20, CountedKind::Stub, 2));
    for (node, far) in [(1, 21), (2, 22), (3, 23)] {
        links.push(link(node, far, CountedKind::Outer, 3));
    }
    let counted = count(cary, &links);
    assert_eq!((counted.nodes.len(), counted.link_halves), (4, 10));
    assert_eq!(counted.link_node_ratio(), Some(1.25));
    assert!(counted.link_node_ratio() >= cary.least_ratio);
}

#[test]
fn alleys_count_only_where_the_rule_says() {
    let mut links = grid(2, true);
    links.push(link(0, 80, CountedKind::Alley, 40));
    links.push(link(80, 3, CountedKind::Alley, 40));
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
