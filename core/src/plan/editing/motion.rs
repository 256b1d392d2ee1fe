//! Moving marks as they are: shifting, turning and mirroring, with the holds that streets have on each other.

use super::{place, rounded};
use crate::number;
use crate::order;
use crate::plan::Alternative;
use crate::plan::coordinates::{PlanPoint, PlanVector};
use crate::plan::ids::MarkId;
use crate::plan::land::Footprint;
use crate::plan::mark::Mark;
use crate::plan::street::Tie;
use crate::plan::tie::{WHOLE_PPB, nearest_tie};

/// An end that a street which stays holds slides along it while the nearest place is within this distance, and lets go
/// beyond: about a right-of-way.
const SLIDES_MM: i64 = 20_000;

/// A motion that changes no length: every point is turned or mirrored about `about` and then shifted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Motion {
    about: PlanPoint,
    /// Where a step to the east points afterwards.
    east: (f64, f64),
    is_mirrored: bool,
    by: PlanVector,
}

impl Motion {
    const STILL: Self = Self {
        about: PlanPoint::new(0, 0),
        east: (1.0, 0.0),
        is_mirrored: false,
        by: PlanVector::new(0, 0),
    };

    /// A shift.
    #[must_use]
    pub const fn shift(by: PlanVector) -> Self {
        Self { by, ..Self::STILL }
    }

    /// A turn about a point, counterclockwise.
    #[must_use]
    pub fn turn(about: PlanPoint, angle_rad: f64) -> Self {
        Self {
            about,
            east: (number::cos(angle_rad), number::sin(angle_rad)),
            ..Self::STILL
        }
    }

    /// East and west exchanged about a point, or north and south.
    #[must_use]
    pub const fn mirror(about: PlanPoint, is_east_west: bool) -> Self {
        let east = if is_east_west { (-1.0, 0.0) } else { (1.0, 0.0) };
        Self {
            about,
            east,
            is_mirrored: true,
            ..Self::STILL
        }
    }

    /// Where a point goes.
    #[must_use]
    pub fn point(&self, from: PlanPoint) -> PlanPoint {
        let ((x, y), about) = (place(from), place(self.about));
        let (x, y) = (x - about.0, y - about.1);
        let y = if self.is_mirrored { -y } else { y };
        let turned = (x * self.east.0 - y * self.east.1, x * self.east.1 + y * self.east.0);
        rounded((about.0 + turned.0, about.1 + turned.1)) + self.by
    }
}

/// Every point of a mark, to be read or moved. The use of land has none of its own: it goes with its block.
pub fn each_point(mark: &mut Mark, work: &mut dyn FnMut(&mut PlanPoint)) {
    let points = match mark {
        Mark::Street(street) => return street.line.iter_mut().for_each(|vertex| work(&mut vertex.point)),
        Mark::SoftArea(area) => &mut area.outline,
        Mark::Constraint(area) => &mut area.outline,
        Mark::Parcel(parcel) => &mut parcel.outline,
        Mark::Barrier(barrier) => &mut barrier.line,
        Mark::SiteAccess(access) => return work(&mut access.at),
        Mark::Crossing(crossing) => return work(&mut crossing.at),
        Mark::Note(note) => return work(&mut note.at),
        Mark::Use(_) => return,
        Mark::Place(place) => match &mut place.footprint {
            Footprint::Point(point) => return work(point),
            Footprint::Line(points) | Footprint::Area(points) => points,
        },
        Mark::Outside(outside) => match &mut outside.footprint {
            Footprint::Point(point) => return work(point),
            Footprint::Line(points) | Footprint::Area(points) => points,
        },
    };
    points.iter_mut().for_each(work);
}

/// The least and the largest coordinates of some marks; `None` where they have no points.
#[must_use]
pub fn bounds(marks: &[(MarkId, Mark)]) -> Option<(PlanPoint, PlanPoint)> {
    let mut found: Option<(PlanPoint, PlanPoint)> = None;
    for (_, mark) in marks {
        each_point(&mut mark.clone(), &mut |point| {
            let (least, most) = found.unwrap_or((*point, *point));
            found = Some((
                PlanPoint::new(least.x_mm.min(point.x_mm), least.y_mm.min(point.y_mm)),
                PlanPoint::new(most.x_mm.max(point.x_mm), most.y_mm.max(point.y_mm)),
            ));
        });
    }
    found
}

/// Marks after a motion, under their own ids, or under new ids from `copy_ids` up as copies.
///
/// Streets that hold on to each other among them still do. A hold on a street that stays slides along it to the nearest
/// place while that is within 20 m, and is let go beyond. A mirrored street runs the other way, so that its left stays
/// what it was; streets that stay and hold on to it come back too, with holds on the same places.
/// A use of land that is among the marks, or a copy of it, lies where its land does after the motion, with its sides along
/// the copies of their streets where those are copied too.
/// Cost: linear in the vertices, times those of each street held.
#[must_use]
pub fn moved(
    alternative: &Alternative,
    marks: &[(MarkId, Mark)],
    motion: &Motion,
    copy_ids: Option<MarkId>,
) -> Vec<(MarkId, Mark)> {
    let new_id = |id: MarkId| {
        let index = marks.iter().position(|(held, _)| *held == id)?;
        Some(copy_ids.map_or(id, |first| MarkId(first.0.saturating_add(index as u32))))
    };
    let last_segment = |id: MarkId| {
        let line = &alternative.marks.get(&id)?.as_street()?.line;
        line.len().checked_sub(2).map(|last| last as u32)
    };
    let carried = |tie: Tie| {
        let street = new_id(tie.street)?;
        let turned = last_segment(tie.street).filter(|_| motion.is_mirrored);
        Some(turned.map_or(Tie { street, ..tie }, |last| Tie {
            street,
            segment: last.saturating_sub(tie.segment),
            along_ppb: WHOLE_PPB.saturating_sub(tie.along_ppb),
        }))
    };
    let mut after = Vec::with_capacity(marks.len());
    for (id, mark) in marks {
        let mut mark = mark.clone();
        each_point(&mut mark, &mut |point| *point = motion.point(*point));
        if let Mark::Use(held) = &mut mark {
            held.anchor = motion.point(held.anchor);
            for side in &mut held.sides {
                side.street = new_id(side.street).unwrap_or(side.street);
                side.at = motion.point(side.at);
            }
        }
        if let Mark::Street(street) = &mut mark {
            for vertex in &mut street.line {
                let Some(tie) = vertex.tie else { continue };
                vertex.tie = carried(tie).or_else(|| {
                    let held = alternative.marks.get(&tie.street)?.as_street()?;
                    let (tie, foot) = nearest_tie(tie.street, &held.line, vertex.point)?;
                    let is_near = foot.squared_distance_mm2(vertex.point) <= SLIDES_MM * SLIDES_MM;
                    is_near.then(|| {
                        vertex.point = foot;
                        tie
                    })
                });
            }
            if motion.is_mirrored {
                street.line.reverse();
            }
        }
        after.push((new_id(*id).unwrap_or(*id), mark));
    }
    if motion.is_mirrored && copy_ids.is_none() {
        for (id, mark) in &alternative.marks {
            let Some(street) = mark.as_street().filter(|_| new_id(*id).is_none()) else {
                continue;
            };
            let mut held = street.clone();
            for vertex in &mut held.line {
                vertex.tie = vertex.tie.map(|tie| carried(tie).unwrap_or(tie));
            }
            if held != *street {
                after.push((*id, Mark::Street(held)));
            }
        }
    }
    order::sort_by_key(&mut after, |(id, _)| *id);
    after
}

#[cfg(test)]
mod tests;
