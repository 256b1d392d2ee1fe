//! Painted land along the streets it fronts on: which lots there are, and from where people walk.
//!
//! For each face with a use its lots are laid ([`crate::fabric::lots`]) by the program, by what is said of its sides and
//! by what fences and property lines ask of the lots beside them.
//! Land is the program's share of the face's buildable land, after the lots of sides with a building type of their own.
//! Walking starts at the lot front, on the street's centerline.
//!
//! Not counted: lots on land no street reaches, since they can not be laid; that land is the rest of [`PaintedLand::laid`].

use std::borrow::Cow;
use std::sync::Arc;

use crate::fabric::kept::Kept;
use crate::fabric::land::Land;
use crate::fabric::lots::{Facing, LaidLots, LineBeside, Lot, lay, lot_type};
use crate::fabric::sides::Side;
use crate::fabric::{Fabric, FaceId, FaceOfLand};
use crate::measures::palette::{Palette, Said};
use crate::measures::soft::{SoftAreas, portions};
use crate::network::{LinkId, Stretch};
use crate::order::OrderedMap;
use crate::plan::land::Portion;
use crate::plan::{AlternativeId, BuildingTypeId, Document, Mark, MarkId, PhaseId, SideUse};

/// Every painted face, with the building types its lots are of.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Painted {
    /// The building types as built.
    pub palette: Palette,
    /// The faces in the site with a use, in order of the fabric's faces.
    pub faces: Vec<PaintedFace>,
}

impl Painted {
    /// Homes on the lots of one of these faces: lots by building type as built, times the homes on one.
    #[must_use]
    pub fn homes_on(&self, face: &PaintedFace) -> f64 {
        let homes = face.lots.iter().map(|(id, lots)| {
            let held = self.palette.get(*id);
            held.map_or(0.0, |held| lots * f64::from(held.homes_per_lot))
        });
        homes.sum()
    }

    /// Homes by land of one of these faces, streets left out: homes on its lots ÷ its painted land, in homes per square
    /// meter; `None` where no homes stand.
    #[must_use]
    pub fn homes_by_land(&self, face: &PaintedFace) -> Option<f64> {
        let land_m2: f64 = face.land_m2.iter().map(|(_, land_m2)| land_m2).sum();
        let homes = self.homes_on(face);
        (homes > 0.0 && land_m2 > 0.0).then(|| homes / land_m2)
    }
}

impl std::ops::Deref for Painted {
    type Target = [PaintedFace];

    fn deref(&self) -> &[PaintedFace] {
        &self.faces
    }
}

/// The land of one face.
#[derive(Clone, Debug, PartialEq)]
pub struct PaintedFace {
    /// The face.
    pub face: FaceId,
    /// The use mark or soft area that says what it is used for.
    pub mark: MarkId,
    /// The phase it is built in; `None` for the first.
    pub phase: Option<PhaseId>,
    /// Its lots, and its land by what is built on it.
    pub land: Arc<PaintedLand>,
    /// Where those lots front.
    pub fronts: Vec<FrontedLots>,
}

impl std::ops::Deref for PaintedFace {
    type Target = PaintedLand;

    fn deref(&self) -> &PaintedLand {
        &self.land
    }
}

/// The land of one face wherever it lies among the links.
#[derive(Clone, Debug, PartialEq)]
pub struct PaintedLand {
    /// Land in square meters by building type, in the order of the palette, without empty ones.
    pub land_m2: Vec<(BuildingTypeId, f64)>,
    /// Lots by building type as built, in the order of [`Painted::palette`], without empty ones. Whole, but for types without homes that
    /// fit nowhere whole.
    pub lots: Vec<(BuildingTypeId, f64)>,
    /// Land within those lots in square meters by building type as built.
    pub lot_land_m2: Vec<(BuildingTypeId, f64)>,
    /// The lots as laid, and the land that is in none.
    pub laid: LaidLots,
    /// The building type of each of those lots, as built.
    pub built: Vec<BuildingTypeId>,
    /// Lots of one type side by side, in their order.
    runs: Vec<LotRun>,
}

impl PaintedLand {
    /// Whether everything the land is painted with stands on lots, so that land in no lot is left over; parks and fields
    /// are never divided.
    #[must_use]
    pub fn is_for_lots(&self, document: &Document) -> bool {
        let mut held = self.land_m2.iter().filter_map(|(id, _)| lot_type(document, *id));
        held.all(|held| held.is_built)
    }
}

/// Lots of one type side by side along one side of a face.
#[derive(Clone, Copy, Debug, PartialEq)]
struct LotRun {
    side: u32,
    /// From where to where along the side; `None` at the head of the dead end at its end.
    along_um: Option<[u64; 2]>,
    /// As built.
    building_type: BuildingTypeId,
    /// How many lots.
    count: f64,
}

/// Lots that front on one stretch of street.
#[derive(Clone, Debug, PartialEq)]
pub struct FrontedLots {
    /// The stretch.
    pub stretch: Stretch,
    /// How many lots, of which building type as built: lots of one type alone make a stretch.
    pub lots: [(BuildingTypeId, f64); 1],
}

/// The painted land of faces, kept from one fabric to the next under all it depends on.
///
/// That is written down as a list of integers and compared exactly; land that has not changed is the same land in
/// memory.
#[derive(Clone, Debug, Default)]
pub struct PaintedCache {
    known: Kept<Known>,
    /// Memory for the key at hand, and for one side.
    key: Vec<i32>,
    pieces: Vec<SidePiece>,
    stretches: Vec<Stretch>,
}

/// Painted land and the land it was laid on. Holding the land keeps its place in memory its own.
#[derive(Clone, Debug)]
struct Known {
    land: Arc<PaintedLand>,
    _on: Arc<Land>,
}

/// The faces in the site with a use of their own or of the soft area around them, in order of the fabric's faces. Lots
/// that `cache` knows are taken from it.
#[must_use]
pub fn painted_faces(
    document: &Document,
    alternative: AlternativeId,
    fabric: &Fabric,
    cache: &mut PaintedCache,
) -> Painted {
    let mut painted = Painted::default();
    painted.renew(document, alternative, fabric, cache);
    painted
}

impl Painted {
    /// Brings the painted faces up to the fabric; the result equals [`painted_faces`].
    pub fn renew(
        &mut self,
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        cache: &mut PaintedCache,
    ) {
        self.palette = Palette::of(document, alternative);
        let soft_areas = SoftAreas::of(document, alternative);
        let none = OrderedMap::new();
        let held = document.alternatives.get(&alternative);
        let marks = held.map_or(&none, |held| &held.marks);
        let beside = LineBeside::all(&mut marks.values());
        let mut count = 0;
        for face in fabric.faces.iter().filter(|face| face.is_in_site) {
            let Some(land_use) = FaceUse::of(marks, &soft_areas, face) else {
                continue;
            };
            let facing = Facing::of(document, fabric, face, &land_use.program, land_use.sides, &beside);
            let land = cache.land(&self.palette, face, &facing, &land_use);
            // The last fronts' memory serves again.
            let last = self.faces.get_mut(count);
            let mut fronts = last.map(|held| std::mem::take(&mut held.fronts)).unwrap_or_default();
            cache.add_fronts(fabric, face, &land, &mut fronts);
            let painted = PaintedFace {
                face: face.id,
                mark: land_use.mark,
                phase: land_use.phase,
                land,
                fronts,
            };
            match self.faces.get_mut(count) {
                Some(held) => *held = painted,
                None => self.faces.push(painted),
            }
            count += 1;
        }
        self.faces.truncate(count);
        cache.known.end_round();
    }
}

/// What a face is used for: a use mark of its own, or what a soft area hands over.
struct FaceUse<'a> {
    mark: MarkId,
    phase: Option<PhaseId>,
    program: Cow<'a, [Portion]>,
    sides: &'a [SideUse],
}

impl<'a> FaceUse<'a> {
    fn of(marks: &'a OrderedMap<MarkId, Mark>, soft_areas: &SoftAreas<'a>, face: &FaceOfLand) -> Option<Self> {
        if let Some(id) = face.use_mark {
            let held = marks.get(&id)?.as_use()?;
            return Some(Self {
                mark: id,
                phase: held.phase,
                program: Cow::Borrowed(&held.program),
                sides: &held.sides,
            });
        }
        let (id, area) = soft_areas.inherited_by(face)?;
        Some(Self {
            mark: id,
            phase: area.phase,
            program: Cow::Owned(portions(area)),
            sides: &[],
        })
    }
}

impl PaintedCache {
    /// The land of a face, as known where nothing it depends on has changed.
    fn land(
        &mut self,
        palette: &Palette,
        face: &FaceOfLand,
        facing: &Facing<'_>,
        land_use: &FaceUse<'_>,
    ) -> Arc<PaintedLand> {
        let mut key = std::mem::take(&mut self.key);
        key.clear();
        let on = Arc::clone(&face.land);
        let place = Arc::as_ptr(&on).addr() as u64;
        key.extend([(place >> 32) as u32, place as u32].map(u32::cast_signed));
        key.push(land_use.program.len() as i32);
        for portion in land_use.program.iter() {
            key.extend([portion.building_type.0, portion.share_ppm].map(u32::cast_signed));
        }
        // How lots are built along the sides of which something is said and beside lines, after how many words that takes.
        let start = key.len();
        key.push(0);
        let add_built = |key: &mut Vec<i32>, said: Said, own: Option<BuildingTypeId>| {
            for limit in facing.limits().chain([None]) {
                let program = land_use.program.iter().map(|portion| portion.building_type);
                let built = |id| palette.built(id, said.at_most(limit)).0.cast_signed();
                key.extend(program.chain(own).map(built));
            }
        };
        if facing.limits().next().is_some() {
            add_built(&mut key, Said::default(), None);
        }
        for (side, said) in facing.said() {
            key.push(side.cast_signed());
            add_built(&mut key, Said::of(said), said.building_type);
        }
        key[start] = (key.len() - start) as i32;
        facing.add_words(&mut key);
        let known = self.known.get_or(&key, || Known {
            land: Arc::new(painted_land(palette, face, facing, land_use)),
            _on: on,
        });
        self.key = key;
        known.land
    }
}

fn painted_land(palette: &Palette, face: &FaceOfLand, facing: &Facing<'_>, land_use: &FaceUse<'_>) -> PaintedLand {
    let own: Vec<u32> = facing.own_sides().collect();
    let laid = lay(&facing.key());
    // Mostly nothing is said of any side, and then of no lot.
    let has_said = !land_use.sides.is_empty();
    let said_of = |lot: &Lot| has_said.then(|| facing.said_of(lot.side)).flatten();
    let said = |lot: &Lot| {
        let of_side = said_of(lot).map(Said::of).unwrap_or_default();
        of_side.at_most(facing.stories_beside(lot))
    };
    let as_built = laid.lots.iter().map(|lot| palette.built(lot.building_type, said(lot)));
    let built: Vec<BuildingTypeId> = as_built.collect();
    let lots = || built.iter().copied().zip(&laid.lots);
    let area_m2 = |lot: &Lot| lot.twice_area_mm2 as f64 / 2e6;
    let on_own_sides = || laid.lots.iter().filter(|lot| own.contains(&lot.side));
    let own_m2: f64 = on_own_sides().map(area_m2).sum();
    let rest_m2 = (face.land_m2() - own_m2).max(0.0);
    let program = land_use
        .program
        .iter()
        .map(|portion| (portion.building_type, rest_m2 * f64::from(portion.share_ppm) / 1e6));
    let land = on_own_sides().map(|lot| (lot.building_type, area_m2(lot)));
    PaintedLand {
        land_m2: summed(land.chain(program)),
        lots: summed(lots().map(|(id, lot)| (id, count_of(lot)))),
        lot_land_m2: summed(lots().map(|(id, lot)| (id, area_m2(lot)))),
        runs: runs_of(&laid.lots, &built),
        laid,
        built,
    }
}

fn count_of(lot: &Lot) -> f64 {
    f64::from(lot.counts_ppm) / 1e6
}

impl PaintedCache {
    /// Puts the stretches lots front on in place of `fronts`. A run of lots of one type side by side is one stretch,
    /// its lots spread evenly over it.
    fn add_fronts(&mut self, fabric: &Fabric, face: &FaceOfLand, land: &PaintedLand, fronts: &mut Vec<FrontedLots>) {
        fronts.clear();
        let Self { pieces, stretches, .. } = self;
        let mut pieces_of = None;
        for run in &land.runs {
            let Some(side) = face.sides.get(run.side as usize) else {
                continue;
            };
            // Lots come side by side: a side's pieces are worked once.
            if pieces_of != Some(run.side) {
                pieces_of_side(fabric, side, pieces);
                pieces_of = Some(run.side);
            }
            let [from_um, to_um] = run.along_um.unwrap_or([side.length_um; 2]);
            add_stretches_between(pieces, from_um, to_um, stretches);
            let total_um: u64 = stretches.iter().map(|stretch| stretch.length_um()).sum();
            let shares = stretches.len() as f64;
            for stretch in stretches.drain(..) {
                let share = if total_um > 0 {
                    stretch.length_um() as f64 / total_um as f64
                } else {
                    1.0 / shares
                };
                fronts.push(FrontedLots {
                    stretch,
                    lots: [(run.building_type, run.count * share)],
                });
            }
        }
    }
}

fn runs_of(lots: &[Lot], built: &[BuildingTypeId]) -> Vec<LotRun> {
    let mut runs = Vec::new();
    let mut at = 0;
    while let Some(first) = lots.get(at) {
        let begin = at;
        let (mut last, building_type) = (first, built[at]);
        at += 1;
        while let Some(next) = lots.get(at).filter(|next| {
            next.side == first.side
                && built.get(at) == Some(&building_type)
                && !next.is_at_head
                && !first.is_at_head
                && next.front_um[0] == last.front_um[1]
        }) {
            last = next;
            at += 1;
        }
        runs.push(LotRun {
            side: first.side,
            along_um: (!first.is_at_head).then_some([first.front_um[0], last.front_um[1]]),
            building_type,
            count: lots[begin..at].iter().map(count_of).sum(),
        });
    }
    runs
}

/// One half-edge of a side on its link.
#[derive(Clone, Debug)]
struct SidePiece {
    /// From where to where along the side, in micrometers.
    along_um: [u64; 2],
    link: LinkId,
    /// Where along the link the piece begins and ends, as one walks along the side.
    on_link_um: [u64; 2],
}

fn pieces_of_side(fabric: &Fabric, side: &Side, pieces: &mut Vec<SidePiece>) {
    pieces.clear();
    let mut start_um = 0;
    for half_edge in side.half_edges.iter() {
        let length_um = fabric.arrangement.length_um(half_edge.edge());
        if let Some((link, from_um, to_um)) = fabric.links.piece_of(*half_edge) {
            let is_along = fabric.links.runs_along(*half_edge);
            pieces.push(SidePiece {
                along_um: [start_um, start_um + length_um],
                link: LinkId(link),
                on_link_um: if is_along { [from_um, to_um] } else { [to_um, from_um] },
            });
        }
        start_um += length_um;
    }
}

/// Adds the stretches of links between two places along a side to an empty list, neighbors on one link joined.
fn add_stretches_between(pieces: &[SidePiece], from_um: u64, to_um: u64, stretches: &mut Vec<Stretch>) {
    let is_place = from_um == to_um;
    for piece in pieces {
        let (low, high) = (from_um.max(piece.along_um[0]), to_um.min(piece.along_um[1]));
        if low > high || (low == high && !is_place) {
            continue;
        }
        let on_link = |along_um: u64| {
            let into_um = along_um - piece.along_um[0];
            if piece.on_link_um[0] <= piece.on_link_um[1] {
                (piece.on_link_um[0] + into_um).min(piece.on_link_um[1])
            } else {
                piece.on_link_um[0].saturating_sub(into_um).max(piece.on_link_um[1])
            }
        };
        let (a, b) = (on_link(low), on_link(high));
        let (from_um, to_um) = (a.min(b), a.max(b));
        match stretches.last_mut() {
            Some(last) if last.link == piece.link && last.to_um == from_um => last.to_um = to_um,
            Some(last) if last.link == piece.link && last.from_um == to_um => last.from_um = from_um,
            _ => stretches.push(Stretch {
                link: piece.link,
                from_um,
                to_um,
            }),
        }
        if is_place {
            break;
        }
    }
}

/// The stretches of links one lot fronts on; a single place for a lot at the head of a dead end.
#[must_use]
pub fn front_of_lot(fabric: &Fabric, face: &FaceOfLand, lot: &Lot) -> Vec<Stretch> {
    let Some(side) = face.sides.get(lot.side as usize) else {
        return Vec::new();
    };
    let mut pieces = Vec::new();
    pieces_of_side(fabric, side, &mut pieces);
    let [from_um, to_um] = if lot.is_at_head {
        [side.length_um; 2]
    } else {
        lot.front_um
    };
    let mut stretches = Vec::new();
    add_stretches_between(&pieces, from_um, to_um, &mut stretches);
    stretches
}

/// The stretches of links along a side, neighbors on one link joined.
#[must_use]
pub fn stretches_of(fabric: &Fabric, side: &Side) -> Vec<Stretch> {
    let mut stretches: Vec<Stretch> = Vec::new();
    for half_edge in side.half_edges.iter() {
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
    let mut sums: Vec<(BuildingTypeId, f64)> = Vec::new();
    for (building_type, amount) in parts {
        // A face holds few types, and lots of one type come one after another.
        let place = match sums.iter().rposition(|(held, _)| *held <= building_type) {
            Some(place) if sums[place].0 == building_type => place,
            before => {
                let place = before.map_or(0, |before| before + 1);
                sums.insert(place, (building_type, 0.0));
                place
            }
        };
        sums[place].1 += amount;
    }
    sums.retain(|(_, amount)| *amount > 0.0);
    sums
}
