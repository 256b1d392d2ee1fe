//! Opening and saving files, and reading those that come with the page.

use hobnail_core::say;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::reading::Source;
use crate::app::bases::kind::{Kind, LOOKED_FOR, START_BYTES, SYSTEM, WORLDS, beside, together};

/// A file that was opened: its name and its text, or why it could not be read.
pub type Opened = Result<(String, String), String>;

/// Files that were chosen or dropped together, by what they are.
#[derive(Default)]
pub struct Sorted {
    /// Plans, in their order.
    pub plans: Vec<Opened>,
    /// The last picture.
    pub picture: Option<web_sys::File>,
    /// The world file that places it.
    pub world: Option<Source>,
    /// Base data.
    pub bases: Vec<Source>,
}

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

/// Looks what the files are that were chosen in the file input `event` comes from, reads the plans among them, and hands
/// all on in their order; nothing when none was chosen.
///
/// The input is emptied, so that choosing the same file again is heard again.
pub fn read_chosen(event: &web_sys::Event, then: impl FnOnce(Sorted) + 'static) {
    sort_out(chosen(event), Box::new(then));
}

/// The files chosen in the file input `event` comes from, as base data whatever they are.
#[must_use]
pub fn chosen_bases(event: &web_sys::Event) -> Vec<Source> {
    sources(chosen(event))
}

/// Looks what the files are that were dropped on the page, as [`read_chosen`] does.
pub fn read_dropped(event: &web_sys::Event, then: impl FnOnce(Sorted) + 'static) {
    let event: &web_sys::DragEvent = event.unchecked_ref();
    event.prevent_default();
    let dropped = event.data_transfer().and_then(|transfer| transfer.files());
    sort_out(held(dropped), Box::new(then));
}

fn chosen(event: &web_sys::Event) -> Vec<web_sys::File> {
    let input = event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(input) = input else { return Vec::new() };
    // Asked for at once: the input that held the files is emptied.
    let files = held(input.files());
    input.set_value("");
    files
}

fn held(files: Option<web_sys::FileList>) -> Vec<web_sys::File> {
    let of = |files: web_sys::FileList| (0..files.length()).filter_map(|place| files.get(place)).collect();
    files.map(of).unwrap_or_default()
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
    super::document::after_this(async move {
        let read = super::loader::read_text(&path).await.map(|text| (path.clone(), text));
        then(read.map_err(|fault| say!("page-file-not-fetched", file = path, fault = fault)));
    });
}

/// Files of base data, those that belong together as one.
fn sources(files: Vec<web_sys::File>) -> Vec<Source> {
    let names: Vec<String> = files.iter().map(web_sys::File::name).collect();
    let source = |(main, beside): (usize, Vec<usize>)| {
        let beside = beside.into_iter().filter_map(|place| files.get(place));
        Some(Source {
            file: files.get(main)?.clone(),
            beside: beside.collect(),
            picture: None,
        })
    };
    together(&names).into_iter().filter_map(source).collect()
}

impl Sorted {
    /// Takes base data: the world file of the picture that is laid goes with it.
    fn take(&mut self, mut bases: Vec<web_sys::File>) {
        if let Some(picture) = &self.picture {
            let picture = picture.name();
            let names: Vec<String> = bases.iter().map(web_sys::File::name).collect();
            if let Some(world) = beside(&picture, &names, &WORLDS) {
                let given = js_sys::Array::new();
                let system = beside(&picture, &names, &SYSTEM);
                if let Some(file) = system.and_then(|place| bases.get(place)) {
                    given.push(file);
                }
                self.world = Some(Source {
                    file: bases.remove(world),
                    beside: given,
                    picture: None,
                });
                // A shapefile of that name has its system from the same file.
                if let Some(system) = system.filter(|_| beside(&picture, &names, &[".shp"]).is_none()) {
                    bases.remove(system - usize::from(system > world));
                }
            }
        }
        self.bases = sources(bases);
    }
}

fn sort_out(files: Vec<web_sys::File>, then: Box<dyn FnOnce(Sorted)>) {
    if files.is_empty() {
        return;
    }
    super::document::after_this(async move {
        let mut sorted = Sorted::default();
        let mut bases = Vec::new();
        for file in files {
            let name = file.name();
            match look_at(&file).await {
                Some((Kind::Picture, _)) => sorted.picture = Some(file),
                Some((Kind::Base, _)) => bases.push(file),
                Some((_, text)) => sorted.plans.push(Ok((name, text))),
                None => sorted.plans.push(Err(say!("page-file-not-read", file = name))),
            }
        }
        sorted.take(bases);
        then(sorted);
    });
}

/// What a file is, and its text where it is a plan; `None` where it can not be read.
async fn look_at(file: &web_sys::File) -> Option<(Kind, String)> {
    let start = file.slice_with_f64_and_f64(0.0, START_BYTES as f64).ok()?;
    let start = JsFuture::from(start.array_buffer()).await.ok()?;
    let mut kind = Kind::of(&file.name(), &js_sys::Uint8Array::new(&start).to_vec());
    if matches!(kind, Kind::Picture | Kind::Base) {
        return Some((kind, String::new()));
    }
    // Looked through where it is: base data may be too much to be brought here.
    let text: js_sys::JsString = JsFuture::from(file.text()).await.ok()?.dyn_into().ok()?;
    if kind == Kind::Json {
        kind = Kind::of_json(LOOKED_FOR.map(|word| text.includes(word, 0)));
    }
    let is_plan = kind == Kind::Plan;
    Some((kind, if is_plan { String::from(text) } else { String::new() }))
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
