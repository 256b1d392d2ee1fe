//! Which place a tie means after the street it held on to was reshaped, cut, joined or removed.

use crate::order::{OrderedMap, OrderedSet};

use super::{SAME_PLACE_MM, WHOLE_PPB, foot, nearest_tie, nearest_within, ties_of};
use crate::order;
use crate::plan::coordinates::PlanPoint;
use crate::plan::document::Document;
use crate::plan::edit::Edit;
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::mark::Mark;
use crate::plan::street::{Street, Tie, Vertex};

/// The streets of one alternative before and after some edits.
///
/// A gesture edits few of many streets, so those are kept apart and the others are looked up where they stand.
pub(super) struct Streets<'a> {
    before: Option<&'a OrderedMap<MarkId, Mark>>,
    /// What stands where `edited` says nothing: as before, or as a whole alternative was put.
    beneath: Option<&'a OrderedMap<MarkId, Mark>>,
    /// As the edits leave single streets; `None` where they leave none.
    edited: OrderedMap<MarkId, Option<&'a Street>>,
    /// Added, removed or altered.
    pub changed: OrderedSet<MarkId>,
}

impl<'a> Streets<'a> {
    pub(super) fn over(document: &'a Document, alternative: AlternativeId, edits: &'a [Edit]) -> Self {
        let before = document.alternatives.get(&alternative).map(|held| &held.marks);
        let mut streets = Self {
            before,
            beneath: before,
            edited: OrderedMap::new(),
            changed: OrderedSet::new(),
        };
        let mut touched = OrderedSet::new();
        for edit in edits {
            match edit {
                Edit::Alternative { id, after: whole, .. } if *id == alternative => {
                    touched.extend(ids_of(streets.beneath).chain(streets.edited.keys().copied()));
                    streets.beneath = whole.as_ref().map(|whole| &whole.marks);
                    streets.edited.clear();
                    touched.extend(ids_of(streets.beneath));
                }
                Edit::Mark {
                    alternative: of,
                    id,
                    after: mark,
                    ..
                } if *of == alternative => {
                    touched.insert(*id);
                    streets.edited.insert(*id, mark.as_deref().and_then(Mark::as_street));
                }
                _ => {}
            }
        }
        streets.changed = touched
            .into_iter()
            .filter(|id| streets.before(*id) != streets.after(*id))
            .collect();
        streets
    }

    fn before(&self, id: MarkId) -> Option<&'a Street> {
        self.before?.get(&id)?.as_street()
    }

    /// A street as the edits leave it.
    pub(super) fn after(&self, id: MarkId) -> Option<&'a Street> {
        match self.edited.get(&id) {
            Some(edited) => *edited,
            None => self.beneath?.get(&id)?.as_street(),
        }
    }

    /// The streets that hold on to others after the edits, in order of their ids.
    pub(super) fn holders(&self) -> Vec<(MarkId, &'a Street)> {
        let beneath = self.beneath.into_iter().flatten();
        let beneath = beneath.filter_map(|(id, mark)| Some((*id, mark.as_street()?)));
        let holds_on = |street: &Street| street.line.iter().any(|vertex| vertex.tie.is_some());
        let untouched = beneath.filter(|(id, street)| holds_on(street) && !self.edited.contains_key(id));
        let edited = self.edited.iter().filter_map(|(id, street)| Some((*id, (*street)?)));
        let mut holders: Vec<(MarkId, &Street)> = untouched.chain(edited.filter(|(_, one)| holds_on(one))).collect();
        order::sort_by_key(&mut holders, |(id, _)| *id);
        holders
    }

    /// `street` with its ties rewritten so that they mean the places they meant before; `None` where none needs it.
    pub(super) fn with_ties_kept_in_place(&self, id: MarkId, street: &Street) -> Option<Street> {
        let needs_look = |vertex: &Vertex| vertex.tie.is_some_and(|tie| self.changed.contains(&tie.street));
        if !street.line.iter().any(needs_look) {
            return None;
        }
        // A tie the street did not have before was written for the streets as they are now.
        let ties_before: Vec<Tie> = self.before(id).map_or_else(Vec::new, |street| {
            street.line.iter().filter_map(|vertex| vertex.tie).collect()
        });
        let mut rewritten = street.clone();
        for vertex in rewritten.line.iter_mut().filter(|vertex| needs_look(vertex)) {
            if let Some(tie) = vertex.tie.filter(|tie| ties_before.contains(tie)) {
                vertex.tie = self.followed(id, tie);
            }
        }
        (rewritten != *street).then_some(rewritten)
    }

    /// What `tie` of street `holder` has become; `None` where there is nothing left to hold on to.
    fn followed(&self, holder: MarkId, tie: Tie) -> Option<Tie> {
        let Some(before) = self.before(tie.street) else {
            return Some(tie);
        };
        let Some(stood) = foot(&before.line, tie.segment, tie.along_ppb) else {
            return Some(tie);
        };
        let Some(after) = self.after(tie.street) else {
            return self.taken_over(holder, tie.street, stood);
        };
        let is_cut = self.is_cut(&before.line, &after.line);
        match placed(tie, &before.line, &after.line, is_cut) {
            Placed::At(tie) => Some(tie),
            Placed::Within(segments) => {
                let nearest = nearest_within(tie.street, &after.line, segments, stood);
                let is_in_place = nearest.is_some_and(|(_, foot)| is_same_place(foot, stood));
                if is_in_place {
                    nearest.map(|(tie, _)| tie)
                } else {
                    self.taken_over(holder, tie.street, stood)
                        .or(nearest.map(|(tie, _)| tie))
                }
            }
        }
    }

    /// The nearest changed street other than `former` that now runs through `stood` and that `holder` may hold on to.
    fn taken_over(&self, holder: MarkId, former: MarkId, stood: PlanPoint) -> Option<Tie> {
        self.changed
            .iter()
            .filter(|&&id| id != former && !self.holds_on(id, holder))
            .filter_map(|&id| nearest_tie(id, &self.after(id)?.line, stood))
            .filter(|(_, foot)| is_same_place(*foot, stood))
            .min_by_key(|(tie, foot)| (foot.squared_distance_mm2(stood), *tie))
            .map(|(tie, _)| tie)
    }

    /// Whether street `from` is, or holds on to, street `to`, directly or through others.
    fn holds_on(&self, from: MarkId, to: MarkId) -> bool {
        let (mut seen, mut waiting) = (OrderedSet::new(), vec![from]);
        while let Some(id) = waiting.pop() {
            if id == to {
                return true;
            }
            if seen.insert(id) {
                waiting.extend(self.after(id).map_or_else(Vec::new, ties_of));
            }
        }
        false
    }

    /// Whether a street was cut: one of its ends has come to lie on its former line, where an added street begins or
    /// ends. A lone moved end is not a cut, and takes the ties along.
    fn is_cut(&self, before: &[Vertex], after: &[Vertex]) -> bool {
        let ends = |line: &[Vertex]| [line.first(), line.last()].map(|end| end.map(|vertex| vertex.point));
        let ends_before = ends(before);
        ends(after)
            .into_iter()
            .flatten()
            .filter(|end| !ends_before.contains(&Some(*end)))
            .filter(|end| nearest_tie(MarkId(0), before, *end).is_some_and(|(_, foot)| is_same_place(foot, *end)))
            .any(|end| {
                let mut added = self.changed.iter().filter(|id| self.before(**id).is_none());
                added.any(|id| {
                    self.after(*id)
                        .is_some_and(|street| ends(&street.line).contains(&Some(end)))
                })
            })
    }
}

/// The marks that are streets.
fn ids_of(marks: Option<&OrderedMap<MarkId, Mark>>) -> impl Iterator<Item = MarkId> + '_ {
    let streets = marks
        .into_iter()
        .flatten()
        .filter(|(_, mark)| mark.as_street().is_some());
    streets.map(|(id, _)| *id)
}

/// Where a tie is to be looked for on the reshaped line.
enum Placed {
    /// Exactly here.
    At(Tie),
    /// At the nearest place of these segments.
    Within(std::ops::Range<usize>),
}

/// Where `tie` is on `after`, knowing `before`. With as many vertices as before the tie keeps its share. With more or
/// fewer, the vertices shared at either end tell which segments are the same, and the rest is searched.
fn placed(tie: Tie, before: &[Vertex], after: &[Vertex], is_cut: bool) -> Placed {
    let is_same = |(a, b): &(&Vertex, &Vertex)| a.point == b.point;
    let segment = tie.segment as usize;
    if before.len() == after.len() && !is_cut {
        let is_turned = before.iter().zip(after.iter().rev()).all(|pair| is_same(&pair))
            && !before.iter().zip(after).all(|pair| is_same(&pair));
        return Placed::At(if is_turned {
            let last = before.len().saturating_sub(2) as u32;
            Tie {
                segment: last.saturating_sub(tie.segment),
                along_ppb: WHOLE_PPB.saturating_sub(tie.along_ppb),
                ..tie
            }
        } else {
            tie
        });
    }
    let shorter = before.len().min(after.len());
    let head = before.iter().zip(after).take_while(is_same).count();
    let tail = before.iter().rev().zip(after.iter().rev()).take_while(is_same).count();
    let tail = tail.min(shorter - head);
    if segment + 1 < head {
        return Placed::At(tie);
    }
    if segment >= before.len() - tail {
        let moved = segment + after.len() - before.len();
        return u32::try_from(moved).map_or(Placed::Within(0..0), |segment| Placed::At(Tie { segment, ..tie }));
    }
    let end = (after.len() - tail).min(after.len().saturating_sub(1));
    Placed::Within(head.saturating_sub(1)..end)
}

fn is_same_place(a: PlanPoint, b: PlanPoint) -> bool {
    a.squared_distance_mm2(b) <= SAME_PLACE_MM * SAME_PLACE_MM
}
