//! Points, told by what lies about them: those that stood before, steps from the one before, places along streets.

use crate::order;
use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::MarkId;
use crate::plan::street::{Tie, Vertex};
use crate::plan::tie::{WHOLE_PPB, foot, nearest_share};

use super::super::AddressFault;
use super::coder::{Coder, Field};
use super::guide::Guide;

/// Points that stood before and can be told by their place among the nearest.
const MOST_NODES: usize = 256;

/// A hidden point that a place along a street is the foot of lies within so many steps of the grid from it.
const FARTHEST_STEPS: i64 = 40;

/// No corner between points of a plan is rounded by more.
const LONGEST_RADIUS_MM: u32 = 400_000_000;

/// What points are told by.
#[derive(Debug)]
pub(super) struct Ground {
    /// Step of the grid on which most points lie, in millimeters.
    pub grid_mm: i64,
    /// Points that stood before, and the tie of the first that stood there.
    nodes: Vec<(PlanPoint, Option<Tie>)>,
    /// The streets so far, by which marks and ties are told.
    pub streets: Vec<(MarkId, Vec<Vertex>)>,
    /// Lines to follow.
    pub guide: Guide,
    /// Whether the last point lay on tenfold steps, by coordinate.
    was_whole: [bool; 2],
}

/// A direction, as steps east and north of any length; nought where there is none.
pub(super) type Way = (i64, i64);

/// From one point to another.
pub(super) fn way(from: PlanPoint, to: PlanPoint) -> Way {
    (across(from.x_mm, to.x_mm), across(from.y_mm, to.y_mm))
}

fn across(from: i32, to: i32) -> i64 {
    i64::from(to) - i64::from(from)
}

/// The size of a number in powers of two, to be a hint.
fn size(number: i64) -> i64 {
    64 - i64::from(number.unsigned_abs().leading_zeros())
}

/// A quotient rounded to the nearest whole number, halves upward.
pub(super) fn rounded(number: i64, by: i64) -> i64 {
    let (number, by) = (i128::from(number), i128::from(by));
    (2 * number + by).div_euclid(2 * by) as i64
}

impl Ground {
    /// Ground with nothing on it.
    pub(super) fn new() -> Self {
        Self {
            grid_mm: 100,
            nodes: Vec::new(),
            streets: Vec::new(),
            guide: Guide::default(),
            was_whole: [false; 2],
        }
    }

    /// Forgets the streets of another alternative; points stay.
    pub(super) fn forget_streets(&mut self) {
        self.streets.clear();
        for (_, tie) in &mut self.nodes {
            *tie = None;
        }
    }

    /// Remembers a point to be told again.
    pub(super) fn remember(&mut self, point: PlanPoint, tie: Option<Tie>) {
        if let Some(held) = self.nodes.iter_mut().find(|(held, _)| *held == point) {
            held.1 = held.1.or(tie);
            return;
        }
        if self.nodes.len() == MOST_NODES {
            self.nodes.remove(0);
        }
        self.nodes.push((point, tie));
    }

    /// The tie of a remembered point; `None` where the point is not remembered.
    pub(super) fn node(&self, point: PlanPoint) -> Option<Option<Tie>> {
        self.nodes.iter().find(|(held, _)| *held == point).map(|(_, tie)| *tie)
    }

    /// The remembered points, the nearest to `from` first.
    fn nodes_near(&self, from: PlanPoint) -> Vec<(PlanPoint, Option<Tie>)> {
        let mut near = self.nodes.clone();
        order::sort_by_key(&mut near, |(point, _)| point.squared_distance_mm2(from));
        near
    }

    /// A remembered point by its place among the nearest to `from`.
    pub(super) fn node_near(
        &self,
        coder: &mut Coder,
        field: Field,
        from: PlanPoint,
        point: PlanPoint,
    ) -> (PlanPoint, Option<Tie>) {
        coder.spend(4 * self.nodes.len());
        let near = self.nodes_near(from);
        let place = near.iter().position(|(held, _)| *held == point).unwrap_or(0);
        let place = coder.number(field, &[], place as i64);
        let node = usize::try_from(place).ok().and_then(|place| near.get(place)).copied();
        node.unwrap_or_else(|| {
            coder.fault(AddressFault::Impossible);
            (point, None)
        })
    }

    /// A point by its steps from another, where `ahead` tells which way it may lie.
    pub(super) fn free(
        &mut self,
        coder: &mut Coder,
        field: Field,
        from: PlanPoint,
        ahead: Way,
        point: PlanPoint,
    ) -> PlanPoint {
        let is_on_grid = i64::from(point.x_mm) % self.grid_mm == 0 && i64::from(point.y_mm) % self.grid_mm == 0;
        let unit = if coder.flag(field, &[], is_on_grid) {
            self.grid_mm
        } else {
            1
        };
        let field = field + if unit == 1 { 10 } else { 0 };
        let ten = 10 * unit;
        // The longer way first, then the other as it would be straight ahead.
        let is_steep = ahead.1.abs() > ahead.0.abs();
        let order = |(x, y): (i64, i64)| if is_steep { (y, x) } else { (x, y) };
        let (first, second) = order((point.x_mm.into(), point.y_mm.into()));
        let (first_from, second_from) = order((rounded(from.x_mm.into(), ten), rounded(from.y_mm.into(), ten)));
        let (first_ahead, second_ahead) = order(ahead);
        let known = first_ahead.signum();
        let step = coder.number(
            field + 1,
            &[known, known * 64 + size(first_ahead / ten)],
            first.div_euclid(ten) - first_from,
        );
        let straight = if first_ahead == 0 {
            0
        } else {
            rounded(step.saturating_mul(second_ahead.abs()), first_ahead.abs())
                .saturating_mul(second_ahead.signum() * first_ahead.signum())
        };
        let aside = coder.number(
            field + 2,
            &[size(step), size(step) * 2 + known.abs()],
            (second.div_euclid(ten) - second_from).saturating_sub(straight),
        );
        let first_digit = self.digit(coder, field + 3, 0, first.rem_euclid(ten) / unit);
        let second_digit = self.digit(coder, field + 4, 1, second.rem_euclid(ten) / unit);
        let first = first_from
            .saturating_add(step)
            .saturating_mul(ten)
            .saturating_add(first_digit * unit);
        let second = second_from
            .saturating_add(straight)
            .saturating_add(aside)
            .saturating_mul(ten)
            .saturating_add(second_digit * unit);
        let (x_mm, y_mm) = order((first, second));
        known_or_fault(coder, legal(x_mm, y_mm))
    }

    /// The last digit of a coordinate in steps of the grid.
    fn digit(&mut self, coder: &mut Coder, field: Field, axis: usize, digit: i64) -> i64 {
        let before = i64::from(self.was_whole[0]) + 2 * i64::from(self.was_whole[1]);
        let digit = coder.choice(field, &[before], 10, digit as usize) as i64;
        self.was_whole[axis & 1] = digit == 0;
        digit
    }

    /// The streets by their distance from a point, the nearest first: place among all, and nearest segment.
    pub(super) fn streets_near(&self, coder: &mut Coder, from: PlanPoint) -> Vec<(usize, usize)> {
        let nearest_of = |line: &[Vertex]| {
            let segments = line.windows(2).enumerate().map(|(segment, ends)| match ends {
                [a, b] => (squared_distance(from, a.point, b.point), segment),
                _ => (f64::MAX, segment),
            });
            segments.fold((f64::MAX, 0), |best, next| if next.0 < best.0 { next } else { best })
        };
        let mut near: Vec<(usize, f64, usize)> = Vec::with_capacity(self.streets.len());
        coder.spend(self.streets.iter().map(|(_, line)| line.len() + 4).sum());
        for (place, (_, line)) in self.streets.iter().enumerate() {
            let (distance, segment) = nearest_of(line);
            near.push((place, distance, segment));
        }
        order::sort_by(&mut near, |a, b| a.1.total_cmp(&b.1));
        near.iter().map(|(place, _, segment)| (*place, *segment)).collect()
    }

    /// A street by its place among the nearest to `from`, and its segment nearest to it.
    pub(super) fn street_near(
        &self,
        coder: &mut Coder,
        field: Field,
        hints: &[i64],
        from: PlanPoint,
        street: MarkId,
    ) -> Option<(MarkId, usize, &[Vertex])> {
        let near = self.streets_near(coder, from);
        let id_of = |place: usize| self.streets.get(place).map(|(id, _)| *id);
        let place = near
            .iter()
            .position(|(held, _)| id_of(*held) == Some(street))
            .unwrap_or(0);
        let place = coder.number(field, hints, place as i64);
        let found = usize::try_from(place).ok().and_then(|place| near.get(place));
        let found = found.and_then(|(place, segment)| Some((self.streets.get(*place)?, *segment)));
        if found.is_none() {
            coder.fault(AddressFault::Impossible);
        }
        found.map(|((id, line), segment)| (*id, segment, line.as_slice()))
    }

    /// A share of a segment: its ends, or the foot of a point on the grid that is near it, or any.
    pub(super) fn share(
        &self,
        coder: &mut Coder,
        field: Field,
        ends: (PlanPoint, PlanPoint),
        near: PlanPoint,
        share_ppb: u32,
    ) -> u32 {
        let (a, b) = ends;
        let hidden = if coder.is_reading() {
            None
        } else {
            self.hidden_point(a, b, share_ppb)
        };
        let how = match (share_ppb, hidden) {
            (0, _) => 0,
            (WHOLE_PPB, _) => 1,
            (_, Some(_)) => 2,
            _ => 3,
        };
        match coder.choice(field, &[], 4, how) {
            0 => 0,
            1 => WHOLE_PPB,
            2 => {
                let (along, aside) = hidden.unwrap_or((0, 0));
                let ten = 10 * self.grid_mm;
                let (is_steep, from, to) = spine(a, b);
                let projected = from as f64 + (to - from) as f64 * f64::from(nearest_share(a, b, near)) / 1e9;
                let expected = rounded(projected as i64, ten);
                let step = coder.number(
                    field + 1,
                    &[size((to - from) / ten), i64::from(near == a) + 2 * i64::from(near == b)],
                    along.div_euclid(ten) - expected,
                );
                let digit = coder.choice(field + 2, &[], 10, (along.rem_euclid(ten) / self.grid_mm) as usize) as i64;
                let along = expected
                    .saturating_add(step)
                    .saturating_mul(ten)
                    .saturating_add(digit * self.grid_mm);
                // Beside the segment the point lies on tenfold steps too, or not, as it does along it.
                let straight = known_or_fault(coder, self.beside(a, b, along, 0));
                let straight = i64::from(if is_steep { straight.x_mm } else { straight.y_mm });
                let across = straight + aside * self.grid_mm;
                let expected = rounded(straight, ten);
                let step = coder.number(field + 3, &[i64::from(digit == 0)], across.div_euclid(ten) - expected);
                let digit = i64::from(digit == 0);
                let digit = coder.choice(
                    field + 5,
                    &[digit],
                    10,
                    (across.rem_euclid(ten) / self.grid_mm) as usize,
                );
                let across = expected.saturating_add(step).saturating_mul(ten);
                let across = across.saturating_add(digit as i64 * self.grid_mm);
                let point = if is_steep {
                    legal(across, along)
                } else {
                    legal(along, across)
                };
                nearest_share(a, b, known_or_fault(coder, point))
            }
            _ => {
                let read = coder.number(field + 4, &[], share_ppb.into());
                u32::try_from(read).unwrap_or(0).min(WHOLE_PPB)
            }
        }
    }

    /// The point on the grid with coordinate `along` on the segment's longer axis, so many steps beside the segment.
    fn beside(&self, a: PlanPoint, b: PlanPoint, along: i64, aside: i64) -> Option<PlanPoint> {
        let (is_steep, from, to) = spine(a, b);
        let (from_aside, to_aside) = if is_steep { (a.x_mm, b.x_mm) } else { (a.y_mm, b.y_mm) };
        let run = if to == from { 1 } else { to - from };
        let along = i32::try_from(along).ok()?.into();
        let straight = i64::from(from_aside) + (along - from) * across(from_aside, to_aside) / run;
        let aside = rounded(straight, self.grid_mm)
            .checked_add(aside)?
            .checked_mul(self.grid_mm)?;
        if is_steep {
            legal(aside, along)
        } else {
            legal(along, aside)
        }
    }

    /// Of a point on the grid whose foot has this share: its coordinate on the longer axis, and its steps beside the
    /// segment. That of the least steps, where there is one.
    fn hidden_point(&self, a: PlanPoint, b: PlanPoint, share_ppb: u32) -> Option<(i64, i64)> {
        let (is_steep, from, to) = spine(a, b);
        let (rise, run) = {
            let (x, y) = way(a, b);
            if is_steep {
                (x as f64, y as f64)
            } else {
                (y as f64, x as f64)
            }
        };
        let squared = rise * rise + run * run;
        if squared <= 0.0 {
            return None;
        }
        let foot_along = from as f64 + (to - from) as f64 * f64::from(share_ppb) / 1e9;
        for steps in 0..=2 * FARTHEST_STEPS {
            let aside = if steps % 2 == 0 { steps / 2 } else { -(steps + 1) / 2 };
            let center = foot_along - (aside * self.grid_mm) as f64 * run * rise / squared;
            let near = rounded(center as i64, self.grid_mm);
            for candidate in [near, near - 1, near + 1] {
                let along = candidate * self.grid_mm;
                let point = self.beside(a, b, along, aside);
                if point.is_some_and(|point| nearest_share(a, b, point) == share_ppb) {
                    return Some((along, aside));
                }
            }
        }
        None
    }

    /// A tie to a street that is among those so far, and its foot.
    pub(super) fn tie(
        &self,
        coder: &mut Coder,
        field: Field,
        hints: &[i64],
        from: PlanPoint,
        tie: Tie,
    ) -> Option<(Tie, PlanPoint)> {
        let (street, near, line) = self.street_near(coder, field, hints, from, tie.street)?;
        let segment = (near as i64).saturating_add(coder.number(field + 1, &[], i64::from(tie.segment) - near as i64));
        let ends = usize::try_from(segment).ok().and_then(|segment| {
            let ends = line.get(segment..)?.get(..2)?;
            Some((ends.first()?.point, ends.last()?.point))
        });
        let Some(ends) = ends else {
            coder.fault(AddressFault::Impossible);
            return None;
        };
        let share_ppb = self.share(coder, field + 2, ends, from, tie.along_ppb);
        let tie = Tie {
            street,
            segment: segment as u32,
            along_ppb: share_ppb,
        };
        Some((tie, self.foot(coder, tie)?))
    }

    /// Where a tie to one of the streets so far stands. An arc at a rounded corner takes time by its radius.
    pub(super) fn foot(&self, coder: &mut Coder, tie: Tie) -> Option<PlanPoint> {
        coder.spend(self.streets.len() / 4);
        let line = self.line_of(tie.street)?;
        let ends = line.get(tie.segment as usize..)?.iter().take(2);
        let largest = ends.map(|end| end.corner_radius_mm).max().unwrap_or(0);
        coder.spend(4 * f64::from(largest.min(LONGEST_RADIUS_MM)).sqrt() as usize);
        foot(line, tie.segment, tie.along_ppb)
    }

    /// The line of a street so far.
    pub(super) fn line_of(&self, street: MarkId) -> Option<&[Vertex]> {
        let found = self.streets.iter().find(|(id, _)| *id == street);
        found.map(|(_, line)| line.as_slice())
    }
}

/// Whether a segment runs more north than east, and its ends on that axis.
fn spine(a: PlanPoint, b: PlanPoint) -> (bool, i64, i64) {
    let (x, y) = way(a, b);
    if y.abs() > x.abs() {
        (true, a.y_mm.into(), b.y_mm.into())
    } else {
        (false, a.x_mm.into(), b.x_mm.into())
    }
}

/// Squared distance of a point from a segment, in square millimeters.
fn squared_distance(from: PlanPoint, a: PlanPoint, b: PlanPoint) -> f64 {
    let ((x, y), (u, v)) = (way(a, from), way(a, b));
    let (x, y, u, v) = (x as f64, y as f64, u as f64, v as f64);
    let squared = u * u + v * v;
    let share = if squared > 0.0 {
        ((x * u + y * v) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let (dx, dy) = (x - share * u, y - share * v);
    dx * dx + dy * dy
}

/// A point within the legal range.
pub(super) fn legal(x_mm: i64, y_mm: i64) -> Option<PlanPoint> {
    let point = PlanPoint::new(x_mm.try_into().ok()?, y_mm.try_into().ok()?);
    point.is_legal().then_some(point)
}

/// The point; a fault where there is none.
fn known_or_fault(coder: &mut Coder, point: Option<PlanPoint>) -> PlanPoint {
    point.unwrap_or_else(|| {
        coder.fault(AddressFault::Impossible);
        PlanPoint::new(0, 0)
    })
}
