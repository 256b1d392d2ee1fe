//! The visible notice for a fault of our own: a page that has failed says so and takes no further events.

use std::cell::RefCell;
use std::sync::atomic::{AtomicBool, Ordering};

use wasm_bindgen::JsValue;

static STOPPED: AtomicBool = AtomicBool::new(false);

/// Whether the page has failed: event handlers ask this first and do nothing when it has.
pub fn has_stopped() -> bool {
    STOPPED.load(Ordering::Relaxed)
}

/// From now on a panic shows the notice of `index.html` with the fault in words, and writes it to the console.
pub fn show_on_panic() {
    std::panic::set_hook(Box::new(|fault| {
        STOPPED.store(true, Ordering::Relaxed);
        let message = fault.to_string();
        web_sys::console::error_1(&JsValue::from_str(&message));
        show(&message);
    }));
}

/// A file with the work that was kept: its name, its media type, its text.
pub type Kept = (String, &'static str, String);

type Keeper = Box<dyn Fn() -> Option<Kept>>;

thread_local! {
    static KEPT: RefCell<Option<Keeper>> = const { RefCell::new(None) };
}

/// How the work can be had from now on when the page fails: called then, never before.
pub fn keep_by(work: impl Fn() -> Option<Kept> + 'static) {
    KEPT.set(Some(Box::new(work)));
}

/// Puts the kept work behind the notice's link, which then shows.
fn offer_kept(document: &web_sys::Document) -> Option<()> {
    let (name, media_type, text) = KEPT.take()?()?;
    let address = super::files::address_of(media_type, &text).ok()?;
    let link = document.get_element_by_id("notice-save")?;
    link.set_attribute("href", &address).ok()?;
    link.set_attribute("download", &name).ok()?;
    link.remove_attribute("hidden").ok()
}

/// Shows the notice. Without a document (in a worker) there is nothing to show it on, and the console has it already.
fn show(message: &str) {
    let Some(document) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    if let Some(details) = document.get_element_by_id("notice-details") {
        details.set_text_content(Some(message));
    }
    // Without kept work, or a browser that takes it, the notice stands without a link.
    let _ = offer_kept(&document);
    if let Some(notice) = document.get_element_by_id("notice") {
        // Removing an attribute does not fail for a legal name.
        let _ = notice.remove_attribute("hidden");
    }
}
