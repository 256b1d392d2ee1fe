//! What counts as a node and as a link: published ratios differ by it, so each rule is data, with its source.
//!
//! The drawing names the kind of every link and every end; a [`CountingRule`] says which of them count. The answer
//! lists the counted nodes and links, so that they can be shown on the drawing, and a ratio is judged only against a
//! threshold of the same rule.
//!
//! Not held here yet: sharp bends as nodes and weights for walks, bicycle lanes and transit stops, which some codes
//! have; a town's own rule is another row of this kind.

use super::through_links::through_links;

/// What a link is to a counting rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CountedKind {
    /// A street between two ends on the site.
    Street,
    /// An alley or rear lane.
    Alley,
    /// A path without vehicles.
    Path,
    /// The first piece of street beyond the last node, leaving the site. Its far end is no node.
    Outer,
    /// A short end of street kept for a street to come. Its far end is no node.
    Stub,
    /// An existing street outside the site or along its edge.
    Outside,
}

/// One link as a counting rule sees it. Nodes are numbered from 0; the far end of an outer link or a stub has a number
/// too, of a node nothing else ends at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CountedLink {
    /// First end.
    pub from: u32,
    /// Last end.
    pub to: u32,
    /// What it is.
    pub kind: CountedKind,
    /// The street it belongs to: where links of two streets meet, roads meet.
    pub street: u32,
}

/// Which nodes a rule counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NodeRule {
    /// Three or more legs, or the head of a dead end.
    ThreeLegsOrHead,
    /// Where two or more roads meet, a corner of two streets included, or the head of a dead end.
    RoadsMeetOrHead,
    /// Intersections of three or more legs, when dead ends and everything behind a single junction are taken away.
    Through,
}

/// A published way of counting nodes and links.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CountingRule {
    /// Stable name, in lower case with dashes.
    pub id: &'static str,
    /// Name as printed beside a ratio.
    pub name: &'static str,
    /// Title, section and edition it was read in.
    pub source: &'static str,
    /// Which nodes count.
    pub nodes: NodeRule,
    /// The first link beyond the last node counts.
    pub counts_outer: bool,
    /// Halves of a link a stub counts: 0, 1 or 2.
    pub stub_halves: u32,
    /// Alleys count, as links and as legs.
    pub counts_alleys: bool,
    /// Paths without vehicles count, as links and as legs.
    pub counts_paths: bool,
    /// Existing streets outside count as links, and their crossings as nodes.
    pub counts_outside: bool,
    /// The lowest link-node ratio the rule's own text asks for.
    pub least_ratio: Option<f64>,
}

/// The rules this version knows.
pub const COUNTING_RULES: [CountingRule; 5] = [
    CountingRule {
        id: "orlando-68-404",
        name: "Orlando connectivity index",
        source: "Orlando FL code, s 68.404 \"Connectivity Index\" (Southeast Plan)",
        nodes: NodeRule::RoadsMeetOrHead,
        counts_outer: true,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_outside: false,
        least_ratio: Some(1.4),
    },
    CountingRule {
        id: "textbook",
        name: "Links over nodes",
        source: "J. Dill, \"Measuring Connectivity for Bicycling and Walking\" slides, 9 Sep 2004",
        nodes: NodeRule::RoadsMeetOrHead,
        counts_outer: false,
        stub_halves: 0,
        counts_alleys: true,
        counts_paths: false,
        counts_outside: false,
        least_ratio: None,
    },
    CountingRule {
        id: "cary-7-10-3",
        name: "Cary connectivity index",
        source: "Cary NC Land Development Ordinance, 7.10.3",
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: false,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_outside: false,
        least_ratio: Some(1.2),
    },
    CountingRule {
        id: "durham-13-6-1",
        name: "Durham connectivity ratio",
        source: "Durham NC Unified Development Ordinance, 13.6.1 (without its sharp bends)",
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: false,
        stub_halves: 2,
        counts_alleys: false,
        counts_paths: false,
        counts_outside: false,
        least_ratio: None,
    },
    CountingRule {
        id: "leed-nd-intersections",
        name: "LEED ND eligible intersections",
        source: "LEED 2009 for Neighborhood Development, definition of street network, NPDp3 and SLLc1",
        nodes: NodeRule::Through,
        counts_outer: false,
        stub_halves: 0,
        counts_alleys: true,
        counts_paths: true,
        counts_outside: false,
        least_ratio: None,
    },
];

/// The rule of this id.
#[must_use]
pub fn counting_rule(id: &str) -> Option<&'static CountingRule> {
    COUNTING_RULES.iter().find(|rule| rule.id == id)
}

/// What a rule counts on one network.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Counted {
    /// Nodes counted, ascending.
    pub nodes: Vec<u32>,
    /// Dead-end heads among them, ascending.
    pub heads: Vec<u32>,
    /// Halves of links counted: a link between two nodes is two, whatever nodes that do not count lie on its way.
    pub link_halves: u64,
}

impl Counted {
    /// Links counted.
    #[must_use]
    pub fn links(&self) -> f64 {
        self.link_halves as f64 / 2.0
    }

    /// Link-node ratio: links over nodes; `None` without nodes.
    #[must_use]
    pub fn link_node_ratio(&self) -> Option<f64> {
        (!self.nodes.is_empty()).then(|| self.links() / self.nodes.len() as f64)
    }
}

/// Counts nodes and links by a rule. O(n + m log m).
#[must_use]
pub fn count(rule: &CountingRule, links: &[CountedLink]) -> Counted {
    let is_leg = |link: &CountedLink| match link.kind {
        CountedKind::Street | CountedKind::Outer => true,
        CountedKind::Stub => rule.stub_halves > 0,
        CountedKind::Alley => rule.counts_alleys,
        CountedKind::Path => rule.counts_paths,
        CountedKind::Outside => rule.counts_outside,
    };
    let mut legs: Vec<CountedLink> = links.iter().copied().filter(is_leg).collect();
    if rule.nodes == NodeRule::Through {
        let kept = through_links(&legs);
        legs = legs
            .into_iter()
            .zip(kept)
            .filter(|&(_, kept)| kept)
            .map(|(link, _)| link)
            .collect();
    }
    let mut halves = 0_i64;
    let ends = ends_of(&legs);
    let mut counted = Counted::default();
    for at_node in ends.chunk_by(|a, b| a.node == b.node) {
        let first = at_node[0];
        let roads_meet = at_node.iter().any(|end| end.street != first.street);
        let is_head = at_node.len() == 1 && !first.runs_off;
        let counts = match rule.nodes {
            NodeRule::ThreeLegsOrHead => at_node.len() >= 3 || is_head,
            NodeRule::RoadsMeetOrHead => at_node.len() >= 3 || roads_meet || is_head,
            NodeRule::Through => at_node.len() >= 3,
        };
        if counts {
            counted.nodes.push(first.node);
            // A run of pieces between two counted nodes has two ends there however many pieces it has, so pieces
            // joined at nodes that do not count are one link.
            halves += at_node.len() as i64;
        }
        if counts && is_head {
            counted.heads.push(first.node);
        }
        if at_node.len() == 1 && first.runs_off {
            // The run that ends here has one half at its other end; this makes it what the rule says.
            halves += match first.kind {
                CountedKind::Outer if rule.counts_outer => 1,
                CountedKind::Outer => -1,
                _ => i64::from(rule.stub_halves) - 1,
            };
        }
    }
    counted.link_halves = halves.max(0) as u64;
    counted
}

/// One end of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct End {
    node: u32,
    street: u32,
    kind: CountedKind,
    /// Of an outer link or a stub.
    runs_off: bool,
}

/// Every end of every link, in order of node.
fn ends_of(links: &[CountedLink]) -> Vec<End> {
    let end = |link: &CountedLink, node: u32| End {
        node,
        street: link.street,
        kind: link.kind,
        runs_off: matches!(link.kind, CountedKind::Outer | CountedKind::Stub),
    };
    let mut ends: Vec<End> = links
        .iter()
        .flat_map(|link| [end(link, link.from), end(link, link.to)])
        .collect();
    ends.sort_unstable();
    ends
}

#[cfg(test)]
mod tests;
