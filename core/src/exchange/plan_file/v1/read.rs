//! Reading version 1.

use crate::order::Entry;
use crate::order::OrderedMap;

use super::super::place::{about_middle, to_plan, unclosed};
use super::super::{Opened, Refusal};
use super::{CLOCKWISE, FOOTPRINT, SITE};
use crate::exchange::fault::FileFaultKind;
use crate::exchange::geojson::{Feature, Geometry, check_members, features_of};
use crate::exchange::json::Json;
use crate::exchange::stored::v1::{Shape, ShapeKind, alternative_from_json, kind_word, mark_from, shape_of_kind};
use crate::exchange::stored::{Members, Reader};
use crate::plan::defaults::default_settings;
use crate::plan::document::{Alternative, Document, Heading, Site};
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::mark::{Mark, MarkKind};
use crate::plan::projection::{GeographicPoint, Projection};
use crate::plan::tie::release_unusable_ties;
use crate::say;

/// A plan file with its foreign member.
pub(in crate::exchange::plan_file) fn read(file: &Json, header: &Json) -> Result<Opened, Refusal> {
    let mut reader = Reader::default();
    let features = features_of(file, &mut reader).ok_or(Refusal::NotGeoJson)?;
    check_members(file, &["type", "bbox", "features", "hobnail"], &mut reader);
    let document = reader.within("hobnail", |reader| read_header(header, reader));
    let (mut document, projection) = placed(document, &features, &mut reader)?;
    read_features(&features, &projection, &mut document, &mut reader);
    Ok(Opened {
        document,
        faults: reader.into_faults(),
        done: Vec::new(),
    })
}

/// The document without geometry. Parts that can not be read are faults, and left empty or at their defaults.
fn read_header(header: &Json, reader: &mut Reader) -> (Option<Heading>, Document) {
    let nowhere = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    let mut document = Document::new("", nowhere);
    let Some(mut members) = Members::of(header, reader) else {
        return (None, document);
    };
    let _: Option<i64> = members.take("version", reader);
    let heading = members.take("heading", reader);
    document.program = members.take("program", reader).unwrap_or_default();
    document.street_sections = members.take("street_sections", reader).unwrap_or_default();
    document.building_types = members.take("building_types", reader).unwrap_or_default();
    document.phases = members.take("phases", reader).unwrap_or_default();
    document.settings = members.take("settings", reader).unwrap_or_else(default_settings);
    document.topography = members.take("topography", reader).unwrap_or_default();
    document.base_image = members.take("base_image", reader).unwrap_or_default();
    document.alternatives = read_alternatives(&mut members, reader);
    members.finish(reader);
    (heading, document)
}

fn read_alternatives(members: &mut Members<'_>, reader: &mut Reader) -> OrderedMap<AlternativeId, Alternative> {
    let mut alternatives = OrderedMap::new();
    let json = members.take_json("alternatives", reader);
    let list = json.and_then(Json::as_list).unwrap_or_default();
    if list.is_empty() {
        reader.fault(FileFaultKind::Missing("alternatives"));
    }
    reader.within("alternatives", |reader| {
        for (index, entry) in list.iter().enumerate() {
            reader.within_entry(index, |reader| {
                let Some((id, alternative)) = alternative_from_json(entry, reader) else {
                    return;
                };
                match alternatives.entry(id) {
                    Entry::Vacant(entry) => {
                        entry.insert(alternative);
                    }
                    Entry::Occupied(_) => reader.fault(FileFaultKind::RepeatedId(id.0)),
                }
            });
        }
    });
    if alternatives.is_empty() {
        alternatives.insert(AlternativeId(0), named_by(AlternativeId(0)));
    }
    alternatives
}

fn named_by(id: AlternativeId) -> Alternative {
    Alternative {
        name: say!("plan-alternative-numbered", number = u64::from(id.0) + 1),
        ..Alternative::default()
    }
}

/// The document with a heading that places it; about the middle of the data where the file's own does not.
fn placed(
    (heading, mut document): (Option<Heading>, Document),
    features: &[Feature<'_>],
    reader: &mut Reader,
) -> Result<(Document, Projection), Refusal> {
    if let Some(heading) = heading {
        document.heading = heading;
        if let Ok(projection) = document.heading.projection() {
            return Ok((document, projection));
        }
    }
    let projection = about_middle(features)?;
    reader.within("hobnail", |reader| {
        reader.within("heading", |reader| reader.fault(FileFaultKind::OriginReplaced));
    });
    document.heading.origin_longitude_ndeg = projection.origin().longitude_ndeg;
    document.heading.origin_latitude_ndeg = projection.origin().latitude_ndeg;
    Ok((document, projection))
}

/// A mark read from a feature, before ids are settled.
struct Found {
    feature: usize,
    feature_id: Option<String>,
    alternative: AlternativeId,
    id: Option<MarkId>,
    mark: Mark,
}

fn read_features(features: &[Feature<'_>], projection: &Projection, document: &mut Document, reader: &mut Reader) {
    let mut found = Vec::new();
    for feature in features {
        at_feature(feature.index, feature.id.clone(), reader, |reader| {
            found.extend(read_feature(feature, projection, &mut document.site, reader));
        });
    }
    let mut feature_of: OrderedMap<(AlternativeId, MarkId), (usize, Option<String>)> = OrderedMap::new();
    let mut used: OrderedMap<MarkId, AlternativeId> = OrderedMap::new();
    let mut waiting = Vec::new();
    for held in found {
        let Found {
            feature,
            feature_id,
            alternative,
            id,
            mark,
        } = held;
        at_feature(feature, feature_id.clone(), reader, |reader| {
            document.alternatives.entry(alternative).or_insert_with(|| {
                reader.fault(FileFaultKind::AlternativeAdded(alternative));
                named_by(alternative)
            });
        });
        match id {
            Some(id) if !used.contains_key(&id) => {
                used.insert(id, alternative);
                feature_of.insert((alternative, id), (feature, feature_id));
                if let Some(held) = document.alternatives.get_mut(&alternative) {
                    held.marks.insert(id, mark);
                }
            }
            taken => waiting.push((taken, feature, feature_id, alternative, mark)),
        }
    }
    for (taken, feature, feature_id, alternative, mark) in waiting {
        let id = document.next_mark_id();
        at_feature(feature, feature_id.clone(), reader, |reader| {
            reader.fault(if taken.is_some() {
                FileFaultKind::IdReplaced(id)
            } else {
                FileFaultKind::IdGiven(id)
            });
        });
        feature_of.insert((alternative, id), (feature, feature_id));
        if let Some(held) = document.alternatives.get_mut(&alternative) {
            held.marks.insert(id, mark);
        }
    }
    for (&alternative, held) in &mut document.alternatives {
        for released in release_unusable_ties(&mut held.marks) {
            let (feature, feature_id) = feature_of
                .get(&(alternative, released.street))
                .cloned()
                .unwrap_or_default();
            at_feature(feature, feature_id, reader, |reader| {
                reader.fault(FileFaultKind::TieReleased {
                    vertex: released.vertex,
                    street: released.tie.street,
                    reason: released.reason,
                });
            });
        }
    }
}

/// Reads at a feature's place.
fn at_feature(index: usize, id: Option<String>, reader: &mut Reader, read: impl FnOnce(&mut Reader)) {
    reader.within("features", |reader| {
        reader.within_entry(index, |reader| reader.within_feature(index, id, read));
    });
}

fn read_feature(feature: &Feature<'_>, projection: &Projection, site: &mut Site, reader: &mut Reader) -> Option<Found> {
    let geometry = feature.geometry.as_ref()?;
    let Some(properties) = feature.properties else {
        reader.fault(FileFaultKind::Missing("properties"));
        return None;
    };
    reader.within("properties", |reader| {
        let mut members = Members::of(properties, reader)?;
        let word: String = members.take("kind", reader)?;
        let is_clockwise = members.take::<Option<bool>>(CLOCKWISE, reader)?.unwrap_or(false);
        if word == SITE {
            members.finish(reader);
            let shape = shape_of(geometry, Some(ShapeKind::Area), is_clockwise, projection, reader)?;
            if site.boundary.is_empty() {
                site.boundary = shape.points;
            } else {
                reader.fault(FileFaultKind::SecondSite);
            }
            return None;
        }
        let Some(kind) = kind_word(&word) else {
            reader.fault(FileFaultKind::UnknownKind(word));
            return None;
        };
        let alternative = members.take("alternative", reader);
        let shape_kind = footprint_kind(kind, &mut members, reader)?;
        let shape = shape_of(geometry, shape_kind, is_clockwise, projection, reader);
        let mark = mark_from(kind, shape?, &mut members, reader);
        members.finish(reader);
        Some(Found {
            feature: feature.index,
            feature_id: feature.id.clone(),
            alternative: alternative?,
            id: feature.id.as_ref().and_then(|id| id.parse().ok()).map(MarkId),
            mark: mark?,
        })
    })
}

/// How the points of a feature belong together, where its kind or its `footprint` says; `Some(None)` where its geometry
/// is to say.
fn footprint_kind(kind: MarkKind, members: &mut Members<'_>, reader: &mut Reader) -> Option<Option<ShapeKind>> {
    if let Some(shape_kind) = shape_of_kind(kind) {
        return Some(Some(shape_kind));
    }
    let word: Option<String> = members.take(FOOTPRINT, reader)?;
    let Some(word) = word else {
        return Some(None);
    };
    let known = [ShapeKind::Point, ShapeKind::Line, ShapeKind::Area]
        .into_iter()
        .find(|kind| kind.member() == word);
    if known.is_none() {
        reader.within(FOOTPRINT, |reader| {
            reader.expected_one_of("point line area", &Json::Text(word))
        });
    }
    known.map(Some)
}

/// The shape of a geometry. Where an outline or a line is expected, one that has too few points is what lesser geometry
/// it could be written as.
fn shape_of(
    geometry: &Geometry,
    expected: Option<ShapeKind>,
    is_clockwise: bool,
    projection: &Projection,
    reader: &mut Reader,
) -> Option<Shape> {
    // Other programs wrap single geometries in one of several parts.
    if let Geometry::Many(parts) = geometry
        && let [single] = parts.as_slice()
    {
        return shape_of(single, expected, is_clockwise, projection, reader);
    }
    let (natural, positions): (ShapeKind, &[[f64; 2]]) = match geometry {
        Geometry::Empty => (expected.unwrap_or(ShapeKind::Line), &[]),
        Geometry::Point(position) => (ShapeKind::Point, std::slice::from_ref(position)),
        Geometry::Line(line) => (ShapeKind::Line, line),
        Geometry::Polygon { outer, hole_count } => {
            if *hole_count > 0 {
                reader.fault(FileFaultKind::Holes);
            }
            (ShapeKind::Area, outer)
        }
        Geometry::Many(_) => {
            unsuitable(geometry, expected, reader);
            return None;
        }
    };
    let kind = expected.unwrap_or(natural);
    let suits = match (kind, natural) {
        (ShapeKind::Point, ShapeKind::Point) | (ShapeKind::Line, ShapeKind::Line | ShapeKind::Point) => true,
        (ShapeKind::Area, ShapeKind::Area) => true,
        (ShapeKind::Area, _) => positions.len() < 3,
        _ => false,
    };
    if !suits {
        unsuitable(geometry, expected, reader);
        return None;
    }
    let mut points = to_plan(positions, projection, reader)?;
    if natural == ShapeKind::Area {
        points = unclosed(points);
    }
    if is_clockwise && kind == ShapeKind::Area && points.len() > 2 {
        points[1..].reverse();
    }
    Some(Shape { kind, points })
}

fn unsuitable(geometry: &Geometry, expected: Option<ShapeKind>, reader: &mut Reader) {
    let expected = match expected {
        Some(ShapeKind::Point) => say!("exchange-geometry-point"),
        Some(ShapeKind::Line) => say!("exchange-geometry-line"),
        Some(ShapeKind::Area) => say!("exchange-geometry-polygon"),
        None => say!("exchange-geometry-any"),
    };
    reader.fault(FileFaultKind::UnsuitableGeometry {
        expected,
        found: geometry.words(),
    });
}
