//! The slow, obvious arrangement: every pair of segments, every segment with every hot pixel, faces by walking polygons.
//!
//! It shares nothing with the library but the point type: crossings are exact fractions, a pixel is met when a clipped
//! piece of the segment lies in it, and vertices along a segment are ordered by their exact place along it.

use hobnail_core::order::{OrderedMap, OrderedSet};

use hobnail_core::fabric::{SourceId, SourceSegment};
use hobnail_core::plan::PlanPoint;

/// What the oracle says of a drawing.
pub struct Slow {
    pub vertices: Vec<PlanPoint>,
    pub edges: OrderedMap<[PlanPoint; 2], OrderedSet<SourceId>>,
    /// Twice the net area of every bounded face, ascending.
    pub twice_areas_mm2: Vec<i128>,
    pub components: usize,
}

type Wide = (i128, i128);

fn wide(p: PlanPoint) -> Wide {
    (i128::from(p.x_mm), i128::from(p.y_mm))
}

fn cross(a: PlanPoint, b: PlanPoint, c: PlanPoint) -> i128 {
    let (a, b, c) = (wide(a), wide(b), wide(c));
    (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)
}

pub fn arrange(segments: &[SourceSegment]) -> Slow {
    let segments: Vec<SourceSegment> = segments.iter().copied().filter(|s| s.a != s.b).collect();
    let mut hot: OrderedSet<PlanPoint> = segments.iter().flat_map(|s| [s.a, s.b]).collect();
    for (index, s) in segments.iter().enumerate() {
        for t in &segments[..index] {
            hot.extend(crossing(s, t));
        }
    }
    let mut edges: OrderedMap<[PlanPoint; 2], OrderedSet<SourceId>> = OrderedMap::new();
    for s in &segments {
        let mut met: Vec<((i128, i128), PlanPoint)> = hot.iter().filter_map(|&p| Some((enters(s, p)?, p))).collect();
        met.sort_by(|(s, _), (t, _)| (s.0 * t.1).cmp(&(t.0 * s.1)));
        for pair in met.windows(2) {
            let (p, q) = (pair[0].1, pair[1].1);
            edges.entry([p.min(q), p.max(q)]).or_default().insert(s.source);
        }
    }
    let vertices: Vec<PlanPoint> = hot.into_iter().collect();
    let ends: Vec<[PlanPoint; 2]> = edges.keys().copied().collect();
    let (twice_areas_mm2, components) = faces(&ends);
    Slow {
        vertices,
        edges,
        twice_areas_mm2,
        components,
    }
}

/// The pixel of a proper crossing: both coordinates as exact fractions, rounded half up.
fn crossing(s: &SourceSegment, t: &SourceSegment) -> Option<PlanPoint> {
    let (from, to) = (cross(s.a, s.b, t.a), cross(s.a, s.b, t.b));
    if from.signum() * to.signum() >= 0 || cross(t.a, t.b, s.a).signum() * cross(t.a, t.b, s.b).signum() >= 0 {
        return None;
    }
    let whole = from - to;
    let (numerator, denominator) = if whole < 0 { (-from, -whole) } else { (from, whole) };
    let along = |start: i32, end: i32| {
        let scaled = i128::from(start) * denominator + (i128::from(end) - i128::from(start)) * numerator;
        (2 * scaled + denominator).div_euclid(2 * denominator) as i32
    };
    Some(PlanPoint::new(along(t.a.x_mm, t.b.x_mm), along(t.a.y_mm, t.b.y_mm)))
}

/// Where along the segment (as a fraction of it) the half-open pixel of `p` is met, if it is: the middle of the part
/// inside, which orders disjoint pixels.
fn enters(s: &SourceSegment, p: PlanPoint) -> Option<(i128, i128)> {
    let (a, b, p) = (wide(s.a), wide(s.b), wide(p));
    // Doubled, so that the borders of pixels are whole.
    let axes = [
        (2 * a.0, 2 * (b.0 - a.0), 2 * p.0 - 1),
        (2 * a.1, 2 * (b.1 - a.1), 2 * p.1 - 1),
    ];
    let less = |s: (i128, i128), t: (i128, i128)| s.0 * t.1 < t.0 * s.1;
    let (mut from, mut to) = ((0, 1), (1, 1));
    for (start, step, low) in axes {
        if step == 0 {
            if start < low || start >= low + 2 {
                return None;
            }
            continue;
        }
        let place = |border: i128| {
            if step > 0 {
                (border - start, step)
            } else {
                (start - border, -step)
            }
        };
        let (enter, leave) = if step > 0 {
            (place(low), place(low + 2))
        } else {
            (place(low + 2), place(low))
        };
        from = if less(from, enter) { enter } else { from };
        to = if less(leave, to) { leave } else { to };
    }
    if less(to, from) {
        return None;
    }
    let middle = (from.0 * to.1 + to.0 * from.1, 2 * from.1 * to.1);
    let inside = |t: (i128, i128)| {
        axes.iter().all(|&(start, step, low)| {
            let at = start * t.1 + step * t.0;
            at >= low * t.1 && at < (low + 2) * t.1
        })
    };
    (inside(middle) || inside(from) || inside(to)).then_some(reduced(middle))
}

fn reduced((numerator, denominator): (i128, i128)) -> (i128, i128) {
    let (mut p, mut q) = (numerator.abs(), denominator);
    while q != 0 {
        (p, q) = (q, p % q);
    }
    (numerator / p.max(1), denominator / p.max(1))
}

/// Net doubled areas of the bounded faces, and the number of components.
fn faces(ends: &[[PlanPoint; 2]]) -> (Vec<i128>, usize) {
    let mut around: OrderedMap<PlanPoint, Vec<PlanPoint>> = OrderedMap::new();
    for &[p, q] in ends {
        around.entry(p).or_default().push(q);
        around.entry(q).or_default().push(p);
    }
    for (&center, others) in &mut around {
        let upper = |p: PlanPoint| p.y_mm > center.y_mm || (p.y_mm == center.y_mm && p.x_mm > center.x_mm);
        others.sort_by(|&p, &q| upper(q).cmp(&upper(p)).then(0.cmp(&cross(center, p, q))));
    }
    let mut unseen: OrderedSet<(PlanPoint, PlanPoint)> = ends.iter().flat_map(|&[p, q]| [(p, q), (q, p)]).collect();
    let mut loops: Vec<Vec<PlanPoint>> = Vec::new();
    while let Some(&start) = unseen.first() {
        let (mut here, mut walk) = (start, Vec::new());
        while unseen.remove(&here) {
            walk.push(here.0);
            let others = &around[&here.1];
            let back = others.iter().position(|&p| p == here.0).unwrap();
            here = (here.1, others[(back + others.len() - 1) % others.len()]);
        }
        loops.push(walk);
    }
    let area = |walk: &[PlanPoint]| -> i128 {
        let pairs = walk.iter().zip(walk.iter().cycle().skip(1));
        pairs.map(|(&p, &q)| cross(PlanPoint::default(), p, q)).sum()
    };
    let outer: Vec<(i128, &Vec<PlanPoint>)> = loops
        .iter()
        .map(|walk| (area(walk), walk))
        .filter(|l| l.0 > 0)
        .collect();
    let mut net: Vec<i128> = outer.iter().map(|l| l.0).collect();
    let around_components: Vec<&Vec<PlanPoint>> = loops.iter().filter(|walk| area(walk) <= 0).collect();
    for walk in &around_components {
        // The smallest face around the component's corner, among faces of other components.
        let own: OrderedSet<PlanPoint> = connected(walk[0], &around);
        let holder = (0..outer.len())
            .filter(|&face| !own.contains(&outer[face].1[0]) && encloses(outer[face].1, walk[0]))
            .min_by_key(|&face| outer[face].0);
        if let Some(face) = holder {
            net[face] += area(walk);
        }
    }
    net.sort_unstable();
    (net, around_components.len())
}

fn connected(start: PlanPoint, around: &OrderedMap<PlanPoint, Vec<PlanPoint>>) -> OrderedSet<PlanPoint> {
    let (mut seen, mut stack) = (OrderedSet::from([start]), vec![start]);
    while let Some(p) = stack.pop() {
        stack.extend(around[&p].iter().filter(|&&q| seen.insert(q)));
    }
    seen
}

/// Whether a loop winds around a point that does not lie on it.
fn encloses(walk: &[PlanPoint], p: PlanPoint) -> bool {
    let mut winding = 0;
    for (&a, &b) in walk.iter().zip(walk.iter().cycle().skip(1)) {
        if a.y_mm <= p.y_mm && b.y_mm > p.y_mm && cross(a, b, p) > 0 {
            winding += 1;
        } else if a.y_mm > p.y_mm && b.y_mm <= p.y_mm && cross(a, b, p) < 0 {
            winding -= 1;
        }
    }
    winding != 0
}

/// Whether any two edges meet elsewhere than at a shared end.
pub fn meeting_off_ends(ends: &[[PlanPoint; 2]]) -> Option<[[PlanPoint; 2]; 2]> {
    for (index, &[a, b]) in ends.iter().enumerate() {
        for &[c, d] in &ends[..index] {
            if a.max(c).x_mm > b.min(d).x_mm {
                continue;
            }
            let shared = [c, d].iter().filter(|&&p| p == a || p == b).count();
            let wrong = match shared {
                0 => {
                    let (c_side, d_side) = (cross(a, b, c).signum(), cross(a, b, d).signum());
                    let (a_side, b_side) = (cross(c, d, a).signum(), cross(c, d, b).signum());
                    if c_side == 0 && d_side == 0 {
                        a.max(c) <= b.min(d)
                    } else {
                        c_side * d_side <= 0 && a_side * b_side <= 0
                    }
                }
                1 => {
                    let common = if a == c || a == d { a } else { b };
                    let (p, q) = (if common == a { b } else { a }, if common == c { d } else { c });
                    let towards = (wide(p).0 - wide(common).0) * (wide(q).0 - wide(common).0)
                        + (wide(p).1 - wide(common).1) * (wide(q).1 - wide(common).1);
                    cross(common, p, q) == 0 && towards > 0
                }
                _ => true,
            };
            if wrong {
                return Some([[a, b], [c, d]]);
            }
        }
    }
    None
}
