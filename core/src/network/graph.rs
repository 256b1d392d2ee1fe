//! Nodes, links and places along them: what a walk is made of.
//!
//! A [`Network`] is built once from a plain list and not changed. It keeps the caller's node and link numbers outside
//! and an order of its own inside (along a Hilbert curve), so that a search touches memory that lies together.
//!
//! Costs are whole units: micrometers of walking on level ground, or microseconds at base speed when topography is
//! known; one network uses one of the two throughout. A link may cost more one way than the other.

use std::fmt;

use super::scale::Scale;
use super::spatial_order::spatial_order;
use crate::order;
use crate::plan::PlanPoint;
use crate::say;

/// The most one link may cost, in units: 2^44, or 17,592 km of walking. Keeps a search's queue within 32-bit keys.
pub const MOST_COST: u64 = 1 << 44;

/// The most all links together may cost, in units. Keeps every sum of costs, a limit added, within `u64`.
pub const MOST_TOTAL_COST: u64 = 1 << 62;

/// A node's number in the list it was built from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub u32);

/// A link's number in the list it was built from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LinkId(pub u32);

/// A place on a link, measured from its first node.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Location {
    /// The link.
    pub link: LinkId,
    /// Micrometers from the link's first node.
    pub along_um: u64,
}

/// A piece of a link between two places on it; a single place when both are equal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stretch {
    /// The link.
    pub link: LinkId,
    /// Micrometers from the link's first node to where the piece starts.
    pub from_um: u64,
    /// Micrometers from the link's first node to where the piece ends; not less than `from_um`.
    pub to_um: u64,
}

impl Stretch {
    /// Length of the piece in micrometers.
    #[must_use]
    pub fn length_um(self) -> u64 {
        self.to_um.saturating_sub(self.from_um)
    }
}

impl From<Location> for Stretch {
    fn from(place: Location) -> Self {
        Self {
            link: place.link,
            from_um: place.along_um,
            to_um: place.along_um,
        }
    }
}

/// One link as given to [`Network::build`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LinkDraft {
    /// First node.
    pub from: NodeId,
    /// Last node; may be the first again (a loop).
    pub to: NodeId,
    /// Length in micrometers, more than zero.
    pub length_um: u64,
    /// Cost from first to last node, more than zero.
    pub cost_forward: u64,
    /// Cost from last to first node, more than zero.
    pub cost_backward: u64,
    /// Whether people walk here. Links not walkable keep their number and are never used.
    pub walkable: bool,
    /// The corners between the two nodes, in order; empty for a straight link.
    pub corners: Vec<PlanPoint>,
}

impl LinkDraft {
    /// A walkable straight link whose cost is its length.
    #[must_use]
    pub fn level(from: NodeId, to: NodeId, length_um: u64) -> Self {
        Self {
            from,
            to,
            length_um,
            cost_forward: length_um,
            cost_backward: length_um,
            walkable: true,
            corners: Vec::new(),
        }
    }
}

/// One link of a network.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// First node.
    pub from: NodeId,
    /// Last node.
    pub to: NodeId,
    /// Length in micrometers.
    pub length_um: u64,
    /// Cost from first to last node.
    pub cost_forward: u64,
    /// Cost from last to first node.
    pub cost_backward: u64,
    /// Whether people walk here.
    pub walkable: bool,
    pub(super) first_vertex: u32,
    pub(super) end_vertex: u32,
}

impl Link {
    /// How the cost of walking in the link's direction (`forward`) or against it is spread along the link.
    pub(super) fn scale(&self, forward: bool) -> Scale {
        Scale {
            cost: if forward { self.cost_forward } else { self.cost_backward },
            length_um: self.length_um,
        }
    }
}

/// Why a list does not make a network.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NetworkFault {
    /// A link names a node that is not in the list.
    NodeMissing {
        /// The link.
        link: LinkId,
        /// The node it names.
        node: NodeId,
    },
    /// A link has no length.
    NoLength {
        /// The link.
        link: LinkId,
    },
    /// A link costs nothing one way or the other; then equal routes could go round for ever.
    NoCost {
        /// The link.
        link: LinkId,
    },
    /// A link is longer or costs more than [`MOST_COST`].
    TooCostly {
        /// The link.
        link: LinkId,
    },
    /// All links together cost more than [`MOST_TOTAL_COST`], or there are more than 2^31 of something.
    TooLarge,
}

impl fmt::Display for NetworkFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NodeMissing { link, node } => {
                out.write_str(&say!("network-node-missing", link = link.0, node = node.0))
            }
            Self::NoLength { link } => out.write_str(&say!("network-link-no-length", link = link.0)),
            Self::NoCost { link } => out.write_str(&say!("network-link-no-cost", link = link.0)),
            Self::TooCostly { link } => out.write_str(&say!("network-link-too-costly", link = link.0)),
            Self::TooLarge => out.write_str(say!("network-too-large")),
        }
    }
}

impl std::error::Error for NetworkFault {}

/// One step of a search: to a node (by rank), at a cost. Costs from [`WIDE_COST`] on stand in the link itself.
#[derive(Clone, Copy, Debug)]
pub(super) struct Arc {
    pub target: u32,
    pub cost: u32,
}

/// Marks an arc whose cost does not fit 32 bits (a link longer than 4.29 km).
pub(super) const WIDE_COST: u32 = u32::MAX;

/// Nodes, links and their geometry, ready to be searched. See the [module](self).
#[derive(Clone, Debug)]
pub struct Network {
    node_points: Vec<PlanPoint>,
    links: Vec<Link>,
    pub(super) vertices: Vec<PlanPoint>,
    /// Micrometers along its link of every vertex, by the vertices' own distances; of a straight link by its length.
    pub(super) vertex_along_um: Vec<u64>,
    pub(super) rank_of_node: Vec<u32>,
    pub(super) node_of_rank: Vec<u32>,
    /// Arcs of rank `r` are those from `first_arc[r]` to before `first_arc[r + 1]`.
    pub(super) first_arc: Vec<u32>,
    /// Cost of going from the rank along the arc.
    pub(super) arcs_out: Vec<Arc>,
    /// Cost of coming to the rank along the arc; empty when every link costs the same both ways.
    pub(super) arcs_in: Vec<Arc>,
    pub(super) arc_links: Vec<LinkId>,
    /// Walkable links from a node to itself, which are no arcs: (rank, link), sorted.
    pub(super) loops: Vec<(u32, LinkId)>,
    /// Mean and most cost of an arc.
    pub(super) mean_cost: u64,
    pub(super) most_cost: u64,
}

impl Network {
    /// A network of `nodes` at their positions and `links` between them.
    ///
    /// Parallel links and loops are allowed. A draft with corners takes its geometry from them; its `length_um` is
    /// what counts, and positions along it are scaled when the two differ.
    ///
    /// # Errors
    /// Every [`NetworkFault`] of the list, in order of links.
    ///
    /// Cost: O(n log n + m).
    ///
    /// ```
    /// use hobnail_core::network::{LinkDraft, Network, NodeId};
    /// use hobnail_core::plan::PlanPoint;
    /// let nodes = [PlanPoint::new(0, 0), PlanPoint::new(3_000, 4_000)];
    /// let network = Network::build(&nodes, &[LinkDraft::level(NodeId(0), NodeId(1), 5_000_000)])?;
    /// assert_eq!(network.length_um(), 5_000_000);
    /// # Ok::<(), Vec<hobnail_core::network::graph::NetworkFault>>(())
    /// ```
    pub fn build(nodes: &[PlanPoint], drafts: &[LinkDraft]) -> Result<Self, Vec<NetworkFault>> {
        let faults = faults_of(nodes.len(), drafts);
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut links = Vec::with_capacity(drafts.len());
        let mut vertices = Vec::with_capacity(drafts.len() * 2);
        let mut vertex_along_um = Vec::with_capacity(drafts.len() * 2);
        for draft in drafts {
            let first_vertex = vertices.len() as u32;
            let (start, end) = (nodes[draft.from.0 as usize], nodes[draft.to.0 as usize]);
            let mut along_um = 0;
            let mut last = start;
            vertices.push(start);
            vertex_along_um.push(0);
            for point in &draft.corners {
                along_um += last.distance_um(*point);
                last = *point;
                vertices.push(last);
                vertex_along_um.push(along_um);
            }
            vertices.push(end);
            // A straight link is as long as it says.
            vertex_along_um.push(if draft.corners.is_empty() {
                draft.length_um
            } else {
                along_um + last.distance_um(end)
            });
            links.push(Link {
                from: draft.from,
                to: draft.to,
                length_um: draft.length_um,
                cost_forward: draft.cost_forward,
                cost_backward: draft.cost_backward,
                walkable: draft.walkable,
                first_vertex,
                end_vertex: vertices.len() as u32,
            });
        }
        let node_of_rank = spatial_order(nodes);
        let mut rank_of_node = vec![0; nodes.len()];
        for (rank, &node) in node_of_rank.iter().enumerate() {
            rank_of_node[node as usize] = rank as u32;
        }
        let mut network = Self {
            node_points: nodes.to_vec(),
            links,
            vertices,
            vertex_along_um,
            rank_of_node,
            node_of_rank,
            first_arc: Vec::new(),
            arcs_out: Vec::new(),
            arcs_in: Vec::new(),
            arc_links: Vec::new(),
            loops: Vec::new(),
            mean_cost: 1,
            most_cost: 1,
        };
        network.lay_arcs();
        Ok(network)
    }

    /// Writes the compressed rows: for every rank its arcs, in order of target, cost and link.
    fn lay_arcs(&mut self) {
        // An arc on its way: where it leads, its link, and whether that is walked forward.
        let mut rows: Vec<(u32, u32, LinkId, bool)> = Vec::with_capacity(self.links.len() * 2);
        let (mut total, mut is_uneven) = (0_u64, false);
        for (id, link) in self.link_ids().zip(&self.links) {
            if !link.walkable {
                continue;
            }
            let (from, to) = (self.rank(link.from) as u32, self.rank(link.to) as u32);
            if from == to {
                self.loops.push((from, id));
                continue;
            }
            rows.push((from, to, id, true));
            rows.push((to, from, id, false));
            is_uneven |= link.cost_forward != link.cost_backward;
            total += link.cost_forward.max(link.cost_backward);
            self.most_cost = self.most_cost.max(link.cost_forward).max(link.cost_backward);
        }
        self.mean_cost = (total * 2 / (rows.len() as u64).max(1)).max(1);
        order::sort(&mut self.loops);
        self.first_arc = vec![0; self.node_points.len() + 1];
        for &(rank, ..) in &rows {
            self.first_arc[rank as usize + 1] += 1;
        }
        let mut sum = 0;
        for count in &mut self.first_arc {
            sum += *count;
            *count = sum;
        }
        // Each rank's rows are few: laid where they belong, they are sorted among themselves.
        let mut cursors = self.first_arc.clone();
        let mut sorted = rows.clone();
        for row in rows {
            let cursor = &mut cursors[row.0 as usize];
            sorted[*cursor as usize] = row;
            *cursor += 1;
        }
        let costs = |id: LinkId, forward: bool| {
            let link = &self.links[id.0 as usize];
            if forward {
                (link.cost_forward, link.cost_backward)
            } else {
                (link.cost_backward, link.cost_forward)
            }
        };
        for pair in self.first_arc.windows(2) {
            let few = &mut sorted[pair[0] as usize..pair[1] as usize];
            order::sort_few_by(few, |a, b| {
                let key = |row: &(u32, u32, LinkId, bool)| (costs(row.2, row.3), row.2);
                a.1.cmp(&b.1).then_with(|| key(a).cmp(&key(b)))
            });
        }
        let narrow = |target, cost: u64| Arc {
            target,
            cost: u32::try_from(cost).unwrap_or(WIDE_COST),
        };
        let mut arcs_out = Vec::with_capacity(sorted.len());
        let mut arcs_in = Vec::with_capacity(if is_uneven { sorted.len() } else { 0 });
        let mut arc_links = Vec::with_capacity(sorted.len());
        for &(_, to, id, forward) in &sorted {
            let (going, coming) = costs(id, forward);
            arcs_out.push(narrow(to, going));
            if is_uneven {
                arcs_in.push(narrow(to, coming));
            }
            arc_links.push(id);
        }
        self.arcs_out = arcs_out;
        self.arcs_in = arcs_in;
        self.arc_links = arc_links;
    }

    /// The node's place in the network's own order.
    pub(super) fn rank(&self, node: NodeId) -> usize {
        self.rank_of_node[node.0 as usize] as usize
    }

    /// How many nodes there are.
    #[must_use]
    pub fn node_count(&self) -> usize {
        self.node_points.len()
    }

    /// How many links there are, those not walkable included.
    #[must_use]
    pub fn link_count(&self) -> usize {
        self.links.len()
    }

    /// Every node's number, in order.
    pub fn node_ids(&self) -> impl Iterator<Item = NodeId> + use<> {
        (0..self.node_points.len() as u32).map(NodeId)
    }

    /// Every link's number, in order.
    pub fn link_ids(&self) -> impl Iterator<Item = LinkId> + use<> {
        (0..self.links.len() as u32).map(LinkId)
    }

    /// Every link, in order of number.
    #[must_use]
    pub fn links(&self) -> &[Link] {
        &self.links
    }

    /// The link of this number; `None` when there is none.
    #[must_use]
    pub fn link(&self, id: LinkId) -> Option<&Link> {
        self.links.get(id.0 as usize)
    }

    /// Where the node stands; `None` when there is none of this number.
    #[must_use]
    pub fn node_point(&self, id: NodeId) -> Option<PlanPoint> {
        self.node_points.get(id.0 as usize).copied()
    }

    /// The points of a link from its first node to its last; empty when there is no such link.
    #[must_use]
    pub fn link_points(&self, id: LinkId) -> &[PlanPoint] {
        self.link(id).map_or(&[], |link| {
            &self.vertices[link.first_vertex as usize..link.end_vertex as usize]
        })
    }

    /// Length of all walkable links in micrometers.
    #[must_use]
    pub fn length_um(&self) -> u64 {
        self.links
            .iter()
            .filter(|link| link.walkable)
            .map(|link| link.length_um)
            .sum()
    }
}

/// Every reason why these links do not make a network.
fn faults_of(node_count: usize, drafts: &[LinkDraft]) -> Vec<NetworkFault> {
    let mut faults = Vec::new();
    let mut total = 0_u64;
    let corners: usize = drafts.iter().map(|draft| draft.corners.len() + 2).sum();
    if node_count.max(drafts.len()).max(corners) > 1 << 30 {
        return vec![NetworkFault::TooLarge];
    }
    for (draft, id) in drafts.iter().zip(0..) {
        let link = LinkId(id);
        for node in [draft.from, draft.to] {
            if node.0 as usize >= node_count {
                faults.push(NetworkFault::NodeMissing { link, node });
            }
        }
        if draft.length_um == 0 {
            faults.push(NetworkFault::NoLength { link });
        }
        if draft.cost_forward == 0 || draft.cost_backward == 0 {
            faults.push(NetworkFault::NoCost { link });
        }
        if draft.length_um.max(draft.cost_forward).max(draft.cost_backward) > MOST_COST {
            faults.push(NetworkFault::TooCostly { link });
        }
        total = total.saturating_add(draft.cost_forward.max(draft.cost_backward).max(draft.length_um));
    }
    if total > MOST_TOTAL_COST {
        faults.push(NetworkFault::TooLarge);
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_of_a_list_is_told() {
        let nodes = [PlanPoint::new(0, 0)];
        let mut free = LinkDraft::level(NodeId(0), NodeId(0), 5);
        free.cost_backward = 0;
        let drafts = [
            LinkDraft::level(NodeId(0), NodeId(7), 5),
            LinkDraft::level(NodeId(0), NodeId(0), 0),
            free,
            LinkDraft::level(NodeId(0), NodeId(0), MOST_COST + 1),
        ];
        let faults = Network::build(&nodes, &drafts).expect_err("four faulty links");
        assert_eq!(
            faults,
            [
                NetworkFault::NodeMissing {
                    link: LinkId(0),
                    node: NodeId(7)
                },
                NetworkFault::NoLength { link: LinkId(1) },
                NetworkFault::NoCost { link: LinkId(1) },
                NetworkFault::NoCost { link: LinkId(2) },
                NetworkFault::TooCostly { link: LinkId(3) },
            ]
        );
    }
}
