//! Whole documents and alternatives as one value, with shapes in millimeters: for journals, which need no map.

use crate::order::OrderedMap;

use crate::exchange::fault::FileFaultKind;
use crate::exchange::json::Json;
use crate::exchange::stored::{Members, Reader, Stored, Writing, palette_from_json, palette_to_json, stored_record};
use crate::plan::coordinates::PlanPoint;
use crate::plan::document::{Alternative, Document, Site};
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::mark::{Mark, MarkKind};

use super::marks::{mark_from, mark_parts};
use super::shape::{Shape, ShapeKind};

/// A mark with its shape as a member of its own: `point`, `line` or `area`.
impl Stored for Mark {
    fn to_json(&self) -> Json {
        let (shape, mut writing) = mark_parts(self);
        let points: Vec<Json> = shape.points.iter().map(Stored::to_json).collect();
        writing.put_json(shape.kind.member(), Json::List(points));
        writing.done()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let mut members = Members::of(json, reader)?;
        let kind: Option<MarkKind> = members.take("kind", reader);
        let mut shape = None;
        for kind in [ShapeKind::Point, ShapeKind::Line, ShapeKind::Area] {
            let member = kind.member();
            if let Some(points) = members.take_json(member, reader) {
                let points: Option<Vec<PlanPoint>> = reader.within(member, |reader| Stored::from_json(points, reader));
                shape = points.map(|points| Shape { kind, points });
            }
        }
        if shape.is_none() {
            reader.fault(FileFaultKind::Missing("shape"));
        }
        let mark = mark_from(kind?, shape?, &mut members, reader);
        members.finish(reader);
        mark
    }
}

impl Stored for OrderedMap<MarkId, Mark> {
    fn to_json(&self) -> Json {
        palette_to_json(self.iter().map(|(id, mark)| (id.0, mark)))
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        palette_from_json(json, reader, MarkId)
    }

    fn blank() -> Option<Self> {
        Some(Self::new())
    }

    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}

stored_record!(Alternative { "name" => name, "table" => table, "marks" => marks });

stored_record!(Site { "boundary_mm" => boundary });

impl Stored for OrderedMap<AlternativeId, Alternative> {
    fn to_json(&self) -> Json {
        palette_to_json(self.iter().map(|(id, held)| (id.0, held)))
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        palette_from_json(json, reader, AlternativeId)
    }
}

/// An alternative as the plan file lists it, without its marks: its id and itself.
pub(crate) fn alternative_from_json(json: &Json, reader: &mut Reader) -> Option<(AlternativeId, Alternative)> {
    let mut members = Members::of(json, reader)?;
    let id = members.take("id", reader);
    let (name, table) = (members.take("name", reader), members.take("table", reader));
    members.finish(reader);
    Some((
        id?,
        Alternative {
            name: name?,
            table: table?,
            marks: OrderedMap::new(),
        },
    ))
}

/// A whole document.
pub(crate) fn document_to_json(document: &Document) -> Json {
    let mut writing = Writing::default();
    writing.put("heading", &document.heading);
    writing.put("site", &document.site);
    writing.put("program", &document.program);
    writing.put("street_sections", &document.street_sections);
    writing.put("building_types", &document.building_types);
    writing.put("phases", &document.phases);
    writing.put("settings", &document.settings);
    writing.put("topography", &document.topography);
    writing.put("base_image", &document.base_image);
    writing.put("alternatives", &document.alternatives);
    writing.done()
}

/// A whole document; `None` when any part can not be read.
pub(crate) fn document_from_json(json: &Json, reader: &mut Reader) -> Option<Document> {
    let mut members = Members::of(json, reader)?;
    let (heading, site) = (members.take("heading", reader), members.take("site", reader));
    let program = members.take("program", reader);
    let street_sections = members.take("street_sections", reader);
    let building_types = members.take("building_types", reader);
    let (phases, settings) = (members.take("phases", reader), members.take("settings", reader));
    let (topography, base_image) = (members.take("topography", reader), members.take("base_image", reader));
    let alternatives = members.take("alternatives", reader);
    members.finish(reader);
    Some(Document {
        heading: heading?,
        site: site?,
        program: program?,
        street_sections: street_sections?,
        building_types: building_types?,
        phases: phases?,
        settings: settings?,
        topography: topography?,
        base_image: base_image?,
        alternatives: alternatives?,
    })
}
