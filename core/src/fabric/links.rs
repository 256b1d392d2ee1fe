//! Streets between intersections: the links of the network, with their place on the arrangement.
//!
//! A link runs between nodes along one street. Streets of unlike level that merely cross share no node; a street that
//! ends on another joins it whatever its level, since a bridge comes down to the ground at its ends.

use std::collections::BTreeMap;

use super::arrangement::Arrangement;
use super::carriers::Carrier;
use super::chains::{ChainId, Chains};
use super::ids::{EdgeId, HalfEdgeId, VertexId};
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
    pub half_edges: Vec<HalfEdgeId>,
    /// Where each half-edge begins along the link, in micrometers.
    pub starts_um: Vec<u64>,
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
    /// For each edge its link and its place in the link's half-edges; `None` where no street runs.
    link_of_edge: Vec<Option<(u32, u32)>>,
}

impl StreetLinks {
    /// The links of an arrangement whose edges are carried by `carriers`. Cost: almost linear.
    #[must_use]
    pub fn of(lines: &DrawnLines, arrangement: &Arrangement, carriers: &[Option<Carrier>]) -> Self {
        let edges_at = edges_at_vertices(arrangement, carriers);
        let street_of = |edge: EdgeId| carriers[edge.0 as usize].map(|carrier| carrier.street);
        let forced: Vec<bool> = edges_at
            .iter()
            .map(|edges| match edges.as_slice() {
                [a, b] => street_of(*a) != street_of(*b),
                _ => true,
            })
            .collect();
        let chains = Chains::of(arrangement, |vertex| forced[vertex.0 as usize]);
        let groups = Groups::of(lines, carriers, &edges_at);
        let mut links = Self {
            link_of_edge: vec![None; arrangement.edge_count()],
            ..Self::default()
        };
        let mut node_of: BTreeMap<(VertexId, i8), u32> = BTreeMap::new();
        for chain in chains.ids() {
            links.add(chain, &chains, arrangement, carriers, |vertex, edge| {
                let key = (vertex, groups.of_edge(vertex, edge));
                let next = node_of.len() as u32;
                (*node_of.entry(key).or_insert(next), next)
            });
        }
        links
    }

    fn add(
        &mut self,
        chain: ChainId,
        chains: &Chains,
        arrangement: &Arrangement,
        carriers: &[Option<Carrier>],
        mut node_of: impl FnMut(VertexId, EdgeId) -> (u32, u32),
    ) {
        let half_edges = chains.half_edges(chain);
        let (Some(first), Some(last)) = (half_edges.first(), half_edges.last()) else {
            return;
        };
        let Some(carrier) = carriers[first.edge().0 as usize] else {
            return;
        };
        let mut end = |vertex: VertexId, edge: EdgeId, nodes: &mut Vec<PlanPoint>| {
            let (node, next) = node_of(vertex, edge);
            if node == next {
                nodes.push(arrangement.point(vertex));
            }
            node
        };
        let ends = [
            end(arrangement.origin(*first), first.edge(), &mut self.nodes),
            end(arrangement.target(*last), last.edge(), &mut self.nodes),
        ];
        let mut length_um = 0;
        let mut starts_um = Vec::with_capacity(half_edges.len());
        for (half_edge, place) in half_edges.iter().zip(0..) {
            self.link_of_edge[half_edge.edge().0 as usize] = Some((self.links.len() as u32, place));
            starts_um.push(length_um);
            length_um += arrangement.length_um(half_edge.edge());
        }
        self.links.push(StreetLink {
            street: carrier.street,
            ends,
            half_edges: half_edges.to_vec(),
            starts_um,
            length_um,
        });
    }

    /// The piece of a link that a half-edge covers: the link, and from where to where along it in micrometers.
    #[must_use]
    pub fn piece_of(&self, half_edge: HalfEdgeId) -> Option<(u32, u64, u64)> {
        let (link, place) = self.link_of_edge[half_edge.edge().0 as usize]?;
        let held = &self.links[link as usize];
        let to_um = held
            .starts_um
            .get(place as usize + 1)
            .copied()
            .unwrap_or(held.length_um);
        Some((link, held.starts_um[place as usize], to_um))
    }

    /// Whether a half-edge runs from its link's first node toward its last; `false` where no street runs.
    #[must_use]
    pub fn runs_along(&self, half_edge: HalfEdgeId) -> bool {
        self.link_of_edge[half_edge.edge().0 as usize]
            .is_some_and(|(link, place)| self.links[link as usize].half_edges[place as usize] == half_edge)
    }

    /// The link that runs along an edge.
    #[must_use]
    pub fn link_of(&self, edge: EdgeId) -> Option<u32> {
        self.link_of_edge[edge.0 as usize].map(|(link, _)| link)
    }
}

/// For every vertex the street edges that meet there, ascending.
fn edges_at_vertices(arrangement: &Arrangement, carriers: &[Option<Carrier>]) -> Vec<Vec<EdgeId>> {
    let mut edges_at = vec![Vec::new(); arrangement.vertices().len()];
    for edge in arrangement.edges().filter(|edge| carriers[edge.0 as usize].is_some()) {
        for vertex in arrangement.ends(edge) {
            edges_at[vertex.0 as usize].push(edge);
        }
    }
    edges_at
}

/// Which street edges join at the vertices where streets of unlike level meet.
struct Groups {
    /// The group of each edge at such a vertex, named by a level; edges not listed are in group 0.
    of: BTreeMap<(VertexId, EdgeId), i8>,
}

impl Groups {
    fn of(lines: &DrawnLines, carriers: &[Option<Carrier>], edges_at: &[Vec<EdgeId>]) -> Self {
        let mut of = BTreeMap::new();
        let level_of =
            |edge: &EdgeId| carriers[edge.0 as usize].map_or(0, |carrier| lines.streets[carrier.street as usize].level);
        for (vertex, edges) in (0..).map(VertexId).zip(edges_at) {
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
