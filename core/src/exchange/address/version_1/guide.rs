//! Lines that run along others: a path beside a creek, a floodplain about it, the edge of an easement.
//!
//! A vertex is told by what it would be if the line went on as far from another line as it was at the vertex before.

use crate::plan::coordinates::PlanPoint;

use super::coder::{Coder, Field};
use super::ground::{legal, rounded, way};

/// Vertices of lines that can be followed.
const MOST_VERTICES: usize = 2048;

/// A line further away is not followed, in millimeters.
const FARTHEST_MM: i64 = 100_000;

/// Steps of the grid by which a vertex may miss the place where it would be.
const FARTHEST_STEPS: i64 = 30;

/// A vertex of a line, and whether the line is followed against its order.
type At = (usize, usize, bool);

/// Lines to follow, and where on them we are.
#[derive(Debug, Default)]
pub(super) struct Guide {
    lines: Vec<Vec<PlanPoint>>,
    at: Option<At>,
}

/// How a vertex is told by the line that is followed: against its order, and the steps by which it misses.
pub(super) type Follow = (bool, i64, i64);

impl Guide {
    /// Remembers a line to be followed; the one being told has ended.
    pub(super) fn remember(&mut self, line: Vec<PlanPoint>) {
        self.at = None;
        if line.len() > 2 && line.len() < MOST_VERTICES {
            self.lines.push(line);
            while self.lines.iter().map(Vec::len).sum::<usize>() > MOST_VERTICES {
                self.lines.remove(0);
            }
        }
    }

    /// A vertex was told otherwise.
    pub(super) fn leave(&mut self) {
        self.at = None;
    }

    /// How `point` is told behind `from`, where a line leads there.
    pub(super) fn follows(&self, grid_mm: i64, from: PlanPoint, point: PlanPoint) -> Option<Follow> {
        let (x, y) = (i64::from(point.x_mm), i64::from(point.y_mm));
        if x % grid_mm != 0 || y % grid_mm != 0 {
            return None;
        }
        let misses = |at: At| {
            let (_, (to_x, to_y)) = self.next(grid_mm, from, at)?;
            let (x, y) = (x / grid_mm - to_x, y / grid_mm - to_y);
            (x.abs().max(y.abs()) <= FARTHEST_STEPS).then_some((at.2, x, y))
        };
        if let Some(at) = self.at {
            return misses(at);
        }
        let (line, vertex) = self.nearest(from)?;
        let both = [misses((line, vertex, false)), misses((line, vertex, true))];
        both.into_iter().flatten().min_by_key(|(_, x, y)| x.abs() + y.abs())
    }

    /// The point told so.
    pub(super) fn follow(
        &mut self,
        coder: &mut Coder,
        field: Field,
        grid_mm: i64,
        from: PlanPoint,
        told: Follow,
    ) -> Option<PlanPoint> {
        let at = match self.at {
            Some(at) => at,
            None => {
                coder.spend(MOST_VERTICES);
                let (line, vertex) = self.nearest(from)?;
                (line, vertex, coder.flag(field, &[], told.0))
            }
        };
        let (next, (x, y)) = self.next(grid_mm, from, at)?;
        let x = x.checked_add(coder.number(field + 1, &[], told.1))?;
        let y = y.checked_add(coder.number(field + 2, &[], told.2))?;
        self.at = Some(next);
        legal(x.checked_mul(grid_mm)?, y.checked_mul(grid_mm)?)
    }

    /// The next vertex of the line, and where a line as far from it as `from` would come, in steps of the grid.
    fn next(&self, grid_mm: i64, from: PlanPoint, (line, vertex, is_backward): At) -> Option<(At, (i64, i64))> {
        let points = self.lines.get(line)?;
        let count = points.len();
        let step = |vertex: usize| if is_backward { vertex + count - 1 } else { vertex + 1 } % count;
        let along = |vertex: usize| {
            let (before, after) = (
                points.get((vertex + count - 1) % count)?,
                points.get((vertex + 1) % count)?,
            );
            let (x, y) = way(*before, *after);
            Some((x as f64, y as f64))
        };
        let next = step(vertex);
        let (here, there) = (points.get(vertex)?, points.get(next)?);
        let ((ax, ay), (bx, by)) = (along(vertex)?, along(next)?);
        let lengths = ((ax * ax + ay * ay) * (bx * bx + by * by)).sqrt();
        if lengths < 1.0 {
            return None;
        }
        let (cosine, sine) = ((ax * bx + ay * by) / lengths, (ax * by - ay * bx) / lengths);
        let (aside_x, aside_y) = way(*here, from);
        let (aside_x, aside_y) = (aside_x as f64, aside_y as f64);
        let x = f64::from(there.x_mm) + aside_x * cosine - aside_y * sine;
        let y = f64::from(there.y_mm) + aside_x * sine + aside_y * cosine;
        let to = (rounded(x as i64, grid_mm), rounded(y as i64, grid_mm));
        Some(((line, next, is_backward), to))
    }

    /// The vertex nearest to a point, the latest of equals.
    fn nearest(&self, from: PlanPoint) -> Option<(usize, usize)> {
        let mut best = None;
        let mut least = FARTHEST_MM * FARTHEST_MM;
        for (line, points) in self.lines.iter().enumerate() {
            for (vertex, point) in points.iter().enumerate() {
                let distance = point.squared_distance_mm2(from);
                if distance <= least {
                    least = distance;
                    best = Some((line, vertex));
                }
            }
        }
        best
    }
}
