use super::*;
use crate::plan::edit::EditFault;
use crate::plan::fixtures::{document, street};
use crate::plan::land::{Note, RemarkAnswer};
use crate::plan::mark::Mark;
use crate::plan::street::Tie;
use crate::plan::tie::TieFault;

const ALTERNATIVE: AlternativeId = AlternativeId(0);

/// The edit that makes street `id` end at `x_mm`, or removes it.
fn street_edit(document: &Document, id: u32, x_mm: Option<i32>) -> Edit {
    let mark = x_mm.map(|x_mm| Mark::Street(street(&[(0, 0), (x_mm, 0)])));
    Edit::mark(document, ALTERNATIVE, MarkId(id), mark)
}

fn mark_cell(id: u32) -> Cell {
    Cell::Mark(ALTERNATIVE, MarkId(id))
}

fn draw(history: &mut History, document: &mut Document, id: u32, x_mm: i32) {
    let edit = street_edit(document, id, Some(x_mm));
    history.apply(document, format!("Draw {id}"), vec![edit]).unwrap();
}

#[test]
fn a_change_replaces_the_preview_and_cancel_takes_it_back() {
    let (start, mut document) = (document(), document());
    let mut history = History::new(&document, Limits::default());
    history.begin("Draw").unwrap();
    history
        .change(&mut document, vec![street_edit(&start, 1, Some(10))])
        .unwrap();
    let cells = history
        .change(&mut document, vec![street_edit(&start, 2, Some(20))])
        .unwrap();
    assert_eq!(cells, [mark_cell(1), mark_cell(2)]);
    assert_eq!(document.mark(ALTERNATIVE, MarkId(1)), None);
    assert_eq!(history.start_of_gesture(&document).unwrap(), start);
    let further = street_edit(&document, 2, Some(30));
    history.extend(&mut document, vec![further]).unwrap();
    assert_eq!(history.start_of_gesture(&document).unwrap(), start);
    assert_eq!(history.cancel(&mut document).unwrap(), [mark_cell(2)]);
    assert_eq!(document, start);
    assert_eq!(history.undo_count(), 0);
}

#[test]
fn a_gesture_that_changes_nothing_leaves_no_step_and_no_entry() {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    drop(history.take_entries());
    history.begin("Draw").unwrap();
    let there = vec![street_edit(&document, 1, Some(10))];
    history.change(&mut document, there).unwrap();
    history.change(&mut document, Vec::new()).unwrap();
    assert_eq!(history.commit(&document).unwrap(), None);
    assert_eq!((history.undo_count(), history.take_entries().len()), (0, 0));
}

#[test]
fn undo_and_redo_go_any_depth_and_a_new_step_drops_redo() {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    let mut states = vec![document.clone()];
    for id in 0..20 {
        draw(&mut history, &mut document, id, 10);
        states.push(document.clone());
    }
    for state in states.iter().rev().skip(1) {
        assert!(history.undo(&mut document).unwrap().is_some());
        assert_eq!(document, *state);
    }
    assert_eq!(history.undo(&mut document).unwrap(), None);
    for state in states.iter().skip(1).take(5) {
        assert_eq!(history.redo(&mut document).unwrap().unwrap().len(), 1);
        assert_eq!(document, *state);
    }
    assert_eq!(history.redo_label(), Some("Draw 5"));
    draw(&mut history, &mut document, 99, 10);
    assert_eq!((history.undo_count(), history.redo_count()), (6, 0));
    assert_eq!(history.redo(&mut document).unwrap(), None);
}

#[test]
fn faults_leave_document_and_preview_as_they_were() {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    draw(&mut history, &mut document, 1, 100_000);
    assert_eq!(history.change(&mut document, Vec::new()), Err(HistoryFault::NoGesture));
    let start = document.clone();
    history.begin("Draw").unwrap();
    assert_eq!(history.begin("Again"), Err(HistoryFault::GestureOpen));
    history
        .change(&mut document, vec![street_edit(&start, 2, Some(20))])
        .unwrap();
    let previewed = document.clone();

    let stale = street_edit(&previewed, 2, Some(30));
    assert_eq!(
        history.change(&mut document, vec![stale]),
        Err(HistoryFault::Edit(EditFault::Stale(mark_cell(2))))
    );
    let mut own = street(&[(0, 0), (5, 5)]);
    own.line[0].tie = Some(Tie {
        street: MarkId(3),
        segment: 0,
        along_ppb: 0,
    });
    let own = Edit::mark(&start, ALTERNATIVE, MarkId(3), Some(Mark::Street(own)));
    assert_eq!(
        history.change(&mut document, vec![own]),
        Err(HistoryFault::Tie(TieFault::Circle(vec![MarkId(3)])))
    );
    let last = Edit::Alternative {
        id: ALTERNATIVE,
        before: start.alternatives.get(&ALTERNATIVE).cloned(),
        after: None,
    };
    assert_eq!(
        history.change(&mut document, vec![last]),
        Err(HistoryFault::LastAlternative)
    );
    let far = street_edit(&start, 4, Some(i32::MAX));
    assert_eq!(
        history.change(&mut document, vec![far]),
        Err(HistoryFault::NotStorable(mark_cell(4)))
    );
    let said = HistoryFault::NotStorable(mark_cell(4)).to_string();
    assert!(said.ends_with("(at mark 4 of alternative 0)"), "{said}");
    let said = EditFault::Stale(crate::plan::edit::Cell::Topography).to_string();
    assert!(said.ends_with("(at topography)"), "{said}");
    assert_eq!(history.undo(&mut document), Err(HistoryFault::GestureOpen));
    assert_eq!(document, previewed);
    history.commit(&document).unwrap();
    history.undo(&mut document).unwrap();
    assert_eq!(document, start);
}

#[test]
fn ties_are_settled_in_the_same_step() {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    draw(&mut history, &mut document, 1, 100_000);
    let mut tied = street(&[(9, 9), (50_000, 50_000)]);
    tied.line[0].tie = Some(Tie {
        street: MarkId(1),
        segment: 0,
        along_ppb: 500_000_000,
    });
    let edit = Edit::mark(&document, ALTERNATIVE, MarkId(2), Some(Mark::Street(tied)));
    history.apply(&mut document, "Tie", vec![edit]).unwrap();
    let before = document.clone();
    let moved = street_edit(&document, 1, Some(60_000));
    let cells = history.apply(&mut document, "Shorten", vec![moved]).unwrap();
    assert_eq!(cells, [mark_cell(1), mark_cell(2)]);
    let foot = document.mark(ALTERNATIVE, MarkId(2)).unwrap().as_street().unwrap().line[0].point;
    assert_eq!(foot, crate::plan::PlanPoint::new(30_000, 0));
    history.undo(&mut document).unwrap();
    assert_eq!(document, before);
}

#[test]
fn memory_is_bounded_once_entries_are_taken_and_steps_can_be_recalled() {
    let mut document = document();
    let mut history = History::new(
        &document,
        Limits {
            steps: 5,
            bytes: 1 << 20,
        },
    );
    let mut store = Vec::new();
    for id in 0..40 {
        draw(&mut history, &mut document, id, 10);
        if id == 30 {
            // Nothing is let go that nobody has kept.
            assert!(history.held().0 > 5);
        }
        if id > 30 {
            store.extend(history.take_entries());
            assert_eq!(history.held().0, 5);
        }
    }
    let mut recalled = 0;
    loop {
        match history.undo(&mut document) {
            Ok(Some(_)) => {}
            Ok(None) => break,
            Err(HistoryFault::NotInMemory(number)) => {
                store.extend(history.take_entries());
                let entry = store.iter().find(|held| held.number == number).unwrap();
                history.recall(entry).unwrap();
                recalled += 1;
            }
            Err(fault) => panic!("{fault}"),
        }
        store.extend(history.take_entries());
        assert!(history.held().0 <= 6, "{:?}", history.held());
    }
    assert_eq!((recalled, history.redo_count()), (35, 40));
    assert!(document.alternatives[&ALTERNATIVE].marks.is_empty());
    assert_eq!(history.recall(&store[0]), Err(HistoryFault::NotAStep(store[0].number)));
}

#[test]
fn bytes_bound_memory_too_but_never_the_nearest_step() {
    let mut document = document();
    let mut history = History::new(
        &document,
        Limits {
            steps: 1000,
            bytes: 10_000,
        },
    );
    for id in 0..10 {
        let points: Vec<(i32, i32)> = (0..200).map(|x| (x, 0)).collect();
        let edit = Edit::mark(&document, ALTERNATIVE, MarkId(id), Some(Mark::Street(street(&points))));
        history.apply(&mut document, "Draw", vec![edit]).unwrap();
        drop(history.take_entries());
    }
    let (steps, bytes) = history.held();
    assert!(
        steps >= 1 && (bytes <= 10_000 || steps == 1),
        "{steps} steps of {bytes} bytes"
    );
    assert!(history.undo(&mut document).unwrap().is_some());
}

#[test]
fn mark_ids_are_not_used_again_after_undo() {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    let id = history.next_mark_id(&document);
    draw(&mut history, &mut document, id.0, 10);
    history.undo(&mut document).unwrap();
    assert_eq!(document.next_mark_id(), id);
    assert_eq!(history.next_mark_id(&document), MarkId(id.0 + 1));
}

#[test]
fn a_locked_plan_refuses_every_gesture_and_step_until_it_is_opened_again() {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    draw(&mut history, &mut document, 1, 10);
    draw(&mut history, &mut document, 2, 20);
    history.undo(&mut document).unwrap();
    drop(history.take_entries());
    let before = document.clone();
    history.lock(true);
    assert_eq!(history.begin("Draw"), Err(HistoryFault::Locked));
    assert_eq!(history.change(&mut document, Vec::new()), Err(HistoryFault::NoGesture));
    let edit = street_edit(&document, 3, Some(30));
    assert_eq!(
        history.apply(&mut document, "Draw", vec![edit]),
        Err(HistoryFault::Locked)
    );
    assert_eq!(history.undo(&mut document), Err(HistoryFault::Locked));
    assert_eq!(history.redo(&mut document), Err(HistoryFault::Locked));
    assert_eq!((&document, history.take_entries().len()), (&before, 0));
    history.lock(false);
    assert!(history.redo(&mut document).unwrap().is_some());
}

#[test]
fn a_mark_that_a_remark_names_keeps_its_id_to_itself_when_it_is_gone() {
    let mut document = document();
    let id = document.next_mark_id();
    let note = Note {
        answers: vec![RemarkAnswer {
            step: "delete street".to_owned(),
            marks: vec![MarkId(id.0 + 7)],
        }],
        ..Note::default()
    };
    Edit::mark(&document, ALTERNATIVE, id, Some(Mark::Note(note)))
        .apply(&mut document)
        .unwrap();
    assert_eq!(document.next_mark_id(), MarkId(id.0 + 8));
    assert_eq!(
        History::new(&document, Limits::default()).next_mark_id(&document),
        MarkId(id.0 + 8)
    );
}
