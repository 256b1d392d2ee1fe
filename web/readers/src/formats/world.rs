//! World files: six numbers on six lines that place a picture's pixels.
//!
//! The lines are a, d, b, e, c and f of [`World`]: the steps of x and y from column to column, from row to row, and the
//! center of the first pixel. (Common practice; the file has no published standard.)

use crate::base::{Picture, Position, World};
use crate::bytes::{Bytes, text};
use crate::fault::{Fault, Place, What};
use crate::output::Output;
use crate::read::{Progress, Work};
use crate::system::System;

/// What looks like degrees is no wider than this: beyond it is no plan, and what lies there may be a grid of meters.
const WIDEST_DEG: f64 = 2.0;

/// Reads a world file.
pub struct WorldFile {
    name: String,
    bytes: Bytes,
    system: Option<Result<System, What>>,
}

impl WorldFile {
    /// For a picture of about that name.
    #[must_use]
    pub fn new(name: String, bytes: Bytes) -> Self {
        Self {
            name,
            bytes,
            system: None,
        }
    }
}

impl Work for WorldFile {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let world = numbers(self.bytes.as_ref()).ok_or_else(|| What::UnknownFormat.at(Place::File))?;
        let size = output
            .options
            .picture_px
            .filter(|size| size.iter().all(|side| *side > 0));
        let size = size.ok_or_else(|| What::PictureApart.at(Place::File))?;
        // A world file never names its system; what looks like degrees is taken for degrees.
        let of_file = self.system.take();
        let of_file = of_file.or_else(|| is_degrees(&world.corners(size)).then(|| Ok(System::degrees())));
        output.choose_system(of_file, &Place::File)?;
        add(output, &self.name, world, Some(size));
        if output.base.pictures.iter().any(|picture| picture.corners.is_none()) {
            output.base.pictures.clear();
            return Err(What::OffEarth.at(Place::File));
        }
        Ok(Progress::Done)
    }

    fn add_beside(&mut self, name: &str, bytes: Vec<u8>) {
        if name.to_ascii_lowercase().ends_with(".prj") {
            self.system = Some(System::from_wkt(&String::from_utf8_lossy(&bytes)));
        }
    }
}

/// Whether corners may be longitudes and latitudes.
fn is_degrees(corners: &[Position; 4]) -> bool {
    let is_on_earth = |[x, y]: &Position| x.abs() <= 180.0 && y.abs() <= 90.0;
    let is_small = |[x, y]: &Position| (x - corners[0][0]).abs().max((y - corners[0][1]).abs()) <= WIDEST_DEG;
    corners.iter().all(|corner| is_on_earth(corner) && is_small(corner))
}

/// Adds a picture in the present system.
pub fn add(output: &mut Output, name: &str, world: World, size: Option<[u32; 2]>) {
    let corners = size.and_then(|size| {
        let [a, b, c, d]: [Option<Position>; 4] = world.corners(size).map(|corner| output.position(corner));
        Some([a?, b?, c?, d?])
    });
    output.base.pictures.push(Picture {
        name: crate::fault::shortened(name, 200),
        world,
        size,
        corners,
    });
}

/// The six numbers, when the bytes are those and nothing else.
#[must_use]
pub fn numbers(bytes: &[u8]) -> Option<World> {
    if bytes.len() > 1_000 {
        return None;
    }
    let mut words = text(bytes)?.split_whitespace();
    let mut next = || words.next()?.parse::<f64>().ok().filter(|number| number.is_finite());
    let [a, d, b, e, c, f] = [next()?, next()?, next()?, next()?, next()?, next()?];
    let is_flat = a * e - b * d == 0.0;
    (words.next().is_none() && !is_flat).then_some(World { a, b, c, d, e, f })
}
