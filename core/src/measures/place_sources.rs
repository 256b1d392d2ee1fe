//! Where walking to a place begins on the network.
//!
//! A place is a point, a stretch or an area, and reach is from all of it. Walkable links that run within
//! [`PLACE_BAND_MM`] of a stretch or an area, or inside the area, are its doorstep: every part of them there is a source
//! at no cost. A place farther from any walkable link than that is joined to the nearest one that a straight walk leads
//! to, which is the cost it starts at. Such a walk crosses no barrier and no land that is not to be walked across
//! (`hindrances`); a place that these close in is joined to nothing.
//!
//! What it does not count: doors, private ways, and walks around what is in the way that are not straight.

mod hindrances;

use super::walk_network::WalkNetwork;
use crate::network::graph::MOST_COST;
use crate::network::{LinkId, Location, Network, Source, Stretch};
use crate::order;
use crate::plan::{AlternativeId, Document, Footprint, Mark, MarkId, PlanPoint};
use hindrances::Hindrance;

/// How near a walkable link must run to be a place's doorstep: 15 m, half of a wide right-of-way, since places are
/// drawn anywhere between the centerline and their own front. Larger would reach over to the next street; smaller would
/// miss the street a square opens to.
pub const PLACE_BAND_MM: i32 = 15_000;

/// How far beside a corner of what is in the way a walk passes it: 2 mm, more than points are rounded by.
const PASSING_MM: f64 = 2.0;

/// The streets places open to: every link people walk, with the box around it, and what lies between them and places.
#[derive(Clone, Debug)]
pub struct Doorsteps {
    links: Vec<(LinkId, Bounds)>,
    hindrances: Vec<Hindrance>,
}

/// Places and outside context that no straight walk leads to, for what is in the way closes them in, each with its first
/// point. None where nobody walks on any street, which leaves every place without a walk. Cost: as their sources, where
/// anything is in the way.
#[must_use]
pub fn closed_in(network: &WalkNetwork, document: &Document, alternative: AlternativeId) -> Vec<(MarkId, PlanPoint)> {
    if Hindrance::all(document, alternative).is_empty() {
        return Vec::new();
    }
    let doorsteps = Doorsteps::of(network, document, alternative);
    if doorsteps.links.is_empty() {
        return Vec::new();
    }
    let marks = document.alternatives.get(&alternative).map(|held| &held.marks);
    let mut found = Vec::new();
    for (id, mark) in marks.into_iter().flatten() {
        let footprint = match mark {
            Mark::Place(place) => &place.footprint,
            Mark::Outside(outside) => &outside.footprint,
            _ => continue,
        };
        if let Some(first) = footprint.points().first()
            && doorsteps.sources(network, footprint).is_empty()
        {
            found.push((*id, *first));
        }
    }
    found
}

/// Where a straight walk meets a street: its length in millimeters, the link, which of its pieces, how far along that.
type Meeting = (f64, LinkId, usize, f64);

impl Doorsteps {
    /// The walkable streets of a network, and what an alternative has between them. O(their corners).
    #[must_use]
    pub fn of(network: &WalkNetwork, document: &Document, alternative: AlternativeId) -> Self {
        let held = network.network();
        let links = held.link_ids().zip(held.links());
        let walkable = links.filter(|(id, link)| link.walkable && network.is_street(*id));
        Self {
            links: walkable
                .filter_map(|(id, _)| Some((id, Bounds::around(held.link_points(id))?)))
                .collect(),
            hindrances: Hindrance::all(document, alternative),
        }
    }

    /// The sources of a place whose footprint is `footprint`; none where no link is walkable, or a straight walk leads to
    /// none.
    ///
    /// Cost: every box, and the segments of the links near the footprint against its own; where something is in the way,
    /// the pieces of links that are nearer than the one that is met, times the corners of what is in the way.
    #[must_use]
    pub fn sources(&self, network: &WalkNetwork, footprint: &Footprint) -> Vec<Source> {
        let held = network.network();
        let doorstep = match footprint {
            Footprint::Point(_) => Vec::new(),
            Footprint::Line(line) => self.stretches_near(held, line, false),
            Footprint::Area(outline) => self.stretches_near(held, &closed(outline), true),
        };
        if !doorstep.is_empty() {
            return doorstep.into_iter().map(Source::stretch).collect();
        }
        let points = footprint.points().iter();
        let nearest = points.filter_map(|point| self.nearest(held, *point)).min();
        let source = nearest.map(|(walk_um, place)| {
            let cost = network.cost_of_level_um(walk_um).min(MOST_COST);
            Source::location(place).starting_at(cost)
        });
        source.into_iter().collect()
    }

    /// The nearest place on any walkable street that a straight walk leads to, and its length in micrometers; ties go to
    /// the lower link. `None` where none does.
    #[must_use]
    pub fn nearest(&self, network: &Network, point: PlanPoint) -> Option<(u64, Location)> {
        let mut meeting = self.nearest_of_all(network, point)?;
        let held = self.hindrances.iter().filter(|held| held.may_hinder(point));
        let in_the_way: Vec<&Hindrance> = held.collect();
        if is_hindered(&in_the_way, point, place_of(network, meeting)) {
            meeting = self.nearest_in_sight(network, point, &in_the_way)?;
        }
        let (distance_mm, link, piece, share) = meeting;
        let along_um = Along::of(network, link).um(piece, share);
        Some(((distance_mm * 1000.0).round() as u64, Location { link, along_um }))
    }

    /// As [`Self::nearest`], whatever is in the way.
    fn nearest_of_all(&self, network: &Network, point: PlanPoint) -> Option<Meeting> {
        let (x, y) = (f64::from(point.x_mm), f64::from(point.y_mm));
        let on_link = |link: LinkId| -> Option<Meeting> {
            let points = network.link_points(link);
            let pieces = points.windows(2).enumerate().map(|(place, pair)| {
                let segment = Segment::between(pair[0], pair[1]);
                let share = segment.nearest_share(x, y);
                (segment.distance_at(share, x, y), link, place, share)
            });
            pieces.reduce(|best, piece| if piece.0 < best.0 { piece } else { best })
        };
        // The street whose box is nearest is a good first guess, which leaves few others to look at.
        let (mut guess, mut nearest) = (None, f64::INFINITY);
        for &(link, bounds) in &self.links {
            let distance = bounds.squared_distance_mm2(x, y);
            if distance < nearest {
                (guess, nearest) = (Some(link), distance);
            }
        }
        let mut best = on_link(guess?)?;
        for &(link, bounds) in &self.links {
            if bounds.squared_distance_mm2(x, y) > best.0 * best.0 {
                continue;
            }
            let found = on_link(link).filter(|found| (found.0, found.1) < (best.0, best.1));
            best = found.unwrap_or(best);
        }
        Some(best)
    }

    /// The nearest meeting that nothing hinders. On each piece of a street it is the place nearest to the point, an end
    /// of the piece, where the walk passes a corner of what is in the way, or where the street itself leads over that.
    fn nearest_in_sight(&self, network: &Network, point: PlanPoint, in_the_way: &[&Hindrance]) -> Option<Meeting> {
        let (x, y) = (f64::from(point.x_mm), f64::from(point.y_mm));
        let mut best: Option<Meeting> = None;
        let mut shares: Vec<(f64, f64)> = Vec::new();
        for &(link, _) in &self.links {
            for (place, pair) in network.link_points(link).windows(2).enumerate() {
                let segment = Segment::between(pair[0], pair[1]);
                let nearest = segment.nearest_share(x, y);
                let is_nearer = |distance: f64| best.is_none_or(|held| distance < held.0);
                if !is_nearer(segment.distance_at(nearest, x, y)) {
                    continue;
                }
                shares.clear();
                let mut may_be_at = |share: f64| shares.push((segment.distance_at(share, x, y), share));
                [nearest, 0.0, 1.0].into_iter().for_each(&mut may_be_at);
                let aside = PASSING_MM / segment.squared_length().sqrt();
                let mut may_be_beside = |other: Segment| {
                    let share = segment.share_on(&other);
                    for share in share.into_iter().flat_map(|share| [share - aside, share + aside]) {
                        may_be_at(share.clamp(0.0, 1.0));
                    }
                };
                for line in in_the_way.iter().map(|held| held.line()) {
                    for corner in line {
                        may_be_beside(Segment::between(point, *corner));
                    }
                    for side in line.windows(2) {
                        may_be_beside(Segment::between(side[0], side[1]));
                    }
                }
                shares.retain(|(distance, _)| is_nearer(*distance));
                order::sort_by(&mut shares, |a, b| a.0.total_cmp(&b.0));
                let mut meetings = shares.iter().map(|&(distance, share)| (distance, link, place, share));
                best = meetings
                    .find(|meeting| !is_hindered(in_the_way, point, place_of(network, *meeting)))
                    .or(best);
            }
        }
        best
    }

    /// The parts of walkable streets within the band of `line`, or inside it where it is the boundary of an area.
    fn stretches_near(&self, network: &Network, line: &[PlanPoint], is_area: bool) -> Vec<Stretch> {
        let band_mm = f64::from(PLACE_BAND_MM);
        let Some(near) = Bounds::around(line).map(|bounds| bounds.grown(band_mm)) else {
            return Vec::new();
        };
        // Nothing lies inside an area that does not come into its box.
        let area = Bounds::around(line).filter(|_| is_area).map(|bounds| bounds.grown(1.0));
        let sides: Vec<Segment> = line.windows(2).map(|pair| Segment::between(pair[0], pair[1])).collect();
        let mut stretches = Vec::new();
        for &(link, _) in self.links.iter().filter(|(_, bounds)| bounds.overlap(&near)) {
            let mut shares: Vec<(f64, f64)> = Vec::new();
            let points = network.link_points(link);
            let mut along = Along::of(network, link);
            for (place, pair) in points.windows(2).enumerate() {
                let segment = Segment::between(pair[0], pair[1]);
                shares.clear();
                for side in &sides {
                    if segment.may_come_within(side, band_mm) {
                        segment.shares_within(side, band_mm, &mut shares);
                    }
                }
                let may_lie_in = |area: Bounds| Bounds::around(pair).is_some_and(|bounds| bounds.overlap(&area));
                if area.is_some_and(may_lie_in) {
                    segment.shares_inside(&sides, &mut shares);
                }
                for (from, to) in joined(&mut shares) {
                    let [from_um, to_um] = [from, to].map(|share| along.um(place, share));
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
            }
        }
        stretches
    }
}

/// Where a walk meets a street, to the nearest millimeter.
fn place_of(network: &Network, (_, link, piece, share): Meeting) -> PlanPoint {
    let Some(&[from, to]) = network.link_points(link).get(piece..piece + 2) else {
        return PlanPoint::default();
    };
    let between = |from: i32, to: i32| f64::from(from) + share * (f64::from(to) - f64::from(from));
    PlanPoint::new(
        between(from.x_mm, to.x_mm).round() as i32,
        between(from.y_mm, to.y_mm).round() as i32,
    )
}

fn is_hindered(in_the_way: &[&Hindrance], from: PlanPoint, to: PlanPoint) -> bool {
    in_the_way.iter().any(|held| held.is_crossed(from, to))
}

/// Distances along one link, asked for with growing places.
struct Along<'a> {
    points: &'a [PlanPoint],
    length_um: u64,
    /// The pieces before this one are measured.
    place: usize,
    start_um: u64,
}

impl<'a> Along<'a> {
    fn of(network: &'a Network, link: LinkId) -> Self {
        Self {
            points: network.link_points(link),
            length_um: network.link(link).map_or(0, |link| link.length_um),
            place: 0,
            start_um: 0,
        }
    }

    /// How far along a share of the piece at `place` lies, in micrometers; at most the link's length, which its corners
    /// may add up to a little more than.
    fn um(&mut self, place: usize, share: f64) -> u64 {
        let piece_um = |place: usize| match self.points.get(place..place + 2) {
            Some([from, to]) => from.distance_um(*to),
            _ => 0,
        };
        self.start_um += (self.place..place).map(piece_um).sum::<u64>();
        let part_um = (share * piece_um(place) as f64).round() as u64;
        self.place = self.place.max(place);
        (self.start_um + part_um).min(self.length_um)
    }
}

fn closed(outline: &[PlanPoint]) -> Vec<PlanPoint> {
    outline.iter().chain(outline.first()).copied().collect()
}

/// An axis-parallel box, in millimeters.
#[derive(Clone, Copy, Debug)]
struct Bounds {
    low: (f64, f64),
    high: (f64, f64),
}

impl Bounds {
    fn around(points: &[PlanPoint]) -> Option<Self> {
        let first = points.first()?;
        let first = (f64::from(first.x_mm), f64::from(first.y_mm));
        let mut bounds = Self {
            low: first,
            high: first,
        };
        for point in points {
            let (x, y) = (f64::from(point.x_mm), f64::from(point.y_mm));
            bounds.low = (bounds.low.0.min(x), bounds.low.1.min(y));
            bounds.high = (bounds.high.0.max(x), bounds.high.1.max(y));
        }
        Some(bounds)
    }

    fn grown(self, by_mm: f64) -> Self {
        Self {
            low: (self.low.0 - by_mm, self.low.1 - by_mm),
            high: (self.high.0 + by_mm, self.high.1 + by_mm),
        }
    }

    fn overlap(&self, other: &Self) -> bool {
        self.low.0 <= other.high.0
            && other.low.0 <= self.high.0
            && self.low.1 <= other.high.1
            && other.low.1 <= self.high.1
    }

    /// Squared distance from a point to the box; 0 inside.
    fn squared_distance_mm2(&self, x: f64, y: f64) -> f64 {
        let dx = (self.low.0 - x).max(x - self.high.0).max(0.0);
        let dy = (self.low.1 - y).max(y - self.high.1).max(0.0);
        dx * dx + dy * dy
    }
}

/// Overlapping intervals joined, in order.
fn joined(shares: &mut [(f64, f64)]) -> Vec<(f64, f64)> {
    order::sort_by(shares, |a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
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

    /// The share of this segment where its line meets that of another; none where they run alongside.
    fn share_on(&self, other: &Self) -> Option<f64> {
        let change = self.dx * other.dy - self.dy * other.dx;
        let share = ((other.x - self.x) * other.dy - (other.y - self.y) * other.dx) / change;
        share.is_finite().then_some(share)
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
        order::sort_by(&mut cuts, f64::total_cmp);
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

#[cfg(test)]
mod tests;
