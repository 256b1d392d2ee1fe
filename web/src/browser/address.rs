//! The page's own address, which can carry a plan behind its `#`, and what the system does with an address: it copies
//! it, or hands it on to another program.
//!
//! What stands behind the `#` reaches no server.

use hobnail_core::exchange::address::NAME;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_namespace = ["navigator", "clipboard"], js_name = writeText, catch)]
    async fn write_to_clipboard(text: &str) -> Result<JsValue, JsValue>;

    #[wasm_bindgen(js_namespace = navigator, js_name = share, catch)]
    async fn share(what: &JsValue) -> Result<JsValue, JsValue>;
}

/// The plan that the page's address carries, as text.
#[must_use]
pub fn carried() -> Option<String> {
    let behind = web_sys::window()?.location().hash().ok()?;
    let behind = behind.strip_prefix('#')?.strip_prefix(NAME)?;
    Some(behind.to_owned())
}

/// Takes the plan out of the page's address; nothing is loaded anew.
pub fn drop_carried() {
    if carried().is_none() {
        return;
    }
    let Some(window) = web_sys::window() else { return };
    let path = window.location().href().unwrap_or_default();
    let before = path.split('#').next().unwrap_or_default();
    if let Ok(history) = window.history() {
        // A page from disk may not be let change its address; the plan then stays in it, which harms nothing.
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(before));
    }
}

/// Runs `work` whenever another address of this page is entered, for as long as it is open.
pub fn on_change(work: impl FnMut() + 'static) {
    let Some(window) = web_sys::window() else { return };
    let work = Closure::<dyn FnMut()>::new(work);
    // Adding a listener does not fail.
    let _ = window.add_event_listener_with_callback("hashchange", work.as_ref().unchecked_ref());
    work.forget();
}

/// Where others find this page: its own address, or for a page from disk the one it was given when it was made.
#[must_use]
pub fn of_page() -> Option<String> {
    let location = web_sys::window()?.location();
    let own = location.href().ok()?;
    if location.protocol().ok()? != "file:" {
        return own.split(['#', '?']).next().map(str::to_owned);
    }
    let given = super::document::document()?
        .query_selector("meta[name='hobnail-address']")
        .ok()??;
    given.get_attribute("content").filter(|address| !address.is_empty())
}

/// Puts a text on the clipboard; `false` where the browser does not let this page.
pub async fn copy(text: &str) -> bool {
    write_to_clipboard(text).await.is_ok()
}

/// Whether the system can hand an address on to another program.
#[must_use]
pub fn can_hand_on() -> bool {
    let navigator = web_sys::window().map(|window| window.navigator());
    navigator.is_some_and(|navigator| js_sys::Reflect::has(&navigator, &"share".into()).unwrap_or(false))
}

/// Asks the system to hand an address on; `false` where it refuses or the person thinks better of it.
pub async fn hand_on(title: &str, address: &str) -> bool {
    let what = js_sys::Object::new();
    for (name, value) in [("title", title), ("url", address)] {
        // An object of our own takes any member.
        let _ = js_sys::Reflect::set(&what, &name.into(), &value.into());
    }
    share(&what).await.is_ok()
}
