//! Buildable land of a face: what is left of it after half rights-of-way and land held back.
//!
//! Definition: the face, less a strip of half the right-of-way along every street on its boundary (mitered where the
//! strip turns, cut square across a half-width beyond the head of a dead end) and along a wider street that goes on
//! beyond one of its corners, less constraint areas that may not be built upon. Everything is integer millimeters and integer boolean operations: the same land on every machine.
//! A face is its rights-of-way, its land held back and its buildable land, and nothing else: the three sum to it exactly.
//!
//! Not counted: slopes, setbacks, easements nobody drew, and rights-of-way of streets that do not touch the face.

use i_overlay::core::overlay::ShapeType;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use super::arrangement::Arrangement;
use super::constraints::{ConstrainedLand, Constraint, LandSwitch};
use super::ids::{FaceId, HalfEdgeId};
use super::outlines::Outliner;
use super::overlaps::outlines_may_overlap;
use super::regions::{add_taken, int_point, overlaid};
use crate::plan::PlanPoint;

/// Longest miter of a right-of-way's corner, as a multiple of its half-width: beyond it the corner is cut off straight.
/// Larger lets a sharp bend send a spike across a block; smaller cuts the corners of ordinary bends.
pub const MITER_LIMIT: f64 = 4.0;

/// Buildable land of one face.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Land {
    /// Pieces of land, each an outer ring counterclockwise and its holes clockwise.
    pub pieces: Vec<Vec<Vec<PlanPoint>>>,
    /// Twice its area in square millimeters.
    pub twice_area_mm2: i128,
    /// Twice the area of the whole face in square millimeters.
    pub twice_face_mm2: i128,
    /// Twice the area under rights-of-way kept for streets that are not there, in square millimeters: land that would be
    /// buildable without them.
    pub twice_kept_mm2: i128,
    /// The face's land under constraints, outside of rights-of-way.
    pub constrained: ConstrainedLand,
}

impl Land {
    /// Twice the face's land under rights-of-way, in square millimeters: what is neither buildable nor held back, with
    /// what is kept for streets that are not there.
    #[must_use]
    pub fn twice_right_of_way_mm2(&self) -> i128 {
        self.twice_face_mm2 - self.twice_area_mm2 - self.constrained.twice_held_back_mm2()
    }
}

/// All that the land of a face depends on: equal keys have equal land.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LandKey {
    /// The face's outline, shell first.
    outline: Vec<Vec<PlanPoint>>,
    /// Strips of right-of-way to take away.
    strips: Vec<Vec<PlanPoint>>,
    /// Constraints that may take some of it.
    near: Vec<Constraint>,
}

impl LandKey {
    /// The face's outline, shell first.
    #[must_use]
    pub fn outline(&self) -> &[Vec<PlanPoint>] {
        &self.outline
    }

    /// The constraints that may take some of it, in the order they were given in.
    #[must_use]
    pub fn near(&self) -> &[Constraint] {
        &self.near
    }

    /// The strips of right-of-way along its streets.
    #[must_use]
    pub fn strips(&self) -> &[Vec<PlanPoint>] {
        &self.strips
    }
}

/// What the land of `face` depends on. `half_width_mm` gives half the right-of-way along a half-edge, 0 along the site
/// boundary; `constraints` are areas that may cover some of it.
#[must_use]
pub fn land_key(
    arrangement: &Arrangement,
    outliner: &mut Outliner<'_>,
    face: FaceId,
    half_width_mm: impl Fn(HalfEdgeId) -> f64,
    constraints: &[(Bounds, Constraint)],
) -> LandKey {
    let outline = outliner.outline(face);
    let ring = |half_edges: &[HalfEdgeId]| -> Vec<PlanPoint> {
        half_edges
            .iter()
            .map(|half_edge| arrangement.point(arrangement.origin(*half_edge)))
            .collect()
    };
    let outline: Vec<Vec<PlanPoint>> = std::iter::once(&outline.shell)
        .chain(&outline.holes)
        .map(|half_edges| ring(half_edges))
        .collect();
    let mut strips = Vec::new();
    for start in arrangement.loops(face) {
        let around: Vec<HalfEdgeId> = arrangement.around(start).collect();
        for (index, here) in around.iter().enumerate() {
            let after = around[(index + 1) % around.len()];
            let (width, next_width) = (half_width_mm(*here), half_width_mm(after));
            let points = [
                arrangement.point(arrangement.origin(*here)),
                arrangement.point(arrangement.target(*here)),
                arrangement.point(arrangement.target(after)),
            ];
            add_strips(points, width, next_width, after == here.twin(), &mut strips);
            add_wider_beyond(
                arrangement,
                [*here, after],
                [width, next_width],
                &half_width_mm,
                &mut strips,
            );
        }
    }
    let bounds = Bounds::of(outline.iter().flatten());
    let shell = outline.first().map_or(&[][..], Vec::as_slice);
    let takes_some = |other: &Bounds, constraint: &Constraint| {
        bounds.meets(other) && outlines_may_overlap(shell, &constraint.outline)
    };
    let near = constraints.iter().filter(|(other, one)| takes_some(other, one));
    let near = near.map(|(_, constraint)| constraint.clone()).collect();
    LandKey { outline, strips, near }
}

/// The strip to the left of the segment `a` to `b`, and what joins it to the strip of the next segment `b` to `c`.
fn add_strips([a, b, c]: [PlanPoint; 3], width: f64, next_width: f64, is_head: bool, strips: &mut Vec<Vec<PlanPoint>>) {
    let Some((ux, uy)) = direction(a, b) else { return };
    if width > 0.0 {
        strips.push(vec![
            a,
            b,
            moved(b, -uy * width, ux * width),
            moved(a, -uy * width, ux * width),
        ]);
    }
    if is_head {
        // The head of a dead end: the right-of-way goes on by its half-width, square.
        if width > 0.0 {
            strips.push(vec![
                moved(b, uy * width, -ux * width),
                moved(b, (ux + uy) * width, (uy - ux) * width),
                moved(b, (ux - uy) * width, (uy + ux) * width),
                moved(b, -uy * width, ux * width),
            ]);
        }
        return;
    }
    let Some((vx, vy)) = direction(b, c) else { return };
    let (cross, dot) = (ux * vy - uy * vx, ux * vx + uy * vy);
    if cross >= 0.0 || width <= 0.0 || next_width <= 0.0 {
        return;
    }
    // The boundary turns right, so the strips part: the corner between them is filled out to the miter. Where one strip is
    // so much wider that the miter would lie within it, the other's edge goes on until it is well inside the wider one.
    let (left, right) = (
        moved(b, -uy * width, ux * width),
        moved(b, -vy * next_width, vx * next_width),
    );
    // Half of the way to the miter, and of the wider strip: inside it, whatever is rounded.
    let inside = |along: f64, end: PlanPoint| along.abs().min(b.distance_um(end) as f64 / 1e3) / 2.0;
    if next_width < width * dot {
        let back = inside((width * dot - next_width) / cross, a);
        let aside = (next_width - back * cross) / dot;
        strips.push(vec![
            b,
            right,
            moved(b, -ux * back - uy * aside, ux * aside - uy * back),
        ]);
        return;
    }
    if width < next_width * dot {
        let ahead = inside((next_width * dot - width) / cross, c);
        let aside = (width - ahead * cross) / dot;
        strips.push(vec![
            b,
            moved(b, vx * ahead - vy * aside, vx * aside + vy * ahead),
            left,
        ]);
        return;
    }
    let tip = {
        // The point whose distances to both lines are the two widths.
        let along = (width * dot - next_width) / cross;
        let (x, y) = (-uy * width + ux * along, ux * width + uy * along);
        let within = crate::number::length(x, y) <= MITER_LIMIT * width.max(next_width);
        within.then(|| moved(b, x, y))
    };
    strips.push(match tip {
        Some(tip) => vec![b, right, tip, left],
        None => vec![b, right, left],
    });
}

/// How far a wider street is followed beyond a corner at most, in half-widths: one that parts from the face's edge at
/// less than 3 degrees is not followed to the end. Larger follows streets that run beside the face for long; smaller
/// leaves a sliver of a right-of-way as land where a path leaves a street at a narrow angle.
const FOLLOWED_HALF_WIDTHS: f64 = 20.0;

/// Strips of streets that meet the face at a corner alone, where they reach past the edges there: a street that goes on
/// straight while a path or the site boundary turns off it keeps its width on the face's side too.
pub(super) fn add_wider_beyond(
    arrangement: &Arrangement,
    [here, after]: [HalfEdgeId; 2],
    [width, next_width]: [f64; 2],
    half_width_mm: impl Fn(HalfEdgeId) -> f64,
    strips: &mut Vec<Vec<PlanPoint>>,
) {
    let back = here.twin();
    let mut beyond = arrangement.next(after.twin());
    // At the head of a dead end, and where an edge only goes on, there is nothing between.
    while after != back && beyond != back {
        if half_width_mm(beyond) > width.min(next_width) {
            follow_wider(
                arrangement,
                beyond,
                [(after, next_width), (back, width)],
                &half_width_mm,
                strips,
            );
        }
        beyond = arrangement.next(beyond.twin());
    }
}

/// Strips of a wider street from a corner of a face on, while they reach past the strips of the face's edges there.
fn follow_wider(
    arrangement: &Arrangement,
    street: HalfEdgeId,
    edges: [(HalfEdgeId, f64); 2],
    half_width_mm: impl Fn(HalfEdgeId) -> f64,
    strips: &mut Vec<Vec<PlanPoint>>,
) {
    let ends = |half_edge: HalfEdgeId| {
        [arrangement.origin(half_edge), arrangement.target(half_edge)].map(|at| arrangement.point(at))
    };
    let [corner, _] = ends(street);
    let wide = half_width_mm(street);
    // Along an edge the street's strip is `wide × cosine` deep, less how far the street has moved away from the edge.
    let reaches_past = |from: PlanPoint, (x, y): (f64, f64)| {
        let (px, py) = (
            f64::from(from.x_mm) - f64::from(corner.x_mm),
            f64::from(from.y_mm) - f64::from(corner.y_mm),
        );
        edges.iter().any(|(edge, narrow)| {
            let [edge_from, edge_to] = ends(*edge);
            direction(edge_from, edge_to)
                .is_some_and(|(u, v)| wide * (x * u + y * v) - (px * v - py * u).abs() > *narrow)
        })
    };
    let mut here = street;
    let mut followed_mm = 0.0;
    loop {
        let [a, b] = ends(here);
        let Some((x, y)) = direction(a, b).filter(|along| reaches_past(a, *along)) else {
            return;
        };
        strips.push(vec![
            moved(a, y * wide, -x * wide),
            moved(b, y * wide, -x * wide),
            moved(b, -y * wide, x * wide),
            moved(a, -y * wide, x * wide),
        ]);
        followed_mm += arrangement.length_um(here.edge()) as f64 / 1e3;
        let next = goes_on_as(arrangement, here, |next| half_width_mm(next) >= wide);
        match next.filter(|_| followed_mm < wide * FOLLOWED_HALF_WIDTHS) {
            Some(next) => here = next,
            None => return,
        }
    }
}

/// The edge a street goes on as: of those ahead that may be it the straightest, within 45 degrees.
fn goes_on_as(
    arrangement: &Arrangement,
    half_edge: HalfEdgeId,
    may_be: impl Fn(HalfEdgeId) -> bool,
) -> Option<HalfEdgeId> {
    let direction_of = |half_edge: HalfEdgeId| {
        let [from, to] = [arrangement.origin(half_edge), arrangement.target(half_edge)];
        direction(arrangement.point(from), arrangement.point(to))
    };
    let (ux, uy) = direction_of(half_edge)?;
    let mut straightest: Option<(f64, HalfEdgeId)> = None;
    let mut next = arrangement.next(half_edge);
    while next != half_edge.twin() {
        let cosine = direction_of(next).map_or(-1.0, |(vx, vy)| ux * vx + uy * vy);
        let is_better = straightest.is_none_or(|(held, _)| cosine > held);
        if is_better && cosine > std::f64::consts::FRAC_1_SQRT_2 && may_be(next) {
            straightest = Some((cosine, next));
        }
        next = arrangement.next(next.twin());
    }
    straightest.map(|(_, next)| next)
}

fn direction(from: PlanPoint, to: PlanPoint) -> Option<(f64, f64)> {
    let (dx, dy) = (
        f64::from(to.x_mm) - f64::from(from.x_mm),
        f64::from(to.y_mm) - f64::from(from.y_mm),
    );
    let length = crate::number::length(dx, dy);
    (length > 0.0).then(|| (dx / length, dy / length))
}

fn moved(point: PlanPoint, x_mm: f64, y_mm: f64) -> PlanPoint {
    PlanPoint::new(point.x_mm + x_mm.round() as i32, point.y_mm + y_mm.round() as i32)
}

/// The least box with sides along the axes around some points; around none it meets nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bounds(Option<(PlanPoint, PlanPoint)>);

impl Bounds {
    /// The box around points.
    #[must_use]
    pub fn of<'a>(points: impl IntoIterator<Item = &'a PlanPoint>) -> Self {
        Self(points.into_iter().fold(None, |bounds, point| {
            let (low, high) = bounds.unwrap_or((*point, *point));
            Some((
                PlanPoint::new(low.x_mm.min(point.x_mm), low.y_mm.min(point.y_mm)),
                PlanPoint::new(high.x_mm.max(point.x_mm), high.y_mm.max(point.y_mm)),
            ))
        }))
    }

    /// Whether two boxes share a point.
    #[must_use]
    pub const fn meets(&self, other: &Self) -> bool {
        let (Some((a_low, a_high)), Some((b_low, b_high))) = (self.0, other.0) else {
            return false;
        };
        a_low.x_mm <= b_high.x_mm && b_low.x_mm <= a_high.x_mm && a_low.y_mm <= b_high.y_mm && b_low.y_mm <= a_high.y_mm
    }
}

/// The land a key stands for. Cost: one boolean operation on the outline, its strips and what is held back, and as many
/// again as [`ConstrainedLand::of`] takes.
#[must_use]
pub fn land_of(key: &LandKey) -> Land {
    let held_back: Vec<bool> = key
        .near
        .iter()
        .map(|one| one.says_no_to(LandSwitch::Buildable))
        .collect();
    let shapes = left(key, &held_back);
    let twice_area_mm2 = twice_area_of(&shapes);
    let pieces = shapes
        .into_iter()
        .map(|shape| {
            shape
                .into_iter()
                .map(|ring| ring.iter().map(|point| PlanPoint::new(point.x, point.y)).collect())
                .collect()
        })
        .collect();
    Land {
        pieces,
        twice_area_mm2,
        twice_kept_mm2: 0,
        twice_face_mm2: key.outline.iter().map(|ring| twice_area(&points(ring))).sum(),
        constrained: ConstrainedLand::of(key, twice_area_mm2),
    }
}

/// Twice the area that rights-of-way and the constraints marked as `taken` leave of a face, in square millimeters.
#[must_use]
pub fn area_left_mm2(key: &LandKey, taken: &[bool]) -> i128 {
    twice_area_of(&left(key, taken))
}

type Shapes = Vec<Vec<Vec<IntPoint<i32>>>>;

fn left(key: &LandKey, taken: &[bool]) -> Shapes {
    overlaid(OverlayRule::Difference, |overlay| {
        for ring in &key.outline {
            overlay.add_path_iter(ring.iter().map(int_point), ShapeType::Subject);
        }
        let taken = key.near.iter().zip(taken).filter(|(_, taken)| **taken);
        for ring in key.strips.iter().chain(taken.map(|(one, _)| &one.outline)) {
            add_taken(overlay, ring);
        }
    })
}

fn points(ring: &[PlanPoint]) -> Vec<IntPoint<i32>> {
    ring.iter().map(|point| IntPoint::new(point.x_mm, point.y_mm)).collect()
}

fn twice_area_of(shapes: &Shapes) -> i128 {
    shapes.iter().flatten().map(|ring| twice_area(ring)).sum()
}

fn twice_area(ring: &[IntPoint<i32>]) -> i128 {
    let Some(first) = ring.first() else { return 0 };
    let from_first = |point: &IntPoint<i32>| {
        (
            i128::from(point.x) - i128::from(first.x),
            i128::from(point.y) - i128::from(first.y),
        )
    };
    let crosses = ring.windows(2).map(|pair| {
        let ((ax, ay), (bx, by)) = (from_first(&pair[0]), from_first(&pair[1]));
        ax * by - ay * bx
    });
    crosses.sum()
}
