//! What a document may hold: points within the legal range, finite numbers, an origin on Earth.
//!
//! This is the one check on entry: history lets no edit in that fails it, so everything downstream may rely on legal
//! coordinates, and everything let in comes back from files and journals as it was. Whatever else is wrong with a plan
//! is a matter for [`validate`](super::validate).

use super::coordinates::PlanPoint;
use super::document::{BaseImage, Heading, Settings, Topography};
use super::edit::Edit;
use super::land::Footprint;
use super::mark::Mark;

/// Whether what an edit puts in place may be held by a document. Cost: linear in its points.
#[must_use]
pub fn is_storable(edit: &Edit) -> bool {
    match edit {
        Edit::Heading { after, .. } => heading(after),
        Edit::Site { after, .. } => points(&after.boundary),
        Edit::Settings { after, .. } => settings(after),
        Edit::Topography { after, .. } => after.as_ref().is_none_or(topography),
        Edit::BaseImage { after, .. } => after.as_ref().is_none_or(image),
        Edit::Alternative { after, .. } => after
            .as_ref()
            .is_none_or(|alternative| alternative.marks.values().all(mark)),
        Edit::Mark { after, .. } => after.as_deref().is_none_or(mark),
        Edit::Program { .. } | Edit::StreetSection { .. } | Edit::BuildingType { .. } | Edit::Phase { .. } => true,
    }
}

fn points(points: &[PlanPoint]) -> bool {
    points.iter().all(|point| point.is_legal())
}

fn heading(heading: &Heading) -> bool {
    heading.projection().is_ok()
}

fn settings(settings: &Settings) -> bool {
    let factors = settings.overridden_factors.values();
    settings.chosen.values().all(|value| value.is_finite())
        && factors
            .flat_map(|factor| [factor.low, factor.typical, factor.high])
            .all(f64::is_finite)
}

fn topography(topography: &Topography) -> bool {
    topography.south_west.is_legal()
}

fn image(image: &BaseImage) -> bool {
    points(&image.corners)
}

fn footprint(footprint: &Footprint) -> bool {
    match footprint {
        Footprint::Point(point) => point.is_legal(),
        Footprint::Line(line) | Footprint::Area(line) => points(line),
    }
}

fn mark(mark: &Mark) -> bool {
    match mark {
        Mark::Street(street) => street.line.iter().all(|vertex| vertex.point.is_legal()),
        Mark::Use(held) => held.anchor.is_legal() && held.sides.iter().all(|side| side.at.is_legal()),
        Mark::SoftArea(area) => points(&area.outline),
        Mark::Constraint(area) => points(&area.outline),
        Mark::Place(place) => footprint(&place.footprint),
        Mark::SiteAccess(access) => access.at.is_legal(),
        Mark::Parcel(parcel) => points(&parcel.outline),
        Mark::Barrier(barrier) => points(&barrier.line),
        Mark::Crossing(crossing) => crossing.at.is_legal(),
        Mark::Outside(outside) => footprint(&outside.footprint),
        Mark::Note(note) => note.at.is_legal(),
    }
}
