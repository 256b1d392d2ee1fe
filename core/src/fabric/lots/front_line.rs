//! The line lots front on: the edge of the right-of-way along one side of a face.
//!
//! A place on it is a position: the number of the centerline's segment and the share of that segment. Inward is to the
//! left of the centerline, where the face lies.

use super::spot::Spot;
use crate::number::within;
use crate::plan::PlanPoint;

/// One front of a face.
#[derive(Clone, Debug)]
pub(super) struct FrontLine {
    /// Corners of the right-of-way's edge, one for each of the centerline.
    corners: Vec<Spot>,
    /// Inward direction of each segment.
    inward: Vec<Spot>,
    /// What a lot of depth 1 gains in width at the vertices of each segment, in all: positive where lots fan out.
    fan: Vec<f64>,
    /// Where each corner lies along the centerline, in micrometers.
    along_um: Vec<u64>,
}

/// Lots may be twice as wide half-way back as at the front, where they fan out at a bend; they are not counted wider.
const MOST_FAN: f64 = 2.0;

impl FrontLine {
    /// The front along a centerline at this distance; `None` without length. Repeated points are passed over.
    pub fn along(centerline: &[PlanPoint], distance_mm: f64) -> Option<Self> {
        let mut points: Vec<PlanPoint> = Vec::with_capacity(centerline.len());
        let mut along_um = Vec::with_capacity(centerline.len());
        let mut length_um = 0;
        for point in centerline {
            match points.last() {
                Some(last) if last == point => {}
                Some(last) => {
                    length_um += last.distance_um(*point);
                    points.push(*point);
                    along_um.push(length_um);
                }
                None => {
                    points.push(*point);
                    along_um.push(0);
                }
            }
        }
        let spots: Vec<Spot> = points.into_iter().map(Spot::of).collect();
        let inward: Vec<Spot> = spots
            .windows(2)
            .filter_map(|pair| Some(pair[1].minus(pair[0]).direction()?.left()))
            .collect();
        if inward.is_empty() || inward.len() + 1 != spots.len() {
            return None;
        }
        let last = inward.len() - 1;
        let mut corners = Vec::with_capacity(spots.len());
        let mut fan = vec![0.0; inward.len()];
        for (at, spot) in spots.iter().enumerate() {
            let (before, after) = (inward[at.saturating_sub(1)], inward[at.min(last)]);
            // Sides turn by at most 45° at a corner, so the miter is short.
            let reach = 1.0 + before.dot(after);
            let miter = before.plus(after).times(1.0 / reach);
            corners.push(spot.plus(miter.times(distance_mm)));
            // Half-angle of the turn, as a tangent: inward directions part where the line turns right.
            let parting = -before.cross(after) / reach;
            if at > 0 && at <= last {
                fan[at - 1] += parting;
                fan[at] += parting;
            }
        }
        Some(Self {
            corners,
            inward,
            fan,
            along_um,
        })
    }

    pub fn segments(&self) -> usize {
        self.inward.len()
    }

    fn place(&self, position: f64) -> (usize, f64) {
        let segment = (position.max(0.0) as usize).min(self.inward.len() - 1);
        (segment, (position - segment as f64).clamp(0.0, 1.0))
    }

    /// The place at a position, moved inward.
    pub fn at(&self, position: f64, inward_mm: f64) -> Spot {
        let (segment, share) = self.place(position);
        let on_line = self.corners[segment].toward(self.corners[segment + 1], share);
        on_line.plus(self.inward[segment].times(inward_mm))
    }

    /// Inward direction at a position.
    pub fn inward_at(&self, position: f64) -> Spot {
        self.inward[self.place(position).0]
    }

    /// A segment of the line moved inward.
    pub fn segment(&self, segment: usize, inward_mm: f64) -> (Spot, Spot) {
        let moved = self.inward[segment].times(inward_mm);
        (self.corners[segment].plus(moved), self.corners[segment + 1].plus(moved))
    }

    /// Corners strictly between two positions, each moved inward along the middle of the two directions it parts.
    pub fn corners_between(&self, from: f64, to: f64, inward_mm: f64) -> Vec<Spot> {
        let first = from.floor() as usize + 1;
        let inner = (first..self.inward.len()).take_while(|corner| (*corner as f64) < to);
        inner
            .map(|corner| {
                let (before, after) = (self.inward[corner - 1], self.inward[corner]);
                let miter = before.plus(after).times(1.0 / (1.0 + before.dot(after)));
                self.corners[corner].plus(miter.times(inward_mm))
            })
            .collect()
    }

    /// Where a position lies along the centerline, in micrometers.
    pub fn along_um(&self, position: f64) -> u64 {
        let (segment, share) = self.place(position);
        let (from, to) = (self.along_um[segment], self.along_um[segment + 1]);
        from + ((to - from) as f64 * share).round() as u64
    }

    /// A strip along the front between two places of the centerline, reaching as far to both sides.
    pub fn strip_between(&self, [from_um, to_um]: [u64; 2], reach_mm: f64) -> Vec<Vec<PlanPoint>> {
        let segments = 0..self.inward.len();
        let within = segments.filter(|segment| self.along_um[*segment] < to_um && from_um < self.along_um[segment + 1]);
        within
            .map(|segment| {
                let (start, end) = (self.along_um[segment], self.along_um[segment + 1]);
                let share = |um: u64| (um.clamp(start, end) - start) as f64 / (end - start) as f64;
                let (a, b) = (self.corners[segment], self.corners[segment + 1]);
                let (a, b) = (a.toward(b, share(from_um)), a.toward(b, share(to_um)));
                let out = self.inward[segment].times(reach_mm);
                [a.minus(out), b.minus(out), b.plus(out), a.plus(out)]
                    .map(Spot::rounded)
                    .to_vec()
            })
            .collect()
    }

    /// Widths along the front for lots of one depth, measured half-way back.
    pub fn widths(&self, depth_mm: f64) -> Widths {
        let mut starts = Vec::with_capacity(self.corners.len());
        let mut total = 0.0;
        starts.push(total);
        for segment in 0..self.inward.len() {
            let (a, b) = (self.corners[segment], self.corners[segment + 1]);
            // Behind a sharp bend the line may run backward: nothing fronts there.
            let front = b.minus(a).dot(self.inward[segment].left().times(-1.0)).max(0.0);
            // A vertex's gain at half depth is shared by its two segments.
            let gain = self.fan[segment] * depth_mm / 2.0;
            total += within(front + gain, 0.0, MOST_FAN * front);
            starts.push(total);
        }
        Widths { starts }
    }

    /// Distance from a place to the line.
    pub fn distance_to(&self, place: Spot) -> f64 {
        self.corners
            .windows(2)
            .map(|pair| super::spot::distance_to_segment(place, pair[0], pair[1]))
            .fold(f64::INFINITY, f64::min)
    }
}

/// Measured widths along a front.
#[derive(Clone, Debug)]
pub(super) struct Widths {
    starts: Vec<f64>,
}

impl Widths {
    /// The width from the front's start to a position, in millimeters.
    pub fn to(&self, position: f64) -> f64 {
        let segment = (position.max(0.0) as usize).min(self.starts.len() - 2);
        let (from, to) = (self.starts[segment], self.starts[segment + 1]);
        from + (to - from) * (position - segment as f64).clamp(0.0, 1.0)
    }

    /// The position at a width from the front's start.
    pub fn position_at(&self, width_mm: f64) -> f64 {
        let segments = self.starts.len() - 1;
        let after = self.starts.partition_point(|start| *start <= width_mm);
        let segment = after.saturating_sub(1).min(segments - 1);
        let (from, to) = (self.starts[segment], self.starts[segment + 1]);
        let share = if to > from {
            (width_mm - from) / (to - from)
        } else {
            0.0
        };
        segment as f64 + share.clamp(0.0, 1.0)
    }
}
