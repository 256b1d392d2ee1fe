//! What the select tool holds while it moves, and the edits that move it.

use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Edit, Footprint, Mark, MarkId, PlanPoint, PlanVector, Vertex};

use crate::tools::snap::{self, Snap};
use crate::tools::{At, Label, Selection, Sight, corners, near, shape};

/// What is held, as it stood when it was picked up.
#[derive(Clone, Debug, PartialEq)]
pub enum Grip {
    /// A street whole.
    Street(MarkId, Street),
    /// Corners and ends that lie in one place, the picked one first.
    Corners(Vec<(MarkId, Street, usize)>),
    /// A new corner between `index` and the one before it.
    NewCorner(MarkId, Street, usize),
    /// A place, or anything else with an extent of its own.
    Place(MarkId, Mark),
    /// One corner of such a thing, and whether it is a new one.
    PlaceCorner(MarkId, Mark, (usize, bool)),
}

impl Grip {
    /// What moving it is called in the history.
    pub const fn label(&self) -> Label {
        match self {
            Self::Street(..) => Label::MoveStreet,
            Self::Corners(_) => Label::MoveCorner,
            Self::NewCorner(..) => Label::AddCorner,
            Self::Place(_, Mark::Place(_)) | Self::PlaceCorner(_, Mark::Place(_), _) => Label::MovePlace,
            Self::Place(..) | Self::PlaceCorner(..) => Label::MoveMark,
        }
    }

    /// The point by which it is held when no pointer says where.
    pub fn handle(&self) -> Option<PlanPoint> {
        match self {
            Self::Street(_, street) => street.line.first().map(|vertex| vertex.point),
            Self::Corners(corners) => {
                let (_, street, index) = corners.first()?;
                street.line.get(*index).map(|vertex| vertex.point)
            }
            Self::NewCorner(..) => None,
            Self::Place(_, mark) | Self::PlaceCorner(_, mark, _) => shape::points(&shape::of(mark)?).first().copied(),
        }
    }

    /// The edits, against the plan at the gesture's start, that move it from `from` to `at`.
    pub fn moved(&self, from: PlanPoint, at: At, sight: &Sight<'_>) -> (Vec<Edit>, Option<Snap>) {
        let replace = |id: MarkId, before: &Mark, after: Mark| Edit::Mark {
            alternative: sight.alternative,
            id,
            before: Some(Box::new(before.clone())),
            after: Some(Box::new(after)),
        };
        match self {
            Self::Street(id, street) => {
                let by = on_grid(at.point - from);
                let moved = slid(street, by, sight);
                (
                    vec![replace(*id, &Mark::Street(street.clone()), Mark::Street(moved))],
                    None,
                )
            }
            Self::Corners(corners) => {
                let drawn = corners.first().map(|(id, ..)| *id);
                let landed = snap::snap(at.point, drawn, None, sight);
                let mut edits: Vec<Edit> = Vec::new();
                for (id, street, index) in corners {
                    let mut moved = edits
                        .iter()
                        .find_map(|edit| after_of(edit, *id))
                        .unwrap_or_else(|| street.clone());
                    let tie = landed.tie.filter(|tie| tie.street != *id);
                    if let Some(vertex) = moved.line.get_mut(*index) {
                        vertex.point = landed.point;
                        vertex.tie = tie;
                    }
                    edits.retain(|edit| after_of(edit, *id).is_none());
                    edits.push(replace(*id, &Mark::Street(street.clone()), Mark::Street(moved)));
                }
                (edits, Some(landed))
            }
            Self::NewCorner(id, street, index) => {
                let landed = snap::snap(at.point, Some(*id), None, sight);
                let mut moved = street.clone();
                moved.line.insert((*index).min(street.line.len()), landed.vertex());
                let edit = replace(*id, &Mark::Street(street.clone()), Mark::Street(moved));
                (vec![edit], Some(landed))
            }
            Self::Place(id, mark) => {
                let Some(held) = shape::of(mark) else {
                    return (Vec::new(), None);
                };
                let by = on_grid(at.point - from);
                let (moved, landed) = if let Footprint::Point(_) = held {
                    let landed = snap::snap(at.point, None, None, sight);
                    (vec![landed.point], Some(landed))
                } else {
                    (shape::points(&held).iter().map(|point| *point + by).collect(), None)
                };
                let moved = shape::laid(mark.clone(), shape::with_points(&held, moved));
                (vec![replace(*id, mark, moved)], landed)
            }
            Self::PlaceCorner(id, mark, corner) => {
                let Some(held) = shape::of(mark) else {
                    return (Vec::new(), None);
                };
                let landed = corners::snapped(at.point, *id, None, false, sight);
                let fewest = shape::fewest_points(&held);
                let points = shape::points(&held).to_vec();
                let moved = shape::with_corner(points, *corner, landed.point, fewest, sight.reach_mm);
                let moved = shape::laid(mark.clone(), shape::with_points(&held, moved));
                (vec![replace(*id, mark, moved)], Some(landed))
            }
        }
    }
}

/// The corner of the selected thing with an extent of its own that a press takes hold of.
#[must_use]
pub fn corner_of_selected(from: PlanPoint, sight: &Sight<'_>) -> Option<Grip> {
    let Selection::Place(id) = sight.selection? else {
        return None;
    };
    let mark = sight.drawn()?.marks.get(&id)?;
    let held = shape::of(mark).filter(|held| !matches!(held, Footprint::Point(_)))?;
    let is_closed = matches!(held, Footprint::Area(_));
    let corner = shape::corner_at(from, shape::points(&held), is_closed, sight.reach_mm)?;
    Some(Grip::PlaceCorner(id, mark.clone(), corner))
}

/// What a press on `selection` holds.
#[must_use]
pub fn grip(selection: Selection, alone: bool, sight: &Sight<'_>) -> Option<Grip> {
    let alternative = sight.drawn()?;
    let mark = alternative.marks.get(&selection.mark())?;
    match selection {
        Selection::Street(id) => Some(Grip::Street(id, mark.as_street()?.clone())),
        // An area is easily pressed where nothing was meant: it moves once it is selected.
        Selection::Place(id) => {
            (mark.as_place().is_some() || sight.selection == Some(selection)).then(|| Grip::Place(id, mark.clone()))
        }
        Selection::Use(_) => None,
        Selection::Vertex(id, index) => {
            let street = mark.as_street()?;
            let point = street.line.get(index)?.point;
            let mut corners = vec![(id, street.clone(), index)];
            if !alone {
                // An end held by one of these streets follows by its hold; the others in this place move along.
                let follows = |vertex: &Vertex| vertex.tie.is_some_and(|tie| tie.street == id);
                for (other, street) in near::streets(alternative) {
                    for (at, vertex) in street.line.iter().enumerate() {
                        let is_picked = other == id && at == index;
                        if vertex.point == point && !is_picked && !follows(vertex) {
                            corners.push((other, street.clone(), at));
                        }
                    }
                }
            }
            Some(Grip::Corners(corners))
        }
    }
}

/// The street shifted by `by`; an end held by another street slides along it while that stays near, else it lets go.
fn slid(street: &Street, by: PlanVector, sight: &Sight<'_>) -> Street {
    const NEAR_MM: f64 = 20_000.0;
    let mut moved = street.clone();
    for vertex in &mut moved.line {
        let shifted = vertex.point + by;
        let foot = vertex.tie.and_then(|tie| {
            let held = sight.drawn()?.marks.get(&tie.street)?.as_street()?;
            near::foot_on_street(shifted, tie.street, held)
        });
        match foot.filter(|foot| foot.distance_mm <= NEAR_MM) {
            Some(foot) => {
                vertex.point = foot.point;
                vertex.tie = Some(foot.tie);
            }
            None => {
                vertex.point = shifted;
                vertex.tie = None;
            }
        }
    }
    moved
}

fn after_of(edit: &Edit, wanted: MarkId) -> Option<Street> {
    match edit {
        Edit::Mark { id, after, .. } if *id == wanted => after.as_deref().and_then(Mark::as_street).cloned(),
        _ => None,
    }
}

fn on_grid(by: PlanVector) -> PlanVector {
    let round = |mm: i32| (f64::from(mm) / f64::from(snap::GRID_MM)).round() as i32 * snap::GRID_MM;
    PlanVector::new(round(by.x_mm), round(by.y_mm))
}
