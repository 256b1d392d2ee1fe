//! Work that is done again when what it read has changed.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

/// A piece of work, and what it has read.
pub(super) struct Watcher {
    /// By the order of making: what is worked out of a value is made after it.
    pub(super) number: u64,
    is_memo: bool,
    is_due: Cell<bool>,
    is_over: Cell<bool>,
    work: RefCell<Option<Box<dyn FnMut()>>>,
    heard: RefCell<Vec<&'static Listeners>>,
    owned: RefCell<Vec<Watch>>,
    at_end: Cell<Option<Box<dyn FnOnce()>>>,
}

/// Work goes on until this is dropped.
#[must_use = "the work ends with this"]
pub struct Watch(Rc<Watcher>);

/// Who is told of a change.
#[derive(Default)]
pub(super) struct Listeners(RefCell<Vec<Rc<Watcher>>>);

#[derive(Default)]
struct Watchers {
    made: u64,
    /// Whose work is being done.
    current: Option<Rc<Watcher>>,
    due: Vec<Rc<Watcher>>,
    call: Option<fn()>,
    is_called: bool,
}

thread_local! {
    static WATCHERS: RefCell<Watchers> = RefCell::default();
}

fn watchers<R>(work: impl FnOnce(&mut Watchers) -> R) -> R {
    WATCHERS.with_borrow_mut(work)
}

impl Listeners {
    /// Whoever is at work is told from now on.
    pub(super) fn hear(&'static self) {
        let Some(current) = watchers(|all| all.current.clone()) else {
            return;
        };
        let mut held = self.0.borrow_mut();
        if !held.iter().any(|watcher| Rc::ptr_eq(watcher, &current)) {
            current.heard.borrow_mut().push(self);
            held.push(current);
        }
    }

    /// All of them are due.
    pub(super) fn tell(&self) {
        for watcher in self.0.borrow().iter() {
            if !watcher.is_due.replace(true) {
                watchers(|all| all.due.push(Rc::clone(watcher)));
            }
        }
        let call = watchers(|all| {
            let is_first = !all.due.is_empty() && !std::mem::replace(&mut all.is_called, true);
            all.call.filter(|_| is_first)
        });
        if let Some(call) = call {
            call();
        }
    }

    fn forget(&self, watcher: &Rc<Watcher>) {
        self.0.borrow_mut().retain(|held| !Rc::ptr_eq(held, watcher));
    }
}

impl Watcher {
    pub(super) fn new(is_memo: bool) -> Rc<Self> {
        Rc::new(Self {
            number: watchers(|all| {
                all.made += 1;
                all.made
            }),
            is_memo,
            is_due: Cell::new(false),
            is_over: Cell::new(false),
            work: RefCell::default(),
            heard: RefCell::default(),
            owned: RefCell::default(),
            at_end: Cell::default(),
        })
    }

    /// What is done again from now on.
    pub(super) fn does(&self, work: Box<dyn FnMut()>) {
        *self.work.borrow_mut() = Some(work);
    }

    /// What is done when the watcher is no longer wanted.
    pub(super) fn at_end(&self, work: Box<dyn FnOnce()>) {
        self.at_end.set(Some(work));
    }

    /// Does work whose readings are heard by this watcher.
    pub(super) fn hears<R>(self: &Rc<Self>, work: impl FnOnce() -> R) -> R {
        let before = self.begins();
        let done = work();
        go_back_to(before);
        done
    }

    /// What is read from now on is heard by this watcher; gives back who was at work before.
    #[inline(never)]
    fn begins(self: &Rc<Self>) -> Option<Rc<Self>> {
        watchers(|all| all.current.replace(Rc::clone(self)))
    }

    fn forget_all(self: &Rc<Self>) {
        for listeners in self.heard.take() {
            listeners.forget(self);
        }
        drop(self.owned.take());
    }

    fn run(self: &Rc<Self>) {
        self.is_due.set(false);
        self.forget_all();
        // While its work is being done it may come to its end, which takes the work away.
        let Some(mut work) = self.work.take() else { return };
        self.hears(&mut work);
        if self.is_over.get() {
            self.forget_all();
        } else {
            self.does(work);
        }
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.0.is_over.set(true);
        self.0.forget_all();
        drop(self.0.work.take());
        if let Some(work) = self.0.at_end.take() {
            work();
        }
        if self.0.is_due.get() {
            watchers(|all| all.due.retain(|due| !Rc::ptr_eq(due, &self.0)));
        }
    }
}

/// Keeps the watcher as long as whatever is being done now stands, or as long as the page.
pub(super) fn own(watcher: Rc<Watcher>) {
    let watch = Watch(watcher);
    match watchers(|all| all.current.clone()) {
        Some(current) => current.owned.borrow_mut().push(watch),
        // Of nobody: it goes on as long as the page.
        None => std::mem::forget(watch),
    }
}

/// Does the work now, and again after what it read has changed, until the answer is dropped.
pub fn watch(work: impl FnMut() + 'static) -> Watch {
    Watch(started(Box::new(work)))
}

/// Does the work now and after changes, as long as what makes it stands.
pub fn always(work: impl FnMut() + 'static) {
    own(started(Box::new(work)));
}

fn started(work: Box<dyn FnMut()>) -> Rc<Watcher> {
    let watcher = Watcher::new(false);
    watcher.does(work);
    watcher.run();
    watcher
}

/// Reads without being told of changes, whoever is at work.
pub fn unheard<R>(work: impl FnOnce() -> R) -> R {
    let before = nobody_begins();
    let done = work();
    go_back_to(before);
    done
}

/// Nobody hears what is read from now on; gives back who was at work before.
#[inline(never)]
fn nobody_begins() -> Option<Rc<Watcher>> {
    watchers(|all| all.current.take())
}

/// Whoever was at work before is at work again.
fn go_back_to(before: Option<Rc<Watcher>>) {
    // The one that was at work may end here, with all it owns; so this must happen outside.
    let ended = watchers(|all| std::mem::replace(&mut all.current, before));
    drop(ended);
}

/// What is called when the first piece of work becomes due; it has to see that [`catch_up`] follows.
pub fn call_to_catch_up(call: fn()) {
    watchers(|all| all.call = Some(call));
}

/// Does everything that is due, in the order of making.
pub fn catch_up() {
    watchers(|all| all.is_called = true);
    while let Some(next) = take_due(|_| true) {
        next.run();
    }
    watchers(|all| all.is_called = false);
}

/// Brings what a memo rests on up to date, and the memo itself.
pub(super) fn catch_up_to(number: u64) {
    while let Some(next) = take_due(|watcher| watcher.is_memo && watcher.number <= number) {
        next.run();
    }
}

fn take_due(is_meant: impl Fn(&Watcher) -> bool) -> Option<Rc<Watcher>> {
    watchers(|all| {
        let meant = all.due.iter().enumerate().filter(|(_, watcher)| is_meant(watcher));
        let (place, _) = meant.min_by_key(|(_, watcher)| watcher.number)?;
        Some(all.due.swap_remove(place))
    })
}
