//! Browser events turned into our own: the only form in which the rest of the page sees them.

use wasm_bindgen::JsCast;

use super::words::lowercase;
use crate::input::{Button, Event, Key, Modifiers, Pointer, PointerKind, RemoteKey, ScreenPoint};

/// A wheel whose notch is at least this many pixels zooms; a trackpad scrolls by less and pans.
const NOTCH_PX: f64 = 60.0;
/// Pixels of a line, where a wheel counts in lines.
const LINE_PX: f64 = 24.0;

/// A button or finger went down.
///
/// The pointer is held by the drawing from now on, so that a drag that leaves it is still followed.
#[must_use]
pub fn pointer_down(event: &web_sys::Event) -> Event {
    let event: &web_sys::PointerEvent = event.unchecked_ref();
    if let Some(canvas) = element_under(event) {
        // Capture fails only when the pointer is gone already, and then there is nothing to follow.
        let _ = canvas.set_pointer_capture(event.pointer_id());
    }
    let button = match event.button() {
        1 => Button::Middle,
        2 => Button::Secondary,
        _ => Button::Primary,
    };
    Event::Down(pointer(event), button)
}

/// A pointer moved.
#[must_use]
pub fn pointer_move(event: &web_sys::Event) -> Event {
    let event: &web_sys::PointerEvent = event.unchecked_ref();
    Event::Move(pointer(event))
}

/// A button or finger went up.
#[must_use]
pub fn pointer_up(event: &web_sys::Event) -> Event {
    let event: &web_sys::PointerEvent = event.unchecked_ref();
    Event::Up(pointer(event))
}

/// The system took a pressed pointer away.
#[must_use]
pub fn pointer_lost(event: &web_sys::Event) -> Event {
    let event: &web_sys::PointerEvent = event.unchecked_ref();
    Event::Lost(event.pointer_id())
}

/// The wheel turned or a trackpad scrolled; the page itself does not scroll.
#[must_use]
pub fn wheel(event: &web_sys::Event) -> Event {
    let event: &web_sys::WheelEvent = event.unchecked_ref();
    event.prevent_default();
    let is_by_pixel = event.delta_mode() == web_sys::WheelEvent::DOM_DELTA_PIXEL;
    let scale = if is_by_pixel { 1.0 } else { LINE_PX };
    let (right_px, down_px) = (event.delta_x() * scale, event.delta_y() * scale);
    let is_notch = right_px.abs() < 1.0 && (!is_by_pixel || down_px.abs() >= NOTCH_PX);
    Event::Wheel {
        at: place(event),
        right_px,
        down_px,
        is_zoom: event.ctrl_key() || event.meta_key() || is_notch,
    }
}

/// A key went down; `None` for keys the drawing has no use for.
///
/// Keys that would scroll or leave the page are kept from doing so at the drawing. A field that is typed into takes
/// back and does again what was typed in it by itself.
#[must_use]
pub fn key_down(event: &web_sys::KeyboardEvent, focus: Focus) -> Option<Event> {
    let key = key(&event.key())?;
    if focus == Focus::Field && matches!(key, Key::Character('z' | 'y')) {
        return None;
    }
    let is_at_drawing = focus == Focus::Drawing;
    let scrolls = matches!(
        key,
        Key::Space | Key::Left | Key::Right | Key::Up | Key::Down | Key::Backspace
    );
    let is_shortcut = (event.ctrl_key() || event.meta_key()) && matches!(key, Key::Character('z' | 'y' | 's' | 'o'));
    let is_duplicate = is_at_drawing && (event.ctrl_key() || event.meta_key()) && key == Key::Character('d');
    if (is_at_drawing && scrolls) || is_shortcut || is_duplicate {
        event.prevent_default();
    }
    Some(Event::KeyDown(
        key,
        Modifiers {
            shift: event.shift_key(),
            control: event.ctrl_key() || event.meta_key(),
            alt: event.alt_key(),
        },
    ))
}

/// A key of a clicker or wireless keypad, which then does nothing else; `None` for other keys, and where keys are typed
/// or choose from a list.
#[must_use]
pub fn remote_key(event: &web_sys::KeyboardEvent, focus: Focus) -> Option<RemoteKey> {
    let takes_keys = matches!(focus, Focus::Field | Focus::List);
    if takes_keys || event.ctrl_key() || event.meta_key() || event.alt_key() {
        return None;
    }
    let key = RemoteKey::of(&event.key())?;
    event.prevent_default();
    Some(key)
}

/// Enter or Escape in a field: it is kept from doing anything else. `None` for other keys.
#[must_use]
pub fn field_key(event: &web_sys::Event) -> Option<Key> {
    let event: &web_sys::KeyboardEvent = event.unchecked_ref();
    let key = key(&event.key()).filter(|key| matches!(key, Key::Enter | Key::Escape))?;
    event.prevent_default();
    event.stop_propagation();
    Some(key)
}

/// Whether a key in a field of several lines ends what is typed: Escape, or Enter without Shift, which then do nothing
/// else. What is put together of several keys, as Chinese is, ends itself by Enter first.
#[must_use]
pub fn ends_words(event: &web_sys::KeyboardEvent) -> bool {
    !event.shift_key() && !event.is_composing() && field_key(event).is_some()
}

/// A key went up; `None` for keys the drawing has no use for.
#[must_use]
pub fn key_up(event: &web_sys::KeyboardEvent) -> Option<Event> {
    key(&event.key()).map(Event::KeyUp)
}

/// Where keys go at this moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Focus {
    /// The drawing has it.
    Drawing,
    /// The rail of tools, or nothing, has it: letters choose tools.
    Rail,
    /// A field that letters are typed into.
    Field,
    /// A list that is chosen from.
    List,
    /// Something takes letters or keys for itself.
    Elsewhere,
}

/// Where keys go at this moment.
#[must_use]
pub fn focus() -> Focus {
    let active = super::document::document().and_then(|document| document.active_element());
    let Some(active) = active else { return Focus::Rail };
    let is_within = |selector: &str| matches!(active.closest(selector), Ok(Some(_)));
    if is_within("[data-drawing]") {
        Focus::Drawing
    } else if is_within("[data-tools]") || active.tag_name().eq_ignore_ascii_case("body") {
        Focus::Rail
    } else if is_within("textarea, input:not([type='radio'], [type='checkbox'])") {
        Focus::Field
    } else if is_within("select") {
        Focus::List
    } else {
        Focus::Elsewhere
    }
}

fn pointer(event: &web_sys::PointerEvent) -> Pointer {
    let kind = match event.pointer_type().as_str() {
        "touch" => PointerKind::Touch,
        "pen" => PointerKind::Pen,
        _ => PointerKind::Mouse,
    };
    Pointer {
        id: event.pointer_id(),
        at: place(event),
        kind,
        modifiers: Modifiers {
            shift: event.shift_key(),
            control: event.ctrl_key() || event.meta_key(),
            alt: event.alt_key(),
        },
    }
}

/// Where a mouse event happened, from the top left of the element it was heard at.
fn place(event: &web_sys::MouseEvent) -> ScreenPoint {
    let (x, y) = (f64::from(event.client_x()), f64::from(event.client_y()));
    element_under(event).map_or(ScreenPoint::new(x, y), |element| {
        let bounds = element.get_bounding_client_rect();
        ScreenPoint::new(x - bounds.left(), y - bounds.top())
    })
}

fn element_under(event: &web_sys::Event) -> Option<web_sys::Element> {
    event.current_target().or_else(|| event.target())?.dyn_into().ok()
}

fn key(name: &str) -> Option<Key> {
    let mut letters = name.chars();
    Some(match name {
        "Enter" => Key::Enter,
        "Escape" => Key::Escape,
        "Backspace" => Key::Backspace,
        "Delete" => Key::Delete,
        " " => Key::Space,
        "ArrowLeft" => Key::Left,
        "ArrowRight" => Key::Right,
        "ArrowUp" => Key::Up,
        "ArrowDown" => Key::Down,
        _ => match (letters.next(), letters.next()) {
            (Some(letter), None) => Key::Character(lowercase(name).chars().next().unwrap_or(letter)),
            _ => return None,
        },
    })
}
