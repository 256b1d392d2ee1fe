//! A small grid of blocks between two corners: its streets, and what they hold on to.

use super::{ahead, place, rounded};
use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::MarkId;
use crate::plan::street::{Tie, Vertex};
use crate::plan::tie::{WHOLE_PPB, nearest_tie};

/// Most blocks along a side: a small grid, which is drawn again at every move of the pointer.
const MOST: f64 = 24.0;
/// An edge of the grid within this distance of a street that is there runs along it and is not drawn twice.
const ALONG_MM: i64 = 500;

/// A grid of equal blocks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blocks {
    /// The corner it began at.
    pub first: PlanPoint,
    /// Blocks along the grid's direction, and across it.
    pub count: [u32; 2],
    /// From one street to the next along and across, in millimeters; negative to the right of the direction or back.
    pub step_mm: [f64; 2],
    direction: (f64, f64),
}

/// The grid from `first` toward `second`, along `direction` (of length 1) and square to it, of blocks near
/// `block_mm` long and deep, measured from middle to middle of streets.
///
/// Where `is_held` the second corner is kept and the blocks are as equal as they come; else the blocks have their size
/// and the corner gives way to the nearest whole number. `None` where the corners span no land.
#[must_use]
pub fn blocks(
    first: PlanPoint,
    second: PlanPoint,
    direction: (f64, f64),
    block_mm: [u32; 2],
    is_held: bool,
) -> Option<Blocks> {
    const LEAST_MM: f64 = 1_000.0;
    let (a, b) = (place(first), place(second));
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    let spans = [x * direction.0 + y * direction.1, y * direction.0 - x * direction.1];
    let mut blocks = Blocks {
        first,
        count: [1; 2],
        step_mm: [0.0; 2],
        direction,
    };
    for ((span_mm, wanted_mm), (count, step_mm)) in spans
        .into_iter()
        .zip(block_mm)
        .zip(blocks.count.iter_mut().zip(&mut blocks.step_mm))
    {
        let wanted_mm = f64::from(wanted_mm).max(LEAST_MM);
        if span_mm.abs() < LEAST_MM {
            return None;
        }
        let whole = (span_mm.abs() / wanted_mm).round().clamp(1.0, MOST);
        *count = whole as u32;
        *step_mm = if is_held {
            span_mm / whole
        } else {
            wanted_mm * span_mm.signum()
        };
    }
    Some(blocks)
}

impl Blocks {
    /// The intersection so many streets along and across.
    #[must_use]
    pub fn corner(&self, along: u32, across: u32) -> PlanPoint {
        let [length_mm, depth_mm] = self.step_mm;
        let (x, y) = self.direction;
        let run = ahead(place(self.first), (x, y), f64::from(along) * length_mm);
        rounded(ahead(run, (-y, x), f64::from(across) * depth_mm))
    }

    /// The outline of all blocks.
    #[must_use]
    pub fn outline(&self) -> Vec<PlanPoint> {
        let [along, across] = self.count;
        [(0, 0), (along, 0), (along, across), (0, across)]
            .into_iter()
            .map(|(i, j)| self.corner(i, j))
            .collect()
    }

    /// The centerlines of its streets, each through the whole grid, with ids from `first_id` up.
    ///
    /// Ends hold on to a street of `there` that they lie on, else to the edge of the grid they meet. An edge that runs
    /// along a street which is there is left out. Cost: streets times the vertices of `there`.
    #[must_use]
    pub fn streets(&self, there: &[(MarkId, &[Vertex])], first_id: MarkId) -> Vec<(MarkId, Vec<Vertex>)> {
        let [along, across] = self.count;
        let held = |at: PlanPoint| {
            there
                .iter()
                .filter_map(|(id, line)| nearest_tie(*id, line, at))
                .filter(|(_, foot)| foot.squared_distance_mm2(at) <= ALONG_MM * ALONG_MM)
                .min_by_key(|(tie, foot)| (foot.squared_distance_mm2(at), tie.street))
        };
        // Edges first, since the others hold on to them: those along, those across, then what lies between.
        let mut runs = vec![
            (self.corner(0, 0), self.corner(along, 0)),
            (self.corner(0, across), self.corner(along, across)),
            (self.corner(0, 0), self.corner(0, across)),
            (self.corner(along, 0), self.corner(along, across)),
        ];
        runs.extend((1..across).map(|j| (self.corner(0, j), self.corner(along, j))));
        runs.extend((1..along).map(|i| (self.corner(i, 0), self.corner(i, across))));
        let mut streets: Vec<(MarkId, Vec<Vertex>)> = Vec::with_capacity(runs.len());
        for (place, (from, to)) in runs.into_iter().enumerate() {
            let is_edge = place < 4;
            let thirds = [1, 2].map(|part| {
                let between = |a: i32, b: i32| (i64::from(a) + (i64::from(b) - i64::from(a)) * part / 3) as i32;
                PlanPoint::new(between(from.x_mm, to.x_mm), between(from.y_mm, to.y_mm))
            });
            let is_there = [from, to].into_iter().chain(thirds).all(|at| held(at).is_some());
            if is_edge && is_there {
                continue;
            }
            let end = |at: PlanPoint| {
                let to_edge = || {
                    let edges = streets.iter().take(4);
                    edges
                        .filter_map(|(id, line)| nearest_tie(*id, line, at))
                        .find(|(_, foot)| foot.squared_distance_mm2(at) <= 9)
                };
                held(at).or_else(to_edge).map_or_else(
                    || Vertex::at(at),
                    |(tie, point)| Vertex {
                        tie: Some(tidy(tie)),
                        ..Vertex::at(point)
                    },
                )
            };
            let line = vec![end(from), end(to)];
            streets.push((MarkId(first_id.0.saturating_add(streets.len() as u32)), line));
        }
        streets
    }
}

/// Rounding to millimeters leaves a share that is a hair from the end of its segment: that is the end.
const fn tidy(tie: Tie) -> Tie {
    const HAIR_PPB: u32 = 30;
    let along_ppb = match tie.along_ppb {
        share if share <= HAIR_PPB => 0,
        share if share >= WHOLE_PPB - HAIR_PPB => WHOLE_PPB,
        share => share,
    };
    Tie { along_ppb, ..tie }
}

#[cfg(test)]
mod tests;
