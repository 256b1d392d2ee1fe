//! A value worked out of others.

use std::any::{Any, TypeId};
use std::cell::RefCell;

use super::watcher::{Watcher, catch_up_to, own};
use super::{Held, Listeners, Live};

/// A value worked out of others, told on only where it changed. Reading it never gives what it was before a change.
pub struct Memo<T: 'static> {
    pub(super) value: Live<T>,
    number: u64,
}

impl<T> Clone for Memo<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Memo<T> {}

impl<T> Memo<T> {
    /// Reads the value, to be told of its changes.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        catch_up_to(self.number);
        self.value.with(read)
    }

    /// Reads the value once.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        catch_up_to(self.number);
        self.value.with_untracked(read)
    }
}

impl<T: Clone> Memo<T> {
    /// A copy of the value, to be told of its changes.
    #[must_use]
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// A copy of the value.
    #[must_use]
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }
}

thread_local! {
    /// Places of memos that are no longer wanted, by what they hold: a memo is a reference that may be copied, so its
    /// place is never given back to the heap.
    static FREE: RefCell<Vec<(TypeId, &'static dyn Any)>> = RefCell::default();
}

/// A place for a value, a new one where none of its kind is free.
fn place_for<T: 'static>(value: T) -> &'static Held<T> {
    let free = FREE.with_borrow_mut(|free| {
        let place = free.iter().position(|(kind, _)| *kind == TypeId::of::<T>())?;
        free.swap_remove(place).1.downcast_ref::<Held<T>>()
    });
    match free {
        Some(held) => {
            drop(held.value.replace(value));
            held
        }
        None => Box::leak(Box::new(Held {
            listeners: Listeners::default(),
            value: RefCell::new(value),
        })),
    }
}

/// A value that is listened to as long as what makes it stands, such as a part of the page that is shown for a while.
#[must_use]
pub fn live_here<T: 'static>(value: T) -> Live<T> {
    let held = place_for(value);
    let watcher = Watcher::new(false);
    give_back_at_end(&watcher, held);
    own(watcher);
    Live(held)
}

fn give_back_at_end<T: 'static>(watcher: &Watcher, held: &'static Held<T>) {
    watcher.at_end(Box::new(move || {
        FREE.with_borrow_mut(|free| free.push((TypeId::of::<T>(), held)));
    }));
}

/// Works a value out of what it reads, again after each change of it, as long as what makes it stands.
pub fn memo<T: PartialEq + 'static>(work: impl Fn() -> T + 'static) -> Memo<T> {
    fn boxed<T: PartialEq + 'static>(work: Box<dyn Fn() -> T>) -> Memo<T> {
        let watcher = Watcher::new(true);
        let held = place_for(watcher.hears(&work));
        let value = Live(held);
        watcher.does(Box::new(move || value.set_if_new(work())));
        give_back_at_end(&watcher, held);
        let number = watcher.number;
        own(watcher);
        Memo { value, number }
    }
    boxed(Box::new(work))
}
