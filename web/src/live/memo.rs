//! A value worked out of others.

use std::any::{Any, TypeId};
use std::cell::RefCell;
use std::rc::Rc;

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
    /// Places of memos that are no longer wanted: a memo is a reference that may be copied, so its place is never given
    /// back to the heap.
    static FREE: RefCell<Vec<&'static dyn Any>> = RefCell::default();
}

/// A place of this kind that is free, from now on no longer. One routine for all kinds, as every other here that is not
/// for one `T`: the page carries a routine for each of the others.
#[inline(never)]
fn free_place(kind: TypeId) -> Option<&'static dyn Any> {
    FREE.with_borrow_mut(|free| {
        let place = free.iter().position(|place| (**place).type_id() == kind)?;
        Some(free.swap_remove(place))
    })
}

/// A place for a value, a new one where none of its kind is free.
fn place_for<T: 'static>(value: T) -> &'static Held<T> {
    let free = free_place(TypeId::of::<Held<T>>());
    match free.and_then(<dyn Any>::downcast_ref::<Held<T>>) {
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
    stands(Watcher::new(false), held);
    Live(held)
}

/// The watcher goes on as long as what makes it stands; the place is free then. Gives back the watcher's number.
#[inline(never)]
fn stands(watcher: Rc<Watcher>, held: &'static dyn Any) -> u64 {
    watcher.at_end(Box::new(move || FREE.with_borrow_mut(|free| free.push(held))));
    let number = watcher.number;
    own(watcher);
    number
}

/// Works a value out of what it reads, again after each change of it, as long as what makes it stands.
pub fn memo<T: PartialEq + 'static>(work: impl Fn() -> T + 'static) -> Memo<T> {
    fn boxed<T: PartialEq + 'static>(work: Box<dyn Fn() -> T>) -> Memo<T> {
        let watcher = Watcher::new(true);
        let held = place_for(watcher.hears(&work));
        let value = Live(held);
        watcher.does(Box::new(move || value.set_if_new(work())));
        Memo {
            value,
            number: stands(watcher, held),
        }
    }
    boxed(Box::new(work))
}
