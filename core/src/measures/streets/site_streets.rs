//! Which streets are inside the site, how they end, and where they leave it.
//!
//! A street is *inside* where at least one of its sides lies in the site: where both do, and where it runs along the
//! site's edge. Streets marked as outside never are. Without a drawn boundary every street not so marked is inside. A
//! street along the edge counts whole, not by half.

use crate::fabric::links::StreetLink;
use crate::fabric::{Fabric, FaceId, HalfEdgeId};
use crate::plan::document::UnitSystem;
use crate::plan::land::SiteAccess;
use crate::plan::{AlternativeId, Document, Mark, PlanPoint, StreetRole, StreetSectionId};
use crate::say;

/// How near a site access must lie to the end of a street to be where that street leaves the site: 15 m, half of a wide
/// right-of-way, since accesses are drawn anywhere between the edge of the site and the middle of the road outside.
/// Larger would take the next street along the edge; smaller would miss a street that ends at the edge of the road.
pub const ACCESS_REACH_MM: i64 = 15_000;

/// What a street is to vehicles and to counting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// A street of any kind.
    Street,
    /// An alley or rear lane.
    Alley,
    /// A path without vehicles.
    Path,
}

/// The ways in the order of the axis `way`.
pub const WAYS: [Way; 3] = [Way::Street, Way::Alley, Way::Path];

impl Way {
    const fn of(role: StreetRole) -> Self {
        match role {
            StreetRole::Alley => Self::Alley,
            StreetRole::Path => Self::Path,
            StreetRole::Thoroughfare | StreetRole::NeighborhoodStreet | StreetRole::Lane => Self::Street,
        }
    }
}

/// How a link ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SiteEnd {
    /// At a node on the site.
    Inner,
    /// The street leaves the site here: it meets a street outside, crosses the site's edge, or ends at a site access.
    Leaves,
    /// A dead end whose right-of-way reaches the site's edge: kept for a street to come.
    Stub,
}

/// A link as the site sees it: all of it inside or all of it outside, since links end where the site's edge crosses them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SiteLink {
    /// The street, by its place in the drawn lines.
    pub street: u32,
    /// What it is.
    pub way: Way,
    /// Whether it is inside.
    pub is_inside: bool,
    /// Whether motor vehicles may use it.
    pub is_drivable: bool,
    /// Its length in micrometers.
    pub length_um: u64,
    /// The nodes it runs from and to, by their place in the fabric's nodes.
    pub nodes: [u32; 2],
    /// How it ends there.
    pub ends: [SiteEnd; 2],
}

/// Every link of a fabric as the site sees it.
#[derive(Clone, Debug, Default)]
pub struct SiteStreets {
    /// The links, numbered as those of the fabric.
    pub links: Vec<SiteLink>,
    /// Where the nodes are, numbered as those of the fabric.
    pub nodes: Vec<PlanPoint>,
    /// Which links end at each node, and at which end: those of node `n` from `first_at[n]` to before `first_at[n + 1]`.
    first_at: Vec<u32>,
    at: Vec<(u32, u8)>,
    /// Site accesses with their names, in order of their marks.
    pub accesses: Vec<(PlanPoint, String)>,
}

impl SiteStreets {
    /// The streets of one alternative. Cost: linear, and every dead end against the boundary's corners.
    #[must_use]
    pub fn of(document: &Document, alternative: AlternativeId, fabric: &Fabric) -> Self {
        let in_site = faces_in_site(fabric);
        // Streets one after another mostly have one section.
        let mut last: Option<(StreetSectionId, bool)> = None;
        let mut is_drivable = |section: StreetSectionId| match last {
            Some((held, is_drivable)) if held == section => is_drivable,
            _ => {
                let held = document.street_sections.get(&section);
                let is_drivable = held.is_some_and(|held| held.drivable);
                last = Some((section, is_drivable));
                is_drivable
            }
        };
        let site_link = |link: &StreetLink| {
            let line = &fabric.lines.streets[link.street as usize];
            let is_in_site = |side: HalfEdgeId| in_site[fabric.arrangement.face(side).0 as usize];
            let has_side_inside = |half_edge: &HalfEdgeId| is_in_site(*half_edge) || is_in_site(half_edge.twin());
            SiteLink {
                street: link.street,
                way: Way::of(line.role),
                is_inside: !line.is_outside && link.half_edges.first().is_some_and(has_side_inside),
                is_drivable: is_drivable(line.section),
                length_um: link.length_um,
                nodes: link.ends,
                ends: [SiteEnd::Inner; 2],
            }
        };
        let mut streets = Self {
            links: fabric.links.links.iter().map(site_link).collect(),
            nodes: fabric.links.nodes.clone(),
            accesses: accesses_of(document, alternative),
            ..Self::default()
        };
        streets.list_ends();
        let mut ends = Vec::with_capacity(streets.links.len());
        for link in 0..streets.links.len() as u32 {
            ends.push([streets.end_of(fabric, link, 0), streets.end_of(fabric, link, 1)]);
        }
        for (link, ends) in streets.links.iter_mut().zip(ends) {
            link.ends = ends;
        }
        streets
    }

    fn list_ends(&mut self) {
        self.first_at = vec![0; self.nodes.len() + 1];
        for node in self.links.iter().flat_map(|link| link.nodes) {
            self.first_at[node as usize + 1] += 1;
        }
        for node in 0..self.nodes.len() {
            self.first_at[node + 1] += self.first_at[node];
        }
        let mut cursors = self.first_at.clone();
        self.at = vec![(0, 0); self.links.len() * 2];
        for (place, link) in (0..).zip(&self.links) {
            for (end, node) in (0..).zip(link.nodes) {
                self.at[cursors[node as usize] as usize] = (place, end);
                cursors[node as usize] += 1;
            }
        }
    }

    /// The links that end at a node, each with which of its ends (0 or 1) does; a loop is there twice.
    pub fn at_node(&self, node: u32) -> impl Iterator<Item = (u32, usize)> + '_ {
        let range = self.first_at[node as usize] as usize..self.first_at[node as usize + 1] as usize;
        self.at[range].iter().map(|(link, end)| (*link, usize::from(*end)))
    }

    /// A link.
    #[must_use]
    pub fn link(&self, link: u32) -> &SiteLink {
        &self.links[link as usize]
    }

    /// The links inside, each with its number.
    pub fn inside(&self) -> impl Iterator<Item = (u32, &SiteLink)> {
        (0..).zip(&self.links).filter(|(_, link)| link.is_inside)
    }

    /// The point at one end of a link.
    #[must_use]
    pub fn end_point(&self, link: u32, end: usize) -> PlanPoint {
        self.nodes[self.link(link).nodes[end] as usize]
    }

    /// The name of the access near a point, the nearest of several; `None` where there is none within reach.
    #[must_use]
    pub fn access_near(&self, point: PlanPoint) -> Option<&str> {
        let near = self
            .accesses
            .iter()
            .map(|(at, name)| (at.squared_distance_mm2(point), name));
        let nearest = near.min_by_key(|(distance_mm2, _)| *distance_mm2)?;
        (nearest.0 <= ACCESS_REACH_MM * ACCESS_REACH_MM).then_some(nearest.1.as_str())
    }

    fn end_of(&self, fabric: &Fabric, place: u32, end: usize) -> SiteEnd {
        let link = self.link(place);
        if !link.is_inside {
            return SiteEnd::Inner;
        }
        let node = link.nodes[end];
        let is_path = link.way == Way::Path;
        // For whoever uses this link: what else ends here that they could go on along.
        let (mut others, mut beyond) = (0, None);
        for (other, other_end) in self.at_node(node) {
            let held = self.link(other);
            if (other, other_end) == (place, end) || (!is_path && held.way == Way::Path) {
                continue;
            }
            others += 1;
            if !held.is_inside && (is_path || held.is_drivable) {
                beyond = Some((held, 1 - other_end));
            }
        }
        if let Some((held, far_end)) = beyond {
            // A street drawn a little past the site's edge, ending there, has not left it.
            let far = held.nodes[far_end];
            let ends_there = others == 1 && held.street == link.street && self.at_node(far).count() == 1;
            return if ends_there && self.reaches_edge(fabric, link, far) {
                SiteEnd::Stub
            } else {
                SiteEnd::Leaves
            };
        }
        if others > 0 {
            SiteEnd::Inner
        } else if !is_path && self.access_near(self.nodes[node as usize]).is_some() {
            SiteEnd::Leaves
        } else if self.reaches_edge(fabric, link, node) {
            SiteEnd::Stub
        } else {
            SiteEnd::Inner
        }
    }

    /// Whether the right-of-way around the head of a dead end, which goes half its width beyond, reaches the site's edge.
    fn reaches_edge(&self, fabric: &Fabric, link: &SiteLink, node: u32) -> bool {
        let half_width_mm = i128::from(fabric.lines.streets[link.street as usize].right_of_way_mm / 2);
        let point = self.nodes[node as usize];
        let mut sides = fabric.lines.boundary.windows(2);
        has_boundary(fabric) && sides.any(|side| is_within(point, side[0], side[1], half_width_mm))
    }
}

/// The points along a link of the fabric, both ends included.
pub fn points_of(fabric: &Fabric, link: u32) -> impl Iterator<Item = PlanPoint> + '_ {
    let steps = &fabric.links.links[link as usize].half_edges;
    let arrangement = &fabric.arrangement;
    let first = steps.first().map(|first| arrangement.point(arrangement.origin(*first)));
    let onward = steps.iter().map(|step| arrangement.point(arrangement.target(*step)));
    first.into_iter().chain(onward)
}

/// The point in the middle of a link of the fabric.
#[must_use]
pub fn middle_of(fabric: &Fabric, link: u32) -> PlanPoint {
    let mut left_um = fabric.links.links[link as usize].length_um / 2;
    let mut points = points_of(fabric, link);
    let mut before = points.next().unwrap_or_default();
    for point in points {
        let length_um = before.distance_um(point);
        if left_um <= length_um && length_um > 0 {
            let share = left_um as f64 / length_um as f64;
            let between = |from: i32, to: i32| from + ((f64::from(to) - f64::from(from)) * share).round() as i32;
            return PlanPoint::new(between(before.x_mm, point.x_mm), between(before.y_mm, point.y_mm));
        }
        left_um -= length_um.min(left_um);
        before = point;
    }
    before
}

/// Whether a point is at most `reach_mm` from the segment from `a` to `b`, exact.
fn is_within(point: PlanPoint, a: PlanPoint, b: PlanPoint, reach_mm: i128) -> bool {
    let reach_mm2 = reach_mm * reach_mm;
    let wide = |from: i32, to: i32| i128::from(to) - i128::from(from);
    let (dx, dy) = (wide(a.x_mm, b.x_mm), wide(a.y_mm, b.y_mm));
    let (px, py) = (wide(a.x_mm, point.x_mm), wide(a.y_mm, point.y_mm));
    let (along, length_mm2) = (px * dx + py * dy, dx * dx + dy * dy);
    if along <= 0 {
        px * px + py * py <= reach_mm2
    } else if along >= length_mm2 {
        (px - dx) * (px - dx) + (py - dy) * (py - dy) <= reach_mm2
    } else {
        let cross = px * dy - py * dx;
        cross * cross <= reach_mm2 * length_mm2
    }
}

/// For every face whether it lies in the site; the unbounded one does where no boundary is drawn.
#[must_use]
pub fn faces_in_site(fabric: &Fabric) -> Vec<bool> {
    let mut in_site = vec![false; fabric.arrangement.face_count()];
    in_site[FaceId::OUTSIDE.0 as usize] = !has_boundary(fabric);
    for face in &fabric.faces {
        in_site[face.id.0 as usize] = face.is_in_site;
    }
    in_site
}

/// Whether a site boundary is drawn.
#[must_use]
pub fn has_boundary(fabric: &Fabric) -> bool {
    fabric.lines.boundary.len() >= 4
}

fn accesses_of(document: &Document, alternative: AlternativeId) -> Vec<(PlanPoint, String)> {
    let marks = document.alternatives.get(&alternative).map(|held| held.marks.values());
    let accesses = marks.into_iter().flatten().filter_map(|mark| match mark {
        Mark::SiteAccess(SiteAccess { at, name, .. }) => Some((*at, name.clone())),
        _ => None,
    });
    accesses.collect()
}

/// A street or a crossing in words: `Mill Street at 12 m east, 40 m north`, in feet in US customary units, without the
/// name where it has none.
#[must_use]
pub fn named_place(name: &str, what: &str, point: PlanPoint, units: UnitSystem) -> String {
    let name = if name.is_empty() { what } else { name };
    name.to_owned() + say!("measures-joint-at") + &point.in_words(units)
}

/// The name a street was given; empty where it has none.
#[must_use]
pub fn street_name<'a>(document: &'a Document, alternative: AlternativeId, fabric: &Fabric, street: u32) -> &'a str {
    let mark = fabric.lines.streets.get(street as usize).map(|line| line.mark);
    let held = mark.and_then(|mark| document.mark(alternative, mark)?.as_street());
    held.map_or("", |street| street.name.as_str())
}
