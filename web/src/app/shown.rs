//! What the panels show, as plain data: made from the application when something changed, compared before it is shown.

use hobnail_core::number;
use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::editing::direction;
use hobnail_core::plan::{AlternativeId, BuildingTypeId, StreetSectionId, Strip};
use hobnail_core::say;

use super::editing::SelectionShown;
use super::{App, words};
use crate::tools::{Choices, Hints, ToolKind};

/// Names, palettes and history of the open plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PlanShown {
    /// The plan's name.
    pub name: String,
    /// What it shows, in its author's words.
    pub about: String,
    /// Its alternatives.
    pub alternatives: Vec<(AlternativeId, String)>,
    /// The alternative in view.
    pub alternative: Option<AlternativeId>,
    /// What undo would take back.
    pub undo: Option<String>,
    /// What redo would do again.
    pub redo: Option<String>,
    /// Street sections to choose from.
    pub sections: Vec<SectionShown>,
    /// Building types to choose from.
    pub building_types: Vec<BuildingTypeShown>,
    /// Whether numbers are metric.
    pub is_metric: bool,
    /// What the drawing holds, in words.
    pub described: String,
    /// The heights of the ground in words; empty where the plan has none.
    pub heights: String,
}

/// A street section of the palette.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionShown {
    /// Its id.
    pub id: StreetSectionId,
    /// Its name.
    pub name: String,
    /// Width of the right-of-way, in words.
    pub width: String,
    /// Its strips, left to right.
    pub strips: Vec<Strip>,
    /// Its strips in words.
    pub cut: String,
}

/// A building type of the palette.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuildingTypeShown {
    /// Its id.
    pub id: BuildingTypeId,
    /// Its name.
    pub name: String,
    /// Its use, for the swatch.
    pub land_use: LandUse,
    /// What one lot holds, in words.
    pub holds: String,
}

/// The tool and what it is about to do.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HandShown {
    /// The chosen tool.
    pub tool: Option<ToolKind>,
    /// What it waits for.
    pub awaits: String,
    /// What the palettes hold chosen.
    pub choices: Option<Choices>,
    /// What is selected, in words.
    pub selected: Option<String>,
    /// Whether a gesture is open.
    pub is_busy: bool,
    /// Whether a pen draws and fingers only move the view.
    pub knows_pen: bool,
    /// What can be done to the selection.
    pub selection: Option<SelectionShown>,
    /// Length and bearing for the next point, where one can be typed.
    pub typed: Option<TypedShown>,
}

/// What help shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Help {
    /// Nothing.
    #[default]
    Closed,
    /// The tool in hand.
    Tool,
    /// The first steps.
    FirstSteps,
}

/// The fields of a typed length and bearing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedShown {
    /// What was typed in each.
    pub words: [String; 2],
    /// Length and bearing of the run to the pointer.
    pub live: [String; 2],
}

/// Names, palettes and history of the open plan.
#[must_use]
pub fn plan(app: &App) -> PlanShown {
    let study = app.study();
    let document = study.document();
    let units = app.units();
    PlanShown {
        name: document.heading.name.clone(),
        about: document.heading.about.clone(),
        alternatives: document
            .alternatives
            .iter()
            .map(|(id, found)| (*id, found.name.clone()))
            .collect(),
        alternative: Some(study.alternative()),
        undo: study.history().undo_label().map(str::to_owned),
        redo: study.history().redo_label().map(str::to_owned),
        sections: document
            .street_sections
            .iter()
            .map(|(id, section)| SectionShown {
                id: *id,
                name: section.name.clone(),
                width: words::length(f64::from(section.right_of_way_mm()) / 1000.0, units),
                strips: section.strips.clone(),
                cut: words::cut(section, units),
            })
            .collect(),
        building_types: document
            .building_types
            .iter()
            .map(|(id, found)| BuildingTypeShown {
                id: *id,
                name: found.name.clone(),
                land_use: found.land_use,
                holds: holds(found, units),
            })
            .collect(),
        is_metric: units == UnitSystem::Metric,
        described: described(app),
        heights: app.heights_words(),
    }
}

/// What the drawing shows, in a sentence for who does not see it.
pub fn described(app: &App) -> String {
    let study = app.study();
    say!(
        "page-described",
        plan = study.document().heading.name,
        alternative = words::alternative(study),
        walk = words::walk(study)
    )
}

/// The tool and what it is about to do.
#[must_use]
pub fn hand(app: &App) -> HandShown {
    let laying = app.base_image_shown().awaits;
    let awaits = laying.as_deref().unwrap_or_else(|| app.tool().awaits());
    HandShown {
        tool: Some(app.tool().kind()),
        awaits: match app.measured_words() {
            Some(measured) => [&measured, ". ", awaits].concat(),
            None => awaits.to_owned(),
        },
        choices: Some(*app.choices()),
        selected: app.selected_words(),
        is_busy: app.tool().is_busy(),
        knows_pen: app.knows_pen(),
        selection: app.selection_shown(),
        typed: app.takes_length().then(|| TypedShown {
            words: app.typed_words().clone(),
            live: live_run(app),
        }),
    }
}

/// Length and bearing, in degrees clockwise from north, of the run from the last point to the pointer.
fn live_run(app: &App) -> [String; 2] {
    match run(&app.tool().hints()) {
        Some((length_m, degrees)) => [words::length_field(length_m * 1000.0, app.units()), degrees.to_string()],
        None => Default::default(),
    }
}

/// Length in meters and bearing, in degrees clockwise from north, of the run from the last point to where the next
/// lands.
pub(super) fn run(hints: &Hints) -> Option<(f64, u32)> {
    let (from, to) = hints.points.last().zip(hints.snap)?;
    let ((east, north), length_mm) = direction(*from, to.point)?;
    let degrees = number::atan2(east, north).to_degrees().round() as i32;
    Some((length_mm / 1000.0, degrees.rem_euclid(360).unsigned_abs()))
}

fn holds(building_type: &hobnail_core::plan::BuildingType, units: UnitSystem) -> String {
    let lot = words::length(f64::from(building_type.lot_width_mm) / 1000.0, units);
    let homes = building_type.homes_per_lot;
    let stories = building_type.stories.len();
    match (homes, stories) {
        (0, 0) => say!("page-holds-open").to_owned(),
        (0, stories) => say!("page-holds-floors", count = stories, width = lot),
        (homes, _) => say!("page-holds-homes", count = homes, width = lot),
    }
}
