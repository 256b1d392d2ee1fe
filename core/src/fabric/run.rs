//! Half-edges one after another.

use super::ids::HalfEdgeId;

/// A run of half-edges along one line, at least one. Most are of one edge, which is held without memory of its own: a
/// fabric has tens of thousands of runs, made anew for every move of a pointer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Run {
    /// One half-edge.
    One([HalfEdgeId; 1]),
    /// Several, or room for several.
    Several(Vec<HalfEdgeId>),
}

impl Run {
    /// These half-edges.
    #[must_use]
    pub fn of(half_edges: &[HalfEdgeId]) -> Self {
        match half_edges {
            [one] => Self::One([*one]),
            several => Self::Several(several.to_vec()),
        }
    }

    /// Adds one at the end.
    pub fn push(&mut self, half_edge: HalfEdgeId) {
        match self {
            Self::One([one]) => *self = Self::Several(vec![*one, half_edge]),
            Self::Several(several) => several.push(half_edge),
        }
    }
}

impl std::ops::Deref for Run {
    type Target = [HalfEdgeId];

    #[inline(always)]
    fn deref(&self) -> &[HalfEdgeId] {
        match self {
            Self::One(one) => one,
            Self::Several(several) => several,
        }
    }
}
