//! Everything a person reads, in the language of the window: [`say!`](crate::say) by the message's name.
//!
//! The messages themselves stand in `core/messages/LANGUAGE/`, in the syntax of Project Fluent, the page's among them, so
//! that a translator finds all words in one place. English is the language they are written in; every other language
//! says every message with the same arguments, which a test of the repository checks.
//!
//! Who puts a message into words differs. The command line and the tests carry the files and the library `fluent-bundle`
//! (the feature `own_messages`); the page, which must stay small, is told by the script that loaded it how to ask for
//! words ([`speak_through`]).
//!
//! A thread speaks one language at a time. Words made before the language changes stay as they are, so a language is
//! chosen before a plan is opened.

mod argument;

#[cfg(feature = "own_messages")]
mod own;

use std::cell::{Cell, RefCell};

pub use argument::{Argument, ToArgument};

use crate::order::OrderedMap;

/// A language in which every message can be said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English of the United States.
    #[default]
    English,
    /// Spanish as it is spoken in the United States: decimals behind a point, thousands parted by commas.
    Spanish,
}

impl Language {
    /// Every language, in the order in which a person chooses.
    pub const ALL: [Self; 2] = [Self::English, Self::Spanish];

    /// Its code by BCP 47, also the name of its folder of messages.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
        }
    }

    /// Its name in itself.
    #[must_use]
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::Spanish => "Español",
        }
    }

    /// The language of a code, whatever stands behind the first hyphen; `None` for one that nobody translated to.
    #[must_use]
    pub fn of_code(code: &str) -> Option<Self> {
        let (first, _) = code.split_once('-').unwrap_or((code, ""));
        Self::ALL.into_iter().find(|language| language.code() == first)
    }
}

/// Puts a message into words; `None` when there is no such message or it needs another argument.
pub type Speaker = fn(Language, &str, &[(&str, Argument<'_>)]) -> Option<String>;

thread_local! {
    static LANGUAGE: Cell<Language> = const { Cell::new(Language::English) };
    static SPEAKER: Cell<Speaker> = const { Cell::new(own_words) };
    /// Messages without arguments, said once: a few thousand words at most.
    static SAID: RefCell<OrderedMap<&'static str, &'static str>> = const { RefCell::new(OrderedMap::new()) };
}

/// The language this thread speaks.
#[must_use]
pub fn language() -> Language {
    LANGUAGE.get()
}

/// Speaks another language from here on, in this thread.
pub fn use_language(language: Language) {
    LANGUAGE.set(language);
    SAID.set(OrderedMap::new());
}

/// Lets something else put messages into words, in this thread.
pub fn speak_through(speaker: Speaker) {
    SPEAKER.set(speaker);
    SAID.set(OrderedMap::new());
}

/// The words of a message without arguments; [`say!`](crate::say) calls it.
///
/// They are made once in each language and kept for good, so that names in tables cost nothing.
#[must_use]
pub fn words(id: &'static str) -> &'static str {
    if let Some(said) = SAID.with_borrow(|said| said.get(id).copied()) {
        return said;
    }
    let said: &'static str = Box::leak(words_with(id, &[]).into_boxed_str());
    SAID.with_borrow_mut(|held| held.insert(id, said));
    said
}

/// The words of a message with its arguments; [`say!`](crate::say) calls it.
///
/// A message that is nowhere is said as its name in angle quotes, for people to report.
#[must_use]
pub fn words_with(id: &str, arguments: &[(&str, Argument<'_>)]) -> String {
    SPEAKER.get()(LANGUAGE.get(), id, arguments).unwrap_or_else(|| format!("‹{id}›"))
}

/// The words of a message whose name is put together while running, such as `factor-` and a factor's id; `None` when
/// there is no such message in this language.
#[must_use]
pub fn find(id: &str) -> Option<String> {
    SPEAKER.get()(LANGUAGE.get(), id, &[])
}

#[cfg(feature = "own_messages")]
use own::own_words;

#[cfg(not(feature = "own_messages"))]
fn own_words(_: Language, _: &str, _: &[(&str, Argument<'_>)]) -> Option<String> {
    None
}

/// Says a message by its name: `&'static str` without arguments, `String` with them.
///
/// ```
/// use hobnail_core::say;
/// assert_eq!(say!("language-name"), "English");
/// assert_eq!(say!("count-streets", count = 1), "1 street");
/// assert_eq!(say!("count-streets", count = 12), "12 streets");
/// ```
#[macro_export]
macro_rules! say {
    ($id:literal) => {
        $crate::messages::words($id)
    };
    ($id:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $crate::messages::words_with($id, &[$((stringify!($name), $crate::messages::ToArgument::to_argument(&$value))),+])
    };
}

#[cfg(test)]
mod tests;
