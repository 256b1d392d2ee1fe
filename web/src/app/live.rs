//! Values of the page that panels listen to.
//!
//! What a signal of the library does for each kind of value it does here once for all of them: the page is loaded over
//! a network, and a signal of its own for every panel's data weighs several kilobytes each.

use std::sync::{Mutex, MutexGuard, PoisonError};

use leptos::prelude::{ArcTrigger, Memo, Notify, Track};

/// A value that lives as long as the page; whoever reads it in a panel is told when it changes.
///
/// It must not be set by what reads it.
pub struct Live<T: 'static>(&'static Held<T>);

struct Held<T> {
    changed: ArcTrigger,
    value: Mutex<T>,
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
            changed: ArcTrigger::new(),
            value: Mutex::new(value),
        })))
    }

    fn held(&self) -> MutexGuard<'static, T> {
        self.0.value.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Reads the value, to be told of its changes.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        self.0.changed.track();
        self.with_untracked(read)
    }

    /// Reads the value once.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(&self.held())
    }

    /// Puts another value in its place.
    pub fn set(self, value: T) {
        *self.held() = value;
        self.0.changed.notify();
    }

    /// Changes the value.
    pub fn update(self, change: impl FnOnce(&mut T)) {
        change(&mut self.held());
        self.0.changed.notify();
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

/// A value worked out of others, told on only where it changed: one routine for all that work out the same kind.
pub fn memo<T: PartialEq + Send + Sync + 'static>(work: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    fn boxed<T: PartialEq + Send + Sync + 'static>(work: Box<dyn Fn() -> T + Send + Sync>) -> Memo<T> {
        Memo::new(move |_| work())
    }
    boxed(Box::new(work))
}

#[cfg(test)]
mod tests {
    use super::*;

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
}
