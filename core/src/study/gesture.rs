//! Uses at a gesture's start, and the edits that carry them over to its end.

use std::collections::BTreeMap;

use super::carry::{End, Face, Start, carry};
use super::overlap::Rings;
use crate::fabric::Fabric;
use crate::plan::{AlternativeId, Document, Edit, Mark, MarkId, PlanPoint, UseMark};

/// The faces and use marks at a gesture's start.
#[derive(Clone, Debug)]
pub struct UsesAtStart {
    faces: Vec<Face>,
    marks: BTreeMap<MarkId, UseMark>,
    face_of: BTreeMap<MarkId, usize>,
}

impl UsesAtStart {
    /// What stands now.
    pub fn of(document: &Document, alternative: AlternativeId, fabric: &Fabric) -> Self {
        let face_of = fabric
            .face_of_mark
            .iter()
            .map(|(mark, face)| (*mark, face.0 as usize - 1))
            .collect();
        Self {
            faces: faces_of(fabric),
            marks: use_marks(document, alternative),
            face_of,
        }
    }

    /// The edits that carry these uses over to the faces of `fabric`, the fabric of `document` as previewed.
    pub fn carried(
        &self,
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        next_id: MarkId,
    ) -> Vec<Edit> {
        let now = use_marks(document, alternative);
        let mut untouched = self.marks.clone();
        untouched.retain(|id, mark| now.get(id) == Some(mark));
        let laid: Vec<PlanPoint> = now
            .iter()
            .filter(|(id, _)| !untouched.contains_key(id))
            .map(|(_, mark)| mark.anchor)
            .collect();
        let mut face_of = self.face_of.clone();
        face_of.retain(|id, _| untouched.contains_key(id));
        let faces = faces_of(fabric);
        let start = Start {
            faces: &self.faces,
            marks: &untouched,
            face_of: &face_of,
        };
        let end = End {
            faces: &faces,
            face_at: |point| fabric.face_at(point).map(|face| face.id.0 as usize - 1),
            laid: &laid,
            next_id,
        };
        let carried = carry(&start, &end);
        let put = carried.put.into_iter().map(|(id, mark)| (id, Some(Mark::Use(mark))));
        let gone = carried.gone.into_iter().map(|id| (id, None));
        put.chain(gone)
            .map(|(id, after)| Edit::mark(document, alternative, id, after))
            .collect()
    }
}

fn faces_of(fabric: &Fabric) -> Vec<Face> {
    let face = |face: &crate::fabric::FaceOfLand| Face {
        rings: Rings::canonical(face.outline.clone()),
        inside: face.anchor,
        land_m2: face.land_m2().round() as u32,
    };
    fabric.faces.iter().map(face).collect()
}

fn use_marks(document: &Document, alternative: AlternativeId) -> BTreeMap<MarkId, UseMark> {
    let marks = document
        .alternatives
        .get(&alternative)
        .into_iter()
        .flat_map(|alternative| &alternative.marks);
    marks
        .filter_map(|(id, mark)| Some((*id, mark.as_use()?.clone())))
        .collect()
}
