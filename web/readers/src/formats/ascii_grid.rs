//! Esri ASCII grid: a header of words and numbers, then values from the northern row on.
//!
//! `ncols`, `nrows`, `xllcorner` or `xllcenter`, `yllcorner` or `yllcenter`, `cellsize` (or `dx` and `dy`) and
//! `nodata_value`, which is −9999 unless said; words in any case. Values are parted by white space and counted, whatever
//! the lines ("Esri ASCII raster format"). Where a person chose that it is of no system, it is placed by hand.

use crate::base::Position;
use crate::bytes::Bytes;
use crate::fault::{Fault, Place, What, shortened};
use crate::grid::Builder;
use crate::output::Output;
use crate::read::{Progress, Work};
use crate::system::System;

/// Values at a step.
const VALUES: usize = 400_000;

/// Reads an ASCII grid.
pub struct AsciiGrid {
    bytes: Bytes,
    place: usize,
    open: Option<Open>,
}

struct Open {
    grid: Builder,
    columns: usize,
    rows: usize,
    nodata: f64,
    found: usize,
}

impl AsciiGrid {
    /// From its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self {
            bytes,
            place: 0,
            open: None,
        }
    }
}

/// Whether a text begins like a grid.
#[must_use]
pub fn is_grid(text: &str) -> bool {
    let mut words = text.split_whitespace();
    let is_word = |word: &str| ["ncols", "nrows"].iter().any(|name| word.eq_ignore_ascii_case(name));
    words.next().is_some_and(is_word) && words.next().is_some_and(|word| word.parse::<u32>().is_ok())
}

#[derive(Default)]
struct Header {
    columns: Option<f64>,
    rows: Option<f64>,
    step: Option<Position>,
    corner: [Option<f64>; 2],
    is_center: [bool; 2],
    nodata: Option<f64>,
}

impl Header {
    /// Takes a word of the header and its number; whether it is one.
    fn take(&mut self, word: &str, number: f64) -> bool {
        match word.to_ascii_lowercase().as_str() {
            "ncols" => self.columns = Some(number),
            "nrows" => self.rows = Some(number),
            "cellsize" => self.step = Some([number, number]),
            "dx" => self.step = Some([number, self.step.map_or(number, |step| step[1])]),
            "dy" => self.step = Some([self.step.map_or(number, |step| step[0]), number]),
            "xllcorner" => self.corner[0] = Some(number),
            "yllcorner" => self.corner[1] = Some(number),
            "xllcenter" => (self.corner[0], self.is_center[0]) = (Some(number), true),
            "yllcenter" => (self.corner[1], self.is_center[1]) = (Some(number), true),
            "nodata_value" => self.nodata = Some(number),
            _ => return false,
        }
        true
    }

    /// Columns, rows, step, and the center of the northwestern cell.
    fn finish(&self) -> Option<(usize, usize, Position, Position)> {
        let whole = |number: Option<f64>| {
            number
                .filter(|count| (1.0..=1e9).contains(count))
                .map(|count| count as usize)
        };
        let (columns, rows) = (whole(self.columns)?, whole(self.rows)?);
        let step = self
            .step
            .filter(|step| step.iter().all(|side| *side > 0.0 && side.is_finite()))?;
        let mut first = [self.corner[0]?, self.corner[1]?];
        for ((at, step), is_center) in first.iter_mut().zip(step).zip(self.is_center) {
            if !is_center {
                *at += step / 2.0;
            }
        }
        first[1] += step[1] * (rows as f64 - 1.0);
        Some((columns, rows, step, first))
    }
}

impl AsciiGrid {
    /// The next word from a place on, and where it ends.
    fn word(&self, place: usize) -> Option<(&str, usize)> {
        let rest = self.bytes.from(place);
        let skipped = rest.iter().take_while(|byte| byte.is_ascii_whitespace()).count();
        let word = rest.get(skipped..)?;
        let length = word.iter().take_while(|byte| !byte.is_ascii_whitespace()).count();
        let word = std::str::from_utf8(word.get(..length)?).ok()?;
        (length > 0).then_some((word, place + skipped + length))
    }

    fn begin(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let mut header = Header::default();
        while let Some((word, end)) = self.word(self.place) {
            let Some((number, next)) = self.word(end) else { break };
            let Ok(value) = number.parse() else { break };
            if !header.take(word, value) {
                break;
            }
            self.place = next;
        }
        let whole = |what: What| what.at(Place::File);
        let (columns, rows, step, first) = header.finish().ok_or_else(|| whole(What::broken("header")))?;
        let is_degrees = step[0] < 0.1 && first[0].abs() <= 180.0 && first[1].abs() <= 90.0;
        let of_file = is_degrees.then(|| Ok(System::degrees()));
        let system = output.choose_place(of_file, &Place::File)?;
        let grid = match system {
            Some(system) => Builder::new(system, [columns, rows], first, step, output.sides()).map_err(whole)?,
            None => {
                let high = step[1] * (rows as f64 - 0.5);
                let laid = output.lay_by_hand([first[0] - step[0] / 2.0, first[1] - high]);
                // Its southwestern corner becomes 0, 0.
                let first = [step[0] / 2.0, high];
                let mut grid = Builder::new(System::degrees(), [columns, rows], first, step, None).map_err(whole)?;
                grid.lay(laid);
                grid
            }
        };
        self.open = Some(Open {
            grid,
            columns,
            rows,
            nodata: header.nodata.unwrap_or(-9999.0),
            found: 0,
        });
        Ok(Progress::Working(0.0))
    }
}

impl Work for AsciiGrid {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let Some(mut open) = self.open.take() else {
            return self.begin(output);
        };
        let expected = open.columns.saturating_mul(open.rows);
        let mut is_end = false;
        for _ in 0..VALUES {
            if open.found >= expected {
                is_end = true;
                break;
            }
            let Some((word, end)) = self.word(self.place) else {
                is_end = true;
                break;
            };
            let Ok(value) = word.parse::<f64>() else {
                let value = shortened(word, 40);
                return Err(What::NotANumber { value }.at(Place::Byte(self.place as u64)));
            };
            self.place = end;
            // The value that means none is written with as many digits as the header has, so that it is the same number.
            let is_none = value == open.nodata;
            let height = if is_none { f32::NAN } else { value as f32 };
            open.grid
                .set(open.found % open.columns, open.found / open.columns, height);
            open.found += 1;
        }
        if !is_end {
            let share = open.found as f64 / expected as f64;
            self.open = Some(open);
            return Ok(Progress::Working(share));
        }
        if open.found < expected {
            let (expected, found) = (expected as u64, open.found as u64);
            output.fault(What::TooFewValues { expected, found }.at(Place::File));
        }
        output.base.grids.push(open.grid.finish());
        Ok(Progress::Done)
    }
}
