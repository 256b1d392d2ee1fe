//! A bare street network measured: the arrangement it makes, who walks how far, which streets carry the walks.
//!
//! Text in, numbers out: files and arguments belong to the command line. A file that can be read at all is measured;
//! everything in it that could not be used, and every end that was joined, is told as a note.

mod answer;
mod drawn;
mod frame;
mod streets;
mod walks;
mod words;

use std::fmt;

pub use answer::{
    ArrangementFigures, BetweennessFigures, FootFigures, LinkFigures, MultiOriginFigures, NetworkAnswer, OriginFigures,
    Radius, SampleFigures, ShedFigures, WalkFigures,
};

use crate::exchange::geojson_lines::{Unreadable, read_lines, read_points};
use crate::fabric::{Arrangement, Chains};
use crate::network::StreetNetwork;
use crate::network::graph::NetworkFault;
use crate::say;
use frame::Frame;

/// The most a tolerance for joining ends may be, in meters; more would join streets that are meant apart.
pub const WIDEST_TOLERANCE_M: f64 = 10.0;

/// The farthest distance a walk-shed may be asked for, in meters.
pub const FARTHEST_WITHIN_M: f64 = 100_000.0;

/// Networks of more nodes are measured without betweenness, whose work grows with their square.
pub const MOST_BETWEENNESS_NODES: usize = 20_000;

/// How coordinates are written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Coordinates {
    /// Meters east and north.
    Meters,
    /// Longitude and latitude in degrees (RFC 7946), measured on the plan's plane about a center.
    Degrees {
        /// The center as longitude and latitude; the middle of the streets when none is given.
        about: Option<[f64; 2]>,
    },
}

/// What to measure.
#[derive(Clone, Debug, PartialEq)]
pub struct NetworkRequest<'a> {
    /// The streets, GeoJSON.
    pub streets: &'a [u8],
    /// Points of interest, GeoJSON; their `role` is `origin` (as when none is given), `sample`, `dwelling` (with a
    /// number `dwellings`) or `place` (with `use` and `area_m2`).
    pub points: Option<&'a [u8]>,
    /// How both are written.
    pub coordinates: Coordinates,
    /// Ends of streets this near to another street are joined to it, in meters; 0 joins nothing.
    pub tolerance_m: f64,
    /// Distances of the walk-sheds, in meters.
    pub within_m: &'a [f64],
}

/// Which of the files a note concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum InputFile {
    /// The streets.
    Streets,
    /// The points.
    Points,
}

/// Something in a file to look at or to fix.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// Which file.
    pub file: InputFile,
    /// What and where, in words.
    pub text: String,
}

/// Why nothing was measured.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// A file is not GeoJSON.
    Unreadable {
        /// Which file.
        file: InputFile,
        /// What is wrong with it.
        why: Unreadable,
    },
    /// No street can be used; the notes say why.
    NoStreets {
        /// Everything wrong with the file.
        notes: Vec<Note>,
    },
    /// The center is not a place to project about.
    Center {
        /// As given: longitude, latitude.
        about: [f64; 2],
    },
    /// The tolerance is not between 0 and [`WIDEST_TOLERANCE_M`].
    Tolerance {
        /// As given.
        tolerance_m: f64,
    },
    /// A walk-shed's distance is not more than 0 and at most [`FARTHEST_WITHIN_M`].
    Within {
        /// As given.
        within_m: f64,
    },
    /// The network can not be searched.
    Network {
        /// Every reason.
        faults: Vec<NetworkFault>,
    },
}

impl fmt::Display for Refusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable { why, .. } => write!(out, "{why}"),
            Self::NoStreets { .. } => out.write_str(say!("report-no-streets")),
            Self::Center {
                about: [longitude, latitude],
            } => out.write_str(&say!(
                "report-bad-center",
                longitude = longitude.to_string(),
                latitude = latitude.to_string()
            )),
            Self::Tolerance { tolerance_m } => out.write_str(&say!(
                "report-bad-tolerance",
                tolerance = tolerance_m.to_string(),
                most = WIDEST_TOLERANCE_M.to_string()
            )),
            Self::Within { within_m } => out.write_str(&say!(
                "report-bad-within",
                within = within_m.to_string(),
                most = FARTHEST_WITHIN_M.to_string()
            )),
            Self::Network { faults } => {
                let list: Vec<String> = faults.iter().map(NetworkFault::to_string).collect();
                write!(out, "{}", list.join("; "))
            }
        }
    }
}

impl std::error::Error for Refusal {}

/// A measured network.
#[derive(Clone, Debug, PartialEq)]
pub struct NetworkReport {
    /// The numbers.
    pub answer: NetworkAnswer,
    /// What to look at or fix, in order of file.
    pub notes: Vec<Note>,
    /// Longitude and latitude of the place that positions in the answer are measured from, for input in degrees.
    pub center_deg: Option<[f64; 2]>,
}

impl NetworkReport {
    /// The answer as JSON, two spaces to a level, with a last line end. Numbers read back as the same numbers.
    #[must_use]
    pub fn to_json(&self) -> String {
        // Writing numbers and text to memory has no way to fail.
        let mut text = serde_json::to_string_pretty(&self.answer).unwrap_or_default();
        text.push('\n');
        text
    }

    /// The answer as a short table in sentences with units, with a last line end.
    #[must_use]
    pub fn to_words(&self) -> String {
        words::words_of(self)
    }
}

/// Measures a network.
///
/// # Errors
/// A [`Refusal`] when there is nothing to measure or the request can not be met.
///
/// ```
/// use hobnail_core::report::network_report::{Coordinates, NetworkRequest, network_report};
/// let streets = br#"{"type":"MultiLineString","coordinates":[[[-30,0],[30,0]],[[0,-40],[0,40]]]}"#;
/// let request = NetworkRequest {
///     streets,
///     points: None,
///     coordinates: Coordinates::Meters,
///     tolerance_m: 0.0,
///     within_m: &[400.0],
/// };
/// let report = network_report(&request)?;
/// assert_eq!(report.answer.arrangement.nodes, 5);
/// assert_eq!(report.answer.arrangement.total_length, 140.0);
/// # Ok::<(), hobnail_core::report::network_report::Refusal>(())
/// ```
pub fn network_report(request: &NetworkRequest<'_>) -> Result<NetworkReport, Refusal> {
    if !(0.0..=WIDEST_TOLERANCE_M).contains(&request.tolerance_m) {
        let tolerance_m = request.tolerance_m;
        return Err(Refusal::Tolerance { tolerance_m });
    }
    let is_walk = |&&within_m: &&f64| within_m > 0.0 && within_m <= FARTHEST_WITHIN_M;
    if let Some(&within_m) = request.within_m.iter().find(|within_m| !is_walk(within_m)) {
        return Err(Refusal::Within { within_m });
    }
    let refused = |file| move |why| Refusal::Unreadable { file, why };
    let lines = read_lines(request.streets).map_err(refused(InputFile::Streets))?;
    let points = request
        .points
        .map(read_points)
        .transpose()
        .map_err(refused(InputFile::Points))?;
    let frame = Frame::of(request.coordinates, &lines.items)?;
    let mut notes = drawn::notes_of(InputFile::Streets, &lines.faults);
    let (mut lines, unplaced) = drawn::place_lines(&frame, &lines.items);
    notes.extend(unplaced);
    notes.extend(drawn::join_ends(&frame, &mut lines, request.tolerance_m));
    let segments = drawn::segments_of(&lines);
    if segments.is_empty() {
        return Err(Refusal::NoStreets { notes });
    }
    let arrangement = Arrangement::of(&segments);
    let chains = Chains::of(&arrangement, |_| false);
    let level = |chain| Some((chains.length_um(chain), chains.length_um(chain)));
    let streets = StreetNetwork::of(&arrangement, &chains, level).map_err(|faults| Refusal::Network { faults })?;
    let walk = points.map(|points| {
        notes.extend(drawn::notes_of(InputFile::Points, &points.faults));
        let (points, unplaced) = drawn::place_points(&frame, &points.items);
        notes.extend(unplaced);
        walks::walk_figures(
            &walks::Ground {
                frame: &frame,
                arrangement: &arrangement,
                streets: &streets,
            },
            &points,
            request.within_m,
        )
    });
    let betweenness = (chains.nodes().len() <= MOST_BETWEENNESS_NODES)
        .then(|| streets::betweenness_figures(&frame, &streets.network));
    if betweenness.is_none() {
        notes.push(Note {
            file: InputFile::Streets,
            text: say!("report-too-many-nodes", most = MOST_BETWEENNESS_NODES),
        });
    }
    Ok(NetworkReport {
        answer: NetworkAnswer {
            tolerance_m: request.tolerance_m,
            arrangement: streets::arrangement_figures(segments.len() as u64, &arrangement, &chains),
            walk,
            betweenness,
        },
        notes,
        center_deg: frame.center_deg(),
    })
}

#[cfg(test)]
mod tests;
