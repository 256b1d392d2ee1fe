//! Tables of points: values parted by commas, semicolons or tabs, with the names of columns in the first line.
//!
//! Columns of coordinates are recognized by their names in common use, or chosen. Longitude and latitude are degrees of
//! WGS84; x and y need a coordinate system. A column of well-known text is read where its values are points. Where
//! semicolons part the values, decimals may stand behind a comma. What kind of thing a row is stands in OpenStreetMap's
//! columns, or in one of category or type (`osm/tags.rs`); columns that count traffic become words (`noted.rs`).

use std::io::Cursor;

use csv::{Reader, ReaderBuilder, StringRecord};

use crate::base::{Geometry, Position};
use crate::bytes::{Bytes, text};
use crate::fault::{Fault, Place, What, shortened};
use crate::osm::tags;
use crate::output::Output;
use crate::read::{Progress, Work};
use crate::system::System;

/// Rows at a step.
const ROWS: usize = 10_000;

const LAYER: &str = "points";

const LONGITUDE: [&str; 7] = ["longitude", "lon", "long", "lng", "longitude_deg", "lon_dd", "x_lon"];
const LATITUDE: [&str; 5] = ["latitude", "lat", "latitude_deg", "lat_dd", "y_lat"];
const EAST: [&str; 9] = [
    "x", "easting", "east", "e", "x_coord", "xcoord", "coord_x", "point_x", "x_m",
];
const NORTH: [&str; 9] = [
    "y", "northing", "north", "n", "y_coord", "ycoord", "coord_y", "point_y", "y_m",
];
const WELL_KNOWN: [&str; 5] = ["wkt", "geometry", "geom", "the_geom", "shape"];

/// Reads a table.
pub struct Table {
    bytes: Bytes,
    open: Option<Open>,
}

struct Open {
    reader: Reader<Cursor<Bytes>>,
    names: Vec<String>,
    columns: Columns,
    has_decimal_commas: bool,
}

enum Columns {
    Pair(usize, usize),
    WellKnown(usize),
}

impl Table {
    /// From its start.
    #[must_use]
    pub fn new(bytes: Bytes) -> Self {
        Self { bytes, open: None }
    }

    fn begin(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let whole = text(self.bytes.as_ref()).ok_or_else(|| What::NotUtf8.at(Place::File))?;
        let first = whole.lines().next().unwrap_or_default();
        let mut delimiter = ',';
        for other in [';', '\t'] {
            if first.matches(other).count() > first.matches(delimiter).count() {
                delimiter = other;
            }
        }
        let mut reader = ReaderBuilder::new()
            .delimiter(delimiter as u8)
            .flexible(true)
            .from_reader(Cursor::new(self.bytes.clone()));
        let at = Place::Line(1);
        let head = reader.headers().map_err(|fault| What::broken(fault).at(at.clone()))?;
        let clean = |name: &str| name.trim_start_matches('\u{feff}').trim().to_owned();
        let names: Vec<String> = head.iter().map(clean).collect();
        let find = |wanted: &[&str]| {
            let is_one = |name: &String| wanted.iter().any(|wanted| name.eq_ignore_ascii_case(wanted));
            names.iter().position(is_one)
        };
        let chosen = output.options.columns.clone();
        let missing = || What::NoCoordinates.at(at.clone());
        let (columns, is_degrees) = match chosen {
            Some([x, y]) => {
                let pair = (
                    find(&[x.as_str()]).ok_or_else(missing)?,
                    find(&[y.as_str()]).ok_or_else(missing)?,
                );
                let is_degrees = find(&LONGITUDE) == Some(pair.0) && find(&LATITUDE) == Some(pair.1);
                (Columns::Pair(pair.0, pair.1), is_degrees)
            }
            None => match (find(&LONGITUDE).zip(find(&LATITUDE)), find(&EAST).zip(find(&NORTH))) {
                (Some((x, y)), _) => (Columns::Pair(x, y), true),
                (None, Some((x, y))) => (Columns::Pair(x, y), false),
                (None, None) => (Columns::WellKnown(find(&WELL_KNOWN).ok_or_else(missing)?), true),
            },
        };
        if is_degrees && matches!(columns, Columns::Pair(..)) {
            output.place_by(crate::output::Placing::Earth(System::degrees()));
        } else {
            output.choose_place(is_degrees.then(|| Ok(System::degrees())), &Place::File)?;
        }
        self.open = Some(Open {
            reader,
            names,
            columns,
            has_decimal_commas: delimiter == ';',
        });
        Ok(Progress::Working(0.0))
    }
}

impl Open {
    fn position(&self, row: &StringRecord) -> Result<Position, What> {
        let value = |column: usize| row.get(column).unwrap_or_default().trim();
        match self.columns {
            Columns::Pair(x, y) => Ok([self.number(value(x))?, self.number(value(y))?]),
            Columns::WellKnown(column) => {
                let text = value(column);
                let inside = text
                    .get(..5)
                    .filter(|word| word.eq_ignore_ascii_case("POINT"))
                    .and_then(|_| text.get(text.find('(')? + 1..text.find(')')?));
                let Some(inside) = inside else {
                    let kind = shortened(text.split('(').next().unwrap_or_default().trim(), 40);
                    return Err(What::NotRead { kind, count: 1 });
                };
                let mut words = inside.split_whitespace();
                let mut next = || self.number(words.next().unwrap_or_default());
                Ok([next()?, next()?])
            }
        }
    }

    fn number(&self, text: &str) -> Result<f64, What> {
        let exchanged;
        let mut read = text;
        if self.has_decimal_commas && text.contains(',') && !text.contains('.') {
            exchanged = text.replace(',', ".");
            read = &exchanged;
        }
        let number = read.parse::<f64>().ok().filter(|number| number.is_finite());
        number.ok_or_else(|| What::NotANumber {
            value: shortened(text, 40),
        })
    }
}

impl Work for Table {
    fn step(&mut self, output: &mut Output) -> Result<Progress, Fault> {
        let Some(open) = &mut self.open else {
            return self.begin(output);
        };
        let mut row = StringRecord::new();
        for _ in 0..ROWS {
            let line = Place::Line(open.reader.position().line());
            let is_more = open
                .reader
                .read_record(&mut row)
                .map_err(|fault| What::broken(fault).at(line.clone()))?;
            if !is_more {
                // A table without rows is read, and says so by its layer.
                output.name_layer(LAYER);
                return Ok(Progress::Done);
            }
            match open.position(&row) {
                Ok(position) => {
                    let values = row.iter().map(str::to_owned);
                    let list: Vec<(String, String)> = open
                        .names
                        .iter()
                        .cloned()
                        .zip(values)
                        .filter(|(_, value)| !value.is_empty())
                        .collect();
                    let suggested = tags::suggestion(&list).or_else(|| tags::suggestion_by_category(&list));
                    let suggested = suggested.unwrap_or_default();
                    output.add(LAYER, Geometry::Points(vec![position]), list, suggested, &line)?;
                }
                Err(what) => output.fault(what.at(line)),
            }
        }
        let share = open.reader.position().byte() as f64 / self.bytes.as_ref().len().max(1) as f64;
        Ok(Progress::Working(share))
    }
}
