//! Shapes of marks: a point, a line or an area, apart from what the mark says about itself.

use crate::exchange::fault::FileFaultKind;
use crate::exchange::stored::Reader;
use crate::plan::coordinates::PlanPoint;
use crate::say;

/// What a mark looks like on the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Shape {
    /// How its points belong together.
    pub kind: ShapeKind,
    /// Its points; an area is closed by itself.
    pub points: Vec<PlanPoint>,
}

/// How points belong together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ShapeKind {
    Point,
    Line,
    Area,
}

impl ShapeKind {
    /// The member a shape of this kind is stored in.
    pub(crate) const fn member(self) -> &'static str {
        match self {
            Self::Point => "point",
            Self::Line => "line",
            Self::Area => "area",
        }
    }
}

impl Shape {
    pub(crate) fn point(point: PlanPoint) -> Self {
        Self {
            kind: ShapeKind::Point,
            points: vec![point],
        }
    }

    pub(crate) fn line(points: &[PlanPoint]) -> Self {
        Self {
            kind: ShapeKind::Line,
            points: points.to_vec(),
        }
    }

    pub(crate) fn area(points: &[PlanPoint]) -> Self {
        Self {
            kind: ShapeKind::Area,
            points: points.to_vec(),
        }
    }

    /// The point, where this is one; a fault otherwise.
    pub(crate) fn into_point(self, reader: &mut Reader) -> Option<PlanPoint> {
        let point = match (self.kind, self.points.as_slice()) {
            (ShapeKind::Point, [point]) => Some(*point),
            _ => None,
        };
        if point.is_none() {
            let found = self.words();
            reader.fault(FileFaultKind::UnsuitableGeometry {
                expected: say!("exchange-geometry-point"),
                found,
            });
        }
        point
    }

    fn words(&self) -> &'static str {
        match (self.kind, self.points.len()) {
            (_, 0) => say!("exchange-geometry-nothing"),
            (ShapeKind::Point, _) => say!("exchange-geometry-point"),
            (ShapeKind::Line, _) => say!("exchange-geometry-line"),
            (ShapeKind::Area, _) => say!("exchange-geometry-polygon"),
        }
    }
}
