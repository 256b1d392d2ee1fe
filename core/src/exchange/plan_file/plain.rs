//! Opening GeoJSON that is no plan file: what each feature becomes.
//!
//! - The plan's origin is the middle of the data, rounded to a millionth of a degree.
//! - A line becomes an existing neighborhood street of the default street section, with the feature's name.
//! - A polygon whose name or kind says site or boundary becomes the site's boundary; failing that, the only polygon
//!   does. Any other becomes a parcel of unknown owner, which changes no figure until somebody says more.
//! - A point becomes a note.
//!
//! Features of several parts become several marks. All go to the first alternative, in order, and each is told in
//! [`Opened::done`]; holes, heights and features beyond 100 km are faults.

use super::place::{about_middle, to_plan, unclosed};
use super::{Became, Done, Opened, Refusal};
use crate::exchange::fault::FileFaultKind;
use crate::exchange::geojson::{Feature, Geometry, features_of};
use crate::exchange::json::Json;
use crate::exchange::stored::Reader;
use crate::plan::coordinates::PlanPoint;
use crate::plan::defaults::NEIGHBORHOOD_STREET;
use crate::plan::document::{Alternative, Document};
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::land::{Note, OwnerGroup, Parcel};
use crate::plan::mark::Mark;
use crate::plan::street::{Status, Street, StreetOwner, StreetRole, Vertex};
use crate::say;

/// Properties looked at for a feature's name, the first that is text.
const NAME_PROPERTIES: [&str; 4] = ["name", "Name", "NAME", "title"];

/// Properties looked at for what a polygon is.
const KIND_PROPERTIES: [&str; 3] = ["kind", "type", "class"];

/// Reads GeoJSON without the plan file's own member.
pub(super) fn read(file: &Json) -> Result<Opened, Refusal> {
    let mut reader = Reader::default();
    let features = features_of(file, &mut reader).ok_or(Refusal::NotGeoJson)?;
    let projection = about_middle(&features)?;
    let name = file.member("name").and_then(Json::as_text);
    let name = name.unwrap_or_else(|| say!("exchange-opened-drawing"));
    let mut document = Document::new(name, projection.origin());
    let site_feature = site_among(&features);
    let mut alternative = document.alternatives.remove(&AlternativeId(0)).unwrap_or_default();
    let mut done = Vec::new();
    for feature in &features {
        let Some(geometry) = &feature.geometry else { continue };
        reader.within("features", |reader| {
            reader.within_entry(feature.index, |reader| {
                reader.within_feature(feature.index, feature.id.clone(), |reader| {
                    for part in geometry.parts() {
                        let Some(points) = to_plan(&part.positions(), &projection, reader) else {
                            continue;
                        };
                        if let Geometry::Polygon { hole_count: 1.., .. } = part {
                            reader.fault(FileFaultKind::Holes);
                        }
                        let is_site = site_feature == Some(feature.index)
                            && document.site.boundary.is_empty()
                            && matches!(part, Geometry::Polygon { .. });
                        let became = if is_site {
                            document.site.boundary = unclosed(points);
                            Became::Site
                        } else {
                            add(part, points, name_of(feature), &mut alternative)
                        };
                        done.push(Done {
                            feature: feature.index,
                            became,
                        });
                    }
                });
            });
        });
    }
    document.alternatives.insert(AlternativeId(0), alternative);
    Ok(Opened {
        document,
        faults: reader.into_faults(),
        done,
    })
}

/// What became of the features, counted, in a sentence each; the fault list says what was left out.
#[must_use]
pub fn summary(done: &[Done]) -> Vec<String> {
    let count = |is_one: fn(Became) -> bool| done.iter().filter(|done| is_one(done.became)).count();
    let mut sentences = Vec::new();
    let streets = count(|became| matches!(became, Became::Street(_)));
    if streets > 0 {
        sentences.push(say!("exchange-became-streets", count = streets));
    }
    let sites = count(|became| became == Became::Site);
    if sites > 0 {
        sentences.push(say!("exchange-became-site", count = sites));
    }
    let parcels = count(|became| matches!(became, Became::Parcel(_)));
    if parcels > 0 {
        sentences.push(say!("exchange-became-parcels", count = parcels));
    }
    let notes = count(|became| matches!(became, Became::Note(_)));
    if notes > 0 {
        sentences.push(say!("exchange-became-notes", count = notes));
    }
    sentences
}

/// The feature whose polygon is the site: the first that says so, else the only polygon there is.
fn site_among(features: &[Feature<'_>]) -> Option<usize> {
    let polygon_count = |feature: &Feature<'_>| {
        let parts = feature.geometry.as_ref().map_or_else(Vec::new, Geometry::parts);
        parts
            .into_iter()
            .filter(|part| matches!(part, Geometry::Polygon { .. }))
            .count()
    };
    let says_so = |feature: &&Feature<'_>| {
        let texts = NAME_PROPERTIES.iter().chain(&KIND_PROPERTIES);
        polygon_count(feature) > 0
            && texts
                .filter_map(|property| feature.properties?.member(property)?.as_text())
                .any(|text| {
                    text.split(|character: char| !character.is_alphanumeric())
                        .any(|word| word.eq_ignore_ascii_case("site") || word.eq_ignore_ascii_case("boundary"))
                })
    };
    if let Some(feature) = features.iter().find(says_so) {
        return Some(feature.index);
    }
    let total: usize = features.iter().map(polygon_count).sum();
    let only = features.iter().find(|feature| polygon_count(feature) == 1)?;
    (total == 1).then_some(only.index)
}

fn name_of(feature: &Feature<'_>) -> String {
    let texts = NAME_PROPERTIES
        .iter()
        .filter_map(|property| feature.properties?.member(property)?.as_text());
    texts.map(str::to_owned).next().unwrap_or_default()
}

fn add(part: &Geometry, points: Vec<PlanPoint>, name: String, alternative: &mut Alternative) -> Became {
    let id = MarkId(alternative.marks.len() as u32);
    let (mark, became) = match part {
        Geometry::Polygon { .. } => {
            let parcel = Parcel {
                label: name,
                outline: unclosed(points),
                owner: OwnerGroup::Unknown,
                beside: None,
            };
            (Mark::Parcel(parcel), Became::Parcel(id))
        }
        Geometry::Line(_) => {
            let street = Street {
                line: points.into_iter().map(Vertex::at).collect(),
                section: NEIGHBORHOOD_STREET,
                name,
                role: StreetRole::NeighborhoodStreet,
                owner: StreetOwner::Town,
                status: Status::Existing,
                is_outside: false,
                level: 0,
                phase: None,
            };
            (Mark::Street(street), Became::Street(id))
        }
        Geometry::Point(_) | Geometry::Empty | Geometry::Many(_) => {
            let at = points.first().copied().unwrap_or_default();
            let note = Note {
                at,
                text: name,
                ..Note::default()
            };
            (Mark::Note(note), Became::Note(id))
        }
    };
    alternative.marks.insert(id, mark);
    became
}
