//! Values that are listened to, and work that is done again when what it read has changed.
//!
//! [`Live`] holds a value; a [`Memo`] is worked out of others; [`watch`] does a piece of work at once and again after
//! changes. Nothing is done again within a change itself: [`catch_up`] does it once, in the order of making, so that
//! whoever reads two values never sees one of them of yesterday. All of it belongs to one thread, the page's.

mod memo;
mod watcher;

use std::cell::RefCell;

pub use memo::{Memo, live_here, memo};
use watcher::Listeners;
pub use watcher::{Watch, always, call_to_catch_up, catch_up, unheard, watch};

/// A value that lives as long as the page; whoever reads it while being watched is told when it changes.
///
/// It must not be set by what reads it.
pub struct Live<T: 'static>(&'static Held<T>);

struct Held<T> {
    listeners: Listeners,
    value: RefCell<T>,
}

impl<T> Clone for Live<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Live<T> {}

impl<T: Default> Default for Live<T> {
    fn default() -> Self {
        Self::new(T::default())
    }
}

impl<T> Live<T> {
    /// Holds this value. Its memory is never given back: for what is made once with the page or a panel of it.
    #[must_use]
    pub fn new(value: T) -> Self {
        Self(Box::leak(Box::new(Held {
            listeners: Listeners::default(),
            value: RefCell::new(value),
        })))
    }

    /// Reads the value, to be told of its changes.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        self.0.listeners.hear();
        self.with_untracked(read)
    }

    /// Reads the value once.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(&self.0.value.borrow())
    }

    /// Puts another value in its place.
    pub fn set(self, value: T) {
        drop(self.0.value.replace(value));
        self.0.listeners.tell();
    }

    /// Changes the value.
    pub fn update(self, change: impl FnOnce(&mut T)) {
        change(&mut self.0.value.borrow_mut());
        self.0.listeners.tell();
    }
}

impl<T: Clone> Live<T> {
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

impl<T: PartialEq> Live<T> {
    /// Puts another value in its place where it differs.
    pub fn set_if_new(self, value: T) {
        if self.with_untracked(|held| *held != value) {
            self.set(value);
        }
    }
}

/// What belongs to the page's one application and is not listened to.
pub struct Stored<T: 'static>(&'static RefCell<T>);

impl<T> Clone for Stored<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Stored<T> {}

impl<T> Stored<T> {
    /// Holds this value as long as the page lives.
    #[must_use]
    pub fn new(value: T) -> Self {
        Self(Box::leak(Box::new(RefCell::new(value))))
    }

    /// Reads the value.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(&self.0.borrow())
    }

    /// Changes the value.
    pub fn update<R>(self, change: impl FnOnce(&mut T) -> R) -> R {
        change(&mut self.0.borrow_mut())
    }

    /// Puts another value in its place.
    pub fn set(self, value: T) {
        drop(self.0.replace(value));
    }
}

impl<T: Clone> Stored<T> {
    /// A copy of the value.
    #[must_use]
    pub fn get(self) -> T {
        self.with(T::clone)
    }
}

#[cfg(test)]
mod tests;
