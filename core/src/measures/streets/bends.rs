//! Sharp bends: where two adjacent chords of 100 feet along a street meet at 120° or less.
//!
//! Source of the definition: Durham NC Unified Development Ordinance, 13.6.1. It is measured at the vertices of the
//! centerline, the finest links of a rounded corner included, with each chord ending where the street is first 100 feet
//! away. Streets go on through places where only an alley or a path joins. Not seen: bends nearer than a chord to a
//! crossing, to a dead end or to where the street leaves the site.

use super::site_streets::{SiteEnd, SiteLink, SiteStreets, Way, points_of};
use crate::fabric::Fabric;
use crate::order;
use crate::plan::PlanPoint;

/// Length of a chord: 100 ft.
const CHORD_MM: f64 = 30_480.0;

const COSINE_OF_120_DEGREES: f64 = -0.5;

/// A sharp bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bend {
    /// The link it is on.
    pub link: u32,
    /// The node it is at, where it is at the link's end.
    pub node: Option<u32>,
    /// Where it is.
    pub at: PlanPoint,
}

/// A vertex of a run of links.
#[derive(Clone, Copy, Debug)]
struct Vertex {
    at: PlanPoint,
    link: u32,
    node: Option<u32>,
}

/// The sharp bends of a site's streets, in order of their links and along them.
///
/// Cost: linear but for streets that turn by more than 60° altogether, where each vertex looks along its two chords.
#[must_use]
pub fn sharp_bends(fabric: &Fabric, streets: &SiteStreets) -> Vec<Bend> {
    let mut runs = Runs {
        streets,
        is_seen: vec![false; streets.links.len()],
        street_ends: vec![0; streets.nodes.len()],
    };
    for (_, link) in streets.inside().filter(|(_, link)| link.way == Way::Street) {
        for node in link.nodes {
            runs.street_ends[node as usize] += 1;
        }
    }
    let mut bends: Vec<(u32, u32, Bend)> = Vec::new();
    let (mut run, mut vertices) = (Vec::new(), Vec::new());
    for (place, link) in streets.inside().filter(|(_, link)| link.way == Way::Street) {
        if runs.is_seen[place as usize] || runs.is_straight_alone(fabric, place, link) {
            continue;
        }
        runs.through(place, &mut run);
        list_vertices(fabric, streets, &run, &mut vertices);
        if !turns_enough(&vertices) {
            continue;
        }
        for index in bends_of(&vertices) {
            let Vertex { at, link, node } = vertices[index];
            // In the link's own direction, whichever way the run goes through it.
            let is_forward = run.iter().any(|(held, forward)| *held == link && *forward);
            let rank = if is_forward {
                index as u32
            } else {
                u32::MAX - index as u32
            };
            bends.push((link, rank, Bend { link, node, at }));
        }
    }
    order::sort_by_key(&mut bends, |(link, rank, _)| (*link, *rank));
    bends.into_iter().map(|(.., bend)| bend).collect()
}

/// Finds runs of links of street: on over every node where just two of them end.
struct Runs<'a> {
    streets: &'a SiteStreets,
    is_seen: Vec<bool>,
    /// How many links of street end at each node.
    street_ends: Vec<u32>,
}

impl Runs<'_> {
    /// Whether a link is a run by itself, straight from end to end.
    fn is_straight_alone(&self, fabric: &Fabric, place: u32, link: &SiteLink) -> bool {
        let is_alone = link.nodes.iter().all(|node| self.street_ends[*node as usize] != 2);
        is_alone && fabric.links.links[place as usize].half_edges.len() == 1
    }

    /// The run through a link, each link with whether it is walked forward.
    fn through(&mut self, link: u32, run: &mut Vec<(u32, bool)>) {
        run.clear();
        self.is_seen[link as usize] = true;
        self.add_onward(link, 0, run);
        run.reverse();
        for (_, forward) in run.iter_mut() {
            *forward = !*forward;
        }
        run.push((link, true));
        self.add_onward(link, 1, run);
    }

    /// Adds the links that follow beyond one end of a link; on a ring, until it comes back.
    fn add_onward(&mut self, link: u32, end: usize, run: &mut Vec<(u32, bool)>) {
        let (mut here, mut end) = (link, end);
        loop {
            let held = self.streets.link(here);
            let node = held.nodes[end];
            if held.ends[end] != SiteEnd::Inner || self.street_ends[node as usize] != 2 {
                return;
            }
            let next = self.streets.at_node(node).find(|other| {
                let held = self.streets.link(other.0);
                *other != (here, end) && held.is_inside && held.way == Way::Street
            });
            let Some((next, next_end)) = next.filter(|(next, _)| !self.is_seen[*next as usize]) else {
                return;
            };
            self.is_seen[next as usize] = true;
            run.push((next, next_end == 0));
            (here, end) = (next, 1 - next_end);
        }
    }
}

fn list_vertices(fabric: &Fabric, streets: &SiteStreets, run: &[(u32, bool)], vertices: &mut Vec<Vertex>) {
    vertices.clear();
    for &(place, forward) in run {
        let link = streets.link(place);
        let start = vertices.len();
        vertices.extend(points_of(fabric, place).map(|at| Vertex {
            at,
            link: place,
            node: None,
        }));
        let added = &mut vertices[start..];
        if let Some(first) = added.first_mut() {
            first.node = Some(link.nodes[0]);
        }
        if let Some(last) = added.last_mut() {
            last.node = Some(link.nodes[1]);
        }
        if !forward {
            added.reverse();
        }
        if start > 0 {
            // The last vertex of the link before is the first of this one.
            vertices.remove(start);
        }
    }
}

/// Whether the run turns by 60° or more altogether, to either side: else it bends sharply nowhere.
fn turns_enough(vertices: &[Vertex]) -> bool {
    let mut turned = 0.0;
    for corner in vertices.windows(3) {
        let (ux, uy) = from_to(corner[0].at, corner[1].at);
        let (vx, vy) = from_to(corner[1].at, corner[2].at);
        let (cross, dot) = (ux * vy - uy * vx, ux * vx + uy * vy);
        // Below a right angle a turn is at most π/2 times its sine; a right angle or more is taken as a half circle. So
        // the sum is never less than the turn.
        let sine = cross.abs() / (crate::number::length(ux, uy) * crate::number::length(vx, vy));
        turned += if dot > 0.0 {
            std::f64::consts::FRAC_PI_2 * sine
        } else {
            std::f64::consts::PI
        };
    }
    turned >= std::f64::consts::FRAC_PI_3
}

/// The sharpest vertex of every stretch of sharp vertices less than a chord apart.
fn bends_of(vertices: &[Vertex]) -> Vec<usize> {
    let mut bends: Vec<(f64, usize)> = Vec::new();
    let mut last: Option<usize> = None;
    for index in 1..vertices.len().saturating_sub(1) {
        let Some(cosine) = cosine_between_chords(vertices, index).filter(|cosine| *cosine >= COSINE_OF_120_DEGREES)
        else {
            last = None;
            continue;
        };
        let (x, y) = last.map_or((CHORD_MM, 0.0), |last| from_to(vertices[last].at, vertices[index].at));
        match bends.last_mut() {
            Some(held) if x * x + y * y < CHORD_MM * CHORD_MM => {
                if cosine > held.0 {
                    *held = (cosine, index);
                }
            }
            _ => bends.push((cosine, index)),
        }
        last = Some(index);
    }
    bends.into_iter().map(|(_, index)| index).collect()
}

/// Cosine of the angle between the two chords that meet at a vertex; `None` where the run ends within a chord.
fn cosine_between_chords(vertices: &[Vertex], index: usize) -> Option<f64> {
    let at = vertices[index].at;
    let back = chord(at, vertices[..index].iter().rev())?;
    let ahead = chord(at, vertices[index + 1..].iter())?;
    Some((back.0 * ahead.0 + back.1 * ahead.1) / (CHORD_MM * CHORD_MM))
}

/// From `at` to where the way over `onward` is first a chord away.
fn chord<'a>(at: PlanPoint, onward: impl Iterator<Item = &'a Vertex>) -> Option<(f64, f64)> {
    let (mut x, mut y) = (0.0, 0.0);
    for vertex in onward {
        let (next_x, next_y) = from_to(at, vertex.at);
        if next_x * next_x + next_y * next_y >= CHORD_MM * CHORD_MM {
            // On the segment the distance is the chord where a t² + 2 b t + c = 0.
            let (dx, dy) = (next_x - x, next_y - y);
            let a = dx * dx + dy * dy;
            let b = x * dx + y * dy;
            let c = x * x + y * y - CHORD_MM * CHORD_MM;
            let share = (-b + (b * b - a * c).max(0.0).sqrt()) / a;
            return Some((x + share * dx, y + share * dy));
        }
        (x, y) = (next_x, next_y);
    }
    None
}

fn from_to(from: PlanPoint, to: PlanPoint) -> (f64, f64) {
    (
        f64::from(to.x_mm) - f64::from(from.x_mm),
        f64::from(to.y_mm) - f64::from(from.y_mm),
    )
}
