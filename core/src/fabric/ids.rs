//! Names of the parts of one arrangement. They number its parts in order of place and never outlive it.

/// A vertex, numbered in the order of points (by x, then y).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct VertexId(pub u32);

/// An edge, numbered in the order of its ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EdgeId(pub u32);

/// An edge in one direction, with the face to its left.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HalfEdgeId(pub u32);

/// A face. The unbounded one is [`FaceId::OUTSIDE`]; bounded faces follow in the order of their first half-edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FaceId(pub u32);

impl EdgeId {
    /// The edge from its lower to its higher vertex.
    #[must_use]
    #[inline(always)]
    pub const fn forward(self) -> HalfEdgeId {
        HalfEdgeId(self.0 * 2)
    }

    /// The edge from its higher to its lower vertex.
    #[must_use]
    #[inline(always)]
    pub const fn backward(self) -> HalfEdgeId {
        HalfEdgeId(self.0 * 2 + 1)
    }
}

impl HalfEdgeId {
    /// The edge that this is one direction of.
    #[must_use]
    #[inline(always)]
    pub const fn edge(self) -> EdgeId {
        EdgeId(self.0 / 2)
    }

    /// The same edge in the other direction.
    #[must_use]
    #[inline(always)]
    pub const fn twin(self) -> Self {
        Self(self.0 ^ 1)
    }

    /// Whether it runs from the lower to the higher vertex.
    #[must_use]
    #[inline(always)]
    pub const fn is_forward(self) -> bool {
        self.0.is_multiple_of(2)
    }
}

impl FaceId {
    /// The unbounded face.
    pub const OUTSIDE: Self = Self(0);
}
