use super::*;
use crate::plan::fixtures::street;
use crate::plan::{Document, Edit, tie::settle_ties};

const ALTERNATIVE: crate::plan::AlternativeId = crate::plan::AlternativeId(0);

fn tied(mut street: crate::plan::Street, index: usize, to: u32, segment: u32, along_ppb: u32) -> Mark {
    street.line[index].tie = Some(Tie {
        street: MarkId(to),
        segment,
        along_ppb,
    });
    Mark::Street(street)
}

/// A long street; two streets up from it, and one that runs from the first of them to the other.
fn plan() -> Document {
    let mut document = crate::plan::fixtures::document();
    let marks = &mut document.alternatives.get_mut(&ALTERNATIVE).unwrap().marks;
    marks.insert(MarkId(1), Mark::Street(street(&[(0, 0), (200_000, 0)])));
    marks.insert(
        MarkId(2),
        tied(street(&[(50_000, 0), (50_000, 80_000)]), 0, 1, 0, 250_000_000),
    );
    marks.insert(
        MarkId(3),
        tied(street(&[(150_000, 0), (150_000, 80_000)]), 0, 1, 0, 750_000_000),
    );
    marks.insert(
        MarkId(4),
        tied(street(&[(50_000, 20_000), (150_000, 30_000)]), 0, 2, 0, 250_000_000),
    );
    document
}

fn chosen(document: &Document, ids: &[u32]) -> Vec<(MarkId, Mark)> {
    let marks = &document.alternatives[&ALTERNATIVE].marks;
    ids.iter().map(|&id| (MarkId(id), marks[&MarkId(id)].clone())).collect()
}

/// The document after the motion, ties settled as in a gesture.
fn after(document: &Document, ids: &[u32], motion: &Motion, copies: Option<MarkId>) -> Document {
    let alternative = &document.alternatives[&ALTERNATIVE];
    let edits: Vec<Edit> = moved(alternative, &chosen(document, ids), motion, copies)
        .into_iter()
        .map(|(id, mark)| Edit::mark(document, ALTERNATIVE, id, Some(mark)))
        .collect();
    let further = settle_ties(document, ALTERNATIVE, &edits).expect("no circle");
    let mut result = document.clone();
    for edit in edits.iter().chain(&further) {
        edit.apply(&mut result).expect("it fits");
    }
    result
}

fn line(document: &Document, id: u32) -> Vec<(i32, i32)> {
    let street = document.alternatives[&ALTERNATIVE].marks[&MarkId(id)]
        .as_street()
        .unwrap();
    street
        .line
        .iter()
        .map(|vertex| (vertex.point.x_mm, vertex.point.y_mm))
        .collect()
}

#[test]
fn points_go_where_they_are_told() {
    let about = PlanPoint::new(10_000, 20_000);
    let point = PlanPoint::new(13_000, 20_000);
    let quarter = Motion::turn(about, std::f64::consts::FRAC_PI_2);
    assert_eq!(quarter.point(point), PlanPoint::new(10_000, 23_000));
    assert_eq!(Motion::mirror(about, true).point(point), PlanPoint::new(7_000, 20_000));
    assert_eq!(
        Motion::mirror(about, false).point(PlanPoint::new(1, 2)),
        PlanPoint::new(1, 39_998)
    );
    assert_eq!(
        Motion::shift(PlanVector::new(-5, 7)).point(point),
        PlanPoint::new(12_995, 20_007)
    );
}

#[test]
fn a_whole_turn_and_two_mirrorings_are_none() {
    let about = PlanPoint::new(-12_345, 6_789);
    for step in 0..200 {
        let point = PlanPoint::new(step * 7_919 - 700_000, 400_000 - step * 3_571);
        let whole = Motion::turn(about, std::f64::consts::TAU).point(point);
        assert!(whole.squared_distance_mm2(point) <= 1, "{point:?} went to {whole:?}");
        for is_east_west in [true, false] {
            let mirror = Motion::mirror(about, is_east_west);
            assert_eq!(mirror.point(mirror.point(point)), point);
        }
        let mut turned = point;
        for _ in 0..24 {
            turned = Motion::turn(about, std::f64::consts::TAU / 24.0).point(turned);
        }
        assert!(
            turned.squared_distance_mm2(point) <= 16 * 16,
            "{point:?} went to {turned:?}"
        );
    }
}

#[test]
fn what_moves_together_holds_on_to_each_other_and_slides_on_what_stays() {
    let document = plan();
    let shifted = after(&document, &[2, 4], &Motion::shift(PlanVector::new(8_000, 5_000)), None);
    assert_eq!(
        line(&shifted, 2),
        [(58_000, 0), (58_000, 85_000)],
        "it slides on street 1"
    );
    // Street 2 is 85 m long now; the hold of street 4 keeps its quarter of it.
    assert_eq!(line(&shifted, 4), [(58_000, 21_250), (158_000, 35_000)]);
    let far = after(&document, &[2], &Motion::shift(PlanVector::new(0, 30_000)), None);
    assert_eq!(line(&far, 2), [(50_000, 30_000), (50_000, 110_000)], "it lets go");
    assert_eq!(line(&far, 4)[0], (50_000, 50_000), "what holds on to it follows");
}

#[test]
fn copies_hold_on_to_copies() {
    let document = plan();
    let copied = after(
        &document,
        &[2, 4],
        &Motion::shift(PlanVector::new(20_000, 0)),
        Some(MarkId(10)),
    );
    assert_eq!(line(&copied, 2), line(&document, 2));
    assert_eq!(line(&copied, 10), [(70_000, 0), (70_000, 80_000)]);
    let tie = |id: u32| {
        copied.alternatives[&ALTERNATIVE].marks[&MarkId(id)]
            .as_street()
            .unwrap()
            .line[0]
            .tie
    };
    assert_eq!(
        tie(10).map(|tie| (tie.street, tie.along_ppb)),
        Some((MarkId(1), 350_000_000))
    );
    assert_eq!(tie(11).map(|tie| tie.street), Some(MarkId(10)));
}

#[test]
fn mirrored_streets_keep_their_left_and_their_holds() {
    let document = plan();
    let about = PlanPoint::new(100_000, 0);
    let once = after(&document, &[1], &Motion::mirror(about, true), None);
    assert_eq!(
        line(&once, 1),
        [(0, 0), (200_000, 0)],
        "mirrored and turned about, it is what it was"
    );
    assert_eq!(
        line(&once, 2)[0],
        (150_000, 0),
        "what holds on to it is mirrored with its hold"
    );
    let upper = after(
        &document,
        &[2],
        &Motion::mirror(PlanPoint::new(50_000, 40_000), false),
        None,
    );
    assert_eq!(line(&upper, 2), [(50_000, 0), (50_000, 80_000)]);
    assert_eq!(line(&upper, 4)[0], (50_000, 60_000));
    let both = after(
        &upper,
        &[2],
        &Motion::mirror(PlanPoint::new(50_000, 40_000), false),
        None,
    );
    assert_eq!(line(&both, 4), line(&document, 4));
}

#[test]
fn bounds_span_all_marks() {
    let document = plan();
    let spanned = bounds(&chosen(&document, &[2, 3]));
    assert_eq!(
        spanned,
        Some((PlanPoint::new(50_000, 0), PlanPoint::new(150_000, 80_000)))
    );
    assert_eq!(bounds(&[]), None);
}

#[test]
fn a_copied_use_lies_in_the_copy_of_its_block_and_faces_the_copies_of_its_streets() {
    use crate::plan::land::{Fronting, Hand, SideUse, UseMark};
    let mut document = plan();
    let side = |street: u32, hand, x_mm: i32| SideUse {
        street: MarkId(street),
        hand,
        at: PlanPoint::new(x_mm, 60_000),
        fronting: Fronting::Front,
        building_type: None,
        shopfront: true,
        stories: Some(2),
        setback_mm: None,
    };
    let painted = UseMark {
        anchor: PlanPoint::new(100_000, 50_000),
        program: Vec::new(),
        land_m2: 4_000,
        sides: vec![
            side(2, Hand::Right, 50_000),
            side(3, Hand::Left, 150_000),
            side(1, Hand::Left, 0),
        ],
        phase: None,
    };
    let marks = &mut document.alternatives.get_mut(&ALTERNATIVE).unwrap().marks;
    marks.insert(MarkId(9), Mark::Use(painted.clone()));
    let shift = Motion::shift(PlanVector::new(0, 500_000));
    let mirror = Motion::mirror(PlanPoint::new(100_000, 0), true);
    for (motion, xs, y_mm) in [(shift, [50_000, 150_000], 560_000), (mirror, [150_000, 50_000], 60_000)] {
        let copied = after(&document, &[2, 3, 9], &motion, Some(MarkId(20)));
        let found = |id: u32| copied.mark(ALTERNATIVE, MarkId(id)).and_then(Mark::as_use).unwrap();
        assert_eq!(found(9), &painted, "the original stays");
        let copy = found(22);
        assert_eq!(copy.anchor, PlanPoint::new(100_000, y_mm - 10_000));
        let sides: Vec<_> = copy
            .sides
            .iter()
            .map(|side| (side.street.0, side.hand, side.at))
            .collect();
        let at = |x_mm: i32| PlanPoint::new(x_mm, y_mm);
        // A mirrored street runs the other way, so that its left stays what it was.
        assert_eq!(sides[..2], [(20, Hand::Right, at(xs[0])), (21, Hand::Left, at(xs[1]))]);
        assert_eq!(sides[2].0, 1, "that street is not copied");
        let again = after(&document, &[2, 3, 9], &motion, None);
        let moved = again.mark(ALTERNATIVE, MarkId(9)).and_then(Mark::as_use).unwrap();
        assert_eq!(moved.anchor, copy.anchor, "it goes with its block");
        let faced: Vec<_> = moved.sides.iter().map(|side| (side.street.0, side.at)).collect();
        assert_eq!(faced[..2], [(2, at(xs[0])), (3, at(xs[1]))]);
    }
}
