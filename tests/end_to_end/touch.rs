//! Fingers and a pen on the drawing: each a pointer of its own that is put down, moved and lifted.

use std::time::Duration;

use fantoccini::actions::{Actions, InputSource, MOUSE_BUTTON_LEFT, PenActions, PointerAction, TouchActions};

use crate::page::Page;

/// A place in the window, in pixels from the left and from the top.
pub type Spot = (f64, f64);

/// How long a finger takes from one place to the next.
const MOVE: Duration = Duration::from_millis(60);

/// What moves over the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tip {
    /// A finger, or whatever else of a hand touches.
    Finger(&'static str),
    /// A pen.
    Pen,
}

/// One thing that a tip does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Act {
    /// It is put down here.
    Down(Spot),
    /// It goes here.
    To(Spot),
    /// It is lifted.
    Up,
    /// It stays as it is while another does something.
    Wait,
}

impl Page {
    /// Lets tips act at the same time: the first act of each, then the second of each, and so on. What is down at the
    /// end stays down for the next call.
    pub async fn touch(&self, tips: &[(Tip, &[Act])]) {
        let mut all = tips.iter().map(|(tip, acts)| actions(*tip, acts));
        let first = all.next().expect("some tip acts");
        let all = all.fold(Actions::from(first), Actions::and);
        let performed = self.browser.client.perform_actions(all).await;
        performed.expect("the driver moves fingers");
        self.next_frame().await;
    }

    /// Taps with one finger.
    pub async fn tap(&self, spot: Spot) {
        self.touch(&[(Tip::Finger("first"), &[Act::Down(spot), Act::Up])]).await;
    }
}

fn actions(tip: Tip, acts: &[Act]) -> fantoccini::actions::ActionSequence {
    let mut ticks = Vec::new();
    for act in acts {
        ticks.extend(ticks_of(*act));
    }
    match tip {
        Tip::Finger(name) => {
            let start = TouchActions::new(name.to_string());
            ticks.into_iter().fold(start, InputSource::then).into()
        }
        Tip::Pen => {
            let start = PenActions::new("pen".to_string());
            ticks.into_iter().fold(start, InputSource::then).into()
        }
    }
}

/// Each act is two ticks, so that those of several tips keep in step.
fn ticks_of(act: Act) -> [PointerAction; 2] {
    let button = MOUSE_BUTTON_LEFT;
    let go = |(x, y): Spot, duration| PointerAction::MoveTo { duration, x, y };
    let pause = || PointerAction::Pause {
        duration: Duration::ZERO,
    };
    match act {
        Act::Down(spot) => [go(spot, None), PointerAction::Down { button }],
        Act::To(spot) => [go(spot, Some(MOVE)), pause()],
        Act::Up => [PointerAction::Up { button }, pause()],
        Act::Wait => [pause(), pause()],
    }
}
