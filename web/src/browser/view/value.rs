//! Values of attributes and properties.

use std::borrow::Cow;

use crate::live::{Live, Memo};

/// Words that are the same for ever, or made for the occasion.
pub type Words = Cow<'static, str>;

/// What an attribute or property is.
pub enum Value {
    /// None at all.
    None,
    /// Words.
    Words(Words),
    /// Yes or no.
    Flag(bool),
    /// What this answers, again whenever what it reads changes.
    Live(Box<dyn Fn() -> Value>),
}

impl From<&'static str> for Value {
    fn from(words: &'static str) -> Self {
        Self::Words(Words::Borrowed(words))
    }
}

impl From<String> for Value {
    fn from(words: String) -> Self {
        Self::Words(Words::Owned(words))
    }
}

impl From<bool> for Value {
    fn from(is_so: bool) -> Self {
        Self::Flag(is_so)
    }
}

impl From<f64> for Value {
    fn from(number: f64) -> Self {
        number.to_string().into()
    }
}

impl From<i32> for Value {
    fn from(number: i32) -> Self {
        number.to_string().into()
    }
}

impl From<usize> for Value {
    fn from(number: usize) -> Self {
        number.to_string().into()
    }
}

impl<T: Into<Value>> From<Option<T>> for Value {
    fn from(held: Option<T>) -> Self {
        held.map_or(Self::None, Into::into)
    }
}

impl<F: Fn() -> T + 'static, T: Into<Value>> From<F> for Value {
    fn from(work: F) -> Self {
        Self::Live(Box::new(move || work().into()))
    }
}

impl<T: Clone + Into<Value> + 'static> From<Memo<T>> for Value {
    fn from(value: Memo<T>) -> Self {
        Self::Live(Box::new(move || value.get().into()))
    }
}

impl<T: Clone + Into<Value> + 'static> From<Live<T>> for Value {
    fn from(value: Live<T>) -> Self {
        Self::Live(Box::new(move || value.get().into()))
    }
}
