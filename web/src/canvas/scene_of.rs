//! Gathers what there is to draw from the document and its fabric.

use hobnail_core::order;
use hobnail_core::order::OrderedMap;
use hobnail_core::say;

use hobnail_core::fabric::sides::side_spoken_of;
use hobnail_core::fabric::{Fabric, FaceOfLand};
use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{
    AlternativeId, BuildingType, Certainty, Document, FloorUse, Footprint, Mark, MarkId, PlanPoint, Street,
    StreetSectionId, UseMark,
};

use super::layers::land::widest_place;
use super::layers::marks;
use super::palette;
use super::profile::Profile;
use super::scene::{Extent, Joint, Line, Patch, PatchSide, PlaceSign, Scene, Standing, Way};

/// Planting keeps this far from the right-of-way of a street it meets, in meters.
const CLEAR_OF_CORNER_M: f64 = 1.0;

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
    ways(&mut scene, document, alternative, fabric);
    let marks = document.alternatives.get(&alternative).map(|found| &found.marks);
    for (_, mark) in marks.into_iter().flatten() {
        drawn_mark(&mut scene, document, mark);
    }
    scene
}

/// Points in meters.
#[must_use]
pub fn meters(points: &[PlanPoint]) -> Line {
    points.iter().map(|point| point.to_m()).collect()
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
    let (main, second) = uses_of(document, mark);
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

/// The points along consecutive half-edges.
#[must_use]
pub fn run_of(fabric: &Fabric, half_edges: &[hobnail_core::fabric::HalfEdgeId]) -> Vec<PlanPoint> {
    let arrangement = &fabric.arrangement;
    let starts = half_edges
        .iter()
        .map(|half_edge| arrangement.point(arrangement.origin(*half_edge)));
    let end = half_edges
        .last()
        .map(|half_edge| arrangement.point(arrangement.target(*half_edge)));
    starts.chain(end).collect()
}

/// The use of most of the land, and the next: of another portion, or of floors above or below.
fn uses_of(document: &Document, mark: &UseMark) -> (Option<LandUse>, Option<LandUse>) {
    let mut shares: OrderedMap<LandUse, u64> = OrderedMap::new();
    let mut portions: Vec<(&BuildingType, u32)> = mark
        .program
        .iter()
        .filter_map(|portion| Some((document.building_types.get(&portion.building_type)?, portion.share_ppm)))
        .collect();
    order::sort_by_key(&mut portions, |(_, share_ppm)| std::cmp::Reverse(*share_ppm));
    for (building_type, share_ppm) in &portions {
        *shares.entry(building_type.land_use).or_default() += u64::from(*share_ppm);
    }
    let main = shares
        .iter()
        .max_by_key(|(_, share)| **share)
        .map(|(land_use, _)| *land_use);
    let other = shares
        .iter()
        .filter(|(land_use, _)| Some(**land_use) != main)
        .max_by_key(|(_, share)| **share)
        .map(|(land_use, _)| *land_use);
    let upstairs = portions
        .first()
        .and_then(|(building_type, _)| other_floors(building_type));
    (main, other.or(upstairs))
}

/// The use of floors that differ from the building type's own.
fn other_floors(building_type: &BuildingType) -> Option<LandUse> {
    let floors = building_type
        .stories
        .iter()
        .filter_map(|story| use_of_floor(story.floor_use));
    floors.into_iter().find(|land_use| *land_use != building_type.land_use)
}

const fn use_of_floor(floor_use: FloorUse) -> Option<LandUse> {
    match floor_use {
        FloorUse::Home => Some(LandUse::Residential),
        FloorUse::Work | FloorUse::Shop => Some(LandUse::Business),
        FloorUse::Learning | FloorUse::Gathering => Some(LandUse::Civic),
        FloorUse::Parking => None,
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

fn ways(scene: &mut Scene, document: &Document, alternative: AlternativeId, fabric: &Fabric) {
    let links = &fabric.links;
    let profile_of = |link: &hobnail_core::fabric::links::StreetLink| {
        let street = fabric.lines.streets.get(link.street as usize);
        street.map_or(0, |street| place_of(document, street.section))
    };
    let half_widths = |profile: usize| {
        scene.profiles.get(profile).map(|found| {
            (
                found.right_of_way_m / 2.0,
                found.half_paved_m(),
                found.carriageway.is_some(),
            )
        })
    };
    let mut legs: Vec<Vec<(usize, usize)>> = vec![Vec::new(); links.nodes.len()];
    for (index, link) in links.links.iter().enumerate() {
        for node in link.ends {
            if let Some(legs) = legs.get_mut(node as usize) {
                legs.push((index, profile_of(link)));
            }
        }
    }
    let at = |node: u32| legs.get(node as usize).map_or(&[] as &[(usize, usize)], Vec::as_slice);
    let clear_m = |node: u32, own: usize| {
        let others = at(node).iter().filter(|(link, _)| *link != own);
        let widest_m = others
            .filter_map(|(_, profile)| half_widths(*profile))
            .map(|(row_m, ..)| row_m)
            .max_by(f64::total_cmp);
        if at(node).len() < 3 {
            0.0
        } else {
            widest_m.map_or(0.0, |row_m| row_m + CLEAR_OF_CORNER_M)
        }
    };
    let mut ways = Vec::with_capacity(links.links.len());
    let mut heads = Vec::new();
    for (index, link) in links.links.iter().enumerate() {
        let profile = profile_of(link);
        let half_m = half_widths(profile).map_or(0.0, |(row_m, ..)| row_m);
        let mut line = meters(&run_of(fabric, &link.half_edges));
        let [is_dead_start, is_dead_end] = link.ends.map(|node| at(node).len() == 1);
        heads.extend(extend(&mut line, half_m, [is_dead_start, is_dead_end]));
        let street = fabric.lines.streets.get(link.street as usize);
        let status = street.and_then(|street| status_of(document, alternative, street.mark));
        ways.push(Way {
            line,
            profile,
            clear_start_m: clear_m(link.ends[0], index),
            clear_end_m: clear_m(link.ends[1], index),
            standing: match status {
                Some(Status::New) | None => Standing::New,
                Some(Status::Existing | Status::Kept) => Standing::Existing,
                Some(Status::Removed) => Standing::Removed,
            },
        });
    }
    let joints = links
        .nodes
        .iter()
        .zip(&legs)
        .filter(|(_, legs)| legs.len() >= 2)
        .filter_map(|(point, legs)| {
            let second = |mut widths: Vec<f64>| {
                order::sort_by(&mut widths, |one, other| other.total_cmp(one));
                widths.get(1).copied()
            };
            let found: Vec<_> = legs.iter().filter_map(|(_, profile)| half_widths(*profile)).collect();
            Some(Joint {
                at: point.to_m(),
                right_of_way_m: second(found.iter().map(|(row_m, ..)| *row_m).collect())?,
                paved_m: second(
                    found
                        .iter()
                        .filter(|(.., is_paved)| *is_paved)
                        .map(|(_, paved_m, _)| *paved_m)
                        .collect(),
                ),
            })
        });
    scene.joints = joints.collect();
    scene.ways = ways;
    scene.heads = heads;
}

/// Dead ends go on by half their width, as the land around them is laid; gives back the lines across their heads.
fn extend(line: &mut Line, by_m: f64, dead: [bool; 2]) -> Vec<Line> {
    let mut heads = Vec::new();
    for (end, is_dead) in dead.into_iter().enumerate() {
        let (tip, before) = match (end, line.as_mut_slice()) {
            (0, [tip, before, ..]) | (1, [.., before, tip]) => (tip, *before),
            _ => continue,
        };
        let (x, y) = (tip.0 - before.0, tip.1 - before.1);
        let length_m = (x * x + y * y).sqrt();
        if is_dead && length_m > 0.0 {
            let (x, y) = (x / length_m * by_m, y / length_m * by_m);
            *tip = (tip.0 + x, tip.1 + y);
            heads.push(vec![(tip.0 - y, tip.1 + x), (tip.0 + y, tip.1 - x)]);
        }
    }
    heads
}

fn status_of(document: &Document, alternative: AlternativeId, id: MarkId) -> Option<Status> {
    document
        .mark(alternative, id)
        .and_then(Mark::as_street)
        .map(|street: &Street| street.status)
}

/// The place of a street section among the scene's profiles.
fn place_of(document: &Document, section: StreetSectionId) -> usize {
    document
        .street_sections
        .keys()
        .position(|id| *id == section)
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::{DRAWN, Scene as Plan, street, use_mark};
    use hobnail_core::fabric::LandCache;
    use hobnail_core::plan::defaults;

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
