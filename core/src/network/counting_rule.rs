//! What counts as a node and as a link: published ratios differ by it, so each rule is data, with its source.
//!
//! The drawing names the kind of every link and every end; a [`CountingRule`] says which of them count. The answer
//! lists the counted nodes and links, so that they can be shown on the drawing, and a ratio is judged only against a
//! threshold of the same rule.
//!
//! Not held here: the newer text of Durham's rule (13.6.2), which weighs a link by its walks, bicycle lanes and transit
//! stops, since what a street without walks weighs was not read.

use super::through_links::through_links;

/// What a link is to a counting rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CountedKind {
    /// A street.
    Street,
    /// An alley or rear lane.
    Alley,
    /// A path without vehicles.
    Path,
    /// An existing street outside the site or along its edge.
    Outside,
}

/// One end of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LinkEnd {
    /// At a node on the site, where other links may end too.
    At(u32),
    /// Beyond the last node: the link leaves the site here, and this end is no node.
    Leaves,
    /// Kept for a street to come: this end is no node.
    Stub,
}

/// One link as a counting rule sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CountedLink {
    /// Its two ends.
    pub ends: [LinkEnd; 2],
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
    /// A sharp bend is a node.
    pub counts_sharp_bends: bool,
    /// Existing streets outside count as links, and their crossings as nodes.
    pub counts_outside: bool,
    /// The lowest link-node ratio the rule's own text asks for.
    pub least_ratio: Option<f64>,
}

/// The rules this version knows.
pub const COUNTING_RULES: [CountingRule; 6] = [
    CountingRule {
        id: "orlando-68-404",
        name: "Orlando connectivity index",
        source: "Orlando FL code, s 68.404 \"Connectivity Index\" (Southeast Plan)",
        nodes: NodeRule::RoadsMeetOrHead,
        counts_outer: true,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_sharp_bends: false,
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
        counts_sharp_bends: false,
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
        counts_sharp_bends: false,
        counts_outside: false,
        least_ratio: Some(1.2),
    },
    CountingRule {
        id: "durham-13-6-1",
        name: "Durham connectivity ratio",
        source: "Durham NC Unified Development Ordinance, 13.6.1",
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: false,
        stub_halves: 2,
        counts_alleys: false,
        counts_paths: false,
        counts_sharp_bends: true,
        counts_outside: false,
        least_ratio: None,
    },
    CountingRule {
        id: "greenville-153-1068",
        name: "Greenville connectivity index",
        source: "Greenville IL code, s 153.1068 (of stubs and alleys the text as read says nothing: they count as streets)",
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: true,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_sharp_bends: false,
        counts_outside: false,
        least_ratio: Some(1.2),
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
        counts_sharp_bends: false,
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
    /// The connected parts that hold a counted node, in order of their lowest nodes.
    pub parts: Vec<CountedPart>,
}

/// One connected part of what a rule counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CountedPart {
    /// Its lowest counted node.
    pub lowest_node: u32,
    /// How many nodes it has.
    pub nodes: u64,
    /// Halves of links in it.
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

/// Counts nodes and links by a rule. `sharp_bends` are the nodes, ascending, where a street bends sharply.
/// O(n + m log m).
#[must_use]
pub fn count(rule: &CountingRule, links: &[CountedLink], sharp_bends: &[u32]) -> Counted {
    let is_leg = |link: &CountedLink| {
        let counts = match link.kind {
            CountedKind::Street => true,
            CountedKind::Alley => rule.counts_alleys,
            CountedKind::Path => rule.counts_paths,
            CountedKind::Outside => rule.counts_outside,
        };
        counts && (rule.stub_halves > 0 || !link.ends.contains(&LinkEnd::Stub))
    };
    let mut legs: Vec<CountedLink> = links.iter().copied().filter(is_leg).collect();
    if rule.nodes == NodeRule::Through {
        let mut kept = through_links(&legs).into_iter();
        legs.retain(|_| kept.next().unwrap_or(false));
    }
    let ends = ends_of(&legs);
    let mut counted = Counted::default();
    // Legs joined at nodes that do not count are one run, and a run is one link however many pieces it has.
    let mut runs = Groups::of(legs.len());
    let mut parts = Groups::of(legs.len());
    let mut counted_ends = vec![0_u32; legs.len()];
    for at_node in ends.chunk_by(|a, b| a.node == b.node) {
        let first = at_node[0];
        let roads_meet = at_node.iter().any(|end| end.street != first.street);
        let is_bend = rule.counts_sharp_bends && at_node.len() == 2 && sharp_bends.binary_search(&first.node).is_ok();
        let is_head = at_node.len() == 1;
        let counts = match rule.nodes {
            NodeRule::ThreeLegsOrHead => at_node.len() >= 3 || is_head || is_bend,
            NodeRule::RoadsMeetOrHead => at_node.len() >= 3 || roads_meet || is_head || is_bend,
            NodeRule::Through => at_node.len() >= 3,
        };
        for end in at_node {
            parts.join(first.leg, end.leg);
            if counts {
                counted_ends[end.leg] += 1;
            } else {
                runs.join(first.leg, end.leg);
            }
        }
        if counts {
            counted.nodes.push(first.node);
        }
        if counts && is_head {
            counted.heads.push(first.node);
        }
    }
    let halves = run_halves(rule, &legs, &mut runs, &counted_ends);
    counted.link_halves = halves.iter().sum();
    counted.parts = parts_of(&counted.nodes, &ends, &mut parts, &halves);
    counted
}

/// Halves of a link that each run counts, at the place of the run's lowest leg.
fn run_halves(rule: &CountingRule, legs: &[CountedLink], runs: &mut Groups, counted_ends: &[u32]) -> Vec<u64> {
    let mut at_nodes = vec![0; legs.len()];
    let mut leaves = vec![false; legs.len()];
    let mut is_stub = vec![false; legs.len()];
    for (leg, link) in legs.iter().enumerate() {
        let run = runs.lowest(leg);
        at_nodes[run] += counted_ends[leg];
        leaves[run] |= link.ends.contains(&LinkEnd::Leaves);
        is_stub[run] |= link.ends.contains(&LinkEnd::Stub);
    }
    let halves = |run: usize| match at_nodes[run] {
        // Nothing but other nodes that do not count: a ring, or a street that crosses the site without meeting another.
        0 => 0,
        1 if is_stub[run] => u64::from(rule.stub_halves),
        1 if leaves[run] => u64::from(rule.counts_outer) * 2,
        1 => 0,
        _ => 2,
    };
    (0..legs.len()).map(halves).collect()
}

/// The connected parts with their nodes and halves of links.
fn parts_of(nodes: &[u32], ends: &[End], parts: &mut Groups, halves: &[u64]) -> Vec<CountedPart> {
    let mut place_of_part: Vec<Option<usize>> = vec![None; halves.len()];
    let mut found: Vec<CountedPart> = Vec::new();
    let mut ends = ends.iter();
    for node in nodes {
        // Nodes and ends are both ascending.
        let Some(end) = ends.find(|end| end.node == *node) else {
            continue;
        };
        let part = parts.lowest(end.leg);
        let place = *place_of_part[part].get_or_insert_with(|| {
            found.push(CountedPart {
                lowest_node: *node,
                nodes: 0,
                link_halves: 0,
            });
            found.len() - 1
        });
        found[place].nodes += 1;
    }
    for (leg, halves) in halves.iter().enumerate() {
        if let Some(place) = place_of_part[parts.lowest(leg)] {
            found[place].link_halves += halves;
        }
    }
    found
}

/// One end of a leg at a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct End {
    node: u32,
    street: u32,
    leg: usize,
}

/// Every end at a node, in order of node.
fn ends_of(legs: &[CountedLink]) -> Vec<End> {
    let mut ends: Vec<End> = Vec::with_capacity(legs.len() * 2);
    for (leg, link) in legs.iter().enumerate() {
        for end in link.ends {
            if let LinkEnd::At(node) = end {
                ends.push(End {
                    node,
                    street: link.street,
                    leg,
                });
            }
        }
    }
    ends.sort_unstable();
    ends
}

/// Things joined into groups; a group is named by its lowest.
struct Groups {
    toward: Vec<usize>,
}

impl Groups {
    fn of(count: usize) -> Self {
        Self {
            toward: (0..count).collect(),
        }
    }

    fn lowest(&mut self, mut at: usize) -> usize {
        while self.toward[at] != at {
            self.toward[at] = self.toward[self.toward[at]];
            at = self.toward[at];
        }
        at
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.lowest(a), self.lowest(b));
        self.toward[a.max(b)] = a.min(b);
    }
}

#[cfg(test)]
mod tests;
