//! Alternatives: by themselves, or as what differs from an earlier one.

use std::collections::VecDeque;

use crate::order;
use crate::order::OrderedMap;
use crate::plan::coordinates::PlanPoint;
use crate::plan::document::Alternative;
use crate::plan::ids::MarkId;
use crate::plan::mark::{Mark, MarkKind};
use crate::plan::tie::{in_holding_order, ties_of};
use crate::plan::weight::mark_bytes;

use super::super::AddressFault;
use super::coder::PIECE_BYTES;
use super::marks::{KINDS, blank, kind_number};
use super::walk::{Walk, fields};

/// How many marks of the earlier alternative are looked at to find the one a mark is like.
const MOST_LOOKS: usize = 48;

/// A mark to be told: its id, and what it is like.
struct Listed {
    id: MarkId,
    kind: MarkKind,
    /// The mark of the earlier alternative it comes from, with its own ids.
    base: Option<Mark>,
}

impl Walk {
    /// An alternative; `earlier` are those told already.
    pub(super) fn alternative(&mut self, held: &mut Alternative, earlier: &[Alternative]) {
        self.coder.text(fields::ALTERNATIVE, &[], &mut held.name);
        self.coder.text(fields::TABLE, &[], &mut held.table);
        self.ground.forget_streets();
        let given: Vec<(MarkId, Mark)> = std::mem::take(&mut held.marks).into_iter().collect();
        let (likest, alignment) = likest(earlier, &given);
        let count = earlier.len() + 1;
        let base = self
            .coder
            .choice(fields::BASE, &[], count, likest.map_or(0, |place| place + 1));
        let base = base.checked_sub(1).and_then(|place| earlier.get(place));
        let largest = earlier.iter().filter_map(|held| held.marks.keys().next_back()).max();
        let largest = largest.map_or(-1, |id| i64::from(id.0));
        let listed = self.listed(base, &given, &alignment, largest);
        held.marks = self.bodies(listed, given);
    }

    /// The ids and kinds of all marks, in the order of their ids.
    fn listed(
        &mut self,
        base: Option<&Alternative>,
        given: &[(MarkId, Mark)],
        alignment: &[Option<usize>],
        largest: i64,
    ) -> Vec<Listed> {
        let mut listed: Vec<Listed> = Vec::new();
        let mut numbers = OrderedMap::new();
        if let Some(base) = base {
            let mut offset = 0;
            let mut was_dropped = 0;
            for (place, (base_id, mark)) in base.marks.iter().enumerate() {
                let kept = alignment.iter().position(|from| *from == Some(place));
                was_dropped = i64::from(self.coder.flag(fields::DROPPED, &[was_dropped], kept.is_none()));
                if was_dropped == 1 {
                    continue;
                }
                let id = kept
                    .and_then(|kept| given.get(kept))
                    .map_or(0, |(id, _)| i64::from(id.0));
                let expected = i64::from(base_id.0).saturating_add(offset);
                offset = offset.saturating_add(self.coder.number(fields::ID, &[], id.saturating_sub(expected)));
                let id = self.id(i64::from(base_id.0).saturating_add(offset));
                if self.coder.has_fault() || !self.coder.has_room_for((mark_bytes(mark) / PIECE_BYTES) as usize + 1) {
                    return Vec::new();
                }
                numbers.insert(*base_id, id);
                listed.push(Listed {
                    id,
                    kind: mark.kind(),
                    base: Some(mark.clone()),
                });
            }
            for listed in &mut listed {
                if let Some(mark) = &mut listed.base {
                    renumber(mark, &numbers);
                }
            }
        }
        let is_new = |place: usize| alignment.get(place).copied().flatten().is_none();
        let new: Vec<&(MarkId, Mark)> = given
            .iter()
            .enumerate()
            .filter(|(place, _)| is_new(*place))
            .map(|(_, new)| new)
            .collect();
        let count = self.coder.count(fields::MARKS, &[i64::from(base.is_some())], new.len());
        let mut before = (
            listed
                .iter()
                .map(|listed| i64::from(listed.id.0))
                .max()
                .unwrap_or(largest),
            -1,
        );
        for place in 0..count {
            if self.coder.has_fault() {
                return Vec::new();
            }
            let (id, kind) = new
                .get(place)
                .map_or((0, MarkKind::Street), |(id, mark)| (i64::from(id.0), mark.kind()));
            let step = self
                .coder
                .number(fields::ID + 1, &[], id.saturating_sub(before.0).saturating_sub(1));
            let kind = self
                .coder
                .choice(fields::KIND, &[before.1], KINDS.len(), kind_number(kind));
            before = (before.0.saturating_add(step).saturating_add(1), kind as i64);
            let id = self.id(before.0);
            listed.push(Listed {
                id,
                kind: KINDS.get(kind).copied().unwrap_or(MarkKind::Street),
                base: None,
            });
        }
        order::sort_by_key(&mut listed, |listed| listed.id);
        if listed.windows(2).any(|pair| matches!(pair, [a, b] if a.id == b.id)) {
            self.coder.fault(AddressFault::Impossible);
        }
        listed
    }

    fn id(&mut self, number: i64) -> MarkId {
        MarkId(u32::try_from(number).unwrap_or_else(|_| {
            self.coder.fault(AddressFault::Impossible);
            0
        }))
    }

    /// What the marks are: constraints, then streets, each behind those it holds on to, then the others by id.
    fn bodies(&mut self, mut listed: Vec<Listed>, given: Vec<(MarkId, Mark)>) -> OrderedMap<MarkId, Mark> {
        let streets: Vec<usize> = places_of(&listed, |kind| kind == MarkKind::Street);
        let order = if self.coder.is_reading() {
            Vec::new()
        } else {
            in_order(&given)
        };
        // While writing, what is listed is what is given: in the order of ids.
        let mut marks: Vec<Option<Mark>> = given.into_iter().map(|(_, mark)| Some(mark)).collect();
        marks.resize_with(listed.len(), || None);
        for place in places_of(&listed, |kind| kind == MarkKind::Constraint) {
            self.body(&mut listed, &mut marks, place);
        }
        let mut waiting: VecDeque<usize> = streets.into_iter().collect();
        let mut number = 0;
        while !waiting.is_empty() && !self.coder.has_fault() {
            let next = order.get(number);
            let next = next.and_then(|next| {
                waiting
                    .iter()
                    .position(|place| listed.get(*place).map(|held| held.id) == Some(*next))
            });
            let next = self.coder.number(fields::NEXT, &[], next.unwrap_or(0) as i64);
            match usize::try_from(next).ok().and_then(|next| waiting.remove(next)) {
                Some(place) => self.body(&mut listed, &mut marks, place),
                None => self.coder.fault(AddressFault::Impossible),
            }
            number += 1;
        }
        for place in places_of(&listed, |kind| !matches!(kind, MarkKind::Constraint | MarkKind::Street)) {
            self.body(&mut listed, &mut marks, place);
        }
        let told = listed.iter().zip(marks);
        told.filter_map(|(listed, mark)| Some((listed.id, mark?))).collect()
    }

    fn body(&mut self, listed: &mut [Listed], marks: &mut [Option<Mark>], place: usize) {
        let (Some(listed), Some(slot)) = (listed.get_mut(place), marks.get_mut(place)) else {
            return;
        };
        if self.coder.has_fault() {
            return;
        }
        let kind = kind_number(listed.kind);
        let is_base = listed.base.is_some();
        let latest = self.latest.get_mut(kind).and_then(Option::take);
        let like = listed.base.take().map(|base| self.on_its_feet(base)).or(latest);
        let like = like.unwrap_or_else(|| blank(listed.kind));
        let mut mark = match slot.take() {
            Some(given) => given,
            None if is_base => like.clone(),
            None => blank(listed.kind),
        };
        if is_base && self.coder.flag(fields::SAME, &[kind as i64], mark == like) {
            mark = like;
            self.take_note_of(listed.id, &mark);
        } else {
            self.is_base = is_base;
            self.mark(listed.id, &mut mark, &like);
            self.is_base = false;
        }
        if let Some(latest) = self.latest.get_mut(kind) {
            *latest = Some(mark.clone());
        }
        *slot = Some(mark);
    }

    /// The mark, a street's tied vertices where the streets they hold on to now have them.
    fn on_its_feet(&mut self, mut mark: Mark) -> Mark {
        if let Mark::Street(street) = &mut mark {
            for vertex in &mut street.line {
                let Some(tie) = vertex.tie else { continue };
                let foot = self.ground.foot(&mut self.coder, tie);
                vertex.point = foot.unwrap_or(vertex.point);
            }
        }
        mark
    }

    /// Remembers of a mark that is told without its parts what its parts would have left.
    fn take_note_of(&mut self, id: MarkId, mark: &Mark) {
        if let Mark::Street(street) = mark {
            for vertex in &street.line {
                self.ground.remember(vertex.point, vertex.tie);
            }
            self.ground
                .guide
                .remember(street.line.iter().map(|vertex| vertex.point).collect());
            self.ground.streets.push((id, street.line.clone()));
            self.street_start = street.line.first().map_or(self.street_start, |vertex| vertex.point);
        } else {
            let points = points_of(mark);
            for point in &points {
                self.ground.remember(*point, None);
            }
            self.ground.guide.remember(points);
        }
    }
}

/// The places of marks of some kinds, in the order of ids.
fn places_of(listed: &[Listed], is_meant: impl Fn(MarkKind) -> bool) -> Vec<usize> {
    let meant = listed.iter().enumerate().filter(|(_, listed)| is_meant(listed.kind));
    meant.map(|(place, _)| place).collect()
}

/// The streets among marks, each behind those it holds on to; by id where they hold on to each other in a circle.
fn in_order(given: &[(MarkId, Mark)]) -> Vec<MarkId> {
    let streets = given.iter().filter(|(_, mark)| mark.kind() == MarkKind::Street);
    let streets: Vec<MarkId> = streets.map(|(id, _)| *id).collect();
    let held_by = |id: MarkId| {
        let place = given.binary_search_by_key(&id, |(id, _)| *id).ok();
        let street = place.and_then(|place| given.get(place)?.1.as_street());
        street.map_or_else(Vec::new, ties_of)
    };
    in_holding_order(&streets, held_by).unwrap_or(streets)
}

/// The earlier alternative most marks come from, and for each mark the place of the one there that it is like.
fn likest(earlier: &[Alternative], given: &[(MarkId, Mark)]) -> (Option<usize>, Vec<Option<usize>>) {
    let mut best = (None, Vec::new(), 0);
    for (place, held) in earlier.iter().enumerate() {
        let there: Vec<(&MarkId, &Mark)> = held.marks.iter().collect();
        let mut next = 0;
        let mut found = 0;
        let mut alignment = Vec::with_capacity(given.len());
        for (_, mark) in given {
            let looks = there.iter().enumerate().skip(next).take(MOST_LOOKS);
            let like = looks
                .into_iter()
                .find(|(_, (_, other))| are_alike(mark, other))
                .map(|(place, _)| place);
            if let Some(like) = like {
                next = like + 1;
                found += 1;
            }
            alignment.push(like);
        }
        if found > best.2 {
            best = (Some(place), alignment, found);
        }
    }
    (best.0, best.1)
}

/// Whether two marks are of one kind and have a point in common.
fn are_alike(a: &Mark, b: &Mark) -> bool {
    if a.kind() != b.kind() {
        return false;
    }
    let there = points_of(b);
    points_of(a).iter().any(|point| there.contains(point))
}

/// The points of a mark.
pub(super) fn points_of(mark: &Mark) -> Vec<PlanPoint> {
    match mark {
        Mark::Street(street) => street.line.iter().map(|vertex| vertex.point).collect(),
        Mark::Use(held) => vec![held.anchor],
        Mark::SoftArea(area) => area.outline.clone(),
        Mark::Constraint(area) => area.outline.clone(),
        Mark::Place(place) => place.footprint.points().to_vec(),
        Mark::SiteAccess(access) => vec![access.at],
        Mark::Parcel(parcel) => parcel.outline.clone(),
        Mark::Barrier(barrier) => barrier.line.clone(),
        Mark::Crossing(crossing) => vec![crossing.at],
        Mark::Outside(outside) => outside.footprint.points().to_vec(),
        Mark::Note(note) => vec![note.at],
    }
}

/// Puts the ids of another alternative in place of those a mark refers to.
fn renumber(mark: &mut Mark, numbers: &OrderedMap<MarkId, MarkId>) {
    let put = |id: &mut MarkId| {
        if let Some(number) = numbers.get(id) {
            *id = *number;
        }
    };
    match mark {
        Mark::Street(street) => street
            .line
            .iter_mut()
            .filter_map(|vertex| vertex.tie.as_mut())
            .for_each(|tie| put(&mut tie.street)),
        Mark::Use(held) => held.sides.iter_mut().for_each(|side| put(&mut side.street)),
        _ => {}
    }
}
