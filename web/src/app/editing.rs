//! What is typed while drawing, and what is done to a selection from its panel.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::editing::rounding::corner;
use hobnail_core::plan::{Edit, Mark, MarkId, PlanVector};
use hobnail_core::say;

use super::editor::quantity::signed_number;
use super::{App, words};
use crate::input::{Key, Modifiers, PointerKind};
use crate::tools::drawing::Drawing;
use crate::tools::guides::Typed;
use crate::tools::select::commands::{self, Command};
use crate::tools::{At, Input, Label, Selection, Step, Tool, ToolKind, shape};

/// What the panel of the selection shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SelectionShown {
    /// What is selected, in words.
    pub words: String,
    /// What can be done to it.
    pub commands: Vec<Command>,
    /// The radius of the selected corner as its field holds it, and the largest that fits, in words.
    pub radius: Option<(String, String)>,
}

/// A field whose number belongs to drawing and editing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Length of a block.
    BlockLength,
    /// Depth of a block.
    BlockDepth,
    /// How far a copy is set off.
    Offset,
    /// How far a selection is turned.
    Turn,
    /// The radius of the selected corner.
    Radius,
}

impl Field {
    /// What its field is called on the page.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::BlockLength => "block-length",
            Self::BlockDepth => "block-depth",
            Self::Offset => "offset",
            Self::Turn => "turn",
            Self::Radius => "radius",
        }
    }

    /// What it holds, as its field shows it.
    #[must_use]
    pub fn text(self, drawing: &Drawing, units: UnitSystem) -> String {
        let [length_mm, depth_mm] = drawing.block_mm;
        let mm = match self {
            Self::BlockLength => length_mm,
            Self::BlockDepth => depth_mm,
            Self::Offset => drawing.offset_mm,
            // Degrees are written as if they were meters.
            Self::Turn => return words::length_field(f64::from(drawing.turn_millidegrees), UnitSystem::Metric),
            Self::Radius => return String::new(),
        };
        words::length_field(f64::from(mm), units)
    }
}

impl App {
    /// Marks that are selected together; empty where at most one thing is.
    #[must_use]
    pub fn picked(&self) -> &[MarkId] {
        &self.picked
    }

    /// Selects marks together; one street or place alone is selected as if it had been pressed.
    pub(super) fn pick(&mut self, ids: Vec<MarkId>) {
        let document = self.study.document();
        let alone = match ids.as_slice() {
            [id] => match document.mark(self.study.alternative(), *id) {
                Some(Mark::Street(_)) => Some(Selection::Street(*id)),
                Some(Mark::Use(_)) => Some(Selection::Use(*id)),
                Some(mark) => shape::of(mark).map(|_| Selection::Place(*id)),
                None => None,
            },
            _ => None,
        };
        self.selection = alone;
        self.picked = if alone.is_some() { Vec::new() } else { ids };
        self.changes.hand = true;
        if let Some(words) = self.selected_words() {
            self.say(words);
        }
    }

    /// What is selected, in words.
    #[must_use]
    pub fn selected_words(&self) -> Option<String> {
        if let Some(selection) = self.selection {
            return Some(words::selected(&self.study, selection));
        }
        let [streets, uses, others] = self.picked_counts();
        let others = uses + others;
        (streets + others > 0).then(|| words::together(streets, others))
    }

    /// How many of the marks selected together are streets, uses of land, and others.
    fn picked_counts(&self) -> [usize; 3] {
        let (document, alternative) = (self.study.document(), self.study.alternative());
        let mut counts = [0; 3];
        for mark in self.picked.iter().filter_map(|id| document.mark(alternative, *id)) {
            let [streets, uses, others] = &mut counts;
            match mark {
                Mark::Street(_) => *streets += 1,
                Mark::Use(_) => *uses += 1,
                _ => *others += 1,
            }
        }
        counts
    }

    /// What the panel of the selection shows; `None` where it has nothing to offer.
    #[must_use]
    pub fn selection_shown(&self) -> Option<SelectionShown> {
        if self.tool.kind() != ToolKind::Select {
            return None;
        }
        let (marks, streets) = match self.selection {
            Some(Selection::Use(_)) => return None,
            Some(Selection::Street(_) | Selection::Vertex(..)) => (1, 1),
            Some(Selection::Place(_)) => (1, 0),
            None => match self.picked_counts() {
                // The use of land goes with its block.
                [0, _, 0] => return None,
                [streets, _, others] => (streets + others, streets),
            },
        };
        let words = self.selected_words()?;
        let all = Command::ALL.into_iter();
        Some(SelectionShown {
            words,
            commands: all.filter(|command| command.fits(marks, streets)).collect(),
            radius: self.corner_radius(),
        })
    }

    fn corner_radius(&self) -> Option<(String, String)> {
        let Some(Selection::Vertex(id, index)) = self.selection else {
            return None;
        };
        let street = self.study.document().mark(self.study.alternative(), id)?.as_street()?;
        let found = corner(&street.line, index, false)?;
        let units = self.units();
        let held_mm = f64::from(street.line.get(index)?.corner_radius_mm);
        Some((
            words::length_field(held_mm, units),
            words::length(found.largest_mm / 1000.0, units),
        ))
    }

    /// Does a command to what is selected.
    pub fn command(&mut self, command: Command) {
        if !self.tool.is_busy() {
            self.tell_tool(Input::Key(Key::Character(command.key())), PointerKind::Keyboard);
        }
    }

    /// Picks up what is selected, to be moved.
    pub fn pick_up(&mut self) {
        if !self.tool.is_busy() {
            self.tell_tool(Input::Key(Key::Character('m')), PointerKind::Keyboard);
        }
    }

    /// Takes the number in a field; what is no number leaves what was.
    pub fn type_into(&mut self, field: Field, text: &str) {
        let mut choices = self.choices;
        let drawing = &mut choices.drawing;
        let length_mm = words::typed_length_mm(text, self.units()).map(|length_mm| length_mm.round() as u32);
        match (field, length_mm) {
            (Field::BlockLength, Some(mm)) => drawing.block_mm[0] = mm,
            (Field::BlockDepth, Some(mm)) => drawing.block_mm[1] = mm,
            (Field::Offset, Some(mm)) => drawing.offset_mm = mm,
            (Field::Turn, _) => {
                if let Some(degrees) = words::typed_length_mm(text, UnitSystem::Metric) {
                    drawing.turn_millidegrees = degrees.round() as u32;
                }
            }
            (Field::Radius, mm) => self.round_corner(mm.unwrap_or(0)),
            (_, None) => {}
        }
        self.choose(choices);
    }

    /// Gives the selected corner a radius, at most the largest that fits.
    fn round_corner(&mut self, radius_mm: u32) {
        let Some(Selection::Vertex(id, index)) = self.selection else {
            return;
        };
        let (document, alternative) = (self.study.document(), self.study.alternative());
        let Some(mut street) = document.mark(alternative, id).and_then(Mark::as_street).cloned() else {
            return;
        };
        let largest_mm = corner(&street.line, index, false).map_or(0.0, |corner| corner.largest_mm);
        if let Some(vertex) = street.line.get_mut(index) {
            vertex.corner_radius_mm = radius_mm.min(largest_mm as u32);
        }
        let edit = Edit::mark(document, alternative, id, Some(Mark::Street(street)));
        self.gesture(vec![
            Step::Begin(Label::RoundCorner),
            Step::Change(vec![edit]),
            Step::Commit,
        ]);
    }

    fn gesture(&mut self, steps: Vec<Step>) {
        if self.tool.is_busy() {
            return;
        }
        for step in steps {
            self.carry_out(step);
        }
        self.changes.hand = true;
    }

    /// Shifts what is selected by a tenth of a meter or a foot, or by ten times as much; whether there was anything.
    pub(super) fn nudge(&mut self, key: Key, is_far: bool) -> bool {
        if !self.is_at_rest() {
            return false;
        }
        let step_mm = match (self.units(), is_far) {
            (UnitSystem::Metric, false) => 100,
            (UnitSystem::Metric, true) => 1_000,
            (UnitSystem::UsCustomary, false) => 305,
            (UnitSystem::UsCustomary, true) => 3_048,
        };
        let by = match key {
            Key::Left => PlanVector::new(-step_mm, 0),
            Key::Right => PlanVector::new(step_mm, 0),
            Key::Up => PlanVector::new(0, step_mm),
            _ => PlanVector::new(0, -step_mm),
        };
        let steps = self.with_sight(PointerKind::Keyboard, |_, sight| commands::nudge(by, sight));
        let Some(steps) = steps else { return false };
        self.gesture(steps);
        true
    }

    /// The length and the bearing as they are typed.
    #[must_use]
    pub const fn typed_words(&self) -> &[String; 2] {
        &self.typed_words
    }

    /// Whether the next point can be given by a length or a bearing.
    #[must_use]
    pub const fn takes_length(&self) -> bool {
        matches!(&self.tool, Tool::Street(state) if state.takes_length())
    }

    /// What was typed, as the tools take it: a bearing with a sign is counted from the run before.
    pub(super) fn typed(&self) -> Typed {
        let [length, bearing] = &self.typed_words;
        let bearing = bearing
            .trim()
            .trim_start_matches('<')
            .replace('−', "-")
            .replace(',', ".");
        Typed {
            length_mm: words::typed_length_mm(length, self.units()),
            bearing_degrees: signed_number(&bearing).filter(|degrees| degrees.abs() <= 360.0),
            is_turn: bearing.starts_with(['+', '-']),
        }
    }

    /// Takes what is typed for the next point and shows it.
    pub fn type_next(&mut self, place: usize, text: String) {
        if let Some(held) = self.typed_words.get_mut(place) {
            *held = text;
        }
        let at = At {
            point: self.place_of_hand(),
            modifiers: Modifiers::default(),
        };
        self.tell_tool(Input::Move(at), PointerKind::Keyboard);
    }

    /// Sets the point that was typed, or clears what was. What is neither length nor bearing is said and cleared.
    pub fn end_typing(&mut self, is_set: bool) {
        let is_empty = self.typed_words.iter().all(String::is_empty);
        let is_understood = self.typed() != Typed::default();
        if is_set && (is_empty || is_understood) {
            let [length, _] = self.typed_words.clone();
            self.type_next(0, length);
            self.tell_tool(Input::Key(Key::Enter), PointerKind::Keyboard);
            // The crosshair goes along, so that Enter there ends the street as it does after any other point.
            if self.crosshair.is_some() && is_understood {
                self.crosshair = self.tool.hints().points.last().copied().or(self.crosshair);
            }
            return;
        }
        if is_set {
            self.say(say!("page-typed-not-understood"));
        }
        self.typed_words = Default::default();
        self.type_next(0, String::new());
    }

    /// What was typed is spent once its point is set or the street is given up.
    pub(super) fn forget_typed(&mut self, input: Input) {
        if matches!(input, Input::Down(_) | Input::GiveUp | Input::Key(_)) {
            self.typed_words = Default::default();
        }
    }

    /// What the tool measures, in words.
    #[must_use]
    pub fn measured_words(&self) -> Option<String> {
        let (_, said) = self.tool.hints().words?;
        let has_numbers = !said.given.is_empty();
        has_numbers.then(|| words::sentence_case(&words::said(&said, self.units())))
    }
}

#[cfg(test)]
mod tests;
