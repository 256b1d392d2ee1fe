use super::*;
use crate::tools::fixtures::street;
use hobnail_core::exchange::plan_file;
use hobnail_core::study::jobs::Jobs;

const FIRST: AlternativeId = AlternativeId(0);

fn remark(id: u32, text: &str, author: &str, votes: u32, present: u32) -> (MarkId, Mark) {
    let note = Note {
        at: PlanPoint::new(i32::try_from(id).unwrap() * 10_000, 0),
        text: text.to_owned(),
        author: author.to_owned(),
        votes,
        present,
        ..Note::default()
    };
    (MarkId(id), Mark::Note(note))
}

/// A plan with a street and the remarks of two invented tables.
fn app() -> App {
    let mut app = App::new().unwrap();
    let marks = [
        (MarkId(1), Mark::Street(street(&[(0, 0), (100_000, 0)]))),
        remark(2, "A way across to the school", "Table 2", 14, 22),
        remark(3, "Keep the old trees", "Table 1", 5, 22),
        remark(4, "Shops by the square", "Table 1", 19, 22),
    ];
    for (id, mark) in marks {
        put(&mut app, id, Some(mark));
    }
    app
}

fn put(app: &mut App, id: MarkId, mark: Option<Mark>) {
    let edit = Edit::mark(app.study.document(), FIRST, id, mark);
    app.step_with("draw street", vec![edit]);
}

fn draw(app: &mut App, id: u32, y_mm: i32) {
    put(
        app,
        MarkId(id),
        Some(Mark::Street(street(&[(0, y_mm), (100_000, y_mm)]))),
    );
}

fn work_all(app: &mut App) {
    let mut jobs = Jobs::default();
    jobs.ask(&app.study, app.questions());
    while let Some((revision, answer)) = app.step(&mut jobs) {
        app.take_answer(revision, answer);
    }
}

fn texts(app: &App) -> Vec<(usize, String)> {
    let remarks = app.remarks_shown().remarks.into_iter();
    remarks.map(|one| (one.number, one.text)).collect()
}

fn answers(app: &App, id: u32) -> Vec<String> {
    let found = app
        .remarks_shown()
        .remarks
        .into_iter()
        .find(|one| one.key.1 == MarkId(id));
    found.unwrap().answers.into_iter().map(|(words, _)| words).collect()
}

#[test]
fn remarks_are_listed_by_votes_by_table_and_by_number() {
    let mut app = app();
    let number = |app: &App| texts(app).into_iter().map(|(number, _)| number).collect::<Vec<_>>();
    assert_eq!(number(&app), [3, 1, 2]);
    app.sort_remarks(Sort::Table);
    assert_eq!(number(&app), [2, 3, 1]);
    app.sort_remarks(Sort::Number);
    assert_eq!(number(&app), [1, 2, 3]);
    let shown = app.remarks_shown();
    assert_eq!(shown.remarks[0].about, "Table 2 · 14 of 22 dots");
    assert_eq!(shown.count, "3 remarks, 3 not answered yet.");
    assert_eq!(shown.tables, ["Table 1", "Table 2"]);
}

#[test]
fn steps_drawn_while_a_remark_is_answered_are_linked_and_undone_with_their_link() {
    let mut app = app();
    app.answer(Some((FIRST, MarkId(2))));
    draw(&mut app, 10, 40_000);
    assert_eq!(answers(&app, 2), ["Draw street"]);
    let note = app.note((FIRST, MarkId(2))).unwrap();
    assert_eq!(note.answers[0].marks, [MarkId(10)]);
    let (_, moved) = remark(3, "Keep the old trees", "Table 1", 6, 22);
    put(&mut app, MarkId(3), Some(moved));
    assert_eq!(answers(&app, 2).len(), 1, "changing a remark answers none");
    app.undo();
    app.undo();
    assert_eq!(answers(&app, 2), [""; 0]);
    assert_eq!(app.study.document().mark(FIRST, MarkId(10)), None, "in one step");
    app.redo();
    assert_eq!(answers(&app, 2), ["Draw street"]);
    app.answer(None);
    draw(&mut app, 11, 80_000);
    assert_eq!(answers(&app, 2).len(), 1);
    assert_eq!(app.history_shown().marked, None, "its moment goes with it");
}

#[test]
fn earlier_steps_and_marks_are_linked_and_unlinked() {
    let mut app = app();
    draw(&mut app, 10, 40_000);
    app.answer(Some((FIRST, MarkId(4))));
    let steps = app.remarks_shown().steps;
    let steps: Vec<&str> = steps.iter().map(|(_, words)| words.as_str()).collect();
    assert_eq!(steps, ["5: Draw street", "1: Draw street"], "those of remarks are none");
    app.link_step(4);
    assert_eq!(app.remarks_shown().steps.len(), 1, "it is linked already");
    app.link_selected();
    assert!(app.notice().is_some(), "nothing is selected");
    app.selection = Some(Selection::Street(MarkId(1)));
    app.link_selected();
    assert_eq!(answers(&app, 4), ["Draw street", "Street"]);
    put(&mut app, MarkId(10), None);
    app.unlink((FIRST, MarkId(4)), 1);
    app.undo();
    let shown = app.remarks_shown();
    let found = shown.remarks.iter().find(|one| one.number == 3).unwrap();
    assert!(found.answers[0].1.is_none(), "the street is gone, and so is its place");
    assert!(found.answers[1].1.is_some());
}

#[test]
fn what_answers_a_remark_survives_saving_and_opening() {
    let mut app = app();
    app.answer(Some((FIRST, MarkId(2))));
    draw(&mut app, 10, 40_000);
    let text = plan_file::write(app.study.document()).unwrap();
    let opened = plan_file::read(text.as_bytes()).unwrap();
    assert!(opened.faults.is_empty(), "{:?}", opened.faults);
    assert_eq!(opened.document, *app.study.document());
    app.replace(opened.document).unwrap();
    assert_eq!(answers(&app, 2), ["Draw street"]);
    assert!(app.remarks_shown().answering.is_none());
}

#[test]
fn figures_that_changed_are_told_and_kept_with_the_remark() {
    let text = include_str!("../../../../sample-sketches/compact-village.geojson");
    let mut app = App::open(plan_file::read(text.as_bytes()).unwrap().document).unwrap();
    let id = app.study.next_mark_id();
    put(
        &mut app,
        id,
        Some(remark(1, "A way across to the school", "Table 2", 14, 22).1),
    );
    app.answer(Some((FIRST, id)));
    work_all(&mut app);
    assert_eq!(app.remarks_shown().changes, [""; 0]);
    // Across a block, whose lots make room.
    let line = Mark::Street(street(&[(-125_200, 90_000), (-90_200, 62_400)]));
    put(&mut app, MarkId(id.0 + 1), Some(line));
    assert_eq!(app.remarks_shown().changes, [""; 0], "not worked out yet");
    work_all(&mut app);
    let changes = app.remarks_shown().changes;
    assert!(!changes.is_empty(), "a street takes land from lots");
    app.keep_changes();
    app.answer(None);
    let text = app.remarks_text();
    assert!(changes.iter().all(|change| text.contains(change)), "{text}");
    assert!(
        text.contains(". A way across to the school\n   Table 2 · 14 of 22 dots\n   Draw street\n"),
        "{text}"
    );
}

#[test]
fn a_moment_that_somebody_marked_stays() {
    let mut app = app();
    app.mark_moment("Before lunch");
    app.answer(Some((FIRST, MarkId(2))));
    draw(&mut app, 10, 40_000);
    work_all(&mut app);
    assert_eq!(app.remarks_shown().changes, [""; 0], "those are not of the answer");
    app.answer(None);
    assert_eq!(app.history_shown().marked.as_deref(), Some("Before lunch"));
}

#[test]
fn remarks_of_other_alternatives_are_listed_and_answered_from_here() {
    let mut app = app();
    app.copy_alternative();
    let copy = app.study.alternative();
    assert_eq!(texts(&app).len(), 3, "what is copied is listed once");
    app.show_alternative(FIRST);
    put(
        &mut app,
        MarkId(30),
        Some(remark(30, "Calm the bend", "Table 3", 0, 0).1),
    );
    app.show_alternative(copy);
    assert_eq!(texts(&app).len(), 4);
    app.answer(Some((FIRST, MarkId(30))));
    let line = Mark::Street(street(&[(0, 60_000), (100_000, 60_000)]));
    let edit = Edit::mark(app.study.document(), copy, MarkId(40), Some(line));
    app.step_with("draw street", vec![edit]);
    let found = app
        .remarks_shown()
        .remarks
        .into_iter()
        .find(|one| one.key.1 == MarkId(30))
        .unwrap();
    assert!(found.answers[0].0.starts_with("Draw street ("), "{:?}", found.answers);
    assert!(found.answers[0].1.is_none(), "its marks are of another alternative");
    app.show_remark((FIRST, MarkId(30)));
    assert_eq!(
        (app.study.alternative(), app.selection),
        (FIRST, Some(Selection::Place(MarkId(30))))
    );
}

#[test]
fn deleting_the_remark_ends_its_answer() {
    let mut app = app();
    app.answer(Some((FIRST, MarkId(2))));
    app.selection = Some(Selection::Place(MarkId(2)));
    app.delete();
    assert!(app.remarks_shown().answering_words.is_none());
    assert_eq!(texts(&app).len(), 2);
}
