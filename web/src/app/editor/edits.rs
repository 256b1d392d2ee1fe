//! What a change of an editor's line does: one step of the history, a sentence why not, or something opened or closed.

use hobnail_core::plan::document::TargetKind;
use hobnail_core::plan::validate::{Fault, FaultKind, Severity};
use hobnail_core::plan::validate::{building_type_faults, section_faults};
use hobnail_core::plan::{BuildingTypeId, Document, Edit, Mark, MarkId, StreetSectionId, UseMark};
use hobnail_core::say;

use super::lines::{Key, Line, Part};
use super::{App, Change, CutAt, Open, building_type, cut, land, profile, section, walking};
use crate::app::words::sentence_case;
use crate::input::PointerKind;
use crate::tools::{Input, Selection};

/// What the panel itself does.
pub const CLOSE: u8 = 0;
/// Opens the street section chosen in the palette.
pub const EDIT_SECTION: u8 = 1;
/// Opens the building type chosen in the palette.
pub const EDIT_BUILDING_TYPE: u8 = 2;
/// Opens the settings of walking, or closes them.
pub const WALKING: u8 = 3;
/// Makes a variant of what is open.
pub const DUPLICATE: u8 = 4;
/// Deletes what is open.
pub const DELETE: u8 = 5;
/// Shows the cut through the selected street.
pub const SHOW_CUT: u8 = 6;
/// Takes the cut away.
pub const CLOSE_CUT: u8 = 7;
/// Opens the section of the selected street.
pub const EDIT_SECTION_OF_STREET: u8 = 8;

/// How many things use an entry of a palette, in words; nothing where none does.
pub(super) struct Users(Option<String>);

impl App {
    /// Does what a line of an editor asks for. What can not be is refused, in a sentence at its line.
    pub fn edit(&mut self, key: Key, change: &Change) {
        if self.tool.is_busy() {
            self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        }
        self.editor.refused = None;
        self.changes.hand = true;
        if let Err(sentence) = self.try_edit(key, change) {
            self.say(sentence.clone());
            self.editor.refused = Some((key, sentence));
        }
    }

    fn try_edit(&mut self, key: Key, change: &Change) -> Result<(), String> {
        let document = self.study.document();
        let units = document.settings.units;
        let (label, edit) = match (key.part, self.editor.open, self.selection) {
            (Part::Panel, ..) => return self.press(key.field),
            (Part::Cut, ..) => {
                if let (Some(cut), Change::Text(text)) = (&mut self.editor.cut, change) {
                    cut.along_thousandths = text.parse().unwrap_or(cut.along_thousandths);
                }
                return Ok(());
            }
            (Part::Section | Part::Strip, Some(Open::Section(id)), _) => {
                let before = document.street_sections.get(&id).ok_or_else(gone)?;
                let after = section::changed(before, key, change, units)?;
                not_grave(&section_faults(&after), &section_faults(before))?;
                let before = before.clone();
                self.follow_strip(key, after.strips.len());
                (say!("page-step-section"), section_edit(id, Some(before), Some(after)))
            }
            (Part::BuildingType | Part::Story, Some(Open::BuildingType(id)), _) => {
                let before = document.building_types.get(&id).ok_or_else(gone)?;
                let after = building_type::changed(before, key, change, units)?;
                not_grave(&building_type_faults(&after), &building_type_faults(before))?;
                let edit = type_edit(id, Some(before.clone()), Some(after));
                (say!("page-step-building-type"), edit)
            }
            (Part::Walking, ..) => {
                let edit = Edit::Settings {
                    before: Box::new(document.settings.clone()),
                    after: Box::new(walking::changed(&self.study, key, change)?),
                };
                (say!("page-step-walking"), edit)
            }
            (Part::Grade, ..) => {
                let edit = Edit::Settings {
                    before: Box::new(document.settings.clone()),
                    after: Box::new(profile::changed(document, change)?),
                };
                (say!("heights-limit-step"), edit)
            }
            (Part::Side, _, Some(Selection::Use(_))) if key.field == land::OPEN => {
                let is_open = self.editor.side == Some(key.index);
                self.editor.side = (!is_open).then_some(key.index);
                return Ok(());
            }
            (Part::Land | Part::Portion | Part::Side, _, Some(Selection::Use(id))) => {
                let after = land::changed(&self.study, id, key, change)?;
                (
                    say!("page-step-use"),
                    Edit::mark(document, self.study.alternative(), id, Some(Mark::Use(after))),
                )
            }
            _ => return Err(gone()),
        };
        self.take_step(label, edit);
        Ok(())
    }

    /// The keyboard goes with a strip that was moved, and stays in the row where one was removed.
    fn follow_strip(&mut self, key: Key, count: usize) {
        let index = match key.field {
            section::TO_LEFT => key.index.saturating_sub(1),
            section::TO_RIGHT => key.index.saturating_add(1),
            section::REMOVE => key.index.min(count.saturating_sub(1) as u16),
            _ => return,
        };
        if key.part == Part::Strip {
            self.editor.focus = Some(Key { index, ..key });
        }
    }

    fn take_step(&mut self, label: &str, edit: Edit) {
        if edit.changes_nothing() {
            return;
        }
        self.step_with(label, vec![edit]);
        self.drop_lost_selection();
    }

    fn press(&mut self, what: u8) -> Result<(), String> {
        let first = Key::panel(CLOSE);
        match what {
            CLOSE => {
                let back = match self.editor.open.take() {
                    Some(Open::BuildingType(_)) => EDIT_BUILDING_TYPE,
                    Some(Open::Walking) => WALKING,
                    _ => EDIT_SECTION,
                };
                self.editor.focus = Some(Key::panel(back));
            }
            EDIT_SECTION => self.open_in_editor(Open::Section(self.choices.section)),
            EDIT_BUILDING_TYPE => {
                let chosen = self.choices.building_type.map(Open::BuildingType);
                chosen.into_iter().for_each(|chosen| self.open_in_editor(chosen));
            }
            EDIT_SECTION_OF_STREET => {
                let section = self.selected_street().and_then(|id| {
                    let mark = self.study.document().mark(self.study.alternative(), id)?;
                    mark.as_street().map(|street| street.section)
                });
                self.open_in_editor(Open::Section(section.ok_or_else(gone)?));
            }
            WALKING if self.editor.open == Some(Open::Walking) => return self.press(CLOSE),
            WALKING => self.open_in_editor(Open::Walking),
            DUPLICATE => {
                self.duplicate()?;
                self.editor.focus = Some(first);
            }
            DELETE => self.delete_open()?,
            SHOW_CUT => {
                self.cut_through(self.selected_street().ok_or_else(gone)?);
                self.editor.focus = Some(super::cut_drawing::SLIDER);
            }
            CLOSE_CUT => {
                self.close_cut();
                self.editor.focus = Some(Key::panel(SHOW_CUT));
            }
            _ => {}
        }
        Ok(())
    }

    /// Cuts a street where most is to be seen.
    pub(super) fn cut_through(&mut self, street: MarkId) {
        if self.cut_street() != Some(street) {
            self.editor.cut = Some(CutAt {
                street,
                along_thousandths: cut::best_place(&self.study, street),
            });
            self.changes.hand = true;
        }
    }

    fn open_in_editor(&mut self, open: Open) {
        self.editor.open = Some(open);
        self.editor.focus = Some(Key::panel(CLOSE));
    }

    pub(super) fn selected_street(&self) -> Option<MarkId> {
        match self.selection {
            Some(Selection::Street(id) | Selection::Vertex(id, _)) => Some(id),
            _ => None,
        }
    }

    fn duplicate(&mut self) -> Result<(), String> {
        let document = self.study.document();
        let (opened, edit) = match self.editor.open {
            Some(Open::Section(id)) => {
                let mut variant = document.street_sections.get(&id).ok_or_else(gone)?.clone();
                variant.name = say!("page-editor-variant", name = variant.name);
                let last = document.street_sections.keys().next_back().map_or(0, |id| id.0);
                let id = StreetSectionId(last.checked_add(1).ok_or_else(gone)?);
                (Open::Section(id), section_edit(id, None, Some(variant)))
            }
            Some(Open::BuildingType(id)) => {
                let mut variant = document.building_types.get(&id).ok_or_else(gone)?.clone();
                variant.name = say!("page-editor-variant", name = variant.name);
                let last = document.building_types.keys().next_back().map_or(0, |id| id.0);
                let id = BuildingTypeId(last.checked_add(1).ok_or_else(gone)?);
                (Open::BuildingType(id), type_edit(id, None, Some(variant)))
            }
            _ => return Err(gone()),
        };
        self.take_step(say!("page-step-duplicate"), edit);
        match opened {
            Open::Section(id) => self.choices.section = id,
            Open::BuildingType(id) => self.choices.building_type = Some(id),
            Open::Walking => {}
        }
        self.editor.open = Some(opened);
        Ok(())
    }

    fn delete_open(&mut self) -> Result<(), String> {
        let document = self.study.document();
        let (users, count, edit) = match self.editor.open {
            Some(Open::Section(id)) => (
                users_of_section(document, id),
                document.street_sections.len(),
                section_edit(id, document.street_sections.get(&id).cloned(), None),
            ),
            Some(Open::BuildingType(id)) => (
                users_of_type(document, id),
                document.building_types.len(),
                type_edit(id, document.building_types.get(&id).cloned(), None),
            ),
            _ => return Err(gone()),
        };
        if let Some(sentence) = users.sentence() {
            return Err(sentence);
        }
        if count < 2 {
            return Err(refuse(say!("page-editor-last")));
        }
        self.take_step(say!("page-step-delete-entry"), edit);
        Ok(())
    }
}

fn section_edit(
    id: StreetSectionId,
    before: Option<hobnail_core::plan::StreetSection>,
    after: Option<hobnail_core::plan::StreetSection>,
) -> Edit {
    Edit::StreetSection { id, before, after }
}

fn type_edit(
    id: BuildingTypeId,
    before: Option<hobnail_core::plan::BuildingType>,
    after: Option<hobnail_core::plan::BuildingType>,
) -> Edit {
    Edit::BuildingType {
        id,
        before: before.map(Box::new),
        after: after.map(Box::new),
    }
}

/// Refuses what a document can not use or what is more than a whole, where it was not so before.
fn not_grave(after: &[Fault], before: &[Fault]) -> Result<(), String> {
    let is_grave = |fault: &&Fault| {
        let is_refused = matches!(fault.kind, FaultKind::OverWhole(_)) || fault.severity() == Severity::CannotBeUsed;
        is_refused && !before.contains(fault)
    };
    after
        .iter()
        .find(is_grave)
        .map_or(Ok(()), |fault| Err(fault_words(fault)))
}

/// A fault as a sentence.
pub(super) fn fault_words(fault: &Fault) -> String {
    refuse(&fault.kind.to_string())
}

/// A reason as a sentence.
pub(super) fn refuse(words: &str) -> String {
    sentence_case(words) + "."
}

fn gone() -> String {
    refuse(say!("page-editor-gone"))
}

/// The buttons for an entry of a palette.
pub(super) fn add_palette_lines(lines: &mut Vec<Line>, users: Users) {
    lines.push(Line::command(Key::panel(DUPLICATE), say!("page-editor-duplicate")));
    let sentence = users.sentence();
    lines.push(
        Line::command(Key::panel(DELETE), say!("page-editor-delete"))
            .off_if(sentence.is_some())
            .with_hint(sentence.unwrap_or_default()),
    );
}

impl Users {
    fn counted(counts: impl IntoIterator<Item = Option<String>>) -> Self {
        let held = counts.into_iter().flatten();
        Self(held.reduce(|first, second| say!("page-and", first = first, second = second)))
    }

    fn sentence(&self) -> Option<String> {
        let users = self.0.as_ref()?;
        Some(refuse(&say!("page-editor-used", users = users)))
    }
}

fn all_marks(document: &Document) -> impl Iterator<Item = &Mark> {
    document.alternatives.values().flat_map(|held| held.marks.values())
}

/// The streets of all alternatives that are built to a section.
pub(super) fn users_of_section(document: &Document, id: StreetSectionId) -> Users {
    let streets = all_marks(document).filter_map(Mark::as_street);
    let count = streets.filter(|street| street.section == id).count();
    Users::counted([(count > 0).then(|| say!("count-streets", count = count))])
}

/// The land of all alternatives that holds a building type, and lines of the program that ask for it.
pub(super) fn users_of_type(document: &Document, id: BuildingTypeId) -> Users {
    let is_of_use = |held: &UseMark| {
        held.program.iter().any(|portion| portion.building_type == id)
            || held.sides.iter().any(|side| side.building_type == Some(id))
    };
    let (mut blocks, mut areas) = (0, 0);
    for mark in all_marks(document) {
        match mark {
            Mark::Use(held) => blocks += usize::from(is_of_use(held)),
            Mark::SoftArea(area) => {
                let mut portions = area.program.iter();
                areas += usize::from(portions.any(|portion| portion.building_type == id));
            }
            _ => {}
        }
    }
    let asks = |what: TargetKind| what == TargetKind::HomesOf(id);
    let targets = document.program.iter().filter(|target| asks(target.what)).count();
    Users::counted([
        (blocks > 0).then(|| say!("page-count-blocks", count = blocks)),
        (areas > 0).then(|| say!("page-count-soft-areas", count = areas)),
        (targets > 0).then(|| say!("page-count-program-lines", count = targets)),
    ])
}
