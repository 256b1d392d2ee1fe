//! GeoTIFF: heights of one number a cell, or a picture that has a place.
//!
//! Values may be whole or floating, in strips or tiles, plain or compressed by deflate or LZW, as the crate `tiff` reads
//! them, a strip or tile at a step; those outside the box are not expanded. The place is that of OGC GeoTIFF 1.1: a scale
//! with a tie point, or a matrix, for areas or points; the system by its number in EPSG's register, or by the parameters
//! of a transverse Mercator, Mercator or Lambert conformal conic projection. A matrix that turns the grid is not read.

mod keys;

use std::io::Cursor;

use tiff::ColorType;
use tiff::decoder::{Decoder, DecodingResult, Limits};
use tiff::tags::Tag;

use crate::base::World;
use crate::bytes::Bytes;
use crate::fault::{Fault, Place, What};
use crate::grid::Builder;
use crate::output::Output;
use crate::read::{Progress, Work};

/// Most bytes of a strip or tile.
const MOST_CHUNK: usize = 128 * 1024 * 1024;

/// Reads a TIFF.
pub struct GeoTiff {
    name: String,
    bytes: Bytes,
    open: Option<Open>,
}

struct Open {
    decoder: Decoder<Cursor<Bytes>>,
    grid: Builder,
    nodata: Option<f64>,
    /// Strips or tiles that hold cells that are kept.
    chunks: Vec<u32>,
    done: usize,
    /// Strips or tiles beside each other, and the size of a whole one.
    across: usize,
    size: [usize; 2],
}

impl GeoTiff {
    /// From its start.
    #[must_use]
    pub fn new(name: String, bytes: Bytes) -> Self {
        Self {
            name,
            bytes,
            open: None,
        }
    }

    fn begin(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let broken = |fault: tiff::TiffError| What::broken(fault).at(Place::File);
        let mut limits = Limits::default();
        limits.decoding_buffer_size = MOST_CHUNK;
        limits.intermediate_buffer_size = MOST_CHUNK;
        let decoder = Decoder::new(Cursor::new(self.bytes.clone())).map_err(broken)?;
        let mut decoder = decoder.with_limits(limits);
        let (columns, rows) = decoder.dimensions().map_err(broken)?;
        let color = decoder.colortype().map_err(broken)?;
        let of_file = keys::system(&mut decoder);
        let system = output.choose_system(of_file, &Place::File)?;
        let is_point = keys::number(&mut decoder, keys::RASTER_TYPE) == Some(2);
        let world = world(&mut decoder, is_point).ok_or_else(|| What::Missing {
            name: "ModelPixelScale, ModelTiepoint".to_owned(),
        });
        let world = world.map_err(|what| what.at(Place::File))?;
        if !matches!(color, ColorType::Gray(bits) if bits >= 8) {
            output.fault(What::NoHeights.at(Place::File));
            super::world::add(output, &self.name, world, Some([columns, rows]));
            return Ok(Progress::Done);
        }
        if world.b != 0.0 || world.d != 0.0 || world.a <= 0.0 || world.e >= 0.0 {
            let kind = "ModelTransformation".to_owned();
            return Err(What::NotRead { kind, count: 1 }.at(Place::File));
        }
        let whole = [columns, rows].map(|count| count as usize);
        let sides = output.sides();
        let mut grid = Builder::new(system, whole, [world.c, world.f], [world.a, -world.e], sides)
            .map_err(|what| what.at(Place::File))?;
        grid.heights_in(keys::height_unit_m(&mut decoder));
        let nodata = decoder.get_tag_ascii_string(Tag::GdalNodata).ok();
        let nodata = nodata.and_then(|text| text.trim_matches(['\0', ' ']).parse().ok());
        let (width, height) = decoder.chunk_dimensions();
        let size = [width, height].map(|side| (side as usize).max(1));
        let across = whole[0].div_ceil(size[0]);
        let (from, kept) = grid.kept();
        let within = |axis: usize| from[axis] / size[axis]..=(from[axis] + kept[axis] - 1) / size[axis];
        let chunks = within(1)
            .flat_map(|down| within(0).map(move |right| down * across + right))
            .filter_map(|index| u32::try_from(index).ok())
            .collect();
        self.open = Some(Open {
            decoder,
            grid,
            nodata,
            chunks,
            done: 0,
            across,
            size,
        });
        Ok(Progress::Working(0.0))
    }
}

impl Work for GeoTiff {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let Some(mut open) = self.open.take() else {
            return self.begin(output);
        };
        let Some(index) = open.chunks.get(open.done).copied() else {
            output.base.grids.push(open.grid.finish());
            return Ok(Progress::Done);
        };
        match open.decoder.read_chunk(index) {
            Ok(values) => open.fill(index as usize, &values),
            // The rest of the grid is there all the same.
            Err(fault) => output.fault(What::broken(fault).at(Place::Record {
                layer: "TIFF".to_owned(),
                number: u64::from(index) + 1,
            })),
        }
        open.done += 1;
        let share = open.done as f64 / open.chunks.len().max(1) as f64;
        self.open = Some(open);
        Ok(Progress::Working(share))
    }
}

impl Open {
    fn fill(&mut self, index: usize, values: &DecodingResult) {
        match values {
            DecodingResult::U8(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::U16(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::U32(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::U64(values) => self.set(index, values, |value| *value as f64),
            DecodingResult::F16(values) => self.set(index, values, |value| f64::from(value.to_f32())),
            DecodingResult::F32(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::F64(values) => self.set(index, values, |value| *value),
            DecodingResult::I8(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::I16(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::I32(values) => self.set(index, values, |value| f64::from(*value)),
            DecodingResult::I64(values) => self.set(index, values, |value| *value as f64),
        }
    }

    fn set<T>(&mut self, index: usize, values: &[T], height: impl Fn(&T) -> f64) {
        let (width, _) = self
            .decoder
            .chunk_data_dimensions(u32::try_from(index).unwrap_or(u32::MAX));
        let width = (width as usize).max(1);
        let [left, top] = [index % self.across * self.size[0], index / self.across * self.size[1]];
        for (at, value) in values.iter().enumerate() {
            let height = height(value);
            let is_none = self.nodata == Some(height) || self.nodata.is_some_and(|mark| mark as f32 == height as f32);
            let height = if is_none { f32::NAN } else { height as f32 };
            self.grid.set(left + at % width, top + at / width, height);
        }
    }
}

/// Where pixels lie, at their centers.
fn world(decoder: &mut Decoder<Cursor<Bytes>>, is_point: bool) -> Option<World> {
    let scale = decoder.get_tag_f64_vec(Tag::ModelPixelScaleTag).ok();
    let tie = decoder.get_tag_f64_vec(Tag::ModelTiepointTag).ok();
    let matrix = decoder.get_tag_f64_vec(Tag::ModelTransformationTag).ok();
    let mut world = match (scale.as_deref(), tie.as_deref(), matrix.as_deref()) {
        (Some([right, down, ..]), Some([column, row, _, x, y, ..]), _) => World {
            a: *right,
            b: 0.0,
            c: x - column * right,
            d: 0.0,
            e: -down,
            f: y + row * down,
        },
        (_, _, Some([a, b, _, c, d, e, _, f, ..])) => World {
            a: *a,
            b: *b,
            c: *c,
            d: *d,
            e: *e,
            f: *f,
        },
        _ => return None,
    };
    // Otherwise numbers are those of a pixel's northwestern corner.
    if !is_point {
        [world.c, world.f] = world.at(0.5, 0.5);
    }
    let numbers: [f64; 6] = [world.a, world.b, world.c, world.d, world.e, world.f];
    numbers.iter().all(|number| number.is_finite()).then_some(world)
}
