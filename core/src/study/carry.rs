//! Carrying uses over: what happens to painted land when the streets around it change.
//!
//! The faces at a gesture's start are laid over the faces at its end. Each old face passes its use on to the new face
//! that took the largest part of it; that new face *descends* from it. Then
//! - a face that descends from one keeps its mark;
//! - a face that descends from several, each more than [`MIX_SHARE_PPM`] of it, mixes their programs by area, and the
//!   mark of the largest stays;
//! - a face that descends from none (the smaller part of a face cut in two) gets a copy of the mark of the face it
//!   mostly lies on;
//! - a mark whose land has opened stays asleep at its anchor, and wakes when land is enclosed around it again.
//!
//! The outcome depends on the two sets of faces and the marks at the start, never on what lay between.

use crate::order;
use crate::order::OrderedMap;
use std::sync::Arc;

use super::overlap::{Rings, twice_shared_area_mm2};
use crate::plan::land::Portion;
use crate::plan::{BuildingTypeId, MarkId, PlanPoint, SideUse, UseMark};

/// A face takes part in a mix when it makes up more than this share of the new face: 5 %. Below it a sliver left by
/// moving a street would stain the use of a block. Larger loses small parcels in a merge; smaller lets slivers in.
pub const MIX_SHARE_PPM: i128 = 50_000;

/// One face: its rings, a point inside it, and its buildable land.
#[derive(Clone, Debug)]
pub struct Face {
    /// The rings; faces that share them are the same face.
    pub rings: Arc<Rings>,
    /// A point inside, the same for equal faces.
    pub inside: PlanPoint,
    /// Buildable land in square meters, rounded.
    pub land_m2: u32,
}

/// The uses that stand after the streets have changed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Carried {
    /// Marks to put in place, by id: changed ones and copies.
    pub put: OrderedMap<MarkId, UseMark>,
    /// Marks that merged into another and go.
    pub gone: Vec<MarkId>,
}

/// What stood at the gesture's start.
pub struct Start<'a> {
    /// The faces.
    pub faces: &'a [Face],
    /// The use marks, without those the gesture itself has laid.
    pub marks: &'a OrderedMap<MarkId, UseMark>,
    /// The face each mark speaks for; a mark missing here is asleep.
    pub face_of: &'a OrderedMap<MarkId, usize>,
}

/// What stands at its end.
pub struct End<'a, F: Fn(PlanPoint) -> Option<usize>> {
    /// The faces.
    pub faces: &'a [Face],
    /// The face a point lies in.
    pub face_at: F,
    /// Anchors of marks the gesture itself has laid: their faces are left as the user said.
    pub laid: &'a [PlanPoint],
    /// The first id free for a copy.
    pub next_id: MarkId,
}

/// Lays the faces at the start over the faces at the end and says which marks change.
///
/// Copies take ids from `next_id` in the order of the faces' inside points. Cost: faces that are the same before and
/// after are matched by sorting; only changed faces are overlaid.
#[must_use]
pub fn carry<F: Fn(PlanPoint) -> Option<usize>>(start: &Start<'_>, end: &End<'_, F>) -> Carried {
    let changed = changed_faces(start.faces, end.faces);
    let mut carried = Carried::default();
    if changed.after.is_empty() {
        return carried;
    }
    let shares = shared_areas(start.faces, end.faces, &changed);
    let mut mark_of: OrderedMap<usize, MarkId> = OrderedMap::new();
    for (mark, face) in start.face_of {
        // The marks come in the order of their ids, so the least id speaks for a face that holds several.
        mark_of.entry(*face).or_insert(*mark);
    }
    let heir = heirs(start, end, &shares, &mark_of);
    let laid: Vec<Option<usize>> = end.laid.iter().map(|anchor| (end.face_at)(*anchor)).collect();
    let mut next_id = end.next_id;
    for &new in &changed.after {
        let face = &end.faces[new];
        let sources = shares.get(&new).map_or(&[][..], Vec::as_slice);
        let descends: Vec<(usize, i128)> = sources
            .iter()
            .filter(|(old, _)| heir.get(old) == Some(&new))
            .copied()
            .collect();
        let asleep: Vec<MarkId> = sleeping_in(new, start, end);
        if laid.contains(&Some(new)) {
            let descended = descends.iter().filter_map(|(old, _)| mark_of.get(old)).copied();
            carried.gone.extend(descended.chain(asleep));
        } else if let Some(mut settled) = settle(face, &descends, &mark_of, start.marks) {
            if (end.face_at)(settled.mark.anchor) != Some(new) {
                settled.mark.anchor = face.inside;
            }
            carried.keep(start, settled.keeps, settled.mark);
            carried.gone.extend(settled.goes.into_iter().chain(asleep));
        } else if let Some((&wakes, others)) = asleep.split_first() {
            if let Some(mark) = start.marks.get(&wakes) {
                carried.keep(
                    start,
                    wakes,
                    UseMark {
                        land_m2: face.land_m2,
                        ..mark.clone()
                    },
                );
            }
            carried.gone.extend(others);
        } else if descends.is_empty()
            && let Some(copy) = copy_of_largest(face, sources, &mark_of, start.marks)
        {
            carried.put.insert(next_id, copy);
            next_id = MarkId(next_id.0.saturating_add(1));
        }
    }
    order::sort(&mut carried.gone);
    carried.gone.dedup();
    carried
}

impl Carried {
    /// Notes `mark` under `id` where it differs from what stood at the start.
    fn keep(&mut self, start: &Start<'_>, id: MarkId, mark: UseMark) {
        if start.marks.get(&id) != Some(&mark) {
            self.put.insert(id, mark);
        }
    }
}

/// Faces that are not the same before and after, in the order of their inside points.
struct Changed {
    before: Vec<usize>,
    after: Vec<usize>,
}

/// How many faces may be gone between two that stay, before the next one is looked up.
const IN_STEP: usize = 8;

fn changed_faces(before: &[Face], after: &[Face]) -> Changed {
    // Rings held in common need no comparing. Most faces follow one another as they did; the others are looked up.
    let (mut old, mut new) = (Vec::new(), Vec::new());
    let mut next = 0;
    for (face, held) in after.iter().enumerate() {
        let mut near = next..before.len().min(next + IN_STEP);
        match near.find(|other| Arc::ptr_eq(&before[*other].rings, &held.rings)) {
            Some(same) => {
                old.extend(next..same);
                next = same + 1;
            }
            None => new.push(face),
        }
    }
    old.extend(next..before.len());
    let place = |face: &Face| Arc::as_ptr(&face.rings).addr();
    let mut places = OrderedMap::from_iter(old.into_iter().map(|face| (place(&before[face]), face)));
    new.retain(|face| places.remove(&place(&after[*face])).is_none());
    let mut old: Vec<usize> = places.into_values().collect();
    order::sort_by(&mut old, |a, b| before[*a].rings.cmp(&before[*b].rings));
    order::sort_by(&mut new, |a, b| after[*a].rings.cmp(&after[*b].rings));
    let (mut old_changed, mut new_changed) = (Vec::new(), Vec::new());
    let (mut i, mut j) = (0, 0);
    while i < old.len() || j < new.len() {
        let order = match (old.get(i), new.get(j)) {
            (Some(a), Some(b)) => before[*a].rings.cmp(&after[*b].rings),
            (Some(_), None) => std::cmp::Ordering::Less,
            (None, _) => std::cmp::Ordering::Greater,
        };
        match order {
            std::cmp::Ordering::Equal => {
                i += 1;
                j += 1;
            }
            std::cmp::Ordering::Less => {
                old_changed.push(old[i]);
                i += 1;
            }
            std::cmp::Ordering::Greater => {
                new_changed.push(new[j]);
                j += 1;
            }
        }
    }
    order::sort_by_key(&mut old_changed, |face| before[*face].inside);
    order::sort_by_key(&mut new_changed, |face| after[*face].inside);
    Changed {
        before: old_changed,
        after: new_changed,
    }
}

/// For each changed new face, the old faces it lies on and twice the shared area, largest first.
fn shared_areas(before: &[Face], after: &[Face], changed: &Changed) -> OrderedMap<usize, Vec<(usize, i128)>> {
    let mut shares = OrderedMap::new();
    for &new in &changed.after {
        let Some(new_bounds) = after[new].rings.bounds() else {
            continue;
        };
        let mut sources: Vec<(usize, i128)> = changed
            .before
            .iter()
            .filter(|old| {
                before[**old]
                    .rings
                    .bounds()
                    .is_some_and(|bounds| bounds.overlap(&new_bounds))
            })
            .map(|old| (*old, twice_shared_area_mm2(&before[*old].rings, &after[new].rings)))
            .filter(|(_, area)| *area > 0)
            .collect();
        order::sort_by_key(&mut sources, |(old, area)| {
            (std::cmp::Reverse(*area), before[*old].inside)
        });
        shares.insert(new, sources);
    }
    shares
}

/// The new face each old face passes its use on to: the one that took the largest part of it. Where most of it has
/// opened, it passes on only to the face that still holds its mark's anchor.
fn heirs<F: Fn(PlanPoint) -> Option<usize>>(
    start: &Start<'_>,
    end: &End<'_, F>,
    shares: &OrderedMap<usize, Vec<(usize, i128)>>,
    mark_of: &OrderedMap<usize, MarkId>,
) -> OrderedMap<usize, usize> {
    let mut best: OrderedMap<usize, (i128, usize)> = OrderedMap::new();
    let mut covered: OrderedMap<usize, i128> = OrderedMap::new();
    for (new, sources) in shares {
        for (old, area) in sources {
            *covered.entry(*old).or_default() += area;
            let held = best.entry(*old).or_insert((*area, *new));
            let inside = |face: usize| end.faces[face].inside;
            if *area > held.0 || (*area == held.0 && inside(*new) < inside(held.1)) {
                *held = (*area, *new);
            }
        }
    }
    let passes_on = |(old, (area, new)): (usize, (i128, usize))| {
        let opened = start.faces[old].rings.twice_area_mm2() - covered.get(&old).copied().unwrap_or(0);
        if area >= opened {
            return Some((old, new));
        }
        let anchor = start.marks.get(mark_of.get(&old)?)?.anchor;
        Some((old, (end.face_at)(anchor)?))
    };
    best.into_iter().filter_map(passes_on).collect()
}

struct Settled {
    mark: UseMark,
    keeps: MarkId,
    goes: Vec<MarkId>,
}

/// The mark of a face that descends from `sources` (largest first); `None` when none of them has a mark.
fn settle(
    face: &Face,
    sources: &[(usize, i128)],
    mark_of: &OrderedMap<usize, MarkId>,
    marks: &OrderedMap<MarkId, UseMark>,
) -> Option<Settled> {
    let marked = |old: &usize| mark_of.get(old).and_then(|id| Some((*id, marks.get(id)?)));
    let (keeps, largest) = sources.iter().find_map(|(old, _)| marked(old))?;
    let total = face.rings.twice_area_mm2().max(1);
    let parts: Vec<&(usize, i128)> = sources
        .iter()
        .filter(|(_, area)| *area * 1_000_000 > total * MIX_SHARE_PPM)
        .collect();
    let mut mark = largest.clone();
    if parts.len() > 1 {
        mark.program = mixed(
            parts
                .iter()
                .map(|(old, area)| (marked(old).map(|(_, mark)| mark), *area)),
        );
        mark.sides = joined_sides(parts.iter().filter_map(|(old, _)| marked(old)).map(|(_, mark)| mark));
    }
    mark.land_m2 = face.land_m2;
    let goes = sources
        .iter()
        .filter_map(|(old, _)| marked(old))
        .map(|(id, _)| id)
        .filter(|id| *id != keeps)
        .collect();
    Some(Settled { mark, keeps, goes })
}

/// Programs mixed by area, in the order of the largest; land without a use takes its share of nothing.
fn mixed<'a>(parts: impl Iterator<Item = (Option<&'a UseMark>, i128)>) -> Vec<Portion> {
    let mut weights: Vec<(BuildingTypeId, i128)> = Vec::new();
    let mut total = 0;
    for (mark, area) in parts {
        total += area;
        for portion in mark.iter().flat_map(|mark| &mark.program) {
            let weight = i128::from(portion.share_ppm) * area;
            match weights
                .iter_mut()
                .find(|(building_type, _)| *building_type == portion.building_type)
            {
                Some((_, held)) => *held += weight,
                None => weights.push((portion.building_type, weight)),
            }
        }
    }
    let share_ppm = |weight: i128| u32::try_from((weight + total / 2) / total.max(1)).unwrap_or(0);
    weights
        .into_iter()
        .map(|(building_type, weight)| Portion {
            building_type,
            share_ppm: share_ppm(weight),
        })
        .filter(|portion| portion.share_ppm > 0)
        .collect()
}

/// The sides of several marks, each named once.
fn joined_sides<'a>(marks: impl Iterator<Item = &'a UseMark>) -> Vec<SideUse> {
    let mut sides: Vec<SideUse> = Vec::new();
    for side in marks.flat_map(|mark| &mark.sides) {
        if !sides
            .iter()
            .any(|held| (held.street, held.hand, held.at) == (side.street, side.hand, side.at))
        {
            sides.push(side.clone());
        }
    }
    sides
}

/// The sleeping marks whose anchors a new face encloses, the one with the most land first.
fn sleeping_in<F: Fn(PlanPoint) -> Option<usize>>(new: usize, start: &Start<'_>, end: &End<'_, F>) -> Vec<MarkId> {
    let mut sleeping: Vec<(&MarkId, &UseMark)> = start
        .marks
        .iter()
        .filter(|(id, mark)| !start.face_of.contains_key(id) && (end.face_at)(mark.anchor) == Some(new))
        .collect();
    order::sort_by_key(&mut sleeping, |(id, mark)| (std::cmp::Reverse(mark.land_m2), **id));
    sleeping.into_iter().map(|(id, _)| *id).collect()
}

/// A copy of the mark of the old face that makes up most of this one.
fn copy_of_largest(
    face: &Face,
    sources: &[(usize, i128)],
    mark_of: &OrderedMap<usize, MarkId>,
    marks: &OrderedMap<MarkId, UseMark>,
) -> Option<UseMark> {
    let (old, _) = sources.first()?;
    let mut mark = marks.get(mark_of.get(old)?)?.clone();
    mark.anchor = face.inside;
    mark.land_m2 = face.land_m2;
    Some(mark)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A rectangle in meters.
    fn face(x: [i32; 2], y: [i32; 2]) -> Face {
        let at = |x: i32, y: i32| PlanPoint::new(x * 1000, y * 1000);
        let ring = vec![at(x[0], y[0]), at(x[1], y[0]), at(x[1], y[1]), at(x[0], y[1])];
        let inside = PlanPoint::new((x[0] + x[1]) * 500, (y[0] + y[1]) * 500);
        let land_m2 = u32::try_from((x[1] - x[0]) * (y[1] - y[0])).unwrap();
        Face {
            rings: Arc::new(Rings::canonical(vec![ring])),
            inside,
            land_m2,
        }
    }

    fn contains(face: &Face, point: PlanPoint) -> bool {
        let bounds = face.rings.rings[0].iter();
        let (low, high) = (*bounds.clone().min().unwrap(), *bounds.max().unwrap());
        low.x_mm < point.x_mm && point.x_mm < high.x_mm && low.y_mm < point.y_mm && point.y_mm < high.y_mm
    }

    fn homes_at(x: i32, y: i32, building_type: u32, land_m2: u32) -> UseMark {
        let program = vec![Portion {
            building_type: BuildingTypeId(building_type),
            share_ppm: 1_000_000,
        }];
        UseMark {
            anchor: PlanPoint::new(x * 1000, y * 1000),
            program,
            land_m2,
            sides: Vec::new(),
            phase: None,
        }
    }

    fn carried(before: &[Face], after: &[Face], marks: &[(u32, UseMark)]) -> Carried {
        let marks: OrderedMap<MarkId, UseMark> = marks.iter().map(|(id, mark)| (MarkId(*id), mark.clone())).collect();
        let find = |faces: &[Face], point| faces.iter().position(|face| contains(face, point));
        let face_of = marks
            .iter()
            .filter_map(|(id, mark)| Some((*id, find(before, mark.anchor)?)))
            .collect();
        let start = Start {
            faces: before,
            marks: &marks,
            face_of: &face_of,
        };
        let end = End {
            faces: after,
            face_at: |point| find(after, point),
            laid: &[],
            next_id: MarkId(100),
        };
        carry(&start, &end)
    }

    #[test]
    fn both_halves_of_a_cut_face_keep_the_use() {
        let mark = homes_at(30, 50, 7, 10_000);
        let result = carried(
            &[face([0, 100], [0, 100])],
            &[face([0, 60], [0, 100]), face([60, 100], [0, 100])],
            &[(1, mark)],
        );
        assert_eq!(result.gone, []);
        assert_eq!(result.put[&MarkId(1)].land_m2, 6_000);
        assert_eq!(result.put[&MarkId(100)], homes_at(80, 50, 7, 4_000));
    }

    #[test]
    fn the_smaller_half_gets_the_copy_wherever_the_anchor_is() {
        let mark = homes_at(90, 50, 7, 10_000);
        let result = carried(
            &[face([0, 100], [0, 100])],
            &[face([0, 60], [0, 100]), face([60, 100], [0, 100])],
            &[(1, mark)],
        );
        assert_eq!(result.put[&MarkId(1)], homes_at(30, 50, 7, 6_000));
        assert_eq!(result.put[&MarkId(100)], homes_at(80, 50, 7, 4_000));
    }

    #[test]
    fn merged_faces_mix_by_area_and_one_mark_stays() {
        let before = [face([0, 60], [0, 100]), face([60, 100], [0, 100])];
        let result = carried(
            &before,
            &[face([0, 100], [0, 100])],
            &[(1, homes_at(30, 50, 7, 6_000)), (2, homes_at(80, 50, 8, 4_000))],
        );
        assert_eq!(result.gone, [MarkId(2)]);
        let shares: Vec<(u32, u32)> = result.put[&MarkId(1)]
            .program
            .iter()
            .map(|portion| (portion.building_type.0, portion.share_ppm))
            .collect();
        assert_eq!(shares, [(7, 600_000), (8, 400_000)]);
    }

    #[test]
    fn a_sliver_does_not_stain_a_block() {
        let before = [face([0, 96], [0, 100]), face([96, 100], [0, 100])];
        let result = carried(
            &before,
            &[face([0, 100], [0, 100])],
            &[(1, homes_at(30, 50, 7, 9_600)), (2, homes_at(98, 50, 8, 400))],
        );
        assert_eq!(result.put[&MarkId(1)], homes_at(30, 50, 7, 10_000));
        assert_eq!(result.gone, [MarkId(2)]);
    }

    #[test]
    fn moving_the_street_between_two_blocks_changes_neither_use() {
        let before = [face([0, 50], [0, 100]), face([50, 100], [0, 100])];
        let after = [face([0, 70], [0, 100]), face([70, 100], [0, 100])];
        let marks = [(1, homes_at(30, 50, 7, 5_000)), (2, homes_at(80, 50, 8, 5_000))];
        let result = carried(&before, &after, &marks);
        assert_eq!(result.gone, []);
        assert_eq!(result.put[&MarkId(1)], homes_at(30, 50, 7, 7_000));
        assert_eq!(result.put[&MarkId(2)], homes_at(80, 50, 8, 3_000));
        let back = carried(
            &after,
            &before,
            &[(1, result.put[&MarkId(1)].clone()), (2, result.put[&MarkId(2)].clone())],
        );
        assert_eq!(
            back.put,
            marks.iter().map(|(id, mark)| (MarkId(*id), mark.clone())).collect()
        );
    }

    #[test]
    fn opened_land_sleeps_and_wakes() {
        let marks = [(1, homes_at(30, 50, 7, 10_000))];
        assert_eq!(carried(&[face([0, 100], [0, 100])], &[], &marks), Carried::default());
        let woken = carried(&[], &[face([0, 100], [0, 80])], &marks);
        assert_eq!(woken.put[&MarkId(1)], homes_at(30, 50, 7, 8_000));
        assert_eq!(woken.gone, []);
    }

    #[test]
    fn new_land_beside_a_use_stays_without_one() {
        let before = [face([0, 100], [0, 100])];
        let after = [face([0, 100], [0, 100]), face([100, 200], [0, 100])];
        assert_eq!(
            carried(&before, &after, &[(1, homes_at(30, 50, 7, 10_000))]),
            Carried::default()
        );
    }
}
