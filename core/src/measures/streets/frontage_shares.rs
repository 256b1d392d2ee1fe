//! What fronts on the streets: homes, shops and work, civic buildings, green, or nothing.
//!
//! Frontage is every side of the streets inside, alleys and paths aside, that lies in the site, along the centerline. A
//! run of lots takes up its lots' widths, at most the stretch it fronts on; what kind it is says the ground floor of its
//! building type. What lots leave of a block's sides goes to its green land, by that land's share of the block; the rest
//! fronts nothing. Lots that stand with their side or rear to a street do not front on it.

use super::site_streets::{SiteStreets, Way, faces_in_site};
use crate::fabric::Fabric;
use crate::measures::frontage::{Painted, PaintedFace};
use crate::measures::palette::Palette;
use crate::plan::{BuildingType, Document, FloorUse, LandUse};
use crate::say;

/// How many [`fronting`] there are.
pub const FRONTING: usize = 5;

/// What may front on a street, in the order of the axis `fronting`.
#[must_use]
pub fn fronting() -> [(&'static str, &'static str); FRONTING] {
    [
        ("homes", say!("measures-fronts-homes")),
        ("shops_and_work", say!("measures-fronts-shops-work")),
        ("civic", say!("measures-fronts-civic")),
        ("green", say!("measures-fronts-green")),
        ("nothing", say!("measures-fronts-nothing")),
    ]
}

const HOMES: usize = 0;
const SHOPS_AND_WORK: usize = 1;
const CIVIC: usize = 2;
const GREEN: usize = 3;
const NOTHING: usize = 4;

/// Street frontage in meters by what fronts, in the order of [`fronting`]. Cost: linear.
#[must_use]
pub fn frontage_m(document: &Document, fabric: &Fabric, streets: &SiteStreets, painted: &Painted) -> [f64; FRONTING] {
    let in_site = faces_in_site(fabric);
    // Of every face the sides that count, in micrometers.
    let mut sides_um = vec![0_u64; in_site.len()];
    for (place, link) in streets.inside().filter(|(_, link)| link.way == Way::Street) {
        // Links end at every vertex where faces change, so all of a link has one face on either hand.
        let first = fabric.links.links[place as usize].half_edges.first();
        for side in first.into_iter().flat_map(|first| [*first, first.twin()]) {
            let face = fabric.arrangement.face(side).0 as usize;
            if in_site[face] {
                sides_um[face] += link.length_um;
            }
        }
    }
    let total_m = sides_um.iter().sum::<u64>() as f64 / 1e6;
    let mut fronting_m = [0.0; FRONTING];
    for face in painted.iter() {
        let side_m = sides_um[face.face.0 as usize] as f64 / 1e6;
        let taken_m = add_lots(&painted.palette, fabric, face, &mut fronting_m);
        let all_m2: f64 = fabric.face(face.face).map_or(0.0, crate::fabric::FaceOfLand::land_m2);
        let green_m2: f64 = face
            .land_m2
            .iter()
            .filter(|(id, _)| {
                document
                    .building_types
                    .get(id)
                    .is_some_and(|held| kind_of(held) == GREEN)
            })
            .map(|(_, land_m2)| land_m2)
            .sum();
        if all_m2 > 0.0 {
            fronting_m[GREEN] += (side_m * (green_m2 / all_m2).min(1.0)).min((side_m - taken_m).max(0.0));
        }
    }
    let named_m: f64 = fronting_m.iter().sum();
    fronting_m[NOTHING] = (total_m - named_m).max(0.0);
    fronting_m
}

/// Adds what the lots of a face take up of streets that count, and gives back how much that is.
fn add_lots(palette: &Palette, fabric: &Fabric, face: &PaintedFace, fronting_m: &mut [f64]) -> f64 {
    let mut taken_m = 0.0;
    for front in &face.fronts {
        let link = fabric.links.links.get(front.stretch.link.0 as usize);
        let line = link.map(|link| &fabric.lines.streets[link.street as usize]);
        let counts = line.is_some_and(|line| {
            !line.is_outside
                && !matches!(
                    line.role,
                    crate::plan::StreetRole::Alley | crate::plan::StreetRole::Path
                )
        });
        if !counts {
            continue;
        }
        let widths_m = || {
            front.lots.iter().filter_map(|(id, count)| {
                let held = palette.get(*id)?;
                Some((kind_of(held), count * f64::from(held.lot_width_mm) / 1e3))
            })
        };
        let all_m: f64 = widths_m().map(|(_, width_m)| width_m).sum();
        let room_m = front.stretch.length_um() as f64 / 1e6;
        let scale = if all_m > room_m { room_m / all_m } else { 1.0 };
        for (kind, width_m) in widths_m() {
            fronting_m[kind] += width_m * scale;
            taken_m += width_m * scale;
        }
    }
    taken_m
}

/// What a building type is to the street it fronts on, by its ground floor, or by its land where nothing is built.
fn kind_of(building_type: &BuildingType) -> usize {
    match building_type.stories.first().map(|story| story.floor_use) {
        Some(FloorUse::Home) => HOMES,
        Some(FloorUse::Work | FloorUse::Shop) => SHOPS_AND_WORK,
        Some(FloorUse::Learning | FloorUse::Gathering) => CIVIC,
        Some(FloorUse::Parking) | None => match building_type.land_use {
            LandUse::Residential => HOMES,
            LandUse::Business | LandUse::Industrial => SHOPS_AND_WORK,
            LandUse::Civic => CIVIC,
            LandUse::Leisure | LandUse::Natural => GREEN,
        },
    }
}
