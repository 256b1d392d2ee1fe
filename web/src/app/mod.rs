//! The application: one open plan, the view, the chosen tool, and what must be drawn or said anew.
//!
//! [`App`] has no browser in it. Events go in through [`App::handle`]; the tool answers with steps, which are carried
//! out on the [`Study`]; what changed is gathered in [`Changes`] until the page takes it.

pub mod address;
pub mod alternatives;
pub mod background;
pub mod base_image;
pub mod bases;
pub mod basis;
pub mod class_maps;
pub mod counted_land;
mod counted_streets;
pub mod covered;
pub mod detail_maps;
pub mod editing;
pub mod editor;
pub mod exports;
pub mod fields;
pub mod figures;
pub mod files;
pub mod gather;
pub mod gestures;
pub mod keeping;
pub mod land_bar;
pub mod lands;
pub mod looking;
pub mod maps;
pub mod mode;
pub mod places;
pub mod program;
pub mod remarks;
pub mod replay;
pub mod scopes;
pub mod shown;
pub mod stage;
pub mod store;
pub mod words;

pub mod moments;

pub mod forms;
mod hand;
mod in_view;
mod kept;
mod language;
mod steps;
mod view;

use hobnail_core::order::OrderedSet;
use hobnail_core::say;

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::{Document, MarkId, PlanPoint};
use hobnail_core::study::jobs::Jobs;
use hobnail_core::study::protocol::{Answer, News};
use hobnail_core::study::{Study, StudyFault};

use crate::browser::keeping::Writing;
use crate::canvas::camera::{Camera, Insets};
use crate::input::Pointer;
use crate::tools::drafts::Drafts;
use crate::tools::drawing::Drawing;
use crate::tools::{Brush, Choices, Label, Selection, Tool, ToolKind};
use gestures::Pointers;

/// The page without its browser.
pub struct App {
    study: Study,
    camera: Camera,
    /// The view as it was when all was last shown; while it is the same, all is shown at every size of the window.
    fitted: Option<Camera>,
    tool: Tool,
    choices: Choices,
    drafts: Drafts,
    /// Whether the typed program stands open.
    is_program_open: bool,
    selection: Option<Selection>,
    /// Marks selected together, where they are more than one thing.
    picked: Vec<MarkId>,
    /// What was selected before the pointer was last pressed.
    selected_before: Option<Selection>,
    /// Whether a remark was just pinned down, whose words are typed next.
    awaits_words: bool,
    /// Length and bearing typed for the next point.
    typed_words: [String; 2],
    pointers: Pointers,
    last_pointer: Option<Pointer>,
    crosshair: Option<PlanPoint>,
    insets: Insets,
    changes: Changes,
    /// Numbers of first-level figures at the start of the gesture in progress, to say afterwards what changed.
    at_start: Option<Vec<Option<f64>>>,
    drawn: figures::Drawn,
    open_headings: OrderedSet<figures::Heading>,
    marked: Option<moments::Marked>,
    enlarged: Vec<String>,
    /// The remark that is being answered, and how all are listed.
    answering: Option<remarks::Answering>,
    remark_sort: remarks::Sort,
    map: maps::Map,
    pointed: Option<places::Place>,
    /// The figure whose row is spoken of now.
    pointed_figure: Option<String>,
    /// The bases that stand open, the one opened last at the end.
    opened_bases: Vec<basis::Opened>,
    gesture_failed: bool,
    label: Option<Label>,
    /// What the step is called.
    label_words: String,
    said: String,
    notice: Option<String>,
    /// Whether the notice says what was done rather than what went wrong.
    is_notice_calm: bool,
    keeping: keeping::Keeping,
    editor: editor::State,
    /// How the picture under the drawing is being laid.
    laying: Option<base_image::Laying>,
    looking: looking::Looking,
}

/// What is to be drawn or said anew.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Changes {
    /// The plan: scene, figures, names.
    pub plan: bool,
    /// Ranges of figures alone, or which of them are shown.
    pub figures: bool,
    /// What is laid over the drawing.
    pub map: bool,
    /// What part of it is in view.
    pub view: bool,
    /// Tool, hints, selection.
    pub hand: bool,
    /// Which remark is answered, or in what order they are listed.
    pub remarks: bool,
    /// Something was said.
    pub said: bool,
}

impl Changes {
    const ALL: Self = Self {
        plan: true,
        figures: true,
        map: true,
        view: true,
        hand: true,
        remarks: true,
        said: true,
    };

    /// Whether anything changed.
    #[must_use]
    pub fn any(self) -> bool {
        self != Self::default()
    }
}

impl App {
    /// The page with an empty plan.
    ///
    /// # Errors
    /// [`StudyFault`] when the program's own tables do not fit together.
    pub fn new() -> Result<Self, StudyFault> {
        let nowhere = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        Self::open(Document::new(say!("page-untitled"), nowhere))
    }

    /// The page with this plan.
    ///
    /// # Errors
    /// [`StudyFault`] when the program's own tables do not fit together.
    pub fn open(document: Document) -> Result<Self, StudyFault> {
        let choices = first_choices(&document);
        Ok(Self {
            study: Study::open(document)?,
            camera: Camera::new(1280.0, 720.0),
            fitted: None,
            tool: ToolKind::Select.at_rest(),
            choices,
            drafts: Drafts::first(),
            is_program_open: false,
            selection: None,
            picked: Vec::new(),
            selected_before: None,
            awaits_words: false,
            typed_words: Default::default(),
            pointers: Pointers::default(),
            last_pointer: None,
            crosshair: None,
            insets: Insets::default(),
            changes: Changes::ALL,
            at_start: None,
            drawn: figures::Drawn::default(),
            open_headings: OrderedSet::new(),
            marked: None,
            enlarged: Vec::new(),
            answering: None,
            remark_sort: remarks::Sort::default(),
            map: maps::Map::default(),
            pointed: None,
            pointed_figure: None,
            opened_bases: Vec::new(),
            gesture_failed: false,
            label: None,
            label_words: String::new(),
            said: String::new(),
            notice: None,
            is_notice_calm: false,
            keeping: keeping::Keeping::default(),
            editor: editor::State::default(),
            laying: None,
            looking: looking::Looking::No,
        })
    }

    /// Opens another plan in this page: view and tool stay, the drawing is fitted.
    ///
    /// # Errors
    /// A sentence, when the open plan is only looked at or the program's own tables do not fit together; the open plan
    /// then stays.
    pub fn replace(&mut self, document: Document) -> Result<(), String> {
        self.may_open()?;
        self.take_study(Study::open(document).map_err(|fault| fault.to_string())?);
        self.keeping.begin();
        Ok(())
    }

    fn take_study(&mut self, mut study: Study) {
        study.take_place_of(&self.study);
        self.choices = first_choices(study.document());
        self.drafts = Drafts::first();
        self.study = study;
        self.drawn = figures::Drawn::default();
        self.marked = None;
        self.answering = None;
        self.pointed = None;
        self.pointed_figure = None;
        self.opened_bases.clear();
        self.selection = None;
        self.picked.clear();
        self.laying = None;
        // What was said of the plan before is no longer so.
        self.notice = None;
        self.close_editors();
        self.crosshair = None;
        self.at_start = None;
        self.tool = self.tool.kind().at_rest();
        self.fit();
        self.changes = Changes::ALL;
        self.say(words::opened(&self.study));
        self.lock_opened();
    }

    /// The open plan.
    #[must_use]
    pub const fn study(&self) -> &Study {
        &self.study
    }

    /// Units that numbers are shown in.
    #[must_use]
    pub fn units(&self) -> UnitSystem {
        self.study.document().settings.units
    }

    /// What was said last, for those who listen rather than look.
    #[must_use]
    pub fn said(&self) -> &str {
        &self.said
    }

    /// What went wrong last, in words, until it is dismissed.
    #[must_use]
    pub fn notice(&self) -> Option<&str> {
        self.notice.as_deref()
    }

    /// Whether the notice says what was done rather than what went wrong.
    #[must_use]
    pub const fn is_notice_calm(&self) -> bool {
        self.is_notice_calm
    }

    /// Ranges and influences drawn for the plan as it stands.
    #[must_use]
    pub const fn drawn(&self) -> &figures::Drawn {
        &self.drawn
    }

    /// The first-level figures and those under open headings, with the ranges that are known.
    #[must_use]
    pub fn rows(&self) -> Vec<figures::Row> {
        let mut rows = figures::rows(&self.study, &self.drawn, &self.open_headings);
        self.note_changes(&mut rows);
        rows
    }

    /// Opens a heading of the column, or closes it.
    pub fn toggle_heading(&mut self, heading: figures::Heading) {
        if !self.open_headings.remove(&heading) {
            self.open_headings.insert(heading);
        }
        self.changes.figures = true;
    }

    /// The headings of the column that stand open.
    #[must_use]
    pub const fn open_headings(&self) -> &OrderedSet<figures::Heading> {
        &self.open_headings
    }

    /// What is to be worked out in the background once the plan rests.
    #[must_use]
    pub fn questions(&self) -> Vec<hobnail_core::study::protocol::Question> {
        let legend = maps::figures_of(self.map);
        let mut questions = figures::questions(&self.study, &self.opened_bases, legend, &self.open_headings);
        self.ask_for_changes(&mut questions);
        questions
    }

    /// The first-level figures without ranges, which come later.
    fn exact_rows(&self) -> Vec<figures::Row> {
        figures::rows(&self.study, &figures::Drawn::default(), &OrderedSet::new())
    }

    /// Takes an answer of the follower; a stale one is dropped.
    pub fn take_answer(&mut self, revision: u64, answer: Answer) {
        match &answer {
            Answer::Details(details) => match self.study.take_details(revision, details.as_ref().clone()) {
                Ok(is_taken) => {
                    self.changes.figures |= is_taken;
                    self.changes.map |= is_taken && self.map.shows_details();
                    if self.pointed.is_none() {
                        self.find_pointed();
                    }
                }
                Err(fault) => self.warn(fault.to_string()),
            },
            Answer::NoDetails(reason) => self.warn(reason.clone()),
            Answer::Compared(outcome) => self.is_compared(outcome),
            Answer::Range { .. } | Answer::Sensitivity { .. } | Answer::Change { .. } => {}
        }
        self.changes.figures |= self.drawn.take(&self.study, revision, answer);
    }

    /// What the follower has not been told yet; nothing while a gesture is open.
    pub fn take_news(&mut self) -> Option<News> {
        self.study.take_news()
    }

    /// Makes the next news hold the whole plan.
    pub const fn send_whole(&mut self) {
        self.study.send_whole();
        if let Some(marked) = &mut self.marked {
            marked.is_told = false;
        }
    }

    /// Does one piece of waiting work here.
    pub fn step(&mut self, jobs: &mut Jobs) -> Option<(u64, Answer)> {
        jobs.step(&mut self.study)
    }

    /// What changed since this was last asked.
    pub fn take_changes(&mut self) -> Changes {
        if self.changes.plan {
            self.find_pointed();
        }
        std::mem::take(&mut self.changes)
    }

    /// What is to be written of the plan in this browser now, if anything is; asked after whatever happened.
    pub fn next_writing(&mut self, now_ms: fn() -> f64, fresh_name: fn() -> String) -> Option<Writing> {
        if self.changes.plan {
            let label = self.label_words.as_str();
            self.keeping.note(&mut self.study, label, self.tool.shows_hover());
        }
        self.keeping.next(now_ms, fresh_name)
    }

    /// The id of the open plan in the browser's store, once it has one.
    #[must_use]
    pub fn kept_id(&self) -> Option<&str> {
        self.keeping.id()
    }

    /// Whether the plan is kept in this browser.
    #[must_use]
    pub fn kept(&self) -> keeping::KeptShown {
        self.keeping.shown()
    }

    /// Says something to those who listen.
    pub fn say(&mut self, sentence: impl Into<String>) {
        self.said = sentence.into();
        self.changes.said = true;
    }

    /// Shows what went wrong until it is dismissed.
    pub fn warn(&mut self, sentence: impl Into<String>) {
        let sentence = sentence.into();
        self.said.clone_from(&sentence);
        self.notice = Some(sentence);
        self.is_notice_calm = false;
        self.changes.said = true;
    }

    /// Shows what was done, and is more than a step says, until it is dismissed.
    pub fn inform(&mut self, sentence: impl Into<String>) {
        self.warn(sentence);
        self.is_notice_calm = true;
    }

    /// Takes the notice away.
    pub fn dismiss_notice(&mut self) {
        self.notice = None;
        self.changes.said = true;
    }
}

/// What the palettes hold chosen when a plan is opened: an ordinary street, and the first building type.
fn first_choices(document: &Document) -> Choices {
    use hobnail_core::plan::defaults::NEIGHBORHOOD_STREET;
    let sections = &document.street_sections;
    let first = sections.keys().next().copied().unwrap_or(NEIGHBORHOOD_STREET);
    Choices {
        section: if sections.contains_key(&NEIGHBORHOOD_STREET) {
            NEIGHBORHOOD_STREET
        } else {
            first
        },
        building_type: document.building_types.keys().next().copied(),
        brush: Brush::Nearest,
        drawing: Drawing::in_units(document.settings.units == UnitSystem::Metric),
    }
}

#[cfg(test)]
mod tests;
