//! Streets at true width: ground of the right-of-way, planting, carriageway, then centerlines of paths.
//!
//! Each band of all streets is drawn before the next band of any, so that streets run into each other at
//! intersections as they do on the ground; planting stops short of them.

use hobnail_core::order::OrderedMap;
use std::sync::Arc;

use crate::canvas::layers::trees::Window;
use crate::canvas::offset::{beside, length, shortened};
use crate::canvas::palette;
use crate::canvas::picture::{Align, Color, Fill, Item, Layer, Path, Stroke, Width, Words};
use crate::canvas::profile::{Band, Profile};
use crate::canvas::scene::{Scene, Standing, Way};

/// From this scale on single strips can be told apart.
pub const STRIPS_FROM_PX_PER_M: f64 = 1.1;
/// From this scale on lanes can be told apart.
const LANES_FROM_PX_PER_M: f64 = 2.2;

/// The ground of all streets, which their planting lies on.
#[must_use]
pub fn grounds(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    edges(&mut layer, scene);
    rights_of_way(&mut layer, scene);
    layer
}

/// The planting beside the carriageways that come into `window`: many, and seen only from near.
#[must_use]
pub fn planting(scene: &Scene, window: &Window) -> Layer {
    let mut layer = Layer::default();
    for (profile, _, ways) in groups(scene, Some(window)) {
        for band in outside_carriageway(profile) {
            let path = band_path(&ways, band, true);
            layer.stroke(path, Stroke::band(palette::PLANTED, band.width_m), STRIPS_FROM_PX_PER_M);
        }
    }
    layer
}

/// The carriageways of all streets, undermost band first, and the lines of what has none.
#[must_use]
pub fn carriageways(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    paved(&mut layer, scene);
    medians(&mut layer, scene);
    heads(&mut layer, scene);
    removed(&mut layer, scene);
    paths(&mut layer, scene);
    layer
}

/// Bicycle lanes and the lines between lanes on the carriageways that come into `window`, seen only from near.
#[must_use]
pub fn lanes(scene: &Scene, window: &Window) -> Layer {
    let mut layer = Layer::default();
    for (profile, _, ways) in groups(scene, Some(window)) {
        for band in &profile.bicycle {
            let path = band_path(&ways, *band, true);
            layer.stroke(path, Stroke::band(palette::BICYCLE, band.width_m), STRIPS_FROM_PX_PER_M);
        }
        for left_m in &profile.lane_lines_m {
            let band = Band {
                left_m: *left_m,
                width_m: 0.0,
            };
            let line = Stroke::drawn(Color::solid(0xFF_FF_FF), 1.0).dashed(&[6.0, 6.0]);
            layer.stroke(band_path(&ways, band, true), line, LANES_FROM_PX_PER_M);
        }
    }
    layer
}

/// Names of streets, along their longest straight run, once they fit.
#[must_use]
pub fn names(scene: &Scene) -> Layer {
    const SIZE_PX: f64 = 12.0;
    const GLYPH_SHARE: f64 = 0.56;
    let mut layer = Layer::default();
    for (line, name) in &scene.names {
        let longest = line
            .windows(2)
            .filter_map(|ends| match ends {
                [a, b] => Some((*a, *b, length(ends))),
                _ => None,
            })
            .max_by(|one, other| one.2.total_cmp(&other.2));
        let Some((a, b, run_m)) = longest else { continue };
        if name.is_empty() || run_m <= 0.0 {
            continue;
        }
        let (a, b) = if (a.0, a.1) <= (b.0, b.1) { (a, b) } else { (b, a) };
        let width_px = name.chars().count() as f64 * SIZE_PX * GLYPH_SHARE;
        layer.items.push(Item::Words(Words {
            at: (f64::midpoint(a.0, b.0), f64::midpoint(a.1, b.1)),
            shift_px: (0.0, 0.0),
            text: name.clone(),
            size_px: SIZE_PX,
            is_bold: false,
            color: palette::INK,
            halo: palette::WALK.at(0.85),
            angle_rad: hobnail_core::number::atan2(b.1 - a.1, b.0 - a.0),
            align: Align::Middle,
            from_px_per_m: (width_px * 1.25 / run_m).max(0.5),
        }));
    }
    layer
}

type ByProfile<'a> = OrderedMap<(usize, Standing), Vec<&'a Way>>;

/// Ways that stand or come, by profile; of a window those alone that come into it.
fn groups<'a>(scene: &'a Scene, window: Option<&Window>) -> Vec<(&'a Profile, Standing, Vec<&'a Way>)> {
    let mut groups: ByProfile<'_> = OrderedMap::new();
    for way in scene.ways.iter().filter(|way| way.standing != Standing::Removed) {
        if window.is_none_or(|window| window.meets(&way.line)) {
            groups.entry((way.profile, way.standing)).or_default().push(way);
        }
    }
    let found = |((profile, standing), ways): ((usize, _), _)| Some((scene.profiles.get(profile)?, standing, ways));
    groups.into_iter().filter_map(found).collect()
}

fn lines(ways: &[&Way]) -> Path {
    let mut path = Path::default();
    for way in ways {
        path.line(way.line.iter().copied());
    }
    path
}

fn band_path(ways: &[&Way], band: Band, is_short: bool) -> Path {
    let mut path = Path::default();
    for way in ways {
        if !is_short && band.left_m == 0.0 {
            path.line(way.line.iter().copied());
        } else if is_short {
            let line = shortened(&way.line, way.clear_start_m, way.clear_end_m);
            path.line(beside(&line, band.left_m));
        } else {
            path.line(beside(&way.line, band.left_m));
        }
    }
    path
}

/// The drawn line along either edge of each right-of-way.
fn edges(layer: &mut Layer, scene: &Scene) {
    for (profile, standing, ways) in groups(scene, None) {
        let color = match standing {
            Standing::New => palette::INK,
            Standing::Existing | Standing::Removed => palette::SOFT_INK,
        };
        let line = Stroke {
            color,
            width: Width::Edged(profile.right_of_way_m, palette::MEDIUM_PX),
            dash_px: &[],
            has_round_ends: false,
        };
        layer.stroke(lines(&ways), line, 0.0);
    }
    let mut joints = Path::default();
    for joint in &scene.joints {
        joints.circle(joint.at, joint.right_of_way_m);
    }
    layer.stroke(joints, Stroke::drawn(palette::INK, 2.0 * palette::MEDIUM_PX), 0.0);
}

/// The ground of each right-of-way: walks, until something else lies on it.
fn rights_of_way(layer: &mut Layer, scene: &Scene) {
    for (profile, _, ways) in groups(scene, None) {
        layer.stroke(lines(&ways), Stroke::band(palette::WALK, profile.right_of_way_m), 0.0);
    }
    let mut joints = Path::default();
    for joint in &scene.joints {
        joints.circle(joint.at, joint.right_of_way_m);
    }
    layer.fill(joints, Fill::Flat(palette::WALK));
}

fn paved(layer: &mut Layer, scene: &Scene) {
    let curb = palette::SOFT_INK.at(0.8);
    let groups = groups(scene, None);
    let bands: Vec<_> = groups
        .iter()
        .filter_map(|(profile, _, ways)| {
            let band = profile.carriageway?;
            Some((band.width_m, Arc::new(band_path(ways, band, false))))
        })
        .collect();
    let mut joints = Path::default();
    for joint in &scene.joints {
        if let Some(paved_m) = joint.paved_m {
            joints.circle(joint.at, paved_m);
        }
    }
    let joints = Arc::new(joints);
    for pass in [curb, palette::PAVED] {
        let is_curb = pass == curb;
        for (width_m, path) in &bands {
            let width = if is_curb {
                Width::Edged(*width_m, palette::FINE_PX)
            } else {
                Width::Meters(*width_m)
            };
            let stroke = Stroke {
                color: pass,
                width,
                dash_px: &[],
                has_round_ends: false,
            };
            layer.stroke(Arc::clone(path), stroke, 0.0);
        }
        if is_curb {
            layer.stroke(Arc::clone(&joints), Stroke::drawn(pass, 2.0 * palette::FINE_PX), 0.0);
        } else {
            layer.fill(Arc::clone(&joints), Fill::Flat(pass));
        }
    }
}

/// Planting in the middle of carriageways.
fn medians(layer: &mut Layer, scene: &Scene) {
    for (profile, _, ways) in groups(scene, None) {
        for band in inside_carriageway(profile) {
            let path = band_path(&ways, band, true);
            layer.stroke(path, Stroke::band(palette::PLANTED, band.width_m), 0.0);
        }
    }
}

/// The line across the head of each dead end.
fn heads(layer: &mut Layer, scene: &Scene) {
    let mut path = Path::default();
    for head in &scene.heads {
        path.line(head.iter().copied());
    }
    layer.stroke(path, Stroke::drawn(palette::SOFT_INK, palette::MEDIUM_PX), 0.0);
}

/// Ways that go: crossed out, no ground of their own.
fn removed(layer: &mut Layer, scene: &Scene) {
    let ways: Vec<&Way> = scene
        .ways
        .iter()
        .filter(|way| way.standing == Standing::Removed)
        .collect();
    let line = Stroke::drawn(palette::REMOVED, palette::MEDIUM_PX).dashed(&[3.0, 5.0]);
    layer.stroke(lines(&ways), line, 0.0);
}

/// The centerline of paths, which are too narrow to be seen from afar.
fn paths(layer: &mut Layer, scene: &Scene) {
    for (profile, _, ways) in groups(scene, None) {
        if profile.carriageway.is_none() {
            let line = Stroke::drawn(palette::SOFT_INK, palette::MEDIUM_PX).dashed(&[1.0, 4.0]);
            layer.stroke(lines(&ways), line, 0.0);
        }
    }
}

fn outside_carriageway(profile: &Profile) -> impl Iterator<Item = Band> + '_ {
    profile
        .planted
        .iter()
        .copied()
        .filter(|band| !lies_inside(profile, *band))
}

fn inside_carriageway(profile: &Profile) -> impl Iterator<Item = Band> + '_ {
    profile
        .planted
        .iter()
        .copied()
        .filter(|band| lies_inside(profile, *band))
}

fn lies_inside(profile: &Profile, band: Band) -> bool {
    profile
        .carriageway
        .is_some_and(|carriageway| (band.left_m - carriageway.left_m).abs() < carriageway.width_m / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::picture::Shape;

    const EVERYTHING: Window = Window {
        least: (-500.0, -500.0),
        most: (500.0, 500.0),
    };

    fn profile() -> Profile {
        Profile {
            right_of_way_m: 16.0,
            carriageway: Some(Band {
                left_m: 0.0,
                width_m: 6.0,
            }),
            planted: vec![Band {
                left_m: 4.0,
                width_m: 2.0,
            }],
            ..Profile::default()
        }
    }

    fn way(line: &[(f64, f64)], standing: Standing) -> Way {
        Way {
            line: line.to_vec(),
            profile: 0,
            clear_start_m: 10.0,
            clear_end_m: 10.0,
            standing,
        }
    }

    fn shapes(layer: &Layer) -> Vec<&Shape> {
        layer
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Shape(shape) => Some(shape),
                _ => None,
            })
            .collect()
    }

    #[test]
    fn every_carriageway_lies_over_every_ground() {
        let scene = Scene {
            profiles: vec![profile()],
            ways: vec![
                way(&[(0.0, 0.0), (100.0, 0.0)], Standing::New),
                way(&[(50.0, -50.0), (50.0, 50.0)], Standing::Existing),
            ],
            ..Scene::default()
        };
        let (grounds, carriageways) = (grounds(&scene), carriageways(&scene));
        let both = shapes(&grounds).into_iter().chain(shapes(&carriageways));
        let order: Vec<Color> = both
            .filter_map(|shape| shape.stroke)
            .map(|stroke| stroke.color)
            .collect();
        let last_ground = order
            .iter()
            .rposition(|color| *color == palette::WALK)
            .expect("a ground");
        let first_paved = order
            .iter()
            .position(|color| *color == palette::PAVED)
            .expect("a carriageway");
        assert!(last_ground < first_paved);
    }

    #[test]
    fn planting_stops_short_of_intersections() {
        let scene = Scene {
            profiles: vec![profile()],
            ways: vec![way(&[(0.0, 0.0), (100.0, 0.0)], Standing::New)],
            ..Scene::default()
        };
        let layer = planting(&scene, &EVERYTHING);
        let green = shapes(&layer)
            .into_iter()
            .find(|shape| shape.stroke.is_some_and(|stroke| stroke.color == palette::PLANTED))
            .expect("a planting strip");
        let (points, _) = green.path.runs().next().expect("a run");
        assert_eq!(points, [(10.0, 4.0), (90.0, 4.0)]);
    }

    #[test]
    fn a_street_that_goes_has_no_ground() {
        let scene = Scene {
            profiles: vec![profile()],
            ways: vec![way(&[(0.0, 0.0), (100.0, 0.0)], Standing::Removed)],
            ..Scene::default()
        };
        assert!(grounds(&scene).items.is_empty() && planting(&scene, &EVERYTHING).items.is_empty());
        let layer = carriageways(&scene);
        assert_eq!(shapes(&layer).len(), 1);
        assert!(!shapes(&layer)[0].stroke.expect("a line").dash_px.is_empty());
    }

    #[test]
    fn names_read_from_the_left() {
        let scene = Scene {
            names: vec![(vec![(100.0, 0.0), (0.0, 0.0)], "Orchard Street".to_owned())],
            ..Scene::default()
        };
        let layer = names(&scene);
        let Some(Item::Words(words)) = layer.items.first() else {
            panic!("no name drawn");
        };
        assert!(words.angle_rad.abs() < 1e-9);
        assert!(
            words.from_px_per_m > 0.9,
            "fourteen letters need about 94 pixels, and have 100 m"
        );
    }
}
