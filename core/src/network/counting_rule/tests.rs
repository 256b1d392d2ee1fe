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
    super::count(rule, &CountedNetwork::of(links.to_vec(), &[]))
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
    let without = count(rule("textbook"), &grid(3, false));
    assert_eq!((&without.nodes, without.link_halves), (&inner.nodes, inner.link_halves));
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
        assert!(!rule.source().is_empty() && !rule.name().is_empty());
        assert!(COUNTING_RULES[..index].iter().all(|other| other.id != rule.id));
    }
    assert!(counting_rule("no-such-rule").is_none());
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
    let count =
        |rule: &CountingRule, links: &[CountedLink]| super::count(rule, &CountedNetwork::of(links.to_vec(), &[1]));
    let durham = count(rule("durham-13-6-1"), &links);
    assert_eq!((durham.nodes.as_slice(), durham.link_halves), ([0, 1, 2].as_slice(), 4));
    let cary = count(rule("cary-7-10-3"), &links);
    assert_eq!((cary.nodes.as_slice(), cary.link_halves), ([0, 2].as_slice(), 2));
    // Where an alley comes in nothing changes for a rule that does not count alleys.
    let with_alley = [links[0], links[1], link(1, 9, Alley, 5)];
    let durham = count(rule("durham-13-6-1"), &with_alley);
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
    let network = CountedNetwork::of(links, &[]);
    let counted = super::count(rule("textbook"), &network);
    let parts: Vec<(u32, u64, u64)> = counted_parts(rule("textbook"), &network, &counted)
        .iter()
        .map(|part| (part.lowest_node, part.nodes, part.link_halves))
        .collect();
    assert_eq!(parts, [(0, 4, 8), (70, 4, 6)]);
}

/// Links as the slow way sees them: ends at nodes, leaving, or stubs.
fn random_links(random: &mut u64) -> (Vec<CountedLink>, Vec<u32>) {
    let mut below = |limit: u64| {
        *random = random
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (*random >> 33) % limit
    };
    let nodes = 2 + below(9);
    let links = (0..below(14))
        .map(|_| {
            let ends = [0; 2].map(|_| match below(12) {
                0 => Leaves,
                1 => Stub,
                _ => At(below(nodes) as u32),
            });
            let kind = *[Street, Street, Street, Alley, Path, CountedKind::Outside]
                .get(below(6) as usize)
                .expect("six kinds");
            CountedLink {
                ends,
                kind,
                street: below(3) as u32,
            }
        })
        .collect();
    (links, (0..nodes as u32).filter(|_| below(3) == 0).collect())
}

/// Nodes and halves of links, one link after another joined to the next wherever the node between them does not count.
fn count_slowly(rule: &CountingRule, links: &[CountedLink], sharp_bends: &[u32]) -> (Vec<u32>, u64) {
    let mut legs: Vec<CountedLink> = links
        .iter()
        .copied()
        .filter(|link| match link.kind {
            Street => true,
            Alley => rule.counts_alleys,
            Path => rule.counts_paths,
            CountedKind::Outside => rule.counts_outside,
        })
        .filter(|link| rule.stub_halves > 0 || !link.ends.contains(&Stub))
        .collect();
    if rule.nodes == NodeRule::Through {
        let on_way = on_ways_through(&legs);
        legs = legs
            .into_iter()
            .zip(on_way)
            .filter(|(_, on_way)| *on_way)
            .map(|(leg, _)| leg)
            .collect();
    }
    let at = |legs: &[CountedLink], node: u32| -> Vec<(usize, usize)> {
        let ends = legs
            .iter()
            .enumerate()
            .flat_map(|(leg, link)| [(leg, 0, link.ends[0]), (leg, 1, link.ends[1])]);
        ends.filter(|(.., end)| *end == At(node))
            .map(|(leg, end, _)| (leg, end))
            .collect()
    };
    let counts = |node: u32| {
        let ends = at(&legs, node);
        let meet = ends.iter().any(|(leg, _)| legs[*leg].street != legs[ends[0].0].street);
        let is_bend = rule.counts_sharp_bends && sharp_bends.contains(&node);
        match (rule.nodes, ends.len()) {
            (_, 0) => false,
            (NodeRule::Through, legs) => legs > 2,
            (NodeRule::ThreeLegsOrHead, legs) => legs != 2 || is_bend,
            (NodeRule::RoadsMeetOrHead, legs) => legs != 2 || meet || is_bend,
        }
    };
    let counted: Vec<u32> = (0..20).filter(|node| counts(*node)).collect();
    let mut runs = legs.clone();
    for node in (0..20).filter(|node| !counted.contains(node)) {
        if let [(a, a_end), (b, b_end)] = at(&runs, node)[..]
            && a != b
        {
            runs[a].ends[a_end] = runs[b].ends[1 - b_end];
            runs.remove(b);
        }
    }
    let halves = runs.iter().map(|run| match run.ends {
        [At(a), At(b)] if counted.contains(&a) && counted.contains(&b) => 2,
        [At(node), Leaves] | [Leaves, At(node)] if counted.contains(&node) => u64::from(rule.counts_outer) * 2,
        [At(node), Stub] | [Stub, At(node)] if counted.contains(&node) => u64::from(rule.stub_halves),
        _ => 0,
    });
    let halves = halves.sum();
    (counted, halves)
}

/// Which links lie on a way from outside to outside that passes no node twice, every such way tried; without a link that
/// leaves, on the most links of one set in which any two lie on a ring.
fn on_ways_through(links: &[CountedLink]) -> Vec<bool> {
    fn walk(
        links: &[CountedLink],
        node: u32,
        nodes: &mut Vec<u32>,
        way: &mut Vec<usize>,
        until: LinkEnd,
        found: &mut Vec<Vec<usize>>,
    ) {
        for (link, held) in links
            .iter()
            .enumerate()
            .filter(|(link, _)| !way.contains(link))
            .collect::<Vec<_>>()
        {
            for (end, far) in [(held.ends[0], held.ends[1]), (held.ends[1], held.ends[0])] {
                if end != At(node) {
                    continue;
                }
                way.push(link);
                match far {
                    _ if far == until => found.push(way.clone()),
                    At(next) if !nodes.contains(&next) => {
                        nodes.push(next);
                        walk(links, next, nodes, way, until, found);
                        nodes.pop();
                    }
                    _ => {}
                }
                way.pop();
            }
        }
    }
    let mut ways = Vec::new();
    let has_outside = links
        .iter()
        .any(|link| link.ends.contains(&Leaves) && !link.ends.contains(&Stub));
    for (link, held) in links.iter().enumerate() {
        for (end, far) in [(held.ends[0], held.ends[1]), (held.ends[1], held.ends[0])] {
            match (end, far) {
                (Leaves, At(next)) if has_outside => {
                    walk(links, next, &mut vec![next], &mut vec![link], Leaves, &mut ways);
                }
                (At(start), At(next)) if !has_outside && start != next => {
                    walk(
                        links,
                        next,
                        &mut vec![start, next],
                        &mut vec![link],
                        At(start),
                        &mut ways,
                    );
                }
                _ => {}
            }
        }
    }
    let mut on_way = vec![false; links.len()];
    if has_outside {
        ways.iter().flatten().for_each(|link| on_way[*link] = true);
        return on_way;
    }
    // Rings that share a link are of one set.
    let mut sets: Vec<Vec<usize>> = Vec::new();
    for way in ways {
        let (joined, rest): (Vec<_>, Vec<_>) = sets
            .into_iter()
            .partition(|set| set.iter().any(|link| way.contains(link)));
        let mut set: Vec<usize> = joined.into_iter().flatten().chain(way).collect();
        set.sort_unstable();
        set.dedup();
        sets = rest;
        sets.push(set);
    }
    let largest = sets
        .into_iter()
        .min_by_key(|set| (std::cmp::Reverse(set.len()), set[0]));
    largest.into_iter().flatten().for_each(|link| on_way[link] = true);
    on_way
}

#[test]
fn counts_agree_with_joining_link_after_link() {
    let mut random = 11;
    let mut through = 0;
    for case in 0..3_000 {
        let (links, bends) = random_links(&mut random);
        let network = CountedNetwork::of(links.clone(), &bends);
        for rule in &COUNTING_RULES {
            let counted = super::count(rule, &network);
            let expected = count_slowly(rule, &links, &bends);
            assert_eq!(
                (&counted.nodes, counted.link_halves),
                (&expected.0, expected.1),
                "case {case}, {}: {links:?}, bends {bends:?}",
                rule.id
            );
            let parts = counted_parts(rule, &network, &counted);
            let nodes: u64 = parts.iter().map(|part| part.nodes).sum();
            let halves: u64 = parts.iter().map(|part| part.link_halves).sum();
            assert_eq!(
                (nodes, halves),
                (counted.nodes.len() as u64, counted.link_halves),
                "case {case}, {}",
                rule.id
            );
            through += u32::from(rule.nodes == NodeRule::Through && !counted.nodes.is_empty());
        }
    }
    assert!(through > 200, "{through}");
}

/// What a rule does is said in words of the trade; where it is laid down stands in its source.
#[test]
fn names_of_rules_name_no_place_and_no_rating() {
    for rule in &COUNTING_RULES {
        let first = rule.source().split(' ').next().unwrap();
        assert!(!rule.name().contains(first), "{}", rule.name());
        let capitals = rule.name().chars().filter(|letter| letter.is_uppercase());
        assert_eq!(capitals.count(), 0, "{}", rule.name());
    }
    let mut names = COUNTING_RULES.map(|rule| rule.name());
    names.sort_unstable();
    assert!(names.windows(2).all(|pair| pair[0] != pair[1]), "{names:?}");
}
