//! The editors: street sections, building types, the use of a piece of land, the settings of walking, and a cut through
//! a street.
//!
//! Each editor is a list of [`Line`]s made from the document as it is, and a function that says what one cell of the
//! document is after a line was changed. So the page shows them all with one component, every change is one step of the
//! history, and what is typed is refused in one place.

pub mod cut;
pub mod drawn;
pub mod lines;
pub mod quantity;

mod allowance;
mod beside;
mod building_type;
mod cut_drawing;
pub mod edits;
mod land;
mod profile;
mod section;
mod walking;

use hobnail_core::plan::{BuildingTypeId, Mark, MarkId, StreetSectionId};
use hobnail_core::say;

use super::App;
use super::places::Place;
use crate::tools::{Hints, Selection, ToolKind};
use drawn::Drawing;
use lines::{Key, Line, Part};

pub use section::small_drawing;

/// What was done to a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// This was typed.
    Text(String),
    /// Less or more was pressed.
    Step(i8),
    /// This was chosen of its options; 1 for a box that was ticked, 0 for one that was cleared.
    Pick(usize),
}

/// What is edited.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Open {
    /// A street section.
    Section(StreetSectionId),
    /// A building type.
    BuildingType(BuildingTypeId),
    /// The settings of walking.
    Walking,
}

/// A cut through a street.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct CutAt {
    street: MarkId,
    along_thousandths: u16,
}

/// What the editors have open, what they refused, and what they speak of.
#[derive(Clone, Debug, Default)]
pub struct State {
    open: Option<Open>,
    /// The side of the selected land that stands open.
    side: Option<u16>,
    cut: Option<CutAt>,
    refused: Option<(Key, String)>,
    pointed: Option<Key>,
    focus: Option<Key>,
}

/// What the editor's panel shows; without lines there is none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EditorShown {
    /// What is edited, for tests and style: `section`, `building-type`, `walking`, `land`, `street`.
    pub name: &'static str,
    /// A drawing on top.
    pub drawing: Option<Drawing>,
    /// The lines.
    pub lines: Vec<Line>,
    /// A drawing below the first.
    pub profile: Option<Drawing>,
}

impl EditorShown {
    /// Whether it stands alone beside the rail, and not with what else is said of the selection.
    #[must_use]
    pub fn is_apart(&self) -> bool {
        !matches!(self.name, "" | "street" | "land")
    }
}

/// What the page shows of the editors.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EditorsShown {
    /// Beside the rail.
    pub editor: EditorShown,
    /// The cut through a street, over the foot of the drawing.
    pub cut: EditorShown,
}

impl App {
    /// What the editors show.
    #[must_use]
    pub fn editors(&self) -> EditorsShown {
        let mut shown = EditorsShown {
            editor: self.open_editor().unwrap_or_default(),
            cut: self.cut_shown().unwrap_or_default(),
        };
        if let Some((key, sentence)) = &self.editor.refused {
            let lines = shown.editor.lines.iter_mut().chain(&mut shown.cut.lines);
            for line in lines.filter(|line| line.key == *key) {
                line.refused.clone_from(sentence);
            }
        }
        shown
    }

    fn open_editor(&self) -> Option<EditorShown> {
        let document = self.study.document();
        match (self.editor.open, self.selection) {
            (Some(Open::Section(id)), _) => section::shown(document, id),
            (Some(Open::BuildingType(id)), _) => building_type::shown(document, id),
            (Some(Open::Walking), _) => Some(walking::shown(&self.study)),
            (None, Some(Selection::Use(id))) if self.tool.kind() == ToolKind::Select => {
                land::shown(&self.study, id, self.editor.side)
            }
            (None, Some(Selection::Street(id) | Selection::Vertex(id, _))) if self.tool.kind() == ToolKind::Select => {
                self.street_shown(id)
            }
            _ => None,
        }
    }

    /// What can be done with a selected street.
    fn street_shown(&self, id: MarkId) -> Option<EditorShown> {
        let document = self.study.document();
        let street = document.mark(self.study.alternative(), id)?.as_street()?;
        let held = document.street_sections.get(&street.section)?;
        let mut lines = vec![
            Line::title(
                0,
                held.name.clone() + ", " + &section::width(held.right_of_way_mm(), self.units()),
            ),
            Line::command(Key::panel(edits::SHOW_CUT), say!("page-street-cut")),
            Line::command(Key::panel(edits::EDIT_SECTION_OF_STREET), say!("page-street-section")),
        ];
        let profile = profile::shown(document, street);
        let profile = profile.map(|(more, drawing)| {
            lines.extend(more);
            drawing
        });
        Some(EditorShown {
            name: "street",
            drawing: self.editor.cut.is_none().then(|| section::drawing(held, self.units())),
            lines,
            profile,
        })
    }

    fn cut_shown(&self) -> Option<EditorShown> {
        let CutAt {
            street,
            along_thousandths,
        } = self.editor.cut?;
        cut_drawing::shown(&self.study, street, along_thousandths)
    }

    /// The street that is cut.
    #[must_use]
    pub fn cut_street(&self) -> Option<MarkId> {
        self.editor.cut.map(|cut| cut.street)
    }

    /// Lets the cut that stands open run through a street that is selected now and was not before.
    pub(super) fn cut_anew(&mut self, selected_before: Option<Selection>) {
        let is_cut = self.editor.cut.is_some() && self.selection != selected_before;
        if let Some(street) = self.selected_street().filter(|_| is_cut) {
            self.cut_through(street);
        }
    }

    /// The line of the drawing along which the cut runs.
    #[must_use]
    pub fn cut_line(&self) -> Option<Place> {
        let CutAt {
            street,
            along_thousandths,
        } = self.editor.cut?;
        let cut = cut::through(&self.study, street, along_thousandths)?;
        Some(Place {
            lines: vec![cut.line_m()],
            ..Place::default()
        })
    }

    /// The side of the selected land that the editor speaks of, as a hint on the drawing.
    #[must_use]
    pub fn pointed_side(&self) -> Option<Hints> {
        let key = self.editor.pointed.filter(|key| key.part == Part::Side)?;
        let Some(Selection::Use(id)) = self.selection else {
            return None;
        };
        let side = land::side(&self.study, id, key.index)?;
        Some(Hints {
            side: Some(side),
            ..Hints::default()
        })
    }

    /// Notes which line the pointer or the focus is in.
    pub fn point_line(&mut self, key: Option<Key>) {
        let key = key.filter(|key| key.part == Part::Side);
        if self.editor.pointed != key {
            self.editor.pointed = key;
            self.changes.hand = true;
        }
    }

    /// The line that the keyboard is to go to, once.
    pub const fn take_focus(&mut self) -> Option<Key> {
        self.editor.focus.take()
    }

    /// Takes the cut away.
    pub fn close_cut(&mut self) {
        self.editor.cut = None;
        self.changes.hand = true;
    }

    /// Closes the editor beside the rail.
    pub(super) fn leave_editor(&mut self) {
        self.editor.open = None;
        self.editor.refused = None;
    }

    /// Forgets what stood open, as for another plan.
    pub(super) fn close_editors(&mut self) {
        self.editor = State::default();
    }

    /// Closes what has gone from the document, and chooses again what the palettes have lost.
    pub(super) fn drop_lost_editors(&mut self) {
        let document = self.study.document();
        let is_there = match self.editor.open {
            Some(Open::Section(id)) => document.street_sections.contains_key(&id),
            Some(Open::BuildingType(id)) => document.building_types.contains_key(&id),
            Some(Open::Walking) | None => true,
        };
        let first = super::first_choices(document);
        if !document.street_sections.contains_key(&self.choices.section) {
            self.choices.section = first.section;
            self.changes.hand = true;
        }
        let chosen = self.choices.building_type;
        if chosen.is_some_and(|id| !document.building_types.contains_key(&id)) {
            self.choices.building_type = first.building_type;
            self.changes.hand = true;
        }
        let has_street = self.editor.cut.is_none_or(|cut| {
            let mark = document.mark(self.study.alternative(), cut.street);
            mark.and_then(Mark::as_street).is_some()
        });
        if !is_there {
            self.editor.open = None;
            self.changes.hand = true;
        }
        if !has_street {
            self.editor.cut = None;
            self.changes.hand = true;
        }
    }
}

#[cfg(test)]
mod tests;
