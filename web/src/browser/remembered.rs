//! What a window remembers of itself while it stands open, through a reload and a change of language.

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(js_namespace = sessionStorage)]
extern "C" {
    #[wasm_bindgen(js_name = getItem, catch)]
    fn item(key: &str) -> Result<Option<String>, JsValue>;

    #[wasm_bindgen(js_name = setItem, catch)]
    fn set_item(key: &str, value: &str) -> Result<(), JsValue>;
}

/// The name that stands for how the page is set.
const PAGE: &str = "hobnail-page";

/// How the page was set in this window; nothing where the browser remembers nothing.
#[must_use]
pub fn page() -> Option<String> {
    item(PAGE).ok().flatten()
}

/// Remembers how the page is set in this window.
pub fn keep_page(note: &str) {
    // A browser may refuse to remember anything: the page then begins anew as it does without this.
    let _ = set_item(PAGE, note);
}
