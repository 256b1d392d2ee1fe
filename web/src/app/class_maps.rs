//! Maps that part the plan into classes: homes by land, phases, owners, street sections, and the buildings alone.
//!
//! What is drawn and what the legend says are gathered together, from the plan as it is seen and its lots as laid; so the
//! homes of all classes add up to the homes that the column shows, those of soft areas left out.

use hobnail_core::figures::display::digits;
use hobnail_core::figures::unit::ACRE_M2;
use hobnail_core::measures::frontage::PaintedFace;
use hobnail_core::measures::slopes::{Slopes, THOUSANDTHS, borders};
use hobnail_core::measures::street_grades::{Profile, WALK_PERCENT, fire_access_percent, is_steeper};
use hobnail_core::measures::walk_network::ground::Ground;
use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::document::{Topography, UnitSystem};
use hobnail_core::plan::land::OwnerGroup;
use hobnail_core::plan::street::{Status, StreetRole};
use hobnail_core::plan::{Document, Mark as Drawn, PhaseId};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::editor::quantity::number;
use super::maps::{Legend, Line, Map, Mark};
use super::words;
use crate::canvas::layers::land::widest_place;
use crate::canvas::palette;
use crate::canvas::scene::{Scale, Scene, Wash};
use crate::canvas::scene_of::meters;
use crate::tools::shape;

/// Limits between classes of homes by land, in homes per hectare and in homes per acre. Round numbers from houses on
/// large lots to apartments; common practice, no source.
const LIMITS: [[f64; 5]; 2] = [[10.0, 20.0, 30.0, 50.0, 100.0], [4.0, 8.0, 12.0, 20.0, 40.0]];

const OWNERS: [OwnerGroup; 4] = [
    OwnerGroup::Public,
    OwnerGroup::Willing,
    OwnerGroup::Unknown,
    OwnerGroup::Unwilling,
];

/// What one class holds, for the legend.
#[derive(Clone, Copy, Default)]
struct Held {
    is_there: bool,
    /// Homes, square meters or meters.
    amount: f64,
}

/// Lays a map of classes over the drawing and gives its legend; `None` for other maps.
pub fn lay(study: &Study, map: Map, scene: &mut Scene) -> Option<Legend> {
    let seen = study.seen();
    let units = seen.settings.units;
    let mut held = Vec::new();
    let mut hold = |class: u8, amount: f64| {
        let place = usize::from(class);
        held.resize(held.len().max(place + 1), Held::default());
        held[place] = Held {
            is_there: true,
            amount: held[place].amount + amount,
        };
    };
    let mut note = None;
    let mut scale = Scale::Kinds;
    let mut steep: Vec<f64> = Vec::new();
    match map {
        Map::Density => {
            scale = Scale::Ramp;
            let is_us = units == UnitSystem::UsCustomary;
            let (limits, land_m2) = (&LIMITS[usize::from(is_us)], if is_us { ACRE_M2 } else { 10_000.0 });
            for face in study.painted().iter() {
                if let Some(homes_by_m2) = study.painted().homes_by_land(face) {
                    let density = homes_by_m2 * land_m2;
                    let class = class_of(density, limits);
                    hold(class, study.painted().homes_on(face));
                    wash(study, face, scale, class, digits_of(density, limits), scene);
                }
            }
            note = Some(say!("maps-density-note").to_owned());
        }
        Map::Phases => {
            for face in study.painted().iter().filter(|face| is_built(&seen, face)) {
                let class = place_of_phase(&seen, face.phase);
                hold(class, study.painted().homes_on(face));
                wash(study, face, scale, class, (class + 1).to_string(), scene);
            }
            band(study, scene, &|street| {
                // What stands is in no phase.
                (street.status == Status::New).then(|| place_of_phase(&seen, street.phase))
            });
            note = Some(say!("maps-phases-note").to_owned());
        }
        Map::Sections => {
            band(study, scene, &|street| {
                let place = seen.street_sections.keys().position(|id| *id == street.section)?;
                Some(place as u8)
            });
            for (line, class) in &scene.bands {
                let ends = line.iter().zip(line.iter().skip(1));
                let length_m: f64 = ends
                    .map(|(from, to)| hobnail_core::number::length(to.0 - from.0, to.1 - from.1))
                    .sum();
                hold(*class, length_m);
            }
        }
        Map::Owners => {
            let marks = seen.alternatives.get(&study.alternative()).map(|found| &found.marks);
            for mark in marks.into_iter().flat_map(|marks| marks.values()) {
                let Drawn::Parcel(parcel) = mark else { continue };
                let class = OWNERS
                    .iter()
                    .position(|owner| *owner == parcel.owner)
                    .unwrap_or_default() as u8;
                hold(class, shape::area_m2(&parcel.outline));
                let ring = meters(&parcel.outline);
                let at = widest_place(&ring);
                scene.tags.extend(at.map(|(at, _)| (at, (class + 1).to_string())));
                scene.washes.push(Wash {
                    rings: vec![ring],
                    scale,
                    class,
                });
            }
        }
        Map::Slope => {
            scale = Scale::Ramp;
            let Some(topography) = &seen.topography else {
                return Some(Legend {
                    map,
                    note: Some(say!("heights-none").to_owned()),
                    ..Legend::default()
                });
            };
            let areas_m2 = Slopes::of(topography).class_areas_m2(topography, &seen.site.boundary, borders(&seen));
            for (class, area_m2) in (0..).zip(areas_m2).filter(|(_, area_m2)| *area_m2 > 0.0) {
                hold(class, area_m2);
            }
            steep = steep_streets(study, &seen, topography, scene);
            note = Some(say!("heights-map-note").to_owned());
        }
        Map::Ground => {
            scene.is_ground = true;
            note = Some(say!("maps-ground-note").to_owned());
        }
        _ => return None,
    }
    scene.is_bare = map != Map::Sections;
    let line = |(class, held): (usize, &Held)| Line {
        mark: Mark::Class(scale, class as u8),
        words: title(&seen, map, class),
        value: Some(match map {
            Map::Sections => words::length(held.amount, units),
            Map::Owners | Map::Slope => words::area(held.amount, units),
            _ => say!("maps-homes", count = number_of_homes(held.amount)),
        }),
    };
    let mut lines: Vec<Line> = held
        .iter()
        .enumerate()
        .filter(|(_, held)| held.is_there)
        .map(line)
        .collect();
    for (place, length_m) in (0..).zip(steep) {
        lines.push(Line {
            mark: Mark::Steep(place),
            words: match place {
                0 => say!("heights-steep-walk").to_owned(),
                _ => say!("heights-steep-fire", limit = digits(fire_access_percent(&seen))),
            },
            value: Some(words::length(length_m, units)),
        });
    }
    if lines.is_empty() && map != Map::Ground {
        note = Some(say!("maps-nothing").to_owned());
    }
    Some(Legend { map, lines, note })
}

/// The words of a class.
fn title(document: &Document, map: Map, class: usize) -> String {
    match map {
        Map::Density => {
            let is_us = document.settings.units == UnitSystem::UsCustomary;
            let limits = &LIMITS[usize::from(is_us)];
            let [low, high] = [class.checked_sub(1), Some(class)].map(|place| limits.get(place?).copied().map(digits));
            let unit = if is_us {
                say!("maps-homes-per-acre")
            } else {
                say!("maps-homes-per-hectare")
            };
            match (low, high) {
                (None, high) => say!("maps-up-to", high = high.unwrap_or_default(), unit = unit),
                (Some(low), Some(high)) => say!("maps-between", low = low, high = high, unit = unit),
                (Some(low), None) => say!("maps-over", low = low, unit = unit),
            }
        }
        Map::Phases => {
            let name = document.phases.values().nth(class).map(|phase| phase.name.clone());
            name.unwrap_or_else(|| say!("maps-one-phase").to_owned())
        }
        Map::Sections => {
            let section = document.street_sections.values().nth(class);
            section.map(|section| section.name.clone()).unwrap_or_default()
        }
        Map::Slope => {
            let borders = borders(document);
            let border = |place: Option<usize>| {
                borders
                    .get(place?)
                    .map(|border| digits(f64::from(*border) / f64::from(THOUSANDTHS)))
            };
            match (border(class.checked_sub(1)), border(Some(class))) {
                (None, high) => say!("heights-class-under", high = high.unwrap_or_default()),
                (Some(low), Some(high)) => say!("heights-class-between", low = low, high = high),
                (Some(low), None) => say!("heights-class-over", low = low),
            }
        }
        Map::Owners => OWNERS
            .get(class)
            .map_or("", |owner| palette::owner_word(*owner))
            .to_owned(),
        _ => String::new(),
    }
}

/// Whether anything of it is made: land left as it is belongs to no phase.
fn is_built(document: &Document, face: &PaintedFace) -> bool {
    let types = face
        .land_m2
        .iter()
        .filter_map(|(id, _)| document.building_types.get(id));
    types.into_iter().any(|held| held.land_use != LandUse::Natural)
}

/// Homes are whole but for the sums of floating point.
fn number_of_homes(homes: f64) -> u32 {
    (homes + 0.5) as u32
}

/// The class of a density: how many limits it exceeds.
fn class_of(density: f64, limits: &[f64]) -> u8 {
    limits.iter().filter(|limit| density > **limit).count() as u8
}

/// A density as it stands on a block: whole from ten on, else to the tenth; with more digits where rounding would carry
/// it across a limit, so that the number and the class always agree.
fn digits_of(density: f64, limits: &[f64]) -> String {
    const MOST_DIGITS: usize = 4;
    let mut digits = usize::from(density < 10.0);
    loop {
        let words = format!("{density:.digits$}");
        let rounded = number(&words).unwrap_or(density);
        if digits == MOST_DIGITS || class_of(rounded, limits) == class_of(density, limits) {
            return words;
        }
        digits += 1;
    }
}

/// The place of a phase among all; what has none is built in the first.
fn place_of_phase(document: &Document, phase: Option<PhaseId>) -> u8 {
    let place = phase.and_then(|phase| document.phases.keys().position(|id| *id == phase));
    place.unwrap_or_default() as u8
}

fn wash(study: &Study, face: &PaintedFace, scale: Scale, class: u8, tag: String, scene: &mut Scene) {
    let Some(land) = study.fabric().face(face.face) else {
        return;
    };
    let rings = land.land.pieces.iter().flatten().map(|ring| meters(ring)).collect();
    scene.washes.push(Wash { rings, scale, class });
    let at = land.outline.first().and_then(|outline| widest_place(&meters(outline)));
    scene.tags.extend(at.map(|(at, _)| (at, tag)));
}

/// The classes that steep streets are colored as: steeper than a walk, and than fire access.
pub const STEEP: [u8; 2] = [0, 3];

/// Bands along what is steeper of each street than a limit, with the steepest grade on each; the length of what is
/// steeper than each of the limits, in meters.
fn steep_streets(study: &Study, seen: &Document, held: &Topography, scene: &mut Scene) -> Vec<f64> {
    let limits = [WALK_PERCENT, fire_access_percent(seen)];
    let mut lengths_m = vec![0.0; limits.len()];
    let Some(ground) = Ground::of(held) else {
        return lengths_m;
    };
    let marks = seen.alternatives.get(&study.alternative()).map(|found| &found.marks);
    let streets = marks
        .into_iter()
        .flat_map(|marks| marks.values())
        .filter_map(Drawn::as_street);
    for street in streets.filter(|street| street.status != Status::Removed) {
        // Nobody drives along a path.
        let count = if street.role == StreetRole::Path {
            1
        } else {
            limits.len()
        };
        let profile = Profile::of(&ground, &meters(&hobnail_core::plan::flatten::flatten(&street.line)));
        let mut steepest: Option<(f64, (f64, f64))> = None;
        let ends = profile.places.iter().zip(profile.places.iter().skip(1));
        for (grade, (from, to)) in profile.grades_percent().zip(ends) {
            let passed = limits
                .iter()
                .take(count)
                .filter(|limit| is_steeper(grade, **limit))
                .count();
            let Some(class) = passed.checked_sub(1).and_then(|place| STEEP.get(place)) else {
                continue;
            };
            match scene.bands.last_mut() {
                Some((line, held)) if *held == *class && line.last() == Some(from) => line.push(*to),
                _ => scene.bands.push((vec![*from, *to], *class)),
            }
            if steepest.is_none_or(|(most, _)| grade.abs() > most) {
                steepest = Some((grade.abs(), (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1))));
            }
        }
        for (length_m, limit) in lengths_m.iter_mut().zip(limits).take(count) {
            *length_m += profile.steeper_m(limit);
        }
        scene
            .tags
            .extend(steepest.map(|(grade, at)| (at, say!("heights-percent", grade = format!("{grade:.1}")))));
    }
    lengths_m
}

/// Bands along every street that is there, with the number of its class once on each.
fn band(study: &Study, scene: &mut Scene, class_of: &dyn Fn(&hobnail_core::plan::Street) -> Option<u8>) {
    let seen = study.seen();
    let marks = seen.alternatives.get(&study.alternative()).map(|found| &found.marks);
    for street in marks
        .into_iter()
        .flat_map(|marks| marks.values())
        .filter_map(Drawn::as_street)
    {
        if street.status == Status::Removed {
            continue;
        }
        let Some(class) = class_of(street) else { continue };
        let line = meters(&hobnail_core::plan::flatten::flatten(&street.line));
        let middle = line
            .get(line.len() / 2)
            .zip(line.get((line.len() / 2).saturating_sub(1)));
        scene.tags.extend(middle.map(|(one, other)| {
            let at = (f64::midpoint(one.0, other.0), f64::midpoint(one.1, other.1));
            (at, (class + 1).to_string())
        }));
        scene.bands.push((line, class));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::exchange::plan_file;

    fn village() -> Study {
        let text = include_str!("../../../sample-sketches/compact-village.geojson");
        Study::open(plan_file::read(text.as_bytes()).unwrap().document).unwrap()
    }

    fn laid(study: &Study, map: Map) -> (Scene, Legend) {
        let mut scene = Scene::default();
        let legend = lay(study, map, &mut scene).unwrap();
        (scene, legend)
    }

    fn homes(legend: &Legend) -> u32 {
        let values = legend.lines.iter().filter_map(|line| line.value.as_ref());
        values
            .map(|value| value.split(' ').next().unwrap().parse::<u32>().unwrap())
            .sum()
    }

    #[test]
    fn the_homes_of_all_classes_are_the_homes_of_the_plan() {
        let study = village();
        let index = study.graph().index("homes.count").unwrap();
        let all = study
            .evaluation_for(index)
            .value("homes.count")
            .unwrap()
            .number()
            .unwrap();
        for map in [Map::Density, Map::Phases] {
            let (scene, legend) = laid(&study, map);
            assert_eq!(homes(&legend), all as u32, "{map:?}");
            assert!(legend.lines.len() > 1 && !scene.washes.is_empty() && scene.is_bare);
        }
    }

    #[test]
    fn every_street_has_the_class_of_its_section() {
        let study = village();
        let (scene, legend) = laid(&study, Map::Sections);
        assert!(!scene.is_bare && scene.bands.len() == scene.tags.len());
        let named: Vec<&str> = legend.lines.iter().map(|line| line.words.as_str()).collect();
        assert!(named.contains(&"Neighborhood street"), "{named:?}");
        let Mark::Class(Scale::Kinds, class) = legend.lines[0].mark else {
            panic!("{:?}", legend.lines[0])
        };
        assert!(scene.bands.iter().any(|(_, held)| *held == class));
    }

    #[test]
    fn what_is_not_drawn_is_said() {
        let (scene, legend) = laid(&village(), Map::Owners);
        assert_eq!((scene.washes.len(), legend.lines.len()), (0, 0));
        assert_eq!(legend.note.as_deref(), Some("Nothing of this is drawn yet."));
        assert!(lay(&village(), Map::Plain, &mut Scene::default()).is_none());
    }

    #[test]
    fn a_density_beside_a_limit_is_written_on_its_own_side() {
        let limits = &LIMITS[1];
        for (density, words) in [
            (39.8, "40"),
            (40.0, "40"),
            (40.3, "40.3"),
            (40.04, "40.04"),
            (27.4, "27"),
            (7.96, "8.0"),
            (8.02, "8.02"),
            (3.26, "3.3"),
        ] {
            assert_eq!(digits_of(density, limits), words);
        }
    }

    #[test]
    fn classes_of_density_follow_one_another_in_words() {
        let mut document = village().document().clone();
        document.settings.units = UnitSystem::UsCustomary;
        let words: Vec<String> = (0..6).map(|class| title(&document, Map::Density, class)).collect();
        assert_eq!(words[0], "up to 4 homes/acre");
        assert_eq!(words[1], "over 4 to 8 homes/acre");
        assert_eq!(words[5], "over 40 homes/acre");
    }
}
