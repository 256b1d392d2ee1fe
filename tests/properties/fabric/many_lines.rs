//! A drawing too large for the slow arrangement, held to what can be worked out pair by pair.

use hobnail_core::order::OrderedSet;

use hobnail_core::fabric::{Arrangement, Locator, SourceId, SourceSegment, anchor_of};
use hobnail_core::plan::PlanPoint;

use crate::random::Random;

/// Twenty thousand random lines: every end and every rounded crossing is a vertex and nothing else is, edges lie on the
/// lines they come from, and the counts agree.
#[test]
fn twenty_thousand_random_crossing_lines() {
    let mut random = Random(20_000);
    let segments: Vec<SourceSegment> = (0..20_000)
        .map(|index| {
            let (x, y) = (random.within(0, 4_000_000), random.within(0, 4_000_000));
            let mut end = || PlanPoint::new(x + random.within(-80_000, 80_000), y + random.within(-80_000, 80_000));
            SourceSegment::new(end(), end(), SourceId(index))
        })
        .collect();
    let mut expected: OrderedSet<PlanPoint> = segments.iter().flat_map(|segment| [segment.a, segment.b]).collect();
    let mut by_west: Vec<SourceSegment> = segments.clone();
    by_west.sort_by_key(|segment| segment.a.min(segment.b));
    let mut crossings = 0;
    for (index, first) in by_west.iter().enumerate() {
        let east = first.a.max(first.b).x_mm;
        for second in by_west[index + 1..]
            .iter()
            .take_while(|second| second.a.min(second.b).x_mm <= east)
        {
            if let Some(crossing) = crossing_of(first, second) {
                expected.insert(crossing);
                crossings += 1;
            }
        }
    }
    assert!(crossings > 50_000, "{crossings}");
    let arrangement = Arrangement::of(&segments);
    assert!(expected.iter().eq(arrangement.vertices()));
    for edge in arrangement.edges() {
        let ends = arrangement.ends(edge).map(|vertex| arrangement.point(vertex));
        for source in arrangement.sources(edge) {
            let segment = segments[source.0 as usize];
            // Within a pixel of the line: the cross product is the distance times the length.
            let length_mm = segment.a.distance_um(segment.b) as i64 / 1000 + 1;
            assert!(
                ends.iter()
                    .all(|end| segment.a.cross(segment.b, *end).abs() <= length_mm)
            );
        }
    }
    let components = arrangement
        .components()
        .into_iter()
        .max()
        .map_or(0, |last| last as usize + 1);
    assert_eq!(arrangement.component_count(), components);
    assert_eq!(
        arrangement.vertices().len() + arrangement.face_count(),
        1 + components + arrangement.edge_count()
    );
    let locator = Locator::of(&arrangement);
    for face in arrangement.bounded_faces() {
        if let Some(anchor) = anchor_of(&arrangement, face) {
            assert_eq!(locator.face_at(anchor), face);
        }
    }
}

/// The crossing of two segments that cross properly, as exact fractions rounded half up.
fn crossing_of(first: &SourceSegment, second: &SourceSegment) -> Option<PlanPoint> {
    let sides =
        |s: &SourceSegment, t: &SourceSegment| (i128::from(s.a.cross(s.b, t.a)), i128::from(s.a.cross(s.b, t.b)));
    let ((from, to), (back, forth)) = (sides(first, second), sides(second, first));
    if from.signum() * to.signum() >= 0 || back.signum() * forth.signum() >= 0 {
        return None;
    }
    let (numerator, denominator) = (from * (from - to).signum(), (from - to).abs());
    let along = |p: i32, q: i32| {
        let scaled = 2 * (i128::from(q) - i128::from(p)) * numerator + denominator;
        (i128::from(p) + scaled.div_euclid(2 * denominator)) as i32
    };
    Some(PlanPoint::new(
        along(second.a.x_mm, second.b.x_mm),
        along(second.a.y_mm, second.b.y_mm),
    ))
}
