//! What the lots of a face depend on, from the drawing.

use std::sync::Arc;

use super::{Front, LandShare, LineBeside, Lot, LotKey, LotType};
use crate::fabric::land::Land;
use crate::fabric::plan_fabric::{Fabric, FaceOfLand};
use crate::fabric::sides::{Side, lots_front, side_spoken_of};
use crate::number;
use crate::plan::land::{Fronting, Portion};
use crate::plan::{BuildingTypeId, Document, PlanPoint, SideUse};

/// How a face stands to the streets around it under a program and what is said of its sides and asked by lines near it.
///
/// Lots front on the sides whose street section allows it, or as said; on the heads of dead ends that both lie in the
/// face. Where several things are said of one side the first counts.
pub struct Facing<'a> {
    fabric: &'a Fabric,
    face: &'a FaceOfLand,
    fronting: Vec<FrontingSide<'a>>,
    program: Vec<LandShare>,
    beside: Vec<&'a LineBeside>,
}

/// One side that lots front on.
struct FrontingSide<'a> {
    side: u32,
    own: Option<LotType>,
    setback_mm: Option<u32>,
    half_width_mm: u32,
    said: Option<&'a SideUse>,
}

/// Begins a side in the words; nothing else is as low.
const SIDE: i32 = i32::MIN;
/// Stands for what is not said.
const UNSAID: i32 = i32::MIN + 1;
/// Begins a line beside which lots may stand.
const BESIDE: i32 = i32::MIN + 2;

impl<'a> Facing<'a> {
    /// How `face` stands.
    #[must_use]
    pub fn of(
        document: &Document,
        fabric: &'a Fabric,
        face: &'a FaceOfLand,
        program: &[Portion],
        said: &'a [SideUse],
        beside: &'a [LineBeside],
    ) -> Self {
        let mut said_of: Vec<Option<&'a SideUse>> = vec![None; if said.is_empty() { 0 } else { face.sides.len() }];
        for side_use in said {
            if let Some(side) = side_spoken_of(&fabric.arrangement, &fabric.lines, &face.sides, side_use) {
                said_of[side].get_or_insert(side_use);
            }
        }
        let said_of = |side: usize| said_of.get(side).copied().flatten();
        let fronting = (0..face.sides.len()).filter_map(|index| {
            let (side, said) = (&face.sides[index], said_of(index));
            let (street, _) = side.street?;
            if !lots_front(&fabric.lines, side, said) {
                return None;
            }
            let own = said
                .filter(|said| said.fronting == Fronting::Front)
                .and_then(|said| said.building_type);
            Some(FrontingSide {
                side: index as u32,
                own: own.and_then(|id| lot_type(document, id)),
                setback_mm: said.and_then(|said| said.setback_mm),
                half_width_mm: fabric.lines.streets[street as usize].right_of_way_mm.div_ceil(2),
                said,
            })
        });
        let shares = program.iter().filter_map(|portion| {
            Some(LandShare {
                lot_type: lot_type(document, portion.building_type)?,
                share_ppm: portion.share_ppm,
            })
        });
        Self {
            fabric,
            face,
            fronting: fronting.collect(),
            program: shares.collect(),
            beside: beside.iter().filter(|line| line.is_near(&face.land.pieces)).collect(),
        }
    }

    /// What lines near the face let their lots have at most.
    pub fn limits(&self) -> impl Iterator<Item = Option<u8>> + '_ {
        let limits = self.beside.iter().map(|line| line.asked.stories);
        limits.filter(Option::is_some)
    }

    /// The most stories that lines beside a lot let it have; `None` for any.
    #[must_use]
    pub fn stories_beside(&self, lot: &Lot) -> Option<u8> {
        let limiting = self.beside.iter().filter(|line| line.asked.stories.is_some());
        let beside = limiting.filter(|line| line.is_beside(&lot.outline));
        beside.filter_map(|line| line.asked.stories).min()
    }

    /// Sides with a building type of their own.
    pub fn own_sides(&self) -> impl Iterator<Item = u32> + '_ {
        self.fronting.iter().filter(|one| one.own.is_some()).map(|one| one.side)
    }

    /// What is said of a side that lots front on.
    #[must_use]
    pub fn said_of(&self, side: u32) -> Option<&'a SideUse> {
        let mut fronting = self.fronting.iter();
        fronting.find(|one| one.side == side)?.said
    }

    /// The sides that lots front on of which something is said, and what.
    pub fn said(&self) -> impl Iterator<Item = (u32, &'a SideUse)> + '_ {
        self.fronting.iter().filter_map(|one| Some((one.side, one.said?)))
    }

    /// The face's land.
    fn land(&self) -> Arc<Land> {
        Arc::clone(&self.face.land)
    }

    /// Adds all that the lots depend on but the land, as integers: equal lists have equal lots on equal land.
    pub(crate) fn add_words(&self, words: &mut Vec<i32>) {
        for share in &self.program {
            add_type(share.lot_type, words);
            words.push(share.share_ppm.cast_signed());
        }
        for one in &self.fronting {
            words.extend([SIDE, one.side.cast_signed(), one.half_width_mm.cast_signed()]);
            match one.own {
                Some(own) => add_type(own, words),
                None => words.push(UNSAID),
            }
            words.push(one.setback_mm.map_or(UNSAID, u32::cast_signed));
            let side = &self.face.sides[one.side as usize];
            words.push(i32::from(self.turns_back(side)));
            words.extend(centerline(self.fabric, side).flat_map(|point| [point.x_mm, point.y_mm]));
        }
        for line in &self.beside {
            words.push(BESIDE);
            line.add_words(words);
        }
    }

    /// What the lots are laid from.
    #[must_use]
    pub fn key(&self) -> LotKey {
        let mut fronts = Vec::new();
        for one in &self.fronting {
            let side = &self.face.sides[one.side as usize];
            let front = Front {
                side: one.side,
                is_head: false,
                centerline: centerline(self.fabric, side).collect(),
                half_width_mm: one.half_width_mm,
                own: one.own,
                setback_mm: one.setback_mm,
            };
            let has_head = one.own.is_none() && self.turns_back(side);
            let head = has_head.then(|| head_of(&front)).flatten();
            fronts.push(front);
            fronts.extend(head);
        }
        LotKey {
            land: self.land(),
            fronts,
            program: self.program.clone(),
            beside: self.beside.iter().copied().cloned().collect(),
        }
    }

    /// Whether a side ends at the head of a dead end, behind which the street's other side begins.
    fn turns_back(&self, side: &Side) -> bool {
        let Some(back) = side.half_edges.last().map(|last| last.twin()) else {
            return false;
        };
        let mut firsts = self.face.sides.iter().map(|other| other.half_edges.first());
        firsts.any(|first| first == Some(&back))
    }
}

fn add_type(held: LotType, words: &mut Vec<i32>) {
    words.extend([held.id.0, held.width_mm, held.depth_mm].map(u32::cast_signed));
    words.push(i32::from(held.coverage_thousandths) * 4 + i32::from(held.has_homes) * 2 + i32::from(held.is_built));
}

/// A building type as lots are laid for it; `None` when the palette lacks it.
#[must_use]
pub fn lot_type(document: &Document, id: BuildingTypeId) -> Option<LotType> {
    let held = document.building_types.get(&id)?;
    Some(LotType {
        id,
        width_mm: held.lot_width_mm,
        depth_mm: held.lot_depth_mm,
        coverage_thousandths: held.coverage_thousandths,
        has_homes: held.homes_per_lot > 0,
        is_built: held.homes_per_lot > 0 || !held.stories.is_empty(),
    })
}

fn centerline<'a>(fabric: &'a Fabric, side: &'a Side) -> impl Iterator<Item = PlanPoint> + 'a {
    let arrangement = &fabric.arrangement;
    let first = side.half_edges.first().map(|half_edge| arrangement.origin(*half_edge));
    let targets = side.half_edges.iter().map(|half_edge| arrangement.target(*half_edge));
    first.into_iter().chain(targets).map(|vertex| arrangement.point(vertex))
}

/// The head of the dead end at the end of a side: as wide as the right-of-way, beyond the street's end by half of it.
fn head_of(front: &Front) -> Option<Front> {
    let [.., before, tip] = front.centerline.as_slice() else {
        return None;
    };
    let (x, y) = (
        f64::from(tip.x_mm) - f64::from(before.x_mm),
        f64::from(tip.y_mm) - f64::from(before.y_mm),
    );
    let length = number::length(x, y);
    if length <= 0.0 {
        return None;
    }
    let reach = f64::from(front.half_width_mm) / length;
    // Across the street, from its left to its right, so that what lies beyond is on the left.
    let moved = |sign: f64| {
        PlanPoint::new(
            tip.x_mm + (sign * y * reach).round() as i32,
            tip.y_mm - (sign * x * reach).round() as i32,
        )
    };
    Some(Front {
        is_head: true,
        centerline: vec![moved(-1.0), moved(1.0)],
        ..front.clone()
    })
}
