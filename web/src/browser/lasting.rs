//! Whether the browser promises to keep its store when room runs short.

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};

use super::keeping::{Then, once};

/// Whether it does; `None` where it does not say. It is first asked to, where `is_asked`: some browsers then ask the
/// person, others decide by how the page is used.
pub fn lasting(is_asked: bool, then: Then<Option<bool>>) {
    // Called with what is said, which is no event.
    let heard = once(Box::new(move |said| then(said.as_bool())));
    if listen(is_asked, &heard).is_err() {
        // The browser takes no such question, as on a page that did not come over a safe connection.
        let _ = heard.call0(&JsValue::NULL);
    }
}

fn listen(is_asked: bool, heard: &Function) -> Result<JsValue, JsValue> {
    let storage = web_sys::window().ok_or(JsValue::NULL)?.navigator().storage();
    let said: Promise = if is_asked {
        storage.persist()?
    } else {
        storage.persisted()?
    };
    // The bindings take closures that stay; this one is called once and gone, whether the promise holds or fails.
    let listen: Function = Reflect::get(&said, &"then".into())?.dyn_into()?;
    listen.call2(&said, heard, heard)
}
