//! Making the walking network: links as drawn, cut at barriers, costed by slope, joined by waits.

use crate::order::{self, OrderedMap};

use super::WalkNetwork;
use super::barriers::{Cut, cuts};
use super::corners::{Leg, Passing, corners, passing};
use super::ground::Ground;
use super::waits::{SectionWalk, section_walk};
use crate::fabric::Fabric;
use crate::fabric::links::StreetLink;
use crate::measures::place_sources::PLACE_BAND_MM;
use crate::network::graph::{MOST_COST, NetworkFault};
use crate::network::pace::costs_us;
use crate::network::{LinkDraft, LinkId, Network, NodeId};
use crate::number;
use crate::plan::land::Crossing;
use crate::plan::{AlternativeId, Document, Mark, PlanPoint, StreetSectionId};

/// A link's points, each with its distance along the link in micrometers.
type Line = Vec<(PlanPoint, u64)>;

/// One end of a link: the link by its place, and whether it is its last node.
type End = (usize, bool);

/// A street that passes an intersection: the place of its node among those looked at, and its own among those that pass.
type PassingStreet = (usize, usize);

/// A node, what leads away from it, and the streets that pass there.
type LegsAt = (u32, Vec<Leg>, Vec<Passing>);

/// How near a crossing is to a passing street: to its line, by its wait (the longest least), to the intersection.
type Nearness = (f64, u64, f64);

/// A network on its way.
pub(super) struct Drafting<'a> {
    fabric: &'a Fabric,
    ground: Option<&'a Ground<'a>>,
    pace_mm_per_s: u64,
    /// Cost of a second of waiting; 0 where waits do not count.
    wait_cost_per_s: u64,
    /// By street.
    walks: Vec<SectionWalk>,
    barriers: Vec<&'a [PlanPoint]>,
    /// Drawn crossings, and whether each was found to open a barrier; then it speaks of no street.
    crossings: Vec<(&'a Crossing, bool)>,
    nodes: Vec<PlanPoint>,
    drafts: Vec<LinkDraft>,
    /// As in [`WalkNetwork`].
    pieces: OrderedMap<LinkId, Vec<(u64, LinkId)>>,
    /// For nodes on a barrier: the node of the streets that come from its other side.
    beyond: OrderedMap<NodeId, NodeId>,
    /// Links between nodes at one place, at the cost of a wait.
    waiting: Vec<(NodeId, NodeId, u64)>,
}

impl<'a> Drafting<'a> {
    pub fn of(
        document: &'a Document,
        alternative: AlternativeId,
        fabric: &'a Fabric,
        ground: Option<&'a Ground<'a>>,
    ) -> Self {
        let marks = document.alternatives.get(&alternative).map(|held| &held.marks);
        let (mut barriers, mut crossings) = (Vec::new(), Vec::new());
        for mark in marks.into_iter().flat_map(|marks| marks.values()) {
            match mark {
                Mark::Barrier(barrier) => barriers.push(barrier.line.as_slice()),
                Mark::Crossing(crossing) => crossings.push((crossing, false)),
                _ => {}
            }
        }
        let pace_mm_per_s = u64::from(document.settings.walking_pace_mm_per_s.max(1));
        // Streets one after another mostly have one section.
        let mut last: Option<(StreetSectionId, SectionWalk)> = None;
        let mut walks = Vec::with_capacity(fabric.lines.streets.len());
        for street in &fabric.lines.streets {
            let walk = match last {
                Some((section, walk)) if section == street.section => walk,
                _ => section_walk(document, street.section),
            };
            last = Some((street.section, walk));
            walks.push(walk);
        }
        Self {
            fabric,
            ground,
            pace_mm_per_s,
            wait_cost_per_s: if ground.is_some() {
                1_000_000
            } else {
                pace_mm_per_s * 1_000
            },
            walks,
            barriers,
            crossings,
            nodes: fabric.links.nodes.clone(),
            drafts: Vec::with_capacity(fabric.links.links.len()),
            pieces: OrderedMap::new(),
            beyond: OrderedMap::new(),
            waiting: Vec::new(),
        }
    }

    pub fn without_waits(mut self) -> Self {
        self.wait_cost_per_s = 0;
        self
    }

    pub fn built(mut self) -> Result<WalkNetwork, Vec<NetworkFault>> {
        let fabric = self.fabric;
        let has_ground = self.ground.is_some();
        for link in &fabric.links.links {
            let mut corners = Vec::new();
            for half_edge in link.half_edges.iter().skip(1) {
                corners.push(fabric.arrangement.point(fabric.arrangement.origin(*half_edge)));
            }
            let mut draft = LinkDraft {
                walkable: self.walks[link.street as usize].is_walked,
                corners,
                ..LinkDraft::level(NodeId(link.ends[0]), NodeId(link.ends[1]), link.length_um)
            };
            if has_ground {
                self.set_slope(&mut draft);
            }
            self.drafts.push(draft);
        }
        if !self.barriers.is_empty() {
            self.cut_at_barriers();
        }
        let street_links = self.drafts.len() as u32;
        self.wait_at_corners();
        for (from, to, cost) in std::mem::take(&mut self.waiting) {
            let cost = cost.clamp(1, MOST_COST);
            self.drafts.push(LinkDraft {
                cost_forward: cost,
                cost_backward: cost,
                ..LinkDraft::level(from, to, 1)
            });
        }
        Ok(WalkNetwork {
            network: Network::build(&self.nodes, &self.drafts)?,
            pace_mm_per_s: self.pace_mm_per_s,
            is_sloping: self.ground.is_some(),
            street_links,
            pieces: self.pieces,
        })
    }

    /// Costs by the heights of the ground, where they are known and the link costs no more than a link may.
    fn set_slope(&self, draft: &mut LinkDraft) {
        let Some(ground) = self.ground else { return };
        let mut line: Vec<((f64, f64), f64)> = Vec::with_capacity(draft.corners.len() + 2);
        let ends = [draft.from, draft.to].map(|node| self.nodes[node.0 as usize]);
        let points = [ends[0]]
            .into_iter()
            .chain(draft.corners.iter().copied())
            .chain([ends[1]]);
        for point in points.map(PlanPoint::to_m) {
            let before = line.last().copied();
            let along_m = before.map_or(0.0, |((x_m, y_m), along_m)| {
                along_m + number::length(point.0 - x_m, point.1 - y_m)
            });
            line.push((point, along_m));
        }
        let height_m = |at_m: f64| {
            let after = line
                .partition_point(|(_, along_m)| *along_m < at_m)
                .clamp(1, line.len() - 1);
            let ((ax, ay), from_m) = line[after - 1];
            let ((bx, by), to_m) = line[after];
            let share = if to_m > from_m {
                ((at_m - from_m) / (to_m - from_m)).min(1.0)
            } else {
                0.0
            };
            ground.height_m((ax + (bx - ax) * share, ay + (by - ay) * share))
        };
        let slope = |from_m: f64, to_m: f64| (height_m(to_m) - height_m(from_m)) / (to_m - from_m);
        let speed_m_per_s = self.pace_mm_per_s as f64 / 1e3;
        let level_us = (draft.length_um.saturating_mul(1_000) / self.pace_mm_per_s).clamp(1, MOST_COST);
        let costs = costs_us(draft.length_um, speed_m_per_s, slope);
        (draft.cost_forward, draft.cost_backward) = costs.unwrap_or((level_us, level_us));
    }

    /// Cost of a wait in seconds.
    fn wait_cost(&self, wait_s: f64) -> u64 {
        ((wait_s * self.wait_cost_per_s as f64).round() as u64).min(MOST_COST)
    }

    fn crossing_cost(&self, crossing: &Crossing) -> u64 {
        self.wait_cost(f64::from(crossing.delay_tenths_s) / 10.0)
    }

    /// The drawn crossing nearest to a place on a barrier, within the band.
    fn opening_at(&mut self, at: PlanPoint) -> Option<&'a Crossing> {
        let near = self.crossings.iter_mut().map(|held| (distance_mm(held.0.at, at), held));
        let near = near.filter(|(distance, _)| *distance <= f64::from(PLACE_BAND_MM));
        let key = |held: &(&Crossing, bool)| held.0.delay_tenths_s;
        let nearest = near.min_by(|a, b| a.0.total_cmp(&b.0).then(key(a.1).cmp(&key(b.1))));
        nearest.map(|(_, held)| {
            held.1 = true;
            held.0
        })
    }

    fn cut_at_barriers(&mut self) {
        let fabric = self.fabric;
        for (place, link) in fabric.links.links.iter().enumerate() {
            if fabric.lines.streets[link.street as usize].level != 0 {
                continue;
            }
            let line: Line = line_of(fabric, link).collect();
            let mut found: Vec<Cut> = self.barriers.iter().flat_map(|barrier| cuts(barrier, &line)).collect();
            order::sort_by_key(&mut found, |cut| cut.along_um);
            found.dedup_by_key(|cut| cut.along_um);
            // A crossing without a wait leaves the street as it is.
            found.retain(|cut| {
                self.opening_at(cut.at)
                    .is_none_or(|crossing| crossing.delay_tenths_s > 0)
            });
            if !found.is_empty() {
                self.cut(place, &line, &found);
            }
        }
    }

    /// Parts a link where barriers cut it, and joins the parts again where a crossing is drawn.
    fn cut(&mut self, place: usize, line: &[(PlanPoint, u64)], found: &[Cut]) {
        let whole = self.drafts[place].clone();
        let (mut from, mut to) = (whole.from, whole.to);
        // What starts or ends on the barrier and lies beyond it joins the node of that side.
        if found.first().is_some_and(|cut| cut.along_um == 0) {
            from = self.node_beyond(whole.from);
        }
        if found.last().is_some_and(|cut| cut.along_um == whole.length_um) {
            to = self.node_beyond(whole.to);
        }
        let inner: Vec<&Cut> = found
            .iter()
            .filter(|cut| 0 < cut.along_um && cut.along_um < whole.length_um)
            .collect();
        let mut starts = vec![0];
        starts.extend(inner.iter().map(|cut| cut.along_um));
        let mut held = Vec::with_capacity(starts.len());
        for (piece, &start_um) in starts.iter().enumerate() {
            let end_um = starts.get(piece + 1).copied().unwrap_or(whole.length_um);
            let end = match inner.get(piece) {
                Some(cut) => self.new_node(cut.at),
                None => to,
            };
            let within = line
                .iter()
                .filter(|(_, along_um)| start_um < *along_um && *along_um < end_um);
            let mut draft = LinkDraft {
                walkable: whole.walkable,
                corners: within.map(|(point, _)| *point).collect(),
                ..LinkDraft::level(from, end, end_um - start_um)
            };
            self.set_slope(&mut draft);
            if piece == 0 {
                self.drafts[place] = draft;
                held.push((start_um, LinkId(place as u32)));
            } else {
                held.push((start_um, LinkId(self.drafts.len() as u32)));
                self.drafts.push(draft);
            }
            if let Some(cut) = inner.get(piece) {
                from = self.new_node(cut.at);
                if let Some(crossing) = self.opening_at(cut.at) {
                    self.waiting.push((end, from, self.crossing_cost(crossing)));
                }
            }
        }
        if held.len() > 1 {
            self.pieces.insert(LinkId(place as u32), held);
        }
    }

    fn new_node(&mut self, at: PlanPoint) -> NodeId {
        self.nodes.push(at);
        NodeId(self.nodes.len() as u32 - 1)
    }

    /// The node on the other side of the barrier that runs through a node.
    fn node_beyond(&mut self, node: NodeId) -> NodeId {
        if let Some(held) = self.beyond.get(&node) {
            return *held;
        }
        let at = self.nodes[node.0 as usize];
        let beyond = self.new_node(at);
        self.beyond.insert(node, beyond);
        if let Some(crossing) = self.opening_at(at) {
            self.waiting.push((node, beyond, self.crossing_cost(crossing)));
        }
        beyond
    }

    /// Puts the corners of intersections that wide and fast streets pass on nodes of their own.
    fn wait_at_corners(&mut self) {
        let waits: Vec<u64> = self.walks.iter().map(|walk| self.wait_cost(walk.wait_s)).collect();
        if self.wait_cost_per_s == 0 || (self.crossings.is_empty() && waits.iter().all(|wait| *wait == 0)) {
            return;
        }
        let ends_at = self.ends_to_look_at(&waits);
        let mut legs_at: Vec<LegsAt> = Vec::new();
        for (node, ends) in (0..).zip(&ends_at).filter(|(_, ends)| !ends.is_empty()) {
            let legs: Vec<Leg> = ends.iter().filter_map(|end| self.leg(*end, &waits)).collect();
            let passing = if legs.len() > 2 { passing(&legs) } else { Vec::new() };
            legs_at.push((node, legs, passing));
        }
        for ((place, street), cost) in self.said_by_crossings(&legs_at) {
            let held = legs_at.get_mut(place).and_then(|(.., passing)| passing.get_mut(street));
            if let Some(held) = held {
                held.wait = cost;
            }
        }
        for (node, legs, mut passing) in legs_at {
            passing.retain(|street| street.wait > 0);
            let ends = ends_at.get(node as usize).map_or(&[][..], Vec::as_slice);
            for corner in corners(&legs, &passing) {
                let middle = NodeId(node);
                let at = self.new_node(self.nodes[node as usize]);
                self.waiting.push((at, middle, corner.cost));
                for leg in corner.legs {
                    if let Some(end) = ends.get(leg) {
                        self.move_end(*end, middle, at);
                    }
                }
            }
        }
    }

    /// By node the ends of links there, where a street with a wait touches it or a crossing lies near.
    fn ends_to_look_at(&self, waits: &[u64]) -> Vec<Vec<End>> {
        let links = &self.fabric.links;
        let mut looked_at = vec![false; links.nodes.len()];
        for link in links.links.iter().filter(|link| waits[link.street as usize] > 0) {
            link.ends.iter().for_each(|node| looked_at[*node as usize] = true);
        }
        for (crossing, _) in &self.crossings {
            for (looked_at, point) in looked_at.iter_mut().zip(&links.nodes) {
                *looked_at |= distance_mm(crossing.at, *point) <= f64::from(PLACE_BAND_MM);
            }
        }
        let mut ends_at: Vec<Vec<End>> = vec![Vec::new(); links.nodes.len()];
        for (place, link) in links.links.iter().enumerate() {
            for (node, is_last) in [(link.ends[0], false), (link.ends[1], true)] {
                if looked_at[node as usize] {
                    ends_at[node as usize].push((place, is_last));
                }
            }
        }
        ends_at
    }

    fn leg(&self, (place, is_last): End, waits: &[u64]) -> Option<Leg> {
        let link = self.fabric.links.links.get(place)?;
        let arrangement = &self.fabric.arrangement;
        let half_edge = if is_last {
            link.half_edges.last()
        } else {
            link.half_edges.first()
        }?;
        let (mut from, mut to) = (
            arrangement.point(arrangement.origin(*half_edge)),
            arrangement.point(arrangement.target(*half_edge)),
        );
        if is_last {
            std::mem::swap(&mut from, &mut to);
        }
        Some(Leg {
            dx: i64::from(to.x_mm) - i64::from(from.x_mm),
            dy: i64::from(to.y_mm) - i64::from(from.y_mm),
            street: link.street,
            wait: waits[link.street as usize],
        })
    }

    /// What drawn crossings say: the cost of crossing a passing street, by the place in `legs_at` and the street's
    /// place there. A crossing speaks of the street nearest to it at an intersection within the band; of several that
    /// speak of one the least wait counts.
    fn said_by_crossings(&self, legs_at: &[LegsAt]) -> OrderedMap<PassingStreet, u64> {
        let mut said: OrderedMap<PassingStreet, u64> = OrderedMap::new();
        for (crossing, _) in self.crossings.iter().filter(|(_, opens)| !opens) {
            let mut best: Option<(Nearness, PassingStreet)> = None;
            for (at, (node, legs, passing)) in legs_at.iter().enumerate() {
                let middle = self.nodes[*node as usize];
                let away = distance_mm(crossing.at, middle);
                if away > f64::from(PLACE_BAND_MM) {
                    continue;
                }
                for (place, street) in passing.iter().enumerate() {
                    let beside = street
                        .legs
                        .map(|leg| distance_to_leg_mm(crossing.at, middle, &legs[leg]));
                    // Of streets as near as each other the one that asks for the longer wait is meant.
                    let key = (beside[0].min(beside[1]).round(), u64::MAX - street.wait, away);
                    let is_better = best.is_none_or(|(held, _)| {
                        let order = key.0.total_cmp(&held.0).then(key.1.cmp(&held.1));
                        order.then(key.2.total_cmp(&held.2)).is_lt()
                    });
                    if is_better {
                        best = Some((key, (at, place)));
                    }
                }
            }
            if let Some((_, street)) = best {
                let cost = self.crossing_cost(crossing);
                let held = said.get(&street).copied().unwrap_or(cost);
                said.insert(street, cost.min(held));
            }
        }
        said
    }

    /// Moves the end of a link from one node to another, where it still is there.
    fn move_end(&mut self, (place, is_last): End, from: NodeId, to: NodeId) {
        let pieces = self.pieces.get(&LinkId(place as u32));
        let last = pieces
            .and_then(|pieces| pieces.last())
            .map_or(place, |(_, link)| link.0 as usize);
        let end = if is_last {
            self.drafts.get_mut(last).map(|draft| &mut draft.to)
        } else {
            self.drafts.get_mut(place).map(|draft| &mut draft.from)
        };
        if let Some(end) = end.filter(|end| **end == from) {
            *end = to;
        }
    }
}

/// The points of a link, each with its distance along the link.
fn line_of<'a>(fabric: &'a Fabric, link: &'a StreetLink) -> impl Iterator<Item = (PlanPoint, u64)> + 'a {
    let arrangement = &fabric.arrangement;
    let starts = link.half_edges.iter();
    let last = link.half_edges.last().map(|half_edge| arrangement.target(*half_edge));
    starts
        .map(|half_edge| {
            let point = arrangement.point(arrangement.origin(*half_edge));
            (point, fabric.links.start_um(*half_edge))
        })
        .chain(last.map(|vertex| (arrangement.point(vertex), link.length_um)))
}

fn distance_mm(a: PlanPoint, b: PlanPoint) -> f64 {
    (a.squared_distance_mm2(b) as f64).sqrt()
}

/// Distance from a point to the straight piece a leg leaves its intersection by.
fn distance_to_leg_mm(point: PlanPoint, middle: PlanPoint, leg: &Leg) -> f64 {
    let (dx, dy) = (leg.dx as f64, leg.dy as f64);
    let (px, py) = (
        f64::from(point.x_mm) - f64::from(middle.x_mm),
        f64::from(point.y_mm) - f64::from(middle.y_mm),
    );
    let share = ((px * dx + py * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
    number::length(px - share * dx, py - share * dy)
}
