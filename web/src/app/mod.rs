//! The application: one open plan, the view, the chosen tool, and what must be drawn or said anew.
//!
//! [`App`] has no browser in it. Events go in through [`App::handle`]; the tool answers with steps, which are carried
//! out on the [`Study`]; what changed is gathered in [`Changes`] until the page takes it.

pub mod background;
pub mod basis;
pub mod figures;
pub mod files;
pub mod gestures;
pub mod land_bar;
pub mod lands;
pub mod maps;
pub mod places;
pub mod scopes;
pub mod shown;
pub mod stage;
pub mod store;
pub mod words;

use std::collections::BTreeSet;

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::{AlternativeId, Document, Edit, Mark, PlanPoint};
use hobnail_core::study::jobs::Jobs;
use hobnail_core::study::protocol::{Answer, News};
use hobnail_core::study::{Study, StudyFault};

use crate::canvas::camera::{Camera, Insets, PlanBox};
use crate::input::{Event, Pointer, PointerKind};
use crate::tools::{Brush, Choices, Label, Selection, Sight, Step, Tool, ToolKind};
use gestures::{Meaning, Pointers};

/// The page without its browser.
pub struct App {
    study: Study,
    camera: Camera,
    tool: Tool,
    choices: Choices,
    selection: Option<Selection>,
    pointers: Pointers,
    last_pointer: Option<Pointer>,
    crosshair: Option<PlanPoint>,
    insets: Insets,
    changes: Changes,
    /// First-level figures at the start of the gesture in progress, to say afterwards what changed.
    at_start: Option<Vec<figures::Row>>,
    drawn: figures::Drawn,
    open_headings: BTreeSet<figures::Heading>,
    map: maps::Map,
    pointed: Option<places::Place>,
    gesture_failed: bool,
    label: Option<Label>,
    said: String,
    notice: Option<String>,
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
        Self::open(Document::new("Untitled plan", nowhere))
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
            tool: ToolKind::Select.at_rest(),
            choices,
            selection: None,
            pointers: Pointers::default(),
            last_pointer: None,
            crosshair: None,
            insets: Insets::default(),
            changes: Changes::ALL,
            at_start: None,
            drawn: figures::Drawn::default(),
            open_headings: BTreeSet::new(),
            map: maps::Map::default(),
            pointed: None,
            gesture_failed: false,
            label: None,
            said: String::new(),
            notice: None,
        })
    }

    /// Opens another plan in this page: view and tool stay, the drawing is fitted.
    ///
    /// # Errors
    /// [`StudyFault`] when the program's own tables do not fit together; the open plan then stays.
    pub fn replace(&mut self, document: Document) -> Result<(), StudyFault> {
        let choices = first_choices(&document);
        self.study = Study::open(document)?;
        self.drawn = figures::Drawn::default();
        self.choices = choices;
        self.pointed = None;
        self.selection = None;
        self.crosshair = None;
        self.at_start = None;
        self.tool = self.tool.kind().at_rest();
        self.fit();
        self.changes = Changes::ALL;
        self.say(words::opened(&self.study));
        Ok(())
    }

    /// The open plan.
    #[must_use]
    pub const fn study(&self) -> &Study {
        &self.study
    }

    /// What part of the plan is in view.
    #[must_use]
    pub const fn camera(&self) -> &Camera {
        &self.camera
    }

    /// The chosen tool.
    #[must_use]
    pub const fn tool(&self) -> &Tool {
        &self.tool
    }

    /// What the palettes hold chosen.
    #[must_use]
    pub const fn choices(&self) -> &Choices {
        &self.choices
    }

    /// What is selected.
    #[must_use]
    pub const fn selection(&self) -> Option<Selection> {
        self.selection
    }

    /// The crosshair of the arrow keys, while they are used.
    #[must_use]
    pub const fn crosshair(&self) -> Option<PlanPoint> {
        self.crosshair
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

    /// Ranges and influences drawn for the plan as it stands.
    #[must_use]
    pub const fn drawn(&self) -> &figures::Drawn {
        &self.drawn
    }

    /// The first-level figures and those under open headings, with the ranges that are known.
    #[must_use]
    pub fn rows(&self) -> Vec<figures::Row> {
        figures::rows(&self.study, &self.drawn, &self.open_headings)
    }

    /// What a panel speaks of, shown on the drawing.
    #[must_use]
    pub const fn pointed(&self) -> Option<&places::Place> {
        self.pointed.as_ref()
    }

    /// Shows on the drawing what a panel speaks of, or nothing any more.
    pub fn point_out(&mut self, place: Option<places::Place>) {
        if place != self.pointed {
            self.pointed = place;
            self.changes.view = true;
        }
    }

    /// Shows a place on the drawing and brings it into the middle of what is seen.
    pub fn go_to(&mut self, place: places::Place) {
        if let Some(middle) = place.middle() {
            let at = self.camera.screen_from_m(middle);
            let (width_px, height_px) = self.camera.size_px();
            let Insets {
                left_px,
                top_px,
                right_px,
                bottom_px,
            } = self.insets;
            let (x_px, y_px) = (
                (left_px + width_px - right_px) / 2.0,
                (top_px + height_px - bottom_px) / 2.0,
            );
            self.camera.pan(x_px - at.x_px, y_px - at.y_px);
            self.changes.view = true;
        }
        self.point_out(Some(place));
    }

    /// Measures another part of the plan; what is drawn stays as it is.
    pub fn measure(&mut self, part: scopes::Part, is_without_unwilling: bool) {
        self.tell_tool(crate::tools::Input::GiveUp, PointerKind::Mouse);
        let before = self.exact_rows();
        let scope = scopes::scope(self.study.document(), part, is_without_unwilling);
        if self.study.set_scope(scope) {
            self.changes = Changes::ALL;
            let words = self.study.scope().in_words(self.study.document());
            let words = words.map_or_else(
                || "Measured: all of it".to_owned(),
                |words| format!("Measured: {words}"),
            );
            self.say(words::what_changed(&words, &before, &self.exact_rows()));
        }
    }

    /// What is laid over the drawing.
    #[must_use]
    pub const fn map(&self) -> maps::Map {
        self.map
    }

    /// What the signs of the map mean.
    #[must_use]
    pub fn legend(&self) -> maps::Legend {
        maps::legend(&self.study, &self.drawn, self.map)
    }

    /// Lays another map over the drawing.
    pub fn show_map(&mut self, map: maps::Map) {
        if map == self.map {
            return;
        }
        self.map = map;
        self.changes.map = true;
        self.say(self.legend().in_words());
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
    pub const fn open_headings(&self) -> &BTreeSet<figures::Heading> {
        &self.open_headings
    }

    /// What is to be worked out in the background once the plan rests, with this basis open.
    #[must_use]
    pub fn questions(&self, basis: Option<&str>) -> Vec<hobnail_core::study::protocol::Question> {
        figures::questions(&self.study, basis, maps::figures_of(self.map), &self.open_headings)
    }

    /// The first-level figures without ranges, which come later: to tell what a step changed.
    fn exact_rows(&self) -> Vec<figures::Row> {
        figures::rows(&self.study, &figures::Drawn::default(), &BTreeSet::new())
    }

    /// Takes an answer of the follower; a stale one is dropped.
    pub fn take_answer(&mut self, revision: u64, answer: Answer) {
        match &answer {
            Answer::Details(details) => match self.study.take_details(revision, details.as_ref().clone()) {
                Ok(is_taken) => self.changes.figures |= is_taken,
                Err(fault) => self.warn(fault.to_string()),
            },
            Answer::NoDetails(reason) => self.warn(reason.clone()),
            Answer::Range { .. } | Answer::Sensitivity { .. } => {}
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
    }

    /// Does one piece of waiting work here.
    pub fn step(&mut self, jobs: &mut Jobs) -> Option<(u64, Answer)> {
        jobs.step(&mut self.study)
    }

    /// What changed since this was last asked.
    pub fn take_changes(&mut self) -> Changes {
        std::mem::take(&mut self.changes)
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
        self.changes.said = true;
    }

    /// Takes the notice away.
    pub fn dismiss_notice(&mut self) {
        self.notice = None;
        self.changes.said = true;
    }

    /// Takes the size of the drawing on screen, and where panels lie over it.
    pub fn resize(&mut self, width_px: f64, height_px: f64, insets: Insets) {
        self.camera.resize(width_px, height_px);
        self.insets = insets;
        self.changes.view = true;
    }

    /// Shows all that is drawn.
    pub fn fit(&mut self) {
        if let Some(area) = extent(&self.study) {
            self.camera.fit(area, self.insets);
        }
        self.changes.view = true;
    }

    /// Makes the drawing so many times as large, about the middle of the screen.
    pub fn zoom(&mut self, factor: f64) {
        let (width_px, height_px) = self.camera.size_px();
        let middle = crate::input::ScreenPoint::new(width_px / 2.0, height_px / 2.0);
        self.camera.zoom(middle, factor);
        self.changes.view = true;
    }

    /// Chooses a tool; what the present one had begun is given up.
    pub fn choose_tool(&mut self, kind: ToolKind) {
        if self.tool.kind() == kind {
            return;
        }
        self.tell_tool(crate::tools::Input::GiveUp, PointerKind::Mouse);
        self.tool = kind.at_rest();
        self.changes.hand = true;
        self.say(format!("{} tool. {}", kind.word(), self.tool.awaits()));
    }

    /// Chooses what the tools draw and paint with.
    pub fn choose(&mut self, choices: Choices) {
        self.choices = choices;
        self.changes.hand = true;
    }

    /// Shows another alternative.
    pub fn show_alternative(&mut self, alternative: AlternativeId) {
        self.tell_tool(crate::tools::Input::GiveUp, PointerKind::Mouse);
        if self.study.show_alternative(alternative) {
            self.selection = None;
            self.changes = Changes::ALL;
            self.say(words::alternative(&self.study));
        }
    }

    /// Shows numbers in other units.
    pub fn show_units(&mut self, units: UnitSystem) {
        let before = self.study.document().settings.clone();
        let mut after = before.clone();
        after.units = units;
        if before == after || self.study.is_in_gesture() {
            return;
        }
        let edit = Edit::Settings {
            before: Box::new(before),
            after: Box::new(after),
        };
        match self.study.apply("change units", vec![edit]) {
            Ok(_) => self.changes.plan = true,
            Err(fault) => self.warn(fault.to_string()),
        }
    }

    /// Takes back the last step; while a gesture is open, its last point.
    pub fn undo(&mut self) {
        if self.tool.is_busy() {
            self.tell_tool(
                crate::tools::Input::Key(crate::input::Key::Escape),
                PointerKind::Keyboard,
            );
            return;
        }
        let before = self.exact_rows();
        let label = self.study.history().undo_label().map(str::to_owned);
        let done = self.study.undo();
        self.after_step("Undone", label, done, &before);
    }

    /// Does the step taken back last again.
    pub fn redo(&mut self) {
        if self.tool.is_busy() {
            return;
        }
        let before = self.exact_rows();
        let label = self.study.history().redo_label().map(str::to_owned);
        let done = self.study.redo();
        self.after_step("Done again", label, done, &before);
    }

    /// Deletes what is selected.
    pub fn delete(&mut self) {
        if !self.tool.is_busy() {
            self.tell_tool(
                crate::tools::Input::Key(crate::input::Key::Delete),
                PointerKind::Keyboard,
            );
        }
    }

    /// Takes one event at the drawing.
    pub fn handle(&mut self, event: Event) {
        if let Event::Move(pointer) | Event::Down(pointer, _) = event {
            self.last_pointer = Some(pointer);
            if self.crosshair.take().is_some() {
                self.changes.hand = true;
            }
        }
        let is_panning_tool = self.tool.kind() == ToolKind::Pan;
        for meaning in self.pointers.read(event, is_panning_tool) {
            match meaning {
                Meaning::Pan { right_px, down_px } => {
                    self.camera.pan(right_px, down_px);
                    self.changes.view = true;
                }
                Meaning::Zoom { at, factor } => {
                    self.camera.zoom(at, factor);
                    self.changes.view = true;
                }
                Meaning::Tool(input, at) => {
                    let kind = at.map_or(PointerKind::Keyboard, |pointer| pointer.kind);
                    let input = input.on_plan(at, &self.camera);
                    self.tell_tool(input, kind);
                }
                Meaning::Key(key, modifiers) => self.key(key, modifiers),
            }
        }
    }

    fn key(&mut self, key: crate::input::Key, modifiers: crate::input::Modifiers) {
        use crate::input::Key;
        match key {
            Key::Left | Key::Right | Key::Up | Key::Down => self.move_crosshair(key, modifiers.shift),
            Key::Enter if self.crosshair.is_some() => self.press_at_crosshair(),
            _ => self.tell_tool(crate::tools::Input::Key(key), PointerKind::Keyboard),
        }
    }

    /// Moves the crosshair by a hand's breadth of the screen, or finely; the view follows it.
    fn move_crosshair(&mut self, key: crate::input::Key, is_fine: bool) {
        use crate::input::{Key, ScreenPoint};
        const STEP_PX: f64 = 24.0;
        const FINE_PX: f64 = 2.0;
        const EDGE_PX: f64 = 60.0;
        let (width_px, height_px) = self.camera.size_px();
        let place = self.crosshair.map_or_else(
            || {
                let pointer = self.last_pointer.map(|pointer| pointer.at);
                pointer.unwrap_or(ScreenPoint::new(width_px / 2.0, height_px / 2.0))
            },
            |point| self.camera.screen_from_plan(point),
        );
        let step_px = if is_fine { FINE_PX } else { STEP_PX };
        let (right, down) = match key {
            Key::Left => (-step_px, 0.0),
            Key::Right => (step_px, 0.0),
            Key::Up => (0.0, -step_px),
            _ => (0.0, step_px),
        };
        let moved = ScreenPoint::new(place.x_px + right, place.y_px + down);
        let point = self.camera.plan_from_screen(moved);
        let left_px = self.insets.left_px + EDGE_PX;
        let right_px = (width_px - self.insets.right_px - EDGE_PX).max(left_px);
        let top_px = self.insets.top_px + EDGE_PX;
        let bottom_px = (height_px - self.insets.bottom_px - EDGE_PX).max(top_px);
        let within = ScreenPoint::new(moved.x_px.clamp(left_px, right_px), moved.y_px.clamp(top_px, bottom_px));
        self.camera.pan(within.x_px - moved.x_px, within.y_px - moved.y_px);
        self.changes.view = true;
        self.crosshair = Some(point);
        let at = crate::tools::At {
            point,
            modifiers: crate::input::Modifiers::default(),
        };
        self.tell_tool(crate::tools::Input::Move(at), PointerKind::Keyboard);
    }

    /// Enter at the crosshair is a press and a release there; a second one in the same place ends a street.
    fn press_at_crosshair(&mut self) {
        let Some(point) = self.crosshair else { return };
        let at = crate::tools::At {
            point,
            modifiers: crate::input::Modifiers::default(),
        };
        self.tell_tool(crate::tools::Input::Down(at), PointerKind::Keyboard);
        self.tell_tool(crate::tools::Input::Up(at), PointerKind::Keyboard);
    }

    fn tell_tool(&mut self, input: crate::tools::Input, kind: PointerKind) {
        let land_at = |point| lands::land_at(self.study.fabric(), point);
        let sight = Sight {
            document: self.study.document(),
            alternative: self.study.alternative(),
            reach_mm: self.camera.mm_from_px(kind.reach_px()) as f64,
            land_at: &land_at,
            choices: &self.choices,
            selection: self.selection,
            next_id: self.study.next_mark_id(),
        };
        let steps = self.tool.respond(input, &sight);
        self.changes.hand = true;
        for step in steps {
            self.carry_out(step);
        }
    }

    fn carry_out(&mut self, step: Step) {
        match step {
            Step::Begin(label) => {
                self.at_start = Some(self.exact_rows());
                self.gesture_failed = false;
                self.label = Some(label);
                if let Err(fault) = self.study.begin(label.words()) {
                    self.warn(fault.to_string());
                }
            }
            Step::Change(edits) => {
                // A preview that can not be made (such as streets that would hold on to each other in a circle)
                // leaves the last one standing; it is said once, and the next pointer move may well be possible again.
                match self.study.change(edits) {
                    Ok(()) => self.gesture_failed = false,
                    Err(fault) if !self.gesture_failed => {
                        self.gesture_failed = true;
                        self.warn(fault.to_string());
                    }
                    Err(_) => {}
                }
                self.changes.plan = true;
            }
            Step::Commit => {
                let committed = self.study.commit();
                self.changes.plan = true;
                let before = self.at_start.take().unwrap_or_default();
                match committed {
                    Ok(Some(_)) => {
                        let label = self.label.map_or("", Label::words);
                        let now = self.exact_rows();
                        self.say(words::what_changed(label, &before, &now));
                    }
                    Ok(None) => {}
                    Err(fault) => self.warn(fault.to_string()),
                }
            }
            Step::Cancel => {
                self.at_start = None;
                self.changes.plan = true;
                match self.study.cancel() {
                    Ok(()) => self.say("Given up; the plan is as before."),
                    Err(fault) => self.warn(fault.to_string()),
                }
            }
            Step::Select(selection) => {
                let is_new = selection != self.selection;
                self.selection = selection;
                if is_new && let Some(selection) = selection {
                    self.say(words::selected(&self.study, selection));
                }
            }
        }
        self.drop_lost_selection();
    }

    fn after_step(
        &mut self,
        done_word: &str,
        label: Option<String>,
        done: Result<bool, hobnail_core::plan::history::HistoryFault>,
        before: &[figures::Row],
    ) {
        match done {
            Ok(true) => {
                self.changes.plan = true;
                self.changes.hand = true;
                self.drop_lost_selection();
                let label = format!("{done_word}: {}", label.unwrap_or_default());
                let now = self.exact_rows();
                self.say(words::what_changed(&label, before, &now));
            }
            Ok(false) => self.say("There is nothing more."),
            Err(fault) => self.warn(fault.to_string()),
        }
    }

    /// A selection of something that is gone is no selection.
    fn drop_lost_selection(&mut self) {
        let held = self.selection.filter(|selection| {
            let mark = self.study.document().mark(self.study.alternative(), selection.mark());
            match (selection, mark) {
                (Selection::Vertex(_, index), Some(Mark::Street(street))) => *index < street.line.len(),
                (_, mark) => mark.is_some(),
            }
        });
        if held != self.selection {
            self.selection = held;
            self.changes.hand = true;
        }
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
    }
}

/// The part of the plan that holds something: the site and all streets; `None` on a blank sheet.
fn extent(study: &Study) -> Option<PlanBox> {
    let site = study.document().site.boundary.iter().copied();
    let streets = study
        .fabric()
        .lines
        .streets
        .iter()
        .flat_map(|street| street.points.iter().copied());
    if study.document().site.boundary.is_empty() {
        PlanBox::about(streets)
    } else {
        PlanBox::about(site)
    }
}

#[cfg(test)]
mod tests;
