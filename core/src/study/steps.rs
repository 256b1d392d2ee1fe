//! Going through the history: one step back, one step on, or to any moment.

use std::cmp::Ordering;

use super::Study;
use crate::plan::edit::Cell;
use crate::plan::history::HistoryFault;

impl Study {
    /// Takes the last step back; `false` when there is none.
    ///
    /// # Errors
    /// [`HistoryFault`] when a gesture is in progress or the step has left memory.
    pub fn undo(&mut self) -> Result<bool, HistoryFault> {
        let cells = self.history.undo(&mut self.document)?;
        Ok(self.after_step(cells))
    }

    /// Does the step undone last again; `false` when there is none.
    ///
    /// # Errors
    /// [`HistoryFault`] when a gesture is in progress or the step has left memory.
    pub fn redo(&mut self) -> Result<bool, HistoryFault> {
        let cells = self.history.redo(&mut self.document)?;
        Ok(self.after_step(cells))
    }

    /// Goes to the moment at which this many steps are done, undoing or doing again what lies between; everything is
    /// brought up to date once. `false` when there is no other such moment.
    ///
    /// # Errors
    /// [`HistoryFault`] when a gesture is in progress or a step between has left memory; the study is then as far on the
    /// way as it could go.
    pub fn go_to(&mut self, steps_done: usize) -> Result<bool, HistoryFault> {
        let mut cells = Vec::new();
        let outcome = loop {
            let step = match self.history.undo_count().cmp(&steps_done) {
                Ordering::Equal => break Ok(()),
                Ordering::Greater => self.history.undo(&mut self.document),
                Ordering::Less => self.history.redo(&mut self.document),
            };
            match step {
                Ok(Some(differing)) => cells.extend(differing),
                Ok(None) => break Ok(()),
                Err(fault) => break Err(fault),
            }
        };
        crate::order::sort(&mut cells);
        cells.dedup();
        let has_moved = self.after_step((!cells.is_empty()).then_some(cells));
        outcome.map(|()| has_moved)
    }

    fn after_step(&mut self, cells: Option<Vec<Cell>>) -> bool {
        let Some(cells) = cells else { return false };
        self.settle(&cells);
        if !self.document.alternatives.contains_key(&self.alternative)
            && let Some(first) = self.document.alternatives.keys().next()
        {
            self.alternative = *first;
        }
        self.bring_up_to_date();
        true
    }
}
