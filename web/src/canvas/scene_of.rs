//! Gathers what there is to draw from the document and its fabric.

use hobnail_core::order;
use hobnail_core::say;

use hobnail_core::fabric::sides::side_spoken_of;
use hobnail_core::fabric::{Fabric, FaceOfLand};
use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{AlternativeId, Certainty, Document, Footprint, Mark, UseMark};
use hobnail_core::report::drawing::uses::{other_floors, uses_of};
use hobnail_core::report::drawing::ways::{place_of, ways};

use super::layers::land::widest_place;
use super::layers::marks;
use super::palette;
use super::profile::Profile;
use super::scene::{Extent, Patch, PatchSide, PlaceSign, Scene, Standing, Way};

pub use hobnail_core::report::drawing::ways::{meters, run_of};

/// What there is to draw of `alternative`, without any map over it.
#[must_use]
pub fn scene_of(document: &Document, alternative: AlternativeId, fabric: &Fabric) -> Scene {
    let mut scene = Scene {
        site: meters(&document.site.boundary),
        profiles: document.street_sections.values().map(Profile::of).collect(),
        ..Scene::default()
    };
    scene.patches = fabric
        .used_faces(document, alternative)
        .map(|(face, _, mark)| patch(document, fabric, face, mark))
        .collect();
    let laid = ways(document, alternative, fabric, &scene.profiles);
    (scene.ways, scene.joints, scene.heads) = (laid.ways, laid.joints, laid.heads);
    let marks = document.alternatives.get(&alternative).map(|found| &found.marks);
    for (_, mark) in marks.into_iter().flatten() {
        drawn_mark(&mut scene, document, mark);
    }
    scene
}

fn drawn_mark(scene: &mut Scene, document: &Document, mark: &Mark) {
    match mark {
        Mark::Street(street) => {
            let line = meters(&flatten(&street.line));
            if street.status == Status::Removed {
                scene.ways.push(Way {
                    line: line.clone(),
                    profile: place_of(document, street.section),
                    clear_start_m: 0.0,
                    clear_end_m: 0.0,
                    standing: Standing::Removed,
                });
            }
            if !street.name.is_empty() {
                scene.names.push((line, street.name.clone()));
            }
        }
        Mark::Constraint(area) => {
            let name = if area.name.is_empty() {
                palette::constraint_word(area.kind).to_owned()
            } else {
                area.name.clone()
            };
            scene.constraints.push((meters(&area.outline), area.kind, name));
        }
        Mark::SiteAccess(access) => scene.accesses.push(access.at.to_m()),
        Mark::Place(place) => scene.places.push(PlaceSign {
            kind: place.kind,
            name: if place.name.is_empty() {
                marks::word(place.kind).to_owned()
            } else {
                place.name.clone()
            },
            extent: match &place.footprint {
                Footprint::Point(point) => Extent::Point(point.to_m()),
                Footprint::Line(line) => Extent::Line(meters(line)),
                Footprint::Area(outline) => Extent::Area(meters(outline)),
            },
            is_hoped_for: place.certainty == Certainty::HopedFor,
        }),
        // The others are drawn as they are: see the layer of drafted marks.
        _ => {}
    }
}

fn patch(document: &Document, fabric: &Fabric, face: &FaceOfLand, mark: &UseMark) -> Patch {
    let (main, second) = uses_of(document, &mark.program);
    let sides = mark.sides.iter().filter_map(|said| {
        let index = side_spoken_of(&fabric.arrangement, &fabric.lines, &face.sides, said)?;
        let side = face.sides.get(index)?;
        let building_type = document.building_types.get(&said.building_type?)?;
        let half_width_m = side
            .street
            .and_then(|(street, _)| fabric.lines.streets.get(street as usize));
        let half_width_m = half_width_m.map_or(0.0, |street| f64::from(street.right_of_way_mm) / 2000.0);
        let depth_m = half_width_m + f64::from(building_type.lot_depth_mm) / 1000.0;
        Some(PatchSide {
            run: meters(&run_of(fabric, &side.half_edges)),
            depth_m,
            main: building_type.land_use,
            second: other_floors(building_type),
        })
    });
    let pieces = &face.land.pieces;
    Patch {
        rings: pieces.iter().flatten().map(|ring| meters(ring)).collect(),
        main,
        second,
        sides: sides.collect(),
        label: label(document, face, mark),
    }
}

/// The building types of the land in words, and where they stand.
fn label(document: &Document, face: &FaceOfLand, mark: &UseMark) -> Option<((f64, f64), String, f64)> {
    let mut portions = mark.program.clone();
    order::sort_by_key(&mut portions, |portion| std::cmp::Reverse(portion.share_ppm));
    let first = portions.first()?;
    let name = &document.building_types.get(&first.building_type)?.name;
    let text = match portions.len() {
        1 => name.clone(),
        more => say!("drawing-land-more", name = name, count = more - 1),
    };
    let outline = meters(face.outline.first()?);
    let (at, room_m) = widest_place(&outline)?;
    Some((at, text, room_m))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{DRAWN, Scene as Plan, street, use_mark};
    use hobnail_core::fabric::LandCache;
    use hobnail_core::plan::{Street, defaults};

    fn block_of(streets: &[(u32, Street)]) -> Plan {
        let mut plan = Plan::with(streets);
        plan.document.building_types = defaults::building_types();
        plan
    }

    fn scene(plan: &Plan) -> Scene {
        let fabric = Fabric::of(&plan.document, DRAWN, &mut LandCache::default());
        scene_of(&plan.document, DRAWN, &fabric)
    }

    #[test]
    fn a_used_block_is_tinted_inside_its_streets() {
        let mut plan = block_of(&[
            (1, street(&[(0, 0), (100_000, 0)])),
            (2, street(&[(100_000, 0), (100_000, 80_000)])),
            (3, street(&[(100_000, 80_000), (0, 80_000)])),
            (4, street(&[(0, 80_000), (0, 0)])),
        ]);
        plan.put(9, Mark::Use(use_mark(50_000, 40_000, 0)));
        let scene = scene(&plan);
        assert_eq!(scene.patches.len(), 1);
        let ring = &scene.patches[0].rings[0];
        let west = ring.iter().map(|point| point.0).fold(f64::INFINITY, f64::min);
        assert!((west - 8.0).abs() < 1e-9, "half of the 16 m right-of-way is not land");
        assert_eq!(scene.ways.len(), 4);
        assert_eq!(scene.joints.len(), 4);
        assert!((scene.joints[0].right_of_way_m - 8.0).abs() < 1e-9);
    }

    #[test]
    fn dead_ends_go_on_by_half_their_width() {
        let scene = scene(&block_of(&[(1, street(&[(0, 0), (100_000, 0)]))]));
        let mut ends: Vec<f64> = scene.ways[0].line.iter().map(|point| point.0).collect();
        ends.sort_by(f64::total_cmp);
        assert_eq!(ends, vec![-8.0, 108.0]);
        assert_eq!(scene.heads.len(), 2);
        assert!(
            scene
                .heads
                .iter()
                .flatten()
                .all(|point| (point.1.abs() - 8.0).abs() < 1e-9)
        );
        assert!(scene.joints.is_empty());
    }

    #[test]
    fn planting_clears_intersections_but_not_bends() {
        let scene = scene(&block_of(&[
            (1, street(&[(0, 0), (100_000, 0)])),
            (2, street(&[(50_000, 0), (50_000, 80_000)])),
            (3, street(&[(100_000, 0), (100_000, 80_000)])),
        ]));
        let clears: Vec<f64> = scene
            .ways
            .iter()
            .flat_map(|way| [way.clear_start_m, way.clear_end_m])
            .collect();
        assert_eq!(
            clears.iter().filter(|clear| **clear > 0.0).count(),
            3,
            "three legs meet at the T: {clears:?}"
        );
    }
}
