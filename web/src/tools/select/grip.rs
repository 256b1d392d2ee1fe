//! What the select tool holds while it moves, and the edits that move it.

use hobnail_core::plan::editing::motion::{self, Motion};
use hobnail_core::plan::editing::rounding::corner;
use hobnail_core::plan::street::{Status, Street};
use hobnail_core::plan::{Alternative, Edit, Footprint, Mark, MarkId, PlanPoint, PlanVector, Vertex};

use super::junction::Corner;
use super::many::{enclosed, ground};
use crate::tools::drawing::{Quantity, Sentence, sentence};
use crate::tools::snap::{self, Snap};
use crate::tools::{At, Label, Selection, Sight, corners, near, shape};

/// What is held, as it stood when it was picked up.
#[derive(Clone, Debug, PartialEq)]
pub enum Grip {
    /// Marks whole: streets, places, areas. Copies of them where there is an id for the first.
    Marks {
        /// What moves.
        marks: Vec<(MarkId, Mark)>,
        /// Those marks and the streets they hold on to, as they stood.
        ground: Alternative,
        /// The id of the first copy.
        copies: Option<MarkId>,
    },
    /// Corners and ends that lie in one place, the picked one first.
    Corners(Vec<Corner>),
    /// A new corner between `index` and the one before it.
    NewCorner(MarkId, Street, usize),
    /// A place, or anything else, that is a point.
    Place(MarkId, Mark),
    /// One corner of a thing with an extent of its own, and whether it is a new one.
    PlaceCorner(MarkId, Mark, (usize, bool)),
    /// The radius of a corner.
    Radius(MarkId, Street, usize),
}

impl Grip {
    /// What moving it is called in the history.
    pub fn label(&self) -> Label {
        match self {
            Self::Marks { copies: Some(_), .. } => Label::Duplicate,
            Self::Marks { marks, .. } => match marks.as_slice() {
                [(_, Mark::Street(_))] => Label::MoveStreet,
                [(_, Mark::Place(_))] => Label::MovePlace,
                [_] => Label::MoveMark,
                _ => Label::MoveSelection,
            },
            Self::Corners(_) => Label::MoveCorner,
            Self::NewCorner(..) => Label::AddCorner,
            Self::Place(_, Mark::Place(_)) | Self::PlaceCorner(_, Mark::Place(_), _) => Label::MovePlace,
            Self::Place(..) | Self::PlaceCorner(..) => Label::MoveMark,
            Self::Radius(..) => Label::RoundCorner,
        }
    }

    /// The point by which it is held when no pointer says where.
    pub fn handle(&self) -> Option<PlanPoint> {
        let mut mark = match self {
            Self::Marks { marks, .. } => marks.first()?.1.clone(),
            Self::Corners(corners) => return corners.first()?.point(),
            Self::Place(_, mark) | Self::PlaceCorner(_, mark, _) => mark.clone(),
            Self::NewCorner(..) | Self::Radius(..) => return None,
        };
        let mut first = None;
        motion::each_point(&mut mark, &mut |point| first = first.or(Some(*point)));
        first
    }

    /// The edits, against the plan at the gesture's start, that move it from `from` to `at`.
    pub fn moved(&self, from: PlanPoint, at: At, sight: &Sight<'_>) -> (Vec<Edit>, Option<Snap>) {
        let replace = |id: MarkId, before: Option<&Mark>, after: Mark| Edit::Mark {
            alternative: sight.alternative,
            id,
            before: before.map(|mark| Box::new(mark.clone())),
            after: Some(Box::new(after)),
        };
        match self {
            Self::Marks { marks, ground, copies } => {
                let shift = Motion::shift(on_grid(at.point - from));
                let edits = motion::moved(ground, marks, &shift, *copies).into_iter();
                let edits = edits.map(|(id, mark)| {
                    let of_uses = || marks.iter().find(|(held, _)| *held == id).map(|(_, mark)| mark);
                    let before = ground.marks.get(&id).or_else(of_uses).filter(|_| copies.is_none());
                    replace(id, before, mark)
                });
                (edits.collect(), None)
            }
            Self::Corners(corners) => {
                let ids: Vec<MarkId> = corners.iter().map(|corner| corner.id).collect();
                let landed = snap::dragged(at, &ids, sight);
                let mut done: Vec<(&Corner, Street)> = Vec::new();
                for corner in corners {
                    let index = done
                        .iter()
                        .position(|(held, _)| held.id == corner.id)
                        .unwrap_or_else(|| {
                            done.push((corner, corner.street.clone()));
                            done.len() - 1
                        });
                    let vertex = done
                        .get_mut(index)
                        .and_then(|(_, moved)| moved.line.get_mut(corner.index));
                    if let Some(vertex) = vertex.filter(|_| !corner.follows) {
                        vertex.point = landed.point;
                        vertex.tie = landed.tie;
                    }
                }
                let edits = done.into_iter().map(|(corner, moved)| {
                    let before = Mark::Street(corner.before.clone());
                    replace(corner.id, Some(&before), Mark::Street(moved))
                });
                (edits.collect(), Some(landed))
            }
            Self::NewCorner(id, street, index) => {
                let landed = snap::dragged(at, &[*id], sight);
                let mut moved = street.clone();
                moved.line.insert((*index).min(street.line.len()), landed.vertex());
                let edit = replace(*id, Some(&Mark::Street(street.clone())), Mark::Street(moved));
                (vec![edit], Some(landed))
            }
            Self::Place(id, mark) => {
                let landed = snap::dragged(at, &[], sight);
                let mut moved = mark.clone();
                motion::each_point(&mut moved, &mut |point| *point = landed.point);
                (vec![replace(*id, Some(mark), moved)], Some(landed))
            }
            Self::PlaceCorner(id, mark, corner) => {
                let Some(held) = shape::of(mark) else {
                    return (Vec::new(), None);
                };
                let landed = corners::snapped(at, *id, None, false, sight);
                let fewest = shape::fewest_points(&held);
                let points = held.points().to_vec();
                let moved = shape::with_corner(points, *corner, landed.point, fewest, sight.reach_mm);
                let moved = shape::laid(mark.clone(), shape::with_points(&held, moved));
                (vec![replace(*id, Some(mark), moved)], Some(landed))
            }
            Self::Radius(id, street, index) => {
                let Some(radius_mm) = self.radius_at(at.point) else {
                    return (Vec::new(), None);
                };
                let mut moved = street.clone();
                if let Some(vertex) = moved.line.get_mut(*index) {
                    vertex.corner_radius_mm = radius_mm;
                }
                let edit = replace(*id, Some(&Mark::Street(street.clone())), Mark::Street(moved));
                (vec![edit], None)
            }
        }
    }

    /// The radius whose handle the hand would hold at `at`, in whole decimeters; `None` where it holds no radius.
    fn radius_at(&self, at: PlanPoint) -> Option<u32> {
        let Self::Radius(_, street, index) = self else {
            return None;
        };
        let found = corner(&street.line, *index, false)?;
        let grid_mm = f64::from(snap::GRID_MM);
        let radius_mm = found.radius_at((f64::from(at.x_mm), f64::from(at.y_mm)));
        Some(((radius_mm / grid_mm).floor() * grid_mm) as u32)
    }

    /// What is said of it while the hand is at `at`.
    pub fn said(&self, at: PlanPoint) -> Option<Sentence> {
        let radius_mm = self.radius_at(at)?;
        Some(sentence!(
            "tools-radius",
            length = Quantity::Length(f64::from(radius_mm))
        ))
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
    let corner = shape::corner_at(from, held.points(), is_closed, sight.reach_mm)?;
    Some(Grip::PlaceCorner(id, mark.clone(), corner))
}

/// What a press on `selection` holds.
#[must_use]
pub fn grip(selection: Selection, alone: bool, sight: &Sight<'_>) -> Option<Grip> {
    let alternative = sight.drawn()?;
    let mark = alternative.marks.get(&selection.mark())?;
    match selection {
        Selection::Use(_) => None,
        // An area is easily pressed where nothing was meant: it moves once it is selected.
        Selection::Place(_) if mark.as_place().is_none() && sight.selection != Some(selection) => None,
        // So is a street that stands today, and a slip would change what all the numbers rest on.
        Selection::Street(id) if stands_today(mark) && sight.selection.map(Selection::mark) != Some(id) => None,
        Selection::Place(id) if matches!(shape::of(mark)?, Footprint::Point(_)) => Some(Grip::Place(id, mark.clone())),
        Selection::Street(id) | Selection::Place(id) => grip_of_marks(&[id], None, sight),
        Selection::Vertex(id, index) => {
            let street = mark.as_street()?;
            let point = street.line.get(index)?.point;
            let mut corners = vec![Corner::of(id, street, index)];
            if !alone {
                // An end held by one of these streets follows by its hold; the others in this place move along.
                let follows = |vertex: &Vertex| vertex.tie.is_some_and(|tie| tie.street == id);
                for (other, street) in near::streets(alternative) {
                    for (at, vertex) in street.line.iter().enumerate() {
                        let is_picked = other == id && at == index;
                        if vertex.point == point && !is_picked && !follows(vertex) {
                            corners.push(Corner::of(other, street, at));
                        }
                    }
                }
            }
            Some(Grip::Corners(corners))
        }
    }
}

fn stands_today(mark: &Mark) -> bool {
    mark.as_street().is_some_and(|street| street.status != Status::New)
}

/// What holds these marks whole, or copies of them, with the uses of the blocks that they enclose; `None` where none of them
/// is there.
#[must_use]
pub fn grip_of_marks(ids: &[MarkId], copies: Option<MarkId>, sight: &Sight<'_>) -> Option<Grip> {
    let ground = ground(ids, sight.drawn()?);
    let found = ids.iter().filter_map(|id| Some((*id, ground.marks.get(id)?.clone())));
    let mut marks: Vec<(MarkId, Mark)> = found.collect();
    marks.extend(enclosed(ids, sight));
    (!marks.is_empty()).then_some(Grip::Marks { marks, ground, copies })
}

fn on_grid(by: PlanVector) -> PlanVector {
    let round = |mm: i32| (f64::from(mm) / f64::from(snap::GRID_MM)).round() as i32 * snap::GRID_MM;
    PlanVector::new(round(by.x_mm), round(by.y_mm))
}
