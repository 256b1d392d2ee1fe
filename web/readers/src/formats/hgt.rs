//! HGT: heights of the Shuttle Radar Topography Mission, a square of one degree of latitude and longitude.
//!
//! No header: 1201 or 3601 rows of as many signed 16-bit numbers, most significant byte first, northern row first; the
//! name says the center of the southwestern sample (`N40W075`), and outer rows and columns repeat in the neighbors.
//! -32768 is no value (from memory).

use crate::base::Position;
use crate::bytes::Bytes;
use crate::fault::{Fault, Place, What};
use crate::grid::Builder;
use crate::output::Output;
use crate::read::{Progress, Work};
use crate::system::System;

/// Reads an HGT file, rows at a step.
pub struct Hgt {
    name: String,
    bytes: Bytes,
    grid: Option<Builder>,
    row: usize,
}

/// Rows at a step.
const ROWS: usize = 400;

/// No value.
const VOID: i16 = i16::MIN;

/// How many samples a side has, by the length of the file.
#[must_use]
pub fn side(length: usize) -> Option<usize> {
    [1201, 3601].into_iter().find(|side| side * side * 2 == length)
}

impl Hgt {
    /// From its start.
    #[must_use]
    pub fn new(name: String, bytes: Bytes) -> Self {
        Self {
            name,
            bytes,
            grid: None,
            row: 0,
        }
    }
}

impl Work for Hgt {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let unknown = || What::UnknownFormat.at(Place::File);
        let side = side(self.bytes.as_ref().len()).ok_or_else(unknown)?;
        let mut grid = match self.grid.take() {
            Some(grid) => grid,
            None => {
                let [west, south] = corner(&self.name).ok_or_else(|| What::UnnamedCorner.at(Place::File))?;
                let step = 1.0 / (side as f64 - 1.0);
                let system = output.choose_system(Some(Ok(System::degrees())), &Place::File)?;
                let whole = [side, side];
                Builder::new(system, whole, [west, south + 1.0], [step, step], output.sides())
                    .map_err(|what| what.at(Place::File))?
            }
        };
        let until = (self.row + ROWS).min(side);
        for row in self.row..until {
            for (column, bytes) in self.bytes.from(row * side * 2).chunks_exact(2).take(side).enumerate() {
                let height = i16::from_be_bytes([bytes[0], bytes[1]]);
                let height = if height == VOID { f32::NAN } else { f32::from(height) };
                grid.set(column, row, height);
            }
        }
        self.row = until;
        if until < side {
            self.grid = Some(grid);
            return Ok(Progress::Working(until as f64 / side as f64));
        }
        output.base.grids.push(grid.finish());
        Ok(Progress::Done)
    }
}

/// Longitude and latitude of the southwestern sample, by the name.
fn corner(name: &str) -> Option<Position> {
    let name = name.rsplit(['/', '\\']).next()?.to_ascii_uppercase();
    let south = name.get(..1)?;
    let latitude: f64 = name.get(1..3)?.parse().ok()?;
    let west = name.get(3..4)?;
    let longitude: f64 = name.get(4..7)?.parse().ok()?;
    let signed = |value: f64, letter: &str, letters: [&str; 2]| {
        let sign = if letter == letters[0] { 1.0 } else { -1.0 };
        letters.contains(&letter).then_some(value * sign)
    };
    let corner = [
        signed(longitude, west, ["E", "W"])?,
        signed(latitude, south, ["N", "S"])?,
    ];
    (corner[0].abs() <= 180.0 && corner[1].abs() <= 90.0).then_some(corner)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Case F-08 of the collected check cases: the length of a file of three seconds, derived.
    #[test]
    fn lengths_and_names_say_what_a_file_is() {
        assert_eq!(side(2_884_802), Some(1201));
        assert_eq!(side(2_884_800), None);
        assert_eq!(corner("dir/N40W075.hgt"), Some([-75.0, 40.0]));
        assert_eq!(corner("s01e009.hgt"), Some([9.0, -1.0]));
        assert_eq!(corner("heights.hgt"), None);
        assert_eq!(corner("Ñ40W075"), None);
    }
}
