//! What JavaScript calls.
//!
//! The worker loads this module when the first file of base data is opened, and hands a file over as bytes:
//!
//! ```js
//! const reading = new Reading(file.name, new Uint8Array(buffer), { box_deg: null });
//! reading.add_beside(table.name, new Uint8Array(its_buffer));   // what lies beside a .shp
//! for (;;) {
//!   const share = reading.step();          // 0 to 1; 1 when all is read
//!   if (share >= 1) break;
//!   post(share);
//! }
//! const base = reading.result();           // all but the features, see `Handed`; throws the list of faults when nothing was read
//! for (let piece; (piece = reading.piece()); ) post(piece.shapes(), piece.positions(), piece.words());
//! const heights = reading.heights(asked);  // for the plan, any number of times, when base.heights is not empty
//! post(heights.numbers(), heights.heights_mm());
//! ```
//!
//! Who does not want to wait ends the worker, and nothing is left. `web/reading.js` is where it is called.
//!
//! `new Reading` throws the list of faults when the file can not even be begun. A fault is
//! `{ message, arguments, place, place_arguments }`: names of messages in `core/messages/` with their arguments.

use serde::Serialize;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::base::{Coordinates, Format};
use crate::fault::Fault;
use crate::grid::Grid;
use crate::grid::laid::Laid;
use crate::grid::resampled::{Resampled, about, resampled};
use crate::options::Options;
use crate::pieces::{self, Pieces};
use crate::read::{Progress, Reader};
use crate::system::System;

/// A file that is being read.
#[wasm_bindgen]
pub struct Reading {
    reader: Option<Reader>,
    pieces: Option<Pieces>,
    grids: Vec<Grid>,
}

/// What is handed over first: what [`crate::base::Base`] says but for the features, and what its grids of heights are
/// ([`crate::grid::resampled::About::numbers`]; empty where there are none). Corners are those of the picture that is
/// placed, x and y by turns; none where there is no such picture.
#[derive(Serialize)]
struct Handed<'a> {
    format: Format,
    coordinates: Coordinates,
    system: &'a str,
    attribution: &'a str,
    layers: Vec<&'a str>,
    corners: Vec<f64>,
    faults: &'a [Fault],
    heights: Vec<f64>,
}

/// Some features: see [`pieces::Piece`]. Each part can be taken once.
#[wasm_bindgen]
pub struct Piece(pieces::Piece);

#[wasm_bindgen]
impl Piece {
    /// What the features' shapes are.
    pub fn shapes(&mut self) -> Vec<u32> {
        std::mem::take(&mut self.0.shapes)
    }

    /// Where they are.
    pub fn positions(&mut self) -> Vec<f64> {
        std::mem::take(&mut self.0.positions)
    }

    /// What is said of them.
    pub fn words(&mut self) -> String {
        std::mem::take(&mut self.0.words)
    }
}

fn to_js(value: &impl Serialize) -> JsValue {
    // What is serialized here are plain structures, which can not fail; a fault would be ours and is handed on as it is.
    value
        .serialize(&serde_wasm_bindgen::Serializer::json_compatible())
        .unwrap_or_else(JsValue::from)
}

fn faults_to_js(faults: &Vec<Fault>) -> JsValue {
    to_js(faults)
}

#[wasm_bindgen]
impl Reading {
    /// Looks what a file is.
    ///
    /// # Errors
    /// The list of faults, when it can not be begun or the options are none.
    #[wasm_bindgen(constructor)]
    pub fn new(name: &str, bytes: Vec<u8>, options: JsValue) -> Result<Reading, JsValue> {
        let options: Options = if options.is_undefined() || options.is_null() {
            Options::default()
        } else {
            serde_wasm_bindgen::from_value(options)?
        };
        let reader = Reader::new(name, bytes, options).map_err(|faults| faults_to_js(&faults))?;
        Ok(Self {
            reader: Some(reader),
            pieces: None,
            grids: Vec::new(),
        })
    }

    /// Takes a file that lies beside this one, such as the `.dbf` of a `.shp`; before the first step.
    pub fn add_beside(&mut self, name: &str, bytes: Vec<u8>) {
        if let Some(reader) = &mut self.reader {
            reader.add_beside(name, bytes);
        }
    }

    /// Reads a piece: the share that is done, 1 when all is.
    pub fn step(&mut self) -> f64 {
        match self.reader.as_mut().map(Reader::step) {
            Some(Progress::Working(share)) => share.clamp(0.0, 0.999),
            Some(Progress::Done) | None => 1.0,
        }
    }

    /// What was read but for the features. A second call gives nothing.
    ///
    /// # Errors
    /// The list of faults, when nothing was read.
    pub fn result(&mut self) -> Result<JsValue, JsValue> {
        let Some(reader) = self.reader.take() else {
            return Ok(JsValue::NULL);
        };
        let mut base = reader.finish().map_err(|faults| faults_to_js(&faults))?;
        self.grids = std::mem::take(&mut base.grids);
        let corners = base.pictures.first().and_then(|picture| picture.corners);
        let handed = to_js(&Handed {
            format: base.format,
            coordinates: base.coordinates,
            system: &base.system,
            attribution: &base.attribution,
            layers: base.layers.iter().map(|layer| layer.name.as_str()).collect(),
            corners: corners.unwrap_or_default().concat(),
            faults: &base.faults,
            heights: about(&self.grids).map_or_else(Vec::new, |about| about.numbers()),
        });
        self.pieces = Some(Pieces::new(base));
        Ok(handed)
    }

    /// The next features, once there is a result; nothing when all were given.
    pub fn piece(&mut self) -> Option<Piece> {
        self.pieces.as_mut()?.next().map(Piece)
    }

    /// Heights of all grids on a regular grid of the plan. `asked` holds west, south, east and north of the area in
    /// millimeters, longitude and latitude of the plan's origin in degrees, meters in a unit of height, 0 for the
    /// file's own; and of grids that are placed by hand where their zero lies, east and north in meters, meters in one
    /// of their units, and by how much they are turned in degrees. Nothing comes of other numbers.
    pub fn heights(&mut self, asked: &[f64]) -> Heights {
        let found = match *asked {
            [
                west,
                south,
                east,
                north,
                longitude,
                latitude,
                unit_m,
                zero_east_m,
                zero_north_m,
                own_unit_m,
                turn_deg,
            ] => {
                let laid = Laid {
                    zero_m: [zero_east_m, zero_north_m],
                    unit_m: own_unit_m,
                    turn_deg,
                };
                for held in self.grids.iter_mut().filter_map(|grid| grid.laid.as_mut()) {
                    *held = laid;
                }
                let plan = System::plan([longitude, latitude]).ok();
                let unit_m = (unit_m > 0.0).then_some(unit_m);
                plan.map(|plan| resampled(&self.grids, &plan, [west, south, east, north], unit_m))
            }
            _ => None,
        };
        Heights {
            asked: asked.to_vec(),
            found: found.unwrap_or_default(),
        }
    }
}

/// Heights for the plan. Its heights can be taken once.
#[wasm_bindgen]
pub struct Heights {
    asked: Vec<f64>,
    found: Resampled,
}

#[wasm_bindgen]
impl Heights {
    /// What was asked; then east and north of the southwestern point, the spacing, and the columns; then how many points
    /// the area has, and how many heights are those of a neighbor.
    pub fn numbers(&self) -> Vec<f64> {
        let found = &self.found;
        let mut numbers = self.asked.clone();
        numbers.extend(found.south_west_mm.map(f64::from));
        numbers.extend([found.spacing_mm, found.columns, found.asked, found.filled].map(f64::from));
        numbers
    }

    /// Heights in millimeters, rows from south to north.
    pub fn heights_mm(&mut self) -> Vec<i32> {
        std::mem::take(&mut self.found.heights_mm)
    }
}
