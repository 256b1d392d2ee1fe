//! Many marks selected together: by a box, one by one with Shift.

use hobnail_core::order::OrderedMap;
use hobnail_core::plan::editing::motion::{bounds, each_point};
use hobnail_core::plan::tie::ties_of;
use hobnail_core::plan::{Alternative, Mark, MarkId, PlanPoint};

use crate::tools::{Land, Sight};

/// The marks that are selected.
#[must_use]
pub fn chosen(sight: &Sight<'_>) -> Vec<MarkId> {
    match sight.selection {
        Some(selection) => vec![selection.mark()],
        None => sight.picked.to_vec(),
    }
}

/// Those of the selected marks that can be moved. The use of land can not: it goes with its block.
pub(super) fn movable(sight: &Sight<'_>) -> Vec<MarkId> {
    let mut ids = Vec::new();
    for id in chosen(sight) {
        let mark = sight.document.mark(sight.alternative, id);
        if mark.and_then(Mark::as_use).is_none() {
            ids.push(id);
        }
    }
    ids
}

/// The land on which the mark of this id lies, where it is the use of any.
fn land_of(id: MarkId, mark: &Mark, sight: &Sight<'_>) -> Option<Land> {
    let land = (sight.land_at)(mark.as_use()?.anchor)?;
    (land.use_mark == Some(id)).then_some(land)
}

/// The uses of blocks whose boundary is some of these streets and nothing else.
pub(super) fn enclosed(streets: &[MarkId], sight: &Sight<'_>) -> Vec<(MarkId, Mark)> {
    let mut uses = Vec::new();
    for (id, mark) in sight.drawn().into_iter().flat_map(|alternative| &alternative.marks) {
        let Some(land) = land_of(*id, mark, sight) else {
            continue;
        };
        if land.is_among_streets && land.sides.iter().all(|side| streets.contains(&side.street)) {
            uses.push((*id, mark.clone()));
        }
    }
    uses
}

/// The selection with a mark more, or without it where it was selected.
pub(super) fn toggled(id: MarkId, sight: &Sight<'_>) -> Vec<MarkId> {
    let mut ids = chosen(sight);
    match ids.iter().position(|held| *held == id) {
        Some(index) => drop(ids.remove(index)),
        None => ids.push(id),
    }
    ids
}

/// The marks that lie wholly in the box between two corners, and the uses of land that does, with those selected before
/// where it adds to them.
pub(super) fn inside(one: PlanPoint, other: PlanPoint, is_adding: bool, sight: &Sight<'_>) -> Vec<MarkId> {
    let mut ids = if is_adding { chosen(sight) } else { Vec::new() };
    let is_between = |at: i32, one: i32, other: i32| at >= one.min(other) && at <= one.max(other);
    for (id, mark) in sight.drawn().into_iter().flat_map(|alternative| &alternative.marks) {
        let (mut has_points, mut is_inside) = (false, true);
        let look_at: &mut dyn FnMut(&mut PlanPoint) = &mut |point| {
            has_points = true;
            is_inside &= is_between(point.x_mm, one.x_mm, other.x_mm) && is_between(point.y_mm, one.y_mm, other.y_mm);
        };
        match land_of(*id, mark, sight) {
            Some(land) => {
                for mut point in land.outline {
                    look_at(&mut point);
                }
            }
            None => each_point(&mut mark.clone(), look_at),
        }
        if has_points && is_inside && !ids.contains(id) {
            ids.push(*id);
        }
    }
    ids
}

/// The corners of the box.
pub(super) fn outline(one: PlanPoint, other: PlanPoint) -> Vec<PlanPoint> {
    vec![
        one,
        PlanPoint::new(other.x_mm, one.y_mm),
        other,
        PlanPoint::new(one.x_mm, other.y_mm),
    ]
}

/// The middle of what some marks span.
pub(super) fn middle(marks: &[(MarkId, Mark)]) -> Option<PlanPoint> {
    let (least, most) = bounds(marks)?;
    PlanPoint::mean_of(&[least, most])
}

/// The given marks but uses of land, and every street they hold on to, apart from the rest: a preview must not change
/// what they stand on.
pub(super) fn ground(ids: &[MarkId], alternative: &Alternative) -> Alternative {
    let mut ground = Alternative {
        name: String::new(),
        table: String::new(),
        marks: OrderedMap::new(),
    };
    for id in ids {
        let Some(mark) = alternative.marks.get(id).filter(|mark| mark.as_use().is_none()) else {
            continue;
        };
        for held in mark.as_street().map_or_else(Vec::new, ties_of) {
            if let Some(street) = alternative.marks.get(&held) {
                ground.marks.insert(held, street.clone());
            }
        }
        ground.marks.insert(*id, mark.clone());
    }
    ground
}
