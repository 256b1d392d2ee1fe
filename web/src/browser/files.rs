//! Opening and saving files, and reading those that come with the page.

use hobnail_core::say;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// A file that was opened: its name and its text, or why it could not be read.
pub type Opened = Result<(String, String), String>;

/// How long a saved file's address is kept.
const KEPT_MS: i32 = 60_000;

/// Offers `text` as a file of this name, to be kept where the user's browser keeps files.
///
/// # Errors
/// A sentence, when the browser refuses.
pub fn save(name: &str, media_type: &str, text: &str) -> Result<(), String> {
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(media_type);
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options);
    save_blob(name, &blob.map_err(|_| say!("page-file-refused", file = name))?)
}

/// Offers a blob as a file of this name.
///
/// # Errors
/// A sentence, when the browser refuses.
pub fn save_blob(name: &str, blob: &web_sys::Blob) -> Result<(), String> {
    let refused = |_: JsValue| say!("page-file-refused", file = name);
    let document = super::document::document().ok_or_else(|| say!("page-no-page-to-save").to_owned())?;
    let address = web_sys::Url::create_object_url_with_blob(blob).map_err(refused)?;
    let link: web_sys::HtmlAnchorElement = document
        .create_element("a")
        .map_err(refused)?
        .dyn_into()
        .map_err(|_| say!("page-file-refused", file = name))?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // Some browsers read it only after a while.
    super::document::later(KEPT_MS, move || {
        // An address of our own is always known.
        let _ = web_sys::Url::revoke_object_url(&address);
    });
    Ok(())
}

/// An address under which this page alone finds `text` as a file.
///
/// # Errors
/// The browser's own, when it refuses.
pub fn address_of(media_type: &str, text: &str) -> Result<String, JsValue> {
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(media_type);
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options)?;
    web_sys::Url::create_object_url_with_blob(&blob)
}

/// Reads the files chosen in the file input `event` comes from, and hands them on in their order; nothing when none was
/// chosen.
///
/// The input is emptied, so that choosing the same file again is heard again.
pub fn read_chosen(event: &web_sys::Event, then: impl FnOnce(Vec<Opened>) + 'static) {
    let input = event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(input) = input else { return };
    read(input.files(), Box::new(then));
    input.set_value("");
}

/// Reads the files that were dropped on the page, and hands them on in their order; nothing when none was.
pub fn read_dropped(event: &web_sys::Event, then: impl FnOnce(Vec<Opened>) + 'static) {
    let event: &web_sys::DragEvent = event.unchecked_ref();
    event.prevent_default();
    let dropped = event.data_transfer().and_then(|transfer| transfer.files());
    read(dropped, Box::new(then));
}

/// Opens the browser's own file chooser, by way of the file input with this id.
pub fn choose(input_id: &str) {
    let input = super::document::document().and_then(|document| document.get_element_by_id(input_id));
    if let Some(input) = input.and_then(|input| input.dyn_into::<web_sys::HtmlElement>().ok()) {
        input.click();
    }
}

/// Reads a file that comes with the page, such as a sample sketch.
pub fn read_own(path: &str, then: impl FnOnce(Opened) + 'static) {
    let path = path.to_owned();
    wasm_bindgen_futures::spawn_local(async move {
        let read = super::loader::read_text(&path).await.map(|text| (path.clone(), text));
        then(read.map_err(|fault| say!("page-file-not-fetched", file = path, fault = fault)));
    });
}

fn read(files: Option<web_sys::FileList>, then: Box<dyn FnOnce(Vec<Opened>)>) {
    let Some(files) = files.filter(|files| files.length() > 0) else {
        return;
    };
    // Asked for at once: the input that held the files is emptied.
    let held = (0..files.length()).filter_map(|place| files.get(place));
    let asked: Vec<(String, js_sys::Promise)> = held.map(|file| (file.name(), file.text())).collect();
    wasm_bindgen_futures::spawn_local(async move {
        let mut opened = Vec::new();
        for (name, text) in asked {
            let read = wasm_bindgen_futures::JsFuture::from(text).await;
            opened.push(match read.ok().and_then(|text| text.as_string()) {
                Some(text) => Ok((name, text)),
                None => Err(say!("page-file-not-read", file = name)),
            });
        }
        then(opened);
    });
}

/// Lets files be dropped on the page at all.
pub fn accept_drops() {
    let Some(document) = super::document::document() else {
        return;
    };
    let allow = Closure::<dyn FnMut(web_sys::Event)>::new(|event: web_sys::Event| event.prevent_default());
    // Adding a listener does not fail.
    let _ = document.add_event_listener_with_callback("dragover", allow.as_ref().unchecked_ref());
    allow.forget();
}
