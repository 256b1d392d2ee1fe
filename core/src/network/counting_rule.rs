//! What counts as a node and as a link: published ratios differ by it, so each rule is data, with its source.
//!
//! The drawing names the kind of every link and every end; a [`CountingRule`] says which of them count. The answer
//! lists the counted nodes and links, so that they can be shown on the drawing, and a ratio is judged only against a
//! threshold of the same rule.
//!
//! Not held here: the newer text of Durham's rule (13.6.2), which weighs a link by its walks, bicycle lanes and transit
//! stops, since what a street without walks weighs was not read.

use super::through_links::through_links;
use crate::message;
use crate::messages::Message;
use crate::say;

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

/// The land a rule divides its intersections by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DensityLand {
    /// The whole site.
    WholeSite,
    /// The site without water and other land that can not be built upon, without parks of more than half an acre and
    /// without school grounds; rights-of-way stay in.
    LessWaterAndLargeParks,
}

/// A published way of counting nodes and links.
#[derive(Clone, Copy, Debug)]
pub struct CountingRule {
    /// Stable name, in lower case with dashes.
    pub id: &'static str,
    name: Message,
    source: fn() -> &'static str,
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
    /// The land its intersections are divided by.
    pub density_land: DensityLand,
    /// The lowest link-node ratio the rule's own text asks for.
    pub least_ratio: Option<f64>,
}

impl CountingRule {
    /// What it does in words, as printed beside a ratio: no name of a place or of a rating.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name.words()
    }

    /// Title, section and edition it was read in.
    #[must_use]
    pub fn source(&self) -> &'static str {
        (self.source)()
    }
}

/// The rules this version knows.
pub const COUNTING_RULES: [CountingRule; 6] = [
    CountingRule {
        id: "orlando-68-404",
        name: message!("network-rule-orlando"),
        source: || "Orlando FL code, s 68.404 \"Connectivity Index\" (Southeast Plan)",
        nodes: NodeRule::RoadsMeetOrHead,
        counts_outer: true,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_sharp_bends: false,
        counts_outside: false,
        density_land: DensityLand::WholeSite,
        least_ratio: Some(1.4),
    },
    CountingRule {
        id: "textbook",
        name: message!("network-rule-textbook"),
        source: || "J. Dill, \"Measuring Connectivity for Bicycling and Walking\" slides, 9 Sep 2004",
        nodes: NodeRule::RoadsMeetOrHead,
        counts_outer: false,
        stub_halves: 0,
        counts_alleys: true,
        counts_paths: false,
        counts_sharp_bends: false,
        counts_outside: false,
        density_land: DensityLand::WholeSite,
        least_ratio: None,
    },
    CountingRule {
        id: "cary-7-10-3",
        name: message!("network-rule-cary"),
        source: || "Cary NC Land Development Ordinance, 7.10.3",
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: false,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_sharp_bends: false,
        counts_outside: false,
        density_land: DensityLand::WholeSite,
        least_ratio: Some(1.2),
    },
    CountingRule {
        id: "durham-13-6-1",
        name: message!("network-rule-durham"),
        source: || "Durham NC Unified Development Ordinance, 13.6.1",
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: false,
        stub_halves: 2,
        counts_alleys: false,
        counts_paths: false,
        counts_sharp_bends: true,
        counts_outside: false,
        density_land: DensityLand::WholeSite,
        least_ratio: None,
    },
    CountingRule {
        id: "greenville-153-1068",
        name: message!("network-rule-greenville"),
        source: || say!("network-source-greenville"),
        nodes: NodeRule::ThreeLegsOrHead,
        counts_outer: true,
        stub_halves: 2,
        counts_alleys: true,
        counts_paths: false,
        counts_sharp_bends: false,
        counts_outside: false,
        density_land: DensityLand::WholeSite,
        least_ratio: Some(1.2),
    },
    CountingRule {
        id: "leed-nd-intersections",
        name: message!("network-rule-leed"),
        source: || say!("network-source-leed"),
        nodes: NodeRule::Through,
        counts_outer: false,
        stub_halves: 0,
        counts_alleys: true,
        counts_paths: true,
        counts_sharp_bends: false,
        counts_outside: false,
        density_land: DensityLand::LessWaterAndLargeParks,
        least_ratio: None,
    },
];

/// The rule of this id.
#[must_use]
pub fn counting_rule(id: &str) -> Option<&'static CountingRule> {
    COUNTING_RULES.iter().find(|rule| rule.id == id)
}

/// Links with what ends at every node, ready to be counted by any rule.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CountedNetwork {
    /// The links.
    links: Vec<CountedLink>,
    /// Whether a street bends sharply at each node.
    is_sharp_bend: Vec<bool>,
    /// Ends at node `n`, each as twice its link and 0 or 1, are those from `first_at[n]` to before `first_at[n + 1]`.
    first_at: Vec<u32>,
    at: Vec<u32>,
}

impl CountedNetwork {
    /// The network of these links; `sharp_bends` are the nodes where a street bends sharply. Cost: linear in the links
    /// and in the largest number of a node.
    #[must_use]
    pub fn of(links: Vec<CountedLink>, sharp_bends: &[u32]) -> Self {
        let nodes = || links.iter().flat_map(|link| link.ends).filter_map(LinkEnd::node);
        let node_count = nodes().max().map_or(0, |node| node as usize + 1);
        let mut first_at = vec![0; node_count + 1];
        for node in nodes() {
            first_at[node as usize + 1] += 1;
        }
        for node in 0..node_count {
            first_at[node + 1] += first_at[node];
        }
        let mut cursors = first_at.clone();
        let mut at = vec![0; first_at[node_count] as usize];
        for (link, held) in (0..).zip(&links) {
            for (end, node) in (0..).zip(held.ends) {
                if let Some(node) = node.node() {
                    let cursor: &mut u32 = &mut cursors[node as usize];
                    at[*cursor as usize] = link * 2 + end;
                    *cursor += 1;
                }
            }
        }
        let mut is_sharp_bend = vec![false; node_count];
        for node in sharp_bends {
            if let Some(held) = is_sharp_bend.get_mut(*node as usize) {
                *held = true;
            }
        }
        Self {
            links,
            is_sharp_bend,
            first_at,
            at,
        }
    }

    /// The links.
    #[must_use]
    pub fn links(&self) -> &[CountedLink] {
        &self.links
    }

    /// How many nodes are numbered, whether anything ends at them or not.
    pub(super) fn node_count(&self) -> usize {
        self.is_sharp_bend.len()
    }

    /// The links that end at a node, each with which of its ends does; a loop is there twice.
    fn ends_at(&self, node: usize) -> impl Iterator<Item = (usize, usize)> + '_ {
        let range = self.first_at[node] as usize..self.first_at[node + 1] as usize;
        self.at[range].iter().map(|end| (*end as usize / 2, *end as usize % 2))
    }
}

impl LinkEnd {
    /// The node, where it is at one.
    #[must_use]
    pub const fn node(self) -> Option<u32> {
        if let Self::At(node) = self { Some(node) } else { None }
    }
}

/// What a rule counts on one network.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Counted {
    /// Nodes counted, ascending.
    pub nodes: Vec<u32>,
    /// How many links meet at each of them.
    pub legs: Vec<u32>,
    /// Dead-end heads among them, ascending.
    pub heads: Vec<u32>,
    /// Halves of links counted: a link between two nodes is two, whatever nodes that do not count lie on its way.
    pub link_halves: u64,
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

/// Counts nodes and links by a rule. Cost: linear.
#[must_use]
pub fn count(rule: &CountingRule, network: &CountedNetwork) -> Counted {
    let is_leg = legs_of(rule, network);
    let mut counted = Counted::default();
    let mut is_counted = vec![false; network.node_count()];
    let mut halves = 0_i64;
    for (node, is_counted) in is_counted.iter_mut().enumerate() {
        let mut legs = network.ends_at(node).filter(|(link, _)| is_leg[*link]);
        let Some((first, _)) = legs.next() else { continue };
        let street = network.links[first].street;
        let (mut count, mut roads_meet) = (1, false);
        for (link, _) in legs {
            count += 1;
            roads_meet |= network.links[link].street != street;
        }
        let is_head = count == 1;
        let is_bend = rule.counts_sharp_bends && count == 2 && network.is_sharp_bend[node];
        *is_counted = match rule.nodes {
            NodeRule::ThreeLegsOrHead => count >= 3 || is_head || is_bend,
            NodeRule::RoadsMeetOrHead => count >= 3 || roads_meet || is_head || is_bend,
            NodeRule::Through => count >= 3,
        };
        if *is_counted {
            counted.nodes.push(node as u32);
            counted.legs.push(count);
            // Legs joined at nodes that do not count are one run, and a run between two counted nodes has two ends there
            // however many pieces it has.
            halves += i64::from(count);
            if is_head {
                counted.heads.push(node as u32);
            }
        }
    }
    halves += loose_runs(rule, network, &is_leg, &is_counted)
        .map(|(_, more)| more)
        .sum::<i64>();
    counted.link_halves = halves.max(0) as u64;
    counted
}

/// The connected parts that hold a counted node, in order of their lowest nodes. Cost: almost linear.
#[must_use]
pub fn counted_parts(rule: &CountingRule, network: &CountedNetwork, counted: &Counted) -> Vec<CountedPart> {
    let is_leg = legs_of(rule, network);
    // Each node points at a lower one of its part; the lowest points at itself.
    let mut toward: Vec<u32> = (0..network.node_count() as u32).collect();
    fn lowest(toward: &mut [u32], mut node: u32) -> u32 {
        while toward[node as usize] != node {
            toward[node as usize] = toward[toward[node as usize] as usize];
            node = toward[node as usize];
        }
        node
    }
    for (link, _) in network.links.iter().zip(&is_leg).filter(|(_, is_leg)| **is_leg) {
        if let [LinkEnd::At(a), LinkEnd::At(b)] = link.ends {
            let (a, b) = (lowest(&mut toward, a), lowest(&mut toward, b));
            toward[a.max(b) as usize] = a.min(b);
        }
    }
    let mut is_counted = vec![false; network.node_count()];
    let mut place_of: Vec<Option<usize>> = vec![None; network.node_count()];
    let mut parts: Vec<(CountedPart, i64)> = Vec::new();
    for (node, legs) in counted.nodes.iter().zip(&counted.legs) {
        is_counted[*node as usize] = true;
        let place = *place_of[lowest(&mut toward, *node) as usize].get_or_insert_with(|| {
            let part = CountedPart {
                lowest_node: *node,
                nodes: 0,
                link_halves: 0,
            };
            parts.push((part, 0));
            parts.len() - 1
        });
        parts[place].0.nodes += 1;
        parts[place].1 += i64::from(*legs);
    }
    for (node, more) in loose_runs(rule, network, &is_leg, &is_counted) {
        if let Some(place) = place_of[lowest(&mut toward, node as u32) as usize] {
            parts[place].1 += more;
        }
    }
    let halves = |(part, halves): (CountedPart, i64)| CountedPart {
        link_halves: halves.max(0) as u64,
        ..part
    };
    parts.into_iter().map(halves).collect()
}

/// Which links count as legs by a rule.
fn legs_of(rule: &CountingRule, network: &CountedNetwork) -> Vec<bool> {
    let is_leg = |link: &CountedLink| {
        let counts = match link.kind {
            CountedKind::Street => true,
            CountedKind::Alley => rule.counts_alleys,
            CountedKind::Path => rule.counts_paths,
            CountedKind::Outside => rule.counts_outside,
        };
        counts && (rule.stub_halves > 0 || !link.ends.contains(&LinkEnd::Stub))
    };
    let mut is_leg: Vec<bool> = network.links.iter().map(is_leg).collect();
    if rule.nodes == NodeRule::Through {
        through_links(network, &mut is_leg);
    }
    is_leg
}

/// For every run from a counted node to an end that is none: the node, and what the run counts beyond the half it has at
/// that node. A run between two such ends counts nothing.
fn loose_runs<'a>(
    rule: &'a CountingRule,
    network: &'a CountedNetwork,
    is_leg: &'a [bool],
    is_counted: &'a [bool],
) -> impl Iterator<Item = (usize, i64)> + 'a {
    let legs = network.links.iter().enumerate().filter(|(link, _)| is_leg[*link]);
    legs.flat_map(|(link, held)| [(link, 0, held.ends[0]), (link, 1, held.ends[1])])
        .filter_map(move |(link, end, kind)| {
            let more = match kind {
                LinkEnd::At(_) => return None,
                LinkEnd::Leaves if rule.counts_outer => 1,
                LinkEnd::Leaves => -1,
                LinkEnd::Stub => i64::from(rule.stub_halves) - 1,
            };
            Some((counted_end(network, is_leg, is_counted, link, 1 - end)?, more))
        })
}

/// The counted node a run comes to, walked on over one end of a link.
fn counted_end(
    network: &CountedNetwork,
    is_leg: &[bool],
    is_counted: &[bool],
    link: usize,
    end: usize,
) -> Option<usize> {
    let (mut link, mut end) = (link, end);
    loop {
        let node = network.links[link].ends[end].node()? as usize;
        if is_counted[node] {
            return Some(node);
        }
        let here = (link, end);
        let (next, next_end) = network.ends_at(node).find(|other| is_leg[other.0] && *other != here)?;
        (link, end) = (next, 1 - next_end);
    }
}

#[cfg(test)]
mod tests;
