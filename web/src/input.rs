//! What a person does at the drawing, in our own words: the only form in which tools and camera see it.
//!
//! Positions are in CSS pixels from the top left of the drawing. `browser` makes these events; nothing here names a
//! browser type, so everything that answers them is tested natively.

/// A position on screen in CSS pixels, x to the right and y down, from the drawing's top left.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ScreenPoint {
    /// Pixels from the left.
    pub x_px: f64,
    /// Pixels from the top.
    pub y_px: f64,
}

/// What points: it decides how near counts as near.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointerKind {
    /// A mouse or trackpad.
    Mouse,
    /// A pen.
    Pen,
    /// A finger.
    Touch,
    /// The crosshair moved with the arrow keys.
    Keyboard,
}

/// Which button is pressed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Button {
    /// The main button, a pen's tip or a finger.
    Primary,
    /// The middle button or wheel.
    Middle,
    /// The other button.
    Secondary,
}

/// Keys held while something happens.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Modifiers {
    /// Shift.
    pub shift: bool,
    /// Control, or Command on keyboards that have it.
    pub control: bool,
    /// Alt or Option.
    pub alt: bool,
}

/// A key of the keyboard, as far as the drawing cares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// Enter or Return.
    Enter,
    /// Escape.
    Escape,
    /// Backspace.
    Backspace,
    /// Delete.
    Delete,
    /// The space bar.
    Space,
    /// Arrow to the left.
    Left,
    /// Arrow to the right.
    Right,
    /// Arrow up.
    Up,
    /// Arrow down.
    Down,
    /// A printed character, in lower case.
    Character(char),
}

/// What the keys of a clicker or wireless keypad stand for at a board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RemoteKey {
    /// What is drawn is ended, as Enter does.
    Confirm,
    /// The last point or step is taken back.
    Undo,
    /// A step taken back is done again.
    Redo,
    /// What was begun is given up, as Escape does.
    GiveUp,
}

impl RemoteKey {
    /// What a key stands for, by its name in the standard (W3C, "UI Events KeyboardEvent key Values"). Clickers send
    /// these for the next and the previous page, to begin and end a show, and to darken the screen (common practice, no
    /// source).
    #[must_use]
    pub fn of(name: &str) -> Option<Self> {
        Some(match name {
            "PageDown" => Self::Confirm,
            "PageUp" => Self::Undo,
            "b" | "B" | "." => Self::Redo,
            "F5" | "Escape" => Self::GiveUp,
            _ => return None,
        })
    }
}

/// One pointer at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pointer {
    /// Tells fingers apart.
    pub id: i32,
    /// Where it is.
    pub at: ScreenPoint,
    /// What it is.
    pub kind: PointerKind,
    /// Keys held meanwhile.
    pub modifiers: Modifiers,
}

/// One thing that happened at the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Event {
    /// A button or finger went down.
    Down(Pointer, Button),
    /// A pointer moved, pressed or not.
    Move(Pointer),
    /// A button or finger went up.
    Up(Pointer),
    /// A pressed pointer was taken away by the system; what it was doing is given up.
    Lost(i32),
    /// The pointer left the drawing.
    Left,
    /// The wheel turned or a trackpad scrolled.
    Wheel {
        /// Where the pointer is.
        at: ScreenPoint,
        /// Pixels to the right.
        right_px: f64,
        /// Pixels down.
        down_px: f64,
        /// Whether this is a zoom (a wheel's notch or a pinch) rather than a scroll.
        is_zoom: bool,
    },
    /// A key went down.
    KeyDown(Key, Modifiers),
    /// A key went up.
    KeyUp(Key),
}

impl ScreenPoint {
    /// The position `x_px` from the left and `y_px` from the top.
    #[must_use]
    pub const fn new(x_px: f64, y_px: f64) -> Self {
        Self { x_px, y_px }
    }

    /// Distance to `other` in pixels.
    #[must_use]
    pub fn distance_px(self, other: Self) -> f64 {
        let (right, down) = (other.x_px - self.x_px, other.y_px - self.y_px);
        (right * right + down * down).sqrt()
    }

    /// The point halfway to `other`.
    #[must_use]
    pub fn middle(self, other: Self) -> Self {
        Self::new((self.x_px + other.x_px) / 2.0, (self.y_px + other.y_px) / 2.0)
    }
}

impl PointerKind {
    /// How far from a thing still counts as on it, in pixels: a finger is wider than an arrow.
    #[must_use]
    pub const fn reach_px(self) -> f64 {
        match self {
            Self::Mouse | Self::Keyboard => 10.0,
            Self::Pen => 14.0,
            Self::Touch => 22.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clicker_confirms_takes_back_does_again_and_gives_up() {
        let keys = ["PageDown", "PageUp", "b", ".", "F5", "Escape", "Enter", "c"];
        let stand_for = keys.map(RemoteKey::of);
        use RemoteKey::{Confirm, GiveUp, Redo, Undo};
        let expected = [Confirm, Undo, Redo, Redo, GiveUp, GiveUp].map(Some);
        assert_eq!(stand_for[..6], expected);
        assert_eq!(stand_for[6..], [None, None]);
    }
}
