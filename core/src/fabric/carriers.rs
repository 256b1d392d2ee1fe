//! Which street an edge of the arrangement belongs to, and which way it runs along it.
//!
//! Where streets overlap, the wider right-of-way carries the edge; the arrangement keeps the sources of both.

use super::arrangement::Arrangement;
use super::ids::{EdgeId, HalfEdgeId};
use super::streets::{Drawn, DrawnLines};
use crate::plan::land::Hand;

/// The street that carries an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Carrier {
    /// The street, by its place in [`DrawnLines::streets`].
    pub street: u32,
    /// Whether the edge runs from its lower to its higher vertex along the street's own direction.
    pub is_along: bool,
}

/// For every edge its carrier; `None` where only the site boundary runs, or a street that is not built.
#[must_use]
pub fn carriers(lines: &DrawnLines, arrangement: &Arrangement) -> Vec<Option<Carrier>> {
    arrangement
        .edges()
        .map(|edge| carrier(lines, arrangement, edge))
        .collect()
}

fn carrier(lines: &DrawnLines, arrangement: &Arrangement, edge: EdgeId) -> Option<Carrier> {
    // The widest right-of-way wins; of equal ones the street drawn first, and of its segments the first, as sources are
    // in order.
    let mut widest: Option<(u32, u32, u32)> = None;
    for source in arrangement.sources(edge) {
        if let Drawn::Street { street, segment } = lines.drawn(*source) {
            let width_mm = lines.streets[street as usize].right_of_way_mm;
            if widest.is_none_or(|(most_mm, ..)| width_mm > most_mm) {
                widest = Some((width_mm, street, segment));
            }
        }
    }
    let (_, street, segment) = widest?;
    let points = &lines.streets[street as usize].points;
    let (from, to) = (points[segment as usize], points[segment as usize + 1]);
    let [lower, higher] = arrangement.ends(edge).map(|vertex| arrangement.point(vertex));
    let dot = |a: i32, b: i32, c: i32, d: i32| (i64::from(b) - i64::from(a)) * (i64::from(d) - i64::from(c));
    let along = dot(from.x_mm, to.x_mm, lower.x_mm, higher.x_mm) + dot(from.y_mm, to.y_mm, lower.y_mm, higher.y_mm);
    Some(Carrier {
        street,
        is_along: along >= 0,
    })
}

impl Carrier {
    /// On which hand of the street the face to the left of `half_edge` lies, looking along the street.
    #[must_use]
    pub const fn hand_of_face(self, half_edge: HalfEdgeId) -> Hand {
        if half_edge.is_forward() == self.is_along {
            Hand::Left
        } else {
            Hand::Right
        }
    }
}
