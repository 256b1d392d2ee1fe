use super::*;
use crate::plan::document::Document;
use crate::plan::fixtures::{document, street};

const ALTERNATIVE: AlternativeId = AlternativeId(0);

fn tied(points: &[(i32, i32)], vertex: usize, to: u32, segment: u32, along_ppb: u32) -> Mark {
    let mut body = street(points);
    body.line[vertex].tie = Some(Tie {
        street: MarkId(to),
        segment,
        along_ppb,
    });
    Mark::Street(body)
}

fn set(document: &mut Document, id: u32, mark: Option<Mark>) {
    let marks = &mut document.alternatives.get_mut(&ALTERNATIVE).unwrap().marks;
    match mark {
        Some(mark) => drop(marks.insert(MarkId(id), mark)),
        None => drop(marks.remove(&MarkId(id))),
    }
}

/// Makes the changes with what follows from them, and gives back the document.
fn settle(document: &Document, changes: &[(u32, Option<Mark>)]) -> Result<Document, TieFault> {
    let edits: Vec<Edit> = changes
        .iter()
        .map(|(id, after)| Edit::mark(document, ALTERNATIVE, MarkId(*id), after.clone()))
        .collect();
    let further = settle_ties(document, ALTERNATIVE, &edits)?;
    let mut settled = document.clone();
    for edit in edits.iter().chain(&further) {
        edit.apply(&mut settled).unwrap();
    }
    Ok(settled)
}

fn vertex(document: &Document, id: u32, vertex: usize) -> Vertex {
    document
        .mark(ALTERNATIVE, MarkId(id))
        .unwrap()
        .as_street()
        .unwrap()
        .line[vertex]
}

fn plain(points: &[(i32, i32)]) -> Option<Mark> {
    Some(Mark::Street(street(points)))
}

/// Street 1 along the x axis, street 2 tied to it at x = 75 m, street 3 tied to the middle of street 2.
fn three_streets() -> Document {
    let mut document = document();
    set(&mut document, 1, plain(&[(0, 0), (100_000, 0)]));
    set(
        &mut document,
        2,
        Some(tied(&[(75_000, 0), (75_000, 40_000)], 0, 1, 0, 750_000_000)),
    );
    set(
        &mut document,
        3,
        Some(tied(&[(75_000, 20_000), (0, 20_000)], 0, 2, 0, 500_000_000)),
    );
    document
}

#[test]
fn ties_go_along_with_a_moved_street_and_its_followers() {
    let document = three_streets();
    let settled = settle(&document, &[(1, plain(&[(0, -10_000), (100_000, -10_000)]))]).unwrap();
    assert_eq!(vertex(&settled, 2, 0).point, PlanPoint::new(75_000, -10_000));
    assert_eq!(vertex(&settled, 3, 0).point, PlanPoint::new(75_000, 15_000));
    assert_eq!(vertex(&settled, 3, 0).tie, vertex(&document, 3, 0).tie);
}

#[test]
fn an_inserted_vertex_leaves_ties_in_place() {
    let settled = settle(&three_streets(), &[(1, plain(&[(0, 0), (60_000, 0), (100_000, 0)]))]).unwrap();
    let held = vertex(&settled, 2, 0);
    assert_eq!(held.point, PlanPoint::new(75_000, 0));
    assert_eq!(
        held.tie,
        Some(Tie {
            street: MarkId(1),
            segment: 1,
            along_ppb: 375_000_000
        })
    );
    // Taken out again, the tie is where it was.
    let back = settle(&settled, &[(1, plain(&[(0, 0), (100_000, 0)]))]).unwrap();
    assert_eq!(vertex(&back, 2, 0), vertex(&three_streets(), 2, 0));
}

#[test]
fn segments_before_and_after_a_reshaped_run_keep_their_ties_exactly() {
    let mut document = three_streets();
    set(
        &mut document,
        1,
        plain(&[(0, 0), (50_000, 0), (60_000, 0), (100_000, 0)]),
    );
    set(
        &mut document,
        2,
        Some(tied(&[(0, 0), (75_000, 40_000)], 0, 1, 2, 375_000_001)),
    );
    let settled = settle(
        &document,
        &[(
            1,
            plain(&[
                (0, 0),
                (50_000, 0),
                (55_000, 9_000),
                (57_000, 9_000),
                (60_000, 0),
                (100_000, 0),
            ]),
        )],
    )
    .unwrap();
    assert_eq!(
        vertex(&settled, 2, 0).tie,
        Some(Tie {
            street: MarkId(1),
            segment: 4,
            along_ppb: 375_000_001
        })
    );
}

#[test]
fn a_cut_hands_ties_to_the_new_street_and_a_join_takes_them_back() {
    let document = three_streets();
    let halves = [
        (1, plain(&[(0, 0), (50_000, 0)])),
        (4, plain(&[(50_000, 0), (100_000, 0)])),
    ];
    let cut = settle(&document, &halves).unwrap();
    assert_eq!(vertex(&cut, 2, 0).point, PlanPoint::new(75_000, 0));
    assert_eq!(
        vertex(&cut, 2, 0).tie,
        Some(Tie {
            street: MarkId(4),
            segment: 0,
            along_ppb: 500_000_000
        })
    );
    let joined = settle(&cut, &[(1, plain(&[(0, 0), (100_000, 0)])), (4, None)]).unwrap();
    assert_eq!(vertex(&joined, 2, 0), vertex(&document, 2, 0));
    // Ties on the part that keeps the street's id stay in place too.
    let mut near_start = document.clone();
    set(
        &mut near_start,
        2,
        Some(tied(&[(25_000, 0), (75_000, 40_000)], 0, 1, 0, 250_000_000)),
    );
    let cut = settle(&near_start, &halves).unwrap();
    assert_eq!(
        vertex(&cut, 2, 0).tie,
        Some(Tie {
            street: MarkId(1),
            segment: 0,
            along_ppb: 500_000_000
        })
    );
}

#[test]
fn a_shortened_street_takes_its_ties_along() {
    let settled = settle(&three_streets(), &[(1, plain(&[(0, 0), (50_000, 0)]))]).unwrap();
    assert_eq!(vertex(&settled, 2, 0).point, PlanPoint::new(37_500, 0));
}

#[test]
fn a_reversed_street_keeps_ties_in_place() {
    let settled = settle(&three_streets(), &[(1, plain(&[(100_000, 0), (0, 0)]))]).unwrap();
    assert_eq!(vertex(&settled, 2, 0).point, PlanPoint::new(75_000, 0));
    assert_eq!(vertex(&settled, 2, 0).tie.unwrap().along_ppb, 250_000_000);
}

#[test]
fn a_removed_street_lets_go_where_things_stand() {
    let settled = settle(&three_streets(), &[(1, None)]).unwrap();
    assert_eq!(vertex(&settled, 2, 0), Vertex::at(PlanPoint::new(75_000, 0)));
    assert!(vertex(&settled, 3, 0).tie.is_some());
}

#[test]
fn circles_are_refused_by_name() {
    let document = three_streets();
    let circle = settle(
        &document,
        &[(1, Some(tied(&[(0, 0), (0, 20_000)], 1, 3, 0, 1_000_000_000)))],
    );
    let Err(TieFault::Circle(streets)) = circle else {
        panic!("{circle:?}")
    };
    assert_eq!(
        streets.iter().copied().collect::<OrderedSet<_>>(),
        [1, 2, 3].map(MarkId).into()
    );
    let own = settle(&document, &[(1, Some(tied(&[(0, 0), (0, 20_000)], 1, 1, 0, 0)))]).unwrap_err();
    assert_eq!(own.to_string(), "street 1 can not be tied to itself");
}

#[test]
fn a_tied_vertex_moved_by_itself_goes_back() {
    let mut moved = street(&[(80_000, 3), (75_000, 40_000)]);
    moved.line[0].tie = vertex(&three_streets(), 2, 0).tie;
    let settled = settle(&three_streets(), &[(2, Some(Mark::Street(moved)))]).unwrap();
    assert_eq!(vertex(&settled, 2, 0).point, PlanPoint::new(75_000, 0));
}

#[test]
fn feet_round_halves_upward_and_stand_on_arcs() {
    let line = street(&[(0, 0), (1, -1)]).line;
    assert_eq!(foot(&line, 0, 500_000_000), Some(PlanPoint::new(1, 0)));
    assert_eq!(foot(&line, 1, 0), None);
    assert_eq!(foot(&line, 0, WHOLE_PPB + 1), None);
    let mut corner = street(&[(0, 0), (50_000, 0), (50_000, 50_000)]).line;
    corner[1].corner_radius_mm = 50_000;
    let on_arc = foot(&corner, 0, WHOLE_PPB).unwrap();
    // The arc's middle, 50 m from its center at (0, 50).
    let (x, y) = (f64::from(on_arc.x_mm), f64::from(on_arc.y_mm - 50_000));
    assert!((crate::number::length(x, y) - 50_000.0).abs() < 12.0, "{on_arc:?}");
}

#[test]
fn unusable_ties_of_a_file_are_released_and_listed() {
    let mut document = three_streets();
    set(&mut document, 1, Some(tied(&[(0, 0), (0, 20_000)], 1, 3, 0, 0)));
    set(&mut document, 5, Some(tied(&[(0, 0), (0, 1)], 0, 9, 0, 0)));
    set(&mut document, 6, Some(tied(&[(0, 0), (0, 1)], 0, 5, 1, 0)));
    let marks = &mut document.alternatives.get_mut(&ALTERNATIVE).unwrap().marks;
    let released: Vec<_> = release_unusable_ties(marks)
        .into_iter()
        .map(|released| (released.street.0, released.vertex, released.reason))
        .collect();
    assert_eq!(
        released,
        [
            (2, 0, ReleaseReason::Circle),
            (5, 0, ReleaseReason::NoStreet),
            (6, 0, ReleaseReason::NoPlace)
        ]
    );
    assert!(release_unusable_ties(marks).is_empty());
}

/// Whether the line meets the millimeter around `point`, exactly: what joins a tied vertex to the line it holds on to.
fn passes(line: &[PlanPoint], point: PlanPoint) -> bool {
    line.windows(2).any(|ends| {
        let [a, b] = [ends[0], ends[1]];
        let direction = b - a;
        let within = |low: i32, high: i32, at: i32| (low.min(high)..=low.max(high)).contains(&at);
        let is_across = 2 * a.cross(b, point).abs() < i64::from(direction.x_mm.abs()) + i64::from(direction.y_mm.abs());
        [a, b].contains(&point)
            || (is_across && within(a.x_mm, b.x_mm, point.x_mm) && within(a.y_mm, b.y_mm, point.y_mm))
    })
}

#[test]
fn the_flattened_line_passes_through_every_foot() {
    let mut state = 20_260_u64;
    let mut next = |below: i32| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) % below as u64) as i32
    };
    for case in 0..2_000 {
        let mut line: Vec<Vertex> = (0..5)
            .map(|step| Vertex::at(PlanPoint::new(step * 150_000 + next(90_000), next(300_000))))
            .collect();
        for vertex in &mut line {
            vertex.corner_radius_mm = next(120_000) as u32;
        }
        let flat = crate::plan::flatten::flatten(&line);
        for _ in 0..20 {
            let (segment, along_ppb) = (next(4) as u32, next(1_000_000_001) as u32);
            let foot = foot(&line, segment, along_ppb).unwrap();
            assert!(
                passes(&flat, foot),
                "case {case}: {foot:?} at {segment}, {along_ppb} of {line:?}"
            );
        }
    }
}
