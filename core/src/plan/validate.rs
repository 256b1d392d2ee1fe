//! Every fault of a document, with its place.
//!
//! Validation never blocks: an unfinished sketch is a normal state, and what is built on the document leaves out what
//! can not be used and says so. It is for documents from files, from the journal and from edits alike. An alternative on
//! which nothing is drawn is no fault; a document without any alternative is one.
//!
//! Outlines may cross or touch themselves: they are kept as drawn and listed, since their area may not be the one meant.
//!
//! Cost: linear in the document; for each outline, its edges times those that overlap them from west to east.

use crate::order;
use crate::order::OrderedMap;

use super::building::BuildingType;
use super::coordinates::PlanPoint;
use super::document::Document;
use super::ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
use super::street::StreetSection;

mod fault;
mod marks;
mod outline;
mod parts;
mod ties;

pub use fault::{FaultKind, Measure};
pub use outline::{is_clockwise, self_crossing};

/// Something wrong with a document.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fault {
    /// Where it is.
    pub place: FaultPlace,
    /// What it is.
    pub kind: FaultKind,
}

/// What a fault means for what is built on the document.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The part is used as it is; it should be mended.
    ShouldBeMended,
    /// The part can not be used and is left out.
    CannotBeUsed,
}

/// Where a fault is.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FaultPlace {
    /// In the document as a whole or its heading.
    Document,
    /// In the site's boundary, at this point of it where one is meant.
    Site(Option<PlanPoint>),
    /// In the program's line of this number, from 0.
    ProgramLine(usize),
    /// In this street section.
    StreetSection(StreetSectionId),
    /// In this building type.
    BuildingType(BuildingTypeId),
    /// In the setting, factor or rule list of this id.
    Setting(String),
    /// In the topography.
    Topography,
    /// In the base image.
    BaseImage,
    /// In this alternative.
    Alternative(AlternativeId),
    /// In this mark, at this point of it where one is meant.
    Mark(AlternativeId, MarkId, Option<PlanPoint>),
}

/// Every fault of `document`, in order of place.
///
/// ```
/// use hobnail_core::plan::{Document, projection::GeographicPoint, validate::validate};
/// let origin = GeographicPoint { longitude_ndeg: 0, latitude_ndeg: 0 };
/// let mut document = Document::new("Example", origin);
/// assert!(validate(&document).is_empty());
/// document.settings.walking_pace_mm_per_s = 0;
/// assert_eq!(validate(&document)[0].to_string(), "setting walking_pace: must be more than 0");
/// ```
#[must_use]
pub fn validate(document: &Document) -> Vec<Fault> {
    let mut findings = Findings::default();
    parts::check(document, &mut findings);
    let palettes = Palettes::of(document);
    let mut seen: OrderedMap<MarkId, AlternativeId> = OrderedMap::new();
    for (&alternative, held) in &document.alternatives {
        marks::check(alternative, &held.marks, &palettes, &mut findings);
        ties::check(alternative, &held.marks, &mut findings);
        for &id in held.marks.keys() {
            if let Some(&first) = seen.get(&id) {
                findings.add(FaultPlace::Mark(alternative, id, None), FaultKind::MarkIdTaken(first));
            } else {
                seen.insert(id, alternative);
            }
        }
    }
    order::sort(&mut findings.faults);
    findings.faults
}

/// What is wrong with a street section by itself, before it is in any document.
#[must_use]
pub fn section_faults(section: &StreetSection) -> Vec<Fault> {
    let mut findings = Findings::default();
    parts::check_section(section, &FaultPlace::Document, &mut findings);
    findings.faults
}

/// What is wrong with a building type by itself, before it is in any document.
#[must_use]
pub fn building_type_faults(building_type: &BuildingType) -> Vec<Fault> {
    let mut findings = Findings::default();
    parts::check_building_type(building_type, &FaultPlace::Document, &mut findings);
    findings.faults
}

/// Faults as they are found.
#[derive(Default)]
struct Findings {
    faults: Vec<Fault>,
}

impl Findings {
    fn add(&mut self, place: FaultPlace, kind: FaultKind) {
        self.faults.push(Fault { place, kind });
    }

    /// Adds a fault unless `is_fine`.
    fn expect(&mut self, is_fine: bool, place: &FaultPlace, kind: FaultKind) {
        if !is_fine {
            self.add(place.clone(), kind);
        }
    }
}

/// Which ids marks may refer to.
struct Palettes<'a> {
    document: &'a Document,
}

impl<'a> Palettes<'a> {
    fn of(document: &'a Document) -> Self {
        Self { document }
    }

    fn check_section(&self, id: StreetSectionId, place: &FaultPlace, findings: &mut Findings) {
        let is_known = self.document.street_sections.contains_key(&id);
        findings.expect(is_known, place, FaultKind::NoStreetSection(id));
    }

    fn check_building_type(&self, id: BuildingTypeId, place: &FaultPlace, findings: &mut Findings) {
        let is_known = self.document.building_types.contains_key(&id);
        findings.expect(is_known, place, FaultKind::NoBuildingType(id));
    }

    fn check_phase(&self, id: Option<PhaseId>, place: &FaultPlace, findings: &mut Findings) {
        if let Some(id) = id {
            findings.expect(self.document.phases.contains_key(&id), place, FaultKind::NoPhase(id));
        }
    }
}

#[cfg(test)]
mod tests;
