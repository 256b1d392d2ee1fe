use super::*;
use crate::plan::edit::Edit;
use crate::plan::fixtures::{document, street};
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::mark::Mark;

const ALTERNATIVE: AlternativeId = AlternativeId(0);

/// Draws `steps` streets with an undo after every third and a redo after every sixth; all entries and the end.
fn worked(steps: u32) -> (Vec<NumberedEntry>, Document, History) {
    let mut document = document();
    let mut history = History::new(&document, Limits::default());
    let mut entries = Vec::new();
    for step in 0..steps {
        let points: Vec<(i32, i32)> = (0..400).map(|x| (x * 100, step as i32)).collect();
        let id = history.next_mark_id(&document);
        let edit = Edit::mark(&document, ALTERNATIVE, id, Some(Mark::Street(street(&points))));
        history
            .apply(&mut document, format!("Draw {step}"), vec![edit])
            .unwrap();
        if step % 3 == 2 {
            history.undo(&mut document).unwrap();
        }
        if step % 6 == 5 {
            history.redo(&mut document).unwrap();
        }
        if step == 7 {
            history.name_moment("Before lunch");
        }
        entries.extend(history.take_entries());
    }
    (entries, document, history)
}

fn undo_all(recovered: &mut Recovered) -> usize {
    let mut count = 0;
    while recovered.history.undo(&mut recovered.document).unwrap().is_some() {
        count += 1;
    }
    count
}

#[test]
fn snapshots_come_by_themselves_and_recovery_from_the_last_equals_replay() {
    let (entries, end, history) = worked(40);
    let snapshots = entries
        .iter()
        .filter(|held| matches!(held.entry, Entry::Snapshot(_)))
        .count();
    assert!((3..20).contains(&snapshots), "{snapshots} snapshots");
    assert!(
        entries
            .iter()
            .zip(0..)
            .all(|(held, number)| held.number == EntryNumber(number))
    );

    let mut replayed = replay(&document(), &entries, Limits::default());
    let mut recovered = recover(&entries, Limits::default()).unwrap();
    for given in [&mut replayed, &mut recovered] {
        assert_eq!(given.losses, []);
        assert_eq!(given.document, end);
        assert_eq!(given.history.undo_count(), history.undo_count());
        assert_eq!(given.history.next_mark_id(&end), history.next_mark_id(&end));
        assert_eq!(undo_all(given), history.undo_count());
        assert_eq!(given.document, document());
    }
}

#[test]
fn a_break_gives_everything_before_it_and_says_what_was_lost() {
    let (entries, _, _) = worked(30);
    for missing in 1..entries.len() {
        let mut broken = entries.clone();
        broken.remove(missing);
        let replayed = replay(&document(), &broken, Limits::default());
        let whole = replay(&document(), &entries[..missing], Limits::default());
        assert_eq!(replayed.document, whole.document, "without entry {missing}");
        assert_eq!(replayed.losses.is_empty(), missing == entries.len() - 1);

        // Recovery begins at the last snapshot, so a break before it loses nothing of the plan.
        let last_snapshot = entries
            .iter()
            .rposition(|held| matches!(held.entry, Entry::Snapshot(_)))
            .unwrap();
        let recovered = recover(&broken, Limits::default()).unwrap();
        if missing < last_snapshot {
            assert_eq!(
                recovered.document,
                recover(&entries, Limits::default()).unwrap().document
            );
        } else {
            assert_eq!(recovered.document, whole.document, "without entry {missing}");
        }
        let is_lost_step = missing < last_snapshot && matches!(entries[missing].entry, Entry::Commit(_));
        if let [Loss::Steps { count }] = recovered.losses.as_slice() {
            assert!(is_lost_step && *count == 1);
        }
    }
}

#[test]
fn sentences_name_the_place() {
    let (entries, _, _) = worked(4);
    let mut broken = entries.clone();
    broken.remove(2);
    let replayed = replay(&document(), &broken, Limits::default());
    let sentences: Vec<String> = replayed.losses.iter().map(ToString::to_string).collect();
    assert_eq!(
        sentences,
        [
            "the plan is as it was at entry 1 of its journal; what came later is lost (entry 2 is missing or damaged; 3 \
          later entries could not be used)"
        ]
    );
    let stray = [NumberedEntry {
        number: EntryNumber(0),
        entry: Entry::Undo,
    }];
    let replayed = replay(&document(), &stray, Limits::default());
    assert_eq!(
        replayed.losses,
        [Loss::Entries {
            after: None,
            count: 1,
            reason: Break::NoStep(EntryNumber(0))
        }]
    );
    assert!(recover(&stray, Limits::default()).is_none());
}

#[test]
fn an_entry_for_another_plan_is_a_break() {
    let (entries, _, _) = worked(3);
    let mut other = document();
    other
        .alternatives
        .get_mut(&ALTERNATIVE)
        .unwrap()
        .marks
        .insert(MarkId(0), Mark::Street(street(&[(1, 1), (2, 2)])));
    let replayed = replay(&other, &entries, Limits::default());
    assert_eq!(replayed.document, other);
    assert!(matches!(
        replayed.losses.as_slice(),
        [Loss::Entries {
            reason: Break::Unfitting(EntryNumber(1), _),
            ..
        }]
    ));
}

#[test]
fn work_goes_on_after_recovery_in_a_clean_stretch_of_journal() {
    let (mut entries, _, _) = worked(10);
    entries.remove(entries.len() - 2);
    let mut recovered = recover(&entries, Limits::default()).unwrap();
    let mut document = recovered.document.clone();
    let id = recovered.history.next_mark_id(&document);
    let edit = Edit::mark(
        &document,
        ALTERNATIVE,
        id,
        Some(Mark::Street(street(&[(0, 0), (9, 9)]))),
    );
    recovered.history.apply(&mut document, "Go on", vec![edit]).unwrap();
    entries.extend(recovered.history.take_entries());
    let mut again = recover(&entries, Limits::default()).unwrap();
    assert_eq!(again.losses, []);
    assert_eq!(again.document, document);
    again.history.undo(&mut again.document).unwrap();
    assert_eq!(again.document, recovered.document);
}

#[test]
fn replay_keeps_within_its_limits() {
    let (entries, end, _) = worked(40);
    let limits = Limits {
        steps: 3,
        bytes: u64::MAX,
    };
    let replayed = replay(&document(), &entries, limits);
    assert_eq!((replayed.document, replayed.losses.len()), (end, 0));
    assert!(replayed.history.held().0 <= 3);
}

#[test]
fn a_journal_written_anew_stands_by_itself_and_keeps_previews_out() {
    let (_, end, mut history) = worked(21);
    let mut document = end.clone();
    let (undo_count, redo_count) = (history.undo_count(), history.redo_count());
    assert!(undo_count > 2 && redo_count > 0);
    history.begin("Draw").unwrap();
    let id = history.next_mark_id(&document);
    let edit = Edit::mark(
        &document,
        ALTERNATIVE,
        id,
        Some(Mark::Street(street(&[(0, 0), (9, 9)]))),
    );
    history.change(&mut document, vec![edit]).unwrap();
    assert_ne!(document, end);

    history.write_anew(&document);
    let mut entries = history.take_entries();
    assert!(entries.windows(2).all(|pair| pair[0].number < pair[1].number));
    history.commit(&document).unwrap();
    entries.extend(history.take_entries());
    let mut recovered = recover(&entries, Limits::default()).unwrap();
    assert_eq!(recovered.losses, []);
    assert_eq!(recovered.document, document);
    assert_eq!(recovered.history.redo_count(), 0);
    assert_eq!(undo_all(&mut recovered), undo_count + 1);
    assert_eq!(recovered.document, self::document());
}
