//! A file of base data being read in a worker of its own, which is started for it and ended with it.
//!
//! The worker runs `web/reading.js` and the readers' module; the file itself goes to it, so the page never holds its
//! bytes. What it tells: `["share", number]`, `["base", heading]`, `["piece", shapes, positions, words]` any number of
//! times, `["end"]`; or `["refused", faults]`, `["failed", words]`. Each piece is some thousand positions, so taking it is
//! short work between two frames.

use std::cell::RefCell;
use std::rc::Rc;

use hobnail_core::say;
use serde::{Deserialize, Serialize};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::{loader, words};
use crate::app::bases::{Base, Coordinates, FaultSaid};

/// What is heard of a file that is being read.
pub enum Heard {
    /// This share is read, 0 to 1.
    Share(f64),
    /// All is read.
    Base(Box<Base>),
    /// Nothing could be read.
    Refused(Vec<FaultSaid>),
    /// Reading stopped; why, in a sentence.
    Failed(String),
}

/// What a person chose before a file is read; the readers' own choice where there is nothing.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Options {
    /// West, south, east and north in degrees: what lies outside is not read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub box_deg: Option<[f64; 4]>,
    /// The coordinate system of the file, `EPSG:number`, a PROJ string or WKT.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub system: Option<String>,
    /// Meters in one unit of a drawing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_m: Option<f64>,
    /// Names of the columns of x and y.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub columns: Option<[String; 2]>,
}

/// A file of base data as the browser holds it, and files that lie beside it and belong to it.
#[derive(Clone)]
pub struct Source {
    pub(super) file: web_sys::File,
    pub(super) beside: js_sys::Array,
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

/// The heading as the readers tell it; a drawing's coordinates carry more than is needed here.
#[derive(Deserialize)]
struct Heading {
    coordinates: Told,
    system: String,
    attribution: String,
    layers: Vec<String>,
    faults: Vec<Fault>,
    grids_count: u32,
}

#[derive(Deserialize)]
struct Told {
    kind: String,
    unit_m: Option<f64>,
}

#[derive(Deserialize)]
struct Fault {
    message: String,
    arguments: Vec<(String, String)>,
    place: String,
    place_arguments: Vec<(String, String)>,
}

impl Fault {
    fn said(self) -> FaultSaid {
        FaultSaid {
            place: words::say_by_name(&self.place, &self.place_arguments),
            words: words::say_by_name(&self.message, &self.arguments),
        }
    }
}

impl Reading {
    /// Starts to read a file.
    ///
    /// # Errors
    /// A sentence, when the browser starts no worker.
    pub fn start(source: &Source, options: &Options, hear: impl FnMut(Heard) + 'static) -> Result<Self, String> {
        let name = source.name();
        let refused = |_: JsValue| say!("bases-no-worker").to_owned();
        let options = serde_wasm_bindgen::to_value(options).map_err(|fault| refused(fault.into()))?;
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
}

/// What a message says; the inner `None` where it is only noted, the outer where it is no message of the readers.
fn taken(name: &str, base: &mut Option<Box<Base>>, message: &js_sys::Array) -> Option<Option<Heard>> {
    let said = message.get(1);
    match message.get(0).as_string()?.as_str() {
        "share" => Some(Some(Heard::Share(said.as_f64()?))),
        "base" => {
            *base = Some(Box::new(begun(name, serde_wasm_bindgen::from_value(said).ok()?)));
            Some(None)
        }
        "piece" => {
            let shapes = said.dyn_into::<js_sys::Uint32Array>().ok()?.to_vec();
            let positions = message.get(2).dyn_into::<js_sys::Float64Array>().ok()?.to_vec();
            let words = message.get(3).as_string()?;
            base.as_mut()?.add_piece(&shapes, &positions, &words).ok()?;
            Some(None)
        }
        "end" => Some(Some(Heard::Base(base.take()?))),
        "refused" => {
            let faults: Vec<Fault> = serde_wasm_bindgen::from_value(said).ok()?;
            Some(Some(Heard::Refused(faults.into_iter().map(Fault::said).collect())))
        }
        "failed" => {
            let fault = said.as_string().unwrap_or_default();
            Some(Some(Heard::Failed(say!("bases-stopped", fault = fault))))
        }
        _ => None,
    }
}

fn begun(name: &str, heading: Heading) -> Base {
    let coordinates = match (heading.coordinates.kind.as_str(), heading.coordinates.unit_m) {
        ("drawing_millimeters", Some(unit_m)) => Coordinates::Drawing { unit_m },
        _ => Coordinates::Degrees,
    };
    Base {
        attribution: heading.attribution,
        system: heading.system,
        layers: heading.layers,
        grids_count: heading.grids_count,
        faults: heading.faults.into_iter().map(Fault::said).collect(),
        ..Base::new(name, coordinates)
    }
}
