use std::cell::RefCell;
use std::rc::Rc;

use super::*;

/// What a piece of work wrote down, one word for each time it was done.
#[derive(Clone, Default)]
struct Diary(Rc<RefCell<Vec<String>>>);

impl Diary {
    fn write(&self, word: impl ToString) {
        self.0.borrow_mut().push(word.to_string());
    }

    fn read(&self) -> Vec<String> {
        self.0.take()
    }
}

#[test]
fn a_value_is_read_changed_and_compared() {
    let live = Live::new(vec![1]);
    live.update(|held| held.push(2));
    assert_eq!(live.get_untracked(), [1, 2]);
    live.set_if_new(vec![3]);
    assert_eq!(live.with_untracked(Vec::len), 1);
    live.set(Vec::new());
    assert!(live.get_untracked().is_empty());
}

#[test]
fn work_is_done_at_once_and_once_after_any_number_of_changes() {
    let (first, second, diary) = (Live::new(1), Live::new(10), Diary::default());
    let written = diary.clone();
    let watch = watch(move || written.write(first.get() + second.get()));
    first.set(2);
    second.set(20);
    assert_eq!(diary.read(), ["11"], "nothing is done within a change");
    catch_up();
    assert_eq!(diary.read(), ["22"]);
    catch_up();
    assert!(diary.read().is_empty());
    first.set(3);
    drop(watch);
    catch_up();
    assert!(diary.read().is_empty(), "it has ended");
}

#[test]
fn only_what_was_read_last_is_listened_to() {
    let (which, left, right, diary) = (Live::new(true), Live::new(1), Live::new(2), Diary::default());
    let written = diary.clone();
    let _watch = watch(move || written.write(if which.get() { left.get() } else { right.get() }));
    right.set(3);
    catch_up();
    assert_eq!(diary.read(), ["1"]);
    which.set(false);
    catch_up();
    left.set(4);
    catch_up();
    assert_eq!(diary.read(), ["3"]);
}

#[test]
fn a_memo_is_never_of_yesterday_and_tells_only_changes() {
    let (number, diary) = (Live::new(1), Diary::default());
    let half = memo(move || number.get() / 2);
    let words = memo(move || format!("half {}", half.get()));
    let written = diary.clone();
    let _watch = watch(move || written.write(words.get()));
    assert_eq!(diary.read(), ["half 0"]);
    number.set(4);
    assert_eq!(words.get_untracked(), "half 2", "read before anybody caught up");
    catch_up();
    assert_eq!(diary.read(), ["half 2"]);
    number.set(5);
    catch_up();
    assert!(diary.read().is_empty(), "half of five is two as well");
}

#[test]
fn what_is_made_by_a_piece_of_work_ends_when_it_is_done_again() {
    let (outer, inner, diary) = (Live::new(1), Live::new(1), Diary::default());
    let written = diary.clone();
    let _watch = watch(move || {
        let of = outer.get();
        let written = written.clone();
        always(move || written.write(format!("{of} {}", inner.get())));
    });
    assert_eq!(diary.read(), ["1 1"]);
    outer.set(2);
    catch_up();
    assert_eq!(diary.read(), ["2 1"]);
    inner.set(2);
    catch_up();
    assert_eq!(diary.read(), ["2 2"], "the first has ended");
}

#[test]
fn places_of_memos_are_used_again() {
    let (outer, places) = (Live::new(0_i64), Rc::new(RefCell::new(Vec::new())));
    let kept = Rc::clone(&places);
    let _watch = watch(move || {
        let of = outer.get();
        let double = memo(move || of * 2);
        assert_eq!(double.get_untracked(), of * 2);
        kept.borrow_mut().push(std::ptr::from_ref(double.value.0).addr());
    });
    for of in 1..50 {
        outer.set(of);
        catch_up();
    }
    let mut places = places.take();
    assert_eq!(places.len(), 50);
    places.dedup();
    assert_eq!(places.len(), 1);
}

#[test]
fn a_change_within_the_work_is_caught_up_with_in_the_same_go() {
    let (first, second, diary) = (Live::new(1), Live::new(0), Diary::default());
    let written = diary.clone();
    let _early = watch(move || written.write(format!("second {}", second.get())));
    let _late = watch(move || second.set_if_new(first.get() * 2));
    catch_up();
    first.set(2);
    catch_up();
    assert_eq!(diary.read(), ["second 0", "second 2", "second 4"]);
}

#[test]
fn readings_set_aside_are_not_listened_to() {
    let (number, diary) = (Live::new(1), Diary::default());
    let written = diary.clone();
    let _watch = watch(move || written.write(unheard(move || number.get())));
    number.set(2);
    catch_up();
    assert_eq!(diary.read(), ["1"]);
}

#[test]
fn work_may_end_itself() {
    let (number, diary) = (Live::new(0), Diary::default());
    let held: Rc<RefCell<Option<Watch>>> = Rc::default();
    let (written, own) = (diary.clone(), Rc::clone(&held));
    let made = watch(move || {
        written.write(number.get());
        if number.get_untracked() == 1 {
            drop(own.take());
        }
    });
    *held.borrow_mut() = Some(made);
    number.set(1);
    catch_up();
    number.set(2);
    catch_up();
    assert_eq!(diary.read(), ["0", "1"]);
}
