//! The ground: the site, land tinted by use with a texture that says the same without color, constraint areas.

use hobnail_core::order::OrderedMap;
use std::sync::Arc;

use hobnail_core::plan::building::LandUse;

use crate::canvas::offset::beside;
use crate::canvas::palette;
use crate::canvas::picture::{Align, Color, Fill, Item, Layer, Path, Shape, Stroke, Texture, Words};
use crate::canvas::scene::{Patch, PatchSide, Scene};

pub use hobnail_core::report::drawing::widest_place;

/// The paper of the site.
#[must_use]
pub fn paper(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let mut site = Path::default();
    site.ring(scene.site.iter().copied());
    layer.fill(site, Fill::Flat(palette::PAPER));
    layer
}

/// The tints of the land.
#[must_use]
pub fn ground(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for (land_use, path) in by_use(&scene.patches, |patch| patch.main) {
        let path = Arc::new(path);
        layer.fill(path.clone(), Fill::Flat(palette::tint(land_use)));
        if let Some(texture) = palette::texture(land_use) {
            layer.fill(path, Fill::Textured(texture, palette::tone(land_use).at(0.55)));
        }
    }
    for (land_use, path) in by_use(&scene.patches, |patch| patch.second) {
        layer.fill(path, Fill::Textured(Texture::Bands, palette::tone(land_use).at(0.6)));
    }
    for patch in &scene.patches {
        for found in &patch.sides {
            side(&mut layer, patch, found);
        }
    }
    layer
}

/// Outlines of the site and of land that something holds back.
#[must_use]
pub fn boundaries(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    for (outline, kind, _) in &scene.constraints {
        let (color, texture) = palette::constraint(*kind);
        let mut path = Path::default();
        path.ring(outline.iter().copied());
        let path = Arc::new(path);
        layer.fill(path.clone(), Fill::Flat(color.at(0.14)));
        let line = palette::darkened(color);
        // Waves lie close together.
        let opacity = if texture == Texture::Waves { 0.4 } else { 0.75 };
        layer.fill(path.clone(), Fill::Textured(texture, line.at(opacity)));
        layer.stroke(path, Stroke::drawn(line, palette::MEDIUM_PX).dashed(&[7.0, 3.0]), 0.0);
    }
    layer.items.extend(site(scene).items);
    layer
}

/// The outline of the site alone.
#[must_use]
pub fn site(scene: &Scene) -> Layer {
    let mut layer = Layer::default();
    let mut site = Path::default();
    site.ring(scene.site.iter().copied());
    let line = Stroke::drawn(palette::INK, palette::HEAVY_PX).dashed(&[22.0, 5.0, 3.0, 5.0, 3.0, 5.0]);
    layer.stroke(site, line, 0.0);
    layer
}

/// Names of land that something holds back.
#[must_use]
pub fn constraint_names(scene: &Scene) -> Layer {
    const GLYPH_PX: f64 = 6.0;
    let named = scene.constraints.iter().filter(|(.., name)| !name.is_empty());
    let words = named.filter_map(|(outline, kind, name)| {
        let color = palette::darkened(palette::constraint(*kind).0);
        let (at, room_m) = widest_place(outline)?;
        // A name of its own stands even beside its land; the mere word for what it is needs room on it.
        let is_kind = name == palette::constraint_word(*kind);
        let needed_px = if is_kind {
            name.chars().count() as f64 * GLYPH_PX
        } else {
            0.0
        };
        Some(label(at, name.clone(), color, (needed_px / room_m.max(1.0)).max(0.35)))
    });
    Layer { items: words.collect() }
}

/// What stands on each piece of land, in words, once there is room for them.
#[must_use]
pub fn labels(scene: &Scene) -> Layer {
    const GLYPH_PX: f64 = 7.0;
    let labeled = scene.patches.iter().filter_map(|patch| patch.label.clone());
    let words = labeled.map(|(at, text, room_m)| {
        let needed_px = text.chars().count() as f64 * GLYPH_PX;
        label(at, text, palette::INK, (needed_px / room_m.max(1.0)).max(0.6))
    });
    Layer { items: words.collect() }
}

/// The middle of the box about an outline.
#[must_use]
pub fn middle(outline: &[(f64, f64)]) -> Option<(f64, f64)> {
    let first = outline.first()?;
    let (low, high) = outline.iter().fold((*first, *first), |(low, high), point| {
        (
            (low.0.min(point.0), low.1.min(point.1)),
            (high.0.max(point.0), high.1.max(point.1)),
        )
    });
    Some((f64::midpoint(low.0, high.0), f64::midpoint(low.1, high.1)))
}

fn by_use(patches: &[Patch], land_use: impl Fn(&Patch) -> Option<LandUse>) -> OrderedMap<LandUse, Path> {
    let mut paths: OrderedMap<LandUse, Path> = OrderedMap::new();
    for patch in patches {
        if let Some(land_use) = land_use(patch) {
            rings(paths.entry(land_use).or_default(), patch);
        }
    }
    paths
}

fn rings(path: &mut Path, patch: &Patch) {
    for ring in &patch.rings {
        path.ring(ring.iter().copied());
    }
}

/// A side is a band along its run, seen only inside its land.
fn side(layer: &mut Layer, patch: &Patch, found: &PatchSide) {
    let mut clip = Path::default();
    rings(&mut clip, patch);
    let back = beside(&found.run, found.depth_m);
    let mut band = Path::default();
    band.ring(found.run.iter().copied().chain(back.iter().rev().copied()));
    let mut edge = Path::default();
    edge.line(back);
    let (clip, band, edge) = (Arc::new(clip), Arc::new(band), Arc::new(edge));
    let mut add = |path: &Arc<Path>, fill: Option<Fill>, stroke: Option<Stroke>| {
        layer.items.push(Item::Shape(Shape {
            path: Arc::clone(path),
            clip: Some(Arc::clone(&clip)),
            fill,
            stroke,
            from_px_per_m: 0.0,
        }));
    };
    add(&band, Some(Fill::Flat(palette::tint(found.main))), None);
    if let Some(texture) = palette::texture(found.main) {
        add(
            &band,
            Some(Fill::Textured(texture, palette::tone(found.main).at(0.55))),
            None,
        );
    }
    if let Some(second) = found.second {
        add(
            &band,
            Some(Fill::Textured(Texture::Bands, palette::tone(second).at(0.6))),
            None,
        );
    }
    add(
        &edge,
        None,
        Some(Stroke::drawn(palette::tone(found.main), palette::FINE_PX)),
    );
}

pub(super) fn label(at: (f64, f64), text: String, color: Color, from_px_per_m: f64) -> Item {
    Item::Words(Words {
        at,
        shift_px: (0.0, 0.0),
        text,
        size_px: 12.5,
        is_bold: false,
        color,
        halo: palette::PAPER.at(0.75),
        angle_rad: 0.0,
        align: Align::Middle,
        from_px_per_m,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(size: f64) -> Vec<(f64, f64)> {
        vec![(0.0, 0.0), (size, 0.0), (size, size), (0.0, size)]
    }

    #[test]
    fn color_is_never_the_only_sign_of_a_mix() {
        let scene = Scene {
            patches: vec![Patch {
                rings: vec![square(50.0)],
                main: Some(LandUse::Residential),
                second: Some(LandUse::Business),
                sides: Vec::new(),
                label: None,
            }],
            ..Scene::default()
        };
        let textures = ground(&scene)
            .items
            .iter()
            .filter(|item| {
                matches!(
                    item,
                    Item::Shape(Shape {
                        fill: Some(Fill::Textured(Texture::Bands, _)),
                        ..
                    })
                )
            })
            .count();
        assert_eq!(textures, 1);
    }

    #[test]
    fn words_stand_inside_a_bent_outline() {
        let bent = [
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, 20.0),
            (20.0, 20.0),
            (20.0, 100.0),
            (0.0, 100.0),
        ];
        let (at, room_m) = widest_place(&bent).expect("there is room");
        assert!(at.1 < 20.0 && (at.0 - 50.0).abs() < 1e-9, "{at:?}");
        assert!((room_m - 100.0).abs() < 1e-9);
    }

    #[test]
    fn a_side_stays_inside_its_land() {
        let scene = Scene {
            patches: vec![Patch {
                rings: vec![square(50.0)],
                main: None,
                second: None,
                sides: vec![PatchSide {
                    run: vec![(0.0, 0.0), (50.0, 0.0)],
                    depth_m: 20.0,
                    main: LandUse::Business,
                    second: Some(LandUse::Residential),
                }],
                label: None,
            }],
            ..Scene::default()
        };
        let layer = ground(&scene);
        let sides: Vec<_> = layer
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Shape(shape) => shape.clip.as_ref(),
                _ => None,
            })
            .collect();
        assert_eq!(sides.len(), 4, "tint, texture, bands of the second use, edge");
        assert!(sides.iter().all(|clip| clip.runs().count() == 1));
    }
}
