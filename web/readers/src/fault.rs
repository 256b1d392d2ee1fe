//! What could not be read, and where: a message for people by its name with its arguments, and a place in the file.
//!
//! The words stand with all others in `core/messages/LANGUAGE/readers.ftl`: this module carries names and values only, so
//! the page says each fault in the language of its window. [`What::message`] names the sentence, [`Place::message`] the
//! place.

use serde::ser::{Serialize, SerializeStruct, Serializer};

/// One fault with its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// What is wrong.
    pub what: What,
    /// Where in the file.
    pub place: Place,
}

/// Where in a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// The file as a whole.
    File,
    /// So many bytes from its start.
    Byte(u64),
    /// A line, from 1.
    Line(u64),
    /// A record of a layer, from 1.
    Record {
        /// The layer's name.
        layer: String,
        /// Which record.
        number: u64,
    },
    /// A file within a zip, a layer, or an element with its number.
    Named(String),
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// The file has no bytes.
    Empty,
    /// No format that is known.
    UnknownFormat,
    /// The format was recognized and its reader gave up.
    Broken {
        /// The reader's own words.
        detail: String,
    },
    /// Text that is not UTF-8.
    NotUtf8,
    /// More than what is read of one file.
    TooMuch {
        /// The limit.
        limit: u64,
        /// What is limited.
        of: Limited,
    },
    /// The file names no coordinate system and none was chosen.
    NoSystem,
    /// The same of lines and points, which can be placed by hand too.
    NoPlace,
    /// A coordinate system that is not known here.
    UnknownSystem {
        /// As the file or the choice names it.
        system: String,
    },
    /// A coordinate system whose shift to WGS84 is not known: positions may be off by some 200 m.
    UncertainDatum {
        /// As the file names it.
        system: String,
    },
    /// A position that is not on Earth, or where the projection has no answer.
    OffEarth,
    /// A file that belongs to another is missing.
    Missing {
        /// Its name.
        name: String,
    },
    /// An area whose ring is not closed by the parts the file has; it was left out.
    OpenRing,
    /// Points that the file refers to and does not hold.
    MissingPoints {
        /// How many.
        count: u64,
    },
    /// What the reader knows of but does not read.
    NotRead {
        /// The file's word for it.
        kind: String,
        /// How many.
        count: u64,
    },
    /// Splines that a drawing gives by points alone: what runs between those is the reader's.
    FittedSplines {
        /// How many.
        count: u64,
    },
    /// Blocks within blocks, deeper than is followed, or within themselves.
    TooDeep {
        /// The innermost block's name.
        name: String,
    },
    /// No columns with coordinates.
    NoCoordinates,
    /// A value that is no number.
    NotANumber {
        /// The value.
        value: String,
    },
    /// A grid with fewer values than it announces.
    TooFewValues {
        /// How many it announces.
        expected: u64,
        /// How many it has.
        found: u64,
    },
    /// A TIFF of colors: it can be a picture beneath the plan, but holds no heights.
    NoHeights,
    /// A world file without the picture that it places.
    PictureApart,
    /// An HGT file whose name does not say where it lies.
    UnnamedCorner,
    /// A drawing, or what is placed as one, whose unit is not said; meters were taken.
    NoUnit,
    /// Columns that count traffic: what a plan holds of them is words.
    TrafficCounts {
        /// Their names in the file, parted by commas.
        columns: String,
    },
    /// Columns that say zones or land uses: words too, and roughly land to build upon.
    Zones {
        /// Their names in the file, parted by commas.
        columns: String,
    },
    /// More zones than are told apart.
    TooManyZones {
        /// How many are.
        limit: u64,
    },
    /// Nothing of the file lies within the area asked for.
    NothingWithin,
    /// More faults than are told.
    More {
        /// How many more.
        count: u64,
    },
}

/// What is limited.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limited {
    /// Positions of features.
    Positions,
    /// Cells of a grid.
    Cells,
    /// Bytes once expanded.
    Bytes,
}

impl What {
    /// At a place.
    #[must_use]
    pub fn at(self, place: Place) -> Fault {
        Fault { what: self, place }
    }

    /// The name of the sentence that says it.
    #[must_use]
    pub fn message(&self) -> &'static str {
        match self {
            Self::Empty => "readers-empty",
            Self::UnknownFormat => "readers-unknown-format",
            Self::Broken { .. } => "readers-broken",
            Self::NotUtf8 => "readers-not-utf8",
            Self::TooMuch { of, .. } => match of {
                Limited::Positions => "readers-too-many-positions",
                Limited::Cells => "readers-too-many-cells",
                Limited::Bytes => "readers-too-many-bytes",
            },
            Self::NoSystem => "readers-no-system",
            Self::NoPlace => "readers-no-place",
            Self::UnknownSystem { .. } => "readers-unknown-system",
            Self::UncertainDatum { .. } => "readers-uncertain-datum",
            Self::OffEarth => "readers-off-earth",
            Self::Missing { .. } => "readers-missing-file",
            Self::OpenRing => "readers-open-ring",
            Self::MissingPoints { .. } => "readers-missing-points",
            Self::NotRead { .. } => "readers-not-read",
            Self::FittedSplines { .. } => "readers-fitted-splines",
            Self::TooDeep { .. } => "readers-too-deep",
            Self::NoCoordinates => "readers-no-coordinates",
            Self::NotANumber { .. } => "readers-not-a-number",
            Self::TooFewValues { .. } => "readers-too-few-values",
            Self::NoHeights => "readers-no-heights",
            Self::PictureApart => "readers-picture-apart",
            Self::UnnamedCorner => "readers-unnamed-corner",
            Self::NoUnit => "readers-no-unit",
            Self::TrafficCounts { .. } => "readers-traffic-counts",
            Self::Zones { .. } => "readers-zones",
            Self::TooManyZones { .. } => "readers-too-many-zones",
            Self::NothingWithin => "readers-nothing-within",
            Self::More { .. } => "readers-more-faults",
        }
    }

    /// The sentence's arguments, by name.
    #[must_use]
    pub fn arguments(&self) -> Vec<(&'static str, String)> {
        match self {
            Self::Broken { detail } => vec![("detail", detail.clone())],
            Self::TooMuch { limit, .. } | Self::TooManyZones { limit } => vec![("limit", limit.to_string())],
            Self::UnknownSystem { system } | Self::UncertainDatum { system } => vec![("system", system.clone())],
            Self::Missing { name } | Self::TooDeep { name } => vec![("name", name.clone())],
            Self::MissingPoints { count } | Self::FittedSplines { count } | Self::More { count } => {
                vec![("count", count.to_string())]
            }
            Self::NotRead { kind, count } => vec![("kind", kind.clone()), ("count", count.to_string())],
            Self::NotANumber { value } => vec![("value", value.clone())],
            Self::TrafficCounts { columns } | Self::Zones { columns } => vec![("columns", columns.clone())],
            Self::TooFewValues { expected, found } => {
                vec![("expected", expected.to_string()), ("found", found.to_string())]
            }
            _ => Vec::new(),
        }
    }

    /// A library's own words, no longer than a line.
    pub(crate) fn broken(detail: impl std::fmt::Display) -> Self {
        Self::Broken {
            detail: shortened(&detail.to_string(), 200),
        }
    }
}

impl Place {
    /// The name of the words that say it.
    #[must_use]
    pub fn message(&self) -> &'static str {
        match self {
            Self::File => "readers-place-file",
            Self::Byte(_) => "readers-place-byte",
            Self::Line(_) => "readers-place-line",
            Self::Record { .. } => "readers-place-record",
            Self::Named(_) => "readers-place-named",
        }
    }

    /// The arguments of those words, by name.
    #[must_use]
    pub fn arguments(&self) -> Vec<(&'static str, String)> {
        match self {
            Self::File => Vec::new(),
            Self::Byte(number) | Self::Line(number) => vec![("number", number.to_string())],
            Self::Record { layer, number } => vec![("layer", layer.clone()), ("number", number.to_string())],
            Self::Named(name) => vec![("name", name.clone())],
        }
    }
}

impl Serialize for Fault {
    /// `{ message, arguments: [[name, value]], place, place_arguments }`.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_struct("Fault", 4)?;
        fields.serialize_field("message", self.what.message())?;
        fields.serialize_field("arguments", &self.what.arguments())?;
        fields.serialize_field("place", self.place.message())?;
        fields.serialize_field("place_arguments", &self.place.arguments())?;
        fields.end()
    }
}

/// At most so many bytes of a text, cut between letters.
pub(crate) fn shortened(text: &str, most: usize) -> String {
    let mut end = most.min(text.len());
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    text.get(..end).unwrap_or_default().to_owned()
}
