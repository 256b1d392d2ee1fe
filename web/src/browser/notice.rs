//! The visible notice for a fault of our own: a page that has failed says so and takes no further events.

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

/// Shows the notice. Without a document (in a worker) there is nothing to show it on, and the console has it already.
fn show(message: &str) {
    let Some(document) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    if let Some(details) = document.get_element_by_id("notice-details") {
        details.set_text_content(Some(message));
    }
    if let Some(notice) = document.get_element_by_id("notice") {
        // Removing an attribute does not fail for a legal name.
        let _ = notice.remove_attribute("hidden");
    }
}
