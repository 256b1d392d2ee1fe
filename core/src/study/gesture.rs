//! Uses at a gesture's start, and the edits that carry them over to its end.

use crate::order::OrderedMap;
use std::borrow::Cow;
use std::sync::Arc;

use super::carry::{End, Face, Start, carry};
use super::overlap::Rings;
use crate::fabric::{Fabric, FaceOfLand, FaceRings};
use crate::plan::{AlternativeId, Document, Edit, Mark, MarkId, PlanPoint, UseMark};

/// The faces and use marks at a gesture's start.
#[derive(Clone, Debug)]
pub struct UsesAtStart {
    faces: Vec<Face>,
    /// The outlines of the faces, in their order. Holding them keeps their places in memory their own.
    outlines: Vec<Arc<FaceRings>>,
    /// The face of each outline, by its place in memory.
    face_at_place: OrderedMap<usize, usize>,
    marks: OrderedMap<MarkId, UseMark>,
    face_of: OrderedMap<MarkId, usize>,
}

impl UsesAtStart {
    /// What stands now.
    pub fn of(document: &Document, alternative: AlternativeId, fabric: &Fabric) -> Self {
        let face_of = fabric.face_of_mark.iter();
        let face_of = OrderedMap::from_iter(face_of.map(|(mark, face)| (*mark, face.0 as usize - 1)));
        let outlines: Vec<Arc<FaceRings>> = fabric.faces.iter().map(|face| Arc::clone(&face.outline)).collect();
        Self {
            faces: fabric.faces.iter().map(face_of_land).collect(),
            face_at_place: OrderedMap::from_iter((0..).zip(&outlines).map(|(face, outline)| (place_of(outline), face))),
            outlines,
            marks: OrderedMap::from_iter(use_marks(document, alternative).map(|(id, mark)| (id, mark.clone()))),
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
        let mut laid: Vec<PlanPoint> = Vec::new();
        let mut is_untouched = 0;
        let mut at_start = self.marks.iter().peekable();
        for (id, mark) in use_marks(document, alternative) {
            // Both come in the order of their ids.
            while at_start.next_if(|(held, _)| **held < id).is_some() {}
            if at_start
                .next_if(|(held, _)| **held == id)
                .is_some_and(|(_, held)| held == mark)
            {
                is_untouched += 1;
            } else {
                laid.push(mark.anchor);
            }
        }
        // Mostly a gesture that moves streets lays no uses of its own.
        let (mut marks, mut face_of) = (Cow::Borrowed(&self.marks), Cow::Borrowed(&self.face_of));
        if is_untouched < self.marks.len() {
            let held = document.alternatives.get(&alternative);
            let now = |id: &MarkId| held?.marks.get(id)?.as_use();
            marks.to_mut().retain(|id, mark| now(id) == Some(mark));
            face_of.to_mut().retain(|id, _| marks.contains_key(id));
        }
        let mut next = 0;
        let faces: Vec<Face> = fabric.faces.iter().map(|face| self.face_now(face, &mut next)).collect();
        let start = Start {
            faces: &self.faces,
            marks: &marks,
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

    /// A face as it is now, with its rings from the start where it is the same outline. That is looked for at `next`
    /// first, which comes to be the one after it.
    fn face_now(&self, face: &FaceOfLand, next: &mut usize) -> Face {
        let is_same = |before: &usize| {
            let held = self.outlines.get(*before);
            held.is_some_and(|held| Arc::ptr_eq(held, &face.outline))
        };
        let looked_up = || self.face_at_place.get(&place_of(&face.outline)).copied();
        let same = Some(*next).filter(is_same).or_else(|| looked_up().filter(is_same));
        match same.and_then(|before| Some((before, self.faces.get(before)?))) {
            Some((before, held)) => {
                *next = before + 1;
                Face {
                    rings: Arc::clone(&held.rings),
                    inside: face.anchor,
                    land_m2: face.land_m2().round() as u32,
                }
            }
            None => face_of_land(face),
        }
    }
}

/// Where an outline is held in memory: only ever compared with others that are held at the same time.
fn place_of(outline: &Arc<FaceRings>) -> usize {
    Arc::as_ptr(outline).addr()
}

fn face_of_land(face: &FaceOfLand) -> Face {
    Face {
        rings: Arc::new(Rings::canonical(face.outline.to_vec())),
        inside: face.anchor,
        land_m2: face.land_m2().round() as u32,
    }
}

fn use_marks(document: &Document, alternative: AlternativeId) -> impl Iterator<Item = (MarkId, &UseMark)> {
    let held = document.alternatives.get(&alternative).into_iter();
    held.flat_map(|alternative| &alternative.marks)
        .filter_map(|(id, mark)| Some((*id, mark.as_use()?)))
}
