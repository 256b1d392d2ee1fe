//! How the plan came to be, step after step, before the eyes of a room.

use super::store::Store;
use crate::browser::document;

/// How long each step is looked at, in milliseconds.
const STEP_MS: i32 = 600;

impl Store {
    /// Shows the plan from its first step to where it stands; stops where it is when asked again.
    pub fn replay(self) {
        if self.is_replaying.get_untracked() {
            return self.is_replaying.set(false);
        }
        let until = self.history.with_untracked(|history| history.done);
        self.is_replaying.set(until > 0);
        self.show_step(0, until);
    }

    fn show_step(self, step: usize, until: usize) {
        if !self.is_replaying.get_untracked() {
            return;
        }
        self.act(|app| app.go_to_step(step));
        let is_there = self.history.with_untracked(|history| history.done) == step;
        // A step that could not be gone to was said.
        if step == until || !is_there {
            return self.is_replaying.set(false);
        }
        document::later(STEP_MS, move || self.show_step(step + 1, until));
    }

    /// Enlarges a figure for the back of the room, or no longer.
    pub fn toggle_enlarged(self, figure: &str) {
        self.act(|app| app.toggle_enlarged(figure));
        self.ask();
        // Fit and the scale bar make room for them.
        document::after_this(async move { self.resize() });
    }
}
