//! The script that loaded this module: it knows where the page's files are, and is asked for them here.
//!
//! Two scripts answer alike: `web/start.js` for files that lie beside the page, `web/one_file.js` for files inside it.

use hobnail_core::say;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(js_namespace = hobnail)]
extern "C" {
    #[wasm_bindgen(js_name = readText, catch)]
    async fn ask_for_text(path: &str) -> Result<JsValue, JsValue>;

    #[wasm_bindgen(js_name = startWorker, catch)]
    fn ask_for_worker(compiled: &JsValue) -> Result<web_sys::Worker, JsValue>;

    #[wasm_bindgen(js_name = startReading, catch)]
    fn ask_for_reading(asked: &JsValue) -> Result<web_sys::Worker, JsValue>;

    #[wasm_bindgen(js_name = holdsPage)]
    fn says_whether_it_holds_the_page() -> bool;

    #[wasm_bindgen(js_name = pageWith, catch)]
    fn ask_for_page_with(plan: &str) -> Result<String, JsValue>;

    #[wasm_bindgen(js_name = carriedPlan)]
    fn ask_for_carried_plan() -> Option<String>;
}

/// The text of a file that comes with the page, such as a sample sketch.
///
/// # Errors
/// A sentence without its stop, when there is no such file.
pub async fn read_text(path: &str) -> Result<String, String> {
    let in_words = |fault: JsValue| {
        fault
            .as_string()
            .unwrap_or_else(|| say!("page-request-failed").to_owned())
    };
    let text = ask_for_text(path).await.map_err(in_words)?;
    text.as_string().ok_or_else(|| say!("page-answer-no-text").to_owned())
}

/// A worker that runs this same module. The compiled module is handed over, so nothing is compiled twice.
///
/// # Errors
/// The browser's own, when it starts none.
pub fn start_worker() -> Result<web_sys::Worker, JsValue> {
    ask_for_worker(&wasm_bindgen::module())
}

/// A worker that reads a file of base data: `asked` holds the file and the options (`web/reading.js`).
///
/// # Errors
/// The browser's own, when it starts none.
pub fn start_reading(asked: &JsValue) -> Result<web_sys::Worker, JsValue> {
    ask_for_reading(asked)
}

/// Whether the whole page is at hand, to be saved with a plan inside: so it is where it came in one file.
#[must_use]
pub fn holds_page() -> bool {
    says_whether_it_holds_the_page()
}

/// The page in one file, with a plan file's text inside instead of what was in it.
///
/// # Errors
/// A sentence, where the page is not at hand.
pub fn page_with(plan: &str) -> Result<String, String> {
    ask_for_page_with(plan).map_err(|_| say!("share-no-page").to_owned())
}

/// The text of the plan file that came inside this page.
#[must_use]
pub fn carried_plan() -> Option<String> {
    ask_for_carried_plan()
}
