//! What hangs on a single link or a single node: bridges and cut nodes, and how much weight lies behind each.
//!
//! Every node reaches one root, the world outside. A link is a *bridge* when closing it anywhere cuts something off from
//! the root; a node is a *cut node* when closing it does. Weight (homes) lies on the links. Behind a bridge lies all
//! weight that is cut off when it is closed at its end nearer to the root: its own and all beyond. Behind a node lies all
//! weight on links of which no end is left that reaches the root.
//!
//! Not counted: weight on links that do not reach the root in the first place; it is [told apart](Behind::unreached).

/// What lies behind each link and each node.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Behind {
    /// For every link the weight cut off by closing it; `None` unless it is a bridge that the root reaches.
    pub links: Vec<Option<f64>>,
    /// For every node the weight cut off by closing it; 0 where nothing is, at the root, and where it is not reached.
    pub nodes: Vec<f64>,
    /// When the search from the root came to each node, from 0 at the root; `None` where it never did. What lies behind
    /// something comes later than it.
    pub order: Vec<Option<u32>>,
    /// Weight on links that the root does not reach.
    pub unreached: f64,
}

/// A node of the path from the root to where the search stands.
struct Step {
    node: usize,
    /// The link it was found over.
    over: Option<usize>,
    /// Which of its links is next.
    next: usize,
    /// Weight on the links below it that go up to it and no further, or below.
    below: f64,
}

/// What lies behind each link and each node of a network of `node_count` nodes. `links` are pairs of nodes, loops and
/// parallel ones included; `weights` are theirs, and links with a node that is not there count as not reached.
///
/// One depth-first search with the earliest node each part reaches back to.
/// Source: J. Hopcroft and R. Tarjan, "Efficient algorithms for graph manipulation", Communications of the ACM 16, 1973
/// (from memory). Cost: linear. Nothing recurs, so depth has no limit.
///
/// ```
/// use hobnail_core::network::bridges::behind;
/// // The root 0, a street to 1, a ring 1-2-3, a dead end 3-4: homes on the ring's far side and on the dead end.
/// let links = [[0, 1], [1, 2], [2, 3], [3, 1], [3, 4]];
/// let found = behind(5, &links, &[1.0, 0.0, 20.0, 0.0, 7.0], 0);
/// assert_eq!(found.links, [Some(28.0), None, None, None, Some(7.0)]);
/// assert_eq!(found.nodes, [0.0, 27.0, 0.0, 7.0, 0.0]);
/// ```
#[must_use]
pub fn behind(node_count: usize, links: &[[usize; 2]], weights: &[f64], root: usize) -> Behind {
    let weight = |link: usize| weights.get(link).copied().unwrap_or(0.0);
    let (first, links_at) = links_at_nodes(node_count, links);
    let mut found = Behind {
        links: vec![None; links.len()],
        nodes: vec![0.0; node_count],
        order: vec![None; node_count],
        unreached: 0.0,
    };
    let mut earliest = vec![u32::MAX; node_count];
    let mut time = 0;
    let mut path = Vec::new();
    if root < node_count {
        found.order[root] = Some(time);
        earliest[root] = time;
        path.push(Step {
            node: root,
            over: None,
            next: first[root],
            below: 0.0,
        });
    }
    while let Some(step) = path.last_mut() {
        let node = step.node;
        if step.next < first[node + 1] {
            let link = links_at[step.next];
            step.next += 1;
            if Some(link) == step.over {
                continue;
            }
            let [a, b] = links[link];
            let other = if a == node { b } else { a };
            match found.order[other] {
                None => {
                    time += 1;
                    found.order[other] = Some(time);
                    earliest[other] = time;
                    path.push(Step {
                        node: other,
                        over: Some(link),
                        next: first[other],
                        below: 0.0,
                    });
                }
                // A loop has both its ends here: closing the node closes it.
                Some(_) if other == node => {
                    if node != root {
                        found.nodes[node] += weight(link) / 2.0;
                    }
                    step.below += weight(link) / 2.0;
                }
                // Up the path: the link belongs to this end, the later one.
                Some(there) if Some(there) < found.order[node] => {
                    earliest[node] = earliest[node].min(there);
                    step.below += weight(link);
                }
                Some(_) => {}
            }
            continue;
        }
        let below = step.below;
        let over = step.over;
        path.pop();
        let (Some(before), Some(over)) = (path.last_mut(), over) else {
            continue;
        };
        let behind = weight(over) + below;
        before.below += behind;
        let parent = before.node;
        earliest[parent] = earliest[parent].min(earliest[node]);
        let (here, there) = (found.order[node], found.order[parent]);
        if Some(earliest[node]) == here {
            found.links[over] = Some(behind);
        }
        if Some(earliest[node]) >= there && parent != root {
            found.nodes[parent] += behind;
        }
    }
    let is_reached = |node: &usize| found.order.get(*node).is_some_and(Option::is_some);
    let unreached = links
        .iter()
        .enumerate()
        .filter(|(_, ends)| !ends.iter().all(is_reached));
    found.unreached = unreached.map(|(link, _)| weight(link)).sum();
    found
}

/// The links at every node, ascending: those of node `n` are from `first[n]` to before `first[n + 1]`. A loop is there
/// twice; a link with a node that is not there is left out.
fn links_at_nodes(node_count: usize, links: &[[usize; 2]]) -> (Vec<usize>, Vec<usize>) {
    let known = || {
        let all = links.iter().enumerate();
        all.filter(|(_, ends)| ends.iter().all(|node| *node < node_count))
    };
    let mut first = vec![0; node_count + 1];
    for (_, ends) in known() {
        for node in ends {
            first[node + 1] += 1;
        }
    }
    for node in 0..node_count {
        first[node + 1] += first[node];
    }
    let mut cursors = first.clone();
    let mut links_at = vec![0; first[node_count]];
    for (link, ends) in known() {
        for node in ends {
            links_at[cursors[*node]] = link;
            cursors[*node] += 1;
        }
    }
    (first, links_at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_hangs_on_every_link_of_it() {
        let found = behind(4, &[[0, 1], [1, 2], [2, 3]], &[1.0, 10.0, 100.0], 0);
        assert_eq!(found.links, [Some(111.0), Some(110.0), Some(100.0)]);
        assert_eq!(found.nodes, [0.0, 110.0, 100.0, 0.0]);
        assert_eq!(found.order, [Some(0), Some(1), Some(2), Some(3)]);
    }

    #[test]
    fn two_ways_hang_on_neither() {
        // Parallel links, and a ring through the root.
        let found = behind(3, &[[0, 1], [0, 1], [1, 2], [2, 0]], &[5.0; 4], 0);
        assert_eq!(found.links, [None; 4]);
        assert_eq!(found.nodes, [0.0; 3]);
    }

    #[test]
    fn two_rings_at_one_node_hang_on_it() {
        let links = [[0, 1], [0, 1], [1, 2], [2, 3], [3, 1], [1, 1]];
        let found = behind(4, &links, &[1.0, 1.0, 2.0, 3.0, 4.0, 50.0], 0);
        assert_eq!(found.links, [None; 6]);
        assert_eq!(found.nodes, [0.0, 59.0, 0.0, 0.0]);
    }

    #[test]
    fn what_the_root_does_not_reach_is_told_apart() {
        let found = behind(4, &[[0, 1], [2, 3], [0, 9]], &[1.0, 8.0, 16.0], 0);
        assert_eq!(found.links, [Some(1.0), None, None]);
        assert_eq!((found.order[2], found.unreached), (None, 24.0));
        assert_eq!(behind(0, &[], &[], 0), Behind::default());
    }
}
