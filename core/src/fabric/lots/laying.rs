//! Laying lots along the fronts of one face.

use super::footprint::footprint;
use super::front_line::{FrontLine, Widths};
use super::region::{Region, largest_piece, largest_ring, outline_meets_ring, twice_area_of_pieces};
use super::spot::Spot;
use super::{
    Front, LEAST_LOT_SHARE, LaidLots, LandShare, Left, Lot, LotKey, LotType, MOST_DEEPENING, MOST_WIDENING,
    WIDTH_TOLERANCE,
};
use crate::fabric::regions::twice_area_mm2;
use crate::order;
use crate::plan::PlanPoint;
use crate::plan::validate::self_crossing;

/// How far inside the land's edge a front is probed, in millimeters: beyond rounding, within any lot.
const PROBE_MM: f64 = 50.0;

/// How deep a front must be free for a lot to begin there, as a share of its depth: enough to pass over acute corners,
/// little enough for the shallow lots of a narrow block.
const PROBED_DEPTH: f64 = 0.35;

/// How near the end of a ray another front's line must lie for it to be opposite, in millimeters.
const OPPOSITE_MM: f64 = 300.0;

/// A lot is taken to lie in free land when it does so shrunk by this about its middle: past rounding at its edges.
const SHRUNK: f64 = 0.995;

/// How far land is taken to both sides of a lot's front, in millimeters, so that rounding leaves no thread of free land
/// between a lot and the street.
const OVERLAP_MM: f64 = 20.0;

/// How much wider a stretch of front may become by rounding where free land is cut, in millimeters.
const ROUNDING_MM: f64 = 20.0;

/// From this share of the land on, a program is taken to want all of the front.
const ALL_OF_IT: f64 = 0.98;

/// The least share of land asked for that a smaller one of a type without homes is laid for, of its typical lot.
const LEAST_SMALLER: f64 = 0.02;

/// Lays the lots of a face.
pub(super) fn lay(key: &LotKey) -> LaidLots {
    let mut laying = Laying::new(key);
    let fronts = laying.order();
    for &front in fronts.iter().filter(|front| key.fronts[**front].own.is_some()) {
        if let Some(own) = key.fronts[front].own {
            laying.lay_front(front, &mut [Wanted::all(own)]);
        }
    }
    laying.lay_smaller_own();
    let others: Vec<usize> = fronts
        .iter()
        .copied()
        .filter(|front| key.fronts[*front].own.is_none())
        .collect();
    laying.lay_program(&key.program, &others);
    laying.done()
}

/// How much front a building type still wants.
#[derive(Clone, Copy, Debug)]
struct Wanted {
    lot_type: LotType,
    /// In millimeters of front; infinite for as much as there is.
    front_mm: f64,
}

impl Wanted {
    const fn all(lot_type: LotType) -> Self {
        Self {
            lot_type,
            front_mm: f64::INFINITY,
        }
    }

    /// Whether another lot is at least half wanted.
    fn wants_more(&self) -> bool {
        self.front_mm >= f64::from(self.lot_type.width_mm) / 2.0
    }
}

#[derive(Clone)]
struct Laying<'a> {
    key: &'a LotKey,
    lines: Vec<Option<FrontLine>>,
    is_laid: Vec<bool>,
    /// Land not taken yet, but for what `taken` takes.
    free: Region,
    /// What was taken last: cut off when free land is asked for again, which after the last front it is not.
    taken: Vec<Vec<PlanPoint>>,
    lots: Vec<Lot>,
    /// Whether this only tells how much front there is: then nobody looks at buildings.
    is_trial: bool,
    /// Front that lots could be laid on so far, in millimeters.
    front_mm: f64,
}

impl<'a> Laying<'a> {
    fn new(key: &'a LotKey) -> Self {
        let lines = key.fronts.iter();
        Self {
            key,
            lines: lines
                .map(|front| FrontLine::along(&front.centerline, f64::from(front.half_width_mm)))
                .collect(),
            is_laid: vec![false; key.fronts.len()],
            free: Region::of(key.land.pieces.clone()),
            taken: Vec::new(),
            lots: Vec::new(),
            is_trial: false,
            front_mm: 0.0,
        }
    }

    /// Cuts off what was taken last.
    fn cut_free(&mut self) {
        if !self.taken.is_empty() {
            self.free = self.free.without(&self.taken);
            self.taken.clear();
        }
    }

    /// Fronts by length, the longest first; equal ones in order around the face.
    fn order(&self) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.key.fronts.len()).collect();
        order::sort_by_key(&mut order, |front| {
            std::cmp::Reverse(self.key.fronts[*front].length_um())
        });
        order
    }

    /// Shares the other fronts among the program and lays them: each type's front as its land by its depth.
    fn lay_program(&mut self, program: &[LandShare], fronts: &[usize]) {
        let is_wanted = |share: &&LandShare| {
            let held = share.lot_type;
            held.is_built && share.share_ppm > 0 && held.width_mm > 0 && held.depth_mm > 0
        };
        let built: Vec<LandShare> = program.iter().filter(is_wanted).copied().collect();
        let Some(first) = built.first() else { return };
        let built_share = built.iter().map(|share| f64::from(share.share_ppm) / 1e6).sum::<f64>();
        let mut wanted = vec![Wanted::all(first.lot_type)];
        if built.len() > 1 || built_share < ALL_OF_IT {
            // One type all along tells how much front there is to share.
            let mut probe = self.clone();
            probe.is_trial = true;
            probe.front_mm = 0.0;
            probe.lay_fronts(&mut wanted.clone(), fronts);
            let by_depth = |share: &LandShare| f64::from(share.share_ppm) / f64::from(share.lot_type.depth_mm);
            let all: f64 = built.iter().map(by_depth).sum();
            let front_mm = probe.front_mm * if built_share < ALL_OF_IT { built_share } else { 1.0 };
            wanted = built
                .iter()
                .map(|share| Wanted {
                    lot_type: share.lot_type,
                    front_mm: front_mm * by_depth(share) / all,
                })
                .collect();
            if built_share >= ALL_OF_IT
                && let Some(most) = built.iter().max_by_key(|share| share.share_ppm)
            {
                // Front that rounding to whole lots leaves is not left empty.
                wanted.push(Wanted::all(most.lot_type));
            }
        }
        self.cut_free();
        let rest = twice_area_of_pieces(&self.free.pieces) as f64;
        let before = self.lots.len();
        self.lay_fronts(&mut wanted, fronts);
        for share in built.iter().filter(|share| !share.lot_type.has_homes) {
            let is_there = self.lots[before..]
                .iter()
                .any(|lot| lot.building_type == share.lot_type.id);
            if !is_there {
                self.lay_smaller(share.lot_type, rest * f64::from(share.share_ppm) / 1e6, fronts);
            }
        }
    }

    fn lay_fronts(&mut self, wanted: &mut [Wanted], fronts: &[usize]) {
        for &front in fronts {
            self.lay_front(front, wanted);
        }
    }

    /// Lays whole lots along one front, type after type.
    fn lay_front(&mut self, front: usize, wanted: &mut [Wanted]) {
        let Some(line) = self.lines[front].clone() else { return };
        self.is_laid[front] = true;
        let first = self.lots.len();
        let mut from = 0.0;
        let mut free_deep: Option<(u32, Vec<(f64, f64)>)> = None;
        while let Some(at) = wanted.iter().position(Wanted::wants_more) {
            let lot_type = wanted[at].lot_type;
            if !self.taken.is_empty() && !self.may_have_room(&line, lot_type) {
                debug_assert!(!self.has_room_once_cut(&line, lot_type));
                break;
            }
            self.cut_free();
            // Free land stays as it is until the front is laid.
            let deep = match free_deep.take() {
                Some((depth_mm, parts)) if depth_mm == lot_type.depth_mm => parts,
                _ => self.free_deep(&line, lot_type),
            };
            let run = next_run(&line, lot_type, from, &deep);
            free_deep = Some((lot_type.depth_mm, deep));
            let Some(run) = run else { break };
            self.lay_run(front, &line, run, &mut wanted[at..]);
            from = run.1;
        }
        for lot in &self.lots[first..] {
            self.taken.push(lot.outline.clone());
            self.taken.extend(line.strip_between(lot.front_um, OVERLAP_MM));
        }
    }

    /// The stretches of a front that are free deep enough for a lot of this type.
    fn free_deep(&self, line: &FrontLine, lot_type: LotType) -> Vec<(f64, f64)> {
        let shallow = free_parts(&self.free, line, PROBE_MM);
        let deep = free_parts(&self.free, line, f64::from(lot_type.depth_mm) * PROBED_DEPTH);
        common_parts(&shallow, &deep)
    }

    /// Whether a lot of this type may find room along a front that nothing is laid on yet, told without cutting off what
    /// was taken last: no front is passed over where the cut, which is rounded to the grid, would leave room.
    fn may_have_room(&self, line: &FrontLine, lot_type: LotType) -> bool {
        let mut deep = self.free_deep(line, lot_type);
        for inward_mm in [PROBE_MM, f64::from(lot_type.depth_mm) * PROBED_DEPTH] {
            for ring in &self.taken {
                if deep.is_empty() {
                    return false;
                }
                deep = parts_beyond(
                    &deep,
                    &free_parts(&Region::of(vec![vec![ring.clone()]]), line, inward_mm),
                );
            }
        }
        let widths = line.widths(f64::from(lot_type.depth_mm));
        let least = f64::from(lot_type.width_mm) * (1.0 - WIDTH_TOLERANCE) - ROUNDING_MM;
        deep.iter()
            .any(|&(start, end)| widths.to(end) - widths.to(start) >= least)
    }

    /// What `may_have_room` foretells, by cutting.
    fn has_room_once_cut(&self, line: &FrontLine, lot_type: LotType) -> bool {
        let mut cut = self.clone();
        cut.cut_free();
        next_run(line, lot_type, 0.0, &cut.free_deep(line, lot_type)).is_some()
    }

    /// Lays lots on a run: of the first type as much as it wants, then of the next.
    fn lay_run(&mut self, front: usize, line: &FrontLine, (start, end): (f64, f64), wanted: &mut [Wanted]) {
        let Some(leading) = wanted.first().map(|one| one.lot_type) else {
            return;
        };
        let widths = line.widths(f64::from(leading.depth_mm));
        let room = widths.to(end) - widths.to(start);
        self.front_mm += room;
        let (row, is_full) = planned_row(room, wanted);
        let asked: f64 = row.iter().map(|lot_type| f64::from(lot_type.width_mm)).sum();
        if asked <= 0.0 {
            return;
        }
        let stretch = if is_full {
            (room / asked).min(MOST_WIDENING)
        } else {
            1.0
        };
        let lead = if is_full { (room - asked * stretch) / 2.0 } else { 0.0 };
        let mut begin = widths.to(start) + lead.max(0.0);
        // Lots of one run must not lie over one another.
        let first = self.lots.len();
        for lot_type in row {
            let finish = begin + f64::from(lot_type.width_mm) * stretch;
            let positions = [begin, finish].map(|width| widths.position_at(width));
            begin = finish;
            self.lots
                .extend(self.lot_at(front, line, &widths, positions, lot_type, first));
        }
    }

    /// The lot between two positions; `None` when it would not be whole.
    fn lot_at(
        &self,
        front: usize,
        line: &FrontLine,
        widths: &Widths,
        [from, to]: [f64; 2],
        lot_type: LotType,
        first: usize,
    ) -> Option<Lot> {
        let middle = widths.position_at((widths.to(from) + widths.to(to)) / 2.0);
        let inset = 1e-6 * (to - from);
        // The middle one of three: at a slanting end of the land a ray along the lot's side soon leaves it, and what lies
        // beyond the land is cut off below.
        let mut depths =
            [from + inset, middle, to - inset].map(|position| self.depth_at(front, line, position, lot_type));
        order::sort_by(&mut depths, f64::total_cmp);
        let depth = depths[1];
        let ring = ring_of(line, from, to, depth);
        let middle_of_ring = ring
            .iter()
            .fold(Spot { x: 0.0, y: 0.0 }, |sum, corner| sum.plus(*corner))
            .times(1.0 / ring.len() as f64);
        let shrunk: Vec<Spot> = ring
            .iter()
            .map(|corner| middle_of_ring.toward(*corner, SHRUNK))
            .collect();
        let outline: Vec<PlanPoint> = ring.iter().map(|corner| corner.rounded()).collect();
        let before: Vec<Vec<PlanPoint>> = self.lots[first..]
            .iter()
            .filter(|lot| outline_meets_ring(&lot.outline, &shrunk))
            .map(|lot| lot.outline.clone())
            .collect();
        // Across a sharp bend a lot may lie over itself. Four corners never do: they stand to one side of their front.
        let is_plain = twice_area_mm2(&outline) > 0 && (outline.len() <= 4 || self_crossing(&outline).is_none());
        let outline = if before.is_empty() && is_plain && self.free.holds_ring(&shrunk) {
            outline
        } else {
            let parts = self.free.part_in(&outline, &before);
            largest_ring(parts)?
        };
        let twice = twice_area_mm2(&outline);
        if (twice as f64) < LEAST_LOT_SHARE * lot_type.twice_area_mm2() {
            return None;
        }
        Some(self.lot(front, line, [from, middle, to], outline, lot_type, 1_000_000))
    }

    fn lot(
        &self,
        front: usize,
        line: &FrontLine,
        [from, middle, to]: [f64; 3],
        outline: Vec<PlanPoint>,
        lot_type: LotType,
        counts_ppm: u32,
    ) -> Lot {
        let held: &Front = &self.key.fronts[front];
        let inward = line.inward_at(middle);
        Lot {
            building_type: lot_type.id,
            counts_ppm,
            side: held.side,
            is_at_head: held.is_head,
            front_um: [line.along_um(from), line.along_um(to)],
            twice_area_mm2: twice_area_mm2(&outline),
            footprint: if self.is_trial {
                Vec::new()
            } else {
                let room = self
                    .key
                    .beside
                    .iter()
                    .fold(outline.clone(), |room, line| line.room_on(room));
                let area_mm2 = twice_area_mm2(&outline) as f64 / 2.0;
                footprint(&room, area_mm2, line.at(middle, 0.0), inward, lot_type, held.setback_mm)
            },
            faces: [-inward.x, -inward.y].map(|part| (part * 1e6).round() as i32),
            outline,
        }
    }

    /// How deep a lot may be at a position.
    fn depth_at(&self, front: usize, line: &FrontLine, position: f64, lot_type: LotType) -> f64 {
        let asked = f64::from(lot_type.depth_mm);
        let start = line.at(position, PROBE_MM);
        let (run, end) = self
            .free
            .run_of_ray(start, line.inward_at(position), asked * (2.0 * MOST_DEEPENING + 0.5));
        let room = run + PROBE_MM;
        let is_shared = (0..self.lines.len()).any(|other| {
            let is_open = other != front && !self.is_laid[other];
            is_open
                && self.lines[other]
                    .as_ref()
                    .is_some_and(|line| line.distance_to(end) <= OPPOSITE_MM)
        });
        if is_shared && room >= 2.0 * LEAST_LOT_SHARE * asked {
            deepened(room / 2.0, asked)
        } else {
            deepened(room, asked)
        }
    }

    /// For sides of their own whose type has no homes and fits nowhere whole: a smaller one each.
    fn lay_smaller_own(&mut self) {
        for front in 0..self.key.fronts.len() {
            let held = &self.key.fronts[front];
            let Some(own) = held.own.filter(|own| own.is_built && !own.has_homes) else {
                continue;
            };
            if self.lots.iter().any(|lot| lot.side == held.side) {
                continue;
            }
            let length_mm = held.length_um() as f64 / 1e3;
            self.lay_smaller(own, 2.0 * length_mm * f64::from(own.depth_mm), &[front]);
        }
    }

    /// Lays one lot of a type that fits nowhere whole: all of the largest free piece when most of it is wanted, else the
    /// largest lot of the type's own proportions that finds room along a front.
    fn lay_smaller(&mut self, lot_type: LotType, twice_mm2: f64, fronts: &[usize]) {
        let typical = lot_type.twice_area_mm2();
        if typical <= 0.0 || twice_mm2 < LEAST_SMALLER * typical {
            return;
        }
        self.cut_free();
        let free = twice_area_of_pieces(&self.free.pieces) as f64;
        if twice_mm2 >= LEAST_LOT_SHARE * free {
            let Some(piece) = largest_piece(&self.free.pieces) else {
                return;
            };
            let Some(&front) = fronts.iter().find(|front| self.lines[**front].is_some()) else {
                return;
            };
            let Some(line) = self.lines[front].clone() else { return };
            let outline = piece.first().cloned().unwrap_or_default();
            let all: f64 = line.segments() as f64;
            let area = twice_area_of_pieces(&vec![piece]) as f64;
            let counts = share_ppm(area.min(twice_mm2), typical);
            let mut lot = self.lot(front, &line, [0.0, all / 2.0, all], outline, lot_type, counts);
            lot.twice_area_mm2 = area as i128;
            self.taken.push(lot.outline.clone());
            self.lots.push(lot);
            return;
        }
        let mut scale = (twice_mm2 / typical).min(1.0).sqrt();
        while scale * scale >= LEAST_SMALLER {
            let scaled = |length_mm: u32| (f64::from(length_mm) * scale).round().max(1.0) as u32;
            let smaller = LotType {
                width_mm: scaled(lot_type.width_mm),
                depth_mm: scaled(lot_type.depth_mm),
                ..lot_type
            };
            let before = self.lots.len();
            for &front in fronts {
                let mut one = [Wanted {
                    lot_type: smaller,
                    front_mm: f64::from(smaller.width_mm),
                }];
                self.lay_front(front, &mut one);
                if self.lots.len() > before {
                    for lot in &mut self.lots[before..] {
                        lot.counts_ppm = share_ppm(lot.twice_area_mm2 as f64, typical);
                    }
                    return;
                }
            }
            scale *= 0.8;
        }
    }

    fn done(self) -> LaidLots {
        LaidLots {
            lots: self.lots,
            left: Left::of(self.free.pieces, self.taken),
        }
    }
}

/// The first of these stretches of a front, after a position, that is wide enough for a lot of this type.
fn next_run(line: &FrontLine, lot_type: LotType, from: f64, free: &[(f64, f64)]) -> Option<(f64, f64)> {
    let widths = line.widths(f64::from(lot_type.depth_mm));
    let least = f64::from(lot_type.width_mm) * (1.0 - WIDTH_TOLERANCE);
    free.iter()
        .map(|&(start, end)| (start.max(from), end))
        .find(|&(start, end)| end > start && widths.to(end) - widths.to(start) >= least)
}

/// The lots of a run from its start to its end, and whether they fill it; what they take is taken off what is wanted.
fn planned_row(room: f64, wanted: &mut [Wanted]) -> (Vec<LotType>, bool) {
    let mut row = Vec::new();
    let mut left = room;
    for at in 0..wanted.len() {
        let one = wanted[at];
        let width = f64::from(one.lot_type.width_mm);
        let fitting = (left / width + WIDTH_TOLERANCE).floor().max(0.0);
        let count = (one.front_mm / width).round().min(fitting);
        row.extend(std::iter::repeat_n(one.lot_type, count as usize));
        left -= count * width;
        wanted[at].front_mm -= count * width;
        if count >= fitting && wanted[at].wants_more() {
            // The run is full, and this type goes on along the next.
            return (row, true);
        }
        // What is left of its want, up to half a lot either way, is the next type's.
        let rest = std::mem::take(&mut wanted[at].front_mm);
        if let Some(next) = wanted.get_mut(at + 1) {
            next.front_mm += rest;
        }
    }
    let narrowest = row.iter().map(|lot_type| f64::from(lot_type.width_mm));
    let is_full = left < narrowest.fold(f64::INFINITY, f64::min);
    (row, is_full)
}

/// The depth of a lot that may be `room` deep: all of the room up to the most by which lots are deepened; with still more
/// room less and less of it, so that no rear steps back all at once.
fn deepened(room: f64, asked: f64) -> f64 {
    let most = MOST_DEEPENING * asked;
    if room <= most {
        room
    } else {
        (2.0 * most - room).max(asked)
    }
}

/// A share in millionths, at most a hundred.
fn share_ppm(part: f64, whole: f64) -> u32 {
    (part / whole * 1e6).round().clamp(0.0, 1e8) as u32
}

/// The outline of a lot: along the front, then back along the rear.
fn ring_of(line: &FrontLine, from: f64, to: f64, depth: f64) -> Vec<Spot> {
    // A lot that begins or ends at a corner of the line takes the directions on its own side of it.
    let inset = 1e-9 * (to - from);
    let (first, last) = (from + inset, to - inset);
    let mut ring = vec![line.at(first, 0.0)];
    ring.extend(line.corners_between(first, last, 0.0));
    ring.push(line.at(last, 0.0));
    ring.push(line.at(last, depth));
    let mut rear = line.corners_between(first, last, depth);
    rear.reverse();
    ring.extend(rear);
    ring.push(line.at(first, depth));
    ring
}

/// The parts of a front, moved inward, that lie in free land, as positions.
fn free_parts(free: &Region, line: &FrontLine, inward_mm: f64) -> Vec<(f64, f64)> {
    let mut parts: Vec<(f64, f64)> = Vec::new();
    for segment in 0..line.segments() {
        let (a, b) = line.segment(segment, inward_mm);
        for (from, to) in free.parts_inside(a, b) {
            let (from, to) = (segment as f64 + from, segment as f64 + to);
            match parts.last_mut() {
                Some(last) if from - last.1 <= 1e-9 => last.1 = to,
                _ => parts.push((from, to)),
            }
        }
    }
    parts
}

/// The parts of the first that lie in none of the others.
fn parts_beyond(first: &[(f64, f64)], others: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut beyond = first.to_vec();
    for &(from, to) in others {
        let cut = |&(start, end): &(f64, f64)| [(start, end.min(from)), (start.max(to), end)];
        beyond = beyond.iter().flat_map(cut).filter(|(start, end)| start < end).collect();
    }
    beyond
}

fn common_parts(first: &[(f64, f64)], second: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut common = Vec::new();
    for &(a, b) in first {
        for &(c, d) in second {
            let (from, to) = (a.max(c), b.min(d));
            if from < to {
                common.push((from, to));
            }
        }
    }
    common
}
