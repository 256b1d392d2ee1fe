use super::*;
use crate::exchange::plan_file;
use crate::figures::leaf::Cell;
use crate::measures::details::waiting;
use crate::passing::{from_bytes, to_bytes};
use crate::plan::{Edit, Mark, MarkId};
use crate::study::follower::Follower;
use crate::study::protocol::{Answer, Question, Reply, Request};

const VILLAGE: &str = include_str!("../../../../sample-sketches/compact-village.geojson");

/// A figure of each kind of detail.
const SHOWN: [&str; 13] = [
    "walk.shed_area",
    "walk.ped_shed_ratio",
    "walk.directness_mean",
    "walk.directness_90th",
    "walk.worst_directness",
    "walk.best_center_5min_homes_share",
    "walk.best_center_5min_more_homes",
    "walk.busiest_segment_walks",
    "walk.busiest_tenth_share",
    "mix.reached_evenness",
    "mix.needs_reached",
    "walk.sure_need_homes_share",
    "mix.dissimilarity",
];

fn study() -> Study {
    Study::open(plan_file::read(VILLAGE.as_bytes()).unwrap().document).unwrap()
}

fn without(study: &Study, test: fn(&Mark) -> bool) -> Vec<Edit> {
    let marks = &study.document().alternatives[&study.alternative()].marks;
    let id: MarkId = *marks.iter().find(|(_, mark)| test(mark)).unwrap().0;
    vec![Edit::mark(study.document(), study.alternative(), id, None)]
}

fn is_waiting(study: &Study) -> bool {
    let waiting = SHOWN.map(|id| study.evaluation().value(id) == Some(Cell::Unknown(waiting().to_owned())));
    assert!(waiting.iter().all(|held| *held == waiting[0]), "{waiting:?}");
    waiting[0]
}

#[test]
fn details_come_after_the_drawing_rests_and_go_with_the_next_edit() {
    let mut study = study();
    assert!(is_waiting(&study) && study.details().is_none());
    study.work_details().unwrap();
    for id in SHOWN {
        let value = study.evaluation().value(id).unwrap();
        assert!(value.number().is_some(), "{id}: {value:?}");
    }
    let edits = without(&study, |mark| mark.as_use().is_some());
    study.apply("Remove a use", edits).unwrap();
    assert!(is_waiting(&study) && study.details().is_none());
    study.undo().unwrap();
    assert!(is_waiting(&study));
}

/// Invariant 8 for details: worked after edits they are those of a plan opened anew.
#[test]
fn details_after_edits_equal_those_of_a_study_opened_anew() {
    let mut study = study();
    for test in [
        (|mark| mark.as_use().is_some()) as fn(&Mark) -> bool,
        |mark| mark.as_street().is_some(),
        |mark| mark.as_place().is_some(),
    ] {
        study.work_details().unwrap();
        let edits = without(&study, test);
        study.apply("Remove one", edits).unwrap();
        let mut anew = Study::open(study.document().clone()).unwrap();
        assert_eq!(study.work_details().unwrap(), anew.work_details().unwrap());
        for index in study.evaluation().graph().indices() {
            assert_eq!(study.evaluation().cells(index), anew.evaluation().cells(index));
        }
    }
}

#[test]
fn a_follower_works_them_out_and_stale_ones_are_refused() {
    let mut study = study();
    let mut follower = Follower::default();
    let ask = |study: &mut Study, follower: &mut Follower| {
        let news = study.take_news().unwrap();
        let questions = vec![Question::Details, Question::Range("mix.reached_evenness".to_owned())];
        let mut replies = Vec::new();
        follower.handle(Request { news, questions }, |reply| replies.push(reply));
        let Reply::Answer {
            revision,
            answer: Answer::Details(details),
        } = replies.remove(0)
        else {
            panic!("{replies:?}")
        };
        let Some(Reply::Answer {
            answer: Answer::Range { shown, .. },
            ..
        }) = replies.pop()
        else {
            panic!("no range")
        };
        assert!(shown.iter().all(|words| words.starts_with("0.")), "{shown:?}");
        (revision, *details)
    };
    let (revision, details) = ask(&mut study, &mut follower);
    assert!(is_waiting(&study));
    // What passes to the page and back is what was worked out.
    let details: WalkDetails = from_bytes(&to_bytes(&details)).unwrap();
    assert!(study.take_details(revision, details.clone()).unwrap());
    assert!(!is_waiting(&study));
    // Asked again of the same drawing the follower holds what it worked out.
    assert_eq!(ask(&mut study, &mut follower), (revision, details.clone()));
    assert!(!is_waiting(&study));

    let edits = without(&study, |mark| mark.as_street().is_some());
    study.apply("Remove a street", edits).unwrap();
    assert!(!study.take_details(revision, details.clone()).unwrap());
    assert!(is_waiting(&study));
    let (later, changed) = ask(&mut study, &mut follower);
    assert!(later > revision && changed != details);
    assert!(study.take_details(later, changed).unwrap());
    assert!(!is_waiting(&study));
}
