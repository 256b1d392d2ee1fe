//! Walks from homes to the nearest of each of the five daily needs, link by link.
//!
//! One walk for each home and each need that can be walked to, however far, added up along the tree of least walks
//! ([`RouteFlows`]): how people spread over the streets if everybody went once to the nearest of each, not how many
//! will. Waits and slopes count, walks go there. A segment is a link: a street between intersections. Each walk counts
//! for the whole of a segment it touches.

use super::standing::middle_of;
use crate::fabric::Fabric;
use crate::measures::streets::site_streets::named_place;
use crate::measures::walk::Walks;
use crate::measures::walk::destinations::Destination;
use crate::network::route_flows::RouteFlows;
use crate::network::{CostField, Direction, LinkId, Stretch};
use crate::order;
use crate::plan::{AlternativeId, Document, PlanPoint};
use crate::say;

/// What the walks come to.
#[derive(Default)]
pub(super) struct Routes {
    /// Walks along each link that is a street, in order of link number.
    pub by_link: Vec<f64>,
    /// The busiest segment in words, and its walks.
    pub busiest: Option<(String, f64)>,
    /// Where it is.
    pub busiest_line: Vec<PlanPoint>,
    /// Length of segments by walks along them, over all and over the busiest tenth of all walkable length, in meters.
    pub walked_m: [f64; 2],
}

/// Works out the walks. Cost: a search without a limit for each need, and O(n log n).
pub(super) fn routes(document: &Document, alternative: AlternativeId, fabric: &Fabric, walks: &Walks) -> Routes {
    let network = walks.network().network();
    let homes = walks.homes().fronts.iter();
    let fronts: Vec<(Stretch, f64)> = homes.map(|front| (front.stretch, front.homes)).collect();
    let mut flows = RouteFlows::none(network);
    let mut field = CostField::new();
    for need in Destination::NEEDS {
        let sources = walks.sources(need);
        if !sources.is_empty() && field.spread(network, sources, Direction::To, None).is_ok() {
            flows.add(network, &field, &fronts);
        }
    }
    let mut routes = Routes::default();
    let mut segments: Vec<(f64, f64, LinkId)> = Vec::new();
    for ((id, link), held) in network.link_ids().zip(network.links()).zip(flows.by_link) {
        if !walks.network().is_street(id) {
            break;
        }
        routes.by_link.push(held);
        if link.walkable {
            segments.push((held, link.length_um as f64 / 1e6, id));
        }
    }
    order::sort_by(&mut segments, |a, b| b.0.total_cmp(&a.0));
    let length_m: f64 = segments.iter().map(|(_, length_m, _)| length_m).sum();
    let mut left_m = length_m / 10.0;
    for (held, length_m, _) in &segments {
        routes.walked_m[0] += held * length_m;
        let part_m = length_m.min(left_m);
        routes.walked_m[1] += held * part_m;
        left_m -= part_m;
    }
    let most = segments.first().map_or(0.0, |(held, ..)| *held);
    let busiest = segments.iter().take_while(|(held, ..)| *held >= most && *held > 0.0);
    let places = busiest.map(|(held, _, link)| {
        let whole = Stretch {
            link: *link,
            from_um: 0,
            to_um: network.link(*link).map_or(0, |link| link.length_um),
        };
        (middle_of(network, whole), *link, *held)
    });
    let first = places.reduce(|first, next| if next.0 < first.0 { next } else { first });
    if let Some((at, link, held)) = first {
        let street = super::standing::street_of(document, alternative, fabric, link);
        routes.busiest = Some((
            named_place(street, say!("measures-place-segment"), at, document.settings.units),
            held,
        ));
        routes.busiest_line = network.link_points(link).to_vec();
    }
    routes
}
