//! Intersections as something to take hold of: the streets that meet there move together.

use hobnail_core::order;
use hobnail_core::plan::street::{Street, Tie};
use hobnail_core::plan::{MarkId, PlanPoint, Vertex};

use super::Grip;
use crate::tools::{Sight, near};

/// Places this near are one: feet are rounded to a millimeter, crossings too.
const SAME_PLACE_MM: f64 = 3.0;

/// A corner of a street that moves with others in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// The street.
    pub id: MarkId,
    /// The street as it stood.
    pub before: Street,
    /// The street with its corner, which a crossing had not had.
    pub street: Street,
    /// Which of its corners.
    pub index: usize,
    /// Whether it holds on to another corner here and follows it.
    pub follows: bool,
}

impl Corner {
    /// A corner that is there.
    pub fn of(id: MarkId, street: &Street, index: usize) -> Self {
        Self {
            id,
            before: street.clone(),
            street: street.clone(),
            index,
            follows: false,
        }
    }

    /// Where it stands.
    pub fn point(&self) -> Option<PlanPoint> {
        self.street.line.get(self.index).map(|vertex| vertex.point)
    }
}

/// What a press at `from` holds of an intersection on the run of the selected street `id`: the streets that cross get a
/// corner there each, ends held there stay held. `None` where there is none, and at corners, which have their own grip.
pub(super) fn junction(from: PlanPoint, id: MarkId, sight: &Sight<'_>) -> Option<Grip> {
    let alternative = sight.drawn()?;
    let street = alternative.marks.get(&id)?.as_street()?;
    let level = street.level;
    if near::nearest_vertex(from, street, sight.reach_mm).is_some() {
        return None;
    }
    let apart_mm = |point: PlanPoint| (from.squared_distance_mm2(point) as f64).sqrt();
    let met = near::junctions(alternative, id, None).into_iter();
    let (_, point) = met
        .filter(|(_, point)| apart_mm(*point) <= sight.reach_mm)
        .min_by(|(_, one), (_, other)| apart_mm(*one).total_cmp(&apart_mm(*other)))?;
    let mut corners = Vec::new();
    // The runs through this place get a corner; where each has it is remembered for the ends held there.
    let mut through: Vec<(MarkId, usize)> = Vec::new();
    let mut streets: Vec<(MarkId, &Street)> = near::streets(alternative).collect();
    order::sort_by_key(&mut streets, |(other, _)| *other != id);
    for (other, street) in streets {
        if !near::may_reach(point, street, SAME_PLACE_MM) {
            continue;
        }
        let at_vertex = street.line.iter().position(|vertex| is_same(vertex.point, point));
        let run = street.line.windows(2).position(|ends| match ends {
            [a, b] => near::foot_on_segment(point, a.point, b.point).2 <= SAME_PLACE_MM,
            _ => false,
        });
        match (at_vertex, run) {
            (Some(index), _) => corners.push(Corner::of(other, street, index)),
            (None, Some(run)) if street.level == level => {
                let mut corner = Corner::of(other, street, run + 1);
                corner.street.line.insert(run + 1, Vertex::at(point));
                through.push((other, run + 1));
                corners.push(corner);
            }
            _ => {}
        }
    }
    for corner in &mut corners {
        let vertex = corner.street.line.get_mut(corner.index);
        let Some((vertex, tie)) = vertex.and_then(|vertex| vertex.tie.map(|tie| (vertex, tie))) else {
            continue;
        };
        if let Some((street, index)) = through.iter().find(|(other, _)| *other == tie.street) {
            vertex.tie = Some(Tie {
                street: *street,
                segment: *index as u32,
                along_ppb: 0,
            });
            corner.follows = true;
        }
    }
    (through.iter().any(|(other, _)| *other == id)).then_some(Grip::Corners(corners))
}

fn is_same(one: PlanPoint, other: PlanPoint) -> bool {
    (one.squared_distance_mm2(other) as f64).sqrt() <= SAME_PLACE_MM
}
