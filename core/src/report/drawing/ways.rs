//! Streets as they are drawn: from intersection to intersection, with what joins them there.

use super::profile::Profile;
use crate::fabric::links::StreetLink;
use crate::fabric::{Fabric, HalfEdgeId};
use crate::order;
use crate::plan::street::Status;
use crate::plan::{AlternativeId, Document, Mark, MarkId, PlanPoint, Street, StreetSectionId};

/// Planting keeps this far from the right-of-way of a street it meets, in meters.
const CLEAR_OF_CORNER_M: f64 = 1.0;

/// A polyline or ring in meters.
pub type Line = Vec<(f64, f64)>;

/// A street or path between two intersections.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Its line.
    pub line: Line,
    /// Which of the profiles it is built to.
    pub profile: usize,
    /// Planting stops this short of its start, in meters.
    pub clear_start_m: f64,
    /// Planting stops this short of its end, in meters.
    pub clear_end_m: f64,
    /// Whether it stands, stays, goes or comes.
    pub standing: Standing,
}

/// How firmly a way is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// It is proposed.
    New,
    /// It stands and stays.
    Existing,
    /// It stands and goes.
    Removed,
}

/// Where ways meet: the ground there is as wide as the widest of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Its place.
    pub at: (f64, f64),
    /// Radius of the right-of-way.
    pub right_of_way_m: f64,
    /// Radius of the pavement; none where only paths meet.
    pub paved_m: Option<f64>,
}

/// Points in meters.
#[must_use]
pub fn meters(points: &[PlanPoint]) -> Line {
    points.iter().map(|point| point.to_m()).collect()
}

/// The points along consecutive half-edges.
#[must_use]
pub fn run_of(fabric: &Fabric, half_edges: &[HalfEdgeId]) -> Vec<PlanPoint> {
    let arrangement = &fabric.arrangement;
    let starts = half_edges
        .iter()
        .map(|half_edge| arrangement.point(arrangement.origin(*half_edge)));
    let end = half_edges
        .last()
        .map(|half_edge| arrangement.point(arrangement.target(*half_edge)));
    starts.chain(end).collect()
}

/// What [`ways`] lays out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ways {
    /// Streets and paths, from intersection to intersection.
    pub ways: Vec<Way>,
    /// Where they meet.
    pub joints: Vec<Joint>,
    /// Where dead ends end: across the right-of-way.
    pub heads: Vec<Line>,
}

/// The streets of a fabric as they are drawn, built to these profiles of the document's street sections. Cost: linear.
#[must_use]
pub fn ways(document: &Document, alternative: AlternativeId, fabric: &Fabric, profiles: &[Profile]) -> Ways {
    let links = &fabric.links;
    let profile_of = |link: &StreetLink| {
        let street = fabric.lines.streets.get(link.street as usize);
        street.map_or(0, |street| place_of(document, street.section))
    };
    let half_widths = |profile: usize| {
        profiles.get(profile).map(|found| {
            (
                found.right_of_way_m / 2.0,
                found.half_paved_m(),
                found.carriageway.is_some(),
            )
        })
    };
    let mut legs: Vec<Vec<(usize, usize)>> = vec![Vec::new(); links.nodes.len()];
    for (index, link) in links.links.iter().enumerate() {
        for node in link.ends {
            if let Some(legs) = legs.get_mut(node as usize) {
                legs.push((index, profile_of(link)));
            }
        }
    }
    let at = |node: u32| legs.get(node as usize).map_or(&[] as &[(usize, usize)], Vec::as_slice);
    let clear_m = |node: u32, own: usize| {
        let others = at(node).iter().filter(|(link, _)| *link != own);
        let widest_m = others
            .filter_map(|(_, profile)| half_widths(*profile))
            .map(|(row_m, ..)| row_m)
            .max_by(f64::total_cmp);
        if at(node).len() < 3 {
            0.0
        } else {
            widest_m.map_or(0.0, |row_m| row_m + CLEAR_OF_CORNER_M)
        }
    };
    let mut ways = Vec::with_capacity(links.links.len());
    let mut heads = Vec::new();
    for (index, link) in links.links.iter().enumerate() {
        let profile = profile_of(link);
        let half_m = half_widths(profile).map_or(0.0, |(row_m, ..)| row_m);
        let mut line = meters(&run_of(fabric, &link.half_edges));
        let [is_dead_start, is_dead_end] = link.ends.map(|node| at(node).len() == 1);
        heads.extend(extend(&mut line, half_m, [is_dead_start, is_dead_end]));
        let street = fabric.lines.streets.get(link.street as usize);
        let status = street.and_then(|street| status_of(document, alternative, street.mark));
        ways.push(Way {
            line,
            profile,
            clear_start_m: clear_m(link.ends[0], index),
            clear_end_m: clear_m(link.ends[1], index),
            standing: match status {
                Some(Status::New) | None => Standing::New,
                Some(Status::Existing | Status::Kept) => Standing::Existing,
                Some(Status::Removed) => Standing::Removed,
            },
        });
    }
    let joints = links
        .nodes
        .iter()
        .zip(&legs)
        .filter(|(_, legs)| legs.len() >= 2)
        .filter_map(|(point, legs)| {
            let second = |mut widths: Vec<f64>| {
                order::sort_by(&mut widths, |one, other| other.total_cmp(one));
                widths.get(1).copied()
            };
            let found: Vec<_> = legs.iter().filter_map(|(_, profile)| half_widths(*profile)).collect();
            Some(Joint {
                at: point.to_m(),
                right_of_way_m: second(found.iter().map(|(row_m, ..)| *row_m).collect())?,
                paved_m: second(
                    found
                        .iter()
                        .filter(|(.., is_paved)| *is_paved)
                        .map(|(_, paved_m, _)| *paved_m)
                        .collect(),
                ),
            })
        });
    Ways {
        ways,
        joints: joints.collect(),
        heads,
    }
}

/// Dead ends go on by half their width, as the land around them is laid; gives back the lines across their heads.
fn extend(line: &mut Line, by_m: f64, dead: [bool; 2]) -> Vec<Line> {
    let mut heads = Vec::new();
    for (end, is_dead) in dead.into_iter().enumerate() {
        let (tip, before) = match (end, line.as_mut_slice()) {
            (0, [tip, before, ..]) | (1, [.., before, tip]) => (tip, *before),
            _ => continue,
        };
        let (x, y) = (tip.0 - before.0, tip.1 - before.1);
        let length_m = (x * x + y * y).sqrt();
        if is_dead && length_m > 0.0 {
            let (x, y) = (x / length_m * by_m, y / length_m * by_m);
            *tip = (tip.0 + x, tip.1 + y);
            heads.push(vec![(tip.0 - y, tip.1 + x), (tip.0 + y, tip.1 - x)]);
        }
    }
    heads
}

fn status_of(document: &Document, alternative: AlternativeId, id: MarkId) -> Option<Status> {
    document
        .mark(alternative, id)
        .and_then(Mark::as_street)
        .map(|street: &Street| street.status)
}

/// The place of a street section among the document's, and of its profile.
#[must_use]
pub fn place_of(document: &Document, section: StreetSectionId) -> usize {
    document
        .street_sections
        .keys()
        .position(|id| *id == section)
        .unwrap_or_default()
}
