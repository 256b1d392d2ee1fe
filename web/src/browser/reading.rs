//! A file of base data being read in a worker of its own, which is started for it and ended with it.
//!
//! The worker runs `web/reading.js` and the readers' module; the file itself goes to it, so the page never holds its
//! bytes. What it tells: `["share", number]`, `["base", heading]`, `["piece", shapes, positions, words]` any number of
//! times, `["end"]`, and `["heights", numbers, heights]` as often as they are asked for; or `["refused", faults]`, `["failed", words]`. Each piece is some thousand positions, so taking it is
//! short work between two frames.

use std::cell::RefCell;
use std::rc::Rc;

use hobnail_core::say;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::pictures::PictureFile;
use super::{loader, words};
use crate::app::bases::heights::{GridSaid, Heights, Request};
use crate::app::bases::{Base, Coordinates, FaultSaid};

/// What is heard of a file that is being read.
pub enum Heard {
    /// This share is read, 0 to 1.
    Share(f64),
    /// All is read.
    Base(Box<Base>),
    /// Heights that were asked for.
    Heights(Box<Heights>),
    /// Nothing could be read.
    Refused(Vec<FaultSaid>),
    /// Reading stopped; why, in a sentence.
    Failed(String),
}

/// What a person chose before a file is read; the readers' own choice where there is nothing.
#[derive(Clone, Debug, Default)]
pub struct Options {
    /// West, south, east and north in degrees: what lies outside is not read.
    pub box_deg: Option<[f64; 4]>,
    /// The coordinate system of the file, `EPSG:number`, a PROJ string or WKT.
    pub system: Option<String>,
    /// Names of the columns of x and y.
    pub columns: Option<[String; 2]>,
}

/// A file of base data as the browser holds it, and files that lie beside it and belong to it.
#[derive(Clone)]
pub struct Source {
    pub(super) file: web_sys::File,
    pub(super) beside: js_sys::Array,
    /// The picture that the file places, where it is a world file.
    pub picture: Option<Rc<PictureFile>>,
}

impl Source {
    /// The file's name.
    #[must_use]
    pub fn name(&self) -> String {
        self.file.name()
    }
}

/// A file that is being read; dropping it ends the worker, and nothing more is heard.
pub struct Reading {
    worker: web_sys::Worker,
    // Held as long as the worker can call them.
    _heard: Closure<dyn FnMut(web_sys::MessageEvent)>,
    _stopped: Closure<dyn FnMut(web_sys::Event)>,
}

impl Drop for Reading {
    fn drop(&mut self) {
        self.worker.set_onmessage(None);
        self.worker.set_onerror(None);
        self.worker.terminate();
    }
}

/// A member of what was told; undefined where it has none of this name.
fn member(told: &JsValue, name: &str) -> JsValue {
    js_sys::Reflect::get(told, &name.into()).unwrap_or_default()
}

/// The text of a member.
fn text(told: &JsValue, name: &str) -> Option<String> {
    member(told, name).as_string()
}

/// The items of a member that is a list, each read by `read`.
fn list<T>(told: &JsValue, name: &str, read: impl Fn(&JsValue) -> Option<T>) -> Option<Vec<T>> {
    let list = member(told, name).dyn_into::<js_sys::Array>().ok()?;
    list.iter().map(|item| read(&item)).collect()
}

/// A name and its value, as arguments of messages are told.
fn pair(told: &JsValue) -> Option<(String, String)> {
    let pair = told.dyn_ref::<js_sys::Array>()?;
    Some((pair.get(0).as_string()?, pair.get(1).as_string()?))
}

/// A fault in words, as the readers tell it.
fn fault_said(told: &JsValue) -> Option<FaultSaid> {
    Some(FaultSaid {
        place: words::say_by_name(&text(told, "place")?, &list(told, "place_arguments", pair)?),
        words: words::say_by_name(&text(told, "message")?, &list(told, "arguments", pair)?),
    })
}

impl Reading {
    /// Starts to read a file.
    ///
    /// # Errors
    /// A sentence, when the browser starts no worker.
    pub fn start(source: &Source, options: &Options, hear: impl FnMut(Heard) + 'static) -> Result<Self, String> {
        let name = source.name();
        let refused = |_: JsValue| say!("bases-no-worker").to_owned();
        let options = told_options(options);
        if let Some(picture) = &source.picture {
            let [columns, rows] = picture.size_px.map(JsValue::from);
            let size = js_sys::Array::of2(&columns, &rows);
            // Setting a property of an object of our own does not fail.
            let _ = js_sys::Reflect::set(&options, &"picture_px".into(), &size);
        }
        let asked = js_sys::Object::new();
        // Setting a property of an object of our own does not fail.
        let _ = js_sys::Reflect::set(&asked, &"file".into(), &source.file);
        let _ = js_sys::Reflect::set(&asked, &"beside".into(), &source.beside);
        let _ = js_sys::Reflect::set(&asked, &"options".into(), &options);
        let worker = loader::start_reading(&asked).map_err(refused)?;
        let hear = Rc::new(RefCell::new(hear));
        let tell = Rc::clone(&hear);
        let mut base: Option<Box<Base>> = None;
        let heard = Closure::<dyn FnMut(web_sys::MessageEvent)>::new(move |event: web_sys::MessageEvent| {
            let told = taken(&name, &mut base, &js_sys::Array::from(&event.data()));
            if let Some(told) = told.unwrap_or_else(|| Some(Heard::Failed(say!("bases-old-module").to_owned()))) {
                (tell.borrow_mut())(told);
            }
        });
        worker.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        let stopped = Closure::<dyn FnMut(web_sys::Event)>::new(move |event: web_sys::Event| {
            let message = js_sys::Reflect::get(&event, &"message".into()).ok();
            let fault = message.and_then(|message| message.as_string()).unwrap_or_default();
            (hear.borrow_mut())(Heard::Failed(say!("bases-stopped", fault = fault)));
        });
        worker.set_onerror(Some(stopped.as_ref().unchecked_ref()));
        Ok(Self {
            worker,
            _heard: heard,
            _stopped: stopped,
        })
    }

    /// Asks for heights, once all is read.
    pub fn ask(&self, request: &Request) {
        // Numbers can always be handed over.
        let _ = self
            .worker
            .post_message(&js_sys::Float64Array::from(request.0.as_slice()));
    }
}

/// What a message says; the inner `None` where it is only noted, the outer where it is no message of the readers.
fn taken(name: &str, base: &mut Option<Box<Base>>, message: &js_sys::Array) -> Option<Option<Heard>> {
    let said = message.get(1);
    match message.get(0).as_string()?.as_str() {
        "share" => Some(Some(Heard::Share(said.as_f64()?))),
        "base" => {
            *base = Some(Box::new(begun(name, &said)?));
            Some(None)
        }
        "piece" => {
            let shapes = said.dyn_into::<js_sys::Uint32Array>().ok()?.to_vec();
            let positions = message.get(2).dyn_into::<js_sys::Float64Array>().ok()?.to_vec();
            let words = message.get(3).as_string()?;
            base.as_mut()?.add_piece(&shapes, &positions, &words).ok()?;
            Some(None)
        }
        "heights" => {
            let numbers = said.dyn_into::<js_sys::Float64Array>().ok()?.to_vec();
            let heights_mm = message.get(2).dyn_into::<js_sys::Int32Array>().ok()?.to_vec();
            Some(Some(Heard::Heights(Box::new(Heights::told(&numbers, heights_mm)?))))
        }
        "end" => Some(Some(Heard::Base(base.take()?))),
        "refused" => {
            let faults = said.dyn_into::<js_sys::Array>().ok()?;
            let faults = faults.iter().map(|fault| fault_said(&fault)).collect::<Option<_>>()?;
            Some(Some(Heard::Refused(faults)))
        }
        "failed" => {
            let fault = said.as_string().unwrap_or_default();
            Some(Some(Heard::Failed(say!("bases-stopped", fault = fault))))
        }
        _ => None,
    }
}

/// The heading as the readers tell it; a drawing's coordinates carry more than is needed here.
fn begun(name: &str, heading: &JsValue) -> Option<Base> {
    let coordinates = member(heading, "coordinates");
    let unit_m = member(&coordinates, "unit_m").as_f64();
    let coordinates = match (text(&coordinates, "kind")?.as_str(), unit_m) {
        ("drawing_millimeters", Some(unit_m)) => Coordinates::Drawing { unit_m },
        _ => Coordinates::Degrees,
    };
    Some(Base {
        attribution: text(heading, "attribution")?,
        system: text(heading, "system")?,
        layers: list(heading, "layers", JsValue::as_string)?,
        corners: js_sys::Float64Array::new(&member(heading, "corners")).to_vec(),
        grid: GridSaid::told(&js_sys::Float64Array::new(&member(heading, "heights")).to_vec()),
        faults: list(heading, "faults", fault_said)?,
        ..Base::new(name, coordinates)
    })
}

/// The options as the readers take them, without what was not chosen.
fn told_options(options: &Options) -> JsValue {
    let told = js_sys::Object::new();
    let set = |name: &str, value: JsValue| {
        // Setting a property of an object of our own does not fail.
        let _ = js_sys::Reflect::set(&told, &name.into(), &value);
    };
    if let Some(box_deg) = options.box_deg {
        set(
            "box_deg",
            box_deg.into_iter().map(JsValue::from).collect::<js_sys::Array>().into(),
        );
    }
    if let Some(system) = &options.system {
        set("system", system.into());
    }
    if let Some(columns) = &options.columns {
        set(
            "columns",
            columns.iter().map(JsValue::from).collect::<js_sys::Array>().into(),
        );
    }
    told.into()
}
