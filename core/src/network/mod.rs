//! The graph people move on: shortest paths, reach, centrality.
//!
//! Which homes can walk to the center in five minutes, along which streets, and how much the answer owes to how the
//! streets connect. Everything here works on a [`Network`]: nodes, links between them, a cost each way along each
//! link. Costs are integers, so equal routes are equal, and reach is exact to the micrometer.
//!
//! In reading order:
//! - [`graph`]: nodes, links, locations and stretches; building and checking a network.
//! - [`street_network`]: the network of an arrangement.
//! - [`source`]: where a search starts.
//! - [`cost_field`]: shortest paths from or to nodes, locations and stretches; routes.
//! - [`reach`]: which part of every link lies within a limit; several reaches at once; frontier.
//! - [`nearest`]: which of several centers serves each part of every link.
//! - [`shed_area`]: areas of a reach, by hull, by buffer and by enclosed blocks.
//! - [`route_flows`]: how many walk along each link to the nearest source.
//! - [`profile`] and [`cost_pieces`]: cost along a stretch, and along many links at once.
//! - [`weight_curve`]: how much weight (homes) lies within each cost.
//! - [`pace`]: what a slope costs.
//! - [`betweenness`], [`directness`], [`indices`], [`counting_rule`], [`bridges`]: how well connected a network is.

pub mod betweenness;
pub mod bridges;
pub mod cost_field;
pub mod cost_pieces;
pub mod counting_rule;
pub mod directness;
pub mod graph;
pub mod indices;
pub mod nearest;
pub mod pace;
pub mod profile;
pub mod reach;
pub mod route_flows;
pub mod shed_area;
pub mod source;
pub mod street_network;
pub mod weight_curve;

mod calendar;
mod link_geometry;
mod scale;
mod spans;
mod spatial_order;
mod through_links;

#[cfg(test)]
pub(crate) mod test_networks;

pub use cost_field::{CostField, Direction};
pub use graph::{Link, LinkDraft, LinkId, Location, Network, NodeId, Stretch};
pub use reach::Reach;
pub use source::{Source, SourceFault, SourcePlace};
pub use street_network::StreetNetwork;
