//! A centerline set off to one side by the same distance all along.

use super::{ahead, direction, meeting, place, rounded};
use crate::plan::street::Vertex;

/// One straight run after setting off: where it begins, its direction, and the given vertex at its end.
#[derive(Clone, Copy)]
struct Run {
    from: (f64, f64),
    along: (f64, f64),
    end: usize,
}

/// The line `left_mm` to the left of `line` (to the right for negative distances), without holds.
///
/// Runs stay parallel and meet where their lines cross; a rounded corner keeps its middle, so its radius grows on the
/// outer side and shrinks on the inner one. Runs that would turn around, being shorter than the inner side takes, go,
/// and so do two that have become a way there and back.
/// A line that ends where it begins is set off as a ring. Empty for a line without length. Cost: square of the runs that
/// go, else linear.
///
/// ```
/// use hobnail_core::plan::{PlanPoint, Vertex, editing::offset::offset};
/// let line = [(0, 0), (100_000, 0)].map(|(x, y)| Vertex::at(PlanPoint::new(x, y)));
/// assert_eq!(offset(&line, 20_000)[1].point, PlanPoint::new(100_000, 20_000));
/// ```
#[must_use]
pub fn offset(line: &[Vertex], left_mm: i32) -> Vec<Vertex> {
    let off_mm = f64::from(left_mm);
    let mut runs: Vec<Run> = line
        .windows(2)
        .enumerate()
        .filter_map(|(index, ends)| {
            let [a, b] = ends else { return None };
            let (along, _) = direction(a.point, b.point)?;
            let from = ahead(place(a.point), (-along.1, along.0), off_mm);
            Some(Run {
                from,
                along,
                end: index + 1,
            })
        })
        .collect();
    let is_ring = line.len() > 3 && line.first().map(|end| end.point) == line.last().map(|end| end.point);
    loop {
        let (Some(first), Some(last)) = (runs.first(), runs.last()) else {
            return Vec::new();
        };
        let end_of = |run: &Run| {
            let end = line.get(run.end).map_or((0.0, 0.0), |vertex| place(vertex.point));
            ahead(end, (-run.along.1, run.along.0), off_mm)
        };
        let back = runs.windows(2).position(|pair| match pair {
            [one, other] => {
                let forward = one.along.0 * other.along.0 + one.along.1 * other.along.1;
                forward < 0.0 && meeting((one.from, one.along), (other.from, other.along)).is_none()
            }
            _ => false,
        });
        if let Some(index) = back {
            runs.drain(index..index + 2);
            continue;
        }
        let corner = |one: &Run, other: &Run| {
            let met = meeting((one.from, one.along), (other.from, other.along));
            met.unwrap_or_else(|| end_of(one))
        };
        let closing = is_ring.then(|| corner(last, first));
        let mut places = vec![closing.unwrap_or(first.from)];
        let mut radii = vec![0];
        for pair in runs.windows(2) {
            let [one, other] = pair else { continue };
            places.push(corner(one, other));
            let radius_mm = line.get(one.end).map_or(0, |vertex| vertex.corner_radius_mm);
            let turns_left = one.along.0 * other.along.1 - one.along.1 * other.along.0 > 0.0;
            let grown_mm = f64::from(radius_mm) + if turns_left { -off_mm } else { off_mm };
            radii.push(if radius_mm > 0 {
                grown_mm.max(0.0).round() as u32
            } else {
                0
            });
        }
        places.push(closing.unwrap_or_else(|| end_of(last)));
        radii.push(0);
        let turned = runs.iter().zip(places.windows(2)).position(|(run, ends)| match ends {
            [a, b] => (b.0 - a.0) * run.along.0 + (b.1 - a.1) * run.along.1 <= 0.0,
            _ => false,
        });
        match turned {
            Some(index) => drop(runs.remove(index)),
            None => {
                let vertices = places.into_iter().zip(radii).map(|(at, corner_radius_mm)| Vertex {
                    corner_radius_mm,
                    ..Vertex::at(rounded(at))
                });
                return vertices.collect();
            }
        }
    }
}

#[cfg(test)]
mod tests;
