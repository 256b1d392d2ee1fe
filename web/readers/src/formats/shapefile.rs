//! Shapefiles in a zip, or one with the files beside it: each `.shp` with the `.dbf` of what is known of its shapes and the `.prj` of its coordinate
//! system beside it ("ESRI Shapefile Technical Description", 1998). A layer is read at a step.
//!
//! A zip without shapefiles is read as the one file in it that has a known format; pictures in it are placed by the world
//! files beside them.

use std::io::{Cursor, Read};

use ::shapefile::dbase::{self, FieldValue};
use ::shapefile::record::traits::HasXY;
use ::shapefile::{Shape, ShapeReader};

use crate::base::{Format, Geometry, Position};
use crate::bytes::{Bytes, windows_1252};
use crate::fault::{Fault, Limited, Place, What, shortened};
use crate::options::LOCAL;
use crate::osm::tags;
use crate::output::Output;
use crate::read::{self, MOST_BYTES, Progress, Work};
use crate::rings::with_holes;
use crate::system::System;

/// Most files that are looked at in a zip.
const MOST_FILES: usize = 2_000;

/// Most bytes of a file of a coordinate system.
const LONGEST_SYSTEM: u64 = 20_000;

/// The number that a `.shp` begins with (the description, "The Main File Header").
pub const MARK: &[u8] = b"\0\0\x27\x0a";

/// What files are taken from.
enum Held {
    Zip(Bytes),
    /// Names and bytes.
    Files(Vec<(String, Vec<u8>)>),
}

/// Reads a zip, or files that lie beside one another.
pub struct Archive {
    held: Held,
    names: Vec<String>,
    layers: Option<Vec<String>>,
    done: usize,
    expanded: u64,
}

impl Archive {
    /// A zip, from its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self::of(Held::Zip(bytes))
    }

    /// A `.shp`; what lies beside it is added ([`Work::add_beside`]).
    #[must_use]
    pub fn of_file(name: String, bytes: Vec<u8>) -> Self {
        let name = if ends(&name, "shp") { name } else { name + ".shp" };
        Self::of(Held::Files(vec![(name, bytes)]))
    }

    fn of(held: Held) -> Self {
        Self {
            held,
            names: Vec::new(),
            layers: None,
            done: 0,
            expanded: 0,
        }
    }

    /// The list of files, and a zip without shapefiles.
    fn begin(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        self.names = match &self.held {
            Held::Zip(bytes) => {
                let archive = open(bytes, &Place::File)?;
                let names = archive.file_names().take(MOST_FILES).filter_map(Result::ok);
                names.map(std::borrow::Cow::into_owned).collect()
            }
            Held::Files(files) => files.iter().map(|(name, _)| name.clone()).collect(),
        };
        self.names.sort_unstable();
        // What one system of computers puts beside every file.
        self.names
            .retain(|name| !name.contains("__MACOSX") && !name.ends_with('/'));
        let layers: Vec<String> = self.names.iter().filter(|name| ends(name, "shp")).cloned().collect();
        let is_empty = layers.is_empty();
        self.layers = Some(layers);
        if is_empty {
            self.other(output)?;
            return Ok(Progress::Done);
        }
        Ok(Progress::Working(0.0))
    }

    /// A file of the zip, expanded; `None` where there is none of that name.
    fn file(&mut self, name: &str, most: u64) -> Result<Option<Vec<u8>>, Fault> {
        let place = Place::Named(name.to_owned());
        let Some(name) = self.names.iter().find(|other| other.eq_ignore_ascii_case(name)) else {
            return Ok(None);
        };
        let bytes = match &mut self.held {
            Held::Zip(bytes) => bytes,
            // Each is asked for once.
            Held::Files(files) => {
                let file = files.iter_mut().find(|(held, _)| held == name);
                return Ok(file.map(|(_, bytes)| std::mem::take(bytes)));
            }
        };
        let mut archive = open(bytes, &place)?;
        let file = archive
            .by_name(name)
            .map_err(|fault| What::broken(fault).at(place.clone()))?;
        let left = most.min(MOST_BYTES.saturating_sub(self.expanded));
        let mut expanded = Vec::new();
        let read = file.take(left + 1).read_to_end(&mut expanded);
        read.map_err(|fault| What::broken(fault).at(place.clone()))?;
        if expanded.len() as u64 > left {
            let of = Limited::Bytes;
            return Err(What::TooMuch { limit: left, of }.at(place));
        }
        self.expanded += expanded.len() as u64;
        Ok(Some(expanded))
    }

    /// The system a `.prj` names; `None` without one.
    fn system(&mut self, stem: &str) -> Result<Option<Result<System, What>>, Fault> {
        let file = self.file(&format!("{stem}.prj"), LONGEST_SYSTEM)?;
        Ok(file.map(|bytes| System::from_wkt(&String::from_utf8_lossy(&bytes))))
    }

    fn layer(&mut self, output: &mut Output, name: &str) -> Result<(), Fault> {
        let stem = name.get(..name.len() - 4).unwrap_or_default();
        let title = stem.rsplit(['/', '\\']).next().unwrap_or_default().to_owned();
        if !output.options.wants(&title) {
            output.name_layer(&title);
            return Ok(());
        }
        let place = Place::Named(name.to_owned());
        let of_file = self.system(stem)?;
        output.choose_place(of_file, &place)?;
        let Some(mut shapes) = self.file(name, MOST_BYTES)? else {
            return Ok(());
        };
        shapes.truncate(possible(&shapes));
        let table = self.file(&format!("{stem}.dbf"), MOST_BYTES)?;
        if table.is_none() {
            let name = format!("{title}.dbf");
            output.fault(What::Missing { name }.at(place.clone()));
        }
        let mut table = table
            .map(|bytes| Table::new(&bytes))
            .transpose()
            .unwrap_or_else(|what| {
                output.fault(what.at(Place::Named(format!("{title}.dbf"))));
                None
            });
        let broken = |fault: ::shapefile::Error, number: u64| {
            let layer = title.clone();
            What::broken(fault).at(Place::Record { layer, number })
        };
        let length = shapes.len();
        let mut reader = ShapeReader::new(Cursor::new(shapes)).map_err(|fault| broken(fault, 0))?;
        for (index, shape) in reader.iter_shapes().enumerate() {
            let number = index as u64 + 1;
            // Each record has a head of 8 bytes and its kind in 4, so a file can not hold more.
            if index > length / 12 {
                break;
            }
            let layer = title.clone();
            let place = Place::Record { layer, number };
            let tags = table.as_mut().map(|table| table.next()).unwrap_or_default();
            // Behind a broken shape it is not known where the next one begins.
            let shape = shape.map_err(|fault| broken(fault, number))?;
            let Some((geometry, is_whole)) = geometry(shape) else {
                continue;
            };
            if !is_whole {
                output.fault(What::OpenRing.at(place.clone()));
            }
            if geometry == Geometry::Areas(Vec::new()) {
                continue;
            }
            let suggested = tags::suggestion(&tags).unwrap_or_default();
            output.add(&title, geometry, tags, suggested, &place)?;
        }
        Ok(())
    }

    /// A zip without shapefiles: its pictures with world files, or the one file whose format is known.
    fn other(&mut self, output: &mut Output) -> Result<(), Fault> {
        const WORLDS: [&str; 6] = ["tfw", "jgw", "pgw", "wld", "tifw", "jpgw"];
        let names = self.names.clone();
        for name in &names {
            let is_world = WORLDS.iter().any(|extension| ends(name, extension));
            let Some(stem) = name.rfind('.').and_then(|dot| name.get(..dot)).filter(|_| is_world) else {
                continue;
            };
            let bytes = self.file(name, LONGEST_SYSTEM)?.unwrap_or_default();
            let place = Place::Named(name.clone());
            let Some(world) = super::world::numbers(&bytes) else {
                output.fault(What::UnknownFormat.at(place));
                continue;
            };
            // The page shows what it was handed itself, and nothing out of a zip.
            output.fault(What::PictureApart.at(place.clone()));
            let of_file = self.system(stem)?;
            match output.choose_system(of_file, &place) {
                Ok(_) => super::world::add(output, stem, world, None),
                Err(fault) => output.fault(fault),
            }
        }
        if !output.base.pictures.is_empty() {
            return Ok(());
        }
        for name in &names {
            let Some(bytes) = self.file(name, MOST_BYTES)? else {
                continue;
            };
            let format = read::recognized(name, &bytes);
            if format.is_err() || format == Ok(Format::Shapefile) || format == Ok(Format::WorldFile) {
                continue;
            }
            let mut options = output.options.clone();
            if output.is_local() {
                options.system = Some(LOCAL.to_owned());
            }
            if options.system.is_none() {
                let stem = name.rfind('.').and_then(|dot| name.get(..dot)).unwrap_or(name);
                if let Some(Ok(system)) = self.system(stem)? {
                    options.system = Some(system.definition);
                }
            }
            match read::read(name, bytes, options) {
                Ok(base) => output.base = base,
                Err(faults) => faults.into_iter().for_each(|fault| output.fault(fault)),
            }
            return Ok(());
        }
        Err(What::UnknownFormat.at(Place::File))
    }
}

fn open(bytes: &Bytes, place: &Place) -> Result<zip::ZipArchive<Cursor<Bytes>>, Fault> {
    zip::ZipArchive::new(Cursor::new(bytes.clone())).map_err(|fault| What::broken(fault).at(place.clone()))
}

impl Work for Archive {
    fn add_beside(&mut self, name: &str, bytes: Vec<u8>) {
        if let Held::Files(files) = &mut self.held
            && files.len() < MOST_FILES
        {
            files.push((name.to_owned(), bytes));
        }
    }

    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let Some(layers) = &self.layers else {
            return self.begin(output);
        };
        let count = layers.len();
        let Some(name) = layers.get(self.done).cloned() else {
            return Ok(Progress::Done);
        };
        self.done += 1;
        // A layer that can not be read keeps none of the others from being read.
        if let Err(fault) = self.layer(output, &name) {
            let ends_all = matches!(fault.what, What::TooMuch { .. });
            if ends_all {
                return Err(fault);
            }
            output.fault(fault);
        }
        Ok(Progress::Working(self.done as f64 / count.max(1) as f64))
    }
}

/// Bytes of a `.shp` up to the first record that announces more parts and points than it has room for: room for them
/// would be asked for before they are read.
fn possible(shapes: &[u8]) -> usize {
    let number = |place: usize, is_big: bool| {
        let bytes = shapes.get(place..place + 4)?;
        let bytes = [bytes[0], bytes[1], bytes[2], bytes[3]];
        let number = if is_big {
            u32::from_be_bytes(bytes)
        } else {
            u32::from_le_bytes(bytes)
        };
        usize::try_from(number).ok()
    };
    let mut place = 100;
    while let (Some(words), Some(kind)) = (number(place + 4, true), number(place + 8, false)) {
        let length = words.saturating_mul(2);
        let (parts, points) = match kind {
            3 | 5 | 13 | 15 | 23 | 25 | 31 => (number(place + 44, false), number(place + 48, false)),
            8 | 18 | 28 => (Some(0), number(place + 44, false)),
            _ => (Some(0), Some(0)),
        };
        let [parts, points] = [parts, points].map(|count| count.unwrap_or(usize::MAX));
        let room = parts.saturating_mul(4).saturating_add(points.saturating_mul(16));
        if room > length {
            return place;
        }
        place = place.saturating_add(8).saturating_add(length);
    }
    shapes.len()
}

fn ends(name: &str, extension: &str) -> bool {
    let end = name.rsplit('.').next().unwrap_or_default();
    end.eq_ignore_ascii_case(extension)
}

/// A shape in our geometry; `None` for one that is empty, no areas for one whose rings are no areas.
fn geometry(shape: Shape) -> Option<(Geometry, bool)> {
    let geometry = match shape {
        Shape::NullShape | Shape::Multipatch(_) => return None,
        Shape::Point(point) => Geometry::Points(vec![position(&point)]),
        Shape::PointM(point) => Geometry::Points(vec![position(&point)]),
        Shape::PointZ(point) => Geometry::Points(vec![position(&point)]),
        Shape::Multipoint(points) => Geometry::Points(line(points.points())),
        Shape::MultipointM(points) => Geometry::Points(line(points.points())),
        Shape::MultipointZ(points) => Geometry::Points(line(points.points())),
        Shape::Polyline(lines) => lines_of(lines.parts()),
        Shape::PolylineM(lines) => lines_of(lines.parts()),
        Shape::PolylineZ(lines) => lines_of(lines.parts()),
        Shape::Polygon(area) => return Some(areas(area.rings().iter().map(|ring| line(ring.points())).collect())),
        Shape::PolygonM(area) => return Some(areas(area.rings().iter().map(|ring| line(ring.points())).collect())),
        Shape::PolygonZ(area) => return Some(areas(area.rings().iter().map(|ring| line(ring.points())).collect())),
    };
    Some((geometry, true))
}

fn position(point: &impl HasXY) -> Position {
    [point.x(), point.y()]
}

fn line<P: HasXY>(points: &[P]) -> Vec<Position> {
    points.iter().map(position).collect()
}

fn lines_of<P: HasXY>(parts: &[Vec<P>]) -> Geometry {
    Geometry::Lines(parts.iter().map(|part| line(part)).collect())
}

/// Rings to areas: clockwise ones are outer rings, the others holes of the one around them (the format's own rule). A
/// shape without any clockwise ring was written the other way round.
fn areas(rings: Vec<Vec<Position>>) -> (Geometry, bool) {
    let rings: Vec<Vec<Position>> = rings.into_iter().filter(|ring| ring.len() > 3).collect();
    let is_outer = |ring: &Vec<Position>| twice_area(ring) <= 0.0;
    let has_outer = rings.iter().any(is_outer);
    let (outer, inner): (Vec<_>, Vec<_>) = rings.into_iter().partition(|ring| !has_outer || is_outer(ring));
    // A shape whose holes are too many to be tried is an area without them, and told.
    let (areas, are_all_tried) = with_holes(outer, inner);
    let is_whole = are_all_tried && !areas.is_empty();
    (Geometry::Areas(areas), is_whole)
}

/// Twice the area of a ring, above 0 where it runs counter-clockwise; relative to its first point.
fn twice_area(ring: &[Position]) -> f64 {
    let [x, y] = ring.first().copied().unwrap_or_default();
    let cross = |pair: &[Position]| (pair[0][0] - x) * (pair[1][1] - y) - (pair[1][0] - x) * (pair[0][1] - y);
    ring.windows(2).map(cross).sum()
}

/// What is known of the shapes, a record each.
struct Table {
    records: std::vec::IntoIter<Vec<(String, String)>>,
}

impl Table {
    fn new(bytes: &[u8]) -> Result<Self, What> {
        let reader = dbase::ReaderBuilder::new().with_encoding(dbase::encoding::UnicodeLossy);
        let mut reader = reader.build(Cursor::new(bytes)).map_err(What::broken)?;
        let number = |place: usize| {
            let pair = bytes.get(place..place + 2)?;
            Some(usize::from(u16::from_le_bytes([pair[0], pair[1]])))
        };
        // Where the records begin and how long each is, for text that is not UTF-8.
        let (first, length) = (number(8).unwrap_or_default(), number(10).unwrap_or_default());
        let widths: Vec<(String, usize)> = reader
            .fields()
            .iter()
            .map(|field| (field.name().to_owned(), usize::from(field.length())))
            .collect();
        let most = bytes.len() / length.max(1) + 1;
        let mut records = Vec::new();
        for (index, record) in reader.iter_records().take(most).enumerate() {
            let Ok(record) = record else { break };
            // The first byte says whether the record was deleted.
            let mut place = first + index * length + 1;
            let mut tags = Vec::new();
            for (name, width) in &widths {
                let raw = bytes.get(place..place + width).unwrap_or_default();
                place += width;
                let value = record.get(name).and_then(|value| as_text(value, raw));
                tags.extend(value.map(|value| (name.clone(), value)));
            }
            records.push(tags);
        }
        Ok(Self {
            records: records.into_iter(),
        })
    }

    fn next(&mut self) -> Vec<(String, String)> {
        self.records.next().unwrap_or_default()
    }
}

/// A value as text; `None` where there is none.
fn as_text(value: &FieldValue, raw: &[u8]) -> Option<String> {
    match value {
        FieldValue::Character(text) => {
            let text = text.as_deref()?;
            let is_other = text.contains('\u{fffd}');
            Some(if is_other {
                windows_1252(raw).trim().to_owned()
            } else {
                text.to_owned()
            })
        }
        FieldValue::Numeric(number) => number.map(|number| number.to_string()),
        FieldValue::Logical(flag) => flag.map(|flag| (if flag { "yes" } else { "no" }).to_owned()),
        FieldValue::Date(date) => date.map(|date| format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day())),
        FieldValue::Float(number) => number.map(|number| number.to_string()),
        FieldValue::Integer(number) => Some(number.to_string()),
        FieldValue::Currency(number) | FieldValue::Double(number) => Some(number.to_string()),
        FieldValue::DateTime(_) => None,
        FieldValue::Memo(text) => Some(shortened(text, 256)),
    }
}
