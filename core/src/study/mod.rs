//! One open plan: what is drawn, what follows from it, and what changed. The only stateful part.
//!
//! A [`Study`] owns the document and its history. Every call that changes the drawing brings the fabric, the walk to
//! the center and the figures up to it before it returns, so that what is asked afterwards is never stale. All of it is
//! a pure function of the document: caches only save work.
//!
//! A gesture: [`begin`](Study::begin), any number of [`change`](Study::change) (each a preview from the gesture's
//! start), then [`commit`](Study::commit) or [`cancel`](Study::cancel). When streets change, uses are carried over to
//! the faces they make ([`carry`]) within the same gesture.

pub mod carry;

pub mod overlap;

pub mod first_level;

pub mod protocol;

pub mod jobs;

pub mod follower;

pub mod notes;

pub mod marked;

mod details;
mod figures;
mod gesture;
mod kept;
mod steps;
mod street_places;

use std::borrow::Cow;
use std::sync::Arc;

use crate::exchange::passed::{document_from_text, document_to_text, edits_from_text, edits_to_text};
use crate::fabric::{Fabric, LandCache};
use crate::factors::{Factors, Override};
use crate::figures::Evaluation;
use crate::figures::graph::Graph;
use crate::measures::details::WalkDetails;
use crate::measures::form::FormInputs;
use crate::measures::frontage::{Painted, PaintedCache, painted_faces};
use crate::measures::land::claims::ClaimCache;
use crate::measures::streets::StreetInputs;
use crate::measures::walk::Walks;
use crate::measures::walk::destinations::Destination;
use crate::measures::walk::walks::NeedsReached;
use crate::measures::{self, count::count};
use crate::network::{CostField, Network, Reach};
use crate::plan::edit::Cell;
use crate::plan::history::{History, HistoryFault, Limits};
use crate::plan::journal::EntryNumber;
use crate::plan::scope::Seen;
use crate::plan::transaction::apply_all;
use crate::plan::{AlternativeId, Document, Edit, MarkId, Scope};
use crate::say;

use figures::Figures;
use gesture::UsesAtStart;
use protocol::{Change, News, NewsFault};

/// The seed of every range: one for all plans, so that two plans compare under common draws.
pub const SEED: u64 = 0x686f_626e_6169_6c31;

/// Why a study could not work its figures: the program's own tables do not fit together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StudyFault {
    /// What does not fit, one sentence each.
    pub sentences: Vec<String>,
}

impl std::fmt::Display for StudyFault {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        formatter.write_str(&say!("study-fault", faults = self.sentences.join("; ")))
    }
}

impl std::error::Error for StudyFault {}

fn no_factor(id: &String) -> String {
    say!("study-no-factor", id = id)
}

/// Collects any faults as sentences.
fn fault<T: ToString>(faults: impl IntoIterator<Item = T>) -> StudyFault {
    StudyFault {
        sentences: faults.into_iter().map(|fault| fault.to_string()).collect(),
    }
}

/// One open plan.
#[derive(Debug)]
pub struct Study {
    document: Document,
    history: History,
    alternative: AlternativeId,
    /// What part of the alternative is looked at.
    scope: Scope,
    revision: u64,
    uses_at_start: Option<UsesAtStart>,
    lands: LandCache,
    lots: PaintedCache,
    derived: Derived,
    /// The fabric of all that is drawn, where a part is looked at.
    whole: Option<Whole>,
    shipped: Factors,
    /// The document as it last rested, without any preview.
    rested: Document,
    /// The figures of the moment compared with.
    marked: Option<Evaluation>,
    /// What a follower has not been told.
    unsent: Vec<Edit>,
    must_send_whole: bool,
}

/// What follows from the document.
#[derive(Debug)]
struct Derived {
    fabric: Fabric,
    painted: Painted,
    walks: Walks,
    claims: ClaimCache,
    figures: Figures,
    /// What takes longer than a frame, once it is worked out.
    details: Option<WalkDetails>,
    /// Overridden factors that could not be used, one sentence each.
    override_faults: Vec<String>,
}

/// The fabric of a whole alternative: uses are carried over on it, whatever part of it is looked at.
#[derive(Debug)]
struct Whole {
    fabric: Fabric,
    lands: LandCache,
}

impl Study {
    /// Opens a document on its first alternative.
    ///
    /// # Errors
    /// [`StudyFault`] when the program's own factor tables do not fit its figures; a test holds that they do.
    pub fn open(document: Document) -> Result<Self, StudyFault> {
        let graph = Arc::new(measures::graph().map_err(fault)?);
        Self::open_with(document, graph)
    }

    /// Opens a document with figures that were built already: evaluations of one graph can be compared.
    fn open_with(document: Document, graph: Arc<Graph>) -> Result<Self, StudyFault> {
        let alternative = document.alternatives.keys().next().copied().unwrap_or(AlternativeId(0));
        let history = History::new(&document, Limits::default());
        let shipped = Factors::shipped().map_err(fault)?;
        let mut lands = LandCache::default();
        let mut lots = PaintedCache::default();
        let derived = Derived::of(&document, alternative, &mut lands, &mut lots, &shipped, graph)?;
        Ok(Self {
            rested: document.clone(),
            marked: None,
            unsent: Vec::new(),
            must_send_whole: true,
            document,
            history,
            alternative,
            scope: Scope::default(),
            revision: 0,
            uses_at_start: None,
            lands,
            lots,
            derived,
            whole: None,
            shipped,
        })
    }

    /// The document as it stands, a preview included.
    #[must_use]
    pub const fn document(&self) -> &Document {
        &self.document
    }

    /// The alternative in view.
    #[must_use]
    pub const fn alternative(&self) -> AlternativeId {
        self.alternative
    }

    /// Counts every change of what follows from the document; a reply made for another revision is stale.
    #[must_use]
    pub const fn revision(&self) -> u64 {
        self.revision
    }

    /// Counts on from a study whose place this one takes: what is still being worked out for that one is stale here.
    pub const fn take_place_of(&mut self, other: &Self) {
        self.revision += other.revision + 1;
    }

    /// Shows another alternative; `false` where there is none of that id or a gesture is in progress.
    pub fn show_alternative(&mut self, alternative: AlternativeId) -> bool {
        let can = !self.history.is_in_gesture() && self.document.alternatives.contains_key(&alternative);
        if can && alternative != self.alternative {
            self.alternative = alternative;
            self.bring_up_to_date();
        }
        can
    }

    /// What part of the alternative is looked at.
    #[must_use]
    pub const fn scope(&self) -> &Scope {
        &self.scope
    }

    /// Looks at a part of the alternative; `false` where a gesture is in progress. What is drawn stays as it is, and so
    /// does what an edit does to it.
    pub fn set_scope(&mut self, scope: Scope) -> bool {
        let can = !self.history.is_in_gesture();
        if can && scope != self.scope {
            self.take_scope(scope);
            self.bring_up_to_date();
        }
        can
    }

    fn take_scope(&mut self, scope: Scope) {
        self.scope = scope;
        self.whole = (!self.scope.is_everything()).then(|| {
            let mut lands = LandCache::default();
            Whole {
                fabric: Fabric::of(&self.document, self.alternative, &mut lands),
                lands,
            }
        });
    }

    /// The document as the scope sees it: all that is measured is measured on this.
    #[must_use]
    pub fn seen(&self) -> Cow<'_, Document> {
        self.scope.seen(&self.document, self.alternative).document
    }

    /// Begins a gesture, named as it will be shown beside undo.
    ///
    /// # Errors
    /// [`HistoryFault::GestureOpen`] when one is in progress.
    pub fn begin(&mut self, label: impl Into<String>) -> Result<(), HistoryFault> {
        self.history.begin(label)?;
        self.uses_at_start = None;
        Ok(())
    }

    /// Replaces the gesture's preview: the document becomes what it was at the gesture's start with `edits`, ties
    /// settled and uses carried over.
    ///
    /// # Errors
    /// Any fault of the edits; everything is then as before the call.
    pub fn change(&mut self, edits: Vec<Edit>) -> Result<(), HistoryFault> {
        if self.uses_at_start.is_none() && self.history.is_in_gesture() {
            self.uses_at_start = Some(UsesAtStart::of(&self.document, self.alternative, self.drawn_fabric()));
        }
        self.history.change(&mut self.document, edits)?;
        self.renew_drawn_fabric();
        let carried = self.uses_at_start.as_ref().map(|start| {
            let next_id = self.history.next_mark_id(&self.document);
            start.carried(&self.document, self.alternative, self.drawn_fabric(), next_id)
        });
        if let Some(carried) = carried.filter(|edits| !edits.is_empty()) {
            // Uses alone: the fabric's streets stay as they are.
            let extended = self.history.extend(&mut self.document, carried);
            self.renew_drawn_uses();
            self.follow_drawn_fabric();
            extended.map(drop)
        } else {
            self.follow_drawn_fabric();
            Ok(())
        }
    }

    /// Adds to the gesture edits from which nothing of land, streets or figures follows, such as those of notes.
    ///
    /// # Errors
    /// Any fault of the edits; everything is then as before the call.
    pub fn add_aside(&mut self, edits: Vec<Edit>) -> Result<(), HistoryFault> {
        self.history.extend(&mut self.document, edits).map(drop)
    }

    /// Ends the gesture and keeps what it did as one step; `None` when it did nothing.
    ///
    /// # Errors
    /// [`HistoryFault::NoGesture`] when none is in progress.
    pub fn commit(&mut self) -> Result<Option<EntryNumber>, HistoryFault> {
        let cells: Vec<Cell> = self.history.preview().iter().map(Edit::cell).collect();
        let number = self.history.commit(&self.document)?;
        self.uses_at_start = None;
        self.settle(&cells);
        Ok(number)
    }

    /// Ends the gesture and takes its preview back.
    ///
    /// # Errors
    /// [`HistoryFault::NoGesture`] when none is in progress.
    pub fn cancel(&mut self) -> Result<(), HistoryFault> {
        self.history.cancel(&mut self.document)?;
        self.uses_at_start = None;
        self.bring_up_to_date();
        Ok(())
    }

    /// A whole gesture in one call.
    ///
    /// # Errors
    /// Any fault of the edits; everything is then as before the call.
    pub fn apply(&mut self, label: impl Into<String>, edits: Vec<Edit>) -> Result<Option<EntryNumber>, HistoryFault> {
        self.begin(label)?;
        match self.change(edits) {
            Ok(()) => self.commit(),
            Err(fault) => {
                self.cancel()?;
                Err(fault)
            }
        }
    }

    /// Notes that the document rests as it stands; `cells` are those that may differ from when it last did.
    fn settle(&mut self, cells: &[Cell]) {
        let edits: Vec<Edit> = cells
            .iter()
            .filter_map(|cell| Edit::between(*cell, &self.rested, &self.document))
            .collect();
        // Edits made between the two documents fit the first, one cell at a time.
        let fits = edits.iter().all(|edit| edit.apply(&mut self.rested).is_ok());
        if fits {
            self.unsent.extend(edits);
        } else {
            self.rested = self.document.clone();
            self.must_send_whole = true;
        }
    }

    /// What a second study that follows this one has not been told; nothing while a gesture is in progress.
    #[must_use]
    pub fn take_news(&mut self) -> Option<News> {
        if self.history.is_in_gesture() {
            return None;
        }
        let edits = std::mem::take(&mut self.unsent);
        let change = if std::mem::take(&mut self.must_send_whole) {
            Change::Whole(document_to_text(&self.document))
        } else {
            Change::Edits(edits_to_text(&edits))
        };
        Some(News {
            revision: self.revision,
            alternative: self.alternative,
            scope: self.scope.clone(),
            change,
        })
    }

    /// Makes the next news hold the whole document: the follower has lost step.
    pub const fn send_whole(&mut self) {
        self.must_send_whole = true;
    }

    /// Takes up what another study tells, without history of its own. What is told to be the same stays as it is, with
    /// all that was worked out of it.
    ///
    /// # Errors
    /// [`NewsFault`] when the news do not follow from what this study holds; nothing is then changed.
    pub fn take_up(&mut self, news: News) -> Result<(), NewsFault> {
        let is_the_same = news.revision == self.revision
            && news.alternative == self.alternative
            && news.scope == self.scope
            && matches!(&news.change, Change::Edits(text) if *text == edits_to_text(&[]));
        if is_the_same {
            return Ok(());
        }
        match news.change {
            Change::Whole(text) => self.document = document_from_text(&text).ok_or(NewsFault::Unreadable)?,
            Change::Edits(text) => {
                let edits = edits_from_text(&text).ok_or(NewsFault::Unreadable)?;
                apply_all(&edits, &mut self.document).map_err(NewsFault::DoesNotFollow)?;
            }
        }
        self.alternative = news.alternative;
        if news.scope != self.scope {
            self.take_scope(news.scope);
        }
        self.bring_up_to_date();
        self.revision = news.revision;
        Ok(())
    }

    /// The history: labels and counts of steps, and the entries to keep.
    #[must_use]
    pub const fn history(&self) -> &History {
        &self.history
    }

    /// A mark id that no mark has or had.
    #[must_use]
    pub fn next_mark_id(&self) -> MarkId {
        self.history.next_mark_id(&self.document)
    }

    /// Whether a gesture is in progress.
    #[must_use]
    pub const fn is_in_gesture(&self) -> bool {
        self.history.is_in_gesture()
    }

    /// The fabric of the alternative in view.
    #[must_use]
    pub const fn fabric(&self) -> &Fabric {
        &self.derived.fabric
    }

    /// The walking network.
    #[must_use]
    pub const fn network(&self) -> &Network {
        self.derived.walks.network().network()
    }

    /// The walks to every destination.
    #[must_use]
    pub const fn walks(&self) -> &Walks {
        &self.derived.walks
    }

    /// Costs of the walk to the nearest center, in the network's units, as far as half an hour; or why there is none.
    ///
    /// # Errors
    /// The reason, in words.
    pub fn walk(&self) -> Result<&CostField, &str> {
        let field = self.derived.walks.field(Destination::Center)?;
        field.ok_or_else(|| say!("measures-no-center"))
    }

    /// The streets from which a center is within `seconds` of walking at the plan's pace, at most half an hour; nothing
    /// without a center.
    #[must_use]
    pub fn walk_shed(&self, seconds: u32) -> Reach {
        self.derived.walks.reach(Destination::Center, seconds)
    }

    /// Along every front, which of the five daily needs are within `seconds` of walking at the plan's pace.
    #[must_use]
    pub fn needs_reached(&self, seconds: u32) -> Vec<NeedsReached> {
        self.derived.walks.needs_reached(seconds)
    }

    /// The painted faces in the site and where their land fronts.
    #[must_use]
    pub const fn painted(&self) -> &Painted {
        &self.derived.painted
    }

    /// The factors as the program ships them, without the document's own values.
    #[must_use]
    pub const fn shipped_factors(&self) -> &Factors {
        &self.shipped
    }

    /// The fabric of all that is drawn.
    fn drawn_fabric(&self) -> &Fabric {
        self.whole.as_ref().map_or(&self.derived.fabric, |whole| &whole.fabric)
    }

    fn renew_drawn_fabric(&mut self) {
        let (fabric, lands) = match &mut self.whole {
            Some(whole) => (&mut whole.fabric, &mut whole.lands),
            None => (&mut self.derived.fabric, &mut self.lands),
        };
        fabric.renew(&Seen::all_of(&self.document), self.alternative, lands);
    }

    fn bring_up_to_date(&mut self) {
        self.renew_drawn_fabric();
        self.follow_drawn_fabric();
    }

    /// Brings the uses alone up to the document.
    fn renew_drawn_uses(&mut self) {
        let fabric = match &mut self.whole {
            Some(whole) => &mut whole.fabric,
            None => &mut self.derived.fabric,
        };
        fabric.renew_uses(&Seen::all_of(&self.document), self.alternative);
    }

    /// Brings everything else up to the document, with which the fabric of all that is drawn is in step already.
    fn follow_drawn_fabric(&mut self) {
        self.revision += 1;
        let seen = self.scope.seen(&self.document, self.alternative);
        if self.whole.is_some() {
            self.derived.fabric.renew(&seen, self.alternative, &mut self.lands);
        }
        self.derived
            .follow_fabric(&seen, self.alternative, &mut self.lots, &self.shipped);
    }
}

impl Derived {
    fn of(
        document: &Document,
        alternative: AlternativeId,
        lands: &mut LandCache,
        lots: &mut PaintedCache,
        shipped: &Factors,
        graph: Arc<Graph>,
    ) -> Result<Self, StudyFault> {
        let fabric = Fabric::of(document, alternative, lands);
        let painted = painted_faces(document, alternative, &fabric, lots);
        let walks = Walks::of(document, alternative, &fabric, &painted).map_err(fault)?;
        let (factors, override_faults) = factors_of(document, shipped);
        let mut claims = ClaimCache::default();
        let form = FormInputs::count(document, alternative, &fabric, &painted, &mut claims);
        let streets = StreetInputs::of(document, alternative, &fabric, &painted);
        let measured = count(document, &painted, &walks, streets, form);
        let inputs = measures::inputs(&measured, &factors).map_err(|missing| fault(missing.iter().map(no_factor)))?;
        let figures = Figures::new(graph, inputs)?;
        Ok(Self {
            fabric,
            painted,
            walks,
            claims,
            figures,
            details: None,
            override_faults,
        })
    }

    /// Brings everything up to the fabric. Where that fails the last figures stay and the reason is kept with the
    /// overridden factors; only the program's own tables can make it fail.
    fn follow_fabric(
        &mut self,
        seen: &Seen<'_>,
        alternative: AlternativeId,
        lots: &mut PaintedCache,
        shipped: &Factors,
    ) {
        let document = &seen.document;
        let (factors, mut faults) = factors_of(document, shipped);
        self.details = None;
        self.painted.renew(document, alternative, &self.fabric, lots);
        if let Err(network_faults) = self.walks.renew(document, alternative, &self.fabric, &self.painted) {
            faults.extend(network_faults.iter().map(ToString::to_string));
        }
        let form = FormInputs::count(document, alternative, &self.fabric, &self.painted, &mut self.claims);
        let streets = StreetInputs::of_first_level(document, alternative, &self.fabric, &self.painted);
        let measured = count(document, &self.painted, &self.walks, streets, form);
        match measures::first_level_inputs(&measured, &factors) {
            Ok(inputs) => {
                if let Err(input_faults) = self.figures.set_first_level(inputs) {
                    faults.extend(input_faults.iter().map(ToString::to_string));
                }
            }
            Err(missing) => faults.extend(missing.iter().map(no_factor)),
        }
        self.override_faults = faults;
    }
}

/// The shipped factors with the document's own values; values that do not fit are left out and named.
fn factors_of(document: &Document, shipped: &Factors) -> (Factors, Vec<String>) {
    let mut factors = shipped.clone();
    let mut faults = Vec::new();
    for (id, held) in &document.settings.overridden_factors {
        let value = Override {
            low: Some(held.low),
            typical: held.typical,
            high: Some(held.high),
        };
        match factors.with_overrides([(id.as_str(), value)]) {
            Ok(changed) => factors = changed,
            Err(override_faults) => faults.extend(override_faults.iter().map(ToString::to_string)),
        }
    }
    (factors, faults)
}
