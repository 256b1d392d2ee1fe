//! Keeping the open plan in this browser: what is written after which step, and what is said of it.
//!
//! Entries of the plan's journal are handed over as soon as they are made; the browser tells later whether they are
//! written. A write names the record it expects, so of two windows with one plan only the first goes on writing. What
//! was not written is sent again with the next step. A plan that was opened and never changed leaves nothing.

use hobnail_core::exchange::{journal_file, passed};
use hobnail_core::order;
use hobnail_core::plan::history::Limits;
use hobnail_core::plan::journal::{Entry, EntryNumber, NumberedEntry, Recovered};
use hobnail_core::say;
use hobnail_core::study::Study;

use crate::browser::keeping::{Found, Outcome, Writing};

/// Most plans that are offered again at once.
pub const MOST_RECENT: usize = 8;

/// Keeping of the open plan.
#[derive(Debug, Default)]
pub struct Keeping {
    place: Place,
    /// Its id in the browser's store, once it has one.
    id: Option<String>,
    begun_ms: u64,
    revision: u64,
    name: String,
    /// The record that is surely there.
    confirmed: Option<String>,
    /// The record that is there once all that was sent is written.
    sent: Option<String>,
    /// Writings not answered yet.
    awaited: usize,
    /// Made and not sent.
    entries: Vec<NumberedEntry>,
    /// Sent and not surely there, by number.
    unconfirmed: Vec<(u64, String)>,
    /// Whether anything was drawn since the plan was opened.
    is_changed: bool,
    /// Whether the plan was kept before it was opened.
    is_old: bool,
    /// Whether the place holds nothing that entries to come could follow.
    must_write_anew: bool,
    unfinished: Option<String>,
    sent_unfinished: Option<String>,
    trouble: Option<Trouble>,
    /// A step that has left memory and is to be read.
    looked_up: Option<EntryNumber>,
}

/// The browser's store.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Place {
    /// It is being opened; what comes meanwhile waits.
    #[default]
    Opening,
    Open,
    Missing,
}

/// Why the plan is not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Trouble {
    Full,
    Refused,
    /// Another window went on with it.
    OtherWindow,
    /// Another window removed it.
    Forgotten,
}

/// What is shown of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum KeptShown {
    /// There is nothing to keep.
    #[default]
    Nothing,
    /// All steps are written.
    Kept,
    /// A step is on its way.
    Keeping,
    /// Some step is not written.
    NotKept {
        /// What is wrong, and what to do.
        words: &'static str,
        /// Whether going on as a copy would help.
        can_copy: bool,
        /// Whether another window's work can be opened instead.
        can_reopen: bool,
    },
}

impl KeptShown {
    /// The words on the page.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Nothing => "",
            Self::Kept => say!("page-kept"),
            Self::Keeping => say!("page-keeping"),
            Self::NotKept { words, .. } => words,
        }
    }
}

/// A kept plan that is offered again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Recent {
    /// Its id in the browser's store.
    pub id: String,
    /// Its record as it was read.
    pub record: String,
    /// Its name.
    pub name: String,
    /// How long ago it was changed, in words.
    pub when: String,
}

impl Keeping {
    /// The browser's store is open, or there is none.
    pub const fn take_place(&mut self, is_open: bool) {
        self.place = if is_open { Place::Open } else { Place::Missing };
    }

    /// Another plan was opened, which is not kept yet.
    pub fn begin(&mut self) {
        *self = Self {
            place: self.place,
            ..Self::default()
        };
    }

    /// A kept plan was opened.
    pub fn go_on(&mut self, id: String, record: String) {
        self.begin();
        if let Some((revision, begun_ms, ..)) = read_record(&record) {
            (self.revision, self.begun_ms) = (revision, begun_ms);
        }
        self.id = Some(id);
        self.confirmed = Some(record.clone());
        self.sent = Some(record);
        self.is_old = true;
    }

    /// From now on the plan is kept as one of its own, whatever became of the record it had.
    pub fn copy(&mut self) {
        self.begin();
        self.is_changed = true;
        self.must_write_anew = true;
    }

    /// Takes what the plan's history has to tell. `label` is that of the gesture in progress, and `shows_hover` whether its
    /// preview has a point more than those that are set: then it is kept as it was without.
    pub fn note(&mut self, study: &mut Study, label: &str, shows_hover: bool) {
        if std::mem::take(&mut self.must_write_anew) {
            study.write_anew();
        }
        self.entries.append(&mut study.take_entries());
        let is_change = |held: &NumberedEntry| !matches!(held.entry, Entry::Snapshot(_));
        self.is_changed |= self.entries.iter().any(is_change);
        let preview = study.history().preview();
        if self.is_given_up() {
            self.is_changed |= !preview.is_empty();
            self.entries.clear();
            return;
        }
        if !shows_hover {
            self.unfinished = (!preview.is_empty()).then(|| format!("{label}\n{}", passed::edits_to_text(preview)));
        }
        self.name.clone_from(&study.document().heading.name);
    }

    /// Whether nothing is to be written any more.
    const fn is_given_up(&self) -> bool {
        matches!(self.place, Place::Missing) || matches!(self.trouble, Some(Trouble::OtherWindow | Trouble::Forgotten))
    }

    /// What is to be written now, if anything is.
    pub fn next(&mut self, now_ms: fn() -> f64, fresh_name: fn() -> String) -> Option<Writing> {
        let is_waiting = self.awaited > 0;
        // What was sent after a write that failed fails too: that is awaited before all of it is sent again.
        if self.place != Place::Open || self.is_given_up() || (self.trouble.is_some() && is_waiting) {
            return None;
        }
        let is_step = self.is_changed && !self.entries.is_empty();
        let is_preview = self.unfinished != self.sent_unfinished && !is_waiting && self.trouble.is_none();
        if !is_step && !is_preview {
            return None;
        }
        let now_ms = now_ms() as u64;
        if self.id.is_none() {
            self.id = Some(fresh_name());
            self.begun_ms = now_ms;
        }
        // The first stroke was given up: nothing was drawn, so nothing stays.
        let is_void = !self.is_changed && !self.is_old && self.unfinished.is_none();
        self.must_write_anew |= is_void;
        let record = (!is_void).then(|| {
            self.revision += 1;
            write_record(self.revision, self.begun_ms, now_ms, &self.name)
        });
        let first_new = if self.trouble.is_some() {
            0
        } else {
            self.unconfirmed.len()
        };
        for held in self.entries.drain(..) {
            self.unconfirmed.push((held.number.0, journal_file::write_line(&held)));
        }
        let lines = if is_void {
            self.unconfirmed.clear();
            Vec::new()
        } else {
            self.unconfirmed[first_new..].to_vec()
        };
        self.awaited += 1;
        self.sent_unfinished.clone_from(&self.unfinished);
        Some(Writing {
            id: self.id.clone().unwrap_or_default(),
            expected: std::mem::replace(&mut self.sent, record.clone()),
            record,
            lines,
            unfinished: self.unfinished.clone(),
            is_strict: is_step,
        })
    }

    /// Takes what became of a writing: of this plan and with this record. A sentence, where it was of a plan that is not
    /// open any more and not written.
    pub fn take_outcome(&mut self, id: &str, record: Option<String>, outcome: Outcome) -> Option<&'static str> {
        if self.id.as_deref() != Some(id) {
            let lost = say!("page-kept-lost");
            return (outcome != Outcome::Written).then_some(lost);
        }
        self.awaited = self.awaited.saturating_sub(1);
        match outcome {
            Outcome::Written => {
                self.confirmed = record;
                if self.awaited == 0 {
                    self.unconfirmed.clear();
                    self.trouble = None;
                }
                return None;
            }
            // Sent after one that failed, so what it builds on is not there.
            Outcome::Changed(found) if self.trouble.is_some() && found == self.confirmed => {}
            Outcome::Changed(Some(_)) => self.trouble = Some(Trouble::OtherWindow),
            Outcome::Changed(None) => self.trouble = Some(Trouble::Forgotten),
            Outcome::Full => self.trouble = Some(Trouble::Full),
            Outcome::Refused => self.trouble = Some(Trouble::Refused),
        }
        if self.awaited == 0 {
            self.sent.clone_from(&self.confirmed);
        }
        None
    }

    /// A step that is to be undone or done again has left memory, and must be read first.
    pub const fn look_up(&mut self, step: EntryNumber) {
        self.looked_up = Some(step);
    }

    /// The plan and the step that is to be read now, if one is.
    pub fn take_looked_up(&mut self) -> Option<(String, EntryNumber)> {
        let number = self.looked_up.take()?;
        Some((self.id.clone().unwrap_or_default(), number))
    }

    /// The id of the open plan, once it has one.
    #[must_use]
    pub fn id(&self) -> Option<&str> {
        self.id.as_deref()
    }

    /// What is shown of it.
    #[must_use]
    pub fn shown(&self) -> KeptShown {
        // Both wait until all that was sent is answered.
        let is_settled = self.awaited == 0;
        let not_kept = |words, can_copy, can_reopen| KeptShown::NotKept {
            words,
            can_copy: can_copy && is_settled,
            can_reopen: can_reopen && is_settled,
        };
        match self.trouble {
            _ if !self.is_changed && !self.is_old && self.trouble.is_none() => KeptShown::Nothing,
            Some(Trouble::Full) => not_kept(say!("page-not-kept-full"), false, false),
            Some(Trouble::OtherWindow) => not_kept(say!("page-not-kept-other-window"), true, true),
            Some(Trouble::Forgotten) => not_kept(say!("page-not-kept-forgotten"), true, false),
            trouble if trouble == Some(Trouble::Refused) || self.place == Place::Missing => {
                not_kept(say!("page-not-kept-refused"), false, false)
            }
            _ if self.unconfirmed.is_empty() && (self.entries.is_empty() || !self.is_changed) => KeptShown::Kept,
            _ => KeptShown::Keeping,
        }
    }
}

/// A plan taken up from what was kept of it.
#[derive(Debug)]
pub struct TakenUp {
    /// The plan and its history.
    pub recovered: Recovered,
    /// Whether the gesture that was not finished is its last step.
    pub has_unfinished: bool,
    /// What could not be used, in sentences.
    pub losses: Vec<String>,
}

/// Takes a kept plan up, with the gesture that was not finished as its last step where it fits.
///
/// # Errors
/// A sentence, when nothing of it can be used.
pub fn take_up(found: &Found) -> Result<TakenUp, String> {
    let opened = journal_file::read(found.lines.as_bytes(), Limits::default());
    let mut losses = opened.losses();
    let Some(mut recovered) = opened.recovered else {
        return Err(say!("page-kept-unusable", losses = losses.join("; ")));
    };
    let mut has_unfinished = false;
    if let Some(text) = &found.unfinished {
        let read = text.split_once('\n');
        let read = read.and_then(|(label, edits)| Some((label, passed::edits_from_text(edits)?)));
        let (document, history) = (&mut recovered.document, &mut recovered.history);
        has_unfinished = read.is_some_and(|(label, edits)| history.apply(document, label, edits).is_ok());
        if !has_unfinished {
            losses.push(say!("page-kept-stroke-lost").to_owned());
        }
    }
    Ok(TakenUp {
        recovered,
        has_unfinished,
        losses,
    })
}

/// The kept plans that are offered again, the one changed last first. Records of another version are passed over: the
/// page that wrote them reads them.
#[must_use]
pub fn recent(kept: Vec<(String, String)>, now_ms: f64) -> Vec<Recent> {
    let mut found: Vec<(u64, Recent)> = Vec::new();
    for (id, record) in kept {
        if let Some((_, _, changed_ms, name)) = read_record(&record) {
            let (name, when) = (name.to_owned(), ago((now_ms as u64).saturating_sub(changed_ms)));
            found.push((changed_ms, Recent { id, record, name, when }));
        }
    }
    order::sort_by(&mut found, |one, other| other.0.cmp(&one.0));
    found.truncate(MOST_RECENT);
    found.into_iter().map(|(_, recent)| recent).collect()
}

/// How long ago, in words, rounded down.
fn ago(past_ms: u64) -> String {
    let minutes = past_ms / 60_000;
    match minutes {
        0 => say!("page-ago-now").to_owned(),
        1..60 => say!("page-ago-minutes", count = minutes),
        60..1440 => say!("page-ago-hours", count = minutes / 60),
        _ => say!("page-ago-days", count = minutes / 1440),
    }
}

/// A record: version, revision, when it was begun and changed in milliseconds since 1970, name.
fn write_record(revision: u64, begun_ms: u64, changed_ms: u64, name: &str) -> String {
    format!("1 {revision} {begun_ms} {changed_ms} {name}")
}

fn read_record(record: &str) -> Option<(u64, u64, u64, &str)> {
    let mut parts = record.splitn(5, ' ');
    if parts.next() != Some("1") {
        return None;
    }
    let mut number = || parts.next()?.parse::<u64>().ok();
    let (revision, begun_ms, changed_ms) = (number()?, number()?, number()?);
    Some((revision, begun_ms, changed_ms, parts.next()?))
}

#[cfg(test)]
mod tests;
