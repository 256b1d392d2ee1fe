//! What we heard, what changed: remarks pinned to the drawing, the steps that answer them, and what those changed.
//!
//! While a remark is being answered each step that draws anything is linked to it, in the same step of the history: so
//! whoever takes the step back takes the link back.

use hobnail_core::order;
use hobnail_core::plan::edit::Cell;
use hobnail_core::plan::land::{Note, RemarkAnswer};
use hobnail_core::plan::{Alternative, AlternativeId, Document, Edit, Footprint, Mark, MarkId, PlanPoint};
use hobnail_core::say;

use super::places::Place;
use super::{App, figures, words};
use crate::input::PointerKind;
use crate::tools::{Input, Selection, ToolKind, drafts, shape};

/// Which remark: its alternative and its mark.
pub type Key = (AlternativeId, MarkId);

/// The remark that is being answered.
#[derive(Clone, Debug, PartialEq)]
pub struct Answering {
    /// Which it is.
    pub key: Key,
    /// The moment that was marked for it; none where somebody had marked one before.
    moment: Option<String>,
}

/// How remarks are listed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sort {
    /// Those with the most votes first.
    #[default]
    Votes,
    /// Table by table.
    Table,
    /// As they are numbered on the drawing.
    Number,
}

/// A remark as it is listed.
#[derive(Clone, Debug, PartialEq)]
pub struct RemarkShown {
    /// Which it is.
    pub key: Key,
    /// Its number on the drawing.
    pub number: usize,
    /// What it says.
    pub text: String,
    /// Its table and its votes, in words.
    pub about: String,
    /// Its table, to sort by.
    table: String,
    /// Its votes, to sort by.
    votes: u32,
    /// What answers it: words, and where on the drawing that is.
    pub answers: Vec<(String, Option<Place>)>,
    /// What changed with the answer, as it was kept.
    pub figures: Vec<String>,
}

/// All that the list of remarks shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RemarksShown {
    /// The remarks, in the order they are listed.
    pub remarks: Vec<RemarkShown>,
    /// How many there are and how many nobody has answered yet, in words.
    pub count: String,
    /// Which is being answered.
    pub answering: Option<Key>,
    /// That in words.
    pub answering_words: Option<String>,
    /// Figures that changed since then, more than rounding and range.
    pub changes: Vec<String>,
    /// Steps that can be linked, the last first: place in the history and words.
    pub steps: Vec<(usize, String)>,
    /// Names of tables, to choose from.
    pub tables: Vec<String>,
}

/// The remarks of an alternative, with their numbers on the drawing.
pub fn numbered(alternative: &Alternative) -> impl Iterator<Item = (usize, MarkId, &Note)> {
    let notes = alternative
        .marks
        .iter()
        .filter_map(|(id, mark)| Some((*id, mark.as_note()?)));
    notes.enumerate().map(|(place, (id, note))| (place + 1, id, note))
}

/// The votes of a remark in words; empty where nobody has voted and nobody was counted.
#[must_use]
pub fn votes(note: &Note) -> String {
    match (note.votes, note.present) {
        (0, 0) => String::new(),
        (votes, 0) => say!("remarks-dots", count = votes),
        (votes, present) => say!("remarks-dots-of", count = votes, present = present),
    }
}

impl App {
    /// Begins to write a remark: it is placed next.
    pub fn write_remark(&mut self) {
        let mut said = self.end_begun();
        self.choose_tool(ToolKind::Place);
        self.choose_draft(false, drafts::NOTE);
        said.push_str(&self.said);
        self.say(said);
    }

    /// Whether a remark was pinned down since this was last asked: what it says is typed next.
    pub const fn take_awaits_words(&mut self) -> bool {
        std::mem::replace(&mut self.awaits_words, false)
    }

    /// Selects a remark and brings it into the middle of what is seen.
    pub fn show_remark(&mut self, (alternative, id): Key) {
        if alternative != self.study.alternative() {
            self.show_alternative(alternative);
        }
        self.choose_tool(ToolKind::Select);
        let Some(note) = self.study.document().mark(alternative, id).and_then(Mark::as_note) else {
            return;
        };
        self.go_to(Place::point(note.at.to_m()));
        self.point_out(None);
        self.selection = Some(Selection::Place(id));
        self.picked.clear();
        self.changes.hand = true;
        self.say(words::selected(&self.study, Selection::Place(id)));
    }

    /// Lists remarks in another order.
    pub fn sort_remarks(&mut self, sort: Sort) {
        self.remark_sort = sort;
        self.changes.remarks = true;
    }

    /// Answers a remark from now on, or none any more.
    pub fn answer(&mut self, key: Option<Key>) {
        self.tell_tool(Input::GiveUp, PointerKind::Mouse);
        self.stop_answering();
        let Some(key) = key.filter(|key| self.note(*key).is_some()) else {
            return self.say(say!("remarks-answering-none"));
        };
        let number = self.number_of(key);
        // A moment that somebody marked stays the one that changes are shown against.
        let moment = self.marked.is_none().then(|| say!("remarks-moment", number = number));
        if let Some(moment) = &moment {
            self.mark_moment(moment);
        }
        self.answering = Some(Answering { key, moment });
        self.changes.remarks = true;
        self.say(say!("remarks-answering-said", number = number));
    }

    fn stop_answering(&mut self) {
        let is_marked_for_it = self.moment_of_answer().is_some();
        self.answering = None;
        self.changes.remarks = true;
        if is_marked_for_it {
            self.forget_moment();
        }
    }

    /// The moment marked before the answer, while changes are shown against it.
    fn moment_of_answer(&self) -> Option<&str> {
        let moment = self.answering.as_ref()?.moment.as_deref()?;
        Some(moment).filter(|_| self.marked.as_ref().is_some_and(|marked| marked.name == moment))
    }

    fn note(&self, (alternative, id): Key) -> Option<&Note> {
        self.study.document().mark(alternative, id)?.as_note()
    }

    fn number_of(&self, key: Key) -> usize {
        let listed = listed(self.study.document(), self.study.alternative());
        listed
            .iter()
            .find(|(_, held, _)| *held == key)
            .map_or(0, |(number, ..)| *number)
    }

    /// The edit that links a step of these edits to the remark that is being answered; nothing where none is, and for
    /// steps that change remarks alone.
    pub(super) fn link_of(&self, label: &str, edits: &[Edit]) -> Option<Edit> {
        let key = self.answering.as_ref()?.key;
        let answer = answer_of(self.study.document(), key.0, label, edits)?;
        self.with_note(key, |note| note.answers.push(answer))
    }

    fn with_note(&self, key: Key, change: impl FnOnce(&mut Note)) -> Option<Edit> {
        let mut note = self.note(key)?.clone();
        change(&mut note);
        Some(Edit::mark(self.study.document(), key.0, key.1, Some(Mark::Note(note))))
    }

    /// One step that changes the remark being answered, or another.
    fn change_note(&mut self, key: Option<Key>, label: &str, change: impl FnOnce(&mut Note)) {
        let key = key.or_else(|| Some(self.answering.as_ref()?.key));
        if let Some(edit) = key.and_then(|key| self.with_note(key, change)) {
            self.step_with(label, vec![edit]);
        }
    }

    /// Links a step of the history, by its place, to the remark that is being answered.
    pub fn link_step(&mut self, place: usize) {
        if let Some((_, answer)) = self.answer_of_step(place) {
            self.change_note(None, say!("remarks-step-link"), |note| note.answers.push(answer));
        }
    }

    /// What a step of the history is called, and what it would be as an answer to the remark that is being answered;
    /// nothing for a step that is linked already.
    fn answer_of_step(&self, place: usize) -> Option<(&str, RemarkAnswer)> {
        let key = self.answering.as_ref()?.key;
        let step = self.study.history().step(place)?;
        let answer = answer_of(self.study.document(), key.0, step.label(), step.edits())?;
        let is_new = !self.note(key)?.answers.contains(&answer);
        is_new.then(|| (step.label(), answer))
    }

    /// Links what is selected to the remark that is being answered.
    pub fn link_selected(&mut self) {
        let Some(Answering { key, .. }) = self.answering else {
            return;
        };
        let mut marks = self.picked.clone();
        marks.extend(self.selection.map(|selection| selection.mark()));
        order::sort(&mut marks);
        marks.dedup();
        marks.retain(|id| *id != key.1);
        if marks.is_empty() || key.0 != self.study.alternative() {
            return self.warn(say!("remarks-select-first"));
        }
        let answer = RemarkAnswer {
            step: String::new(),
            marks,
        };
        self.change_note(None, say!("remarks-step-link"), |note| note.answers.push(answer));
    }

    /// Takes a link from a remark, by its place.
    pub fn unlink(&mut self, key: Key, place: usize) {
        self.change_note(Some(key), say!("remarks-step-unlink"), |note| {
            if place < note.answers.len() {
                note.answers.remove(place);
            }
        });
    }

    /// Keeps what has changed in figures with the remark that is being answered.
    pub fn keep_changes(&mut self) {
        let changes = self.changes_of_answer();
        self.change_note(None, say!("remarks-step-figures"), |note| note.figures = changes);
    }

    /// The first-level figures that changed more than rounding and range since the moment before the answer.
    fn changes_of_answer(&self) -> Vec<String> {
        if self.moment_of_answer().is_none() {
            return Vec::new();
        }
        let mut rows = self.exact_rows();
        rows.retain_mut(|row| {
            let change = self.drawn.change(&self.study, &row.id).filter(|change| change.is_clear);
            row.value = change.map(|change| change.words.clone()).unwrap_or_default();
            change.is_some()
        });
        let said = rows.iter();
        said.map(|row| say!("remarks-figure", figure = figures::short_title(row), change = row.value))
            .collect()
    }

    /// All that the list of remarks shows.
    #[must_use]
    pub fn remarks_shown(&self) -> RemarksShown {
        let document = self.study.document();
        let shown = self.study.alternative();
        let mut remarks: Vec<RemarkShown> = Vec::new();
        let mut tables: Vec<String> = document.alternatives.values().map(|held| held.table.clone()).collect();
        let mut unanswered = 0;
        for (number, key, note) in listed(document, shown) {
            let alternative = document.alternatives.get(&key.0);
            let table = match note.author.as_str() {
                "" => alternative.map_or("", |held| &held.table),
                author => author,
            };
            let elsewhere = alternative.filter(|_| key.0 != shown).map_or("", |held| &held.name);
            let parts = [table, elsewhere, &votes(note)].map(str::to_owned);
            let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
            tables.push(note.author.clone());
            unanswered += usize::from(note.answers.is_empty());
            remarks.push(RemarkShown {
                key,
                number,
                text: if note.text.is_empty() {
                    say!("drawing-note").to_owned()
                } else {
                    note.text.clone()
                },
                about: parts.join(" · "),
                table: table.to_owned(),
                votes: note.votes,
                answers: note.answers.iter().map(|held| self.answer_shown(key.0, held)).collect(),
                figures: note.figures.clone(),
            });
        }
        match self.remark_sort {
            Sort::Votes => order::sort_by(&mut remarks, |one, other| other.votes.cmp(&one.votes)),
            Sort::Table => order::sort_by(&mut remarks, |one, other| one.table.cmp(&other.table)),
            Sort::Number => {}
        }
        tables.retain(|table| !table.is_empty());
        order::sort(&mut tables);
        tables.dedup();
        let answering = self.answering.as_ref().map(|held| held.key);
        let steps = (0..self.study.history().undo_count()).rev().filter_map(|place| {
            let (label, _) = self.answer_of_step(place)?;
            Some((
                place,
                say!("remarks-step", number = place + 1, step = words::sentence_case(label)),
            ))
        });
        RemarksShown {
            count: say!("remarks-count", count = remarks.len(), open = unanswered),
            answering_words: answering.map(|key| say!("remarks-answering", number = self.number_of(key))),
            changes: self.changes_of_answer(),
            steps: steps.collect(),
            remarks,
            answering,
            tables,
        }
    }

    /// What answers a remark, in words, and where it is.
    fn answer_shown(&self, alternative: AlternativeId, answer: &RemarkAnswer) -> (String, Option<Place>) {
        let document = self.study.document();
        let marks = || answer.marks.iter().filter_map(|id| document.mark(alternative, *id));
        let mut place = Place::default();
        marks().filter_map(extent).for_each(|line| place.show(&line));
        let words = if answer.step.is_empty() {
            let titles: Vec<&str> = marks().map(super::fields::title).collect();
            if titles.is_empty() {
                say!("remarks-gone").to_owned()
            } else {
                titles.join(", ")
            }
        } else {
            words::sentence_case(&answer.step)
        };
        (words, (place.count() > 0).then_some(place))
    }

    /// The whole list as text, to be read out or printed.
    #[must_use]
    pub fn remarks_text(&self) -> String {
        let shown = self.remarks_shown();
        let name = &self.study.document().heading.name;
        let mut lines = vec![say!("remarks-text-title", plan = name), shown.count, String::new()];
        for RemarkShown {
            number,
            text,
            about,
            answers,
            figures,
            ..
        } in shown.remarks
        {
            // What was said in several lines keeps them, below its number.
            let text = text.replace('\n', "\n   ");
            lines.push([&number.to_string(), ". ", &text].concat());
            let open = answers.is_empty().then(|| say!("remarks-open").to_owned());
            let about = (!about.is_empty()).then_some(about);
            let answers = answers.into_iter().map(|(words, _)| words);
            let held = about.into_iter().chain(answers).chain(figures).chain(open);
            lines.extend(held.map(|line| ["   ", &line].concat()));
        }
        lines.join("\n") + "\n"
    }

    /// A remark that is gone is answered no more.
    pub(super) fn drop_lost_answering(&mut self) {
        if self
            .answering
            .as_ref()
            .is_some_and(|held| self.note(held.key).is_none())
        {
            self.stop_answering();
        }
    }
}

/// The remarks of all alternatives with their numbers: those in view as on the drawing, then the others; what a copied
/// alternative has of another is listed once.
fn listed(document: &Document, shown: AlternativeId) -> Vec<(usize, Key, &Note)> {
    let mut found: Vec<(usize, Key, &Note)> = Vec::new();
    let first = document.alternatives.iter().filter(|(id, _)| **id == shown);
    let others = document.alternatives.iter().filter(|(id, _)| **id != shown);
    for (alternative, held) in first.chain(others) {
        for (_, id, note) in numbered(held) {
            let is_same = |(_, (of, _), known): &(usize, Key, &Note)| {
                of != alternative && (known.at, &known.text, &known.author) == (note.at, &note.text, &note.author)
            };
            if !found.iter().any(is_same) {
                found.push((found.len() + 1, (*alternative, id), note));
            }
        }
    }
    found
}

/// What a step did, as an answer to a remark of this alternative; `None` where it changed remarks alone. Uses that
/// followed what was drawn are not named beside it, and marks of another alternative are not named at all.
fn answer_of(document: &Document, alternative: AlternativeId, label: &str, edits: &[Edit]) -> Option<RemarkAnswer> {
    let is_note = |mark: &Option<Box<Mark>>| mark.as_ref().is_some_and(|mark| mark.as_note().is_some());
    let mut step = label.to_owned();
    let (mut marks, mut uses, mut is_change) = (Vec::new(), Vec::new(), false);
    // An alternative put in place whole is not what anybody asked for.
    if edits.iter().any(|edit| matches!(edit, Edit::Alternative { .. })) {
        return None;
    }
    for edit in edits.iter().filter(|edit| !edit.changes_nothing()) {
        if let Edit::Mark { before, after, .. } = edit {
            if is_note(before) || is_note(after) {
                continue;
            }
            if let Cell::Mark(of, id) = edit.cell() {
                let is_use = before.iter().chain(after).any(|mark| mark.as_use().is_some());
                match (of == alternative, is_use) {
                    (true, true) => uses.push(id),
                    (true, false) => marks.push(id),
                    (false, _) if !is_change => {
                        let name = document.alternatives.get(&of).map_or("", |held| &held.name);
                        step = say!("remarks-step-elsewhere", step = label, alternative = name);
                    }
                    (false, _) => {}
                }
            }
        }
        is_change = true;
    }
    if marks.is_empty() {
        marks = uses;
    }
    order::sort(&mut marks);
    marks.dedup();
    is_change.then_some(RemarkAnswer { step, marks })
}

/// What of a mark is shown on the drawing.
fn extent(mark: &Mark) -> Option<Vec<PlanPoint>> {
    if let Mark::Street(street) = mark {
        return Some(hobnail_core::plan::flatten::flatten(&street.line));
    }
    if let Mark::Use(held) = mark {
        return Some(vec![held.anchor]);
    }
    Some(match shape::of(mark)? {
        Footprint::Area(mut points) => {
            points.extend(points.first().copied());
            points
        }
        Footprint::Line(points) => points,
        Footprint::Point(point) => vec![point],
    })
}

#[cfg(test)]
mod tests;
