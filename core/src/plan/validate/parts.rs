//! Everything of a document but its marks: heading, site, program, palettes, settings, topography, base image.

use crate::order::OrderedSet;

use super::outline::{are_legal, check_outline};
use super::{FaultKind, FaultPlace, Findings, Measure, Palettes};
use crate::plan::building::{BuildingType, FloorUse, Story};
use crate::plan::document::{BaseImage, Document, FactorOverride, Settings, TargetKind, Topography};
use crate::plan::street::{StreetSection, StripKind};

/// Thousandths in a whole.
const WHOLE_THOUSANDTHS: u32 = 1000;

/// Walking paces people keep, in millimeters per second.
const LIKELY_PACES_MM_PER_S: std::ops::RangeInclusive<u32> = 300..=3000;

pub(super) fn check(document: &Document, findings: &mut Findings) {
    let whole = FaultPlace::Document;
    findings.expect(
        document.heading.projection().is_ok(),
        &whole,
        FaultKind::OriginOutOfRange,
    );
    findings.expect(!document.alternatives.is_empty(), &whole, FaultKind::NoAlternative);
    if !document.site.boundary.is_empty() {
        check_outline(&document.site.boundary, FaultPlace::Site, findings);
    }
    check_program(document, findings);
    for (&id, section) in &document.street_sections {
        check_section(section, &FaultPlace::StreetSection(id), findings);
    }
    for (&id, building_type) in &document.building_types {
        check_building_type(building_type, &FaultPlace::BuildingType(id), findings);
    }
    check_settings(&document.settings, findings);
    if let Some(topography) = &document.topography {
        check_topography(topography, findings);
    }
    if let Some(image) = &document.base_image {
        check_image(image, findings);
    }
}

fn check_program(document: &Document, findings: &mut Findings) {
    let palettes = Palettes::of(document);
    let mut asked = OrderedSet::new();
    for (line, target) in document.program.iter().enumerate() {
        let place = FaultPlace::ProgramLine(line);
        findings.expect(asked.insert(target.what), &place, FaultKind::AskedTwice);
        if let TargetKind::HomesOf(building_type) = target.what {
            palettes.check_building_type(building_type, &place, findings);
        }
    }
}

pub(super) fn check_section(section: &StreetSection, place: &FaultPlace, findings: &mut Findings) {
    findings.expect(!section.strips.is_empty(), place, FaultKind::NoStrips);
    let all_wide = section.strips.iter().all(|strip| strip.width_mm > 0);
    findings.expect(all_wide, place, FaultKind::Zero(Measure::StripWidth));
    let has_lane = section.strips.iter().any(|strip| strip.kind == StripKind::Travel);
    let needs_lane = section.drivable && !section.strips.is_empty();
    findings.expect(has_lane || !needs_lane, place, FaultKind::NoTravelLane);
}

pub(super) fn check_building_type(held: &BuildingType, place: &FaultPlace, findings: &mut Findings) {
    findings.expect(held.lot_width_mm > 0, place, FaultKind::Zero(Measure::LotWidth));
    findings.expect(held.lot_depth_mm > 0, place, FaultKind::Zero(Measure::LotDepth));
    let shares = [
        held.coverage_thousandths,
        held.paved_thousandths,
        held.planted_thousandths,
    ];
    let total: u32 = shares.into_iter().map(u32::from).sum();
    findings.expect(
        total <= WHOLE_THOUSANDTHS,
        place,
        FaultKind::OverWhole(Measure::LotShares),
    );
    let (has_homes, has_floor) = (held.homes_per_lot > 0, held.floor_area_m2(FloorUse::Home) > 0);
    findings.expect(has_floor || !has_homes, place, FaultKind::HomesWithoutFloor);
    findings.expect(has_homes || !has_floor, place, FaultKind::FloorWithoutHomes);
    let is_empty = |story: &Story| story.floor_use.holds_jobs() && story.jobs_per_floor_hectare == 0;
    let has_jobs = !held.stories.iter().any(is_empty);
    findings.expect(has_jobs, place, FaultKind::FloorWithoutJobs);
    let has_people = held.persons_per_home_thousandths > 0;
    findings.expect(
        has_people || !has_homes,
        place,
        FaultKind::Zero(Measure::PersonsPerHome),
    );
}

fn check_settings(settings: &Settings, findings: &mut Findings) {
    let pace = FaultPlace::Setting("walking_pace".to_owned());
    if settings.walking_pace_mm_per_s == 0 {
        findings.add(pace, FaultKind::Zero(Measure::WalkingPace));
    } else {
        let is_likely = LIKELY_PACES_MM_PER_S.contains(&settings.walking_pace_mm_per_s);
        findings.expect(is_likely, &pace, FaultKind::UnlikelyPace);
    }
    for (id, value) in &settings.chosen {
        findings.expect(
            value.is_finite(),
            &FaultPlace::Setting(id.clone()),
            FaultKind::NotFinite,
        );
    }
    for (id, FactorOverride { low, typical, high, .. }) in &settings.overridden_factors {
        let place = FaultPlace::Setting(id.clone());
        if [low, typical, high].into_iter().all(|value| value.is_finite()) {
            findings.expect(low <= typical && typical <= high, &place, FaultKind::OutOfOrder);
        } else {
            findings.add(place, FaultKind::NotFinite);
        }
    }
    let mut named = OrderedSet::new();
    for id in &settings.rule_lists {
        findings.expect(
            named.insert(id),
            &FaultPlace::Setting(id.clone()),
            FaultKind::NamedTwice,
        );
    }
}

fn check_topography(topography: &Topography, findings: &mut Findings) {
    let place = FaultPlace::Topography;
    are_legal(&[topography.south_west], |_| FaultPlace::Topography, findings);
    findings.expect(topography.spacing_mm > 0, &place, FaultKind::Zero(Measure::Spacing));
    let (heights, columns) = (topography.heights_mm.len(), topography.columns);
    if columns == 0 {
        findings.add(place, FaultKind::Zero(Measure::Columns));
    } else {
        let fills_rows = heights > 0 && heights.is_multiple_of(columns as usize);
        findings.expect(fills_rows, &place, FaultKind::RaggedRows { heights, columns });
    }
}

fn check_image(image: &BaseImage, findings: &mut Findings) {
    let place = FaultPlace::BaseImage;
    are_legal(&image.corners, |_| FaultPlace::BaseImage, findings);
    let is_share = u32::from(image.opacity_thousandths) <= WHOLE_THOUSANDTHS;
    findings.expect(is_share, &place, FaultKind::OverWhole(Measure::Opacity));
    let is_image = image.media_type.starts_with("image/") && !image.bytes.is_empty();
    findings.expect(is_image, &place, FaultKind::NotAnImage);
}
