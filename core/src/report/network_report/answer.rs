//! The numbers of a measured network, under the names they have in files. Lengths in m, areas in m².

use std::collections::BTreeMap;
use std::fmt;

use serde::Serialize;

/// All numbers.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NetworkAnswer {
    /// Ends this near to another street were joined to it.
    pub tolerance_m: f64,
    /// What the streets make of the plane.
    pub arrangement: ArrangementFigures,
    /// Who walks how far; only when points were given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub walk: Option<WalkFigures>,
    /// Which links carry the shortest walks; left out for very large networks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub betweenness: Option<BetweennessFigures>,
}

/// Counts and sizes of the arrangement.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ArrangementFigures {
    /// Straight pieces drawn.
    pub input_segments: u64,
    /// Straight pieces after cutting them where they meet; overlapping ones once.
    pub noded_segments: u64,
    /// Ends of those pieces.
    pub noded_vertices: u64,
    /// Places where other than two pieces meet, and one on each ring without any.
    pub nodes: u64,
    /// Links between nodes.
    pub edges: u64,
    /// Connected parts.
    pub components: u64,
    /// Rings without a node of their own.
    pub pure_rings: u64,
    /// Links from a node to itself, those rings included.
    pub self_loops: u64,
    /// Nodes by how many links end there; a loop ends twice.
    pub degree_histogram: BTreeMap<u32, u64>,
    /// Nodes where three or more links end.
    pub junctions_deg3plus: u64,
    /// Nodes where four or more links end.
    pub junctions_deg4plus: u64,
    /// Nodes where one link ends.
    pub dead_ends: u64,
    /// Length of all links.
    pub total_length: f64,
    /// Links over nodes, every node of the list counted.
    pub link_node_ratio: Option<f64>,
    /// Links over junctions.
    pub link_junction_ratio: Option<f64>,
    /// Area of the convex hull of all links.
    pub hull_area: f64,
    /// Junctions per square kilometer of that hull.
    pub intersection_density_per_km2_of_hull: Option<f64>,
    /// Kilometers of link per square kilometer of that hull.
    pub street_density_km_per_km2_of_hull: Option<f64>,
    /// Bounded faces.
    pub faces: u64,
    /// Pieces less ends plus parts: must be the same.
    pub faces_by_euler: u64,
    /// Faces with other faces inside.
    pub faces_with_holes: u64,
    /// How many such insides there are.
    pub holes: u64,
    /// Sum of face areas.
    pub faces_total_area: f64,
    /// Smallest face.
    pub face_area_min: Option<f64>,
    /// Largest face.
    pub face_area_max: Option<f64>,
    /// Median face.
    pub face_area_median: Option<f64>,
    /// Sum of the faces' outer perimeters, without dead ends.
    pub outer_perimeter_sum: f64,
    /// Shortest outer perimeter.
    pub outer_perimeter_min: Option<f64>,
    /// Median outer perimeter.
    pub outer_perimeter_median: Option<f64>,
    /// Longest outer perimeter.
    pub outer_perimeter_max: Option<f64>,
    /// Sum of the perimeters of holes.
    pub hole_perimeter_sum: f64,
}

/// Walking from the points given.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WalkFigures {
    /// Distances of the walk-sheds.
    pub radii: Vec<Radius>,
    /// One by one from each origin.
    pub origins: Vec<OriginFigures>,
    /// From the nearest of all origins, by distance.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub multi_origin: MultiOriginFigures,
    /// Where each sample meets the network.
    pub sample_feet: Vec<FootFigures>,
}

/// A distance; written as a whole number when it is one.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Radius {
    /// Whole meters.
    Whole(u64),
    /// Other meters.
    Fraction(f64),
}

impl fmt::Display for Radius {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Whole(radius_m) => write!(out, "{radius_m}"),
            Self::Fraction(radius_m) => write!(out, "{radius_m}"),
        }
    }
}

/// Walk-sheds by distance.
pub type MultiOriginFigures = BTreeMap<String, ShedFigures>;

/// Walking from one origin.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OriginFigures {
    /// The point's id.
    pub id: String,
    /// The nearest place on the network.
    pub foot: [f64; 2],
    /// Distance to it, not part of any walk.
    pub offset: f64,
    /// Nodes that can be reached.
    pub reachable_nodes: u64,
    /// Walk to the farthest of them and of the other origins.
    pub farthest_node: Option<f64>,
    /// Walks to the samples.
    pub samples: Vec<SampleFigures>,
    /// Mean of their directness.
    pub prd_mean: Option<f64>,
    /// Walk-sheds by distance.
    pub sheds: BTreeMap<String, ShedFigures>,
}

/// A walk between two places on the network.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SampleFigures {
    /// The point's id.
    pub id: String,
    /// Walk; none when there is no way.
    pub dist: Option<f64>,
    /// Walk over straight line, both between places on the network.
    pub prd: Option<f64>,
}

/// Where a point meets the network.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FootFigures {
    /// The point's id.
    pub id: String,
    /// The nearest place on the network.
    pub foot: [f64; 2],
    /// Distance to it.
    pub offset: f64,
}

/// What lies within one distance.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ShedFigures {
    /// Length of street reached, pieces included.
    pub reached_length: f64,
    /// Places where the reach ends although the street goes on.
    pub frontier_points: u64,
    /// Area of the convex hull of the pieces reached.
    pub hull_area: f64,
    /// Links reached from end to end.
    pub fully_reached_edges: u64,
    /// Area of the faces those links make.
    pub enclosed_area: f64,
    /// Area of the pieces reached, widened by 25 m.
    pub buffer25_area: f64,
    /// Dwellings whose place on the network is reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dwellings_reached: Option<u64>,
    /// Of all dwellings given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dwellings_share: Option<f64>,
    /// Floor or land area of the places reached, by use.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub place_area_by_use: BTreeMap<String, f64>,
}

/// Betweenness of links: unordered pairs of all nodes, by length, not normalized.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BetweennessFigures {
    /// Sum over all links.
    pub sum: f64,
    /// Greatest.
    pub max: f64,
    /// The links with most, at most twenty.
    pub top: Vec<LinkFigures>,
}

/// One link and its betweenness.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LinkFigures {
    /// Its middle.
    pub mid: [f64; 2],
    /// Its first node.
    pub a: [f64; 2],
    /// Its last node.
    pub b: [f64; 2],
    /// Its length.
    pub length: f64,
    /// Its betweenness.
    pub value: f64,
}
