//! What was read, laid on the plan: lines and points, with a note for each that could not be.

use super::frame::Frame;
use super::{InputFile, Note};
use crate::exchange::geojson_lines::{FeatureName, ReadFault, ReadLine, ReadPoint};
use crate::exchange::json::Json;
use crate::fabric::joins::{Join, JoinKind, apply_joins, joins};
use crate::fabric::{SourceId, SourceSegment, segments_of_line};
use crate::plan::PlanPoint;
use crate::say;

/// A street on the plan.
pub(super) struct DrawnLine {
    pub feature: FeatureName,
    pub points: Vec<PlanPoint>,
}

/// What a point of interest is.
pub(super) enum Role {
    Origin,
    Sample,
    Dwelling { dwellings: u64 },
    Place { use_name: String, area_m2: f64 },
}

/// A point of interest on the plan.
pub(super) struct DrawnPoint {
    /// Its id, or its place in the file.
    pub id: String,
    /// In meters, not rounded.
    pub position_m: (f64, f64),
    pub point: PlanPoint,
    pub role: Role,
}

/// Notes of what could not be read.
pub(super) fn notes_of(file: InputFile, faults: &[ReadFault]) -> Vec<Note> {
    let note = |fault: &ReadFault| Note {
        file,
        text: fault.to_string(),
    };
    faults.iter().map(note).collect()
}

/// Lays lines on the plan; one with a position beyond it is left out and noted.
pub(super) fn place_lines(frame: &Frame, lines: &[ReadLine]) -> (Vec<DrawnLine>, Vec<Note>) {
    let (mut drawn, mut notes) = (Vec::new(), Vec::new());
    for line in lines {
        let placed: Option<Vec<PlanPoint>> = line
            .positions
            .iter()
            .map(|&position| frame.plan_point(position))
            .collect();
        match placed {
            Some(mut points) if points.iter().any(|point| *point != points[0]) => {
                points.dedup();
                drawn.push(DrawnLine {
                    feature: line.feature.clone(),
                    points,
                });
            }
            Some(_) => notes.push(Note {
                file: InputFile::Streets,
                text: format!("{}: {}", line.feature, say!("report-line-too-short")),
            }),
            None => {
                let beyond = line
                    .positions
                    .iter()
                    .find(|&&position| frame.plan_point(position).is_none());
                let [x, y] = beyond.copied().unwrap_or_default().map(|number| number.to_string());
                let why = match frame {
                    Frame::Meters { .. } => say!("report-line-too-far", x = x, y = y),
                    Frame::Degrees(_) => say!("report-line-no-degrees", x = x, y = y),
                };
                notes.push(Note {
                    file: InputFile::Streets,
                    text: format!("{}: {why}", line.feature),
                });
            }
        }
    }
    (drawn, notes)
}

/// Lays points on the plan; those beyond it, or without what their role needs, are left out and noted.
pub(super) fn place_points(frame: &Frame, points: &[ReadPoint]) -> (Vec<DrawnPoint>, Vec<Note>) {
    let (mut drawn, mut notes) = (Vec::new(), Vec::new());
    for read in points {
        let placed = frame.position_m(read.position).zip(frame.plan_point(read.position));
        let placed = placed.ok_or_else(|| {
            let [x, y] = read.position.map(|number| number.to_string());
            match frame {
                Frame::Meters { .. } => say!("report-point-too-far", x = x, y = y),
                Frame::Degrees(_) => say!("report-point-no-degrees", x = x, y = y),
            }
        });
        match placed.and_then(|placed| Ok((placed, role_of(&read.properties)?))) {
            Ok(((position_m, point), role)) => drawn.push(DrawnPoint {
                id: read
                    .feature
                    .id
                    .clone()
                    .unwrap_or_else(|| read.feature.index.to_string()),
                position_m,
                point,
                role,
            }),
            Err(why) => notes.push(Note {
                file: InputFile::Points,
                text: format!("{}: {why}", read.feature),
            }),
        }
    }
    (drawn, notes)
}

/// The role of a point, or what its role lacks.
fn role_of(properties: &Json) -> Result<Role, String> {
    let role = match properties.member("role") {
        None | Some(Json::Null) => "origin",
        Some(Json::Text(role)) => role,
        Some(_) => return Err(say!("report-role-no-word").to_owned()),
    };
    match role {
        "origin" => Ok(Role::Origin),
        "sample" => Ok(Role::Sample),
        "dwelling" => {
            let dwellings = properties.member("dwellings").and_then(Json::as_integer);
            let dwellings = dwellings.and_then(|count| u32::try_from(count).ok());
            let dwellings = dwellings.ok_or_else(|| say!("report-dwelling-uncounted"))?;
            Ok(Role::Dwelling {
                dwellings: u64::from(dwellings),
            })
        }
        "place" => {
            let use_name = properties
                .member("use")
                .and_then(Json::as_text)
                .ok_or_else(|| say!("report-place-without-use"))?;
            let area_m2 = properties
                .member("area_m2")
                .and_then(Json::as_number)
                .filter(|area_m2| *area_m2 >= 0.0);
            let area_m2 = area_m2.ok_or_else(|| say!("report-place-without-area"))?;
            Ok(Role::Place {
                use_name: use_name.to_owned(),
                area_m2,
            })
        }
        other => Err(say!("report-role-unknown", role = other.escape_debug().to_string())),
    }
}

/// Joins ends of lines to streets within the tolerance, and notes each: it moves what was drawn, so it is told.
pub(super) fn join_ends(frame: &Frame, lines: &mut [DrawnLine], tolerance_m: f64) -> Vec<Note> {
    let mut points: Vec<Vec<PlanPoint>> = lines.iter().map(|line| line.points.clone()).collect();
    let found = joins(&points, (tolerance_m * 1000.0).round() as u32);
    apply_joins(&mut points, &found);
    let note = |join: &Join| {
        let feature = |line: u32| lines[line as usize].feature.to_string();
        let (from, to) = (frame.written(join.from), frame.written(join.to));
        let what = match join.kind {
            JoinKind::ExtendedTo(other) => {
                say!("report-join-extended", from = from, other = feature(other), to = to)
            }
            JoinKind::TrimmedTo(other) => {
                say!("report-join-trimmed", from = from, other = feature(other), to = to)
            }
            JoinKind::MovedTo(other, _) => {
                say!("report-join-moved", from = from, other = feature(other), to = to)
            }
        };
        Note {
            file: InputFile::Streets,
            text: format!("{}: {what}", feature(join.line)),
        }
    };
    let notes = found.iter().map(note).collect();
    for (line, points) in lines.iter_mut().zip(points) {
        line.points = points;
    }
    notes
}

/// The straight pieces of all lines.
pub(super) fn segments_of(lines: &[DrawnLine]) -> Vec<SourceSegment> {
    let numbered = lines.iter().zip(0..);
    numbered
        .flat_map(|(line, index)| segments_of_line(&line.points, SourceId(index)))
        .collect()
}
