//! What pointers and keys mean before any tool sees them: moving the view with the middle button, the space bar or two
//! fingers, zooming with the wheel or a pinch. What is left goes to the tool.
//!
//! A finger that comes down may be the first of two. Until it moves or is lifted the tool is told only that it is there,
//! as if it hovered, so a second one leaves nothing to be given up.

use hobnail_core::order::OrderedMap;

use crate::canvas::camera::Camera;
use crate::input::{Button, Event, Key, Modifiers, Pointer, PointerKind, ScreenPoint};
use crate::tools::{At, Input};

/// How much one notch of a wheel, of about 100 pixels, enlarges.
const ZOOM_PER_NOTCH: f64 = 1.18;
const NOTCH_PX: f64 = 100.0;
/// How far a finger may stray and still rest, in pixels: less than half its own width on the screen (common practice, no
/// source). With less, the first of two fingers would draw; with more, a short drag would be none.
const REST_PX: f64 = 8.0;

/// What an event means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Meaning {
    /// The view moves.
    Pan {
        /// Pixels to the right.
        right_px: f64,
        /// Pixels down.
        down_px: f64,
    },
    /// The view is enlarged about a point.
    Zoom {
        /// The point that stays.
        at: ScreenPoint,
        /// How many times as large.
        factor: f64,
    },
    /// The tool is told.
    Tool(Told, Option<Pointer>),
    /// A key for the tool or the crosshair.
    Key(Key, Modifiers),
}

/// What a tool is told, before the place on the plan is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Told {
    /// Pressed.
    Down,
    /// Moved.
    Move,
    /// Let go.
    Up,
    /// The pointer left.
    Leave,
    /// What this press began is taken back.
    GiveUp,
}

impl Told {
    /// The tool's own input, with the pointer's place on the plan.
    #[must_use]
    pub fn on_plan(self, pointer: Option<Pointer>, camera: &Camera) -> Input {
        let at = pointer.map(|pointer| At {
            point: camera.plan_from_screen(pointer.at),
            modifiers: pointer.modifiers,
        });
        match (self, at) {
            (Self::Down, Some(at)) => Input::Down(at),
            (Self::Move, Some(at)) => Input::Move(at),
            (Self::Up, Some(at)) => Input::Up(at),
            (Self::GiveUp, _) => Input::GiveUp,
            (Self::Leave | Self::Down | Self::Move | Self::Up, _) => Input::Leave,
        }
    }
}

/// Pointers that are down, and what they are doing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pointers {
    /// Where each pressed pointer is.
    down: OrderedMap<i32, ScreenPoint>,
    doing: Doing,
    /// A finger that works the tool and has neither moved nor been lifted, as it came down.
    resting: Option<Pointer>,
    is_space_held: bool,
    /// Whether it is a pen that is down; then it alone is.
    has_pen: bool,
    /// Whether a pen was ever down: the hand that holds it then only moves the view, between its strokes too.
    knows_pen: bool,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Doing {
    /// Nothing is pressed, or what is pressed is spent.
    #[default]
    Nothing,
    /// One pointer works the tool.
    Tool,
    /// One pointer moves the view.
    Pan,
    /// Two fingers move and enlarge the view.
    Pinch,
}

impl Pointers {
    /// Whether fingers only move the view, since a pen draws.
    #[must_use]
    pub const fn knows_pen(&self) -> bool {
        self.knows_pen
    }

    /// Lets fingers draw again, until a pen is next put down.
    pub const fn forget_pen(&mut self) {
        self.knows_pen = false;
    }

    /// What an event means now.
    pub fn read(&mut self, event: Event, is_panning_tool: bool) -> Vec<Meaning> {
        match event {
            Event::Down(pointer, button) => self.down(pointer, button, is_panning_tool),
            Event::Move(pointer) => self.moved(pointer),
            Event::Up(pointer) => self.gone(pointer.id, Told::Up, Some(pointer)),
            Event::Lost(id) => self.gone(id, Told::GiveUp, None),
            Event::Left if self.down.is_empty() => vec![Meaning::Tool(Told::Leave, None)],
            Event::Left => Vec::new(),
            Event::Wheel {
                at,
                right_px,
                down_px,
                is_zoom,
            } => vec![wheel(at, right_px, down_px, is_zoom)],
            Event::KeyDown(Key::Space, _) => {
                self.is_space_held = true;
                Vec::new()
            }
            Event::KeyUp(Key::Space) => {
                self.is_space_held = false;
                Vec::new()
            }
            Event::KeyDown(key, modifiers) => vec![Meaning::Key(key, modifiers)],
            Event::KeyUp(_) => Vec::new(),
        }
    }

    fn down(&mut self, pointer: Pointer, button: Button, is_panning_tool: bool) -> Vec<Meaning> {
        let is_pen = pointer.kind == PointerKind::Pen;
        if self.has_pen && !is_pen {
            // The hand that holds the pen rests beside it.
            return Vec::new();
        }
        self.has_pen = is_pen;
        self.knows_pen |= is_pen;
        let only_pans = is_panning_tool || (self.knows_pen && pointer.kind == PointerKind::Touch);
        if is_pen {
            self.down = OrderedMap::default();
        }
        self.down.insert(pointer.id, pointer.at);
        let does = match (self.down.len(), button) {
            (1, Button::Primary) if !self.is_space_held && !only_pans => Doing::Tool,
            (1, Button::Primary | Button::Middle) => Doing::Pan,
            (1, Button::Secondary) => Doing::Nothing,
            (2, _) => Doing::Pinch,
            _ => return Vec::new(),
        };
        let mut meanings = Vec::new();
        if self.doing == Doing::Tool {
            // What the first finger pressed was the start of a pinch, or a hand before its pen.
            meanings.push(self.taken_back());
        }
        if does == Doing::Tool {
            let is_finger = pointer.kind == PointerKind::Touch;
            self.resting = Some(pointer).filter(|_| is_finger);
            let told = if is_finger { Told::Move } else { Told::Down };
            meanings.push(Meaning::Tool(told, Some(pointer)));
        }
        self.doing = does;
        meanings
    }

    fn moved(&mut self, pointer: Pointer) -> Vec<Meaning> {
        let Some(before) = self.down.get(&pointer.id).copied() else {
            // A finger that is not down has no place to hover.
            let hovers = self.down.is_empty() && pointer.kind != PointerKind::Touch;
            return if hovers {
                vec![Meaning::Tool(Told::Move, Some(pointer))]
            } else {
                Vec::new()
            };
        };
        let other = self.down.iter().find(|(id, _)| **id != pointer.id).map(|(_, at)| *at);
        self.down.insert(pointer.id, pointer.at);
        match (self.doing, other) {
            (Doing::Tool, _) if let Some(first) = self.resting => {
                if first.at.distance_px(pointer.at) <= REST_PX {
                    return Vec::new();
                }
                self.resting = None;
                vec![
                    Meaning::Tool(Told::Down, Some(first)),
                    Meaning::Tool(Told::Move, Some(pointer)),
                ]
            }
            (Doing::Tool, _) => vec![Meaning::Tool(Told::Move, Some(pointer))],
            (Doing::Pan, _) => vec![Meaning::Pan {
                right_px: pointer.at.x_px - before.x_px,
                down_px: pointer.at.y_px - before.y_px,
            }],
            (Doing::Pinch, Some(other)) => pinch(before, pointer.at, other),
            (Doing::Pinch, None) | (Doing::Nothing, _) => Vec::new(),
        }
    }

    /// A pointer is no longer down; whoever it worked for is told.
    fn gone(&mut self, id: i32, told: Told, pointer: Option<Pointer>) -> Vec<Meaning> {
        if self.down.remove(&id).is_none() {
            return Vec::new();
        }
        self.has_pen = false;
        // One finger left of a pinch does nothing until it is lifted.
        if std::mem::take(&mut self.doing) != Doing::Tool {
            return Vec::new();
        }
        if told == Told::GiveUp {
            return vec![self.taken_back()];
        }
        // A finger that only rested presses and lets go where it came down.
        let Some(first) = self.resting.take() else {
            return vec![Meaning::Tool(told, pointer)];
        };
        vec![Meaning::Tool(Told::Down, Some(first)), Meaning::Tool(told, Some(first))]
    }

    /// What one pointer began is taken back; of a finger that only rested nothing was begun.
    fn taken_back(&mut self) -> Meaning {
        let has_begun = self.resting.take().is_none();
        Meaning::Tool(if has_begun { Told::GiveUp } else { Told::Leave }, None)
    }
}

fn wheel(at: ScreenPoint, right_px: f64, down_px: f64, is_zoom: bool) -> Meaning {
    if is_zoom {
        let factor = hobnail_core::number::power(ZOOM_PER_NOTCH, -down_px / NOTCH_PX);
        Meaning::Zoom { at, factor }
    } else {
        Meaning::Pan {
            right_px: -right_px,
            down_px: -down_px,
        }
    }
}

/// The finger moved from `before` to `now` while `other` stays: the middle carries the view, the distance enlarges it.
fn pinch(before: ScreenPoint, now: ScreenPoint, other: ScreenPoint) -> Vec<Meaning> {
    let (middle_before, middle) = (before.middle(other), now.middle(other));
    let mut meanings = vec![Meaning::Pan {
        right_px: middle.x_px - middle_before.x_px,
        down_px: middle.y_px - middle_before.y_px,
    }];
    let apart_px = before.distance_px(other);
    if apart_px > 1.0 {
        meanings.push(Meaning::Zoom {
            at: middle,
            factor: now.distance_px(other) / apart_px,
        });
    }
    meanings
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pointer(id: i32, x: f64, y: f64, kind: PointerKind) -> Pointer {
        Pointer {
            id,
            at: ScreenPoint::new(x, y),
            kind,
            modifiers: Modifiers::default(),
        }
    }

    fn finger(id: i32, x: f64, y: f64) -> Pointer {
        pointer(id, x, y, PointerKind::Touch)
    }

    #[test]
    fn a_second_finger_takes_back_the_first_and_pinches() {
        let mut pointers = Pointers::default();
        let first = pointers.read(Event::Down(finger(1, 100.0, 100.0), Button::Primary), false);
        assert!(matches!(first[..], [Meaning::Tool(Told::Move, Some(_))]));
        let begun = pointers.read(Event::Move(finger(1, 100.0, 109.0)), false);
        let [
            Meaning::Tool(Told::Down, Some(from)),
            Meaning::Tool(Told::Move, Some(_)),
        ] = begun[..]
        else {
            panic!("a finger that moves presses where it came down: {begun:?}");
        };
        assert_eq!(from.at, ScreenPoint::new(100.0, 100.0));
        pointers.read(Event::Move(finger(1, 100.0, 100.0)), false);
        let second = pointers.read(Event::Down(finger(2, 200.0, 100.0), Button::Primary), false);
        assert_eq!(second, vec![Meaning::Tool(Told::GiveUp, None)]);
        let apart = pointers.read(Event::Move(finger(2, 300.0, 100.0)), false);
        assert!(matches!(apart[1], Meaning::Zoom { factor, .. } if (factor - 2.0).abs() < 1e-9));
        pointers.read(Event::Up(finger(2, 300.0, 100.0)), false);
        assert!(pointers.read(Event::Move(finger(1, 150.0, 150.0)), false).is_empty());
        assert!(pointers.read(Event::Up(finger(1, 150.0, 150.0)), false).is_empty());
        let next = pointers.read(Event::Down(finger(3, 10.0, 10.0), Button::Primary), false);
        assert!(matches!(next[..], [Meaning::Tool(Told::Move, Some(_))]));
    }

    #[test]
    fn a_finger_presses_when_it_is_lifted_and_no_second_one_came() {
        let mut pointers = Pointers::default();
        let down = Event::Down(finger(1, 100.0, 100.0), Button::Primary);
        pointers.read(down, false);
        assert_eq!(pointers.read(Event::Move(finger(1, 103.0, 102.0)), false), Vec::new());
        let at = Some(finger(1, 100.0, 100.0));
        let tap = [Told::Down, Told::Up].map(|told| Meaning::Tool(told, at));
        assert_eq!(pointers.read(Event::Up(finger(1, 103.0, 102.0)), false), tap);
        let leaves = vec![Meaning::Tool(Told::Leave, None)];
        pointers.read(down, false);
        assert_eq!(pointers.read(Event::Lost(1), false), leaves, "the system took it");
        pointers.read(down, false);
        pointers.read(Event::Move(finger(1, 106.0, 100.0)), false);
        let second = Event::Down(finger(2, 200.0, 100.0), Button::Primary);
        assert_eq!(pointers.read(second, false), leaves);
        for event in [Event::Up(finger(1, 100.0, 100.0)), Event::Up(finger(2, 200.0, 100.0))] {
            assert_eq!(pointers.read(event, false), Vec::new());
        }
    }

    #[test]
    fn a_hand_beside_a_pen_does_nothing() {
        let pen = |x| pointer(7, x, 50.0, PointerKind::Pen);
        let mut pointers = Pointers::default();
        pointers.read(Event::Down(finger(1, 400.0, 300.0), Button::Primary), false);
        pointers.read(Event::Move(finger(1, 400.0, 320.0)), false);
        let meanings = pointers.read(Event::Down(pen(100.0), Button::Primary), false);
        assert!(matches!(
            meanings[..],
            [Meaning::Tool(Told::GiveUp, None), Meaning::Tool(Told::Down, Some(_))]
        ));
        let palm = finger(2, 420.0, 310.0);
        for event in [
            Event::Move(finger(1, 410.0, 300.0)),
            Event::Down(palm, Button::Primary),
            Event::Move(palm),
            Event::Lost(1),
            Event::Up(palm),
        ] {
            assert_eq!(pointers.read(event, false), Vec::new());
        }
        let moved = pointers.read(Event::Move(pen(120.0)), false);
        assert!(matches!(moved[..], [Meaning::Tool(Told::Move, Some(_))]));
        let up = pointers.read(Event::Up(pen(120.0)), false);
        assert!(matches!(up[..], [Meaning::Tool(Told::Up, Some(_))]));
    }

    #[test]
    fn once_a_pen_has_drawn_fingers_only_move_the_view() {
        let pen = pointer(7, 50.0, 50.0, PointerKind::Pen);
        let mut pointers = Pointers::default();
        pointers.read(Event::Down(pen, Button::Primary), false);
        pointers.read(Event::Up(pen), false);
        assert!(
            pointers
                .read(Event::Down(finger(1, 10.0, 10.0), Button::Primary), false)
                .is_empty()
        );
        assert!(pointers.knows_pen());
        let moved = pointers.read(Event::Move(finger(1, 30.0, 5.0)), false);
        let pan = Meaning::Pan {
            right_px: 20.0,
            down_px: -5.0,
        };
        assert_eq!(moved, vec![pan]);
        pointers.read(Event::Down(finger(2, 100.0, 5.0), Button::Primary), false);
        let apart = pointers.read(Event::Move(finger(2, 170.0, 5.0)), false);
        assert!(matches!(apart[1], Meaning::Zoom { factor, .. } if (factor - 2.0).abs() < 1e-9));
        for id in [1, 2] {
            assert!(pointers.read(Event::Up(finger(id, 0.0, 0.0)), false).is_empty());
        }
        let next = pointers.read(Event::Down(pen, Button::Primary), false);
        assert!(
            matches!(next[..], [Meaning::Tool(Told::Down, Some(_))]),
            "the pen draws on"
        );
    }

    #[test]
    fn fingers_draw_again_once_the_pen_is_forgotten() {
        let pen = pointer(7, 50.0, 50.0, PointerKind::Pen);
        let mut pointers = Pointers::default();
        pointers.read(Event::Down(pen, Button::Primary), false);
        pointers.read(Event::Up(pen), false);
        pointers.forget_pen();
        pointers.read(Event::Down(finger(1, 10.0, 10.0), Button::Primary), false);
        let up = pointers.read(Event::Up(finger(1, 10.0, 10.0)), false);
        assert!(matches!(
            up[..],
            [Meaning::Tool(Told::Down, Some(_)), Meaning::Tool(Told::Up, Some(_))]
        ));
        pointers.read(Event::Down(pen, Button::Primary), false);
        assert!(pointers.knows_pen(), "the pen is known again");
    }

    #[test]
    fn space_and_the_middle_button_move_the_view() {
        let mouse = |x, y| pointer(1, x, y, PointerKind::Mouse);
        for (button, space) in [(Button::Middle, false), (Button::Primary, true)] {
            let mut pointers = Pointers::default();
            if space {
                pointers.read(Event::KeyDown(Key::Space, Modifiers::default()), false);
            }
            assert!(pointers.read(Event::Down(mouse(10.0, 10.0), button), false).is_empty());
            let moved = pointers.read(Event::Move(mouse(25.0, 4.0)), false);
            assert_eq!(
                moved,
                vec![Meaning::Pan {
                    right_px: 15.0,
                    down_px: -6.0
                }]
            );
        }
    }

    #[test]
    fn a_wheel_zooms_and_a_trackpad_pans() {
        let at = ScreenPoint::new(1.0, 2.0);
        assert!(matches!(wheel(at, 0.0, -100.0, true), Meaning::Zoom { factor, .. } if factor > 1.0));
        assert_eq!(
            wheel(at, 4.0, 6.0, false),
            Meaning::Pan {
                right_px: -4.0,
                down_px: -6.0
            }
        );
    }

    #[test]
    fn the_other_button_does_nothing() {
        let mut pointers = Pointers::default();
        let mouse = pointer(1, 0.0, 0.0, PointerKind::Mouse);
        assert!(pointers.read(Event::Down(mouse, Button::Secondary), false).is_empty());
        assert!(pointers.read(Event::Move(mouse), false).is_empty());
    }
}
