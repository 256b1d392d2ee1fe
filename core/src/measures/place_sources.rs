//! Where walking to a place begins on the network.
//!
//! A place is a point, a stretch or an area, and reach is from all of it. Walkable links that run within
//! [`PLACE_BAND_MM`] of a stretch or an area, or inside the area, are its doorstep: every part of them there is a source
//! at no cost. A place farther from any walkable link than that is joined to the nearest one, and the straight walk
//! between is the cost it starts at.
//!
//! What it does not count: doors, fences and private ways.

use crate::network::{LinkId, Location, Network, Source, Stretch};
use crate::plan::{Footprint, PlanPoint};

/// How near a walkable link must run to be a place's doorstep: 15 m, half of a wide right-of-way, since places are
/// drawn anywhere between the centerline and their own front. Larger would reach over to the next street; smaller would
/// miss the street a square opens to.
pub const PLACE_BAND_MM: i32 = 15_000;

/// The sources of a place whose footprint is `footprint`; none where no link is walkable.
///
/// Cost: every walkable link's segments against every segment of the footprint.
#[must_use]
pub fn place_sources(network: &Network, footprint: &Footprint) -> Vec<Source> {
    let doorstep = match footprint {
        Footprint::Point(_) => Vec::new(),
        Footprint::Line(line) => stretches_near(network, line, false),
        Footprint::Area(outline) => stretches_near(network, &closed(outline), true),
    };
    if !doorstep.is_empty() {
        return doorstep.into_iter().map(Source::stretch).collect();
    }
    let points = match footprint {
        Footprint::Point(point) => std::slice::from_ref(point),
        Footprint::Line(points) | Footprint::Area(points) => points.as_slice(),
    };
    let nearest = points
        .iter()
        .filter_map(|point| nearest_walkable(network, *point))
        .min();
    let source = nearest.map(|(walk_um, place)| Source::location(place).starting_at(walk_um));
    source.into_iter().collect()
}

/// The nearest place on any walkable link, and the straight distance to it in micrometers; ties go to the lower link.
///
/// Cost: every segment of every walkable link.
#[must_use]
pub fn nearest_walkable(network: &Network, point: PlanPoint) -> Option<(u64, Location)> {
    let mut best: Option<(f64, Location)> = None;
    for link in walkable_links(network) {
        let mut start_um = 0;
        for pair in network.link_points(link).windows(2) {
            let segment = Segment::between(pair[0], pair[1]);
            let length_um = pair[0].distance_um(pair[1]);
            let share = segment.nearest_share(f64::from(point.x_mm), f64::from(point.y_mm));
            let distance_mm = segment.distance_at(share, f64::from(point.x_mm), f64::from(point.y_mm));
            if best.is_none_or(|(held, _)| distance_mm < held) {
                let along_um = start_um + (share * length_um as f64).round() as u64;
                best = Some((distance_mm, Location { link, along_um }));
            }
            start_um += length_um;
        }
    }
    best.map(|(distance_mm, place)| ((distance_mm * 1000.0).round() as u64, place))
}

fn walkable_links(network: &Network) -> impl Iterator<Item = LinkId> + '_ {
    network
        .link_ids()
        .zip(network.links())
        .filter(|(_, link)| link.walkable)
        .map(|(id, _)| id)
}

fn closed(outline: &[PlanPoint]) -> Vec<PlanPoint> {
    outline.iter().chain(outline.first()).copied().collect()
}

/// The parts of walkable links within the band of `line`, or inside it where it is the boundary of an area.
fn stretches_near(network: &Network, line: &[PlanPoint], is_area: bool) -> Vec<Stretch> {
    let band_mm = f64::from(PLACE_BAND_MM);
    let sides: Vec<Segment> = line.windows(2).map(|pair| Segment::between(pair[0], pair[1])).collect();
    let mut stretches = Vec::new();
    for link in walkable_links(network) {
        let mut start_um = 0;
        let mut shares: Vec<(f64, f64)> = Vec::new();
        for pair in network.link_points(link).windows(2) {
            let segment = Segment::between(pair[0], pair[1]);
            let length_um = pair[0].distance_um(pair[1]);
            shares.clear();
            for side in &sides {
                if segment.may_come_within(side, band_mm) {
                    segment.shares_within(side, band_mm, &mut shares);
                }
            }
            if is_area {
                segment.shares_inside(&sides, &mut shares);
            }
            for (from, to) in joined(&mut shares) {
                let at = |share: f64| start_um + (share * length_um as f64).round() as u64;
                let (from_um, to_um) = (at(from), at(to));
                match stretches.last_mut() {
                    Some(Stretch {
                        link: held,
                        to_um: end_um,
                        ..
                    }) if *held == link && *end_um >= from_um => {
                        *end_um = (*end_um).max(to_um);
                    }
                    _ => stretches.push(Stretch { link, from_um, to_um }),
                }
            }
            start_um += length_um;
        }
    }
    stretches
}

/// Overlapping intervals joined, in order.
fn joined(shares: &mut [(f64, f64)]) -> Vec<(f64, f64)> {
    shares.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut joined: Vec<(f64, f64)> = Vec::new();
    for &(from, to) in shares.iter() {
        match joined.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => joined.push((from, to)),
        }
    }
    joined
}

/// A segment in millimeters, as start and displacement.
#[derive(Clone, Copy)]
struct Segment {
    x: f64,
    y: f64,
    dx: f64,
    dy: f64,
}

impl Segment {
    fn between(a: PlanPoint, b: PlanPoint) -> Self {
        let (x, y) = (f64::from(a.x_mm), f64::from(a.y_mm));
        Self {
            x,
            y,
            dx: f64::from(b.x_mm) - x,
            dy: f64::from(b.y_mm) - y,
        }
    }

    fn squared_length(&self) -> f64 {
        self.dx * self.dx + self.dy * self.dy
    }

    /// Share of this segment nearest to a point.
    fn nearest_share(&self, x: f64, y: f64) -> f64 {
        let squared = self.squared_length();
        if squared <= 0.0 {
            return 0.0;
        }
        (((x - self.x) * self.dx + (y - self.y) * self.dy) / squared).clamp(0.0, 1.0)
    }

    fn distance_at(&self, share: f64, x: f64, y: f64) -> f64 {
        let (ox, oy) = (self.x + share * self.dx - x, self.y + share * self.dy - y);
        (ox * ox + oy * oy).sqrt()
    }

    /// Whether the boxes around both come within `band_mm`.
    fn may_come_within(&self, other: &Self, band_mm: f64) -> bool {
        let apart = |a: f64, da: f64, b: f64, db: f64| {
            a.min(a + da) > b.max(b + db) + band_mm || b.min(b + db) > a.max(a + da) + band_mm
        };
        !apart(self.x, self.dx, other.x, other.dx) && !apart(self.y, self.dy, other.y, other.dy)
    }

    /// Adds the shares of this segment within `band_mm` of `side`: inside the strip beside it or the disks at its ends.
    fn shares_within(&self, side: &Self, band_mm: f64, shares: &mut Vec<(f64, f64)>) {
        self.shares_in_disk(side.x, side.y, band_mm, shares);
        self.shares_in_disk(side.x + side.dx, side.y + side.dy, band_mm, shares);
        let length = side.squared_length().sqrt();
        if length <= 0.0 {
            return;
        }
        let (ux, uy) = (side.dx / length, side.dy / length);
        let (rx, ry) = (self.x - side.x, self.y - side.y);
        let along = within_linear(rx * ux + ry * uy, self.dx * ux + self.dy * uy, 0.0, length);
        let across = within_linear(rx * uy - ry * ux, self.dx * uy - self.dy * ux, -band_mm, band_mm);
        if let (Some(a), Some(b)) = (along, across) {
            let (from, to) = (a.0.max(b.0), a.1.min(b.1));
            if from < to {
                shares.push((from, to));
            }
        }
    }

    fn shares_in_disk(&self, x: f64, y: f64, radius_mm: f64, shares: &mut Vec<(f64, f64)>) {
        let (rx, ry) = (self.x - x, self.y - y);
        let a = self.squared_length();
        let b = rx * self.dx + ry * self.dy;
        let c = rx * rx + ry * ry - radius_mm * radius_mm;
        let discriminant = b * b - a * c;
        if a <= 0.0 || discriminant <= 0.0 {
            return;
        }
        let root = discriminant.sqrt();
        let (from, to) = (((-b - root) / a).max(0.0), ((-b + root) / a).min(1.0));
        if from < to {
            shares.push((from, to));
        }
    }

    /// Adds the shares of this segment inside the ring of `sides`, by the even-odd rule.
    fn shares_inside(&self, sides: &[Self], shares: &mut Vec<(f64, f64)>) {
        let mut cuts = vec![0.0, 1.0];
        for side in sides {
            let cross = self.dx * side.dy - self.dy * side.dx;
            if cross.abs() > 0.0 {
                let (rx, ry) = (side.x - self.x, side.y - self.y);
                let share = (rx * side.dy - ry * side.dx) / cross;
                let along_side = (rx * self.dy - ry * self.dx) / cross;
                if (0.0..=1.0).contains(&along_side) && 0.0 < share && share < 1.0 {
                    cuts.push(share);
                }
            }
        }
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.windows(2) {
            let middle = (pair[0] + pair[1]) / 2.0;
            let (x, y) = (self.x + middle * self.dx, self.y + middle * self.dy);
            let crossings = sides.iter().filter(|side| side.crosses_ray_east_of(x, y)).count();
            if crossings % 2 == 1 {
                shares.push((pair[0], pair[1]));
            }
        }
    }

    fn crosses_ray_east_of(&self, x: f64, y: f64) -> bool {
        let (low, high) = (self.y.min(self.y + self.dy), self.y.max(self.y + self.dy));
        low <= y && y < high && self.x + (y - self.y) / self.dy * self.dx > x
    }
}

/// The shares `t` in 0 to 1 where `start + t × change` lies between `least` and `most`.
fn within_linear(start: f64, change: f64, least: f64, most: f64) -> Option<(f64, f64)> {
    if change.abs() <= 0.0 {
        return (least <= start && start <= most).then_some((0.0, 1.0));
    }
    let (a, b) = ((least - start) / change, (most - start) / change);
    let (from, to) = (a.min(b).max(0.0), a.max(b).min(1.0));
    (from < to).then_some((from, to))
}
