//! What the hand does: events at the drawing go to the tool, and its steps are carried out on the plan.

use hobnail_core::number::within;
use hobnail_core::plan::{Mark, MarkKind, PlanPoint};
use hobnail_core::say;

use super::gestures::{Meaning, Told};
use super::{App, lands, words};
use crate::input::{Event, Key, Modifiers, PointerKind, ScreenPoint};
use crate::tools::snap::Reason;
use crate::tools::{At, Choices, Input, Label, Selection, Sight, Step, Tool, ToolKind, select, shape};

impl App {
    /// The chosen tool.
    #[must_use]
    pub const fn tool(&self) -> &Tool {
        &self.tool
    }

    /// Whether the tool is the one that selects, and nothing is held or asked for.
    #[must_use]
    pub fn is_at_rest(&self) -> bool {
        self.tool == Tool::Select(select::State::Resting)
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

    /// Chooses a tool; what the present one had begun is ended, or given up.
    pub fn choose_tool(&mut self, kind: ToolKind) {
        self.end_laying();
        if self.tool.kind() == kind || self.refuses() {
            return;
        }
        let mut said = self.end_begun();
        self.tool = kind.at_rest();
        self.close_cut();
        if !matches!(kind, ToolKind::Select | ToolKind::Pan) {
            // What the tool draws with is chosen next.
            self.leave_editor();
        }
        if matches!(kind, ToolKind::Area | ToolKind::Place) {
            // Their palettes speak of what is drawn next.
            self.selection = None;
        }
        // The tool looks at what it would draw, so that it says what it waits for.
        self.tell_tool(Input::Leave, PointerKind::Mouse);
        said.push_str(&say!("page-tool", tool = kind.word(), awaits = self.tool.awaits()));
        self.say(said);
    }

    /// Ends what was begun before something else is: a street or outline with as many points as it needs is drawn with
    /// those that are set, as its own step; anything else is given up. What is said of it, to be followed by what is said
    /// next; empty where nothing was begun.
    pub(super) fn end_begun(&mut self) -> String {
        let is_begun = self.tool.is_busy();
        self.said.clear();
        if self.tool.is_drawing() {
            self.tell_tool(Input::Leave, PointerKind::Mouse);
            self.tell_tool(Input::Key(Key::Enter), PointerKind::Mouse);
        }
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        let mut said = std::mem::take(&mut self.said);
        if !is_begun {
            return String::new();
        }
        said.push(' ');
        said
    }

    /// Chooses what the tools draw and paint with.
    pub fn choose(&mut self, choices: Choices) {
        self.choices = choices;
        self.changes.hand = true;
    }

    /// Deletes what is selected, whichever tool is chosen.
    pub fn delete(&mut self) {
        if !self.tool.is_busy() {
            let tool = std::mem::replace(&mut self.tool, ToolKind::Select.at_rest());
            self.tell_tool(Input::Key(Key::Delete), PointerKind::Keyboard);
            self.tool = tool;
        }
    }

    /// Whether a pen draws and fingers only move the view.
    #[must_use]
    pub const fn knows_pen(&self) -> bool {
        self.pointers.knows_pen()
    }

    /// Lets fingers draw again, until a pen is next put down.
    pub fn forget_pen(&mut self) {
        self.pointers.forget_pen();
        self.changes.hand = true;
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
                Meaning::Tool(input, at) if self.laying.is_some() => {
                    if let (Told::Up, Some(pointer)) = (input, at) {
                        self.press_on_picture(self.camera.plan_from_screen(pointer.at));
                    }
                }
                Meaning::Key(key, _) if self.key_on_picture(key) => {}
                Meaning::Tool(Told::GiveUp, _) => self.take_back_press(),
                Meaning::Tool(input, at) => {
                    if input == Told::Down {
                        self.awaits_words = false;
                        self.selected_before = self.selection;
                    }
                    let kind = at.map_or(PointerKind::Keyboard, |pointer| pointer.kind);
                    let input = input.on_plan(at, &self.camera);
                    self.tell_tool(input, kind);
                }
                Meaning::Key(key, modifiers) => self.key(key, modifiers),
            }
        }
    }

    /// Takes back what a press began that was none, such as that of the first of two fingers.
    ///
    /// Of a street or outline drawn point by point only the last is taken back. Where that was its first, nobody set it,
    /// and nothing is said of giving up. What the press selected is selected no more.
    fn take_back_press(&mut self) {
        let (said, was_drawing) = (self.said.clone(), self.tool.is_drawing());
        if self.tool.is_by_points() {
            self.tell_tool(Input::Key(Key::Escape), PointerKind::Touch);
            self.tell_tool(Input::Leave, PointerKind::Touch);
        } else {
            self.tell_tool(Input::GiveUp, PointerKind::Touch);
        }
        if was_drawing {
            self.said = said;
        }
        if self.tool.kind() == ToolKind::Select {
            self.selection = self.selected_before;
            self.drop_lost_selection();
        }
    }

    fn key(&mut self, key: Key, modifiers: Modifiers) {
        match key {
            Key::Left | Key::Right | Key::Up | Key::Down if modifiers.control || !self.nudge(key, modifiers.shift) => {
                self.move_crosshair(key, modifiers.shift);
            }
            Key::Left | Key::Right | Key::Up | Key::Down => {}
            Key::Enter if self.crosshair.is_some() => self.press_at_crosshair(modifiers),
            _ => self.tell_tool(Input::Key(key), PointerKind::Keyboard),
        }
    }

    /// Moves the crosshair by a hand's breadth of the screen, or finely; the view follows it.
    fn move_crosshair(&mut self, key: Key, is_fine: bool) {
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
        let within = ScreenPoint::new(
            within(moved.x_px, left_px, right_px),
            within(moved.y_px, top_px, bottom_px),
        );
        self.camera.pan(within.x_px - moved.x_px, within.y_px - moved.y_px);
        self.changes.view = true;
        self.crosshair = Some(point);
        let at = At {
            point,
            modifiers: Modifiers::default(),
        };
        self.tell_tool(Input::Move(at), PointerKind::Keyboard);
        let shown = self.shown_at_crosshair(point);
        self.say(shown);
    }

    /// In words what the drawing shows at the crosshair: the run that is drawn, why its point lands there, what is
    /// measured on the way; else what the tool waits for.
    fn shown_at_crosshair(&self, point: PlanPoint) -> String {
        let units = self.units();
        let hints = self.tool.hints();
        let mut shown = Vec::new();
        if let Some((length_m, degrees)) = super::shown::run(&hints) {
            let length = words::length(length_m, units);
            shown.push(say!("page-run-shown", length = length, degrees = degrees));
        }
        if let Some(snap) = hints.snap {
            shown.push(match snap.reason {
                Reason::Grid => point.in_words(units),
                reason => reason.words().to_owned(),
            });
        }
        if !hints.land.is_empty() {
            shown.push(words::area(shape::area_m2(&hints.land), units));
        }
        shown.extend(hints.words.map(|(_, said)| words::said(&said, units)));
        if shown.is_empty() {
            self.tool.awaits().to_owned()
        } else {
            shown.join(", ")
        }
    }

    /// Enter at the crosshair is a press and a release there; a second one in the same place ends a street.
    fn press_at_crosshair(&mut self, modifiers: Modifiers) {
        let Some(point) = self.crosshair else { return };
        if self.press_on_picture(point) {
            return;
        }
        let at = At { point, modifiers };
        let (before, said) = (self.tool.hints().points.len(), self.said.clone());
        self.tell_tool(Input::Down(at), PointerKind::Keyboard);
        self.tell_tool(Input::Up(at), PointerKind::Keyboard);
        let set = self.tool.hints().points.len();
        // What a finished step changed is said by it.
        if set != before && set > 0 && self.said == said {
            self.say(say!("page-point-set", number = set, awaits = self.tool.awaits()));
        }
    }

    /// Where the hand is: the crosshair, else the pointer, else the middle of the view.
    pub(super) fn place_of_hand(&self) -> PlanPoint {
        let (width_px, height_px) = self.camera.size_px();
        let pointer = self.last_pointer.map(|pointer| pointer.at);
        let at = pointer.unwrap_or(ScreenPoint::new(width_px / 2.0, height_px / 2.0));
        self.crosshair.unwrap_or_else(|| self.camera.plan_from_screen(at))
    }

    pub(super) fn tell_tool(&mut self, input: Input, kind: PointerKind) {
        let steps = self.with_sight(kind, |tool, sight| tool.respond(input, sight));
        self.forget_typed(input);
        self.changes.hand = true;
        for step in steps {
            self.carry_out(step);
        }
    }

    /// Lets the tool look at the plan.
    pub(super) fn with_sight<T>(&mut self, kind: PointerKind, look: impl FnOnce(&mut Tool, &Sight<'_>) -> T) -> T {
        let land_at = |point| lands::land_at(self.study.fabric(), point);
        let typed = self.typed();
        let sight = Sight {
            document: self.study.document(),
            alternative: self.study.alternative(),
            reach_mm: self.camera.mm_from_px(kind.reach_px()) as f64,
            land_at: &land_at,
            choices: &self.choices,
            drafts: &self.drafts,
            selection: self.selection,
            picked: &self.picked,
            typed,
            next_id: self.study.next_mark_id(),
        };
        look(&mut self.tool, &sight)
    }

    pub(super) fn carry_out(&mut self, step: Step) {
        if self.refuses_step(&step) {
            return;
        }
        match step {
            Step::Begin(label) => {
                self.at_start = Some(self.numbers());
                self.gesture_failed = false;
                let types = &self.study.document().building_types;
                let painted = self.choices.building_type.filter(|_| label == Label::PaintUse);
                let words = match painted.and_then(|id| types.get(&id)) {
                    Some(held) => say!("tools-step-paint-type", name = held.name),
                    None => label.words().to_owned(),
                };
                self.label = Some(label);
                self.label_words.clone_from(&words);
                if let Err(fault) = self.study.begin(words) {
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
                let label = self.label_words.clone();
                if let Some(link) = self.link_of(&label, self.study.history().preview())
                    && let Err(fault) = self.study.add_aside(vec![link])
                {
                    self.warn(fault.to_string());
                }
                let committed = self.study.commit();
                self.changes.plan = true;
                let before = self.at_start.take().unwrap_or_default();
                match committed {
                    Ok(Some(_)) => {
                        self.awaits_words = matches!(self.label, Some(Label::Draw(MarkKind::Note)));
                        self.say_what_changed(&label, &before);
                    }
                    Ok(None) => {}
                    Err(fault) => self.warn(fault.to_string()),
                }
            }
            Step::Cancel => {
                self.at_start = None;
                self.changes.plan = true;
                match self.study.cancel() {
                    Ok(()) => self.say(say!("page-given-up")),
                    Err(fault) => self.warn(fault.to_string()),
                }
            }
            Step::Select(selection) => {
                let is_new = selection != self.selection;
                self.selection = selection;
                self.picked.clear();
                if is_new && let Some(selection) = selection {
                    self.say(words::selected(&self.study, selection));
                }
            }
            Step::Pick(ids) => self.pick(ids),
        }
        self.drop_lost_selection();
    }

    /// A selection of something that is gone is no selection.
    pub(super) fn drop_lost_selection(&mut self) {
        self.leave_lost_alternative();
        self.leave_lost_picture();
        self.drop_lost_editors();
        self.drop_lost_answering();
        let held = self.selection.filter(|selection| {
            let mark = self.study.document().mark(self.study.alternative(), selection.mark());
            match (selection, mark) {
                (Selection::Vertex(_, index), Some(Mark::Street(street))) => *index < street.line.len(),
                (_, mark) => mark.is_some(),
            }
        });
        let (document, alternative) = (self.study.document(), self.study.alternative());
        let picked = self.picked.len();
        self.picked.retain(|id| document.mark(alternative, *id).is_some());
        if held != self.selection || picked != self.picked.len() {
            self.selection = held;
            self.changes.hand = true;
        }
    }
}
