//! What would be taken of a base, as a small plan: with the site, and nothing of what is left out.

use hobnail_core::plan::document::Topography;
use hobnail_core::plan::land::{Barrier, ConstraintArea, Footprint, OutsideContext, Parcel, Place, SoftArea};
use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Document, Edit, Mark, PlanPoint};
use hobnail_core::report::drawing::contours::{Field, levels};
use hobnail_core::say;

use super::heights::corners;
use crate::app::alternatives::{course, square};
use crate::app::editor::drawn::{Drawing, Ink, Paper};

/// Most points that are drawn: more than can be told apart in so small a plan.
const MOST_POINTS: usize = 20_000;

/// So many steps of height are shown of the ground.
const LEVELS: f64 = 12.0;

/// The small plan. Cost: linear in the points of the marks, of which every so many are drawn where there are many.
#[must_use]
pub fn sketch(document: &Document, edits: &[Edit]) -> Drawing {
    let marks = || marks_of(edits);
    let points: usize = marks().map(|mark| shape_of(mark).1.len()).sum();
    let every = points.div_ceil(MOST_POINTS).max(1);
    let mut paper = Paper::default();
    let mut view = View::default();
    let site = edits.iter().find_map(|edit| match edit {
        Edit::Site { after, .. } => Some(after),
        _ => None,
    });
    let boundary = &site.unwrap_or(&document.site).boundary;
    course(&mut paper, Ink::Walk, &closed(boundary));
    view.hold(boundary);
    // A point is as large as it must be to be seen, which is known once all is.
    let mut dots: Vec<PlanPoint> = Vec::new();
    if let Some(held) = heights_of(edits) {
        view.hold(&corners(held));
        let field = Field::of(held);
        let (least, most) = field.range().unwrap_or_default();
        let (_, levels) = levels((least, most), f64::from(most.saturating_sub(least)) / LEVELS);
        for (_, (line, _)) in field.lines(&levels) {
            let on_plan = |at: (f64, f64)| PlanPoint::checked_from_m(at.0, at.1);
            let line: Vec<PlanPoint> = line.into_iter().filter_map(on_plan).collect();
            course(&mut paper, Ink::Dimension, &line);
        }
    }
    for (place, mark) in marks().enumerate() {
        let (ink, shape) = shape_of(mark);
        view.hold(&shape);
        if place % every != 0 {
            continue;
        }
        match shape.as_slice() {
            [only] => dots.push(*only),
            _ => course(&mut paper, ink, &shape),
        }
    }
    let sides = view.finished();
    let half_mm = (sides[2].max(sides[3]) / 120).max(1);
    for dot in dots {
        square(&mut paper, Ink::Person, dot, half_mm);
    }
    paper.finished(sides, 0, say!("bases-sketch").to_owned())
}

/// The marks that edits put into the plan.
fn marks_of(edits: &[Edit]) -> impl Iterator<Item = &Mark> {
    edits.iter().filter_map(|edit| match edit {
        Edit::Mark { after, .. } => after.as_deref(),
        _ => None,
    })
}

/// The heights that edits put into the plan.
fn heights_of(edits: &[Edit]) -> Option<&Topography> {
    edits.iter().find_map(|edit| match edit {
        Edit::Topography { after, .. } => after.as_ref(),
        _ => None,
    })
}

/// All points of what edits put into the plan.
pub(super) fn points_of(edits: &[Edit]) -> Vec<PlanPoint> {
    let heights = heights_of(edits).into_iter().flat_map(corners);
    heights
        .chain(marks_of(edits).flat_map(|mark| shape_of(mark).1))
        .collect()
}

/// The ink of a mark and its points: lines, closed outlines, or one point; none of marks that base data can not become.
pub(super) fn shape_of(mark: &Mark) -> (Ink, Vec<PlanPoint>) {
    match mark {
        Mark::Street(Street { line, .. }) => (Ink::Edge, line.iter().map(|vertex| vertex.point).collect()),
        Mark::Barrier(Barrier { line, .. }) => (Ink::Passing, line.clone()),
        Mark::Constraint(ConstraintArea { outline, .. }) | Mark::SoftArea(SoftArea { outline, .. }) => {
            (Ink::Planted, closed(outline))
        }
        Mark::Parcel(Parcel { outline, .. }) => (Ink::Dimension, closed(outline)),
        Mark::Place(Place { footprint, .. }) | Mark::Outside(OutsideContext { footprint, .. }) => match footprint {
            Footprint::Point(point) => (Ink::Person, vec![*point]),
            Footprint::Line(points) => (Ink::Building, points.clone()),
            Footprint::Area(points) => (Ink::Building, closed(points)),
        },
        Mark::Note(note) => (Ink::Person, vec![note.at]),
        _ => (Ink::Edge, Vec::new()),
    }
}

fn closed(outline: &[PlanPoint]) -> Vec<PlanPoint> {
    outline.iter().chain(outline.first()).copied().collect()
}

/// West, north, east and south of what is in view, y downward.
#[derive(Default)]
struct View(Option<[i32; 4]>);

impl View {
    fn hold(&mut self, points: &[PlanPoint]) {
        for point in points {
            let (x, y) = (point.x_mm, point.y_mm.saturating_neg());
            let [left, top, right, bottom] = self.0.unwrap_or([x, y, x, y]);
            self.0 = Some([left.min(x), top.min(y), right.max(x), bottom.max(y)]);
        }
    }

    /// Left, top, width and height with a margin.
    fn finished(&self) -> [i32; 4] {
        let [left, top, right, bottom] = self.0.unwrap_or_default();
        // Legal coordinates are 100 km at most, so that sums of some of them are far from the largest number.
        let margin = (right - left).max(bottom - top) / 30 + 1_000;
        [
            left - margin,
            top - margin,
            right - left + 2 * margin,
            bottom - top + 2 * margin,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::AlternativeId;
    use hobnail_core::plan::MarkId;
    use hobnail_core::plan::land::{Certainty, PlaceKind};
    use hobnail_core::plan::projection::GeographicPoint;

    #[test]
    fn all_that_would_be_taken_is_in_view_and_the_site_with_it() {
        let at = GeographicPoint::checked_from_deg(10.0, 0.0).unwrap();
        let mut document = Document::new("Test", at);
        let point = |x: i32, y: i32| PlanPoint::new(x, y);
        document.site.boundary = vec![point(0, 0), point(60_000, 0), point(60_000, 30_000)];
        let put = |mark| Edit::Mark {
            alternative: AlternativeId(0),
            id: MarkId(7),
            before: None,
            after: Some(Box::new(mark)),
        };
        let edits = [
            put(Mark::Barrier(Barrier {
                name: String::new(),
                line: vec![point(-30_000, 0), point(0, 90_000)],
                beside: None,
            })),
            put(Mark::Place(Place {
                name: String::new(),
                kind: PlaceKind::Shop,
                footprint: Footprint::Point(point(10_000, 10_000)),
                minimum_size_m2: 0,
                certainty: Certainty::Existing,
                phase: None,
            })),
        ];
        let drawing = sketch(&document, &edits);
        assert_eq!(drawing.view_mm, [-34_000, -94_000, 98_000, 98_000]);
        let inks: Vec<&str> = drawing.paths.iter().map(|(ink, _)| *ink).collect();
        assert_eq!(inks, ["walk", "passing", "person"]);
        assert_eq!(drawing.paths[1].1, "M-30000 0L0 -90000");
    }
}
