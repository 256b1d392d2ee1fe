//! Reading one file: which reader it is for, step by step, to the end.

use std::io::{Cursor, Read};

use crate::base::{Base, Format};
use crate::bytes::Bytes;
use crate::fault::{Fault, Limited, Place, What};
use crate::formats::{ascii_grid, dxf, geojson, geotiff, hgt, shapefile, table, world};
use crate::options::Options;
use crate::osm::{pbf::Pbf, xml::Xml};
use crate::output::Output;

/// How far a reader is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Progress {
    /// This share of the work is done, 0 to 1.
    Working(f64),
    /// All is read.
    Done,
}

/// One format's reader.
pub trait Work {
    /// Reads a piece: some hundredths of a second of work, unless the format can only be read at once.
    ///
    /// # Errors
    /// A fault after which nothing more can be read; what was read before stays.
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault>;

    /// Takes a file that lies beside this one, before the first step; most formats have none.
    fn add_beside(&mut self, name: &str, bytes: Vec<u8>) {
        let _ = (name, bytes);
    }
}

/// A file that is being read.
pub struct Reader {
    work: Box<dyn Work>,
    output: Output,
    is_done: bool,
}

/// Reads a whole file.
///
/// # Errors
/// Every fault, when nothing could be read; the faults of a file that could be read in part are in [`Base::faults`].
pub fn read(name: &str, bytes: Vec<u8>, options: Options) -> Result<Base, Vec<Fault>> {
    let mut reader = Reader::new(name, bytes, options)?;
    while reader.step() != Progress::Done {}
    reader.finish()
}

impl Reader {
    /// Looks what the file is. The name matters where a format leaves the place of its data to it (HGT, world files),
    /// and nowhere else.
    ///
    /// # Errors
    /// What kept it from being begun.
    pub fn new(name: &str, bytes: Vec<u8>, options: Options) -> Result<Self, Vec<Fault>> {
        let whole = |what: What| vec![what.at(Place::File)];
        let (name, bytes) = unpacked(name, bytes).map_err(whole)?;
        let format = recognized(&name, &bytes).map_err(whole)?;
        if format == Format::Shapefile && bytes.starts_with(shapefile::MARK) {
            let work = Box::new(shapefile::Archive::of_file(name, bytes));
            return Self::begin(format, work, options);
        }
        let bytes = Bytes::new(bytes);
        let work: Box<dyn Work> = match format {
            Format::OsmXml => Box::new(Xml::new(bytes)),
            Format::OsmPbf => Box::new(Pbf::new(bytes)),
            Format::GeoJson => Box::new(geojson::GeoJson::new(bytes)),
            Format::Shapefile => Box::new(shapefile::Archive::new(bytes)),
            Format::Dxf => Box::new(dxf::Dxf::new(bytes)),
            Format::Csv => Box::new(table::Table::new(bytes)),
            Format::AsciiGrid => Box::new(ascii_grid::AsciiGrid::new(bytes)),
            Format::GeoTiff => Box::new(geotiff::GeoTiff::new(name, bytes)),
            Format::Hgt => Box::new(hgt::Hgt::new(name, bytes)),
            Format::WorldFile => Box::new(world::WorldFile::new(name, bytes)),
        };
        Self::begin(format, work, options)
    }

    fn begin(format: Format, work: Box<dyn Work>, options: Options) -> Result<Self, Vec<Fault>> {
        let output = Output::new(format, options).map_err(|fault| vec![fault])?;
        Ok(Self {
            work,
            output,
            is_done: false,
        })
    }

    /// Takes a file that lies beside this one, such as the `.dbf` of a `.shp`; before the first step.
    pub fn add_beside(&mut self, name: &str, bytes: Vec<u8>) {
        self.work.add_beside(name, bytes);
    }

    /// Reads a piece and says how far it is. After a fault that ends the reading it is done.
    pub fn step(&mut self) -> Progress {
        if self.is_done {
            return Progress::Done;
        }
        let progress = self.work.step(&mut self.output).unwrap_or_else(|fault| {
            self.output.fault(fault);
            Progress::Done
        });
        self.is_done = progress == Progress::Done;
        progress
    }

    /// What was read so far; all of it after [`Progress::Done`].
    ///
    /// # Errors
    /// Every fault, when nothing was read.
    pub fn finish(self) -> Result<Base, Vec<Fault>> {
        self.output.finish()
    }
}

/// Most bytes a file may have once expanded.
pub(crate) const MOST_BYTES: u64 = 512 * 1024 * 1024;

/// Expands what is only compressed (gzip).
fn unpacked(name: &str, bytes: Vec<u8>) -> Result<(String, Vec<u8>), What> {
    if !bytes.starts_with(b"\x1f\x8b") {
        return Ok((name.to_owned(), bytes));
    }
    let mut expanded = Vec::new();
    let mut decoder = flate2::read::GzDecoder::new(Cursor::new(bytes)).take(MOST_BYTES + 1);
    decoder.read_to_end(&mut expanded).map_err(What::broken)?;
    if expanded.len() as u64 > MOST_BYTES {
        return Err(What::TooMuch {
            limit: MOST_BYTES,
            of: Limited::Bytes,
        });
    }
    let name = name.strip_suffix(".gz").unwrap_or(name);
    Ok((name.to_owned(), expanded))
}

/// What a file is, by its content; by its name only among those that have no mark of their own.
///
/// # Errors
/// [`What::Empty`], [`What::UnknownFormat`] or [`What::NotUtf8`].
pub fn recognized(name: &str, bytes: &[u8]) -> Result<Format, What> {
    if bytes.is_empty() {
        return Err(What::Empty);
    }
    let start = bytes.get(..4096).unwrap_or(bytes);
    let start = start.strip_prefix(b"\xef\xbb\xbf").unwrap_or(start);
    if [&b"PK\x03\x04"[..], b"PK\x05\x06", shapefile::MARK]
        .iter()
        .any(|mark| start.starts_with(mark))
    {
        return Ok(Format::Shapefile);
    }
    if [&b"II*\0"[..], b"MM\0*", b"II+\0", b"MM\0+"]
        .iter()
        .any(|mark| start.starts_with(mark))
    {
        return Ok(Format::GeoTiff);
    }
    if holds(start.get(..32).unwrap_or(start), b"OSMHeader") {
        return Ok(Format::OsmPbf);
    }
    if dxf::is_binary(start) {
        return Ok(Format::Dxf);
    }
    if hgt::side(bytes.len()).is_some() {
        return Ok(Format::Hgt);
    }
    let text = String::from_utf8_lossy(start);
    let text = text.trim_start();
    if text.starts_with('<') {
        let is_osm = holds(start, b"<osm");
        return if is_osm {
            Ok(Format::OsmXml)
        } else {
            Err(What::UnknownFormat)
        };
    }
    if text.starts_with('{') {
        return Ok(Format::GeoJson);
    }
    if dxf::is_drawing(text) {
        return Ok(Format::Dxf);
    }
    if ascii_grid::is_grid(text) {
        return Ok(Format::AsciiGrid);
    }
    if bytes.contains(&0) {
        return Err(What::UnknownFormat);
    }
    if world::numbers(bytes).is_some() {
        return Ok(Format::WorldFile);
    }
    let first = text.lines().next().unwrap_or_default();
    if first.contains([',', ';', '\t']) {
        return Ok(Format::Csv);
    }
    let name = name.to_ascii_lowercase();
    let is_text = [".csv", ".txt", ".tsv"].iter().any(|end| name.ends_with(end));
    if is_text && crate::bytes::text(bytes).is_none() {
        return Err(What::NotUtf8);
    }
    Err(What::UnknownFormat)
}

/// Whether bytes occur in others.
pub(crate) fn holds(bytes: &[u8], wanted: &[u8]) -> bool {
    bytes.windows(wanted.len()).any(|window| window == wanted)
}
