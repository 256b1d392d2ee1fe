//! Chains: the runs of edges between nodes, as a street runs between intersections.

use super::arrangement::Arrangement;
use super::ids::{EdgeId, HalfEdgeId, VertexId};

/// A chain, numbered by its first half-edge; chains that close on themselves without a node come last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ChainId(pub u32);

/// The chains of an arrangement and the nodes they run between.
///
/// A node is a vertex with other than two edges, or one the caller asked for, or the lowest vertex of a ring that has no
/// such vertex. Every edge is in exactly one chain.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chains {
    starts: Vec<u32>,
    half_edges: Vec<HalfEdgeId>,
    lengths_um: Vec<u64>,
    ends: Vec<[VertexId; 2]>,
    chain_of_edge: Vec<ChainId>,
    nodes: Vec<VertexId>,
    degrees: Vec<u32>,
    pure_rings: usize,
}

impl Chains {
    /// The chains of `arrangement`. `is_forced(vertex)` makes a node of a vertex in the middle of a chain.
    ///
    /// Cost: linear.
    ///
    /// ```
    /// use hobnail_core::fabric::{Arrangement, Chains, SourceId, segments_of_line};
    /// use hobnail_core::plan::PlanPoint;
    /// let p = PlanPoint::new;
    /// let lines = [
    ///     vec![p(0, 0), p(3000, 4000), p(3000, 9000)],
    ///     vec![p(0, 0), p(-2000, 0)],
    ///     vec![p(0, 0), p(0, -2000)],
    /// ];
    /// let numbered = lines.iter().zip(0..);
    /// let segments: Vec<_> = numbered.flat_map(|(line, id)| segments_of_line(line, SourceId(id))).collect();
    /// let arrangement = Arrangement::of(&segments);
    /// let chains = Chains::of(&arrangement, |_| false);
    /// assert_eq!((chains.nodes().len(), chains.count()), (4, 3));
    /// assert_eq!(chains.ids().map(|chain| chains.length_um(chain)).max(), Some(10_000_000));
    /// ```
    #[must_use]
    pub fn of(arrangement: &Arrangement, is_forced: impl Fn(VertexId) -> bool) -> Self {
        let degrees = arrangement.degrees();
        let mut is_node: Vec<bool> = degrees
            .iter()
            .enumerate()
            .map(|(vertex, &degree)| degree != 2 || is_forced(VertexId(vertex as u32)))
            .collect();
        let mut chains = Self {
            starts: vec![0],
            half_edges: Vec::with_capacity(arrangement.edge_count()),
            lengths_um: Vec::new(),
            ends: Vec::new(),
            chain_of_edge: Vec::new(),
            nodes: Vec::new(),
            degrees,
            pure_rings: 0,
        };
        let mut chain_of_edge: Vec<Option<ChainId>> = vec![None; arrangement.edge_count()];
        let all = || arrangement.edges().flat_map(|edge| [edge.forward(), edge.backward()]);
        for half_edge in all() {
            let begins = is_node[arrangement.origin(half_edge).0 as usize];
            if begins && chain_of_edge[half_edge.edge().0 as usize].is_none() {
                chains.walk(arrangement, half_edge, &is_node, &mut chain_of_edge);
            }
        }
        for half_edge in all() {
            // Edges are sorted, so the first edge left of a ring starts at the lowest vertex of the ring.
            if chain_of_edge[half_edge.edge().0 as usize].is_none() {
                is_node[arrangement.origin(half_edge).0 as usize] = true;
                chains.walk(arrangement, half_edge, &is_node, &mut chain_of_edge);
                chains.pure_rings += 1;
            }
        }
        chains.chain_of_edge = chain_of_edge.into_iter().flatten().collect();
        chains.nodes = (0..is_node.len() as u32)
            .map(VertexId)
            .filter(|vertex| is_node[vertex.0 as usize])
            .collect();
        chains
    }

    fn walk(
        &mut self,
        arrangement: &Arrangement,
        start: HalfEdgeId,
        is_node: &[bool],
        chain_of_edge: &mut [Option<ChainId>],
    ) {
        let id = ChainId(self.lengths_um.len() as u32);
        let (mut half_edge, mut length_um) = (start, 0);
        let last = loop {
            chain_of_edge[half_edge.edge().0 as usize] = Some(id);
            self.half_edges.push(half_edge);
            length_um += arrangement.length_um(half_edge.edge());
            let target = arrangement.target(half_edge);
            if is_node[target.0 as usize] {
                break target;
            }
            // Between nodes a vertex has two edges, so what follows around the face goes on along the chain.
            half_edge = arrangement.next(half_edge);
        };
        self.starts.push(self.half_edges.len() as u32);
        self.lengths_um.push(length_um);
        self.ends.push([arrangement.origin(start), last]);
    }

    /// How many chains there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.lengths_um.len()
    }

    /// All chains, in order.
    pub fn ids(&self) -> impl ExactSizeIterator<Item = ChainId> + use<> {
        (0..self.lengths_um.len() as u32).map(ChainId)
    }

    /// The half-edges along a chain, from its first node to its last.
    #[must_use]
    pub fn half_edges(&self, chain: ChainId) -> &[HalfEdgeId] {
        let chain = chain.0 as usize;
        &self.half_edges[self.starts[chain] as usize..self.starts[chain + 1] as usize]
    }

    /// The vertices along a chain, both nodes included.
    pub fn vertices<'a>(
        &'a self,
        arrangement: &'a Arrangement,
        chain: ChainId,
    ) -> impl ExactSizeIterator<Item = VertexId> + 'a {
        let half_edges = self.half_edges(chain);
        (0..half_edges.len() + 1).map(move |index| match index.checked_sub(1) {
            None => self.ends(chain)[0],
            Some(previous) => arrangement.target(half_edges[previous]),
        })
    }

    /// The nodes a chain runs from and to; the same node twice when it is a loop.
    #[must_use]
    pub fn ends(&self, chain: ChainId) -> [VertexId; 2] {
        self.ends[chain.0 as usize]
    }

    /// The length of a chain in micrometers: the sum of its edges' rounded lengths.
    #[must_use]
    pub fn length_um(&self, chain: ChainId) -> u64 {
        self.lengths_um[chain.0 as usize]
    }

    /// The chain an edge is part of.
    #[must_use]
    pub fn chain_of(&self, edge: EdgeId) -> ChainId {
        self.chain_of_edge[edge.0 as usize]
    }

    /// All nodes, ascending.
    #[must_use]
    pub fn nodes(&self) -> &[VertexId] {
        &self.nodes
    }

    /// How many edges meet at a vertex; a chain that is a loop counts twice at its node.
    #[must_use]
    pub fn degree(&self, vertex: VertexId) -> u32 {
        self.degrees[vertex.0 as usize]
    }

    /// Nodes where one edge ends, ascending.
    pub fn dead_ends(&self) -> impl Iterator<Item = VertexId> + '_ {
        self.nodes.iter().copied().filter(|&node| self.degree(node) == 1)
    }

    /// Chains that begin and end at the same node, rings without any other node included.
    pub fn self_loops(&self) -> impl Iterator<Item = ChainId> + '_ {
        self.ids().filter(|&chain| {
            let [first, last] = self.ends(chain);
            first == last
        })
    }

    /// How many rings have no node but the one given to them.
    #[must_use]
    pub fn pure_ring_count(&self) -> usize {
        self.pure_rings
    }
}
