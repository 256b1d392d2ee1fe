//! Edits: one cell of the document replaced, with what stood there before. A gesture is a list of them.
//!
//! Every edit can be turned around, so undo is the same mechanism as doing, and equality after undo is exact.

use std::fmt;

use super::building::BuildingType;
use super::document::{Alternative, BaseImage, Document, Heading, Phase, Settings, Site, Target, Topography};
use super::ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
use super::mark::Mark;
use super::street::StreetSection;
use super::validate::FaultPlace;
use crate::say;

/// A cell of the document that an edit replaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each cell is documented at the part of `Document` it names")]
pub enum Cell {
    Heading,
    Site,
    Program,
    Settings,
    Topography,
    BaseImage,
    StreetSection(StreetSectionId),
    BuildingType(BuildingTypeId),
    Phase(PhaseId),
    /// An alternative whole: added, removed, or (with its marks untouched) renamed.
    Alternative(AlternativeId),
    Mark(AlternativeId, MarkId),
}

/// Says where it is as what is wrong in a plan does.
impl fmt::Display for Cell {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let place = match *self {
            Self::Heading | Self::Program | Self::Settings | Self::Phase(_) => FaultPlace::Document,
            Self::Site => FaultPlace::Site(None),
            Self::Topography => FaultPlace::Topography,
            Self::BaseImage => FaultPlace::BaseImage,
            Self::StreetSection(id) => FaultPlace::StreetSection(id),
            Self::BuildingType(id) => FaultPlace::BuildingType(id),
            Self::Alternative(id) => FaultPlace::Alternative(id),
            Self::Mark(alternative, id) => FaultPlace::Mark(alternative, id, None),
        };
        place.fmt(formatter)
    }
}

/// One replaced cell: what stood there and what stands there now.
#[derive(Clone, Debug, PartialEq)]
#[expect(missing_docs, reason = "each variant is documented at the cell of the same name")]
pub enum Edit {
    Heading {
        before: Heading,
        after: Heading,
    },
    Site {
        before: Site,
        after: Site,
    },
    Program {
        before: Vec<Target>,
        after: Vec<Target>,
    },
    Settings {
        before: Box<Settings>,
        after: Box<Settings>,
    },
    Topography {
        before: Option<Topography>,
        after: Option<Topography>,
    },
    BaseImage {
        before: Option<BaseImage>,
        after: Option<BaseImage>,
    },
    StreetSection {
        id: StreetSectionId,
        before: Option<StreetSection>,
        after: Option<StreetSection>,
    },
    BuildingType {
        id: BuildingTypeId,
        before: Option<Box<BuildingType>>,
        after: Option<Box<BuildingType>>,
    },
    Phase {
        id: PhaseId,
        before: Option<Phase>,
        after: Option<Phase>,
    },
    Alternative {
        id: AlternativeId,
        before: Option<Alternative>,
        after: Option<Alternative>,
    },
    Mark {
        alternative: AlternativeId,
        id: MarkId,
        before: Option<Box<Mark>>,
        after: Option<Box<Mark>>,
    },
}

/// Why an edit could not be applied: the document is not the one it was made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EditFault {
    /// The cell does not hold what the edit expects to replace.
    Stale(Cell),
    /// The alternative of the mark does not exist.
    NoAlternative(AlternativeId),
}

impl fmt::Display for EditFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&match self {
            Self::Stale(cell) => say!("plan-edit-stale", cell = cell.to_string()),
            Self::NoAlternative(id) => say!("plan-edit-no-alternative", id = id.0),
        })
    }
}

impl std::error::Error for EditFault {}

impl Edit {
    /// The edit that puts `after` (or nothing) where mark `id` of `alternative` is in `document`.
    #[must_use]
    pub fn mark(document: &Document, alternative: AlternativeId, id: MarkId, after: Option<Mark>) -> Self {
        let before = document.mark(alternative, id).cloned().map(Box::new);
        Self::Mark {
            alternative,
            id,
            before,
            after: after.map(Box::new),
        }
    }

    /// The cell this edit replaces.
    #[must_use]
    pub const fn cell(&self) -> Cell {
        match self {
            Self::Heading { .. } => Cell::Heading,
            Self::Site { .. } => Cell::Site,
            Self::Program { .. } => Cell::Program,
            Self::Settings { .. } => Cell::Settings,
            Self::Topography { .. } => Cell::Topography,
            Self::BaseImage { .. } => Cell::BaseImage,
            Self::StreetSection { id, .. } => Cell::StreetSection(*id),
            Self::BuildingType { id, .. } => Cell::BuildingType(*id),
            Self::Phase { id, .. } => Cell::Phase(*id),
            Self::Alternative { id, .. } => Cell::Alternative(*id),
            Self::Mark { alternative, id, .. } => Cell::Mark(*alternative, *id),
        }
    }

    /// Puts `after` in place. Fails, changing nothing, when the cell does not hold `before`.
    ///
    /// # Errors
    /// [`EditFault`] when the edit was made for another state of the document.
    pub fn apply(&self, document: &mut Document) -> Result<(), EditFault> {
        fn replace<T: PartialEq + Clone>(place: &mut T, before: &T, after: &T) -> bool {
            let fits = place == before;
            if fits {
                place.clone_from(after);
            }
            fits
        }
        fn replace_entry<K: Ord, T: PartialEq + Clone>(
            map: &mut crate::order::OrderedMap<K, T>,
            key: K,
            before: Option<&T>,
            after: Option<&T>,
        ) -> bool {
            let fits = map.get(&key) == before;
            if fits {
                match after {
                    Some(value) => drop(map.insert(key, value.clone())),
                    None => drop(map.remove(&key)),
                }
            }
            fits
        }
        let fits = match self {
            Self::Heading { before, after } => replace(&mut document.heading, before, after),
            Self::Site { before, after } => replace(&mut document.site, before, after),
            Self::Program { before, after } => replace(&mut document.program, before, after),
            Self::Settings { before, after } => replace(&mut document.settings, before, after),
            Self::Topography { before, after } => replace(&mut document.topography, before, after),
            Self::BaseImage { before, after } => replace(&mut document.base_image, before, after),
            Self::StreetSection { id, before, after } => {
                replace_entry(&mut document.street_sections, *id, before.as_ref(), after.as_ref())
            }
            Self::BuildingType { id, before, after } => {
                replace_entry(&mut document.building_types, *id, before.as_deref(), after.as_deref())
            }
            Self::Phase { id, before, after } => {
                replace_entry(&mut document.phases, *id, before.as_ref(), after.as_ref())
            }
            Self::Alternative { id, before, after } => {
                replace_entry(&mut document.alternatives, *id, before.as_ref(), after.as_ref())
            }
            Self::Mark {
                alternative,
                id,
                before,
                after,
            } => {
                let Some(held) = document.alternatives.get_mut(alternative) else {
                    return Err(EditFault::NoAlternative(*alternative));
                };
                replace_entry(&mut held.marks, *id, before.as_deref(), after.as_deref())
            }
        };
        if fits {
            Ok(())
        } else {
            Err(EditFault::Stale(self.cell()))
        }
    }

    /// Whether it leaves its cell as it was.
    #[must_use]
    pub fn changes_nothing(&self) -> bool {
        match self {
            Self::Heading { before, after } => before == after,
            Self::Site { before, after } => before == after,
            Self::Program { before, after } => before == after,
            Self::Settings { before, after } => before == after,
            Self::Topography { before, after } => before == after,
            Self::BaseImage { before, after } => before == after,
            Self::StreetSection { before, after, .. } => before == after,
            Self::BuildingType { before, after, .. } => before == after,
            Self::Phase { before, after, .. } => before == after,
            Self::Alternative { before, after, .. } => before == after,
            Self::Mark { before, after, .. } => before == after,
        }
    }

    /// The edit that makes `cell` of `before` what it is in `after`; `None` where they agree.
    #[must_use]
    pub fn between(cell: Cell, before: &Document, after: &Document) -> Option<Self> {
        let edit = match cell {
            Cell::Heading => Self::Heading {
                before: before.heading.clone(),
                after: after.heading.clone(),
            },
            Cell::Site => Self::Site {
                before: before.site.clone(),
                after: after.site.clone(),
            },
            Cell::Program => Self::Program {
                before: before.program.clone(),
                after: after.program.clone(),
            },
            Cell::Settings => Self::Settings {
                before: Box::new(before.settings.clone()),
                after: Box::new(after.settings.clone()),
            },
            Cell::Topography => Self::Topography {
                before: before.topography.clone(),
                after: after.topography.clone(),
            },
            Cell::BaseImage => Self::BaseImage {
                before: before.base_image.clone(),
                after: after.base_image.clone(),
            },
            Cell::StreetSection(id) => {
                let at = |document: &Document| document.street_sections.get(&id).cloned();
                Self::StreetSection {
                    id,
                    before: at(before),
                    after: at(after),
                }
            }
            Cell::BuildingType(id) => {
                let at = |document: &Document| document.building_types.get(&id).cloned().map(Box::new);
                Self::BuildingType {
                    id,
                    before: at(before),
                    after: at(after),
                }
            }
            Cell::Phase(id) => {
                let at = |document: &Document| document.phases.get(&id).cloned();
                Self::Phase {
                    id,
                    before: at(before),
                    after: at(after),
                }
            }
            Cell::Alternative(id) => {
                let at = |document: &Document| document.alternatives.get(&id).cloned();
                Self::Alternative {
                    id,
                    before: at(before),
                    after: at(after),
                }
            }
            Cell::Mark(alternative, id) => {
                let at = |document: &Document| document.mark(alternative, id).cloned().map(Box::new);
                Self::Mark {
                    alternative,
                    id,
                    before: at(before),
                    after: at(after),
                }
            }
        };
        (edit != edit.reversed()).then_some(edit)
    }

    /// The edit that takes this one back.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let mut reversed = self.clone();
        match &mut reversed {
            Self::Heading { before, after } => std::mem::swap(before, after),
            Self::Site { before, after } => std::mem::swap(before, after),
            Self::Program { before, after } => std::mem::swap(before, after),
            Self::Settings { before, after } => std::mem::swap(before, after),
            Self::Topography { before, after } => std::mem::swap(before, after),
            Self::BaseImage { before, after } => std::mem::swap(before, after),
            Self::StreetSection { before, after, .. } => std::mem::swap(before, after),
            Self::BuildingType { before, after, .. } => std::mem::swap(before, after),
            Self::Phase { before, after, .. } => std::mem::swap(before, after),
            Self::Alternative { before, after, .. } => std::mem::swap(before, after),
            Self::Mark { before, after, .. } => std::mem::swap(before, after),
        }
        reversed
    }
}
