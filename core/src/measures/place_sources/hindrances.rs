//! What a straight walk between a place and its street may not cross: barriers, and constraint areas that are not to be
//! walked across.
//!
//! Streets and paths that are drawn over such land are ways over it, bridges where it is water, and stay what their
//! street section says; barriers cut them where no crossing is drawn
//! ([`crate::measures::walk_network::barriers`]).

use crate::measures::walk_network::barriers::cuts;
use crate::plan::inside::{goes_around, segments_meet};
use crate::plan::{AlternativeId, Document, Mark, PlanPoint};

/// One line that may not be crossed.
#[derive(Clone, Debug)]
pub(super) struct Hindrance {
    /// Closed where it is the outline of an area.
    line: Vec<PlanPoint>,
    is_area: bool,
}

impl Hindrance {
    /// All that an alternative holds, in the order of their marks.
    pub fn all(document: &Document, alternative: AlternativeId) -> Vec<Self> {
        let marks = document.alternatives.get(&alternative).map(|held| &held.marks);
        let of_mark = |mark: &Mark| match mark {
            Mark::Barrier(barrier) => Some(Self {
                line: barrier.line.clone(),
                is_area: false,
            }),
            Mark::Constraint(area) if !area.is_walkable => Some(Self {
                line: super::closed(&area.outline),
                is_area: true,
            }),
            _ => None,
        };
        marks
            .into_iter()
            .flat_map(|marks| marks.values())
            .filter_map(of_mark)
            .collect()
    }

    /// Its points in order, the first again at the end where it is an outline.
    pub fn line(&self) -> &[PlanPoint] {
        &self.line
    }

    /// Whether a walk from `point` may be hindered by it: land that the point stands in is walked there all the same.
    /// Exact; on its edge a point is not in it. Cost: linear in its corners.
    pub fn may_hinder(&self, point: PlanPoint) -> bool {
        let is_on_edge = || {
            let mut sides = self.line.windows(2);
            sides.any(|side| segments_meet([point, point], [side[0], side[1]]))
        };
        !self.is_area || !goes_around(&self.line, point) || is_on_edge()
    }

    /// Whether a straight walk crosses it, beginning and ending on it aside. Exact; a line that is only touched with a
    /// bend is not crossed. Cost: linear in its corners.
    pub fn is_crossed(&self, from: PlanPoint, to: PlanPoint) -> bool {
        let length_um = from.distance_um(to);
        let cuts = cuts(&self.line, &[(from, 0), (to, length_um)]);
        cuts.iter().any(|cut| 0 < cut.along_um && cut.along_um < length_um)
    }
}
