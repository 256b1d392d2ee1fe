//! How the page is set for the place where it stands: a desk, a room with a projector, a touch board on a wall. And
//! whether the plan is only looked at. Both belong to the window and not to the plan; the window remembers them.
//!
//! All that differs in looks hangs on attributes of the page's root, in `styles/modes.css`; words and lines on the
//! canvas are as much larger as the page's own text.

use hobnail_core::say;

use super::App;
use super::store::Store;
use crate::browser::{address, document, remembered};
use crate::input::{Event, Key, Modifiers, RemoteKey};

/// For which place the page is set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Mode {
    /// One person at a screen.
    #[default]
    Desk,
    /// A room that reads from ten meters.
    Projector,
    /// A touch board on a wall, tools to the left.
    BoardLeft,
    /// The same, tools to the right.
    BoardRight,
}

impl Mode {
    /// All of them, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Desk, Self::Projector, Self::BoardLeft, Self::BoardRight];

    /// Its name in the page.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Desk => "desk",
            Self::Projector => "projector",
            Self::BoardLeft => "board-left",
            Self::BoardRight => "board-right",
        }
    }

    /// Its words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Desk => say!("mode-desk"),
            Self::Projector => say!("mode-projector"),
            Self::BoardLeft => say!("mode-board-left"),
            Self::BoardRight => say!("mode-board-right"),
        }
    }

    /// What it is good for.
    #[must_use]
    pub fn about(self) -> &'static str {
        match self {
            Self::Desk => say!("mode-desk-about"),
            Self::Projector => say!("mode-projector-about"),
            Self::BoardLeft | Self::BoardRight => say!("mode-board-about"),
        }
    }

    /// Whether it is a board's.
    #[must_use]
    pub const fn is_board(self) -> bool {
        matches!(self, Self::BoardLeft | Self::BoardRight)
    }
}

/// What a window remembers: the mode, and whether the plan is only looked at.
fn note_of(mode: Mode, is_looking: bool) -> String {
    let looking = if is_looking { " looking" } else { "" };
    [mode.id(), looking].concat()
}

/// What a window remembered; the ordinary page where it is nothing of ours.
fn of_note(note: &str) -> (Mode, bool) {
    let (id, is_looking) = note.strip_suffix(" looking").map_or((note, false), |id| (id, true));
    let mode = Mode::ALL.into_iter().find(|mode| mode.id() == id);
    (mode.unwrap_or_default(), is_looking)
}

impl App {
    /// Does what a key of a clicker or wireless keypad stands for at a board.
    pub fn remote(&mut self, key: RemoteKey) {
        let press = |key| Event::KeyDown(key, Modifiers::default());
        match key {
            RemoteKey::Confirm => self.handle(press(Key::Enter)),
            RemoteKey::GiveUp => self.handle(press(Key::Escape)),
            RemoteKey::Undo => self.undo(),
            RemoteKey::Redo => self.redo(),
        }
    }
}

impl Store {
    /// Sets the page as this window remembers it.
    pub(super) fn remember_mode(self) {
        let (mode, is_looking) = of_note(&remembered::page().unwrap_or_default());
        if is_looking {
            self.act(App::look_at_next);
        }
        self.take_mode(mode);
    }

    /// Sets the page for another place.
    pub fn set_mode(self, mode: Mode) {
        self.take_mode(mode);
        self.act(|app| app.say([mode.words(), ". ", mode.about()].concat()));
        // Once the panels stand where they belong now.
        document::soon(move || self.act(App::fit));
    }

    fn take_mode(self, mode: Mode) {
        self.mode.set(mode);
        self.act(|app| app.enlarge_for(mode == Mode::Projector));
        self.show_mode();
    }

    /// Lets the plan only be looked at.
    pub fn look_only(self) {
        let is_new = self.is_new.with_untracked(|is_new| *is_new);
        self.act(|app| {
            if is_new {
                app.look_at_next();
            } else {
                app.look_only();
            }
        });
        self.show_mode();
    }

    /// Opens the text of a plan, such as one of an address, to be looked at.
    pub fn look_at(self, name: &str, text: &str) {
        self.look_by(|app| app.look_at(name, text));
    }

    /// Opens a plan to be looked at, by what may say that there is none.
    pub(super) fn look_by(self, open: impl FnOnce(&mut App) -> Result<(), String>) {
        let mut is_open = false;
        self.act(|app| match open(app) {
            Ok(()) => is_open = true,
            Err(fault) => app.warn(fault),
        });
        if is_open {
            self.is_new.set(false);
            self.show_mode();
        }
    }

    /// Hands the plan that was looked at back for drawing, as one's own.
    pub fn make_own(self) {
        self.act(App::make_own);
        address::drop_carried();
        self.show_mode();
    }

    /// Brings the page's look into step with mode and plan, and has the window remember both.
    pub(super) fn show_mode(self) {
        let mode = self.mode.get_untracked();
        let is_looking = self.with(App::is_looking);
        self.is_looking.set_if_new(is_looking);
        document::set_root_attribute("data-mode", mode.id());
        document::set_root_attribute("data-looking", if is_looking { "yes" } else { "no" });
        remembered::keep_page(&note_of(mode, is_looking));
        document::soon(move || self.resize());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_window_remembers_is_understood() {
        for mode in Mode::ALL {
            for is_looking in [false, true] {
                assert_eq!(of_note(&note_of(mode, is_looking)), (mode, is_looking));
            }
        }
        assert_eq!(of_note("of another version"), (Mode::Desk, false));
    }
}
