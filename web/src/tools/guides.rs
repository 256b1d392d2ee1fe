//! Guides: where a point lands that stands in some relation to what is drawn, and the thin lines that show it.
//!
//! Places come first ([`snap`]): intersections, ends, corners. On a street, the place where a guide meets it, a
//! perpendicular foot or a block as long as the one before comes before any other place of it. On open land the crossing
//! of two guides comes before one guide. All of it only within reach, so the hand that wants none of it moves on.

use hobnail_core::number;
use hobnail_core::plan::editing::{direction, meeting};
use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Alternative, MarkId, PlanPoint};

use super::near;
use super::snap::{self, Reason, Snap};
use super::{At, Sight};

/// Streets give guides to points within so many times the reach of the hand: about a hand's breadth on the screen.
const RANGE: f64 = 24.0;
/// How many nearby runs of streets give their directions.
const RUNS: usize = 3;

/// Where a point lands, and the lines that say why.
#[derive(Clone, Debug, PartialEq)]
pub struct Landing {
    /// The place and its reason.
    pub snap: Snap,
    /// Thin lines to be drawn, each from one point to another.
    pub lines: Vec<[PlanPoint; 2]>,
}

/// A length or a bearing that was typed for the next point.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Typed {
    /// The length of the run, in millimeters.
    pub length_mm: Option<f64>,
    /// Its direction, in degrees clockwise from north, or from the run before.
    pub bearing_degrees: Option<f64>,
    /// Whether the direction is counted from the run before.
    pub is_turn: bool,
}

type Place = (f64, f64);
/// A place, why a point lands there, and the line that shows it.
type Reasoned = (PlanPoint, Reason, [PlanPoint; 2]);

/// A line that a point may land on: from a place, in a direction of length 1.
#[derive(Clone, Copy)]
struct Guide {
    from: PlanPoint,
    along: Place,
    reason: Reason,
}

/// Where the next point of a street lands that has `trace` so far and will be mark `drawn`. Marks from that id up are of
/// the gesture itself and give no reasons.
///
/// With snapping off, or Alt held, that is the 0.1 m grid; a typed length or bearing holds in any case.
#[must_use]
pub fn land(at: At, drawn: MarkId, trace: &[PlanPoint], sight: &Sight<'_>) -> Landing {
    let free = if sight.is_free(at) {
        only(snap::free(at.point))
    } else {
        guided(at.point, drawn, trace, sight)
    };
    typed(at.point, &free, drawn, trace, sight).unwrap_or(free)
}

/// The marks of the gesture itself.
fn own(alternative: &Alternative, drawn: MarkId) -> Vec<MarkId> {
    alternative.marks.keys().copied().filter(|id| *id >= drawn).collect()
}

const fn only(snap: Snap) -> Landing {
    Landing {
        snap,
        lines: Vec::new(),
    }
}

fn guided(from: PlanPoint, drawn: MarkId, trace: &[PlanPoint], sight: &Sight<'_>) -> Landing {
    let own_start = trace.first().filter(|_| trace.len() >= 3).copied();
    let Some(alternative) = sight.drawn() else {
        return only(snap::on_grid(from));
    };
    let plain = snap::snap_beside(from, &own(alternative, drawn), own_start, sight);
    match plain.reason {
        Reason::OnStreet => on_street(from, drawn, trace, alternative, sight).unwrap_or(only(plain)),
        Reason::Grid => on_land(from, drawn, trace, alternative, sight).unwrap_or(only(plain)),
        _ => only(plain),
    }
}

/// A place on the nearest street that something else speaks for too.
fn on_street(
    from: PlanPoint,
    drawn: MarkId,
    trace: &[PlanPoint],
    alternative: &Alternative,
    sight: &Sight<'_>,
) -> Option<Landing> {
    let (id, foot) = near::street_beside(from, alternative, &own(alternative, drawn), sight.reach_mm)?;
    let street = alternative.marks.get(&id)?.as_street()?;
    let segment = foot.tie.segment as usize;
    let (a, b) = (street.line.get(segment)?.point, street.line.get(segment + 1)?.point);
    let mut found: Vec<Reasoned> = Vec::new();
    if let Some(last) = trace.last() {
        let (share, square, _) = near::foot_on_segment(*last, a, b);
        if share > 0.0 && share < 1.0 {
            found.push((square, Reason::Square, [*last, square]));
        }
    }
    let (along, _) = direction(a, b)?;
    for guide in guides(from, drawn, trace, alternative, sight) {
        let met = meeting((place(a), along), (place(guide.from), guide.along)).map(point);
        if let Some(met) = met.filter(|met| near::foot_on_segment(*met, a, b).2 <= 1.0) {
            found.push((met, guide.reason, [guide.from, met]));
        }
    }
    found.extend(
        equal_blocks(alternative, id, street, drawn)
            .into_iter()
            .map(|(before, at)| (at, Reason::EqualBlock, [before, at])),
    );
    let (at, reason, line) = nearest(from, found, sight.reach_mm)?;
    let foot = near::foot_on_street(at, id, street)?;
    let tie = Some(foot.tie).filter(|_| !snap::holds_on(alternative, id, drawn));
    Some(Landing {
        snap: Snap {
            point: foot.point,
            tie,
            reason,
        },
        lines: vec![line],
    })
}

/// A place on open land: where two guides cross, else the nearest place of one, a whole number of decimeters along it.
fn on_land(
    from: PlanPoint,
    drawn: MarkId,
    trace: &[PlanPoint],
    alternative: &Alternative,
    sight: &Sight<'_>,
) -> Option<Landing> {
    let guides = guides(from, drawn, trace, alternative, sight);
    let mut crossings = Vec::new();
    for (index, one) in guides.iter().enumerate() {
        for other in guides.iter().skip(index + 1) {
            let met = meeting((place(one.from), one.along), (place(other.from), other.along)).map(point);
            crossings.extend(met.map(|met| (met, Reason::Guides, [one.from, other.from])));
        }
    }
    if let Some((at, reason, ends)) = nearest(from, crossings, sight.reach_mm) {
        return Some(Landing {
            snap: free(at, reason),
            lines: ends.map(|end| [end, at]).to_vec(),
        });
    }
    let places = guides.iter().map(|guide| {
        let grid_mm = f64::from(snap::GRID_MM);
        let along_mm = (along(guide, from) / grid_mm).round() * grid_mm;
        let at = point(ahead(guide, along_mm));
        (at, guide.reason, [guide.from, at])
    });
    let (at, reason, line) = nearest(from, places.collect(), sight.reach_mm)?;
    Some(Landing {
        snap: free(at, reason),
        lines: vec![line],
    })
}

/// The guides that pass within reach of `from`, the plainest first.
fn guides(
    from: PlanPoint,
    drawn: MarkId,
    trace: &[PlanPoint],
    alternative: &Alternative,
    sight: &Sight<'_>,
) -> Vec<Guide> {
    let range_mm = sight.reach_mm * RANGE;
    let mut found: Vec<Guide> = Vec::new();
    let mut add = |guide: Guide, is_ray: bool| {
        let along_mm = along(&guide, from);
        let apart_mm = distance_mm(from, point(ahead(&guide, along_mm)));
        let is_new = !found.iter().any(|held| {
            held.from == guide.from && (held.along.0 * guide.along.1 - held.along.1 * guide.along.0).abs() < 0.002
        });
        let is_beyond = if is_ray { along_mm } else { along_mm.abs() } > sight.reach_mm;
        if is_new && is_beyond && apart_mm <= sight.reach_mm {
            found.push(guide);
        }
    };
    let mut runs: Vec<(f64, Place)> = Vec::new();
    for (id, street) in near::streets(alternative) {
        if id >= drawn || !near::may_reach(from, street, range_mm) {
            continue;
        }
        let points: Vec<PlanPoint> = street.line.iter().map(|vertex| vertex.point).collect();
        if let ([first, second, ..], [.., before, last]) = (points.as_slice(), points.as_slice())
            && first != last
        {
            for (end, inner) in [(*first, *second), (*last, *before)] {
                if let Some((along, _)) = direction(inner, end)
                    && distance_mm(from, end) <= range_mm
                {
                    let guide = Guide {
                        from: end,
                        along,
                        reason: Reason::Extension,
                    };
                    add(guide, true);
                }
            }
        }
        for ends in points.windows(2) {
            if let [a, b] = ends
                && let Some((along, _)) = direction(*a, *b)
            {
                let apart_mm = near::foot_on_segment(from, *a, *b).2;
                if apart_mm <= range_mm {
                    let at = runs
                        .iter()
                        .position(|(held_mm, _)| apart_mm < *held_mm)
                        .unwrap_or(runs.len());
                    runs.insert(at, (apart_mm, along));
                    runs.truncate(RUNS);
                }
            }
        }
    }
    let Some(last) = trace.last().copied() else {
        return found;
    };
    let before = trace.len().checked_sub(2).and_then(|index| trace.get(index));
    let own = before.and_then(|before| direction(*before, last));
    let mut through_last = |along: Place, reason: Reason| {
        let guide = Guide {
            from: last,
            along,
            reason,
        };
        add(guide, false);
    };
    if let Some((along, _)) = own {
        through_last(along, Reason::StraightOn);
        through_last(turned(along), Reason::Square);
    }
    for (_, along) in runs {
        through_last(along, Reason::Parallel);
        through_last(turned(along), Reason::Square);
    }
    found
}

/// Places along a street as far from an intersection as the next one on its other side, with that intersection.
fn equal_blocks(alternative: &Alternative, id: MarkId, street: &Street, drawn: MarkId) -> Vec<(PlanPoint, PlanPoint)> {
    let met = near::junctions(alternative, id, Some(drawn));
    let mut found = Vec::new();
    for pair in met.windows(2) {
        let [(first_mm, first), (second_mm, second)] = pair else {
            continue;
        };
        let block_mm = second_mm - first_mm;
        for (before, at_mm) in [(first, first_mm - block_mm), (second, second_mm + block_mm)] {
            found.extend(place_along(street, at_mm).map(|at| (*before, at)));
        }
    }
    found
}

/// The point so far along a street's line from corner to corner; `None` beyond its ends.
fn place_along(street: &Street, at_mm: f64) -> Option<PlanPoint> {
    let mut left_mm = Some(at_mm).filter(|at_mm| *at_mm >= 0.0)?;
    for ends in street.line.windows(2) {
        let [a, b] = ends else { continue };
        if let Some((along, length_mm)) = direction(a.point, b.point) {
            if left_mm <= length_mm {
                let (x, y) = place(a.point);
                return Some(point((x + along.0 * left_mm, y + along.1 * left_mm)));
            }
            left_mm -= length_mm;
        }
    }
    None
}

/// The landing with what was typed put in its place; `None` where nothing was, or no point to count from.
fn typed(from: PlanPoint, free: &Landing, drawn: MarkId, trace: &[PlanPoint], sight: &Sight<'_>) -> Option<Landing> {
    let Typed {
        length_mm,
        bearing_degrees,
        is_turn,
    } = sight.typed;
    let last = *trace.last()?;
    if length_mm.is_none() && bearing_degrees.is_none() {
        return None;
    }
    let along = match bearing_degrees {
        None => direction(last, free.snap.point)?.0,
        Some(degrees) => {
            let before = trace.len().checked_sub(2).and_then(|index| trace.get(index));
            let from_before = before.filter(|_| is_turn).and_then(|before| direction(*before, last));
            let (x, y) = from_before.map_or((0.0, 1.0), |(along, _)| along);
            let clockwise_rad = degrees.to_radians();
            let (sine, cosine) = (number::sin(clockwise_rad), number::cos(clockwise_rad));
            (x * cosine + y * sine, y * cosine - x * sine)
        }
    };
    let guide = Guide {
        from: last,
        along,
        reason: Reason::Typed,
    };
    let grid_mm = f64::from(snap::GRID_MM);
    let reached_mm = (self::along(&guide, from) / grid_mm).round() * grid_mm;
    let at = point(ahead(&guide, length_mm.unwrap_or_else(|| reached_mm.max(0.0))));
    // What lands on a street to the millimeter holds on to it.
    let alternative = sight.drawn()?;
    let foot = near::street_beside(at, alternative, &own(alternative, drawn), 3.0);
    let held = foot.filter(|(id, _)| !snap::holds_on(alternative, *id, drawn));
    Some(Landing {
        snap: Snap {
            point: held.map_or(at, |(_, foot)| foot.point),
            tie: held.map(|(_, foot)| foot.tie),
            reason: Reason::Typed,
        },
        lines: vec![[last, at]],
    })
}

fn nearest(from: PlanPoint, places: Vec<Reasoned>, reach_mm: f64) -> Option<Reasoned> {
    let mut best: Option<(f64, Reasoned)> = None;
    for found in places {
        let apart_mm = distance_mm(from, found.0);
        // A hair's difference, as of two directions that are all but the same, does not change the reason.
        if apart_mm <= reach_mm && best.as_ref().is_none_or(|(held_mm, _)| apart_mm + 1.0 < *held_mm) {
            best = Some((apart_mm, found));
        }
    }
    best.map(|(_, found)| found)
}

const fn free(point: PlanPoint, reason: Reason) -> Snap {
    Snap {
        point,
        tie: None,
        reason,
    }
}

fn place(point: PlanPoint) -> Place {
    (f64::from(point.x_mm), f64::from(point.y_mm))
}

fn point((x_mm, y_mm): Place) -> PlanPoint {
    // Casting holds at the ends of the range, and a document within its limits leaves them far away.
    PlanPoint::new(x_mm.round() as i32, y_mm.round() as i32)
}

fn turned((x, y): Place) -> Place {
    (-y, x)
}

fn along(guide: &Guide, to: PlanPoint) -> f64 {
    let (from, to) = (place(guide.from), place(to));
    (to.0 - from.0) * guide.along.0 + (to.1 - from.1) * guide.along.1
}

fn ahead(guide: &Guide, along_mm: f64) -> Place {
    let (x, y) = place(guide.from);
    (x + guide.along.0 * along_mm, y + guide.along.1 * along_mm)
}

fn distance_mm(one: PlanPoint, other: PlanPoint) -> f64 {
    (one.squared_distance_mm2(other) as f64).sqrt()
}

/// The direction of the run of street or of the site's edge nearest to a point, its ends, and whether it is a street's.
#[must_use]
pub fn nearest_run(from: PlanPoint, drawn: MarkId, sight: &Sight<'_>) -> Option<(Place, [PlanPoint; 2], bool)> {
    let mut best: Option<(f64, [PlanPoint; 2], bool)> = None;
    let mut look = |a: PlanPoint, b: PlanPoint, is_street: bool| {
        let apart_mm = near::foot_on_segment(from, a, b).2;
        if a != b && best.is_none_or(|(held_mm, ..)| apart_mm < held_mm) {
            best = Some((apart_mm, [a, b], is_street));
        }
    };
    let marks = sight.drawn().map(|alternative| &alternative.marks);
    for (id, mark) in marks.into_iter().flatten() {
        for ends in mark.as_street().map_or(&[][..], |street| &street.line[..]).windows(2) {
            if let [a, b] = ends
                && *id < drawn
            {
                look(a.point, b.point, true);
            }
        }
    }
    let edge = &sight.document.site.boundary;
    for (a, b) in edge.iter().zip(edge.iter().cycle().skip(1)) {
        look(*a, *b, false);
    }
    let (_, ends, is_street) = best?;
    let [a, b] = ends;
    Some((direction(a, b)?.0, ends, is_street))
}

#[cfg(test)]
mod tests;
