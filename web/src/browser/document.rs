//! The page's own document.

/// Says on the document that the page has started, which the style sheet and the tests in real browsers wait for.
///
/// The loading line in `index.html` goes away with it.
pub fn mark_ready() {
    let root = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.document_element());
    if let Some(root) = root {
        // Setting an attribute with a legal name does not fail.
        let _ = root.set_attribute("data-ready", "");
    }
}
