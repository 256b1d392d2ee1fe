//! Ways in and out of the site, and how many homes hang on a single one.
//!
//! A *way in* is a place where a street or alley inside that vehicles may use meets one outside, crosses the site's edge
//! or ends at a site access. All that lies outside is taken as one place that everybody wants to get to. Homes weigh on
//! the street they front on; those on streets outside need no way in, and those that front on paths alone, on nothing, or
//! on streets that no way in reaches are told apart.
//!
//! Behind a piece of street lie the homes that vehicles can not reach when it is closed, those along it included; behind
//! a crossing those that can not be reached when the crossing is. This is geometry alone: whether a way is wide enough
//! for a fire engine, and how many homes one may serve, is for local codes and licensed practice.

use super::site_streets::{ACCESS_REACH_MM, SiteEnd, SiteLink, SiteStreets, Way, middle_of, named_place, street_name};
use crate::fabric::Fabric;
use crate::measures::frontage::Painted;
use crate::network::bridges::behind;
use crate::order;
use crate::plan::document::UnitSystem;
use crate::plan::{AlternativeId, BuildingTypeId, Document, PlanPoint};
use crate::say;

/// How many of the places most homes hang on are listed, besides the ways in.
pub const WORST_LISTED: usize = 8;

/// A place and what is counted there.
#[derive(Clone, Debug, PartialEq)]
pub struct CountedPlace {
    /// What it is and where, in words.
    pub title: String,
    /// Where it is.
    pub at: PlanPoint,
    /// How much is counted there.
    pub count: f64,
}

/// Ways in and out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ways {
    /// The ways in, each with how many streets and alleys lead in there.
    pub ways_in: Vec<CountedPlace>,
    /// How many of those that lead in at each are streets.
    pub streets_leading_in: Vec<u32>,
    /// Homes behind single places: every way in, then the streets and crossings most homes hang on, the most first.
    pub behind: Vec<CountedPlace>,
    /// Homes on streets inside that no way in reaches.
    pub homes_cut_off: f64,
    /// Homes that front on a path alone.
    pub homes_on_paths: f64,
    /// Homes that front on nothing.
    pub homes_without_front: f64,
}

/// The graph of what vehicles may use inside: nodes of the streets, then the world outside.
struct Graph {
    links: Vec<[usize; 2]>,
    /// Homes along each link.
    homes: Vec<f64>,
    /// The link of the site each link is.
    links_of_site: Vec<u32>,
    /// The ways in: node, and where and what it is.
    doors: Vec<(usize, String)>,
}

/// The ways in and out of a site. Cost: linear, and every site access against every node.
#[must_use]
pub fn ways(
    document: &Document,
    alternative: AlternativeId,
    fabric: &Fabric,
    streets: &SiteStreets,
    painted: &Painted,
) -> Ways {
    let mut ways = Ways::default();
    let units = document.settings.units;
    let homes = homes_of_links(streets, painted, &mut ways);
    let name = |link: &SiteLink| street_name(document, alternative, fabric, link.street);
    let outside = streets.nodes.len();
    let mut graph = Graph {
        links: Vec::new(),
        homes: Vec::new(),
        links_of_site: Vec::new(),
        doors: doors_of(streets, &name, units),
    };
    for (place, link) in streets.inside() {
        if !is_driven(link) {
            ways.homes_on_paths += homes[place as usize];
            continue;
        }
        graph.links.push(link.nodes.map(|node| node as usize));
        graph.homes.push(homes[place as usize]);
        graph.links_of_site.push(place);
    }
    for (node, title) in &graph.doors {
        let led_in = streets.at_node(*node as u32).map(|(link, _)| streets.link(link));
        let (mut all, mut over_streets) = (0, 0);
        for link in led_in.filter(|link| is_driven(link)) {
            all += 1;
            over_streets += u32::from(link.way == Way::Street);
        }
        ways.streets_leading_in.push(over_streets);
        ways.ways_in.push(CountedPlace {
            title: title.clone(),
            at: streets.nodes[*node],
            count: f64::from(all),
        });
    }
    graph.links.extend(graph.doors.iter().map(|(node, _)| [*node, outside]));
    let found = behind(outside + 1, &graph.links, &graph.homes, outside);
    ways.homes_cut_off = found.unreached;
    ways.behind = ways
        .ways_in
        .iter()
        .zip(&graph.doors)
        .map(|(way, (node, _))| CountedPlace {
            count: found.nodes[*node],
            ..way.clone()
        })
        .collect();
    let worst = worst_of(streets, &graph, &found);
    ways.behind.extend(worst.into_iter().map(|place| match place {
        Single::Link(link, count) => {
            let place = graph.links_of_site[link];
            let at = middle_of(fabric, place);
            CountedPlace {
                title: named_place(name(streets.link(place)), say!("measures-place-street"), at, units),
                at,
                count,
            }
        }
        Single::Node(node, count) => CountedPlace {
            title: named_place("", say!("measures-place-crossing"), streets.nodes[node], units),
            at: streets.nodes[node],
            count,
        },
    }));
    ways
}

/// Whether vehicles from outside may use a link to reach homes inside.
fn is_driven(link: &SiteLink) -> bool {
    link.is_inside && link.is_drivable && link.way != Way::Path
}

/// A single place that homes hang on: a link of the graph or a node.
#[derive(Clone, Copy, Debug)]
enum Single {
    Link(usize, f64),
    Node(usize, f64),
}

/// The links and nodes most homes hang on, the most first; of equal ones what comes first on the way in, a link before a
/// node. Ways in are left out: they are listed already.
fn worst_of(streets: &SiteStreets, graph: &Graph, found: &crate::network::bridges::Behind) -> Vec<Single> {
    let order = |node: usize| found.order[node].unwrap_or(u32::MAX);
    let mut worst: Vec<(f64, u32, Single)> = Vec::new();
    for (link, behind) in found.links.iter().enumerate().take(graph.links_of_site.len()) {
        if let Some(homes) = behind.filter(|homes| *homes > 0.0) {
            let [a, b] = graph.links[link];
            // A link comes right before its farther end.
            worst.push((homes, order(a).max(order(b)) * 2, Single::Link(link, homes)));
        }
    }
    let is_door = |node: usize| graph.doors.iter().any(|(door, _)| *door == node);
    for (node, homes) in found.nodes.iter().enumerate().take(streets.nodes.len()) {
        if *homes > 0.0 && !is_door(node) {
            worst.push((*homes, order(node) * 2 + 1, Single::Node(node, *homes)));
        }
    }
    order::sort_by(&mut worst, |a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    worst.truncate(WORST_LISTED);
    worst.into_iter().map(|(.., single)| single).collect()
}

/// The ways in, in order of their nodes, with what they are in words.
fn doors_of<'a>(
    streets: &SiteStreets,
    name: &impl Fn(&SiteLink) -> &'a str,
    units: UnitSystem,
) -> Vec<(usize, String)> {
    let mut nodes: Vec<u32> = Vec::new();
    for (_, link) in streets.inside().filter(|(_, link)| is_driven(link)) {
        for end in [0, 1] {
            if link.ends[end] == SiteEnd::Leaves {
                nodes.push(link.nodes[end]);
            }
        }
    }
    order::sort(&mut nodes);
    nodes.dedup();
    let driven_at = |node: u32| {
        let mut driven = streets.at_node(node).map(|(link, _)| streets.link(link));
        driven.find(|link| is_driven(link))
    };
    // An access that is not at any of these is at the nearest node that vehicles may use within reach.
    for (at, _) in &streets.accesses {
        let distance_mm2 = |node: u32| at.squared_distance_mm2(streets.nodes[node as usize]);
        let is_met = nodes
            .iter()
            .any(|node| distance_mm2(*node) <= ACCESS_REACH_MM * ACCESS_REACH_MM);
        if is_met {
            continue;
        }
        let near = (0..streets.nodes.len() as u32)
            .map(|node| (distance_mm2(node), node))
            .filter(|(distance_mm2, node)| {
                *distance_mm2 <= ACCESS_REACH_MM * ACCESS_REACH_MM && driven_at(*node).is_some()
            });
        if let Some((_, node)) = near.min() {
            let place = nodes.partition_point(|other| *other < node);
            nodes.insert(place, node);
        }
    }
    nodes
        .into_iter()
        .map(|node| {
            let at = streets.nodes[node as usize];
            let named = streets.access_near(at).filter(|name| !name.is_empty());
            let title = named.map_or_else(
                || {
                    named_place(
                        driven_at(node).map_or("", name),
                        say!("measures-place-way-in"),
                        at,
                        units,
                    )
                },
                ToOwned::to_owned,
            );
            (node as usize, title)
        })
        .collect()
}

/// Homes along every link. Homes that front on nothing are noted.
fn homes_of_links(streets: &SiteStreets, painted: &Painted, ways: &mut Ways) -> Vec<f64> {
    let per_lot: Vec<f64> = painted
        .palette
        .iter()
        .map(|built| f64::from(built.held.homes_per_lot))
        .collect();
    let homes_of = |lots: &[(BuildingTypeId, f64)]| -> f64 {
        let mut homes = 0.0;
        for (id, count) in lots {
            homes += count * painted.palette.place(*id).map_or(0.0, |place| per_lot[place]);
        }
        homes
    };
    let mut homes = vec![0.0; streets.links.len()];
    for face in painted.iter() {
        let mut fronting = 0.0;
        for front in &face.fronts {
            let count = homes_of(&front.lots);
            if let Some(held) = homes.get_mut(front.stretch.link.0 as usize) {
                *held += count;
                fronting += count;
            }
        }
        let missing = homes_of(&face.lots) - fronting;
        // Less than a millionth of a home is the rounding of sums.
        if missing > 1e-6 {
            ways.homes_without_front += missing;
        }
    }
    homes
}
