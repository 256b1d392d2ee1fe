use super::*;
use crate::plan::edit::Edit;
use crate::plan::fixtures::{document, street};
use crate::plan::history::History;
use crate::plan::ids::AlternativeId;
use crate::plan::mark::Mark;

/// A journal of a few gestures, and the document they lead to.
fn journal() -> (String, crate::plan::Document) {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    for step in 0..4 {
        let id = history.next_mark_id(&document);
        let edit = Edit::mark(
            &document,
            AlternativeId(0),
            id,
            Some(Mark::Street(street(&[(0, 0), (9, step)]))),
        );
        history
            .apply(&mut document, format!("Draw \"{step}\"\n"), vec![edit])
            .unwrap();
    }
    history.undo(&mut document).unwrap();
    history.name_moment("Noon");
    (history.take_entries().iter().map(write_line).collect(), document)
}

#[test]
fn entries_come_back_as_they_were_written() {
    let (text, end) = journal();
    assert_eq!(text.lines().count(), 7);
    let (entries, damage) = read_lines(text.as_bytes());
    assert_eq!(damage, []);
    assert_eq!(entries.iter().map(write_line).collect::<String>(), text);
    let opened = read(text.as_bytes(), Limits::default());
    assert_eq!(opened.losses(), Vec::<String>::new());
    assert_eq!(opened.recovered.unwrap().document, end);
}

#[test]
fn the_documented_line_is_what_is_written() {
    let line = write_line(&NumberedEntry {
        number: EntryNumber(12),
        entry: Entry::Undo,
    });
    assert_eq!(
        line,
        format!(
            "1 12 {:016x} {{\"entry\":\"undo\"}}\n",
            checksum(b"12 {\"entry\":\"undo\"}")
        )
    );
    // Published value of the hash for "foobar".
    assert_eq!(checksum(b"foobar"), 0x8594_4171_f739_67e8);
}

#[test]
fn damage_is_told_line_by_line_and_never_taken_for_something_else() {
    let (text, _) = journal();
    let third = text.lines().nth(2).unwrap();
    let damage = |line: &str| read_line(line.as_bytes()).unwrap_err();
    assert_eq!(damage(&third[..9]), Damage::NotALine);
    assert_eq!(damage(&third[..third.len() - 1]), Damage::Altered);
    assert_eq!(damage(&third.replacen("1 2 ", "1 3 ", 1)), Damage::Altered);
    assert_eq!(damage(&third.replacen("Draw", "Drew", 1)), Damage::Altered);
    assert_eq!(damage(&third.replacen("1 2 ", "2 2 ", 1)), Damage::OtherVersion);
    let json = "{\"entry\":\"undo\",\"color\":1}";
    let odd = format!("1 5 {:016x} {json}", checksum(format!("5 {json}").as_bytes()));
    assert_eq!(damage(&odd), Damage::Unreadable);

    let broken = text.replacen("Draw \\\"1\\\"", "Drew \\\"1\\\"", 1);
    let opened = read(broken.as_bytes(), Limits::default());
    assert_eq!(
        opened.losses(),
        [
            "line 3 of the journal could not be used: it was altered",
            "the plan is as it was at entry 1 of its journal; what came later is lost (entry 2 is missing or damaged; 4 \
             later entries could not be used)"
        ]
    );
}

#[test]
fn a_journal_without_snapshot_says_so() {
    let opened = read(b"1 0 00 {}\n\n", Limits::default());
    assert!(opened.recovered.is_none());
    assert_eq!(opened.losses().len(), 2);
}
