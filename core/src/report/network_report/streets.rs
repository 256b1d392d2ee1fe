//! Numbers of the arrangement and of its links.

use crate::order;
use std::collections::BTreeMap;

use super::answer::{ArrangementFigures, BetweennessFigures, LinkFigures};
use super::frame::Frame;
use crate::fabric::{Arrangement, Chains, HalfEdgeId, Outliner};
use crate::network::betweenness::link_betweenness;
use crate::network::indices::density_per_km2;
use crate::network::shed_area::twice_hull_area_mm2;
use crate::network::{LinkId, Location, Network};

/// How many links of most betweenness are listed.
const TOP_LINKS: usize = 20;

/// Counts and sizes.
pub(super) fn arrangement_figures(
    input_segments: u64,
    arrangement: &Arrangement,
    chains: &Chains,
) -> ArrangementFigures {
    let (vertices, edges) = (arrangement.vertices().len() as u64, arrangement.edge_count() as u64);
    let components = arrangement.component_count() as u64;
    let mut degree_histogram = BTreeMap::new();
    for &node in chains.nodes() {
        *degree_histogram.entry(chains.degree(node)).or_insert(0) += 1;
    }
    let nodes_from = |least: u32| degree_histogram.range(least..).map(|(_, &count)| count).sum::<u64>();
    let (nodes, links) = (chains.nodes().len() as u64, chains.count() as u64);
    let total_um: u64 = chains.ids().map(|chain| chains.length_um(chain)).sum();
    let total_length = m_from_um(total_um);
    let hull_area = twice_hull_area_mm2(arrangement.vertices().to_vec()) as f64 / 2e6;
    let mut outliner = Outliner::new(arrangement);
    let ring_um = |ring: &[HalfEdgeId]| ring.iter().map(|half| arrangement.length_um(half.edge())).sum::<u64>();
    let (mut areas_mm2, mut perimeters_um) = (Vec::new(), Vec::new());
    let (mut faces_with_holes, mut holes, mut hole_um) = (0, 0, 0);
    for face in arrangement.bounded_faces() {
        let outline = outliner.outline(face);
        areas_mm2.push(arrangement.twice_area_mm2(face));
        perimeters_um.push(ring_um(&outline.shell));
        faces_with_holes += u64::from(!outline.holes.is_empty());
        holes += outline.holes.len() as u64;
        hole_um += outline.holes.iter().map(|ring| ring_um(ring)).sum::<u64>();
    }
    areas_mm2.sort_unstable();
    order::sort(&mut perimeters_um);
    let m2 = |twice_mm2: i128| twice_mm2 as f64 / 2e6;
    let ratio = |of: f64, by: f64| (by > 0.0).then(|| of / by);
    ArrangementFigures {
        input_segments,
        noded_segments: edges,
        noded_vertices: vertices,
        nodes,
        edges: links,
        components,
        pure_rings: chains.pure_ring_count() as u64,
        self_loops: chains.self_loops().count() as u64,
        junctions_deg3plus: nodes_from(3),
        junctions_deg4plus: nodes_from(4),
        dead_ends: chains.dead_ends().count() as u64,
        total_length,
        link_node_ratio: ratio(links as f64, nodes as f64),
        link_junction_ratio: ratio(links as f64, nodes_from(3) as f64),
        hull_area,
        intersection_density_per_km2_of_hull: density_per_km2(nodes_from(3), hull_area),
        street_density_km_per_km2_of_hull: ratio(total_length * 1e3, hull_area),
        faces: areas_mm2.len() as u64,
        faces_by_euler: (edges + components).saturating_sub(vertices),
        faces_with_holes,
        holes,
        faces_total_area: m2(areas_mm2.iter().sum()),
        face_area_min: areas_mm2.first().map(|&area| m2(area)),
        face_area_max: areas_mm2.last().map(|&area| m2(area)),
        face_area_median: middle_pair(&areas_mm2).map(|(low, high)| (m2(low) + m2(high)) / 2.0),
        outer_perimeter_sum: m_from_um(perimeters_um.iter().sum()),
        outer_perimeter_min: perimeters_um.first().map(|&um| m_from_um(um)),
        outer_perimeter_median: middle_pair(&perimeters_um).map(|(low, high)| m_from_um(low + high) / 2.0),
        outer_perimeter_max: perimeters_um.last().map(|&um| m_from_um(um)),
        hole_perimeter_sum: m_from_um(hole_um),
        degree_histogram,
    }
}

/// Betweenness: its sum, its greatest, and the links with most; of equal ones the westernmost, then southernmost first.
pub(super) fn betweenness_figures(frame: &Frame, network: &Network) -> BetweennessFigures {
    let values = link_betweenness(network);
    let mut links: Vec<LinkFigures> = network
        .link_ids()
        .zip(&values)
        .filter_map(|(link, &value)| link_figures(frame, network, link, value))
        .collect();
    order::sort_by(&mut links, |a, b| {
        let by_place = a.mid[0].total_cmp(&b.mid[0]).then(a.mid[1].total_cmp(&b.mid[1]));
        b.value
            .total_cmp(&a.value)
            .then(by_place)
            .then(a.length.total_cmp(&b.length))
    });
    let in_order = links.iter().map(|link| link.value);
    let (sum, max) = (in_order.clone().sum(), in_order.fold(0.0, f64::max));
    links.truncate(TOP_LINKS);
    BetweennessFigures { sum, max, top: links }
}

fn link_figures(frame: &Frame, network: &Network, link: LinkId, value: f64) -> Option<LinkFigures> {
    let length_um = network.link(link)?.length_um;
    let at = |along_um| {
        network
            .position_m(Location { link, along_um })
            .map(|place| frame.shown_m(place))
    };
    Some(LinkFigures {
        mid: at(length_um / 2)?,
        a: at(0)?,
        b: at(length_um)?,
        length: m_from_um(length_um),
        value,
    })
}

/// Meters of micrometers.
pub(super) fn m_from_um(length_um: u64) -> f64 {
    length_um as f64 / 1e6
}

/// The two in the middle of a sorted list, the same twice when there is one.
fn middle_pair<T: Copy>(sorted: &[T]) -> Option<(T, T)> {
    let high = *sorted.get(sorted.len() / 2)?;
    let low = *sorted.get((sorted.len() - 1) / 2)?;
    Some((low, high))
}
