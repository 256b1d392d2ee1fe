//! What is typed or chosen about the plan and what is drawn on it, as steps of one edit each; and where a person begins.

use hobnail_core::plan::document::Phase;
use hobnail_core::plan::{Edit, Mark, MarkId, MarkKind, PhaseId, PlaceKind};
use hobnail_core::say;

use super::fields::{self, Field, FieldShown, phase_of};
use super::{App, counted_land, lands, program, words};
use crate::browser::words::lowercase;
use crate::canvas::scene_of::meters;
use crate::input::PointerKind;
use crate::tools::drafts::{self, Drafts};
use crate::tools::{Input, ToolKind, shape};

/// What can be typed or chosen now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Forms {
    /// What the details speak of; empty for nothing.
    pub title: String,
    /// Its size or what it is for, in words.
    pub about: String,
    /// Its fields.
    pub details: Vec<FieldShown>,
    /// Whether it is drawn and selected, rather than what is drawn next.
    pub is_selected: bool,
    /// Which of the palette of areas is drawn, and which of the palette of places.
    pub chosen: [usize; 2],
    /// The plan's heading and phases.
    pub plan: Vec<FieldShown>,
    /// The alternative in view.
    pub alternative: Vec<FieldShown>,
    /// The typed program, while it stands open.
    pub program: Vec<FieldShown>,
}

impl App {
    /// What can be typed or chosen now.
    #[must_use]
    pub fn forms(&self) -> Forms {
        let document = self.study.document();
        let mut forms = Forms {
            chosen: self.drafts.chosen,
            plan: fields::of_plan(document),
            alternative: document
                .alternatives
                .get(&self.study.alternative())
                .map(fields::of_alternative)
                .unwrap_or_default(),
            program: if self.is_program_open {
                program::lines(&self.study)
            } else {
                Vec::new()
            },
            ..Forms::default()
        };
        let kind = self.tool.kind();
        let site = &document.site.boundary;
        let sized = |outline: &[hobnail_core::plan::PlanPoint]| words::area(shape::area_m2(outline), self.units());
        if let Some(mark) = self.selected_mark() {
            forms.is_selected = true;
            fields::title(mark).clone_into(&mut forms.title);
            forms.details = fields::of_mark(document, mark);
            if let Some(hobnail_core::plan::Footprint::Area(outline)) = shape::of(mark) {
                forms.about = sized(&outline);
            }
            if let Some(Some(_)) = mark.beside() {
                let lots = counted_land::lots_beside(&self.study, mark);
                let beside = say!("page-lots-beside", count = lots.len());
                let room = counted_land::without_room(&self.study, lots.iter().map(|(_, lot)| *lot));
                let parts = [forms.about, beside, room.unwrap_or_default()];
                let said: Vec<String> = parts.into_iter().filter(|words| !words.is_empty()).collect();
                forms.about = said.join(". ");
            }
        } else if let [first, others @ ..] = self.marks_together().as_slice() {
            forms.details = fields::of_marks(document, first, others);
            say!("page-title-together").clone_into(&mut forms.title);
            if self.selection_shown().is_none() {
                // Nothing else stands there that says what it is.
                forms.about = self.selected_words().unwrap_or_default();
            }
            forms.is_selected = !forms.details.is_empty() || !forms.about.is_empty();
        } else if let Some(draft) = self.draft(kind) {
            fields::title(draft).clone_into(&mut forms.title);
            forms.details = fields::of_mark(document, draft);
            // The palette itself says the kind.
            forms.details.retain(|shown| shown.field != Field::Kind);
        } else if kind == ToolKind::Area {
            say!("page-site").clone_into(&mut forms.title);
            forms.about = if site.is_empty() {
                say!("page-site-none").to_owned()
            } else {
                sized(site)
            };
        }
        if kind == ToolKind::Place && !forms.is_selected && self.drafts.place.kind() == MarkKind::Place {
            let has_land = fields::Value::Flag(self.drafts.place_has_land);
            forms.details.insert(0, Field::HasLand.shown(has_land));
        }
        forms
    }

    /// What the area and place tools draw next.
    #[must_use]
    pub const fn drafts(&self) -> &Drafts {
        &self.drafts
    }

    pub(super) fn selected_mark(&self) -> Option<&Mark> {
        let id = self.selection?.mark();
        self.study.document().mark(self.study.alternative(), id)
    }

    /// The marks that are selected together, one first that has all fields where there is any.
    fn marks_together(&self) -> Vec<&Mark> {
        let mut marks: Vec<&Mark> = Vec::new();
        for id in self.spoken_of() {
            marks.extend(self.study.document().mark(self.study.alternative(), id));
            if let [first, .., last] = marks.as_mut_slice()
                && fields::is_left_out(first)
            {
                std::mem::swap(first, last);
            }
        }
        marks
    }

    /// The marks whose fields are shown.
    fn spoken_of(&self) -> Vec<MarkId> {
        match self.selection {
            Some(selection) => vec![selection.mark()],
            None if self.tool.kind() == ToolKind::Select => self.picked.clone(),
            None => Vec::new(),
        }
    }

    const fn draft(&self, kind: ToolKind) -> Option<&Mark> {
        match kind {
            ToolKind::Area => self.drafts.area.as_ref(),
            ToolKind::Place => Some(&self.drafts.place),
            _ => None,
        }
    }

    /// Chooses what the area tool or the place tool draws next, by its place in the palette.
    pub fn choose_draft(&mut self, is_area: bool, place: usize) {
        let mut said = self.end_begun();
        if is_area {
            self.drafts.area = drafts::area(place, self.study.document());
        } else {
            self.drafts.place = drafts::place(place);
            self.drafts.place_has_land = false;
            let drawn = self.study.document().alternatives.get(&self.study.alternative());
            if let (Mark::Note(note), Some(drawn)) = (&mut self.drafts.place, drawn) {
                note.author.clone_from(&drawn.table);
                // The room is the same as at the last remark.
                note.present = super::remarks::numbered(drawn)
                    .last()
                    .map_or(0, |(.., last)| last.present);
            }
        }
        self.drafts.chosen[usize::from(!is_area)] = place;
        self.selection = None;
        let kind = if is_area { ToolKind::Area } else { ToolKind::Place };
        self.tool = kind.at_rest();
        // The tool looks at what it draws, and says what it waits for.
        self.tell_tool(Input::Leave, PointerKind::Mouse);
        said.push_str(self.tool.awaits());
        self.say(said);
    }

    /// Opens the typed program, or closes it.
    pub fn show_program(&mut self, is_open: bool) {
        self.is_program_open = is_open;
        self.changes.hand = true;
    }

    /// Takes what was typed or chosen.
    pub fn set_field(&mut self, field: Field, text: &str) {
        if self.take_field(field, text).is_none() {
            self.warn(say!("page-field-refused"));
        }
    }

    fn take_field(&mut self, field: Field, text: &str) -> Option<()> {
        let document = self.study.document();
        let edit = match field {
            Field::HasLand => {
                self.drafts.place_has_land = text == "true";
                self.tell_tool(Input::Leave, PointerKind::Mouse);
                return Some(());
            }
            Field::PlanName | Field::About | Field::Latitude | Field::Longitude => Edit::Heading {
                before: document.heading.clone(),
                after: fields::heading_with(&document.heading, field, text)?,
            },
            Field::PhaseName(id) => Edit::Phase {
                id,
                before: document.phases.get(&id).cloned(),
                after: Some(Phase {
                    name: Some(text.trim()).filter(|name| !name.is_empty())?.to_owned(),
                }),
            },
            Field::AlternativeName | Field::AlternativeTable => {
                let id = self.study.alternative();
                let before = document.alternatives.get(&id)?;
                let mut after = before.clone();
                let text = text.trim();
                match field {
                    Field::AlternativeName if text.is_empty() => return None,
                    Field::AlternativeName => text.clone_into(&mut after.name),
                    _ => text.clone_into(&mut after.table),
                }
                Edit::Alternative {
                    id,
                    before: Some(before.clone()),
                    after: Some(after),
                }
            }
            Field::Asked(what) => {
                let asked = match text.trim() {
                    "" => None,
                    text => Some(program::unit_of(what).read(text, self.units())? as u32),
                };
                Edit::Program {
                    before: document.program.clone(),
                    after: program::with(&document.program, what, asked),
                }
            }
            field => {
                let ids = self.spoken_of();
                if ids.is_empty() {
                    let mut mark = self.draft(self.tool.kind())?.clone();
                    fields::put(document, &mut mark, field, text)?;
                    match self.tool.kind() {
                        ToolKind::Area => self.drafts.area = Some(mark),
                        _ => self.drafts.place = mark,
                    }
                    self.changes.hand = true;
                    return Some(());
                }
                let alternative = self.study.alternative();
                let mut edits = Vec::new();
                for id in ids {
                    let held = document.mark(alternative, id)?;
                    let mut mark = held.clone();
                    let put = fields::put(document, &mut mark, field, text);
                    if put.is_none() && !fields::is_left_out(held) {
                        return None;
                    }
                    if mark != *held {
                        edits.push(Edit::mark(document, alternative, id, Some(mark)));
                    }
                }
                self.change_field(field, edits);
                return Some(());
            }
        };
        self.change_field(field, vec![edit]);
        Some(())
    }

    fn change_field(&mut self, field: Field, edits: Vec<Edit>) {
        self.step_with(&say!("page-step-change", field = lowercase(field.words())), edits);
    }

    /// Adds a phase after the others.
    pub fn add_phase(&mut self) {
        let phases = &self.study.document().phases;
        let last = phases.keys().next_back();
        let id = PhaseId(last.map_or(0, |last| last.0.saturating_add(1)));
        let name = say!("page-phase-new", number = phases.len() + 1);
        let edit = Edit::Phase {
            id,
            before: phases.get(&id).cloned(),
            after: Some(Phase { name }),
        };
        self.step_with(say!("page-step-add-phase"), vec![edit]);
    }

    /// Lets a phase change places with the one before it, and everything drawn in either with it.
    pub fn move_phase_earlier(&mut self, later: PhaseId) {
        let document = self.study.document();
        let Some((earlier, before)) = document.phases.iter().rfind(|(id, _)| **id < later) else {
            return;
        };
        let (earlier, Some(after)) = (*earlier, document.phases.get(&later)) else {
            return;
        };
        let is_first = document.phases.keys().next() == Some(&earlier);
        let rename = |id, before: &Phase, after: &Phase| Edit::Phase {
            id,
            before: Some(before.clone()),
            after: Some(after.clone()),
        };
        let mut edits = vec![rename(earlier, before, after), rename(later, after, before)];
        for (alternative, held) in &document.alternatives {
            for (id, mark) in &held.marks {
                let mut moved = mark.clone();
                let Some(phase) = phase_of(&mut moved) else { continue };
                *phase = match *phase {
                    Some(at) if at == later => Some(earlier),
                    Some(at) if at == earlier => Some(later),
                    None if is_first => Some(later),
                    other => other,
                };
                if moved != *mark {
                    edits.push(Edit::mark(document, *alternative, *id, Some(moved)));
                }
            }
        }
        self.step_with(say!("page-step-move-phase"), edits);
    }

    /// Deletes a phase in which nothing is drawn.
    pub fn delete_phase(&mut self, phase: PhaseId) {
        let document = self.study.document();
        let is_first = document.phases.len() > 1 && document.phases.keys().next() == Some(&phase);
        let mut marks = document.alternatives.values().flat_map(|held| held.marks.values());
        let is_used = marks.any(|mark| {
            phase_of(&mut mark.clone()).is_some_and(|held| *held == Some(phase) || (is_first && held.is_none()))
        });
        if is_used {
            self.warn(say!("page-phase-in-use"));
            return;
        }
        let edit = Edit::Phase {
            id: phase,
            before: document.phases.get(&phase).cloned(),
            after: None,
        };
        self.step_with(say!("page-step-delete-phase"), vec![edit]);
    }

    /// One step of the history that no gesture made, and what it changed.
    pub(super) fn step_with(&mut self, label: &str, mut edits: Vec<Edit>) {
        if self.study.is_in_gesture() {
            self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        }
        edits.extend(self.link_of(label, &edits));
        let before = self.numbers();
        match self.study.apply(label, edits) {
            Ok(_) => {
                self.changes.plan = true;
                self.changes.hand = true;
                self.say_what_changed(label, &before);
            }
            Err(fault) => self.warn(fault.to_string()),
        }
    }

    /// Where quarter-mile circles stand, in meters: about a center that is about to be placed, and about every center
    /// while no street is drawn inside the site; afterwards the walk-shed says who is near.
    #[must_use]
    pub fn circles_at(&self) -> Vec<(f64, f64)> {
        let next = self.circle_of_next();
        let mut found = Vec::new();
        if let Some(at) = next {
            found.push(at);
        }
        let document = self.study.document();
        let drawn = document.alternatives.get(&self.study.alternative());
        if let Some(drawn) = drawn.filter(|drawn| !lands::has_streets_inside(&document.site.boundary, drawn)) {
            for mark in drawn.marks.values() {
                if let Some(shape) = shape::of(mark).filter(|_| is_center(mark))
                    && let Some(at) = crate::canvas::layers::land::middle(&meters(shape.points()))
                    && Some(at) != next
                {
                    found.push(at);
                }
            }
        }
        found
    }

    fn circle_of_next(&self) -> Option<(f64, f64)> {
        if self.tool.kind() != ToolKind::Place || !is_center(&self.drafts.place) {
            return None;
        }
        let hints = self.tool.hints();
        let lines = [hints.outline, hints.stretch, hints.land, hints.points];
        let snap = hints.snap.map(|snap| snap.point.to_m());
        let middle = |line: &Vec<_>| crate::canvas::layers::land::middle(&meters(line));
        lines.iter().find_map(middle).or(snap)
    }
}

fn is_center(mark: &Mark) -> bool {
    matches!(mark, Mark::Place(place) if place.kind == PlaceKind::Center)
}
