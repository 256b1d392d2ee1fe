//! The streets of a site as counting rules see them.
//!
//! A change of street section is no node: where one street goes on as another, straight on or under the same name, both
//! are one road. A divided street is one line, so it counts once. Where a street meets a street outside, crosses the
//! site's edge or ends at a site access it leaves the site, and that end is no node: a rule that counts the first link
//! beyond the last node counts the link that leads there. Two streets that end at one place of a third meet in one
//! intersection, though rounding to the grid may part them by a millimeter.

use super::bends::sharp_bends;
use super::site_streets::{SiteEnd, SiteLink, SiteStreets, Way};
use crate::fabric::Fabric;
use crate::network::counting_rule::{CountedKind, CountedLink, CountedNetwork, LinkEnd};
use crate::plan::{AlternativeId, Document, PlanPoint};

/// The longest link that is none, for rounding made it: three millimeters. A place and a crossing there, both rounded to
/// the grid, lie at most half a diagonal of a cell each from where they are.
const LONGEST_ROUNDING_UM: u64 = 3_000;

/// What counting rules count from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CountedStreets {
    /// The links with what ends at every node.
    pub network: CountedNetwork,
    /// Where every node is: those of [`SiteStreets::nodes`], then the bends within links.
    pub nodes: Vec<PlanPoint>,
}

impl CountedStreets {
    /// The streets of a site, ready to be counted. Cost: about linear.
    #[must_use]
    pub fn of(document: &Document, alternative: AlternativeId, fabric: &Fabric, streets: &SiteStreets) -> Self {
        let roads = roads_of(document, alternative, fabric, streets);
        let mut nodes = streets.nodes.clone();
        let mut links = Vec::with_capacity(streets.links.len());
        let mut bend_nodes = Vec::new();
        let mut bends = sharp_bends(fabric, streets).into_iter().peekable();
        let is_rounding = |link: &SiteLink| link.length_um <= LONGEST_ROUNDING_UM && link.ends == [SiteEnd::Inner; 2];
        let mut toward: Vec<u32> = (0..nodes.len() as u32).collect();
        for link in streets.links.iter().filter(|link| is_rounding(link)) {
            join(&mut toward, link.nodes);
        }
        for (place, link) in (0..).zip(&streets.links) {
            let mut end = |end: usize| match link.ends[end] {
                SiteEnd::Inner => LinkEnd::At(lowest(&mut toward, link.nodes[end])),
                SiteEnd::Leaves => LinkEnd::Leaves,
                SiteEnd::Stub => LinkEnd::Stub,
            };
            let whole = CountedLink {
                ends: [end(0), end(1)],
                kind: kind_of(link),
                street: roads[link.street as usize],
            };
            // A bend within the link makes it two links with a node between.
            let mut rest = whole;
            while let Some(bend) = bends.next_if(|bend| bend.link == place) {
                let node = match bend.node {
                    Some(node) => lowest(&mut toward, node),
                    None => {
                        let node = nodes.len() as u32;
                        nodes.push(bend.at);
                        links.push(CountedLink {
                            ends: [rest.ends[0], LinkEnd::At(node)],
                            ..rest
                        });
                        rest.ends[0] = LinkEnd::At(node);
                        node
                    }
                };
                bend_nodes.push(node);
            }
            if !is_rounding(link) {
                links.push(rest);
            }
        }
        Self {
            network: CountedNetwork::of(links, &bend_nodes),
            nodes,
        }
    }

    /// Where counted nodes are.
    #[must_use]
    pub fn points(&self, nodes: &[u32]) -> Vec<PlanPoint> {
        nodes
            .iter()
            .filter_map(|node| self.nodes.get(*node as usize))
            .copied()
            .collect()
    }
}

const fn kind_of(link: &SiteLink) -> CountedKind {
    if !link.is_inside {
        return CountedKind::Outside;
    }
    match link.way {
        Way::Street => CountedKind::Street,
        Way::Alley => CountedKind::Alley,
        Way::Path => CountedKind::Path,
    }
}

/// The lowest of those joined with one: each points at a lower one, the lowest at itself.
fn lowest(toward: &mut [u32], mut one: u32) -> u32 {
    while toward[one as usize] != one {
        toward[one as usize] = toward[toward[one as usize] as usize];
        one = toward[one as usize];
    }
    one
}

fn join(toward: &mut [u32], two: [u32; 2]) {
    let [a, b] = two.map(|one| lowest(toward, one));
    toward[a.max(b) as usize] = a.min(b);
}

/// For every street the road it is part of, named by its lowest street.
fn roads_of(document: &Document, alternative: AlternativeId, fabric: &Fabric, streets: &SiteStreets) -> Vec<u32> {
    let mut toward: Vec<u32> = (0..fabric.lines.streets.len() as u32).collect();
    let name_of = |street: u32| super::site_streets::street_name(document, alternative, fabric, street);
    for node in 0..streets.nodes.len() as u32 {
        let mut legs = streets.at_node(node).filter(|(link, _)| {
            let held = streets.link(*link);
            held.is_inside && held.way != Way::Path
        });
        let (Some(first), Some(second), None) = (legs.next(), legs.next(), legs.next()) else {
            continue;
        };
        let [a, b] = [first, second].map(|(link, _)| streets.link(link).street);
        if a == b {
            continue;
        }
        let goes_on = || {
            let [p, q] = [first, second].map(|(link, end)| next_point(fabric, link, end));
            let at = streets.nodes[node as usize];
            p.zip(q).is_some_and(|(p, q)| !turns_a_corner(p, at, q))
        };
        let is_named_alike = || !name_of(a).is_empty() && name_of(a) == name_of(b);
        if goes_on() || is_named_alike() {
            join(&mut toward, [a, b]);
        }
    }
    (0..toward.len() as u32)
        .map(|street| lowest(&mut toward, street))
        .collect()
}

/// The point next to one end of a link along it.
fn next_point(fabric: &Fabric, link: u32, end: usize) -> Option<PlanPoint> {
    let half_edges = &fabric.links.links[link as usize].half_edges;
    let arrangement = &fabric.arrangement;
    let next = if end == 0 {
        arrangement.target(*half_edges.first()?)
    } else {
        arrangement.origin(*half_edges.last()?)
    };
    Some(arrangement.point(next))
}

/// Whether the way from `p` over `at` to `q` turns by more than 45°, exact.
fn turns_a_corner(p: PlanPoint, at: PlanPoint, q: PlanPoint) -> bool {
    let wide = |from: i32, to: i32| i128::from(to) - i128::from(from);
    let (ux, uy) = (wide(p.x_mm, at.x_mm), wide(p.y_mm, at.y_mm));
    let (vx, vy) = (wide(at.x_mm, q.x_mm), wide(at.y_mm, q.y_mm));
    (ux * vy - uy * vx).abs() > ux * vx + uy * vy
}
