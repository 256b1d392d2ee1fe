//! Painted land along the streets it fronts on: where each building type's land lies, and from where people walk.
//!
//! For each face with a use: a side that has a building type of its own takes land to that type's lot depth along its
//! length, at most its share of the face's buildable land; the program's portions share out what remains. Land is spread
//! evenly over the sides lots front on (those without a type of their own, or all of them where none is left).
//! Walking starts at the lot front, on the street's centerline.
//!
//! Not counted: corners where two sides meet, and whole lots; lots are land by the typical lot.

use crate::fabric::sides::{Side, lots_front, side_spoken_of};
use crate::fabric::{Fabric, FaceId, FaceOfLand};
use crate::network::{LinkId, Stretch};
use crate::plan::{AlternativeId, BuildingTypeId, Document, MarkId, PhaseId, SideUse, UseMark};

/// The land of one face.
#[derive(Clone, Debug, PartialEq)]
pub struct PaintedFace {
    /// The face.
    pub face: FaceId,
    /// The mark that says what it is used for.
    pub mark: MarkId,
    /// The phase it is built in; `None` for the first.
    pub phase: Option<PhaseId>,
    /// Land in square meters by building type, in the order of the palette, without empty ones.
    pub land_m2: Vec<(BuildingTypeId, f64)>,
    /// Lots by building type, in the order of the palette, without empty ones.
    pub lots: Vec<(BuildingTypeId, f64)>,
    /// Where those lots front; lots missing here are on land no street reaches.
    pub fronts: Vec<FrontedLots>,
}

/// Lots that front on one stretch of street.
#[derive(Clone, Debug, PartialEq)]
pub struct FrontedLots {
    /// The stretch.
    pub stretch: Stretch,
    /// How many lots by building type.
    pub lots: Vec<(BuildingTypeId, f64)>,
}

/// The painted faces in the site, in order of the fabric's faces.
#[must_use]
pub fn painted_faces(document: &Document, alternative: AlternativeId, fabric: &Fabric) -> Vec<PaintedFace> {
    let used = fabric
        .used_faces(document, alternative)
        .filter(|(face, ..)| face.is_in_site);
    used.map(|(face, mark, use_mark)| painted_face(document, fabric, face, mark, use_mark))
        .collect()
}

fn painted_face(
    document: &Document,
    fabric: &Fabric,
    face: &FaceOfLand,
    mark: MarkId,
    use_mark: &UseMark,
) -> PaintedFace {
    let mut said: Vec<Option<&SideUse>> = vec![None; face.sides.len()];
    for side_use in &use_mark.sides {
        if let Some(side) = side_spoken_of(&fabric.arrangement, &fabric.lines, &face.sides, side_use) {
            said[side].get_or_insert(side_use);
        }
    }
    let own = sides_with_own_land(document, face, &said);
    let own_m2: f64 = own.iter().map(|(.., land_m2)| land_m2).sum();
    let rest_m2 = (face.land_m2() - own_m2).max(0.0);
    let program: Vec<(BuildingTypeId, f64)> = use_mark
        .program
        .iter()
        .map(|portion| (portion.building_type, rest_m2 * f64::from(portion.share_ppm) / 1e6))
        .collect();
    let fronting: Vec<usize> = (0..face.sides.len())
        .filter(|side| lots_front(&fabric.lines, &face.sides[*side], said[*side]))
        .collect();
    let free: Vec<usize> = fronting
        .iter()
        .copied()
        .filter(|side| !own.iter().any(|(held, ..)| held == side))
        .collect();
    let program_sides = if free.is_empty() { fronting } else { free };

    let mut fronts = Vec::new();
    for (side, building_type, land_m2) in &own {
        let lots = lots_on(document, *building_type, *land_m2);
        spread(fabric, &face.sides, &[*side], &[(*building_type, lots)], &mut fronts);
    }
    let program_lots: Vec<(BuildingTypeId, f64)> = program
        .iter()
        .map(|(building_type, land_m2)| (*building_type, lots_on(document, *building_type, *land_m2)))
        .filter(|(_, lots)| *lots > 0.0)
        .collect();
    spread(fabric, &face.sides, &program_sides, &program_lots, &mut fronts);
    let own_land = own.iter().map(|(_, building_type, land_m2)| (*building_type, *land_m2));
    let own_lots = own_land
        .clone()
        .map(|(building_type, land_m2)| (building_type, lots_on(document, building_type, land_m2)));
    PaintedFace {
        face: face.id,
        mark,
        phase: use_mark.phase,
        land_m2: summed(own_land.chain(program)),
        lots: summed(own_lots.chain(program_lots)),
        fronts,
    }
}

/// Lots of a building type on some land; none of a type that nothing is built of.
fn lots_on(document: &Document, building_type: BuildingTypeId, land_m2: f64) -> f64 {
    let held = document.building_types.get(&building_type);
    let built = held.filter(|held| !held.stories.is_empty() && held.lot_area_mm2() > 0);
    built.map_or(0.0, |held| land_m2 / (held.lot_area_mm2() as f64 / 1e6))
}

/// Sides with a building type of their own that lots front on: the side, the type and its land in square meters.
fn sides_with_own_land(
    document: &Document,
    face: &FaceOfLand,
    said: &[Option<&SideUse>],
) -> Vec<(usize, BuildingTypeId, f64)> {
    let mut own: Vec<(usize, BuildingTypeId, f64)> = Vec::new();
    for (index, (side, said)) in face.sides.iter().zip(said).enumerate() {
        let Some(said) = said else { continue };
        let Some(id) = said.building_type else { continue };
        let Some(building_type) = document.building_types.get(&id) else {
            continue;
        };
        if said.fronting == crate::plan::land::Fronting::Front {
            let depth_m = f64::from(building_type.lot_depth_mm) / 1e3;
            own.push((index, id, side.length_um as f64 / 1e6 * depth_m));
        }
    }
    // Where the sides together ask for more than there is, each gets its share.
    let asked_m2: f64 = own.iter().map(|(.., land_m2)| land_m2).sum();
    let land_m2 = face.land_m2();
    if asked_m2 > land_m2 {
        own.iter_mut().for_each(|(.., held_m2)| *held_m2 *= land_m2 / asked_m2);
    }
    own
}

/// Spreads lots evenly over the length of some sides; with no side to front on, they front nowhere.
fn spread(
    fabric: &Fabric,
    sides: &[Side],
    chosen: &[usize],
    lots: &[(BuildingTypeId, f64)],
    fronts: &mut Vec<FrontedLots>,
) {
    let stretches: Vec<Stretch> = chosen
        .iter()
        .flat_map(|side| stretches_of(fabric, &sides[*side]))
        .collect();
    let total_um: u64 = stretches.iter().map(|stretch| stretch.length_um()).sum();
    if total_um == 0 || lots.is_empty() {
        return;
    }
    for stretch in stretches {
        let share = stretch.length_um() as f64 / total_um as f64;
        let part = lots
            .iter()
            .map(|(building_type, lots)| (*building_type, lots * share))
            .collect();
        fronts.push(FrontedLots { stretch, lots: part });
    }
}

/// The stretches of links along a side, neighbors on one link joined.
#[must_use]
pub fn stretches_of(fabric: &Fabric, side: &Side) -> Vec<Stretch> {
    let mut stretches: Vec<Stretch> = Vec::new();
    for half_edge in &side.half_edges {
        let Some((link, from_um, to_um)) = fabric.links.piece_of(*half_edge) else {
            continue;
        };
        let link = LinkId(link);
        match stretches.last_mut() {
            Some(last) if last.link == link && last.to_um == from_um => last.to_um = to_um,
            Some(last) if last.link == link && last.from_um == to_um => last.from_um = from_um,
            _ => stretches.push(Stretch { link, from_um, to_um }),
        }
    }
    stretches
}

fn summed(parts: impl Iterator<Item = (BuildingTypeId, f64)>) -> Vec<(BuildingTypeId, f64)> {
    let mut sums = std::collections::BTreeMap::new();
    for (building_type, land_m2) in parts {
        *sums.entry(building_type).or_insert(0.0) += land_m2;
    }
    sums.into_iter().filter(|(_, land_m2)| *land_m2 > 0.0).collect()
}
