use super::*;
use crate::plan::document::Phase;
use crate::plan::fixtures;
use crate::plan::land::{Parcel, PlaceKind};
use crate::plan::{PlanPoint, UseMark};

const ONLY: AlternativeId = AlternativeId(0);

fn street(status: Status, phase: Option<u32>) -> Mark {
    Mark::Street(Street {
        status,
        phase: phase.map(PhaseId),
        ..fixtures::street(&[(0, 0), (100, 0)])
    })
}

fn use_in(phase: Option<u32>) -> Mark {
    Mark::Use(UseMark {
        anchor: PlanPoint::new(5, 5),
        program: Vec::new(),
        land_m2: 0,
        sides: Vec::new(),
        phase: phase.map(PhaseId),
    })
}

fn place(certainty: Certainty, phase: u32, x_mm: i32) -> Mark {
    Mark::Place(Place {
        name: String::new(),
        kind: PlaceKind::Shop,
        footprint: Footprint::Point(PlanPoint::new(x_mm, 5)),
        minimum_size_m2: 0,
        certainty,
        phase: Some(PhaseId(phase)),
    })
}

fn parcel() -> Mark {
    let at = PlanPoint::new;
    Mark::Parcel(Parcel {
        label: "12".to_owned(),
        outline: vec![at(0, 0), at(10, 0), at(10, 10), at(0, 10)],
        owner: OwnerGroup::Unwilling,
        beside: None,
    })
}

/// Two phases, 4 and 9, and these marks by their place.
fn plan(marks: Vec<Mark>) -> Document {
    let phase = |name: &str| Phase { name: name.to_owned() };
    let mut document = fixtures::document();
    document.phases = [(PhaseId(4), phase("Main street")), (PhaseId(9), phase("The hill"))].into();
    let held = document.alternatives.get_mut(&ONLY).unwrap();
    held.marks = (0..).map(MarkId).zip(marks).collect();
    document
}

fn phases(ids: &[u32]) -> Scope {
    Scope {
        phases: Some(ids.iter().copied().map(PhaseId).collect()),
        ..Scope::default()
    }
}

fn today() -> Scope {
    Scope {
        standing: Standing::Today,
        ..Scope::default()
    }
}

#[track_caller]
fn check_seen(marks: Vec<Mark>, scope: &Scope, expected: &[u32]) {
    let document = plan(marks);
    let seen = scope.seen(&document, ONLY).document;
    let ids: Vec<u32> = seen.alternatives[&ONLY].marks.keys().map(|id| id.0).collect();
    assert_eq!(ids, expected);
}

#[test]
fn everything_is_the_document_itself() {
    let document = plan(vec![street(Status::Removed, None)]);
    assert!(matches!(
        Scope::default().seen(&document, ONLY).document,
        Cow::Borrowed(_)
    ));
    assert_eq!(Scope::default().in_words(&document), None);
}

#[test]
fn streets_stand_by_their_status() {
    let marks = || {
        [Status::Existing, Status::Kept, Status::Removed, Status::New]
            .map(|status| street(status, Some(9)))
            .to_vec()
    };
    check_seen(marks(), &today(), &[0, 1, 2]);
    check_seen(marks(), &phases(&[4, 9]), &[0, 1, 3]);
    // What phase 9 removes and what it brings, in phase 4.
    check_seen(marks(), &phases(&[4]), &[0, 1, 2]);
    let document = plan(marks());
    let today = today();
    let seen = today.seen(&document, ONLY);
    assert_eq!(seen.unbuilt, Vec::new());
    let removed = seen.document.mark(ONLY, MarkId(2)).and_then(Mark::as_street).unwrap();
    assert_eq!(removed.status, Status::Kept);
}

#[test]
fn new_streets_of_other_phases_keep_their_land() {
    let document = plan(vec![
        street(Status::New, Some(9)),
        street(Status::New, Some(4)),
        street(Status::Removed, Some(4)),
        street(Status::Kept, Some(9)),
    ]);
    let scope = phases(&[4]);
    let street = Unbuilt {
        points: vec![PlanPoint::new(0, 0), PlanPoint::new(100, 0)],
        section: StreetSectionId(0),
    };
    assert_eq!(scope.seen(&document, ONLY).unbuilt, [street]);
}

#[test]
fn marks_without_a_phase_are_of_the_first() {
    let marks = || {
        vec![
            use_in(None),
            use_in(Some(4)),
            use_in(Some(9)),
            street(Status::New, None),
        ]
    };
    check_seen(marks(), &phases(&[4]), &[0, 1, 3]);
    check_seen(marks(), &phases(&[9]), &[2]);
    check_seen(marks(), &phases(&[]), &[]);
    check_seen(marks(), &today(), &[]);
    let document = plan(Vec::new());
    assert_eq!(Scope::up_to(&document, PhaseId(4)), phases(&[4]));
    assert_eq!(Scope::up_to(&document, PhaseId(9)), phases(&[4, 9]));
}

#[test]
fn a_plan_without_phases_is_built_in_one() {
    let mut document = plan(vec![use_in(None)]);
    document.phases.clear();
    let scope = phases(&[4]);
    assert_eq!(scope.seen(&document, ONLY).document.alternatives[&ONLY].marks.len(), 1);
}

#[test]
fn existing_places_are_there_in_every_scope_and_new_ones_not_on_land_left_out() {
    let marks = || {
        vec![
            place(Certainty::Existing, 9, 5),
            place(Certainty::Committed, 4, 5),
            place(Certainty::HopedFor, 4, 50),
            place(Certainty::Committed, 9, 50),
            parcel(),
        ]
    };
    check_seen(marks(), &today(), &[0, 4]);
    check_seen(marks(), &phases(&[4]), &[0, 1, 2, 4]);
    let without = Scope {
        left_out_owners: [OwnerGroup::Unwilling].into(),
        ..Scope::default()
    };
    check_seen(marks(), &without, &[0, 2, 3, 4]);
    let others = Scope {
        left_out_owners: [OwnerGroup::Unknown].into(),
        ..Scope::default()
    };
    check_seen(marks(), &others, &[0, 1, 2, 3, 4]);
}

#[test]
fn a_scope_says_what_it_leaves_out() {
    let document = plan(Vec::new());
    let words = |scope: Scope| scope.in_words(&document).unwrap();
    assert_eq!(words(phases(&[4])), "phase Main street alone");
    assert_eq!(words(phases(&[4, 9])), "phases Main street, The hill");
    assert_eq!(words(phases(&[7])), "phase 7 alone");
    let mut both = today();
    both.left_out_owners = [OwnerGroup::Unknown, OwnerGroup::Unwilling].into();
    assert_eq!(
        words(both),
        "as it stands today, without land of unknown and unwilling owners"
    );
}
