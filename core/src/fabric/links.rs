//! Streets between intersections: the links of the network, with their place on the arrangement.
//!
//! A link runs between nodes along one street. Streets of unlike level that merely cross share no node; a street that
//! ends on another joins it whatever its level, since a bridge comes down to the ground at its ends.

use crate::order::OrderedMap;

use super::arrangement::Arrangement;
use super::carriers::Carrier;
use super::ids::{EdgeId, HalfEdgeId, VertexId};
use super::run::Run;
use super::streets::DrawnLines;
use crate::plan::PlanPoint;

/// One link: a piece of street between two nodes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StreetLink {
    /// The street it is a piece of, by its place in [`DrawnLines::streets`].
    pub street: u32,
    /// The nodes it runs from and to, by their place in [`StreetLinks::nodes`].
    pub ends: [u32; 2],
    /// Its half-edges, from its first node to its last.
    pub half_edges: Run,
    /// Its length in micrometers.
    pub length_um: u64,
}

/// All links of a fabric.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StreetLinks {
    /// Where the nodes are. Two nodes share a point where a street passes over another.
    pub nodes: Vec<PlanPoint>,
    /// The links.
    pub links: Vec<StreetLink>,
    /// For each edge where it is on its link; `None` where no street runs.
    on_link: Vec<Option<OnLink>>,
}

/// An edge on its link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct OnLink {
    link: u32,
    /// Its place in the link's half-edges.
    place: u32,
    /// Where it begins along the link, in micrometers.
    start_um: u64,
}

impl StreetLinks {
    /// The links of an arrangement whose edges are carried by `carriers`. Cost: almost linear.
    #[must_use]
    pub fn of(lines: &DrawnLines, arrangement: &Arrangement, carriers: &[Option<Carrier>]) -> Self {
        let edges_at = EdgesAt::of(arrangement, carriers);
        let street_of = |edge: EdgeId| carriers[edge.0 as usize].map(|carrier| carrier.street);
        // Between nodes nothing but one street passes.
        let degrees = arrangement.degrees();
        let mut is_node = Vec::with_capacity(degrees.len());
        for (vertex, degree) in (0..).map(VertexId).zip(degrees) {
            is_node.push(match edges_at.vertex(vertex) {
                [a, b] => degree != 2 || street_of(*a) != street_of(*b),
                _ => true,
            });
        }
        let groups = Groups::of(lines, carriers, &edges_at);
        let mut links = Self {
            nodes: Vec::with_capacity(arrangement.vertices().len()),
            links: Vec::with_capacity(arrangement.edge_count()),
            on_link: vec![None; arrangement.edge_count()],
        };
        // Mostly all that meets at a vertex is in group 0.
        let mut ground_node: Vec<Option<u32>> = vec![None; arrangement.vertices().len()];
        let mut node_above: OrderedMap<(VertexId, i8), u32> = OrderedMap::new();
        let mut node_of = |vertex: VertexId, edge, next| {
            let node = match groups.of_edge(vertex, edge) {
                0 => ground_node[vertex.0 as usize].get_or_insert(next),
                group => node_above.entry((vertex, group)).or_insert(next),
            };
            *node
        };
        let mut walked = Vec::new();
        // What is left after the walks from nodes are rings without one: their lowest vertex becomes it.
        for is_ring in [false, true] {
            for edge in arrangement.edges() {
                let Some(street) = street_of(edge) else { continue };
                if links.on_link[edge.0 as usize].is_some() {
                    continue;
                }
                let begins = |half_edge: HalfEdgeId| is_node[arrangement.origin(half_edge).0 as usize];
                let first = if is_ring || begins(edge.forward()) {
                    edge.forward()
                } else if begins(edge.backward()) {
                    edge.backward()
                } else {
                    continue;
                };
                is_node[arrangement.origin(first).0 as usize] = true;
                walk(arrangement, first, &is_node, &mut walked);
                links.add(street, &walked, arrangement, &mut node_of);
            }
        }
        links
    }

    fn add(
        &mut self,
        street: u32,
        half_edges: &[HalfEdgeId],
        arrangement: &Arrangement,
        node_of: &mut impl FnMut(VertexId, EdgeId, u32) -> u32,
    ) {
        let (Some(first), Some(last)) = (half_edges.first(), half_edges.last()) else {
            return;
        };
        let mut end = |vertex: VertexId, edge: EdgeId, nodes: &mut Vec<PlanPoint>| {
            let next = nodes.len() as u32;
            let node = node_of(vertex, edge, next);
            if node == next {
                nodes.push(arrangement.point(vertex));
            }
            node
        };
        let from = end(arrangement.origin(*first), first.edge(), &mut self.nodes);
        let to = end(arrangement.target(*last), last.edge(), &mut self.nodes);
        let mut length_um = 0;
        for (half_edge, place) in half_edges.iter().zip(0..) {
            self.on_link[half_edge.edge().0 as usize] = Some(OnLink {
                link: self.links.len() as u32,
                place,
                start_um: length_um,
            });
            length_um += arrangement.length_um(half_edge.edge());
        }
        self.links.push(StreetLink {
            street,
            ends: [from, to],
            half_edges: Run::of(half_edges),
            length_um,
        });
    }

    /// The piece of a link that a half-edge covers: the link, and from where to where along it in micrometers.
    #[must_use]
    pub fn piece_of(&self, half_edge: HalfEdgeId) -> Option<(u32, u64, u64)> {
        let on = self.on_link[half_edge.edge().0 as usize]?;
        let held = &self.links[on.link as usize];
        let after = held.half_edges.get(on.place as usize + 1);
        let to_um = after.map_or(held.length_um, |after| self.start_um(*after));
        Some((on.link, on.start_um, to_um))
    }

    /// Where the edge of a half-edge begins along its link, in micrometers; 0 where no street runs.
    #[must_use]
    pub fn start_um(&self, half_edge: HalfEdgeId) -> u64 {
        self.on_link[half_edge.edge().0 as usize].map_or(0, |on| on.start_um)
    }

    /// Whether a half-edge runs from its link's first node toward its last; `false` where no street runs.
    #[must_use]
    pub fn runs_along(&self, half_edge: HalfEdgeId) -> bool {
        self.on_link[half_edge.edge().0 as usize]
            .is_some_and(|on| self.links[on.link as usize].half_edges[on.place as usize] == half_edge)
    }

    /// The link that runs along an edge.
    #[must_use]
    pub fn link_of(&self, edge: EdgeId) -> Option<u32> {
        self.on_link[edge.0 as usize].map(|on| on.link)
    }
}

/// Walks along a street from the half-edge `first` to the next node.
fn walk(arrangement: &Arrangement, first: HalfEdgeId, is_node: &[bool], walked: &mut Vec<HalfEdgeId>) {
    walked.clear();
    let mut here = first;
    loop {
        walked.push(here);
        if is_node[arrangement.target(here).0 as usize] {
            return;
        }
        // Between nodes a vertex has two edges, so what follows around the face goes on along the street.
        here = arrangement.next(here);
    }
}

/// For every vertex the street edges that meet there, ascending: those of vertex `v` from `starts[v]` to before
/// `starts[v + 1]`.
struct EdgesAt {
    starts: Vec<u32>,
    edges: Vec<EdgeId>,
}

impl EdgesAt {
    fn of(arrangement: &Arrangement, carriers: &[Option<Carrier>]) -> Self {
        let vertices = arrangement.vertices().len();
        let streets = || arrangement.edges().filter(|edge| carriers[edge.0 as usize].is_some());
        let mut starts = vec![0_u32; vertices + 1];
        for vertex in streets().flat_map(|edge| arrangement.ends(edge)) {
            starts[vertex.0 as usize + 1] += 1;
        }
        for vertex in 0..vertices {
            starts[vertex + 1] += starts[vertex];
        }
        let mut cursors = starts.clone();
        let mut edges = vec![EdgeId(0); starts[vertices] as usize];
        for edge in streets() {
            for vertex in arrangement.ends(edge) {
                let cursor = &mut cursors[vertex.0 as usize];
                edges[*cursor as usize] = edge;
                *cursor += 1;
            }
        }
        Self { starts, edges }
    }

    fn vertex(&self, VertexId(vertex): VertexId) -> &[EdgeId] {
        &self.edges[self.starts[vertex as usize] as usize..self.starts[vertex as usize + 1] as usize]
    }
}

/// Which street edges join at the vertices where streets of unlike level meet.
struct Groups {
    /// The group of each edge at such a vertex, named by a level; edges not listed are in group 0.
    of: OrderedMap<(VertexId, EdgeId), i8>,
}

impl Groups {
    fn of(lines: &DrawnLines, carriers: &[Option<Carrier>], edges_at: &EdgesAt) -> Self {
        let mut of = OrderedMap::new();
        if lines.streets.windows(2).all(|pair| pair[0].level == pair[1].level) {
            return Self { of };
        }
        let level_of =
            |edge: &EdgeId| carriers[edge.0 as usize].map_or(0, |carrier| lines.streets[carrier.street as usize].level);
        for vertex in (0..edges_at.starts.len() as u32 - 1).map(VertexId) {
            let edges = edges_at.vertex(vertex);
            let levels: Vec<i8> = edges.iter().map(level_of).collect();
            if levels.windows(2).all(|pair| pair[0] == pair[1]) {
                continue;
            }
            // A level that ends here comes down to the others; the levels that only pass stay apart.
            let passes = |level: i8| levels.iter().filter(|held| **held == level).count() > 1;
            let ground = levels
                .iter()
                .copied()
                .filter(|level| passes(*level))
                .min_by_key(|level| level.unsigned_abs());
            let ground = ground.unwrap_or(0);
            for (edge, level) in edges.iter().zip(&levels) {
                of.insert((vertex, *edge), if passes(*level) { *level } else { ground });
            }
        }
        Self { of }
    }

    fn of_edge(&self, vertex: VertexId, edge: EdgeId) -> i8 {
        self.of.get(&(vertex, edge)).copied().unwrap_or(0)
    }
}
