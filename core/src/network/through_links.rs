//! Which links lead somewhere: not only into a dead end, nor into an area with a single way in and out.

use super::counting_rule::{CountedNetwork, LinkEnd};

/// Leaves of the links in `kept` those that lie on a way through: from one end that leaves the site to another without
/// passing a node twice, or, when none leaves it, on a ring of the largest set of links so joined.
///
/// All ends that leave the site are taken as one node, the world outside; the links in one two-connected set with it
/// are those that stay when any single junction is closed. Cost: linear.
pub(super) fn through_links(network: &CountedNetwork, kept: &mut [bool]) {
    let graph = Graph::of(network, kept);
    let mut asked = network.links().iter().zip(kept.iter()).filter(|(_, asked)| **asked);
    let has_outside = asked.any(|(link, _)| link.ends.contains(&LinkEnd::Leaves));
    kept.fill(false);
    let mut largest: Vec<usize> = Vec::new();
    graph.for_each_block(|block| {
        if block.len() < 2 {
            return;
        }
        if has_outside {
            if block.iter().any(|link| graph.ends[*link].contains(&graph.outside)) {
                block.iter().for_each(|link| kept[*link] = true);
            }
        } else if is_before(block, &largest) {
            largest = block.to_vec();
        }
    });
    for link in largest {
        kept[link] = true;
    }
}

/// Whether a set of links is larger, or as large with a lower link.
fn is_before(block: &[usize], other: &[usize]) -> bool {
    (other.len(), block.iter().min()) < (block.len(), other.iter().min())
}

/// Links as pairs of nodes, with the links at every node. Links that no ring can hold are left out: those that are not
/// asked for, stubs, and loops.
struct Graph {
    ends: Vec<[usize; 2]>,
    /// The world outside, as a node.
    outside: usize,
    first: Vec<usize>,
    at: Vec<usize>,
}

impl Graph {
    fn of(network: &CountedNetwork, asked: &[bool]) -> Self {
        let outside = network.node_count();
        let number = |end: LinkEnd| match end {
            LinkEnd::At(node) => Some(node as usize),
            LinkEnd::Leaves => Some(outside),
            LinkEnd::Stub => None,
        };
        let mut first = vec![0; outside + 2];
        let mut ends = Vec::with_capacity(asked.len());
        for (link, asked) in network.links().iter().zip(asked) {
            let pair = match link.ends.map(number) {
                [Some(a), Some(b)] if *asked && a != b => {
                    first[a + 1] += 1;
                    first[b + 1] += 1;
                    [a, b]
                }
                _ => [outside, outside],
            };
            ends.push(pair);
        }
        for node in 0..=outside {
            first[node + 1] += first[node];
        }
        let mut cursors = first.clone();
        let mut at = vec![0; first[outside + 1]];
        for (link, [a, b]) in ends.iter().enumerate().filter(|(_, [a, b])| a != b) {
            for node in [*a, *b] {
                at[cursors[node]] = link;
                cursors[node] += 1;
            }
        }
        Self {
            ends,
            outside,
            first,
            at,
        }
    }

    /// Visits the two-connected sets of links, bridges alone: depth-first search with lowest reached times.
    /// Source: J. Hopcroft and R. Tarjan, "Efficient algorithms for graph manipulation", Communications of the ACM 16,
    /// 1973 (from memory).
    fn for_each_block(&self, mut visit: impl FnMut(&[usize])) {
        let node_count = self.first.len() - 1;
        let mut found_at = vec![0_u32; node_count];
        let mut lowest = vec![0_u32; node_count];
        let mut time = 0;
        let mut open_links: Vec<usize> = Vec::new();
        // (node, the link it was found over, where that link stands in `open_links`, where in its links the search stands)
        let mut path: Vec<(usize, Option<usize>, usize, usize)> = Vec::new();
        for root in 0..node_count {
            if found_at[root] != 0 {
                continue;
            }
            time += 1;
            (found_at[root], lowest[root]) = (time, time);
            path.push((root, None, 0, self.first[root]));
            while let Some((node, over, start, next)) = path.last_mut() {
                let (node, over, start) = (*node, *over, *start);
                if *next < self.first[node + 1] {
                    let link = self.at[*next];
                    *next += 1;
                    if Some(link) == over {
                        continue;
                    }
                    let [a, b] = self.ends[link];
                    let other = if a == node { b } else { a };
                    if found_at[other] == 0 {
                        time += 1;
                        (found_at[other], lowest[other]) = (time, time);
                        path.push((other, Some(link), open_links.len(), self.first[other]));
                        open_links.push(link);
                    } else if found_at[other] < found_at[node] {
                        open_links.push(link);
                        lowest[node] = lowest[node].min(found_at[other]);
                    }
                    continue;
                }
                path.pop();
                let Some((before, ..)) = path.last() else { continue };
                let before = *before;
                lowest[before] = lowest[before].min(lowest[node]);
                if lowest[node] >= found_at[before] {
                    visit(&open_links[start..]);
                    open_links.truncate(start);
                }
            }
        }
    }
}
