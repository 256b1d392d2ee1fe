//! The network of an arrangement: its chains as links, its nodes as nodes.

use super::graph::{LinkDraft, LinkId, Location, Network, NetworkFault, NodeId};
use crate::fabric::{Arrangement, ChainId, Chains, EdgeId, Foot, VertexId};
use crate::plan::PlanPoint;

/// A network and where it lies on the arrangement it was made of. Links are numbered as the chains, nodes as the
/// chains' nodes.
#[derive(Clone, Debug)]
pub struct StreetNetwork {
    /// The network.
    pub network: Network,
    vertices: Vec<VertexId>,
    /// Of every edge: its link, the micrometers along the link of its lower vertex, and whether it runs along the link.
    places: Vec<(LinkId, u64, bool)>,
}

impl StreetNetwork {
    /// Makes the network. `costs(chain)` tells what walking a chain costs from its first to its last node and back, or
    /// `None` where nobody walks; on level ground both are the chain's length in micrometers.
    ///
    /// # Errors
    /// Every [`NetworkFault`], when a cost is zero or beyond what a link may cost.
    ///
    /// ```
    /// use hobnail_core::fabric::{Arrangement, Chains, Locator, SourceId, segments_of_line};
    /// use hobnail_core::network::StreetNetwork;
    /// use hobnail_core::plan::PlanPoint;
    /// let line = [PlanPoint::new(0, 0), PlanPoint::new(3_000, 4_000), PlanPoint::new(3_000, 9_000)];
    /// let arrangement = Arrangement::of(&segments_of_line(&line, SourceId(0)).collect::<Vec<_>>());
    /// let chains = Chains::of(&arrangement, |_| false);
    /// let level = |chain| Some((chains.length_um(chain), chains.length_um(chain)));
    /// let streets = StreetNetwork::of(&arrangement, &chains, level)?;
    /// let foot = Locator::of(&arrangement).nearest(PlanPoint::new(3_500, 6_000)).ok_or_else(Vec::new)?;
    /// assert_eq!(streets.location(&foot).along_um, 7_000_000);
    /// # Ok::<(), Vec<hobnail_core::network::graph::NetworkFault>>(())
    /// ```
    pub fn of(
        arrangement: &Arrangement,
        chains: &Chains,
        costs: impl Fn(ChainId) -> Option<(u64, u64)>,
    ) -> Result<Self, Vec<NetworkFault>> {
        let vertices = chains.nodes().to_vec();
        let node = |vertex: VertexId| NodeId(vertices.partition_point(|&other| other < vertex) as u32);
        let mut places = vec![(LinkId(0), 0, true); arrangement.edge_count()];
        let mut drafts = Vec::with_capacity(chains.count());
        for chain in chains.ids() {
            let link = LinkId(chain.0);
            let mut along_um = 0;
            for half_edge in chains.half_edges(chain) {
                let start_um = along_um;
                along_um += arrangement.length_um(half_edge.edge());
                let forward = half_edge.is_forward();
                let lower_um = if forward { start_um } else { along_um };
                places[half_edge.edge().0 as usize] = (link, lower_um, forward);
            }
            let [from, to] = chains.ends(chain).map(node);
            let inner = chains.half_edges(chain).iter().skip(1);
            let length_um = chains.length_um(chain);
            let costs = costs(chain);
            let (cost_forward, cost_backward) = costs.unwrap_or((length_um, length_um));
            drafts.push(LinkDraft {
                from,
                to,
                length_um,
                cost_forward,
                cost_backward,
                walkable: costs.is_some(),
                corners: inner
                    .map(|&half_edge| arrangement.point(arrangement.origin(half_edge)))
                    .collect(),
            });
        }
        let nodes: Vec<PlanPoint> = vertices.iter().map(|&vertex| arrangement.point(vertex)).collect();
        let network = Network::build(&nodes, &drafts)?;
        Ok(Self {
            network,
            vertices,
            places,
        })
    }

    /// The vertex a node stands at.
    #[must_use]
    pub fn vertex(&self, node: NodeId) -> Option<VertexId> {
        self.vertices.get(node.0 as usize).copied()
    }

    /// The node at a vertex; `None` where two edges of one chain meet.
    #[must_use]
    pub fn node(&self, vertex: VertexId) -> Option<NodeId> {
        self.vertices
            .binary_search(&vertex)
            .ok()
            .map(|index| NodeId(index as u32))
    }

    /// Where a foot on the arrangement lies on the network.
    #[must_use]
    pub fn location(&self, foot: &Foot) -> Location {
        self.location_on(foot.edge, foot.along_um)
    }

    /// Where a place on an edge, in micrometers from its lower vertex, lies on the network.
    #[must_use]
    pub fn location_on(&self, edge: EdgeId, along_um: u64) -> Location {
        let (link, lower_um, forward) = self.places[edge.0 as usize];
        let along_um = if forward {
            lower_um + along_um
        } else {
            lower_um.saturating_sub(along_um)
        };
        Location { link, along_um }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fabric::{Locator, SourceId, segments_of_line};

    /// Three streets in a star, one bent, and a ring apart: every place of every edge comes back to its own point.
    #[test]
    fn places_on_edges_are_the_same_places_on_links() {
        let p = |x: i32, y: i32| PlanPoint::new(x * 1_000, y * 1_000);
        let lines: [&[PlanPoint]; 4] = [
            &[p(0, 0), p(-30, 40), p(-30, 90), p(-99, 90)],
            &[p(0, 0), p(70, 10)],
            &[p(10, -50), p(0, 0)],
            &[p(200, 0), p(240, 0), p(240, 30), p(200, 0)],
        ];
        let segments: Vec<_> = lines
            .iter()
            .zip(0..)
            .flat_map(|(line, source)| segments_of_line(line, SourceId(source)))
            .collect();
        let arrangement = Arrangement::of(&segments);
        let chains = Chains::of(&arrangement, |_| false);
        let closed = chains.chain_of(EdgeId(0));
        let level = |chain| (chain != closed).then(|| (chains.length_um(chain), chains.length_um(chain)));
        let streets = StreetNetwork::of(&arrangement, &chains, level).expect("costs are lengths");
        assert_eq!(streets.network.node_count(), 5);
        assert_eq!(streets.network.link_count(), 4);
        let walkable = streets.network.links().iter().filter(|link| link.walkable).count();
        assert_eq!(walkable, 3);
        let locator = Locator::of(&arrangement);
        for edge in arrangement.edges() {
            let [lower, upper] = arrangement.ends(edge);
            let length_um = arrangement.length_um(edge);
            let at = |along_um| streets.network.point_at(streets.location_on(edge, along_um));
            assert_eq!(at(0), Some(arrangement.point(lower)), "{edge:?}");
            assert_eq!(at(length_um), Some(arrangement.point(upper)), "{edge:?}");
            let (a, b) = (arrangement.point(lower), arrangement.point(upper));
            let middle = PlanPoint::new((a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2);
            let foot = locator.nearest(middle).expect("edges");
            assert_eq!(
                streets.network.point_at(streets.location(&foot)),
                Some(middle),
                "{edge:?}"
            );
        }
        for node in streets.network.node_ids() {
            let vertex = streets.vertex(node).expect("a node of the network");
            assert_eq!(streets.node(vertex), Some(node));
            assert_eq!(streets.network.node_point(node), Some(arrangement.point(vertex)));
        }
    }
}
