//! About how much memory parts of a document take, for keeping history within its limit. Counts what grows (points,
//! texts, bytes) and the fixed size of what holds it; allocator overhead is not counted.

use std::mem::size_of;

use super::building::BuildingType;
use super::document::{Alternative, BaseImage, Document, Heading, Phase, Settings, Site, Topography};
use super::edit::Edit;
use super::land::{Footprint, Portion, SideUse};
use super::mark::Mark;
use super::street::{StreetSection, Strip, Vertex};

/// Bytes of a document, about.
#[must_use]
pub fn document_bytes(document: &Document) -> u64 {
    let Document {
        heading,
        site,
        program,
        street_sections,
        building_types,
        phases,
        settings,
        topography,
        base_image,
        alternatives,
    } = document;
    heading_bytes(heading)
        + site_bytes(site)
        + list_bytes(program)
        + street_sections.values().map(section_bytes).sum::<u64>()
        + building_types.values().map(building_bytes).sum::<u64>()
        + phases.values().map(phase_bytes).sum::<u64>()
        + settings_bytes(settings)
        + topography.as_ref().map_or(0, topography_bytes)
        + base_image.as_ref().map_or(0, image_bytes)
        + alternatives.values().map(alternative_bytes).sum::<u64>()
}

/// Bytes of an edit, about: both what it replaces and what it puts there.
#[must_use]
pub fn edit_bytes(edit: &Edit) -> u64 {
    fn both<T>(before: &T, after: &T, bytes: impl Fn(&T) -> u64) -> u64 {
        bytes(before) + bytes(after)
    }
    fn either<T>(before: Option<&T>, after: Option<&T>, bytes: impl Fn(&T) -> u64) -> u64 {
        before.map_or(0, &bytes) + after.map_or(0, &bytes)
    }
    let held = match edit {
        Edit::Heading { before, after } => both(before, after, heading_bytes),
        Edit::Site { before, after } => both(before, after, site_bytes),
        Edit::Program { before, after } => both(before, after, |program| list_bytes(program)),
        Edit::Settings { before, after } => both(before.as_ref(), after.as_ref(), settings_bytes),
        Edit::Topography { before, after } => either(before.as_ref(), after.as_ref(), topography_bytes),
        Edit::BaseImage { before, after } => either(before.as_ref(), after.as_ref(), image_bytes),
        Edit::StreetSection { before, after, .. } => either(before.as_ref(), after.as_ref(), section_bytes),
        Edit::BuildingType { before, after, .. } => either(before.as_deref(), after.as_deref(), building_bytes),
        Edit::Phase { before, after, .. } => either(before.as_ref(), after.as_ref(), phase_bytes),
        Edit::Alternative { before, after, .. } => either(before.as_ref(), after.as_ref(), alternative_bytes),
        Edit::Mark { before, after, .. } => either(before.as_deref(), after.as_deref(), mark_bytes),
    };
    size_of::<Edit>() as u64 + held
}

fn list_bytes<T>(list: &[T]) -> u64 {
    size_of_val(list) as u64
}

fn heading_bytes(heading: &Heading) -> u64 {
    size_of::<Heading>() as u64 + (heading.name.len() + heading.about.len()) as u64
}

fn site_bytes(site: &Site) -> u64 {
    list_bytes(&site.boundary)
}

fn section_bytes(section: &StreetSection) -> u64 {
    size_of::<StreetSection>() as u64 + section.name.len() as u64 + list_bytes::<Strip>(&section.strips)
}

fn building_bytes(building: &BuildingType) -> u64 {
    size_of::<BuildingType>() as u64 + building.name.len() as u64 + list_bytes(&building.stories)
}

fn phase_bytes(phase: &Phase) -> u64 {
    size_of::<Phase>() as u64 + phase.name.len() as u64
}

fn settings_bytes(settings: &Settings) -> u64 {
    let texts = settings.chosen.keys().map(String::len).sum::<usize>()
        + settings
            .overridden_factors
            .iter()
            .map(|(id, factor)| id.len() + factor.source.len() + 64)
            .sum::<usize>()
        + settings.rule_lists.iter().map(String::len).sum::<usize>();
    (size_of::<Settings>() + texts) as u64
}

fn topography_bytes(topography: &Topography) -> u64 {
    size_of::<Topography>() as u64 + topography.source.len() as u64 + list_bytes(&topography.heights_mm)
}

fn image_bytes(image: &BaseImage) -> u64 {
    size_of::<BaseImage>() as u64 + (image.name.len() + image.media_type.len() + image.bytes.len()) as u64
}

fn alternative_bytes(alternative: &Alternative) -> u64 {
    let texts = alternative.name.len() + alternative.table.len();
    size_of::<Alternative>() as u64 + texts as u64 + alternative.marks.values().map(mark_bytes).sum::<u64>()
}

fn footprint_bytes(footprint: &Footprint) -> u64 {
    match footprint {
        Footprint::Point(_) => 0,
        Footprint::Line(points) | Footprint::Area(points) => list_bytes(points),
    }
}

fn mark_bytes(mark: &Mark) -> u64 {
    let held = match mark {
        Mark::Street(street) => list_bytes::<Vertex>(&street.line) + street.name.len() as u64,
        Mark::Use(held) => list_bytes::<Portion>(&held.program) + list_bytes::<SideUse>(&held.sides),
        Mark::SoftArea(area) => list_bytes(&area.outline) + list_bytes(&area.program),
        Mark::Constraint(area) => list_bytes(&area.outline) + area.name.len() as u64,
        Mark::Place(place) => footprint_bytes(&place.footprint) + place.name.len() as u64,
        Mark::SiteAccess(access) => access.name.len() as u64,
        Mark::Parcel(parcel) => list_bytes(&parcel.outline) + parcel.label.len() as u64,
        Mark::Barrier(barrier) => list_bytes(&barrier.line) + barrier.name.len() as u64,
        Mark::Crossing(_) => 0,
        Mark::Outside(outside) => footprint_bytes(&outside.footprint) + outside.name.len() as u64,
        Mark::Note(note) => {
            let answers = note.answers.iter();
            let said = answers.map(|held| held.step.len() as u64 + list_bytes(&held.marks));
            (note.text.len() + note.author.len()) as u64
                + list_bytes(&note.answers)
                + said.sum::<u64>()
                + note.figures.iter().map(|words| words.len() as u64).sum::<u64>()
        }
    };
    size_of::<Mark>() as u64 + held
}
