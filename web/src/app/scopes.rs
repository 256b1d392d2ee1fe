//! What part of the plan is measured: all of it, one phase or those up to it, today, without unwilling owners.

use hobnail_core::plan::land::OwnerGroup;
use hobnail_core::plan::scope::{Scope, Standing};
use hobnail_core::plan::{Document, Mark, PhaseId};
use hobnail_core::say;
use hobnail_core::study::Study;

/// A part of the plan to choose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Part {
    /// All of it, as proposed.
    #[default]
    All,
    /// The phases up to one, that one with them.
    UpTo(PhaseId),
    /// One phase alone.
    Alone(PhaseId),
    /// What stands today.
    Today,
}

/// What is chosen, and what there is to choose from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Measured {
    /// The part chosen.
    pub part: Part,
    /// All parts, with their words.
    pub parts: Vec<(Part, String)>,
    /// Whether land of unwilling owners is left out; `None` where there is none.
    pub without_unwilling: Option<bool>,
    /// What is left out, in words; `None` where nothing is.
    pub words: Option<String>,
}

impl Part {
    /// Its name in the page.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::All => "all".to_owned(),
            Self::UpTo(phase) => format!("up-to-{phase}"),
            Self::Alone(phase) => format!("alone-{phase}"),
            Self::Today => "today".to_owned(),
        }
    }
}

/// What is chosen in a study, and what there is to choose from.
#[must_use]
pub fn measured(study: &Study) -> Measured {
    let document = study.document();
    let parts = parts(document);
    let without = study.scope().left_out_owners.contains(&OwnerGroup::Unwilling);
    let part = parts.iter().map(|(part, _)| *part).find(|part| {
        let scope = scope(document, *part, without);
        scope == *study.scope()
    });
    Measured {
        part: part.unwrap_or_default(),
        parts,
        without_unwilling: has_unwilling(study).then_some(without),
        words: study.scope().in_words(document),
    }
}

/// The scope that measures a part, perhaps without unwilling owners.
#[must_use]
pub fn scope(document: &Document, part: Part, is_without_unwilling: bool) -> Scope {
    let mut scope = match part {
        Part::All => Scope::default(),
        Part::UpTo(phase) => Scope::up_to(document, phase),
        Part::Alone(phase) => Scope {
            phases: Some([phase].into()),
            ..Scope::default()
        },
        Part::Today => Scope {
            standing: Standing::Today,
            ..Scope::default()
        },
    };
    if is_without_unwilling {
        scope.left_out_owners.insert(OwnerGroup::Unwilling);
    }
    scope
}

fn parts(document: &Document) -> Vec<(Part, String)> {
    let mut parts = vec![(Part::All, say!("page-part-all").to_owned())];
    if document.phases.len() > 1 {
        for (place, (id, phase)) in document.phases.iter().enumerate() {
            // Up to the first is the first alone, and up to the last is all.
            if place > 0 && place + 1 < document.phases.len() {
                parts.push((Part::UpTo(*id), say!("page-part-up-to", phase = phase.name)));
            }
            parts.push((Part::Alone(*id), say!("page-part-alone", phase = phase.name)));
        }
    }
    parts.push((Part::Today, say!("page-part-today").to_owned()));
    parts
}

fn has_unwilling(study: &Study) -> bool {
    let held = study.document().alternatives.get(&study.alternative());
    let mut marks = held.into_iter().flat_map(|held| held.marks.values());
    marks.any(|mark| matches!(mark, Mark::Parcel(parcel) if parcel.owner == OwnerGroup::Unwilling))
}
