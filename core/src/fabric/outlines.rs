//! The outline of a face as simple rings: one shell and its holes, without dead ends and bridges.

use super::arrangement::Arrangement;
use super::ids::{FaceId, HalfEdgeId};

/// A face as rings in which no vertex repeats.
///
/// Edges with the same face on both sides (dead ends, and bridges to a ring inside) are no part of it. A ring inside that
/// touches the shell, or hangs on it by a bridge, is a hole like one that stands free.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outline {
    /// The outer ring, counterclockwise.
    pub shell: Vec<HalfEdgeId>,
    /// Rings inside it, clockwise.
    pub holes: Vec<Vec<HalfEdgeId>>,
}

/// Makes outlines; keeps scratch memory between faces.
#[derive(Debug)]
pub struct Outliner<'a> {
    arrangement: &'a Arrangement,
    /// Where a vertex stands in `walked`, plus one; 0 when it does not.
    places: Vec<u32>,
    walked: Vec<HalfEdgeId>,
}

impl<'a> Outliner<'a> {
    /// For the faces of one arrangement.
    #[must_use]
    pub fn new(arrangement: &'a Arrangement) -> Self {
        Self {
            arrangement,
            places: vec![0; arrangement.vertices().len()],
            walked: Vec::new(),
        }
    }

    /// The outline of a bounded face; for the unbounded face the shell is empty.
    ///
    /// Cost: linear in the half-edges of the face.
    pub fn outline(&mut self, face: FaceId) -> Outline {
        let arrangement = self.arrangement;
        let mut outline = Outline {
            shell: Vec::new(),
            holes: Vec::new(),
        };
        for start in arrangement.loops(face) {
            for half_edge in arrangement.around(start) {
                if arrangement.face(half_edge.twin()) != face {
                    self.step(half_edge, &mut outline);
                }
            }
        }
        outline
    }

    /// Walks on; when that returns to a vertex of the walk, the ring it closes is cut off.
    fn step(&mut self, half_edge: HalfEdgeId, outline: &mut Outline) {
        self.walked.push(half_edge);
        self.places[self.arrangement.origin(half_edge).0 as usize] = self.walked.len() as u32;
        let target = self.arrangement.target(half_edge).0 as usize;
        let Some(from) = self.places[target].checked_sub(1) else {
            return;
        };
        let ring = self.walked.split_off(from as usize);
        for &part in &ring {
            self.places[self.arrangement.origin(part).0 as usize] = 0;
        }
        if self.twice_area_mm2(&ring) > 0 {
            outline.shell = ring;
        } else {
            outline.holes.push(ring);
        }
    }

    fn twice_area_mm2(&self, ring: &[HalfEdgeId]) -> i128 {
        let doubled = |&half_edge: &HalfEdgeId| {
            let p = self.arrangement.point(self.arrangement.origin(half_edge));
            let q = self.arrangement.point(self.arrangement.target(half_edge));
            i128::from((i64::from(p.x_mm) - i64::from(q.x_mm)) * (i64::from(p.y_mm) + i64::from(q.y_mm)))
        };
        ring.iter().map(doubled).sum()
    }

    /// The perimeter of a face in micrometers: its shell, so without dead ends and without holes.
    pub fn perimeter_um(&mut self, face: FaceId) -> u64 {
        let shell = self.outline(face).shell;
        shell
            .iter()
            .map(|half_edge| self.arrangement.length_um(half_edge.edge()))
            .sum()
    }
}
