//! Lots and buildings: lot lines as the finest line, buildings in a darker tone of their use, and land in no lot.
//!
//! They are many, so they are made for what is in view and a margin, and only from near.

use hobnail_core::order::OrderedMap;
use std::sync::Arc;

use hobnail_core::measures::frontage::PaintedFace;
use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::{Document, PlanPoint};

use crate::canvas::layers::trees::Window;
use crate::canvas::palette;
use crate::canvas::picture::{Fill, Layer, Path, Stroke, Texture};
use crate::canvas::scene_of::meters;

/// From this scale on buildings and land in no lot are drawn.
pub const BUILDINGS_FROM_PX_PER_M: f64 = 0.4;

/// From this scale on lot lines are drawn.
pub const LOT_LINES_FROM_PX_PER_M: f64 = 0.7;

/// Lots, buildings and land in no lot of all painted land that comes into `window`.
#[must_use]
pub fn lots(document: &Document, painted: &[PaintedFace], window: &Window) -> Layer {
    let mut rest = Path::default();
    let mut lines = Path::default();
    let mut buildings: OrderedMap<LandUse, Path> = OrderedMap::new();
    let is_seen = |ring: &[PlanPoint]| window.meets(&meters(ring));
    for face in painted {
        // Land in no lot is cut out for what is seen alone.
        let is_near = || face.laid.left.within().iter().flatten().any(|ring| is_seen(ring));
        if face.is_for_lots(document) && is_near() {
            for piece in face.laid.left.pieces() {
                if piece.first().is_some_and(|outline| is_seen(outline)) {
                    piece.iter().for_each(|ring| rest.ring(meters(ring)));
                }
            }
        }
        for lot in face.laid.lots.iter().filter(|lot| is_seen(&lot.outline)) {
            lines.ring(meters(&lot.outline));
            let land_use = document.building_types.get(&lot.building_type);
            if let Some(land_use) = land_use.map(|found| found.land_use) {
                buildings.entry(land_use).or_default().ring(meters(&lot.footprint));
            }
        }
    }
    let mut layer = Layer::default();
    let rest = Arc::new(rest);
    layer.fill(rest.clone(), Fill::Flat(palette::PAPER.at(0.55)));
    layer.fill(rest, Fill::Textured(Texture::Diagonal, palette::NO_LOT.at(0.5)));
    let line = Stroke::drawn(palette::SOFT_INK.at(0.75), palette::FINE_PX);
    layer.stroke(lines, line, LOT_LINES_FROM_PX_PER_M);
    for (land_use, path) in buildings {
        let path = Arc::new(path);
        layer.fill(path.clone(), Fill::Flat(palette::building(land_use)));
        let edge = Stroke::drawn(palette::INK.at(0.8), palette::FINE_PX);
        layer.stroke(path, edge, LOT_LINES_FROM_PX_PER_M);
    }
    layer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::picture::{Item, Shape};
    use crate::tools::fixtures::{DRAWN, Scene as Plan, street, use_mark};
    use hobnail_core::fabric::{Fabric, LandCache};
    use hobnail_core::measures::frontage::{Painted, PaintedCache, painted_faces};
    use hobnail_core::plan::{Mark, defaults};

    const ALL: Window = Window {
        least: (-500.0, -500.0),
        most: (500.0, 500.0),
    };

    fn block(building_type: u32) -> (Plan, Painted) {
        let mut plan = Plan::with(&[
            (1, street(&[(0, 0), (150_000, 0)])),
            (2, street(&[(150_000, 0), (150_000, 90_000)])),
            (3, street(&[(150_000, 90_000), (0, 90_000)])),
            (4, street(&[(0, 90_000), (0, 0)])),
        ]);
        plan.document.building_types = defaults::building_types();
        plan.put(9, Mark::Use(use_mark(75_000, 45_000, building_type)));
        let fabric = Fabric::of(&plan.document, DRAWN, &mut LandCache::default());
        let painted = painted_faces(&plan.document, DRAWN, &fabric, &mut PaintedCache::default());
        (plan, painted)
    }

    fn rings(layer: &Layer, is_wanted: impl Fn(&Shape) -> bool) -> usize {
        let shapes = layer.items.iter().filter_map(|item| match item {
            Item::Shape(shape) if is_wanted(shape) => Some(shape.path.runs().count()),
            _ => None,
        });
        shapes.sum()
    }

    #[test]
    fn every_lot_has_a_line_and_every_building_its_use() {
        let (plan, painted) = block(0);
        let laid = painted[0].laid.lots.len();
        assert!(laid > 4, "{laid} lots");
        let layer = lots(&plan.document, &painted, &ALL);
        let thin = |shape: &Shape| shape.fill.is_none() && shape.from_px_per_m > 0.0;
        let homes = Fill::Flat(palette::building(LandUse::Residential));
        let built = painted[0].laid.lots.iter().filter(|lot| !lot.footprint.is_empty());
        let built = built.count();
        assert_eq!(rings(&layer, |shape| shape.fill == Some(homes)), built);
        assert_eq!(rings(&layer, thin), laid + built, "lot lines and edges of buildings");
    }

    #[test]
    fn land_out_of_view_is_not_made() {
        let (plan, painted) = block(0);
        let elsewhere = Window {
            least: (300.0, 300.0),
            most: (400.0, 400.0),
        };
        assert!(lots(&plan.document, &painted, &elsewhere).items.is_empty());
    }

    #[test]
    fn a_park_is_no_land_left_over() {
        let park = defaults::building_types()
            .iter()
            .find(|(_, held)| held.name == "Park")
            .map(|(id, _)| id.0)
            .expect("there is a park among the building types");
        let (plan, painted) = block(park);
        assert_eq!(painted.len(), 1);
        assert!(lots(&plan.document, &painted, &ALL).items.is_empty());
    }
}
