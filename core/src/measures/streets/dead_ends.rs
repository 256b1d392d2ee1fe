//! Dead ends: how many streets end blind, how long each is, and where.
//!
//! A dead end runs from its head, where nothing goes on for vehicles, to the first place where streets or alleys cross, or
//! to where it leaves the site. Its length is along the centerline. A street kept for a street to come, whose
//! right-of-way reaches the site's edge, is no dead end, nor is an alley; a path that goes on from a head does not open it.

use super::site_streets::{SiteEnd, SiteStreets, Way};
use crate::plan::PlanPoint;

/// A dead end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DeadEnd {
    /// The street its head is on, by its place in the drawn lines.
    pub street: u32,
    /// Where its head is.
    pub head: PlanPoint,
    /// How long it is, in micrometers.
    pub length_um: u64,
}

/// The dead ends of a site, in order of their heads' links. A street with a head at both ends is one. Cost: linear.
#[must_use]
pub fn dead_ends(streets: &SiteStreets) -> Vec<DeadEnd> {
    let mut is_walked = vec![false; streets.links.len()];
    let mut found = Vec::new();
    for (place, link) in streets.inside().filter(|(_, link)| link.way == Way::Street) {
        for end in [0, 1] {
            if !is_walked[place as usize] && is_head(streets, place, end) {
                found.push(DeadEnd {
                    street: link.street,
                    head: streets.end_point(place, end),
                    length_um: walk(streets, place, 1 - end, &mut is_walked),
                });
            }
        }
    }
    found
}

/// Whether a link of street ends blind.
#[must_use]
pub fn is_head(streets: &SiteStreets, place: u32, end: usize) -> bool {
    let link = streets.link(place);
    link.ends[end] == SiteEnd::Inner && ways_at(streets, link.nodes[end]).nth(1).is_none()
}

/// The links vehicles may go on along at a node, each with its end there.
fn ways_at(streets: &SiteStreets, node: u32) -> impl Iterator<Item = (u32, usize)> + '_ {
    streets
        .at_node(node)
        .filter(|(link, _)| streets.link(*link).way != Way::Path)
}

/// Walks on from one end of a link to the first crossing, and gives back the length of all that was walked.
fn walk(streets: &SiteStreets, place: u32, end: usize, is_walked: &mut [bool]) -> u64 {
    let (mut here, mut end) = (place, end);
    let mut length_um = 0;
    while !is_walked[here as usize] {
        is_walked[here as usize] = true;
        let link = streets.link(here);
        length_um += link.length_um;
        if link.ends[end] != SiteEnd::Inner {
            break;
        }
        let mut others = ways_at(streets, link.nodes[end]).filter(|other| *other != (here, end));
        let (Some((next, next_end)), None) = (others.next(), others.next()) else {
            break;
        };
        (here, end) = (next, 1 - next_end);
    }
    length_um
}
