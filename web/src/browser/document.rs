//! The page's own document: readiness, titles, sizes, frames, clock.

use std::pin::Pin;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// The page's document; `None` in a worker.
#[must_use]
pub fn document() -> Option<web_sys::Document> {
    web_sys::window().and_then(|window| window.document())
}

/// Whether this module was loaded as a worker, which has no page of its own.
#[must_use]
pub fn is_worker() -> bool {
    web_sys::window().is_none()
}

/// Says on the document that the page has started, which the style sheet and the tests in real browsers wait for.
///
/// The loading line in `index.html` goes away with it.
pub fn mark_ready() {
    set_root_attribute("data-ready", "");
}

/// Sets an attribute of the document's root element, such as one that a test waits for.
pub fn set_root_attribute(name: &str, value: &str) {
    if let Some(root) = document().and_then(|document| document.document_element()) {
        // Setting an attribute with a legal name does not fail.
        let _ = root.set_attribute(name, value);
    }
}

/// Names the window after the plan.
pub fn set_title(title: &str) {
    if let Some(document) = document() {
        document.set_title(title);
    }
}

/// Milliseconds since the page was opened.
#[must_use]
pub fn now_ms() -> f64 {
    web_sys::window()
        .and_then(|window| window.performance())
        .map_or(0.0, |clock| clock.now())
}

/// Milliseconds since the beginning of 1970, by the clock of this machine.
#[must_use]
pub fn clock_ms() -> f64 {
    js_sys::Date::now()
}

/// A name that nothing else in this browser has: the time and a random number.
#[must_use]
pub fn fresh_name() -> String {
    let random = (js_sys::Math::random() * f64::from(u32::MAX)) as u32;
    format!("{}-{random}", clock_ms() as u64)
}

/// Device pixels per CSS pixel.
#[must_use]
pub fn device_pixel_ratio() -> f64 {
    web_sys::window().map_or(1.0, |window| window.device_pixel_ratio())
}

/// Runs `work` before the next frame is painted. Without a window nothing is painted, and nothing runs.
pub fn before_next_frame(work: impl FnOnce() + 'static) {
    let Some(window) = web_sys::window() else { return };
    // A function is always accepted.
    let _ = window.request_animation_frame(&once(Box::new(work)));
}

/// Runs `work` soon, after what the browser has to do first: the beat of jobs sliced on the main thread.
pub fn soon(work: impl FnOnce() + 'static) {
    later(0, work);
}

/// Runs `work` after so many milliseconds.
pub fn later(delay_ms: i32, work: impl FnOnce() + 'static) {
    later_once(delay_ms, Box::new(work));
}

fn later_once(delay_ms: i32, work: Box<dyn FnOnce()>) {
    let Some(window) = web_sys::window() else { return };
    // A function is always accepted.
    let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&once(work), delay_ms);
}

/// A function of the page that does the work once; one for all work, since what hands a closure over weighs something for
/// each kind of it.
fn once(work: Box<dyn FnOnce()>) -> js_sys::Function {
    Closure::once_into_js(work).unchecked_into()
}

/// Runs `work` whenever the window changes its size, for as long as the page is open.
pub fn on_resize(work: impl FnMut() + 'static) {
    let Some(window) = web_sys::window() else { return };
    let work = Closure::<dyn FnMut()>::new(work);
    // Adding a listener does not fail.
    let _ = window.add_event_listener_with_callback("resize", work.as_ref().unchecked_ref());
    work.forget();
}

/// Runs `work` for each key event of the page, for as long as it is open.
pub fn on_key(name: &str, mut work: impl FnMut(&web_sys::KeyboardEvent) + 'static) {
    let Some(document) = document() else { return };
    let work = Closure::<dyn FnMut(web_sys::KeyboardEvent)>::new(move |event| work(&event));
    // Adding a listener does not fail.
    let _ = document.add_event_listener_with_callback(name, work.as_ref().unchecked_ref());
    work.forget();
}

/// Moves the keyboard's focus to the element with this id.
pub fn focus_on(id: &str) {
    let element = document().and_then(|document| document.get_element_by_id(id));
    if let Some(element) = element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        // An element that can not take the focus leaves it where it is.
        let _ = element.focus();
    }
}

/// Whether the keyboard's focus is in an element that a selector of style sheets names.
#[must_use]
pub fn has_focus_within(selector: &str) -> bool {
    let active = document().and_then(|document| document.active_element());
    active.is_some_and(|active| matches!(active.closest(selector), Ok(Some(_))))
}

/// Puts the value back that a field holds after what was typed into it was taken or refused.
pub fn put_back(event: &web_sys::Event, value: &str) {
    if let Some(field) = event.target() {
        // What a field holds has one name for a line and for a text, which are of different types.
        let _ = js_sys::Reflect::set(&field, &"value".into(), &value.into());
    }
}

/// Width and height of the element with this id, in CSS pixels.
#[must_use]
pub fn size_of(id: &str) -> Option<(f64, f64)> {
    let bounds = document()?.get_element_by_id(id)?.get_bounding_client_rect();
    Some((bounds.width(), bounds.height()))
}

/// Where the element with this id lies: left, top, right and bottom in CSS pixels.
#[must_use]
pub fn bounds_of(id: &str) -> Option<[f64; 4]> {
    let bounds = document()?.get_element_by_id(id)?.get_bounding_client_rect();
    Some([bounds.left(), bounds.top(), bounds.right(), bounds.bottom()])
}

/// Writes something on the element with this id, for tests that wait for it or measure.
pub fn note(id: &str, attribute: &str, value: &str) {
    if let Some(element) = document().and_then(|document| document.get_element_by_id(id)) {
        // Setting an attribute with a legal name does not fail.
        let _ = element.set_attribute(attribute, value);
    }
}

/// Whether the page's address asks for something, as `?name=value` does.
#[must_use]
pub fn address_asks(name: &str, value: &str) -> bool {
    let query = web_sys::window()
        .and_then(|window| window.location().search().ok())
        .unwrap_or_default();
    query
        .trim_start_matches('?')
        .split('&')
        .any(|part| part.split_once('=') == Some((name, value)))
}

/// Opens or closes a menu, or a dialog that takes the whole window.
pub fn set_open(id: &str, is_open: bool) {
    let Some(element) = document().and_then(|document| document.get_element_by_id(id)) else {
        return;
    };
    match element.dyn_ref::<web_sys::HtmlDialogElement>() {
        // A dialog that stands in the page and is closed can be shown.
        Some(dialog) if is_open && !dialog.open() => drop(dialog.show_modal()),
        Some(dialog) if !is_open => dialog.close(),
        Some(_) => {}
        None => drop(element.toggle_attribute_with_force("open", is_open)),
    }
}

/// Whether a menu stands open.
#[must_use]
pub fn is_open(id: &str) -> bool {
    let element = document().and_then(|document| document.get_element_by_id(id));
    element.is_some_and(|element| element.has_attribute("open"))
}

/// Closes the menu that the keyboard is in and goes back to what opens it; `false` where it is in none.
pub fn leave_menu() -> bool {
    let active = document().and_then(|document| document.active_element());
    let menu = active.and_then(|active| active.closest("[data-menu][open]").ok().flatten());
    let Some(menu) = menu else { return false };
    // Its summary is its first; one that can not take the focus leaves it where it is.
    let summary = menu.first_element_child().and_then(|first| first.dyn_into().ok());
    let _ = summary.map(|summary: web_sys::HtmlElement| summary.focus());
    menu.remove_attribute("open").is_ok()
}

/// Closes the menu that stands open, if one does.
pub fn close_menu() {
    let menu = document().and_then(|document| document.query_selector("[data-menu][open]").ok().flatten());
    // An attribute that is there can be taken away.
    let _ = menu.map(|menu| menu.remove_attribute("open"));
}

/// Does this after what is being done, and after all that was put off before it.
pub fn after_this(work: impl Future<Output = ()> + 'static) {
    // One routine for all, as for `once`.
    begin(Box::pin(work));
}

fn begin(work: Pin<Box<dyn Future<Output = ()>>>) {
    wasm_bindgen_futures::spawn_local(work);
}
