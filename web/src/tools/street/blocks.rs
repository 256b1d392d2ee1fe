//! A grid of blocks by two corners: it turns to the nearest street or edge of the site, and begins on a street where it
//! begins beside one.

use hobnail_core::plan::editing::blocks::{Blocks, blocks};
use hobnail_core::plan::{Edit, MarkId, PlanPoint};

use super::{State, new_street};
use crate::input::Key;
use crate::tools::drawing::{Quantity, sentence};
use crate::tools::guides::{self, Landing};
use crate::tools::snap::{Reason, Snap};
use crate::tools::{At, Hints, Input, Label, Sight, Step, near};

/// A grid that is begun this near the middle of a street begins on it: 10 m, about half the right-of-way of a main street
/// (common practice, no source). With less, a sliver of land would be left between the two; with more, no grid could be
/// begun beside a street at all.
const STREET_REACH_MM: f64 = 10_000.0;

/// A grid in the middle of being spanned.
#[derive(Clone, Debug, PartialEq)]
pub struct Spanned {
    /// The first of its streets' marks.
    id: MarkId,
    first: Snap,
    /// Its direction.
    along: (f64, f64),
    /// The run it turned to, and whether that is a street's.
    turned_to: Option<([PlanPoint; 2], bool)>,
    hover: Option<(Landing, Option<Blocks>)>,
}

impl Spanned {
    pub(super) fn from(first: Snap, sight: &Sight<'_>) -> Self {
        let found = guides::nearest_run(first.point, sight.next_id, sight);
        Self {
            id: sight.next_id,
            first,
            along: found.map_or((1.0, 0.0), |(along, ..)| along),
            turned_to: found.map(|(_, ends, is_street)| (ends, is_street)),
            hover: None,
        }
    }

    pub(super) fn hints(&self) -> Hints {
        let (landing, blocks) = self
            .hover
            .as_ref()
            .map_or((None, None), |(landing, blocks)| (Some(landing), blocks.as_ref()));
        let said = |blocks: &Blocks| {
            let [along, across] = blocks.count.map(Quantity::Count);
            let [length, depth] = blocks.step_mm.map(|step_mm| Quantity::Length(step_mm.abs()));
            match self.turned_to {
                Some((_, true)) => sentence!(
                    "tools-grid-by-street",
                    along = along,
                    across = across,
                    length = length,
                    depth = depth
                ),
                Some((_, false)) => sentence!(
                    "tools-grid-by-edge",
                    along = along,
                    across = across,
                    length = length,
                    depth = depth
                ),
                None => sentence!(
                    "tools-grid",
                    along = along,
                    across = across,
                    length = length,
                    depth = depth
                ),
            }
        };
        Hints {
            snap: Some(landing.map_or(self.first, |landing| landing.snap)),
            lines: landing.map_or_else(Vec::new, |landing| landing.lines.clone()),
            stretch: self.turned_to.map_or_else(Vec::new, |(ends, _)| ends.to_vec()),
            points: vec![self.first.point],
            words: blocks.and_then(|blocks| Some((PlanPoint::mean_of(&blocks.outline())?, said(blocks)))),
            ..Hints::default()
        }
    }

    /// Puts the second corner where the hand is.
    fn span(&mut self, at: At, sight: &Sight<'_>) -> Vec<Edit> {
        let mut landing = guides::land(at, self.id, &[], sight);
        let is_held = !matches!(landing.snap.reason, Reason::Grid | Reason::Free);
        let block_mm = sight.choices.drawing.block_mm;
        let blocks = blocks(self.first.point, landing.snap.point, self.along, block_mm, is_held);
        let edits = blocks.map_or_else(Vec::new, |blocks| self.edits(&blocks, sight));
        if let Some(blocks) = blocks.filter(|_| !is_held) {
            let [along, across] = blocks.count;
            landing.snap.point = blocks.corner(along, across);
        }
        self.hover = Some((landing, blocks));
        edits
    }

    fn edits(&self, blocks: &Blocks, sight: &Sight<'_>) -> Vec<Edit> {
        let Some(alternative) = sight.drawn() else {
            return Vec::new();
        };
        let there: Vec<_> = near::streets(alternative)
            .filter(|(id, _)| *id < self.id)
            .map(|(id, street)| (id, street.line.as_slice()))
            .collect();
        let streets = blocks.streets(&there, self.id).into_iter();
        streets.map(|(id, line)| new_street(id, line, sight)).collect()
    }
}

pub(super) fn respond(mut spanned: Spanned, input: Input, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let rest = State::Resting { hover: None };
    match input {
        Input::Move(at) => {
            let edits = spanned.span(at, sight);
            (State::Spanning(spanned), vec![Step::Change(edits)])
        }
        Input::Down(at) => {
            let edits = spanned.span(at, sight);
            if edits.is_empty() {
                return (State::Spanning(spanned), Vec::new());
            }
            (rest, vec![Step::Change(edits), Step::Commit])
        }
        Input::Key(Key::Escape | Key::Backspace | Key::Delete) | Input::GiveUp => (rest, vec![Step::Cancel]),
        Input::Up(_) | Input::Leave | Input::Key(_) => (State::Spanning(spanned), Vec::new()),
    }
}

/// The steps that begin a grid.
pub(super) fn begin(first: Snap, sight: &Sight<'_>) -> (State, Vec<Step>) {
    let state = State::Spanning(Spanned::from(first, sight));
    (state, vec![Step::Select(None), Step::Begin(Label::DrawBlocks)])
}

/// Where a grid begins: where a street would, but on a street or where two meet from farther away, out of reach of the
/// hand where the view is close.
pub(super) fn first_corner(at: At, sight: &Sight<'_>) -> Landing {
    let reach_mm = sight.reach_mm.max(STREET_REACH_MM);
    guides::land(at, sight.next_id, &[], &Sight { reach_mm, ..*sight })
}
