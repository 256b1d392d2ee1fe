//! Walk-sheds of the center: five and ten minutes at the plan's pace.

use super::number;
use super::write::{Features, Geometry};
use crate::exchange::stored::Writing;
use crate::fabric::regions::{Ring, united};
use crate::measures::details::SHED_WALKS_S;
use crate::measures::walk::settings::SHED_BUFFER_WIDTH;
use crate::network::shed_area::{buffer_pieces, hull};
use crate::plan::PlanPoint;
use crate::report::export::figure;
use crate::study::Study;

use super::land::area_m2;
use super::whole;

/// For each walk the streets reached, their convex hull, and the land within a stated distance of them; nothing without
/// a center. Areas by method are the figures' own methods.
pub(super) fn add_sheds(study: &Study, features: &mut Features) {
    let network = study.network();
    let width_m = SHED_BUFFER_WIDTH.of(&study.seen());
    let homes = ["walk.homes_within_5min", "walk.homes_within_10min"];
    for (walk, (seconds, homes)) in SHED_WALKS_S.into_iter().zip(homes).enumerate() {
        let reach = study.walk_shed(seconds as u32);
        let pieces = reach.pieces().iter().map(|piece| network.stretch_points(*piece));
        let lines: Vec<Vec<PlanPoint>> = pieces.collect();
        if lines.is_empty() {
            continue;
        }
        let minutes = whole(seconds as u32 / 60);
        let mut properties = Writing::default();
        properties.put_json("minutes", minutes.clone());
        properties.put_word("shown_as", "streets");
        properties.put_json("street_length_m", number(reach.length_um() as f64 / 1e6));
        properties.put_json("homes", number(figure(study, homes, "center")));
        features.add("walk_shed", walk * 3 + 1, &Geometry::Lines(&lines), properties);
        let mut add_land = |place: usize, method: &str, pieces: &[Vec<Ring>]| {
            let mut properties = Writing::default();
            properties.put_json("minutes", minutes.clone());
            properties.put_word("shown_as", method);
            properties.put_json("area_m2", number(area_m2(pieces)));
            if method == "buffer" {
                properties.put_json("distance_m", number(width_m));
            }
            features.add("walk_shed", walk * 3 + place, &Geometry::Land(pieces), properties);
        };
        add_land(2, "hull", &[vec![hull(network, &reach)]]);
        if let Some(pieces) = buffer_pieces(network, &reach, width_m) {
            add_land(3, "buffer", &united(pieces.iter().flatten()));
        }
    }
}
