//! Where the walk to each destination ends: places drawn, lots that hold enough of a use, and what lies outside.
//!
//! A daily need is met at
//! - a place of its kind (shops: a shop; learning: a school; gathering: a community hall or clinic), however small;
//! - lots that together hold at least its minimum: those of one block face, or those along one street between
//!   intersections, both sides together, with no gap of more than [`LONGEST_GAP_UM`]; jobs of any kind but at home are
//!   work, as many as the building types say;
//! - what lies outside the site and holds at least the minimum (homes, jobs or shop floor).
//!
//! The need for homes is met where other homes are: neighbors within a walk, at least the minimum together.
//! A park or square is a place of that kind of at least its own least size, or a block face with at least the minimum
//! of open land, entered from any street around it. A school is a place of that kind or enough floor for learning.
//! Lots count as sure whatever their phase; of places those hoped for are not.

use super::destinations::Destination;
use super::settings::{NEED_MINIMUMS, PARK_MINIMUM, SCHOOL_MINIMUM};
use crate::fabric::Fabric;
use crate::measures::frontage::{Painted, PaintedFace, stretches_of};
use crate::measures::palette::BuiltType;
use crate::measures::place_sources::Doorsteps;
use crate::measures::walk_network::WalkNetwork;
use crate::network::{LinkId, Source, SourcePlace, Stretch};
use crate::order;
use crate::plan::building::LandUse;
use crate::plan::land::OutsideContext;
use crate::plan::{
    AlternativeId, BuildingTypeId, Certainty, Document, FloorUse, Footprint, Mark, Place, PlaceKind, PlanPoint,
};

/// The longest gap between lots that still count as together: 30 m, a street corner or a small square. Larger joins
/// what nobody sees as one place; smaller parts the two sides of an entrance.
pub const LONGEST_GAP_UM: u64 = 30_000_000;

/// How many amounts a front has: one for each need.
const NEEDS: usize = Destination::NEEDS.len();

/// What one front holds of each need, in their order: homes, jobs, floor for shops, learning and gathering.
pub type Amounts = [f64; NEEDS];

/// A front with what stands on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Front {
    /// Where it is, on the links of the fabric.
    pub stretch: Stretch,
    /// Which painted face it belongs to.
    pub face: usize,
    /// What it holds.
    pub amounts: Amounts,
}

/// The fronts of all painted faces, in order of link and position.
#[must_use]
pub fn fronts(painted: &Painted) -> Vec<Front> {
    let per_lot: Vec<Amounts> = painted
        .palette
        .iter()
        .map(|BuiltType { held, .. }| {
            let floor = |floor_use| held.floor_area_m2(floor_use) as f64;
            [
                f64::from(held.homes_per_lot),
                held.jobs_per_lot_ten_thousandths() as f64 / 1e4,
                floor(FloorUse::Shop),
                floor(FloorUse::Learning),
                floor(FloorUse::Gathering),
            ]
        })
        .collect();
    let mut fronts: Vec<Front> = Vec::with_capacity(painted.iter().map(|held| held.fronts.len()).sum());
    for (face, held) in painted.iter().enumerate() {
        for front in &held.fronts {
            let mut amounts = [0.0; NEEDS];
            for (id, lots) in &front.lots {
                let Some(place) = painted.palette.place(*id) else {
                    continue;
                };
                for (sum, amount) in amounts.iter_mut().zip(&per_lot[place]) {
                    *sum += lots * amount;
                }
            }
            fronts.push(Front {
                stretch: front.stretch,
                face,
                amounts,
            });
        }
    }
    in_order(fronts)
}

/// Fronts in order of link, position and face: laid by their links, then sorted among the few of each. Cost: linear.
fn in_order(fronts: Vec<Front>) -> Vec<Front> {
    let links = fronts
        .iter()
        .map(|front| front.stretch.link.0 as usize + 1)
        .max()
        .unwrap_or(0);
    let mut first_of = vec![0_u32; links + 1];
    for front in &fronts {
        first_of[front.stretch.link.0 as usize + 1] += 1;
    }
    for link in 0..links {
        first_of[link + 1] += first_of[link];
    }
    let mut cursors = first_of.clone();
    let mut laid = fronts.clone();
    for front in fronts {
        let cursor = &mut cursors[front.stretch.link.0 as usize];
        laid[*cursor as usize] = front;
        *cursor += 1;
    }
    for link in 0..links {
        let few = &mut laid[first_of[link] as usize..first_of[link + 1] as usize];
        order::sort_few_by(few, |a, b| (a.stretch, a.face).cmp(&(b.stretch, b.face)));
    }
    laid
}

/// Where the walk to one destination ends.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ends {
    /// All of it, as the network takes it, in order.
    pub all: Vec<Source>,
    /// Without what is hoped for.
    pub sure: Vec<Source>,
}

/// Where the walks end, by destination in the order of [`Destination::ALL`]; those of all five are empty.
pub type AllEnds = [Ends; Destination::ALL.len()];

/// Finds where the walk to every destination ends.
#[must_use]
pub fn ends(
    document: &Document,
    alternative: AlternativeId,
    fabric: &Fabric,
    painted: &[PaintedFace],
    fronts: &[Front],
    network: &WalkNetwork,
) -> AllEnds {
    let mut ends = Finder {
        document,
        alternative,
        network,
        doorsteps: None,
        ends: AllEnds::default(),
    };
    for (need, destination) in Destination::NEEDS.iter().enumerate() {
        ends.add_fronts(*destination, fronts, need, NEED_MINIMUMS[need].of(document));
    }
    if let Some(learning) = Destination::Learning.need() {
        ends.add_fronts(Destination::School, fronts, learning, SCHOOL_MINIMUM.of(document));
    }
    ends.add_open_land(document, fabric, painted);
    let marks = document.alternatives.get(&alternative).map(|held| &held.marks);
    for mark in marks.into_iter().flat_map(|marks| marks.values()) {
        match mark {
            Mark::Place(place) => ends.add_place(place),
            Mark::Outside(outside) => ends.add_outside(document, outside),
            _ => {}
        }
    }
    for held in &mut ends.ends {
        held.all.extend_from_slice(&held.sure);
        settle(&mut held.all);
        settle(&mut held.sure);
    }
    ends.ends
}

struct Finder<'a> {
    document: &'a Document,
    alternative: AlternativeId,
    network: &'a WalkNetwork,
    doorsteps: Option<Doorsteps>,
    /// `all` holds only what is hoped for until the end.
    ends: AllEnds,
}

impl Finder<'_> {
    /// Adds a stretch of the fabric's links, where people walk on it.
    fn add_stretch(&mut self, destination: Destination, stretch: Stretch) {
        let held = &mut self.ends[destination as usize].sure;
        self.network
            .for_each_piece(stretch, |piece| held.push(Source::stretch(piece)));
    }

    fn add_footprint(&mut self, destination: Destination, footprint: &Footprint, is_sure: bool) {
        let Self {
            document,
            alternative,
            network,
            ..
        } = *self;
        let doorsteps = self
            .doorsteps
            .get_or_insert_with(|| Doorsteps::of(network, document, alternative));
        let sources = doorsteps.sources(network, footprint);
        let held = &mut self.ends[destination as usize];
        if is_sure { &mut held.sure } else { &mut held.all }.extend(sources);
    }

    /// Adds the fronts that together hold at least `minimum` of a need, over their face or along their street.
    fn add_fronts(&mut self, destination: Destination, fronts: &[Front], need: usize, minimum: f64) {
        let mut holding: Vec<&Front> = Vec::new();
        let mut faces = 0;
        for front in fronts {
            if front.amounts[need] > 0.0 {
                holding.push(front);
                faces = faces.max(front.face + 1);
            }
        }
        let mut of_face = vec![0.0; faces];
        for front in &holding {
            of_face[front.face] += front.amounts[need];
        }
        let mut rest = holding.as_slice();
        while let Some(first) = rest.first() {
            let mut end_um = first.stretch.to_um;
            let follows = |front: &&Front| {
                let is_near = front.stretch.link == first.stretch.link
                    && front.stretch.from_um <= end_um.saturating_add(LONGEST_GAP_UM);
                end_um = end_um.max(front.stretch.to_um);
                is_near
            };
            let count = rest.iter().copied().take_while(follows).count();
            let (run, after) = rest.split_at(count);
            rest = after;
            let together: f64 = run.iter().map(|front| front.amounts[need]).sum();
            for front in run
                .iter()
                .filter(|front| together >= minimum || of_face[front.face] >= minimum)
            {
                self.add_stretch(destination, front.stretch);
            }
        }
    }

    /// Adds the streets around block faces with enough open land.
    fn add_open_land(&mut self, document: &Document, fabric: &Fabric, painted: &[PaintedFace]) {
        let minimum_m2 = PARK_MINIMUM.of(document);
        let is_open = |id: &BuildingTypeId| {
            let held = document.building_types.get(id);
            held.is_some_and(|held| held.land_use == LandUse::Leisure)
        };
        for held in painted {
            let open = held.land_m2.iter().filter(|(id, _)| is_open(id));
            let open_m2: f64 = open.map(|(_, land_m2)| land_m2).sum();
            if open_m2 <= 0.0 || open_m2 < minimum_m2 {
                continue;
            }
            let sides = fabric.face(held.face).map(|face| face.sides.as_slice());
            for side in sides.unwrap_or_default() {
                for stretch in stretches_of(fabric, side) {
                    self.add_stretch(Destination::Park, stretch);
                }
            }
        }
    }

    fn add_place(&mut self, place: &Place) {
        if let Footprint::Area(outline) = &place.footprint
            && area_m2(outline) < f64::from(place.minimum_size_m2)
        {
            return;
        }
        let is_sure = place.certainty != Certainty::HopedFor;
        let destinations: &[Destination] = match place.kind {
            PlaceKind::Center => &[Destination::Center],
            PlaceKind::TransitStop => &[Destination::TransitStop],
            PlaceKind::School => &[Destination::School, Destination::Learning],
            PlaceKind::CommunityHall | PlaceKind::Clinic => &[Destination::Gathering],
            PlaceKind::Park => &[Destination::Park],
            PlaceKind::Shop => &[Destination::Shops],
        };
        for destination in destinations {
            self.add_footprint(*destination, &place.footprint, is_sure);
        }
    }

    fn add_outside(&mut self, document: &Document, outside: &OutsideContext) {
        let held = [
            (Destination::Homes, outside.homes),
            (Destination::Work, outside.jobs),
            (Destination::Shops, outside.shop_floor_m2),
        ];
        for (destination, amount) in held {
            let minimum = destination.need().map_or(0.0, |need| NEED_MINIMUMS[need].of(document));
            if amount > 0 && f64::from(amount) >= minimum {
                self.add_footprint(destination, &outside.footprint, true);
            }
        }
    }
}

/// Area of an outline, in square meters.
fn area_m2(outline: &[PlanPoint]) -> f64 {
    let Some(origin) = outline.first() else { return 0.0 };
    let twice_mm2: i128 = outline
        .windows(2)
        .map(|pair| i128::from(origin.cross(pair[0], pair[1])))
        .sum();
    twice_mm2.unsigned_abs() as f64 / 2e6
}

/// Puts sources in order, each place once: stretches at no cost that overlap or touch are joined.
fn settle(sources: &mut Vec<Source>) {
    let key = |source: &Source| match source.place {
        SourcePlace::Stretch(stretch) => (source.cost, stretch),
        SourcePlace::Node(node) => {
            let place = Stretch {
                link: LinkId(node.0),
                from_um: 0,
                to_um: 0,
            };
            (source.cost, place)
        }
    };
    order::sort_by_key(sources, key);
    sources.dedup_by(|next, held| match (&next.place, &mut held.place) {
        (SourcePlace::Stretch(next_stretch), SourcePlace::Stretch(stretch)) if next.cost == held.cost => {
            let joins = next_stretch.link == stretch.link && next_stretch.from_um <= stretch.to_um;
            if joins {
                stretch.to_um = stretch.to_um.max(next_stretch.to_um);
            }
            joins
        }
        _ => next == held,
    });
}

#[cfg(test)]
mod tests;
