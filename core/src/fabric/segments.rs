//! What the arrangement is made of: straight pieces of drawn lines, each naming where it came from.

use crate::plan::PlanPoint;

/// Whoever draws on an arrangement numbers its lines; an edge lists the numbers of all lines that cover it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SourceId(pub u32);

/// A straight piece of a drawn line. A piece of no length contributes nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SourceSegment {
    /// One end.
    pub a: PlanPoint,
    /// The other end.
    pub b: PlanPoint,
    /// The line this piece belongs to.
    pub source: SourceId,
}

impl SourceSegment {
    /// The piece from `a` to `b` of line `source`.
    #[must_use]
    pub const fn new(a: PlanPoint, b: PlanPoint, source: SourceId) -> Self {
        Self { a, b, source }
    }
}

/// The pieces of a line through `points`, in order. Repeated points give no piece.
///
/// ```
/// use hobnail_core::fabric::{SourceId, segments_of_line};
/// use hobnail_core::plan::PlanPoint;
/// let line = [PlanPoint::new(0, 0), PlanPoint::new(0, 0), PlanPoint::new(5, 0), PlanPoint::new(5, 9)];
/// assert_eq!(segments_of_line(&line, SourceId(3)).count(), 2);
/// ```
pub fn segments_of_line(points: &[PlanPoint], source: SourceId) -> impl Iterator<Item = SourceSegment> + '_ {
    points
        .windows(2)
        .filter(|pair| pair[0] != pair[1])
        .map(move |pair| SourceSegment::new(pair[0], pair[1], source))
}
