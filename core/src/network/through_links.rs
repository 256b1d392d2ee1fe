//! Which links lead somewhere: not only into a dead end, nor into an area with a single way in and out.

use super::counting_rule::{CountedLink, LinkEnd};

/// Whether each link lies on a way through: from one end that leaves the site to another without passing a node twice, or,
/// when none leaves it, on a ring of the largest set of links so joined.
///
/// All ends that leave the site are taken as one node, the world outside; the links in one two-connected set with it
/// are those that stay when any single junction is closed. O(n log n + m).
pub(super) fn through_links(links: &[CountedLink]) -> Vec<bool> {
    let graph = Graph::of(links);
    let blocks = graph.blocks();
    let touches_outside =
        |block: &&Vec<usize>| block.len() > 1 && block.iter().any(|&link| graph.ends[link].contains(&Graph::OUTSIDE));
    let mut kept = vec![false; links.len()];
    let has_outside = graph.ends.iter().any(|ends| ends.contains(&Graph::OUTSIDE));
    if has_outside {
        for &link in blocks.iter().filter(touches_outside).flatten() {
            kept[link] = true;
        }
    } else {
        // Of equally large ones the one with the lowest link.
        let largest = blocks
            .iter()
            .filter(|block| block.len() > 1)
            .min_by_key(|block| (std::cmp::Reverse(block.len()), block.iter().min().copied()));
        for &link in largest.into_iter().flatten() {
            kept[link] = true;
        }
    }
    kept
}

fn node_of(end: LinkEnd) -> Option<u32> {
    if let LinkEnd::At(node) = end { Some(node) } else { None }
}

/// Links as pairs of small node numbers, with the links at every node.
struct Graph {
    ends: Vec<[usize; 2]>,
    first: Vec<usize>,
    links_at: Vec<usize>,
}

impl Graph {
    const OUTSIDE: usize = 0;

    fn of(links: &[CountedLink]) -> Self {
        let nodes = || links.iter().flat_map(|link| link.ends).filter_map(node_of);
        let mut distinct: Vec<u32> = nodes().collect();
        distinct.sort_unstable();
        distinct.dedup();
        let mut loose = distinct.len();
        let mut end = |end: LinkEnd| match end {
            LinkEnd::At(node) => distinct.partition_point(|&other| other < node) + 1,
            LinkEnd::Leaves => Self::OUTSIDE,
            LinkEnd::Stub => {
                loose += 1;
                loose
            }
        };
        let ends: Vec<[usize; 2]> = links.iter().map(|link| link.ends.map(&mut end)).collect();
        let node_count = loose + 1;
        let mut at: Vec<(usize, usize)> = ends
            .iter()
            .enumerate()
            .flat_map(|(link, &[a, b])| [(a, link), (b, link)])
            .collect();
        at.sort_unstable();
        let first = (0..=node_count)
            .map(|node| at.partition_point(|&(other, _)| other < node))
            .collect();
        let links_at = at.into_iter().map(|(_, link)| link).collect();
        Self { ends, first, links_at }
    }

    /// The two-connected sets of links, bridges alone, loops left out: depth-first search with lowest reached times.
    /// Source: J. Hopcroft and R. Tarjan, "Efficient algorithms for graph manipulation", Communications of the ACM 16,
    /// 1973 (from memory).
    fn blocks(&self) -> Vec<Vec<usize>> {
        let node_count = self.first.len() - 1;
        let mut found_at = vec![0_usize; node_count];
        let mut lowest = vec![0_usize; node_count];
        let mut time = 0;
        let mut blocks = Vec::new();
        let mut open_links: Vec<usize> = Vec::new();
        for root in 0..node_count {
            if found_at[root] != 0 {
                continue;
            }
            time += 1;
            (found_at[root], lowest[root]) = (time, time);
            // (node, the link it was found over, where in its links the search stands)
            let mut path: Vec<(usize, Option<usize>, usize)> = vec![(root, None, self.first[root])];
            while let Some(&(node, over, next)) = path.last() {
                if next < self.first[node + 1] {
                    if let Some(last) = path.last_mut() {
                        last.2 += 1;
                    }
                    let link = self.links_at[next];
                    let [a, b] = self.ends[link];
                    let other = if a == node { b } else { a };
                    if Some(link) == over || other == node {
                        continue;
                    }
                    if found_at[other] == 0 {
                        time += 1;
                        (found_at[other], lowest[other]) = (time, time);
                        open_links.push(link);
                        path.push((other, Some(link), self.first[other]));
                    } else if found_at[other] < found_at[node] {
                        open_links.push(link);
                        lowest[node] = lowest[node].min(found_at[other]);
                    }
                } else {
                    path.pop();
                    let (Some(&(before, ..)), Some(over)) = (path.last(), over) else {
                        continue;
                    };
                    lowest[before] = lowest[before].min(lowest[node]);
                    if lowest[node] >= found_at[before] {
                        let start = open_links.iter().rposition(|&link| link == over).unwrap_or(0);
                        blocks.push(open_links.split_off(start));
                    }
                }
            }
        }
        blocks
    }
}
