//! Everything a person reads, in the language of the window: [`say!`](crate::say) by the message's name, which is looked
//! up while compiling.
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

include!(concat!(env!("OUT_DIR"), "/ids.rs"));

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

/// A message by its place among the names of all messages in the order of their bytes: the page carries no names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Message(u16);

impl Message {
    /// The message of this name. Asked while compiling, by [`message!`](crate::message): a name that is in no file does
    /// not compile.
    ///
    /// # Panics
    /// When there is no such message.
    #[must_use]
    #[expect(clippy::panic, reason = "it stops the compiler, not the program")]
    pub const fn named(id: &str) -> Self {
        let (mut low, mut high) = (0, IDS.len());
        while low < high {
            let middle = usize::midpoint(low, high);
            match compare(IDS[middle].as_bytes(), id.as_bytes()) {
                0 => return Self(middle as u16),
                1.. => high = middle,
                _ => low = middle + 1,
            }
        }
        panic!("no file of messages has this name")
    }

    /// The words of a message that needs no argument, in the language of the moment.
    #[must_use]
    pub fn words(self) -> &'static str {
        words(self)
    }

    /// Its place among all names.
    #[must_use]
    pub const fn place(self) -> usize {
        self.0 as usize
    }
}

/// Below 0 where `a` is before `b`, above 0 where it is behind.
const fn compare(a: &[u8], b: &[u8]) -> i32 {
    let mut place = 0;
    while place < a.len() && place < b.len() {
        if a[place] != b[place] {
            return a[place] as i32 - b[place] as i32;
        }
        place += 1;
    }
    a.len() as i32 - b.len() as i32
}

/// What puts messages into words. `names` are those of the arguments, each with a comma behind.
#[derive(Clone, Copy)]
pub struct Speaker {
    /// The words of a message; `None` when it needs another argument.
    pub say: fn(Language, Message, names: &str, &[Argument<'_>]) -> Option<String>,
    /// The words of a message without arguments whose name is put together while running; `None` when there is none.
    pub find: fn(Language, id: &str) -> Option<String>,
}

thread_local! {
    static LANGUAGE: Cell<Language> = const { Cell::new(Language::English) };
    static SPEAKER: Cell<Speaker> = const { Cell::new(OWN) };
    /// Messages without arguments, said once, each at its place.
    static SAID: RefCell<Vec<Option<&'static &'static str>>> = const { RefCell::new(Vec::new()) };
}

/// The language this thread speaks.
#[must_use]
pub fn language() -> Language {
    LANGUAGE.get()
}

/// Speaks another language from here on, in this thread.
pub fn use_language(language: Language) {
    LANGUAGE.set(language);
    SAID.set(Vec::new());
}

/// Lets something else put messages into words, in this thread.
pub fn speak_through(speaker: Speaker) {
    SPEAKER.set(speaker);
    SAID.set(Vec::new());
}

/// The words of a message without arguments; [`say!`](crate::say) calls it.
///
/// They are made once in each language and kept for good, so that names in tables cost nothing.
#[must_use]
#[inline]
pub fn words(message: Message) -> &'static str {
    held_words(message)
}

/// The same behind a reference: the page asks in a thousand places, and one number is asked for with less than two.
#[inline(never)]
fn held_words(message: Message) -> &'static &'static str {
    if let Some(said) = SAID.with_borrow(|said| said.get(message.place()).copied().flatten()) {
        return said;
    }
    let words: &'static str = Box::leak(words_with(message, "", &[]).into_boxed_str());
    let said: &'static &'static str = Box::leak(Box::new(words));
    SAID.with_borrow_mut(|held| {
        held.resize(held.len().max(message.place() + 1), None);
        held[message.place()] = Some(said);
    });
    said
}

/// The words of a message with its arguments, the names of those each with a comma behind; [`say!`](crate::say) calls it.
///
/// A message that lacks an argument is said as its number in angle quotes, for people to report; a test of the
/// repository sees that there is none.
#[must_use]
#[inline(never)]
pub fn words_with(message: Message, names: &str, values: &[Argument<'_>]) -> String {
    let said = (SPEAKER.get().say)(LANGUAGE.get(), message, names, values);
    said.unwrap_or_else(|| format!("‹{}›", message.0))
}

/// The words of a message whose name is put together while running, such as `factor-` and a factor's id; `None` when
/// there is no such message in this language.
#[must_use]
pub fn find(id: &str) -> Option<String> {
    (SPEAKER.get().find)(LANGUAGE.get(), id)
}

#[cfg(feature = "own_messages")]
use own::OWN;

/// Nobody speaks before [`speak_through`] is called.
#[cfg(not(feature = "own_messages"))]
const OWN: Speaker = Speaker {
    say: |_, _, _, _| None,
    find: |_, _| None,
};

/// The [`Message`] of a name, which must stand in the files: it is looked up while compiling.
#[macro_export]
macro_rules! message {
    ($id:literal) => {
        const { $crate::messages::Message::named($id) }
    };
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
        $crate::messages::words($crate::message!($id))
    };
    ($id:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $crate::messages::words_with(
            $crate::message!($id),
            concat!($(stringify!($name), ","),+),
            &[$($crate::messages::ToArgument::to_argument(&$value)),+],
        )
    };
}

#[cfg(test)]
mod tests;
