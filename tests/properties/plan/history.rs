//! Undo restores equality, journals give everything back, and ties stay true, over random gestures.

use hobnail_core::exchange::journal_file;
use hobnail_core::plan::history::{History, HistoryFault, Limits};
use hobnail_core::plan::journal::{NumberedEntry, replay};
use hobnail_core::plan::validate::{FaultKind, validate};
use hobnail_core::plan::{Document, MarkId};

use crate::cases;
use crate::generate;
use crate::random::Random;

/// A session of random gestures: every state a step can lead to, and the journal.
struct Session {
    start: Document,
    document: Document,
    history: History,
    /// The document before the first done step, after it, and so on up to the present.
    states: Vec<Document>,
    entries: Vec<NumberedEntry>,
}

/// Works for so many gestures. Along the way: cancel gives the start back, undo and redo give each state back.
fn session(seed: u64, gestures: u64, limits: Limits) -> Session {
    let mut random = Random(seed);
    let start = generate::document(&mut random, 12);
    let mut held = Session {
        document: start.clone(),
        history: History::new(&start, limits),
        states: vec![start.clone()],
        entries: Vec::new(),
        start,
    };
    let mut undone: Vec<Document> = Vec::new();
    for _ in 0..gestures {
        match random.below(6) {
            0 => step_back(seed, &mut held, &mut undone),
            1 => step_forward(seed, &mut held, &mut undone),
            2 => drop(held.history.name_moment(random.text())),
            _ => {
                let before = held.document.clone();
                held.history.begin(random.text()).unwrap();
                for _ in 0..random.below(4) {
                    let edits = generate::edits::gesture(&mut random, &before);
                    let previewed = held.document.clone();
                    match held.history.change(&mut held.document, edits) {
                        Ok(_) => {}
                        Err(HistoryFault::Tie(_) | HistoryFault::LastAlternative) => {
                            assert_eq!(held.document, previewed, "seed {seed}: a refused change left something");
                        }
                        Err(fault) => panic!("seed {seed}: {fault}"),
                    }
                }
                if random.one_in(4) {
                    let further = generate::edits::gesture(&mut random, &held.document);
                    let _ = held.history.extend(&mut held.document, further);
                }
                assert_eq!(
                    held.history.start_of_gesture(&held.document).unwrap(),
                    before,
                    "seed {seed}"
                );
                if random.one_in(5) {
                    held.history.cancel(&mut held.document).unwrap();
                    assert_eq!(held.document, before, "seed {seed}: cancel left something");
                    continue;
                }
                let committed = held.history.commit(&held.document).unwrap();
                assert_eq!(
                    committed.is_some(),
                    held.document != before,
                    "seed {seed}: a step for nothing"
                );
                if committed.is_some() {
                    held.states.push(held.document.clone());
                    undone.clear();
                }
                check_ties(seed, &held.document);
            }
        }
        held.entries.extend(held.history.take_entries());
    }
    held
}

fn step_back(seed: u64, held: &mut Session, undone: &mut Vec<Document>) {
    recalling(held, History::undo);
    if held.states.len() > 1 {
        undone.extend(held.states.pop());
    }
    assert_eq!(Some(&held.document), held.states.last(), "seed {seed}: undo");
}

fn step_forward(seed: u64, held: &mut Session, undone: &mut Vec<Document>) {
    recalling(held, History::redo);
    held.states.extend(undone.pop());
    assert_eq!(Some(&held.document), held.states.last(), "seed {seed}: redo");
}

/// Undoes or redoes, handing back from the journal what has left memory; whether there was a step.
fn recalling<T>(
    held: &mut Session,
    step: impl Fn(&mut History, &mut Document) -> Result<Option<T>, HistoryFault>,
) -> bool {
    loop {
        match step(&mut held.history, &mut held.document) {
            Ok(done) => return done.is_some(),
            Err(HistoryFault::NotInMemory(number)) => {
                held.entries.extend(held.history.take_entries());
                let entry = held.entries.iter().find(|entry| entry.number == number).unwrap();
                held.history.recall(entry).unwrap();
            }
            Err(fault) => panic!("{fault}"),
        }
    }
}

/// Every tied vertex stands on its foot, and no street is tied in a circle.
fn check_ties(seed: u64, document: &Document) {
    let faults = validate(document);
    let of_ties = faults.iter().find(|fault| {
        matches!(
            fault.kind,
            FaultKind::OffItsTie(_)
                | FaultKind::TiedToNothing(_)
                | FaultKind::TiedBeyondStreet(_)
                | FaultKind::TiedInCircle(_)
        )
    });
    assert_eq!(of_ties, None, "seed {seed}");
}

#[test]
fn undo_and_redo_restore_equality() {
    for seed in 0..cases(150) {
        let mut held = session(seed, 25, Limits::default());
        let end = held.document.clone();
        while held.history.undo(&mut held.document).unwrap().is_some() {}
        assert_eq!(held.document, held.start, "seed {seed}");
        while held.history.redo(&mut held.document).unwrap().is_some() {}
        // Steps undone in the session are done again too, so only a session that ended at its last step ends equal.
        if held.history.undo_count() + 1 == held.states.len() {
            assert_eq!(held.document, end, "seed {seed}");
        }
    }
}

#[test]
fn memory_limits_change_nothing_but_memory() {
    let tight = Limits { steps: 2, bytes: 4000 };
    for seed in 0..cases(60) {
        let (mut held, wide) = (session(seed, 25, tight), session(seed, 25, Limits::default()));
        assert_eq!(held.document, wide.document, "seed {seed}");
        while recalling(&mut held, History::undo) {}
        assert_eq!(held.document, held.start, "seed {seed}");
    }
}

#[test]
fn a_journal_gives_the_document_and_its_steps_back() {
    for seed in 0..cases(80) {
        let mut held = session(seed, 25, Limits::default());
        let text: String = held.entries.iter().map(journal_file::write_line).collect();
        let opened = journal_file::read(text.as_bytes(), Limits::default());
        assert_eq!(opened.losses(), Vec::<String>::new(), "seed {seed}");
        let mut recovered = opened.recovered.unwrap();
        let mut replayed = replay(&held.start, &held.entries, Limits::default());
        assert_eq!(replayed.losses, [], "seed {seed}");
        assert_eq!(recovered.document, held.document, "seed {seed}");
        assert_eq!(replayed.document, held.document, "seed {seed}");
        loop {
            let went_back = held.history.undo(&mut held.document).unwrap();
            assert_eq!(
                recovered.history.undo(&mut recovered.document).unwrap(),
                went_back,
                "seed {seed}"
            );
            assert_eq!(
                replayed.history.undo(&mut replayed.document).unwrap(),
                went_back,
                "seed {seed}"
            );
            assert_eq!(recovered.document, held.document, "seed {seed}");
            assert_eq!(replayed.document, held.document, "seed {seed}");
            if went_back.is_none() {
                break;
            }
        }
    }
}

#[test]
fn a_cut_or_altered_journal_gives_an_earlier_state_and_says_so() {
    for seed in 0..cases(40) {
        let held = session(seed, 15, Limits::default());
        let text: String = held.entries.iter().map(journal_file::write_line).collect();
        let mut random = Random(seed ^ 0x0bad_5eed);
        for _ in 0..8 {
            let place = random.below(text.len() as u64) as usize;
            let mut bytes = text.as_bytes().to_vec();
            let is_cut = random.one_in(2);
            if is_cut {
                bytes.truncate(place);
            } else {
                bytes[place] ^= 1 << random.below(7);
            }
            let opened = journal_file::read(&bytes, Limits::default());
            let whole_lines = text.as_bytes()[..place].iter().filter(|byte| **byte == b'\n').count();
            let losses = opened.losses();
            let ends_at_line =
                is_cut && (place == 0 || text.as_bytes()[place - 1] == b'\n' || text.as_bytes()[place] == b'\n');
            assert!(
                ends_at_line || !losses.is_empty(),
                "seed {seed}, byte {place}: no loss told"
            );
            let Some(recovered) = opened.recovered else {
                assert!(whole_lines == 0, "seed {seed}, byte {place}: nothing recovered");
                continue;
            };
            // What is recovered is a state the session was in: that after the intact entries, or the present one.
            let intact = replay(&held.start, &held.entries[..whole_lines.max(1)], Limits::default());
            let next = replay(
                &held.start,
                &held.entries[..(whole_lines + 1).min(held.entries.len())],
                Limits::default(),
            );
            assert!(
                [&intact.document, &next.document, &held.document].contains(&&recovered.document),
                "seed {seed}, byte {place}: recovered something that never was"
            );
        }
    }
}

#[test]
fn mark_ids_are_never_given_twice() {
    for seed in 0..cases(40) {
        let held = session(seed, 20, Limits::default());
        let next = held.history.next_mark_id(&held.document);
        let largest = held
            .states
            .iter()
            .map(Document::next_mark_id)
            .max()
            .unwrap_or(MarkId(0));
        assert!(next >= largest, "seed {seed}: {next} was used before {largest}");
    }
}
