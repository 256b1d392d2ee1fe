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
//! const heights = reading.heights(asked);  // for the plan, any number of times, when base.grids_count > 0
//! post(heights.numbers(), heights.heights_mm());
//! const surface = reading.surface(0);      // a grid itself
//! ```
//!
//! Who does not want to wait ends the worker, and nothing is left. `web/reading.js` is where it is called.
//!
//! `new Reading` throws the list of faults when the file can not even be begun. A fault is
//! `{ message, arguments, place, place_arguments }`: names of messages in `core/messages/` with their arguments.

use serde::Serialize;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::base::{Coordinates, Format, Picture, Position};
use crate::fault::Fault;
use crate::grid::resampled::{Resampled, about, resampled};
use crate::grid::{Grid, contours, slope};
use crate::options::Options;
use crate::pieces::{self, Pieces};
use crate::read::{Progress, Reader};
use crate::system::System;

/// A file that is being read.
#[wasm_bindgen]
pub struct Reading {
    reader: Option<Reader>,
    pieces: Option<Pieces>,
    plan: Option<System>,
    grids: Vec<Grid>,
}

/// What is handed over first: what [`crate::base::Base`] says but for the features, how many surfaces can be asked for, and
/// what its grids of heights are ([`crate::grid::resampled::About::numbers`]; empty where there are none).
#[derive(Serialize)]
struct Handed<'a> {
    format: Format,
    coordinates: Coordinates,
    system: &'a str,
    attribution: &'a str,
    layers: Vec<&'a str>,
    pictures: &'a [Picture],
    faults: &'a [Fault],
    grids_count: usize,
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
        let plan = options.origin_deg.and_then(|origin| System::plan(origin).ok());
        let reader = Reader::new(name, bytes, options).map_err(|faults| faults_to_js(&faults))?;
        Ok(Self {
            reader: Some(reader),
            pieces: None,
            plan,
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
        let handed = to_js(&Handed {
            format: base.format,
            coordinates: base.coordinates,
            system: &base.system,
            attribution: &base.attribution,
            layers: base.layers.iter().map(|layer| layer.name.as_str()).collect(),
            pictures: &base.pictures,
            faults: &base.faults,
            grids_count: self.grids.len(),
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
    /// millimeters, longitude and latitude of the plan's origin in degrees, and meters in a unit of height, 0 for the
    /// file's own; nothing comes of other numbers.
    pub fn heights(&self, asked: &[f64]) -> Heights {
        let found = match *asked {
            [west, south, east, north, longitude, latitude, unit_m] => {
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

    /// The heights of a grid, to be asked of; each can be taken once.
    pub fn surface(&mut self, index: usize) -> Option<Surface> {
        let place = self.grids.get_mut(index)?;
        if place.values.is_empty() {
            return None;
        }
        let values = std::mem::take(&mut place.values);
        let grid = Grid {
            values,
            ..place.clone()
        };
        Some(Surface {
            grid,
            plan: self.plan.clone(),
        })
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

/// Heights on a grid. Positions are degrees, or the plan's millimeters where its origin was given.
#[wasm_bindgen]
pub struct Surface {
    grid: Grid,
    plan: Option<System>,
}

/// A line of equal height, as it crosses.
#[derive(Serialize)]
struct Line {
    height_m: f64,
    line: Vec<Position>,
}

#[wasm_bindgen]
impl Surface {
    /// Heights in meters at positions `x0, y0, x1, y1, …`; not a number where none is known.
    pub fn heights_m(&self, positions: &[f64]) -> Vec<f64> {
        let at = |pair: &[f64]| {
            let [x, y] = [pair[0], pair[1]];
            match &self.plan {
                Some(plan) => self.grid.height_at_plan_m(plan, [x, y]),
                None => self.grid.height_at_deg_m([x, y]),
            }
        };
        positions
            .chunks_exact(2)
            .map(|pair| at(pair).unwrap_or(f64::NAN))
            .collect()
    }

    /// Slopes, rise over run, row by row; not a number at edges and where no height is known.
    pub fn slopes(&self) -> Vec<f32> {
        slope::slopes(&self.grid)
    }

    /// Land of each class of slope in square meters, by borders in percent; a slope on a border is in the steeper class.
    pub fn class_areas_m2(&self, borders_percent: &[f64]) -> Vec<f64> {
        let slopes = slope::slopes(&self.grid);
        slope::class_areas_m2(&self.grid, &slopes, borders_percent, slope::Border::Steeper)
    }

    /// Columns and rows, then the corners as positions, from the northwest clockwise; not numbers where a corner has no
    /// position.
    pub fn outline(&self) -> Vec<f64> {
        let [columns, rows] = [self.grid.columns as f64 - 0.5, self.grid.rows as f64 - 0.5];
        let mut found = vec![self.grid.columns as f64, self.grid.rows as f64];
        for corner in [[-0.5, -0.5], [columns, -0.5], [columns, rows], [-0.5, rows]] {
            found.extend(self.position(self.grid.position(corner)).unwrap_or([f64::NAN; 2]));
        }
        found
    }

    /// Lines of equal height: a list of `{ height_m, line }`.
    ///
    /// # Errors
    /// The list of one fault, when there would be too many.
    pub fn contours(&self, interval_m: f64) -> Result<JsValue, JsValue> {
        let found = contours::contours(&self.grid, interval_m);
        let found = found.map_err(|what| faults_to_js(&vec![what.at(crate::fault::Place::File)]))?;
        let line = |contour: contours::Contour| Line {
            height_m: contour.height_m,
            line: contour
                .line
                .into_iter()
                .filter_map(|point| self.position(point))
                .collect(),
        };
        let lines: Vec<Line> = found.into_iter().map(line).collect();
        Ok(to_js(&lines))
    }

    fn position(&self, point: Position) -> Option<Position> {
        let degrees = self.grid.system.to_degrees(point)?;
        match &self.plan {
            Some(plan) => Some(plan.from_degrees(degrees)?.map(|m| (m * 1000.0).round())),
            None => Some(degrees),
        }
    }
}
