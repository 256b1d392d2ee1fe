//! `hobnail measure`: every figure of one alternative of a plan file, as data and in words.

use std::fmt;
use std::fmt::Write as _;

use serde::Serialize;

use crate::exchange::plan_file::{self, Refusal as FileRefusal};
use crate::figures::basis::Basis;
use crate::figures::graph::{NodeIndex, Operator};
use crate::figures::value::{Content, FigureValue};
use crate::plan::validate::validate;
use crate::plan::{AlternativeId, PhaseId, Scope};
use crate::say;
use crate::study::Study;
use crate::study::first_level::{basis, system};

/// What was measured.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MeasureReport {
    /// The plan's name.
    pub plan: String,
    /// What the plan says of itself.
    pub about: String,
    /// The alternative's name.
    pub alternative: String,
    /// What part of it was looked at, in words; absent where all of it was.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scope: Option<String>,
    /// Every figure with its range, in working order.
    pub figures: Vec<FigureValue>,
    /// What the drawing leaves open: faces without a street to front on, sleeping uses and the like.
    pub notes: Vec<String>,
    /// What is wrong with the file or the plan, with its place.
    pub faults: Vec<String>,
}

/// Why nothing was measured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MeasureRefusal {
    /// The file could not be opened.
    File(FileRefusal),
    /// There is no alternative of this name; the names there are.
    NoAlternative(String, Vec<String>),
    /// There is no phase of this id; the ids and names there are.
    NoPhase(PhaseId, Vec<String>),
    /// There is no figure of this id; the nearest ids by their first part.
    NoFigure(String, Vec<String>),
    /// The figures do not fit the program's own tables.
    Study(String),
}

impl fmt::Display for MeasureRefusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&match self {
            Self::File(refusal) => refusal.to_string(),
            Self::NoAlternative(name, held) => say!(
                "report-no-alternative",
                name = name.escape_debug().to_string(),
                names = held.join(", ")
            ),
            Self::NoPhase(id, held) if held.is_empty() => say!("report-no-phases", id = id.0),
            Self::NoPhase(id, held) => say!("report-no-phase", id = id.0, names = held.join(", ")),
            Self::NoFigure(id, held) => say!(
                "report-no-figure",
                id = id.escape_debug().to_string(),
                ids = held.join(", ")
            ),
            Self::Study(sentence) => sentence.clone(),
        })
    }
}

impl std::error::Error for MeasureRefusal {}

/// A plan file opened for measuring.
#[derive(Debug)]
pub struct Measuring {
    study: Study,
    faults: Vec<String>,
}

impl Measuring {
    /// Opens the bytes of a plan file on the alternative of this name, or on its first.
    ///
    /// # Errors
    /// [`MeasureRefusal`] when nothing can be measured.
    pub fn open(bytes: &[u8], alternative: Option<&str>) -> Result<Self, MeasureRefusal> {
        let opened = plan_file::read(bytes).map_err(MeasureRefusal::File)?;
        let mut faults: Vec<String> = opened.faults.iter().map(ToString::to_string).collect();
        faults.extend(validate(&opened.document).iter().map(ToString::to_string));
        let chosen = alternative
            .map(|name| alternative_named(&opened.document, name))
            .transpose()?;
        let mut study = Study::open(opened.document).map_err(|fault| MeasureRefusal::Study(fault.to_string()))?;
        if let Some(chosen) = chosen {
            study.show_alternative(chosen);
        }
        faults.extend(study.override_faults().iter().cloned());
        Ok(Self { study, faults })
    }

    /// Looks at a part of the alternative.
    ///
    /// # Errors
    /// [`MeasureRefusal::NoPhase`] when a phase is not in the plan.
    pub fn look_at(&mut self, scope: Scope) -> Result<(), MeasureRefusal> {
        let held = &self.study.document().phases;
        if let Some(missing) = scope.phases.iter().flatten().find(|id| !held.contains_key(id)) {
            let names = held.iter().map(|(id, phase)| format!("{id} {}", phase.name));
            return Err(MeasureRefusal::NoPhase(*missing, names.collect()));
        }
        self.study.set_scope(scope);
        Ok(())
    }

    /// Works out what takes longer than a frame, where it is not yet.
    fn work_details(&mut self) {
        if let Err(fault) = self.study.work_details() {
            self.faults.push(fault.to_string());
        }
    }

    /// Every figure with its range.
    #[must_use]
    pub fn report(mut self) -> MeasureReport {
        self.work_details();
        let system = system(self.study.document());
        let evaluation = self.study.evaluation_mut();
        let worked: Vec<NodeIndex> = evaluation
            .graph()
            .indices()
            .filter(|index| !matches!(evaluation.graph().node(*index).operator, Operator::Leaf(_)))
            .collect();
        let figures = worked
            .into_iter()
            .map(|index| evaluation.figure_value_with_range(index, system))
            .collect();
        let document = self.study.document();
        let held = document.alternatives.get(&self.study.alternative());
        MeasureReport {
            plan: document.heading.name.clone(),
            about: document.heading.about.clone(),
            alternative: held.map_or_else(String::new, |held| held.name.clone()),
            scope: self.study.scope().in_words(document),
            figures,
            notes: self.study.notes().iter().map(ToString::to_string).collect(),
            faults: self.faults,
        }
    }

    /// The basis of one figure, of its largest row where it is a table.
    ///
    /// # Errors
    /// [`MeasureRefusal::NoFigure`] with the ids there are.
    pub fn basis(&mut self, figure: &str) -> Result<Basis, MeasureRefusal> {
        self.work_details();
        basis(&self.study, figure).ok_or_else(|| {
            let ids = self
                .study
                .evaluation()
                .graph()
                .nodes()
                .iter()
                .map(|node| node.id.clone());
            MeasureRefusal::NoFigure(figure.to_owned(), ids.collect())
        })
    }

    /// The open plan with what takes longer than a frame worked out, for it to be exported.
    pub fn worked_study(&mut self) -> &mut Study {
        self.work_details();
        &mut self.study
    }

    /// What is wrong with the file or the plan, with its place.
    #[must_use]
    pub fn faults(&self) -> &[String] {
        &self.faults
    }
}

fn alternative_named(document: &crate::plan::Document, name: &str) -> Result<AlternativeId, MeasureRefusal> {
    let found = document
        .alternatives
        .iter()
        .find(|(_, held)| held.name == name)
        .map(|(id, _)| *id);
    found.ok_or_else(|| {
        let names = document.alternatives.values().map(|held| held.name.clone()).collect();
        MeasureRefusal::NoAlternative(name.to_owned(), names)
    })
}

impl MeasureReport {
    /// As JSON: the same bytes on every machine.
    ///
    /// # Errors
    /// What the JSON writer says; a report holds nothing it refuses.
    pub fn to_json(&self) -> Result<String, serde_json::Error> {
        Ok(serde_json::to_string_pretty(self)? + "\n")
    }

    /// As a table in words.
    #[must_use]
    pub fn to_words(&self) -> String {
        let scope = self.scope.iter().map(|scope| format!(" ({scope})")).collect::<String>();
        let mut words = format!("{}: {}{scope}\n", self.plan, self.alternative);
        if !self.about.is_empty() {
            let _ = writeln!(words, "{}", self.about);
        }
        for figure in &self.figures {
            match &figure.content {
                Content::Single(cell) => {
                    let _ = writeln!(words, "  {:<44} {}", figure.title, cell.shown);
                }
                // A table that holds nothing is left out: of a plan without soft areas there are many.
                Content::Table { rows, .. } => {
                    let held: Vec<_> = rows.iter().filter(|row| row.value.value != Some(0.0)).collect();
                    if !held.is_empty() {
                        let _ = writeln!(words, "  {}", figure.title);
                    }
                    for row in held {
                        let _ = writeln!(words, "    {:<42} {}", row.titles.join(", "), row.value.shown);
                    }
                }
            }
        }
        for note in &self.notes {
            let _ = writeln!(words, "{}", say!("report-note", note = note));
        }
        words
    }
}
