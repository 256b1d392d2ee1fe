//! The plan file: GeoJSON (RFC 7946) that any geographic information system opens, and the way back.
//!
//! One feature for each mark, in the order of alternatives and ids, with `kind` among its properties; the site's
//! boundary is the feature of kind `site`. Everything without geometry is in the foreign member `hobnail`, beginning
//! with the format's `version`. Positions have nine decimals, which give every millimeter back ([`projection`]). Outer
//! rings run counterclockwise as the standard asks; an outline drawn clockwise says so and is turned back when read.
//! The same document gives the same bytes, one feature to a line.
//!
//! Reading gives the document with every fault and its place. A file of a newer version is refused untouched. GeoJSON
//! without `hobnail` is opened by the rules of [`plain`]: lines become streets, and so on, each told.
//!
//! Memory: text of at most [`json::LARGEST_BYTES`](super::json::LARGEST_BYTES), and sixteen times that while reading.
//!
//! [`projection`]: crate::plan::projection

use std::fmt;

use super::fault::FileFault;
use super::json::{Json, JsonFault, parse};
use crate::plan::document::Document;
use crate::plan::ids::MarkId;
use crate::plan::projection::OriginFault;
use crate::say;

pub mod plain;

mod place;
mod v1;

pub(crate) use v1::write_position;

/// The version written, and the newest that is read.
pub const VERSION: i64 = 1;

/// What a file gave.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The document.
    pub document: Document,
    /// Every fault of the file, in order.
    pub faults: Vec<FileFault>,
    /// What became of each feature of a file that is no plan file; empty for a plan file.
    pub done: Vec<Done>,
}

/// What became of a feature that came without a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Done {
    /// Index of the feature, from 0.
    pub feature: usize,
    /// What became of it; a feature of several parts is listed once for each.
    pub became: Became,
}

/// What a plain feature can become.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Became {
    /// An existing street.
    Street(MarkId),
    /// The site's boundary.
    Site,
    /// A parcel of unknown owner.
    Parcel(MarkId),
    /// A note.
    Note(MarkId),
}

/// Why a file was not opened at all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// It is not JSON, or too large.
    Json(JsonFault),
    /// It is JSON and no GeoJSON.
    NotGeoJson,
    /// It says it is a plan file and not of which version.
    NoVersion,
    /// It was written by a newer version of this program.
    NewerVersion(i64),
    /// There is no position in it to place a plan by.
    NoPositions,
    /// Its positions are no longitudes and latitudes in degrees.
    NotDegrees,
    /// The middle of its positions is too near a pole.
    Origin(OriginFault),
}

impl fmt::Display for Refusal {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Json(fault) => fault.fmt(formatter),
            Self::NotGeoJson => formatter.write_str(say!("exchange-no-features")),
            Self::NoVersion => formatter.write_str(say!("exchange-no-version")),
            Self::NewerVersion(version) => {
                formatter.write_str(&say!("exchange-newer-version", version = version, newest = VERSION))
            }
            Self::NoPositions => formatter.write_str(say!("exchange-no-positions")),
            Self::NotDegrees => formatter.write_str(say!("exchange-not-degrees")),
            Self::Origin(fault) => fault.fmt(formatter),
        }
    }
}

impl std::error::Error for Refusal {}

/// Reads a plan file, or any GeoJSON.
///
/// # Errors
/// [`Refusal`] when nothing of the file can be used.
pub fn read(bytes: &[u8]) -> Result<Opened, Refusal> {
    let file = parse(bytes).map_err(Refusal::Json)?;
    let Some(header) = file.member("hobnail") else {
        return plain::read(&file);
    };
    match header.member("version").and_then(Json::as_integer) {
        Some(version) if version > VERSION => Err(Refusal::NewerVersion(version)),
        Some(1) => v1::read(&file, header),
        _ => Err(Refusal::NoVersion),
    }
}

/// The plan file of a document. A document with points beyond the legal range or numbers that are not finite, which
/// history never lets in, is written all the same, and those are faults when it is read.
///
/// # Errors
/// [`OriginFault`] when the document lies nowhere on Earth.
pub fn write(document: &Document) -> Result<String, OriginFault> {
    v1::write(document)
}

#[cfg(test)]
mod tests;
