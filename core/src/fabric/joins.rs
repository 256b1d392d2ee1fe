//! Ends that were meant to meet: gaps and overshoots within a tolerance, closed before anything is arranged.
//!
//! A join is an edit the user sees, not a hidden repair: [`joins`] lists what it would move, [`apply_joins`] moves it.
//!
//! First every end is looked at, lines in order, starts before finishes, on the lines as joined so far: it is left alone
//! where it lies on a line already; else it is extended or trimmed along its own last segment to the first line met
//! within the tolerance, the nearest be it ahead or behind. Its own line counts too, but for the last two segments; lines
//! that run along the last segment are not met. Then what still lies on no line is moved to the nearest end within the
//! tolerance. No end moves twice.

use super::grid::Cells;
use super::pixels::{Span, passes, rounded_crossing};
use crate::order;
use crate::plan::PlanPoint;

/// One end of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LineEnd {
    /// Its first point.
    Start,
    /// Its last point.
    Finish,
}

/// What becomes of an end that is joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum JoinKind {
    /// It goes on along its last segment to this line.
    ExtendedTo(u32),
    /// It goes back along its last segment to this line.
    TrimmedTo(u32),
    /// It moves to this end of this line.
    MovedTo(u32, LineEnd),
}

/// An end that is joined, and where it goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Join {
    /// Which line.
    pub line: u32,
    /// Which of its ends.
    pub end: LineEnd,
    /// Where the end was drawn.
    pub from: PlanPoint,
    /// Where it goes.
    pub to: PlanPoint,
    /// How it gets there.
    pub kind: JoinKind,
}

/// The joins of `lines` within `tolerance_mm`, in the order they are made. A tolerance of 0 joins nothing.
///
/// Cost: about linear while the tolerance is short against the streets.
///
/// ```
/// use hobnail_core::fabric::joins::{JoinKind, apply_joins, joins};
/// use hobnail_core::plan::PlanPoint;
/// let p = PlanPoint::new;
/// let mut lines = vec![vec![p(0, 0), p(50_000, 0)], vec![p(20_000, 9_000), p(20_000, 300)]];
/// let found = joins(&lines, 500);
/// assert_eq!((found[0].to, found[0].kind), (p(20_000, 0), JoinKind::ExtendedTo(0)));
/// apply_joins(&mut lines, &found);
/// assert!(joins(&lines, 500).is_empty());
/// ```
#[must_use]
pub fn joins(lines: &[Vec<PlanPoint>], tolerance_mm: u32) -> Vec<Join> {
    let mut joining = Joining::of(lines, tolerance_mm);
    let mut found: Vec<Join> = Vec::new();
    let mut has_moved = vec![[false; 2]; lines.len()];
    for target in [Joining::line_met, Joining::nearest_end] {
        for line in 0..lines.len() as u32 {
            for end in [LineEnd::Start, LineEnd::Finish] {
                let has_moved = &mut has_moved[line as usize][usize::from(end == LineEnd::Finish)];
                if *has_moved {
                    continue;
                }
                let Some(free) = joining.free_end(line, end) else {
                    continue;
                };
                if let Some((to, kind)) = target(&joining, &free) {
                    let join = Join {
                        line,
                        end,
                        from: free.at,
                        to,
                        kind,
                    };
                    apply_joins(&mut joining.lines, &[join]);
                    found.push(join);
                    *has_moved = true;
                }
            }
        }
    }
    found
}

/// Moves the joined ends. The lines must be those the joins were found on.
pub fn apply_joins(lines: &mut [Vec<PlanPoint>], joins: &[Join]) {
    for join in joins {
        let line = &mut lines[join.line as usize];
        let end = match join.end {
            LineEnd::Start => line.first_mut(),
            LineEnd::Finish => line.last_mut(),
        };
        if let Some(end) = end {
            *end = join.to;
        }
    }
}

/// The lines as joined so far, and where their segments were drawn.
struct Joining {
    lines: Vec<Vec<PlanPoint>>,
    tolerance_mm: i64,
    cells: Cells,
    /// For every span filed in `cells`: its line and the place of its first point there.
    segments: Vec<(u32, u32)>,
}

impl Joining {
    fn of(lines: &[Vec<PlanPoint>], tolerance_mm: u32) -> Self {
        let lines: Vec<Vec<PlanPoint>> = lines
            .iter()
            .map(|line| {
                let mut line = line.clone();
                line.dedup();
                line
            })
            .collect();
        let (mut spans, mut segments) = (Vec::new(), Vec::new());
        for (line, points) in lines.iter().enumerate() {
            for (place, pair) in points.windows(2).enumerate() {
                spans.extend(Span::between(pair[0], pair[1]));
                segments.push((line as u32, place as u32));
            }
        }
        Self {
            lines,
            tolerance_mm: i64::from(tolerance_mm),
            cells: Cells::of(&spans),
            segments,
        }
    }

    /// The last two points towards an end, the end last; `None` for a line without length.
    fn last_segment(&self, line: u32, end: LineEnd) -> Option<[PlanPoint; 2]> {
        let points = &self.lines[line as usize];
        let last = points.len().checked_sub(2)?;
        Some(match end {
            LineEnd::Start => [points[1], points[0]],
            LineEnd::Finish => [points[last], points[last + 1]],
        })
    }

    /// An end that lies on no line yet, nor on the other end of its own.
    fn free_end(&self, line: u32, end: LineEnd) -> Option<FreeEnd> {
        let [before, at] = self.last_segment(line, end)?;
        let last = Span::between(before, at)?;
        let near = self.segments_near(line, end, at);
        let points = &self.lines[line as usize];
        let is_closed = points.first() == points.last();
        let lies_on = |&(_, span): &(u32, Span)| passes(span, at) && !run_along(span, last);
        (!is_closed && !near.iter().any(lies_on)).then_some(FreeEnd {
            line,
            end,
            before,
            at,
            near,
        })
    }

    /// The segments, as they are now, that may be within the tolerance of a point: all but the last two at this end.
    fn segments_near(&self, line: u32, end: LineEnd, at: PlanPoint) -> Vec<(u32, Span)> {
        // A segment may have moved by the tolerance since it was filed.
        let reach = 2 * self.tolerance_mm + 1;
        let count = self.lines[line as usize].len() as u32;
        let is_own_last = |place: u32| match end {
            LineEnd::Start => place < 2,
            LineEnd::Finish => place + 3 >= count,
        };
        let mut near: Vec<u32> = Vec::new();
        self.cells.visit_square(at, reach, |index| near.push(index));
        order::sort(&mut near);
        near.dedup();
        let as_they_are = near.into_iter().filter_map(|index| {
            let (other, place) = self.segments[index as usize];
            let points = &self.lines[other as usize];
            let span = Span::between(points[place as usize], points[place as usize + 1])?;
            (other != line || !is_own_last(place)).then_some((other, span))
        });
        as_they_are.collect()
    }

    /// The nearest line met ahead of a free end or behind it, along its last segment.
    fn line_met(&self, free: &FreeEnd) -> Option<(PlanPoint, JoinKind)> {
        let met_behind = self.first_met(free, Span::between(free.before, free.at)?);
        let met_ahead = self.ahead(free).and_then(|ahead| self.first_met(free, ahead));
        let trimmed = met_behind.map(|(distance, line, to)| (distance, to, JoinKind::TrimmedTo(line)));
        let extended = met_ahead.map(|(distance, line, to)| (distance, to, JoinKind::ExtendedTo(line)));
        let nearest = trimmed
            .into_iter()
            .chain(extended)
            .min_by_key(|&(distance, ..)| distance)?;
        Some((nearest.1, nearest.2))
    }

    /// The last segment laid out again and again beyond its end until it is longer than the tolerance: whole steps keep
    /// the direction exact. `None` where that leaves the legal plane.
    fn ahead(&self, free: &FreeEnd) -> Option<Span> {
        let (before, from) = (free.before, free.at);
        let length_mm = (before.distance_um(from) / 1000).max(1) as i64;
        let steps = self.tolerance_mm / length_mm + 1;
        let beyond = |before: i32, from: i32| {
            i32::try_from(i64::from(from) + (i64::from(from) - i64::from(before)) * steps).ok()
        };
        let far = PlanPoint::new(beyond(before.x_mm, from.x_mm)?, beyond(before.y_mm, from.y_mm)?);
        Span::between(from, far).filter(|_| far.is_legal())
    }

    /// The nearest place where `along` meets a line, within the tolerance of the end but not at it: its squared distance,
    /// the line, and the place.
    fn first_met(&self, free: &FreeEnd, along: Span) -> Option<(i64, u32, PlanPoint)> {
        let limit = self.tolerance_mm * self.tolerance_mm;
        let mut first: Option<(i64, u32, PlanPoint)> = None;
        for &(line, span) in free.near.iter().filter(|(_, span)| !run_along(*span, along)) {
            let ends = [span.a, span.b].into_iter().filter(|&end| passes(along, end));
            for place in rounded_crossing(along, span).into_iter().chain(ends) {
                let found = (place.squared_distance_mm2(free.at), line, place);
                if found.0 <= limit && place != free.at && first.is_none_or(|first| found < first) {
                    first = Some(found);
                }
            }
        }
        first
    }

    /// The nearest end of a line within the tolerance. A line of at most three tolerances is not closed.
    fn nearest_end(&self, free: &FreeEnd) -> Option<(PlanPoint, JoinKind)> {
        let limit = self.tolerance_mm * self.tolerance_mm;
        let mut others: Vec<u32> = free.near.iter().map(|&(other, _)| other).collect();
        others.push(free.line);
        order::sort(&mut others);
        others.dedup();
        let mut nearest: Option<(i64, u32, LineEnd, PlanPoint)> = None;
        for other in others {
            for other_end in [LineEnd::Start, LineEnd::Finish] {
                let is_itself = (other, other_end) == (free.line, free.end);
                if is_itself || (other == free.line && self.is_short(other)) {
                    continue;
                }
                let Some([_, at]) = self.last_segment(other, other_end) else {
                    continue;
                };
                let found = (at.squared_distance_mm2(free.at), other, other_end, at);
                if found.0 <= limit && nearest.is_none_or(|nearest| found < nearest) {
                    nearest = Some(found);
                }
            }
        }
        // An end that coincides with another is where it should be.
        let (_, other, other_end, at) = nearest.filter(|&(squared_mm2, ..)| squared_mm2 > 0)?;
        Some((at, JoinKind::MovedTo(other, other_end)))
    }

    fn is_short(&self, line: u32) -> bool {
        let points = &self.lines[line as usize];
        let length_um: u64 = points.windows(2).map(|pair| pair[0].distance_um(pair[1])).sum();
        length_um <= 3_000 * self.tolerance_mm as u64
    }
}

/// An end that lies on no line, and the segments near it.
struct FreeEnd {
    line: u32,
    end: LineEnd,
    /// The point before it.
    before: PlanPoint,
    at: PlanPoint,
    near: Vec<(u32, Span)>,
}

/// Whether two spans lie on each other in more than a point: two of their ends lie on both.
fn run_along(first: Span, second: Span) -> bool {
    let on_second = [first.a, first.b].into_iter().filter(|&end| passes(second, end));
    let on_first = [second.a, second.b].into_iter().filter(|&end| passes(first, end));
    let mut shared = on_second.chain(on_first);
    shared.next().is_some_and(|one| shared.any(|other| other != one))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn p(x_mm: i32, y_mm: i32) -> PlanPoint {
        PlanPoint::new(x_mm, y_mm)
    }

    #[track_caller]
    fn check(lines: &[&[PlanPoint]], expected: &[(u32, LineEnd, PlanPoint, JoinKind)]) {
        let mut lines: Vec<Vec<PlanPoint>> = lines.iter().map(|line| line.to_vec()).collect();
        let found = joins(&lines, 500);
        let listed: Vec<_> = found
            .iter()
            .map(|join| (join.line, join.end, join.to, join.kind))
            .collect();
        assert_eq!(listed, expected);
        for join in &found {
            let line = &lines[join.line as usize];
            let drawn = if join.end == LineEnd::Start {
                line.first()
            } else {
                line.last()
            };
            assert_eq!(drawn, Some(&join.from));
        }
        apply_joins(&mut lines, &found);
        assert_eq!(joins(&lines, 500), [], "joining again changes nothing");
    }

    #[test]
    fn an_overshoot_is_trimmed() {
        let (main, side) = ([p(0, 0), p(50_000, 0)], [p(20_000, 9_000), p(20_000, -400)]);
        check(
            &[&main, &side],
            &[(1, LineEnd::Finish, p(20_000, 0), JoinKind::TrimmedTo(0))],
        );
    }

    #[test]
    fn a_gap_beyond_the_tolerance_stays_open() {
        let (main, side) = ([p(0, 0), p(50_000, 0)], [p(20_000, 9_000), p(20_000, 501)]);
        check(&[&main, &side], &[]);
    }

    #[test]
    fn an_end_on_a_line_is_left_alone() {
        let (main, side) = ([p(0, 0), p(50_000, 1)], [p(20_000, 9_000), p(20_000, 0)]);
        check(&[&main, &side], &[]);
    }

    #[test]
    fn of_two_lines_ahead_the_first_is_met() {
        let (near, far) = ([p(5_000, 100), p(45_000, 100)], [p(0, 0), p(50_000, 0)]);
        let side = [p(20_000, 9_000), p(20_000, 300)];
        check(
            &[&far, &near, &side],
            &[(2, LineEnd::Finish, p(20_000, 100), JoinKind::ExtendedTo(1))],
        );
    }

    #[test]
    fn a_corner_of_two_overshoots_closes_at_the_crossing() {
        let (east, north) = ([p(0, 0), p(50_300, 7)], [p(50_003, 40_000), p(50_000, -200)]);
        check(
            &[&east, &north],
            &[
                (0, LineEnd::Finish, p(50_000, 7), JoinKind::TrimmedTo(1)),
                (1, LineEnd::Finish, p(50_000, 7), JoinKind::TrimmedTo(0)),
            ],
        );
    }

    #[test]
    fn an_overlap_in_line_ends_at_what_crosses_it_else_at_the_other_end() {
        let (south, north) = ([p(0, -9_000), p(0, 150)], [p(0, -200), p(0, 9_000)]);
        check(
            &[&south, &north],
            &[(0, LineEnd::Finish, p(0, -200), JoinKind::MovedTo(1, LineEnd::Start))],
        );
        let across = [p(0, 0), p(9_000, 0)];
        check(
            &[&across, &south, &north],
            &[
                (1, LineEnd::Finish, p(0, 0), JoinKind::TrimmedTo(0)),
                (2, LineEnd::Start, p(0, 0), JoinKind::TrimmedTo(0)),
            ],
        );
    }

    #[test]
    fn ends_that_face_each_other_meet_once() {
        let (west, east) = ([p(0, 0), p(10_000, 0)], [p(10_300, 40), p(20_000, 40)]);
        check(
            &[&west, &east],
            &[(0, LineEnd::Finish, p(10_300, 40), JoinKind::MovedTo(1, LineEnd::Start))],
        );
    }

    #[test]
    fn a_ring_left_open_is_closed_and_a_scrap_is_not() {
        let ring = [p(0, 0), p(9_000, 0), p(9_000, 9_000), p(0, 9_000), p(-200, 50)];
        check(
            &[&ring],
            &[(0, LineEnd::Start, p(-200, 50), JoinKind::MovedTo(0, LineEnd::Finish))],
        );
        check(&[&[p(0, 0), p(300, 0)]], &[]);
        check(&[&[p(0, 0), p(0, 0)], &[p(5, 5)], &[]], &[]);
    }

    #[test]
    fn a_short_last_segment_is_laid_out_until_it_reaches() {
        let (main, side) = (
            [p(0, 0), p(50_000, 0)],
            [p(20_000, 9_000), p(20_000, 450), p(20_001, 430)],
        );
        check(
            &[&main, &side],
            &[(1, LineEnd::Finish, p(20_023, 0), JoinKind::ExtendedTo(0))],
        );
    }

    #[test]
    fn an_end_at_the_limit_of_the_plane_is_not_led_beyond() {
        let limit = crate::plan::coordinates::LIMIT_MM;
        check(&[&[p(0, 0), p(limit, 0)], &[p(0, 900), p(limit, 900)]], &[]);
    }
}
