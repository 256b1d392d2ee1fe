//! The language of the window: another one is spoken by the page started anew, with the plan as it was.
//!
//! A kept plan is opened again from the browser's store, with its steps; one that was opened and never changed, which is
//! not kept, from its text. A plan that was changed and is not kept stays, and the page asks to save it first.

use hobnail_core::exchange::plan_file;
use hobnail_core::messages::Language;
use hobnail_core::say;

use super::App;
use super::keeping::KeptShown;
use super::store::Store;
use crate::browser::{document, words};

/// How the open plan is opened again after the page started anew.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Handed {
    /// From the browser's store, by its id.
    Kept(String),
    /// From its text.
    Text(String),
    /// There is nothing to open.
    Nothing,
}

impl Handed {
    /// What the page before this one handed over; told once.
    pub(super) fn over() -> Self {
        words::handed_over().as_deref().map_or(Self::Nothing, Self::of)
    }

    /// What is told to the page that starts.
    fn told(&self) -> String {
        match self {
            Self::Kept(id) => format!("kept {id}"),
            Self::Text(text) => format!("text {text}"),
            Self::Nothing => String::new(),
        }
    }

    /// What the page before this one told.
    fn of(told: &str) -> Self {
        match told.split_once(' ') {
            Some(("kept", id)) => Self::Kept(id.to_owned()),
            Some(("text", text)) => Self::Text(text.to_owned()),
            _ => Self::Nothing,
        }
    }
}

impl App {
    /// How the plan is handed over; `None` while a step is on its way to the browser's store.
    ///
    /// # Errors
    /// A sentence, when the plan would be lost.
    fn hand_over(&self, is_new: bool) -> Result<Option<Handed>, String> {
        let not_kept = || say!("language-not-kept").to_owned();
        Ok(match (self.keeping.shown(), self.kept_id()) {
            (KeptShown::Keeping, _) => None,
            (KeptShown::NotKept { .. }, _) => return Err(not_kept()),
            (KeptShown::Kept, Some(id)) => Some(Handed::Kept(id.to_owned())),
            _ if is_new => Some(Handed::Nothing),
            _ => {
                let text = plan_file::write(self.study.document()).map_err(|fault| fault.to_string())?;
                Some(Handed::Text(text))
            }
        })
    }
}

impl Store {
    /// Starts the page anew in another language, once the last step is kept.
    pub fn use_language(self, language: Language) {
        const BEAT_MS: i32 = 50;
        let is_new = self.is_new.with_untracked(|is_new| *is_new);
        let handed = match self.with(|app| app.hand_over(is_new)) {
            Ok(Some(handed)) => handed,
            Ok(None) => return document::later(BEAT_MS, move || self.use_language(language)),
            Err(fault) => return self.act(|app| app.warn(fault)),
        };
        if let Err(reason) = words::start_again(language, &handed.told()) {
            self.act(|app| app.warn(say!("language-refused", reason = reason)));
        }
    }

    /// Opens the plan that the page before this one handed over.
    pub(super) fn take_handed_over(self, handed: Handed) {
        match handed {
            Handed::Kept(id) => self.open_kept(id),
            Handed::Text(text) => self.open(Ok(("plan.geojson".to_owned(), text))),
            Handed::Nothing => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_handed_over_is_understood() {
        for handed in [
            Handed::Kept("12 3".to_owned()),
            Handed::Text("{\"a\": 1}".to_owned()),
            Handed::Nothing,
        ] {
            assert_eq!(Handed::of(&handed.told()), handed);
        }
    }
}
