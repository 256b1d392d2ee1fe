//! Lines of equal value on a regular grid, by marching squares: contours of the ground, and the edges of its steep parts.
//!
//! Values are whole numbers, and a sample as high as the line lies above it, so that which cells a line goes through is
//! exact; where it crosses between two samples is by straight line. Lines run with what is higher on their left. In a cell
//! whose opposite corners alike stand above the line, the mean of the four says which of them belong together.

use crate::plan::document::Topography;

/// A point in meters.
type Point = (f64, f64);

/// A line and whether its last point joins its first.
pub type Course = (Vec<Point>, bool);

/// Values at the points of a regular grid.
#[derive(Clone, Debug, PartialEq)]
pub struct Field<'a> {
    /// Where the southwestern point stands, in meters.
    pub south_west_m: Point,
    /// Distance between points, in meters.
    pub spacing_m: f64,
    /// Points of a row.
    pub columns: usize,
    /// Values, rows from south to north; what fills no whole row is left out.
    pub values: &'a [i32],
}

/// Which edge a line goes on to from each, and which edges it comes to: room that each line uses anew.
#[derive(Default)]
struct Links {
    next: Vec<u32>,
    is_entered: Vec<bool>,
    /// The edges from which it goes on, as they were found.
    from: Vec<usize>,
}

const NONE: u32 = u32::MAX;

impl<'a> Field<'a> {
    /// The heights of a plan, in millimeters.
    #[must_use]
    pub fn of(topography: &'a Topography) -> Self {
        Self {
            south_west_m: topography.south_west.to_m(),
            spacing_m: f64::from(topography.spacing_mm) / 1000.0,
            columns: topography.columns as usize,
            values: &topography.heights_mm,
        }
    }

    /// The least and the greatest value; `None` without any.
    #[must_use]
    pub fn range(&self) -> Option<(i32, i32)> {
        let mut range: Option<(i32, i32)> = None;
        for value in self.values {
            let (least, most) = range.unwrap_or((*value, *value));
            range = Some((least.min(*value), most.max(*value)));
        }
        range
    }

    fn value(&self, place: usize) -> i32 {
        self.values.get(place).copied().unwrap_or_default()
    }

    /// Where the line at `level` crosses an edge: those to the east of each point first, then those to its north.
    fn crossing(&self, edge: usize, level: i32) -> Point {
        let count = self.values.len();
        let (place, is_north) = if edge < count {
            (edge, false)
        } else {
            (edge - count, true)
        };
        let (from, to) = (
            self.value(place),
            self.value(place + if is_north { self.columns } else { 1 }),
        );
        // One is above the line and the other is not.
        let share = (f64::from(level) - f64::from(from)) / (f64::from(to) - f64::from(from));
        let (column, row) = ((place % self.columns) as f64, (place / self.columns) as f64);
        let (column, row) = if is_north {
            (column, row + share)
        } else {
            (column + share, row)
        };
        (
            self.south_west_m.0 + column * self.spacing_m,
            self.south_west_m.1 + row * self.spacing_m,
        )
    }

    /// The lines at some levels, with the place of the level each is at. Cost: linear in the points for each level.
    #[must_use]
    pub fn lines(&self, levels: &[i32]) -> Vec<(usize, Course)> {
        let mut found = Vec::new();
        let rows = self.values.len().checked_div(self.columns).unwrap_or_default();
        if self.columns < 2 || rows < 2 || self.values.len() >= (NONE / 2) as usize {
            return found;
        }
        let mut links = Links {
            next: vec![NONE; self.values.len() * 2],
            is_entered: vec![false; self.values.len() * 2],
            from: Vec::new(),
        };
        for (place, level) in levels.iter().enumerate() {
            for row in 0..rows - 1 {
                for column in 0..self.columns - 1 {
                    self.link(row * self.columns + column, *level, &mut links);
                }
            }
            // Lines that begin at the edge of the grid before those that run in a ring.
            let from = std::mem::take(&mut links.from);
            for begins in [true, false] {
                for edge in from.iter().copied() {
                    if links.next[edge] != NONE && !(begins && links.is_entered[edge]) {
                        found.push((place, self.followed(edge, *level, &mut links)));
                    }
                }
            }
        }
        found
    }

    /// Notes how the line goes through the cell northeast of a point.
    fn link(&self, place: usize, level: i32, links: &mut Links) {
        let count = self.values.len();
        let corners = [place, place + 1, place + self.columns + 1, place + self.columns].map(|at| self.value(at));
        let mut above = 0;
        for (bit, value) in corners.into_iter().enumerate() {
            above |= usize::from(value >= level) << bit;
        }
        if above == 0 || above == 15 {
            return;
        }
        let sum: i64 = corners.into_iter().map(i64::from).sum();
        let is_middle_above = sum >= 4 * i64::from(level);
        let (south, east) = (place, count + place + 1);
        let (north, west) = (place + self.columns, count + place);
        // From edge to edge, what is above on the left; corners by their bits from the southwest, counterclockwise.
        let (first, second) = match (above, is_middle_above) {
            (1, _) => ((south, west), None),
            (2, _) => ((east, south), None),
            (3, _) => ((east, west), None),
            (4, _) => ((north, east), None),
            (6, _) => ((north, south), None),
            (7, _) => ((north, west), None),
            (8, _) => ((west, north), None),
            (9, _) => ((south, north), None),
            (11, _) => ((east, north), None),
            (12, _) => ((west, east), None),
            (13, _) => ((south, east), None),
            (14, _) => ((west, south), None),
            (5, false) => ((south, west), Some((north, east))),
            (5, true) => ((south, east), Some((north, west))),
            (_, false) => ((east, south), Some((west, north))),
            (_, true) => ((west, south), Some((east, north))),
        };
        for (from, to) in [Some(first), second].into_iter().flatten() {
            links.next[from] = to as u32;
            links.is_entered[to] = true;
            links.from.push(from);
        }
    }

    /// The line from an edge on, taken out of the links.
    fn followed(&self, start: usize, level: i32, links: &mut Links) -> Course {
        let mut line = Vec::new();
        let mut edge = start;
        loop {
            line.push(self.crossing(edge, level));
            links.is_entered[edge] = false;
            let next = std::mem::replace(&mut links.next[edge], NONE);
            if next == NONE {
                return (line, false);
            }
            edge = next as usize;
            if edge == start {
                links.is_entered[edge] = false;
                return (line, true);
            }
        }
    }
}

/// Which multiples of an interval lie among heights, and those heights in millimeters, from the lowest; none for an
/// interval that is not above zero. Of more than [`MOST_LEVELS`] the lower ones are given.
#[must_use]
pub fn levels((least_mm, most_mm): (i32, i32), interval_mm: f64) -> (i32, Vec<i32>) {
    if !(interval_mm > 0.0 && interval_mm.is_finite()) {
        return (0, Vec::new());
    }
    let first = (f64::from(least_mm) / interval_mm).ceil();
    let last = (f64::from(most_mm) / interval_mm).floor();
    let count = (last - first + 1.0).clamp(0.0, MOST_LEVELS);
    let mut levels = Vec::new();
    while (levels.len() as f64) < count {
        levels.push(((first + levels.len() as f64) * interval_mm).round() as i32);
    }
    (first as i32, levels)
}

/// More lines than this are a gray surface, whatever the drawing.
pub const MOST_LEVELS: f64 = 400.0;

#[cfg(test)]
mod tests {
    use super::*;

    fn field(columns: usize, values: &[i32]) -> Field<'_> {
        Field {
            south_west_m: (100.0, 200.0),
            spacing_m: 10.0,
            columns,
            values,
        }
    }

    fn is_at(found: f64, expected: f64) -> bool {
        (found - expected).abs() < 1e-9
    }

    #[test]
    fn contours_of_a_plane_are_straight_and_where_they_should_be() {
        // 0.07 x + 0.03 y, in millimeters, on 40 by 30 points.
        let height = |x: f64, y: f64| 70.0 * x + 30.0 * y;
        let values: Vec<i32> = (0..1200)
            .map(|place| height(f64::from(place % 40) * 10.0, f64::from(place / 40) * 10.0) as i32)
            .collect();
        let field = field(40, &values);
        let (first, levels) = levels(field.range().unwrap(), 1000.0);
        assert_eq!((first, levels.len()), (0, 37), "from 0 to 36.0 m");
        let lines = field.lines(&levels);
        // The level of the lowest corner goes through that corner alone.
        assert_eq!(lines.len(), 36);
        for (place, (line, is_closed)) in lines {
            assert!(!is_closed && line.len() > 1);
            for (x, y) in &line {
                let found = height(x - 100.0, y - 200.0);
                assert!((found - f64::from(levels[place])).abs() < 1e-6, "{x} {y}");
            }
            // What is higher lies on the left: the line runs so that its left points uphill. The highest corner's has no length.
            let (from, to) = (line[0], line[line.len() - 1]);
            let left = (from.1 - to.1, to.0 - from.0);
            assert!(0.07 * left.0 + 0.03 * left.1 > 0.0 || (place == 36 && from == to));
        }
    }

    #[test]
    fn a_summit_has_a_ring_about_it_and_a_saddle_parts_as_its_middle_says() {
        let summit = [0, 0, 0, 0, 8, 0, 0, 0, 0];
        let lines = field(3, &summit).lines(&[4]);
        assert_eq!(lines.len(), 1);
        let (_, (ring, is_closed)) = &lines[0];
        assert!(*is_closed && ring.len() == 4);
        assert!(ring.contains(&(105.0, 210.0)) && ring.contains(&(110.0, 215.0)));
        for (values, is_joined) in [([10, 0, 0, 10], true), ([6, 0, 0, 6], false)] {
            let lines = field(2, &values).lines(&[4]);
            assert_eq!(lines.len(), 2);
            // Where both high corners belong together, each line cuts off a low one.
            let (_, (line, _)) = &lines[0];
            let is_about_low = line.iter().any(|at| is_at(at.1, 200.0)) == line.iter().any(|at| is_at(at.0, 110.0));
            assert_eq!(is_about_low, is_joined, "{values:?}: {line:?}");
        }
    }

    /// Slow and obvious: every edge of the grid that a level crosses is met by exactly one line, at its place.
    #[test]
    fn every_crossed_edge_is_met_once() {
        let mut state = 7_u32;
        for _ in 0..60 {
            let columns = 2 + (state % 7) as usize;
            let values: Vec<i32> = (0..columns * 6)
                .map(|_| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    (state >> 28) as i32
                })
                .collect();
            let field = field(columns, &values);
            for level in [3, 8, 12] {
                let mut expected = 0;
                for (place, value) in values.iter().enumerate() {
                    let is_last = place % columns + 1 == columns;
                    let east = values.get(place + 1).filter(|_| !is_last);
                    for other in [east, values.get(place + columns)].into_iter().flatten() {
                        expected += usize::from((*value >= level) != (*other >= level));
                    }
                }
                let lines = field.lines(&[level]);
                let met: usize = lines.iter().map(|(_, (line, _))| line.len()).sum();
                assert_eq!(met, expected, "{columns} {level} {values:?}");
                for (_, (line, is_closed)) in &lines {
                    let last_m = 90.0 + 10.0 * columns as f64;
                    let is_edge = |at: &Point| {
                        is_at(at.0, 100.0) || is_at(at.0, last_m) || is_at(at.1, 200.0) || is_at(at.1, 250.0)
                    };
                    assert!(*is_closed || (is_edge(&line[0]) && is_edge(&line[line.len() - 1])));
                }
            }
        }
    }

    #[test]
    fn what_is_no_grid_has_no_lines() {
        assert!(field(1, &[1, 2, 3]).lines(&[2]).is_empty());
        assert!(field(0, &[1, 2]).lines(&[2]).is_empty());
        assert!(field(3, &[1, 2, 3]).lines(&[2]).is_empty());
        assert_eq!(levels((0, 10), 0.0).1, Vec::<i32>::new());
        assert_eq!(levels((-2_100, 1_999), 1_000.0), (-2, vec![-2_000, -1_000, 0, 1_000]));
        assert_eq!(levels((0, 700), 304.8), (0, vec![0, 305, 610]));
    }
}
